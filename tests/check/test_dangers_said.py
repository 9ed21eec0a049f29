"""A danger of which only the narration speaks is asked for with its moment, and nobody may approve before."""

from fractions import Fraction

import pytest

from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, blocking
from procbuilder.model.procedure import Cue, Narration
from procbuilder.publish.wording.problems import said
from tests.check.sample import GOOD, found


def asked(seconds: int, words: str) -> Problem:
    cue = Cue(Place("strip.srt", 1), Fraction(seconds), Fraction(seconds + 1), words)
    (problem,) = found(GOOD, narration=[Narration("strip", (cue,))])
    return problem


@pytest.mark.parametrize(
    ("seconds", "evidence"),
    [(12, '"brake cleaner", said at strip 0:12, in step 3'), (23, '"brake cleaner", said at strip 0:23')],
)
def test_the_moment_is_the_evidence(seconds: int, evidence: str) -> None:
    problem = asked(seconds, "Then I spray brake cleaner on it.")
    assert said(problem).what == f"the vapour catches fire, and is harmful: proposed from {evidence}"


@pytest.mark.parametrize("words", ["We climb onto the roof.", "Then the band saw.", "The memory module."])
def test_an_open_danger_stops_an_approval(words: str) -> None:
    problem = asked(12, words)
    assert problem.rule == "danger-proposed"
    assert blocking([problem]) == (problem,)
