"""Fields that name another step by its id, as the reader gets them: with its number and its command."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from procbuilder.model.edition import Named
from procbuilder.model.fields import Field
from procbuilder.model.procedure import Step
from procbuilder.pipeline.lines import named
from procbuilder.publish.language import Language


@dataclass(frozen=True, slots=True)
class References:
    """All steps of a procedure, for what refers to them."""

    steps: tuple[Step, ...]
    language: Language

    def named(self, fields: Iterable[Field], number: int) -> tuple[Named, ...]:
        """Fields of the step with this number; an id that no step has stays as it was typed."""
        fields = tuple(fields)
        return tuple(self._told(entry, line, number) for entry, line in zip(fields, named(fields), strict=True))

    def _told(self, entry: Field, line: Named, number: int) -> Named:
        other = next((at for at, step in enumerate(self.steps, 1) if step.id == entry.step_id), 0)
        if entry.name == "Derived":
            return replace(line, text=self._derived(line.text, other), step=other)
        if not other:
            return line
        told = self.language.text("step {number}, {command}", number=other, command=self.steps[other - 1].command)
        again = entry.name == "Then" and other <= number
        extra = (self.language.text("from there on everything once more"),) if again else ()
        return replace(line, text=told, extra=(*line.extra, *extra), step=other)

    def _derived(self, source: str, other: int) -> str:
        if other:
            return self.language.text("from step {number}, not filmed and not yet accepted", number=other)
        return self.language.text("from {source}, not filmed and not yet accepted", source=source)
