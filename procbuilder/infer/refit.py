"""Refit steps proposed from the steps that opened something, in reverse order. Nobody filmed them: read them all."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from procbuilder.infer.commanded import commanded
from procbuilder.infer.spoils import single_use
from procbuilder.model.drafted import DerivedStep
from procbuilder.model.heard import Operation, Sentence
from procbuilder.model.ledger import Balance, Entry, Ledger, OnWay, Opening
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.moves import FIELD_OF, OPENED_BY
from procbuilder.model.origin import Place
from procbuilder.model.phrases import called, mentioned, names_it
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

_TOGETHER = 3
"""So many things are put back by one command."""


def derive(
    procedure: Procedure, ledger: Ledger, lexicon: Lexicon, own: OwnWords = NO_OWN_WORDS
) -> tuple[DerivedStep, ...]:
    """A step for all that is still open, or only assumed to be closed; what was opened last comes first.

    What is pressed, bled, timed, preloaded or used once is not turned round: it gets a step that asks. What a
    step already says it was derived from is not derived again.
    """
    return tuple(_Deriver(procedure, ledger, lexicon, own).steps())


@dataclass(frozen=True, slots=True)
class _Back:
    """One thing that must go back, with the command that took it off."""

    entry: Entry
    step: Step
    opposite: str
    decide: str
    """What must be decided; empty when it can be turned round."""

    @property
    def place(self) -> Place:
        """The line that took it off."""
        return self.entry.opened[-1].place

    @property
    def rest(self) -> str:
        """``2 x axle stand``, as written in a field"""
        count = self.entry.out - self.entry.back
        name = _literal(self.entry.item)
        return f"{count:f} x {name}" if count > 1 else name


class _Deriver:
    def __init__(self, procedure: Procedure, ledger: Ledger, lexicon: Lexicon, own: OwnWords) -> None:
        self.procedure, self.lexicon, self.own = procedure, lexicon, own
        self.open = ledger.having(Balance.OPEN, Balance.ASSUMED)
        self.told, self.said, self.thing = lexicon.refit, lexicon.refit.said, lexicon.words.thing
        self.slackened = {self.thing(e.item) for e in self.open if e.opening is Opening.SLACKENED}
        self.states = {self.thing(e.item): e for e in self.open if e.opening is Opening.STATE}
        self.known = {self.thing(e.item.name) for e in procedure.everywhere("Torque") if e.items}
        self.done = {entry.step_id for entry in procedure.everywhere("Derived")}

    def steps(self) -> Iterator[DerivedStep]:
        backs = [self._back(entry) for entry in self.open if entry.opened[-1].number and self._is_new(entry)]
        self.guards = {back.place: state for back in backs if (state := self._guarded(back))}
        in_turn = sorted((back for back in backs if self._has_own_step(back, backs)), key=_last_first)
        for _, group in groupby(in_turn, key=_alike):
            together = list(group)
            for start in range(0, len(together), _TOGETHER):
                yield self._step(together[start : start + _TOGETHER], backs)

    def _is_new(self, entry: Entry) -> bool:
        return entry.opened[-1].step not in self.done

    def _has_own_step(self, back: _Back, backs: list[_Back]) -> bool:
        """False for what goes with the end of a state, and for the slackening of what is to be decided anyway."""
        half = back.entry.opening is Opening.SLACKENED and bool(back.decide)
        again = half and any(
            b.decide and b is not back and self.thing(b.entry.item) == self.thing(back.entry.item) for b in backs
        )
        return not again and back.place not in self.guards

    def _guarded(self, back: _Back) -> str:
        """The state for which a thing was fitted, when it was there before: both end in one step."""
        for entry in back.step.all("For now"):
            if entry.items and self.thing(entry.item.name) == self.thing(back.entry.item):
                state = self.states.get(self.thing(entry.part("while")))
                if state is not None and state.opened[-1].place < back.entry.opened[-1].place:
                    return self.thing(state.item)
        return ""

    def _back(self, entry: Entry) -> _Back:
        step = self.procedure.steps[entry.opened[-1].number - 1]
        return _Back(entry, step, self._opposite(entry, step), self._decide(entry, step))

    def _opposite(self, entry: Entry, step: Step) -> str:
        if entry.opening is Opening.STATE and (verb := self.told.ends.get(self.thing(entry.item).split()[-1])):
            return verb
        words, told = self.lexicon.words, self._heard(entry, step)
        pairs = ((one, ((one.object, entry.item), (entry.item, one.object))) for one in told)
        named = [one for one, names in pairs if any(names_it(*both, words) for both in names)]
        found = named or told
        return found[0].opposite if found else self.said[entry.opening.name.lower()]

    def _heard(self, entry: Entry, step: Step) -> list[Operation]:
        """What the command does, of the kind of this entry, where something puts it right again."""
        sentence = Sentence(step.command, step.place, "", Fraction(0), Fraction(0))
        told = commanded([sentence], self.lexicon, self.own)
        return [one for one in told if one.opposite and FIELD_OF.get(one.act) == OPENED_BY[entry.opening]]

    def _decide(self, entry: Entry, step: Step) -> str:
        used_once = single_use(entry.item, self.lexicon)
        if entry.scrapped or used_once is not None:
            return self.said["used_once_because"].format(why=used_once.why) if used_once else self.said["used_once"]
        text = f"{entry.item} ; {entry.of} ; {step.command}" if entry.opening is Opening.OFF else entry.item
        return next((what for words, what in self.told.decide if mentioned(text, words, self.lexicon.words)), "")

    def _step(self, backs: list[_Back], every: list[_Back]) -> DerivedStep:
        first = backs[0]
        source = ("Derived", f"#{first.step.id}")
        branch = [("Only if", condition) for condition in _conditions(first.entry.way, self.lexicon.ways.contrary)]
        if first.decide:
            note = self.said["decided"].format(what=first.decide)
            new = [("Part", _listed(f"{first.rest}, new"))] if first.entry.scrapped else []
            command = self.said["decide"].format(thing=first.entry.item)
            return DerivedStep(command, first.entry.item, (source, *branch, *new, ("Note", note)))
        ended = {self.thing(back.entry.item) for back in backs if back.entry.opening is Opening.STATE}
        guards = [back for back in every if self.guards.get(back.place) in ended]
        fields = [field for back in (*guards, *backs) for field in self._fields(back)]
        return DerivedStep(self._command(backs), first.entry.item, (source, *branch, *dict.fromkeys(fields)))

    def _command(self, backs: list[_Back]) -> str:
        names = []
        for back in backs:
            words = back.entry.item.split()
            state = back.entry.opening is Opening.STATE and len(words) > 1 and back.opposite != self.said["state"]
            names.append(self.said["thing"].format(thing=" ".join(words[:-1] if state else words)))
        things = self.said["and"].join(dict.fromkeys(names))
        return self.said["step"].format(verb=backs[0].opposite, things=things)

    def _fields(self, back: _Back) -> Iterator[tuple[str, str]]:
        entry = back.entry
        match entry.opening:
            case Opening.OFF:
                by = f" | by: {_by(entry)}" if entry.fasteners else ""
                of = f" | of: {_literal(entry.of)}" if entry.of else ""
                yield "On", f"{back.rest}{by}{of}"
                yield from self._tightened(entry)
            case Opening.SLACKENED:
                of = f" | of: {_literal(entry.of)}" if entry.of else ""
                yield "Torque", f"{_literal(entry.item)} | look up{of}"
            case Opening.TEMPORARY:
                yield "Out again", back.rest
            case Opening.STATE:
                yield "Ends", _literal(entry.item)
                supply, _, state = entry.item.rpartition(" ")
                if supply and state in self.told.supply:
                    yield "Supply", _listed(_literal(supply))

    def _tightened(self, entry: Entry) -> Iterator[tuple[str, str]]:
        """A blank torque for each threaded thing; where it is tightened later, it is only nipped up now."""
        for name in (*(one.head for one in entry.fasteners), entry.item):
            if not called(name, self.told.threaded, self.lexicon.words):
                continue
            if self.thing(name) in self.slackened:
                yield "Nip up", _literal(name)
            elif self.thing(name) not in self.known:
                yield "Torque", f"{_literal(name)} | look up"


def _by(entry: Entry) -> str:
    return "; ".join(_listed(_literal(one.words)) for one in entry.fasteners)


def _literal(text: str) -> str:
    """With the bars that part a field kept as such."""
    return text.replace("|", "\\|")


def _listed(text: str) -> str:
    """With the signs that part a list kept as such."""
    return text.replace(";", "\\;")


def _last_first(back: _Back) -> tuple[int, int]:
    moment = back.entry.opened[-1]
    return -moment.number, -moment.place.line


def _alike(back: _Back) -> tuple[object, ...]:
    """What one command puts back: opened in one step, in one way, with one opposite, and nothing to decide."""
    alone = back.entry.item if back.decide else ""
    return back.step.id, back.entry.opening, back.opposite, back.entry.way, alone


def _conditions(way: OnWay | None, contrary: tuple[str, ...]) -> list[str]:
    """The conditions of a step on this way."""
    no = next(iter(contrary), "not")
    return [name if way.taken else f"{no} {name}" for name in way.branches] if way else []
