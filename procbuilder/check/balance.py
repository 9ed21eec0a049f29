"""Rules about what was opened and must be closed again."""

from collections.abc import Iterator
from decimal import Decimal

from rapidfuzz import fuzz, process

from procbuilder.check.case import Case
from procbuilder.model.facts import Blank, Line, Phrase, Term, facts
from procbuilder.model.ledger import Balance, Entry, Opening
from procbuilder.model.moves import CLOSED_BY, LEFT_OPEN, OPENED_BY
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity

LIKE = 65
"""Score out of 100 above which two names may be the same thing."""


def unbalanced_ledger(case: Case) -> Iterator[Problem]:
    """Something that was taken off, slackened, fitted for now or brought about, and is still so at the end."""
    for entry in case.ledger.having(Balance.OPEN):
        rest = counted(entry, entry.out - entry.back)
        given = facts(
            way=Phrase("on-the-way", facts(way=entry.way)) if entry.way else "",
            item=entry.item if entry.opening is Opening.STATE else counted(entry, entry.out),
            opened=entry.opened[-1 if entry.opening is Opening.SLACKENED else 0],
            back=entry.back,
            why=Term(entry.spoilt.why if entry.spoilt else ""),
            close=_closing(entry, rest),
            left=Line(LEFT_OPEN, (rest, Blank("reason"), Blank("name"))),
        )
        yield Problem("unbalanced-ledger", Severity.STOP, entry.opened[0].place, given, _form(entry, case), 2)


def closed_but_never_opened(case: Case) -> Iterator[Problem]:
    """Something that goes on, comes out or ends without having been opened; usually another name for it."""
    for entry in case.ledger.having(Balance.NEVER_OPENED):
        opens, closes = OPENED_BY[entry.opening], CLOSED_BY[entry.opening]
        near = _nearest(entry, case)
        item = counted(entry, entry.back)
        more = _is_opened(entry, case)
        place = None if more else case.replaceable(entry.closed[0].place)
        given = facts(
            item=item,
            closed=entry.closed[0],
            never=Phrase("never-opened-more" if more else "never-opened", facts(field=opens)),
            guess=_guess(item.replace(entry.item, near), closes, place) if near else Phrase("add"),
            open=Line(opens, (item,)),
            new=_instead(f"{item}, new", closes, place) if entry.opening is Opening.OFF else "",
        )
        yield Problem(
            "closed-but-never-opened",
            Severity.ASK,
            entry.closed[0].place,
            given,
            _NAMES[entry.opening] + ("" if entry.opening is Opening.STATE else _many(entry, entry.back, case)),
            2,
            subject=entry.item,
        )


def _guess(item: str, closes: str, place: Place | None) -> Phrase:
    return Phrase("did-you-mean-line", facts(line=_instead(item, closes, place)))


def _instead(item: str, closes: str, place: Place | None) -> Line:
    return Line(closes, (item,), place=place, replaces=place is not None)


_NAMES = {
    Opening.OFF: "off",
    Opening.SLACKENED: "slackened",
    Opening.TEMPORARY: "temporary",
    Opening.STATE: "state",
}
"""What the forms of the sentences are called."""


def _form(entry: Entry, case: Case) -> str:
    if entry.opening is Opening.OFF and (entry.spoilt or entry.scrapped):
        return "spoilt" if entry.spoilt else "scrapped"
    name = "nipped" if entry.nipped and entry.opening is Opening.SLACKENED else _NAMES[entry.opening]
    if entry.opening is Opening.STATE:
        return name
    if entry.back and entry.opening is not Opening.SLACKENED:
        return f"{name}-only-one" if entry.back == 1 else f"{name}-only"
    return f"{name}{_many(entry, entry.out, case)}"


def _closing(entry: Entry, rest: str) -> Line:
    """The line that would close what is open."""
    if entry.opening is Opening.SLACKENED:
        return Line("Torque", (entry.item, "look up", Blank("document-section")))
    new = entry.opening is Opening.OFF and (entry.spoilt or entry.scrapped)
    closes = CLOSED_BY[entry.opening]
    return Line(closes, (f"{rest}, new" if new else entry.item if entry.opening is Opening.STATE else rest,))


def _many(entry: Entry, count: Decimal, case: Case) -> str:
    return "-many" if count > 1 or case.lexicon.words.is_plural(entry.item) else ""


def counted(entry: Entry, count: Decimal) -> str:
    """``4 x wheel nut``, or the name alone for one of one."""
    return f"{count:f} x {entry.item}" if count > 1 or entry.out > 1 else entry.item


def _is_opened(entry: Entry, case: Case) -> bool:
    """The ledger knows of it, though not of so many, or it was closed before."""
    return any(
        e.opened and e.opening is entry.opening and case.thing(e.item) == case.thing(entry.item)
        for e in case.ledger.entries
    )


def _nearest(entry: Entry, case: Case) -> str:
    """The opened thing whose name is most like it, those still open first; empty when none is like it."""
    opened = [
        e
        for e in case.ledger.entries
        if e.opened and e.opening is entry.opening and case.thing(e.item) != case.thing(entry.item)
    ]
    still = [e.item for e in opened if e.balance is Balance.OPEN]
    for names in (still, [e.item for e in opened]):
        near = process.extractOne(entry.item, names, scorer=fuzz.WRatio, score_cutoff=LIKE)
        if near:
            return str(near[0])
    return ""
