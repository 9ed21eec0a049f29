"""The one table of the fields that open and close something: what came off goes on, a state that began ends."""

from procbuilder.model.heard import Act
from procbuilder.model.ledger import Opening

OPENS = {
    "Off": Opening.OFF,
    "Slacken": Opening.SLACKENED,
    # What is nipped up is only half closed: it stays in the book until a torque closes it.
    "Nip up": Opening.SLACKENED,
    "For now": Opening.TEMPORARY,
    "State": Opening.STATE,
}
"""Each field that opens, with the way in which the thing is then open."""
CLOSES = {
    "On": Opening.OFF,
    "Torque": Opening.SLACKENED,
    "Out again": Opening.TEMPORARY,
    "Ends": Opening.STATE,
}
"""Each field that closes, with the way in which the thing was open."""
MOVES = OPENS | CLOSES
"""Every field that moves something."""
FIELD_OF = {
    Act.OFF: "Off", Act.ON: "On", Act.SLACKEN: "Slacken", Act.NIP: "Nip up", Act.TIGHTEN: "Torque",
    Act.FOR_NOW: "For now", Act.OUT_AGAIN: "Out again", Act.STATE: "State", Act.ENDS: "Ends",
}  # fmt: skip
"""The field in which what was heard is written down."""
HANDLED = ("Off", "On", "Slacken", "Nip up")
"""Those at which a thing and its fasteners are taken in hand, with their number and sizes."""
LEFT_OPEN = "Left open"
"""The field that names what stays open on purpose."""

OPENED_BY = {opening: field for field, opening in reversed(OPENS.items())}
"""The field that brings a thing into each way of being open: slackened by ``Slacken``, the first of its two."""
CLOSED_BY = {opening: field for field, opening in CLOSES.items()}
"""The field that ends each way of being open."""
