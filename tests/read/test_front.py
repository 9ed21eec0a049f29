"""Front matter: text as typed, faults with their line, no YAML tricks."""

import pytest

from procbuilder.publish.wording.problems import line
from procbuilder.read.front import read_front


def front(*lines: str) -> tuple[dict[str, str], list[str]]:
    read, problems = read_front(["---", *lines, "---", "# Title"], "procedure.md")
    return dict(read.values), [line(problem) for problem in problems]


@pytest.mark.parametrize(
    ("line", "key", "value"),
    [
        ("number: 014", "number", "014"),
        ("revision: 1.10", "revision", "1.10"),
        ("stated time: 1:15", "stated time", "1:15"),
        ("people: yes", "people", "yes"),
        ("people: 0x10", "people", "0x10"),
        ("number: ~", "number", "~"),
        ("number:", "number", ""),
        ('item: "Trailer: unbraked"', "item", "Trailer: unbraked"),
        ("item: 'it''s'", "item", "it's"),
        ("item: 25 mm stub axle, four-stud hub", "item", "25 mm stub axle, four-stud hub"),
        ("author: A. N. Other # the senior", "author", "A. N. Other"),
    ],
)
def test_every_scalar_stays_the_text_that_was_typed(line: str, key: str, value: str) -> None:
    values, problems = front(line)
    assert (values[key], problems) == (value, [])


@pytest.mark.parametrize(
    ("lines", "names"),
    [
        (["recordings: films/Hub Strip.MP4"], [("hub-strip", "films/Hub Strip.MP4")]),
        (["recordings: [a.mp4, b.mp4]"], [("a", "a.mp4"), ("b", "b.mp4")]),
        (["recordings:", "  - a.mp4", "  - 2.mp4"], [("a", "a.mp4"), ("r2", "2.mp4")]),
        (["recordings: {strip: a.mp4, refit: b.mp4}"], [("strip", "a.mp4"), ("refit", "b.mp4")]),
        (["recordings:", "  strip: a.mp4"], [("strip", "a.mp4")]),
    ],
)
def test_recordings_as_path_list_or_names(lines: list[str], names: list[tuple[str, str]]) -> None:
    read, problems = read_front(["---", *lines, "---"], "procedure.md")
    assert [(recording.name, recording.path) for recording in read.recordings] == names
    assert problems == ()


def test_narration_without_names_follows_the_order_of_the_recordings() -> None:
    lines = ["---", "recordings: {strip: a.mp4, refit: b.mp4}", "narration: [a.srt, b.srt]", "---"]
    read, _ = read_front(lines, "procedure.md")
    assert [(file.name, file.path) for file in read.narration] == [("strip", "a.srt"), ("refit", "b.srt")]


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        (["item: Trailer: unbraked"],
         'procedure.md:2: a colon inside a value needs quotes – write: item: "Trailer: unbraked"'),
        (["number: &n P-014"],
         "procedure.md:2: the anchor &n is not read in front matter – write the value out as plain text"),
        (["number: !!str P-014"],
         "procedure.md:2: the tag tag:yaml.org,2002:str is not read in front matter – "
         "write the value out as plain text"),
        (["number: 1", "number: 2"],
         "procedure.md:3: number stands twice, first in line 2 – keep one of the two lines"),
        (["nummer: 1"], "procedure.md:2: nummer is no key of the front matter – did you mean number?"),
        (["format: 2"], "procedure.md:2: format 2 is not known – this procbuilder reads format: 1"),
        (["status: approved"], "procedure.md:2: approved is no status that can be typed – "
         "write draft, review or withdrawn; approval is given with: procbuilder approve"),
        (["status: done"], "procedure.md:2: done is no status that can be typed – write draft, review or withdrawn"),
        (["item: [a, b]"], "procedure.md:2: item takes one value, not a list – write: item: text"),
        (["item: [a"],
         "procedure.md:2: cannot be read: item: [a – write one key and one value, such as: number: P-014"),
        (["recordings: {Strip Film: a.mp4}"],
         "procedure.md:2: Strip Film cannot name a recording – write small letters, digits, - or _: strip-film"),
        (["just text"],
         "procedure.md:2: the front matter is no list of keys and values – write lines such as: number: P-014"),
    ],
)  # fmt: skip
def test_one_fault_gives_one_line_with_what_to_write_instead(lines: list[str], message: str) -> None:
    assert front(*lines)[1] == [message]


def test_a_faulty_line_does_not_hide_the_others() -> None:
    values, problems = front("item: Trailer: unbraked", "number: &a P-1", "author: x: y", "revision: B")
    assert values == {"item": "Trailer: unbraked", "author": "x: y", "revision": "B"}
    assert [problem.split(":")[1] for problem in problems] == ["2", "3", "4"]


def test_an_alias_is_refused_before_it_is_followed() -> None:
    bomb = ["number: [x, x]", *(f"k{n}: [*a, *a]" for n in range(3))]
    assert any("the alias *a" in problem for problem in front(*bomb)[1])


def test_front_matter_over_64_kb_is_refused() -> None:
    values, problems = front(f"item: {'x' * 64_001}")
    assert values == {}
    assert problems == [
        "procedure.md:1: the front matter is longer than 64 kB – keep only the keys of the format in it"
    ]


def test_front_matter_without_an_end_is_reported() -> None:
    read, problems = read_front(["---", "number: 1", "# Title"], "procedure.md")
    assert read.values == ()
    assert [line(p) for p in problems] == [
        "procedure.md:1: the front matter has no end – put a line --- below its last line"
    ]


@pytest.mark.parametrize("escape", ["\\ud83d", "\\u0000"])
def test_an_escape_that_is_no_character_is_refused(escape: str) -> None:
    """Surrogates stand for half a character in UTF-16 alone (Unicode 16.0, 3.9, D71 ff.); no file can hold one."""
    found, problems = front("number: P-1", f'item: "hub {escape}"', "author: ab")
    assert found == {"number": "P-1", "author": "ab"}
    assert problems == ["procedure.md:3: an escape in this line is no character – type the character itself"]
