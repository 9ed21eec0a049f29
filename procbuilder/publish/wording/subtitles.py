"""Sentences about subtitles."""

from procbuilder.publish.wording.patterns import Patterns

_NO_CUE = "no cue is read here: {typed}"
_NO_TIMES = "the times cannot be read: {typed}"

PATTERNS: Patterns = {
    "subtitles": {
        "no-webvtt": ("the file does not begin with WEBVTT", "write WEBVTT as its first line"),
        "no-cue-subrip": (_NO_CUE, "a cue needs a line of times; write it as 00:01:02,500 --> 00:01:05,000"),
        "no-cue-webvtt": (_NO_CUE, "a cue needs a line of times; write it as 00:01:02.500 --> 00:01:05.000"),
        "times-subrip": (_NO_TIMES, "write it as 00:01:02,500 --> 00:01:05,000"),
        "times-webvtt": (_NO_TIMES, "write it as 00:01:02.500 --> 00:01:05.000"),
        "ends-first": ("the cue ends before it starts", "the later time goes behind the arrow"),
        "no-length": ("the cue has no length", "the later time goes behind the arrow"),
        "no-words": ("the cue has no words", "write them below the times"),
    },
}
