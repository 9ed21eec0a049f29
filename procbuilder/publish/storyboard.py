"""The film of the whole job as an edition tells it: chapters, cards and the words beside the footage."""

from collections.abc import Iterable, Iterator

from procbuilder.model.edition import Edition, EditionStep, Named
from procbuilder.model.film import Card, CardLine, Scene, Style
from procbuilder.model.worked import Hazard, Signal, TorqueRow
from procbuilder.publish import words

_FIRST_NOTES = ("Mistake", "Hidden", "If")
"""Notes without which the footage would mislead."""


def storyboard(edition: Edition) -> tuple[Scene, ...]:
    """A title, the dangers of the whole job, every step, and the end.

    A step that is reserved shows a card that says by whom it is done, and no footage.
    """
    return (_title(edition), *_dangers(edition), *(_step(edition, step) for step in edition.steps), _end(edition))


def identity(edition: Edition) -> str:
    """``P-014 · revision B · DRAFT – not approved``"""
    revision = f"revision {edition.revision}" if edition.revision else ""
    status = words.STATUS_WORDS.get(edition.status, edition.status)
    return " · ".join(filter(None, (edition.number, revision, status)))


def _title(edition: Edition) -> Scene:
    lines = [
        CardLine(Style.WHERE, identity(edition)),
        CardLine(Style.TITLE, edition.title),
        *_facts((("Item", edition.item), ("Applies to", edition.applies_to), ("Not for", edition.not_for))),
        CardLine(Style.SMALL, words.PRIORITY),
        CardLine(Style.SMALL, words.QUALIFIED),
    ]
    return Scene(edition.title or "Title", (Card(tuple(lines)),))


def _dangers(edition: Edition) -> Iterator[Scene]:
    if edition.hazards:
        title = "Dangers of the whole job"
        yield Scene(title, (Card((CardLine(Style.WHERE, title), *_hazards(edition.hazards))),))


def _end(edition: Edition) -> Scene:
    told = "What is left open, the torques and the checks stand on the page and in the PDF of"
    lines = [CardLine(Style.TITLE, "End of the film"), CardLine(Style.FACT, f"{told} {identity(edition)}.")]
    lines += [CardLine(Style.FACT, f"Something does not match? Stop and ask: {edition.ask}")] if edition.ask else []
    return Scene("End", (Card((*lines, CardLine(Style.SMALL, words.CHECK_REVISION))),))


def _step(edition: Edition, step: EditionStep) -> Scene:
    where = CardLine(Style.WHERE, f"Step {step.number} of {len(edition.steps)}")
    only_if = [CardLine(Style.FACT, step.only_if, "Only if")] if step.only_if else []
    name = f"{step.number}  {step.command}"
    beginning = (where, *_standing(step), *_hazards(step.hazards), *only_if)
    if step.reserved:
        stop = CardLine(Style.STOP, f"Stop: done by {step.reserved}")
        return Scene(name, (Card((*beginning, stop, CardLine(Style.TITLE, step.command), *_before_going_on(step))),))
    points = list(_points(step))
    told = [*_needed(step), *(() if step.clip else points)]
    card = Card((*beginning, CardLine(Style.TITLE, step.command), *_facts(told)))
    return Scene(
        title=name,
        before=(card,),
        step=step.id,
        head=name,
        standing=_still_dangerous(step),
        points=tuple(f"{label}: {text}" for label, text in points if step.clip),
        after=tuple(Card((where, CardLine(Style.STOP, _hold(hold)))) for hold in step.holds),
    )


def _facts(pairs: Iterable[tuple[str, str]]) -> list[CardLine]:
    return [CardLine(Style.FACT, text, label) for label, text in pairs if text]


def _needed(step: EditionStep) -> Iterator[tuple[str, str]]:
    """Protection, tools, sizes and torques."""
    for label, lines in (("Wear", step.wear), ("Tool", step.tools), ("Part", step.parts), ("Supply", step.supplies)):
        yield label, "; ".join(_sure(line.text, line.origin) for line in lines)
    held = (f"{part[4:]} ({move.text})" for move in step.moves for part in move.extra if part.startswith("by: "))
    yield "Held by", "; ".join(held)
    for row in step.torques:
        yield "Torque", _torque(row)


def _torque(row: TorqueRow) -> str:
    what = ", ".join(filter(None, (row.item, row.stage, row.order, row.when)))
    if not row.value:
        return f"{what}: {f'look it up in {row.look_in}' if row.look_in else words.LOOK_UP.lower()}"
    source = row.origin.words or (f"from {row.look_in}" if row.look_in else "typed, no source named")
    return _sure(f"{what}: {row.value}", source)


def _sure(text: str, origin: str) -> str:
    """A text with where it comes from, when that matters."""
    return f"{text} ({origin}{', not checked' if origin == 'from memory' else ''})" if origin else text


def _hazards(hazards: Iterable[Hazard]) -> Iterator[CardLine]:
    order = list(Signal)
    for hazard in sorted(hazards, key=lambda hazard: order.index(hazard.signal)):
        what = f"{hazard.hazard}: {hazard.consequence}" if hazard.consequence else hazard.hazard
        avoid = f" – {hazard.avoid}" if hazard.avoid else ""
        yield CardLine(Style.SIGNAL, what + avoid, hazard.signal.value)


def _standing(step: EditionStep) -> Iterator[CardLine]:
    dangers = [f"{each.signal.value} {each.hazard}{f' – {each.avoid}' if each.avoid else ''}" for each in _worst(step)]
    dangers += _bare(step)
    if dangers:
        yield CardLine(Style.STANDING, "; ".join(dangers), words.STILL_DANGEROUS)
    if step.standing.protections:
        yield CardLine(Style.STANDING, "; ".join(step.standing.protections), words.LEAVE_IN_PLACE)


def _still_dangerous(step: EditionStep) -> str:
    """One line, without how to avoid it: the card before has said that."""
    dangers = [f"{each.signal.value} {each.hazard}" for each in _worst(step)] + _bare(step)
    return f"{words.STILL_DANGEROUS}: {'; '.join(dangers)}" if dangers else ""


def _worst(step: EditionStep) -> list[Hazard]:
    order = list(Signal)
    return sorted(step.standing.hazards, key=lambda hazard: order.index(hazard.signal))


def _bare(step: EditionStep) -> list[str]:
    """States that stand without a hazard of their own."""
    named = {hazard.state for hazard in step.standing.hazards}
    return [state for state in step.standing.states if state not in named]


def _points(step: EditionStep) -> Iterator[tuple[str, str]]:
    """What to mind, by name; shown below the footage, or on the card where there is none."""
    for note in step.notes:
        if note.name in _FIRST_NOTES:
            yield note.name, " – ".join(filter(None, (note.text, *note.extra)))
    for point in step.key_points:
        why = f" – because {point.extra}" if point.extra else ""
        yield "Key point", _sure(f"{point.text}{why}", _doubted(point.origin))
    for check in step.checks:
        yield check.name, " – ".join(filter(None, (check.text, *check.extra)))


def _doubted(origin: str) -> str:
    return origin if origin == "from memory" else ""


def _hold(hold: Named) -> str:
    by = "".join(f" – by {part}" for part in hold.extra if part)
    return f"HOLD: before the next step this must be checked: {hold.text}{by}"


def _before_going_on(step: EditionStep) -> Iterator[CardLine]:
    told = [" – ".join(filter(None, (each.text, *each.extra))) for each in (*step.holds, *step.checks)]
    for text in told or [f"{step.reserved} has told you that it is done and safe"]:
        yield CardLine(Style.FACT, text, "Before you go on")
