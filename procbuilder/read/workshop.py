"""The workshop file of a library: times, rates, dangers and words of its own, qualifications; see ``FORMAT.md``."""

import re
import tomllib
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from typing import Any

from procbuilder.model.activity import NEEDED, Activity, activity
from procbuilder.model.facts import Facts, Phrase, Value, facts
from procbuilder.model.heard import Act
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.signal import Signal
from procbuilder.model.workshop import Condition, OwnOperation, OwnWords, Qualification, Workshop
from procbuilder.model.workstudy import Allowance, Convention
from procbuilder.read.flaws import Flaw, flaw
from procbuilder.read.text import TextFile

CONVENTIONS = {"the working day": Convention.DAY, "the job time": Convention.JOB}
PAPERS = ("a4", "letter")
_ADDRESS = re.compile(r"https?://[^\s/?#]+(?:/[^\s?#]*)?")
_LONGEST_ADDRESS = 200
"""Signs, so that a phone can read it with the id of a step from a small code."""
_LINE = re.compile(r"line (\d+)")
_WORD = re.compile(r"[^\W_]")


def read_workshop(source: TextFile) -> tuple[Workshop, tuple[Problem, ...]]:
    """What the file says; a part that cannot be used is left out and is a problem."""
    try:
        data = tomllib.loads(source.text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        line = _LINE.search(str(error))
        told = facts(why=str(error))
        return Workshop(), (_problem(source, int(line[1]) if line else 1, "broken", told, source.name),)
    reader = _Reader(source, data)
    times, labour, printing = reader.part("times"), reader.part("labour"), reader.part("print")
    workshop = Workshop(
        conditions=tuple(reader.conditions()),
        allowance=reader.allowance(),
        allowance_origin=str(reader.part("allowance").get("from", "")),
        seen_by=str(times.get("seen_by", "")),
        kept=str(times.get("kept_for", "")),
        rate=reader.number("labour", labour.get("rate")),
        currency=str(labour.get("currency", "")),
        paper=reader.paper(printing.get("paper")),
        address=reader.address(printing.get("address")),
        dangers=tuple(reader.dangers()),
        qualifications=tuple(reader.qualifications()),
        words=OwnWords(tuple(reader.nicknames()), tuple(reader.objects()), tuple(reader.operations())),
    )
    return workshop, tuple(reader.problems)


class _Reader:
    """Takes the parts out of the file's data; ``problems`` tells what is wrong with them."""

    def __init__(self, source: TextFile, data: dict[str, Any]) -> None:
        self.source, self.data = source, data
        self.problems: list[Problem] = []

    def part(self, name: str) -> dict[str, Any]:
        found = self.data.get(name, {})
        return found if isinstance(found, dict) else {}

    def blocks(self, name: str) -> list[dict[str, Any]]:
        listed = self.data.get(name, [])
        return [entry for entry in listed if isinstance(entry, dict)] if isinstance(listed, list) else []

    def conditions(self) -> Iterator[Condition]:
        for entry in self.blocks("condition"):
            name, factor, origin = str(entry.get("name", "")), _decimal(entry.get("factor")), str(entry.get("from", ""))
            if not name or not origin or not factor:
                form = "name" if not name else "factor" if not factor else "source"
                self._wrong("condition", name, f"condition-{form}", name=_named(name))
                continue
            yield Condition(name, factor, str(entry.get("instead_of", "")), origin)

    def allowance(self) -> Allowance | None:
        part = self.part("allowance")
        share, convention = _decimal(part.get("share")), CONVENTIONS.get(str(part.get("of", "")))
        if not part:
            return None
        if share is None or share >= 1 or convention is None or not part.get("from"):
            self._wrong("allowance", "", "allowance")
            return None
        return Allowance(share, convention)

    def dangers(self) -> Iterator[Activity]:
        for block in self.blocks("danger"):
            name = str(block.get("name", ""))
            wrong = _wrong_in(block)
            if wrong:
                self._wrong("danger", name, wrong.form, name=_named(name), **dict(wrong.facts))
            else:
                yield activity(block)

    def qualifications(self) -> Iterator[Qualification]:
        for block in self.blocks("qualification"):
            name, holder, until = str(block.get("name", "")), str(block.get("holder", "")), block.get("valid_until")
            if name and holder and type(until) is date:
                yield Qualification(name, holder, until)
            else:
                self._wrong("qualification", name, "qualification", name=_named(name))

    def nicknames(self) -> Iterator[tuple[str, str]]:
        for said, name in self.part("nicknames").items():
            if isinstance(name, str) and name.strip():
                yield said, name
            else:
                self._wrong("nicknames", said, "nickname", name=said)

    def objects(self) -> Iterator[tuple[str, tuple[str, ...]]]:
        for group, things in self.part("objects").items():
            if _is_words(things):
                yield group, tuple(things)
            else:
                self._wrong("objects", group, "things", group=group)

    def operations(self) -> Iterator[OwnOperation]:
        listed = self.data.get("operation", [])
        for entry in listed if isinstance(listed, list) else []:
            lists = [entry.get(name, []) for name in ("verbs", "particles", "things")]
            act = str(entry.get("act", ""))
            if not lists[0] or not all(_is_words(one) for one in lists) or act not in tuple(Act):
                name = str(entry.get("print", ""))
                self._wrong("operation", name, "operation", name=_named(name), acts=tuple(map(str, Act)))
                continue
            verbs, particles, things = (tuple(one) for one in lists)
            yield OwnOperation(
                str(entry.get("print", "")) or str(verbs[0]).capitalize(), Act(act), verbs, particles, things,
                str(entry.get("state", "")), str(entry.get("opposite", "")), entry.get("scrap") is True,
            )  # fmt: skip

    def number(self, part: str, value: Any) -> Decimal | None:
        found = _decimal(value)
        if value is not None and found is None:
            self._wrong(part, str(value), "number", typed=str(value))
        return found

    def paper(self, value: Any) -> str:
        if value is None or value in PAPERS:
            return value or ""
        self._wrong("print", str(value), "paper", typed=str(value), papers=PAPERS)
        return ""

    def address(self, value: Any) -> str:
        """Ends with a slash."""
        if value is None:
            return ""
        if not isinstance(value, str) or not _ADDRESS.fullmatch(value):
            self._wrong("print", str(value), "address", typed=str(value))
            return ""
        if "@" in value.split("/")[2]:
            self._wrong("print", "address", "secret-address")
            return ""
        if len(value) > _LONGEST_ADDRESS:
            self._wrong("print", "address", "long-address", most=_LONGEST_ADDRESS)
            return ""
        return value if value.endswith("/") else f"{value}/"

    def _wrong(self, part: str, words: str, form: str, /, **values: Value) -> None:
        """``words`` tell in which line of the part it stands."""
        lines = self.source.lines
        named = [at for at, line in enumerate(lines, 1) if words and words in line]
        headed = [at for at, line in enumerate(lines, 1) if line.strip().strip("[]") == part]
        subject = f"{part}: {words}" if words else part
        self.problems.append(_problem(self.source, (named or headed or [1])[0], form, facts(**values), subject))


def _named(name: str) -> Value:
    return name or Phrase("without-name")


def _wrong_in(block: dict[str, Any]) -> Flaw | None:
    """What makes a block of a danger useless; None when nothing does."""
    lists = {key: block.get(key, ["x"]) for key in ("words", "told")}
    for key, value in lists.items():
        good = isinstance(value, list) and value and all(isinstance(word, str) and _WORD.search(word) for word in value)
        if not good:
            return flaw("danger-words", key=key)
    texts = [key for key in (*NEEDED, "signs", "who", "reserved", "hold", "begins") if key != "words"]
    if lacking := [key for key in NEEDED if not block.get(key)]:
        return flaw("danger-lacks", keys=tuple(lacking))
    if odd := [key for key in texts if not isinstance(block.get(key, ""), str)]:
        return flaw("danger-no-text", keys=tuple(odd))
    if unknown := sorted(set(block) - {*texts, "words", "told", "once", "vapour"}):
        return flaw("danger-unknown", keys=tuple(unknown))
    return None if block["signal"] in set(Signal) else flaw("danger-signal", signal=block["signal"])


def _is_words(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(one, str) for one in value)


def _decimal(value: Any) -> Decimal | None:
    """A number above 0, as written."""
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        return None
    number = Decimal(value)
    return number if number.is_finite() and number > 0 else None


def _problem(source: TextFile, line: int, form: str, given: Facts, subject: str) -> Problem:
    return Problem("workshop-file", Severity.ASK, Place(source.name, line), given, form, subject=subject)
