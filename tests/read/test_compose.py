"""A new procedure file from a rough list."""

from fractions import Fraction

from procbuilder.model.drafted import Landing, ProposedField, ProposedStep
from procbuilder.model.heard import Sentence
from procbuilder.model.origin import Origin, OriginKind, Place
from procbuilder.model.procedure import NamedFile
from procbuilder.model.timecode import Span
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.wording.drafts import draft_texts
from procbuilder.read.compose import compose, receipts
from procbuilder.read.procedure import read_text
from procbuilder.read.steplist import read_step_list
from procbuilder.read.text import TextFile

TEXTS = draft_texts(ENGLISH)
HERE = Place("procedure.md", 1)
FILMS = [NamedFile("strip", "recordings/strip.mp4", HERE), NamedFile("refit", 'recordings/re"fit.mp4', HERE)]


def test_the_new_file_is_read_back_with_every_step_of_the_list() -> None:
    steps, _ = read_step_list(TextFile("l", "strip 0:42 dust cap off\nstrip 1:15 pin: out.\nrefit 0:05 cap on\n"))
    durations = {"strip": Fraction(90), "refit": Fraction(21, 2)}
    text = compose(
        "Hub",
        steps,
        TEXTS,
        recordings=FILMS,
        narration=[NamedFile("strip", "narration/strip.srt", HERE)],
        durations=durations,
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


def test_words_that_begin_with_a_comma_add_no_footage() -> None:
    steps, _ = read_step_list(TextFile("l.csv", 'start,end,step\n1,2,", 0:05-0:06 cap off"\n'))
    procedure, _ = read_text(compose("Hub", steps, TEXTS, recordings=FILMS[:1], durations={}))
    assert [str(span) for span in procedure.steps[0].spans] == ["strip 0:01-0:02"]


def test_no_value_is_invented() -> None:
    procedure, _ = read_text(compose("Hub", [], TEXTS, recordings=FILMS[:1], durations={}))
    assert procedure.front_fields == ()
    assert (procedure.front["number"], procedure.front["author"], procedure.front["item"]) == ("", "", "")


def test_proposed_steps_are_read_back_with_the_moment_of_each_field() -> None:
    said = Origin(OriginKind.SAID, "strip", Fraction(12))
    steps = [
        ProposedStep(
            "Remove 2 bolts",
            Span("strip", Fraction(12), Fraction(31, 2)),
            (
                ProposedField("Off", ("2 x bolt",), said),
                ProposedField("Key point", ("hold it; do not | drop it", "it rolls"), said),
            ),
        ),
        ProposedStep("Remove the wheel", None, (ProposedField("Note", ("done before the film",), said),)),
    ]
    before = [ProposedField("Note", ("time said: an hour",), said)]
    text = compose("Hub", [], TEXTS, recordings=FILMS, durations={}, proposed=steps, before=before)
    procedure, problems = read_text(text)
    assert problems == ()
    assert [(step.command, step.id, [str(span) for span in step.spans]) for step in procedure.steps] == [
        ("Remove 2 bolts", "remove-2-bolts", ["strip 0:12-0:15.500"]),
        ("Remove the wheel", "remove-the-wheel", []),
    ]
    off, point = procedure.steps[0].fields
    assert (off.item.words, off.origin.words) == ("2 x bolt", "said strip 0:12")
    assert (point.part("point"), point.part("reason")) == ("hold it; do not | drop it", "it rolls")
    assert [entry.part("text") for entry in procedure.front_fields] == ["time said: an hour"]


def test_receipts_say_where_each_sentence_went() -> None:
    sentence = Sentence("Cover off.", HERE, "strip", Fraction(5), Fraction(6), 1)
    landings = [Landing(sentence, 3, "command"), Landing(sentence, 0, "talk", aside=True), Landing(sentence, 0, "Note")]
    assert receipts(landings).splitlines()[2:] == [
        "said strip 0:05: step 3 (command): Cover off.",
        "said strip 0:05: set aside (talk): Cover off.",
        "said strip 0:05: Note: Cover off.",
    ]
