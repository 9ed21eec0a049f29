"""Rules about what was opened and must be closed again."""

from collections.abc import Iterator
from decimal import Decimal

from rapidfuzz import fuzz, process

from procbuilder.check.case import Case
from procbuilder.model.ledger import Balance, Entry, Moment, Opening
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.timecode import format_time
from procbuilder.model.words import is_plural, thing

LIKE = 65
"""Score out of 100 above which two names may be the same thing."""
_FIELDS = {
    Opening.OFF: ("Off", "On", "takes it off", ("goes on", "go on")),
    Opening.TEMPORARY: ("For now", "Out again", "fits it", ("comes out again", "come out again")),
    Opening.STATE: ("State", "Ends", "brings it about", ("ends", "end")),
}
"""Field that opens, field that closes, what the opening step does, what one or many things do at the closing."""


def unbalanced_ledger(case: Case) -> Iterator[Problem]:
    """Something that was taken off, slackened, fitted for now or brought about, and is still so at the end."""
    for entry in case.ledger.having(Balance.OPEN):
        what, instead = _OPEN[entry.opening](entry)
        left = f'or "- Left open: {counted(entry, entry.out - entry.back)} | reason | name"'
        what = f'on the way "{entry.way}", {what}' if entry.way else what
        yield Problem(Severity.STOP, entry.opened[0].place, what, f"{instead}, {left}", "unbalanced-ledger", 2)


def closed_but_never_opened(case: Case) -> Iterator[Problem]:
    """Something that goes on, comes out or ends without having been opened; usually another name for it."""
    for entry in case.ledger.having(Balance.NEVER_OPENED):
        opens, closes, opening, (one, many) = _FIELDS[entry.opening]
        closing = many if _are_many(entry, entry.back) else one
        moment = entry.closed[0]
        near = _nearest(entry, case)
        guess = f'did you mean "- {closes}: {near}"? Or add' if near else "add"
        new = f', or write "- On: {entry.item}, new" for a new one' if entry.opening is Opening.OFF else ""
        yield Problem(
            Severity.ASK,
            moment.place,
            f"{counted(entry, entry.back)} {closing} {when(moment)}, but {_never(entry, case)}",
            f'{guess} "- {opens}: {counted(entry, entry.back)}" to the step that {opening}{new}',
            "closed-but-never-opened",
            2,
        )


def when(moment: Moment) -> str:
    """``at strip 0:07 (step 3)``, ``in step 3`` when it was not filmed, ``in line 12`` for a front list."""
    if not moment.number:
        return f"in line {moment.place.line}"
    if moment.time is None:
        return f"in step {moment.number}"
    return f"at {' '.join(filter(None, (moment.recording, format_time(moment.time))))} (step {moment.number})"


def _off(entry: Entry) -> tuple[str, str]:
    came_off = f"{counted(entry, entry.out)} came off {when(entry.opened[0])}"
    rest = counted(entry, entry.out - entry.back)
    if entry.spoilt:
        new = f'add "- On: {rest}, new" to the step that fits a new one'
        return f"{came_off} and cannot be used again ({entry.spoilt}), and no new one goes on", new
    if entry.scrapped:
        return f"{came_off} as scrap and no new one goes on", f'add "- On: {rest}, new" to the step that fits it'
    missing = _only(entry.back, "goes", "go", "back on") or f"{_does(entry)} not go back on"
    return f"{came_off} and {missing}", f'add "- On: {rest}" to the step that refits it'


def _slackened(entry: Entry) -> tuple[str, str]:
    be = "are" if _are_many(entry, entry.out) else "is"
    how = "only nipped up" if entry.nipped else "slackened"
    return (
        f"{counted(entry, entry.out)} {be} {how} {when(entry.opened[-1])} and never tightened for good",
        f'add "- Torque: {entry.item} | look up | document, section" to the step that tightens it',
    )


def _temporary(entry: Entry) -> tuple[str, str]:
    missing = _only(entry.back, "comes", "come", "out again") or f"{_does(entry)} not come out again"
    return (
        f"{counted(entry, entry.out)} went in for now {when(entry.opened[0])} and {missing}",
        f'add "- Out again: {counted(entry, entry.out - entry.back)}" to the step that takes it out',
    )


def _state(entry: Entry) -> tuple[str, str]:
    return (
        f'the state "{entry.item}" begins {when(entry.opened[0])} and does not end',
        f'add "- Ends: {entry.item}" to the step that ends it',
    )


_OPEN = {
    Opening.OFF: _off,
    Opening.SLACKENED: _slackened,
    Opening.TEMPORARY: _temporary,
    Opening.STATE: _state,
}


def _are_many(entry: Entry, count: Decimal) -> bool:
    return count > 1 or is_plural(entry.item)


def _does(entry: Entry) -> str:
    return "do" if _are_many(entry, entry.out) else "does"


def _only(back: Decimal, one: str, many: str, where: str) -> str:
    """``only 5 go back on``; empty when none did."""
    return f"only {back:f} {one if back == 1 else many} {where}" if back else ""


def counted(entry: Entry, count: Decimal) -> str:
    """``4 x wheel nut``, or the name alone for one of one."""
    return f"{count:f} x {entry.item}" if count > 1 or entry.out > 1 else entry.item


def _never(entry: Entry, case: Case) -> str:
    """What the ledger knows of it: nothing, or that it was closed before."""
    opens = _FIELDS[entry.opening][0]
    same = [
        e for e in case.ledger.entries if e.opened and e.opening is entry.opening and thing(e.item) == thing(entry.item)
    ]
    return f'that is more than "- {opens}:" says' if same else f'no "- {opens}:" says so before'


def _nearest(entry: Entry, case: Case) -> str:
    """The opened thing whose name is most like it, those still open first; empty when none is like it."""
    opened = [
        e for e in case.ledger.entries if e.opened and e.opening is entry.opening and thing(e.item) != thing(entry.item)
    ]
    still = [e.item for e in opened if e.balance is Balance.OPEN]
    for names in (still, [e.item for e in opened]):
        near = process.extractOne(entry.item, names, scorer=fuzz.WRatio, score_cutoff=LIKE)
        if near:
            return str(near[0])
    return ""
