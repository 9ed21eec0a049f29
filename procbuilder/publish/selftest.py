"""A self-test made only of the procedure's own facts: order, counts, sizes, torques, single-use parts, reasons.

A wrong option is always something else that this procedure says, never a made-up value; where there are too few of
them, the question is to be answered aloud. Reserved steps are left out altogether.
"""

import hashlib
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.origin import TYPED, Origin, OriginKind
from procbuilder.publish import terms
from procbuilder.publish.language import Language, language_of
from procbuilder.publish.moments import moment_in_clip
from procbuilder.publish.pagewords import QUESTION, WHY
from procbuilder.publish.teller import Teller

OPTIONS = 4
FEWEST = 3
"""With fewer options a guess is too likely: then the answer is to be said aloud."""
MOST_OF_A_KIND = 3
_BEGINNING = 4


@dataclass(frozen=True, slots=True)
class Question:
    """One question, with where its answer is to be seen."""

    kind: str
    ask: str
    answer: str
    """Text of the right option; for a picture the id of its step."""
    options: tuple[str, ...]
    """In the order in which they are shown; empty when the answer is to be said aloud."""
    why: str
    step: str
    number: int
    moment: Fraction | None = None
    """Seconds into the clip of the step, where it was said or seen."""
    pictures: bool = False
    """The options are steps, to be shown as their pictures."""


def selftest(edition: Edition) -> tuple[Question, ...]:
    """The questions of an edition, in order of its steps: the same for the same edition."""
    steps, language = [step for step in edition.steps if not step.reserved], language_of(edition.language)
    chosen = [question for rule in RULES for question in _spread(tuple(_once(rule(steps, language))))]
    return tuple(sorted(chosen, key=lambda question: question.number))


Rule = Callable[[list[EditionStep], Language], Iterator[Question]]


