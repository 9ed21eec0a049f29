"""Step headings: what is a time, what is a name, what is the command."""

import pytest

from procbuilder.model.timecode import format_time
from procbuilder.read.headings import Heading, read_heading, slug
from tests.read.told import told

ONE, TWO = ("strip",), ("strip", "refit")


def spans(heading: Heading) -> list[str]:
    return [f"{span.recording} {format_time(span.start)}-{format_time(span.end)}" for span in heading.spans]


@pytest.mark.parametrize(
    ("text", "recordings", "expected", "command", "step_id"),
    [
        ("0:42-1:15 Prise off the dust cap", ONE, ["strip 0:42-1:15"], "Prise off the dust cap", ""),
        ("0:42–1:15 Prise off the dust cap", ONE, ["strip 0:42-1:15"], "Prise off the dust cap", ""),
        ("0:42 to 1:15 Prise off the dust cap", ONE, ["strip 0:42-1:15"], "Prise off the dust cap", ""),
        ("0:42 - 1:15  Prise off the dust cap", ONE, ["strip 0:42-1:15"], "Prise off the dust cap", ""),
        ("refit 0:42-1:15 Fit the cap {#cap-on}", TWO, ["refit 0:42-1:15"], "Fit the cap", "cap-on"),
        ("1:02:15-1:02:20.5 Wait", ONE, ["strip 1:02:15-1:02:20.500"], "Wait", ""),
        ("0:01.25-0:02.250 Wait", ONE, ["strip 0:01.250-0:02.250"], "Wait", ""),
        ("75:00-76:10 Wait", ONE, ["strip 1:15:00-1:16:10"], "Wait", ""),
        # spans in two recordings; a name carries on to the spans behind it
        ("strip 0:10-0:20, refit 1:00-1:05 Turn", TWO, ["strip 0:10-0:20", "refit 1:00-1:05"], "Turn", ""),
        ("strip 0:10-0:20, 0:30-0:40 Turn", TWO, ["strip 0:10-0:20", "strip 0:30-0:40"], "Turn", ""),
        ("0:10-0:20,0:30-0:40, turn it", ONE, ["strip 0:10-0:20", "strip 0:30-0:40"], "turn it", ""),
        # numbers that are no times
        ("4 wheel nuts off", ONE, [], "4 wheel nuts off", ""),
        ("Strip 3 wires", ONE, [], "Strip 3 wires", ""),
        ("strip 3 wires", ONE, [], "strip 3 wires", ""),
        ("12 bolts out", ONE, [], "12 bolts out", ""),
        ("2 to 3 turns back", ONE, [], "2 to 3 turns back", ""),
        ("90 degrees more", ONE, [], "90 degrees more", ""),
        ("Drain 0.5 l", ("drain",), [], "Drain 0.5 l", ""),
        ("drain 0.5 l", ("drain",), [], "drain 0.5 l", ""),
        ("drain 0:05-0:10 Drain 0.5 l", ("drain", "fill"), ["drain 0:05-0:10"], "Drain 0.5 l", ""),
        ("Left side: two bolts", ONE, [], "Left side: two bolts", ""),
        ("1:15-1:20 Left side: two bolts", ONE, ["strip 1:15-1:20"], "Left side: two bolts", ""),
        ("0:42-1:15 2 to 3 turns back", ONE, ["strip 0:42-1:15"], "2 to 3 turns back", ""),
        ("Mix resin 2:1", ONE, [], "Mix resin 2:1", ""),
        ("Fit a 5x10 key {#key-5-10}", ONE, [], "Fit a 5x10 key", "key-5-10"),
        ("Fit the {blue} clip", ONE, [], "Fit the {blue} clip", ""),
    ],
)
def test_heading_is_cut_into_spans_command_and_id(
    text: str, recordings: tuple[str, ...], expected: list[str], command: str, step_id: str
) -> None:
    heading = read_heading(text, recordings)
    assert (spans(heading), heading.command, heading.id, heading.flaws) == (expected, command, step_id, ())


@pytest.mark.parametrize(
    ("text", "recordings", "what", "instead"),
    [
        ("0:42 Prise off the cap", ONE, "the step has a start (0:42) but no end", "write it behind: 0:42-end"),
        (
            "1:75-2:00 Prise off the cap",
            ONE,
            "1:75 is not a time",
            "write minutes:seconds such as 1:15 or 1:02:15, seconds up to 59",
        ),
        (
            "1:2-1:30 Prise off the cap",
            ONE,
            "1:2 is not a time",
            "write minutes:seconds such as 1:15 or 1:02:15, seconds up to 59",
        ),
        (
            "0:42-1:15 Prise off the cap",
            TWO,
            "0:42-1:15 does not say of which recording",
            "put its name before the time: strip or refit",
        ),
        (
            "Prise off the cap 0:42-1:15",
            ONE,
            "the time 0:42-1:15 stands inside the command",
            "put it first: 0:42-1:15 Prise off the cap",
        ),
        (
            "0:42-1:15",
            ONE,
            "the step has no command",
            "write what to do behind the time, such as: Prise off the dust cap",
        ),
        (
            "0:42-1:15 Cap off {#Dust Cap}",
            ONE,
            "the id 'Dust Cap' is not allowed",
            "write small letters, digits and -: {#dust-cap}",
        ),
    ],
)
def test_heading_with_one_fault_says_what_to_write_instead(
    text: str, recordings: tuple[str, ...], what: str, instead: str
) -> None:
    assert told("heading", read_heading(text, recordings).flaws) == [(what, instead)]


def test_span_keeps_thousandths_exactly() -> None:
    (span,) = read_heading("0:00.001-0:00.1 Blink", ONE).spans
    assert (span.start.as_integer_ratio(), span.end.as_integer_ratio()) == ((1, 1000), (1, 10))


def test_slug_takes_the_first_five_words() -> None:
    assert slug("Prise off the dust-cap (left) and lay it down") == "prise-off-the-dust-cap"
    assert slug("½ · –") == "step"
