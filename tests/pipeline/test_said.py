"""What the stages find is facts: each of their sentences is reached, and said in English and in German."""

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.keep.cache import Cache
from procbuilder.media.limits import TOO_MANY
from procbuilder.model.edition import Figure
from procbuilder.model.facts import Phrase, StepRef
from procbuilder.model.fault import Beyond, CannotRead, Cause, Unreadable, UnreadablePicture
from procbuilder.model.footage import TYPED_MOMENT, Damage, Still, Weakness
from procbuilder.model.marks import PictureState
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import NamedFile, Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.clips import damaged
from procbuilder.pipeline.figures import weak
from procbuilder.pipeline.log import log
from procbuilder.pipeline.material import Material, unreadable
from procbuilder.pipeline.narration import read_narration
from procbuilder.pipeline.new import new
from procbuilder.pipeline.outputs import Given, printed
from procbuilder.pipeline.paths import find
from procbuilder.pipeline.progress import silent
from procbuilder.pipeline.recordings import Recordings
from procbuilder.publish.language import language_of
from procbuilder.publish.pdf import CannotPrint, Printed
from procbuilder.publish.wording import files, pictures
from procbuilder.publish.wording.problems import said
from procbuilder.read.procedure import read_procedure
from tests.pipeline.conftest import film
from tests.publish.test_pdf_odd import EMPTY

GERMAN = language_of("de-DE")
STEPS = "".join(f"### Turn it {number} {{#turn-{number}}}\n\n" for number in range(6))
ROWS = "who,when,step,minutes\nab,2026-05-04,turn-9,4\nab,2999-05-04,drain,4\n"
EXPORT = (
    '{"format": "procbuilder times 1", "procedure": "P-9", '
    '"rows": [{"who": "ab", "when": "2026-05-04", "step": "drain", "minutes": "4"}]}'
)
STEP = Step(Place("procedure.md", 12), "Lift off the cover", "cover-off", True)
LISTED = {
    ("step-list", "no-recording"), ("step-list", "which-recording"), ("practice-log", "other-procedure"),
    ("practice-log", "near-step"), ("practice-log", "no-step"), ("practice-log", "no-step-of-many"),
    ("practice-log", "to-come"),
}  # fmt: skip


def _folder(path: Path, text: str) -> Path:
    path.mkdir()
    (path / "procedure.md").write_text(text, encoding="utf-8")
    return path


def _given(path: Path, text: str) -> Path:
    path.write_text(text, encoding="utf-8")
    return path


def _logged(tmp_path: Path) -> Iterator[Problem]:
    """Rows for other steps and for another procedure."""
    many = _folder(tmp_path / "many", f"---\nnumber: P-7\n---\n# Pump\n\n{STEPS}")
    few = _folder(tmp_path / "few", "# Pump\n\n### Turn it {#turn}\n")
    yield from log(many, _given(tmp_path / "rows.csv", ROWS)).problems
    yield from log(many, _given(tmp_path / "times.json", EXPORT)).problems
    yield from log(few, _given(tmp_path / "rows.csv", ROWS)).problems


def _made(tmp_path: Path) -> Iterator[Problem]:
    """Lines of a rough list whose recording is unknown or not named."""
    films = [film(tmp_path / "strip.mp4"), film(tmp_path / "refit.mp4")]
    rough = _given(tmp_path / "rough.txt", "0:01 Lift it\nother 0:02 Turn it\n")
    yield from new(tmp_path / "new", films, rough, [], silent).problems


def _named(tmp_path: Path) -> Iterator[Problem]:
    """Paths that lead nowhere."""
    folder = _folder(tmp_path / "named", "# T\n")
    (folder / "shut.mp4").mkdir()
    for path in ("a" * 5000, "../../out.mp4", "gone.mp4", "shut.mp4"):
        found = find(folder, NamedFile("", path, STEP.place))
        assert isinstance(found, Problem)
        yield found


def _unreadable(tmp_path: Path) -> Iterator[Problem]:
    material = Material(tmp_path, (STEP,), Recordings((), (), ()), Cache(tmp_path))
    path = tmp_path.resolve() / "pictures" / "cap.jpg"
    yield unreadable(Unreadable(path, Cause.DAMAGED), material, STEP)
    yield unreadable(Beyond(path, TOO_MANY), material, STEP)
    yield unreadable(UnreadablePicture(path, Phrase(Cause.NO_STILL)), material, STEP)
    yield unreadable(CannotRead(path, Phrase(Cause.PERMISSION)), material, STEP)


