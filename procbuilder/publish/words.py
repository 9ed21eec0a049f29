"""Words that the page and the PDF share, so that both say the same."""

from procbuilder.model.estimate import Basis
from procbuilder.model.worked import Signal

PRIORITY = (
    "This procedure records one workshop's method. The maker's current data, local law and codes, "
    "and the workshop's own risk assessment come first: where they differ, they win."
)
QUALIFIED = (
    "Work by it only if you are trained and allowed to; an apprentice works under supervision. "
    "If something does not match what you see, stop and ask."
)
CHECK_REVISION = "Check the current revision before use"
LOOK_UP = "Look up the value in the maker's current data for exactly this item"
STILL_DANGEROUS = "Still dangerous"
LEAVE_IN_PLACE = "Leave in place"
AS_FOUND = "As found, not proof that it was right"
WEAK_PICTURE = "Weak picture, the best of its film"
RECORD = "Ticks are a reminder for this job only; the signed sheet is the record."

SIGNAL_MEANING: dict[Signal, str] = {
    Signal.DANGER: "will kill or seriously injure if not avoided",
    Signal.WARNING: "could kill or seriously injure if not avoided",
    Signal.CAUTION: "could cause minor or moderate injury if not avoided",
    Signal.NOTICE: "damage to things, nobody hurt",
}

BASIS_WORDS: dict[Basis, str] = {
    Basis.LOG: "logged runs",
    Basis.TYPED: "time typed",
    Basis.FOOTAGE: "footage only: a lower bound if the film has cuts",
    Basis.CUT: "footage with cuts: a lower bound",
    Basis.NOTHING: "no time known",
}
