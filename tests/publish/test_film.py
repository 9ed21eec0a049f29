"""The film of the whole job on the page, in the PDF and in the data."""

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.film import Chapter, Film
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue
from procbuilder.publish.data import edition_json
from procbuilder.publish.html import page, phone
from tests.publish.blocks import TEMPLATES, read
from tests.publish.sheet import sheet, whole

WORDS = "Film of the whole job, 4:12"


@pytest.fixture(scope="module")
def filmed(edition: Edition) -> Edition:
    chapters = (Chapter(Fraction(0), edition.title), Chapter(Fraction(12), "1  Chock the other wheel", 1))
    cue = Cue(Place("strip.srt", 1), Fraction(20), Fraction(22), "push them home")
    return replace(edition, film=Film("film-1.mp4", Fraction("252.4"), 1280, 720, True, chapters, (cue,)))


def test_the_page_links_it_and_plays_it_with_its_captions(filmed: Edition) -> None:
    html = page(filmed, templates=TEMPLATES)
    assert f'<a class="target" href="media/film-1.mp4">{WORDS}</a>' in html
    film = html[html.index('<section class="film"') :]
    film = film[: film.index("</section>")]
    assert 'preload="none"' in film
    assert '<track kind="captions" label="Words" srclang="en-GB" src="data:text/vtt;base64,' in film


def test_the_phone_file_says_where_it_is_and_does_not_carry_it(filmed: Edition, media: Path) -> None:
    html = phone(filmed, templates=TEMPLATES, media=media).decode()
    assert "The film of the whole job, 4:12, is not in this file; it lies beside index.html." in read(html)["_overview"]
    assert "film-1.mp4" not in html


def test_the_pdf_and_the_data_tell_its_length(filmed: Edition, media: Path) -> None:
    assert f"{WORDS}: media/film-1.mp4 beside the page" in whole(sheet(filmed, media))
    film = json.loads(edition_json(filmed))["film"]
    assert film["seconds"] == 252.4
    assert film["chapters"][1] == {"start": 12, "number": 1}


def test_without_a_film_nothing_is_said_of_it(edition: Edition) -> None:
    assert 'class="film"' not in page(edition, templates=TEMPLATES)
