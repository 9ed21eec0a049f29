"""Rules about closings that are doubtful: only assumed, forgotten, too late, or on a way that goes wrong."""

from collections.abc import Iterator

from rapidfuzz import fuzz, process

from procbuilder.check.balance import LIKE, counted, when
from procbuilder.check.case import Case
from procbuilder.model.ledger import Balance, Moment, Opening
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.words import called, thing

_NAMED = 8
"""So many things are named in one sentence."""


def only_assumed_closed(case: Case) -> Iterator[Problem]:
    """Things that go back only because a step tells to refit in reverse: nobody sees how, in which order, how tight."""
    told: dict[Moment, list[str]] = {}
    for entry in case.ledger.having(Balance.ASSUMED):
        told.setdefault(entry.closed[-1], []).append(counted(entry, entry.out - entry.back))
    for moment, things in told.items():
        yield worded(
            Severity.ASK,
            moment.place,
            f"step {moment.number} tells to refit in reverse: it is only assumed that this closes {_some(things)}",
            "write each as a step of its own; procbuilder new --refit proposes them",
            "only-assumed-closed",
            2,
        )


def forgotten_by_its_words(case: Case) -> Iterator[Problem]:
    """Something that a step without fields takes off in words, and that no later step speaks of again."""
    for taken in case.taken_off:
        once = any(called(taken.item, part.things) for part in case.lexicon.single_use)
        new = f', a new one: "- On: {taken.item}, new"' if once else f': "- On: {taken.item}"'
        yield worded(
            Severity.ASK,
            taken.moment.place,
            f'{taken.item} comes off {when(taken.moment)} by the words "{taken.command}", '
            "and no later step speaks of it",
            f'add the step that puts it back{new}, and "- Off: {taken.item}" here',
            "forgotten-by-its-words",
            2,
        )


def put_on_after_its_part(case: Case) -> Iterator[Problem]:
    """Something that came off a part on the bench, and goes on only after that part is back on the item."""
    parts = {thing(e.item): e for e in case.ledger.entries if e.opening is Opening.OFF and e.opened and e.closed}
    for entry in case.ledger.entries:
        part = parts.get(thing(entry.of)) if entry.of else None
        if part is None or not entry.opened or not entry.closed:
            continue
        on_bench = part.opened[0].place < entry.opened[0].place < part.closed[-1].place
        if on_bench and part.closed[-1].place < entry.closed[-1].place:
            yield worded(
                Severity.ASK,
                entry.closed[-1].place,
                f"{entry.item} came off {part.item} on the bench {when(entry.opened[0])} and goes on "
                f"{when(entry.closed[-1])}, after {part.item} went back on {when(part.closed[-1])}",
                f'move this step before step {part.closed[-1].number}, or take "of: {entry.of}" away if it can wait',
                "put-on-after-its-part",
                2,
            )


def left_open_unclear(case: Case) -> Iterator[Problem]:
    """A Left open line without reason or name, or about something that is not open."""
    open_things = {thing(e.item) for e in case.ledger.having(Balance.OPEN, Balance.LEFT_OPEN, Balance.ASSUMED)}
    for entry in case.procedure.everywhere("Left open"):
        if not entry.items:
            continue
        missing = [part for part in ("reason", "name") if not entry.part(part)]
        if missing:
            what = f"{entry.item.name} is left open without a {' and a '.join(missing)}"
            instead = f'write "- Left open: {entry.item.words} | reason | name", such as "bracket broken, owner told"'
            yield worded(Severity.ASK, entry.place, what, instead, "left-open-unclear", 2)
        elif thing(entry.item.name) not in open_things:
            what = f"{entry.item.name} is said to be left open, but nothing of that name is open"
            yield worded(
                Severity.ASK, entry.place, what, "take the line out, or write the name as typed at its opening",
                "left-open-unclear", 2,
            )  # fmt: skip


def then_leads_nowhere(case: Case) -> Iterator[Problem]:
    """A branch that leads to a step that is not there."""
    ids = {step.id for step in case.procedure.steps}
    for number, step in case.numbered:
        for entry in step.all("Then"):
            where = entry.part("where")
            if where.removeprefix("#") not in ids:
                near = process.extractOne(where, sorted(ids), scorer=fuzz.WRatio, score_cutoff=LIKE)
                guess = f'did you mean "- Then: #{near[0]}"?' if near else 'write "- Then: #id" with the id of a step'
                what = f"step {number} leads on to {where}, and there is no such step"
                yield worded(Severity.STOP, entry.place, what, guess, "then-leads-nowhere", 4)


def then_never_ends(case: Case) -> Iterator[Problem]:
    """A step that leads back without any condition."""
    numbers = {step.id: number for number, step in case.numbered}
    for number, step in case.numbered:
        for entry in () if step.all("Only if") else step.all("Then"):
            target = numbers.get(entry.part("where").removeprefix("#"), number + 1)
            if target <= number:
                yield worded(
                    Severity.STOP,
                    entry.place,
                    f"step {number} leads back to step {target} every time, so the work never ends",
                    'say when it does: add "- Only if: " with what must be so, such as "it still rocks"',
                    "then-never-ends",
                    4,
                )


def _some(things: list[str]) -> str:
    """The first few of many."""
    rest = len(things) - _NAMED
    return ", ".join(things) if rest <= 0 else f"{', '.join(things[:_NAMED])} and {rest} more"
