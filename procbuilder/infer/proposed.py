"""Work of which a procedure speaks and that can hurt somebody; whether a typed danger covers it."""

from collections.abc import Iterable, Iterator

from procbuilder.model.activity import Hit, Noticed
from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.origin import Place
from procbuilder.model.phrases import Phrases
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.signal import SIGNALS
from procbuilder.model.worked import Hazard, Standing

_SPEAKING = (
    "Tool", "Supply", "Off", "On", "Slacken", "For now", "State", "Hidden", "Key point", "Check", "Measure", "Lift",
)  # fmt: skip
"""Fields that tell what is done, and with what."""
_LISTS = ("Tool", "Supply")

Text = tuple[str, Place]


def noticed(procedure: Procedure, still: dict[str, Standing], lexicon: Lexicon) -> tuple[Noticed, ...]:
    """Every activity that some words point to, in the order of the list.

    A hit is covered by a danger stated in its step, still standing there, or in the front lists; for harm
    that comes later, by one stated anywhere. What a list or the title names is covered by one anywhere.
    """
    activities = lexicon.activities
    phrases = Phrases((activity.words for activity in activities), lexicon.words)
    covers = _Covers(procedure, still, lexicon)
    hits: dict[int, dict[int, Hit]] = {}
    for number, step, texts in _spoken(procedure):
        for text, place in texts:
            for found in phrases.found(text):
                if number or found.key not in hits:
                    hit = Hit(found.words, number, place, covers.told(found.key, step))
                    hits.setdefault(found.key, {}).setdefault(number, hit)
    return tuple(Noticed(activities[key], tuple(hits[key].values())) for key in sorted(hits))


def said(step: Step) -> Iterator[Text]:
    """What a step says is done: its command, its prose, and its fields as far as they tell what happens."""
    yield step.command, step.place
    for prose in step.prose:
        yield prose.text, prose.place
    for entry in step.all(*_SPEAKING):
        yield _words(entry), entry.place


def _words(entry: Field) -> str:
    things = "; ".join(item.name for item in entry.items)
    return things or entry.part(entry.kind.parts[0])


def _spoken(procedure: Procedure) -> Iterator[tuple[int, Step | None, Iterable[Text]]]:
    """The steps with what they say; last, what only the title and the front lists name."""
    for number, step in enumerate(procedure.steps, 1):
        yield number, step, said(step)
    lists = [(_words(entry), entry.place) for entry in procedure.listed(*_LISTS)]
    yield 0, None, [(procedure.title, procedure.place), *lists]


class _Covers:
    """Which activities the typed dangers cover, here or anywhere."""

    def __init__(self, procedure: Procedure, still: dict[str, Standing], lexicon: Lexicon) -> None:
        self._phrases = Phrases((activity.told for activity in lexicon.activities), lexicon.words)
        self._still, self._activities = still, lexicon.activities
        self._front = self._covered(_typed(procedure.listed(*SIGNALS)))
        self._anywhere = self._covered(_typed(procedure.everywhere(*SIGNALS)))
        self._here: dict[str, set[int]] = {}

    def told(self, key: int, step: Step | None) -> bool:
        if step is None or self._activities[key].once:
            return key in self._anywhere
        return key in self._front or key in self._at(step)

    def _at(self, step: Step) -> set[int]:
        if step.id not in self._here:
            standing = self._still.get(step.id, Standing()).hazards
            self._here[step.id] = self._covered([*_typed(step.all(*SIGNALS)), *map(_said_by, standing)])
        return self._here[step.id]

    def _covered(self, texts: Iterable[str]) -> set[int]:
        return {found.key for text in texts for found in self._phrases.found(text, denied=True)}


def _typed(fields: Iterable[Field]) -> list[str]:
    """A typed danger without the way to avoid it, which may speak of anything."""
    return [f"{entry.part('hazard')} ; {entry.part('consequence')}" for entry in fields]


def _said_by(hazard: Hazard) -> str:
    return f"{hazard.hazard} ; {hazard.consequence}"
