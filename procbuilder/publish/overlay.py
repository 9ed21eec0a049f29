"""The marks of a picture as lines that a browser draws over it."""

from collections.abc import Iterable, Iterator

from procbuilder.model.marking import Drawing, DrawnMark, Ring, layout
from procbuilder.publish.told import ToldFigure


def drawing(figure: ToldFigure) -> Drawing:
    """Where lines and words go on the picture of a figure."""
    return layout(figure.marks, figure.still.width, figure.still.height)


def outline(drawn: Iterable[DrawnMark]) -> str:
    """All lines as the path data of one SVG element."""
    return " ".join(part for mark in drawn for part in _parts(mark))


def units(length: float) -> str:
    """A length with one digit behind the point: finer than a pixel."""
    return f"{length:.1f}".removesuffix(".0")


def _parts(mark: DrawnMark) -> Iterator[str]:
    for path in mark.paths:
        yield "M" + " L".join(f"{units(x)} {units(y)}" for x, y in path)
    if mark.ring:
        yield _round(mark.ring)


def _round(ring: Ring) -> str:
    """An ellipse as two arcs."""
    across, down, wide = units(ring.across), units(ring.down), units(2 * ring.across)
    start = f"M{units(ring.x - ring.across)} {units(ring.y)}"
    return f"{start} a{across} {down} 0 1 0 {wide} 0 a{across} {down} 0 1 0 -{wide} 0"
