"""Order rules: each broken by two or three steps, and kept by the same steps put right. All are common practice."""

from collections.abc import Callable

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.order import disorders
from procbuilder.model.activity import Disorder
from tests.growth import no_blow_up
from tests.infer.written import written

WRONG = [
    ("slacken the wheel nuts while", ["Jack up the car", "Loosen the wheel nuts"]),
    ("take the earth lead off before", ["Take off the positive lead", "Take off the negative lead"]),
    ("put the live lead on before", ["Connect the earth lead", "Connect the positive lead"]),
    ("disconnect the battery before the starter", ["Undo the starter motor", "Take the earth lead off the battery"]),
    ("disconnect the battery before the airbag", ["Unplug the airbag", "Disconnect the battery"]),
    ("disconnect the battery before welding", ["Weld the bracket on", "Disconnect the battery"]),
    ("prove it dead", ["Unplug the orange cable", "Prove dead with the tester"]),
    ("take the key out before", ["Slip the fan belt off, take off the fan belt", "Take out the key"]),
    ("release the fuel pressure", ["Pull off the fuel line", "Release the fuel pressure"]),
    ("recover the refrigerant", ["Disconnect the AC line", "Recover the refrigerant"]),
    ("drain the coolant before the water pump", ["Unbolt the water pump", "Drain the coolant"]),
    ("drain the oil before the sump", ["Take off the sump", "Drain the oil"]),
    ("let the pressure off", ["Undo the hydraulic hose", "Release the pressure"]),
    ("compress and secure the spring", ["Undo the top nut", "Compress the spring"]),
    ("support the gearbox", ["Unbolt the gearbox", "Support the gearbox with the jack"]),
    ("mark the propshaft", ["Take out the propshaft", "Mark the flange"]),
    ("photograph how the wiring loom", ["Take out the wiring loom", "Photograph the way of the loom"]),
    ("fit the locking tools", ["Slip off the timing belt", "Fit the locking pin"]),
    ("take the locking tools out", ["Fit the locking pin", "Turn the crankshaft", "Take out the locking pin"]),
    ("turn the engine two turns", ["Fit the timing belt", "Start the engine", "Turn the crankshaft two turns by hand"]),
    ("write down codes and settings", ["Disconnect the battery", "Write down the radio code"]),
    ("switch the electric parking brake", ["Release the electric parking brake", "Wind back the piston"]),
    ("compare the new part", ["Fit the new pump", "Compare the new pump with the old one"]),
    ("clean and dry the faces before gasket", ["Fit the gasket", "Clean the mating face"]),
    ("let the sealant cure", ["Apply the sealant", "Fill the engine oil"]),
    ("start every bolt by hand", ["Tighten the bolts", "Start the bolts by hand"]),
    ("fill before the engine is started", ["Drain the oil", "Start the engine", "Fill the oil"]),
    ("press the brake pedal", ["Push back the piston", "Drive the car out", "Press the brake pedal"]),
    ("look for leaks", ["Fit the undertray", "Check for leaks"]),
    ("do the final test", ["Hand over the car", "Test the lights"]),
    ("set stands or lock the lift", ["Crawl under the car", "Place the axle stands"]),
]  # fmt: skip
"""A piece of the rule, and commands that break it, the last of them by coming too late."""

MISSING = [
    ("take the locking tools out", ["Fit the timing pin", "Crank the engine"]),
    ("disconnect the battery before the alternator", ["Undo the alternator"]),
    ("fit the locking tools", ["Take off the cambelt"]),
    ("support the engine", ["Lift out the engine"]),
]

RIGHT = [
    ["Switch the electric parking brake to its service mode", "Wind back the piston"],
    ["Unbolt the gearbox bracket"], ["Undo the starter cover"], ["Undo the sump plug"],
    ["Turn the crankshaft to the mark", "Fit the locking pin"],
    ["Set the torque wrench", "Start the bolts by hand"], ["Take off the wheel nuts and the wheel"],
    ["Start the engine"], ["Take off the belt cover"], ["Fit the new split pin"], ["Remove the recoil starter"],
    ["Take off the wiper motor"], ["Push back the piston", "Drive off the bearing with the drift"],
    ["Slacken the water pump cover"], ["Drive out both bearing cups"],
]  # fmt: skip


def broken(commands: list[str], more: str = "") -> tuple[Disorder, ...]:
    steps = "".join(f"### {command}\n" for command in commands)
    return disorders(written(f"## Work\n{steps}{more}"), load())


@pytest.mark.parametrize(("rule", "commands"), WRONG, ids=[rule for rule, _ in WRONG])
def test_a_broken_rule_names_both_steps(rule: str, commands: list[str]) -> None:
    found = [one for one in broken(commands) if one.order.rule.startswith(rule)]
    assert found, [one.order.rule for one in broken(commands)]
    one = found[0]
    late = len(commands) if one.first else 0
    assert (one.first.number if one.first else 0) == late
    assert one.then.command == commands[-2 if late else -1]


