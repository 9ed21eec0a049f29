"""From a verb with its things to the operations that it tells."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.sizes import first_size
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.dictionary.wordbook import Block
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.doers import as_said, tail
from procbuilder.infer.hearing.meaning import SOME_WORK, in_part, meaning
from procbuilder.infer.hearing.memory import Named, renamed
from procbuilder.infer.hearing.plausible import Sense
from procbuilder.infer.hearing.talk import Line, Pair, Talk
from procbuilder.infer.hearing.tenses import WILL
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.infer.hearing.word_order import named_before
from procbuilder.model.heard import Act, Operation, Tense


def count_behind(clauses: Clauses, at: int, *, many: bool) -> Decimal | None:
    """The count that follows a thing in the rest of its sentence, before the next verb; None when none does."""
    if not many:
        return None
    if (spread := _spread(clauses, at)) is not None:
        return spread
    while at < len(clauses.tokens) and clauses.low(at) not in SIGNS:
        if clauses.verb_at(at) or clauses.has("subordinate", at):
            return None
        at += 1
    at += 1
    while clauses.low(at) in ("all", "that", "'s", "there", "'re", "are", "the"):
        at += 1
    thing = read_thing(clauses.tokens, at, clauses.book)
    if thing is None or thing.count is None or thing.measure or thing.name:
        return None
    return thing.count if clauses.low(thing.end) in SIGNS or clauses.low(thing.end) == "of" else None


def _spread(clauses: Clauses, at: int) -> Decimal | None:
    words = " " + " ".join(token.low for token in clauses.tokens[at : at + 12]) + " "
    for phrase, number in clauses.book.grammar["spread"].items():
        if f" one {phrase} " in words or (f", {phrase} " in words and phrase == "top and bottom"):
            return Decimal(number)
    return None


class Teller:
    """Gives the operations of a verb in one sentence."""

    def __init__(self, talk: Talk, line: Line) -> None:
        self.talk, self.line, self.book = talk, line, talk.book
        self.sense = Sense(talk, line)

    def tell(self, told: Told, at: int) -> list[Pair]:
        """What a verb tells of each of its things; nothing when it is of some other job."""
        clauses = self.line.clauses
        if self._moves_himself(told):
            return []
        if told.moves:
            told = replace(told, things=(), where=told.things[0] if told.things else told.where)
        things = told.things or self._moved(told, at)
        before = [token.low for token in clauses.tokens[clauses.clause : at]]
        past = self._is_past(told, at, before)
        tense = self.line.times.tense(before, past=past or told.verb == "have", at=at)
        self.line.perfect = "'ve" in before or "had" in before
        if tense is None:
            return []
        made = [pair for one in things for pair in self._operation(told, one, tense)]
        if made and made[0][1].act in (Act.ON, Act.OFF) and told.means is not None and self._goes_along(told.means):
            made += self._operation(told, told.means, tense)
        return made

    def _is_past(self, told: Told, at: int, before: list[str]) -> bool:
        """ "I've taken it off"; "I put a rag in", where it is told late; and "I've flipped it off and put a tag on"."""
        if told.form is Form.PAST or not {"had", "have", "'ve"}.isdisjoint(before):
            return True
        clauses = self.line.clauses
        either = any(form is Form.PAST for _, form in self.book.forms.get(clauses.low(at), ()))
        goes_on = not before and clauses.low(at - 1) == "and" and self.line.perfect
        by_me = (
            (self.line.times.earlier or self.line.times.long_ago)
            and WILL.isdisjoint(before)
            and not {"i", "we"}.isdisjoint(before)
        )
        return either and (goes_on or by_me)

    def _printed(self, block: Block, named: Named) -> str:
        """ "Put back" only what came off; a new one is fitted."""
        fitted = block.print == "Put back" and (named.new or not self.talk.is_off(named.name))
        return "Fit" if fitted else block.print

    def _without_deed(self, name: str) -> str:
        """The gauge of "check that the gauge reads nought"."""
        words = name.split()
        deeds = (at for at, word in enumerate(words) if at and word.endswith("s") and not self.book.knows(word))
        return " ".join(words[: next(deeds, len(words))])

    def _usual(self, block: Block) -> str:
        """What is meant when no thing is named: what is in the state that the verb ends, or what it is used for."""
        open_now = self.talk.status.last_in(block.state) if block.act is Act.ENDS else ""
        return open_now or block.default

    def _moves_himself(self, told: Told) -> bool:
        """ "Go over the screws", "sit in the car"."""
        led = bool(told.things) and self.line.clauses.has("particles", told.things[0].start - 1)
        return led and not told.moves and self.book.has("self_moving", told.verb)

    def come(self, told: Told, at: int) -> list[Pair]:
        """What "off it comes" tells; nothing right behind the operation that says what came off."""
        last = self.line.pairs[-1][1] if self.line.pairs else self.talk.last
        thing = told.things[0]
        points_back = not self.talk.memory.named_here
        said = last is not None and points_back and last.plural is thing.many
        return [pair for pair in self.tell(told, at) if not (said and last and pair[1].act is last.act)]

    def work(self, told: Told) -> list[Pair]:
        """What is done by a verb that means no more than some work, or a check or a tightening that it names."""
        thing = told.things[0]
        named = self.talk.pointing.memory.named(thing)
        tense = self.line.times.tense((), past=False)
        if tense is None or tense is Tense.IF or not named.name:
            return []
        block = meaning(told, named.name, self.book, self.talk.status)
        if block is None or block.act not in (Act.CHECK, Act.TIGHTEN, Act.NIP, Act.SLACKEN):
            block = SOME_WORK
        self.talk.memory.handle(renamed(thing, named))
        return [(told, self.made(block, told, named, tense))]

    def _goes_along(self, means: Thing) -> bool:
        """ "Pop the guard on with its three screws": they go on too."""
        return bool(means.name) and (means.new or self.book.is_in(means.name, ("fastener", "clip", "seal")))

    def _is_of_the_item(self, name: str) -> bool:
        """ "I had the starter rope off already": nothing of that name was fitted for the job."""
        return self.book.is_in(name, ("part",))

    def _moved(self, told: Told, at: int) -> tuple[Thing, ...]:
        """The thing that moves by itself, or that is looked for."""
        if told.about is not None and told.about.name:
            return (told.about,)
        clauses = self.line.clauses
        if not told.moves:
            ways = set(told.particles)
            defaults = any(block.default and ways & block.particles for block in self.book.by_verb[told.verb])
            goes_on = bool(self.line.pairs) and self._tightens(told)
            return (Thing("", at, at, pointed=True),) if defaults or goes_on else ()
        pronoun = read_thing(clauses.tokens, at - 1, self.book)
        subject = clauses.subject or pronoun
        if subject is not None and subject.pointed and subject.start == clauses.clause:
            subject = named_before(clauses, subject.start) or subject
        named = subject is clauses.subject and subject is not None and bool(subject.name)
        company = [one for one in clauses.company if one.name] if named else []
        return (*company, subject) if subject is not None else ()

    def _tightens(self, told: Told) -> bool:
        """ "Screw it in, then tighten": the same thing again."""
        acts = {block.act for block in self.book.by_verb[told.verb]}
        return acts <= {Act.TIGHTEN, Act.NIP}

    def _operation(self, told: Told, thing: Thing, tense: Tense) -> Iterator[Pair]:
        talk = self.talk
        named = talk.pointing.named(thing, told)
        block = meaning(told, named.name, self.book, talk.status)
        if block is None:
            return
        if block.means and told.means is not None:
            named = talk.memory.named(told.means)
        usual = not named.name and bool(block.default) and not thing.many
        if usual:
            if block.act is Act.ENDS and block.things and not talk.status.last_in(block.state):
                return
            named = replace(named, name=self._usual(block))
        block = in_part(block, told, thing, named, self.line.clauses, self.line.sentence.words)
        if not self.sense.holds(block, told, thing, named, tense):
            if named.sure:
                talk.memory.job = talk.memory.job
                talk.memory.mention(thing)
            return
        if told.where is not None:
            (talk.memory.mention_behind if block.act is Act.FOR_NOW else talk.memory.mention)(told.where)
        remember = talk.memory.mention if told.about is not None else talk.memory.handle
        if not usual:
            remember(renamed(thing, named))
        if block.act is Act.ON and tense is Tense.NOW:
            talk.memory.fitted_here.add(named.name)
        yield told, self.made(block, told, named, tense)

    def made(self, block: Block, told: Told, named: Named, tense: Tense) -> Operation:
        """The operation of a block, entered into what is open now."""
        clauses, status, sentence = self.line.clauses, self.talk.status, self.line.sentence
        name, printed = block.object or named.name, self._printed(block, named)
        act = block.act
        if act is Act.CHECK:
            name = self._without_deed(name)
        if act is Act.OFF and self.book.is_in(self.talk.memory.in_full(name), ("tool",)):
            act = Act.OUT_AGAIN
        elif act is Act.OUT_AGAIN and not status.is_for_now(name) and self._is_of_the_item(name):
            act = Act.OFF
        if act is Act.FOR_NOW and named.new and self.book.is_in(name, ("support",)):
            act = Act.ON
        act = act if tense in (Tense.LATER, Tense.IF) else status.enter(act, name, block.state)
        start, end = clauses.tokens[told.start].start, clauses.tokens[told.end - 1].end
        return Operation(
            verb=printed or as_said(told),
            act=act,
            object=name,
            said=sentence,
            tense=tense,
            count=named.count or count_behind(clauses, told.end, many=named.many),
            state=f"{name} {block.state}" if block.state else "",
            new=named.new,
            scrap=block.scrap,
            plural=named.many,
            size=first_size(sentence.words, self.book),
            words=sentence.words[start:end],
            opposite=block.opposite,
            tail=tail(clauses, told, sentence),
        )


class Same:
    """Tells of the things of one sentence that have no verb of their own."""

    def __init__(self, talk: Talk, line: Line, teller: Teller) -> None:
        self.talk, self.line, self.teller, self.book = talk, line, teller, talk.book

    def tell(self, told: Told, at: int) -> list[Pair]:
        """What became of a thing, as if a verb had said it."""
        made = self.teller.tell(told, at)
        self.line.pairs += made
        return made

    def same_for(self, found: Thing, pairs: list[Pair], *, any_thing: bool = False) -> None:
        """The first of some operations that goes for this thing, done to it; it need not be known to be one."""
        named = self.talk.memory.named(found)
        model = next((pair for pair in pairs if self._goes_for(pair, named, any_thing)), None)
        if model is not None:
            self.talk.memory.handle(renamed(found, named))
            told = replace(model[0], start=found.start, end=found.end)
            block = meaning(told, named.name, self.book, self.talk.status)
            assert block is not None
            self.line.pairs.append((told, self.teller.made(block, told, named, Tense.NOW)))

    def _goes_for(self, pair: Pair, named: Named, any_thing: bool) -> bool:
        """True when the same can be done to this thing, and it is known as one."""
        told, operation = pair
        block = meaning(told, named.name, self.book, self.talk.status) if named.name else None
        if block is None or block.act is not operation.act or block.act in (Act.WORK, Act.CHECK):
            return False
        if self.book.is_in(named.name, ("place",)):
            return False
        return any_thing or self.book.is_in(named.name, self.book.groups)
