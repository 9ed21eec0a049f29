"""The workshop file of a library: times, rates, dangers and words of its own, qualifications; see ``FORMAT.md``."""

import re
import tomllib
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from typing import Any

from procbuilder.model.activity import NEEDED, Activity, activity
from procbuilder.model.heard import Act
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.signal import Signal
from procbuilder.model.workshop import Condition, OwnOperation, OwnWords, Qualification, Workshop
from procbuilder.model.workstudy import Allowance, Convention
from procbuilder.read.text import TextFile

CONVENTIONS = {"the working day": Convention.DAY, "the job time": Convention.JOB}
PAPERS = ("a4", "letter")
_ADDRESS = re.compile(r"https?://[^\s/?#]+(?:/[^\s?#]*)?")
_LINE = re.compile(r"line (\d+)")
_WORD = re.compile(r"[^\W_]")


def read_workshop(source: TextFile) -> tuple[Workshop, tuple[Problem, ...]]:
    """What the file says; a part that cannot be used is left out and is a problem."""
    try:
        data = tomllib.loads(source.text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        line = _LINE.search(str(error))
        what = f"the file cannot be read ({error})"
        return Workshop(), (_problem(source, int(line[1]) if line else 1, what, "correct that line"),)
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
                what = f"the condition {name or 'without a name'} has no {_lacking(name, factor)}"
                instead = 'write name, factor and from: factor = 0.8, from = "38 own job cards, 2025"'
                self._wrong("condition", name, what, instead)
                continue
            yield Condition(name, factor, str(entry.get("instead_of", "")), origin)

    def allowance(self) -> Allowance | None:
        part = self.part("allowance")
        share, convention = _decimal(part.get("share")), CONVENTIONS.get(str(part.get("of", "")))
        if not part:
            return None
        if share is None or share >= 1 or convention is None or not part.get("from"):
            what = "the allowance is not a share below 1 of the working day or of the job time, with its source"
            instead = 'write share = 0.12, of = "the working day", from = "agreed with the staff, 2025"'
            self._wrong("allowance", "", what, instead)
            return None
        return Allowance(share, convention)

    def dangers(self) -> Iterator[Activity]:
        for block in self.blocks("danger"):
            name = str(block.get("name", ""))
            wrong = _wrong_in(block)
            if wrong:
                instead = "write name, words, signal, hazard, consequence and avoid, as the program's own list does"
                self._wrong("danger", name, f"the danger {name or 'without a name'} {wrong}", instead)
            else:
                yield activity(block)

    def qualifications(self) -> Iterator[Qualification]:
        for block in self.blocks("qualification"):
            name, holder, until = str(block.get("name", "")), str(block.get("holder", "")), block.get("valid_until")
            if name and holder and type(until) is date:
                yield Qualification(name, holder, until)
            else:
                what = f"the qualification {name or 'without a name'} lacks its name, its holder or its last day"
                self._wrong("qualification", name, what, "write name, holder and valid_until = 2027-03-31")

    def nicknames(self) -> Iterator[tuple[str, str]]:
        for said, name in self.part("nicknames").items():
            if isinstance(name, str) and name.strip():
                yield said, name
            else:
                self._wrong(
                    "nicknames", said, f"the nickname {said} stands for no name", f'write "{said}" = "its name"'
                )

    def objects(self) -> Iterator[tuple[str, tuple[str, ...]]]:
        for group, things in self.part("objects").items():
            if _is_words(things):
                yield group, tuple(things)
            else:
                what = f"the things of {group} are no list of words"
                self._wrong("objects", group, what, f'write {group} = ["hub hook", "drum key"]')

    def operations(self) -> Iterator[OwnOperation]:
        listed = self.data.get("operation", [])
        for entry in listed if isinstance(listed, list) else []:
            lists = [entry.get(name, []) for name in ("verbs", "particles", "things")]
            act = str(entry.get("act", ""))
            if not lists[0] or not all(_is_words(one) for one in lists) or act not in tuple(Act):
                what = f"the operation {entry.get('print', 'without a name')} has no verbs, or no act that is known"
                instead = f'write verbs = ["whizz"] and act as one of {", ".join(Act)}'
                self._wrong("operation", str(entry.get("print", "")), what, instead)
                continue
            verbs, particles, things = (tuple(one) for one in lists)
            yield OwnOperation(
                str(entry.get("print", "")) or str(verbs[0]).capitalize(), Act(act), verbs, particles, things,
                str(entry.get("state", "")), str(entry.get("opposite", "")), entry.get("scrap") is True,
            )  # fmt: skip

    def number(self, part: str, value: Any) -> Decimal | None:
        found = _decimal(value)
        if value is not None and found is None:
            self._wrong(part, str(value), f"{value} is no number above 0", "write a number such as 62.00")
        return found

    def paper(self, value: Any) -> str:
        if value is None or value in PAPERS:
            return value or ""
        self._wrong("print", str(value), f"{value} is no paper known here", f"write {' or '.join(PAPERS)}")
        return ""

    def address(self, value: Any) -> str:
        """Ends with a slash."""
        if value is None:
            return ""
        if not isinstance(value, str) or not _ADDRESS.fullmatch(value):
            what = f"{value} is no address that a phone can open"
            self._wrong(
                "print", str(value), what, 'write the address of the library, such as "https://shop.example/jobs/"'
            )
            return ""
        return value if value.endswith("/") else f"{value}/"

    def _wrong(self, part: str, words: str, what: str, instead: str) -> None:
        lines = self.source.lines
        named = [at for at, line in enumerate(lines, 1) if words and words in line]
        headed = [at for at, line in enumerate(lines, 1) if line.strip().strip("[]") == part]
        self.problems.append(_problem(self.source, (named or headed or [1])[0], what, instead))


def _lacking(name: str, factor: Decimal | None) -> str:
    return "name" if not name else "factor above 0" if not factor else "source (from)"


def _wrong_in(block: dict[str, Any]) -> str:
    """What makes a block of a danger useless; empty when nothing does."""
    lists = {key: block.get(key, ["x"]) for key in ("words", "told")}
    for key, value in lists.items():
        good = isinstance(value, list) and value and all(isinstance(word, str) and _WORD.search(word) for word in value)
        if not good:
            return f"has no list of words under {key}"
    texts = [key for key in (*NEEDED, "signs", "who", "reserved", "hold", "begins") if key != "words"]
    if lacking := [key for key in NEEDED if not block.get(key)]:
        return f"has no {', '.join(lacking)}"
    if odd := [key for key in texts if not isinstance(block.get(key, ""), str)]:
        return f"has under {', '.join(odd)} something else than text in quotes"
    if unknown := sorted(set(block) - {*texts, "words", "told", "once", "vapour"}):
        return f"has an unknown key: {', '.join(unknown)}"
    return "" if block["signal"] in set(Signal) else f"has the signal {block['signal']}, which is none of the four"


def _is_words(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(one, str) for one in value)


def _decimal(value: Any) -> Decimal | None:
    """A number above 0, as written."""
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        return None
    number = Decimal(value)
    return number if number.is_finite() and number > 0 else None


def _problem(source: TextFile, line: int, what: str, instead: str) -> Problem:
    return worded(Severity.ASK, Place(source.name, line), what, instead, "workshop-file", 5)