@pytest.mark.parametrize(("rule", "commands"), WRONG, ids=[rule for rule, _ in WRONG])
def test_the_same_steps_put_right_break_nothing(rule: str, commands: list[str]) -> None:
    put_right = {
        "let the sealant cure": ["Apply the sealant", "Wait until it has cured", "Fill the engine oil"],
        "switch the electric parking brake": [commands[0], "Switch it to service mode", "Wind back the piston"],
    }.get(rule, [*commands[:-2], commands[-1], commands[-2]])
    assert [one.order.rule for one in broken(put_right) if one.order.rule.startswith(rule)] == []


@pytest.mark.parametrize(("rule", "commands"), MISSING, ids=[rule for rule, _ in MISSING])
def test_some_rules_ask_even_when_the_first_is_nowhere_said(rule: str, commands: list[str]) -> None:
    found = [one for one in broken(commands) if one.order.rule.startswith(rule)]
    assert [(one.then.number, one.first) for one in found] == [(len(commands), None)]
    assert found[0].order.example


@pytest.mark.parametrize("commands", RIGHT, ids=lambda commands: commands[0])
def test_a_part_of_a_thing_is_not_the_thing(commands: list[str]) -> None:
    assert [one.order.rule for one in broken(commands)] == []


def test_one_thing_under_two_names_is_asked_once() -> None:
    found = broken(["Tighten the wheel nuts", "Start the wheel nuts by hand"])
    assert [one.order.rule for one in found] == ["start every wheel nut by hand before any of them is tightened"]


def test_a_condition_before_the_start_counts() -> None:
    text = "## Before\n- Condition: battery disconnected\n## Work\n### Unbolt the alternator\n"
    assert disorders(written(text), load()) == ()


def test_fields_count_as_well_as_commands() -> None:
    wrong = broken(["Loosen it", "Take the weight"], "- For now: jack under the gearbox\n")
    assert wrong == ()
    text = "## Work\n### Loosen it\n- Off: gearbox\n### Take the weight\n- Key point: support the gearbox | it drops\n"
    assert [one.order.rule for one in disorders(written(text), load())] == [
        "support the gearbox before its last bolt comes out"
    ]


def test_every_rule_says_why_and_what_would_do() -> None:
    for one in load().orders:
        assert one.why
        assert one.first
        assert one.then
        assert bool(one.example) == one.missing
        assert one.danger in (1, 2, 3)


def test_many_steps_are_judged_without_a_blow_up() -> None:
    def prepare(count: int) -> Callable[[], object]:
        commands = [f"Take off cover {n}, remove the gearbox bracket and drain the oil" for n in range(count)]
        procedure = written("## Work\n" + "".join(f"### {command}\n- Off: bolt {command}\n" for command in commands))
        return lambda: disorders(procedure, load())

    no_blow_up(prepare, 2000)


HALF_DONE = [
    ("stands-before-under.set", ["Chock the wheels", "Crawl under the car"]),
    ("stands-before-under.set", ["Lift the car with the jack", "Crawl under the car"]),
    ("stands-before-under.chocked", ["Set the axle stands", "Crawl under the car"]),
    ("stands-before-under.shaken", ["Set the axle stands", "Chock the wheels", "Crawl under the car"]),
    ("prove-dead.proved", ["Pull out the service plug", "Unplug the orange cable"]),
    ("prove-dead.secured", ["Pull out the service plug", "Prove it dead on all poles", "Unplug the orange cable"]),
    ("cabinet-dead.proved", ["Turn off the main switch", "Remove the contactor"]),
    ("cabinet-dead.covered", ["Prove it dead on all poles", "Remove the contactor"]),
    ("hydraulic-pressure.let-off", ["Lower the bucket", "Undo the hydraulic hose"]),
    ("hydraulic-pressure.load", ["Release the pressure", "Undo the hydraulic hose"]),
    ("hydraulic-pressure.shown", ["Lower the bucket", "Release the pressure", "Undo the hydraulic hose"]),
    ("gas-shut.aired", ["Shut the gas cock", "Remove the gas valve"]),
    ("confined-space.tested", ["Ventilate the tank with a blower", "Climb into the tank"]),
]
"""A condition of a set that is not met, and steps that only seem to meet it."""


@pytest.mark.parametrize(("name", "commands"), HALF_DONE)
def test_half_done_is_not_done(name: str, commands: list[str]) -> None:
    assert name in {one.order.id for one in broken(commands)}


@pytest.mark.parametrize(
    "commands",
    [
        ["Set the axle stands", "Chock the wheels", "Shake the car", "Crawl under the car"],
        [
            "Isolate the high voltage", "Lock the service plug away with a padlock", "Prove it dead on all poles",
            "Unplug the orange cable",
        ],
        ["Lower the bucket", "Stop the engine", "Release the pressure", "Read the gauge", "Undo the hydraulic hose"],
        ["Turn off the gas", "Open the windows", "Put out the pilot light", "Remove the gas valve"],
    ],
    ids=lambda commands: commands[-1],
)  # fmt: skip
def test_all_conditions_met_are_silent(commands: list[str]) -> None:
    assert broken(commands) == ()