def _printed(tmp_path: Path) -> Iterator[Problem]:
    """PDFs that cannot be set."""
    given = Given(EMPTY, tmp_path, 0, tmp_path)
    for form in files.PATTERNS["not-printed"]:

        def fails(*_given: object, form: str = form, **_named: object) -> Printed:
            raise CannotPrint(form, "cap.jpg")

        yield from printed("procedure.pdf", fails, given).problems


def _pictured() -> Iterator[Problem]:
    for weakness in Weakness:
        still = Still("a.jpg", 4, 3, "strip", Fraction(69), "", TYPED_MOMENT, (weakness, Weakness.DARK))
        yield from weak(StepRef("cover-off", 1), STEP, [Figure(still, "", PictureState.DONE)])
    for until in (Fraction(142, 10), Fraction(169, 10)):
        yield damaged(Damage(Span("strip", Fraction(142, 10), until), 12), STEP)


@pytest.fixture
def found(tmp_path: Path) -> list[Problem]:
    rooms = (
        _logged(tmp_path),
        _made(tmp_path),
        _named(tmp_path),
        _unreadable(tmp_path),
        _printed(tmp_path),
        _pictured(),
    )
    return [problem for room in rooms for problem in room]


def test_every_sentence_of_the_stages_is_reached_and_said_in_both_languages(found: list[Problem]) -> None:
    patterns = {rule: forms for subject in (files, pictures) for rule, forms in subject.PATTERNS.items()}
    del patterns["narration"]
    forms = {(rule, form) for rule, forms in patterns.items() for form in forms}
    assert {(problem.rule, problem.form) for problem in found} == forms | LISTED
    for problem in found:
        assert said(problem).what != said(problem, GERMAN).what
        assert "None" not in f"{said(problem)}{said(problem, GERMAN)}"


def test_questions_and_advice_of_a_build_can_be_answered(found: list[Problem]) -> None:
    """Rows to add and a rough list are given once and not kept: there is nothing to answer in."""
    kept = [problem for problem in found if problem.rule not in ("practice-log", "step-list")]
    assert [p for p in kept if p.severity is not Severity.STOP and not p.subject] == []


def test_german_sentences(found: list[Problem]) -> None:
    told = {(problem.rule, problem.form): str(said(problem, GERMAN)) for problem in found}
    assert told["step-list", "which-recording"] == (
        "keine Aufnahme ist genannt; strip wurde genommen für: Lift it – "
        "den Namen vor die Zeit setzen: strip oder refit"
    )
    assert told["practice-log", "no-step-of-many"].endswith(
        "eine ihrer Kennungen schreiben: turn-0, turn-1, turn-2, turn-3, turn-4 …"
    )
    assert told["weak-picture", "covered"].startswith(
        'das Bild zu "Lift off the cover" ist verdeckt und dunkel, bei strip 1:09 – beim nächsten Filmen die Hand'
    )
    assert told["damaged", "damaged-between"] == (
        "12 Bilder sind beschädigt in Aufnahme strip zwischen 0:14 und 0:16 – noch einmal von der Kamera kopieren "
        "oder weglassen: - Skip: strip 0:14-0:17 | beschädigt"
    )
    assert told["unreadable", "denied"] == (
        "pictures/cap.jpg: lässt sich nicht lesen (das ist nicht erlaubt) – "
        "Leserecht verschaffen oder die Datei neu hierher kopieren"
    )


def test_narration_that_is_no_text_is_a_question_about_its_file(tmp_path: Path) -> None:
    front = "---\nrecordings: {a: a.mp4, b: b.mp4}\nnarration: {a: nul.srt, b: latin.srt}\n---\n# T\n"
    folder = _folder(tmp_path / "told", front)
    (folder / "nul.srt").write_bytes(b"1\n\0")
    (folder / "latin.srt").write_bytes("1\ngelöst".encode("latin-1"))
    problems = read_narration(read_procedure(folder)[0])[1]
    assert [(problem.question, str(said(problem))) for problem in problems] == [
        ("narration: nul.srt",
         "nul.srt:2: the file holds a NUL byte, so it is no text file – save the file as UTF-8 text and try again"),
        ("narration: latin.srt",
         "latin.srt:2: a character is not UTF-8 – save the file as UTF-8 text and try again"),
    ]  # fmt: skip
