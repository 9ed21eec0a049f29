"""Dangers proposed from the words of the work: one sentence for each kind, and sentences that must stay silent."""

from collections.abc import Callable

import pytest

from procbuilder.infer.dangers import standing
from procbuilder.infer.lexicon import load
from procbuilder.infer.proposed import noticed
from procbuilder.model.activity import Noticed
from tests.growth import no_blow_up
from tests.infer.written import written

LEVELS = {
    "DANGER": (
        "working under a raised vehicle", "vehicle lift", "jacking, chocking, stands",
        "air suspension, tipping body or cab", "compressing a coil spring", "petrol line or tank opened",
        "diesel high pressure", "gas fuel system", "airbag", "seat-belt pretensioner", "on high-voltage parts",
        "damaged lithium battery", "belts, fans and shafts", "large or multi-piece wheels", "hydraulic circuit",
        "two-pack paint, isocyanate", "mains electricity, lock-out",
    ),
    "CAUTION": (
        "battery off and on", "impact wrench", "drilling out, extracting", "heat gun, induction heater",
        "oils and fluids", "sharp edges and glass",
    ),
    "NOTICE": ("timing belt or chain",),
}  # fmt: skip
"""Common practice by activity; all others could kill or seriously injure: WARNING."""

HELD = {
    "petrol line or tank opened", "diesel high pressure", "gas fuel system", "airbag", "seat-belt pretensioner",
    "on high-voltage parts", "hybrid or electric vehicle, near high voltage", "damaged lithium battery",
    "refrigerant circuit opened", "brake hydraulics opened", "steering and suspension joints",
    "large or multi-piece wheels", "hydraulic circuit", "welding, brazing, flame", "mains electricity, lock-out",
}  # fmt: skip
"""Work that is stopped until somebody has checked it: common practice."""

RESERVED = {
    "gas fuel system", "airbag", "seat-belt pretensioner", "on high-voltage parts", "damaged lithium battery",
    "refrigerant circuit opened",
}  # fmt: skip

SAID = [
    ("Crawl under the car with the lamp", "working under a raised vehicle"),
    ("Lie under the trailer on the creeper", "working under a raised vehicle"),
    ("Drive it onto the two-post lift", "vehicle lift"),
    ("Swing the lift arms under the sills", "vehicle lift"),
    ("Put the floor jack under the crossmember", "jacking, chocking, stands"),
    ("Lower it onto the axle stands", "jacking, chocking, stands"),
    ("Tilt the cab forward", "air suspension, tipping body or cab"),
    ("Climb into the pit", "inspection pit"),
    ("Hook the spring compressors on opposite sides", "compressing a coil spring"),
    ("Swing the belt tensioner back", "other springs under tension"),
    ("Unclip the gas struts of the tailgate", "gas struts, gas-filled dampers, accumulators"),
    ("Pull the petrol pipe off the carburettor", "petrol line or tank opened"),
    ("Drop the gas tank on its straps", "petrol line or tank opened"),
    ("Undo the injector pipes", "diesel high pressure"),
    ("Shut the LPG off at the tank", "gas fuel system"),
    ("Unplug the air bag", "airbag"),
    ("Unbolt the seat belt reel", "seat-belt pretensioner"),
    ("Unplug the orange connector", "on high-voltage parts"),
    ("Lift the hybrid at its points", "hybrid or electric vehicle, near high voltage"),
    ("Move the swollen battery outdoors", "damaged lithium battery"),
    ("Take the ground cable off the battery", "battery off and on"),
    ("Clip the jump leads on", "battery charging, jump start"),
    ("Undo the AC line at the condenser", "refrigerant circuit opened"),
    ("Open the radiator cap", "hot cooling system"),
    ("Slacken the muffler clamp", "hot exhaust"),
    ("Start the engine and listen", "engine running in the workshop"),
    ("Slip the serpentine belt off", "belts, fans and shafts"),
    ("Slip the cambelt off the crank", "timing belt or chain"),
    ("Hang the brake caliper up with wire", "brake and clutch dust"),
    ("Press out the pads and wipe the brake drum", "brake and clutch dust"),
    ("Open the bleed nipple half a turn", "brake hydraulics opened"),
    ("Press the tie rod end out", "steering and suspension joints"),
    ("Spin the lug nuts off", "road wheels"),
    ("Inflate the tire to the figure on the door", "tyre inflation"),
    ("Prise the lock ring off the split rim", "large or multi-piece wheels"),
    ("Undo the hydraulic hose at the ram", "hydraulic circuit"),
    ("Lay it square in the shop press", "press work"),
    ("Knock the bearing out with a drift", "pullers, drifts and chisels"),
    ("Run the nuts off with the impact gun", "impact wrench"),
    ("Blow it dry with compressed air", "compressed air"),
    ("Cut the bolt with the angle grinder", "grinding and cutting discs"),
    ("Drill out the rivet heads", "drilling out, extracting"),
    ("Weld the bracket on", "welding, brazing, flame"),
    ("Warm the nut with the induction heater", "heat gun, induction heater"),
    ("Spray brake cleaner on the disc", "solvents, brake cleaner, degreaser"),
    ("Let the used oil run out", "oils and fluids"),
    ("Apply the windscreen adhesive", "two-pack paint, isocyanate"),
    ("Take the weight with the engine crane", "lifting heavy parts"),
    ("Bend the sheet metal back", "sharp edges and glass"),
    ("Pull the mains plug", "mains electricity, lock-out"),
    ("Kill the breaker and hang a tag on it", "mains electricity, lock-out"),
    ("Take it for a test drive", "moving or road-testing a vehicle"),
]

