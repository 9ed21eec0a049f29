"""The pictures before and after stand side by side for what came off and went on again."""

from dataclasses import replace

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.model.edition import EditionStep, Figure, PicturePair
from procbuilder.pipeline.pairs import pairs
from tests.infer.written import written
from tests.publish.sample_steps import sections

TEXT = """
## Work
### Take off the cover
- Off: cover
- Off: clip
### Take off the lid
- Off: lid
### Fit the cover
- On: cover
### Fit the lid
- On: lid
"""


def steps() -> tuple[list[EditionStep], Figure]:
    """Four steps: the third shows how the cover looked, and how it looks now."""
    made = [step for section in sections() for step in section.steps]
    figure = next(step.as_found for step in made if step.as_found)
    assert figure is not None
    plain = replace(made[0], figures=(), as_found=None, as_found_step=0)
    after = replace(figure, shows="after")
    third = replace(plain, number=3, figures=(after,), as_found=figure, as_found_step=1)
    return [replace(plain, number=1), replace(plain, number=2), third, replace(plain, number=4)], figure


def test_a_pair_has_what_was_found_and_what_was_done() -> None:
    shown, figure = steps()
    assert pairs(ledger(written(TEXT), load()), shown) == (
        PicturePair("cover", 1, figure, 3, replace(figure, shows="after")),
        PicturePair("clip", 1, figure, 0, None),
    )


def test_without_any_picture_there_is_no_pair() -> None:
    shown, _ = steps()
    assert pairs(ledger(written(TEXT), load()), [replace(step, figures=(), as_found=None) for step in shown]) == ()
