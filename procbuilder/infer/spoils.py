"""What cannot be used again once it is off: single-use parts, and what a command cuts, drills or bends open."""

from procbuilder.model.commands import done_to, first_command
from procbuilder.model.ledger import Spoilt
from procbuilder.model.lexicon import Lexicon, SingleUse
from procbuilder.model.phrases import called, mentioned, names_it


def single_use(name: str, lexicon: Lexicon) -> SingleUse | None:
    """The entry of the list that a name falls under; None for what may go on again."""
    return next((part for part in lexicon.single_use if called(name, part.things, lexicon.words)), None)


def why_spoilt(name: str, command: str, lexicon: Lexicon) -> Spoilt | None:
    """Why a thing is spoilt when this command takes it off; None when it is not."""
    part = single_use(name, lexicon)
    if part is not None and part.spoilt:
        return Spoilt(part.id, part.why)
    words = lexicon.words
    for spoiling in lexicon.spoiling:
        taken = done_to(command, spoiling.verbs, words)
        if taken and _same(name, taken, lexicon) and (not spoiling.things or mentioned(name, spoiling.things, words)):
            return Spoilt(spoiling.id, spoiling.why)
    return None


def _same(name: str, taken: str, lexicon: Lexicon) -> bool:
    """True when what a command names is the thing: ``hose clip`` and ``the clip of the hose``."""
    told = first_command(taken, lexicon.commands, lexicon.words)
    return names_it(told, name, lexicon.words)
