"""Operations from words: what was taken off, put back, checked or done, sentence by sentence."""

from collections.abc import Iterable
from dataclasses import replace

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.dictionary.wordbook import wordbook
from procbuilder.infer.hearing.doers import before, is_done
from procbuilder.infer.hearing.in_turn import Turns
from procbuilder.infer.hearing.kinds import cue, is_everyday, is_talk
from procbuilder.infer.hearing.motion import Motion
from procbuilder.infer.hearing.second_reading import judged
from procbuilder.infer.hearing.strange_verbs import bare_command, given, looked_at
from procbuilder.infer.hearing.subordinate import is_outcome, is_question, is_resumed, subordinate_at
from procbuilder.infer.hearing.talk import Line, Pair, Talk, line
from procbuilder.infer.hearing.telling import Same, Teller
from procbuilder.infer.hearing.verb_phrase import read_verb
from procbuilder.infer.hearing.verbless import Verbless
from procbuilder.infer.hearing.word_class import is_modifier
from procbuilder.infer.hearing.word_order import holds_another, inverted, undergoes
from procbuilder.infer.wordlists import ENGLISH
from procbuilder.model.heard import Operation, Sentence
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords


def operations(
    sentences: Iterable[Sentence], language: str = ENGLISH, own: OwnWords = NO_OWN_WORDS, *, commands: bool = False
) -> tuple[Operation, ...]:
    """All operations of a narration in the order in which they were said.

    Nothing is taken from a verb that is negated, that tells a purpose or a reason, or that somebody
    else does. A thing that is only pointed at gets the name of the last one that fits.

    ``own``: words of the workshop.

    ``commands``: each sentence is the command of a step, so that its first word is a verb, known or not.
    """
    talk = Talk(wordbook(language, own))
    spoken = list(sentences)
    behind = (*spoken[1:], None)
    heard = [one for now, then in zip(spoken, behind, strict=False) for one in _hear(now, then, talk, commands)]
    return judged(heard, spoken, talk.book)


def _hear(sentence: Sentence, behind: Sentence | None, talk: Talk, commands: bool) -> list[Operation]:
    if not commands and is_talk(sentence.words, talk.book):
        return []
    talk.memory.begin()
    now = line(sentence, behind, talk.book)
    if not commands and is_question(now.clauses):
        return []
    talk.status.hear((token.low for token in now.clauses.tokens), talk.watched)
    if cue(sentence.words, "back_together", talk.book):
        talk.turn()
    heard = _Listener(talk, now).pairs(commands)
    pairs = [] if cue(sentence.words, "redo", talk.book) else heard
    if not commands and is_everyday(sentence.words, talk.book):
        pairs = []
        talk.memory.forget()
    talk.end(pairs)
    return [operation for _, operation in pairs]


