"""A rich edition for the tests of everything that is published: each kind of field is filled once."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

from procbuilder.model.edition import (
    Edition,
    EditionSection,
    EditionStep,
    Figure,
    FrontList,
    ItemLine,
    Legend,
    Line,
    Named,
)
from procbuilder.model.footage import Clip, Recording, Still
from procbuilder.model.ledger import Balance, Entry, Ledger, Moment, Opening
from procbuilder.model.origin import TYPED, Origin, OriginKind, Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Cue
from procbuilder.model.timecode import Span
from procbuilder.model.worked import Basis, Estimate, Hazard, Signal, Standing, StepTime, TorqueRow
from tests.publish.sample_media import STILLS, write_media

SCRIPT = "<script>alert(1)</script>"
IMPORT = '#import "x"'
MATHS = "$a$"

RAISED = Hazard(
    Signal.DANGER,
    "the trailer can drop off the stands",
    "crushed, will kill",
    "keep both stands under the axle, nobody underneath",
    "trailer raised",
    Place("procedure.md", 40),
)
STANDS = Standing((RAISED,), ("trailer raised",), ("2 x axle stand", "wheel chock"))
FROM_D1 = Origin(OriginKind.DOCUMENT, document="D1 p. 4")
FROM_MEMORY = Origin(OriginKind.MEMORY)


def sample_edition(media: Path) -> Edition:
    """Write the media files and return the edition that names them."""
    write_media(media)
    return Edition(
        title="Trailer wheel hub – renew the bearings",
        number="P-014",
        revision="B",
        status="draft",
        why_draft="2 problems stop an approval",
        item="Single-axle trailer, unbraked, 750 kg",
        applies_to="25 mm stub axle, four-stud hub",
        not_for="braked hubs",
        author="K.",
        work_place="stands",
        people="1",
        ask="workshop foreman, extension 12",
        language="en-GB",
        intro=("When the wheel **rocks at the top** or the hub runs hot after a short trip.",),
        hazards=(
            _hazard(Signal.WARNING, "grease spatter from the pressed bearing", "eye injury", "wear eye protection"),
        ),
        lists=_lists(),
        tools=(
            ItemLine("axle stand", "2 x", False, (1, 2)),
            ItemLine("flat bar", "", False, (3,), "said strip 0:44"),
            ItemLine("torque wrench", "", False, (8,)),
        ),
        supplies=(ItemLine("bearing grease", "60 g", False, (7,)),),
        parts=(ItemLine("bearing and seal kit", "1 x", True, (7,)), ItemLine("split pin", "1 x", True, (8,))),
        sections=_sections(),
        torques=_torques(),
        ledger=_ledger(),
        estimate=_estimate(),
        closing=(
            Named("Finding", "rust in the left wheel arch", ("watch", "told the owner, no answer yet")),
            Named("Later", "check the wheel nuts again", ("after 50 km", "owner told")),
        ),
        problems=_problems(),
        recordings=(
            Recording("strip", "recordings/hub-strip.mp4", "0" * 64, Fraction(195), 1280, 720, codec="h264"),
            Recording(
                "refit",
                "recordings/hub-refit.mp4",
                "1" * 64,
                Fraction(4321, 20),
                720,
                1280,
                rotation=270,
                remarks=("the sound breaks off at 2:10", f"odd title {SCRIPT}"),
            ),
        ),
    )


def _hazard(signal: Signal, hazard: str, consequence: str, avoid: str, origin: Origin = TYPED) -> Hazard:
    return Hazard(signal, hazard, consequence, avoid, "", Place("procedure.md", 50), origin)


def _lists() -> tuple[FrontList, ...]:
    return (
        FrontList(
            "Conditions",
            (
                Line("hitched to a parked tow car, its parking brake on, hard level ground"),
                Line("the wheel on the other side chocked in front and behind", origin="said strip 0:05"),
            ),
            none=False,
        ),
        FrontList("Documents", (Line("D1", "Axle maker's data sheet, 2024-03, checked 2026-02-01"),), none=False),
        FrontList("Wear", (Line("eye protection"), Line("gloves")), none=False),
        FrontList("Included", (Line("one hub, both bearings"),), none=False),
        FrontList("Not included", (), none=True),
    )


def _still(file: str, source: str = "strip 0:42") -> Still:
    width, height, _ = STILLS[file]
    return Still(file, width, height, source, "sharp, no hand in the way")


def _figure(file: str, alt: str, caption: str, state: str = "done", legend: tuple[Legend, ...] = ()) -> Figure:
    return Figure(_still(file), alt, caption, state, legend)


MANY = (
    "spans", "prose", "hazards", "holds", "tools", "supplies", "parts", "wear", "moves", "torques",
    "key_points", "checks", "notes", "figures", "captions",
)  # fmt: skip
"""Fields of a step that hold any number of things."""


def _step(number: int, name: str, command: str, **filled: Any) -> EditionStep:
    rest: dict[str, Any] = {
        "standing": Standing(),
        "reserved": "",
        "only_if": "",
        "as_found": None,
        "as_found_step": 0,
        "clip": None,
        "basis": Basis.NOTHING,
        "minutes": Decimal(0),
        "footage": Fraction(0),
    }
    return EditionStep(number=number, id=name, command=command, **{**dict.fromkeys(MANY, ()), **rest, **filled})


def _sections() -> tuple[EditionSection, ...]:
    strip = (_chock(), _raise(), _dust_cap(), _keeper(), _hub_off())
    refit = (_pack(), _bearings(), _tighten(), _gas(), _lower(), _spin())
    return (
        EditionSection("Before you start", ("Read the whole procedure once.",), (), ()),
        EditionSection("Strip", ("Lay the parts out in the order in which they come off.",), (), strip),
        EditionSection("Refit", (), (Named("Note", "clean hands, clean rag"),), refit),
    )


def _chock() -> EditionStep:
    return _step(
        1,
        "chock",
        "Chock the other wheel in front and behind",
        spans=(Span("strip", Fraction(0), Fraction(20)),),
        moves=(Named("For now", "wheel chock"), Named("State", "trailer hitched")),
        figures=(_figure("chock.jpg", "chocks at both sides of the wheel", "Chocks pushed home"),),
        basis=Basis.FOOTAGE,
        footage=Fraction(20),
    )


def _raise() -> EditionStep:
    return _step(
        2,
        "raise",
        "Raise the axle and set both stands under it",
        hazards=(
            _hazard(Signal.NOTICE, "the jack can dent the floor plate", "bent plate", "use the jacking point"),
            RAISED,
            _hazard(Signal.CAUTION, "the jack handle springs back", "bruised hand", "let it down slowly"),
            _hazard(Signal.WARNING, "the trailer can roll", "crushed foot", "check the chocks first", FROM_MEMORY),
        ),
        tools=(Line("2 x axle stand"), Line("trolley jack", origin="seen strip 0:31")),
        moves=(Named("State", "trailer raised"), Named("For now", "2 x axle stand")),
        holds=(Named("Hold", "rock the trailer: it must not move on the stands", ("the senior technician",)),),
        basis=Basis.TYPED,
        minutes=Decimal(6),
    )


def _dust_cap() -> EditionStep:
    return _step(
        3,
        "dust-cap",
        "Prise off the dust cap",
        spans=(Span("strip", Fraction(42), Fraction(75)),),
        prose=(
            "Work round the rim with the flat bar, *a little* at a time.",
            f"- first the top\n- then the sides\n\n{SCRIPT} and {IMPORT} and {MATHS}",
        ),
        standing=STANDS,
        hazards=(_hazard(Signal.CAUTION, "the bar can slip", "cut hand", "push away from you, other hand clear"),),
        tools=(Line("flat bar", origin="said strip 0:44"),),
        wear=(Line("eye protection"), Line("gloves", origin="from memory")),
        moves=(Named("Off", "dust cap", ("tray: 3",)),),
        key_points=(
            Line("turn the hub a little after each push", "a bent cap lets water in"),
            Line("keep the bar flat", "", "said strip 0:51"),
        ),
        figures=(
            _figure(
                "dust-cap.jpg",
                "dust cap started evenly all round",
                "Cap started evenly all round",
                legend=(Legend(1, "start here"), Legend(2, "then here")),
            ),
            _figure("tall.jpg", "rim of the cap from the side", "The rim from the side", "detail"),
        ),
        clip=Clip("dust-cap.mp4", Fraction(2), 320, 180, sound=False),
        captions=(
            Cue(Place("strip.srt", 1), Fraction(0), Fraction(9, 10), "a little at a time"),
            Cue(Place("strip.srt", 5), Fraction(1), Fraction(19, 10), f"nuts & bolts --> {SCRIPT}"),
        ),
        basis=Basis.FOOTAGE,
        footage=Fraction(33),
    )


def _keeper() -> EditionStep:
    return _step(
        4,
        "keeper",
        "Draw the split pin and take the keeper off",
        standing=STANDS,
        only_if="the hub has a keeper over the nut",
        tools=(Line("pliers"), Line("13 mm socket")),
        moves=(
            Named("Off", "keeper", ("by: 2 x M8 bolt, 13 mm", "tray: 3"), "seen strip 1:21"),
            Named("Off", "split pin, scrap"),
        ),
        notes=(
            Named("Hidden", "the pin's bent end", ("behind the keeper, feel with a finger",)),
            Named("If", "the pin is rusted in", ("soak it and wait", "10"), "from memory"),
            Named("Note", f"hostile {SCRIPT} {IMPORT} {MATHS} [link](javascript:alert(1))"),
        ),
        figures=(_figure("keeper-off.jpg", "hub without its keeper", "Keeper off"),),
        basis=Basis.TYPED,
        minutes=Decimal(4),
    )


def _hub_off() -> EditionStep:
    return _step(
        5,
        "hub-off",
        "Pull the hub off the stub axle",
        standing=STANDS,
        moves=(Named("Off", "hub"),),
        checks=(Named("Measure", "stub axle diameter", ("24.97 to 25.00 mm", "with: micrometer"), "from D1 p. 3"),),
        notes=(Named("Lift", "hub and drum", ("9 kg", "from 40 cm, to 80 cm, reach 30 cm")),),
        figures=(_figure("tall.jpg", "bare stub axle", "Bare stub axle"),),
    )


def _pack() -> EditionStep:
    return _step(
        6,
        "clean",
        "Wipe the stub axle clean",
        standing=STANDS,
        supplies=(Line("lint-free rag"),),
        key_points=(Line("wipe away from the seat", "grit cuts the new bearing"),),
    )


def _bearings() -> EditionStep:
    return _step(
        7,
        "bearings",
        "Slide the hub with its new bearings onto the stub axle",
        standing=STANDS,
        parts=(Line("1 x bearing and seal kit, new"),),
        supplies=(Line("bearing grease, 60 g"),),
        moves=(Named("On", "hub"),),
        figures=(_figure("refit.jpg", "hub back on the stub axle", "Hub home against the seal"),),
        as_found=_figure("keeper-found.jpg", "hub before it came off", "Hub before it came off", "found"),
        as_found_step=5,
    )


def _tighten() -> EditionStep:
    rows = _torques()
    return _step(
        8,
        "keeper-on",
        "Fit the keeper and tighten its bolts crosswise",
        standing=STANDS,
        torques=rows,
        moves=(Named("On", "keeper", ("by: 2 x M8 bolt, 13 mm",)), Named("Nip up", "hub nut")),
        checks=(Named("Check", "spin the hub", ("runs free without rocking",)),),
        figures=(_figure("refit.jpg", "keeper with both bolts", "Keeper on"),),
        as_found=_figure("keeper-found.jpg", "keeper before it came off", "Keeper before it came off", "found"),
        as_found_step=4,
    )


def _torques() -> tuple[TorqueRow, ...]:
    where = Place("procedure.md", 90)
    return (
        TorqueRow(
            "keeper bolts", "keeper-on", 8, "15 N·m then 30 N·m", "D1 p. 4", "cross", "dry threads", "", FROM_D1, where
        ),
        TorqueRow("hub nut", "keeper-on", 8, "", "D1, section 3", "", "weight on wheels", "stage 1", TYPED, where),
        TorqueRow("wheel nuts", "keeper-on", 8, "", "", "", "", "", TYPED, where, demanded=True),
        TorqueRow("cap screw", "keeper-on", 8, "4 N·m", "", "", "", "", FROM_MEMORY, where),
    )


def _gas() -> EditionStep:
    return _step(
        9,
        "gas",
        "Have the gas locker reconnected",
        standing=STANDS,
        reserved="a licensed gas fitter",
        hazards=(_hazard(Signal.DANGER, "gas can leak", "explosion, will kill", "no flame, no switch nearby"),),
        holds=(Named("Hold", "leak test passed and written down", ("the gas fitter",)),),
        prose=("Secret method: turn the union a quarter.",),
        key_points=(Line("secret key point"),),
        tools=(Line("secret spanner"),),
    )


def _lower() -> EditionStep:
    return _step(
        10,
        "lower",
        "Take the stands out and lower the trailer",
        standing=STANDS,
        moves=(Named("Ends", "trailer raised"), Named("Out again", "2 x axle stand")),
        basis=Basis.TYPED,
        minutes=Decimal(5),
    )


def _spin() -> EditionStep:
    return _step(
        11,
        "drive",
        "Drive 500 m and feel whether the hub is warm",
        checks=(Named("Check", "hand on the hub", ("hand-warm at most",)),),
        basis=Basis.TYPED,
        minutes=Decimal(8),
    )


def _ledger() -> Ledger:
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


def _estimate() -> Estimate:
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
        stated="1.5 h",
    )


def _problems() -> tuple[Problem, ...]:
    def problem(severity: Severity, line: int, what: str, instead: str, danger: int) -> Problem:
        return Problem(severity, Place("procedure.md", line), what, instead, "sample", danger)

    return (
        problem(Severity.ADVICE, 12, "the title has no verb", "write: object – operation", 5),
        problem(Severity.STOP, 61, "dust cap is still open", "add On: dust cap, or Left open with a reason", 2),
        problem(Severity.STOP, 90, "hub nut has no torque", "add Torque: hub nut | value | from:", 1),
        problem(Severity.ASK, 71, f"what does {SCRIPT} mean", "write it out", 4),
        problem(Severity.ASK, 75, "step 6 has no picture", "add Picture: time", 4),
        problem(Severity.ADVICE, 80, "step 9 was not filmed", "film it, or say so in a note", 5),
        problem(Severity.ADVICE, 84, "step 10 has no check", "add Check: test | what is right", 5),
    )
