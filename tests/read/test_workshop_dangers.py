"""A workshop's own dangers, and who is qualified for what."""

from datetime import date

import pytest

from procbuilder.infer.lexicon import load, with_dangers
from procbuilder.model.signal import Signal
from procbuilder.model.workshop import Qualification
from procbuilder.publish.wording.problems import line
from procbuilder.read.text import TextFile
from procbuilder.read.workshop import read_workshop

WHOLE = """\
[[danger]]
name = "hay baler"
words = ["pick-up", "needle"]
told = ["baler"]
signal = "DANGER"
hazard = "the baler starts by itself"
consequence = "drawn in"
avoid = "engine off, flywheel stands, brake on"
signs = "W018 M021"

[[qualification]]
name = "gas fitter"
holder = "AB"
valid_until = 2027-03-31
"""


def read(text: str) -> tuple[list[str], list[str]]:
    """Names of what was taken, and the problems."""
    workshop, problems = read_workshop(TextFile("workshop.toml", text))
    taken = [one.name for one in workshop.dangers] + [one.name for one in workshop.qualifications]
    return taken, [line(problem) for problem in problems]


def test_both_are_read() -> None:
    workshop, problems = read_workshop(TextFile("workshop.toml", WHOLE))
    assert problems == ()
    (danger,) = workshop.dangers
    assert (danger.signal, danger.signs, danger.hold, danger.once) == (Signal.DANGER, ("W018", "M021"), "", False)
    assert workshop.qualifications == (Qualification("gas fitter", "AB", date(2027, 3, 31)),)


FORM = "write name, words, signal, hazard, consequence and avoid, as the program's own list does"


@pytest.mark.parametrize(
    ("old", "new", "wrong"),
    [
        ('words = ["pick-up", "needle"]', 'words = "needle"', "has no list of words under words"),
        ('words = ["pick-up", "needle"]', 'words = ["-"]', "has no list of words under words"),
        ('signal = "DANGER"', 'signal = "HOT"', "has the signal HOT, which is none of the four"),
        ('consequence = "drawn in"\n', "", "has no consequence"),
        ('avoid = "', 'avoyd = "', "has no avoid"),
        ('signs = "W018 M021"', 'sign = "W018 M021"', "has an unknown key: sign"),
        ('signs = "W018 M021"', "signs = 18", "has under signs something else than text in quotes"),
    ],
)
def test_a_danger_that_is_wrong_in_one_way_is_told(old: str, new: str, wrong: str) -> None:
    assert WHOLE.count(old) == 1
    assert read(WHOLE.replace(old, new)) == (
        ["gas fitter"],
        [f"workshop.toml:2: the danger hay baler {wrong} – {FORM}"],
    )


@pytest.mark.parametrize(
    ("old", "new"),
    [('holder = "AB"\n', ""), ("2027-03-31", '"next year"'), ("2027-03-31", "2027-03-31T10:00:00")],
)
def test_a_qualification_that_is_wrong_in_one_way_is_told(old: str, new: str) -> None:
    assert read(WHOLE.replace(old, new)) == (
        ["hay baler"],
        [
            "workshop.toml:12: the qualification gas fitter lacks its name, its holder or its last day – "
            "write name, holder and valid_until = 2027-03-31"
        ],
    )


def test_own_dangers_come_behind_and_take_the_place_of_the_same_name() -> None:
    own, _ = read_workshop(TextFile("workshop.toml", WHOLE.replace("hay baler", "airbag")))
    known = load().activities
    both = with_dangers(load(), own.dangers).activities
    assert len(both) == len(known) == 140
    assert both[-1].hazard == "the baler starts by itself"
    assert [one.name for one in both].count("airbag") == 1
    assert with_dangers(load(), ()) is load()
