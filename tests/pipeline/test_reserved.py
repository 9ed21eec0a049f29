"""Steps reserved by law: what everybody's edition leaves out, and who gets it."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from procbuilder.model.fault import NotQualified
from procbuilder.pipeline.build import Options, build
from procbuilder.pipeline.check import check
from procbuilder.publish.speaker import spoken
from procbuilder.publish.wording.problems import said
from tests.refused import refused

Make = Callable[[str], Path]

TEXT = """\
---
format: 1
number: P-9
revision: A
author: demo
recordings: {strip: recordings/strip.mp4}
narration: {strip: strip.srt}
---
# Hybrid car – renew the inverter hose

## Before you start

- Condition: key away
- Tool: 4 mm hexagon key
- Wear: eye protection
- Supply: none
- Part: none
- Dangers confirmed: demo | 2026-03-02

## Work

### 0:00-0:02 Isolate the high voltage {#isolate}

sesame prose

- Reserved: high-voltage technician
- Danger: high voltage | electrocuted | stay behind the barrier
- State: high voltage isolated
- Tool: sesame tool
- Supply: sesame supply
- Part: 1 x sesame part
- Wear: sesame gloves
- Off: sesame plug | by: 2 x sesame bolt | tray: sesame tray
- On: sesame plug
- Off: cover | by: 4 x sesame screw
- Torque: sesame bolt | 4 N·m | from: sesame sheet
- Measure: sesame points | 0 V | with: sesame tester
- Key point: sesame point | sesame reason
- If: sesame case | sesame remedy | 5
- Hidden: sesame place | sesame way
- Note: sesame note
- Picture: 0:01 | sesame picture | found
- Torque: cover screw sesame | as the sesame says
- Check: tester on both terminals | no voltage, shown twice
- Hold: isolated, key locked away | the technician named on the sheet

### 0:02-0:03 Change the hose {#hose}

- Key point: push it on to the stop | it drips otherwise

### 0:03-0:03.500 Put the cover on {#cover-on}

