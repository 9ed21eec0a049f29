"""procbuilder new --refit: written behind what is there, accepted line by line, never over a changed file."""

from pathlib import Path
from typing import Any

import pytest

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.refit import derive
from procbuilder.model.drafted import DerivedStep
from procbuilder.model.fault import ChangedMeanwhile, NoProcedure
from procbuilder.model.ledger import Balance
from procbuilder.pipeline.check import check
from procbuilder.pipeline.refit import refit
from procbuilder.publish.wording.problems import said
from procbuilder.read.procedure import read_procedure

STRIP = """\
---
format: 1
---
# Cover

Prose that stays   as typed.

## Strip

### Prise off the cap {#cap}

- Off: cap

### Pull out the split pin {#pin}

- Off: split pin, scrap
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "procedure.md").write_text(STRIP, encoding="utf-8")
    return tmp_path


def asks(folder: Path) -> list[str]:
    return [said(problem).what for problem in check(folder).problems if problem.rule == "derived-not-accepted"]


def test_what_was_typed_stays_and_the_refit_stands_behind_it(folder: Path) -> None:
    made = refit(folder)
    text = made.file.read_text(encoding="utf-8")
    assert (made.steps, made.to_decide) == (2, 1)
    assert text.startswith(STRIP)
    assert text[len(STRIP) :].startswith(
        "\n## Refit, derived and not filmed\n\n### Decide how the split pin goes back {#split-pin-back}\n\n"
        "- Derived: #pin\n- Part: split pin, new\n- Note: to be decided: used once ("
    )
    assert text.endswith("\n\n### Press on the cap {#cap-back}\n\n- Derived: #cap\n- On: cap\n")
    assert read_procedure(folder)[1] == ()


def test_each_step_is_asked_about_until_its_line_is_taken_away(folder: Path) -> None:
    refit(folder)
    assert asks(folder) == [
        "step 3 is derived from step 2 and was not filmed",
        "step 4 is derived from step 1 and was not filmed",
    ]
    path = folder / "procedure.md"
    path.write_text(path.read_text(encoding="utf-8").replace("- Derived: #cap\n", ""), encoding="utf-8")
    assert asks(folder) == ["step 3 is derived from step 2 and was not filmed"]


def test_what_must_be_decided_stays_open(folder: Path) -> None:
    refit(folder)
    entries = ledger(read_procedure(folder)[0], load()).entries
    assert [(entry.item, entry.balance) for entry in entries] == [
        ("cap", Balance.CLOSED),
        ("split pin", Balance.OPEN),
    ]


def test_the_second_time_there_is_nothing_new(folder: Path) -> None:
    refit(folder)
    before = (folder / "procedure.md").read_bytes()
    assert refit(folder).steps == 0
    assert (folder / "procedure.md").read_bytes() == before


def test_the_line_ends_of_the_file_are_kept(folder: Path) -> None:
    path = folder / "procedure.md"
    path.write_bytes(STRIP.rstrip("\n").replace("\n", "\r\n").encode())
    refit(folder)
    data = path.read_bytes()
    assert data.count(b"\n") == data.count(b"\r\n")
    assert b"- Off: split pin, scrap\r\n\r\n## Refit, derived" in data


def test_a_file_that_changed_meanwhile_is_not_touched(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = folder / "procedure.md"

    def slow(*told: Any) -> tuple[DerivedStep, ...]:
        path.write_text(STRIP + "\n- Note: typed just now\n", encoding="utf-8")
        return derive(*told)

    monkeypatch.setattr("procbuilder.pipeline.refit.derive", slow)
    with pytest.raises(ChangedMeanwhile):
        refit(folder)
    assert path.read_text(encoding="utf-8") == STRIP + "\n- Note: typed just now\n"


def test_a_folder_without_a_procedure(tmp_path: Path) -> None:
    with pytest.raises(NoProcedure):
        refit(tmp_path)
