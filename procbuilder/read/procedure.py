"""procedure.md, format 1: from the text to the procedure as written, with all its problems."""

from dataclasses import dataclass, field, replace
from pathlib import Path

from procbuilder.model.facts import Facts, Line, facts
from procbuilder.model.fault import NoText
from procbuilder.model.fields import BY_NAME, GRAVE, Field
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worst_first
from procbuilder.model.procedure import Procedure, Prose, Section, Step
from procbuilder.read.blocks import HeadingBlock, ItemBlock, TextBlock, blocks
from procbuilder.read.fields import read_field, split_parts
from procbuilder.read.flaws import Flaw, Flaws
from procbuilder.read.front import read_front, split_front
from procbuilder.read.headings import Heading, read_heading
from procbuilder.read.mistimed import find_heading
from procbuilder.read.names import Slip, find_kind, find_slip, hides
from procbuilder.read.spans import SPAN
from procbuilder.read.steps import make_step, settle_ids
from procbuilder.read.text import read_file
from procbuilder.read.unseen import shown, unseen
from procbuilder.read.withheld import withhold

FILE_NAME = "procedure.md"


def read_procedure(folder: Path) -> tuple[Procedure, tuple[Problem, ...]]:
    """The procedure of a folder and every problem of its text.

    Raises:
        NotThere, NotText, NoText: the file cannot be read at all.
    """
    source = read_file(folder / FILE_NAME, FILE_NAME)
    if not source.text.strip():
        raise NoText(folder / FILE_NAME)
    return read_text(source.text, file=source.name, folder=folder)


def read_text(text: str, *, file: str = FILE_NAME, folder: Path = Path()) -> tuple[Procedure, tuple[Problem, ...]]:
    """The procedure that a text holds. Any text gives a procedure; what cannot be read is a problem."""
    plain = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    lines = shown(plain).split("\n")
    front, problems = read_front(lines, file)
    _, end = split_front(lines)
    body = [""] * (end + 1) + lines[end + 1 :] if end > 0 else lines
    reader = _Reader(file, tuple(recording.name for recording in front.recordings))
    for block in blocks(body):
        reader.take(block)
    reader.end_section()
    settled, doubled = settle_ids(tuple(reader.sections))
    sections = withhold(settled, reader.stray)
    if not reader.title:
        reader.problem(1, "title", Severity.ASK, form="none", subject=file)
    procedure = Procedure(
        folder, Place(file, 1), front, reader.title, tuple(reader.intro), tuple(reader.fields), sections
    )
    return procedure, worst_first([*problems, *reader.problems, *doubled, *unseen(lines, file, end + 1)])


_MENDED = ("sign-behind", "mistimed", "maybe-a-time")
"""Forms of a heading whose better one is known."""


@dataclass(frozen=True, slots=True)
class _OpenStep:
    """A step whose lines are still being taken."""

    place: Place
    heading: Heading
    prose: list[Prose] = field(default_factory=list)
    fields: list[Field] = field(default_factory=list)
    withheld: list[Place] = field(default_factory=list)
    """Lines that ask to hide something and are not understood."""


def _holds_field(block: ItemBlock) -> bool:
    """An item is a field, or looks like one, or holds one."""
    own = find_kind(block.text)[0] or find_slip(block.text, listed=True)
    return bool(own) or any(map(_holds_field, block.children))


