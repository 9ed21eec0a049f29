"""Prints the sample, and reads a sheet back as text."""

import io
from dataclasses import replace
from pathlib import Path
from typing import Any

from pypdf import PdfReader

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.publish.pdf import pdf

TEMPLATES = Path(__file__).parents[2] / "templates"
EPOCH = 1_700_000_000


def sheet(edition: Edition, media: Path) -> bytes:
    """The edition as PDF."""
    return pdf(edition, templates=TEMPLATES, media=media, epoch=EPOCH).data


def pages(printed: bytes) -> list[str]:
    """Text of each page on one line, without the signs that only allow a break."""
    reader = PdfReader(io.BytesIO(printed))
    return [" ".join(page.extract_text().replace("\u200b", "").split()) for page in reader.pages]


def whole(printed: bytes) -> str:
    """Text of all pages."""
    return " ".join(pages(printed))


def solid(text: str) -> str:
    """Text without any space: where a line ends does not matter."""
    return "".join(text.split())


def with_step(edition: Edition, number: int, **changes: Any) -> Edition:
    """The edition with one step changed."""

    def changed(step: EditionStep) -> EditionStep:
        return replace(step, **changes) if step.number == number else step

    sections = tuple(replace(section, steps=tuple(map(changed, section.steps))) for section in edition.sections)
    return replace(edition, sections=sections)
