"""What reading finds is facts: each of its sentences is reached, and said in English and in German."""

from collections.abc import Iterable

import pytest

from procbuilder.model.problem import Problem, Severity
from procbuilder.publish.language import ENGLISH, language_of
from procbuilder.publish.wording import fields, front_matter, headings, practice, step_lists, subtitles, workshop
from procbuilder.publish.wording.gaps import say
from procbuilder.publish.wording.problems import said
from procbuilder.read.practice import EXPORT, read_practice
from procbuilder.read.procedure import read_text
from procbuilder.read.steplist import read_step_list
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import TextFile
from procbuilder.read.workshop import read_workshop

GERMAN = language_of("de-DE")
BY_LATER_STAGES = {
    ("step-list", "no-recording"), ("step-list", "which-recording"), ("practice-log", "other-procedure"),
    ("practice-log", "near-step"), ("practice-log", "no-step"), ("practice-log", "no-step-of-many"),
    ("practice-log", "to-come"),
}  # fmt: skip
"""Forms that only making a procedure and adding times reach; their tests stand in ``tests/pipeline``."""

FRONT = (
    "number: 1", "---\nnumber: &n 1\n---", "---\nnumber: *n\n---", "---\nnumber: !!str 1\n---",
    "---\nitem: [[[[a]]]]\n---", "---\nitem: a: b\n---", "---\nitem: [a\n---", "---\njust text\n---",
    "---\nnumber: 1\nnumber: 2\n---", "---\nnummer: 1\n---", "---\nxyz: 1\n---", "---\nformat: 2\n---",
    "---\nstatus: done\n---", "---\nstatus: approved\n---", "---\nitem: [a, b]\n---",
    "---\nrecordings: {a: [x, y]}\n---", "---\nrecordings: [{a: b}]\n---", "---\nrecordings: {Strip Film: a.mp4}\n---",
    "---\nnumber: 1", f"---\nitem: {'x' * 65_000}\n---", "---\nitem: \x07\n---", "---\n\t\n---",
    "---\n" + "[\n" * 40 + "---", '---\nitem: "\\ud83d"\n---',
)  # fmt: skip
STEPS = (
    "# A\n# B", "# A\n#### C", "### 0:42 Prise", "### Prise 0:42-1:15 it", "### 0:42-1:15", "### Lift {#Big One}",
    "### strip 0:90-1:15 Lift", "### Lift {#a}\n\n### Lower {#a}",
    "---\nrecordings: [a.mp4, b.mp4]\n---\n### 0:01-0:02 Lift", "- Hide: 0:01 0.1,0.1,0.2,0.2\n", "a\u200bb",
    "### 0:01-0:02: Lift", "### 0.42-0:58 Lift", "### 42-58 Lift", "### (0:42) Lift",
)  # fmt: skip
FIELDS = (
    "Tol: bar", "x | y", "Mark: ring | 0.5,0.5", "Torque: nut", "Tool: bar (said strip 3:92)",
    "Torque: a | 80 N·m | x | ordr: y",
    "Torque: a | 80 N·m | from: D1 | from: D2", "Hold: a | b | c", "Torque: a | 80 N·m | D1 | p. 4",
    "Supply: oil, 0,5 l", "Time: soon", "Time: 3/2/1", "Wait: 5 | glue | overlaps: some", "Skip: now",
    "Picture: later", "Picture: 1:09",
    "Picture: a.jpg | x | done\n  - Mark: star | 0.1,0.1,0.2,0.2", "Picture: a.jpg | x | blurred",
    "Picture: a.jpg\n  - Mark: box | 2", "Picture: a.jpg\n  - Mark: ring | 2", "Picture: a.jpg\n  - Hide: 2",
    "Hide: everything", "Tool: bar\n  - Note: below", "Skip: 0:90-1:15", "Skip: 0:10-0:15",
)  # fmt: skip
BELOW = ["---\nrecordings: [a.mp4, b.mp4]\n---\n# T\n\n## S\n\n### Lift\n\n- " + field for field in FIELDS]
LISTS = (
    ("a.csv", "end,step\n1,x"), ("a.csv", "start,end\n1,2"), ("a.csv", 'start,step\n1,"x\n'),
    ("a.csv", "start,step\nx,y"),
    ("a.csv", "start,end,step\n1,x,y"), ("a.csv", "start,step\n1,"), ("a.txt", "0:90 Prise"),
    ("a.txt", "0:42"),
    ("a.txt", "Prise"), ("a.txt", "0:42-0:42 Prise"), ("a.txt", "0:42-0:12 Prise"), ("a.csv", "start,step\n,y"),
)  # fmt: skip
CUES = (
    ("a.vtt", "00:00:01.000 --> 00:00:02.000\nx"), ("a.srt", "1\nwords"), ("a.vtt", "WEBVTT\n\n00:01 words"),
    ("a.srt", "1\n00:00:01,5 --> 00:00:02,000\nx"), ("a.vtt", "WEBVTT\n\n0:1 --> 0:2\nx"),
    ("a.srt", "1\n00:00:02,000 --> 00:00:01,000\nx"), ("a.srt", "1\n00:00:01,000 --> 00:00:01,000\nx"),
    ("a.srt", "1\n00:00:01,000 --> 00:00:02,000\n"),
)  # fmt: skip
_TOP = "who,when,step,minutes\n"
TIMES = (
    "a,b\n", f'{_TOP}ab,2026-05-04,"{"x" * 140_000}",4', f"{_TOP}ab,4", "{", '{"format": "x", "rows": []}',
    f'{{"format": "{EXPORT}", "rows": [{{"who": "ab"}}]}}', f"{_TOP}a b c,2026-05-04,lift,4", f"{_TOP}ab,today,lift,4",
    f"{_TOP}ab,2026-05-04,Lift it,4", f"{_TOP}ab,2026-05-04,lift,0", f"{_TOP}ab,2026-05-04,,4",
)  # fmt: skip
_DANGER = '[[danger]]\nname = "x"\nwords = ["x"]\nsignal = "CAUTION"\nhazard = "x"\nconsequence = "x"\navoid = "x"\n'
WORKSHOP = (
    "x", '[[condition]]\nfactor = 2\nfrom = "x"', '[[condition]]\nname = "x"\nfrom = "x"',
    '[[condition]]\nname = "x"\nfactor = 2', "[allowance]\nshare = 2", _DANGER.replace('words = ["x"]', "words = []"),
    _DANGER.replace('avoid = "x"', ""), _DANGER.replace('avoid = "x"', "avoid = 1"), f"{_DANGER}other = 1",
    _DANGER.replace("CAUTION", "BEWARE"), '[[qualification]]\nname = "x"', "[nicknames]\nx = 1", "[objects]\nx = 1",
    "[[operation]]\nverbs = []", "[labour]\nrate = 0", '[print]\npaper = "a9"', '[print]\naddress = "x"',
    '[print]\naddress = "https://ab@x"', f'[print]\naddress = "https://{"x" * 300}"',
)  # fmt: skip


