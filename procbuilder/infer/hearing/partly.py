"""What is done only in part: turned to a value, turned out by two turns, stripped for some of its length."""

import re

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.wordbook import Block
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.memory import Named
from procbuilder.infer.hearing.told import Told
from procbuilder.model.heard import Act

SOME_WORK = Block("", Act.WORK, frozenset())
_TURNS = re.compile(r"\b(?:an?|one|two|three|four|half an?|quarter|few|couple(?: of)?|\d)\s+(?:more\s+)?turns?\b")
_UNDOES = frozenset({"undo", "unscrew", "back", "wind", "screw", "turn", "run", "spin", "unthread", "ease"})
_THEN = re.compile(r"\b(?:until|till|then|and|or|before|after)\b")
_SIGN = re.compile(r"[,;:.!?–—]")


def in_part(block: Block, told: Told, thing: Thing, named: Named, clauses: Clauses, words: str) -> Block:
    """The block itself, or what it comes to where it is done only in part."""
    if (block.act is Act.STATE and named.new) or (block.act is Act.OFF and thing.partial):
        return SOME_WORK
    if block.act is Act.OFF and clauses.book.is_in(named.name, ("dirt", "fluid")):
        return SOME_WORK
    turns = block.act in (Act.OFF, Act.ON, Act.TIGHTEN) and told.verb in _UNDOES
    if turns and _is_turned_a_little(clauses, told, words):
        if block.act is not Act.OFF:
            return SOME_WORK
        return next(one for one in clauses.book.by_verb["loosen"])
    return block


def _is_turned_a_little(clauses: Clauses, told: Told, words: str) -> bool:
    """ "Back it out a few turns": up to the next sign, the number of turns may stand behind one comma."""
    rest = _THEN.split(words[clauses.tokens[told.start].start :].casefold())[0]
    turned = _TURNS.search(rest)
    return turned is not None and len(_SIGN.findall(rest[: turned.start()])) <= 1
