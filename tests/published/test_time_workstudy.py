"""Standard times against published worked examples; normal times as printed there."""

from decimal import ROUND_HALF_UP, Decimal

import pytest

from procbuilder.model.workstudy import Allowance, Convention


@pytest.mark.parametrize(
    ("normal", "share", "convention", "standard"),
    [
        # Heizer and Render, Operations Management, chapter 10, example 2: 15 % of the day.
        pytest.param("15.36", "0.15", Convention.DAY, "18.07", id="letter-mailing"),
        pytest.param("15.36", "0.15", Convention.JOB, "17.66", id="letter-mailing-by-the-job"),
        # The same book, problem 10.23: 12 % of the day; it prints 5.4.
        pytest.param("4.7445", "0.12", Convention.DAY, "5.39", id="envelopes"),
        # A published example: 20 s rated 120 %, 20 % of the job time.
        pytest.param("24", "0.2", Convention.JOB, "28.80", id="seconds"),
        # Five elements of a published course example, rated 110 %, by exact arithmetic.
        pytest.param("83.93", "0.15", Convention.JOB, "96.52", id="five-elements-by-the-job"),
        pytest.param("83.93", "0.15", Convention.DAY, "98.74", id="five-elements"),
    ],
)
def test_standard_times(normal: str, share: str, convention: Convention, standard: str) -> None:
    found = Allowance(Decimal(share), convention).standard(Decimal(normal))
    assert found.quantize(Decimal("0.01"), ROUND_HALF_UP) == Decimal(standard)


@pytest.mark.parametrize("share", ["1", "-0.01"])
def test_an_allowance_is_a_share(share: str) -> None:
    with pytest.raises(ValueError, match=f"an allowance is a share from 0 to below 1, not {share}"):
        Allowance(Decimal(share), Convention.DAY)
