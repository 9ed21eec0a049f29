"""Words that the page and the PDF share, so that both say the same."""

from procbuilder.model.estimate import Basis
from procbuilder.model.signal import Signal

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
VAPOUR = "vapour or gas can catch fire"
BY_CARD = "Work by the printed card (sheets.pdf)."
NO_PHONE = "No phone here"
AS_FOUND = "As found, not proof that it was right"
MARKED = "Marked"
WEAK_PICTURE = "Weak picture, the best of its film"
RECORD = "Ticks are a reminder for this job only; the signed sheet is the record."

STATUS_WORDS = {
    "draft": "DRAFT – not approved",
    "review": "IN REVIEW – not approved",
    "withdrawn": "WITHDRAWN – do not work by it",
}

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
    Basis.CUT: "film with cuts – lower bound",
    Basis.NOTHING: "no time known",
}

REVISION = "revision {revision}"
ONLY_FOR = "Only for {reader}"
PAGE_OF = ("Page ", " of ")
"""Around the number of a page; the number of pages follows."""

HELD = "The clip begins with the marked picture, which stands still for {seconds} s."

# ---- the sheets

SHEETS_TITLE = "Sheets to print"
SHEETS_USE = "Each sheet is made from the same data as the procedure. Print one, or all of them."
QUOTATION = "Quotation and booking"

TOOLS = "Tools and supplies"
TOOLS_USE = "In order of first use. Count the tools before the job and after it: the numbers must agree."
BEFORE, AFTER, WHAT, HOW_MANY, FIRST_STEP, STEPS = "Before", "After", "What", "How many", "First in step", "Steps"
SUPPLIES, PARTS, HERE, NEW = "Supplies", "Parts", "Here", "new"
COUNTED_BEFORE, COUNTED_AFTER, INITIALS, DATE, NAME = "Tools before", "Tools after", "Initials", "Date", "Name"
NOT_COUNTED_RIGHT = "The numbers differ? Find the tool before anything turns, closes or is driven."
NO_TOOL = "No tool is listed: that does not mean that none is needed."
NONE_LISTED = "None are listed."

ORDER = "Parts to order"
ORDER_USE = "Look up each number in the maker's current data for exactly this item."
PART_NUMBER, SOURCE, ORDERED, PART, SUPPLY, KIND = "Part number", "Source", "Ordered", "Part", "Supply", "Kind"
NOT_KNOWN = "not known"

TIGHTENING = "Tightening"
TIGHTENING_USE = "The maker's current data come first. An empty line stays empty until the value has been looked up."
STEP, VALUE, ORDER_AND_CONDITION = "Step", "Value", "Order, condition"
NO_VALUE = "No value given"
NO_SOURCE = "no source"
FROM_MEMORY = "from memory, not confirmed"
TURNS = "{item}: {count} fasteners, in this order"
TURNS_NOTE = "Worked out from the typed order. Go round once in each stage; undo in the opposite order."
TURNS_ALT_CIRCLE = "A circle of {count} fasteners; clockwise from the top they are tightened as number {turns}."
TURNS_ALT_ROWS = "{rows} rows of {columns} fasteners; row by row they are tightened as number {turns}."

TRAYS = "Tray cards and bag labels"
TRAYS_USE = "Cut out along the dashed lines; one card into each tray, one label onto each bag."
TRAY, HOLDS, OFF_AT, ON_AT = "Tray", "Holds", "Off at step", "Back on at step"
BEFORE_THE_FIRST = "before step 1"
NOT_BACK = "not said"
LABELS = "Bag labels"

BREAKDOWN = "Job breakdown"
BREAKDOWN_USE = "For the one who teaches: important steps, key points, reasons. It does not replace the procedure."
IMPORTANT_STEP, KEY_POINTS, REASONS = "Important step", "Key points", "Reasons"
LEFT_OUT = "Steps without a key point are left out here: {numbers}."
HOLD_POINT = "Hold point: {text}"
WAYS_OF_TEACHING = (
    "Prepare: put at ease, say what the job is, find out what is known, stand where it can be seen.",
    "Show: one important step at a time, with its key points, no more than can be taken in at once.",
    "Try out: the learner does it, then again saying the key points aloud, until you are certain.",
    "Follow up: working alone; say whom to ask, check often, then less.",
)