def _order(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    main = [step for step in steps if not step.only_if]
    commands = [step.command for step in main]
    for before, step in pairwise(main):
        if step.number == before.number + 1 and commands.count(before.command) == 1:
            others = _near(step, [(other, other.command) for other in main if other.command != before.command])
            why = _why(language, "order", number=step.number, before=before.number)
            yield _question(language, "order", step, step.command, others, why=why, command=before.command)


def _before(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    by_id = {step.id: step for step in steps}
    for step in steps:
        for note in step.notes:
            first = by_id.get(note.part("step").removeprefix("#")) if note.name == "After" else None
            if first:
                later = [other.command for other in steps if other.number > step.number]
                yield _question(language, "before", step, first.command, later, command=step.command)


def _hold(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    free = [(step, step.command) for step in steps if not step.holds]
    for step in (step for step in steps if step.holds):
        yield _question(language, "hold", step, step.command, _near(step, free), what=step.holds[0].part("what"))


def _fasteners(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    known = [
        (step, terms.things(move.fasteners, language), terms.things(move.items, language))
        for step in steps
        for move in step.moves
        if move.fasteners
    ]
    for step, held, item in known:
        same = {other for _, other, held_item in known if _thing(held_item) == _thing(item)}
        yield _question(
            language, "fasteners", step, held, [other for _, other, _ in known if other not in same], thing=item
        )


def _quantity(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    """Amounts: ``brake cleaner, 200 ml``."""
    items = [(step, item) for step in steps for entry in step.supplies for item in entry.items]
    known = [(step, item.name, item.quantity) for step, item in items if item.quantity and item.count is None]
    for step, name, amount in known:
        own = {other for _, other_name, other in known if _thing(other_name) == _thing(name)}
        if len(own) == 1:
            others = [str(other) for _, _, other in known if other not in own and other.unit == amount.unit]
            yield _question(language, "quantity", step, str(amount), others, thing=name)


def _tool(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    listed = {step.id: [(entry, terms.things(entry.items, language)) for entry in step.tools] for step in steps}
    known = [(step, text) for step in steps for _, text in listed[step.id]]
    for step in steps:
        sized = [(entry, text) for entry, text in listed[step.id] if _has_size(text)]
        if len(sized) == 1:
            (entry, answer), used = sized[0], {text for _, text in listed[step.id]}
            others = [text for text in _near(step, known) if text not in used]
            by_size = sorted(others, key=lambda text: not _has_size(text))
            yield _question(language, "tool", step, answer, by_size, said=entry.origin, command=step.command)


def _torque(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    """A value that somebody only remembers is not drilled, and neither is ``good and tight``."""
    rows = [(step, row) for step in steps for row in step.torques if row.origin.kind is not OriginKind.MEMORY]
    for step, row in rows:
        name = ", ".join(filter(None, (row.item.words, Teller(language).stage(row))))
        if row.value.has_number:
            others = [
                other.value.text
                for _, other in rows
                if other.value and _thing(other.item.words) != _thing(row.item.words)
            ]
            why = _why(language, "torque", number=step.number, source=Teller(language).torque(row).whence)
            yield _question(language, "torque", step, row.value.text, others, why=why, said=row.origin, thing=name)
        elif row.look_in and not row.value:
            others = [other.look_in for _, other in rows if other.look_in]
            yield _question(language, "look_up", step, row.look_in, others, thing=row.item.words)


def _new(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    """Among what goes back on: one new thing, and others that go back as they came off."""
    back = [(step, item) for step in steps for move in step.moves if move.name == "On" for item in move.items]
    new = [(step, replace(item, new=False)) for step, item in back if item.new]
    names = {_thing(item.name) for _, item in new}
    reused = [terms.thing(item, language) for _, item in back if not item.new and _thing(item.name) not in names]
    yield from (_question(language, "new", step, terms.thing(item, language), reused) for step, item in new)


def _reason(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    points = [(step, point) for step in steps for point in step.key_points if point.part("reason")]
    for step, point in points:
        told = point.part("point")
        others = _near(step, [(at, other.part("reason")) for at, other in points if other.part("point") != told])
        yield _question(language, "reason", step, point.part("reason"), others, said=point.origin, point=told)


def _picture(steps: list[EditionStep], language: Language) -> Iterator[Question]:
    seen = {step.id: step.figures[0].still.file for step in steps if step.figures and step.figures[0].state == "done"}
    for step in steps:
        others = [name for name, file in seen.items() if file != seen.get(step.id)]
        if step.id in seen and len(others) >= FEWEST - 1:
            yield _question(language, "picture", step, step.id, others, pictures=True, command=step.command)


RULES: tuple[Rule, ...] = (
    _order, _before, _hold, _fasteners, _quantity, _tool, _torque, _new, _reason, _picture,
)  # fmt: skip


def _question(
    language: Language, kind: str, step: EditionStep, answer: str, others: Iterable[str], *,
    why: str = "", said: Origin = TYPED, pictures: bool = False, **facts: str,
) -> Question:  # fmt: skip
    ask = language.text(QUESTION[kind], **facts)
    wrong = [text for text in dict.fromkeys(others) if text != answer][: OPTIONS - 1]
    options = tuple(sorted((answer, *wrong), key=lambda text: _shuffled(ask, text))) if len(wrong) >= FEWEST - 1 else ()
    return Question(
        kind, ask, answer, options, why or _why(language, kind, number=step.number),
        step.id, step.number, moment_in_clip(step, said), pictures,
    )  # fmt: skip


def _why(language: Language, kind: str, **facts: object) -> str:
    return language.text(WHY[kind], **facts)


def _thing(name: str) -> str:
    """Names whose words begin alike may be one thing, in any language: then none is a wrong option for the other."""
    return " ".join(word[:_BEGINNING] for word in name.casefold().split())


def _near(step: EditionStep, told: Iterable[tuple[EditionStep, str]]) -> list[str]:
    """What other steps say, the nearest first: what is near is most easily mixed up."""
    return [text for _, text in sorted(told, key=lambda pair: (abs(pair[0].number - step.number), pair[0].number))]


def _shuffled(ask: str, text: str) -> str:
    """An order that tells nothing of the answer, and is the same each time."""
    return hashlib.sha256(f"{ask}\0{text}".encode(errors="replace")).hexdigest()


def _has_size(text: str) -> bool:
    """A size, not a count: ``19 mm socket``, but not ``2 x axle stand``."""
    return any(sign.isdigit() for sign in text.rpartition(" x ")[2])


def _once(questions: Iterable[Question]) -> Iterator[Question]:
    """The first of those that ask the same in the same words, if all have the same answer."""
    known: dict[str, list[Question]] = {}
    for question in questions:
        known.setdefault(question.ask, []).append(question)
    for same in known.values():
        if same[0].kind == "new" or len({question.answer for question in same}) == 1:
            yield from same if same[0].kind == "new" else same[:1]


def _spread(questions: tuple[Question, ...]) -> list[Question]:
    """At most three, from the whole length of the job."""
    if len(questions) <= MOST_OF_A_KIND:
        return list(questions)
    return [questions[at * (len(questions) - 1) // (MOST_OF_A_KIND - 1)] for at in range(MOST_OF_A_KIND)]
