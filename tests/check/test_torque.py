"""What is a unit of torque, and what is a source."""

import pytest

from tests.check.sample import changed, said

BOLT = "- Torque: keeper bolt | 15 N·m | from: D1 p. 4\n"


@pytest.mark.parametrize(
    "value",
    [
        "15 N·m",
        "15 Nm",
        "15 N m",
        "15N·m",
        "900 N·cm",
        "900 cN·m",
        "1.5 kgf·m",
        "11 lbf·ft",
        "11 lb-ft",
        "11 ft-lb",
        "11 ft lbs",
        "133 lbf·in",
        "133 in-lb",
        "11 pound feet",
        "15 N·m then 90°",
        "15 N·m, then 30 degrees",
        "back a quarter turn, 1 to 2 turns",
    ],
)
def test_units_that_are_known(value: str) -> None:
    assert said(changed((BOLT, f"- Torque: keeper bolt | {value} | from: D1 p. 4\n"))) == []


@pytest.mark.parametrize("value", ["15", "15 then 30", "15 newtons", "25 N", "15 mm", "M8"])
def test_numbers_without_a_unit_of_torque(value: str) -> None:
    assert said(changed((BOLT, f"- Torque: keeper bolt | {value} | from: D1 p. 4\n"))) == [
        f'stop 2 torque-without-unit procedure.md:43: the torque of keeper bolt, "{value}", has no unit – '
        "write behind the number what was meant: N·m, lbf·ft or degrees"
    ]


@pytest.mark.parametrize(
    "item", ["brake caliper bolt", "track rod end nut", "wheel bearing nut", "fuel rail bolt", "seat belt bolt"]
)
def test_life_depends_on_these(item: str) -> None:
    """Brakes, steering, wheels, fuel, restraints: a value needs its document."""
    rules = [line.split()[2] for line in said(changed((BOLT, f"- Torque: {item} | 15 N·m\n")))]
    assert [rule for rule in rules if rule.startswith("torque")] == ["torque-without-source"]


@pytest.mark.parametrize("source", [" | from: D1 p. 4", " (from D1 p. 4)", " | D1 p. 4"])
def test_source_may_stand_in_three_places(source: str) -> None:
    assert said(changed((BOLT, f"- Torque: hub nut | 15 N·m{source}\n"))) == []


def test_command_makes_a_torque_critical_too() -> None:
    text = changed((BOLT, "- Torque: slide bolt | 15 N·m\n"), ("Fit the bearing washer", "Fit the brake lever"))
    assert [line.split()[2] for line in said(text)] == ["torque-without-source"]


def test_value_that_was_only_said_is_no_document() -> None:
    text = changed((BOLT, "- Torque: hub nut | 15 N·m (said strip 0:12)\n"))
    assert said(text) == [
        "stop 2 torque-without-source procedure.md:43: the torque of hub nut is given said strip 0:12, and lives "
        'depend on it ("hub") – add the document that says so to the line: " | from: document, page"'
    ]


def test_nut_that_is_still_slackened_is_reported_once() -> None:
    """By the ledger, not by the tightening rule as well."""
    text = changed(
        ("- Torque: wheel nuts | look up | D1, section 4\n", "- Torque: drain plug | look up | D1, section 4\n")
    )
    assert [line.split()[2] for line in said(text)] == ["unbalanced-ledger"]
