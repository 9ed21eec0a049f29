"""How an estimate is told: the same sentences on the page, in the PDF and in the terminal."""

from collections.abc import Iterable, Iterator
from decimal import Decimal
from fractions import Fraction

from procbuilder.model.estimate import Basis, Elsewhere, Estimate, Extra
from procbuilder.model.timecode import format_time
from procbuilder.model.workstudy import Convention
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.words import BASIS_WORDS

ALLOWANCES = {
    Convention.DAY: "with {percent} % of the working day for rest and interruptions",
    Convention.JOB: "with {percent} % of the job time for rest and interruptions",
}
CREWS = {1: "one person", 2: "two people", 3: "three people", 4: "four people"}


def sentences(estimate: Estimate, language: Language = ENGLISH) -> tuple[str, ...]:
    """The estimate with its conditions and what it rests on; then what differs from it, and why."""
    rest = (_stated, _footage, _experience, _elsewhere, _log)
    return (headline(estimate, language), *(sentence for told in rest for sentence in told(estimate, language)))


def headline(estimate: Estimate, language: Language = ENGLISH) -> str:
    """``Hands-on 1.6–2.4 h (likely 1.9; …), waiting 30 min, …; from …; not included: …; extras …``"""
    parts = [labour(estimate, language).removesuffix(".")]
    if estimate.not_included:
        parts.append(language.text("not included: {things}", things=", ".join(estimate.not_included)))
    if estimate.extras:
        extras = ", ".join(_extra(extra, language) for extra in estimate.extras)
        parts.append(language.text("extras that need approval: {extras}", extras=extras))
    return "; ".join(parts) + "."


def labour(estimate: Estimate, language: Language = ENGLISH) -> str:
    """Hours, conditions, and what they rest on."""
    conditions = [*_waiting(estimate, language), *_conditions(estimate, language)]
    told = ", ".join([_hands_on(estimate, language), *conditions])
    rests = list(_rests_on(estimate, language))
    return language.text("{time}; from {evidence}.", time=told, evidence=language.every(rests)) if rests else f"{told}."


def _hands_on(estimate: Estimate, language: Language) -> str:
    likely = language.number(estimate.likely)
    if not estimate.likely:
        return language.text("Hands-on time is not known") + _stated_total(estimate, language)
    if estimate.lower_bound:
        least = language.text(
            "Hands-on at least {hours} h (a lower bound: not every step has a time of its own)", hours=likely
        )
        return least + _stated_total(estimate, language)
    if estimate.worst_low == estimate.worst_high:
        return language.text("Hands-on {hours} h", hours=likely)
    worst = span(estimate.worst_low, estimate.worst_high, language)
    usual = span(estimate.low, estimate.high, language)
    if worst == usual:
        return language.text("Hands-on {usual} h (likely {likely})", usual=usual, likely=likely)
    return language.text(
        "Hands-on {usual} h (likely {likely}; {worst} if every step goes well, or badly)",
        usual=usual, likely=likely, worst=worst,
    )  # fmt: skip


def _stated_total(estimate: Estimate, language: Language) -> str:
    """A stated total says more than film does, but nothing of the steps."""
    if not estimate.stated_hours:
        return ""
    return language.text(", {hours} h in all as the technician states", hours=language.number(estimate.stated_hours))


def _waiting(estimate: Estimate, language: Language) -> Iterator[str]:
    if estimate.waiting:
        yield language.text("waiting {minutes} min", minutes=language.number(estimate.waiting))
    if estimate.overlapping:
        minutes = language.number(estimate.overlapping)
        if estimate.waiting:
            yield language.text("waiting {minutes} min more (can overlap)", minutes=minutes)
        else:
            yield language.text("waiting {minutes} min (can overlap)", minutes=minutes)


def _conditions(estimate: Estimate, language: Language) -> Iterator[str]:
    crews = [step.people for step in estimate.steps if not step.extra]
    together = sum(people > 1 for people in crews)
    if together and estimate.likely:
        yield language.plural(
            "{people} at {count} step ({hours} person-hours)", "{people} at {count} steps ({hours} person-hours)",
            together, people=crew(max(crews), language), hours=language.number(estimate.person_hours),
        )  # fmt: skip
    elif crews and not together:
        yield crew(1, language)
    if estimate.place:
        yield estimate.place
    if estimate.likely:
        yield language.text("third time or later")


def _rests_on(estimate: Estimate, language: Language) -> Iterator[str]:
    """Each kind of evidence that counts, with its number of observations and of steps."""
    practice = estimate.practice
    runs = language.plural("{count} logged run by {people}", "{count} logged runs by {people}", practice.sittings,
                           people=crew(practice.people, language))  # fmt: skip
    names = {
        Basis.LOG: runs,
        Basis.TYPED: language.text("typed times"),
        Basis.FOOTAGE: language.plural("{count} film", "{count} films", estimate.films),
        Basis.CUT: language.text(BASIS_WORDS[Basis.CUT]),
        Basis.NOTHING: language.text(BASIS_WORDS[Basis.NOTHING]),
    }
    for basis, name in names.items():
        if count := estimate.count(basis):
            doubt = f"; {_cuts_known(estimate, language)}" if basis is Basis.FOOTAGE else ""
            yield f"{name} ({_steps(count, language)}{doubt})"


def _cuts_known(estimate: Estimate, language: Language) -> str:
    steps = (step for step in estimate.steps if step.basis is Basis.FOOTAGE and not step.extra)
    if all(step.split for step in steps):
        return language.text("no cut found")
    return language.text("a lower bound if cut")


