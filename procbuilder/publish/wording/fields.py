"""Sentences about fields and what stands in them."""

from procbuilder.model.fields import FIELDS
from procbuilder.publish.wording.headings import PATTERNS as HEADINGS
from procbuilder.publish.wording.patterns import Patterns

PARTS = tuple(dict.fromkeys(part for kind in FIELDS for part in kind.parts))
"""What the parts of the fields are called where a line to fill in is shown."""

PATTERNS: Patterns = {
    "field-name": {
        "": ("{typed} is no field", "did you mean {near}? Then write: {line}"),
        "unknown": (
            "{typed} is no field, but has parts with bars",
            "begin the line with the name of a field: - Tool: …",
        ),
    },
    "unseen-character": {
        "": (
            "{codes} stands here: nobody sees it, but it can turn or part what is read",
            "type the line anew instead of copying it",
        ),
    },
    "field-place": {
        "no-step": (
            "{field} stands in no step, so no pictures and clips are shown at all",
            "put it below the heading of the step whose footage it hides",
        ),
        "alone": ("{field} stands alone", "indent it below its - {below}: line"),
        "below": (
            "{field} stands below {above}",
            "start it at the left margin, like the other fields of the step",
        ),
    },
    "field": {
        "no-part": ("{field} has no {part}", "write: {line}"),
        "origin": ("({words}) has no time that can be read", "write it as (said strip 3:12) or (seen 4:02)"),
        "word": ("{word}: is not known in {field}", "did you mean {near}:?"),
        "word-twice": ("{word}: stands twice in {field}", "keep one of the two"),
        "part-too-many": ("{field} has a part too many: {part}", r"keep to {parts:/}; a bar as such is \|"),
        "part-too-many-words": (
            "{field} has a part too many: {part}",
            r"begin it with one of {words:,}; a bar as such is \|",
        ),
        "decimal-comma": ("{typed} has a decimal comma", "write a decimal point: {good}"),
        "minutes": ("{text} cannot be read as minutes", "write 12, or low/likely/high such as 8/10/15"),
        "minutes-fall": (
            "{text} does not rise",
            "write the low minutes first, then the likely, then the high",
        ),
        "overlaps": ("overlaps: {text} is not known", "write overlaps: yes, or leave it out"),
        "skip": ("Skip: {text} is no stretch of time", "write: - Skip: 1:02-1:10 | reason"),
        "no-time": HEADINGS["heading"]["no-time"],
        "which-recording": HEADINGS["heading"]["which-recording"],
        "picture": (
            "Picture: {text} is no time and no picture file",
            "write a time such as 1:09, or pictures/cap.jpg",
        ),
        "picture-of-which": (
            "Picture: {text} does not say of which recording",
            "write its name first: strip {text}",
        ),
        "picture-state": ("Picture: {text} is not known", "write found, done or detail as the third part"),
        "hide": (
            "Hide: {text} cannot be read",
            "write: - Hide: strip 0:42 0.1,0.7,0.3,0.8; 0:45 0.2,0.7,0.4,0.8",
        ),
        "mark-shape": ("Mark: {text} is not known", "write arrow, ring, box or line"),
        "mark": (
            "Mark: {text} cannot be read",
            "write 4 fractions from 0 to 1: 0.61,0.40,0.52,0.47",
        ),
        "ring": (
            "Mark: {text} cannot be read",
            "write 2 or 4 fractions from 0 to 1: 0.61,0.40,0.52,0.47",
        ),
        "box": (
            "{field}: {text} is no box",
            "write left,top,right,bottom from 0 to 1: 0.1,0.7,0.3,0.8",
        ),
    },
}
