"""Characters that nobody sees: shown as their code, and a stop in fields, headings and numbers.

Which they are: Unicode 15, Default_Ignorable_Code_Point and Bidi_Control (from memory).
"""

import pytest

from procbuilder.model.problem import Severity
from procbuilder.publish.wording.problems import line
from procbuilder.read.procedure import read_text
from procbuilder.read.unseen import shown

HEAD = "# T\n\n## S\n\n### 0:01-0:09 Turn it\n\n"
TURNS = [*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x200E, 0x200F, 0x061C]
ZERO_WIDTH = [0x200B, 0x2060, 0xFEFF, 0x200C, 0x200D, 0x00AD]
TAGS = [0xE0001, 0xE0031, 0xE007F]


@pytest.mark.parametrize("code", [*TURNS, *ZERO_WIDTH, *TAGS])
def test_in_a_number_it_stops_and_is_shown(code: int) -> None:
    procedure, problems = read_text(f"{HEAD}- Torque: nut | 5{chr(code)}1 N·m\n")
    (entry,) = procedure.steps[0].fields
    assert entry.part("value") == f"5⟨U+{code:04X}⟩1 N·m"
    assert (problems[0].rule, problems[0].severity, problems[0].place.line) == ("unseen-character", Severity.STOP, 7)
    assert line(problems[0]) == (
        f"procedure.md:7: U+{code:04X} stands here: nobody sees it, but it can turn or part what is read – "
        "type the line anew instead of copying it"
    )


def test_a_turned_number_is_not_read_as_a_torque() -> None:
    (entry,) = read_text(f"{HEAD}- Torque: nut | \u202e51 N·m\n")[0].steps[0].fields
    assert not entry.torque.newton_metres


@pytest.mark.parametrize("typed", ["- Hi\u200bde: 0:02 0.1,0.7,0.3,0.8", "- Hide: 0:02 0.1,0.7,0.3,\u202e8.0"])
def test_in_a_line_that_hides_it_withholds_the_step(typed: str) -> None:
    assert read_text(f"---\nrecordings: a.mp4\n---\n{HEAD}{typed}\n")[0].steps[0].withheld


@pytest.mark.parametrize(
    ("text", "severity", "at"),
    [
        ("---\nnumber: P\u202e-14\n---\n# T\n", Severity.STOP, 2),
        (f"{HEAD}### Lift\u200b it\n", Severity.STOP, 7),
        (f"{HEAD}Turn \u202e51 times\n", Severity.STOP, 7),
        (f"{HEAD}Turn\u200b it slowly\n", Severity.ASK, 7),
    ],
)
def test_in_words_alone_it_is_asked_about(text: str, severity: Severity, at: int) -> None:
    (problem,) = [one for one in read_text(text)[1] if one.rule == "unseen-character"]
    assert (problem.severity, problem.place.line) == (severity, at)


@pytest.mark.parametrize(
    "text",
    ["Dich\u00adtung", "\U0001f469\u200d\U0001f527", "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645", "ö, µ, N·m"],
)
def test_what_a_script_needs_stays(text: str) -> None:
    assert shown(text) == text
