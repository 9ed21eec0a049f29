"""What the film of the whole job shows, scene by scene."""

from dataclasses import replace
from fractions import Fraction

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.film import Card, CardLine, Scene, Style
from procbuilder.model.origin import Place
from procbuilder.publish import words
from procbuilder.publish.storyboard import storyboard
from procbuilder.publish.tokens import panels
from tests.publish.blocks import TEMPLATES
from tests.publish.sheet import with_step
from tests.publish.typed import typed

PANELS = panels(TEMPLATES)


def _said(scene: Scene) -> list[str]:
    lines = [line for card in (*scene.before, *scene.after) for line in card.lines]
    return [f"{line.label}: {line.text}" if line.label else line.text for line in lines]


@pytest.fixture(scope="module")
def scenes(edition: Edition) -> dict[str, Scene]:
    return {scene.title: scene for scene in storyboard(edition, PANELS)}


def test_the_film_begins_with_title_and_dangers_and_has_every_step_in_order(edition: Edition) -> None:
    titles = [scene.title for scene in storyboard(edition, PANELS)]
    assert titles[:2] == [edition.title, "Dangers of the whole job"]
    assert titles[2:-1] == [f"{step.number}  {step.command}" for step in edition.steps]
    assert titles[-1] == "End"


def test_the_title_says_which_edition_it_is_and_what_comes_first(edition: Edition) -> None:
    said = _said(storyboard(edition, PANELS)[0])
    assert said[:2] == ["P-014 · revision B · DRAFT – not approved", edition.title]
    assert said[-2:] == [words.PRIORITY, words.QUALIFIED]


def test_a_reserved_step_says_by_whom_it_is_done_and_shows_nothing(edition: Edition, scenes: dict[str, Scene]) -> None:
    step = next(step for step in edition.steps if step.reserved)
    scene = scenes[f"{step.number}  {step.command}"]
    assert (scene.step, scene.points) == ("", ())
    assert "Stop: done by a licensed gas fitter" in _said(scene)
    assert any(line.startswith("Before you go on: ") for line in _said(scene))


def test_standing_dangers_stand_on_the_card_and_above_the_footage(scenes: dict[str, Scene]) -> None:
    scene = scenes["3  Prise off the dust cap"]
    assert scene.standing == "Still dangerous: DANGER the trailer can drop off the stands"
    said = _said(scene)
    assert said[1:4] == [
        "Still dangerous: DANGER the trailer can drop off the stands"
        " – keep both stands under the axle, nobody underneath",
        "Leave in place: 2 x axle stand; wheel chock",
        "CAUTION: the bar can slip: cut hand – push away from you, other hand clear",
    ]


def test_hazards_stand_before_the_command_with_the_worst_first(scenes: dict[str, Scene]) -> None:
    lines = scenes["2  Raise the axle and set both stands under it"].before[0].lines
    signals = [line.label for line in lines if line.style is Style.SIGNAL]
    assert signals == ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    styles = [line.style for line in lines]
    assert styles.index(Style.TITLE) > max(i for i, style in enumerate(styles) if style is Style.SIGNAL)


def test_a_hold_point_follows_the_footage(scenes: dict[str, Scene]) -> None:
    (card,) = scenes["2  Raise the axle and set both stands under it"].after
    assert card.lines[-1] == CardLine(
        Style.STOP,
        "HOLD: before the next step this must be checked: rock the trailer: it must not move on the stands"
        " – by the senior technician",
    )


def test_points_go_below_the_footage_and_on_the_card_where_there_is_none(
    edition: Edition, scenes: dict[str, Scene]
) -> None:
    filmed = scenes["3  Prise off the dust cap"]
    assert filmed.points[0] == "Key point: turn the hub a little after each push – because a bent cap lets water in"
    assert not any(line.startswith("Key point: ") for line in _said(filmed))
    unfilmed = storyboard(with_step(edition, 3, clip=None), PANELS)[4]
    assert unfilmed.points == ()
    assert "Key point: turn the hub a little after each push – because a bent cap lets water in" in _said(unfilmed)


def test_a_mistake_on_film_is_told_first(edition: Edition) -> None:
    mistake = typed("Mistake: pushed too far | small pushes all round")
    scene = storyboard(with_step(edition, 3, notes=(mistake,)), PANELS)[4]
    assert scene.points[0] == "Mistake: pushed too far – small pushes all round"


def test_a_torque_from_memory_says_so_and_a_missing_one_where_to_look(edition: Edition) -> None:
    said = [line for scene in storyboard(edition, PANELS) for line in _said(scene) if line.startswith("Torque: ")]
    assert len(said) == len(edition.torques)
    assert "Torque: cap screw: 4 N·m (from memory, not checked)" in said
    blank = [line for line, row in zip(said, edition.torques, strict=True) if not row.value]
    assert blank
    assert all("look it up in " in line or words.LOOK_UP.lower() in line for line in blank)


def test_an_edition_without_dangers_of_the_whole_job_has_no_card_for_them(edition: Edition) -> None:
    assert storyboard(replace(edition, hazards=()), PANELS)[1].title.startswith("1  ")


def test_a_card_lasts_as_long_as_it_takes_to_read() -> None:
    """Four words a second and one second more, from 3 to 12 s; longer where a hazard has to be read."""
    short = Card((CardLine(Style.TITLE, "Turn it"),))
    usual = Card((CardLine(Style.TITLE, "one two three four five six seven eight nine ten eleven twelve"),))
    long = CardLine(Style.SIGNAL, "word " * 60, "DANGER")
    standing = CardLine(Style.STANDING, "word " * 60, "Still dangerous")
    assert short.seconds == 3
    assert usual.seconds == 4
    assert Card((long,)).seconds == Fraction(61, 4) + 1
    assert Card((replace(long, style=Style.FACT),)).seconds == 12
    assert Card((*usual.lines, standing)).seconds == usual.seconds


def test_a_withheld_step_shows_no_footage_and_names_the_line(edition: Edition) -> None:
    closed = with_step(edition, 2, withheld=(Place("procedure.md", 41),), figures=(), clip=None)
    scene = storyboard(closed, PANELS)[3]
    assert "Pictures and clip withheld: line 41 is not understood" in _said(scene)
