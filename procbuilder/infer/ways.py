"""The ways through a procedure: without any branch, with each branch taken alone, and with those that a step joins.

``Only if:`` makes a step part of a branch; steps with the same condition, or with its contrary, are one branch.
Branches may exclude each other, as two kits do; only where one step has several conditions can they hold together.
``Then: #id`` of a step on the way leads on to a later step, and what lies between is left out, or back to
an earlier one, and everything from there is done once more.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from procbuilder.model.lexicon import Lexicon
from procbuilder.model.procedure import Procedure, Step

_Test = tuple[str, bool]
"""Key of a branch, and whether the step belongs to it when it is taken or when it is not."""

Way = frozenset[str]
"""Keys of the branches that are taken; of no other."""
MAIN: Way = frozenset()


@dataclass(frozen=True, slots=True)
class _Jump:
    """A ``Then``: while its step is on the way, what lies between is left out, or is done again."""

    tests: tuple[_Test, ...]
    between: range
    back: bool


class Branches:
    """The branches of a procedure; steps by their number, from 1."""

    def __init__(self, procedure: Procedure, lexicon: Lexicon) -> None:
        self._names: dict[str, str] = {}
        self._words, self._thing = lexicon.ways, lexicon.words.thing
        self._last: _Test | None = None
        steps = procedure.steps
        self._tests = {number: tests for number, step in enumerate(steps, 1) if (tests := self._of(step))}
        self._jumps = tuple(self._led_on(steps))

    @cached_property
    def ways(self) -> Mapping[Way, tuple[str, ...]]:
        """Each way but the main one with its conditions as typed: single branches, then those that a step joins."""
        joined = [tuple(key for key, wanted in tests if wanted) for tests in self._tests.values()]
        ways = [(key,) for key in self._names] + [keys for keys in joined if len(set(keys)) > 1]
        return {frozenset(keys): tuple(self._names[key] for key in dict.fromkeys(keys)) for keys in ways}

    def leaves_out(self, number: int, way: Way = MAIN) -> bool:
        """True when a step is not on this way."""
        if not _holds(self._tests.get(number, ()), way):
            return True
        return any(number in jump.between and _holds(jump.tests, way) for jump in self._jumps if not jump.back)

    def changed_by(self, way: Way) -> list[int]:
        """Numbers of the steps that are on this way and not on the main one, or the other way round."""
        near = {number for key in way for number in self._steps_of.get(key, ())}
        for jump in self._jumps:
            if not jump.back and any(key in way for key, _ in jump.tests):
                near |= set(jump.between)
        return sorted(number for number in near if self.leaves_out(number) is not self.leaves_out(number, way))

    def done_again(self, way: Way) -> list[range]:
        """Numbers of the steps that are done once more because this way leads back, as far as the step it leaves."""
        return [jump.between for jump in self._jumps if jump.back and jump.tests and _holds(jump.tests, way)]

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
        key = self._thing(condition)
        if key in self._words.otherwise and self._last:
            return self._last[0], not self._last[1]
        first, _, rest = key.partition(" ")
        contrary = first in self._words.contrary and bool(rest)
        name = condition
        if rest and (contrary or first in self._words.given):
            key, name = rest, condition.split(None, 1)[1]
        self._last = (key, not contrary)
        self._names.setdefault(key, name)
        return key, not contrary

    def _led_on(self, steps: tuple[Step, ...]) -> Iterable[_Jump]:
        numbers = {step.id: number for number, step in enumerate(steps, 1)}
        for number, step in enumerate(steps, 1):
            for entry in step.all("Then"):
                target = numbers.get(entry.step_id, number)
                back = target <= number
                between = range(target, number + 1) if back else range(number + 1, target)
                yield _Jump(self._tests.get(number, ()), between, back)


def _holds(tests: tuple[_Test, ...], way: Way) -> bool:
    return all((key in way) is wanted for key, wanted in tests)
