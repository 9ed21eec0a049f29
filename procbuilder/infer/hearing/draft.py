"""A procedure proposed from a narration: one command a step, and every sentence accounted for."""

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import groupby, pairwise

from procbuilder.infer.dictionary.said_tools import said_tools
from procbuilder.infer.dictionary.said_torque import has_bare_number, said_torque
from procbuilder.infer.dictionary.wordbook import Wordbook, wordbook
from procbuilder.infer.hearing.commands import command, own_words
from procbuilder.infer.hearing.follow import Follower, Move, tightened_at_last
from procbuilder.infer.hearing.kinds import cue, is_everyday, is_talk
from procbuilder.infer.hearing.operations import operations
from procbuilder.infer.hearing.remarks import helper, is_about_time, is_hazard, remark, split_reason
from procbuilder.infer.hearing.said_late import best_step, is_at_start, is_too_late
from procbuilder.infer.hearing.sentences import sentences
from procbuilder.model.drafted import Draft, Landing, ProposedField, ProposedStep
from procbuilder.model.heard import Act, Operation, Sentence, Tense
from procbuilder.model.procedure import Narration
from procbuilder.model.timecode import Span, format_time
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

TALK = "talk, no work in it"
ATTEMPT = "an attempt that was put right"
PERHAPS = "perhaps"
"""Before what only one of two readings found."""
NOTHING = "said before the first step, nothing to do in it"


@dataclass(slots=True)
class _Step:
    """A step while it is being gathered."""

    operations: list[Operation]
    sentences: list[Sentence]
    """Those that were said at its place."""
    fields: list[ProposedField] = field(default_factory=list)
    moved: bool = False
    """It was said later than it is done."""
    inner: bool = False
    """It is not the first one told by its sentence."""

    @property
    def first(self) -> Operation:
        return self.operations[0]

    @property
    def sure(self) -> list[Operation]:
        return [one for one in self.operations if one.sure]

    @property
    def filmed(self) -> bool:
        return self.first.tense is not Tense.EARLIER and not self.moved


def draft(narration: Sequence[Narration], language: str = "en", own: OwnWords = NO_OWN_WORDS) -> Draft:
    """The steps that a narration tells, in the order in which they are done, as far as it says.

    Nothing is left out: each sentence is a command, a field of a step or of the list before the
    steps, or it is set aside with the reason. No value is made up: what was not said is ``look up``.

    What is not sure is no command and no field: its step is headed by the speaker's own words, and a note
    says what it may be.
    """
    said = [sentence for one in narration for sentence in sentences(one)]
    drafter = _Drafter(wordbook(language, own))
    by_sentence = {key: list(group) for key, group in groupby(operations(said, language, own), _key)}
    for sentence in said:
        drafter.take(sentence, by_sentence.get((sentence.recording, sentence.number), []))
    drafter.place_late()
    return drafter.finish()


def _key(operation: Operation) -> tuple[str, int]:
    return operation.said.recording, operation.said.number