class _Listener:
    """Hears one sentence from left to right."""

    def __init__(self, talk: Talk, line: Line) -> None:
        self.book, self.line, self.clauses = talk.book, line, line.clauses
        self.teller, self.motion = Teller(talk, line), Motion(talk, line)
        same = Same(talk, line, self.teller)
        self.verbless, self.turns = Verbless(talk, line, same), Turns(talk, line, same)

    def pairs(self, commands: bool) -> list[Pair]:
        """What the sentence tells."""
        at = 0
        while at < len(self.clauses.tokens):
            at = self._step(at)
        if commands:
            self.turns.take_command()
        else:
            self.turns.take()
        return self.line.pairs

    def _step(self, at: int) -> int:
        """Take in the token and what belongs to it; gives back where to go on."""
        clauses = self.clauses
        if clauses.low(at) in SIGNS or (
            clauses.low(at) in ("and", "but", "then", "or") and not is_outcome(clauses, at)
        ):
            return self._boundary(at)
        if (turns := self._turns(at)) is not None:
            self.line.aside = turns
            self.line.stands_first = at == clauses.clause and clauses.has("stands_first", at)
            self.line.until = clauses.low(at) in ("until", "till") and clauses.low(at + 1) not in ("you", "i", "we")
            clauses.begin(at + (1 if turns else 0))
            return at + 1
        if clauses.low(at) == "so" and not self.line.aside:
            clauses.begin(at + 1)
        if (told := inverted(clauses, at)) is not None:
            self.line.pairs += self.teller.come(told, at)
            return told.end
        if (end := self._verb(at)) is not None:
            return end
        if (end := self._strange_verb(at)) is not None:
            return end
        return self._no_verb(at)

    def _strange_verb(self, at: int) -> int | None:
        """The operation of a verb that no list holds, or that is given: "give it a wipe"."""
        looked = looked_at(self.clauses, at)
        told = looked or given(self.clauses, at) or bare_command(self.clauses, at)
        if told is None:
            return None
        made = self.teller.tell(told, at) if looked else self.teller.work(told)
        self.line.pairs += made
        return told.end

    def _no_verb(self, at: int) -> int:
        clauses = self.clauses
        is_there = clauses.low(at) == "there" and (clauses.has("be", at + 1) or clauses.has("helpers", at + 1))
        if is_there and clauses.low(at + 2) not in ("the", "that", "your"):
            clauses.busy = True
        named = singular(clauses.low(at)) in self.book.nouns and not clauses.has("one_pronouns", at - 1)
        is_idle = clauses.low(at) in self.book.idle and not named
        if is_idle and clauses.low(at + 1) != "of" and not is_modifier(clauses, at):
            clauses.busy = True
        clauses.foreign = clauses.foreign or clauses.has("others", at)
        if self._is_deed(at):
            clauses.busy = True
            return at + 1
        if clauses.subject is not None and clauses.subject.end == at and clauses.low(at) in ("all", "both", "each"):
            return at + 1
        if clauses.low(at + 1) == "here" and clauses.low(at) in self.book.forms:
            return at + 2
        if clauses.verb_at(at) and clauses.begins(at):
            return at + 1
        found = read_thing(clauses.tokens, at, self.book)
        return self.verbless.take(found, at) if found is not None else at + 1

    def _is_deed(self, at: int) -> bool:
        """ "I nodded off": what stands behind "I", "you" or "they" is no thing; nor is "it's stamped"."""
        back = at - 1
        passed_over = ("adverbs", "supposed")
        while any(self.clauses.has(kind, back) for kind in passed_over) and back > self.clauses.clause:
            back -= 1
        doer = self.clauses.low(back) in ("i", "you", "we", "they", "he", "she") and back >= self.clauses.clause
        if self.clauses.low(at - 1) in ("can", "will", "must", "should", "may", "'ll"):
            return not self.book.is_small(self.clauses.low(at))
        if self.clauses.has("one_pronouns", at - 1) and self.clauses.low(at) in self.book.idle:
            return self.clauses.low(at).endswith("s")
        is_state = self.clauses.has("be", at - 1) and self.clauses.low(at).endswith("ed")
        return (doer and not self.book.is_small(self.clauses.low(at))) or is_state

    def _turns(self, at: int) -> bool | None:
        """True where a reason, a time or an outcome begins, False where what is done goes on; None for neither."""
        if self.line.aside and is_resumed(self.clauses, at):
            return False
        begins = not self.line.aside and subordinate_at(self.clauses, at)
        return True if begins or is_outcome(self.clauses, at) else None

    def _boundary(self, at: int) -> int:
        """A sign or ``and``: a new clause, and the end of a reason or time that stood first."""
        low, behind = self.clauses.low(at), self.clauses.low(at + 1)
        stood_first = low in SIGNS and (not self.line.pairs or low in ";:–—." or self.line.stands_first)
        if stood_first or low == "then" or (low in SIGNS and behind in ("then", "so")):
            self.line.aside = False
        if low in ("and", ",") and (self.line.until or low == ",") and self._is_command(at + 1):
            self.line.aside = False
        by_me = self.clauses.low(at + 2) in ("i", "we") and self.clauses.verb_at(at + 3)
        if low == "," and behind == "and" and (by_me or self.clauses.verb_at(at + 2)):
            self.line.aside = False
        self.clauses.begin(at + 1)
        return at + 1

    def _is_command(self, at: int) -> bool:
        """ "Lever it over till the belt gives and nip the bolt"."""
        base = any(form is Form.BASE for _, form in self.clauses.verb_at(at))
        return base and (self.clauses.has("articles", at + 1) or self.clauses.has("one_pronouns", at + 1))

    def _verb(self, at: int) -> int | None:
        """The operation of a verb; None when the token is none, or none that means anything."""
        clauses = self.clauses
        for verb, form in clauses.verb_at(at):
            who = before(clauses, at, form)
            told = replace(read_verb(clauses, verb, form, at), moves=who.moves)
            thing = undergoes(clauses, at)
            if thing is not None:
                told = self.verbless.reports.settled(replace(told, moves=False, things=(thing,)))
            if at > clauses.clause and clauses.has("be", at - 1) and form is Form.BASE:
                self.line.aside = False
            if who.negated or who.supposed or holds_another(clauses, at):
                return told.end
            purpose = who.purpose and (clauses.verbs or clauses.foreign or not clauses.busy)
            clauses.foreign = clauses.foreign or who.other
            aside = self.line.aside or who.other or purpose
            goes = self.motion.of(told) if told.moves and not aside else None
            done = thing is not None or goes is not None or is_done(clauses, told)
            if not aside and done and (made := self.teller.tell(goes or told, at)):
                clauses.verbs += 1
                self.line.pairs += made
                return told.end
            clauses.busy = clauses.busy or who.other or not self.book.has("seldom_verbs", verb)
        return None
