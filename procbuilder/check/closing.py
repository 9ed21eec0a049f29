"""Rules about closings that are doubtful: only assumed, forgotten, too late, or on a way that goes wrong."""

from collections.abc import Iterator

from rapidfuzz import fuzz, process

from procbuilder.check.balance import LIKE, counted
from procbuilder.check.case import Case
from procbuilder.model.facts import Blank, Line, Phrase, facts
from procbuilder.model.fields import Field
from procbuilder.model.ledger import Balance, Moment, Opening
from procbuilder.model.moves import LEFT_OPEN
from procbuilder.model.problem import Problem, Severity

_NAMED = 8
"""So many things are named in one sentence."""


def only_assumed_closed(case: Case) -> Iterator[Problem]:
    """Things that go back only because a step tells to refit in reverse: nobody sees how, in which order, how tight."""
    told: dict[Moment, list[str]] = {}
    for entry in case.ledger.having(Balance.ASSUMED):
        told.setdefault(entry.closed[-1], []).append(counted(entry, entry.out - entry.back))
    for moment, things in told.items():
        rest = len(things) - _NAMED
        given = facts(
            step=case.step(moment.number),
            things=tuple(things[:_NAMED] if rest > 0 else things),
            more=Phrase("and-more", facts(count=rest)) if rest > 0 else "",
        )
        yield Problem("only-assumed-closed", Severity.ASK, moment.place, given, danger=2, subject=f"#{moment.step}")


def forgotten_by_its_words(case: Case) -> Iterator[Problem]:
    """Something that a step without fields takes off in words, and that no later step speaks of again."""
    for taken in case.taken_off:
        once = any(case.called(taken.item, part.things) for part in case.lexicon.single_use)
        given = facts(
            item=taken.item,
            taken=taken.moment,
            command=taken.command,
            on=Line("On", (f"{taken.item}, new" if once else taken.item,)),
            off=Line("Off", (taken.item,)),
        )
        form = "once" if once else ""
        yield Problem("forgotten-by-its-words", Severity.ASK, taken.moment.place, given, form, 2, taken.item)


def put_on_after_its_part(case: Case) -> Iterator[Problem]:
    """Something that came off a part on the bench, and goes on only after that part is back on the item."""
    parts = {case.thing(e.item): e for e in case.ledger.entries if e.opening is Opening.OFF and e.opened and e.closed}
    for entry in case.ledger.entries:
        part = parts.get(case.thing(entry.of)) if entry.of else None
        if part is None or not entry.opened or not entry.closed:
            continue
        on_bench = part.opened[0].place < entry.opened[0].place < part.closed[-1].place
        if on_bench and part.closed[-1].place < entry.closed[-1].place:
            given = facts(
                item=entry.item,
                part=part.item,
                opened=entry.opened[0],
                closed=entry.closed[-1],
                back=part.closed[-1],
                before=case.step(part.closed[-1].number),
                of=entry.of,
            )
            place = entry.closed[-1].place
            yield Problem("put-on-after-its-part", Severity.ASK, place, given, danger=2, subject=entry.item)


def left_open_unclear(case: Case) -> Iterator[Problem]:
    """A Left open line without reason or name, or about something that is not open."""
    open_things = {case.thing(e.item) for e in case.ledger.having(Balance.OPEN, Balance.LEFT_OPEN, Balance.ASSUMED)}
    for entry in case.procedure.everywhere(LEFT_OPEN):
        if not entry.items:
            continue
        form, given = _lacking(entry), facts(item=entry.item.name)
        if form:
            parts = (entry.item.words, entry.part("reason") or Blank("reason"), entry.part("name") or Blank("name"))
            given += facts(line=Line(LEFT_OPEN, parts, place=entry.place, replaces=True))
        elif case.thing(entry.item.name) not in open_things:
            form = "not-open"
        if form:
            yield Problem("left-open-unclear", Severity.ASK, entry.place, given, form, 2, entry.item.name)


def _lacking(entry: Field) -> str:
    """Which of reason and name a line lacks; empty when it has both."""
    reason, name = entry.part("reason"), entry.part("name")
    return "" if reason and name else "no-name" if reason else "no-reason" if name else "neither"


def then_leads_nowhere(case: Case) -> Iterator[Problem]:
    """A branch that leads to a step that is not there."""
    ids = {step.id for step in case.procedure.steps}
    for number, step in case.numbered:
        for entry in step.all("Then"):
            where = entry.part("where")
            if entry.step_id not in ids:
                near = process.extractOne(where, sorted(ids), scorer=fuzz.WRatio, score_cutoff=LIKE)
                line = Line("Then", (f"#{near[0]}",), place=entry.place, replaces=True) if near else ""
                given = facts(step=case.step(number), where=where, line=line)
                form = "near" if near else ""
                yield Problem("then-leads-nowhere", Severity.STOP, entry.place, given, form, 4)


def then_never_ends(case: Case) -> Iterator[Problem]:
    """A step that leads back without any condition."""
    numbers = {step.id: number for number, step in case.numbered}
    for number, step in case.numbered:
        for entry in () if step.all("Only if") else step.all("Then"):
            target = numbers.get(entry.step_id, number + 1)
            if target <= number:
                given = facts(step=case.step(number), target=case.step(target))
                yield Problem("then-never-ends", Severity.STOP, entry.place, given, danger=4)
