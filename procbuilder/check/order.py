"""Rules about the order of the steps: what must come before what."""

from collections.abc import Iterator
from itertools import groupby

from procbuilder.check.case import Case
from procbuilder.model.activity import Done
from procbuilder.model.facts import Line, Phrase, facts
from procbuilder.model.problem import Problem, Severity, answer
from procbuilder.model.torque import TorqueUnit
from procbuilder.model.worked import TorqueRow


def wrong_order(case: Case) -> Iterator[Problem]:
    """A rule of order that the steps break; see ``order.toml``."""
    for one in case.disorders:
        then, first, since = one.then, one.first, one.since
        given = facts(
            step=case.step(then.number),
            command=then.command,
            since=_behind(since, case) if since else "",
            rule=one.order.rule,
            why=one.order.why,
            example=one.order.example,
            answer=answer("wrong-order", one.order.rule, case.heading(then.number)),
        )
        if first:
            given += facts(first=case.step(first.number), first_command=first.command)
        form = "too-late" if first else "missing"
        yield Problem("wrong-order", Severity.ASK, then.place, given, form, one.order.danger, one.order.rule)


def _behind(done: Done, case: Case) -> Phrase:
    return Phrase("behind-step", facts(step=case.step(done.number), command=done.command))


def torque_in_the_air(case: Case) -> Iterator[Problem]:
    """Wheel nuts, and joints in rubber, that get their torque while the vehicle is still raised."""
    steps, told = case.procedure.steps, case.lexicon.checks
    ends = {case.thing(entry.part("state")) for entry in case.procedure.everywhere("Ends")}
    for row in case.torques:
        step = steps[row.number - 1]
        if row.demanded and step.all("Nip up"):
            continue
        stand = case.standing.get(step.id)
        ended = [case.thing(entry.part("state")) for entry in step.all("Ends")]
        lasting = [state for state in (stand.states if stand else ()) if case.thing(state) not in ended]
        to_end = [state for state in lasting if case.thing(state) in ends]
        raised = next((state for state in to_end if case.mentioned(state, case.lexicon.raised)), "")
        what = case.mentioned(row.item.words, (*told.on_wheels, *told.rubber))
        if raised and what and not (row.when and what in told.rubber):
            given = facts(
                item=row.item,
                step=case.step(row.number),
                state=raised,
                ends=Line("Ends", (raised,)),
                answer=answer("torque-in-the-air", row.item.words, case.heading(row.number)),
            )
            form = "rubber" if what in told.rubber else "wheel"
            yield Problem("torque-in-the-air", Severity.ASK, row.place, given, form, 2, row.item.words)


def angle_before_torque(case: Case) -> Iterator[Problem]:
    """A fastener whose angle stage comes before its torque stage."""

    def tightened(row: TorqueRow) -> str:
        return case.thing(row.item.words)

    for item, rows in groupby(sorted(case.torques, key=tightened), key=tightened):
        stages = sorted(rows, key=lambda row: (row.number, row.place))
        angle = next((row for row in stages if TorqueUnit.DEGREE in row.value.units), None)
        later = [row for row in stages if angle and row.place > angle.place and row.value.has_torque]
        if angle and later and not any(row.value.has_torque for row in stages if row.place <= angle.place):
            given = facts(item=item, step=case.step(angle.number), torque=case.step(later[0].number))
            yield Problem("angle-before-torque", Severity.ASK, angle.place, given, danger=2, subject=item)
