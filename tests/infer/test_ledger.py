"""The ledger: everything that is opened is followed until it is closed."""

from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.model.ledger import Balance, Entry, Moment, Opening
from procbuilder.model.origin import Place
from procbuilder.read.fields import read_item
from tests.infer.written import written


def lines(text: str) -> list[str]:
    """Each entry in one line: item, opening, back of out, balance, reason."""
    return [
        f"{e.item}: {e.opening}, {e.back} of {e.out}, {e.balance}" + (f", {e.reason}" if e.reason else "")
        for e in ledger(written(text), load()).entries
    ]


def steps(*fields: str) -> str:
    """One step for each text of fields; several fields of a step are separated by `` / ``."""
    parts = ["## Work\n"]
    for number, text in enumerate(fields, 1):
        parts += [f"### Do part {number}\n", *(f"- {field}" for field in text.split(" / ")), ""]
    return "\n".join(parts)


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(["Off: washer", "On: washer"], ["washer: off, 1 of 1, closed"], id="off-and-on"),
        pytest.param(["Off: washer"], ["washer: off, 0 of 1, open"], id="off-and-never-on"),
        pytest.param(["Off: The washer", "On: WASHER"], ["The washer: off, 1 of 1, closed"], id="article-and-case"),
        pytest.param(["Off: 6 x bolt", "On: 5 x bolt"], ["bolt: off, 5 of 6, open"], id="six-off-five-on"),
        pytest.param(
            ["Off: 6 x bolt", "On: 2 x bolt", "On: 4 x bolt"], ["bolt: off, 6 of 6, closed"], id="in-two-goes"
        ),
        pytest.param(["Off: 2 x bolt", "Off: 4 x bolt", "On: 6 x bolt"], ["bolt: off, 6 of 6, closed"], id="adds-up"),
        pytest.param(["Off: 4 x wheel nut", "On: wheel nuts"], ["wheel nut: off, 4 of 4, closed"], id="plural-is-all"),
        pytest.param(["Off: 4 x nut", "On: nut"], ["nut: off, 1 of 4, open"], id="singular-is-one"),
        pytest.param(["Off: nuts", "On: 4 x nut"], ["nuts: off, 1 of 1, closed"], id="count-never-said"),
        pytest.param(
            ["Off: cap", "On: cap", "Off: cap", "On: cap"],
            ["cap: off, 1 of 1, closed", "cap: off, 1 of 1, closed"],
            id="twice-off-and-on",
        ),
        pytest.param(
            ["On: cap", "Off: cap"],
            ["cap: off, 1 of 0, never-opened", "cap: off, 0 of 1, open"],
            id="order-of-the-file-counts",
        ),
        pytest.param(
            ["Off: 4 x nut", "On: 5 x nut"],
            ["nut: off, 4 of 4, closed", "nut: off, 1 of 0, never-opened"],
            id="one-too-many",
        ),
        pytest.param(["Off: none", "On: none"], [], id="none-is-no-thing"),
    ],
)
def test_what_comes_off_goes_on_again(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(["Off: seal, scrap", "On: seal, new"], ["seal: off, 1 of 1, closed"], id="new-for-scrap"),
        pytest.param(["Off: seal, scrap", "On: seal"], ["seal: off, 0 of 1, open"], id="old-one-again"),
        pytest.param(["Off: seal", "On: seal, new"], ["seal: off, 1 of 1, closed"], id="new-for-old"),
        pytest.param(["On: split pin, new"], [], id="new-and-nothing-off"),
        pytest.param(
            ["Off: 2 x clip, scrap / Off: 1 x clip", "On: 1 x clip", "On: 2 x clip, new"],
            ["clip: off, 2 of 2, closed", "clip: off, 1 of 1, closed"],
            id="some-scrap-some-not",
        ),
        pytest.param(
            ["Off: 1 x clip / Off: 1 x clip, scrap", "On: 1 x clip, new"],
            ["clip: off, 0 of 1, open", "clip: off, 1 of 1, closed"],
            id="new-one-closes-the-scrap-first",
        ),
    ],
)
def test_scrap_is_closed_only_by_a_new_one(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(
            ["Off: keeper | by: 2 x M8 bolt, 13 mm", "On: keeper"], ["keeper: off, 1 of 1, closed"], id="with-the-part"
        ),
        pytest.param(
            ["Off: keeper | by: 2 x bolt", "On: keeper | by: 2 x bolt"], ["keeper: off, 1 of 1, closed"], id="as-many"
        ),
        pytest.param(
            ["Off: keeper | by: 2 x bolt", "On: keeper | by: 1 x bolt"],
            ["keeper: off, 1 of 1, closed", "bolt: off, 1 of 2, open"],
            id="one-fewer",
        ),
        pytest.param(
            ["Off: keeper | by: 2 x bolt", "On: keeper", "On: 2 x bolt"],
            ["keeper: off, 1 of 1, closed"],
            id="named-again-on-their-own",
        ),
        pytest.param(
            ["Off: 4 x nut / Off: wheel", "On: wheel | by: 4 x nut"],
            ["nut: off, 4 of 4, closed", "wheel: off, 1 of 1, closed"],
            id="off-on-their-own-on-with-the-part",
        ),
    ],
)
def test_fasteners_open_and_close_with_their_part(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(["Slacken: 4 x wheel nut"], ["wheel nut: slackened, 0 of 4, open"], id="slackened"),
        pytest.param(
            ["Slacken: 4 x wheel nut", "Torque: wheel nuts | 90 N·m"],
            ["wheel nut: slackened, 4 of 4, closed"],
            id="tightened",
        ),
        pytest.param(["Slacken: nut", "Nip up: nut"], ["nut: slackened, 0 of 1, open"], id="nipped-up-is-half-closed"),
        pytest.param(["Nip up: nut"], ["nut: slackened, 0 of 1, open"], id="nipped-up-alone"),
        pytest.param(
            ["Slacken: nut", "Off: nut", "On: nut"],
            ["nut: slackened, 0 of 1, open", "nut: off, 1 of 1, closed"],
            id="off-and-on-does-not-tighten",
        ),
        pytest.param(
            ["Torque: nut | 90 N·m", "Slacken: nut"], ["nut: slackened, 0 of 1, open"], id="torque-came-before"
        ),
        pytest.param(
            ["Slacken: 4 x wheel nut", "Torque: wheel nut | 90 N·m"],
            ["wheel nut: slackened, 4 of 4, closed"],
            id="torque-without-a-number-is-for-all",
        ),
        pytest.param(["Torque: nut | 90 N·m"], [], id="torque-needs-no-slackening"),
    ],
)
def test_slackened_and_nipped_up_demand_a_later_torque(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(
            ["For now: 2 x axle stand", "Out again: axle stands"],
            ["axle stand: for-now, 2 of 2, closed"],
            id="out-again",
        ),
        pytest.param(
            ["For now: 2 x axle stand", "Out again: 1 x axle stand"],
            ["axle stand: for-now, 1 of 2, open"],
            id="one-left-in",
        ),
        pytest.param(
            ["Out again: rag"], ["rag: for-now, 1 of 0, never-opened"], id="never-put-in"
        ),
        pytest.param(
            ["State: trailer raised", "Ends: the trailer raised"], ["trailer raised: state, 1 of 1, closed"], id="state"
        ),
        pytest.param(
            ["State: trailer raised", "State: trailer raised", "Ends: trailer raised"],
            ["trailer raised: state, 1 of 1, closed"],
            id="a-state-is-on-or-off",
        ),
        pytest.param(["Off: rag", "Out again: rag"], [
            "rag: off, 0 of 1, open", "rag: for-now, 1 of 0, never-opened"
        ], id="each-opening-has-its-own-closing"),
    ],
)  # fmt: skip
def test_temporary_things_come_out_and_states_end(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(
            ["Off: cover", "Left open: cover | bracket broken | RB"],
            ["cover: off, 0 of 1, left-open, bracket broken (RB)"],
            id="with-reason-and-name",
        ),
        pytest.param(["Off: cover", "Left open: cover | bracket broken"], ["cover: off, 0 of 1, open"], id="no-name"),
        pytest.param(["Off: cover", "Left open: cover"], ["cover: off, 0 of 1, open"], id="no-reason"),
        pytest.param(["Off: cover", "Left open: lid | broken | RB"], ["cover: off, 0 of 1, open"], id="another"),
        pytest.param(
            ["Off: 6 x bolt", "On: 4 x bolt / Left open: 1 x bolt | sheared | RB"],
            ["bolt: off, 4 of 6, open"],
            id="fewer-than-are-open",
        ),
        pytest.param(
            ["Off: cover", "On: cover / Left open: cover | bracket broken | RB"],
            ["cover: off, 1 of 1, closed"],
            id="not-needed",
        ),
    ],
)
def test_left_open_needs_a_reason_and_a_name(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


def test_an_entry_knows_where_it_was_opened_and_closed() -> None:
    entries = ledger(
        written("""
        ## Strip
        ### strip 0:07-0:09, strip 0:20-0:25 Take off the keeper {#keeper}
        - Off: keeper | by: 2 x M8 bolt, 13 mm | tray: 3
        ## Refit
        ### Fit the keeper {#fit}
        - On: keeper
        """),
        load(),
    ).entries
    assert entries == (
        Entry(
            item="keeper",
            opening=Opening.OFF,
            balance=Balance.CLOSED,
            opened=(Moment("keeper", 1, Place("procedure.md", 9), "strip", Fraction(7)),),
            closed=(Moment("fit", 2, Place("procedure.md", 12)),),
            out=Decimal(1),
            back=Decimal(1),
            fasteners=(read_item("2 x M8 bolt, 13 mm", Place("procedure.md", 9)),),
            tray="3",
        ),
    )


def test_a_state_of_the_front_list_is_followed_too() -> None:
    entries = ledger(
        written("""
        ## Before you start
        - State: trailer raised
        ## Work
        ### Lower the trailer
        - Ends: trailer raised
        """),
        load(),
    ).entries
    assert [(e.item, e.balance, e.opened[0].number, e.opened[0].step) for e in entries] == [
        ("trailer raised", Balance.CLOSED, 0, "")
    ]


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(
            [
                "Slacken: 4 x wheel nut | of: front wheel",
                "Slacken: 4 x wheel nut | of: rear wheel",
                "Torque: wheel nuts | 90 N·m",
            ],
            ["wheel nut: slackened, 0 of 4, open", "wheel nut: slackened, 4 of 4, closed"],
            id="front-and-rear-and-one-torque",
        ),
        pytest.param(
            ["Off: 6 x screw | of: upper cover", "Off: 4 x screw | of: lower cover", "On: screws"],
            ["screw: off, 0 of 6, open", "screw: off, 4 of 4, closed"],
            id="screws-of-two-covers",
        ),
        pytest.param(
            ["Off: 6 x screw | of: upper cover", "Off: 4 x screw | of: lower cover", "On: 6 x screw | of: upper cover"],
            ["screw: off, 6 of 6, closed", "screw: off, 0 of 4, open"],
            id="each-group-by-its-name",
        ),
        pytest.param(
            ["Off: 6 x screw | of: upper cover", "Off: 4 x screw | of: lower cover", "On: 10 x screw"],
            ["screw: off, 6 of 6, closed", "screw: off, 4 of 4, closed"],
            id="all-of-both-counted",
        ),
        pytest.param(
            ["Off: 2 x wheel | by: 8 x nut", "On: wheel | by: 4 x nut", "On: wheel | by: 4 x nut"],
            ["wheel: off, 2 of 2, closed", "nut: off, 8 of 8, closed"],
            id="fasteners-with-one-part-after-the-other",
        ),
        pytest.param(
            ["Off: cover | by: 4 x screw", "On: cover", "On: 3 x screw"],
            ["cover: off, 1 of 1, closed", "screw: off, 3 of 4, open"],
            id="fewer-fasteners-named-on-their-own",
        ),
        pytest.param(
            ["Off: 4 x screw", "On: 3 x screw", "On: 3 x screw"],
            ["screw: off, 4 of 4, closed", "screw: off, 2 of 0, never-opened"],
            id="the-same-three-twice",
        ),
        pytest.param(
            ["Off: 4 x screw", "On: 3 x screw", "Nip up: 3 x screw", "Torque: screws | 8 N·m"],
            ["screw: off, 3 of 4, open", "screw: slackened, 3 of 3, closed"],
            id="started-by-hand-then-nipped-up",
        ),
        pytest.param(
            ["Off: 4 x screw | of: lid / Off: 4 x screw | of: base / Left open: screws | lost | RB"],
            ["screw: off, 0 of 4, left-open, lost (RB)", "screw: off, 0 of 4, open"],
            id="one-line-leaves-one-open",
        ),
        pytest.param(["Off: 4 x lug nut", "On: 4 x wheel nut"], ["lug nut: off, 4 of 4, closed"], id="two-names"),
        pytest.param(["Off: tyre", "On: tire"], ["tyre: off, 1 of 1, closed"], id="british-and-american"),
    ],
)
def test_one_action_closes_one_opening_once(fields: list[str], expected: list[str]) -> None:
    assert lines(steps(*fields)) == expected


