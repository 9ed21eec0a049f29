"""All that page and quotation say by themselves, beside what they share with the PDF.

``{name}`` stands for something that is filled in. Nothing here is markup.
"""

from procbuilder.model.ledger import Opening
from procbuilder.publish.words import (
    AS_FOUND,
    BY_CARD,
    CHECK_REVISION,
    HELD,
    LEAVE_IN_PLACE,
    LOOK_UP,
    MARKED,
    NO_PHONE,
    PRIORITY,
    QUALIFIED,
    QUOTATION,
    RECORD,
    REVISION,
    SHEETS_TITLE,
    SIGNAL_MEANING,
    STILL_DANGEROUS,
    THE_PROCEDURE,
    VAPOUR,
    WEAK_PICTURE,
)  # fmt: skip

__all__ = [
    "AS_FOUND",
    "BY_CARD",
    "CHECK_REVISION",
    "HELD",
    "LEAVE_IN_PLACE",
    "LOOK_UP",
    "MARKED",
    "NO_PHONE",

    "PRIORITY",
    "QUALIFIED",
    "QUOTATION",
    "RECORD",
    "REVISION",
    "SHEETS_TITLE",
    "SIGNAL_MEANING",

    "STILL_DANGEROUS",
    "THE_PROCEDURE",
    "VAPOUR",
    "WEAK_PICTURE",
]  # fmt: skip
"""What is shared, so that a template finds all words in one place."""

# ---- the page: head and overview ----

OVERVIEW = "Overview"
IDENTITY = {
    "item": "Item",
    "applies_to": "Applies to",
    "not_for": "Not for",
    "status": "Status",
    "work_place": "Place",
    "people": "People",
    "author": "Author",
    "ask": "Whom to ask",
}
WHO_MAY = "Who may do it"
RESERVED_STEPS = "Reserved: step {number} is done by {who}"
HELD_STEPS = "Stops for a check: step {number}"
WHOLE_JOB = "Dangers of the whole job"
NO_HAZARD = "None is named for the whole job; see each step."
BEFORE = "Before you start"
EXPLICIT_NONE = "None: there is nothing, and that is known."
NOT_WRITTEN = "Nothing is written here yet."
TOOLS, SUPPLIES, PARTS = "Tools", "Supplies", "Parts"
NONE_LISTED = "None are listed."
NEW = "new"
STEP, STEPS = "step", "steps"
FILM = "Film of the whole job"
FILM_LASTS = "Film of the whole job, {time}"
FILM_NOT_INSIDE = "The film of the whole job, {time}, is not in this file; it lies beside {page}."
THE_STEPS = "The steps"
ONLY_IF = "Only if"
ONLY_IF_LINE = "Only if {condition}"
DONE_BY = "Done by {who}"
TICKED = "✓ ticked"

TIGHTENING = "Tightening"
TORQUE_HEAD = ("What", "Torque and source")
TIGHTENED_WITHOUT = "tightened here, but no torque was given"
ORDER, WHEN, HEARD = "order: {order}", "when: {when}", "heard: {heard}"
VALUE, SOURCE, INITIALS = "value", "source", "initials"
LOOK_IN = "Look it up in {document}."
FROM_DOCUMENT = "from {document}"
NO_SOURCE = "typed, no source named"

LEDGER = "What was opened and closed"
NOTHING_OPENED = "Nothing is taken off, slackened, fitted for now or put into another state."
NOT_IN_BALANCE = "{count} not in balance."
ASSUMED_CLOSED = "{count} only assumed to be closed: no step says so but “in reverse”."
BALANCED_BUT = "Balanced but for what is left open on purpose."
BALANCED = "Balanced: everything that was opened is closed again."
OPENED_AT, CLOSED_AT = "at {moments}", "closed at {moments}"
OUT_AND_BACK = "{out} out, {back} back"
HELD_BY_WORDS, TRAY = "held by {fasteners}", "tray {tray}"
PART_OF, RENEWED, NIPPED_UP, SCRAPPED = "part of {part}", "renewed", "nipped up", "for scrap"
PAIRS = "Before and after"
PAIR_BEFORE, PAIR_AFTER = "Before, step", "After, step"
TRAYS = "Trays and bags"
TRAYS_HEAD = ("Tray", "What goes in", "Off", "On again")
OF_WHAT, BEFORE_ALL = "of {part}", "before"
AT_STEP = "step {number}"
OPEN_AS = {
    Opening.OFF: "off",
    Opening.SLACKENED: "slackened",
    Opening.TEMPORARY: "fitted for now",
    Opening.STATE: "lasts",
}

