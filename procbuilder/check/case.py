"""What the rules look at: the procedure as written, what is known of its recordings, and what was worked out of it."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from procbuilder.model.activity import Disorder, Noticed
from procbuilder.model.facts import StepRef
from procbuilder.model.footage import PacketFacts, Recording
from procbuilder.model.ledger import Ledger
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.origin import Place
from procbuilder.model.phrases import called, mentioned, quoted
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.timecode import Span
from procbuilder.model.worked import HeardTorque, RemovedProtection, Standing, TakenOff, TorqueRow


@dataclass(frozen=True, slots=True)
class Case:
    """One procedure to be checked."""

    procedure: Procedure
    recordings: Mapping[str, Recording]
    """Facts by name of the recording, as far as they are known."""
    ledger: Ledger
    removed: tuple[RemovedProtection, ...]
    torques: tuple[TorqueRow, ...]
    lexicon: Lexicon
    heard: tuple[HeardTorque, ...] = ()
    """Torques that were said while a step was filmed."""
    standing: Mapping[str, Standing] = field(default_factory=dict)
    """What still holds at each step, by step id."""
    noticed: tuple[Noticed, ...] = ()
    disorders: tuple[Disorder, ...] = ()
    taken_off: tuple[TakenOff, ...] = ()
    """What steps without fields take off by their words, and no later step speaks of."""
    films: Mapping[str, PacketFacts] = field(default_factory=dict)
    """What the packets of the recordings tell, as far as it is known."""

    def thing(self, name: str) -> str:
        """The name by which two mentions are the same thing."""
        return self.lexicon.words.thing(name)

    def mentioned(self, text: str, phrases: Iterable[str]) -> str:
        """The first of the phrases that stands in a text."""
        return mentioned(text, phrases, self.lexicon.words)

    def quoted(self, text: str, phrases: Iterable[str]) -> str:
        """The same, as it is written there."""
        return quoted(text, phrases, self.lexicon.words)

    def called(self, name: str, phrases: Iterable[str]) -> str:
        """The first of the phrases with which a name ends."""
        return called(name, phrases, self.lexicon.words)

    @property
    def numbered(self) -> Iterator[tuple[int, Step]]:
        """The steps with their numbers, which count from 1."""
        return enumerate(self.procedure.steps, 1)

    @property
    def front(self) -> Place | None:
        """The heading below which the lists before the first step stand; None without any section."""
        return next((section.place for section in self.procedure.sections), None)

    def step(self, number: int) -> StepRef:
        """The step of this number, to speak of it."""
        return StepRef(self.procedure.steps[number - 1].id, number)

    def heading(self, number: int) -> Place:
        """Where the step of this number begins: lines that are proposed for it go below."""
        return self.procedure.steps[number - 1].place

    def replaceable(self, place: Place) -> Place | None:
        """The place of a field, where it has one part alone: a line for another name then loses nothing."""
        steps = (entry for step in self.procedure.steps for entry in step.fields)
        typed = next((entry for entry in (*self.procedure.front_fields, *steps) if entry.place == place), None)
        return place if typed and len(typed.parts) == 1 else None

    @property
    def spans(self) -> Iterator[tuple[int, Place, Span]]:
        """Every typed stretch of footage: step number, line, span; skipped stretches too."""
        for number, step in self.numbered:
            for span in step.spans:
                yield number, step.place, span
            places = [entry.place for entry in step.all("Skip")]
            for skip in step.skips:
                yield number, places[0] if len(places) == 1 else step.place, skip
