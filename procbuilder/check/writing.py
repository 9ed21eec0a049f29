"""Rules about the wording of commands."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.commands import first_word, split_commands
from procbuilder.model.facts import Facts, Line, StepRef, facts
from procbuilder.model.phrases import spelled_so
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Step
from procbuilder.model.words import CommandWords

MOST_WORDS = 20
"""Words of a sentence that tells somebody what to do: ASD-STE100, rule 5.1."""


def long_command(case: Case) -> Iterator[Problem]:
    """A command of more than 20 words (ASD-STE100, rule 5.1)."""
    for number, step in case.numbered:
        count = sum(any(sign.isalnum() for sign in word) for word in step.command.split())
        if count > MOST_WORDS:
            yield _advice("long-command", number, step, facts(count=count, most=MOST_WORDS))


def several_commands(case: Case) -> Iterator[Problem]:
    """A heading that holds more than one command (ASD-STE100, rule 5.2)."""
    for number, step in case.numbered:
        commands = split_commands(step.command, case.lexicon.commands, case.lexicon.words)
        if len(commands) > 1 and first_word(commands[0]) not in case.lexicon.words.command.at_once:
            headings = tuple(Line("", (f"### {command}",)) for command in commands)
            given = facts(command=step.command, count=len(commands), headings=headings)
            yield _advice("several-commands", number, step, given)


def not_a_command(case: Case) -> Iterator[Problem]:
    """A heading that tells what happens instead of what to do (ASD-STE100, rule 5.3)."""
    words = case.lexicon.words.command
    for number, step in case.numbered:
        first = first_word(step.command)
        telling = words.telling and first.endswith(words.telling) and first not in words.not_telling
        if telling or first in words.no_command:
            yield _advice("not-a-command", number, step, facts(command=step.command))


def condition_last(case: Case) -> Iterator[Problem]:
    """A command whose condition comes behind it: the hand has moved when it is read (ASD-STE100, rule 5.4)."""
    words = case.lexicon.words.command
    for number, step in case.numbered:
        command, condition = _condition_behind(step.command, words)
        if condition and first_word(command) not in words.asks and first_word(step.command) not in words.condition:
            told = command.rstrip(", ")
            lowered = f"{told[:1].lower()}{told[1:]}"
            better = words.condition_first.format(condition=condition.rstrip("."), command=told, lowered=lowered)
            yield _advice("condition-last", number, step, facts(command=step.command, better=better))


def _condition_behind(sentence: str, words: CommandWords) -> tuple[str, str]:
    """A command, and the condition behind it; empty when there is none."""
    cuts = (sentence.partition(f" {word} ") for word in words.condition_behind)
    return next(((before, behind) for before, joint, behind in cuts if joint), (sentence, ""))


def two_names(case: Case) -> Iterator[Problem]:
    """One thing under two names: a reader looks for two (ASD-STE100, the same word for the same thing)."""
    told = [(number, step, " ; ".join([step.command, *_items(step)])) for number, step in case.numbered]
    words = case.lexicon.words
    for names in case.lexicon.synonyms:
        firsts = (next(((*one[:2], name) for one in told if spelled_so(one[2], name, words)), None) for name in names)
        used = sorted(filter(None, firsts), key=lambda one: one[0])
        if len(used) > 1:
            (before, _, name), (number, step, second) = used[:2]
            given = facts(before=case.step(before), name=name, step=case.step(number), second=second)
            yield Problem("two-names", Severity.ADVICE, step.place, given, "", 6, f"{name}, {second}")


def _advice(rule: str, number: int, step: Step, given: Facts) -> Problem:
    """Advice about the heading of a step."""
    given += facts(step=StepRef(step.id, number))
    return Problem(rule, Severity.ADVICE, step.place, given, danger=6, subject=f"#{step.id}")


def _items(step: Step) -> Iterator[str]:
    return (item.name for entry in step.fields for item in entry.items)
