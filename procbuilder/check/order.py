"""Rules about the order of the steps: what must come before what."""

from collections.abc import Iterator
from itertools import groupby

from procbuilder.check.case import Case
from procbuilder.model.activity import Disorder, Done
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.torque import TorqueUnit
from procbuilder.model.words import mentioned, thing
from procbuilder.model.worked import TorqueRow

_RAISED = ("raised", "jacked", "jacked up", "lifted", "on stands", "wheel off", "front raised", "rear raised")
_ON_WHEELS = ("wheel nut", "wheel bolt", "lug nut", "lug bolt")
_RUBBER = ("bush", "bushing", "rubber mount", "wishbone", "control arm", "trailing arm")


def wrong_order(case: Case) -> Iterator[Problem]:
    """A rule of order that the steps break; see ``order.toml``."""
    for one in case.disorders:
        yield worded(
            Severity.ASK,
            one.then.place,
            f"{_too_early(one)}: {one.order.rule}, because {one.order.why}",
            f'{_put_right(one)}, or add "- Refused: wrong order: {one.order.rule} | why not"',
            "wrong-order",
            one.order.danger,
            subject=one.order.rule,
        )


def _too_early(one: Disorder) -> str:
    if one.first:
        return f"{_named(one.then)} comes before {_named(one.first)}"
    since = f" after {_named(one.since)}" if one.since else ""
    return f"{_named(one.then)} comes too early{since}"


def _put_right(one: Disorder) -> str:
    if one.first:
        return f"move step {one.first.number} before step {one.then.number}"
    return f'add a step before it, such as "### {one.order.example}"'


def _named(done: Done) -> str:
    return f'step {done.number}, "{done.command}"'


def torque_in_the_air(case: Case) -> Iterator[Problem]:
    """Wheel nuts, and joints in rubber, that get their torque while the vehicle is still raised."""
    steps = case.procedure.steps
    ends = {thing(entry.part("state")) for entry in case.procedure.everywhere("Ends")}
    for row in case.torques:
        step = steps[row.number - 1]
        if row.demanded and step.all("Nip up"):
            continue
        stand = case.standing.get(step.id)
        ended = [thing(entry.part("state")) for entry in step.all("Ends")]
        lasting = [state for state in (stand.states if stand else ()) if thing(state) not in ended]
        raised = next((state for state in lasting if thing(state) in ends and mentioned(state, _RAISED)), "")
        what = mentioned(row.item.words, (*_ON_WHEELS, *_RUBBER))
        if raised and what and not (row.when and what in _RUBBER):
            rubber = what in _RUBBER
            why = "its rubber is twisted on the ground" if rubber else "the wheel turns and does not seat"
            yield worded(
                Severity.ASK,
                row.place,
                f'{row.item}: torque in step {row.number} while "{raised}" still lasts: {why}',
                f'nip it up here, put "- Ends: {raised}" before it and the torque behind, or add '
                f'"- Refused: torque in the air: {row.item} | why not"',
                "torque-in-the-air",
                2,
                subject=row.item.words,
            )


def angle_before_torque(case: Case) -> Iterator[Problem]:
    """A fastener whose angle stage comes before its torque stage."""
    for item, rows in groupby(sorted(case.torques, key=_tightened), key=_tightened):
        stages = sorted(rows, key=lambda row: (row.number, row.place))
        angle = next((row for row in stages if TorqueUnit.DEGREE in row.value.units), None)
        later = [row for row in stages if angle and row.place > angle.place and row.value.has_torque]
        if angle and later and not any(row.value.has_torque for row in stages if row.place <= angle.place):
            yield worded(
                Severity.ASK,
                angle.place,
                f"{item} is turned by an angle in step {angle.number}, before its torque in step {later[0].number}",
                "put the torque first and the angle behind it, as the document says",
                "angle-before-torque",
                2,
            )


def _tightened(row: TorqueRow) -> str:
    return thing(row.item.words)
