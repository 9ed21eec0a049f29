"""The printed sheet: what stands on it, in which order, and what it does with odd input."""

import io
import shutil
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from procbuilder.model.edition import Edition, EditionSection, FrontList, Legend, Line, Named
from procbuilder.model.fault import CannotPrint
from procbuilder.model.ledger import Balance, Ledger
from procbuilder.model.worked import Estimate
from procbuilder.publish import words
from procbuilder.publish.pdf import pdf, unprintable
from tests.publish.sample import sample_edition
from tests.publish.sheet import EPOCH, TEMPLATES, pages, sheet, solid, whole, with_step

EMPTY = Edition(
    title="", number="", revision="", status="review", why_draft="", item="", applies_to="", not_for="", author="",
    work_place="", people="", ask="", language="", intro=(), hazards=(), lists=(), tools=(), supplies=(), parts=(),
    sections=(), torques=(), ledger=Ledger(), estimate=Estimate(), closing=(), problems=(), recordings=(),
)  # fmt: skip
LONG = "Anhaengerkupplungssteckdosenhalterung" * 4


@pytest.fixture(scope="module")
def media(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("media")


@pytest.fixture(scope="module")
def edition(media: Path) -> Edition:
    return sample_edition(media)


@pytest.fixture(scope="module")
def printed(edition: Edition, media: Path) -> bytes:
    return sheet(edition, media)


@pytest.fixture(scope="module")
def text(printed: bytes) -> str:
    return whole(printed)


def _step_text(text: str, number: int) -> str:
    """What is printed for a step, from its label to the next one."""
    start = text.index(f"Step {number} of 11")
    end = text.find(f"Step {number + 1} of 11", start)
    return text[start : end if end > 0 else None]


def _facts(edition: Edition) -> Iterator[str]:
    """Every text that must be on the sheet."""
    yield from (edition.title, edition.number, edition.item, edition.applies_to, edition.not_for, edition.ask)
    for line in (*edition.tools, *edition.supplies, *edition.parts):
        yield from (line.name, line.quantity)
    for front in edition.lists:
        yield from (line.text for line in front.lines)
    for section in edition.sections:
        yield section.title
    for row in edition.torques:
        yield from (row.item, row.value, row.order, row.when, row.look_in)
    for entry in edition.ledger.entries:
        yield from (entry.item, entry.opening.value, entry.balance.value[1:], entry.reason)
    for named in edition.closing:
        yield from (named.text, *named.extra)
    for problem in edition.problems:
        yield from (str(problem.place), problem.what, problem.instead)
    for recording in edition.recordings:
        yield from (recording.name, recording.path, recording.sha256[:16], *recording.remarks)


def _step_facts(edition: Edition) -> Iterator[str]:
    for step in edition.steps:
        yield step.command
        for hazard in step.hazards:
            yield from (hazard.signal.value, hazard.hazard, hazard.consequence, hazard.avoid)
        yield from (*step.standing.protections, step.only_if, *(named.text for named in step.holds))
        if not step.reserved:
            yield from (line.text for line in (*step.tools, *step.supplies, *step.parts, *step.wear, *step.key_points))
            yield from (line.extra for line in step.key_points)
            yield from (part for named in (*step.moves, *step.checks, *step.notes) for part in (named.text, *named.extra))
            yield from (figure.caption for figure in step.figures)
            yield from (mark.label for figure in step.figures for mark in figure.legend)


def test_all_that_is_known_of_the_whole_job_is_printed(edition: Edition, text: str) -> None:
    assert [fact for fact in _facts(edition) if solid(fact) not in solid(text)] == []


def test_all_that_is_known_of_each_step_is_printed(edition: Edition, text: str) -> None:
    assert [fact for fact in _step_facts(edition) if solid(fact) not in solid(text)] == []


def test_text_that_looks_like_a_command_is_printed_as_it_is(text: str) -> None:
    assert '<script>alert(1)</script> and #import "x" and $a$' in text


def test_each_page_has_its_number_revision_status_and_what_comes_first(printed: bytes) -> None:
    sheets = pages(printed)
    assert len(sheets) == 8
    for number, page in enumerate(sheets, start=1):
        assert f"Page {number} of 8" in page
        assert f"{words.CHECK_REVISION} · P-014 · revision B · Draft" in page
        assert words.PRIORITY in page
        assert "DRAFT" in page


@pytest.mark.parametrize(
    ("status", "shown"), [("withdrawn", "WITHDRAWN"), ("review", "In review"), ("approved", "Approved")]
)
def test_each_page_tells_the_status(edition: Edition, media: Path, status: str, shown: str) -> None:
    sheets = pages(sheet(replace(edition, status=status, why_draft=""), media))
    assert [page.count("DRAFT") for page in sheets] == [0] * len(sheets)
    assert all(page.count(shown) >= 1 for page in sheets)


def test_a_draft_says_why_it_is_one(text: str) -> None:
    assert "DRAFT 2 problems stop an approval" in text


@pytest.mark.parametrize(("status", "shown"), [("draft", True), ("review", True), ("withdrawn", False)])
def test_problems_are_printed_while_they_can_be_solved(
    edition: Edition, media: Path, status: str, *, shown: bool
) -> None:
    assert ("Problems still open" in whole(sheet(replace(edition, status=status), media))) is shown


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


def test_the_four_signal_words_are_explained(text: str) -> None:
    for signal, meaning in words.SIGNAL_MEANING.items():
        assert f"{signal.value} {meaning}" in text


def test_a_missing_torque_is_a_blank_that_says_where_to_look(text: str) -> None:
    step = _step_text(text, 8)
    assert "keeper bolts: 15 N·m then 30 N·m · order: cross · when: dry threads (from D1 p. 4)" in step
    assert "hub nut · when: weight on wheels · stage 1 value source initials No value given. Look up: D1, section 3" in step
    assert f"wheel nuts value source initials No value given. {words.LOOK_UP}" in step
    assert "cap screw: 4 N·m from memory, not confirmed" in step


def test_a_torque_without_a_source_says_so(edition: Edition, media: Path) -> None:
    rows = (replace(edition.torques[3], origin=edition.torques[2].origin),)
    assert "cap screw 8 4 N·m no source" in whole(sheet(replace(edition, torques=rows), media))


def test_the_head_of_a_long_table_comes_again(edition: Edition, media: Path) -> None:
    sheets = pages(sheet(replace(edition, torques=edition.torques * 20), media))
    assert sum("What Step Value Order, condition Source Initials" in page for page in sheets) >= 4


def test_a_reserved_step_shows_no_method(text: str) -> None:
    step = _step_text(text, 9)
    assert "Stop: done by a licensed gas fitter Before you go on: HOLD POINT" in step
    assert "Secret" not in text
    assert "secret" not in text


def test_a_reserved_step_without_a_check_asks_for_the_word_of_who_did_it(edition: Edition, media: Path) -> None:
    text = whole(sheet(with_step(edition, 9, holds=()), media))
    assert "Before you go on: a licensed gas fitter has told you that it is done and safe." in text


def test_a_picture_as_found_says_what_it_is_and_from_where(text: str) -> None:
    assert f"{words.AS_FOUND} (step 5) Hub before it came off" in _step_text(text, 7)


def test_hold_points_have_room_to_sign(text: str) -> None:
    assert "must not move on the stands Checked by: the senior technician Name Signature Date, time" in text


def test_key_points_tell_why(text: str) -> None:
    assert "turn the hub a little after each push Why: a bent cap lets water in" in text


def test_the_ledger_names_what_is_open_first_with_its_moment(text: str) -> None:
    table = text[text.index("Opened and closed") :]
    assert "Not balanced: 3 of 5 things are still open, or were never opened." in table
    assert "dust cap tray 3 off step 3, strip 1:09 – Still open (0 of 1 closed)" in table
    assert "M8 bolt off step 4 step 8 Still open (1 of 2 closed)" in table
    items = ["dust cap tray", "M8 bolt off", "hub nut slackened", "wheel chock fitted", "hub off"]
    assert [table.index(item) for item in items] == sorted(table.index(item) for item in items)


def test_a_balanced_ledger_says_so(edition: Edition, media: Path) -> None:
    closed = Ledger(edition.ledger.having(Balance.CLOSED, Balance.LEFT_OPEN))
    text = whole(sheet(replace(edition, ledger=closed), media))
    assert "Balanced: everything that was opened is closed, or left open with a reason." in text


def test_the_estimate_tells_its_range_and_what_it_rests_on(text: str) -> None:
    assert "Hands-on: 0.4 h to 0.7 h, likely 0.5 h. Summed over the steps, then rounded up once." in text
    assert "A lower bound: not every step has a time of its own." in text
    assert "Waiting, not in these hours: 10 min. Stated by the technician: 1.5 h." in text
    assert "of 11 steps: 4 × time typed; 2 × footage only: a lower bound if the film has cuts; 5 × no time known." in text


def test_steps_on_a_condition_are_kept_out_of_the_count(edition: Edition, media: Path) -> None:
    steps = tuple(replace(time, extra=time.step in {"keeper", "lower"}) for time in edition.estimate.steps)
    text = whole(sheet(replace(edition, estimate=replace(edition.estimate, steps=steps)), media))
    assert "of 9 steps: 2 × time typed" in text
    assert "Steps done only on a condition, not in these hours: 2, likely 9 min in all." in text


def test_what_nobody_stated_is_said_to_be_unknown(media: Path) -> None:
    text = whole(sheet(EMPTY, media))
    assert "Procedure without a title" in text
    assert "Number not stated Item not stated Revision not stated" in text
    assert "No danger of the whole job is stated: that does not mean that there is none." in text
    assert "Tools not stated Supplies not stated Parts not stated" in text
    assert "Hands-on time is not known." in text
    assert f"{words.CHECK_REVISION} · no number · no revision · In review" in text


def test_an_explicit_none_is_said(edition: Edition, media: Path) -> None:
    lists = (FrontList("Condition", (), none=True), FrontList("Wear", (), none=False), FrontList("Tools", (), none=True))
    text = whole(sheet(replace(edition, lists=lists, tools=()), media))
    assert "Condition Wear None. not stated Tools None. Supplies" in text


def test_the_outline_has_each_section_and_each_step(edition: Edition, printed: bytes) -> None:
    def titles(outline: Any) -> Iterator[str]:
        for entry in outline:
            if isinstance(entry, list):
                yield from titles(entry)
            else:
                yield entry.title

    found = list(titles(PdfReader(io.BytesIO(printed)).outline))
    assert found[0] == edition.title
    for step in edition.steps:
        assert f"{step.number} {step.command}" in found
    assert [title for title in found if title in ("Strip", "Refit", "Tightening table", "Opened and closed", "Time")] == [
        "Strip", "Refit", "Tightening table", "Opened and closed", "Time"
    ]  # fmt: skip


def test_a_step_stays_on_one_page(edition: Edition, printed: bytes) -> None:
    sheets = pages(printed)
    for step in edition.steps:
        [page] = [page for page in sheets if f"Step {step.number} of 11" in page]
        assert f" {step.number} {step.command}" in page


def test_a_step_longer_than_a_page_goes_on_overleaf(edition: Edition, media: Path) -> None:
    tools = tuple(Line(f"tool number {number}") for number in range(150))
    text = whole(sheet(with_step(edition, 6, tools=tools), media))
    assert [tool.text for tool in tools if tool.text not in text] == []


def test_same_edition_gives_the_same_bytes(edition: Edition, media: Path, printed: bytes) -> None:
    assert sheet(edition, media) == printed
    assert pdf(edition, templates=TEMPLATES, media=media, epoch=EPOCH + 86_400) != printed


def test_long_words_stay_within_the_page(edition: Edition, media: Path) -> None:
    """The last letters of a line that runs over the margin would lie beyond the edge of the text."""
    long = replace(
        with_step(edition, 6, command=LONG, moves=(Named(LONG, LONG, (LONG,)),)),
        title=LONG,
        number=LONG,
        item=LONG,
        torques=tuple(replace(row, item=LONG, value=LONG and row.value, look_in=LONG, order=LONG) for row in edition.torques),
    )
    reader = PdfReader(io.BytesIO(sheet(long, media)))
    edges: list[float] = []
    for page in reader.pages:
        page.extract_text(visitor_text=lambda _text, _cm, matrix, _font, _size: edges.append(matrix[4]))
    assert max(edges) < (210 - 15) / 25.4 * 72
    assert solid(LONG) in solid(whole(sheet(long, media)))


def test_deep_prose_is_printed(edition: Edition, media: Path) -> None:
    deep = ("> " * 15 + "deep words", "\n".join("  " * level + f"- level {level}" for level in range(9)))
    text = whole(sheet(replace(edition, intro=deep), media))
    assert "deep words" in text
    assert all(f"level {level}" in text for level in range(9))


def test_a_link_prints_its_address(edition: Edition, media: Path) -> None:
    text = whole(sheet(replace(edition, intro=("See [the sheet](https://axle.example/d1) or [step 3](#dust-cap).",)), media))
    assert "See the sheet (https://axle.example/d1) or step 3." in text


@pytest.mark.parametrize(
    ("typed", "shown", "characters"),
    [
        ("Radnabe 车", "Radnabe □", ("车",)),
        ("spin it 😀 now", "spin it □ now", ("😀",)),
        ("bell\x07", "bell□", ("\x07",)),
        ("torque \u202e51", "torque □51", ("\u202e",)),
        ("private \ue000", "private □", ("\ue000",)),
        ("half \ud83d", "half □", ("\ud83d",)),
        ("ložisko Ω ≥ 15 µm ⌀ ½ подшипник", "ložisko Ω ≥ 15 µm ⌀ ½ подшипник", ()),
    ],
)
def test_a_character_that_no_font_has_is_shown_and_reported(
    edition: Edition, media: Path, typed: str, shown: str, characters: tuple[str, ...]
) -> None:
    odd = replace(edition, item=typed)
    text = whole(sheet(odd, media))
    assert f"Item {shown}" in text
    assert unprintable(odd) == characters
    listed = ", ".join(f"U+{ord(character):04X}" for character in characters)
    assert (f"□ stands for a character that this sheet has no letter for: {listed}" in text) is bool(characters)


def test_an_unknown_language_does_not_stop_the_sheet(edition: Edition, media: Path) -> None:
    reader = PdfReader(io.BytesIO(sheet(replace(edition, language="Klingon, mostly"), media)))
    assert reader.trailer["/Root"]["/Lang"] == "en"


def _with_picture(edition: Edition, file: str) -> Edition:
    figure = edition.steps[0].figures[0]
    return with_step(edition, 1, figures=(replace(figure, still=replace(figure.still, file=file)),))


@pytest.mark.parametrize(
    ("file", "why"),
    [
        ("gone.jpg", "the picture gone.jpg is missing"),
        ("../secret.jpg", "the picture ../secret.jpg lies outside the media folder"),
        ("broken.jpg", "failed to decode image"),
    ],
)
def test_a_picture_that_cannot_be_used_is_named(edition: Edition, media: Path, file: str, why: str) -> None:
    (media / "broken.jpg").write_bytes(b"no picture")
    (media.parent / "secret.jpg").write_bytes((media / "chock.jpg").read_bytes())
    with pytest.raises(CannotPrint) as fault:
        sheet(_with_picture(edition, file), media)
    assert why in str(fault.value)
    assert "the page and the other files are not changed" in str(fault.value)
    assert "/tmp" not in str(fault.value)


def test_a_fault_of_the_template_is_told(edition: Edition, media: Path, tmp_path: Path) -> None:
    shutil.copytree(TEMPLATES / "pdf", tmp_path / "pdf")
    (tmp_path / "pdf" / "base.typ").write_text("#let broken = ", encoding="utf-8")
    with pytest.raises(CannotPrint) as fault:
        pdf(edition, templates=tmp_path, media=media, epoch=EPOCH)
    assert str(fault.value).startswith("procedure.pdf could not be made (expected expression")


def test_many_marks_are_all_explained(edition: Edition, media: Path) -> None:
    figure = replace(edition.steps[0].figures[0], legend=tuple(Legend(n, f"mark number {n}") for n in range(1, 60)))
    text = whole(sheet(with_step(edition, 1, figures=(figure,)), media))
    assert all(f"{number} mark number {number}" in text for number in range(1, 60))


def test_a_procedure_of_many_steps_is_set(edition: Edition, media: Path) -> None:
    steps = tuple(replace(edition.steps[5], number=number, id=f"s{number}") for number in range(1, 121))
    sheets = pages(sheet(replace(edition, sections=(EditionSection("Strip", (), (), steps),)), media))
    assert sum(page.count(" of 120") for page in sheets) == 120
    assert Fraction(sum("Step " in page for page in sheets), len(sheets)) > Fraction(3, 4)
