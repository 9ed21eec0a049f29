"""The languages in which an edition can speak for itself."""

SOURCE = "en"
"""That of the words in the code."""

WRITTEN = (SOURCE, "de")
"""Those with a catalogue of words, ``publish/locale/de.po`` for instance."""


def is_written(tag: str) -> bool:
    """Whether there are words for ``de-DE``; without a language typed, they are English."""
    return (tag.strip() or SOURCE).casefold().partition("-")[0] in WRITTEN