HOW_LONG = "How long it takes"
MINUTES_OF_STEPS = "Minutes of each step"
MINUTES_HEAD = ("Step", "Minutes", "From")
BARS = (
    "Each bar reaches from low to high, with a mark at the likely minutes; one with a dashed edge is not sure. "
    "All bars have one scale."
)
TIMES_TAKEN = "Times taken with the stopwatch"
TIMES_WHO, TIMES_WHO_HINT = "Initials or a code", "not a full name"
TIMES_SAVE, TIMES_DELETE = "Save as a file", "Delete them"
TIMES_STAY = "They stay on this device until you save the file yourself and hand it in; it goes into the practice log."
SEEN_BY = "Who will then see them: {who}."
SEEN_BY_UNKNOWN = "The workshop has not said who will then see them: ask first."
KEPT_FOR = "They are kept for {time}."
KEPT_UNKNOWN = "The workshop has not said how long they are kept."

FINDINGS = "Findings and later checks"
PROBLEMS = "Problems still open: {count}"
NO_PROBLEM = "None was found."
MORE = "{count} more: {kinds}"
SIGNAL_WORDS = "Signal words"
RECORDINGS = "Recordings"
NO_RECORDING = "None."

# ---- the page: a step ----

STEP_OF = "Step {number} of {count}"
STILL_OPEN = "{count} still open"
TO_AVOID = "To avoid it:"
HOLDS_WHILE = "Holds while: {state}"
WHILE = "(while: {state})"
HOLD = "HOLD"
HOLD_AFTER = "after this step: {what}"
HOLD_BEFORE_NEXT = "Before the next step this must be checked: {what}"
BY = "– by {who}"
CHECKED_BY = "Checked by (initials)"
CHECKER = "The checker is not the one who did it. This is a reminder; the signed sheet is the record."
READ_NOW = "Before {steps}: read now what they say, then put the phone away."
THERE = "There,"
STOP_DONE_BY = "Stop: done by {who}"
BEFORE_GOING_ON = "Before you go on:"
TOLD_SAFE = "{who} has told you that it is done and safe."
FACTS = {"wear": "Wear", "tools": "Tool", "parts": "Part", "supplies": "Supply"}
HELD_BY, TORQUE = "Held by", "Torque"
CLIP_OF = "Clip: {what}"
CAPTIONS = "Words"
SHOW_PICTURE = "Show picture"
SLOWER, FRAME_BACK, FRAME_ON = "Slower", "Picture back", "Picture on"
KEY_POINT = "Key point:"
BECAUSE = "because"
SAID_HERE = "What is said in the clip"
CHECKS, MOVES, NOTES = "Checks", "What opens and closes", "Notes"
NO_PICTURE = "There is no picture of this step."
FILMED, NOT_FILMED = "filmed: {spans}", "This step was not filmed."
FROM_MEMORY = "from memory, not checked"
DIFFERS = "It does not look like this"
DIFFERS_STOP = "Stop. Leave everything as it is."
DIFFERS_STAYS = "Leave in place: {things}"
DIFFERS_ONLY_IF = "This step is only for: {condition}"
DIFFERS_BRANCH = "Step {number} is for: {condition}"
DIFFERS_FOUND = "How it looked before"
DIFFERS_NOBODY = "Ask the one who taught you this job."
ASK = "Something does not match? Stop and ask:"
OPEN_NOW = "Still open when this step begins: {count}"
STEP_DONE = "Step {number} is done"
WATCH_START, WATCH_PAUSE, WATCH_DONE = "Start the stopwatch", "Pause", "Done: keep the time"

# ---- the page: job, screen, ways ----

JOB = "Job"
JOB_WHICH, JOB_HINT = "Which job is this?", "For instance job number or initials"
JOB_KEEP, JOB_SKIP, JOB_OTHER = "Keep my ticks", "Skip", "Another job"
JOB_KNOWN = "Jobs kept on this device"
WAYS = "Steps"
BACK = "Back"
SCREEN = "This screen"
SCHEME = "Light"
SCHEMES = {"": "as the device", "bright": "bright yard", "dark": "dark workshop"}
AWAKE = "Keep the screen on"
TO_HANDOVER, TO_STUDY = "Handover note", "Study and self-test"

# ---- the page: handover ----

HANDOVER = "Handover note"
HANDOVER_ONLY = "It is made from the ticks of this job. Look at the item itself before you go on."
COPY, PRINT = "Copy the note", "Print the note"
HANDED_OVER, TAKEN_OVER = "Handed over by", "Taken over by"

# ---- the page: study ----

STUDY = "Study"
STUDY_HOW = (
    "Every question is made from this procedure alone. Answer from memory first; the answer leads to the step. "
    "It is for learning: the workshop decides who may do the job."
)
SELF_TEST = "Self-test"
NO_QUESTION = "This procedure holds too few facts for a self-test."
QUESTION_OF = "Question {number} of {count}"
SAY_IT = "Say it aloud, then look."
ANSWER = "Answer"
SEE_STEP, SEE_CLIP = "See step {number}", "See the clip of step {number} at {time}"
PICTURE_CHOICE = "Picture {letter}"
RECHECK = "Re-check due"
RECHECK_HOW = (
    "Skill fades when it is not used: order, counts and torques first. The times are a starting point; "
    "the workshop may ask for shorter ones. Every real run of the job starts the last one again."
)
SIGNED_OFF = "Signed off on"
RECHECK_DUE = {
    "1 week": ("1 week", "self-test"),
    "4 weeks": ("4 weeks", "self-test"),
    "3 months": ("3 months", "practical check, watched by somebody who may teach it"),
    "6 months": ("6 months", "check again before the next run, when the job was not done since"),
}
"""By the time that the script counts."""

