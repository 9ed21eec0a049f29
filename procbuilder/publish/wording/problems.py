"""A problem in words."""

from dataclasses import dataclass

from procbuilder.model.problem import RESERVED, Problem
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.wording import (
    balance,
    closing,
    counting,
    derived,
    fasteners,
    fields,
    files,
    footage,
    front,
    front_matter,
    headings,
    order,
    pictures,
    practice,
    proposed,
    renewal,
    safety,
    step_lists,
    strain,
    subtitles,
    timeline,
    torque,
    values,
    workshop,
    writing,
)
from procbuilder.publish.wording.gaps import filled
from procbuilder.publish.wording.patterns import Patterns, Sentences

SUBJECTS = (
    balance,
    closing,
    counting,
    derived,
    fasteners,
    fields,
    files,
    footage,
    front,
    front_matter,
    headings,
    order,
    pictures,
    practice,
    proposed,
    renewal,
    safety,
    step_lists,
    strain,
    subtitles,
    timeline,
    torque,
    values,
    workshop,
    writing,
)
"""The modules that hold the sentences of the rules, each in its ``PATTERNS``."""

HIDDEN: Sentences = ("something in a step reserved by law must be settled", "procbuilder check tells what")

PATTERNS: Patterns = {rule: forms for subject in SUBJECTS for rule, forms in subject.PATTERNS.items()}


@dataclass(frozen=True, slots=True)
class Said:
    """A problem as it is told."""

    what: str
    instead: str

    def __str__(self) -> str:
        return f"{self.what} – {self.instead}"


def said(problem: Problem, language: Language = ENGLISH) -> Said:
    """What is wrong and what to write instead, in the language of the reader."""
    what, instead = _sentences(problem)
    return Said(filled(what, problem.facts, language), filled(instead, problem.facts, language))


def _sentences(problem: Problem) -> Sentences:
    if problem.form == RESERVED:
        return HIDDEN
    return PATTERNS[problem.rule][problem.form]


def line(problem: Problem, language: Language = ENGLISH) -> str:
    """Its place first, so that an editor can jump to it: ``procedure.md:12: … – …``."""
    return f"{problem.place}: {said(problem, language)}"
