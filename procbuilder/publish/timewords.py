"""How an estimate is told: the same sentences on the page, in the PDF and in the terminal."""

from collections.abc import Iterable, Iterator
from decimal import Decimal
from fractions import Fraction

from procbuilder.model.estimate import Basis, Estimate, Extra
from procbuilder.model.timecode import format_time

_COUNTS = {1: "one person", 2: "two people", 3: "three people", 4: "four people"}


def sentences(estimate: Estimate) -> tuple[str, ...]:
    """The estimate with its conditions and what it rests on; then what differs from it, and why."""
    rest = (_stated, _footage, _experience, _elsewhere, _log)
    return (headline(estimate), *(sentence for told in rest for sentence in told(estimate)))


def headline(estimate: Estimate) -> str:
    """``Hands-on 1.6–2.4 h (likely 1.9; …), waiting 30 min, …; from …; not included: …; extras …``"""
    parts = [labour(estimate).removesuffix(".")]
    if estimate.not_included:
        parts.append(f"not included: {', '.join(estimate.not_included)}")
    if estimate.extras:
        parts.append(f"extras that need approval: {', '.join(map(_extra, estimate.extras))}")
    return "; ".join(parts) + "."


def labour(estimate: Estimate) -> str:
    """Hours, conditions, and what they rest on."""
    told = ", ".join([_hands_on(estimate), *_waiting(estimate), *_conditions(estimate)])
    rests = list(_rests_on(estimate))
    return f"{told}; from {_and(rests)}." if rests else f"{told}."


def _hands_on(estimate: Estimate) -> str:
    if not estimate.likely:
        return f"Hands-on time is not known{_stated_total(estimate)}"
    if estimate.lower_bound:
        least = f"at least {number(estimate.likely)} h (a lower bound: not every step has a time of its own)"
        return f"Hands-on {least}{_stated_total(estimate)}"
    if estimate.worst_low == estimate.worst_high:
        return f"Hands-on {number(estimate.likely)} h"
    worst = _range(estimate.worst_low, estimate.worst_high)
    usual = _range(estimate.low, estimate.high)
    outer = f"; {worst} if every step goes well, or badly" if worst != usual else ""
    return f"Hands-on {usual} h (likely {number(estimate.likely)}{outer})"


def _stated_total(estimate: Estimate) -> str:
    """A stated total says more than film does, but nothing of the steps."""
    return f", {number(estimate.stated_hours)} h in all as the technician states" if estimate.stated_hours else ""


def _waiting(estimate: Estimate) -> Iterator[str]:
    if estimate.waiting:
        yield f"waiting {number(estimate.waiting)} min"
    if estimate.overlapping:
        more = " more" if estimate.waiting else ""
        yield f"waiting {number(estimate.overlapping)} min{more} (can overlap)"


def _conditions(estimate: Estimate) -> Iterator[str]:
    crews = [step.people for step in estimate.steps if not step.extra]
    together = sum(people > 1 for people in crews)
    if together and estimate.likely:
        most = _COUNTS.get(max(crews), f"{max(crews)} people")
        yield f"{most} at {_steps(together)} ({number(estimate.person_hours)} person-hours)"
    elif crews and not together:
        yield _COUNTS[1]
    if estimate.place:
        yield estimate.place
    if estimate.likely:
        yield "third time or later"


def _rests_on(estimate: Estimate) -> Iterator[str]:
    """Each kind of evidence that counts, with its number of observations and of steps."""
    practice = estimate.practice
    runs = f"{_many(practice.sittings, 'logged run')} by {_COUNTS.get(practice.people, f'{practice.people} people')}"
    names = {
        Basis.LOG: runs,
        Basis.TYPED: "typed times",
        Basis.FOOTAGE: _many(estimate.films, "film"),
        Basis.CUT: "film with cuts – lower bound",
        Basis.NOTHING: "no time known",
    }
    for basis, name in names.items():
        if count := estimate.count(basis):
            doubt = f"; {_cuts_known(estimate)}" if basis is Basis.FOOTAGE else ""
            yield f"{name} ({_steps(count)}{doubt})"


