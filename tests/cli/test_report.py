"""What the commands tell of an edition."""

from dataclasses import replace
from pathlib import Path

from procbuilder.model.origin import Place
from procbuilder.model.worked import Hazard, Signal, Standing
from procbuilder.report import highlights
from tests.publish.sample import sample_edition


def test_a_danger_that_ends_and_comes_back_is_not_told_of_the_steps_between(tmp_path: Path) -> None:
    edition = sample_edition(tmp_path)
    hot = Hazard(Signal.WARNING, "hot pipe", "burnt hand", "let it cool", "engine hot", Place("procedure.md", 1))
    at = {1, 2, 3, 6}
    sections = [
        replace(
            section,
            steps=tuple(
                replace(step, standing=Standing((hot,) if step.number in at else ())) for step in section.steps
            ),
        )
        for section in edition.sections
    ]
    lines = highlights(replace(edition, sections=tuple(sections)))
    assert [line for line in lines if "dangerous" in line] == [
        "  Still dangerous at steps 1 to 3, 6: WARNING: hot pipe"
    ]
