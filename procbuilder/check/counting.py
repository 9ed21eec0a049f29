"""Rules about numbers that nobody said: how many came off, and whether one closing was for all of it."""

from collections.abc import Iterator

from procbuilder.check.balance import counted
from procbuilder.check.case import Case
from procbuilder.model.facts import Blank, Line, Phrase, facts
from procbuilder.model.ledger import Balance, Entry, Opening
from procbuilder.model.moves import CLOSED_BY, OPENED_BY
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, answer, answerable


def how_many(case: Case) -> Iterator[Problem]:
    """Several things that came off without a number: with one of them left over nobody would notice."""
    for entry in case.ledger.entries:
        fasteners = [f.name for f in entry.fasteners if f.count is None and case.lexicon.words.is_plural(f.name)]
        for name in (*([entry.item] if entry.uncounted else ()), *fasteners):
            number = Phrase("so-many", facts(item=name))
            field = OPENED_BY[entry.opening]
            given = facts(
                item=name,
                opened=entry.opened[0],
                line=Line(field, (number,)) if name == entry.item else Line(field, (entry.item,), (("by", number),)),
                answer=answer("how-many", name, _heading(entry, case)),
            )
            form = "" if entry.opening is Opening.OFF else entry.opening.value
            yield Problem("how-many", Severity.ASK, entry.opened[0].place, given, form, 2, name)


def one_closing_for_several(case: Case) -> Iterator[Problem]:
    """Something that was opened more than once, and closed by fewer lines that do not say how many they close."""
    still = {(entry.opening, case.thing(entry.item)) for entry in case.ledger.having(Balance.OPEN)}
    for entry in case.ledger.having(Balance.CLOSED):
        if entry.doubtful and (entry.opening, case.thing(entry.item)) not in still:
            subject = counted(entry, entry.out)
            grave = Severity.STOP if case.mentioned(entry.item, case.lexicon.critical) else Severity.ASK
            given = facts(
                item=entry.item,
                times=entry.opened,
                closed=entry.closed,
                line=Line(CLOSED_BY[entry.opening], (Phrase("so-many", facts(item=entry.item)), *_value(entry))),
            )
            rule = "one-closing-for-several"
            yield Problem(rule, grave, entry.closed[0].place, given, danger=2, subject=answerable(grave, subject))


def _value(entry: Entry) -> tuple[Blank, ...]:
    return (Blank("value"),) if entry.opening is Opening.SLACKENED else ()


def _heading(entry: Entry, case: Case) -> Place | None:
    number = entry.opened[0].number
    return case.heading(number) if number else None
