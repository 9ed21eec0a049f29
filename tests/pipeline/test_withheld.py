"""A line that was to hide something is not understood: no picture, clip or word of its step comes out."""

import json
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.keep.cache import Cache
from procbuilder.pipeline.build import build
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.progress import silent
from procbuilder.pipeline.recordings import read
from procbuilder.pipeline.stills import thumbnail
from procbuilder.read.procedure import read_procedure
from tests.pipeline.text import WHOLE

SLIP = "- Hdie: 0:01 0.1,0.7,0.3,0.8\n"
TEXT = WHOLE.replace("- Off: belt cover |", SLIP + "- Off: belt cover |").replace(
    "recordings: {strip: recordings/strip.mp4}", "recordings: {strip: recordings/strip.mp4}\nnarration: strip.srt"
)
LINE = TEXT[: TEXT.index(SLIP)].count("\n") + 1
CUES = "1\n00:00:00,600 --> 00:00:01,900\nthe secret word\n\n2\n00:00:02,100 --> 00:00:03,400\nthe other word\n"


@pytest.fixture
def home(folder: Callable[[str], Path]) -> Path:
    made = folder(TEXT)
    (made / "strip.srt").write_text(CUES, encoding="utf-8")
    return made


def test_nothing_of_a_withheld_step_comes_out(home: Path) -> None:
    built = build(home)
    told = f"withheld: line {LINE} is not understood"
    off, on, _ = built.edition.steps
    assert ([place.line for place in off.withheld], off.figures, off.clip, off.captions) == ([LINE], (), None, ())
    assert (on.withheld, on.as_found, len(on.figures), bool(on.clip)) == ((), None, 1, True)
    for page in ("index.html", "phone.html"):
        text = (built.out / page).read_text(encoding="utf-8")
        assert told in text
        assert ("the secret word" in text, "the other word" in text) == (False, True)
    data = json.loads((built.out / "edition.json").read_text(encoding="utf-8"))
    assert data["sections"][1]["steps"][0]["withheld"] == [f"procedure.md:{LINE}"]
    assert sorted(path.name for path in (built.out / "captions").iterdir()) == ["cover-on.vtt"]
    shown = {on.figures[0].still.file, on.clip.file if on.clip else ""}
    assert {path.name for path in (built.out / "media").iterdir()} == shown


def test_no_small_picture_is_made_of_it_either(home: Path) -> None:
    procedure, _ = read_procedure(home)
    cache = Cache(home)
    material = Material(home, procedure.steps, read(procedure, cache, silent), cache)
    made = [thumbnail("strip", Fraction(tenths, 10), (), material) is not None for tenths in (5, 10, 20, 21, 30)]
    assert made == [False, False, False, True, True]


def test_put_right_it_is_shown_again(home: Path) -> None:
    build(home)
    (home / "procedure.md").write_text(TEXT.replace("- Hdie:", "- Hide:"), encoding="utf-8")
    built = build(home)
    assert (built.edition.steps[0].withheld, len(built.edition.steps[0].figures)) == ((), 1)


def test_a_sign_that_turns_a_number_is_shown_as_its_code_in_every_output(
    folder: Callable[[str], Path],
) -> None:
    home = folder(WHOLE.replace("M5 bolt | look up", "M5 bolt | \u202e51 N·m").replace("narration", "n"))
    built = build(home)
    assert built.edition.torques[0].value.text == "⟨U+202E⟩51 N·m"
    for name in ("index.html", "phone.html", "edition.json", "sheets.html"):
        text = (built.out / name).read_text(encoding="utf-8")
        assert "\u202e" not in text, name
    assert "⟨U+202E⟩51" in (built.out / "index.html").read_text(encoding="utf-8")
