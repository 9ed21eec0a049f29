"""The procedure file as a whole: structure, prose, ids, lines, and every problem at once."""

from fractions import Fraction
from textwrap import dedent

import pytest

from procbuilder.model.marks import Box, MarkShape, PictureState
from procbuilder.model.procedure import Procedure
from procbuilder.publish.wording.problems import line
from procbuilder.read.procedure import read_text

HEAD = "---\nrecordings: {strip: a.mp4}\n---\n# Hub – bearings\n"


def read(text: str) -> tuple[Procedure, list[str]]:
    procedure, problems = read_text(dedent(text))
    return procedure, [line(problem) for problem in problems]


def body(text: str) -> tuple[Procedure, list[str]]:
    """A text that begins in line 5, below a front matter and a title."""
    return read(HEAD + dedent(text))


def test_sections_steps_fields_and_prose_keep_their_lines() -> None:
    procedure, problems = body(
        """\
        When the wheel rocks.

        ## Before you start

        - Tool: 2 x axle stand

        ## Strip

        Two bolts are longer.

        ### 0:42-1:15 Prise off the dust cap {#dust-cap}

        Work round the rim.

        - Off: dust cap
        - mind the paint
        """
    )
    assert problems == []
    assert procedure.title == "Hub – bearings"
    assert [(prose.text, prose.place.line) for prose in procedure.intro] == [("When the wheel rocks.", 5)]
    before, strip = procedure.sections
    assert [(entry.name, entry.place.line) for entry in before.fields] == [("Tool", 9)]
    assert [prose.text for prose in strip.prose] == ["Two bolts are longer."]
    (step,) = strip.steps
    assert (step.id, step.id_typed, str(step.place)) == ("dust-cap", True, "procedure.md:15")
    assert [(prose.text, prose.place.line) for prose in step.prose] == [
        ("Work round the rim.", 17),
        ("- mind the paint", 20),
    ]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_byte_order_mark_do_not_matter(end: str, mark: str) -> None:
    text = HEAD + "## Strip\n\n### 0:01-0:02 Turn\n\n- Off: cap\n"
    plain, _ = read_text(text)
    other, problems = read_text(mark + text.replace("\n", end))
    assert (other, problems) == (plain, ())


def test_tabs_and_continuation_lines_belong_to_their_item() -> None:
    procedure, problems = body("## S\n\n### Turn\n\n-\tKey point: slowly,\n\tvery slowly | it\n  may crack\n")
    (entry,) = procedure.steps[0].fields
    assert (entry.part("point"), entry.part("reason"), problems) == ("slowly, very slowly", "it may crack", [])


def test_front_scalars_stay_text() -> None:
    procedure, _ = read("---\nnumber: 014\nrevision: 1.10\n---\n# T\n")
    assert (procedure.front["number"], procedure.front["revision"]) == ("014", "1.10")


@pytest.mark.parametrize(
    "text",
    [
        "```\n- Off: cap\n### 0:01-0:02 no step\n```",
        "1. Off: cap",
        "> - Off: cap",
        "[cap]: #cap",
        "<script>alert(1)</script>",
        "| a | b |",
    ],
)
def test_what_is_no_field_is_kept_as_typed(text: str) -> None:
    procedure, _ = body(f"## S\n\n### Turn it\n\n{text}\n")
    assert len(procedure.steps) == 1
    assert procedure.steps[0].fields == ()
    assert "\n".join(prose.text for prose in procedure.steps[0].prose) == text.rstrip()


