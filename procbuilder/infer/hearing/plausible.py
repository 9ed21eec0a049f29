"""Whether what a verb seems to tell is work at all: not what is laid aside, said twice, or only described."""

from dataclasses import replace

from procbuilder.infer.dictionary.english import singular, thing
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.dictionary.wordbook import Block
from procbuilder.infer.hearing.meaning import is_laid_aside
from procbuilder.infer.hearing.memory import Named
from procbuilder.infer.hearing.status import CLOSING
from procbuilder.infer.hearing.talk import Line, Talk
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.model.heard import Act, Tense

_BY_ITSELF = (Act.ON, Act.OFF, Act.ENDS, Act.OUT_AGAIN)
"""What a thing can do without a hand being named: "the cover lifts off"."""

_FOUND = ("it", "they", "that", "those", "these", "there", "all")
"""Before "is": a finding."""


class Sense:
    """Judges the operations of one sentence."""

    def __init__(self, talk: Talk, line: Line) -> None:
        self.talk, self.line, self.book = talk, line, talk.book

    def holds(self, block: Block, told: Told, thing: Thing, named: Named, tense: Tense) -> bool:
        """True when the technician works on the thing, now or at the time that is told."""
        if block.named and thing.pointed and not thing.name:
            return False
        match block.act:
            case Act.CHECK if self._is_found(told, thing):
                return False
            case Act.ON if thing.pointed and not self._goes_somewhere(block, told, named):
                return False
            case Act.ENDS if thing.pointed and self.book.has("lays", told.verb) and not self._is_open(block, named):
                return False
            case Act.OFF if self._is_fetched(told) or self.book.is_in(named.name, ("worn",)):
                return False
        if self._is_no_part(block, told, named):
            return False
        if not self._is_in_time(block, tense):
            return False
        return self._means_work(block, told, named) and not self._is_restated(block, told, named)

    def _is_open(self, block: Block, named: Named) -> bool:
        """ "Set it down": only what was raised is let down."""
        return self.talk.status.holds("open", named.name, block.state)

    def _is_no_part(self, block: Block, told: Told, named: Named) -> bool:
        """ "Wipe your hands", "the date goes on the card", "muck came in": of somebody, of paper, or of the world."""
        if self._is_body(named) and block.act is not Act.CHECK:
            return True
        if block.act in (Act.ON, Act.OFF) and self.book.has("elsewhere", named.name):
            return True
        if self.book.has("filming", named.name) and told.verb in ("get", "have", "bring"):
            return True
        written = told.where is not None and self.book.is_in(told.where.name, ("paperwork",))
        if written:
            return True
        return told.moves and self.book.is_in(named.name, ("dirt",))

    def _goes_somewhere(self, block: Block, told: Told, named: Named) -> bool:
        """ "Drop it in" puts on what is new, off, or of this sentence; "fit it" and "put it back" put on anything."""
        here = any(one.object == named.name for one in self.line.heard)
        says_so = "back" in told.particles or not block.particles
        return says_so or here or named.new or self.talk.is_off(named.name)

    def _is_fetched(self, told: Told) -> bool:
        """ "Get the bolts" fetches them; "get those" may take them out."""
        return told.verb in ("get", "grab") and not told.particles

    def _is_found(self, told: Told, thing: Thing) -> bool:
        """ "Look at the face on that, it's grooved", "listen for the click", "check it": found, or too little."""
        nameless = thing.pointed and not thing.name
        if nameless and told.verb != "measure" and not self.line.clauses.has("be", thing.end):
            return True
        if told.about is not None:
            return bool(thing.name) and self.book.has("features", singular(thing.name.split()[-1]))
        clauses = self.line.clauses
        looks = told.verb == "inspect" and "look at" in self.line.sentence.words.casefold()
        behind = range(told.end, len(clauses.tokens))
        told_of = (at for at in behind if clauses.has("be", at) and clauses.low(at - 1) in _FOUND)
        return looks and any(clauses.low(at - 2) in SIGNS for at in told_of)

    def _is_in_time(self, block: Block, tense: Tense) -> bool:
        """False for advice of what to try in some case, and for what was made good before the film."""
        if tense is Tense.IF and block.act in (Act.WORK, Act.CHECK):
            return False
        return tense is not Tense.EARLIER or block.act is not Act.ENDS

    def _is_restated(self, block: Block, told: Told, named: Named) -> bool:
        """ "Pull the hose off – break it loose with a twist" takes it off once."""
        pairs = self.line.pairs
        if block.act is Act.ON and (told.moves or not named.sure):
            return any(one.act is Act.ON and thing(one.object) == thing(named.name) for one in self.line.heard)
        if block.act is Act.OFF and any(one.act is Act.RENEW for one in self.line.heard):
            return True
        last = pairs[-1][1] if pairs else self.talk.last
        if last is None or last.act is not block.act or block.act not in (Act.OFF, Act.SLACKEN):
            return False
        again = thing(last.object) == thing(named.name) and named.count in (None, last.count)
        if again and pairs and block.scrap:
            pairs[-1] = (pairs[-1][0], replace(last, scrap=True))
        return again and (not named.sure or bool(pairs))

    def _means_work(self, block: Block, told: Told, named: Named) -> bool:
        """False for tools that are taken up, and for things that are laid aside."""
        if (
            block.act in (Act.ON, Act.WORK, Act.ENDS)
            and self.book.has("lays", told.verb)
            and is_laid_aside(told, self.book)
        ):
            return False
        if told.moves and block.act not in _BY_ITSELF:
            return False
        if block.act is Act.ON and not self._may_go_on(told, named):
            return False
        if block.act is Act.OFF and told.where is not None and self.book.is_in(told.where.name, ("support",)):
            return False
        leaks_out = block.act is Act.OFF and told.moves and self.book.is_in(named.name, ("fluid", "pressure"))
        vague = bool(named.name) and self.book.has("vague", singular(named.name.split()[-1]))
        vague = vague and not named.name.startswith("whole ")
        return bool(named.name) and not (leaks_out or vague)

    def _may_go_on(self, told: Told, named: Named) -> bool:
        """False for what is only held, laid aside, or named to tell where something is."""
        if self.book.is_in(named.name, ("tool", "worn", "paste")):
            return False
        if told.moves and told.verb in ("go", "come", "get") and is_laid_aside(told, self.book):
            return False
        if self.book.has("lays", told.verb) and "back" not in told.particles and self._was_just_off(named):
            return False
        if told.moves and (not self._is_going_on(told, named)):
            return False
        return not self.book.has("positions", named.name) or self.talk.status.is_open(named.name)

    def _is_body(self, named: Named) -> bool:
        return self.book.is_in(named.name, ("body",)) and not self.book.is_in(named.name, ("part",))

    def _is_going_on(self, told: Told, named: Named) -> bool:
        """False for "the loop goes over a pin" while it is neither off nor new, and nothing is being put back."""
        if told.verb == "go" and not {"on", "back", "home"}.isdisjoint(told.particles):
            return told.form is not Form.ING
        before = self.line.pairs or self.talk.before
        return named.new or self.talk.is_off(named.name) or (bool(before) and before[-1][1].act in CLOSING)

    def _was_just_off(self, named: Named) -> bool:
        """ "Run them off and set them in the cup": that puts nothing back."""
        return not named.new and any(
            one.act is Act.OFF and thing(one.object) == thing(named.name) for one in self.line.heard
        )