- On: cover
- Ends: high voltage isolated
- Check: look round the cover | it sits flat
"""
WORKSHOP = """\
[[qualification]]
name = "high-voltage technician"
holder = "AB"
valid_until = 2026-06-30
"""
TODAY = date(2026, 6, 30)


@pytest.fixture
def home(folder: Make) -> Path:
    home = folder(TEXT)
    (home / "strip.srt").write_text("1\n00:00:00,400 --> 00:00:00,900\nSay sesame.\n", encoding="utf-8")
    (home.parent / "workshop.toml").write_text(WORKSHOP, encoding="utf-8")
    return home


def written(out: Path) -> str:
    """All text that is published, and of the PDF what is in it uncompressed by a reader."""
    from pypdf import PdfReader

    pages = [page.extract_text() for page in PdfReader(out / "procedure.pdf").pages]
    files = [path for path in out.rglob("*") if path.suffix in (".html", ".json", ".vtt")]
    return "\n".join([*pages, *(path.read_text(encoding="utf-8") for path in files)])


def test_everybodys_edition_says_who_does_it_and_never_how(home: Path) -> None:
    built = build(home)
    step = built.edition.steps[0]
    assert (step.reserved, step.command) == ("high-voltage technician", "Isolate the high voltage")
    text = written(built.out)
    assert "sesame" not in text
    assert "no voltage, shown twice" in text
    assert "isolated, key locked away" in text
    assert "stay behind the barrier" in text


def test_no_picture_or_clip_of_it_is_published(home: Path) -> None:
    built = build(home)
    step = built.edition.steps[0]
    assert (step.figures, step.clip, step.spans) == ((), None, ())
    assert built.edition.steps[2].as_found is None
    shown = [figure.still.file for each in built.edition.steps for figure in each.figures]
    clips = [each.clip.file for each in built.edition.steps if each.clip]
    assert sorted(path.name for path in (built.out / "media").iterdir()) == sorted({*shown, *clips})
    assert len(clips) == 2


def test_what_came_off_there_is_still_followed(home: Path) -> None:
    built = build(home)
    assert [(entry.item, entry.balance.value, entry.fasteners) for entry in built.edition.ledger.entries] == [
        ("high voltage isolated", "closed", ()),
        ("cover", "closed", ()),
    ]
    standing = built.edition.steps[1].standing
    assert (standing.states, [item.name for item in standing.protections]) == ((), ["high voltage isolated"])


def test_its_problems_are_told_by_their_line_and_not_quoted(home: Path) -> None:
    built = build(home)
    about = [problem for problem in built.problems if "sesame" in said(problem).what]
    assert about
    hidden = [problem for problem in built.edition.problems if "must be settled" in said(problem).what]
    assert {problem.place for problem in about} <= {problem.place for problem in hidden}
    assert {(problem.rule, problem.facts, problem.subject) for problem in hidden} == {("reserved", (), "")}
    assert [
        problem for problem in built.edition.problems if "sesame" in f"{said(problem).what} {said(problem).instead}"
    ] == []


def test_the_edition_for_the_qualified_shows_how_in_a_folder_of_its_own(home: Path) -> None:
    build(home)
    built = build(home, options=Options("High-voltage technician"), today=TODAY)
    assert built.out == home / "out-high-voltage-technician"
    assert spoken(built.edition).reader == "Only for high-voltage technician: AB, valid until 2026-06-30"
    step = built.edition.steps[0]
    assert step.reserved == ""
    assert [line.part("point") for line in step.key_points] == ["sesame point"]
    assert step.clip
    text = written(built.out)
    assert text.count("high-voltage technician: AB, valid until 2026-06-30") >= 3
    assert "sesame prose" in text
    assert "sesame" not in written(home / "out")


@pytest.mark.parametrize(
    ("name", "today", "why"),
    [
        ("gas fitter", TODAY, "the qualification gas fitter is not in the workshop file – nothing was built; add to"),
        ("high-voltage technician", date(2026, 7, 1), "the qualification high-voltage technician ended on 2026-06-30"),
    ],
)
def test_without_the_qualification_nothing_is_built(home: Path, name: str, today: date, why: str) -> None:
    with refused(NotQualified, why):
        build(home, options=Options(name), today=today)
    assert not list(home.glob("out*"))


def test_a_step_reserved_to_others_stays_closed_to_the_qualified(home: Path) -> None:
    text = TEXT.replace("Reserved: high-voltage technician", "Reserved: gas fitter")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    built = build(home, options=Options("high-voltage technician"), today=TODAY)
    assert built.edition.steps[0].reserved == "gas fitter"
    assert "sesame" not in written(built.out)


def test_a_downgraded_danger_is_printed_with_name_and_reason(home: Path) -> None:
    text = TEXT.replace("- Wear: eye", "- Downgraded: high voltage near | RB | dismantled car\n- Wear: eye")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    built = build(home)
    for name in ("index.html", "phone.html", "edition.json"):
        words = (built.out / name).read_text(encoding="utf-8")
        assert all(word in words for word in ("high voltage near", "RB", "dismantled car"))
    assert "high voltage near" in written(built.out)


def test_a_workshop_adds_dangers_of_its_own(home: Path) -> None:
    more = """
[[danger]]
name = "hose clip"
words = ["hose clip"]
signal = "CAUTION"
hazard = "the clip springs open"
consequence = "cut hand"
avoid = "hold it with a rag"
"""
    (home.parent / "workshop.toml").write_text(WORKSHOP + more, encoding="utf-8")
    (home / "procedure.md").write_text(TEXT.replace("push it on", "push it and its hose clip on"), encoding="utf-8")
    asked = [problem for problem in check(home).problems if problem.rule == "danger-proposed"]
    assert 'the clip springs open: proposed from "hose clip" in step 2' in [said(problem).what for problem in asked]
    assert all(problem.blocks for problem in asked)


def test_no_danger_and_no_condition_are_said_in_words(home: Path) -> None:
    text = TEXT.replace("- Condition: key away", "- Condition: none").replace(
        "- Dangers confirmed", "- Danger: none\n- Note"
    )
    (home / "procedure.md").write_text(text, encoding="utf-8")
    built = build(home)
    assert built.edition.hazards == ()
    assert {entry.name: entry.none for entry in built.edition.lists if entry.none} == {
        "Condition": True, "Supply": True, "Part": True, "Danger": True,
    }  # fmt: skip
