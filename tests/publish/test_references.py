"""A step that another one names is told by its number and its command, not by its id."""

from dataclasses import replace

import pytest

from procbuilder.model.edition import Edition
from procbuilder.pipeline.lines import statements
from procbuilder.publish.language import language_of
from procbuilder.publish.teller import Teller
from tests.infer.written import written

TEXT = """
## Work
### Take off the nut {#nut}
- Off: nut
### Add a shim {#shim}
- After: #nut
### Rock the wheel {#rock}
- Only if: it rocks
- Then: #nut
### Order a bearing {#order}
- Then: #fit (said strip 3:12)
### Fit the nut {#fit}
- Derived: #nut
- On: nut
### Fit the cap {#cap}
- Derived: #gone
"""


def told(tag: str, edition: Edition) -> list[tuple[str, str, tuple[str, ...], int]]:
    """What the fields of the text say, told in a language; of its steps only number and command are used."""
    typed = written(TEXT).steps
    steps = [replace(edition.steps[0], number=at, id=step.id, command=step.command) for at, step in enumerate(typed, 1)]
    teller = Teller(language_of(tag), {step.id: step for step in steps})
    lines = [
        line
        for number, step in enumerate(typed, 1)
        for line in teller.all(statements(step.all("After", "Then", "Derived", "Off")), number)
    ]
    return [(line.name, line.text, line.extra, line.step) for line in lines]


def test_each_name_of_a_step_is_told_with_its_number(edition: Edition) -> None:
    assert told("en-GB", edition) == [
        ("Off", "nut", (), 0),
        ("After", "step 1, Take off the nut", (), 1),
        ("Then", "step 1, Take off the nut", ("from there on everything once more",), 1),
        ("Then", "step 5, Fit the nut", (), 5),
        ("Derived", "from step 1, not filmed and not yet accepted", (), 1),
        ("Derived", "from #gone, not filmed and not yet accepted", (), 0),
    ]


@pytest.mark.parametrize(
    "sentence", ["Schritt 5, Fit the nut", "aus Schritt 1, nicht gefilmt und noch nicht bestätigt"]
)
def test_they_are_told_in_the_language_of_the_reader(sentence: str, edition: Edition) -> None:
    assert sentence in [text for _, text, _, _ in told("de-DE", edition)]
