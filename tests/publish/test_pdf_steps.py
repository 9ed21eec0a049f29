"""The printed sheet: the steps."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from procbuilder.model.edition import Edition, EditionSection
from procbuilder.model.marks import Mark, MarkShape
from procbuilder.model.origin import Place
from procbuilder.publish import words
from procbuilder.publish.speaker import spoken
from tests.publish.sheet import pages, sheet, solid, whole, with_step
from tests.publish.typed import typed


def _step_text(text: str, number: int) -> str:
    """What is printed for a step, from its label to the next one."""
    start = text.index(f"Step {number} of 11")
    end = text.find(f"Step {number + 1} of 11", start)
    return text[start : end if end > 0 else None]


def _step_facts(edition: Edition) -> Iterator[str]:
    for step in spoken(edition).steps:
        yield step.command
        for hazard in step.hazards:
            yield from (hazard.signal.value, hazard.hazard, hazard.consequence, hazard.avoid)
        yield from (*step.standing.protections, step.only_if, *(named.text for named in step.holds))
        if not step.reserved:
            yield from (line.text for line in (*step.tools, *step.supplies, *step.parts, *step.wear, *step.key_points))
            yield from (part for line in step.key_points for part in line.extra)
            yield from (
                part for named in (*step.moves, *step.checks, *step.notes) for part in (named.text, *named.extra)
            )
            yield from (figure.caption for figure in step.figures)
            yield from (label for figure in step.figures for label in figure.labels)


def test_all_that_is_known_of_each_step_is_printed(edition: Edition, text: str) -> None:
    assert [fact for fact in _step_facts(edition) if solid(fact) not in solid(text)] == []


def test_dangers_stand_before_the_command_with_the_worst_first(text: str) -> None:
    step = _step_text(text, 2)
    order = ["DANGER", "WARNING", "CAUTION", "NOTICE", "2 Raise the axle and set both stands under it"]
    places = [step.index(part) for part in order]
    assert places == sorted(places)
    assert "the trailer can roll – crushed foot from memory, not confirmed Avoid it: check the chocks first" in step


def test_a_hazard_that_lacks_a_part_says_so(edition: Edition, media: Path) -> None:
    bare = replace(edition.hazards[0], consequence="", avoid="")
    text = whole(sheet(replace(edition, hazards=(bare,)), media))
    assert "bearing – consequence not stated Avoid it: how to avoid it is not stated" in text


def test_standing_dangers_and_protection_stand_at_each_step_until_they_end(text: str) -> None:
    strip = (
        "Still dangerous: DANGER the trailer can drop off the stands – keep both stands under the axle, "
        "nobody underneath (while trailer raised) Leave in place: 2 x axle stand; wheel chock"
    )
    for number in range(3, 11):
        step = _step_text(text, number)
        assert strip in step
        assert step.index(strip) < step.index(f" {number} ", step.index(strip) + len(strip))
    assert words.STILL_DANGEROUS not in _step_text(text, 11)


def test_a_state_without_a_danger_of_its_own_still_stands(edition: Edition, media: Path) -> None:
    standing = replace(edition.steps[2].standing, states=("trailer raised", "brake line open"))
    text = whole(sheet(with_step(edition, 3, standing=standing), media))
    assert "(while trailer raised) Still dangerous: brake line open Leave in place" in text


def test_a_missing_torque_is_a_blank_that_says_where_to_look(text: str) -> None:
    step = _step_text(text, 8)
    value = "15 N·m then 30 N·m (11 lbf·ft then 22 lbf·ft)"
    assert f"keeper bolts: {value} · order: cross · when: dry threads (from D1 p. 4)" in step
    blank = "value source initials No value given."
    assert f"hub nut · when: weight on wheels · stage 1 {blank} Look up: D1, section 3" in step
    assert f"wheel nuts {blank} {words.LOOK_UP}" in step
    assert "cap screw: 4 N·m from memory, not confirmed" in step


def test_a_reserved_step_shows_no_method(text: str) -> None:
    step = _step_text(text, 9)
    assert "Stop: done by a licensed gas fitter Before you go on: HOLD POINT" in step
    assert "Secret" not in text
    assert "secret" not in text


def test_a_reserved_step_without_a_check_asks_for_the_word_of_who_did_it(edition: Edition, media: Path) -> None:
    text = whole(sheet(with_step(edition, 9, holds=()), media))
    assert "Before you go on: a licensed gas fitter has told you that it is done and safe." in text


def test_a_withheld_step_names_the_lines(edition: Edition, media: Path) -> None:
    lines = (Place("procedure.md", 41), Place("procedure.md", 44))
    closed = with_step(edition, 2, withheld=lines, figures=(), as_found=None, clip=None)
    assert "Pictures and clip withheld: lines 41 and 44 are not understood" in whole(sheet(closed, media))


def test_a_picture_as_found_says_what_it_is_and_from_where(text: str) -> None:
    assert f"{words.AS_FOUND} (step 5) Hub before it came off" in _step_text(text, 7)


def test_hold_points_have_room_to_sign(text: str) -> None:
    assert "must not move on the stands Checked by: the senior technician Name Signature Date, time" in text


def test_key_points_tell_why(text: str) -> None:
    assert "turn the hub a little after each push Why: a bent cap lets water in" in text


def test_a_step_stays_on_one_page(edition: Edition, printed: bytes) -> None:
    sheets = pages(printed)
    for step in edition.steps:
        [page] = [page for page in sheets if f"Step {step.number} of 11" in page]
        assert f" {step.number} {step.command}" in page


def test_a_step_longer_than_a_page_goes_on_overleaf(edition: Edition, media: Path) -> None:
    tools = tuple(typed(f"Tool: tool number {number}") for number in range(150))
    sheets = pages(sheet(with_step(edition, 6, tools=tools), media))
    names = [item.name for tool in tools for item in tool.items]
    assert [name for name in names if name not in " ".join(sheets)] == []
    assert sum("tool number" in page for page in sheets) >= 4


def _ring(number: int) -> Mark:
    return Mark(MarkShape.RING, (0.5, 0.5), f"mark number {number}", Place("procedure.md", number))


def test_many_marks_are_all_explained(edition: Edition, media: Path) -> None:
    figure = replace(edition.steps[0].figures[0], marks=tuple(_ring(n) for n in range(1, 60)))
    text = whole(sheet(with_step(edition, 1, figures=(figure,)), media))
    assert all(f"mark number {number}" in text for number in range(1, 60))


def test_a_procedure_of_many_steps_is_set(edition: Edition, media: Path) -> None:
    steps = tuple(replace(edition.steps[5], number=number, id=f"s{number}") for number in range(1, 121))
    sheets = pages(sheet(replace(edition, sections=(EditionSection("Strip", (), (), steps),)), media))
    assert sum(page.count(" of 120") for page in sheets) == 120
    assert Fraction(sum("Step " in page for page in sheets), len(sheets)) > Fraction(3, 4)


def test_a_step_tells_its_film_and_its_typed_time_but_no_footage_as_time(edition: Edition, media: Path) -> None:
    text = whole(sheet(with_step(edition, 3, minutes=Decimal("0.55")), media))
    assert "Step 3 of 11 strip 0:42-1:15 · footage only: a lower bound if the film has cuts Still" in text
    assert "Step 4 of 11 not filmed · 4 min, time typed" in text
