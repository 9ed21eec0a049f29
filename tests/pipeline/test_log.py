"""procbuilder log: rows in, whole or not at all, and how the estimate moves."""

import json
import random
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from procbuilder.infer.evidence import believed
from procbuilder.model.estimate import Basis
from procbuilder.model.fault import NoProcedure, NotText, NotThere
from procbuilder.pipeline.library import read_source
from procbuilder.pipeline.log import log
from procbuilder.publish.wording.problems import line as told
from procbuilder.read.procedure import read_text
from procbuilder.report.results import log_lines
from tests.growth import no_blow_up
from tests.refused import refused

PROCEDURE = """\
---
format: 1
number: P-7
place: bench
---
# Pump – seal

## Work

### Drain it {#drain}

- Time: 4/5/8

### Take off the cover {#cover-off}

- Time: 6

### Fit the seal {#seal}
"""

ROWS = """\
who,when,step,minutes
ab,2026-05-04,drain,7
ab,2026-05-04,cover-off,9.5
ab,2026-05-04,seal,12
cd,2026-05-05,drain,6
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    folder = tmp_path / "library" / "pump"
    folder.mkdir(parents=True)
    (folder / "procedure.md").write_text(PROCEDURE, encoding="utf-8")
    return folder


@pytest.fixture
def given(tmp_path: Path) -> Path:
    path = tmp_path / "given.csv"
    path.write_text(ROWS, encoding="utf-8")
    return path


def test_rows_are_added_as_they_are_and_the_estimate_moves(home: Path, given: Path) -> None:
    logged = log(home, given)
    assert (logged.added, logged.known, logged.problems) == (4, 0, ())
    assert (home / "times.csv").read_text(encoding="utf-8") == ROWS
    assert [step.basis for step in logged.before.steps] == [Basis.TYPED, Basis.TYPED, Basis.NOTHING]
    assert [step.basis for step in logged.after.steps] == [Basis.LOG] * 3
    assert [step.evidence[0].count for step in logged.after.steps] == [2, 1, 1]
    assert logged.before.lower_bound
    assert not logged.after.lower_bound
    assert Decimal(5) < logged.after.steps[0].likely < Decimal(7)


def test_the_same_file_twice_adds_nothing_and_says_so(home: Path, given: Path) -> None:
    log(home, given)
    again = log(home, given)
    assert (again.added, again.known) == (0, 4)
    assert (home / "times.csv").read_text(encoding="utf-8") == ROWS


def test_the_same_row_twice_in_a_file_is_two_rows(home: Path, given: Path) -> None:
    log(home, given)
    given.write_text(ROWS + "cd,2026-05-05,drain,6\n", encoding="utf-8")
    more, again = log(home, given), log(home, given)
    assert [(logged.added, logged.known) for logged in (more, again)] == [(1, 4), (0, 5)]


def test_what_the_page_exports_is_taken(home: Path, tmp_path: Path) -> None:
    rows = [{"who": "K3", "when": "2026-05-06T07:15", "step": "seal", "minutes": 8.25}]
    exported = tmp_path / "times.json"
    exported.write_text(json.dumps({"format": "procbuilder times 1", "procedure": "P-7", "rows": rows}))
    assert log(home, exported).added == 1
    assert (home / "times.csv").read_text().splitlines() == ["who,when,step,minutes", "K3,2026-05-06T07:15,seal,8.25"]


@pytest.mark.parametrize(
    ("row", "line", "what"),
    [
        ("ab,2026-05-04,drein,7", 3, "the procedure has no step drein – did you mean drain?"),
        ("ab,2026-05-04,paint,7", 3,
         "the procedure has no step paint – write one of its ids: drain, cover-off, seal"),
        ("ab,2026-05-04,drain,seven", 3,
         "seven is no number of minutes – write minutes such as 4.5, more than 0 and at most 1440"),
    ],
)  # fmt: skip
def test_one_wrong_row_names_its_line_and_nothing_is_changed(
    home: Path, given: Path, row: str, line: int, what: str
) -> None:
    log(home, given)
    before = (home / "times.csv").read_bytes()
    given.write_text(f"who,when,step,minutes\nab,2026-05-09,drain,5\n{row}\nab,2026-05-09,seal,5\n", encoding="utf-8")
    logged = log(home, given)
    assert list(map(told, logged.problems)) == [f"{given}:{line}: {what}"]
    assert (logged.added, logged.after) == (0, logged.before)
    assert (home / "times.csv").read_bytes() == before


def test_times_of_another_procedure_are_refused(home: Path, tmp_path: Path) -> None:
    exported = tmp_path / "times.json"
    exported.write_text(json.dumps({"format": "procbuilder times 1", "procedure": "P-8", "rows": []}))
    assert [told(problem) for problem in log(home, exported).problems] == [
        f"{exported}:1: the times are of P-8, the folder holds P-7 – name the folder of that procedure"
    ]


def test_a_damaged_log_is_named_and_left_alone(home: Path, given: Path) -> None:
    (home / "times.csv").write_text(ROWS.replace("9.5", "9,5"), encoding="utf-8")
    assert [told(problem) for problem in log(home, given).problems] == [
        f"{home}/times.csv:3: the row has 5 cells, the first line 4 – "
        "write one cell for each column; a decimal has a point: 4.5"
    ]
    assert (home / "times.csv").read_text(encoding="utf-8") == ROWS.replace("9.5", "9,5")


def test_what_cannot_be_worked_with_is_a_clear_line(home: Path, given: Path, tmp_path: Path) -> None:
    with refused(NoProcedure, r"there is no procedure.md in it"):
        log(tmp_path, given)
    with refused(NotThere, r"nothing.csv: there is no such file"):
        log(home, tmp_path / "nothing.csv")
    given.write_bytes(b"who,when,step,minutes\nab,2026-05-04,drain,\xff\n")
    with refused(NotText, r"given.csv:2: a character is not UTF-8"):
        log(home, given)
    assert not (home / "times.csv").exists()


def test_conditions_come_from_the_workshop_file_of_the_library(home: Path, given: Path) -> None:
    (home.parent / "workshop.toml").write_text(
        '[[condition]]\nname = "in the field"\ninstead_of = "bench"\nfactor = 1.5\nfrom = "12 job cards"\n'
    )
    (other,) = log(home, given).after.elsewhere
    assert (other.name, other.factor, other.origin) == ("in the field", Decimal("1.5"), "12 job cards")


def test_the_same_operation_in_another_procedure_of_the_library_holds_a_first_row(home: Path, given: Path) -> None:
    """Fitting the seal took 12 minutes once here; elsewhere it took 3 to 7, twenty times."""
    before = log(home, given).after.steps[2].likely
    (home / "times.csv").unlink()
    other = home.parent / "washer"
    other.mkdir()
    (other / "procedure.md").write_text("# Washer\n\n## Work\n\n### Fit a new seal {#new-seal}\n", encoding="utf-8")
    rows = "".join(f"{who},2026-03-{day:02},new-seal,{3 + day % 5}\n" for day in range(1, 11) for who in ("ef", "gh"))
    (other / "times.csv").write_text(f"who,when,step,minutes\n{rows}", encoding="utf-8")
    assert log(home, given).after.steps[2].likely == before
    (home / "times.csv").unlink()
    (home.parent / "workshop.toml").write_text("", encoding="utf-8")
    after = log(home, given).after
    assert after.steps[2].likely < before
    assert (after.practice.rows, after.practice.sittings) == (4, 2)


@pytest.mark.parametrize(
    ("kept", "today", "lines"),
    [
        ("24 months", date(2028, 5, 5), (2, 3, 4)),
        ("2 years", date(2028, 5, 4), ()),
        ("24 months", date(2028, 6, 1), (2, 3, 4, 5)),
        ("until the foreman says otherwise", date(2040, 1, 1), ()),
    ],
)
def test_rows_older_than_the_workshop_keeps_them_are_named_and_left(
    home: Path, given: Path, kept: str, today: date, lines: tuple[int, ...]
) -> None:
    (home.parent / "workshop.toml").write_text(f'[times]\nkept_for = "{kept}"\n')
    logged = log(home, given, today)
    assert logged.outdated == lines
    assert (home / "times.csv").read_text() == ROWS
    told = [line for line in log_lines(logged) if line.startswith("Older than")]
    numbers = ", ".join(map(str, lines))
    wanted = f"Older than the {kept} for which rows are kept: delete line {numbers} of {home / 'times.csv'}"
    assert told == ([wanted] if lines else [])


def test_ten_thousand_rows_are_learnt_from_without_a_blow_up(home: Path) -> None:
    draw = random.Random(5)
    steps = "".join(f"\n### Do part {number} {{#s{number}}}\n\n- Time: 5\n" for number in range(12))
    procedure, problems = read_text(f"# Job\n\n## Work\n{steps}")
    assert problems == ()

    def prepare(rows: int) -> Callable[[], object]:
        lines = [
            f"{who},20{sitting // 250:02}-{sitting // 25 % 12 + 1:02}-{sitting % 25 + 1:02},s{step},{minutes:.1f}"
            for sitting, who in enumerate(draw.choices(["ab", "cd", "ef"], k=rows // 12))
            for step, minutes in enumerate(draw.lognormvariate(1.6, 0.4) for _ in range(12))
        ]
        (home / "times.csv").write_text("\n".join(["who,when,step,minutes", *lines, ""]))

        def work() -> None:
            belief, *_ = believed(procedure, read_source(home).runs)
            assert belief is not None
            assert sum(belief.counts) == rows // 12 * 12

        return work

    no_blow_up(prepare, 10_000)


def test_a_row_of_a_day_to_come_is_asked_about(home: Path, tmp_path: Path) -> None:
    (tmp_path / "rows.csv").write_text(ROWS, encoding="utf-8")
    logged = log(home, tmp_path / "rows.csv", date(2026, 5, 4))
    assert [told(problem).split("rows.csv")[1] for problem in logged.problems] == [
        ":5: 2026-05-05 is still to come: today is 2026-05-04 – "
        "set the day on which it was done, or the clock of this machine or of the phone"
    ]
    assert not logged.log.exists()
    assert log(home, tmp_path / "rows.csv", date(2026, 5, 5)).added == 4
