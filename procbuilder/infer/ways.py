"""The ways through a procedure: without any branch, and with each branch taken alone.

``Only if:`` makes a step part of a branch; steps with the same condition, or with its contrary, are one branch.
``Then: #id`` of a step on the way leads on to a later step, and what lies between is left out.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from procbuilder.model.lexicon import Ways
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.words import thing

_Test = tuple[str, bool]
"""Key of a branch, and whether the step belongs to it when it is taken or when it is not."""


@dataclass(frozen=True, slots=True)
class _Jump:
    """A ``Then`` that leads forward: what lies between is left out while its step is on the way."""

    tests: tuple[_Test, ...]
    between: range


class Branches:
    """The branches of a procedure; steps by their number, from 1."""

    def __init__(self, procedure: Procedure, words: Ways) -> None:
        self.names: dict[str, str] = {}
        """Each branch with its condition as typed."""
        self._words = words
        self._last: _Test | None = None
        steps = procedure.steps
        self._tests = {number: tests for number, step in enumerate(steps, 1) if (tests := self._of(step))}
        self._jumps = tuple(self._led_on(steps))

    def leaves_out(self, number: int, taken: str = "") -> bool:
        """True when a step is not on the way on which this branch is taken; without one, none is."""
        if not _holds(self._tests.get(number, ()), taken):
            return True
        return any(number in jump.between and _holds(jump.tests, taken) for jump in self._jumps)

    def changed_by(self, branch: str) -> list[int]:
        """Numbers of the steps that are on the way only because this branch is taken, or only because it is not."""
        near = set(self._steps_of.get(branch, ()))
        for jump in self._jumps:
            if any(key == branch for key, _ in jump.tests):
                near |= set(jump.between)
        return sorted(number for number in near if self.leaves_out(number) is not self.leaves_out(number, branch))

    @cached_property
    def _steps_of(self) -> Mapping[str, list[int]]:
        steps: dict[str, list[int]] = {}
        for number, tests in self._tests.items():
            for key, _ in tests:
                steps.setdefault(key, []).append(number)
        return steps

    def _of(self, step: Step) -> tuple[_Test, ...]:
        return tuple(self._test(entry.part("condition")) for entry in step.all("Only if"))

    def _test(self, condition: str) -> _Test:
        key = thing(condition)
        if key in self._words.otherwise and self._last:
            return self._last[0], not self._last[1]
        first, _, rest = key.partition(" ")
        contrary = first in self._words.contrary and bool(rest)
        name = condition
        if rest and (contrary or first in self._words.given):
            key, name = rest, condition.split(None, 1)[1]
        self._last = (key, not contrary)
        self.names.setdefault(key, name)
        return key, not contrary

    def _led_on(self, steps: tuple[Step, ...]) -> Iterable[_Jump]:
        numbers = {step.id: number for number, step in enumerate(steps, 1)}
        for number, step in enumerate(steps, 1):
            for entry in step.all("Then"):
                target = numbers.get(entry.part("where").removeprefix("#"), 0)
                if target > number + 1:
                    yield _Jump(self._tests.get(number, ()), range(number + 1, target))


def _holds(tests: tuple[_Test, ...], taken: str) -> bool:
    return all((key == taken) is wanted for key, wanted in tests)
