"""One verb in its sentence, with all that belongs to it."""

from dataclasses import dataclass

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing


@dataclass(frozen=True, slots=True)
class Told:
    """One verb in its sentence."""

    verb: str
    form: Form
    start: int
    end: int
    """Tokens from the verb up to end."""
    things: tuple[Thing, ...] = ()
    particles: tuple[str, ...] = ()
    means: Thing | None = None
    """What follows ``with``."""
    about: Thing | None = None
    """What follows ``for`` or ``over``: "look for leaks"."""
    where: Thing | None = None
    """What follows the particle or ``in``, ``on``, ``to``: "put it in the tray"."""
    moves: bool = False
    """The thing does it by itself: "the cover lifts off"."""
    so: str = ""
    """How the thing is then: "pull it straight"."""
    leads: bool = False
    """The last particle leads to a place: ``over`` of "slip it over the stud"."""
