"""Learning from the practice log."""

import math
import random
from dataclasses import replace
from statistics import fmean, median

import numpy as np
import pytest

from procbuilder.infer.learn import learn
from procbuilder.infer.prior import PRIOR, StepPrior
from procbuilder.model.lognormal import Lognormal
from procbuilder.model.practice import Run, sittings
from tests.infer.logged import World, run, totals

PLAIN = replace(PRIOR, tails=1e12, pool_weight=1e12, step_weight=1e12, person=1e-6, sitting=1e-6, people_weight=1e12)
"""Nothing but steps with a known spread: then the answer is in every textbook."""


def width(time: Lognormal) -> float:
    return math.log(time.quantile(0.9) / time.quantile(0.1))


def test_without_people_and_tails_it_is_the_textbook_update() -> None:
    """A normal mean with known spread: precisions add up, the mean is weighted by them (any Bayesian textbook)."""
    runs = [run("cap", minutes, day=day + 1, who=f"p{day}") for day, minutes in enumerate((6, 7, 9))]
    prior = replace(PLAIN, rate=1, rate_spread=1e-9, own_rate=1e-9)
    belief, _ = learn(runs, {"cap": StepPrior(8, 0.4)}, prior)
    before, rows = 1 / (0.4**2 + 0.3**2), 3 / 0.5**2
    mean = (math.log(8) * before + sum(math.log(m) for m in (6, 7, 9)) / 3 * rows) / (before + rows)
    assert belief.next("cap").mu == pytest.approx(mean, abs=1e-6)
    assert belief.next("cap").sigma == pytest.approx(math.sqrt(1 / (before + rows) + 0.5**2), abs=1e-6)


def test_one_row_moves_a_typed_time_part_of_the_way() -> None:
    belief, odd = learn([run("cap", 16)], {"cap": StepPrior(8, 0.4)})
    assert 8 < belief.next("cap").quantile(0.5) < 12
    assert odd == ()


def test_few_rows_give_wide_ranges() -> None:
    draw = random.Random(4)
    world = World.drawn(draw)
    runs = world.log(draw, 16)
    widths = [width(learn(runs[: 12 * people], {})[0].total([f"s{i}" for i in range(12)], 1)) for people in (1, 4, 16)]
    assert widths[0] > 1.2 * widths[1]
    assert widths[1] > 1.03 * widths[2]


def test_a_step_logged_once_takes_its_spread_from_the_others() -> None:
    """Steps that vary little make the range of a new one narrower than steps that vary much."""

    def new(factor: float) -> float:
        runs = [
            run(step, minutes, who=f"p{day}", day=day + 1)
            for day, minutes in enumerate((5 * factor, 5, 5 / factor, 5 * factor, 5, 5 / factor))
            for step in ("a", "b", "c")
        ]
        return float(learn([*runs, run("new", 4)], {})[0].rest[-1])

    assert new(1.05) < 0.7 * new(2.5)


def test_typed_steps_share_a_level() -> None:
    """Three steps that take half as long again as typed say so of a fourth, of which one row is there."""
    typed = {step: StepPrior(10, 0.4) for step in ("a", "b", "c", "d")}
    slow = [run(step, 15, who=f"p{day}", day=day + 1) for step in ("a", "b", "c") for day in range(4)]
    alone, _ = learn([run("d", 10)], typed)
    together, _ = learn([*slow, run("d", 10)], typed)
    assert together.next("d").quantile(0.5) > 1.04 * alone.next("d").quantile(0.5)


def test_order_of_the_rows_does_not_matter() -> None:
    draw = random.Random(9)
    runs = World.drawn(draw).log(draw, 5)
    one, _ = learn(runs, {})
    other, _ = learn(draw.sample(runs, len(runs)), {})
    steps = [f"s{i}" for i in range(12)]
    assert one.total(steps).mu == pytest.approx(other.total(steps).mu, abs=1e-9)
    assert [one.next(step).mu for step in steps] == pytest.approx([other.next(step).mu for step in steps], abs=1e-9)


def test_a_row_far_off_is_told_and_moves_little_but_counts_in_the_mean() -> None:
    """Nine rows of about five minutes and one of an hour, which was typed in line 11."""
    runs = [run("pin", 5 + day / 10, who=f"p{day}", day=day + 1, line=day + 2) for day in range(9)]
    without, _ = learn(runs, {})
    belief, odd = learn([*runs, run("pin", 60, who="p9", day=10, line=11)], {})
    assert [(each.place.line, each.step, each.minutes) for each in odd] == [(11, "pin", 60)]
    assert odd[0].low < 5.4 < odd[0].high < 14
    assert belief.next("pin", 1).quantile(0.5) < 1.25 * without.next("pin", 1).quantile(0.5)
    assert belief.total(["pin"], 1).mean > 1.25 * without.total(["pin"], 1).mean


def test_learning_rate_is_found_and_first_timers_are_slower() -> None:
    """Four people, eight times each, at 80 % (unit model): far from the stated 88 %."""
    draw = random.Random(2)
    runs = [
        run(step, 10 * time ** math.log2(0.8) * draw.lognormvariate(0, 0.1), who=who, day=time)
        for who in ("ab", "cd", "ef", "gh")
        for time in range(1, 9)
        for step in ("a", "b", "c")
    ]
    belief, _ = learn(runs, {})
    assert belief.rate == pytest.approx(0.8, abs=0.03)
    first, third, practised = (belief.total(["a", "b", "c"], times).quantile(0.5) for times in (1, 3, 10))
    assert first == pytest.approx(30, rel=0.08)
    assert (third / first, practised / first) == (pytest.approx(3**-0.32, abs=0.05), pytest.approx(10**-0.32, abs=0.06))


