"""Lists before the start, ledger, estimate and problems of the sample edition."""

from decimal import Decimal
from fractions import Fraction

from procbuilder.model.edition import FrontList
from procbuilder.model.estimate import Basis, Estimate, StepTime
from procbuilder.model.facts import Blank, Line, StepRef, Value, facts
from procbuilder.model.ledger import Balance, Entry, Ledger, Moment, Opening
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from tests.publish.sample_words import SCRIPT
from tests.publish.typed import listed, typed


def lists() -> tuple[FrontList, ...]:
    return (
        FrontList(
            "Condition",
            (
                typed("Condition: hitched to a parked tow car, its parking brake on, hard level ground"),
                typed("Condition: the wheel on the other side chocked in front and behind (said strip 0:05)"),
            ),
            none=False,
        ),
        FrontList(
            "Document", (typed("Document: D1 | Axle maker's data sheet | 2024-03 | checked 2026-02-01"),), none=False
        ),
        FrontList("Wear", (*listed("Wear: eye protection"), *listed("Wear: gloves")), none=False),
        FrontList("Included", (typed("Included: one hub, both bearings"),), none=False),
        FrontList("Not included", (), none=True),
    )


def ledger() -> Ledger:
    def at(number: int, step: str, seconds: int | None = None) -> tuple[Moment, ...]:
        time = None if seconds is None else Fraction(seconds)
        return (Moment(step, number, Place("procedure.md", number * 10), "strip" if seconds else "", time),)

    one = Decimal(1)
    return Ledger(
        (
            Entry("wheel chock", Opening.TEMPORARY, Balance.LEFT_OPEN, at(1, "chock", 12), (), one, Decimal(0),
                  reason="stays until the trailer is unhitched, K."),
            Entry("dust cap", Opening.OFF, Balance.OPEN, at(3, "dust-cap", 69), (), one, Decimal(0), tray="3"),
            Entry("M8 bolt", Opening.OFF, Balance.OPEN, at(4, "keeper"), at(8, "keeper-on"), Decimal(2), one),
            Entry("hub", Opening.OFF, Balance.CLOSED, at(5, "hub-off", 140), at(7, "bearings"), one, one),
            Entry("hub nut", Opening.SLACKENED, Balance.NEVER_OPENED, (), at(8, "keeper-on"), Decimal(0), one),
        )
    )  # fmt: skip


def estimate() -> Estimate:
    def time(step: str, basis: Basis, low: int, likely: int, high: int) -> StepTime:
        return StepTime(step, basis, Decimal(low), Decimal(likely), Decimal(high), Fraction(0))

    return Estimate(
        steps=(
            time("chock", Basis.FOOTAGE, 1, 1, 1),
            time("raise", Basis.TYPED, 5, 6, 9),
            time("dust-cap", Basis.FOOTAGE, 1, 1, 1),
            time("keeper", Basis.TYPED, 3, 4, 8),
            *(time(step, Basis.NOTHING, 0, 0, 0) for step in ("hub-off", "clean", "bearings", "keeper-on", "gas")),
            time("lower", Basis.TYPED, 4, 5, 7),
            time("drive", Basis.TYPED, 6, 8, 12),
        ),
        low=Decimal("0.4"),
        likely=Decimal("0.5"),
        high=Decimal("0.7"),
        waiting=Decimal(10),
        films=2,
        stated="1.5 h",
    )


def problems() -> tuple[Problem, ...]:
    def problem(rule: str, severity: Severity, at: int, danger: int, form: str = "", **told: Value) -> Problem:
        return Problem(rule, severity, Place("procedure.md", at), facts(**told), form, danger)

    value = Line("Torque", ("hub nut", Blank("value")))
    check = Line("Check", (Blank("test"),))
    return (
        problem("unnamed-procedure", Severity.ADVICE, 12, 5, "author", key="author"),
        problem("left-open-unclear", Severity.STOP, 61, 2, "not-open", item="dust cap"),
        problem("nowhere-to-look", Severity.STOP, 90, 1, item="hub nut", line=value),
        problem("not-a-command", Severity.ASK, 71, 4, command=f"what {SCRIPT} means"),
        problem("field", Severity.ASK, 75, 4, "word-twice", word="from", field="Torque"),
        problem(
            "derived-not-accepted", Severity.ADVICE, 80, 5, step=StepRef("gas", 9), source="#keeper", typed="#keeper"
        ),
        problem("no-final-check", Severity.ADVICE, 84, 5, step=StepRef("lower", 10), command="Lower it", line=check),
    )
