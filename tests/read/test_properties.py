"""What holds for any text: nothing raises, what was written is read back, edits keep every other byte."""

import re
from fractions import Fraction

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, ListedStep, NamedFile
from procbuilder.publish.captions import readable, webvtt
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.wording.drafts import draft_texts
from procbuilder.read.compose import compose
from procbuilder.read.edits import add_ids, add_line, change_field
from procbuilder.read.front import read_front
from procbuilder.read.procedure import read_text
from procbuilder.read.steplist import read_step_list
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import TextFile

TEXTS = draft_texts(ENGLISH)
HERE = Place("procedure.md", 1)
FILMS = [NamedFile("strip", "recordings/strip.mp4", HERE), NamedFile("refit", "recordings/refit.mp4", HERE)]

bounded = settings(
    max_examples=150, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck)
)

SCRAPS = st.sampled_from(
    ["---\n", "# ", "## ", "### ", "- Off: ", "- Torque: ", "- Time: ", "- Picture: 0:01", "  - Mark: ring", " | ",
     "0:42-1:15 ", "1:02:15.250", "99:99", "strip ", "{#id}", "{#", "}", "\n", "\r\n", "\r", "\t", "\0", "\ufeff", ";",
     "WEBVTT\n\n", "00:00:01,000 --> 00:00:02,000\n", "00:01.000 --> 00:02.000\n", " --> ", "start,end,step\n", '"',
     "'", ",", "\u2028", "&a ", "*a ", "!!x ", "[", "{", ": ", "recordings: ", "> ", "```", "~~~", "(said strip 0:44)",
     "1/2", "٣", "²", "<b>", "&#0;", "\n### Turn {#id}\n\n- Off: cap\n", "\r\n### Lift\r\n\r\n- On: cap\r\n"]
)  # fmt: skip
"""Pieces of every format that is read, right and wrong."""
ANY_TEXT = st.lists(SCRAPS | st.text(max_size=8), max_size=25).map("".join)
LINES = st.lists(st.lists(SCRAPS | st.text(max_size=5), max_size=4).map("".join), max_size=12)
WORDS = st.lists(st.from_regex(r"[a-z][a-z0-9,']{0,8}", fullmatch=True), min_size=1, max_size=6).map(" ".join)
THOUSANDTHS = st.integers(0, 20_000_000)


def _seconds(thousandths: int) -> Fraction:
    return Fraction(thousandths, 1000)


@st.composite
def listed_steps(draw: st.DrawFn) -> ListedStep:
    start = draw(THOUSANDTHS)
    length = draw(st.integers(1, 600_000))
    name = draw(st.sampled_from(["strip", "refit"]))
    return ListedStep(HERE, draw(WORDS), _seconds(start), _seconds(start + length), name)


@st.composite
def cues(draw: st.DrawFn) -> Cue:
    start, length = draw(THOUSANDTHS), draw(st.integers(1, 60_000))
    alphabet = st.characters(codec="utf-8", exclude_categories=["C", "Z"])
    word = st.text(alphabet, min_size=1, max_size=6) | st.sampled_from(["-->", "<b>", "&amp;", "NOTE", "WEBVTT", "1"])
    line = st.lists(word, min_size=1, max_size=4).map(" ".join)
    text = "\n".join(draw(st.lists(line, min_size=1, max_size=3)))
    return Cue(HERE, _seconds(start), _seconds(start + length), text)


@bounded
@given(st.lists(listed_steps(), min_size=1, max_size=8))
def test_a_composed_procedure_is_read_back_with_the_same_steps(steps: list[ListedStep]) -> None:
    text = compose("Hub", steps, TEXTS, recordings=FILMS, durations={})
    procedure, problems = read_text(text)
    assert [problem for problem in problems if problem.rule != "field"] == []
    read = [
        (step.command, *((span.recording, span.start, span.end) for span in step.spans)) for step in procedure.steps
    ]
    written = [(step.text[0].upper() + step.text[1:], (step.recording, step.start, step.end)) for step in steps]
    assert read == written
    assert len({step.id for step in procedure.steps}) == len(steps)
    assert all(step.id_typed for step in procedure.steps)


