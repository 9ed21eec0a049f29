"""Dangers proposed from the words of the work, and sentences that must stay silent; each kind is in ``test_works``."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from procbuilder.infer.dangers import standing
from procbuilder.infer.lexicon import load
from procbuilder.infer.proposed import noticed
from procbuilder.model.activity import Noticed
from procbuilder.model.facts import Time
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration
from tests.growth import no_blow_up
from tests.infer.written import written

LEVELS = {
    "DANGER": (
        "under-a-raised-vehicle", "vehicle-lift", "jacking", "air-suspension", "coil-spring", "petrol-opened",
        "diesel-high-pressure", "gas-fuel", "airbag", "pretensioner", "high-voltage", "damaged-lithium",
        "belts-and-fans", "multi-piece-wheels", "hydraulic-circuit", "isocyanate", "mains", "cabinet",
        "stored-charge", "live-measure", "digging", "wet-electric", "appliance", "microwave", "ups", "solar",
        "gas-appliance", "flue", "refrigerant-burning", "refrigerant-toxic", "confined", "slurry", "chlorine",
        "spray-gun", "door-spring", "power-door", "lift-shaft", "lift-table", "hung-load", "roof", "accumulator",
        "inert-gas", "saw", "planer", "lathe", "press-tool", "conveyor", "robot", "bypass", "mixer", "drum",
        "blockage", "pto", "implement", "laser", "work-platform",
    ),
    "CAUTION": (
        "timing-belt", "impact-wrench", "drilling-out", "heat-gun", "oils", "sharp-edges", "descale", "solder-fume",
        "resin", "printer3d", "vibration", "posture", "climate", "floor", "carry",
    ),
    "NOTICE": (
        "timing-marks", "esd",
    ),
}  # fmt: skip
"""By activity, from its sources; all others could kill or seriously injure: WARNING."""

HELD = {
    "petrol-opened", "diesel-high-pressure", "gas-fuel", "airbag", "pretensioner", "high-voltage",
    "near-high-voltage", "damaged-lithium", "refrigerant", "brake-hydraulics", "steering-joints",
    "multi-piece-wheels", "hydraulic-circuit", "welding", "mains", "cabinet", "gas-appliance", "refrigerant-burning",
    "refrigerant-toxic", "confined", "lift-shaft", "hot-building", "drum",
}  # fmt: skip
"""Work that is stopped until somebody has checked it: common practice."""

RESERVED = {
    "gas-fuel", "airbag", "pretensioner", "high-voltage", "damaged-lithium", "refrigerant", "gas-appliance",
    "refrigerant-burning", "refrigerant-toxic", "asbestos", "radioactive",
}  # fmt: skip

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


@pytest.mark.parametrize("command", SILENT)
def test_other_words_stay_silent(command: str) -> None:
    assert proposed(f"## Work\n### {command}\n") == []


def test_signal_words_holds_and_reserved_work_are_those_of_the_trade() -> None:
    level = {name: signal for signal, names in LEVELS.items() for name in names}
    activities = load().activities
    assert [one.id for one in activities if one.signal.value != level.get(one.id, "WARNING")] == []
    assert {one.id for one in activities if one.hold} == HELD
    assert {one.id for one in activities if one.reserved} == RESERVED


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


FIELDS = (
    "- Note: then undo the petrol pipe", "- If: it is blocked | pull the petrol pipe off", "- Part: 1 x petrol pipe",
    "- Wait: 5 | petrol pipe drips empty", "- Mistake: petrol pipe pulled by its end | push it off",
    "- Hold: petrol pipe clamped | foreman", "- Include: P-7 | Petrol pipe", "- Torque: petrol pipe clip | 2 N·m",
    "- Out again: clamp of the petrol pipe", "- Off: lid | by: 2 x petrol pipe clip", "Undo the petrol pipe.",
    "- Key point: turn it | the petrol pipe is behind it", "- Only if: the petrol pipe leaks",
)  # fmt: skip


@pytest.mark.parametrize("line", FIELDS)
def test_every_field_that_tells_of_work_is_read(line: str) -> None:
    assert proposed(f"## Work\n### Open it\n\n{line}\n") == ["petrol line or tank opened"]


@pytest.mark.parametrize("line", ["- Later: petrol pipe | at the next service", "- Refused: x | petrol pipe is new",
                                  "- Reserved: who may open a petrol pipe", "- Asked: x | petrol pipe"])  # fmt: skip
def test_fields_that_tell_of_no_work_here_are_not(line: str) -> None:
    assert proposed(f"## Work\n### Open it\n\n{line}\n") == []


def test_what_is_said_is_read_with_its_moment() -> None:
    """A sentence runs over two cues; one before the first step belongs to none."""
    cues = (
        Cue(Place("strip.srt", 1), Fraction(1), Fraction(2), "First we run the engine."),
        Cue(Place("strip.srt", 5), Fraction(12), Fraction(13), "Now I pull the petrol"),
        Cue(Place("strip.srt", 9), Fraction(13), Fraction(14), "pipe off. Never use an air line."),
        Cue(Place("strip.srt", 13), Fraction(15), Fraction(16), "And the coolant hose."),
    )
    procedure = written("## Work\n### strip 0:10-0:20 Open it\n")
    found = {one.activity.id: one.hits for one in noticed(procedure, {}, load(), [Narration("strip", cues)])}
    assert {work: [(hit.words, hit.number, hit.said) for hit in hits] for work, hits in found.items()} == {
        "petrol-opened": [("petrol pipe", 1, Time(Fraction(12), "strip"))],
        "hot-cooling-system": [("coolant hose", 1, Time(Fraction(15), "strip"))],
        "engine-running": [("run the engine", 0, Time(Fraction(1), "strip"))],
    }
    assert found["petrol-opened"][0].place == procedure.steps[0].place
