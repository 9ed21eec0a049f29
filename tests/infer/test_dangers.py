"""Dangers that stand until a state ends, and what must stay in place meanwhile."""

from decimal import Decimal

import pytest

from procbuilder.infer.dangers import hazards, removed_protection, standing
from procbuilder.infer.lexicon import load
from procbuilder.model.ledger import Moment
from procbuilder.model.origin import OriginKind, Place
from procbuilder.model.signal import Signal
from procbuilder.model.worked import RemovedProtection
from tests.infer.written import written

RAISED = """
## Work

### Slacken the nuts {#before}

### Raise the trailer {#raise}

- State: trailer raised
- For now: 2 x axle stand | while: trailer raised
- Danger: it falls | crushed | never on the jack alone | while: trailer raised

### Change the bearing {#work}

- Warning: bearing is heavy | bruises | two hands
- Danger: it falls | crushed | never on the jack alone | while: trailer raised

### Take the stands out and lower it {#lower}

- Ends: trailer raised
- Out again: 2 x axle stand

### Spin the wheel {#after}
"""


def test_hazard_stands_from_the_step_that_opens_its_state_to_the_one_that_ends_it() -> None:
    """Own hazards of a step are left out: they are shown there as its own."""
    shown = {step: [h.hazard for h in stand.hazards] for step, stand in standing(written(RAISED), load()).items()}
    assert shown == {"before": [], "raise": [], "work": [], "lower": ["it falls"], "after": []}


def test_states_last_from_the_opening_to_the_ending_step() -> None:
    shown = {step: stand.states for step, stand in standing(written(RAISED), load()).items()}
    raised = ("trailer raised",)
    assert shown == {"before": (), "raise": raised, "work": raised, "lower": raised, "after": ()}


def test_several_states_last_together() -> None:
    shown = standing(
        written("""
        ## Work
        ### Raise it {#raise}
        - State: trailer raised
        ### Open the valve {#open}
        - State: valve open
        - Ends: trailer raised
        ### Close the valve {#close}
        - Ends: valve open
        """),
        load(),
    )
    assert [stand.states for stand in shown.values()] == [
        ("trailer raised",),
        ("trailer raised", "valve open"),
        ("valve open",),
    ]


def test_protection_stays_in_place_between_fitting_and_taking_out() -> None:
    shown = {step: tuple(map(str, stand.protections)) for step, stand in standing(written(RAISED), load()).items()}
    assert shown == {"before": (), "raise": (), "work": ("2 x axle stand",), "lower": (), "after": ()}


def test_state_kept_up_for_another_state_is_a_protection() -> None:
    shown = standing(
        written("""
        ## Work
        ### Take the earth lead off {#off}
        - State: battery disconnected | while: fuel line open
        ### Open the fuel line {#open}
        - State: fuel line open
        ### Close the fuel line {#close}
        - Ends: fuel line open
        ### Put the earth lead back {#on}
        - Ends: battery disconnected
        """),
        load(),
    )
    assert {step: tuple(map(str, stand.protections)) for step, stand in shown.items()} == {
        "off": (),
        "open": ("battery disconnected",),
        "close": ("battery disconnected",),
        "on": (),
    }


def test_part_of_the_protection_that_is_left_is_counted() -> None:
    shown = standing(
        written("""
        ## Work
        ### Put the stands under {#under}
        - For now: 2 x axle stand
        ### Move one stand {#move}
        - Out again: 1 x axle stand
        ### Put two more under {#more}
        - For now: 2 x axle stand
        ### Work {#work}
        """),
        load(),
    )
    assert {step: tuple(map(str, stand.protections)) for step, stand in shown.items()} == {
        "under": (),
        "move": ("axle stand",),
        "more": ("axle stand",),
        "work": ("3 x axle stand",),
    }


def test_hazard_typed_after_its_state_began_holds_from_the_beginning() -> None:
    shown = standing(
        written("""
        ## Work
        ### Compress the spring {#press}
        - State: spring compressed
        ### Move the strut {#move}
        - Danger: spring flies out | death | stand beside it | while: spring compressed
        ### Let the spring go {#go}
        - Ends: spring compressed
        """),
        load(),
    )
    assert {step: len(stand.hazards) for step, stand in shown.items()} == {"press": 1, "move": 0, "go": 1}


def test_hazard_without_a_state_holds_for_its_step_only() -> None:
    shown = standing(
        written("""
        ## Work
        ### Lift the wheel {#lift}
        - State: trailer raised
        - Caution: heavy | strained back | knees bent
        ### Put it down {#down}
        - Ends: trailer raised
        """),
        load(),
    )
    assert [stand.hazards for stand in shown.values()] == [(), ()]


