"""All that the PDF says by itself, beside what it shares with the page.

``{name}`` stands for something that is filled in; what stands between two ``*`` is bold.
"""

from procbuilder.publish.pagewords import BEFORE_GOING_ON, NOT_WRITTEN, ONLY_IF, QUOTE_FINDINGS, TRAYS, WHOLE_JOB
from procbuilder.publish.words import (
    AS_FOUND,
    CHECK_REVISION,
    CLIP,
    LEAVE_IN_PLACE,
    LOOK_UP,
    MARKED,
    NO_PHONE,
    NONE,
    NONE_LISTED,
    NOT_STATED,
    NOTHING_OPENED,
    PRIORITY,
    QR_CODE,
    QUALIFIED,
    RECORD,
    SIGNAL_MEANING,
    STILL_DANGEROUS,
    VAPOUR,
    WEAK_PICTURE,
)
from procbuilder.publish.words import FROM_MEMORY as NOT_CONFIRMED

__all__ = [
    "AS_FOUND", "BEFORE_GOING_ON", "CHECK_REVISION", "CLIP", "LEAVE_IN_PLACE", "LOOK_UP", "MARKED", "NONE",
    "NONE_LISTED", "NOTHING_OPENED", "NOT_CONFIRMED", "NOT_STATED", "NOT_WRITTEN", "NO_PHONE", "ONLY_IF", "PRIORITY",
    "QR_CODE", "QUALIFIED", "QUOTE_FINDINGS", "RECORD", "SIGNAL_MEANING", "STILL_DANGEROUS", "TRAYS", "VAPOUR",
    "WEAK_PICTURE", "WHOLE_JOB",
]  # fmt: skip
"""What is shared, so that a template finds all words in one place."""

UNPRINTABLE = "□ stands for a character that this sheet has no letter for: {characters}"
PAGE = "Page {page} of {pages}"
NO_NUMBER, REVISION, NO_REVISION = "no number", "revision {revision}", "no revision"
STATUS_WORDS = {"draft": "Draft", "review": "In review", "withdrawn": "Withdrawn"}
UNTITLED, NUMBERED = "Procedure without a title", "Procedure {number}"

# ---- before the steps ----

IDENTITY = {
    "number": "Number", "item": "Item", "revision": "Revision", "applies_to": "Applies to", "status": "Status",
    "not_for": "Not for", "author": "Author", "work_place": "Place", "ask": "Ask", "people": "People",
}  # fmt: skip
EXPLICIT_NONE = "none"
TOOLS, SUPPLIES, PARTS = "Tools", "Supplies", "Parts"
ITEM_COLUMNS = ("Here", "What", "How much", "Used in step")
NEW = "new"
BEFORE = "Before you start"
NO_HAZARD = "No danger of the whole job is stated: that does not mean that there is none."
SIGNAL_WORDS = "What the signal words mean"
NO_HAZARD_WORDS, NO_CONSEQUENCE = "hazard not stated", "consequence not stated"
AVOID, NOT_AVOIDED = "Avoid it:", "how to avoid it is not stated"
WHILE = "while {state}"

# ---- a step ----

AT_STEP = "step {number}"
LOOK_IN = "Look up: {document}"
TORQUE, TOOL, WEAR, PART, SUPPLY, KEY_POINT = "Torque", "Tool", "Wear", "Part", "Supply", "Key point"
WHY = "Why:"
VALUE, SOURCE, INITIALS = "value", "source", "initials"
NO_VALUE = "No value given."
HOLD_POINT = "HOLD POINT – do not go on until this is checked and signed"
CHECKED_BY, NOT_BY_WHOM = "Checked by:", "not stated by whom"
NAME, SIGNATURE, DATE_TIME = "Name", "Signature", "Date, time"
NOT_FILMED = "not filmed"

# ---- after the steps ----

TIGHTENING = "Tightening table"
TIGHTENING_COLUMNS = ("What", "Step", "Value", "Order, condition", "Source", "Initials")
NO_SOURCE = "no source"
LEDGER = "Opened and closed"
LEDGER_COLUMNS = ("What", "How", "Opened", "Closed", "How it ends")
OF_CLOSED = "{back} of {out} closed"
ONLY_ASSUMED = "*Only assumed:* {count} of {all} are closed by no step but “in reverse”"
BALANCED = "*Balanced:* everything that was opened is closed, or left open with a reason."
NOT_BALANCED = "*Not balanced.* Still open, or never opened: *{count} of {all}*"
PAIRS = "Before and after"
TRAY_COLUMNS = ("Tray", "What goes in", "Of", "Off, step", "On, step")
BEFORE_ALL = "before"
TIME = "Time"
TIME_COLUMNS = ("Step", "Minutes", "From", "Low to high, mark: likely")
CLOSING = "Findings and later re-checks"
CLOSING_COLUMNS = ("Kind", "What", "More")
PROBLEMS = "Problems still open"
PROBLEM_COLUMNS = ("Kind", "Line", "Problem", "What to write")
RECORDINGS = "Recordings"
RECORDING_COLUMNS = ("Name", "File", "Length", "Picture", "Remarks")
HASH = "SHA-256 begins {hash}"
FILM = "Film of the whole job, {time}: media/{file} beside the page"
SIGNATURES = "Signatures"
INITIALS_TITLE, DATE = "Initials", "Date"
JOB, WORKED_BY, CHECKED_BY_TITLE = "Job", "Worked by", "Checked by"

# ---- the quotation ----

QUOTATION = "Quotation and booking"
INCLUDED, NOT_INCLUDED = "Included", "Not included"
PARTS_AND_SUPPLIES = "Parts and supplies"
QUOTE_COLUMNS = ("Kind", "What", "Quantity")
EXTRAS, NO_EXTRA = "Extras: only after approval", "None are named."
EXTRAS_COLUMNS = ("If", "More time", "Approved by, date")
NO_FINDING = "None was noted."
FINDINGS_COLUMNS = ("Finding", "On record", "Approved by, date")
