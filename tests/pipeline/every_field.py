"""A procedure with every field of the format, each part filled with words of its own."""

from collections.abc import Callable

from procbuilder.model.fields import FIELDS, FieldKind

Words = Callable[[str, str], str]
"""Called with the name of a field and of a part; gives the text of that part."""

FIXED = {
    ("Torque", "value"): "31 N·m", ("Torque", "stage"): "", ("Time", "minutes"): "7", ("Wait", "minutes"): "11",
    ("Wait", "overlaps"): "yes", ("People", "number"): "2", ("Lift", "kg"): "9", ("Vibration", "minutes"): "13",
    ("If", "minutes"): "17", ("Picture", "moment"): "0:01", ("Picture", "state"): "detail", ("Mark", "shape"): "arrow",
    ("Mark", "where"): "0.6,0.4,0.5,0.5", ("Hide", "where"): "0:01 0.1,0.1,0.2,0.2",
    ("Crop", "where"): "0.1,0.1,0.9,0.9", ("Skip", "span"): "0:01.250-0:01.500",
    ("Then", "where"): "#last", ("After", "step"): "#last",
    ("Finding", "level"): "watch",
}  # fmt: skip
"""Parts that hold more than words."""
BEFORE = ("Condition", "Tool", "Supply", "Part", "Wear", "Document", "Included", "Not included", "Dangers confirmed",
          "Danger", "Warning", "Caution", "Notice", "Note")  # fmt: skip
APART = ("Reserved", "Only if")
"""They change what a step shows, so they stand in steps of their own."""


def line(kind: FieldKind, words: Words) -> str:
    """The field with all its parts."""
    parts = [words(kind.name, part) for part in kind.parts]
    parts += [f"{word}: {text}" for word in kind.words if (text := words(kind.name, word))]
    return f"- {kind.name}: {' | '.join(parts)}"


def fixed(words: Words) -> Words:
    """The same words, but for the parts that hold times, numbers and shapes."""
    return lambda name, part: FIXED[name, part] if (name, part) in FIXED else words(name, part)


def every_field(words: Words) -> str:
    """Text over the recording ``recordings/strip.mp4``; ``words`` also fills front matter, titles and prose."""
    keys = ("number", "revision", "item", "applies to", "not for", "author", "place", "people", "ask", "stated time")
    front = "\n".join(f"{key}: '{words('front', key).replace(chr(39), chr(39) * 2)}'" for key in keys)
    by_name = {kind.name: kind for kind in FIELDS}
    before = "\n".join(line(by_name[name], words) for name in BEFORE)
    return "\n\n".join(
        [
            f"---\n{front}\nrecordings: {{strip: recordings/strip.mp4}}\nnarration: {{strip: strip.srt}}\n---",
            f"# {words('title', '')}", words("prose", "intro"),
            f"## {words('section', '1')}", words("prose", "section"), before,
            f"## {words('section', '2')}",
            f"### 0:00.500-0:02 {words('command', '1')} {{#first}}", words("prose", "step"),
            _fields(words),
            *(f"### 0:02-0:03 {words('command', name)}\n\n{line(by_name[name], words)}" for name in APART),
            f"### {words('command', 'last')} {{#last}}", line(by_name["Check"], words),
        ]
    ) + "\n"  # fmt: skip


def _fields(words: Words) -> str:
    """All fields of a step, those that belong below a picture indented below it."""
    lines = []
    for kind in FIELDS:
        if kind.name not in APART and not kind.below:
            lines.append(line(kind, words))
        if kind.name == "Picture":
            lines += [f"  {line(below, words)}" for below in FIELDS if below.below == "Picture"]
    return "\n".join(lines)
