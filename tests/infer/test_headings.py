"""Step headings of other people's how-to videos: is an operation with its thing found in each?

Data: HiREST, repository j-min/HiREST (MIT), ``data/splits``; the validation split was looked at while
the rules were made, the training split was not.
"""

import json
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.infer.hearing.operations import operations
from procbuilder.model.heard import Sentence
from procbuilder.model.origin import Place

DATA = Path(__file__).parents[3] / "shared" / "data"
LOOKED_AT = (
    "Fix Your Car's Air Conditioner",
    "Fix Sticky Keyboard Keys",
    "Clean Chrome",
    "Cut Concrete",
    "Install a Privacy Fence",
    "Do Screen Printing on Fabric",
    "Use a Fire Pit",
)
UNSEEN = (
    "Change the Air Filter in Your Car",
    "Clean Inside a Laptop Computer",
    "Fix a Skipping Freehub on a Bicycle",
    "Clean Chrome Wheels",
    "Level a Door",
    "Mount a Projector",
    "Clean a Washer with Bleach",
    "Cut Crown Molding Inside Corners",
    "Cut Wood Using Various Power Tools",
    "Saw Wood With a Handsaw",
    "Install a Drainage System Around the Foundation of a House",
    "Apply Varnish",
    "Varnish Wood",
    "Use a Speed Square",
    "Make Your Own Underwater Aquarium Filter",
)
"""Vehicle and machine jobs, and work with tools."""
SHOWN = 12


def headings(name: str, tasks: tuple[str, ...]) -> list[list[str]]:
    """The headings of each video of some tasks."""
    path = DATA / name
    if not path.is_file():
        pytest.skip(f"{path} is not there")
    data = json.loads(path.read_text(encoding="utf-8"))
    return [[step["heading"] for step in video["steps"]] for task in tasks for video in data[task].values()]


def missed(video: list[str]) -> list[str]:
    said = [
        Sentence(words, Place("list", n), "video", Fraction(n), Fraction(n + 1), n) for n, words in enumerate(video, 1)
    ]
    found = {one.said.number for one in operations(said, commands=True) if one.verb and one.object}
    return [sentence.words for sentence in said if sentence.number not in found]


@pytest.mark.parametrize(
    ("name", "tasks", "least"), [("hirest_val.json", LOOKED_AT, 0.9), ("hirest_train.json", UNSEEN, 0.85)]
)
def test_an_operation_and_its_thing_are_found_in_a_heading(name: str, tasks: tuple[str, ...], least: float) -> None:
    videos = headings(name, tasks)
    every = sum(len(video) for video in videos)
    misses = [heading for video in videos for heading in missed(video)]
    print(f"{name}: {1 - len(misses) / every:.3f} of {every} headings; missed, for example: {misses[:SHOWN]}")
    assert every >= 80
    assert 1 - len(misses) / every >= least


def test_a_heading_without_a_thing_is_a_miss() -> None:
    assert missed(["Dry immediately", "Remove the filter"]) == ["Dry immediately"]
