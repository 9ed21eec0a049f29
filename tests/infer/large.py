"""Large and hostile inputs, as no technician types them: of any size, so that growth can be seen."""

from collections.abc import Callable
from fractions import Fraction

from procbuilder.infer.dictionary.tokens import cut
from procbuilder.infer.dictionary.wordbook import wordbook
from procbuilder.infer.hearing.kinds import folded, is_talk
from procbuilder.infer.hearing.remarks import split_reason
from procbuilder.infer.hearing.sentences import sentences
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration
from tests.infer.narrated import NAMES, read

HOSTILE = {
    "one word": "a",
    "apostrophes": "'s",
    "hyphens": "a-",
    "full stops": ".",
    "spaces": " ",
    "articles": "the ",
    "parts of parts": "one of ",
    "numbers": "twenty-one ",
    "commas": "the bolt, ",
    "joined": "bolt and ",
    "commands": "take the cover off ",
    "reasons": "so that ",
}
"""What is repeated without an end."""


def repeated(words: str, size: int) -> str:
    """So many characters of the same words, and a letter at the end."""
    return (words * (size // len(words) + 1))[:size] + "a"


def said_at_once(text: str) -> Narration:
    """A narration of one cue."""
    return Narration("strip", (Cue(Place("t.srt", 1), Fraction(0), Fraction(60), text),))


def told_for(seconds: int) -> Narration:
    """The narrations of the tests, one after another and again, for at least so long."""
    cues: list[Cue] = []
    told = [read(name).narration.cues for name in NAMES]
    begin = Fraction(0)
    while True:
        for each in told:
            if begin >= seconds:
                return Narration("strip", tuple(cues))
            cues += (Cue(cue.place, cue.start + begin, cue.end + begin, cue.text) for cue in each)
            begin = cues[-1].end + 5


def steps_of(half: int, *, branches: bool, fields: bool) -> str:
    """Twice so many steps: each takes off or fits a cover of its own, every second one in a branch if wanted."""
    parts = ["## Work\n"]
    for verb, moves in (
        ("Take off", "- Off: cover {n} | by: 2 x M8 bolt {n}, 13 mm | tray: {n}\n- Slacken: nut {n}\n"),
        ("Fit", "- On: cover {n}\n- Torque: nut {n} | 20 N·m | from: D1\n"),
    ):
        for n in range(half):
            branch = f"- Only if: variant {n}\n" if branches and n % 2 else ""
            parts.append(f"### {verb} the cover number {n}\n\n{moves.format(n=n) if fields else ''}{branch}\n")
    return "".join(parts)


BY_EXPRESSIONS: dict[str, Callable[[str], object]] = {
    "cut": lambda text: cut(text, {}),
    "folded": folded,
    "talk": lambda text: is_talk(text, wordbook()),
    "reasons": lambda text: split_reason(text, wordbook()),
    "sentences": lambda text: sentences(said_at_once(text)),
}
"""What reads a text with regular expressions."""
