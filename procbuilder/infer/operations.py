"""Operations from words: what was taken off, put back, checked or done, sentence by sentence."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from procbuilder.infer.clauses import Clauses, Told, is_outcome, is_resumed, subordinate_at
from procbuilder.infer.counts import count_behind
from procbuilder.infer.cues import cue, is_talk
from procbuilder.infer.doing import as_said, is_done, tail
from procbuilder.infer.inflect import Form
from procbuilder.infer.meaning import is_laid_aside, meaning
from procbuilder.infer.memory import Memory, Named, renamed
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.pointing import Pointing
from procbuilder.infer.results import command, follows_again, inverted, new_things, result
from procbuilder.infer.sizes import first_size
from procbuilder.infer.status import Status
from procbuilder.infer.tenses import Times
from procbuilder.infer.tokens import SIGNS, cut
from procbuilder.infer.wordbook import Block, Wordbook, wordbook
from procbuilder.model.heard import Act, Operation, Sentence, Sure, Tense
from procbuilder.model.words import singular, thing
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords


def operations(
    sentences: Iterable[Sentence], language: str = "en", own: OwnWords = NO_OWN_WORDS, *, commands: bool = False
) -> tuple[Operation, ...]:
    """All operations of a narration in the order in which they were said.

    Nothing is taken from a verb that is negated, that tells a purpose or a reason, or that somebody
    else does. A thing that is only pointed at gets the name of the last one that fits, and is unsure.

    ``own``: words of the workshop.

    ``commands``: each sentence is the command of a step, so that its first word is a verb, known or not.
    """
    listener = _Listener(wordbook(language, own), commands=commands)
    return tuple(operation for sentence in sentences for operation in listener.hear(sentence))


_INTRODUCES = ("there", "here", "that", "those", "these", "this")
_NO_VERB = ("have", "back", "open", "shut", "clear", "free")
"""Verbs that are as often something else, so that they do not keep a result from being heard."""
_LAYS = ("set", "lay", "put", "place", "stick", "drop")


class _Listener:
    """Hears one sentence after the other and remembers what was spoken of."""

    def __init__(self, book: Wordbook, *, commands: bool) -> None:
        self.book, self.memory, self.commands = book, Memory(book), commands
        self.last: Operation | None = None
        self.status = Status()
        self.pointing = Pointing(book, self.memory, self.status)
        self.before: list[tuple[Told, Operation]] = []

    def hear(self, sentence: Sentence) -> list[Operation]:
        self.sentence = sentence
        if not self.commands and is_talk(sentence.words, self.book):
            return []
        self.clauses = Clauses(cut(sentence.words, self.book.joined), self.book)
        self.times = Times(self.clauses.tokens, self.book)
        self.heard: list[Operation] = []
        self.tolds: list[Told] = []
        self.sub, self.same_until = False, -1
        self.memory.begin()
        at = 0
        while at < len(self.clauses.tokens):
            at = self._step(at)
        if self.commands:
            self._take_command()
        else:
            self._again()
        if cue(sentence.words, "finding", self.book) and any(
            token.low in ("'d", "would") for token in self.clauses.tokens
        ):
            self.heard = []
        if cue(sentence.words, "redo", self.book):
            self.heard = [one for one in self.heard if one.act not in (Act.SLACKEN, Act.OFF) or one.sure is Sure.HIGH]
        if self.heard:
            self.last = self.heard[-1]
            self.before = list(zip(self.tolds, self.heard, strict=False))
        return self.heard

    def _step(self, at: int) -> int:
        """Take in the token and what belongs to it; gives back where to go on."""
        clauses = self.clauses
        if clauses.low(at) in SIGNS or (
            clauses.low(at) in ("and", "but", "then", "or") and not is_outcome(clauses, at)
        ):
            return self._boundary(at)
        if (turns := self._turns(at)) is not None:
            self.sub = turns
            clauses.begin(at + (1 if turns else 0))
            return at + 1
        if clauses.low(at) == "so" and not self.sub:
            clauses.begin(at + 1)
        if (told := inverted(clauses, at)) is not None and (made := self._tell(told, at)):
            self.heard += made
            self.tolds += [told] * len(made)
            return told.end
        if (end := self._verb(at)) is not None:
            return end
        if clauses.low(at) == "there" and (clauses.has("be", at + 1) or clauses.has("helpers", at + 1)):
            clauses.busy = True
        if clauses.low(at) in self.book.idle and singular(clauses.low(at)) not in self.book.nouns:
            clauses.busy = True
        if clauses.low(at + 1) == "here" and clauses.low(at) in self.book.forms:
            return at + 2
        found = read_thing(clauses.tokens, at, self.book)
        return self._thing(found, at) if found is not None else at + 1

    def _turns(self, at: int) -> bool | None:
        """True where a reason, a time or an outcome begins, False where what is done goes on; None for neither."""
        if self.sub and is_resumed(self.clauses, at):
            return False
        aside = is_outcome(self.clauses, at) or (not self.sub and subordinate_at(self.clauses, at))
        return True if aside else None

    def _boundary(self, at: int) -> int:
        """A sign or ``and``: a new clause, and the end of a reason or time that stood first."""
        low = self.clauses.low(at)
        stood_first = low in SIGNS and (not self.heard or low in ";:–—.")
        if stood_first or low == "then" or (low in SIGNS and self.clauses.low(at + 1) in ("then", "so")):
            self.sub = False
        if low == "," and self.clauses.low(at + 1) == "and" and self.clauses.verb_at(at + 2):
            self.sub = False
        self.clauses.begin(at + 1)
        return at + 1

    def _verb(self, at: int) -> int | None:
        """The operation of a verb; None when the token is none, or none that means anything."""
        for verb, form in self.clauses.verb_at(at):
            before = self.clauses.before(at)
            told = replace(self.clauses.read(verb, form, at), moves=before.moves)
            if at > self.clauses.clause and self.clauses.has("be", at - 1) and form is Form.BASE:
                self.sub = False
            if before.negated:
                return told.end
            purpose = before.purpose and (self.clauses.verbs or not self.clauses.busy)
            aside = self.sub or before.other or purpose
            if not aside and is_done(self.clauses, told) and (found := self._tell(told, at)):
                self.clauses.verbs += 1
                self.heard += found
                self.tolds += [told] * len(found)
                return told.end
            self.clauses.busy = self.clauses.busy or before.other or verb not in _NO_VERB
        return None

    def _tell(self, told: Told, at: int) -> list[Operation]:
        if told.moves:
            told = replace(told, things=(), where=told.things[0] if told.things else told.where)
        things = told.things or self._moved(told, at)
        before = [token.low for token in self.clauses.tokens[self.clauses.clause : at]]
        past = told.form is Form.PAST or not {"had", "have", "'ve"}.isdisjoint(before)
        tense = self.times.tense(before, past=past or told.verb == "have")
        if tense is None:
            return []
        made = [operation for one in things for operation in self._operation(told, one, tense, past)]
        if made and made[0].act in (Act.ON, Act.OFF) and told.means is not None and self._goes_along(told.means):
            made += self._operation(told, told.means, tense, past)
        return made

    def _goes_along(self, means: Thing) -> bool:
        """ "Pop the guard on with its three screws": they go on too."""
        return bool(means.name) and (means.new or self.book.is_in(means.name, ("fastener", "clip", "seal")))

    def _moved(self, told: Told, at: int) -> tuple[Thing, ...]:
        """The thing that moves by itself, or that is looked for."""
        if told.about is not None and told.about.name:
            return (told.about,)
        if not told.moves:
            defaults = told.particles and any(block.default for block in self.book.by_verb[told.verb])
            return (Thing("", at, at, pointed=True),) if defaults else ()
        pronoun = read_thing(self.clauses.tokens, at - 1, self.book)
        subject = self.clauses.subject or self._pronoun_before(at) or pronoun
        return (subject,) if subject is not None else ()

    def _pronoun_before(self, at: int) -> Thing | None:
        for back in range(at - 1, self.clauses.clause - 1, -1):
            if self.clauses.has("one_pronouns", back) or self.clauses.has("many_pronouns", back):
                return read_thing(self.clauses.tokens, back, self.book)
        return None

    def _operation(self, told: Told, thing: Thing, tense: Tense, past: bool) -> Iterator[Operation]:
        named = self.pointing.named(thing, told)
        block = meaning(told, named.name, self.book, self.status)
        if block is None:
            return
        if block.means and told.means is not None:
            named = self.memory.named(told.means)
        if not named.name and block.default:
            if block.act is Act.ENDS and block.things and not self.status.is_open(block.default):
                return
            named = replace(named, name=block.default)
        if not self._means_work(block, told, named) or self._is_restated(block, named):
            return
        if told.where is not None:
            self.memory.mention(told.where)
        self.memory.mention(renamed(thing, named))
        low = not named.sure or past or told.form is Form.S
        yield self._made(block, told, named, tense, Sure.LOW if low else Sure.HIGH)

    def _is_restated(self, block: Block, named: Named) -> bool:
        """ "Pull the hose off – break it loose with a twist" takes it off once."""
        last = self.heard[-1] if self.heard else self.last
        if last is None or last.act is not block.act or block.act not in (Act.OFF, Act.SLACKEN):
            return False
        again = thing(last.object) == thing(named.name) and named.count in (None, last.count)
        if again and self.heard and block.scrap:
            self.heard[-1] = replace(last, scrap=True)
        return again and (not named.sure or bool(self.heard))

    def _means_work(self, block: Block, told: Told, named: Named) -> bool:
        """False for tools that are taken up, and for things that are laid aside."""
        if block.act in (Act.ON, Act.WORK) and told.verb in _LAYS and is_laid_aside(told, self.book):
            return False
        if told.moves and block.act in (Act.WORK, Act.CHECK):
            return False
        if block.act is Act.ON and self.book.is_in(named.name, ("tool", "worn", "paste")):
            return False
        if block.act is Act.ON and told.verb in _LAYS and "back" not in told.particles and self._was_just_off(named):
            return False
        if block.act is Act.OFF and told.where is not None and self.book.is_in(told.where.name, ("support",)):
            return False
        leaks_out = block.act is Act.OFF and told.moves and self.book.is_in(named.name, ("fluid", "pressure"))
        vague = bool(named.name) and self.book.has("vague", singular(named.name.split()[-1]))
        nowhere = block.act is Act.ON and self.book.has("positions", named.name) and not self.status.is_open(named.name)
        return bool(named.name) and not (leaks_out or vague or nowhere)

    def _was_just_off(self, named: Named) -> bool:
        """ "Run them off and set them in the cup": that puts nothing back."""
        return not named.new and any(
            one.act is Act.OFF and thing(one.object) == thing(named.name) for one in self.heard
        )

    def _made(self, block: Block, told: Told, named: Named, tense: Tense, sure: Sure) -> Operation:
        name = block.object or named.name
        act = block.act
        if act is Act.OUT_AGAIN and self.book.is_in(name, ("part",)) and not self.status.is_for_now(name):
            act = Act.OFF
        act = act if tense in (Tense.LATER, Tense.IF) else self.status.enter(act, name)
        start, end = self.clauses.tokens[told.start].start, self.clauses.tokens[told.end - 1].end
        words = self.sentence.words
        return Operation(
            verb=block.print or as_said(told),
            act=act,
            object=name,
            said=self.sentence,
            tense=tense,
            sure=sure,
            count=named.count or count_behind(self.clauses, told.end, many=named.many),
            state=f"{name} {block.state}" if block.state else "",
            new=named.new,
            scrap=block.scrap,
            plural=named.many,
            size=first_size(words, self.book),
            words=words[start:end],
            opposite=block.opposite,
            tail=tail(self.clauses, told, self.sentence),
        )

    def _thing(self, thing: Thing, at: int) -> int:
        """A thing that no verb took: the subject of what follows, or told with what became of it."""
        if (end := self._result(thing, at)) is not None:
            return end
        if self._comes_along(thing):
            self._same_for(thing, list(zip(self.tolds, self.heard, strict=False))[-1:])
            return thing.end
        if self._is_same_again(thing, at):
            self._same_for(thing, (list(zip(self.tolds, self.heard, strict=False)) or self.before)[-1:])
            self.same_until = thing.end
            return thing.end
        before = self.clauses.low(at - 1) if at > self.clauses.clause else ""
        if before not in self.book.idle and not any(
            self.book.has(kind, before) for kind in ("prepositions", "particles")
        ):
            self.clauses.subject = thing
            is_subject = self._is_topic(at) and self.book.has("be", self.clauses.low(thing.end))
            if is_subject and thing.name:
                self.memory.mention(thing)
            elif self._is_introduced(at) or (
                not self.book.has("be", before) and (thing.count or self._is_topic(at) or at == self.clauses.clause)
            ):
                self._mention(thing)
            else:
                self._mention_behind(thing)
        elif thing.count or before in self.book.idle or not self.memory.named_here:
            self._mention(thing)
        else:
            self._mention_behind(thing)
        return thing.end

    def _mention_behind(self, found: Thing) -> None:
        """Remember a thing that only stands beside another: "two screws hold the panel"."""
        known = bool(found.name) and singular(found.name.split()[-1]) in self.book.nouns
        if known and self.clauses.low(found.start) == "the":
            self.memory.mention_behind(found)

    def _result(self, found: Thing, at: int) -> int | None:
        """What became of a thing, told without a verb: "washer off"."""
        aside = self.sub or self.clauses.verbs or self.clauses.busy or self.clauses.low(at - 1) == "with"
        if aside or (told := result(self.clauses, found, off=self._is_off(found))) is None:
            return None
        made = [replace(operation, sure=Sure.LOW) for operation in self._tell(told, at)]
        self.heard += made
        self.tolds += [told] * len(made)
        return told.end if made else None

    def _mention(self, found: Thing) -> None:
        """Remember a thing that was named without an operation, if its words leave no doubt that it is one."""
        before = [self.clauses.low(at) for at in range(self.clauses.clause, found.start)]
        if "nobody" in before or (before and before[-1] in ("number", "size", "grade")):
            return
        first, last = self.clauses.low(found.start), singular(found.name.split()[-1]) if found.name else ""
        if first != "no" and (self.book.has("articles", first) or found.count or last in self.book.nouns):
            self.memory.mention(found)

    def _is_introduced(self, at: int) -> bool:
        """True behind "there's" and "that's"."""
        return self.book.has("be", self.clauses.low(at - 1)) and self.clauses.low(at - 2) in _INTRODUCES

    def _is_same_again(self, found: Thing, at: int) -> bool:
        """ "Needle back in, then the pin" and "cover on, two screws": the same goes for them."""
        before = self.clauses.low(at - 1) if at else ""
        joined = before == "then" or (before == "and" and self.same_until == at - 1)
        if self.clauses.busy or not (self._ends_behind(found) or (joined and self.clauses.low(found.end) == "and")):
            return False
        if joined:
            return bool(self.heard)
        last = self.heard[-1] if self.heard else self.last
        goes_on = last is not None and last.act is Act.ON and (before == "," if self.heard else not before)
        fastener = self.book.is_in(found.name, ("fastener", "clip"))
        return (
            goes_on and fastener and (found.new or ((bool(found.count) or len(self.heard) > 1) and self._is_off(found)))
        )

    def _comes_along(self, found: Thing) -> bool:
        """ "Slide the drum off and the bearing comes with it"."""
        goes = self.clauses.low(found.end) in ("comes", "come", "goes", "go")
        with_it = self.clauses.low(found.end + 1) == "with" and self.clauses.low(found.end + 2) in ("it", "them")
        return bool(self.heard) and goes and with_it and bool(found.name)

    def _is_off(self, found: Thing) -> bool:
        last = thing(found.name).split()[-1:]
        return any(name.split()[-1:] == last for name in self.status.off)

    def _is_topic(self, at: int) -> bool:
        """True for a thing that a sentence begins with, behind no more than "now" and "then"."""
        return all(self.clauses.has("openers", before) or self.clauses.low(before) in SIGNS for before in range(at))

    def _take_command(self) -> None:
        """A command whose verb is not known: its first word, with the first thing behind it."""
        if self.heard or (found := command(self.clauses)) is None:
            return
        told, one = found
        named = self.memory.named(one)
        if named.name:
            self.memory.mention(renamed(one, named))
            self.heard = [self._made(Block("", Act.WORK, frozenset()), told, named, Tense.NOW, Sure.LOW)]
            self.tolds = [told]

    def _again(self) -> None:
        """ "Then the rear pins": what was done in the sentence before, done to another thing."""
        if self.heard:
            return
        for again in follows_again(self.clauses):
            self._same_for(again, self.before)
        fresh = [told for told in new_things(self.clauses) if self._is_off(told.things[0])] if not self.heard else []
        for told in fresh:
            made = [replace(one, sure=Sure.LOW) for one in self._tell(told, told.start)]
            self.heard += made
            self.tolds += [told] * len(made)

    def _ends_behind(self, found: Thing) -> bool:
        return self.clauses.low(found.end) in SIGNS or self.clauses.low(found.end) in ("on", "of", "in")

    def _same_for(self, found: Thing, pairs: list[tuple[Told, Operation]]) -> None:
        """The first of some operations that goes for this thing, done to it."""
        named = self.memory.named(found)
        model = next((pair for pair in pairs if self._goes_for(pair, named)), None)
        if model is not None:
            self.memory.mention(renamed(found, named))
            told = replace(model[0], start=found.start, end=found.end)
            block = meaning(told, named.name, self.book, self.status)
            assert block is not None
            self.heard.append(self._made(block, told, named, Tense.NOW, Sure.LOW))
            self.tolds.append(told)

    def _goes_for(self, pair: tuple[Told, Operation], named: Named) -> bool:
        """True when the same can be done to this thing, and it is known as a thing."""
        told, operation = pair
        block = meaning(told, named.name, self.book, self.status) if named.name else None
        if block is None or block.act is not operation.act or block.act in (Act.WORK, Act.CHECK):
            return False
        if self.book.is_in(named.name, ("place",)):
            return False
        return self.book.is_in(named.name, self.book.groups) or named.name.split()[-1] in operation.object
