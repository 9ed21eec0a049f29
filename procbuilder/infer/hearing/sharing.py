"""Things that share in what was told of another: "then the pin", "the needle comes with it", "washer too"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.listening import Line, Talk
from procbuilder.infer.hearing.same import Same
from procbuilder.infer.hearing.told import Told
from procbuilder.model.heard import Act

_GOES_ON = (Act.ON, Act.ENDS, Act.OUT_AGAIN)
"""What is done to one thing, and then another one goes on."""


class Sharing:
    """Hears in one sentence which things share in what was told."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.talk, self.line, self.same = talk, line, same
        self.book, self.clauses = talk.book, line.clauses

    def take(self, found: Thing, at: int) -> bool:
        """True when the same goes for a thing as for the last one, and it has been told so."""
        pairs = self.line.pairs
        if self._comes_along(found):
            self.same.same_for(found, pairs[-1:])
        elif not self._is_same_again(found, at):
            return False
        elif self._goes_on(found):
            self.same.tell(Told("fit", Form.BASE, at, found.end, (found,)), at)
        else:
            named = self.clauses.low(at) == "the"
            self.same.same_for(found, (pairs or self.talk.before)[-1:], any_thing=named)
            self.line.same_until = found.end
        return True

    def note(self, found: Thing, at: int) -> None:
        """A thing that is only named: what holds something for the job, or what it is held by."""
        if not self.line.aside and self._is_held_up_by(found, at):
            self.same.tell(Told("put", Form.BASE, at, found.end, (found,), ("on",)), at)

    def _goes_on(self, found: Thing) -> bool:
        """ "Gas on, boot": put back, though what stands before it was ended in another way."""
        last = self.line.heard[-1].act if self.line.heard else None
        return last in (Act.ENDS, Act.OUT_AGAIN) and self.talk.may_go_on(found.name)

    def _is_same_again(self, found: Thing, at: int) -> bool:
        """ "Needle back in, then the pin" and "cover on, two screws": the same goes for them."""
        clauses, heard = self.clauses, self.line.heard
        before = clauses.low(at - 1) if at else ""
        follows = before in ("and", "plus") and self.line.same_until in (at - 1, at - 2)
        holds = before == "and" and self.line.place_until in (at - 1, at - 2)
        joined = before == "then" or follows or holds
        if clauses.busy or not self._ends_behind(found):
            return False
        if joined:
            return bool(heard)
        last = heard[-1] if heard else self.talk.last
        goes_on = last is not None and last.act in (_GOES_ON if heard else (Act.ON,))
        goes_on = goes_on and (before == "," if heard else not before)
        fastener = self.book.is_in(found.name, ("fastener", "clip", "seal"))
        is_counted = bool(found.count) or len(heard) > 1 or not found.many
        is_counted = is_counted and clauses.low(found.start) != "same" and not self._is_sized(found)
        told_here = bool(heard) and clauses.low(found.end) in SIGNS
        fastener = fastener or (told_here and self.talk.status.is_late and self.talk.is_off(found.name))
        return goes_on and fastener and (found.new or (is_counted and (told_here or self.talk.is_off(found.name))))

    def _ends_behind(self, found: Thing) -> bool:
        return self.clauses.low(found.end) in SIGNS or self.clauses.has("prepositions", found.end)

    def _comes_along(self, found: Thing) -> bool:
        """ "Slide the drum off and the bearing comes with it"."""
        clauses, at = self.clauses, found.end
        goes = clauses.low(at) in ("comes", "come", "goes", "go", "came", "went")
        at += 1 + (clauses.low(at + 1) in ("up", "along", "away"))
        told = self.line.pairs or self.talk.before
        named = bool(found.name) or clauses.low(found.start) == "they"
        return bool(told) and goes and named and self._is_with_it(at)

    def _is_with_it(self, at: int) -> bool:
        return self.clauses.low(at) == "with" and self.clauses.low(at + 1) in ("it", "them", "that", "him", "her")

    def _is_sized(self, found: Thing) -> bool:
        """ "Five mil Allen": the tool, and no five of them."""
        return any(self.clauses.has("units", at) for at in range(found.start, found.end))

    def _is_held_up_by(self, found: Thing, at: int) -> bool:
        """ "The bars are hanging in a strap": what holds a thing for the job only."""
        clauses = self.clauses
        leads = clauses.low(at - 1) in ("in", "on", "by", "with", "from", "off") and at - 1 > clauses.clause
        indefinite = clauses.low(at) in ("a", "an", "some", "two", "my", "bits")
        held = any(clauses.has("held_up", back) for back in range(clauses.clause, at))
        held = held and not any(clauses.has("negations", back) for back in range(at))
        return leads and indefinite and held and self.book.is_in(found.name, ("temporary", "support"))
