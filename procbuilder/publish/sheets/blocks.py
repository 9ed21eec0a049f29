"""What a sheet is made of. Page and PDF each set these few kinds; a sheet itself knows of neither."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from procbuilder.model.sequence import Sequence
from procbuilder.publish.told import ToldFigure, ToldSign


class CellLook(StrEnum):
    """How a cell looks."""

    PLAIN = "plain"
    STRONG = "strong"
    UNSURE = "unsure"
    """Not confirmed: framed by dashes."""
    BLANK = "blank"
    """A line to write on; its text stands below it."""
    TICK = "tick"


@dataclass(frozen=True, slots=True)
class Cell:
    """One cell of a table."""

    text: str = ""
    look: CellLook = CellLook.PLAIN


BLANK, TICK = Cell(look=CellLook.BLANK), Cell(look=CellLook.TICK)


def strong(text: str) -> Cell:
    """A cell in bold."""
    return Cell(text, CellLook.STRONG)


@dataclass(frozen=True, slots=True)
class Heading:
    """A line above a part of a sheet."""

    text: str
    kind: str = "heading"


@dataclass(frozen=True, slots=True)
class Text:
    """A paragraph."""

    text: str
    look: CellLook = CellLook.PLAIN
    kind: str = "text"


@dataclass(frozen=True, slots=True)
class Points:
    """A list, with boxes to tick where that is wanted."""

    lines: tuple[str, ...]
    ticks: bool = False
    kind: str = "points"


@dataclass(frozen=True, slots=True)
class Column:
    """Title of a column and its share of the width."""

    title: str
    share: int


@dataclass(frozen=True, slots=True)
class Table:
    """Rows below a head that comes again on each page."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    kind: str = "table"


@dataclass(frozen=True, slots=True)
class Fill:
    """Labels, each with a line to write on behind it."""

    labels: tuple[str, ...]
    kind: str = "fill"


@dataclass(frozen=True, slots=True)
class Cutout:
    """A card or label to cut out."""

    title: str
    lines: tuple[tuple[str, str], ...]
    """Label and words; the label may be empty."""
    figure: ToldFigure | None = None
    signs: tuple[ToldSign, ...] = ()


@dataclass(frozen=True, slots=True)
class Cutouts:
    """Cards and labels beside and below each other."""

    cutouts: tuple[Cutout, ...]
    across: int
    kind: str = "cutouts"


@dataclass(frozen=True, slots=True)
class Turns:
    """A picture of the order of tightening."""

    sequence: Sequence
    caption: str
    alt: str
    kind: str = "turns"


@dataclass(frozen=True, slots=True)
class Pair:
    """Two pictures of one thing."""

    title: str
    before: ToldFigure
    before_words: str
    after: ToldFigure
    after_words: str


@dataclass(frozen=True, slots=True)
class Pairs:
    """Pairs of pictures, one pair a row."""

    pairs: tuple[Pair, ...]
    kind: str = "pairs"


Block = Heading | Text | Points | Table | Fill | Cutouts | Turns | Pairs


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet."""

    id: str
    title: str
    use: str
    """What it is for, in a sentence."""
    blocks: tuple[Block, ...]
    one_page: bool = False
    """It must stay on one page of paper, in smaller type if need be."""

    @property
    def figures(self) -> tuple[ToldFigure, ...]:
        """Every picture that it shows."""
        return tuple(figure for block in self.blocks for figure in _figures(block))

    @property
    def signs(self) -> tuple[ToldSign, ...]:
        """Every safety sign that it shows."""
        return tuple(
            sign for block in self.blocks if isinstance(block, Cutouts) for c in block.cutouts for sign in c.signs
        )


def _figures(block: Block) -> Iterable[ToldFigure]:
    if isinstance(block, Cutouts):
        return [card.figure for card in block.cutouts if card.figure]
    if isinstance(block, Pairs):
        return [figure for pair in block.pairs for figure in (pair.before, pair.after)]
    return []


def columns(*pairs: tuple[str, int]) -> tuple[Column, ...]:
    """Columns from titles and shares."""
    return tuple(Column(title, share) for title, share in pairs)


def numbers(steps: Iterable[int]) -> str:
    """``3, 5–8``: numbers of steps in order, runs of three and more drawn together."""
    runs: list[list[int]] = []
    for number in steps:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(_run(run) for run in runs)


def _run(run: list[int]) -> str:
    return f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run))
