"""What is used of MoviePy, imported with no program for it to run.

Its own settings look for a ``.env`` in every folder above it and start the program named there, or one of their own,
while they are imported. All pictures are decoded and encoded by this room, so it needs neither.
"""

import sys
from types import ModuleType

_SETTINGS = ModuleType("moviepy.config")
vars(_SETTINGS).update(FFMPEG_BINARY="unset", FFPLAY_BINARY="unset")
sys.modules.setdefault(_SETTINGS.__name__, _SETTINGS)

from moviepy.video.compositing.CompositeVideoClip import CompositeVideoClip, concatenate_videoclips  # noqa: E402
from moviepy.video.VideoClip import ImageClip, VideoClip  # noqa: E402

__all__ = ["CompositeVideoClip", "ImageClip", "VideoClip", "concatenate_videoclips"]
