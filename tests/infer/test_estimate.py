"""The estimate from all kinds of evidence: what counts, and that all of it is kept."""

from decimal import Decimal

from procbuilder.infer.times import estimate
from procbuilder.model.estimate import Basis, Extra, Price
from procbuilder.model.practice import Run
from procbuilder.model.workshop import Condition, Workshop
from procbuilder.model.workstudy import Allowance, Convention
from tests.infer.logged import run
from tests.infer.written import written

HEAD = """\
---
format: 1
recordings: {strip: strip.mp4}
place: stands, dry floor
people: 1
stated time: 1.5 h
---
# Hub – renew

- Not included: road test

"""

TEXT = """
## Work

### strip 0:00-1:00 Prise off the cap {#cap}

- Time: 20/24/30

### strip 1:00-2:00 Lift off the hub {#hub}

- People: 2 | you: left | helper: right
- Time: 9/12/24

### strip 2:00-5:00 Clean the bore {#clean}

### strip 5:00-5:30, strip 6:00-6:30 Fill in the sheet {#sheet}

- Wait: 12 | cleaner dries
- Wait: 30 | glue sets | overlaps: yes
- If: the seal is torn | new seal | 10

### Warm the hub {#warm}

- Only if: it has seized
- Time: 30

### Drive it out {#drive}

- Only if: it has seized
- Time: 15
"""


def four_runs(step: str, *minutes: float) -> list[Run]:
    return [run(step, each, who=f"p{day}", day=day + 1) for day, each in enumerate(minutes)]


def test_logged_runs_win_and_typed_time_and_film_are_kept() -> None:
    found = estimate(written(TEXT, head=HEAD), four_runs("cap", 12, 13, 11, 12))
    cap = found.steps[0]
    assert [(each.basis, each.likely, each.count) for each in cap.evidence[1:]] == [
        (Basis.TYPED, Decimal(24), 1), (Basis.FOOTAGE, Decimal("1.00"), 1),
    ]  # fmt: skip
    best = cap.evidence[0]
    assert (best.basis, best.count, cap.basis) == (Basis.LOG, 4, Basis.LOG)
    assert (cap.low, cap.likely, cap.high) == (best.low, best.likely, best.high)
    assert cap.low < 10 < cap.likely < 14 < cap.high


def test_a_typed_step_is_not_moved_by_the_logs_of_others() -> None:
    found = estimate(written(TEXT, head=HEAD), four_runs("cap", 50, 55, 60, 52))
    assert (found.steps[1].basis, found.steps[1].likely) == (Basis.TYPED, Decimal(12))


def test_without_a_log_the_sum_is_that_of_the_typed_times() -> None:
    """24 + 12 + 3 + 1 = 40 min likely, 33 and 58 at worst; usual: √(4² + 3²) = 5 below and √(6² + 12²) = 13.4 above."""
    found = estimate(written(TEXT, head=HEAD))
    assert (found.likely, found.worst_low, found.worst_high) == (Decimal("0.7"), Decimal("0.6"), Decimal("1.0"))
    assert (found.low, found.high) == (Decimal("0.6"), Decimal("0.9"))
    assert found.lower_bound


def test_two_people_at_a_step_count_twice_in_person_hours_only() -> None:
    """40 min, of which 12 with two: 52 person-minutes are 0.9 h."""
    found = estimate(written(TEXT, head=HEAD))
    assert [step.people for step in found.steps] == [1, 2, 1, 1, 1, 1]
    assert (found.likely, found.person_hours) == (Decimal("0.7"), Decimal("0.9"))


def test_waiting_that_overlaps_is_kept_apart_and_not_in_the_elapsed_time() -> None:
    """40 + 12 = 52 min from start to end: 0.9 h; 1.5 h are stated, so 0.6 h are not accounted for."""
    found = estimate(written(TEXT, head=HEAD))
    assert (found.waiting, found.overlapping, found.elapsed) == (Decimal(12), Decimal(30), Decimal("0.9"))
    assert (found.stated_hours, found.unaccounted) == (Decimal("1.5"), Decimal("0.6"))


