"""Things said too late: the step to which "before you take the clips out, …" belongs."""

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache

from procbuilder.infer.cues import cue, folded
from procbuilder.infer.wordbook import Wordbook
from procbuilder.model.words import singular

_WORD = re.compile(r"[^\W\d_][\w-]*")
_PIECES = re.compile(r",|\b(?:you|we|i)(?='ve got| have | need | want | must | should )", re.IGNORECASE)
"""Where the clause that tells where it belongs ends."""


def best_step(words: str, steps: Sequence[Iterable[str]], book: Wordbook) -> int | None:
    """Place of the step whose sentences share most with a sentence; None when none shares anything.

    A word counts the more, the fewer steps have it. Of equal ones it is the first, since what was
    forgotten is needed before the work begins.
    """
    empty = frozenset(book.cues["empty"])
    wanted = _content(words) - empty
    contents = [frozenset().union(*(_content(sentence) for sentence in step)) for step in steps]
    common = Counter(word for content in contents for word in content if word in wanted)
    focus = _focus(words, book)
    weights = {word: _weight(word, book) * (6 if word in focus else 1) / max(common[word], 1) for word in wanted}
    scores = [sum(weights[word] for word in wanted & content) for content in contents]
    top = max(scores, default=0.0)
    return scores.index(top) if top > 0 else None


def is_too_late(words: str, book: Wordbook) -> bool:
    """True for a sentence that owns up to being late: "I ought to have told you, before you take the clips out"."""
    return bool(cue(words, "out_of_order", book)) or bool(_owning_up(book).search(folded(words)))


@lru_cache(maxsize=4)
def _owning_up(book: Wordbook) -> re.Pattern[str]:
    first, then = ("|".join(map(re.escape, book.cues[kind])) for kind in ("owned_up", "telling"))
    return re.compile(rf" (?:{first}) (?:(?:to|you|have|really|probably|i) ){{0,2}}(?:{then}) ")


def is_at_start(words: str, book: Wordbook) -> bool:
    """True for "before you start, by the way", but not for "before you start pulling things"."""
    found = cue(words, "at_start", book)
    behind = words.casefold().partition(found)[2].split()[:1] if found else []
    return bool(found) and not (behind and behind[0].endswith("ing"))


def _focus(words: str, book: Wordbook) -> frozenset[str]:
    """What the clause names that says where it belongs: "before you slide the pins out", "going back to the pads"."""
    found = [(piece, cue(piece, "belongs", book)) for piece in _PIECES.split(words)]
    return frozenset().union(*(_content(piece.casefold().partition(said)[2]) for piece, said in found if said))


def _weight(word: str, book: Wordbook) -> float:
    """Words of things and of work count double; what any work is told with counts little."""
    if word in book.nouns:
        return 2.0
    return 0.3 if word in book.idle else 2.0 if word in book.forms else 1.0


@lru_cache(maxsize=4096)
def _content(words: str) -> frozenset[str]:
    return frozenset(singular(word) for word in _WORD.findall(words.casefold()))