QUESTION = {
    "order": "What comes directly after “{command}”?",
    "before": "What must be done before “{command}”?",
    "hold": "After which step does the work stop for this check: {what}?",
    "fasteners": "What holds this: {thing}?",
    "quantity": "How much or how many: {thing}?",
    "tool": "Which tool is used to “{command}”?",
    "torque": "To what torque: {thing}?",
    "look_up": "Where do you look up the torque: {thing}?",
    "new": "Which of these must be a new one?",
    "reason": "Why: “{point}”?",
    "picture": "Which picture shows this done: “{command}”?",
}
WHY = {
    "order": "Step {number} follows step {before}.",
    "before": "Step {number} asks for it.",
    "hold": "Hold point of step {number}.",
    "fasteners": "Written in step {number}.",
    "quantity": "Needed in step {number}.",
    "tool": "Written in step {number}.",
    "torque": "Step {number}, {source}.",
    "look_up": "Step {number}: no value is written, so that nobody works by a guess.",
    "new": "Step {number} puts a new one in; the others go back as they were.",
    "reason": "Key point of step {number}.",
    "picture": "The picture of step {number}.",
}

# ---- the quotation ----

QUOTATION_KIND = "Quotation"
LABOUR, SCOPE = "Labour", "Scope"
INCLUDED, NOT_INCLUDED = "Included", "Not included"
PARTS_AND_SUPPLIES = "Parts and supplies"
ITEMS_HEAD = ("Kind", "What", "Quantity")
EXTRAS, NO_EXTRA = "Extras: only after approval", "None are named."
EXTRAS_HEAD = ("If", "More time", "Approved by, date")
QUOTE_FINDINGS, NO_FINDING = "Findings on the item, outside this job", "None was noted."
FINDINGS_HEAD = ("Finding", "On record", "Approved by, date")

SCRIPT = {
    "at": "{number} of {count}",
    "at_open": "{where}, {open} still open",
    "next": "Next: {number}",
    "last": "This is the last step",
    "ticks": "Ticked: {done} of {count}.",
    "first_open": "First without a tick: step {number}.",
    "job": "Job {job}.",
    "job_not_kept": "Job {job}: ticks cannot be kept here.",
    "no_job": "No job named: ticks are not kept.",
    "known_job": "{job}: step {number}",
    "resume": "Go on at step {number}",
    "clip_show": "Show clip",
    "clip_hide": "Show picture",
    "clip_fails": "The clip cannot be shown here",
    "slower": "Slower",
    "full_speed": "Full speed",
    "hold_next": "Hold point: it must be checked before the next step. Press Next again to go on.",
    "same_person": "The checker must not be the one who did it.",
    "awake": "The screen stays on while this page is in sight.",
    "not_awake": "This browser does not keep the screen on.",
    "note_title": "Handover note",
    "note_procedure": "Procedure",
    "note_job": "Job",
    "note_no_job": "not named",
    "note_stopped": "Stopped at",
    "note_step": "step {number} of {count}: {command}",
    "note_maybe": "This step may be half done: look first.",
    "note_end": "All steps are ticked.",
    "note_done": "Ticked",
    "note_missed": "Before it without a tick",
    "note_open": "Still open",
    "note_dangers": "Dangers standing",
    "note_leave": "Leave in place",
    "note_holds": "Hold points passed",
    "note_hold": "step {number}, checked by {who}",
    "note_hold_missing": "step {number}, no initials",
    "note_ask": "Whom to ask",
    "note_written": "Written",
    "note_mind": "Mind",
    "note_record": "Made from ticks, which are a reminder; the signed sheet is the record.",
    "none": "none",
    "copied": "Copied.",
    "copy_yourself": "It is marked: copy it with the keys of this device.",
    "right": "Right.",
    "not_right": "Not right: look at the answer.",
    "score": "Right at the first try: {right} of {count} answered.",
    "due": "{date}",
    "due_past": "{date}, past",
    "no_times": "No time has been taken.",
    "times": "Times taken: {count}.",
    "times_delete": "Delete them",
    "times_sure": "Press again to delete them",
    "times_who": "Write initials or a code of up to 12 signs first.",
    "watch_runs": "The stopwatch runs.",
    "watch_stands": "The time stands still.",
    "watch_go_on": "Go on",
    "watch_pause": "Pause",
    "watch_interrupted": "Interrupted: the time stands still. Check the last step again before you go on.",
    "watch_other": "Stopped: another step was timed. Its time was not kept.",
    "watch_kept": "{minutes} min kept.",
}
"""What the scripts of the page say."""
