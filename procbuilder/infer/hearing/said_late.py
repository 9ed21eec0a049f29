"""Things said too late: the step to which "before you take the clips out, …" belongs."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import zip_longest

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.infer.hearing.kinds import cue, folded

_MOVES = 0.01
"""By so much a step that takes off or puts back something goes before others."""
_REMARK = 0.6
"""What a word counts that stands in a remark of a step, and not in its command."""
_WORD = re.compile(r"[^\W\d_][\w-]*")
_PIECES = re.compile(r",|\b(?:you|we|i)(?='ve got| have | need | want | must | should )", re.IGNORECASE)
"""Where the clause that tells where it belongs ends."""


def best_step(words: str, steps: Sequence[Iterable[str]], book: Wordbook, moves: Sequence[bool] = ()) -> int | None:
    """Place of the step whose sentences share most with a sentence; None when none shares anything.

    The first sentence of a step is its command, and counts more than its remarks. A word counts the more, the fewer
    steps have it. Of equal ones it is one that ``moves`` something, and the first, since what was forgotten is needed
    before the work begins.
    """
    empty = frozenset(book.cues["empty"])
    wanted = _content(words) - empty
    told = [[_content(sentence) for sentence in step] for step in steps]
    contents = [frozenset().union(*each) for each in told]
    commands = [each[0] if each else frozenset() for each in told]
    common = Counter(word for content in contents for word in content if word in wanted)
    focus = next((found for found in _focus(words, book) if not (found - empty).isdisjoint(common)), frozenset())
    weights = {word: _weight(word, book) * (6 if word in focus else 1) / max(common[word], 1) for word in wanted}
    scores = [
        sum(weights[word] * (1 if word in command else _REMARK) for word in wanted & content)
        for content, command in zip(contents, commands, strict=True)
    ]
    scores = [score and score + _MOVES * moved for score, moved in zip_longest(scores, moves, fillvalue=False)]
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


def _focus(words: str, book: Wordbook) -> Iterator[frozenset[str]]:
    """What the words name that say where it belongs: behind "before" and "going back to", then in their whole piece."""
    found = [(piece, said) for piece in _PIECES.split(words) if (said := cue(piece, "belongs", book))]
    yield frozenset().union(*(_content(piece.casefold().partition(said)[2]) for piece, said in found))
    yield frozenset().union(*(_content(piece) for piece, _ in found))


def _weight(word: str, book: Wordbook) -> float:
    """Words of things and of work count double; what any work is told with counts little."""
    if word in book.nouns:
        return 2.0
    return 0.3 if word in book.idle else 2.0 if word in book.forms else 1.0


@lru_cache(maxsize=4096)
def _content(words: str) -> frozenset[str]:
    return frozenset(singular(word) for word in _WORD.findall(words.casefold()))
