"""Any character of Unicode in any field: the page and both PDFs are made, and what the PDFs cannot show is told."""

import io
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from procbuilder.pipeline.build import build
from procbuilder.publish import pdf as printing
from procbuilder.publish.pdf import CannotPrint
from procbuilder.publish.printable import SIGN
from procbuilder.publish.wording.problems import said
from procbuilder.report.results import outcome
from tests.pipeline.every_field import every_field, fixed

WORDS = st.lists(
    st.text(st.characters(codec="utf-8", exclude_characters="\0|"), min_size=1, max_size=4),
    min_size=40, max_size=40,
)  # fmt: skip
"""Words of characters that a text file can hold; the bar would begin another part of a field."""


@settings(max_examples=6, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(WORDS)
def test_any_text_in_any_field_gives_page_and_pdf(words: list[str]) -> None:
    places: dict[tuple[str, str], str] = {}

    def word(name: str, part: str) -> str:
        return places.setdefault((name, part), f"w {words[len(places) % len(words)]}")

    with TemporaryDirectory() as name:
        home = Path(name)
        (home / "procedure.md").write_text(every_field(fixed(word)), encoding="utf-8")
        built = build(home)
        assert built.page.read_bytes().endswith(b"</html>\n")
        shown = [PdfReader(io.BytesIO((built.out / name).read_bytes())) for name in ("procedure.pdf", "sheets.pdf")]
        assert [problem for problem in built.problems if problem.rule == "not-printed"] == []
        boxes = SIGN in "".join(page.extract_text() for reader in shown for page in reader.pages)
        told = [line for line in outcome(built) if "as an empty box" in line]
        assert bool(told) is bool(built.unprintable)
        assert bool(told) or not boxes or any(SIGN in word for word in words)


def test_a_character_that_no_typeface_has_is_told_with_its_step(tmp_path: Path) -> None:
    """Each part of each field has a sign of its own from the Unified CJK Ideographs, which the typeface lacks."""
    signs: dict[tuple[str, str], str] = {}

    def word(name: str, part: str) -> str:
        return f"{part} {signs.setdefault((name, part), chr(0x4E00 + len(signs)))}"

    (tmp_path / "procedure.md").write_text(every_field(fixed(word)), encoding="utf-8")
    built = build(tmp_path)
    assert built.print
    told = {line.split(" as an empty")[0] for line in outcome(built) if "as an empty box" in line}
    where = {sign: line.split("the PDF shows ")[0] for line in told for sign in line.split("shows ")[1].split()}
    fields = ("Off", "item"), ("Torque", "item"), ("Supply", "what"), ("Part", "what"), ("Included", "what")
    assert {where[signs[key]] for key in (*fields, ("Not included", "what"), ("If", "condition"))} == {"step 1: "}
    assert where[signs["title", ""]] == where[signs["front", "item"]] == ""


def test_a_pdf_that_cannot_be_set_does_not_withhold_the_page(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The one from before is gone, since it would say something else than the page; the next build makes it anew."""
    assert build(home).print
    text = (home / "procedure.md").read_text(encoding="utf-8")
    (home / "procedure.md").write_text(text.replace("Lift off", "Take away"), encoding="utf-8")

    def fails(*_args: Any, **_named: Any) -> Any:
        raise CannotPrint("told", "out of paper")

    with monkeypatch.context() as broken:
        broken.setattr(printing, "pdf", fails)
        built = build(home)
    told = [said(problem) for problem in built.problems if problem.rule == "not-printed"]
    assert [str(one) for one in told] == [
        "procedure.pdf could not be made (out of paper) – "
        "the page is made; work from it, and from no older print, until this is settled"
    ]
    assert "Take away" in built.page.read_text(encoding="utf-8")
    assert built.print is None
    assert not [line for line in outcome(built) if line.startswith("PDF:")]
    assert build(home).print