@bounded
@given(st.lists(cues(), max_size=8))
def test_published_captions_are_read_back_as_the_same_cues(written: list[Cue]) -> None:
    """As they are published: in pieces that are long enough to be read. Times are written to the millisecond."""
    read, problems = read_subtitles(TextFile("a.vtt", webvtt(written)))
    assert problems == ()
    shown = readable(written)
    assert [cue.text for cue in read] == [cue.text for cue in shown]
    for found, cue in zip(read, shown, strict=True):
        assert abs(found.start - cue.start) <= Fraction(1, 1000)
        assert abs(found.end - cue.end) <= Fraction(1, 1000)
    words = " ".join(cue.text for cue in sorted(written, key=lambda cue: (cue.start, cue.end)))
    assert " ".join(cue.text for cue in read).split() == words.split()


@bounded
@given(ANY_TEXT)
@example("# T\n\n### Turn {#id}\n\n### Lift {#id}\n\n### Turn {#id-2}\n")
def test_any_text_gives_a_procedure_whose_steps_have_ids_of_their_own(text: str) -> None:
    procedure, _ = read_text(text)
    ids = [step.id for step in procedure.steps]
    assert len(set(ids)) == len(ids)
    assert all(re.fullmatch(r"[a-z0-9-]+", name) for name in ids)


@bounded
@given(ANY_TEXT, st.sampled_from(["txt", "csv", "tsv", "srt", "vtt"]))
def test_any_text_is_read_as_a_step_list(text: str, suffix: str) -> None:
    steps, problems = read_step_list(TextFile(f"list.{suffix}", text))
    lines = [step.place.line for step in steps] + [problem.place.line for problem in problems]
    assert all(1 <= line <= text.count("\n") + 1 for line in lines)


@bounded
@given(ANY_TEXT, st.sampled_from(["srt", "vtt"]), st.booleans())
def test_any_text_is_read_as_subtitles(text: str, suffix: str, begun: bool) -> None:
    told = "WEBVTT\n\n" * begun + text
    found, problems = read_subtitles(TextFile(f"a.{suffix}", told))
    lines = [cue.place.line for cue in found] + [problem.place.line for problem in problems]
    assert all(1 <= line <= told.count("\n") + 1 for line in lines)


@bounded
@given(LINES, st.booleans())
def test_any_lines_are_read_as_front_matter(lines: list[str], fenced: bool) -> None:
    told = ["---", *lines, "---"] if fenced else lines
    front, problems = read_front(told, "procedure.md")
    assert all(1 <= problem.place.line <= len(told) for problem in problems)
    assert all(isinstance(recording.path, str) for recording in front.recordings)


def _lines(data: bytes) -> list[bytes]:
    return re.split(rb"(?<=\n)|(?<=\r)(?!\n)", data)


@bounded
@given(ANY_TEXT)
def test_adding_ids_changes_only_headings_and_only_adds(text: str) -> None:
    before = text.encode()
    procedure, _ = read_text(text)
    headings = {step.place.line - 1 for step in procedure.steps if not step.id_typed}
    old, new = _lines(before), _lines(add_ids(before, procedure.steps))
    assert len(old) == len(new)
    changed = [at for at, (one, other) in enumerate(zip(old, new, strict=True)) if one != other]
    assert set(changed) <= headings
    assert all(
        re.sub(rb" \{#[a-z0-9-]+\}", b"", new[at]) == re.sub(rb" \{#[a-z0-9-]+\}", b"", old[at]) for at in changed
    )


@bounded
@given(ANY_TEXT, WORDS)
def test_changing_a_field_changes_only_its_line(text: str, value: str) -> None:
    before = text.encode()
    procedure, _ = read_text(text)
    for field in [*procedure.fields, *(field for step in procedure.steps for field in step.fields)]:
        old, new = _lines(before), _lines(change_field(before, field, value))
        at = field.place.line - 1
        assert (new[:at], new[at + 1 :]) == (old[:at], old[at + 1 :])
        end = old[at][len(old[at].rstrip(b"\r\n")) :]
        assert new[at].endswith(b": " + value.encode() + end)


@bounded
@given(ANY_TEXT, WORDS, st.data())
def test_adding_a_line_keeps_every_other_one(text: str, line: str, data: st.DataObject) -> None:
    before = text.encode()
    old = [each for each in _lines(before) if each]
    after = data.draw(st.integers(0, len(old)))
    new = add_line(before, after, line)
    kept = [each for each in _lines(new) if each]
    assert kept[after].rstrip(b"\r\n") == line.encode()
    rest = kept[:after] + kept[after + 1 :]
    assert [each.rstrip(b"\r\n") for each in rest] == [each.rstrip(b"\r\n") for each in old]
