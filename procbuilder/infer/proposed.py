"""Work of which a procedure speaks and that can hurt somebody; whether a typed danger covers it."""

from collections.abc import Iterable

from procbuilder.infer.telling import told
from procbuilder.model.activity import Hit, Noticed
from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import Phrases
from procbuilder.model.procedure import Narration, Procedure, Step
from procbuilder.model.signal import SIGNALS, Signal
from procbuilder.model.worked import Hazard, Standing

Stated = tuple[Signal, str, str]
"""A typed danger: signal word, hazard, consequence; not the way to avoid it, which may speak of anything."""


def noticed(
    procedure: Procedure, still: dict[str, Standing], lexicon: Lexicon, narrations: Iterable[Narration] = ()
) -> tuple[Noticed, ...]:
    """Every activity that some words point to, typed or said, in the order of the list.

    A hit is covered by a danger of this very activity, with an equal or graver signal word, stated in its step,
    still standing there, or in the front lists; for harm that comes later, by one stated anywhere. What no step
    says, but a list, the title or words between two steps, is covered by one anywhere.
    """
    activities = lexicon.activities
    phrases = Phrases((activity.words for activity in activities), lexicon.words)
    covers = _Covers(procedure, still, lexicon)
    hits: dict[int, dict[int, Hit]] = {}
    for number, step, texts in told(procedure, narrations):
        for text in texts:
            for found in phrases.found(text.words):
                if number or found.key not in hits:
                    hit = Hit(found.words, number, text.place, covers.told(found.key, step), text.said)
                    hits.setdefault(found.key, {}).setdefault(number, hit)
    return tuple(Noticed(activities[key], tuple(hits[key].values())) for key in sorted(hits))


class _Covers:
    """Which activities the typed dangers cover, here or anywhere."""

    def __init__(self, procedure: Procedure, still: dict[str, Standing], lexicon: Lexicon) -> None:
        self._activities, self._thing, self._still = lexicon.activities, lexicon.words.thing, still
        self._phrases = Phrases((activity.told for activity in lexicon.activities), lexicon.words)
        self._proposed = {self._thing(activity.hazard): key for key, activity in enumerate(lexicon.activities)}
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
            self._here[step.id] = self._covered([*_typed(step.all(*SIGNALS)), *map(_stated, standing)])
        return self._here[step.id]

    def _covered(self, dangers: Iterable[Stated]) -> set[int]:
        """Those of which a danger speaks with a signal word that is not milder than theirs."""
        return {
            key
            for signal, hazard, consequence in dangers
            for key in self._meant(hazard, consequence)
            if signal.rank <= self._activities[key].signal.rank
        }

    def _meant(self, hazard: str, consequence: str) -> Iterable[int]:
        """A hazard as it is proposed is that of one activity; any other is known by its words."""
        one = self._proposed.get(self._thing(hazard))
        if one is not None:
            return (one,)
        texts = (hazard, f"{hazard} | {consequence}")
        return {found.key for text in texts for found in self._phrases.found(text, denied=True)}


def _typed(fields: Iterable[Field]) -> list[Stated]:
    return [(SIGNALS[entry.name], entry.part("hazard"), entry.part("consequence")) for entry in fields]


def _stated(hazard: Hazard) -> Stated:
    return hazard.signal, hazard.hazard, hazard.consequence
