"""Sheets for teaching: the job breakdown (Job Instruction, 1944, with the later column of reasons) and the sign-off."""

from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import (
    BLANK,
    Block,
    Cell,
    Fill,
    Heading,
    Points,
    Sheet,
    Table,
    Text,
    columns,
    numbers,
    strong,
)
from procbuilder.publish.spoken import Spoken, SpokenStep


def breakdown(edition: Spoken, words: Words) -> Sheet:
    """Important steps, key points, reasons: a note for who teaches, short on purpose."""
    open_steps = [step for step in edition.steps if not step.reserved]
    rows = tuple(row for step in open_steps for row in _points(step, words))
    bare = [step.number for step in edition.steps if step.reserved or not (step.key_points or step.holds)]
    titles = columns((words.STEP, 2), (words.IMPORTANT_STEP, 9), (words.KEY_POINTS, 10), (words.REASONS, 9))
    blocks: tuple[Block, ...] = (Table(titles, rows), Points(words.WAYS_OF_TEACHING))
    if bare:
        blocks = (blocks[0], Text(words.LEFT_OUT.format(numbers=numbers(bare))), blocks[1])
    return Sheet("breakdown", words.BREAKDOWN, words.BREAKDOWN_USE, blocks, one_page=True)


def _points(step: SpokenStep, words: Words) -> list[tuple[Cell, ...]]:
    told = [(line.text, ", ".join(line.extra)) for line in step.key_points]
    told += [(words.HOLD_POINT.format(text=hold.text), "") for hold in step.holds]
    first = (strong(str(step.number)), strong(step.command))
    return [
        (*(first if place == 0 else (Cell(), Cell())), Cell(point), Cell(why))
        for place, (point, why) in enumerate(told)
    ]


def sign_off(edition: Spoken, words: Words) -> Sheet:
    """The levels of one person for this revision, with what must be recorded."""
    titles = columns(
        (words.LEVEL, 2), (words.MEANING, 9), (words.EVIDENCE, 6), (words.DATE, 4), (words.JOB_OR_SCORE, 6),
        (words.BY_WHOM, 4),
    )  # fmt: skip
    levels = tuple(
        (strong(level), Cell(meaning), Cell(record), BLANK, BLANK, BLANK) for level, meaning, record in words.LEVELS[1:]
    )
    blocks = (
        Fill((words.NAME,)),
        Table(titles, levels),
        Fill((words.SUPERVISED_RUNS,)),
        Text(words.HOW_MANY_RUNS),
        *_holds(edition, words),
        *_reserved(edition, words),
        Text(words.LEARNER_TELLS),
        Text(words.RECHECK),
    )
    return Sheet("sign-off", words.SIGN_OFF, words.SIGN_OFF_USE, blocks)


def _holds(edition: Spoken, words: Words) -> tuple[Block, ...]:
    holds = [(step, hold) for step in edition.steps for hold in step.holds]
    if not holds:
        return ()
    titles = columns((words.STEP, 2), (words.WHAT, 12), (words.BY_WHOM, 6), (words.INITIALS, 3))
    rows = tuple(
        (strong(str(step.number)), Cell(hold.text), Cell(", ".join(hold.extra)), BLANK) for step, hold in holds
    )
    return Heading(words.HOLD_POINTS), Table(titles, rows)


def _reserved(edition: Spoken, words: Words) -> tuple[Block, ...]:
    rows = tuple(
        (strong(str(step.number)), Cell(step.command), Cell(step.reserved), BLANK)
        for step in edition.steps
        if step.reserved
    )
    titles = columns((words.STEP, 2), (words.WHAT, 9), (words.BY_WHOM, 6), (words.CERTIFICATE, 6))
    return (Heading(words.RESERVED_STEPS), Table(titles, rows)) if rows else ()
