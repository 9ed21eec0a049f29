"""Where commands begin and end, and to what they do it."""

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from procbuilder.model.tokens import tokens
from procbuilder.model.words import Words

_PIECE = re.compile(r"\w+|[,;:.–—]")
_STOPS = frozenset({"", ",", ";", ":", ".", "–", "—"})
_CLAUSE_END = re.compile(r"[,;:.–—]")


def done_to(sentence: str, verbs: Iterable[str], words: Words) -> str | None:
    """What one of the verbs is told to be done to, as it stands there; None when none of them is a command.

    A command begins at the start, behind "and", "then", "to" or a comma, or behind "gradually" and its like. So "Set
    the torque wrench" and "Fit the check valve" hold no "torque" and no "check". Where verbs stand last it ends with
    one: "Muttern lösen und Rad abnehmen".
    """
    rests = (_before(sentence, verb, words) if words.verb_last else _behind(sentence, verb, words) for verb in verbs)
    return next((rest for rest in rests if rest is not None), None)


def _behind(sentence: str, verb: str, words: Words) -> str | None:
    loose = "[- ]".join(re.escape(part) for part in re.split("[- ]", verb))
    for match in re.finditer(rf"(?<!\w){loose}(?!\w)", sentence, re.IGNORECASE):
        before = ["", *_PIECE.findall(sentence[: match.start()].casefold())][-1]
        how = bool(words.command.manner) and before.endswith(words.command.manner)
        if before in _STOPS or before in words.command.begins_behind or how:
            return sentence[match.end() :].strip(" .")
    return None


def _before(sentence: str, verb: str, words: Words) -> str | None:
    for clause in _clauses(sentence, words):
        rest = _without_verb(clause, frozenset({words.folded(verb)}), words)
        if rest is not None:
            return rest
    return None


def without_verb(clause: str, verbs: Iterable[str], words: Words) -> str | None:
    """What is left of a clause that is a command with one of the verbs, where they stand last; else None."""
    return _without_verb(clause, _keys(frozenset(verbs), words), words)


def _without_verb(clause: str, verbs: frozenset[str], words: Words) -> str | None:
    """What is left of a clause that ends or begins with a verb, or does both: "Zieh den Stecker ab"; else None."""
    read = tokens(clause, words)
    if not read:
        return None
    first, last = read[0], read[-1]
    if not verbs.isdisjoint(last.names):
        apart = words.written(clause[last.start : last.end]) in words.verbs.particles
        return clause[first.end if apart else 0 : last.start].strip(" .")
    return clause[first.end :].strip(" .") if not verbs.isdisjoint(first.names) else None


def _clauses(sentence: str, words: Words) -> Iterator[str]:
    for part in _CLAUSE_END.split(sentence):
        yield from _joint(words).split(part) if words.command.joints else [part]


def split_commands(sentence: str, verbs: frozenset[str], words: Words) -> list[str]:
    """The commands of a sentence, each with its verb; empty when it holds none that is known.

    Verbs that share one thing, as in "clean and dry the hub", are one command.
    """
    if not verbs or not words.command.joints:
        return []
    cuts = [0]
    for joint in _joint(words).finditer(sentence):
        before, rest = sentence[cuts[-1] : joint.start()], sentence[joint.end() :]
        if _parts(before, rest, joint[0], verbs, words):
            cuts += [joint.start(), joint.end()]
    cuts.append(len(sentence))
    pieces = [sentence[start:end] for start, end in zip(cuts[::2], cuts[1::2], strict=True)]
    if len(pieces) > 1 and len(pieces[0].split()) == 1:
        pieces[:2] = [sentence[: cuts[3]]]
    commands = [piece for piece in pieces if has_verb(piece, verbs, words)]
    return [command[:1].upper() + command[1:] for command in commands]


def first_command(text: str, verbs: frozenset[str], words: Words) -> str:
    """A text up to where its second command begins."""
    joints = _joint(words).finditer(text) if words.command.joints else ()
    ends = (joint.start() for joint in joints if _parts(text[: joint.start()], text[joint.end() :], "", verbs, words))
    return text[: next(ends, len(text))]


def has_verb(piece: str, verbs: frozenset[str], words: Words) -> bool:
    """True when a piece of a sentence is a command with one of the verbs."""
    if not words.verb_last:
        return first_word(piece) in verbs
    told = first_word(piece) not in words.command.no_command
    return told and _without_verb(piece, _keys(verbs, words), words) is not None


def first_word(text: str) -> str:
    """In small letters, without a comma behind it."""
    return text.casefold().partition(" ")[0].strip(",;")


def _parts(before: str, rest: str, joint: str, verbs: frozenset[str], words: Words) -> bool:
    """True when a second command begins behind a joint."""
    if words.verb_last:
        piece = _joint(words).split(rest)[0]
        both = has_verb(before, verbs, words) and has_verb(piece, verbs, words)
        return both and (len(piece.split()) > 1 or not _is_of_one_kind(before, piece, words))
    first, *others = rest.casefold().split() or [""]
    if first.strip(",;") not in verbs:
        return False
    follows = others[0].strip(",;") if others else ""
    sure = ";" in joint or not words.command.surely.isdisjoint(joint.casefold().split())
    sure = sure or first in words.command.never_nouns
    return sure or follows in words.command.takes_object or follows[:1].isdigit()


def _is_of_one_kind(one: str, other: str, words: Words) -> bool:
    """True for the verbs of "reinigen und trocknen", which share their thing; not for "aufschrauben und anziehen"."""
    return any(
        all(without_verb(piece, kind, words) is not None for piece in (one, other)) for kind in words.verbs.kinds
    )


@lru_cache(maxsize=100)
def _keys(verbs: frozenset[str], words: Words) -> frozenset[str]:
    return frozenset(map(words.folded, verbs))


@lru_cache(maxsize=20)
def _joint(words: Words) -> re.Pattern[str]:
    said = "|".join(re.escape(joint).replace(r"\ ", r"\s+") for joint in words.command.joints)
    return re.compile(rf"\s*;\s*(?:(?:{said})\s+)*|,?\s+(?:{said})\s+|,\s*(?:(?:{said})\s+)?", re.IGNORECASE)
