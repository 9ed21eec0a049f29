"""Speech and tool noise: against the known narration of the demo, and at exact times when sound is missing or late."""

import json
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import av
import numpy as np
import pytest
from av.audio.frame import AudioFrame

from procbuilder.media.voice import Detector, listen, silero_lite, silero_plain
from procbuilder.model.stretch import Stretch, joined, seconds, shared
from tests.media import filming
from tests.media.filming import Track

HUB = Path(__file__).parents[2] / "sample_media" / "hub"
REFIT = HUB / "recordings" / "hub-refit.mp4"


def narration(recording: str) -> tuple[Stretch, ...]:
    """When a sentence is spoken, from the script that set the sound of the demo together."""
    known = json.loads((HUB / "truth.json").read_text(encoding="utf-8"))["recordings"][recording]["narration"]
    return joined(Stretch(Fraction(str(said["start"])), Fraction(str(said["end"]))) for said in known)


@pytest.mark.parametrize("detector", [silero_lite, silero_plain])
def test_speech_is_found_beside_tools(detector: Callable[[], Detector]) -> None:
    """Demo narration over drawn tool noise; two runtimes of the same published model."""
    heard = listen(REFIT, detector)
    assert heard
    spoken = narration("refit")
    both = seconds(shared(heard.speech, spoken))
    assert both / seconds(spoken) > 0.97
    assert both / seconds(heard.speech) > 0.93


def test_blows_are_noise_and_speech_is_not() -> None:
    """The cups are driven home between 8.0 and 11.0; someone speaks from 14.9 to 19.6 and nothing is loud beside it."""
    heard = listen(REFIT)
    assert heard
    assert seconds(shared(heard.noise, [Stretch(Fraction(8), Fraction(11))])) > Fraction(5, 2)
    assert not shared(heard.noise, heard.speech)
    assert not shared(heard.noise, [Stretch(Fraction(15), Fraction(19))])


def with_sound_of_refit(path: Path, *, late: Fraction, missing: tuple[int, int]) -> Path:
    """The sound of the refit as it was written, later, and with whole seconds of it left out."""
    with av.open(str(REFIT)) as source, av.open(str(path), "w") as target:
        given = source.streams.audio[0]
        track = target.add_stream_from_template(given)
        assert given.time_base
        shift = round(late / given.time_base)
        for packet in source.demux(given):
            if packet.pts is None or missing[0] <= packet.pts * given.time_base < missing[1]:
                continue
            if packet.pts * given.time_base > 40:
                break
            packet.pts, packet.dts = packet.pts + shift, packet.pts + shift
            packet.stream = track
            target.mux(packet)
    return path


def moved(stretches: tuple[Stretch, ...], by: Fraction) -> list[tuple[float, float]]:
    return [(float(each.start + by), float(each.end + by)) for each in stretches]


def test_times_are_exact_when_sound_is_missing(tmp_path: Path) -> None:
    """Five seconds of sound are not in the file: nothing is heard there, and what follows keeps its time."""
    heard = listen(with_sound_of_refit(tmp_path / "gap.mkv", late=Fraction(0), missing=(6, 11)))
    whole = listen(REFIT)
    assert heard
    assert whole
    assert not shared((*heard.speech, *heard.noise), [Stretch(Fraction(61, 10), Fraction(109, 10))])
    first, again = ([each for each in one.speech if Fraction(12) < each.start < Fraction(34)] for one in (whole, heard))
    np.testing.assert_allclose(moved(tuple(again), Fraction(0)), moved(tuple(first), Fraction(0)), atol=0.1)


def test_late_sound_is_heard_late(tmp_path: Path) -> None:
    """Four seconds of picture, and a tone that begins at 0:01: noise from there to its end."""
    path = filming.film(
        tmp_path / "late.mp4",
        filming.steady(4),
        track=Track(sound=(Fraction(2),), lead=Fraction(-1)),
    )
    heard = listen(path)
    assert heard
    assert heard.speech == ()
    assert [(round(float(each.start), 1), round(float(each.end), 1)) for each in heard.noise] == [(1.0, 3.0)]


def test_without_sound_nothing_is_known(even: Path, tmp_path: Path) -> None:
    """No track, and a track of which nothing can be decoded."""
    silent = filming.film(tmp_path / "silent.mp4", filming.steady(1))
    broken = tmp_path / "broken.mp4"
    broken.write_bytes(even.read_bytes())
    assert listen(silent) is None
    assert listen(filming.scramble(broken, "audio")) is None


def test_a_long_recording_is_never_held_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The detector has judged the first second before the tenth is decoded."""
    path = tmp_path / "long.wav"
    with av.open(str(path), "w") as container:
        track = container.add_stream("pcm_s16le", rate=16_000, layout="mono")
        for second in range(20):
            frame = AudioFrame.from_ndarray(np.zeros((1, 16_000), dtype=np.int16), format="s16", layout="mono")
            frame.rate, frame.pts = 16_000, second * 16_000
            container.mux(track.encode(frame))
    judged: list[int] = []
    ahead: list[int] = []
    monkeypatch.setattr("procbuilder.media.sound._frames", counting(ahead))

    def silent(samples: np.ndarray) -> float:
        judged.append(len(samples))
        assert sum(ahead) - sum(judged) < 16_000
        return 0.0

    assert listen(path, lambda: silent)
    assert sum(judged) >= 20 * 16_000


def counting(ahead: list[int]) -> Callable[..., list[AudioFrame]]:
    from procbuilder.media.sound import _frames

    def frames(*given: object) -> list[AudioFrame]:
        found = _frames(*given)  # type: ignore[arg-type]
        ahead.extend(frame.samples for frame in found)
        return found

    return frames
