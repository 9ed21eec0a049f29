"""Where a sentence turns aside: to a reason, a time, a condition, an outcome; and where it goes on."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.infer.hearing.clauses import Clauses


def subordinate_at(clauses: Clauses, at: int) -> bool:
    """True when what follows is no operation of its own: a reason, a time, a condition."""
    low = clauses.low(at)
    if low in ("if", "unless"):
        return True
    if low == "that" or low == "which":
        return _is_relative(clauses, at)
    if low == "so":
        return _is_purpose(clauses, at)
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
    return False


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


def is_question(clauses: Clauses) -> bool:
    """ "Did you put the washer in?", "is the cover on?": it asks; "would you undo it?" tells what to do."""
    first = next((at for at in range(len(clauses.tokens)) if not clauses.has("openers", at)), 0)
    return clauses.has("asks", first) and clauses.tokens[-1].low == "?"


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
        return clauses.has("by_then", at + 2) and not has_done
    return not clauses.verb_at(at + 1)


def _pairs(book: Wordbook) -> frozenset[str]:
    return frozenset(words for words in book.grammar["subordinate"] if " " in words)
