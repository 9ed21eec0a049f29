"""What cannot be used again once it is off: single-use parts, and what a command cuts, drills or bends open."""

import re

from procbuilder.model.lexicon import Lexicon, SingleUse
from procbuilder.model.words import behind_verb, mentioned

_NEXT_COMMAND = re.compile(r"(?<=\w),?\s(?:and|then)\s+(?=\w+\s+(?:off|out|up|away|the|a)\b)", re.IGNORECASE)
"""Where the next command of "Cut the tie and lift off the cover" begins."""


def single_use(name: str, lexicon: Lexicon) -> SingleUse | None:
    """The entry of the list that a name falls under; None for what may go on again."""
    return next((part for part in lexicon.single_use if mentioned(name, part.things)), None)


def why_spoilt(name: str, command: str, lexicon: Lexicon) -> str:
    """Why a thing is spoilt when this command takes it off; empty when it is not."""
    part = single_use(name, lexicon)
    if part is not None and part.spoilt:
        return part.why
    for spoiling in lexicon.spoiling:
        taken = behind_verb(command, spoiling.verbs)
        if taken and _same(name, taken) and (not spoiling.things or mentioned(name, spoiling.things)):
            return spoiling.why
    return ""


def _same(name: str, taken: str) -> bool:
    """True when what a command names is the thing: ``hose clip`` and ``the clip of the hose``."""
    return bool(mentioned(_NEXT_COMMAND.split(taken)[0], [name, name.split()[-1]]))
