"""The estimate: the best evidence of each step, summed exactly, rounded up once."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from procbuilder.infer.alike import NO_NEIGHBOURS, Neighbours
from procbuilder.infer.curve import at_both_ends, learning_rate
from procbuilder.infer.evidence import believed, evidence, hands_on
from procbuilder.infer.extras import elsewhere, extras
from procbuilder.infer.lexicon import load
from procbuilder.model.estimate import Basis, Estimate, Evidence, OddTime, Practice, Price, StepTime
from procbuilder.model.footage import FootageSplit
from procbuilder.model.practice import Run, sittings
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.threepoint import added
from procbuilder.model.workshop import UNKNOWN_WORKSHOP, Workshop

if TYPE_CHECKING:
    from procbuilder.infer.belief import Belief

_NOTHING = Evidence(Basis.NOTHING, Decimal(0), Decimal(0), Decimal(0), 0)
_MILLIONTH = 10**6
_CENT = Decimal("0.01")
_FIRM = (Basis.LOG, Basis.TYPED)
FIRST, TENTH = 1, 10


def estimate(
    procedure: Procedure,
    runs: Sequence[Run] = (),
    workshop: Workshop = UNKNOWN_WORKSHOP,
    splits: Mapping[str, FootageSplit] | None = None,
    neighbours: Neighbours = NO_NEIGHBOURS,
) -> Estimate:
    """What the job takes the third time or later, from all that is known.

    Steps with ``Only if`` have their minutes but are in no total; nor is waiting.

    Args:
        procedure: the procedure.
        runs: rows of its practice log.
        workshop: what its library says.
        splits: how the footage of the steps is spent, by their ids, as far as it was scanned.
        neighbours: what the logs of the other procedures of the library tell.
    """
    steps = procedure.steps
    ids = {step.id for step in steps}
    used = [run for run in runs if run.step in ids]
    belief, odd = believed(procedure, used, neighbours, workshop.words)
    times = tuple(_step_time(step, procedure, belief, (splits or {}).get(step.id)) for step in steps)
    main = [step for step in steps if not step.all("Only if")]
    total = _total(main, times, belief)
    waits = [(wait.minutes.likely, wait.overlaps) for step in main for wait in step.waits]
    waiting = sum((minutes for minutes, overlaps in waits if not overlaps), Decimal(0))
    elapsed = total.likely + Fraction(waiting)
    stated = procedure.front.stated
    words = load(procedure.front["language"]).words
    practice = _practice(used, len(runs) - len(used), odd)
    rate = learning_rate(belief if practice.repeated else None)
    return Estimate(
        steps=times, low=hours(total.low), likely=hours(total.likely), high=hours(total.high), waiting=waiting,
        stated=procedure.front["stated time"], worst_low=hours(total.worst_low), worst_high=hours(total.worst_high),
        person_hours=hours(total.person), elapsed=hours(elapsed),
        overlapping=sum((minutes for minutes, overlaps in waits if overlaps), Decimal(0)),
        stated_hours=None if stated is None else _tenths(stated),
        unaccounted=None if stated is None else _tenths(stated) - hours(elapsed),
        first=_hours(at_both_ends(total.likely, FIRST, rate)),
        practised=_hours(at_both_ends(total.likely, TENTH, rate)),
        rate=rate, films=len({span.recording for step in main for span in step.spans}),
        practice=practice, place=procedure.front["place"],
        not_included=tuple(entry.part("what") for entry in procedure.listed("Not included")),
        extras=extras(procedure, times),
        elsewhere=elsewhere((total.low, total.likely, total.high), procedure.front["place"], workshop, words),
        price=_price(total, workshop, all(time.basis in _FIRM for time in times if not time.extra)),
        seen_by=workshop.seen_by, kept=workshop.kept,
    )  # fmt: skip


def hours(minutes: Fraction) -> Decimal:
    """Hours in tenths, rounded up: 42 minutes are 0.7 h, one second more is 0.8 h.

    Trade habit: labour is quoted in tenths of an hour, one tenth being six minutes.
    """
    return Decimal(math.ceil(minutes / 6)) / 10


def _tenths(minutes: Fraction) -> Decimal:
    """Hours to the nearest tenth, for what is not labour to be quoted; it may be negative."""
    return (Decimal(minutes.numerator) / minutes.denominator / 60).quantize(Decimal("0.1"), ROUND_HALF_UP)


def _hours(both: tuple[Fraction, Fraction]) -> tuple[Decimal, Decimal]:
    return hours(both[0]), hours(both[1])


def _price(total: "_Total", workshop: Workshop, firm: bool) -> Price | None:
    """The rate times the hours as quoted, those of two people counted twice; no price of what is a lower bound."""
    if workshop.rate is None or not firm or not total.likely:
        return None
    crew = total.person / total.likely
    low, high = ((workshop.rate * hours(end * crew)).quantize(_CENT, ROUND_HALF_UP) for end in (total.low, total.high))
    return Price(workshop.rate, workshop.currency, low, high)


def _step_time(step: Step, procedure: Procedure, belief: "Belief | None", split: FootageSplit | None) -> StepTime:
    found = evidence(step, belief, split)
    best = found[0] if found else _NOTHING
    people = step.crew or procedure.front.crew
    return StepTime(step.id, best.basis, best.low, best.likely, best.high, step.footage, split,
                    extra=bool(step.all("Only if")), people=people, evidence=found)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Total:
    """Exact minutes."""

    low: Fraction
    likely: Fraction
    high: Fraction
    worst_low: Fraction
    worst_high: Fraction
    person: Fraction


def _total(main: Sequence[Step], times: Iterable[StepTime], belief: "Belief | None") -> _Total:
    """The sum of the steps: logged ones as one lognormal total, the others as independent three-point estimates."""
    by_id = {time.step: time for time in times}
    rows = [(_minutes(step, by_id[step.id]), by_id[step.id]) for step in main]
    logged = [time for _, time in rows if time.basis is Basis.LOG]
    other = [minutes for minutes, time in rows if time.basis is not Basis.LOG]
    whole = belief.total([time.step for time in logged]) if belief and logged else None
    low, middle, high = (_exact(whole.quantile(share)) if whole else Fraction(0) for share in (0.1, 0.5, 0.9))
    likely = middle + sum((minutes[1] for minutes in other), Fraction(0))
    points = [(float(a), float(m), float(b)) for a, m, b in [*other, (low, middle, high)]]
    usual = added(points)
    summed = sum((minutes[1] for minutes, _ in rows), Fraction(0))
    crew = sum((minutes[1] * time.people for minutes, time in rows), Fraction(0))
    return _Total(
        low=likely - _exact(usual.likely - usual.usual[0]),
        likely=likely,
        high=likely + _exact(usual.usual[1] - usual.likely),
        worst_low=sum((minutes[0] for minutes, _ in rows), Fraction(0)),
        worst_high=sum((minutes[2] for minutes, _ in rows), Fraction(0)),
        person=likely * crew / summed if summed else Fraction(0),
    )


def _minutes(step: Step, time: StepTime) -> tuple[Fraction, Fraction, Fraction]:
    """Exact minutes of the best evidence; the length of film is known better than it is shown."""
    if time.basis in (Basis.FOOTAGE, Basis.CUT):
        return (hands_on(step, time.split) / 60,) * 3
    return Fraction(time.low), Fraction(time.likely), Fraction(time.high)


def _exact(minutes: float) -> Fraction:
    """A worked-out number of minutes, without the last digits that are only those of the machine."""
    return Fraction(round(minutes * _MILLIONTH), _MILLIONTH)


def _practice(runs: Sequence[Run], unused: int, odd: tuple[OddTime, ...]) -> Practice:
    seats = set(sittings(runs))
    people = {who for who, _ in seats}
    return Practice(len(seats), len(people), len(runs), unused, len(seats) > len(people), odd)