class _Drafter:
    """Takes the sentences one by one."""

    def __init__(self, book: Wordbook) -> None:
        self.book = book
        self.steps: list[_Step] = []
        self.before: list[ProposedField] = []
        self.aside: dict[tuple[str, int], str] = {}
        self.late: list[tuple[Sentence, list[Operation], list[_Step]]] = []
        self.order: list[Sentence] = []
        self.landed: dict[tuple[str, int], tuple[_Step | None, str]] = {}

    def take(self, sentence: Sentence, heard: list[Operation]) -> None:
        """Find the place of one sentence."""
        self.order.append(sentence)
        words = sentence.words
        done = [one for one in heard if one.tense in (Tense.NOW, Tense.EARLIER)]
        if is_talk(words, self.book) or (not heard and is_everyday(words, self.book)):
            self._set_aside(sentence, TALK)
        elif is_too_late(words, self.book) and self.steps:
            self.late.append((sentence, done, list(self.steps)))
        elif cue(words, "redo", self.book) or (done and self._is_repeated(done)):
            self._set_aside(sentence, ATTEMPT)
        elif done and not self._only_warns(words, done):
            self._new_steps(sentence, done)
        else:
            self._remark(sentence)

    def _only_warns(self, words: str, done: list[Operation]) -> bool:
        """A warning without a sure act is no command, unless it calls for a second person."""
        is_act = any(one.sure for one in done) or helper(words, self.book)
        return is_hazard(words, self.book) and not is_act

    def _set_aside(self, sentence: Sentence, why: str) -> None:
        self.landed[sentence.recording, sentence.number] = (None, why)

    def _is_repeated(self, done: list[Operation]) -> bool:
        """The same done to the same thing right after a mistake was owned up to."""
        if len(self.order) < 2 or not self.steps:
            return False
        last = self.order[-2]
        after_mistake = self.landed.get((last.recording, last.number), (None, ""))[1] == ATTEMPT
        recent = {(one.act, one.name) for step in self.steps[-2:] for one in step.operations}
        return after_mistake and all(
            (one.act, one.name) in recent or one.name in {n for _, n in recent} for one in done
        )

    # -- steps

    def _new_steps(self, sentence: Sentence, done: list[Operation]) -> None:
        made = [_Step(group, [sentence], inner=place > 0) for place, group in enumerate(_by_verb(done))]
        self.steps += made
        how = "command" if made[0].sure else f"{PERHAPS}: {command(made[0].operations, self.book)}"
        self.landed[sentence.recording, sentence.number] = (made[0], how)
        self._details(made[-1], sentence)

    def _details(self, step: _Step, sentence: Sentence) -> None:
        """Tools, sizes, torque, reason of a sentence that holds a command."""
        words, origin = sentence.words, sentence.origin
        step.fields += (ProposedField("Tool", (tool,), origin) for tool in said_tools(words, self.book))
        step.fields += self._people(sentence)
        point, reason = split_reason(words, self.book)
        if is_hazard(words, self.book):
            found = remark(words, self.book)
            step.fields.append(ProposedField(found.field, found.parts, origin))
        elif reason:
            step.fields.append(ProposedField("Key point", (point[:1].upper() + point[1:], reason), origin))

    def _remark(self, sentence: Sentence) -> None:
        """A sentence without an operation: a field of the current step, or of the list before the steps."""
        words, origin = sentence.words, sentence.origin
        key = (sentence.recording, sentence.number)
        if is_about_time(words, self.book):
            self.before.append(ProposedField("Note", (f"time said: {words}",), origin))
            self.landed[key] = (None, "Note before the steps")
            return
        if not self.steps:
            self._first_words(sentence)
            return
        step = next((one for one in reversed(self.steps) if one.filmed), self.steps[-1])
        step.sentences.append(sentence)
        made = list(self._fields(step, sentence))
        step.fields += made
        self.landed[key] = (step, made[0].name)

    def _first_words(self, sentence: Sentence) -> None:
        found = remark(sentence.words, self.book)
        if found.field == "Note":
            self._set_aside(sentence, NOTHING)
            return
        self.before.append(ProposedField(found.field, found.parts, sentence.origin))
        self.landed[sentence.recording, sentence.number] = (None, f"{found.field} before the steps")

    def _fields(self, step: _Step, sentence: Sentence) -> Iterator[ProposedField]:
        words, origin = sentence.words, sentence.origin
        torque = said_torque(words, self.book)
        if torque:
            yield ProposedField("Torque", (step.operations[-1].object, *_heard(torque)), origin)
            return
        tools = said_tools(words, self.book)
        yield from (ProposedField("Tool", (tool,), origin) for tool in tools)
        people = self._people(sentence)
        yield from people
        found = remark(words, self.book)
        if found.field != "Note" or not (tools or people):
            yield ProposedField(found.field, found.parts, origin)

    def _people(self, sentence: Sentence) -> list[ProposedField]:
        second = helper(sentence.words, self.book)
        return [ProposedField(second.field, second.parts, sentence.origin)] if second else []

    # -- what was said too late

    def place_late(self) -> None:
        """Each sentence that belongs to an earlier step goes there, with a receipt."""
        for sentence, done, earlier in self.late:
            said = [[one.words for one in step.sentences] for step in earlier]
            moves = [step.first.act not in (Act.WORK, Act.CHECK) for step in earlier]
            place = 0 if is_at_start(sentence.words, self.book) else best_step(sentence.words, said, self.book, moves)
            place = self.steps.index(earlier[-1 if place is None else place])
            receipt = f"said at {format_time(sentence.origin.time or sentence.start)}, it belongs here"
            if done:
                step = _Step(done, [sentence], moved=True)
                self.steps.insert(place, step)
                self._details(step, sentence)
            else:
                step = self.steps[place]
                found = remark(sentence.words, self.book)
                step.fields.append(ProposedField(found.field, found.parts, sentence.origin))
            step.fields.append(ProposedField("Note", (f"{receipt}: {sentence.words}",), sentence.origin))
            self.landed[sentence.recording, sentence.number] = (step, receipt)

    # -- the result

    def finish(self) -> Draft:
        """All steps with their spans and fields, and the way of every sentence; those before the film come first."""
        self.steps.sort(key=lambda step: step.first.tense is not Tense.EARLIER)
        follower = Follower()
        moved = [[move for one in step.operations for move in follower.take(one)] for step in self.steps]
        moves = tightened_at_last(moved)
        spans = _spans(self.steps, self.landed, self.order)
        steps = tuple(
            ProposedStep(self._heading(step), span, tuple(self._all_fields(step, own)))
            for step, own, span in zip(self.steps, moves, spans, strict=True)
        )
        numbers = {id(step): number for number, step in enumerate(self.steps, 1)}
        return Draft(steps, tuple(self.before), tuple(self._landing(sentence, numbers) for sentence in self.order))

    def _heading(self, step: _Step) -> str:
        return command(step.sure, self.book) if step.sure else own_words(step.first)

    def _landing(self, sentence: Sentence, numbers: dict[int, int]) -> Landing:
        step, how = self.landed[sentence.recording, sentence.number]
        number = numbers[id(step)] if step is not None else 0
        return Landing(sentence, number, how, aside=how in (TALK, ATTEMPT, NOTHING))

    def _all_fields(self, step: _Step, moves: list[Move]) -> Iterator[ProposedField]:
        said = step.first.said
        if not step.moved:
            yield ProposedField("Note", (f"proposed from: {said.words}",), said.origin)
        for move in moves:
            field = self._moved(move, step)
            yield field if move.operation.sure else _perhaps(field)
        if step.first.tense is Tense.EARLIER:
            yield ProposedField("Note", ("done before the film",), said.origin)
        yield from _once(self._without_doubles(step, moves))

    def _without_doubles(self, step: _Step, moves: list[Move]) -> list[ProposedField]:
        """A torque that was said later in the step stands in the field of the tightening itself."""
        tightened = any(move.field == "Torque" and move.operation.sure for move in moves)
        return [one for one in step.fields if not (tightened and one.name == "Torque")]

    def _moved(self, move: Move, step: _Step) -> ProposedField:
        origin = move.operation.said.origin
        if move.field != "Torque":
            return ProposedField(move.field, (move.item.words,), origin)
        later = next((one for one in step.fields if one.name == "Torque"), None)
        value = said_torque(move.operation.said.words, self.book)
        if not value and later is not None:
            return ProposedField("Torque", (move.item.words, *later.parts[1:]), later.origin)
        if not value and has_bare_number(move.operation.said.words, self.book):
            step.fields.append(ProposedField("Note", ("a number was said without a unit",), origin))
        return ProposedField("Torque", (move.item.words, *_heard(value)), origin)


