"""Times foretold from earlier runs, against open annotations of the same jobs done by many people.

Source: CaptainCook4D, repository CaptainCook4D/annotations (MIT licence). The spreads were chosen on jobs 1 to 5;
what is asserted here is on jobs 7 to 13. The whole table: ``python -m tests.bench.time_calibration``.
"""

from statistics import fmean

import pytest

from tests.bench.open_data import CHOOSING, FILE, REPORTING, jobs, mean_seconds
from tests.bench.time_calibration import EARLIER, STEP, WHOLE, Foretold, all_of, between, gain, of, share_inside

pytestmark = pytest.mark.skipif(not FILE.is_file(), reason="the shared data folder is not beside the repository")


@pytest.fixture(scope="module")
def foretold() -> list[Foretold]:
    """Jobs 7 to 13 in five random orders of their runs."""
    return all_of(REPORTING, range(5))


@pytest.mark.parametrize(
    ("job", "published"),
    [(1, 44.965380046582794), (2, 67.97136912589151), (3, 40.50214016256435), (4, 39.44753424945708),
     (5, 52.3711078634185)],
)  # fmt: skip
def test_mean_segment_length_is_the_published_one(job: int, published: float) -> None:
    """The publisher's ``average_segment_length.csv``."""
    assert mean_seconds(job) == pytest.approx(published, abs=1e-6)


def test_chosen_and_reported_jobs_are_apart_and_many_people_did_them() -> None:
    assert set(CHOOSING) & set(REPORTING) == set()
    assert set(CHOOSING) | set(REPORTING) == set(jobs())
    assert min(len(runs) for runs in jobs().values()) == 12


def test_number_of_predictions(foretold: list[Foretold]) -> None:
    assert [len(of(foretold, WHOLE, k)) for k in EARLIER] == [420, 390, 330, 210]
    assert [len(of(foretold, STEP, k)) for k in EARLIER] == [3976, 3937, 3325, 2073]


@pytest.mark.parametrize("kind", [STEP, WHOLE])
@pytest.mark.parametrize("k", [2, 4, 8])
def test_range_holds_eight_of_ten_next_runs(foretold: list[Foretold], kind: str, k: int) -> None:
    """0.80 ± 0.05, and 0.80 lies in the bootstrap interval over runs."""
    part = of(foretold, kind, k)
    low, high = between(part)
    assert 0.75 <= share_inside(part) <= 0.85
    assert low < 0.80 < high


@pytest.mark.parametrize("kind", [STEP, WHOLE])
def test_range_from_eight_runs_is_a_quarter_narrower_than_from_one(foretold: list[Foretold], kind: str) -> None:
    """In minutes. The ratio of high to low shrinks a little less: for whole jobs its logarithm by 24 %."""
    one, eight = of(foretold, kind, 1), of(foretold, kind, 8)
    assert fmean(each.minutes for each in eight) < 0.75 * fmean(each.minutes for each in one)
    assert fmean(each.width for each in eight) < 0.77 * fmean(each.width for each in one)


@pytest.mark.parametrize("kind", [STEP, WHOLE])
@pytest.mark.parametrize("k", [2, 4, 8])
@pytest.mark.parametrize("against", ["plain", "careful"])
def test_log_score_beats_mean_and_spread(foretold: list[Foretold], kind: str, k: int, against: str) -> None:
    """Against a normal of the earlier runs' mean and spread, and against Student's t of them."""
    assert gain(of(foretold, kind, k), against) > 0.05