SILENT = [
    "Take off the dust cap", "Slacken the castle nut", "Use the breaker bar", "Put the jackshaft aside",
    "Tap in the seal with a wood block", "Pack the bearing with grease", "Turn the wheel by hand",
    "Never use an air line here", "Do not start the engine yet", "Fit the wheel bearing", "Lift the lid",
    "Unclip the fuel gauge", "Spring clip back on", "Press the button", "Check the level", "Lock the nut with its tab",
]  # fmt: skip


def found(text: str) -> tuple[Noticed, ...]:
    procedure = written(text)
    return noticed(procedure, standing(procedure, load()), load())


def proposed(text: str) -> list[str]:
    """Names of the activities that no typed danger covers."""
    return [one.activity.name for one in found(text) if not all(hit.told for hit in one.hits)]


@pytest.mark.parametrize(("command", "name"), SAID)
def test_words_of_the_work_propose_its_danger(command: str, name: str) -> None:
    assert name in proposed(f"## Work\n### {command}\n")


def test_every_kind_of_work_is_shown_to_be_noticed() -> None:
    assert {name for _, name in SAID} == {one.name for one in load().activities}
    assert len(load().activities) == 46


@pytest.mark.parametrize("command", SILENT)
def test_other_words_stay_silent(command: str) -> None:
    assert proposed(f"## Work\n### {command}\n") == []


def test_signal_words_holds_and_reserved_work_are_those_of_the_trade() -> None:
    level = {name: signal for signal, names in LEVELS.items() for name in names}
    activities = load().activities
    assert [one.name for one in activities if one.signal.value != level.get(one.name, "WARNING")] == []
    assert {one.name for one in activities if one.hold} == HELD
    assert {one.name for one in activities if one.reserved} == RESERVED


STATED = "- Danger: fuel vapour catches fire | burns | no flame"
BOTH = "## Work\n### Open the lid\n{}\n### Pull the petrol pipe off\n{}\n### Clamp the petrol pipe\n"


@pytest.mark.parametrize(
    ("text", "open_steps"),
    [
        (BOTH.format("", ""), [2, 3]),
        (BOTH.format("", STATED), [3]),
        (f"## Before\n{STATED}\n" + BOTH.format("", ""), []),
        (BOTH.format(f"- State: fuel line open\n{STATED} | while: fuel line open", ""), []),
        (BOTH.format(STATED, ""), [2, 3]),
        (BOTH.format("", "- Caution: sharp edge | cut finger | gloves"), [2, 3]),
    ],
    ids=["not stated", "stated in one of them", "in the front list", "still standing", "before it", "another danger"],
)
def test_a_stated_danger_is_not_proposed_again(text: str, open_steps: list[int]) -> None:
    (fuel,) = [one for one in found(text) if one.activity.vapour]
    assert [hit.number for hit in fuel.hits if not hit.told] == open_steps


def test_later_harm_is_told_once_for_the_whole_job() -> None:
    text = "## Work\n### Spin off the wheel nuts\n### Tighten the wheel nuts\n"
    assert proposed(text) == ["road wheels"]
    assert proposed(f"{text}- Warning: a loose wheel nut | the wheel comes off | to the torque\n") == []


def test_evidence_is_the_words_as_typed_and_their_place() -> None:
    (one,) = found("## Work\n### Open it\n\nThen pull the Petrol-Pipe off.\n\n- Tool: pliers\n")
    assert [(hit.words, hit.number, hit.place.line) for hit in one.hits] == [("Petrol-Pipe", 1, 10)]


def test_what_only_a_list_names_is_proposed_at_its_line() -> None:
    (one,) = found("## Before\n- Tool: angle grinder\n## Work\n### Cut it\n")
    assert [(hit.words, hit.number, hit.place.line) for hit in one.hits] == [("angle grinder", 0, 8)]


def test_many_steps_are_searched_without_a_blow_up() -> None:
    def prepare(count: int) -> Callable[[], object]:
        text = "## Work\n" + "".join(
            f"### Slacken hose {n} and pull the petrol pipe off the pump\n" for n in range(count)
        )
        procedure = written(text)
        still = standing(procedure, load())

        def work() -> None:
            (fuel,) = [one for one in noticed(procedure, still, load()) if one.activity.vapour]
            assert len(fuel.hits) == count

        return work

    no_blow_up(prepare, 2000)
