"""Writing a clip: H.264 pictures and AAC sound in an MP4 file that plays everywhere, without metadata."""

from collections.abc import Iterator
from contextlib import contextmanager
from fractions import Fraction
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Self

import av
import cv2
import numpy as np
from av.audio.frame import AudioFrame
from av.audio.stream import AudioStream
from av.container import OutputContainer
from av.video.frame import PictureType, VideoFrame
from av.video.stream import VideoStream

from procbuilder.media.sound import RATE, Samples
from procbuilder.model.fault import CannotWrite
from procbuilder.model.film import Chapter

if TYPE_CHECKING:
    from av.container.core import Chapter as FileChapter

_THOUSAND = 1000
_TICKS = 90_000
"""Time steps a second: fine enough for any camera."""

_THREADS = 2
"""The encoder's result depends on how many threads it has, so it always has the same number."""

_X264 = {"preset": "veryfast", "crf": "23", "flags": "+bitexact+frame_duration"}
_MP4 = {"movflags": "+faststart", "fflags": "+bitexact"}
_AAC_RATE = 96_000
_AAC_FRAME = 1024
_BT709, _LIMITED = 1, 1

_AVX_512 = 13
"""A kind of processor, as OpenCV numbers them (``CV_CPU_AVX_512F``)."""


class ClipFile:
    """An MP4 file that is being written; a context manager that completes it."""

    def __init__(self, target: Path, width: int, height: int, *, sound: bool) -> None:
        self.seconds = Fraction(0)
        """Length of what was added so far."""
        self.chapters: tuple[Chapter, ...] = ()
        """Parts that a player can jump to; they may be named until the file is complete."""
        self._target = target
        self._waiting: Samples = np.zeros(0, dtype=np.float32)
        self._samples = 0
        with self._writing():
            self._container: OutputContainer = av.open(f"file:{target}", mode="w", format="mp4", options=_MP4)
            self._pictures = _picture_stream(self._container, width, height)
            self._sound = _sound_stream(self._container) if sound else None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        with self._writing(), self._container:
            if error is None:
                self._finish()

    def add(self, frame: VideoFrame, seconds: Fraction, samples: Samples) -> None:
        """Adds a picture of the clip's size, the seconds for which it is shown, and its samples.

        Raises:
            CannotWrite: The disk is full, or the file cannot be written to.
        """
        frame.pict_type = PictureType.NONE
        frame.time_base = Fraction(1, _TICKS)
        frame.pts = round(self.seconds * _TICKS)
        self.seconds += seconds
        frame.duration = round(self.seconds * _TICKS) - frame.pts
        with self._writing():
            self._container.mux(self._pictures.encode(frame))
            self._add_sound(samples)

    def _add_sound(self, samples: Samples) -> None:
        if self._sound is None:
            return
        self._waiting = np.concatenate([self._waiting, samples])
        while len(self._waiting) >= _AAC_FRAME:
            self._encode_sound(self._sound, self._waiting[:_AAC_FRAME])
            self._waiting = self._waiting[_AAC_FRAME:]

    def _encode_sound(self, track: AudioStream, samples: Samples) -> None:
        frame = AudioFrame.from_ndarray(samples.reshape(1, -1), format="fltp", layout="mono")
        frame.rate, frame.time_base, frame.pts = RATE, Fraction(1, RATE), self._samples
        self._samples += len(samples)
        self._container.mux(track.encode(frame))

    def _finish(self) -> None:
        self._container.mux(self._pictures.encode(None))
        if self._sound is not None:
            if len(self._waiting):
                self._encode_sound(self._sound, self._waiting)
            self._container.mux(self._sound.encode(None))
        if self.chapters:
            self._container.set_chapters(self._marked())

    def _marked(self) -> "list[FileChapter]":
        """The chapters as the container takes them: each lasts until the next."""
        starts = [round(chapter.start * _THOUSAND) for chapter in self.chapters]
        ends = [*starts[1:], round(self.seconds * _THOUSAND)]
        return [
            {"id": number, "start": start, "end": end, "time_base": Fraction(1, _THOUSAND),
             "metadata": {"title": chapter.title}}
            for number, (chapter, start, end) in enumerate(zip(self.chapters, starts, ends, strict=True), 1)
        ]  # fmt: skip

    @contextmanager
    def _writing(self) -> Iterator[None]:
        try:
            yield
        except (av.FFmpegError, OSError) as error:
            raise CannotWrite(self._target, error.errno) from None


def _picture_stream(container: OutputContainer, width: int, height: int) -> VideoStream:
    stream = container.add_stream("libx264", rate=30, options=_X264 | _same_bytes())
    context = stream.codec_context
    context.width, context.height, context.pix_fmt = width, height, "yuv420p"
    context.time_base = Fraction(1, _TICKS)
    context.thread_count = _THREADS
    context.colorspace = context.color_primaries = context.color_trc = _BT709
    context.color_range = _LIMITED
    return stream


def _same_bytes() -> dict[str, str]:
    """Keeps the encoder from its code for AVX-512, which gives other bytes from run to run when it plans its bits."""
    return {"x264-params": "asm=avx2"} if cv2.checkHardwareSupport(_AVX_512) else {}


def _sound_stream(container: OutputContainer) -> AudioStream:
    options = {"flags": "+bitexact"}
    return container.add_stream("aac", rate=RATE, options=options, layout="mono", bit_rate=_AAC_RATE)