def _extra(extra: Extra, language: Language) -> str:
    minutes = extra.minutes if not extra.minutes or "min" in extra.minutes else f"{extra.minutes} min"
    if minutes:
        return f"{extra.condition} +{minutes}"
    return language.text("{condition} (time not known)", condition=extra.condition)


def _stated(estimate: Estimate, language: Language) -> Iterator[str]:
    """What the technician states, and how much of it the steps do not account for."""
    if not estimate.stated:
        return
    if estimate.stated_hours is None or estimate.unaccounted is None:
        yield language.text("The technician states: {time}.", time=estimate.stated)
        return
    states = language.text("The technician states {hours} h", hours=language.number(estimate.stated_hours))
    elapsed = language.number(estimate.elapsed)
    if estimate.lower_bound:
        steps = language.text("the steps account for at least {hours} h from start to end", hours=elapsed)
    else:
        steps = language.text("the steps account for {hours} h from start to end", hours=elapsed)
    yield f"{states}; {steps}: {_gap(estimate.unaccounted, language)}."


def _gap(hours: Decimal, language: Language) -> str:
    if not hours:
        return language.text("they agree")
    if hours > 0:
        return language.text("{hours} h is not accounted for", hours=language.number(hours))
    return language.text("{hours} h more than stated", hours=language.number(-hours))


def _footage(estimate: Estimate, language: Language) -> Iterator[str]:
    """How the film of the steps is spent, whatever their minutes come from."""
    splits = [step.split for step in estimate.steps if step.split and not step.extra]
    plain = [split for split in splits if split.speed == 1]
    if plain:
        seen = _clock(split.hands_on for split in plain)
        cut = sum(split.cuts > 0 for split in plain)
        yield language.plural(
            "Seen on film of {count} step: {time} hands-on{least}; "
            "apart from it {talk} of talk and {still} in which nothing moves.",
            "Seen on film of {count} steps: {time} hands-on{least}; "
            "apart from it {talk} of talk and {still} in which nothing moves.",
            len(plain), time=seen, least=_least(cut, language),
            talk=_clock(split.talk for split in plain), still=_clock(split.still for split in plain),
        )  # fmt: skip
    if other := len(splits) - len(plain):
        yield language.plural(
            "The film of {count} step does not run at the speed of the work, and tells no time.",
            "The film of {count} steps does not run at the speed of the work, and tells no time.",
            other,
        )


def _least(cut: int, language: Language) -> str:
    if not cut:
        return ""
    return language.plural(" at least, for {count} step has cuts", " at least, for {count} steps have cuts", cut)


def _experience(estimate: Estimate, language: Language) -> Iterator[str]:
    if not estimate.likely or estimate.lower_bound:
        return
    low, high = (f"{share * 100:.0f}" for share in estimate.rate)
    repeated = estimate.practice.repeated
    yield language.text(
        "First time {first} h, tenth time {tenth} h, "
        "if each doubling of the number of times leaves {low} to {high} % of the time, {source}.",
        first=span(*estimate.first, language), tenth=span(*estimate.practised, language), low=low, high=high,
        source=language.text("as the log says") if repeated
        else language.text("which is assumed: the log shows nobody twice"),
    )  # fmt: skip
    yield language.text(
        "A first run under supervision takes that time of the apprentice, and up to as much of the supervisor: "
        "up to {hours} person-hours.",
        hours=language.number(2 * estimate.first[1]),
    )


def _elsewhere(estimate: Estimate, language: Language) -> Iterator[str]:
    for other in estimate.elsewhere:
        yield language.text(
            "{place}: {hours} h, likely {likely} (× {factor}, from {source}).",
            place=_place(other, language),
            hours=span(other.low, other.high, language),
            likely=language.number(other.likely),
            factor=language.number(Decimal(f"{other.factor:.2f}")),
            source=other.origin,
        )


def _place(other: Elsewhere, language: Language) -> str:
    told = other.name
    if other.allowance:
        percent = language.number(Decimal(f"{(other.allowance.share * 100).normalize():f}"))
        told = language.text(ALLOWANCES[other.allowance.convention], percent=percent)
    return told[:1].upper() + told[1:]


def _log(estimate: Estimate, language: Language) -> Iterator[str]:
    for odd in estimate.practice.odd:
        yield language.text(
            "{place}: {step} {minutes} min, where {expected} min were expected; it is kept, but counts little.",
            place=odd.place, step=odd.step, minutes=language.number(odd.minutes),
            expected=span(odd.low, odd.high, language),
        )  # fmt: skip
    if unused := estimate.practice.unused:
        yield language.plural(
            "{count} logged row of steps that the procedure does not have, not used.",
            "{count} logged rows of steps that the procedure does not have, not used.",
            unused,
        )


def span(low: Decimal, high: Decimal, language: Language) -> str:
    """``1.6–2.4``, or one number when both are the same."""
    return language.number(low) if low == high else f"{language.number(low)}–{language.number(high)}"


def crew(people: int, language: Language) -> str:
    """``two people``."""
    return language.text(CREWS[people]) if people in CREWS else language.text("{count} people", count=people)


def _clock(seconds: Iterable[Fraction]) -> str:
    """Minutes and whole seconds of all together: ``12:05``."""
    return format_time(Fraction(round(sum(seconds))))


def _steps(count: int, language: Language) -> str:
    return language.plural("{count} step", "{count} steps", count)
