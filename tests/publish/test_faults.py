"""A fault is facts; each of its sentences is said in English and in German, with the true cause."""

import errno
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.edit.serve import NotBuilt, PortTaken
from procbuilder.media.limits import TOO_MANY
from procbuilder.model import fault as faults
from procbuilder.model.fault import Cause, Fault, cause_of
from procbuilder.model.timecode import Span
from procbuilder.publish.language import ENGLISH, language_of
from procbuilder.publish.wording.causes import CAUSES
from procbuilder.publish.wording.faults import FAULTS, said_fault

GERMAN = language_of("de-DE")
PATH = Path("hub/a.txt")

SAID: tuple[tuple[Fault, str, str], ...] = (
    (faults.NotText(PATH, 3, "nul"),
     "hub/a.txt:3: the file holds a NUL byte, so it is no text file – save the file as UTF-8 text and try again",
     "hub/a.txt:3: die Datei enthält ein NUL-Byte, ist also keine Textdatei – "
     "die Datei als UTF-8-Text speichern und erneut versuchen"),
    (faults.TooMuchNarration(2, 1),
     "2 subtitle files for 1 recording – give at most one for each recording, in the same order",
     "2 Untertiteldateien für 1 Aufnahme – höchstens eine je Aufnahme angeben, in derselben Reihenfolge"),
    (faults.Unreadable(PATH, Cause.NONE_AT, Fraction(75)),
     "hub/a.txt: cannot be read as a recording (no picture can be decoded at 1:15) – "
     "play it once, or copy it again from the phone",
     "hub/a.txt: lässt sich nicht als Aufnahme lesen (bei 1:15 lässt sich kein Bild decodieren) – "
     "einmal abspielen oder noch einmal vom Telefon kopieren"),
    (faults.Unreadable(PATH, Cause.NONE_WITHIN, Span("strip", Fraction(20), Fraction(25))),
     "hub/a.txt: cannot be read as a recording (no picture can be decoded in strip 0:20-0:25) – "
     "play it once, or copy it again from the phone",
     "hub/a.txt: lässt sich nicht als Aufnahme lesen (in strip 0:20-0:25 lässt sich kein Bild decodieren) – "
     "einmal abspielen oder noch einmal vom Telefon kopieren"),
    (faults.NotQualified("gas fitter", date(2026, 3, 31)),
     "the qualification gas fitter ended on 2026-03-31 – nothing was built; add to workshop.toml above the "
     'procedure: [[qualification]] with name = "gas fitter", holder = "who", valid_until = 2027-03-31',
     "die Befähigung gas fitter ist am 31.03.2026 abgelaufen – nichts wurde erstellt; in workshop.toml über der "
     'Arbeitsanweisung ergänzen: [[qualification]] mit name = "gas fitter", holder = "wer", valid_until = 2027-03-31'),
    (PortTaken(8765),
     "port 8765 is taken by another program – name another one: --port 8766",
     "Port 8765 ist von einem anderen Programm belegt – einen anderen nennen: --port 8766"),
)  # fmt: skip


def every_kind() -> Iterator[Fault]:
    """One fault of each kind, form and cause."""
    yield from (fault for fault, _, _ in SAID)
    yield from (faults.Unreadable(PATH, cause) for cause in Cause if "{" not in CAUSES[cause])
    yield faults.Beyond(PATH, TOO_MANY)
    yield from (faults.UnreadablePicture(PATH, cause_of(number)) for number in errno.errorcode)
    yield from (faults.CannotWrite(PATH, number) for number in (*errno.errorcode, None))
    yield from (kind(PATH) for kind in (faults.NoProcedure, faults.NotThere, faults.NoText, faults.AlreadyThere))
    yield from (kind(PATH) for kind in (faults.ChangedMeanwhile, faults.Busy, NotBuilt))
    yield faults.NotText(PATH, 3, "not-utf-8")
    yield faults.NotQualified("gas fitter")
    yield faults.CannotRead(PATH, cause_of(errno.EACCES))


@pytest.mark.parametrize(("fault", "english", "german"), SAID)
def test_a_fault_is_said_in_the_language_of_its_reader(fault: Fault, english: str, german: str) -> None:
    assert (said_fault(fault), said_fault(fault, GERMAN)) == (english, german)


def test_every_sentence_of_every_fault_is_said_and_no_other_is_kept() -> None:
    said = {(type(fault).__name__, fault.form) for fault in every_kind()}
    assert said == {(kind, form) for kind, forms in FAULTS.items() for form in forms}
    for fault in every_kind():
        english, german = said_fault(fault, ENGLISH), said_fault(fault, GERMAN)
        assert english != german
        assert "{" not in english + german
        assert " – " not in str(fault)


@pytest.mark.parametrize(
    ("number", "english", "german"),
    [
        (errno.ENOSPC, "(the disk is full) – free some space", "(der Datenträger ist voll) – Platz schaffen"),
        (errno.EROFS, "(it lies where nothing may be written) – make the folder writable",
         "(dort darf nichts geschrieben werden) – den Ordner beschreibbar machen"),
        (errno.EISDIR, "(it is a folder) – move the folder away", "(es ist ein Ordner) – den Ordner verschieben"),
        (errno.ENAMETOOLONG, "(its name is too long) – take a shorter name", "(der Name ist zu lang) – einen kürzeren"),
        (errno.ENOLCK, f"(error {errno.ENOLCK} of the system) – free some", f"(Fehler {errno.ENOLCK} des Systems) –"),
    ],
)  # fmt: skip
def test_a_file_that_cannot_be_written_names_the_true_cause(number: int, english: str, german: str) -> None:
    """The numbers are those of POSIX.1 <errno.h>."""
    fault = faults.CannotWrite(PATH, number)
    assert english in said_fault(fault)
    assert german in said_fault(fault, GERMAN)
