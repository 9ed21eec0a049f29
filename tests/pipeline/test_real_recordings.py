"""A procedure of twelve steps over real recordings with the habits of real files."""

from pathlib import Path

import av
import numpy as np
import pytest

from procbuilder.model.edition import Edition
from procbuilder.pipeline.build import Built, build
from procbuilder.publish.filmed import remark
from procbuilder.publish.language import ENGLISH

STEPS = (
    "phone 0:00-0:00.700", "phone 0:00.700-0:01.400", "phone 0:01.400-0:02.200", "phone 0:00.100-0:02",
    "nolength 0:00-0:01.500", "nolength 0:01.500-0:03", "nolength 0:00.250-0:02.750", "nolength 0:03-0:04",
    "noaudio 0:00-0:02", "noaudio 0:02-0:04.500", "noaudio 0:01-0:03", "phone 0:00-0:01, noaudio 0:00-0:01",
)  # fmt: skip

FRONT = """\
---
recordings:
  phone: recordings/phone_vfr_rotated180.mp4
  nolength: recordings/no_duration_vfr.webm
  noaudio: recordings/failing_audio.mp4
---
# Twelve steps over real films

## Work

"""


@pytest.fixture(scope="module")
def built(shared_media: Path) -> Built:
    steps = "\n\n".join(f"### {spans} Turn the part" for spans in STEPS)
    (shared_media / "procedure.md").write_text(FRONT + steps + "\n")
    return build(shared_media)


def remarks(edition: Edition) -> dict[str, tuple[str, ...]]:
    return {each.name: tuple(remark(told, ENGLISH) for told in each.remarks) for each in edition.recordings}


def test_twelve_steps_over_real_recordings_build(built: Built) -> None:
    assert len(built.edition.steps) == 12
    for step in built.edition.steps:
        assert len(step.figures) == 1
        name, at = step.figures[0].still.recording, step.figures[0].still.time
        assert at is not None
        assert any(span.recording == name and span.start <= at < span.end for span in step.spans)
        assert step.clip
        assert abs(step.clip.seconds - sum(span.seconds for span in step.spans)) < 0.2


def test_odd_files_are_reported_and_not_fatal(built: Built) -> None:
    assert remarks(built.edition) == {
        "phone": (
            "variable frame rate, 9.99 to 12.5 pictures a second",
            "filmed with the camera turned by 180°; shown upright",
            "removed from all that is published: location, time of filming",
        ),
        "nolength": (
            "no length in its header; measured: 4.9 s",
            "variable frame rate, 13.9 to 16.1 pictures a second",
        ),
        "noaudio": (),
    }


def test_sound_of_the_recording_whose_reading_fails_at_its_end_is_kept(built: Built) -> None:
    clips = [step.clip for step in built.edition.steps[8:11]]
    assert [clip.sound for clip in clips if clip] == [True, True, True]


def test_the_rotated_still_stands_upright(built: Built, shared_media: Path) -> None:
    """Against OpenCV, a general-purpose library, which turns the pictures of a recording by itself."""
    import cv2

    still = built.edition.steps[0].figures[0].still
    with av.open(built.folder / "out" / "media" / still.file) as container:
        picture = next(container.decode(video=0)).to_ndarray(format="gray")
    capture = cv2.VideoCapture(str(shared_media / "recordings" / "phone_vfr_rotated180.mp4"))
    frames = [cv2.cvtColor(capture.read()[1], cv2.COLOR_BGR2GRAY).astype(float) for _ in range(8)]
    scaled = [cv2.resize(each, picture.shape[::-1], interpolation=cv2.INTER_AREA) for each in frames]
    same = min(np.abs(picture - each).mean() for each in scaled)
    turned = min(np.abs(picture - each[::-1, ::-1]).mean() for each in scaled)
    assert same < turned / 2