def test_without_repetition_the_stated_rate_holds() -> None:
    belief, _ = learn([run("a", 5), run("b", 6)], {})
    assert belief.rate == pytest.approx(0.88, abs=0.01)


def test_nothing_more_is_learned_after_the_tenth_time() -> None:
    belief, _ = learn([run("a", 5)], {})
    assert belief.next("a", 10) == belief.next("a", 30) != belief.next("a", 9)


def test_total_of_dependent_steps_is_wider_than_of_independent_ones() -> None:
    """A slow person is slow in all steps: the variance of the total is more than the sum of the variances."""
    draw = random.Random(3)
    belief, _ = learn(World.drawn(draw).log(draw, 6), {})
    alone = sum(belief.total([step]).variance for step in belief.steps)
    assert belief.total(belief.steps).variance > 1.3 * alone
    assert belief.total(belief.steps).mean == pytest.approx(sum(belief.total([step]).mean for step in belief.steps))


def test_sittings_end_with_the_day_or_when_a_step_comes_again() -> None:
    rows = [("a", 1, "x"), ("b", 1, "x"), ("a", 1, "x"), ("a", 2, "x"), ("a", 1, "y"), ("b", 2, "x")]
    runs = [run(step, 5, who=who, day=day) for step, day, who in rows]
    assert sittings(runs) == [("x", 1), ("x", 1), ("x", 2), ("x", 3), ("y", 1), ("x", 3)]
    later = [Run("x", "2026-03-01T16:00", "a", runs[0].minutes, runs[0].place), runs[0]]
    assert sittings(later) == [("x", 2), ("x", 1)]


@pytest.mark.parametrize("seized", [0.0, 0.15], ids=["lognormal", "some seized"])
def test_known_truth_is_met_by_the_total_and_held_by_the_range(seized: float) -> None:
    """Eighty jobs drawn by a known rule, each with a log of eight people: bias below 3 %, eight of ten inside."""
    draw = random.Random(11)
    likely, mean, inside, inside_steps = [], [], [], []
    for _ in range(80):
        world = World.drawn(draw, seized)
        belief, _ = learn(world.log(draw, 8), {})
        truth = [world.minutes(draw) for _ in range(300)]
        whole, total = list(totals(truth)), belief.total(belief.steps, 1)
        likely.append(total.quantile(0.5) / median(whole) - 1)
        mean.append(total.mean / fmean(whole) - 1)
        inside.append(fmean(total.quantile(0.1) <= each <= total.quantile(0.9) for each in whole))
        columns = np.array(truth).T
        ranges = [belief.next(f"s{at}", 1) for at in range(12)]
        inside_steps += [
            float(np.mean((time.quantile(0.1) <= column) & (column <= time.quantile(0.9))))
            for time, column in zip(ranges, columns, strict=True)
        ]
    assert abs(fmean(likely)) < 0.03
    assert abs(fmean(mean)) < 0.03
    assert fmean(inside) == pytest.approx(0.80, abs=0.05)
    assert fmean(inside_steps) == pytest.approx(0.80, abs=0.05)


def test_steps_of_the_same_operation_borrow_from_each_other() -> None:
    """A pin logged once at 6 min; elsewhere the same was done twelve times in about 2: it lies nearer to these."""
    once = [run("pin", 6)]
    others = [run("drill/pin", 2 + day / 10, who=f"p{day % 4}", day=day + 1) for day in range(12)]
    others = [replace(each, place=replace(each.place, file="../drill/times.csv")) for each in others]
    alone, _ = learn([*once, *others], {})
    pooled, _ = learn([*once, *others], {}, kinds={"pin": "off split pin", "drill/pin": "off split pin"})
    apart, _ = learn([*once, *others], {}, kinds={"pin": "off split pin", "drill/pin": "off cover"})
    assert pooled.next("pin").quantile(0.5) < 0.96 * alone.next("pin").quantile(0.5)
    assert pooled.next("pin").sigma < alone.next("pin").sigma
    assert apart.next("pin").mu == pytest.approx(alone.next("pin").mu, abs=1e-9)


def test_a_typed_step_does_not_borrow() -> None:
    runs = [run("pin", 6), *(run("other", 2, who=f"p{day}", day=day + 1) for day in range(8))]
    kinds = {"pin": "off split pin", "other": "off split pin"}
    typed = {"pin": StepPrior(6, 0.4)}
    assert learn(runs, typed, kinds=kinds)[0].next("pin") == learn(runs, typed)[0].next("pin")


def test_sittings_of_several_logs_are_counted_apart() -> None:
    runs = [run("a", 5, day=1), run("a", 5, day=2), run("b", 5, day=3)]
    runs[2] = replace(runs[2], place=replace(runs[2].place, file="../drill/times.csv"))
    assert sittings(runs) == [("ab", 1), ("ab", 2), ("ab", 1)]
