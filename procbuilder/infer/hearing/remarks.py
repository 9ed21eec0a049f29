"""What a sentence says besides the operation: a caution, a key point with its reason, a finding, a wait."""

import re
from dataclasses import dataclass

from procbuilder.infer.dictionary.numbers import number_at
from procbuilder.infer.dictionary.tokens import plain
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.infer.hearing.kinds import begins, cue, folded


@dataclass(frozen=True, slots=True)
class Remark:
    """The field that a sentence makes, with its parts by place."""

    field: str
    parts: tuple[str, ...]


def remark(words: str, book: Wordbook) -> Remark:
    """The field that fits a sentence best; a Note when it is none of the others."""
    text = words.strip()
    if found := _condition(text, book):
        return found
    if is_hazard(text, book):
        return _hazard(text, book)
    if cue(text, "finding", book):
        level = "unsafe" if cue(text, "unsafe", book) else "watch"
        return Remark("Finding", (_plain(text), level))
    if (minutes := _wait(text, book)) is not None:
        return Remark("Wait", (minutes, _plain(text)))
    point, reason = split_reason(text, book)
    if reason or cue(text, "key_point", book) or cue(text, "knack", book):
        return Remark("Key point", tuple(filter(None, (_plain(point), reason))))
    return Remark("Note", (_plain(text),))


def helper(words: str, book: Wordbook) -> Remark | None:
    """Two people, with what the second one is told to do, when a sentence asks for one."""
    return Remark("People", ("2", f"helper: {_plain(words)}")) if cue(words, "helper", book) else None


def is_hazard(words: str, book: Wordbook) -> bool:
    """True for a sentence that warns of something."""
    return bool(cue(words, "hazard", book) or begins(words, "hazard_start", book))


def split_reason(words: str, book: Wordbook) -> tuple[str, str]:
    """A sentence before and behind "because" and its like; no reason when it has none, or nothing before it."""
    low = words.casefold()
    for phrase in book.cues["reason"]:
        match = re.search(rf"(?<![\w'-]){re.escape(phrase)}(?![\w'-])", low)
        if match and len(_plain(words[: match.start()]).split()) > 1:
            keep = phrase if phrase.startswith(("so ", "or ")) else ""
            reason = words[match.start() if keep else match.end() :]
            return words[: match.start()].strip(" ,;"), reason.strip(" ,.;")
    return words, ""


def _condition(text: str, book: Wordbook) -> Remark | None:
    """``If the pump is seized, turn it by hand`` as condition and what to do."""
    starts = begins(text, "condition", book)
    if not starts or starts != "if":
        return None
    condition, comma, do = text.partition(",")
    if not comma or not do.strip():
        return None
    words = condition.strip()
    return Remark("If", (words[3:].strip() if words[:3].casefold() == "if " else words, _plain(do)))


def _hazard(text: str, book: Wordbook) -> Remark:
    """Hazard, consequence, how to avoid it, as far as they were said."""
    worse = cue(text, "hazard_worse", book) or begins(text, "hazard_start", book)
    signal = "Warning" if worse else "Caution"
    point, reason = split_reason(text, book)
    return Remark(signal, (_plain(point), reason) if reason else (_plain(point),))


def _wait(text: str, book: Wordbook) -> str | None:
    """Minutes of a sentence that tells to wait."""
    if not cue(text, "wait", book):
        return None
    tokens = plain(text)
    for at in range(len(tokens)):
        read = number_at(tokens, at, book)
        if read is not None and read[1] < len(tokens) and tokens[read[1]].low in ("minutes", "minute", "min", "mins"):
            return f"{read[0]:f}"
    return None


def is_about_time(words: str, book: Wordbook) -> bool:
    """True for "the whole job took me about forty minutes"."""
    text = folded(words)
    whole = any(f" {word} " in text for word in ("whole", "took", "start to finish", "job", "service", "thing"))
    return whole and bool(cue(words, "time", book))


def _plain(text: str) -> str:
    """Without the full stop and what only opens a sentence."""
    words = re.sub(r"\A(?:oh|and|so|well|right|okay|ok|now)[, ]+", "", text.strip(), flags=re.IGNORECASE)
    words = words.strip(" ,.;")
    return words[:1].upper() + words[1:]
