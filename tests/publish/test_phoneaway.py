"""Steps without a phone: the notice before the first of them, and the printed card for exactly those."""

from dataclasses import replace

import pytest

from procbuilder.model.edition import Edition
from procbuilder.publish import words
from procbuilder.publish.phoneaway import PhoneAway, phone_away
from tests.publish.blocks import views

CARD = "vapour or gas can catch fire"


def with_vapour(edition: Edition, reasons: dict[int, str]) -> Edition:
    sections = tuple(
        replace(part, steps=tuple(replace(step, no_phone=reasons.get(step.number, "")) for step in part.steps))
        for part in edition.sections
    )
    return replace(edition, sections=sections)


@pytest.fixture(scope="module")
def burning(edition: Edition) -> Edition:
    return with_vapour(edition, {3: "petrol pipe", 4: "Petrol pipe", 8: "brake cleaner"})


def test_steps_behind_one_another_share_a_card(burning: Edition) -> None:
    assert phone_away(burning) == (
        PhoneAway(3, "steps 3 to 4", "petrol pipe"), PhoneAway(8, "step 8", "brake cleaner"),
    )  # fmt: skip


def test_page_says_so_in_the_overview_and_before_the_first_step(burning: Edition) -> None:
    first = "Before steps 3 to 4: read now what they say, then put the phone away."
    notice = f"{first} There, {CARD} (petrol pipe). {words.BY_CARD}"
    shown = views(burning)
    ids = {step.number: step.id for step in burning.steps}
    where = {view for view, blocks in shown.items() if notice in blocks}
    assert where == {"_overview", ids[2]}


def test_page_says_so_on_each_of_the_steps(burning: Edition) -> None:
    shown = views(burning)
    told = [step.number for step in burning.steps if any(one.startswith(words.NO_PHONE) for one in shown[step.id])]
    assert told == [3, 4, 8]


def test_without_vapour_nobody_is_sent_for_paper(edition: Edition) -> None:
    calm = with_vapour(edition, {})
    assert phone_away(calm) == ()
    assert not any("phone away" in block for blocks in views(calm).values() for block in blocks)
