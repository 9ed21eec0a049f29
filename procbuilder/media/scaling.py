"""Decoded pictures in another size, pixel format or colour space."""

from functools import lru_cache
from threading import local
from typing import Any

from av.video.frame import VideoFrame
from av.video.reformatter import VideoReformatter

_KINDS = 8
"""Ways of scaling that are kept: more are hardly ever used in turns."""


class _Scalers(local):
    """What a thread has worked out for scaling: setting that up takes as long as the scaling of a small picture."""

    def __init__(self) -> None:
        self.of = lru_cache(maxsize=_KINDS)(lambda *_kind: VideoReformatter())


_SCALERS = _Scalers()


def rescaled(frame: VideoFrame, width: int | None, height: int | None, form: str, **wanted: Any) -> VideoFrame:
    """The picture in this size and pixel format; what is ``wanted`` beyond that is told as to PyAV's ``reformat``."""
    kind = (frame.width, frame.height, frame.format.name, frame.colorspace, frame.color_range)
    scaler = _SCALERS.of(*kind, width, height, form, *sorted(wanted.items()))
    return scaler.reformat(frame, width, height, form, threads=1, **wanted)
