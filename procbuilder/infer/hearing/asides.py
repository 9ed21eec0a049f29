"""Where a sentence turns aside: to a reason, a time, a condition, an outcome; and where it goes on."""

from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.inflect import Form
from procbuilder.infer.hearing.nouns import read_thing
from procbuilder.infer.hearing.outcome import read_outcome
from procbuilder.infer.hearing.tokens import SIGNS
from procbuilder.infer.hearing.wordbook import Wordbook

_BY_THEN = (
    "can",
    "could",
    "do",
    "does",
    "don't",
    "will",
    "won't",
    "'ll",
    "'d",
    "would",
    "know",
    "get",
    "see",
    "'re",
    "'ve",
    "n't",
)
"""Behind "so you": what is then possible, or what will come of it."""


def subordinate_at(clauses: Clauses, at: int) -> bool:
    """True when what follows is no operation of its own: a reason, a time, a condition."""
    low = clauses.low(at)
    if low in ("if", "unless"):
        return True
    if low == "that" or low == "which":
        return _is_relative(clauses, at)
    if low == "so":
        return not clauses.tells(at + 1) and _is_purpose(clauses, at)
    if low in ("as", "than") and clauses.low(at + 1) in ("a", "the"):
        return low == "as"
    return clauses.has("subordinate", at) or (f"{low} {clauses.low(at + 1)}" in _pairs(clauses.book))


def is_outcome(clauses: Clauses, at: int) -> bool:
    """ "Any more and you'll strip it", "or the belt comes off": what would come of it."""
    low, will = clauses.low(at), clauses.low(at + 2) in ("'ll", "will")
    if at > clauses.clause and low in ("and", "or") and will:
        return True
    if low == "or":
        return _tells_what_happens(clauses, at + 1)
    return low == "and" and _is_neglect(clauses) and _tells_what_happens(clauses, at + 1)


def _tells_what_happens(clauses: Clauses, at: int) -> bool:
    """ "The belt comes off", "you're measuring muck": somebody or something with its verb, up to the next sign."""
    doer = clauses.low(at) in ("you", "it", "they", "he", "she", "that")
    if not (doer or clauses.has("articles", at)):
        return False
    happens = at + 1
    while clauses.low(happens) not in SIGNS:
        if clauses.has("be", happens) or clauses.low(happens) in ("'ll", "will", "can", "could", "might"):
            return True
        forms = clauses.book.forms.get(clauses.low(happens), ())
        known = any(form is Form.S for _, form in forms) or clauses.low(happens) in clauses.book.idle
        way = happens + 1
        while clauses.has("adverbs", way):
            way += 1
        if (known or clauses.low(happens).endswith("s")) and clauses.has("particles", way):
            return True
        if doer and known:
            return True
        happens += 1
    return False


def _is_neglect(clauses: Clauses) -> bool:
    """ "Leave it loose", "pull too hard": what nobody should do."""
    return False


_ASKS = (
    "is",
    "are",
    "was",
    "were",
    "did",
    "does",
    "has",
    "who",
    "what",
    "which",
    "why",
    "how",
    "where",
    "when",
    "whose",
)
_ALWAYS_ASKS = ("is", "are", "was", "were")


def is_question(clauses: Clauses) -> bool:
    """ "Is the cover on?", "which ring do you push?": it asks; "would you undo it?" tells what to do."""
    return False


def is_warning(clauses: Clauses) -> bool:
    """ "You crack that window and you're buying a new one": what comes of it if somebody does."""
    return False


def is_resumed(clauses: Clauses, at: int) -> bool:
    """ "Before you drop the box you have to undo the rod": the clause that tells what to do begins."""
    if clauses.low(at) not in ("i", "you", "we") or at <= clauses.clause + 1:
        return False
    behind = at + 1
    while clauses.low(behind) in ("'ve", "'m", "'re", "'ll", "am", "are"):
        behind += 1
    if clauses.low(at + 1) in ("'ll", "'m") and any(clauses.has("doers", each) for each in range(clauses.clause, at)):
        return True
    if clauses.low(at - 1) in (
        "off",
        "out",
        "on",
        "in",
        "there",
        "here",
        "done",
        "open",
        "up",
        "down",
        "apart",
        "loose",
    ):
        return True
    return clauses.low(behind) in ("have", "need", "want", "must", "should", "got", "going", "gonna", "gotta")


def is_told_of(clauses: Clauses, at: int) -> bool:
    """ "The bolts you took out", "the clip I undid earlier": what was done to a thing, told to say which one it is."""
    return False


def _is_relative(clauses: Clauses, at: int) -> bool:
    """``that`` directly behind a thing."""
    behind = at > clauses.clause and clauses.subject is not None and clauses.subject.end == at
    if clauses.low(at) == "which" and clauses.low(at - 1) == "," and clauses.low(at + 1) in ("i", "we"):
        return False
    return behind or (clauses.low(at) == "which" and at > clauses.clause)


def _is_purpose(clauses: Clauses, at: int) -> bool:
    """``so it can't start``, but not ``so, next``, ``so I'm going to`` and ``so you rock it``."""
    if at == 0 or clauses.has("openers", at - 1):
        return False
    if clauses.low(at + 1) in ("use", "don't", "let's") or clauses.has("openers", at + 1):
        return False
    if clauses.low(at + 1) in ("i", "we", "you"):
        has_done = clauses.low(at + 1) != "you" and clauses.low(at + 2) == "'ve"
        return clauses.low(at + 2) in _BY_THEN and not has_done
    if _is_result(clauses, at + 1):
        return False
    return not clauses.verb_at(at + 1)


def _is_result(clauses: Clauses, at: int) -> bool:
    """ "So the caliper's off": what has come of it, told to its end."""
    return False


def _pairs(book: Wordbook) -> frozenset[str]:
    return frozenset(words for words in book.grammar["subordinate"] if " " in words)