@pytest.mark.parametrize(
    ("text", "prose"),
    [
        ("    - Off: cap", []),
        ("* Off: cap", []),
        ("+ **Off:** cap", []),
        ("- two bolts\n  - Off: cap", ["- two bolts"]),
        ("- two bolts\n  - one long\n    - Off: cap", ["- two bolts", "  - one long"]),
    ],
)
def test_a_field_is_read_whatever_its_bullet_and_indent(text: str, prose: list[str]) -> None:
    procedure, problems = body(f"## S\n\n### Turn it\n\n{text}\n")
    (step,) = procedure.steps
    assert [(entry.name, entry.raw) for entry in step.fields] == [("Off", "cap")]
    assert ([one.text for one in step.prose], problems) == (prose, [])


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("Strip\n-----\n\n### Turn\n",
         "procedure.md:5: this form of heading is not read – write ## in front of it: ## Strip"),
        ("## S\n\n#### Turn\n",
         "procedure.md:7: this form of heading is not read – write ### in front of it: ### Turn"),
        ("# Another\n", "procedure.md:5: there is a second title – make it a section: ## Another"),
        ("## S\n\n### Turn\n\n- Tourqe: nut | 80 N·m\n",
         "procedure.md:9: Tourqe is no field – did you mean Torque? Then write: - Torque: nut | 80 N·m"),
        ("## S\n\n### Turn\n\n- Mark: arrow | 0.1,0.1,0.2,0.2 | here\n",
         "procedure.md:9: Mark stands alone – indent it below its - Picture: line"),
        ("## S\n\n### Turn\n\n- Tool: bar\n  - Warning: hot | burn | gloves\n",
         "procedure.md:10: Warning stands below Tool – start it at the left margin, like the other fields of the step"),
        ("## S\n\n### Turn {#a}\n\n### Lift {#a}\n",
         "procedure.md:9: the id a stands twice, first in line 7 – write another one: {#a-2}"),
        ("## S\n\n### 0:10-0:20 Turn\n\n- Picture: later\n",
         "procedure.md:9: Picture: later is no time and no picture file – "
         "write a time such as 1:09, or pictures/cap.jpg"),
        ("## S\n\n### 0:10-0:20 Turn\n\n- Picture: 0:12 | cap | after\n",
         "procedure.md:9: Picture: after is not known – write found, done or detail as the third part"),
        ("## S\n\n### 0:10-0:20 Turn\n\n- Picture: 0:12 | cap\n  - Mark: star | 0.1,0.1 | x\n",
         "procedure.md:9: Mark: star is not known – write arrow, ring, box or line"),
        ("## S\n\n### 0:10-0:20 Turn\n\n- Picture: 0:12 | cap\n  - Crop: 0.5,0.5,0.1,0.1\n",
         "procedure.md:9: Crop: 0.5,0.5,0.1,0.1 is no box – write left,top,right,bottom from 0 to 1: 0.1,0.7,0.3,0.8"),
        ("## S\n\n### 0:10-0:20 Turn\n\n- Skip: 0:12 | talk\n",
         "procedure.md:9: Skip: 0:12 is no stretch of time – write: - Skip: 1:02-1:10 | reason"),
        ("## S\n\n### Turn\n\n- Time: soon\n",
         "procedure.md:9: soon cannot be read as minutes – write 12, or low/likely/high such as 8/10/15"),
        ("## S\n\n### Turn\n\n- Time: 10/8/15\n",
         "procedure.md:9: 10/8/15 does not rise – write the low minutes first, then the likely, then the high"),
        ("## S\n\n### Turn\n\n- Wait: 10 | paint | overlaps: often\n",
         "procedure.md:9: overlaps: often is not known – write overlaps: yes, or leave it out"),
        ("## S\n\n### 0:10-0:20 Turn\n\n- Hide: plate\n", "procedure.md:9: Hide: plate cannot be read – "
         "write: - Hide: strip 0:42 0.1,0.7,0.3,0.8; 0:45 0.2,0.7,0.4,0.8"),
    ],
)  # fmt: skip
def test_one_fault_gives_one_problem_with_its_line(text: str, message: str) -> None:
    assert body(text)[1] == [message]


def test_a_text_without_a_title_is_asked_for_one() -> None:
    assert read("## S\n")[1] == ["procedure.md:1: the procedure has no title – write one: # Thing – what is done to it"]


def test_all_problems_of_a_file_come_at_once_worst_first() -> None:
    text = "---\nitem: a: b\n---\n# T\n## S\n### 0:42 Cap off\n- Tourqe: x\n- Time: soon\n"
    problems = read_text(text)[1]
    assert [(problem.severity.value, problem.place.line) for problem in problems] == [
        ("stop", 7),
        ("stop", 2),
        ("stop", 6),
        ("ask", 8),
    ]


def test_ids_without_a_typed_one_are_made_of_the_command_and_never_doubled() -> None:
    procedure, problems = body("## S\n### Turn\n### Turn {#turn}\n### Turn\n### Turn {#turn}\n")
    assert [step.id for step in procedure.steps] == ["turn-2", "turn", "turn-3", "turn-4"]
    assert [step.id_typed for step in procedure.steps] == [False, True, False, False]
    assert len(problems) == 1


