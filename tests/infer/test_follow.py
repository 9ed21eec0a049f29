"""What heard operations open and close."""

import pytest

from procbuilder.infer.hearing.follow import Follower
from tests.infer.spoken import heard, open_after


def moves(*lines: str) -> list[str]:
    follower = Follower()
    return [f"{move.field}: {move.item.words}" for one in heard(*lines) for move in follower.take(one)]


@pytest.mark.parametrize(
    ("lines", "left"),
    [
        (["Take the cover off.", "Pop it back on."], []),
        (["Take the cover off."], ["off: cover"]),
        (["Undo six bolts.", "Put five bolts back in."], ["off: bolt"]),
        (["Undo six bolts.", "Put the bolts back in."], []),
        (["Slacken the union.", "Tighten the union."], []),
        (["Slacken the union.", "Nip the union up."], ["slackened: union"]),
        (["Undo the two bolts.", "Tighten the bolts."], []),
        (["Stuff a rag in the hole.", "Take the rag out."], []),
        (["Stuff a rag in the hole."], ["for-now: rag"]),
        (["Jack up the trailer.", "Let it down."], []),
        (["Drain the coolant."], ["state: coolant drained"]),
        (["Drain the coolant.", "Fill it with coolant."], []),
        (["Turn the water off.", "Turn the water back on."], []),
        (["Cut the cable tie off.", "Fit the cable tie."], []),
        (["Cut the cable tie off.", "Fit the new cable tie."], []),
        (["I've already taken the wheel off."], ["off: wheel"]),
        (["Take the wheel off.", "We'll put the wheel back on later."], ["off: wheel"]),
        (["If you have air-con, take the compressor off."], []),
        (["Take the hose off.", "The hose comes off."], ["off: hose"]),
        (["Undo the lower slide bolt.", "Loosen the upper slide bolt.", "Refit the lower slide bolt."],
         ["slackened: upper slide bolt"]),
        (["Take the left guard off.", "Take the right guard off.", "Fit the left guard."], ["off: right guard"]),
    ],
)  # fmt: skip
def test_what_is_left_open(lines: list[str], left: list[str]) -> None:
    assert open_after(*lines) == left


def test_what_is_closed_has_the_name_under_which_it_was_opened() -> None:
    assert moves("Take the plastic engine cover off.", "Press the cover on.") == [
        "Off: plastic engine cover",
        "On: plastic engine cover",
    ]


def test_what_is_tightened_goes_on_with_it() -> None:
    assert moves("Undo two long bolts.", "Tighten the two long bolts.") == [
        "Off: 2 x long bolt",
        "On: 2 x long bolt",
        "Torque: long bolt",
    ]


def test_both_slide_bolts_are_two_accounts() -> None:
    lines = ["Loosen the lower slide bolt.", "Loosen the upper slide bolt.", "Tighten both slide bolts."]
    assert moves(*lines)[2:] == ["Torque: upper slide bolt", "Torque: lower slide bolt"]


def test_nothing_is_made_of_a_state_that_never_began() -> None:
    assert moves("Turn the water on.") == []
