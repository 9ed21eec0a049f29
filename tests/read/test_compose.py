"""A new procedure file from a rough list."""

from fractions import Fraction

from procbuilder.model.origin import Place
from procbuilder.model.procedure import NamedFile
from procbuilder.read.compose import compose
from procbuilder.read.procedure import read_text
from procbuilder.read.steplist import read_step_list
from procbuilder.read.text import TextFile

HERE = Place("procedure.md", 1)
FILMS = [NamedFile("strip", "recordings/strip.mp4", HERE), NamedFile("refit", 'recordings/re"fit.mp4', HERE)]


def test_the_new_file_is_read_back_with_every_step_of_the_list() -> None:
    steps, _ = read_step_list(TextFile("l", "strip 0:42 dust cap off\nstrip 1:15 pin: out.\nrefit 0:05 cap on\n"))
    durations = {"strip": Fraction(90), "refit": Fraction(21, 2)}
    text = compose(
        "Hub", steps, recordings=FILMS, narration=[NamedFile("strip", "narration/strip.srt", HERE)], durations=durations
    )
    procedure, problems = read_text(text)
    assert problems == ()
    assert [(step.command, step.id, str(step.spans[0])) for step in procedure.steps] == [
        ("Dust cap off", "dust-cap-off", "strip 0:42-1:15"),
        ("Pin: out", "pin-out", "strip 1:15-1:30"),
        ("Cap on", "cap-on", "refit 0:05-0:10.500"),
    ]
    assert [recording.path for recording in procedure.front.recordings] == [film.path for film in FILMS]
    assert procedure.front["status"] == "draft"


def test_no_value_is_invented() -> None:
    procedure, _ = read_text(compose("Hub", [], recordings=FILMS[:1], durations={}))
    assert procedure.front_fields == ()
    assert (procedure.front["number"], procedure.front["author"], procedure.front["item"]) == ("", "", "")