def test_worst_standing_hazard_stands_first() -> None:
    shown = standing(
        written("""
        ## Before you start
        - Notice: paint scratches | rust | cover the wing | while: bonnet open
        - Danger: bonnet falls | head injury | use the prop | while: bonnet open
        ## Work
        ### Open the bonnet {#open}
        - State: bonnet open
        ### Close it {#close}
        - Ends: bonnet open
        """),
        load(),
    )
    assert [h.signal for h in shown["open"].hazards] == [Signal.DANGER, Signal.NOTICE]


def test_hazards_are_read_worst_first_with_their_parts() -> None:
    step = written("""
        ## Work
        ### Prise off the cap
        - Caution: bar slips | cut hand | push away from you (said strip 0:44)
        - Off: cap
        - Danger: it falls | crushed | use stands | while: trailer raised
        """).steps[0]
    danger, caution = hazards(step.fields, load())
    assert (danger.signal, danger.hazard, danger.consequence, danger.avoid, danger.state) == (
        Signal.DANGER, "it falls", "crushed", "use stands", "trailer raised",
    )  # fmt: skip
    assert (caution.signal, caution.state, caution.origin.kind, caution.place.line) == (
        Signal.CAUTION, "", OriginKind.SAID, 9,
    )  # fmt: skip


def removed(text: str) -> list[tuple[str, str, str, int]]:
    return [(r.item, r.state, r.reason, r.moment.number) for r in removed_protection(written(text), load())]


def test_protection_taken_away_while_its_state_lasts_is_found() -> None:
    found = removed_protection(
        written("""
        ## Work
        ### strip 0:05-0:08 Raise it {#raise}
        - State: trailer raised
        - For now: 2 x axle stand
        ### strip 1:02-1:10 Take the stands out {#out}
        - Out again: 2 x axle stand
        ### Lower it
        - Ends: trailer raised
        """),
        load(),
    )
    moment = Moment("out", 2, Place("procedure.md", 12), "strip", found[0].moment.time)
    assert found == (RemovedProtection("axle stand", "trailer raised", "it can fall or roll", moment),)
    assert found[0].moment.time == Decimal(62)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        pytest.param(RAISED, [], id="state-ends-in-the-same-step"),
        pytest.param(
            """
            ## Work
            ### Raise it
            - State: trailer raised
            - For now: chock
            ### Lower it
            - Ends: trailer raised
            ### Take the chock away
            - Out again: chock
            """,
            [],
            id="state-ended-before",
        ),
        pytest.param(
            """
            ## Work
            ### Raise it
            - State: trailer raised
            - For now: rag
            ### Take the rag out
            - Out again: rag
            ### Lower it
            - Ends: trailer raised
            """,
            [],
            id="a-rag-protects-nobody",
        ),
        pytest.param(
            """
            ## Work
            ### Open it
            - State: valve open
            - For now: 2 x axle stand
            ### Take the stands away
            - Out again: 2 x axle stand
            ### Close it
            - Ends: valve open
            """,
            [],
            id="stands-do-not-protect-from-a-valve",
        ),
        pytest.param(
            """
            ## Work
            ### Open it
            - State: valve open
            - For now: blue plate | while: valve open
            ### Take the plate away
            - Out again: blue plate
            ### Close it
            - Ends: valve open
            """,
            [("blue plate", "valve open", "", 2)],
            id="link-typed-as-while",
        ),
        pytest.param(
            """
            ## Work
            ### Take the lead off
            - State: battery disconnected
            ### Open the line
            - State: fuel line open
            ### Put the lead back
            - Ends: battery disconnected
            ### Close the line
            - Ends: fuel line open
            """,
            [("battery disconnected", "fuel line open", "a spark can light the vapour", 3)],
            id="a-protecting-state-ends",
        ),
        pytest.param(
            """
            ## Work
            ### Raise it
            - State: trailer raised
            - For now: 2 x axle stand
            ### Take one out
            - Out again: 1 x axle stand
            ### Lower it
            - Ends: trailer raised
            - Out again: 1 x axle stand
            """,
            [("axle stand", "trailer raised", "it can fall or roll", 2)],
            id="one-of-two",
        ),
    ],
)
def test_when_protection_may_go(text: str, expected: list[tuple[str, str, str, int]]) -> None:
    assert removed(text) == expected


def test_a_state_that_keeps_people_safe_must_stay_in_place() -> None:
    text = """
        ## Work
        ### Kill the breaker {#off}
        - State: breaker off
        ### Open the lid {#open}
        - State: lid open
        ### Close it {#close}
        - Ends: lid open
        ### Throw the breaker on {#on}
        - Ends: breaker off
        """
    shown = standing(written(text), load())
    assert {step: stand.states for step, stand in shown.items()} == {
        "off": (), "open": ("lid open",), "close": ("lid open",), "on": ()
    }  # fmt: skip
    assert {step: tuple(map(str, stand.protections)) for step, stand in shown.items()} == {
        "off": (), "open": ("breaker off",), "close": ("breaker off",), "on": ()
    }  # fmt: skip
