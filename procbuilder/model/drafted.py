"""A procedure proposed from a narration: steps with their fields, and where each sentence went."""

from dataclasses import dataclass

from procbuilder.model.heard import Sentence
from procbuilder.model.origin import Origin
from procbuilder.model.timecode import Span


@dataclass(frozen=True, slots=True)
class ProposedField:
    """One field of a proposed step, with the moment at which it was said."""

    name: str
    parts: tuple[str, ...]
    """Its parts by place, as plain text."""
    origin: Origin


@dataclass(frozen=True, slots=True)
class ProposedStep:
    """One step: a command, the footage, and what was said about it."""

    command: str
    span: Span | None
    """None when it was done before the film."""
    fields: tuple[ProposedField, ...]


@dataclass(frozen=True, slots=True)
class DerivedStep:
    """A refit step that nobody filmed, made from the step that took something off."""

    command: str
    thing: str
    """What goes back first, for the id of the step."""
    fields: tuple[tuple[str, str], ...]
    """(name, value as written), the first one ``Derived`` with the id of that step."""


@dataclass(frozen=True, slots=True)
class Landing:
    """Where one sentence of the narration went."""

    sentence: Sentence
    step: int
    """Number of the step, from 1; 0 for the list before the steps, or when it was set aside."""
    how: str
    """``command``, the name of a field, or why it was set aside."""
    aside: bool = False


@dataclass(frozen=True, slots=True)
class Draft:
    """The whole proposal. Every sentence stands in ``landings`` once, in the order in which it was said."""

    steps: tuple[ProposedStep, ...]
    before: tuple[ProposedField, ...]
    """Fields for the list before the steps."""
    landings: tuple[Landing, ...]


@dataclass(frozen=True, slots=True)
class DraftTexts:
    """What a new procedure says before anybody has written in it, in its language."""

    language: str
    """As it stands behind ``language:``."""
    before: str
    """Title of what comes before the steps."""
    ready: str
    """What is to be filled in there."""
    steps: str
    """Title of the steps."""
