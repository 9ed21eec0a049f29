"""In which language the commands speak: that of the procedure, else that of the environment."""

import os
from pathlib import Path

from procbuilder.model.languages import SOURCE, WRITTEN
from procbuilder.pipeline.spoken import language_named
from procbuilder.publish.language import Language, language_of

_VARIABLES = ("LC_ALL", "LC_MESSAGES", "LANG")
"""Of the environment; the first that says something counts, as POSIX has it."""


def language_for(folder: Path | None = None) -> Language:
    """The language that the procedure of a folder names when there are words for it, else that of the environment."""
    named = language_named(folder) if folder else ""
    return language_of(next(filter(_has_words, (named, _of_environment())), SOURCE))


def _of_environment() -> str:
    """``de_DE.UTF-8`` as ``de-DE``."""
    said = next((value for name in _VARIABLES if (value := os.environ.get(name))), "")
    return said.partition(".")[0].partition("@")[0].replace("_", "-")


def _has_words(tag: str) -> bool:
    return tag.strip().casefold().partition("-")[0] in WRITTEN
