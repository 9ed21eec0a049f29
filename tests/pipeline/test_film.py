"""The film of a whole job: made once, linked from the page, never longer than it may be."""

import json
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import av
import pytest

from procbuilder.media import film as film_room
from procbuilder.model.edition import Edition
from procbuilder.model.film import Film
from procbuilder.pipeline.build import Built, Options, build
from procbuilder.pipeline.shipped import shipped
from procbuilder.publish.storyboard import storyboard
from procbuilder.publish.tokens import panels
from procbuilder.report.results import outcome
from tests.pipeline.text import WHOLE

Make = Callable[[str], Path]

MARKED = WHOLE.replace(
    "- Off: belt cover",
    "- Picture: 0:01 | the cover\n  - Mark: ring | 0.5,0.5 | here\n- Skip: 0:01.500-0:02 | talk\n- Off: belt cover",
)


def _film(built: Built) -> Film:
    assert built.edition.film
    return built.edition.film


def _cards(edition: Edition) -> Fraction:
    scenes = storyboard(edition, panels(shipped("templates")))
    return sum((card.seconds for scene in scenes for card in (*scene.before, *scene.after)), Fraction(0))


def test_the_film_is_as_long_as_its_cards_its_marked_pictures_and_the_footage_without_skips(folder: Make) -> None:
    """Footage of 1.5 s and 1.5 s, of which half a second is skipped; the marked picture stands still for 3 s."""
    built = build(folder(MARKED), options=Options(film=True))
    film = _film(built)
    assert film.seconds == _cards(built.edition) + 3 + Fraction("2.5")
    assert built.film
    with av.open(str(built.film)) as container:
        assert container.duration is not None
        assert container.duration / 1e6 == pytest.approx(float(film.seconds), abs=0.02)
        titles = [chapter["metadata"]["title"] for chapter in container.chapters()]
    steps = ["1  Lift off the belt cover", "2  Put the belt cover on", "3  Check that the belt runs free"]
    assert titles == ["Drill belt cover – off and on", *steps, "End"]
    assert [chapter.title for chapter in film.chapters] == titles


def test_the_page_links_the_film_and_the_phone_file_says_where_it_is(folder: Make) -> None:
    built = build(folder(WHOLE), options=Options(film=True))
    film, out = _film(built), built.folder / "out"
    minutes, seconds = divmod(round(film.seconds), 60)
    words = f"Film of the whole job, {minutes}:{seconds:02}"
    assert f'href="media/{film.file}">{words}</a>' in (out / "index.html").read_text()
    assert (
        f"{words[:21]}, {minutes}:{seconds:02}, is not in this file".replace("Film", "The film")
        in (out / "phone.html").read_text()
    )
    entries = {entry["path"]: entry["kind"] for entry in json.loads((out / "manifest.json").read_text())["files"]}
    assert entries[f"media/{film.file}"] == "film"
    assert outcome(built)[-1] == f"Film: {out / 'media' / film.file}, {minutes}:{seconds:02}"


def test_the_captions_of_the_film_are_said_where_their_footage_is_shown(folder: Make) -> None:
    home = folder(MARKED.replace("author: demo", "author: demo\nnarration: {strip: strip.srt}"))
    (home / "strip.srt").write_text(
        "1\n00:00:00,600 --> 00:00:01,100\nCover off.\n\n2\n00:00:02,100 --> 00:00:03,000\nNow on again.\n"
    )
    built = build(home, options=Options(film=True))
    film = _film(built)
    starts = {chapter.title: chapter.start for chapter in film.chapters}
    scenes = storyboard(built.edition, panels(shipped("templates")))
    cards = {scene.title: sum(card.seconds for card in scene.before) for scene in scenes}
    first, second = "1  Lift off the belt cover", "2  Put the belt cover on"
    assert [(cue.text, cue.start) for cue in film.captions] == [
        ("Cover off.", starts[first] + cards[first] + 3 + Fraction("0.1")),
        ("Now on again.", starts[second] + cards[second] + Fraction("0.1")),
    ]
    assert "Now on again." in (home / "out" / "captions" / "_film.vtt").read_text()


def test_a_reserved_step_is_a_card_without_footage(folder: Make) -> None:
    plain = build(folder(WHOLE), options=Options(film=True))
    text = WHOLE.replace("- Off: belt", "- Reserved: electrician\n- Off: belt")
    (plain.folder / "procedure.md").write_text(text)
    built = build(plain.folder, options=Options(film=True))
    assert _film(built).seconds == _cards(built.edition) + Fraction("1.5")
    assert _film(plain).seconds == _cards(plain.edition) + 3


def test_a_film_is_made_only_when_wanted_and_stays_while_it_fits(folder: Make, monkeypatch: pytest.MonkeyPatch) -> None:
    home = folder(WHOLE)
    assert build(home).edition.film is None
    film = _film(build(home, options=Options(film=True)))

    def made(*_args: object, **_names: object) -> None:
        raise AssertionError("made again")

    monkeypatch.setattr(film_room, "make", made)
    assert _film(build(home)) == film
    assert _film(build(home, options=Options(film=True))) == film
    (home / "procedure.md").write_text(WHOLE.replace("keep it level", "keep it quite level"))
    dropped = build(home)
    assert dropped.edition.film is None
    assert list((home / "out" / "media").glob("film-*")) == []
    assert outcome(dropped)[-1] == f"The film did not fit any more; make it anew with: procbuilder build {home} --film"
    assert outcome(build(home))[-1].startswith("PDF:")


def test_another_hidden_region_makes_another_film(folder: Make) -> None:
    home = folder(WHOLE)
    film = _film(build(home, options=Options(film=True)))
    (home / "procedure.md").write_text(WHOLE.replace("- Off: belt", "- Hide: 0:01 0,0,0.5,0.5\n- Off: belt"))
    assert _film(build(home, options=Options(film=True))).file != film.file


def test_a_region_hidden_in_one_step_is_hidden_in_every_picture_of_that_footage(folder: Make) -> None:
    """The other step shows a moment of the first one's footage, and some of that footage in its clip."""
    shared = WHOLE.replace("0:02-0:03.500 Put", "0:01.500-0:03.500 Put")
    pointed = shared.replace("- On: belt", "- Picture: 0:01.800 | before\n- On: belt")
    home = folder(pointed)
    plain = build(home).edition.steps[1]
    hidden_text = pointed.replace("- Off: belt", "- Hide: 0:00.500 0,0,0.5,0.5\n- Off: belt")
    (home / "procedure.md").write_text(hidden_text)
    hidden = build(home).edition.steps[1]
    assert plain.clip
    assert hidden.clip
    assert hidden.figures[0].still.file != plain.figures[0].still.file
    assert hidden.clip.file != plain.clip.file
