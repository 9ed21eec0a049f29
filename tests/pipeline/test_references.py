"""A step that another one names is told by its number and its command, not by its id."""

import pytest

from procbuilder.pipeline.references import References
from procbuilder.publish.language import language_of
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


def told(tag: str) -> list[tuple[str, str, tuple[str, ...], int]]:
    steps = written(TEXT).steps
    references = References(steps, language_of(tag))
    lines = [
        line
        for number, step in enumerate(steps, 1)
        for line in references.named(step.all("After", "Then", "Derived", "Off"), number)
    ]
    return [(line.name, line.text, line.extra, line.step) for line in lines]


def test_each_name_of_a_step_is_told_with_its_number() -> None:
    assert told("en-GB") == [
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
def test_they_are_told_in_the_language_of_the_reader(sentence: str) -> None:
    assert sentence in [text for _, text, _, _ in told("de-DE")]
