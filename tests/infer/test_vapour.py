"""Where vapour or gas can catch fire: brake cleaner and petrol do, diesel and grease do not, in cold air."""

import pytest

from procbuilder.infer.dangers import standing
from procbuilder.infer.lexicon import load
from procbuilder.infer.vapour import vapour
from tests.infer.written import written


def reasons(text: str) -> dict[str, str]:
    procedure = written(text)
    return vapour(procedure, standing(procedure, load()), load())


@pytest.mark.parametrize(
    ("step", "reason"),
    [
        ("### Pull off the petrol pipe {#x}", "petrol pipe"),
        ("### Wash it {#x}\n- Supply: brake cleaner, 200 ml", "brake cleaner"),
        ("### Open the tap {#x}\n- Danger: flammable vapor | burns | no flame", "flammable vapor"),
        ("### Undo the fuel line {#x}", "fuel line"),
        ("### Open the valve {#x}\n- State: gas line open", "gas line open"),
    ],
)
def test_words_that_send_the_phone_away(step: str, reason: str) -> None:
    assert reasons(f"## Work\n{step}\n") == {"x": reason}


@pytest.mark.parametrize("step", ["### Drain the diesel", "### Pack it with grease", "### Weld the bracket",
                                  "### Never use petrol here", "### Blow it dry with air"])  # fmt: skip
def test_words_that_leave_it_there(step: str) -> None:
    assert reasons(f"## Work\n{step}\n") == {}


def test_it_lasts_as_long_as_the_danger_stands() -> None:
    found = reasons("""
        ## Work
        ### Take the cap off {#one}
        - State: tank open
        - Danger: fuel vapour | explosion | no flame | while: tank open
        ### Hold the lamp {#two}
        ### Screw the cap on {#three}
        - Ends: tank open
        ### Sweep the floor {#four}
        """)
    assert list(found) == ["one", "two", "three"]
