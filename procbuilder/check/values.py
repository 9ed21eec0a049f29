"""Rules about torques that do not agree with each other, with the thread, or with the wrenches. None gives a value."""

from collections.abc import Iterator
from fractions import Fraction

from procbuilder.check.case import Case
from procbuilder.check.torque import critical
from procbuilder.model.fastener import NamedThread, is_plausible
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.torque import Torque
from procbuilder.model.words import mentioned, thing
from procbuilder.model.worked import HeardTorque, TorqueRow

_SAME = Fraction(3, 100)
"""Values nearer than this are the same, rounded from one unit to the other."""


def torques_contradict(case: Case) -> Iterator[Problem]:
    """The same thing with two different torques; other stages and other conditions are no contradiction."""
    first: dict[tuple[str, str, str], TorqueRow] = {}
    for row in case.torques:
        if not row.value.newton_metres:
            continue
        key = (_name(row), row.stage, thing(row.when) + _branch(row, case))
        before = first.setdefault(key, row)
        if before is not row and not _agree(before.value, row.value):
            yield worded(
                Severity.STOP if critical(row, case) else Severity.ASK,
                row.place,
                f"the torque of {_name(row)} is {row.value} in step {row.number}, and {before.value} in step "
                f"{before.number} ({before.place})",
                'write the right one in both lines, or say with " | when: …" what is different',
                "torques-contradict",
                2,
            )


def said_and_typed_differ(case: Case) -> Iterator[Problem]:
    """The words of the film give another torque than the line of the step."""
    for heard in case.heard:
        rows = [row for row in case.torques if row.step == heard.step and row.value.stages]
        row = _meant(heard, rows)
        if row is None:
            continue
        typed = [value for each in rows if _name(each) == _name(row) for value in each.value.newton_metres]
        if any(all(not _near(said, value) for value in typed) for said in heard.value.newton_metres):
            yield worded(
                Severity.STOP if critical(row, case) else Severity.ASK,
                row.place,
                f"the torque of {_name(row)} is {row.value}, but {heard.origin.words} is {heard.value} ({heard.place})",
                f"write the right one with its document, or "
                f'"- Asked: said and typed differ: {_name(row)} | the words are wrong"',
                "said-and-typed-differ",
                2,
                subject=_name(row),
            )


def torque_against_thread(case: Case) -> Iterator[Problem]:
    """A torque that can hardly be meant for the thread. A question only: the maker's figure always wins."""
    threads = {thread.size: thread for thread in case.lexicon.threads}
    held = _held(case)
    for row in case.torques:
        values = row.value.newton_metres
        named = row.item.sizes.thread or held.get(_name(row))
        if not values or named is None or named.size not in threads:
            continue
        if not is_plausible(float(values[-1]), threads[named.size], named):
            yield worded(
                Severity.ASK,
                row.place,
                f"{row.value} is far from what an {named.size} thread{_of_class(named)} is usually tightened to: "
                "is the value, its unit or the thread typed wrong?",
                f"put it right, or write "
                f'"- Asked: torque against thread: {_name(row)} | right, with the page of the document"',
                "torque-against-thread",
                2,
                subject=_name(row),
            )


def torque_wrench_range(case: Case) -> Iterator[Problem]:
    """Torques without a torque wrench in the list that is made for them."""
    values = sorted({value for row in case.torques for value in row.value.newton_metres})
    listed = [item for entry in case.procedure.everywhere("Tool") for item in entry.items]
    wrenches = [item for item in listed if mentioned(item.name, ["torque wrench", "torque screwdriver"])]
    ranges = [item.sizes.reach for item in wrenches if item.sizes.reach]
    outside = [value for value in values if not any(low <= value <= high for low, high in ranges)]
    if not outside or not listed:
        return
    row = next(row for row in case.torques if outside[0] in row.value.newton_metres)
    proposed = _cover(outside, case.lexicon.torque_wrenches)
    tools = "; ".join(f"torque wrench {low}–{high} N·m" for low, high in proposed)
    lacking = "no torque wrench of the list reaches" if ranges else "no torque wrench is listed with its range, for"
    yield worded(
        Severity.ADVICE,
        row.place,
        f"{lacking} {_spread(outside)}; a wrench reads well from 20 to 100 % of its range (common practice)",
        f'add "- Tool: {tools}"' if tools else "name the torque wrench with its range in a Tool line",
        "torque-wrench-range",
        4,
    )


def _name(row: TorqueRow) -> str:
    return thing(row.item.name)


def _branch(row: TorqueRow, case: Case) -> str:
    return "".join(entry.raw for entry in case.procedure.steps[row.number - 1].all("Only if"))


def _near(one: Fraction, other: Fraction) -> bool:
    return abs(one - other) <= _SAME * max(one, other)


def _agree(one: Torque, other: Torque) -> bool:
    """True when both end with the same torque and the same angle."""
    first, second = one.newton_metres[-1:], other.newton_metres[-1:]
    same = all(_near(a, b) for a, b in zip(first, second, strict=False))
    return same and len(first) == len(second) and one.angles == other.angles


def _meant(heard: HeardTorque, rows: list[TorqueRow]) -> TorqueRow | None:
    """The typed torque that was spoken of: the one named, or the only one of the step."""
    named = [row for row in rows if mentioned(heard.words, [_name(row)])]
    if named or len({_name(row) for row in rows}) == 1:
        return (named or rows)[0]
    return None


def _held(case: Case) -> dict[str, NamedThread]:
    """Threads of fasteners that hold a part: of ``keeper | by: 2 x M8 bolt`` under ``keeper bolt``."""
    found: dict[str, NamedThread] = {}
    for entry in case.ledger.entries:
        for fastener in entry.fasteners:
            if fastener.sizes.thread:
                found.setdefault(thing(f"{entry.item} {fastener.head.split()[-1]}"), fastener.sizes.thread)
    return found


def _of_class(named: NamedThread) -> str:
    return f" of class {named.strength}" if named.strength else ""


def _spread(values: list[Fraction]) -> str:
    low, high = (f"{float(value):.0f}" if value >= 10 else f"{float(value):.1f}" for value in (values[0], values[-1]))
    return f"{low} N·m" if low == high else f"{low} to {high} N·m"


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