def test_steps_above_the_first_section_are_kept() -> None:
    procedure, _ = body("### Turn\n\n## S\n\n### Lift\n")
    assert [(section.title, [step.command for step in section.steps]) for section in procedure.sections] == [
        ("", ["Turn"]),
        ("S", ["Lift"]),
    ]


def test_picture_with_marks_hidden_box_and_crop() -> None:
    procedure, problems = body(
        """\
        ## S
        ### 0:42-1:15 Prise off the cap
        - Picture: 1:09 | cap started evenly | detail
          - Mark: arrow | 0.61,0.40,0.52,0.47 | start here
          - Mark: ring | 0.5,0.5 | the gap
          - Hide: 0.1,0.2,0.3,0.4
          - Crop: 0,0,1,0.5
        """
    )
    (picture,) = procedure.steps[0].pictures
    assert problems == []
    assert (picture.recording, picture.time, picture.state) == ("strip", 69, PictureState.DETAIL)
    assert [(mark.shape, mark.points, mark.label) for mark in picture.marks] == [
        (MarkShape.ARROW, (0.61, 0.40, 0.52, 0.47), "start here"),
        (MarkShape.RING, (0.5, 0.5), "the gap"),
    ]
    assert (picture.hidden, picture.crop) == ((Box(0.1, 0.2, 0.3, 0.4),), Box(0, 0, 1, 0.5))


def test_hidden_region_moves_straight_between_its_times() -> None:
    procedure, problems = body("## S\n### 0:00-0:10 Turn\n- Hide: 0:02 0,0,0.2,0.2; 0:04 0.2,0,0.4,0.2\n")
    (path,) = procedure.steps[0].hidden
    assert problems == []
    boxes = [path.at(Fraction(time)) for time in (2, 3, 4)]
    assert [box.left for box in boxes if box] == pytest.approx([0, 0.1, 0.2])
    assert path.lasts == (2, 4)


def test_hidden_region_ends_with_the_second_of_its_last_time() -> None:
    """A player shows 0:04 until 0:05 begins; before 0:02 only a picture that is on show until then is hidden."""
    procedure, _ = body("## S\n### 0:00-0:10 Turn\n- Hide: 0:02 0,0,0.2,0.2; 0:04 0.2,0,0.4,0.2\n")
    (path,) = procedure.steps[0].hidden
    hidden = [path.at(Fraction(time, 10)) is not None for time in (0, 19, 20, 49, 50, 90)]
    assert hidden == [False, False, True, True, False, False]
    assert path.at(Fraction(19, 10), Fraction(21, 10)) is not None


def test_hidden_region_of_one_box_holds_throughout() -> None:
    procedure, _ = body("## S\n### 0:00-0:10 Turn\n- Hide: 0:02 0,0,0.2,0.2\n")
    (path,) = procedure.steps[0].hidden
    assert path.lasts is None
    assert [path.at(Fraction(time)) for time in (0, 2, 9)] == [Box(0, 0, 0.2, 0.2)] * 3


def test_footage_leaves_out_skipped_stretches() -> None:
    procedure, _ = body("## S\n### 0:10-0:40 Turn\n- Skip: 0:12-0:17 | phone rang\n- Skip: 0:35-0:50 | talk\n")
    assert procedure.steps[0].footage == 30 - 5 - 5


def test_time_and_wait_in_minutes() -> None:
    procedure, _ = body("## S\n### Turn\n- Time: 8/10/15\n- Wait: 20 | sealant cures | overlaps: yes\n")
    (step,) = procedure.steps
    assert step.minutes
    assert (step.minutes.low, step.minutes.likely, step.minutes.high) == (8, 10, 15)
    assert [(wait.minutes.likely, wait.reason, wait.overlaps) for wait in step.waits] == [(20, "sealant cures", True)]


@pytest.mark.parametrize(
    "text", ["", "\n", "---", "---\n---", "#", "###", "- :", "-", "\ufeff", "- Off", "###  {#}", "|"]
)
def test_any_text_gives_a_procedure(text: str) -> None:
    procedure, problems = read_text(text)
    assert isinstance(procedure, Procedure)
    assert problems
