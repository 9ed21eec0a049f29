"""What is said of the flaws of a part of a line."""

from collections.abc import Iterable

from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.publish.wording.problems import said
from procbuilder.read.flaws import Flaw


def told(rule: str, flaws: Iterable[Flaw]) -> list[tuple[str, str]]:
    """(what is wrong, what to write instead), by the sentences of a rule."""
    here = Place("procedure.md", 1)
    words = (said(Problem(rule, Severity.ASK, here, one.facts, one.form)) for one in flaws)
    return [(each.what, each.instead) for each in words]
