"""The short list of what only the technician can know: the most dangerous first, the rest by kind."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from procbuilder.model.problem import Problem, Severity, worst_first

MOST = 15
"""Questions that are shown at once."""
_ABOUT = (
    ("size", "sizes"), ("torque", "torques"), ("danger", "dangers"), ("hazard", "dangers"), ("hold", "hold points"),
    ("glove", "gloves"), ("order", "the order of the steps"), ("reserved", "steps reserved by law"),
    ("front-list", "the lists before the start"), ("open", "what comes off and goes on"),
    ("ledger", "what comes off and goes on"), ("locking", "new parts"), ("new", "new parts"), ("time", "times"),
    ("unnamed", "number and revision"), ("recording", "recordings"), ("readable", "recordings"),
)  # fmt: skip
"""A word in the name of a rule, and what its questions are about."""
_ELSE = ("", "dangers", "what could fail later", "somebody's rights", "what a reader needs", "time", "style")
"""What they are about when the rule's name does not say: by how dangerous it is."""


@dataclass(frozen=True, slots=True)
class Questions:
    """Questions in the order in which to answer them."""

    first: tuple[Problem, ...]
    more: tuple[tuple[str, int], ...] = ()
    """What the others are about, and how many of each kind."""


def questions(problems: Iterable[Problem], most: int | None = MOST) -> Questions:
    """The questions among some problems; ``most`` of them at once, None for all."""
    asked = tuple(problem for problem in worst_first(problems) if problem.severity is Severity.ASK)
    rest = asked[most:] if most is not None else ()
    return Questions(asked[:most], tuple(Counter(map(about, rest)).items()))


def about(problem: Problem) -> str:
    """What a question is about, in a few words."""
    return next((words for part, words in _ABOUT if part in problem.rule), _ELSE[problem.danger])
