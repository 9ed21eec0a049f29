"""Where pictures are damaged, and that nobody has to see it for himself."""

from fractions import Fraction
from pathlib import Path

from procbuilder.media.clips import ClipPart, cut
from procbuilder.media.damage import stretches
from procbuilder.model.timecode import Span
from tests.media import filming


def test_stretches_join_what_follows_closely() -> None:
    """Two seconds apart is one stretch, more is another, and so is another recording."""
    moments = [("strip", Fraction(time)) for time in ("14.5", "16", "14.2", "30", "30")] + [("refit", Fraction(15))]
    assert [(str(each.span), each.pictures) for each in stretches(moments)] == [
        ("refit 0:15-0:15", 1),
        ("strip 0:14.200-0:16", 3),
        ("strip 0:30-0:30", 1),
    ]


def test_cut_tells_which_pictures_are_damaged(films: Path, tmp_path: Path) -> None:
    """Bytes from 1.6 to 2 s are overwritten; the next key frame is at 2.4 s, and all after it is whole."""
    path = filming.scramble(filming.film(films / "struck.mp4", filming.steady(4)), "video", (0.4, 0.5), keep=0.4)
    told: list[tuple[str, Fraction]] = []
    span = Span("strip", Fraction(0), Fraction(4))
    cut([ClipPart(path, span)], tmp_path / "clip.mp4", damaged=lambda *moment: told.append(moment))
    times = [time for name, time in told if name == "strip"]
    assert len(times) == len(told) > 3
    assert Fraction(8, 5) <= min(times) <= max(times) < Fraction(12, 5)


def test_cut_of_a_whole_recording_tells_nothing(long_gop: Path, tmp_path: Path) -> None:
    """Beginning in the middle of a long group of pictures is no damage."""
    told: list[tuple[str, Fraction]] = []
    part = ClipPart(long_gop, Span("strip", Fraction(6), Fraction(7)))
    cut([part], tmp_path / "clip.mp4", damaged=lambda *moment: told.append(moment))
    assert told == []
