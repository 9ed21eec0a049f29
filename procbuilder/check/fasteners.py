"""Rules about threads and spanners. A thread tells no spanner for certain, and a spanner no thread."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.facts import facts
from procbuilder.model.fastener import Thread, in_inches
from procbuilder.model.moves import HANDLED
from procbuilder.model.problem import Problem, Severity, answer
from procbuilder.model.quantity import Item


def spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner that no standard gives for the thread."""
    for item, thread, number in _threaded(case):
        for size in item.sizes.spanners:
            if size not in thread.fits:
                rule = "spanner-against-thread"
                given = facts(
                    step=case.step(number),
                    item=item.name,
                    size=size,
                    thread=thread.size,
                    usual=thread.plain,
                    answer=answer(rule, item.head, case.heading(number), "special-head", "Asked"),
                )
                yield Problem(rule, Severity.ASK, item.place, given, danger=4, subject=item.head)


def inch_spanner_against_thread(case: Case) -> Iterator[Problem]:
    """A spanner in inches that the standards do not give for the inch thread."""
    threads = {thread.size: thread for thread in case.lexicon.inch_threads}
    for item, number in _handled(case):
        thread = threads.get(item.sizes.inch_thread) if item.sizes.inch_thread else None
        for size in item.sizes.inch_spanners if thread else ():
            if thread and size not in thread.fits:
                rule = "inch-spanner-against-thread"
                given = facts(
                    step=case.step(number),
                    item=item.name,
                    size=in_inches(size),
                    usual=in_inches(thread.hexagon),
                    answer=answer(rule, item.head, case.heading(number), "special-head", "Asked"),
                )
                yield Problem(rule, Severity.ASK, item.place, given, danger=4, subject=item.head)


def which_spanner(case: Case) -> Iterator[Problem]:
    """A thread whose hexagon differs between the standards, and no size anywhere; asked once for each name."""
    asked: dict[str, tuple[Item, Thread, int]] = {}
    told: set[str] = set()
    for item, thread, number in _threaded(case):
        name = case.thing(item.head)
        listed = case.procedure.steps[number - 1].all("Tool")
        tools = (size for entry in listed for tool in entry.items for size in tool.sizes.spanners)
        if item.sizes.spanners or any(size in thread.fits for size in tools):
            told.add(name)
        elif len(thread.plain) > 1 and not case.mentioned(item.name, case.lexicon.checks.other_head):
            asked.setdefault(name, (item, thread, number))
    for item, thread, number in (found for name, found in asked.items() if name not in told):
        given = facts(step=case.step(number), item=item.name, thread=thread.size, usual=thread.plain)
        yield Problem("which-spanner", Severity.ADVICE, item.place, given, danger=4, subject=item.head)


def _threaded(case: Case) -> Iterator[tuple[Item, Thread, int]]:
    """Everything that is taken off or put on and names its metric thread, with the number of its step."""
    threads = {thread.size: thread for thread in case.lexicon.threads}
    for item, number in _handled(case):
        named = item.sizes.thread
        if named is not None and named.size in threads:
            yield item, threads[named.size], number


def _handled(case: Case) -> Iterator[tuple[Item, int]]:
    """Everything that is taken off or put on, and what holds it: once in each step."""
    for number, step in case.numbered:
        told: dict[str, Item] = {}
        for entry in step.all(*HANDLED):
            told.update((item.name, item) for item in reversed((*entry.items, *entry.fasteners)))
        for item in told.values():
            yield item, number