def found() -> list[Problem]:
    """All that reading finds in texts that are wrong in many ways."""
    problems: list[Iterable[Problem]] = [read_text(text)[1] for text in (*FRONT, *STEPS, *BELOW)]
    problems += [read_step_list(TextFile(name, text))[1] for name, text in LISTS]
    problems += [read_subtitles(TextFile(name, text))[1] for name, text in CUES]
    problems += [read_practice(TextFile("times.csv", text)).problems for text in TIMES]
    problems += [read_workshop(TextFile("workshop.toml", text))[1] for text in WORKSHOP]
    return [problem for some in problems for problem in some]


def test_every_sentence_about_a_text_is_reached_and_said_in_both_languages() -> None:
    problems = found()
    subjects = (fields, front_matter, headings, practice, step_lists, subtitles, workshop)
    patterns = {rule: forms for subject in subjects for rule, forms in subject.PATTERNS.items()}
    reached = {(problem.rule, problem.form) for problem in problems if problem.rule in patterns}
    assert reached == {(rule, form) for rule, forms in patterns.items() for form in forms} - BY_LATER_STAGES
    for problem in problems:
        assert "None" not in f"{said(problem)}"
        assert said(problem).what != said(problem, GERMAN).what


def test_what_is_asked_of_a_text_can_be_answered() -> None:
    """A rough list is read once and not kept: there is nothing to answer in."""
    silent = [p for p in found() if p.severity is not Severity.STOP and not p.subject and p.rule != "step-list"]
    assert silent == []


@pytest.mark.parametrize(
    ("text", "german"),
    [
        ("---\nnummer: 1\n---\n# T", "nummer ist kein Schlüssel des Dateikopfs – gemeint ist number?"),
        ("---\nitem: a: b\n---\n# T",
         'ein Doppelpunkt in einem Wert braucht Anführungszeichen – schreiben: item: "a: b"'),
        ("# T\n\n### 0:42 Prise", "der Schritt hat einen Beginn (0:42), aber kein Ende – "
         "das Ende dahinter schreiben: 0:42-Ende"),
        ("# T\n\n### Lift\n\n- Torque: nut",
         "Torque: Wert fehlt – schreiben: - Torque: Gegenstand | Wert | wo"),
        ("# T\n\n### Lift\n\n- Hold: a | b | c",
         r"Hold hat einen Teil zu viel: c – sich halten an was | wer; ein Strich als Zeichen ist \|"),
        ("---\nrecordings: [a.mp4, b.mp4]\n---\n# T\n\n### 0:01-0:02 Lift",
         "0:01-0:02 sagt nicht, in welcher Aufnahme – ihren Namen vor die Zeit setzen: a oder b"),
    ],
)  # fmt: skip
def test_german_sentences_about_a_procedure(text: str, german: str) -> None:
    problems = read_text(text)[1]
    assert [str(said(problem, GERMAN)) for problem in problems] == [german]


def test_a_line_that_is_proposed_mends_what_is_wrong() -> None:
    mended = 0
    for text in (*FRONT, *STEPS, *BELOW):
        for problem in read_text(text)[1]:
            for line in (one for one in problem.lines if one.place and one.replaces):
                assert line.place
                lines = text.split("\n")
                lines[line.place.line - 1] = say(line, ENGLISH)
                left = read_text("\n".join(lines))[1]
                assert (problem.rule, problem.form) not in {(one.rule, one.form) for one in left}, text
                mended += 1
    assert mended == 7


def test_a_field_that_cannot_be_read_is_named_as_it_is_typed() -> None:
    (problem,) = read_text("# T\n\n### Lift\n\n- Time: soon (from memory)")[1]
    assert (problem.rule, problem.form, dict(problem.facts)) == ("field", "minutes", {"text": "soon"})
    assert problem.question == "field: Time: soon (from memory)"
