"""Words that a workshop adds to its library are understood in narration, ledger, trays, refit and check."""

import re
from pathlib import Path

import pytest

from procbuilder.infer.hearing.draft import draft
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.trays import trays
from procbuilder.model.ledger import Balance
from procbuilder.model.procedure import Narration
from procbuilder.pipeline.check import check
from procbuilder.pipeline.library import read_workshop_of
from procbuilder.pipeline.refit import refit
from procbuilder.publish.wording.problems import said
from procbuilder.read.procedure import read_procedure
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import TextFile

WORKSHOP = """\
[nicknames]
"banana plug" = "sensor connector"

[objects]
fastener = ["drum key"]
tool = ["hub hook"]

[[operation]]
print = "Zap off"
act = "off"
verbs = ["zap"]
particles = ["off"]
opposite = "Zap on"
"""
PROCEDURE = """\
---
format: 1
---
# Sensor

## Strip

### Zap off the drum key {#key}

- Off: drum key
- Off: banana plug

## Refit

### Plug it in {#plug}

- On: sensor connector
"""
NARRATION = """\
1
00:00:01,000 --> 00:00:04,000
Take the banana plug off with the hub hook.

2
00:00:05,000 --> 00:00:08,000
Now zap the cover off.
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "workshop.toml").write_text(WORKSHOP, encoding="utf-8")
    (tmp_path / "sensor").mkdir()
    (tmp_path / "sensor" / "procedure.md").write_text(PROCEDURE, encoding="utf-8")
    return tmp_path / "sensor"


def test_a_nickname_and_its_name_are_one_thing_in_the_ledger(folder: Path) -> None:
    own = read_workshop_of(folder.parent)[0].words
    entries = ledger(read_procedure(folder)[0], load(own=own)).entries
    assert [(e.item, e.balance) for e in entries] == [
        ("drum key", Balance.OPEN),
        ("banana plug", Balance.CLOSED),
    ]
    assert [(e.item, e.balance) for e in ledger(read_procedure(folder)[0], load()).entries][1:] == [
        ("banana plug", Balance.OPEN),
        ("sensor connector", Balance.NEVER_OPENED),
    ]


def test_check_knows_nickname_and_own_command(folder: Path) -> None:
    told = [problem for problem in check(folder).problems if problem.rule in ("unbalanced-ledger", "not-a-command")]
    assert [said(problem).what for problem in told] == ["drum key came off in step 1 and does not go back on"]


def test_own_fasteners_go_into_a_tray(folder: Path) -> None:
    own = read_workshop_of(folder.parent)[0].words
    book = ledger(read_procedure(folder)[0], load(own=own))
    assert [line.contents.name for line in trays(book, load(own=own))] == ["drum key"]
    assert trays(book, load()) == ()


def test_the_refit_takes_the_own_opposite(folder: Path) -> None:
    refit(folder)
    text = (folder / "procedure.md").read_text(encoding="utf-8")
    assert re.findall(r"^### (.*) \{#.*back\}$", text, re.M) == ["Zap on the drum key"]


def test_a_narration_is_heard_with_own_words(folder: Path) -> None:
    own = read_workshop_of(folder.parent)[0].words
    cues, _ = read_subtitles(TextFile("n.srt", NARRATION))
    told = draft([Narration("strip", cues)], own=own)
    assert [step.command for step in told.steps] == ["Remove the sensor connector", "Zap off the cover"]
    fields = [(field.name, field.parts[0]) for step in told.steps for field in step.fields if field.name != "Note"]
    assert fields == [("Off", "sensor connector"), ("Tool", "hub hook"), ("Off", "cover")]
    without = [step.command for step in draft([Narration("strip", cues)]).steps]
    assert without == ["Remove the banana plug", "Zap the cover off"]
