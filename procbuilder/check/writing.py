"""Rules about the wording of commands."""

import re
from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import Step
from procbuilder.model.words import mentioned

MOST_WORDS = 20
"""Words of a sentence that tells somebody what to do: ASD-STE100, rule 5.1."""

_JOINT = re.compile(r"\s*;\s*(?:and\s+|then\s+)*|,?\s+(?:and\s+then|and|then)\s+|,\s*(?:and\s+)?", re.IGNORECASE)
_TAKES_OBJECT = frozenset(
    {"the", "a", "an", "it", "them", "its", "this", "that", "these", "those", "both", "all", "each", "every", "any",
     "your", "one", "two", "three", "four", "five", "six", "off", "out", "up", "down", "back", "away"}
)  # fmt: skip
"""Words behind a verb. "pin the lever" is a second command; the pin of "clip and pin" is a thing."""
_AT_ONCE = frozenset({"hold", "counter-hold", "keep"})
"""Verbs of one hand while the other one works: such a pair is one command."""
_ASKS = frozenset({"check", "see", "look", "feel", "find", "ask", "test", "try", "tell", "note", "watch", "measure"})
"""Verbs after which "if" asks whether something is so."""
_NO_COMMAND = frozenset({"the", "a", "an", "this", "that", "these", "those", "you", "we", "i", "it", "there"})
_VERBS_IN_ING = frozenset({"bring", "swing", "sling", "string", "ring", "spring", "wring"})


def long_command(case: Case) -> Iterator[Problem]:
    """A command of more than 20 words (ASD-STE100, rule 5.1)."""
    for _, step in case.numbered:
        count = sum(any(sign.isalnum() for sign in word) for word in step.command.split())
        if count > MOST_WORDS:
            yield worded(
                Severity.ADVICE,
                step.place,
                f"the command has {count} words; more than {MOST_WORDS} are hard to follow at the job",
                "keep what to do in the heading, and put how and why below it",
                "long-command",
                6,
            )


def several_commands(case: Case) -> Iterator[Problem]:
    """A heading that holds more than one command (ASD-STE100, rule 5.2)."""
    for _, step in case.numbered:
        commands = split_commands(step.command, case.lexicon.commands)
        if len(commands) > 1 and _first(commands[0]) not in _AT_ONCE:
            shown = " and ".join(f'"### {command}"' for command in commands)
            yield worded(
                Severity.ADVICE,
                step.place,
                f'"{step.command}" holds {len(commands)} commands',
                f"make a step of each: {shown}",
                "several-commands",
                6,
            )


def not_a_command(case: Case) -> Iterator[Problem]:
    """A heading that tells what happens instead of what to do; judged in English only (ASD-STE100, rule 5.3)."""
    if case.procedure.front["language"][:2].casefold() not in ("", "en"):
        return
    for _, step in case.numbered:
        first = step.command.split(maxsplit=1)[0].casefold() if step.command else ""
        gerund = first.endswith("ing") and first not in _VERBS_IN_ING
        if gerund or first in _NO_COMMAND:
            yield worded(
                Severity.ADVICE,
                step.place,
                f'"{step.command}" does not begin with what to do',
                'begin with the verb, such as "Prise off the dust cap"',
                "not-a-command",
                6,
            )


def condition_last(case: Case) -> Iterator[Problem]:
    """A command whose condition comes behind it: the hand has moved when it is read (ASD-STE100, rule 5.4)."""
    for _, step in case.numbered:
        command, joint, condition = step.command.partition(" if ")
        if joint and _first(command) not in _ASKS and not step.command.casefold().startswith(("if ", "when ")):
            told = f"{command[:1].lower()}{command[1:]}".rstrip(", ")
            yield worded(
                Severity.ADVICE,
                step.place,
                f'"{step.command}" tells the condition last',
                f'put it first: "If {condition.rstrip(".")}, {told}"',
                "condition-last",
                6,
            )


def two_names(case: Case) -> Iterator[Problem]:
    """One thing under two names: a reader looks for two (ASD-STE100, the same word for the same thing)."""
    told = [(number, step, " ; ".join([step.command, *_items(step)])) for number, step in case.numbered]
    for names in case.lexicon.synonyms:
        firsts = (next(((*one[:2], name) for one in told if mentioned(one[2], [name])), None) for name in names)
        used = sorted(filter(None, firsts), key=lambda one: one[0])
        if len(used) > 1:
            (before, _, name), (number, step, second) = used[:2]
            yield worded(
                Severity.ADVICE,
                step.place,
                f'step {before} says "{name}" and step {number} says "{second}" of the same thing',
                f'keep to one of the two, such as "{name}"',
                "two-names",
                6,
            )


def _items(step: Step) -> Iterator[str]:
    return (item.name for entry in step.fields for item in entry.items)


def split_commands(sentence: str, verbs: frozenset[str]) -> list[str]:
    """The commands of a sentence, each from its verb on; empty when it begins none that is known.

    Verbs that share one thing, as in "clean and dry the hub", are one command.
    """
    cuts = [0]
    for joint in _JOINT.finditer(sentence):
        rest = sentence[joint.end() :]
        if _begins(rest, verbs, sure=";" in joint[0] or "then" in joint[0].casefold()):
            cuts += [joint.start(), joint.end()]
    cuts.append(len(sentence))
    pieces = [sentence[start:end] for start, end in zip(cuts[::2], cuts[1::2], strict=True)]
    if len(pieces) > 1 and len(pieces[0].split()) == 1:
        pieces[:2] = [sentence[: cuts[3]]]
    commands = [piece for piece in pieces if _first(piece) in verbs]
    return [command[:1].upper() + command[1:] for command in commands]


def _begins(text: str, verbs: frozenset[str], *, sure: bool) -> bool:
    words = text.casefold().split()
    if not words or words[0].strip(",;") not in verbs:
        return False
    follows = words[1].strip(",;") if len(words) > 1 else ""
    return sure or follows in _TAKES_OBJECT or follows[:1].isdigit()


def _first(text: str) -> str:
    words = text.casefold().split()
    return words[0].strip(",;") if words else ""