def test_branches_and_single_cases_are_extras() -> None:
    found = estimate(written(TEXT, head=HEAD))
    assert found.extras == (Extra("it has seized", "45"), Extra("the seal is torn", "10"))
    assert found.not_included == ("road test",)


def test_first_and_tenth_time_are_ranges_between_both_ends_of_the_stated_rate() -> None:
    """60 min the third time: 80 to 96 % give 64 to 85 min the first time (3^−log₂ rate), 41 to 56 the tenth."""
    found = estimate(written("## Work\n\n### Do it {#do}\n\n- Time: 60\n"))
    assert found.rate == (Decimal("0.80"), Decimal("0.96"))
    assert (found.first, found.practised) == ((Decimal("1.1"), Decimal("1.5")), (Decimal("0.7"), Decimal("1.0")))


def test_repeated_sittings_narrow_the_rate() -> None:
    runs = [run("do", 60 * 0.9**n, who=who, day=n + 1) for who in ("ab", "cd", "ef") for n in range(6)]
    found = estimate(written("## Work\n\n### Do it {#do}\n\n- Time: 60\n"), runs)
    low, high = found.rate
    assert high - low < Decimal("0.12")
    assert (found.practice.sittings, found.practice.people, found.practice.repeated) == (18, 3, True)


def test_rows_of_steps_that_are_gone_are_counted_and_not_used() -> None:
    runs = [*four_runs("cap", 12, 13), *four_runs("gone", 500)]
    found = estimate(written(TEXT, head=HEAD), runs)
    assert (found.practice.rows, found.practice.unused, found.practice.sittings) == (2, 1, 2)
    assert found.steps == estimate(written(TEXT, head=HEAD), runs[:2]).steps


def test_conditions_of_the_workshop_file_apply_where_they_fit_the_place() -> None:
    """40 min × 0.5 = 20 min: 0.4 h. The other one is compared with a roadside, where this job is not done."""
    workshop = Workshop(
        conditions=(
            Condition("on a lift", Decimal("0.5"), "stands", "own job cards"),
            Condition("at night", Decimal(2), "roadside", "own job cards"),
        ),
        allowance=Allowance(Decimal("0.2"), Convention.DAY),
        allowance_origin="agreed 2025",
    )
    lift, allowed = estimate(written(TEXT, head=HEAD), (), workshop).elsewhere
    assert (lift.name, lift.likely, lift.origin) == ("on a lift", Decimal("0.4"), "own job cards")
    assert (allowed.allowance, allowed.factor, allowed.likely) == (
        workshop.allowance, Decimal("1.25"), Decimal("0.9"),
    )  # fmt: skip


def test_price_is_the_rate_times_quoted_person_hours() -> None:
    """6 to 12 min with two people: 0.2 and 0.4 h at 61.99 are 12.398 and 24.796."""
    workshop = Workshop(rate=Decimal("61.99"), currency="EUR")
    text = "## Work\n\n### Lift it {#lift}\n\n- Time: 6/9/12\n- People: 2\n"
    found = estimate(written(text), (), workshop)
    assert found.price == Price(Decimal("61.99"), "EUR", Decimal("12.40"), Decimal("24.80"))
    assert estimate(written(text)).price is None


def test_a_lower_bound_has_no_price() -> None:
    workshop = Workshop(rate=Decimal(60), currency="EUR")
    assert estimate(written(TEXT, head=HEAD), (), workshop).price is None


def test_total_of_logged_steps_is_narrower_than_all_going_badly() -> None:
    runs = [each for step in ("cap", "hub", "clean", "sheet") for each in four_runs(step, 10, 12, 9, 15)]
    found = estimate(written(TEXT, head=HEAD), runs)
    assert found.worst_low < found.low < found.likely < found.high < found.worst_high
    assert found.count(Basis.LOG) == 4
