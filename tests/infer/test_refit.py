"""Refit steps derived from strip steps: reversed where that is right, asked about where it is not."""

import pytest

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.refit import derive
from tests.infer.written import written

WORDS = load()


def derived(text: str) -> list[str]:
    """Each step in one line: command and fields."""
    procedure = written(text)
    steps = derive(procedure, ledger(procedure, WORDS), WORDS)
    return [" / ".join([step.command, *(f"{name}: {value}" for name, value in step.fields)]) for step in steps]


@pytest.mark.parametrize(
    ("step", "expected"),
    [
        ("Unplug the sensor {#a}\n- Off: sensor plug", "Plug in the sensor plug / Derived: #a / On: sensor plug"),
        ("Prise off the dust cap {#a}\n- Off: dust cap", "Press on the dust cap / Derived: #a / On: dust cap"),
        ("Disconnect the hose {#a}\n- Off: hose", "Connect the hose / Derived: #a / On: hose"),
        ("Unclip the loom {#a}\n- Off: 3 x loom clip", "Clip in the loom clip / Derived: #a / On: 3 x loom clip"),
        ("Raise the trailer {#a}\n- State: trailer raised", "Lower the trailer / Derived: #a / Ends: trailer raised"),
        ("Swing the cover up {#a}\n- State: cover open", "Close the cover / Derived: #a / Ends: cover open"),
        ("Drain the oil {#a}\n- State: engine oil drained",
         "Refill the engine oil / Derived: #a / Ends: engine oil drained / Supply: engine oil"),
        ("Stuff a rag into the intake {#a}\n- For now: rag", "Take out the rag / Derived: #a / Out again: rag"),
        ("Slacken the clamp bolt {#a}\n- Slacken: clamp bolt",
         "Tighten the clamp bolt / Derived: #a / Torque: clamp bolt | look up"),
        ("Unbolt the bracket {#a}\n- Off: bracket | by: 2 x M8 bolt, 13 mm",
         "Do up the bracket / Derived: #a / On: bracket | by: 2 x M8 bolt, 13 mm / Torque: M8 bolt | look up"),
        ("Do something odd {#a}\n- Off: shield", "Fit the shield / Derived: #a / On: shield"),
    ],
)  # fmt: skip
def test_a_step_is_turned_round_with_the_opposite_command(step: str, expected: str) -> None:
    assert derived(f"## Strip\n### {step}\n") == [expected]


@pytest.mark.parametrize(
    ("step", "asks"),
    [
        ("Press out the bush {#a}\n- Off: bush", "pressed or driven"),
        ("Drive out the pin of the shaft {#a}\n- Off: shaft", "pressed or driven"),
        ("Undo the brake hose {#a}\n- Off: brake hose", "open to fluid under pressure"),
        ("Take off the timing belt {#a}\n- Off: timing belt", "timed"),
        ("Slacken the castle nut {#a}\n- Slacken: castle nut", "preloaded or adjusted"),
        ("Compress the spring {#a}\n- State: spring compressed", "preloaded or adjusted"),
        ("Peel off the gasket {#a}\n- Off: gasket", "used once"),
        ("Pull out the split pin {#a}\n- Off: split pin, scrap", "used once"),
        ("Take out the seal {#a}\n- Off: grease seal", "used once"),
    ],
)
def test_pressed_bled_timed_preloaded_and_single_use_work_is_only_asked_about(step: str, asks: str) -> None:
    (line,) = derived(f"## Strip\n### {step}\n")
    assert line.startswith("Decide how the ")
    assert f"Note: to be decided: {asks}" in line
    assert not any(f" / {closes}:" in line for closes in ("On", "Torque", "Ends", "Out again"))


def test_a_new_part_is_listed_for_what_is_thrown_away() -> None:
    assert derived("## Strip\n### Pull out the pin {#a}\n- Off: 2 x split pin, scrap\n") == [
        "Decide how the split pin goes back / Derived: #a / Part: 2 x split pin, new / Note: to be decided: used once "
        "(it is bent or cut to come out, and breaks when it is bent again): which new part, and how it is fitted"
    ]