def _cuts_known(estimate: Estimate) -> str:
    steps = (step for step in estimate.steps if step.basis is Basis.FOOTAGE and not step.extra)
    return "no cut found" if all(step.split for step in steps) else "a lower bound if cut"


def _extra(extra: Extra) -> str:
    minutes = extra.minutes if not extra.minutes or "min" in extra.minutes else f"{extra.minutes} min"
    return f"{extra.condition} +{minutes}" if minutes else f"{extra.condition} (time not known)"


def _stated(estimate: Estimate) -> Iterator[str]:
    """What the technician states, and how much of it the steps do not account for."""
    if not estimate.stated:
        return
    if estimate.stated_hours is None or estimate.unaccounted is None:
        yield f"The technician states: {estimate.stated}."
        return
    least = "at least " if estimate.lower_bound else ""
    account = f"the steps account for {least}{number(estimate.elapsed)} h from start to end"
    gap = estimate.unaccounted
    rest = f"{number(abs(gap))} h {'is not accounted for' if gap > 0 else 'more than stated'}" if gap else "they agree"
    yield f"The technician states {number(estimate.stated_hours)} h; {account}: {rest}."


def _footage(estimate: Estimate) -> Iterator[str]:
    """How the film of the steps is spent, whatever their minutes come from."""
    splits = [step.split for step in estimate.steps if step.split and not step.extra]
    plain = [split for split in splits if split.speed == 1]
    if plain:
        hands_on = _clock(split.hands_on for split in plain)
        talk = _clock(split.talk for split in plain)
        still = _clock(split.still for split in plain)
        cut = sum(split.cuts > 0 for split in plain)
        least = f" at least, for {_steps(cut)} {'has' if cut == 1 else 'have'} cuts" if cut else ""
        yield (
            f"Seen on film of {_steps(len(plain))}: {hands_on} hands-on{least}; "
            f"apart from it {talk} of talk and {still} in which nothing moves."
        )
    if other := len(splits) - len(plain):
        yield f"The film of {_steps(other)} does not run at the speed of the work, and tells no time."


def _experience(estimate: Estimate) -> Iterator[str]:
    if not estimate.likely or estimate.lower_bound:
        return
    low, high = (f"{share * 100:.0f}" for share in estimate.rate)
    source = "as the log says" if estimate.practice.repeated else "which is assumed: the log shows nobody twice"
    yield (
        f"First time {_range(*estimate.first)} h, tenth time {_range(*estimate.practised)} h, "
        f"if each doubling of the number of times leaves {low} to {high} % of the time, {source}."
    )
    yield (
        f"A first run under supervision takes that time of the apprentice, and up to as much of the supervisor: "
        f"up to {number(2 * estimate.first[1])} person-hours."
    )


def _elsewhere(estimate: Estimate) -> Iterator[str]:
    for other in estimate.elsewhere:
        name = other.name[:1].upper() + other.name[1:]
        hours = f"{_range(other.low, other.high)} h, likely {number(other.likely)}"
        yield f"{name}: {hours} (× {other.factor:.2f}, from {other.origin})."


def _log(estimate: Estimate) -> Iterator[str]:
    for odd in estimate.practice.odd:
        expected = f"where {_range(odd.low, odd.high)} min were expected"
        yield f"{odd.place}: {odd.step} {number(odd.minutes)} min, {expected}; it is kept, but counts little."
    if unused := estimate.practice.unused:
        yield f"{_many(unused, 'logged row')} of steps that the procedure does not have, not used."


def _range(low: Decimal, high: Decimal) -> str:
    return number(low) if low == high else f"{number(low)}–{number(high)}"


def number(value: Decimal) -> str:
    """As it is printed: never with an exponent."""
    return f"{value:f}"


def _clock(seconds: Iterable[Fraction]) -> str:
    """Minutes and whole seconds of all together: ``12:05``."""
    return format_time(Fraction(round(sum(seconds))))


def _many(count: int, name: str) -> str:
    return f"{count} {name}" if count == 1 else f"{count} {name}s"


def _steps(count: int) -> str:
    return _many(count, "step")


def _and(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