@pytest.mark.parametrize(
    ("fields", "uncounted", "doubtful"),
    [
        (["Off: screws", "On: screw"], True, False),
        (["Off: screws", "On: screws"], True, False),
        (["Off: 4 x screw", "On: screws"], False, False),
        (["Slacken: wheel nuts", "Torque: wheel nuts | 90 N·m"], False, False),
        (["Slacken: wheel nuts", "Torque: 4 x wheel nut | 90 N·m"], True, False),
        (["Off: 6 x screw", "Off: 4 x screw", "On: screws"], False, True),
        (["Off: 6 x screw", "Off: 4 x screw", "On: 10 x screw"], False, False),
        (["Slacken: 4 x wheel nut", "Slacken: 4 x wheel nut", "Torque: wheel nuts | 90 N·m"], False, True),
        (["Slacken: 4 x nut", "Slacken: 4 x nut", "Torque: 4 x nut | 9 N·m", "Torque: 4 x nut | 9 N·m"], False, False),
    ],
)
def test_numbers_that_nobody_said_are_marked(fields: list[str], uncounted: bool, doubtful: bool) -> None:
    (entry,) = ledger(written(steps(*fields)), load()).entries
    assert (entry.balance, entry.uncounted, entry.doubtful) == (Balance.CLOSED, uncounted, doubtful)
