"""The steps of the sample edition."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

from procbuilder.model.edition import EditionSection, EditionStep, Figure, PicturePair
from procbuilder.model.estimate import Basis
from procbuilder.model.footage import TYPED_MOMENT, Clip, Still
from procbuilder.model.marks import Mark, MarkShape, PictureState
from procbuilder.model.origin import TYPED, Origin, OriginKind, Place
from procbuilder.model.procedure import Cue
from procbuilder.model.quantity import Item
from procbuilder.model.sequence import spiral, star
from procbuilder.model.sign import Sign
from procbuilder.model.signal import Signal
from procbuilder.model.timecode import Span
from procbuilder.model.torque import BLANK, Torque, read_torque
from procbuilder.model.worked import Hazard, Standing, TorqueRow
from tests.publish.sample_media import STILLS
from tests.publish.sample_words import IMPORT, MATHS, SCRIPT
from tests.publish.typed import listed, typed

RAISED = Hazard(
    Signal.DANGER,
    "the trailer can drop off the stands",
    "crushed, will kill",
    "keep both stands under the axle, nobody underneath",
    "trailer raised",
    Place("procedure.md", 40),
    signs=(Sign("W019", "Crushing"), Sign("P024", "Do not walk or stand here")),
)
PROTECTIONS = tuple(statement.items[0] for statement in listed("Tool: 2 x axle stand; wheel chock"))
STANDS = Standing((RAISED,), ("trailer raised",), PROTECTIONS)
FROM_D1 = Origin(OriginKind.DOCUMENT, document="D1 p. 4")
FROM_MEMORY = Origin(OriginKind.MEMORY)


def hazard(signal: Signal, hazard: str, consequence: str, avoid: str, origin: Origin = TYPED) -> Hazard:
    return Hazard(signal, hazard, consequence, avoid, "", Place("procedure.md", 50), origin)


def _still(file: str) -> Still:
    width, height, _ = STILLS[file]
    return Still(file, width, height, "strip", Fraction(42), "", TYPED_MOMENT)


def _figure(file: str, shows: str, state: PictureState = PictureState.DONE, marks: tuple[Mark, ...] = ()) -> Figure:
    return Figure(_still(file), shows, state, marks, _still(file) if marks else None)


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


def sections() -> tuple[EditionSection, ...]:
    strip = (_chock(), _raise(), _dust_cap(), _keeper(), _hub_off())
    refit = (_pack(), _bearings(), _tighten(), _gas(), _lower(), _spin())
    return (
        EditionSection("Before you start", ("Read the whole procedure once.",), (), ()),
        EditionSection("Strip", ("Lay the parts out in the order in which they come off.",), (), strip),
        EditionSection("Refit", (), (typed("Note: clean hands, clean rag"),), refit),
    )


def _chock() -> EditionStep:
    return _step(
        1,
        "chock",
        "Chock the other wheel in front and behind",
        spans=(Span("strip", Fraction(0), Fraction(20)),),
        moves=(typed("For now: wheel chock"), typed("State: trailer hitched")),
        figures=(_figure("chock.jpg", "Chocks pushed home"),),
        basis=Basis.FOOTAGE,
        footage=Fraction(20),
    )


def _raise() -> EditionStep:
    return _step(
        2,
        "raise",
        "Raise the axle and set both stands under it",
        hazards=(
            hazard(Signal.NOTICE, "the jack can dent the floor plate", "bent plate", "use the jacking point"),
            RAISED,
            hazard(Signal.CAUTION, "the jack handle springs back", "bruised hand", "let it down slowly"),
            hazard(Signal.WARNING, "the trailer can roll", "crushed foot", "check the chocks first", FROM_MEMORY),
        ),
        tools=(*listed("Tool: 2 x axle stand"), *listed("Tool: trolley jack (seen strip 0:31)")),
        moves=(typed("State: trailer raised"), typed("For now: 2 x axle stand")),
        holds=(typed("Hold: rock the trailer: it must not move on the stands | the senior technician"),),
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
        hazards=(hazard(Signal.CAUTION, "the bar can slip", "cut hand", "push away from you, other hand clear"),),
        tools=listed("Tool: flat bar (said strip 0:44)"),
        wear=(*listed("Wear: eye protection"), *listed("Wear: gloves (from memory)")),
        moves=(typed("Off: dust cap | tray: 3"),),
        key_points=(
            typed("Key point: turn the hub a little after each push | a bent cap lets water in"),
            typed("Key point: keep the bar flat (said strip 0:51)"),
        ),
        figures=(
            _figure(
                "dust-cap.jpg",
                "Cap started evenly all round",
                marks=(
                    Mark(MarkShape.ARROW, (0.61, 0.40, 0.52, 0.47), "start here", Place("procedure.md", 60)),
                    Mark(MarkShape.RING, (0.2, 0.6), "then here", Place("procedure.md", 61)),
                ),
            ),
            _figure("tall.jpg", "The rim from the side", PictureState.DETAIL),
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
        tools=listed("Tool: pliers; 13 mm socket"),
        moves=(
            typed("Off: keeper | by: 2 x M8 bolt, 13 mm | tray: 3 (seen strip 1:21)"),
            typed("Off: split pin, scrap"),
        ),
        notes=(
            typed("Hidden: the pin's bent end | behind the keeper, feel with a finger"),
            typed("If: the pin is rusted in | soak it and wait | 10 (from memory)"),
            typed(f"Note: hostile {SCRIPT} {IMPORT} {MATHS} [link](javascript:alert(1))"),
        ),
        figures=(_figure("keeper-off.jpg", "Keeper off"),),
        basis=Basis.TYPED,
        minutes=Decimal(4),
    )


def _hub_off() -> EditionStep:
    return _step(
        5,
        "hub-off",
        "Pull the hub off the stub axle",
        standing=STANDS,
        moves=(typed("Off: hub"),),
        checks=(typed("Measure: stub axle diameter | 24.97 to 25.00 mm | with: micrometer (from D1 p. 3)"),),
        notes=(typed("Lift: hub and drum | 9 kg | from 40 cm, to 80 cm, reach 30 cm"),),
        figures=(_figure("tall.jpg", "Bare stub axle"),),
    )


def _pack() -> EditionStep:
    return _step(
        6,
        "clean",
        "Wipe the stub axle clean",
        standing=STANDS,
        supplies=listed("Supply: lint-free rag; brake cleaner, 50 ml"),
        no_phone="brake cleaner",
        key_points=(typed("Key point: wipe away from the seat | grit cuts the new bearing"),),
    )


def _bearings() -> EditionStep:
    return _step(
        7,
        "bearings",
        "Slide the hub with its new bearings onto the stub axle",
        standing=STANDS,
        parts=listed("Part: 1 x bearing and seal kit, new"),
        supplies=listed("Supply: bearing grease, 60 g"),
        moves=(typed("On: hub"),),
        figures=(_figure("refit.jpg", "Hub home against the seal"),),
        as_found=_figure("keeper-found.jpg", "Hub before it came off", PictureState.FOUND),
        as_found_step=5,
    )


def _tighten() -> EditionStep:
    rows = torques()
    return _step(
        8,
        "keeper-on",
        "Fit the keeper and tighten its bolts crosswise",
        standing=STANDS,
        torques=rows,
        moves=(typed("On: keeper | by: 2 x M8 bolt, 13 mm"), typed("Nip up: hub nut")),
        checks=(typed("Check: spin the hub | runs free without rocking"),),
        figures=(_figure("refit.jpg", "Keeper on"),),
        as_found=_figure("keeper-found.jpg", "Keeper before it came off", PictureState.FOUND),
        as_found_step=4,
    )


def pairs() -> tuple[PicturePair, ...]:
    found = _figure("keeper-found.jpg", "Keeper before it came off", PictureState.FOUND)
    return (PicturePair("keeper", 4, found, 8, None), PicturePair("hub", 5, found, 7, found))


def torques() -> tuple[TorqueRow, ...]:
    where = Place("procedure.md", 90)
    bolts, nut, nuts, screw = (Item(name, where) for name in ("keeper bolts", "hub nut", "wheel nuts", "cap screw"))
    return (
        TorqueRow(
            bolts,
            "keeper-on",
            8,
            read_torque("15 N·m then 30 N·m"),
            "D1 p. 4",
            "cross",
            "dry threads",
            FROM_D1,
            where,
            sequence=star(4),
            also=read_torque("11 lbf·ft then 22 lbf·ft").stages,
        ),
        TorqueRow(nut, "keeper-on", 8, Torque(stage=1), "D1, section 3", "", "weight on wheels", TYPED, where),
        TorqueRow(nuts, "keeper-on", 8, BLANK, "", "", "", TYPED, where, demanded=True),
        TorqueRow(screw, "keeper-on", 8, read_torque("4 N·m"), "", "", "", FROM_MEMORY, where, sequence=spiral(2, 3)),
    )


def _gas() -> EditionStep:
    return _step(
        9,
        "gas",
        "Have the gas locker reconnected",
        standing=STANDS,
        reserved="a licensed gas fitter",
        hazards=(hazard(Signal.DANGER, "gas can leak", "explosion, will kill", "no flame, no switch nearby"),),
        holds=(typed("Hold: leak test passed and written down | the gas fitter"),),
        prose=("Secret method: turn the union a quarter.",),
        key_points=(typed("Key point: secret key point"),),
        tools=listed("Tool: secret spanner"),
    )


def _lower() -> EditionStep:
    return _step(
        10,
        "lower",
        "Take the stands out and lower the trailer",
        standing=STANDS,
        moves=(typed("Ends: trailer raised"), typed("Out again: 2 x axle stand")),
        basis=Basis.TYPED,
        minutes=Decimal(5),
    )


def _spin() -> EditionStep:
    return _step(
        11,
        "drive",
        "Drive 500 m and feel whether the hub is warm",
        checks=(typed("Check: hand on the hub | hand-warm at most"),),
        basis=Basis.TYPED,
        minutes=Decimal(8),
    )
