"""The first estimate."""

from decimal import Decimal
from fractions import Fraction

from procbuilder.infer.times import estimate
from procbuilder.model.estimate import Basis, Evidence, StepTime
from tests.infer.written import written

TEXT = """
## Work

### strip 0:00-2:30 Prise off the cap {#cap}

- Time: 4/5/10

### strip 3:00-3:40, strip 4:00-4:10 Clean the hub {#clean}

- Skip: strip 3:10-3:20 | phone
- Wait: 15 | cleaner dries

### Fill in the sheet {#sheet}

### refit 0:00-1:00 Warm the hub {#warm}

- Only if: it sticks
- Time: 20
- Wait: 30 | it warms up

### refit 1:00-2:00 Pack the bearing {#pack}

- Wait: 10 | grease settles | overlaps: yes
"""


def test_typed_minutes_come_before_footage() -> None:
    steps = {step.step: step for step in estimate(written(TEXT)).steps}
    film = Decimal("2.50")
    assert steps["cap"] == StepTime(
        "cap", Basis.TYPED, Decimal(4), Decimal(5), Decimal(10), Fraction(150),
        evidence=(Evidence(Basis.TYPED, Decimal(4), Decimal(5), Decimal(10)),
                  Evidence(Basis.FOOTAGE, film, film, film)),
    )  # fmt: skip


def test_footage_is_the_same_low_likely_and_high() -> None:
    """Forty seconds, of which ten are skipped, and ten more: two thirds of a minute, shown as 0.67."""
    steps = {step.step: step for step in estimate(written(TEXT)).steps}
    minutes = Decimal("0.67")
    assert steps["clean"] == StepTime(
        "clean", Basis.CUT, minutes, minutes, minutes, Fraction(40),
        evidence=(Evidence(Basis.CUT, minutes, minutes, minutes, 2),),
    )  # fmt: skip


def test_step_without_film_and_minutes_has_nothing() -> None:
    steps = {step.step: step for step in estimate(written(TEXT)).steps}
    nothing = Decimal(0)
    assert steps["sheet"] == StepTime("sheet", Basis.NOTHING, nothing, nothing, nothing, Fraction(0))


def test_totals_leave_out_the_branch_and_overlapping_waits() -> None:
    """Likely 5 + 0.67 + 1 = 6.67 minutes are 0.2 h; with the branch it would be 0.5 h."""
    total = estimate(written(TEXT))
    assert (total.low, total.likely, total.high) == (Decimal("0.1"), Decimal("0.2"), Decimal("0.2"))
    assert total.waiting == Decimal(15)


def test_branch_keeps_its_minutes_but_is_not_counted() -> None:
    total = estimate(written(TEXT))
    branch = next(step for step in total.steps if step.step == "warm")
    assert (branch.likely, branch.extra) == (Decimal(20), True)
    assert [total.count(basis) for basis in Basis] == [0, 1, 1, 1, 1]


def test_estimate_is_no_lower_bound_when_every_step_has_minutes() -> None:
    procedure = written("## Work\n### strip 0:00-0:10 Lift it\n- Time: 3\n### Try it\n- Time: 6\n")
    total = estimate(procedure)
    assert (total.likely, total.lower_bound) == (Decimal("0.2"), False)


def test_stated_total_is_kept_as_typed() -> None:
    head = "---\nformat: 1\nstated time: about 1.5 h\n---\n# Hub – renew\n\n"
    assert estimate(written("", head=head)).stated == "about 1.5 h"
