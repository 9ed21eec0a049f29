"""Lines as a hurried hand types them: a program makes them of every field and of the heading of a step."""

from collections.abc import Iterator
from dataclasses import dataclass

from procbuilder.model.fields import FIELDS

VALUES = {
    "Torque": "keeper bolts | 15 N·m | from: D1 p. 4",
    "Danger": "the trailer falls | crushing | never on the jack alone",
    "Warning": "hot | burn | gloves",
    "Caution": "the bar can slip | cut hand | push away from you",
    "Hold": "bearing play | foreman",
    "Picture": "0:02 | cap off",
    "Hide": "0:02 0.1,0.7,0.3,0.8",
    "Skip": "0:02-0:03 | talk",
    "Time": "12",
    "Lift": "wheel | 25",
    "Derived": "#turn-it",
    "Then": "#turn-it",
    "After": "#turn-it",
}
"""What stands behind the names that take no words."""

NEIGHBOURS = dict(zip("abcdefghijklmnopqrstuvwxyz", "snvfrghjoklknmipwtdyivesux", strict=True))
"""For each letter one that lies beside it on a keyboard."""

BULLETS = ("* ", "+ ", "– ", "• ", "-", "-  ", "1. ", "> - ", "    - ", "\t- ", "  - ")
BOLD = ("**{}:** {}", "**{}**: {}", "__{}:__ {}", "*{}:* {}", "**{}: {}**", "`{}:` {}")
BEHIND = ("{}; {}", "{}. {}", "{} = {}", "{} – {}", "{} : {}", "{}:{}", "{}：{}", "{} :{}")

OTHER_WORDS = (
    ("Blur", "Hide"), ("Pixelate", "Hide"), ("Cover up", "Hide"), ("Black out", "Hide"),
    ("Unkenntlich", "Hide"), ("Verpixeln", "Hide"), ("Hide face", "Hide"), ("Hide plate", "Hide"),
    ("PPE", "Wear"), ("PSA", "Wear"), ("Photo", "Picture"), ("Image", "Picture"), ("Foto", "Picture"),
    ("Warn", "Warning"), ("Warnung", "Warning"), ("Gefahr", "Danger"), ("Hold point", "Hold"), ("Haltepunkt", "Hold"),
    ("Only for", "Reserved"), ("Drehmoment", "Torque"), ("Tools", "Tool"), ("Werkzeug", "Tool"), ("Parts", "Part"),
)  # fmt: skip

ELEVEN = (
    "- Hide: refit 0:02 0.1,0.7,0.3,0.8",
    "* Hide: 0:02 0.1,0.7,0.3,0.8",
    "- Hdie: 0:02 0.1,0.7,0.3,0.8",
    "- Hide: 0:02 0.1,0.7,0.3",
    "- Hide: 0:02 10%,70%,30%,80%",
    "- Hide: 0:02 0,1,0,7,0,3,0,8",
    "- Hide: 0.1,0.7,0.3,0.8",
    "    - Hide: 0:02 0.1,0.7,0.3,0.8",
    "**Hide:** 0:02 0.1,0.7,0.3,0.8",
    "- Blur: 0:02 0.1,0.7,0.3,0.8",
)
"""Below the heading of a step; the eleventh stands before the first step."""

HEADINGS = (
    "### 58-68 Stand it up", "### 0:48-0:58: Stand it up", "### 0:48-0:58 - Stand it up", "### 0.48-0.58 Stand it up",
    "### (0:48-0:58) Stand it up", "### [0:48-0:58] Stand it up", "### 0:48—0:58 Stand it up",
    "### 0:48..0:58 Stand it up", "### 0:48 -> 0:58 Stand it up", "### 0:48 until 0:58 Stand it up",
    "### 0:48 bis 0:58 Stand it up", "### 0:48-58 Stand it up", "### 0;48-0;58 Stand it up", "### 0:48- Stand it up",
    "### -0:58 Stand it up", "### strip: 0:48-0:58 Stand it up", "### Strip 0:48-0:58 Stand it up",
    "### 48s-58s Stand it up", "### 0:48 0:58 Stand it up", "### 0:48/0:58 Stand it up", "### @0:48-0:58 Stand it up",
    "### 0h48-0h58 Stand it up", "### Stand it up 0:48-0:58", "### Stand it up (0:48-0:58)", "### 0:48 Stand it up",
    "### 0:4a-0:58 Stand it up", "### O:48-O:58 Stand it up", "### 48-58: Stand it up", "### 58 - 68 Stand it up",
    "### 58–68 Stand it up", "### 00:48-00:72 Stand it up", "### 0:48-0:58,Stand it up", "### 0:48-0:58. Stand it up",
    "#### 0:48-0:58 Stand it up", "###0:48-0:58 Stand it up", "## 0:48-0:58 Stand it up", "**0:48-0:58 Stand it up**",
    "0:48-0:58 Stand it up", "### *0:48-0:58* Stand it up", "### **0:48-0:58** Stand it up",
    " ### 0:48-0:58: Stand it up", "### strip 58-68 Stand it up", "### 0:48-0:58 | Stand it up", "### 0,48-0,58 Stand",
    "### ab 0:48 Stand it up", "### 0:48-0:58-Stand it up", "### 1:2:3:4-0:58 Stand it up", "### 0:48 ~ 0:58 Stand it",
)  # fmt: skip
"""A step with its time, typed wrong in one way each."""


@dataclass(frozen=True, slots=True)
class Mistyped:
    """A line, and the field that was meant."""

    line: str
    name: str
    value: str


def value(name: str) -> str:
    """A good value of a field."""
    return VALUES.get(name, "axle stand | 2026 | RB")


def edits(name: str) -> Iterator[str]:
    """The name with a letter left out, doubled, struck beside, or two of them turned round; the first letter too."""
    for at, letter in enumerate(name):
        if letter == " ":
            yield name[:at] + name[at + 1 :]
            continue
        beside = NEIGHBOURS[letter.lower()]
        yield name[:at] + name[at + 1 :]
        yield name[:at] + letter + name[at:]
        yield name[:at] + (beside.upper() if letter.isupper() else beside) + name[at + 1 :]
        if at + 1 < len(name) and name[at + 1] not in (" ", letter):
            yield name[:at] + name[at + 1] + letter + name[at + 2 :]


def mistyped() -> Iterator[Mistyped]:
    """Each field with every edit of its name, every other bullet, bold and sign behind the name; and other words."""
    kinds = {kind.name: kind for kind in FIELDS if kind.name not in ("Mark", "Crop", "Note")}
    for name in kinds:
        good = value(name)
        for typed in dict.fromkeys(edits(name)):
            if typed.strip() and typed.casefold() not in {known.casefold() for known in kinds}:
                yield Mistyped(f"- {typed}: {good}", name, good)
        for bullet in BULLETS:
            yield Mistyped(f"{bullet}{name}: {good}", name, good)
        for form in (*BOLD, *BEHIND):
            yield Mistyped(f"- {form.format(name, good)}", name, good)
        yield Mistyped(f"{name}: {good}", name, good)
        yield Mistyped(f"**{name}:** {good}", name, good)
        yield Mistyped(f"**{name[1].upper()}{name[0].lower()}{name[2:]}:** {good}", name, good)
    for word, name in OTHER_WORDS:
        yield Mistyped(f"- {word}: {value(name)}", name, value(name))
