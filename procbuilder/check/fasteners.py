"""Rules about threads and spanners. A thread tells no spanner for certain, and a spanner no thread."""

import re
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from procbuilder.check.case import Case
from procbuilder.model.fastener import Thread, in_inches, inch_thread, inches, named_thread
from procbuilder.model.moves import HANDLED
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import Step
from procbuilder.model.words import mentioned, thing

_SIZE = re.compile(r"(?<![\d.x×])(?<![x×] )(\d{1,2}(?:\.5)?)\s*mm\b(?!\s*long)")
_INCHES = re.compile(r"(?<![\d/])((?:1 )?[1-9]/[1-9]\d?|[1-9])\s*in\b(?!\s*long)")
_OTHER_HEAD = ("cap screw", "socket", "countersunk", "button", "flange", "stud", "torx", "grub screw", "eye", "insert")


def _thing(text: str) -> str:
    return text.partition(",")[0]


def spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner that no standard gives for the thread."""
    for text, thread, place, _ in _threaded(case):
        for size in _sizes(text):
            if size not in thread.fits:
                yield worded(
                    Severity.ASK,
                    place,
                    f'"{text}": a {size:f} mm spanner fits no usual head of an {thread.size} thread: '
                    f"usual are {_either(thread.plain)} mm",
                    f"put the thread or the size right, or write "
                    f'"- Asked: spanner against thread: {_thing(text)} | special head"',
                    "spanner-against-thread",
                    4,
                    subject=_thing(text),
                )


def inch_spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner in inches that the standards do not give for the inch thread."""
    threads = {thread.size: thread for thread in case.lexicon.inch_threads}
    for text, place, _ in _named(case):
        thread = threads.get(inch_thread(text) or Fraction(0))
        for match in _INCHES.finditer(text) if thread else ():
            if thread and inches(match[1]) not in thread.fits:
                yield worded(
                    Severity.ASK,
                    place,
                    f'"{text}": a {match[1]} in spanner fits no usual head of that thread: '
                    f"usual is {in_inches(thread.hexagon)} in",
                    f"put the thread or the size right, or write "
                    f'"- Asked: inch spanner against thread: {_thing(text)} | special head"',
                    "inch-spanner-against-thread",
                    4,
                    subject=_thing(text),
                )


def which_spanner(case: Case) -> Iterator[Problem]:
    """A thread whose hexagon differs between the standards, and no size anywhere; asked once for each name."""
    asked: dict[str, tuple[str, Thread, Place]] = {}
    told: set[str] = set()
    for text, thread, place, step in _threaded(case):
        name = thing(text.partition(",")[0])
        tools = " ; ".join(item.name for entry in step.all("Tool") for item in entry.items)
        if _sizes(text) or any(size in thread.fits for size in _sizes(tools)):
            told.add(name)
        elif len(thread.plain) > 1 and not mentioned(text, _OTHER_HEAD):
            asked.setdefault(name, (text, thread, place))
    for text, thread, place in (found for name, found in asked.items() if name not in told):
        yield worded(
            Severity.ADVICE,
            place,
            f'"{text}": {thread.size} may be {_either(thread.plain)} mm, depending on the standard: which?',
            f'write the size behind it, as in "{text}, … mm"',
            "which-spanner",
            4,
        )


def _threaded(case: Case) -> Iterator[tuple[str, Thread, Place, Step]]:
    """Everything that is taken off or put on and names its metric thread."""
    threads = {thread.size: thread for thread in case.lexicon.threads}
    for text, place, step in _named(case):
        named = named_thread(text)
        if named is not None and named.size in threads:
            yield text, threads[named.size], place, step


def _named(case: Case) -> Iterator[tuple[str, Place, Step]]:
    """Everything that is taken off or put on, and what holds it, without its count: once in each step."""
    for _, step in case.numbered:
        told: dict[str, Place] = {}
        for entry in step.all(*HANDLED):
            texts = [item.name for item in entry.items]
            texts += entry.part("by").split(";") if "by" in entry.kind.words else []
            told.update((_COUNT.sub("", text.strip()), entry.place) for text in reversed(texts))
        for text, place in told.items():
            yield text, place, step


_COUNT = re.compile(r"\A\d{1,6}\s*[x×]\s+")


def _sizes(text: str) -> list[Decimal]:
    return [Decimal(match[1]) for match in _SIZE.finditer(text)]


def _either(widths: tuple[Decimal, ...]) -> str:
    """``14, 16 or 17``."""
    words = [f"{width:f}" for width in widths]
    return " or ".join(filter(None, [", ".join(words[:-1]), words[-1]]))
