"""Random jobs, each piece moved by itself: what is left open in truth is never silent in the ledger.

A job is done on single pieces, then told as a technician tells it: with the number or without, with the larger part
or without. Where every line is told in full, the ledger must agree to the piece.
"""

from collections import Counter
from dataclasses import dataclass, field
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.model.ledger import Balance, Entry, Opening
from tests.infer.written import written

WORDS = load()
NAMES = ("screw", "wheel nut", "clip")
PARTS = ("front wheel", "rear wheel", "")
PAIRS = {
    Opening.OFF: ("Off", "On"),
    Opening.TEMPORARY: ("For now", "Out again"),
    Opening.SLACKENED: ("Slacken", "Torque"),
}


@dataclass
class Group:
    """Pieces that one action opens; each is open or not."""

    opening: Opening
    name: str
    of: str
    pieces: list[bool]


@dataclass
class Job:
    """What was done, and how it was told."""

    groups: list[Group] = field(default_factory=list)
    told: list[str] = field(default_factory=list)

    def tell(self, verb: str, name: str, count: int, of: str, how: tuple[bool, bool]) -> None:
        """``how``: with the number, with the larger part."""
        numbered, placed = how
        thing = f"{count} x {name}" if numbered else f"{name}s" if count > 1 else name
        torque = " | 9 N·m | D1" if verb == "Torque" else ""
        self.told.append(f"{verb}: {thing}{torque}" + (f" | of: {of}" if of and placed else ""))


@st.composite
def jobs(draw: st.DrawFn, *, full: bool = False) -> Job:
    """Up to eight actions: some open pieces, some close a part or the whole of what is open."""
    job = Job()
    part = st.just(True) if full else st.integers(0, 3).map(bool)
    hows = st.tuples(part, part)
    for _ in range(draw(st.integers(1, 8))):
        open_now = [group for group in job.groups if any(group.pieces)]
        how = draw(hows)
        group = draw(st.sampled_from([*open_now, None]))
        if group is not None:
            most = sum(group.pieces)
            # Without a number nobody says that some are left over: "the screws" are all of one group.
            count = draw(st.integers(1, most)) if how[0] else most
            for _ in range(count):
                group.pieces[group.pieces.index(True)] = False
            job.tell(PAIRS[group.opening][1], group.name, count, group.of, how)
        else:
            opening, name, of = draw(st.sampled_from(sorted(PAIRS))), draw(st.sampled_from(NAMES)), ""
            of = draw(st.sampled_from(PARTS))
            count = draw(st.integers(1, 6))
            job.groups.append(Group(opening, name, of, [True] * count))
            job.tell(PAIRS[opening][0], name, count, of, how)
    return job


def entries(job: Job) -> tuple[Entry, ...]:
    steps = "".join(f"### Do part {at}\n\n- {line}\n\n" for at, line in enumerate(job.told, 1))
    return ledger(written(f"## Work\n{steps}"), WORDS).entries


def left(job: Job) -> Counter[tuple[Opening, str, str]]:
    """How many pieces are open in truth, by how, name and larger part."""
    open_now: Counter[tuple[Opening, str, str]] = Counter()
    for group in job.groups:
        open_now[group.opening, group.name, group.of] += sum(group.pieces)
    return +open_now


def loud(entry: Entry) -> bool:
    return entry.balance is not Balance.CLOSED or entry.uncounted or entry.doubtful


@settings(max_examples=300, deadline=None)
@given(jobs())
def test_what_is_open_in_truth_is_never_silent(job: Job) -> None:
    book = entries(job)
    for opening, name, _ in left(job):
        spoken = [entry for entry in book if entry.opening is opening and entry.item in (name, f"{name}s")]
        assert any(loud(entry) for entry in spoken), job.told


@settings(max_examples=300, deadline=None)
@given(jobs(full=True))
def test_what_is_told_in_full_agrees_to_the_piece(job: Job) -> None:
    told: Counter[tuple[Opening, str, str]] = Counter()
    for entry in entries(job):
        assert entry.balance in (Balance.OPEN, Balance.CLOSED), job.told
        # What is slackened again may be the same piece: then it is asked.
        if not entry.doubtful:
            told[entry.opening, entry.item, entry.of] += int(entry.out - entry.back)
    expected = left(job)
    for key in expected | told:
        assert told[key] == expected[key] or any(loud(e) for e in entries(job) if e.item == key[1]), job.told


def test_the_model_itself_can_tell_a_difference() -> None:
    job = Job([Group(Opening.OFF, "screw", "", [True, False])], ["Off: 2 x screw", "On: 2 x screw"])
    (entry,) = entries(job)
    assert left(job) == {(Opening.OFF, "screw", ""): 1}
    assert (loud(entry), entry.out - entry.back) == (False, Decimal(0))
