"""Characters that nobody sees, but that turn, join or part what is read: they are shown as their code."""

import re
from collections.abc import Iterator

from procbuilder.model.facts import facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity

_UNSEEN = re.compile(
    "[\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\u3164\ufeff\uffa0"
    "\ufff9-\ufffb\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U000e0fff]"
    "|(?<=\\d)\u00ad|\u00ad(?=\\d)"
    "|(?<=[!-~])[\u200c\u200d]|[\u200c\u200d](?=[!-~])"
)
"""By Unicode: signs that turn the direction of writing, of no width, of tags, and fillers; a soft hyphen in a number;
joiners beside Latin letters, where they join nothing. In emoji and in scripts that need them, joiners stay."""
_CODE = re.compile(r"⟨U\+[0-9A-F]{4,6}⟩")
_MATTERS = re.compile(r"\s*[-*+#>|]|.*\d")


def shown(text: str) -> str:
    """The text with each such character as its code: ``⟨U+202E⟩``."""
    return _UNSEEN.sub(lambda match: f"⟨U+{ord(match[0]):04X}⟩", text)


def visible(text: str) -> str:
    """A shown text as people see it: without the codes."""
    return _CODE.sub("", text)


def unseen(lines: list[str], file: str, front: int) -> Iterator[Problem]:
    """A problem for each shown line that holds a code: a stop in fields, headings and numbers.

    ``front`` is the number of the last line of the front matter.
    """
    for number, line in enumerate(lines, 1):
        if codes := tuple(dict.fromkeys(code.strip("⟨⟩") for code in _CODE.findall(line))):
            place, given = Place(file, number), facts(codes=codes)
            if number <= front or _MATTERS.match(visible(line)):
                yield Problem("unseen-character", Severity.STOP, place, given, danger=2)
            else:
                yield Problem("unseen-character", Severity.ASK, place, given, danger=4, subject=", ".join(codes))
