"""Sets of conditions: with all of them met nothing is asked, and each one that is left out is asked by itself."""

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.order import disorders
from procbuilder.model.activity import Order
from tests.infer.written import HEAD, written

ACTS = {
    "en": {
        "stands-before-under": "Crawl under the car",
        "prove-dead": "Unplug the orange cable",
        "cabinet-dead": "Remove the contactor",
        "gas-shut": "Remove the gas valve",
        "confined-space": "Climb into the tank",
        "hydraulic-pressure": "Undo the hydraulic hose",
        "steering-pressure": "Disconnect the power steering hose",
    },
    "de": {
        "stands-before-under": "Unter das Auto kriechen",
        "prove-dead": "Hochvoltstecker abziehen",
        "cabinet-dead": "Schütz ausbauen",
        "gas-shut": "Gasventil ausbauen",
        "confined-space": "In den Tank einsteigen",
        "hydraulic-pressure": "Hydraulikschlauch lösen",
        "steering-pressure": "Servoleitung lösen",
    },
}
"""What may be done only when every condition is met."""


def conditions(language: str) -> dict[str, list[Order]]:
    found: dict[str, list[Order]] = {}
    for order in load(language).orders:
        name, dot, _ = order.id.partition(".")
        if dot:
            found.setdefault(name, []).append(order)
    return found


def asked(language: str, commands: list[str]) -> set[str]:
    head = HEAD.replace("format: 1", f"format: 1\nlanguage: {language}")
    procedure = written("## Work\n" + "".join(f"### {one}\n" for one in commands), head=head)
    return {one.order.id for one in disorders(procedure, load(language)) if "." in one.order.id}


@pytest.mark.parametrize("language", sorted(ACTS))
def test_every_set_has_an_act(language: str) -> None:
    assert set(conditions(language)) == set(ACTS[language])
    assert {name: [one.id for one in found] for name, found in conditions(language).items()} == {
        name: [one.id for one in found] for name, found in conditions("en").items()
    }


@pytest.mark.parametrize(("language", "name"), [(language, name) for language in ACTS for name in ACTS[language]])
def test_each_condition_is_asked_by_itself(language: str, name: str) -> None:
    orders, act = conditions(language)[name], ACTS[language][name]
    assert asked(language, [act]) == {one.id for one in orders}
    assert asked(language, [*(one.example for one in orders), act]) == set()
    for left_out in orders:
        rest = [one.example for one in orders if one is not left_out]
        assert asked(language, [*rest, act]) == {left_out.id}