class _Reader:
    """Takes the blocks one by one; what it has gathered stands in its attributes."""

    def __init__(self, file: str, recordings: tuple[str, ...]) -> None:
        self.file, self.recordings = file, recordings
        self.title = ""
        self.intro: list[Prose] = []
        self.fields: list[Field] = []
        self.sections: list[Section] = []
        self.problems: list[Problem] = []
        self.stray: list[Place] = []
        """Lines outside of any step that ask to hide something."""
        self._section: tuple[str, Place, list[Prose], list[Field]] | None = None
        self._steps: list[Step] = []
        self._step: _OpenStep | None = None

    def problem(
        self, line: int, rule: str, severity: Severity, given: Facts = (), form: str = "", danger: int = 4,
        subject: str = "",
    ) -> None:  # fmt: skip
        place = Place(self.file, line)
        self.problems.append(Problem(rule, severity, place, given, form, danger, subject=subject))

    def flaw(self, entry: Field, found: Flaw) -> None:
        """What cannot be read in a field is asked about, as ``Time: 12x``; what is not hidden stops."""
        if entry.name == "Hide" or dict(found.facts).get("field") == "Hide":
            self.problem(entry.place.line, "field", Severity.STOP, found.facts, found.form, danger=3)
            return
        subject = f"{entry.name}: {split_parts(entry.raw)[0]}"
        self.problem(entry.place.line, "field", Severity.ASK, found.facts, found.form, subject=subject)

    def take(self, block: HeadingBlock | ItemBlock | TextBlock) -> None:
        match block:
            case HeadingBlock():
                self._take_heading(block)
            case ItemBlock():
                self._take_item(block)
            case TextBlock():
                self._take_text(block)

    def _take_text(self, block: TextBlock) -> None:
        """Text that is no item; a line of it may have been meant as a field or as a heading all the same."""
        self._look_over(block.source, block.line)
        self._prose.append(Prose(block.source, Place(self.file, block.line)))

    def _look_over(self, source: str, first: int, skip: int = 0) -> None:
        for number, line in enumerate(source.split("\n")[skip:], first + skip):
            if slip := find_slip(line, listed=False):
                self._slipped(slip, number)
            elif heading := find_heading(line):
                place = Place(self.file, number)
                good = Line("", (heading,), place=place, replaces=True)
                given = facts(sign=heading.split()[0], line=good)
                self.problem(number, "heading-form", Severity.STOP, given)

    def _slipped(self, slip: Slip, number: int) -> None:
        """A line that resembles a field: of one that keeps from harm it stops, of any other it is asked about."""
        place = Place(self.file, number)
        if slip.kind is None:
            self.problem(number, "field-name", Severity.ASK, facts(typed=slip.typed), "unknown", subject=slip.typed)
            return
        line = Line(slip.kind.name, (slip.value,), place=place, replaces=True)
        given = facts(typed=slip.typed or slip.value, near=slip.kind.name, line=line)
        if slip.kind.name == "Hide":
            self._withheld.append(place)
        grave = slip.kind.name in GRAVE
        severity, subject = (Severity.STOP, "") if grave else (Severity.ASK, slip.typed)
        self.problem(number, "field-name", severity, given, danger=2 if grave else 4, subject=subject)

    @property
    def _withheld(self) -> list[Place]:
        return self._step.withheld if self._step else self.stray

    @property
    def _prose(self) -> list[Prose]:
        return self._step.prose if self._step else self._section[2] if self._section else self.intro

    @property
    def _own_fields(self) -> list[Field]:
        return self._step.fields if self._step else self._section[3] if self._section else self.fields

    def _take_heading(self, block: HeadingBlock) -> None:
        place = Place(self.file, block.line)
        sign = "#" * min(block.level, 3)
        if block.underlined or block.level > 3:
            line = Line("", (f"{sign} {block.text}",), place=place, replaces=not block.underlined)
            self.problem(block.line, "heading-form", Severity.STOP, facts(sign=sign, line=line))
        elif block.level < 3 and SPAN.match(block.text):
            line = Line("", (f"### {block.text}",), place=place, replaces=True)
            self.problem(block.line, "heading-form", Severity.STOP, facts(sign="###", line=line))
        if (slip := find_slip(block.text, listed=False)) and slip.kind and slip.kind.name in GRAVE:
            self._slipped(slip, block.line)
        if block.level == 1:
            self._take_title(block)
        elif block.level == 2:
            self.end_section()
            self._section = (block.text, place, [], [])
        else:
            self._end_step()
            heading = read_heading(block.text, self.recordings)
            self._step = _OpenStep(place, heading)
            for found in heading.flaws:
                self._heading_flaw(found, heading, block)

    def _heading_flaw(self, found: Flaw, heading: Heading, block: HeadingBlock) -> None:
        """What may be a time or a number of the command is asked about, anything else stops."""
        given = found.facts
        if found.form in _MENDED:
            place = Place(self.file, block.line)
            given += facts(line=Line("", (f"### {heading.better}",), place=place, replaces=not block.underlined))
        asked = found.form == "maybe-a-time"
        severity, subject = (Severity.ASK, str(dict(given)["time"])) if asked else (Severity.STOP, "")
        self.problem(block.line, "heading", severity, given, found.form, subject=subject)

    def _take_title(self, block: HeadingBlock) -> None:
        if self.title:
            place = Place(self.file, block.line)
            line = Line("", (f"## {block.text}",), place=place, replaces=not block.underlined)
            self.problem(block.line, "title", Severity.ASK, facts(line=line), "second", subject=block.text)
        else:
            self.title = block.text

    def _take_item(self, block: ItemBlock) -> None:
        kind, value = find_kind(block.text)
        if kind is None:
            self._take_plain_item(block)
            return
        if kind.below:
            given = facts(field=kind.name, below=kind.below)
            self.problem(block.line, "field-place", Severity.STOP, given, "alone", 3)
        if kind.name not in ("Hide", "Mark", "Crop") and hides(block.text):
            self._slipped(Slip(kind.name, BY_NAME["hide"], value), block.line)
        if kind.name == "Hide" and not self._step:
            self.problem(block.line, "field-place", Severity.STOP, facts(field=kind.name), "no-step", 3)
            self.stray.append(Place(self.file, block.line))
        self._own_fields.append(self._field(block))
        for text in block.rest:
            self._take_text(text)

    def _take_plain_item(self, block: ItemBlock) -> None:
        """An item that is no field is prose; a field that stands indented below it is one."""
        if slip := find_slip(block.text, listed=True):
            self._slipped(slip, block.line)
        self._look_over(block.head, block.line, skip=1)
        if not any(map(_holds_field, block.children)):
            self._prose.append(Prose(block.source, Place(self.file, block.line)))
            return
        self._prose.append(Prose(block.head, Place(self.file, block.line)))
        for child in block.children:
            self._take_item(child)
        for text in block.rest:
            self._take_text(text)

    def _field(self, block: ItemBlock) -> Field:
        kind, value = find_kind(block.text)
        assert kind is not None
        flaws: Flaws = []
        field = read_field(kind, value, Place(self.file, block.line), flaws)
        self._look_over(block.head, block.line, skip=1)
        for found in flaws:
            self.flaw(field, found)
            if kind.name == "Hide":
                self._withheld.append(field.place)
        below = [self._child(field, child) for child in block.children]
        children = tuple(child for child in below if child)
        return replace(field, children=children)

    def _child(self, field: Field, block: ItemBlock) -> Field | None:
        """A mark, hidden box or crop of a picture. Any other field there is read as one of the step."""
        kind, _ = find_kind(block.text)
        if kind and field.name == "Picture" and kind.name in ("Mark", "Hide", "Crop"):
            return self._field(block)
        if kind:
            given = facts(field=kind.name, above=field.name)
            self.problem(block.line, "field-place", Severity.STOP, given, "below", 2)
        if kind is None or kind.below:
            self._take_plain_item(block)
        else:
            self._take_item(block)
        return None

    def _end_step(self) -> None:
        if not self._step:
            return
        open_ = self._step
        step, flaws = make_step(
            open_.place, open_.heading, tuple(open_.prose), tuple(open_.fields), self.recordings, open_.withheld
        )
        for entry, found in flaws:
            self.flaw(entry, found)
        self._steps.append(step)
        self._step = None

    def end_section(self) -> None:
        """Close the open step and section."""
        self._end_step()
        if self._section:
            title, place, prose, fields = self._section
            self.sections.append(Section(title, place, tuple(prose), tuple(fields), tuple(self._steps)))
        elif self._steps:
            self.sections.append(Section("", self._steps[0].place, steps=tuple(self._steps)))
        self._section, self._steps = None, []
