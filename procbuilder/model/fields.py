"""The fields of a procedure: the one table of their names and parts, and the record of one field.

Whoever adds a field here changes ``procbuilder/read/FORMAT.md`` too; a test compares both.
"""

from dataclasses import dataclass

from procbuilder.model.origin import TYPED, Origin, Place
from procbuilder.model.quantity import Item
from procbuilder.model.torque import BLANK, Torque


@dataclass(frozen=True, slots=True)
class FieldKind:
    """One line of the table."""

    name: str
    parts: tuple[str, ...]
    """Names of the parts that are known by their place, in order."""
    words: tuple[str, ...] = ()
    """Names of further parts, each written ``word: value``, in any order."""
    required: int = 1
    """How many of the parts by place must not be empty."""
    items: str = ""
    """``many`` when the first part is a list of things, ``one`` when it is one thing."""
    below: str = ""
    """Name of the field below which alone it may stand."""
    none: bool = False
    """``none`` says that there is nothing; so it does of every list of things."""
    refers: bool = False
    """The first part is the id of another step."""


def _kinds(
    names: str, *parts: str, words: str = "", required: int = 1, items: str = "", below: str = "",
    none: bool = False, refers: bool = False,
) -> list[FieldKind]:  # fmt: skip
    split = tuple(words.split())
    return [FieldKind(name.strip(), parts, split, required, items, below, none, refers) for name in names.split(",")]


FIELDS: tuple[FieldKind, ...] = (
    *_kinds("Condition", "what", none=True),
    *_kinds("Tool, Supply, Part, Wear", "what", items="many"),
    *_kinds("Document", "name", "title", "issued", "checked", required=2),
    *_kinds("Included, Not included", "what"),
    *_kinds("Off, On", "item", words="by tray of", items="one"),
    *_kinds("Slacken, Nip up, Out again", "item", words="of", items="one"),
    *_kinds("For now", "item", words="while of", items="one"),
    *_kinds("State", "state", words="while"),
    *_kinds("Ends", "state"),
    *_kinds("Left open", "item", "reason", "name", words="of", items="one"),
    *_kinds("Hidden", "what", "where"),
    *_kinds("Torque", "item", "value", "where", words="order when from stage of heard", items="one", required=2),
    *_kinds("Measure", "what", "limits", words="with from", required=2),
    *_kinds("Check", "test", "right"),
    *_kinds("Danger", "hazard", "consequence", "avoid", words="while", none=True),
    *_kinds("Warning, Caution, Notice", "hazard", "consequence", "avoid", words="while"),
    *_kinds("Dangers confirmed", "name", "date"),
    *_kinds("Downgraded", "what", "name", "reason", required=3),
    *_kinds("Key point", "point", "reason"),
    *_kinds("Hold", "what", "who"),
    *_kinds("Reserved", "who"),
    *_kinds("Time", "minutes"),
    *_kinds("Wait", "minutes", "for", words="overlaps"),
    *_kinds("People", "number", words="you helper word"),
    *_kinds("Lift", "item", "kg", "path"),
    *_kinds("Vibration", "tool", "level", "minutes", required=3),
    *_kinds("Picture", "moment", "shows", "state"),
    *_kinds("Mark", "shape", "where", "label", required=2, below="Picture"),
    *_kinds("Hide", "where"),
    *_kinds("Crop", "where", below="Picture"),
    *_kinds("Skip", "span", "reason"),
    *_kinds("Only if", "condition"),
    *_kinds("Then", "where", refers=True),
    *_kinds("If", "condition", "do", "minutes", required=2),
    *_kinds("After", "step", refers=True),
    *_kinds("Mistake", "wrong", "right", required=2),
    *_kinds("Finding", "what", "level", "told"),
    *_kinds("Later", "what", "when", "told", required=2),
    *_kinds("Include", "number", "section"),
    *_kinds("See", "number", "section"),
    *_kinds("Asked, Refused", "question", "answer"),
    *_kinds("Derived", "from", refers=True),
    *_kinds("Note", "text"),
)

BY_NAME: dict[str, FieldKind] = {kind.name.casefold(): kind for kind in FIELDS}

GRAVE = ("Hide", "Hold", "Danger", "Warning", "Reserved", "Torque")
"""Fields without which somebody is shown, or gets hurt: a slip in one of them stops."""


@dataclass(frozen=True, slots=True)
class Field:
    """One field as typed, cut into its parts."""

    kind: FieldKind
    place: Place
    raw: str
    """The value as typed, with its origin."""
    parts: tuple[tuple[str, str], ...] = ()
    """(part name, text); absent parts are left out."""
    items: tuple[Item, ...] = ()
    fasteners: tuple[Item, ...] = ()
    """What holds the thing, typed behind ``by:``."""
    torque: Torque = BLANK
    """The value of a Torque field."""
    origin: Origin = TYPED
    none: bool = False
    """The value is the word ``none``: explicitly nothing."""
    children: tuple["Field", ...] = ()

    @property
    def name(self) -> str:
        """Its name as in the table."""
        return self.kind.name

    def part(self, name: str) -> str:
        """Text of a part; empty when it was not typed. KeyError for a part the field cannot have."""
        if name not in self.kind.parts and name not in self.kind.words:
            raise KeyError(f"{self.kind.name} has no part {name}")
        return dict(self.parts).get(name, "")

    @property
    def step_id(self) -> str:
        """Id of the step that it refers to; empty for a field that refers to none."""
        return self.part(self.kind.parts[0]).removeprefix("#") if self.kind.refers else ""

    @property
    def item(self) -> Item:
        """The one thing of a field about one thing."""
        return self.items[0]
