"""Rules about threads and spanners. A thread tells no spanner for certain, and a spanner no thread."""

from collections.abc import Iterator
from decimal import Decimal

from procbuilder.check.case import Case
from procbuilder.model.fastener import Thread, in_inches
from procbuilder.model.moves import HANDLED
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import Step
from procbuilder.model.quantity import Item
from procbuilder.model.words import mentioned, thing

_OTHER_HEAD = ("cap screw", "socket", "countersunk", "button", "flange", "stud", "torx", "grub screw", "eye", "insert")


def spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner that no standard gives for the thread."""
    for item, thread, _ in _threaded(case):
        for size in item.sizes.spanners:
            if size not in thread.fits:
                yield worded(
                    Severity.ASK,
                    item.place,
                    f'"{item.name}": a {size:f} mm spanner fits no usual head of an {thread.size} thread: '
                    f"usual are {_either(thread.plain)} mm",
                    f"put the thread or the size right, or write "
                    f'"- Asked: spanner against thread: {item.head} | special head"',
                    "spanner-against-thread",
                    4,
                    subject=item.head,
                )


def inch_spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner in inches that the standards do not give for the inch thread."""
    threads = {thread.size: thread for thread in case.lexicon.inch_threads}
    for item, _ in _handled(case):
        thread = threads.get(item.sizes.inch_thread) if item.sizes.inch_thread else None
        for size in item.sizes.inch_spanners if thread else ():
            if thread and size not in thread.fits:
                yield worded(
                    Severity.ASK,
                    item.place,
                    f'"{item.name}": a {in_inches(size)} in spanner fits no usual head of that thread: '
                    f"usual is {in_inches(thread.hexagon)} in",
                    f"put the thread or the size right, or write "
                    f'"- Asked: inch spanner against thread: {item.head} | special head"',
                    "inch-spanner-against-thread",
                    4,
                    subject=item.head,
                )


def which_spanner(case: Case) -> Iterator[Problem]:
    """A thread whose hexagon differs between the standards, and no size anywhere; asked once for each name."""
    asked: dict[str, tuple[Item, Thread]] = {}
    told: set[str] = set()
    for item, thread, step in _threaded(case):
        name = thing(item.head)
        tools = (size for entry in step.all("Tool") for tool in entry.items for size in tool.sizes.spanners)
        if item.sizes.spanners or any(size in thread.fits for size in tools):
            told.add(name)
        elif len(thread.plain) > 1 and not mentioned(item.name, _OTHER_HEAD):
            asked.setdefault(name, (item, thread))
    for item, thread in (found for name, found in asked.items() if name not in told):
        yield worded(
            Severity.ADVICE,
            item.place,
            f'"{item.name}": {thread.size} may be {_either(thread.plain)} mm, depending on the standard: which?',
            f'write the size behind it, as in "{item.name}, … mm"',
            "which-spanner",
            4,
        )


def _threaded(case: Case) -> Iterator[tuple[Item, Thread, Step]]:
    """Everything that is taken off or put on and names its metric thread."""
    threads = {thread.size: thread for thread in case.lexicon.threads}
    for item, step in _handled(case):
        named = item.sizes.thread
        if named is not None and named.size in threads:
            yield item, threads[named.size], step


def _handled(case: Case) -> Iterator[tuple[Item, Step]]:
    """Everything that is taken off or put on, and what holds it: once in each step."""
    for _, step in case.numbered:
        told: dict[str, Item] = {}
        for entry in step.all(*HANDLED):
            told.update((item.name, item) for item in reversed((*entry.items, *entry.fasteners)))
        for item in told.values():
            yield item, step


def _either(widths: tuple[Decimal, ...]) -> str:
    """``14, 16 or 17``."""
    words = [f"{width:f}" for width in widths]
    return " or ".join(filter(None, [", ".join(words[:-1]), words[-1]]))
