"""What a verb with its particles means for a thing, and what is done only in part."""

import re
from dataclasses import replace

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.wordbook import Block, Wordbook
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.memory import Named
from procbuilder.infer.hearing.status import Status
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.model.heard import Act


def meaning(told: Told, name: str, book: Wordbook, status: Status | None = None) -> Block | None:
    """The first block of the operations that fits verb, particles and thing; ``status`` tells what is off now.

    A verb that does not go with "off" or "out" takes something off or out.
    """
    found = _meaning(told, name, book, status)
    if found is None and told.leads:
        told = replace(told, particles=told.particles[:-1])
        found = _meaning(told, name, book, status)
    leaves = bool(told.things) and any(book.has("away", one) for one in told.particles)
    return _meaning(replace(told, verb="take"), name, book, status) if found is None and leaves else found


def _meaning(told: Told, name: str, book: Wordbook, status: Status | None) -> Block | None:
    now = status or Status()
    for block in book.by_verb.get(told.verb, ()):
        if not (_particles_fit(block, told) and _thing_fits(block, told, name, book)):
            continue
        if now.holds(block.when, name, block.state) and not now.named_with(name, block.unless):
            return block
    return None


def _particles_fit(block: Block, told: Told) -> bool:
    if block.so:
        return told.so in block.so
    if block.about:
        return told.about is not None
    if block.alone:
        return not told.particles and not told.so
    if not block.particles:
        return True
    if told.particles:
        return not block.particles.isdisjoint(told.particles)
    return "" in block.particles and told.verb not in block.not_alone


def _thing_fits(block: Block, told: Told, name: str, book: Wordbook) -> bool:
    if block.moves and not told.moves:
        return False
    if block.where and (told.where is None or not ("*" in block.where or book.is_in(told.where.name, block.where))):
        return False
    if block.means and (told.means is None or book.is_in(told.means.name, ("tool", "body"))):
        return False
    if block.by and told.means is None:
        return False
    if not name and block.default:
        return True
    return not block.things or book.is_in(name, block.things)


def is_laid_aside(told: Told, book: Wordbook) -> bool:
    """ "Put it on the bench" fits nothing anywhere."""
    where = told.where
    if "aside" in told.particles:
        return True
    if "back" in told.particles:
        return False
    return where is not None and bool(where.name) and book.is_in(where.name, ("place",))


SOME_WORK = Block("", Act.WORK, frozenset())
_TURNS = re.compile(r"\b(?:an?|one|two|three|four|half an?|quarter|few|couple(?: of)?|\d)\s+(?:more\s+)?turns?\b")
_THEN = re.compile(r"\b(?:until|till|then|and|or|before|after)\b")
_SIGN = re.compile(r"[,;:.!?–—]")


def in_part(block: Block, told: Told, thing: Thing, named: Named, clauses: Clauses, words: str) -> Block:
    """The block itself, or what it comes to where it is done only in part."""
    if (block.act is Act.STATE and named.new) or (block.act is Act.OFF and thing.partial):
        return SOME_WORK
    if block.act is Act.OFF and clauses.book.is_in(named.name, ("dirt", "fluid")):
        return SOME_WORK
    turns = block.act in (Act.OFF, Act.ON, Act.TIGHTEN) and clauses.book.has("turning", told.verb)
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
