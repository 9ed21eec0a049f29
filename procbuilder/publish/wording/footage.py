"""Sentences about times and recordings."""

from procbuilder.publish.wording.patterns import Patterns

_END_ONE = "end one where the other begins, at {begins} or {ends}"
_CROP = "move it into the crop, or widen the crop"

PATTERNS: Patterns = {
    "unlisted-recording": {
        "": (
            "no recording is called {name}",
            "add it at the top: recordings: {{{name}: recordings/FILE.mp4}}",
        ),
        "near": (
            "no recording is called {name}",
            "did you mean {near}? Or add it at the top: recordings: {{{name}: recordings/FILE.mp4}}",
        ),
    },
    "time-outside-recording": {
        "": (
            "{time} lies outside the recording {recording}, which ends at {end}",
            "write a time before {end}, or name the recording that shows it",
        ),
    },
    "end-before-start": {
        "": ("{span} ends before it starts", "look at the recording and write both times anew"),
        "no-length": ("{span} has no length", "look at the recording and write when it ends"),
    },
    "overlapping-steps": {
        "": ("{first} and {second} both show {shared}, and its time counts twice", _END_ONE),
        "same-step": ("{first} shows twice {shared}, and its time counts twice", _END_ONE),
    },
    "hidden-in-part": {
        "": (
            "hidden only {hidden:t}; the clip shows {shown:t} open",
            "write a box for {ends} as well, if it is in sight then",
        ),
        "beside": ("{hidden} is hidden, but the step does not show it", "write times between {begins} and {ends}"),
        "elsewhere": (
            "{hidden} is hidden, but the step does not show it",
            "move it to a step whose footage shows it",
        ),
    },
    "mark-outside-crop": {
        "": ('the {shape} "{label}" lies outside the crop of its picture and is not shown', _CROP),
        "no-label": ("the {shape} lies outside the crop of its picture and is not shown", _CROP),
    },
}
