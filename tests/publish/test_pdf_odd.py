"""The printed sheet: odd input is printed as it is, or refused with a plain reason."""

import io
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Estimate
from procbuilder.model.ledger import Ledger
from procbuilder.model.quantity import Item
from procbuilder.model.torque import Torque
from procbuilder.publish import words
from procbuilder.publish.pdf import CannotPrint, draw_codes, pdf
from tests.publish.sheet import EPOCH, TEMPLATES, sheet, solid, whole, with_step
from tests.publish.typed import typed

EMPTY = Edition(
    title="", number="", revision="", status="review", item="", applies_to="", not_for="", author="",
    work_place="", people="", ask="", language="", intro=(), hazards=(), lists=(), tools=(), supplies=(), parts=(),
    trays=(), sections=(), torques=(), ledger=Ledger(), pairs=(), estimate=Estimate(), closing=(), problems=(),
    recordings=(),
)  # fmt: skip
LONG = "Anhaengerkupplungssteckdosenhalterung" * 4


def test_text_that_looks_like_a_command_is_printed_as_it_is(text: str) -> None:
    assert '<script>alert(1)</script> and #import "x" and $a$' in text


def test_what_nobody_stated_is_said_to_be_unknown(media: Path) -> None:
    text = whole(sheet(EMPTY, media))
    assert "Procedure without a title" in text
    assert "Number not stated Item not stated Revision not stated" in text
    assert "No danger of the whole job is stated: that does not mean that there is none." in text
    assert "Tools not stated Supplies not stated Parts not stated" in text
    assert "Hands-on time is not known." in text
    assert f"{words.CHECK_REVISION} · no number · no revision · In review" in text


def test_long_words_stay_within_the_page(edition: Edition, media: Path) -> None:
    """Each piece of text would end on the paper if its letters were as narrow as 0.4 of their height."""
    rows = tuple(
        replace(row, item=Item(LONG, row.place), value=Torque(LONG if row.value else ""), look_in=LONG, order=LONG)
        for row in edition.torques
    )
    long = replace(
        with_step(edition, 6, command=LONG, moves=(typed(f"Off: {LONG} | tray: {LONG}"),)),
        title=LONG,
        number=LONG,
        item=LONG,
        torques=rows,
    )
    ends: list[float] = []

    def piece(letters: str, placed: list[float], within: list[float], _font: object, size: float) -> None:
        longest = max(len(line.strip()) for line in letters.replace("\u200b", "").split("\n"))
        if longest:
            ends.append(placed[4] + within[4] + 0.4 * size * longest)

    for page in PdfReader(io.BytesIO(sheet(long, media))).pages:
        page.extract_text(visitor_text=piece)
    assert max(ends) < 210 / 25.4 * 72
    assert solid(LONG) in solid(whole(sheet(long, media)))


def test_deep_prose_is_printed(edition: Edition, media: Path) -> None:
    deep = ("> " * 15 + "deep words", "\n".join("  " * level + f"- level {level}" for level in range(9)))
    text = whole(sheet(replace(edition, intro=deep), media))
    assert "deep words" in text
    assert all(f"level {level}" in text for level in range(9))


def test_a_link_prints_its_address(edition: Edition, media: Path) -> None:
    text = whole(
        sheet(replace(edition, intro=("See [the sheet](https://axle.example/d1) or [step 3](#dust-cap).",)), media)
    )
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
    printed = pdf(odd, templates=TEMPLATES, media=media, epoch=EPOCH)
    text = whole(printed.data)
    assert f"Item {shown}" in text
    assert printed.unprintable == characters
    listed = ", ".join(f"U+{ord(character):04X}" for character in characters)
    assert (f"□ stands for a character that this sheet has no letter for: {listed}" in text) is bool(characters)


def test_an_unknown_language_does_not_stop_the_sheet(edition: Edition, media: Path) -> None:
    reader = PdfReader(io.BytesIO(sheet(replace(edition, language="Klingon, mostly"), media)))
    assert reader.root_object["/Lang"] == "en"


def _with_picture(edition: Edition, file: str) -> Edition:
    figure = edition.steps[0].figures[0]
    return with_step(edition, 1, figures=(replace(figure, still=replace(figure.still, file=file)),))


@pytest.mark.parametrize(
    ("file", "form", "what"),
    [
        ("gone.jpg", "missing", "gone.jpg"),
        ("../secret.jpg", "outside", "../secret.jpg"),
        ("broken.jpg", "unknown", "broken.jpg"),
        ("cut.jpg", "told", "failed to decode image"),
    ],
)
def test_a_picture_that_cannot_be_used_is_named(edition: Edition, media: Path, file: str, form: str, what: str) -> None:
    (media / "broken.jpg").write_bytes(b"no picture")
    (media / "cut.jpg").write_bytes((media / "chock.jpg").read_bytes()[:20])
    (media.parent / "secret.jpg").write_bytes((media / "chock.jpg").read_bytes())
    with pytest.raises(CannotPrint) as error:
        sheet(_with_picture(edition, file), media)
    assert error.value.form == form
    assert what in error.value.what
    assert "/tmp" not in error.value.what


def test_a_fault_of_the_template_is_told(edition: Edition, media: Path, tmp_path: Path) -> None:
    shutil.copytree(TEMPLATES, tmp_path, dirs_exist_ok=True)
    (tmp_path / "pdf" / "base.typ").write_text("#let broken = ", encoding="utf-8")
    with pytest.raises(CannotPrint) as error:
        pdf(edition, templates=tmp_path, media=media, epoch=EPOCH)
    assert (error.value.form, error.value.what.split(",")[0]) == ("told", "expected expression")


@pytest.mark.parametrize(("signs", "printed"), [(300, True), (301, False), (5000, False)])
def test_an_address_too_long_for_a_code_is_not_printed(
    edition: Edition, tmp_path: Path, signs: int, printed: bool
) -> None:
    """A code holds at most 2331 bytes at level M (ISO/IEC 18004:2015, table 7: version 40)."""
    step = next(step for step in edition.steps if replace(edition, address="https://a.example/").address_of(step))
    begin, end = "https://a.example/", f"index.html#{step.id}"
    long = replace(edition, address=begin + "j" * (signs - len(begin) - len(end) - 1) + "/")
    draw_codes(long, tmp_path / "codes")
    assert (tmp_path / "codes" / f"{step.number}.svg").is_file() is printed
