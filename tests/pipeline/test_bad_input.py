"""Bad text: one clear line, exit code 1, and the old output whole."""

from pathlib import Path

import pytest

from procbuilder.model.fault import NoText
from procbuilder.pipeline.build import build
from procbuilder.pipeline.check import check
from procbuilder.publish.wording.commands import MESSAGES
from tests.pipeline.bad import FRONT, TITLE, run_build
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults, title
from tests.refused import refused

AGAIN = " – save the file as UTF-8 text and try again"


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"", "procedure.md: the file is empty – write its title first: # Thing – what is done to it"),
        (b"\xef\xbb\xbf\n \n", "procedure.md: the file is empty – write its title first: # Thing – what is done to it"),
        (WHOLE.encode().replace(b"keep it", b"keep\0it"),
         f"procedure.md:25: the file holds a NUL byte, so it is no text file{AGAIN}"),
        (WHOLE.encode().replace(b"keep it", b"keep \xf6 it"),
         f"procedure.md:25: a character is not UTF-8{AGAIN}"),
        (WHOLE.encode("utf-16"),
         f"procedure.md:1: the file holds a NUL byte, so it is no text file{AGAIN}"),
    ],
    ids=["empty", "blank", "nul", "latin-1", "utf-16"],
)  # fmt: skip
def test_a_text_that_cannot_be_read_is_one_line_and_the_old_output_stays(home: Path, data: bytes, message: str) -> None:
    build(home)
    (home / "procedure.md").write_bytes(data)
    assert run_build(home) == (1, [message])
    assert (faults(home / "out"), title(home / "out")) == ([], TITLE)


def test_a_folder_in_the_place_of_the_text_is_one_line(home: Path) -> None:
    (home / "procedure.md").unlink()
    (home / "procedure.md").mkdir()
    code, lines = run_build(home)
    assert (code, len(lines)) == (1, 1)
    assert "there is no procedure.md in it" in lines[0]


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("item: pillar drill", "item: [pillar drill",
         "6: stop: cannot be read: item: [pillar drill – write one key and one value, such as: number: P-014"),
        ("item: pillar drill", 'item: "pillar drill',
         '6: stop: cannot be read: item: "pillar drill – write one key and one value, such as: number: P-014'),
        ("item: pillar drill", "item: drill: pillar",
         '6: stop: a colon inside a value needs quotes – write: item: "drill: pillar"'),
        ("item: pillar drill", "item: [[[[x]]]]",
         "6: stop: a list within lists within lists is not read in front matter – write the value out as plain text"),
        ("item: pillar drill", "item: !!python/object:os.system x",
         "6: stop: the tag tag:yaml.org,2002:python/object:os.system is not read in front matter – "
         "write the value out as plain text"),
        ("item: pillar drill", "item: &a [x, x]",
         "6: stop: the anchor &a is not read in front matter – write the value out as plain text"),
        ("item: pillar drill", "item: *a",
         "6: stop: the alias *a is not read in front matter – write the value out as plain text"),
        ("item: pillar drill", "item: pillar drill\nitem: bench drill",
         "7: stop: item stands twice, first in line 6 – keep one of the two lines"),
        ("item: pillar drill", "item: pillar\tdrill\x07",
         "2: stop: the front matter holds characters that YAML does not allow – type it anew"),
    ],
)  # fmt: skip
def test_front_matter_with_one_fault_is_told_in_its_line(home: Path, old: str, new: str, message: str) -> None:
    (home / "procedure.md").write_text(WHOLE.replace(old, new), encoding="utf-8")
    code, lines = run_build(home)
    assert (code, lines[0]) == (1, f"procedure.md:{message}")
    assert len(lines) == 1 or "YAML" in message
    assert faults(home / "out") == []


def test_without_front_matter_it_is_a_draft_that_says_what_is_missing(home: Path) -> None:
    text = WHOLE.removeprefix(FRONT).replace("0:00.500-0:02 ", "").replace("0:02-0:03.500 ", "")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    code, lines = run_build(home)
    assert code == 0
    assert [line.partition(" – ")[0] for line in lines] == [
        "procedure.md:1: advice: the procedure has no author",
        MESSAGES["questions"],
        "procedure.md:1: ask: the procedure has no number",
        "procedure.md:1: ask: the procedure has no revision",
    ]


def test_an_empty_text_stops_a_check_too(home: Path) -> None:
    (home / "procedure.md").write_bytes(b"")
    with refused(NoText, "the file is empty"):
        check(home)