def test_the_last_that_came_off_goes_on_first() -> None:
    text = """
    ## Strip
    ### Take off the cover {#cover}
    - Off: cover
    - Off: shield
    ### Take off the lid {#lid}
    - Off: lid
    """
    assert derived(text) == [
        "Fit the lid / Derived: #lid / On: lid",
        "Fit the shield and the cover / Derived: #cover / On: shield / On: cover",
    ]


def test_what_keeps_a_state_safe_ends_with_it_and_what_was_there_before_stays_longer() -> None:
    text = """
    ## Strip
    ### Chock the wheels {#chock}
    - For now: 2 x chock | while: trailer raised
    ### Raise the trailer {#raise}
    - State: trailer raised
    ### Set the stand {#stand}
    - For now: axle stand | while: trailer raised
    """
    assert derived(text) == [
        "Lower the trailer / Derived: #raise / Out again: axle stand / Ends: trailer raised",
        "Take away the chock / Derived: #chock / Out again: 2 x chock",
    ]


def test_nuts_that_are_tightened_later_are_only_nipped_up_with_their_part() -> None:
    text = """
    ## Strip
    ### Slacken the wheel nuts {#slack}
    - Slacken: wheel nuts
    ### Take off the wheel {#wheel}
    - Off: wheel | by: 4 x wheel nut
    """
    assert derived(text) == [
        "Fit the wheel / Derived: #wheel / On: wheel | by: 4 x wheel nut / Nip up: wheel nut",
        "Tighten the wheel nuts / Derived: #slack / Torque: wheel nuts | look up",
    ]


def test_only_what_is_still_open_is_derived() -> None:
    text = """
    ## Strip
    ### Take off the cover {#cover}
    - Off: cover
    - Off: 6 x clip
    ### Take off the lid {#lid}
    - Off: lid
    - Left open: lid | broken | RB
    ## Refit
    ### Fit the cover
    - On: cover
    - On: 4 x clip
    """
    assert derived(text) == ["Fit the clip / Derived: #cover / On: 2 x clip"]


def test_what_was_told_to_go_back_in_reverse_is_derived() -> None:
    text = "## Work\n### Take off the cover {#cover}\n- Off: cover\n### Refit in reverse order\n"
    assert derived(text) == ["Fit the cover / Derived: #cover / On: cover"]


def test_a_branch_goes_back_in_the_same_branch() -> None:
    text = "## Work\n### Take off the drum {#drum}\n- Only if: braked hub\n- Off: drum\n"
    assert derived(text) == ["Fit the drum / Derived: #drum / Only if: braked hub / On: drum"]


@pytest.mark.parametrize(
    ("conditions", "derived_conditions"),
    [
        ("- Only if: braked hub\n- Only if: disc\n", "Only if: braked hub / Only if: disc"),
        ("- Only if: not braked hub\n", "Only if: not braked hub"),
    ],
)
def test_a_step_of_joined_branches_is_derived_under_all_its_conditions(
    conditions: str, derived_conditions: str
) -> None:
    (line,) = derived(f"## Work\n### Take off the drum {{#drum}}\n{conditions}- Off: drum\n")
    assert line == f"Fit the drum / Derived: #drum / {derived_conditions} / On: drum"


def test_a_step_is_not_derived_twice() -> None:
    text = "## Work\n### Pull the pin {#pin}\n- Off: split pin\n### Decide how it goes back\n- Derived: #pin\n"
    assert derived(text) == []


def test_signs_that_part_a_field_are_written_as_such() -> None:
    assert derived("## Work\n### Take off the cover {#a}\n- Off: cover \\| lid; left | by: 1 x pin \\| peg\n") == [
        "Fit the cover | lid; left / Derived: #a / On: cover \\| lid; left | by: 1 x pin \\| peg"
    ]
    (line,) = derived("## Work\n### Take off the cover {#a}\n- Off: cover; left, scrap\n")
    assert " / Part: cover\\; left, new / " in line
