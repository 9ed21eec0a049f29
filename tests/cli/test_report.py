"""What the commands tell of an edition."""

from dataclasses import replace
from pathlib import Path

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.model.origin import Place
from procbuilder.model.signal import Signal
from procbuilder.model.worked import Hazard, Standing
from procbuilder.report.highlights import highlights
from tests.infer.written import written
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


LEDGER = """
## Work
### strip 0:10-0:20 Take off the cover
- Off: cover
### Take off the drum
- Only if: braked hub
- Off: drum
### Pull the pin
- Off: split pin
### Refit in reverse order
"""


def test_what_is_open_or_only_assumed_closed_is_told_with_its_place_and_way(tmp_path: Path) -> None:
    edition = replace(sample_edition(tmp_path), ledger=ledger(written(LEDGER), load()))
    assert [line for line in highlights(edition) if "open:" in line or "assumed" in line] == [
        "  Only assumed closed: cover, off at strip 0:10 (step 1); step 4 tells to refit in reverse",
        "  Still open: split pin, off, not filmed (step 3); no step closes it",
        "  Only assumed closed: drum, off, not filmed (step 2); step 4 tells to refit in reverse, if: braked hub",
    ]