SIGN_OFF = "Sign-off"
SIGN_OFF_USE = (
    "One sheet a person, for this procedure and this revision alone. The signer stands higher and is another."
)
LEVEL, MEANING, EVIDENCE, BY_WHOM, JOB_OR_SCORE = (
    "Level",
    "Meaning",
    "To record",
    "By whom",
    "Job, score, steps to redo",
)
LEVELS = (
    ("0", "not started", ""),
    ("1", "studied: read or watched, passed the self-test", "date, score"),
    ("2", "demonstrated to: has watched it done once", "date, by whom"),
    ("3", "assisted: did parts beside a qualified person", "steps done"),
    ("4", "supervised: did it all, checked at the hold points", "date, job, supervisor, steps failed"),
    ("5", "unsupervised: may do it alone", "date, supervisor, good runs"),
    ("6", "may teach and sign for others", "date, by the owner"),
)
SUPERVISED_RUNS = "Supervised runs before level 5"
HOW_MANY_RUNS = "The workshop says how many; more for brakes, steering, wheels, fuel and restraints."
RESERVED_STEPS = "Reserved: level 4 is the highest for these steps without a certificate"
CERTIFICATE = "Certificate number"
HOLD_POINTS = "Hold points, checked by another person"
LEARNER_TELLS = "Before level 4 the learner may tell each step while the senior does it."
RECHECK = "Check again when the revision changes a danger, torque, order or hold point, and after long non-use."

CARD = "Card of the steps where no phone may be used"
CARD_USE = "Something can catch fire here. Leave the phone outside, and take this card along."
HOW_TO, ONLY_IF = "How", "Only if"
CLIP, QR_CODE = "Clip", "QR code: the step on a phone"
STOP_DONE_BY, WEAR, TOOL, TORQUE, KEY_POINT, HOLD = "Stop: done by", "Wear", "Tool", "Torque", "Key point", "Hold"
REMEMBER = "Before these steps: phone, lighter, lamps and chargers away; nobody smokes."

FILM_BEFORE = "Before filming"
FILM_BEFORE_USE = "Read once, then put it where the camera stands."
FILM_POINTS = (
    "Ask the owner of the item; no plates, faces or papers in the picture.",
    "Wipe the lens. Light from the side, camera still, hands out of the way when a step is done.",
    "At the start say the item, the side and the job; hold up the size of each tool.",
    "Count fasteners aloud, and say which are longer.",
    "Say “that is off” and “that is back on”; say why when it matters.",
    "At the end of each step hold still for three seconds: that is the picture.",
    "Wrong? Say “wrong, again”, and do it again. Nothing is cut out without you.",
    "Danger? Stop the camera, not the care: no step is done for the film.",
)
FILM_THIS = "In this job"
FILM_COUNT = "step {number}: count aloud – {what}"
FILM_VALUE = "step {number}: say the torque and where it stands – {what}"
FILM_NEXT = "Film these three next time"
FILM_NEXT_USE = "What the film of this job lacks most."
FILM_NOT_SHOWN = "step {number} was not filmed: {command}"
FILM_NO_PICTURE = "step {number} has no picture: {command}"
FILM_WEAK = "step {number} has a weak picture ({reason}): {command}"
FILM_CUT = "step {number} was filmed with cuts, so that its time is not known: {command}"
FILM_ENOUGH = "Every step was filmed and has a good picture."

FINDINGS = "Findings and later checks"
FINDINGS_USE = "Seen on the item, outside this job. Nothing of it is done without approval."
ON_RECORD, APPROVED = "On record", "Approved by, date"
NO_FINDING = "None was noted."

LEDGER = "Opened and closed"
LEDGER_USE = (
    "What came off, was slackened, fitted for now or put into another state – and where it was put right again."
)
HOW, OPENED, CLOSED, HOW_IT_ENDS = "How", "Opened", "Closed", "How it ends"
NOTHING_OPENED = "Nothing is opened in this procedure."
BALANCED = "Balanced: everything that was opened is closed, or left open with a reason."
NOT_BALANCED = "Not balanced: {open} of {all} still open, never opened, or closed only by assumption."
OF_CLOSED = "{back} of {out} closed"
PAIRS = "Before and after"
BEFORE_STEP = "As found, step {number}"
AFTER_STEP = "Done, step {number}"
SHEETS_PDF = "All sheets as one PDF"
THE_PROCEDURE = "The procedure"

# ---- the DITA task

UNTITLED = "Procedure without a title"
NONE, NOT_STATED = "None.", "not stated"
TOOLS_ALONE = "Tools"
APPLIES_TO, NOT_FOR, ASK = "Applies to", "Not for", "Ask"
WHILE = "while"
COUNT_TOOLS = "Count the tools: as many as before the job."
