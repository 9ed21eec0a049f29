"""Rules about threads and spanners. A thread tells no spanner for certain, and a spanner no thread."""

import re
from collections.abc import Iterator
from decimal import Decimal

from procbuilder.check.answers import is_answered
from procbuilder.check.case import Case
from procbuilder.model.fastener import Thread, named_thread
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Step
from procbuilder.model.words import mentioned

_SIZE = re.compile(r"(?<![\d.x×])(?<![x×] )(\d{1,2}(?:\.5)?)\s*mm\b(?!\s*long)")
_OTHER_HEAD = ("cap screw", "socket", "countersunk", "button", "flange", "stud", "torx", "grub screw", "eye", "insert")


def spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner that no standard gives for the thread."""
    for text, thread, place, _ in _threaded(case):
        for size in _sizes(text):
            if size not in thread.fits and not is_answered(text.partition(",")[0], case):
                yield Problem(
                    Severity.ASK,
                    place,
                    f'"{text}": a {size:f} mm spanner fits no usual head of an {thread.size} thread: '
                    f"usual are {_either(thread.plain)} mm",
                    f'put the thread or the size right, or write "- Asked: {text.partition(",")[0]} | special head"',
                    "spanner-against-thread",
                    4,
                )


def which_spanner(case: Case) -> Iterator[Problem]:
    """A thread whose hexagon differs between the standards, and no size with it."""
    for text, thread, place, step in _threaded(case):
        tools = " ; ".join(item.name for entry in step.all("Tool") for item in entry.items)
        told = _sizes(text) or any(size in thread.fits for size in _sizes(tools))
        if len(thread.plain) > 1 and not told and not mentioned(text, _OTHER_HEAD):
            yield Problem(
                Severity.ADVICE,
                place,
                f'"{text}": {thread.size} may be {_either(thread.plain)} mm, depending on the standard: which?',
                f'write the size behind it, as in "{text}, … mm"',
                "which-spanner",
                4,
            )


def _threaded(case: Case) -> Iterator[tuple[str, Thread, Place, Step]]:
    """Everything that is taken off or put on and names its thread: once in each step."""
    threads = {thread.size: thread for thread in case.lexicon.threads}
    for _, step in case.numbered:
        told: dict[str, Place] = {}
        for entry in step.all("Off", "On", "Slacken", "Nip up"):
            texts = [item.name for item in entry.items]
            texts += entry.part("by").split(";") if "by" in entry.kind.words else []
            told.update((text.strip(), entry.place) for text in reversed(texts))
        for text, place in told.items():
            named = named_thread(text)
            if named is not None and named.size in threads:
                yield _COUNT.sub("", text), threads[named.size], place, step


_COUNT = re.compile(r"\A\d{1,6}\s*[x×]\s+")


def _sizes(text: str) -> list[Decimal]:
    return [Decimal(match[1]) for match in _SIZE.finditer(text)]


def _either(widths: tuple[Decimal, ...]) -> str:
    """``14, 16 or 17``."""
    words = [f"{width:f}" for width in widths]
    return " or ".join(filter(None, [", ".join(words[:-1]), words[-1]]))
