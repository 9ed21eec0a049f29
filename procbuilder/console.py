"""Printing to a terminal, a pipe or a file, in whatever encoding it has."""

import codecs
import io
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, TextIO

from procbuilder.model.facts import Phrase
from procbuilder.pipeline.progress import Progress

if TYPE_CHECKING:
    from procbuilder.publish.language import Language

_PLAIN = {
    "–": "-", "—": "-", "·": ".", "×": "x", "→": "->", "…": "...", "°": " deg", "’": "'", "≤": "<=", "≥": ">=",
    "ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue",
}  # fmt: skip


def _plain(error: UnicodeError) -> tuple[str, int]:
    """Signs that an encoding lacks, in plain letters; a question mark for the rest."""
    assert isinstance(error, UnicodeEncodeError)
    signs = error.object[error.start : error.end]
    return "".join(_PLAIN.get(sign, "?") for sign in signs), error.end


codecs.register_error("plain-signs", _plain)


def plain_signs(stream: TextIO) -> None:
    """Let a stream print any text, whatever its encoding."""
    if isinstance(stream, io.TextIOWrapper):
        stream.reconfigure(errors="plain-signs")


def answer(text: str) -> None:
    """Print data."""
    print(text)


def message(text: str) -> None:
    """Print a message to the person at the keyboard."""
    print(text, file=sys.stderr)


@contextmanager
def progress(language: "Language") -> Iterator[Progress]:
    """A progress line while something runs; only its last words where stderr is no terminal."""
    from rich.console import Console
    from rich.progress import BarColumn, SpinnerColumn, TextColumn
    from rich.progress import Progress as Bar

    from procbuilder.publish.wording.gaps import say

    ascii_only = not (sys.stderr.encoding or "").lower().startswith("utf")
    spinner = SpinnerColumn("line" if ascii_only else "dots")
    console = Console(stderr=True)
    with Bar(spinner, BarColumn(), TextColumn("{task.description}", markup=False), console=console,
                  transient=True, disable=not console.is_terminal) as bar:  # fmt: skip
        task = bar.add_task(say(Phrase("starting"), language), total=None)
        yield lambda what, done, of: bar.update(task, description=say(what, language), completed=done, total=of)
