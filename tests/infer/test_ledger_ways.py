"""The ledger on each way through the steps, what is only assumed, and what cannot be used again."""

import pytest

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.reverse import reversed_steps
from procbuilder.infer.spoils import why_spoilt
from procbuilder.model.ledger import Balance, OnWay
from tests.infer.test_ledger import steps
from tests.infer.written import written

WORDS = load()


def ends(text: str) -> list[str]:
    """Each entry in one line: item, balance, way."""
    found = ledger(written(text), WORDS).entries
    return [f"{e.item}: {e.balance}" + (f" {_told(e.way)}" if e.way else "") for e in found]


def _told(way: OnWay) -> str:
    return f"if: {', and: '.join(way.branches)}" if way.taken else f"if not: {', not: '.join(way.branches)}"


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        pytest.param(
            ["Off: cap", "Only if: braked hub / Off: drum", "Only if: braked hub / On: drum", "On: cap"],
            ["cap: closed", "drum: closed if: braked hub"],
            id="a-branch-that-closes-what-it-opens",
        ),
        pytest.param(
            ["Only if: braked hub / Off: drum", "Only if: a braked hub / On: drum"],
            ["drum: closed if: braked hub"],
            id="the-same-condition-with-an-article",
        ),
        pytest.param(
            ["Only if: braked hub / Off: drum"], ["drum: open if: braked hub"], id="open-when-it-is-taken"
        ),
        pytest.param(
            ["Off: pin", "Only if: the pin is good / On: pin"],
            ["pin: open if not: the pin is good", "pin: closed if: the pin is good"],
            id="open-when-it-is-not-taken",
        ),
        pytest.param(
            ["Off: pin", "Only if: the pin is good / On: pin", "Only if: otherwise / On: pin, new"],
            ["pin: closed", "pin: closed if: the pin is good"],
            id="otherwise-is-the-contrary-of-the-condition-before",
        ),
        pytest.param(
            ["Only if: with ABS / Off: ring", "Only if: without ABS / On: ring"],
            ["ring: never-opened if not: ABS", "ring: open if: ABS"],
            id="with-and-without-are-contraries",
        ),
        pytest.param(
            ["Off: pin", "Only if: good / On: pin", "Only if: bad / On: pin, new"],
            [
                "pin: open if not: good, not: bad",
                "pin: closed if: good",
                "pin: closed if: bad",
            ],
            id="two-branches-that-are-no-contraries-leave-a-way-without-either",
        ),
        pytest.param(
            ["Only if: one / Off: ring", "Only if: other / On: ring"],
            ["ring: open if: one", "ring: never-opened if: other"],
            id="branches-are-checked-one-at-a-time",
        ),
        pytest.param(
            ["Only if: one / Only if: other / Off: ring"],
            ["ring: open if: one, and: other"],
            id="branches-that-a-step-joins-are-followed-together",
        ),
        pytest.param(
            ["Off: cap", "Only if: one / Only if: other / On: cap", "Only if: one / Off: pin / On: pin"],
            ["cap: open", "pin: closed if: one", "cap: closed if: one, and: other"],
            id="what-a-single-branch-tells-is-not-told-again-for-two-together",
        ),
        pytest.param(
            ["Only if: one / Only if: not other / Off: ring", "Only if: one / On: ring"],
            ["ring: closed if: one"],
            id="a-condition-and-a-contrary-are-on-the-single-way",
        ),
        pytest.param(["Off: cap", "Only if: hot / Off: fan"], ["cap: open", "fan: open if: hot"],
                     id="open-on-every-way-is-told-once"),
    ],
)  # fmt: skip
def test_the_ledger_must_balance_on_each_way(fields: list[str], expected: list[str]) -> None:
    assert ends(steps(*fields)) == expected


BRANCH = """
## Work
### Take off the cover {{#off}}
- Off: cover
### Look for cracks {{#look}}
- Only if: a crack
- Then: #{target}
### Fit the cover {{#fit}}
- On: cover
### Order a cover {{#order}}
- Check: the cover is ordered | yes
"""


def test_then_leaves_out_the_steps_between() -> None:
    assert ends(BRANCH.format(target="order")) == ["cover: closed", "cover: open if: a crack"]


def test_then_to_the_next_step_leaves_out_nothing() -> None:
    assert ends(BRANCH.format(target="fit")) == ["cover: closed"]


def test_then_back_does_the_steps_again() -> None:
    """The cover would have to come off a second time, and nobody has put it on."""
    assert ends(BRANCH.format(target="off")) == ["cover: closed", "cover: open if: a crack"]


AGAIN = """
## Work
### Take off the nut {#nut}
- Off: nut
### Fit the nut {#refit}
- On: nut
### Rock the wheel {#rock}
- Only if: it rocks
- Then: #nut
"""


