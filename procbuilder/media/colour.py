"""Colours of a decoded picture, whatever the camera meant by them, as an ordinary screen shows them (ITU-R BT.709)."""

from av.video.frame import VideoFrame
from av.video.reformatter import Colorspace, Interpolation

from procbuilder.media.image import Image
from procbuilder.media.scaling import rescaled
from procbuilder.media.tonemap import DEEP, SYSTEMS, tone_mapped

_EXACTLY = Interpolation.ACCURATE_RND | Interpolation.FULL_CHR_H_INT | Interpolation.FULL_CHR_H_INP
"""Colours without a tint from rounding: some milliseconds a picture, so only where colours are turned into others."""

_UNTAGGED = 2
_HD_HEIGHT = 720


def encodable(image: Image) -> VideoFrame:
    """An upright picture in the colours (BT.709, limited range) of a clip."""
    frame = VideoFrame.from_ndarray(image, format="bgr24")
    way = Interpolation.BICUBIC | _EXACTLY
    return rescaled(frame, None, None, "yuv420p", dst_colorspace=Colorspace.ITU709, interpolation=way)


def converted(
    frame: VideoFrame, width: int, height: int, form: str, matrix: int | None = None, limits: int | None = None
) -> VideoFrame:
    """The stored picture as an ordinary screen shows it.

    Args:
        frame: As decoded.
        width: Pixels across, before it is turned upright.
        height: Pixels down, before it is turned upright.
        form: Pixel format by its FFmpeg name.
        matrix: Colour space, and
        limits: colour range, where ``form`` is not RGB.
    """
    scaling = Interpolation.AREA if width < frame.width else Interpolation.BICUBIC
    meant = _matrix(frame)
    if frame.color_trc not in SYSTEMS:
        way = scaling if matrix == (meant or frame.colorspace) else scaling | _EXACTLY
        spaces = {"src_colorspace": meant, "dst_colorspace": matrix, "dst_color_range": limits}
        return rescaled(frame, width, height, form, interpolation=way, **spaces)
    deep = rescaled(frame, width, height, DEEP, src_colorspace=meant, interpolation=scaling | _EXACTLY)
    plain = tone_mapped(deep, frame.color_trc)
    way = Interpolation.BICUBIC | _EXACTLY
    return rescaled(plain, None, None, form, dst_colorspace=matrix, interpolation=way, dst_color_range=limits)


def _matrix(frame: VideoFrame) -> int | None:
    """How the colours of an untagged picture are meant: in high range as BT.2020, in high definition as BT.709."""
    if frame.colorspace != _UNTAGGED:
        return None
    if frame.color_trc in SYSTEMS:
        return Colorspace.BT2020
    return Colorspace.ITU709 if frame.height >= _HD_HEIGHT else None