def _heard(value: str) -> tuple[str, ...]:
    """A blank, with what was said beside it: a number that was heard is no torque until a person writes it."""
    return ("look up", f"heard: {value}") if value else ("look up",)


def _perhaps(field: ProposedField) -> ProposedField:
    """The field as a note, to be copied by hand when it is right."""
    return ProposedField("Note", (f"{PERHAPS} {field.name}: {', '.join(field.parts)}",), field.origin)


def _by_verb(done: list[Operation]) -> list[list[Operation]]:
    """Operations of one verb said at once are one step: "unhook the spring and the rod"."""
    groups: list[list[Operation]] = []
    for one in done:
        together = groups and groups[-1][-1].words == one.words and groups[-1][-1].verb == one.verb
        if together or (groups and _goes_along(groups[-1][-1], one)):
            groups[-1].append(one)
        else:
            groups.append([one])
    return groups


def _goes_along(before: Operation, one: Operation) -> bool:
    """The screws of "pop the guard on with its three screws" belong to the same step."""
    return before.act is one.act and before.act in (Act.ON, Act.OFF) and before.words == one.words


def _once(fields: list[ProposedField]) -> Iterator[ProposedField]:
    yield from dict.fromkeys(fields)


def _spans(
    steps: Sequence[_Step], landed: dict[tuple[str, int], tuple[_Step | None, str]], order: Sequence[Sentence]
) -> list[Span | None]:
    """From the first word of each step to the first of the next one; talk behind its last word is left out."""
    filmed = [step for step in steps if step.filmed]
    following = {id(step): later for step, later in pairwise(filmed)}
    talk: dict[str, list[Fraction]] = {}
    for one in order:
        if landed[one.recording, one.number][1] == TALK:
            talk.setdefault(one.recording, []).append(one.start)
    return [_span(step, following.get(id(step)), talk) if step.filmed else None for step in steps]


def _begin(step: _Step) -> Fraction:
    """When the words of its command begin: in the middle of a sentence that tells two operations."""
    said = step.first.said
    at = max(said.words.find(step.first.words), 0) if step.inner else 0
    return said.start + (said.end - said.start) * at / max(len(said.words), 1)


def _span(step: _Step, later: _Step | None, talk: Mapping[str, list[Fraction]]) -> Span:
    begin, recording, last = _begin(step), step.first.said.recording, step.sentences[-1]
    end = last.end
    if later is not None and later.first.said.recording == recording:
        end = max(_begin(later), begin)
        breaks = talk.get(recording, [])
        first = bisect_left(breaks, last.end)
        end = min([end, *breaks[first : first + 1]])
    return Span(recording, begin, end)
