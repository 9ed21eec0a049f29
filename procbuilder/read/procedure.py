"""procedure.md, format 1: from the text to the procedure as written, with all its problems."""

from dataclasses import replace
from pathlib import Path

from procbuilder.model.facts import Facts, Line, facts
from procbuilder.model.fault import NoText
from procbuilder.model.fields import Field
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worst_first
from procbuilder.model.procedure import Procedure, Prose, Section, Step
from procbuilder.read.blocks import HeadingBlock, ItemBlock, TextBlock, blocks
from procbuilder.read.fields import find_kind, near_miss, read_field, split_parts
from procbuilder.read.flaws import Flaw, Flaws
from procbuilder.read.front import read_front, split_front
from procbuilder.read.headings import Heading, read_heading
from procbuilder.read.steps import make_step, settle_ids
from procbuilder.read.text import read_file

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
    lines = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    front, problems = read_front(lines, file)
    _, end = split_front(lines)
    body = [""] * (end + 1) + lines[end + 1 :] if end > 0 else lines
    reader = _Reader(file, tuple(recording.name for recording in front.recordings))
    for block in blocks(body):
        reader.take(block)
    reader.end_section()
    sections, doubled = settle_ids(tuple(reader.sections))
    if not reader.title:
        reader.problem(1, "title", Severity.ASK, form="none", subject=file)
    procedure = Procedure(
        folder, Place(file, 1), front, reader.title, tuple(reader.intro), tuple(reader.fields), sections
    )
    return procedure, worst_first([*problems, *reader.problems, *doubled])


class _Reader:
    """Takes the blocks one by one; what it has gathered stands in its attributes."""

    def __init__(self, file: str, recordings: tuple[str, ...]) -> None:
        self.file, self.recordings = file, recordings
        self.title = ""
        self.intro: list[Prose] = []
        self.fields: list[Field] = []
        self.sections: list[Section] = []
        self.problems: list[Problem] = []
        self._section: tuple[str, Place, list[Prose], list[Field]] | None = None
        self._steps: list[Step] = []
        self._step: tuple[Place, Heading, list[Prose], list[Field]] | None = None

    def problem(
        self, line: int, rule: str, severity: Severity, given: Facts = (), form: str = "", danger: int = 4,
        subject: str = "",
    ) -> None:  # fmt: skip
        place = Place(self.file, line)
        self.problems.append(Problem(rule, severity, place, given, form, danger, subject=subject))

    def flaw(self, entry: Field, found: Flaw) -> None:
        """What cannot be read in a field is asked about, as ``Time: 12x``."""
        subject = f"{entry.name}: {split_parts(entry.raw)[0]}"
        self.problem(entry.place.line, "field", Severity.ASK, found.facts, found.form, subject=subject)

    def take(self, block: HeadingBlock | ItemBlock | TextBlock) -> None:
        match block:
            case HeadingBlock():
                self._take_heading(block)
            case ItemBlock():
                self._take_item(block)
            case TextBlock():
                self._prose.append(Prose(block.source, Place(self.file, block.line)))

    @property
    def _prose(self) -> list[Prose]:
        return self._step[2] if self._step else self._section[2] if self._section else self.intro

    @property
    def _own_fields(self) -> list[Field]:
        return self._step[3] if self._step else self._section[3] if self._section else self.fields

    def _take_heading(self, block: HeadingBlock) -> None:
        place = Place(self.file, block.line)
        sign = "#" * min(block.level, 3)
        if block.underlined or block.level > 3:
            line = Line("", (f"{sign} {block.text}",), place=place, replaces=not block.underlined)
            self.problem(block.line, "heading-form", Severity.STOP, facts(sign=sign, line=line))
        if block.level == 1:
            self._take_title(block)
        elif block.level == 2:
            self.end_section()
            self._section = (block.text, place, [], [])
        else:
            self._end_step()
            heading = read_heading(block.text, self.recordings)
            for found in heading.flaws:
                self.problem(block.line, "heading", Severity.STOP, found.facts, found.form)
            self._step = (place, heading, [], [])

    def _take_title(self, block: HeadingBlock) -> None:
        if self.title:
            place = Place(self.file, block.line)
            line = Line("", (f"## {block.text}",), place=place, replaces=not block.underlined)
            self.problem(block.line, "title", Severity.ASK, facts(line=line), "second", subject=block.text)
        else:
            self.title = block.text

    def _take_item(self, block: ItemBlock) -> None:
        place = Place(self.file, block.line)
        kind, _ = find_kind(block.text)
        if kind is None:
            if near := near_miss(block.text):
                given = facts(typed=near[0], near=near[1])
                self.problem(block.line, "field-name", Severity.STOP, given, danger=2)
            self._prose.append(Prose(block.source, place))
            return
        if kind.below:
            given = facts(field=kind.name, below=kind.below)
            self.problem(block.line, "field-place", Severity.STOP, given, "alone", 3)
        self._own_fields.append(self._field(block))
        self._prose.extend(Prose(text.source, Place(self.file, text.line)) for text in block.rest)

    def _field(self, block: ItemBlock) -> Field:
        kind, value = find_kind(block.text)
        assert kind is not None
        flaws: Flaws = []
        field = read_field(kind, value, Place(self.file, block.line), flaws)
        for found in flaws:
            self.flaw(field, found)
        below = [self._child(field, child) for child in block.children]
        children = tuple(child for child in below if child)
        return replace(field, children=children)

    def _child(self, field: Field, block: ItemBlock) -> Field | None:
        """A field below a field; anything else there is kept as text."""
        kind, _ = find_kind(block.text)
        if kind and field.name == "Picture" and kind.name in ("Mark", "Hide", "Crop"):
            return self._field(block)
        if kind:
            given = facts(field=kind.name, above=field.name)
            self.problem(block.line, "field-place", Severity.STOP, given, "below", 2)
        self._prose.append(Prose(block.source, Place(self.file, block.line)))
        return None

    def _end_step(self) -> None:
        if not self._step:
            return
        place, heading, prose, fields = self._step
        step, flaws = make_step(place, heading, tuple(prose), tuple(fields), self.recordings)
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
