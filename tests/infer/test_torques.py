"""The tightening table: what was typed, and a blank where a torque is missing."""

from decimal import Decimal

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.torques import tightens, torques
from procbuilder.model.origin import TYPED, Origin, OriginKind, Place
from procbuilder.model.quantity import Item, Quantity
from procbuilder.model.torque import read_torque
from procbuilder.model.worked import TorqueRow
from tests.infer.written import written

WORDS = load()


def rows(text: str) -> tuple[TorqueRow, ...]:
    return torques(written(text), load())


def test_typed_torque_keeps_its_words() -> None:
    text = """
    ## Refit
    ### Bolt the keeper on {#keeper}
    - Torque: 2 x keeper bolt | 15 N·m then 30 N·m | order: cross | when: cold | from: D1 p. 4
    """
    assert rows(text) == (
        TorqueRow(
            item=Item("keeper bolt", Place("procedure.md", 9), Quantity(Decimal(2))),
            step="keeper",
            number=1,
            value=read_torque("15 N·m then 30 N·m"),
            look_in="D1 p. 4",
            order="cross",
            when="cold",
            origin=TYPED,
            place=Place("procedure.md", 9),
            also=read_torque("11 lbf·ft then 22 lbf·ft").stages,
        ),
    )


@pytest.mark.parametrize(
    ("field", "value", "look_in", "stage"),
    [
        ("nut | look up | D1, section 4", "", "D1, section 4", 0),
        ("nut | Look up | from: D1", "", "D1", 0),
        ("nut | look up", "", "", 0),
        ("nut | 30 N·m", "30 N·m", "", 0),
        ("nut | 30 N·m (from D2 p. 9)", "30 N·m", "D2 p. 9", 0),
        ("nut | stage 1: 15 N·m", "15 N·m", "", 1),
        ("nut | look up | D1 | stage: 2", "", "D1", 2),
    ],
)
def test_value_or_blank(field: str, value: str, look_in: str, stage: int) -> None:
    row = rows(f"## Refit\n### Bolt it\n- Torque: {field}\n")[0]
    assert (row.item.words, row.value.text, row.look_in, row.value.stage, row.demanded) == (
        "nut",
        value,
        look_in,
        stage,
        False,
    )


def test_origin_of_a_torque_is_kept() -> None:
    row = rows("## Refit\n### Bolt it\n- Torque: nut | 30 N·m (from memory)\n")[0]
    assert (row.value.text, row.look_in, row.origin) == ("30 N·m", "", Origin(OriginKind.MEMORY))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        pytest.param("### Slacken the nuts\n- Slacken: 4 x nut\n", [(1, "4 x nut")], id="slackened"),
        pytest.param("### Snug the nuts\n- Nip up: 4 x nut\n", [(1, "4 x nut")], id="nipped-up"),
        pytest.param(
            "### Slacken it\n- Slacken: 4 x nut\n### Fit it\n- On: 4 x nut\n", [(2, "4 x nut")], id="where-it-goes-on"
        ),
        pytest.param(
            "### Slacken it\n- Slacken: 4 x nut\n### Set it\n- Torque: nuts | 90 N·m\n", [], id="torque-somewhere"
        ),
        pytest.param("### Tighten the wheel nuts\n", [(1, "wheel nuts")], id="command-tightens"),
        pytest.param("### Tighten the nuts\n- Torque: nuts | look up\n", [], id="command-with-torque"),
        pytest.param(
            "### Tighten the nuts by hand\n- Nip up: nut\n### Set it\n- Torque: nut | 9 N·m\n", [], id="nip-up"
        ),
        pytest.param(
            "### Slacken it\n- Slacken: 4 x wheel nut\n### Tighten the wheel nuts\n", [(2, "wheel nuts")], id="once"
        ),
        pytest.param("### Fit the cover\n- On: cover\n", [], id="nothing-demanded"),
    ],
)
def test_missing_torque_is_a_blank_that_is_demanded(text: str, expected: list[tuple[int, str]]) -> None:
    blanks = [row for row in rows(f"## Work\n{text}") if row.demanded]
    assert [(row.number, row.item.words) for row in blanks] == expected
    assert all((row.value.text, row.look_in) == ("", "") for row in blanks)


def test_rows_stand_in_the_order_of_the_steps() -> None:
    text = """
    ## Refit
    ### Tighten the hub nut
    ### Bolt the keeper on
    - Torque: keeper bolt | 15 N·m
    ### Fit the wheel
    - Nip up: wheel nuts
    """
    assert [(row.number, row.item.words) for row in rows(text)] == [
        (1, "hub nut"),
        (2, "keeper bolt"),
        (3, "wheel nuts"),
    ]


@pytest.mark.parametrize(
    ("command", "item"),
    [
        ("Tighten the wheel nuts", "wheel nuts"),
        ("Torque up the wheel nuts.", "wheel nuts"),
        ("Fit the wheel and tighten the nuts in a star", "nuts in a star"),
        ("With weight on the wheel, tighten the nuts", "nuts"),
        ("Gradually tighten four bolts", "four bolts"),
        ("Cross-tighten the cover", "cover"),
        ("Re-torque the nuts", "nuts"),
        ("Turn the nut clockwise to tighten it", "it"),
        ("Tighten", "Tighten"),
        ("Set the torque wrench", ""),
        ("Do not tighten the nuts yet", ""),
        ("Check the torque of the nuts", ""),
        ("Run the nuts up hand-tight", ""),
    ],
)
def test_only_a_command_tightens(command: str, item: str) -> None:
    assert tightens(command, WORDS) == item