def test_what_opens_and_closes_each_time_round_is_balanced() -> None:
    assert ends(AGAIN) == ["nut: closed"]


def test_what_comes_off_once_more_each_time_round_is_open() -> None:
    assert ends(AGAIN.replace("- Then: #nut", "- Off: nut\n- Then: #refit")) == [
        "nut: closed",
        "nut: closed if: it rocks",
    ]
    assert ends(AGAIN.replace("- Then: #nut", "- Then: #refit")) == [
        "nut: closed",
        "nut: never-opened if: it rocks",
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("### Refit everything in reverse order\n", {2: None}),
        ("### Put it together\nRefitting is the reverse of removal.\n", {2: None}),
        ("### Refit steps 3 to 7 in reverse\n", {2: range(3, 8)}),
        ("### Refit step 1 in reverse order\n", {2: range(1, 2)}),
        ("### Undo the bolts in reverse order\n", {}),
        ("### Put the gearbox in reverse\n", {}),
        ("### Fit the cover\nTurn it. The gear is in reverse.\n", {}),
    ],
)
def test_steps_that_tell_to_refit_in_reverse(text: str, expected: dict[int, range | None]) -> None:
    assert reversed_steps(written(f"## Work\n### Take it off\n- Off: cover\n{text}"), WORDS) == expected


def test_what_goes_back_in_reverse_is_only_assumed_and_scrap_is_not() -> None:
    text = """
    ## Work
    ### Take it apart
    - Off: 2 x cover
    - Off: cable tie, scrap
    - State: trailer raised
    ### Put one back
    - On: 1 x cover
    ### Refit in reverse order
    ### Take the lid off
    - Off: lid
    """
    found = ledger(written(text), WORDS).entries
    assert [(e.item, e.balance, e.back, e.closed[-1:] and e.closed[-1].number) for e in found] == [
        ("cover", Balance.ASSUMED, 1, 3),
        ("cable tie", Balance.OPEN, 0, ()),
        ("trailer raised", Balance.ASSUMED, 0, 3),
        ("lid", Balance.OPEN, 0, ()),
    ]


def test_only_the_named_steps_go_back_in_reverse() -> None:
    text = """
    ## Work
    ### Take the cover off
    - Off: cover
    ### Take the lid off
    - Off: lid
    ### Refit step 2 in reverse order
    """
    assert ends(text) == ["cover: open", "lid: assumed"]


def test_what_is_said_at_last_counts_more_than_in_reverse() -> None:
    text = "## Work\n### Take it off\n- Off: cover\n### Refit in reverse order\n### Fit the cover\n- On: cover\n"
    assert ends(text) == ["cover: closed"]


@pytest.mark.parametrize(
    ("command", "name", "spoilt"),
    [
        ("Pull the pin", "split pin", True),
        ("Cut the hose clip", "hose clip", True),
        ("Cut off the old hose", "hose", True),
        ("Cut the tie and lift off the cover", "cover", False),
        ("Chisel off the nut", "M8 nut", True),
        ("Split the nut", "nut", True),
        ("Split the gearbox", "gearbox", False),
        ("Peel off the membrane", "door membrane", True),
        ("Straighten the tab and undo the nut", "tab washer", True),
        ("Take off the washer", "washer", False),
        ("Take out the push rivets", "push rivet", False),
        ("Take out the rivets", "rivet", True),
        ("Undo the nut without cutting it", "nut", False),
        ("Take off the wheel", "wheel", False),
    ],
)
def test_what_is_cut_chiselled_or_bent_open_cannot_be_used_again(command: str, name: str, spoilt: bool) -> None:
    assert bool(why_spoilt(name, command, WORDS)) is spoilt


def test_what_is_spoilt_is_closed_only_by_a_new_one() -> None:
    text = "## Work\n### Cut the clip\n- Off: hose clip\n### Fit {}\n- On: hose clip{}\n"
    assert ends(text.format("it", "")) == ["hose clip: open"]
    assert ends(text.format("a new one", ", new")) == ["hose clip: closed"]


def test_an_entry_tells_that_a_new_one_goes_on_and_to_what_it_belongs() -> None:
    entry = ledger(written("## W\n### Out\n- Off: seal | of: hub\n### In\n- On: seal, new\n"), WORDS).entries[0]
    assert (entry.renewed, entry.of, entry.scrapped, entry.spoilt) == (True, "hub", False, None)


def test_what_comes_off_again_after_it_went_back_in_reverse_is_open() -> None:
    text = "## Work\n### Out\n- Off: cover\n### Refit in reverse order\n### Take it off again\n- Off: cover\n"
    assert ends(text) == ["cover: open"]
