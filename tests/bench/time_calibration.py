"""How well times are foretold: from k earlier runs of a job to its next run, on open data.

Run as ``python -m tests.bench.time_calibration``. The spreads of ``infer/prior.py`` are chosen on some jobs and
reported on others. The data do not tell in which order the runs were done, so they are put into random orders by a
fixed seed; the last table has them as they are filed.
"""

import math
import random
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from statistics import fmean, stdev

from procbuilder.infer.learn import learn
from procbuilder.infer.prior import PRIOR, Prior
from procbuilder.model.lognormal import Lognormal
from procbuilder.model.origin import Place
from procbuilder.model.practice import Run
from tests.bench.open_data import CHOOSING, REPORTING, Job, jobs

EARLIER = (1, 2, 4, 8)
STEP, WHOLE = "step", "whole job"


@dataclass(frozen=True, slots=True)
class Foretold:
    """One prediction and how it went."""

    kind: str
    earlier: int
    run: str
    inside: bool
    """The run lies in the range that holds eight of ten."""
    width: float
    """Logarithm of high over low."""
    minutes: float
    """High minus low."""
    score: float
    """Logarithm of the density at what happened; more is better."""
    plain: float
    """The same for a normal with the mean and spread of the earlier runs; NaN for one run."""
    careful: float
    """The same for Student's t with that mean and spread, the doubt of both taken in."""


def foretell(job: Job, seed: int | None, prior: Prior = PRIOR) -> Iterator[Foretold]:
    """Each run of a job from the k runs before it."""
    order = list(job)
    if seed is not None:
        random.Random(seed).shuffle(order)
    for earlier in EARLIER:
        for at in range(earlier, len(order)):
            yield from _next(job, order[at - earlier : at], order[at], prior)


def _next(job: Job, before: Sequence[str], run: str, prior: Prior) -> Iterator[Foretold]:
    rows = [
        Run(name, "2000-01-01", step, Decimal(minutes), Place("", 0))
        for name in before
        for step, minutes in job[name].items()
    ]
    belief, _ = learn(rows, {}, prior)
    steps = [step for step in job[run] if step in belief.steps]
    for step in steps:
        earlier = [job[name][step] for name in before if step in job[name]]
        yield _foretold(STEP, len(before), run, belief.next(step, 1), job[run][step], earlier)
    totals = [sum(job[name].get(step, 0.0) for step in steps) for name in before]
    happened = sum(job[run][step] for step in steps)
    yield _foretold(WHOLE, len(before), run, belief.total(steps, 1), happened, totals)


def _foretold(kind: str, k: int, run: str, time: Lognormal, happened: float, earlier: list[float]) -> Foretold:
    low, high = time.quantile(0.1), time.quantile(0.9)
    z = (math.log(happened) - time.mu) / time.sigma
    score = -(z**2) / 2 - math.log(happened * time.sigma * math.sqrt(2 * math.pi))
    plain, careful = _plain(earlier, happened) if len(earlier) > 1 else (math.nan, math.nan)
    return Foretold(kind, k, run, low <= happened <= high, math.log(high / low), high - low, score, plain, careful)


def _plain(earlier: list[float], happened: float) -> tuple[float, float]:
    """Log densities of mean ± spread: normal, and Student's t. A spread of less than a second counts as one."""
    n, middle, spread = len(earlier), fmean(earlier), max(stdev(earlier), 1 / 60)
    normal = -(((happened - middle) / spread) ** 2) / 2 - math.log(spread * math.sqrt(2 * math.pi))
    wide = spread * math.sqrt(1 + 1 / n)
    norm = math.lgamma(n / 2) - math.lgamma((n - 1) / 2) - math.log(math.sqrt((n - 1) * math.pi) * wide)
    return normal, norm - n / 2 * math.log1p(((happened - middle) / wide) ** 2 / (n - 1))


def all_of(numbers: Iterable[int], seeds: Iterable[int | None], prior: Prior = PRIOR) -> list[Foretold]:
    """Every prediction for these jobs in these orders."""
    known = jobs()
    return [each for number in numbers for seed in seeds for each in foretell(known[number], seed, prior)]


def share_inside(predictions: Iterable[Foretold]) -> float:
    """Share of what happened that lay inside the range."""
    return fmean(each.inside for each in predictions)


def between(predictions: Iterable[Foretold], seed: int = 1, draws: int = 500) -> tuple[float, float]:
    """95 % bootstrap interval of the share inside, drawn by runs, since steps of one run go together."""
    by_run: dict[str, list[bool]] = defaultdict(list)
    for each in predictions:
        by_run[each.run].append(each.inside)
    runs, draw = list(by_run.values()), random.Random(seed)
    shares = sorted(fmean([hit for run in draw.choices(runs, k=len(runs)) for hit in run]) for _ in range(draws))
    return shares[round(draws * 0.025)], shares[round(draws * 0.975) - 1]


def of(predictions: Iterable[Foretold], kind: str, earlier: int) -> list[Foretold]:
    """Those of one kind from so many earlier runs."""
    return [each for each in predictions if each.kind == kind and each.earlier == earlier]


def gain(predictions: Iterable[Foretold], against: str) -> float:
    """Mean gain in log score over ``plain`` or ``careful``, where there is one."""
    return fmean(each.score - getattr(each, against) for each in predictions if not math.isnan(each.plain))


def table(predictions: list[Foretold]) -> Iterator[str]:
    """Lines of a table."""
    yield "foretold   k     n  inside  95 % interval  width (log)  width (min)  score  gain on mean ± spread, on t"
    for kind in (STEP, WHOLE):
        for k in EARLIER:
            part = of(predictions, kind, k)
            low, high = between(part)
            gains = f"{gain(part, 'plain'):12.2f}  {gain(part, 'careful'):5.2f}" if k > 1 else ""
            yield (
                f"{kind:<9} {k:>2} {len(part):>5}  {share_inside(part):.3f}  {low:.3f} to {high:.3f}"
                f"  {fmean(e.width for e in part):11.2f}  {fmean(e.minutes for e in part):11.2f}"
                f"  {fmean(e.score for e in part):5.2f}  {gains}"
            )


def choices() -> Iterator[Prior]:
    """The stated spreads first, then each of them made smaller and larger."""
    yield PRIOR
    for name in ("person", "sitting", "step", "pool_weight", "step_weight", "tails", "unknown", "people_weight"):
        for factor in (0.6, 1.6):
            yield replace(PRIOR, **{name: getattr(PRIOR, name) * factor})


def main() -> None:
    """Print the choice and the report."""
    print("Choice, jobs", *CHOOSING)
    for prior in choices():
        found = all_of(CHOOSING, range(4), prior)
        scores = [fmean(each.score for each in found if each.kind == kind) for kind in (STEP, WHOLE)]
        inside = [share_inside([each for each in found if each.kind == kind]) for kind in (STEP, WHOLE)]
        changed = {name: value for name in Prior.__slots__ if (value := getattr(prior, name)) != getattr(PRIOR, name)}
        print(
            f"score {scores[0]:.4f} {scores[1]:.4f}  inside {inside[0]:.3f} {inside[1]:.3f}  {changed or 'as stated'}"
        )
    print("\nReport, jobs", *REPORTING, "in five random orders")
    print(*table(all_of(REPORTING, range(5))), sep="\n")
    print("\nThe same jobs with their runs as filed")
    print(*table(all_of(REPORTING, (None,))), sep="\n")


if __name__ == "__main__":
    main()
