"""Line edits leave every other byte as it was."""

import pytest

from procbuilder.read.edits import add_ids, add_line, change_field
from procbuilder.read.procedure import read_text

SOURCE = (
    "\ufeff---\nnumber:   014\n---\n#  Hub – bearings  \n\n## Strip\n\n### 0:42-1:15   Prise off the cap\n"
    "\n-   oft dust\n- Off:   dust cap   \n\tand ring\n### Turn {#turn}\n* odd   list"
)
ENDS = pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])


def _bytes(end: str) -> bytes:
    return SOURCE.replace("\n", end).encode()


@ENDS
def test_adding_ids_changes_only_the_heading_without_one(end: str) -> None:
    data = _bytes(end)
    procedure, _ = read_text(data.decode())
    edited = add_ids(data, procedure.steps)
    assert edited == data.replace(b"Prise off the cap", b"Prise off the cap {#prise-off-the-cap}")
    assert add_ids(edited, read_text(edited.decode())[0].steps) == edited


@ENDS
def test_changing_a_field_changes_only_its_value(end: str) -> None:
    data = _bytes(end)
    entry = read_text(data.decode())[0].steps[0].fields[0]
    edited = change_field(data, entry, "cap | tray: 2")
    assert edited == data.replace(b"- Off:   dust cap   ", b"- Off: cap | tray: 2")


def test_a_field_that_moved_is_not_changed() -> None:
    entry = read_text(SOURCE)[0].steps[0].fields[0]
    with pytest.raises(ValueError, match="line 11 is no longer Off"):
        change_field(b"\n" + SOURCE.encode(), entry, "cap")


def test_a_value_of_two_lines_is_refused() -> None:
    entry = read_text(SOURCE)[0].steps[0].fields[0]
    with pytest.raises(ValueError, match="a value is one line"):
        change_field(SOURCE.encode(), entry, "cap\n### Step")


@pytest.mark.parametrize(
    ("heading", "edited"),
    [
        (b"### Turn ###  ", b"### Turn {#turn} ###  "),
        (b"### Turn it#", b"### Turn it# {#turn-it}"),
        (b"###", b"### {#step}"),
        (b"### Turn {#Turn It}", b"### Turn {#Turn It}"),
    ],
)
def test_an_id_stands_before_closing_signs_and_a_faulty_one_is_left(heading: bytes, edited: bytes) -> None:
    data = b"# T\n\n" + heading + b"\n"
    assert add_ids(data, read_text(data.decode())[0].steps) == b"# T\n\n" + edited + b"\n"


def test_an_id_that_stands_twice_is_left_for_the_technician() -> None:
    data = b"# T\n\n### Turn {#a}\n\n### Lift {#a}\n"
    assert add_ids(data, read_text(data.decode())[0].steps) == data


def test_a_new_line_among_mixed_line_ends_joins_no_others() -> None:
    assert add_line(b"a\rb\n\nc", 2, "new") == b"a\rb\nnew\n\nc"


@ENDS
def test_a_new_line_takes_the_line_end_of_the_file(end: str) -> None:
    data = _bytes(end)
    assert add_line(data, 12, "- Tool: bar").split(end.encode())[12] == b"- Tool: bar"
    assert add_line(data, 14, "- Tool: bar") == data + end.encode() + b"- Tool: bar"
    assert add_line(b"", 0, "# Title") == b"# Title\n"
