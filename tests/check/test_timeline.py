"""When recordings were filmed: differences of times, and never a date or a time of day."""

import re
from dataclasses import replace
from fractions import Fraction

import pytest

from procbuilder.model.footage import PacketFacts
from tests.check.sample import GOOD, said

FILM = PacketFacts(key_spacing=Fraction(1), spacing=Fraction(1, 30))
LATER = "write what was done in between as a step without a time, or as a Wait"
BOTH = "use one of them for each step, or set the clock of the camera"


def filmed(strip: str, refit: str) -> dict[str, PacketFacts]:
    """``strip`` lasts 24 seconds and ``refit`` 40.6."""
    return {"strip": replace(FILM, begun=strip), "refit": replace(FILM, begun=refit)}


@pytest.mark.parametrize(
    ("strip", "refit", "words"),
    [
        ("2026-03-04T10:12:06", "2026-03-04T10:40:05",
         f"strip ends and refit begins 28 min later, by the camera's clock: not filmed – {LATER}"),
        ("2026-03-04T10:00:00+00:00", "2026-03-04T13:05:20+00:00",
         f"strip ends and refit begins 3 h 5 min later, by the camera's clock: not filmed – {LATER}"),
        ("2026-03-05T09:00:00", "2026-03-04T16:00:00",
         f"refit ends and strip begins 16 h 59 min later, by the camera's clock: not filmed – {LATER}"),
        ("2026-03-04T10:00:00", "2026-03-04T10:00:10",
         f"strip and refit were filmed at the same time for 14 s, by their clocks – {BOTH}"),
    ],
)  # fmt: skip
def test_gaps_and_overlaps_are_told(strip: str, refit: str, words: str) -> None:
    """3 h 5 min: 185 min 20 s less the 24 s of the first recording."""
    (problem,) = said(GOOD, films=filmed(strip, refit))
    assert problem.startswith("advice 5 time-between-recordings procedure.md:5: ")
    assert problem.endswith(words)
    assert not re.search(r"2026|\d\d:\d\d|March", problem)


@pytest.mark.parametrize("refit", ["2026-03-04T10:00:22", "2026-03-04T10:01:23", ""])
def test_recordings_that_follow_on_each_other_are_no_problem(refit: str) -> None:
    """The clock of a file is exact to a second or two; and of a file without one nothing is known."""
    assert said(GOOD, films=filmed("2026-03-04T10:00:00", refit)) == []


@pytest.mark.parametrize(("speed", "words"), [(Fraction(8), "8 times faster"), (Fraction(1, 8), "8 times slower")])
def test_another_speed_is_told(speed: Fraction, words: str) -> None:
    assert said(GOOD, films={"refit": replace(FILM, speed=speed)}) == [
        f"advice 5 other-speed procedure.md:5: refit runs {words} than the work, so its length tells no time – "
        "type the minutes of its steps: Time: 12"
    ]


@pytest.mark.parametrize("speed", [None, Fraction(1)])
def test_the_usual_speed_is_not_told(speed: Fraction | None) -> None:
    assert said(GOOD, films={"refit": replace(FILM, speed=speed)}) == []
