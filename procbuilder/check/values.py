"""Rules about torques that do not agree with each other, with the thread, or with the wrenches. None gives a value."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from procbuilder.check.case import Case
from procbuilder.check.torque import severity
from procbuilder.model.facts import Line, Phrase, facts
from procbuilder.model.fastener import NamedThread, is_plausible, is_slip
from procbuilder.model.problem import Problem, Severity, answer, answerable
from procbuilder.model.torque import Torque
from procbuilder.model.worked import HeardTorque, TorqueRow

_SAME = Fraction(3, 100)
"""Values nearer than this are the same, rounded from one unit to the other."""


def torques_contradict(case: Case) -> Iterator[Problem]:
    """The same thing with two different torques; other stages and other conditions are no contradiction."""
    first: dict[tuple[str, int, str], TorqueRow] = {}
    for row in case.torques:
        if not row.value.newton_metres:
            continue
        key = (_name(row, case), row.value.stage, case.thing(f"{row.when} {row.of}") + _branch(row, case))
        before = first.setdefault(key, row)
        if before is not row and not _agree(before.value, row.value):
            given = facts(
                item=_name(row, case),
                value=row.value.text,
                step=case.step(row.number),
                other=before.value.text,
                before=case.step(before.number),
                there=before.place,
            )
            grave = severity(row, case)
            subject = answerable(grave, _name(row, case))
            yield Problem("torques-contradict", grave, row.place, given, danger=2, subject=subject)


def said_and_typed_differ(case: Case) -> Iterator[Problem]:
    """The words of the film give another torque than the line of the step."""
    for heard in case.heard:
        rows = [row for row in case.torques if row.step == heard.step and row.value.stages]
        row = _meant(heard, rows, case)
        if row is None:
            continue
        typed = [value for each in rows if _name(each, case) == _name(row, case) for value in each.value.newton_metres]
        if any(all(not _near(said, value) for value in typed) for said in heard.value.newton_metres):
            name, rule = _name(row, case), "said-and-typed-differ"
            given = facts(
                step=case.step(row.number),
                item=name,
                value=row.value.text,
                source=heard.origin,
                heard=heard.value.text,
                there=heard.place,
                answer=answer(rule, name, case.heading(row.number), "words-are-wrong", "Asked"),
            )
            yield Problem(rule, severity(row, case), row.place, given, danger=2, subject=name)


def torque_against_thread(case: Case) -> Iterator[Problem]:
    """A torque that can hardly be meant for the thread. A question only: the maker's figure always wins."""
    threads = {thread.size: thread for thread in case.lexicon.threads}
    held = _held(case)
    for row in case.torques:
        values = row.value.newton_metres
        named = row.item.sizes.thread or held.get(_name(row, case))
        if not values or named is None or named.size not in threads:
            continue
        thread, last = threads[named.size], float(values[-1])
        # What is turned on by an angle has a low torque before it: only the last torque of all tells of its unit.
        slip = not row.value.angles and is_slip(last, thread, named)
        if slip or not all(is_plausible(value, thread, named) for value in {last, float(max(values))}):
            name, rule = _name(row, case), "torque-against-thread"
            given = facts(
                step=case.step(row.number),
                value=row.value.text,
                thread=named.size,
                strength=Phrase("of-class", facts(strength=named.strength)) if named.strength else "",
                answer=answer(rule, name, case.heading(row.number), "right-with-page", "Asked"),
            )
            yield Problem(rule, Severity.ASK, row.place, given, danger=2, subject=name)


def torque_wrench_range(case: Case) -> Iterator[Problem]:
    """Torques without a torque wrench in the list that is made for them."""
    values = sorted({value for row in case.torques for value in row.value.newton_metres})
    listed = [item for entry in case.procedure.everywhere("Tool") for item in entry.items]
    names = case.lexicon.checks.torque_wrench
    wrenches = [item for item in listed if case.mentioned(item.name, names)]
    ranges = [item.sizes.scale for item in wrenches if item.sizes.scale]
    outside = [value for value in values if not any(low <= value <= high for low, high in ranges)]
    if not outside or not listed or not names:
        return
    rows = [row for row in case.torques if not set(outside).isdisjoint(row.value.newton_metres)]
    row = next(row for row in rows if outside[0] in row.value.newton_metres)
    proposed = _cover(outside, case.lexicon.torque_wrenches)
    tools = tuple(Phrase("torque-wrench", facts(low=low, high=high)) for low, high in proposed)
    low, high = _shown(outside[0]), _shown(outside[-1])
    given = facts(
        values=Phrase("newton-metres" if low == high else "newton-metres-from-to", facts(low=low, high=high)),
        line=Line("Tool", (tools,), place=case.front) if tools else "",
        steps=tuple(dict.fromkeys(case.step(row.number) for row in rows)),
    )
    form = f"{'none-reaches' if ranges else 'none-listed'}{'' if tools else '-nor-known'}"
    subject = f"{low} N·m" if low == high else f"{low}–{high} N·m"
    yield Problem("torque-wrench-range", Severity.ADVICE, row.place, given, form, 4, subject)


def _name(row: TorqueRow, case: Case) -> str:
    return case.thing(row.item.name)


def _branch(row: TorqueRow, case: Case) -> str:
    return "".join(entry.raw for entry in case.procedure.steps[row.number - 1].all("Only if"))


def _near(one: Fraction, other: Fraction) -> bool:
    return abs(one - other) <= _SAME * max(one, other)


def _agree(one: Torque, other: Torque) -> bool:
    """True when both end with the same torque and the same angle."""
    first, second = one.newton_metres[-1:], other.newton_metres[-1:]
    same = all(_near(a, b) for a, b in zip(first, second, strict=False))
    return same and len(first) == len(second) and one.angles == other.angles


def _meant(heard: HeardTorque, rows: list[TorqueRow], case: Case) -> TorqueRow | None:
    """The typed torque that was spoken of: the one named, or the only one of the step."""
    named = [row for row in rows if case.mentioned(heard.words, [_name(row, case)])]
    if named or len({_name(row, case) for row in rows}) == 1:
        return (named or rows)[0]
    return None


def _held(case: Case) -> dict[str, NamedThread]:
    """Threads of fasteners that hold a part: of ``keeper | by: 2 x M8 bolt`` under ``keeper bolt``."""
    found: dict[str, NamedThread] = {}
    for entry in case.ledger.entries:
        for fastener in entry.fasteners:
            if fastener.sizes.thread:
                found.setdefault(case.thing(f"{entry.item} {fastener.head.split()[-1]}"), fastener.sizes.thread)
    return found


def _shown(value: Fraction) -> Decimal:
    """Newton metres: whole from 10 on, tenths below."""
    return Decimal(f"{float(value):.0f}" if value >= 10 else f"{float(value):.1f}")


def _cover(values: list[Fraction], wrenches: tuple[tuple[int, int], ...]) -> list[tuple[int, int]]:
    """The fewest wrenches for all values that any reaches, from the smallest on."""
    chosen: list[tuple[int, int]] = []
    for value in values:
        if any(low <= value <= high for low, high in chosen):
            continue
        usable = [(low, high) for low, high in wrenches if low <= value <= high]
        if usable:
            reach = {pair: sum(pair[0] <= other <= pair[1] for other in values) for pair in usable}
            chosen.append(max(usable, key=lambda pair: (reach[pair], -pair[1])))
    return chosen
