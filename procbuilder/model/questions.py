"""The short list of what only the technician can know: the most dangerous first, the rest by topic."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum, auto

from procbuilder.model.problem import RESERVED, Problem, Severity, worst_first
from procbuilder.model.signal import Signal

MOST = 15
"""Questions that are shown at once."""


class Topic(Enum):
    """What a problem is about."""

    DANGER = auto()
    """Dangers that are not stated, by signal word."""
    WARNING = auto()
    CAUTION = auto()
    NOTICE = auto()
    DANGERS = auto()
    FAILURE = auto()
    """What could fail later."""
    RIGHTS = auto()
    """Somebody's rights."""
    READER = auto()
    """What a reader needs."""
    TIME = auto()
    STYLE = auto()
    HOLDS = auto()
    RESERVED = auto()
    ORDER = auto()
    BALANCE = auto()
    """What comes off and goes on."""
    NEW_PARTS = auto()
    TORQUES = auto()
    SIZES = auto()
    LISTS = auto()
    """What stands before the start."""
    IDENTITY = auto()
    """Number and revision."""
    RECORDINGS = auto()


_BY_DANGER = (Topic.DANGERS, Topic.FAILURE, Topic.RIGHTS, Topic.READER, Topic.TIME, Topic.STYLE)
"""From danger 1 on, for rules that are not among these."""
_RULES: Mapping[Topic, tuple[str, ...]] = {
    Topic.HOLDS: ("hold-missing",),
    Topic.RESERVED: ("not-reserved", RESERVED),
    Topic.ORDER: ("wrong-order", "torque-in-the-air", "angle-before-torque", "then-leads-nowhere", "then-never-ends"),
    Topic.BALANCE: (
        "unbalanced-ledger", "closed-but-never-opened", "only-assumed-closed", "put-on-after-its-part",
        "left-open-unclear", "forgotten-by-its-words", "derived-not-accepted",
    ),
    Topic.NEW_PARTS: ("single-use-again",),
    Topic.TORQUES: (
        "tightening-without-torque", "nowhere-to-look", "torque-without-unit", "torque-in-words",
        "torque-without-source", "stage-left-out", "torques-contradict", "said-and-typed-differ",
        "torque-against-thread", "torque-wrench-range",
    ),
    Topic.SIZES: ("spanner-against-thread", "inch-spanner-against-thread", "which-spanner"),
    Topic.LISTS: ("empty-front-list",),
    Topic.IDENTITY: ("unnamed-procedure",),
    Topic.RECORDINGS: ("unlisted-recording", "time-outside-recording", "end-before-start", "overlapping-steps",
                       "time-between-recordings", "other-speed", "missing-file", "unreadable", "narration"),
}  # fmt: skip
_PROPOSED = "danger-proposed"
_TOPICS = {rule: topic for topic, rules in _RULES.items() for rule in rules}


@dataclass(frozen=True, slots=True)
class Questions:
    """Questions in the order in which to answer them."""

    first: tuple[Problem, ...]
    more: tuple[tuple[Topic, int], ...] = ()
    """What the others are about, and how many of each topic."""


def questions(problems: Iterable[Problem], most: int | None = MOST) -> Questions:
    """The questions among some problems; ``most`` of them at once, None for all."""
    asked = tuple(problem for problem in worst_first(problems) if problem.severity is Severity.ASK)
    rest = asked[most:] if most is not None else ()
    return Questions(asked[:most], tuple(Counter(map(about, rest)).items()))


def about(problem: Problem) -> Topic:
    """Its topic: the signal word of a danger that is not stated, that of its rule, else how dangerous it is."""
    if problem.rule == _PROPOSED:
        return Topic[list(Signal)[problem.order]]
    return _TOPICS.get(problem.rule, _BY_DANGER[problem.danger - 1])
