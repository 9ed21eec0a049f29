"""Whatever is opened and closed in whatever legal order: the ledger balances, and what is left out is named."""

from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.model.ledger import Balance, Ledger
from tests.infer.written import written

WORDS = load()
THINGS = ("cover", "hub", "bolt", "nut", "sensor lead", "clip", "bracket", "hose", "wheel", "shield")
KINDS = {
    "off": ("Off: {n} x {name}", "On: {n} x {name}"),
    "scrap": ("Off: {n} x {name}, scrap", "On: {n} x {name}, new"),
    "for now": ("For now: {n} x {name}", "Out again: {n} x {name}"),
    "slackened": ("Slacken: {n} x {name}", "Torque: {name} | look up | D1"),
    "state": ("State: {name} moved", "Ends: {name} moved"),
}
Line = tuple[int, str]
"""A field and the number of the opening that it belongs to."""


@st.composite
def jobs(draw: st.DrawFn) -> tuple[list[Line], list[Line]]:
    """Openings of different things, and all lines in a legal order: no closing before its opening."""
    names = draw(st.lists(st.sampled_from(THINGS), unique=True, min_size=1, max_size=len(THINGS)))
    openings: list[Line] = []
    closings: list[Line] = []
    for number, name in enumerate(names):
        opens, closes = KINDS[draw(st.sampled_from(sorted(KINDS)))]
        count = draw(st.integers(1, 9))
        openings.append((number, opens.format(n=count, name=name)))
        closings.append((number, closes.format(n=count, name=name)))
    order = draw(st.permutations([*openings, *closings]))
    lines: list[Line] = []
    opened: set[int] = set()
    waiting: list[Line] = []
    for line in order:
        if line in openings:
            opened.add(line[0])
            lines += [line, *(late for late in waiting if late[0] == line[0])]
        elif line[0] in opened:
            lines.append(line)
        else:
            waiting.append(line)
    return closings, lines


def booked(lines: list[Line]) -> Ledger:
    text = "## Work\n" + "".join(f"### Do part {at}\n\n- {field}\n\n" for at, (_, field) in enumerate(lines, 1))
    return ledger(written(text), WORDS)


@settings(max_examples=150, deadline=None)
@given(jobs())
def test_any_legal_order_balances(job: tuple[list[Line], list[Line]]) -> None:
    _, lines = job
    book = booked(lines)
    assert [entry.balance for entry in book.entries] == [Balance.CLOSED] * (len(lines) // 2)


@settings(max_examples=150, deadline=None)
@given(jobs(), st.data())
def test_a_closing_that_is_left_out_names_exactly_its_thing(
    job: tuple[list[Line], list[Line]], data: st.DataObject
) -> None:
    closings, lines = job
    missing = data.draw(st.sampled_from(closings))
    book = booked([line for line in lines if line is not missing and line != missing])
    wrong = [entry for entry in book.entries if entry.balance is not Balance.CLOSED]
    assert [(entry.balance, entry.back) for entry in wrong] == [(Balance.OPEN, Decimal(0))]
    assert wrong[0].item.removesuffix(" moved") in missing[1]


FIELDS = st.sampled_from([line for pair in KINDS.values() for line in pair])


@settings(max_examples=200, deadline=None)
@given(st.lists(st.tuples(FIELDS, st.sampled_from(THINGS[:3]), st.integers(1, 5)), max_size=20))
def test_no_count_is_ever_negative_or_more_than_were_opened(told: list[tuple[str, str, int]]) -> None:
    book = booked([(0, field.format(n=count, name=name)) for field, name, count in told])
    for entry in book.entries:
        assert entry.out >= 0
        assert entry.back >= 0
        assert entry.balance is Balance.NEVER_OPENED or entry.back <= entry.out
        assert (entry.balance is Balance.CLOSED) is (bool(entry.opened) and entry.back == entry.out)
