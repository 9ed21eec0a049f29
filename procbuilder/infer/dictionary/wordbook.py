"""The trade's words of one language, read from ``infer/data``: grammar, things, operations."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from functools import cache, cached_property, lru_cache
from typing import Any

from procbuilder.infer.dictionary.english import singular, thing
from procbuilder.infer.dictionary.inflection import Form, forms
from procbuilder.infer.dictionary.tokens import Token, cut
from procbuilder.infer.wordlists import ENGLISH, lists
from procbuilder.model.heard import Act
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords


@dataclass(frozen=True, slots=True)
class Block:
    """One operation of ``operations.toml``."""

    print: str
    act: Act
    verbs: frozenset[str]
    opposite: str = ""
    """The command that puts it back; empty when there is none."""
    particles: frozenset[str] = frozenset()
    """One of these must go with the verb; an empty one stands for none. No particles: any will do."""
    not_alone: frozenset[str] = frozenset()
    """Verbs that need a particle in spite of the empty one."""
    alone: bool = False
    """Only without a particle."""
    things: frozenset[str] = frozenset()
    """It counts for these things only; empty means for all."""
    state: str = ""
    default: str = ""
    """The thing when it is only pointed at and none that fits was named."""
    scrap: bool = False
    when: str = ""
    """It counts only for a thing that is ``off``, ``on``, ``slack``, ``open`` or fitted ``for now`` at this moment;
    ``any open`` when something is in the state, ``late`` when something has been put back, ``only slackened`` when
    it was slackened before and tightened, and never off.
    """
    so: frozenset[str] = frozenset()
    """It counts only when one of these tells how the thing is then: "pull the nut tight"."""
    means: bool = False
    """The thing is what follows ``with``: "hang it up with a strap"."""
    named: bool = False
    """It counts only for a thing that is named: "move it" tells too little to be a command."""
    by: frozenset[str] = frozenset()
    """It counts only when ``with`` names one of these."""
    object: str = ""
    """The thing itself, when the verb names it: to chock is to fit a chock."""
    where: frozenset[str] = frozenset()
    """It counts only when the thing goes there: "hold it up to the light"; ``*`` is any place."""
    unless: frozenset[str] = frozenset()
    """It does not count when the thing was named together with one of these: the key of a shaft."""
    moves: bool = False
    """It counts only for a thing that does it by itself: "the pump pulls straight up"."""
    about: bool = False
    """The thing is what follows the particle: "look for leaks"."""


_OF_EVERY_DAY = ("place", "body", "worn", "vehicle", "driven", "catching")
"""Groups of things of which people also talk."""
_FILES = ("cues", "grammar", "objects", "operations", "sizes", "speech", "verbs")
_NO_SMALL_WORDS = ("moving", "falling", "held_up", "bare", "lights")
"""Lists of the grammar that hold verbs and things."""


@dataclass(frozen=True, eq=False)
class Wordbook:
    """All words of one language."""

    grammar: Mapping[str, Any]
    groups: Mapping[str, frozenset[str]]
    blocks: tuple[Block, ...]
    past: Mapping[str, str]
    common: tuple[str, ...]
    sizes: Mapping[str, Any]
    cues: Mapping[str, tuple[str, ...]]
    speech: Mapping[str, Sequence[str]]
    """Words that serve one rule each."""
    nicknames: Mapping[str, str] = field(default_factory=dict)
    """What a workshop says, as ``thing`` gives it, and the name under which it is filed."""

    def filed(self, name: str) -> str:
        """The name under which a thing is filed; the nickname may stand behind other words: ``upper banana plug``."""
        words = name.split()
        for start in range(len(words) if self.nicknames else 0):
            if (standard := self.nicknames.get(thing(" ".join(words[start:])))) is not None:
                return " ".join([*words[:start], standard])
        return name

    @cached_property
    def forms(self) -> dict[str, tuple[tuple[str, Form], ...]]:
        """Every form of every verb of the operations."""
        return forms({verb: None for block in self.blocks for verb in sorted(block.verbs)}, self.past)

    @cached_property
    def idle(self) -> frozenset[str]:
        """Every form of the verbs that are no work on the item."""
        return frozenset(forms(self.common, self.past))

    @cached_property
    def by_verb(self) -> dict[str, tuple[Block, ...]]:
        """The blocks of each verb, in the order of the file."""
        table: dict[str, list[Block]] = {}
        for block in self.blocks:
            for verb in block.verbs:
                table.setdefault(verb, []).append(block)
        return {verb: tuple(blocks) for verb, blocks in table.items()}

    @cached_property
    def watched(self) -> frozenset[str]:
        """Things whose meaning depends on what they are named with."""
        return frozenset(name for block in self.blocks if block.unless for name in block.things)

    @cached_property
    def nouns(self) -> frozenset[str]:
        """Every thing of the groups that one word names, and its last word where several do."""
        return frozenset(name.split()[-1] for group in self.groups.values() for name in group)

    def knows(self, name: str) -> bool:
        """True when a name ends with the word of a thing."""
        last = singular(name.split()[-1]) if name else ""
        return last in self.nouns or last.rpartition("-")[2] in self.nouns

    @cached_property
    def trade_words(self) -> frozenset[str]:
        """Words that are used of the work only."""
        everyday = self.grammar["everyday_things"]
        groups = (things for name, things in self.groups.items() if name not in _OF_EVERY_DAY)
        return frozenset(name for group in groups for name in group if " " not in name) - frozenset(everyday)

    @cached_property
    def firm_nouns(self) -> frozenset[str]:
        """As ``nouns``, without the words that are as often a verb: ``the motor lifts off``."""
        groups = (
            things for name, things in self.groups.items() if name not in ("part", "tool", "place", "pulled", "release")
        )
        return frozenset(name.split()[-1] for group in groups for name in group)

    @cached_property
    def compounds(self) -> frozenset[str]:
        """Things named by two or more words, such as ``drain plug``."""
        return frozenset(name for group in self.groups.values() for name in group if " " in name)

    @cached_property
    def joined(self) -> dict[tuple[str, ...], str]:
        """Words that count as one word or as none."""
        return {tuple(words.split()): into for words, into in self.grammar["joined"].items()}

    @cached_property
    def numbers(self) -> dict[str, Decimal]:
        """Number words with their value."""
        return {word: Decimal(value) for word, value in self.grammar["numbers"].items()}

    @cached_property
    def states(self) -> Mapping[str, str]:
        """How a thing may be then, with the verb that says the same."""
        return dict(self.grammar["states"])

    def has(self, kind: str, word: str) -> bool:
        """True when the word stands in this list of the grammar."""
        return word in self._sets[kind]

    def is_small(self, word: str) -> bool:
        """True for a word of any list of the grammar."""
        return word in self._small

    @cached_property
    def _small(self) -> frozenset[str]:
        kinds = (kind for kind in self._sets if kind in self.grammar and kind not in _NO_SMALL_WORDS)
        return frozenset().union(*(self._sets[kind] for kind in kinds))

    @cached_property
    def _sets(self) -> dict[str, frozenset[str]]:
        lists = {**self.grammar, **self.speech}
        return {kind: frozenset(words) for kind, words in lists.items() if isinstance(words, list)}

    def names(self, name: str, groups: Iterable[str]) -> bool:
        """True when a name is that of one of these things, or of these groups, with no word before it."""
        key = thing(name)
        return any(key in self.groups.get(group, (group,)) for group in groups)

    def is_in(self, name: str, groups: Iterable[str]) -> bool:
        """True when a name ends with one of these things, or of these groups; ``=brake`` is that alone.

        A P-clip is a clip.
        """
        ends, known = _endings(name), self.groups
        return any(group in ends if group not in known else not ends.isdisjoint(known[group]) for group in groups)


@lru_cache(maxsize=8192)
def _endings(name: str) -> frozenset[str]:
    words = [singular(word) for word in name.split()]
    joined = words[-1:] and words[-1].rpartition("-")[2:]
    return frozenset([f"={' '.join(words)}", *joined, *(" ".join(words[start:]) for start in range(len(words)))])


@lru_cache(maxsize=4096)
def tokens_of(words: str, book: Wordbook) -> tuple[Token, ...]:
    """The words and signs of a sentence; read by both readings, and cut once."""
    return tuple(cut(words, book.joined))


def is_heard(language: str) -> bool:
    """Whether a narration in this language, as typed, is understood."""
    return bool(lists(language).table("grammar"))


@cache
def wordbook(language: str = ENGLISH, own: OwnWords = NO_OWN_WORDS) -> Wordbook:
    """The words of a language, of English where there is no grammar of it, with those of a workshop before them."""
    if own != NO_OWN_WORDS:
        return _extended(wordbook(language), own)
    known = lists(language)
    if not known.table("grammar"):
        return wordbook(ENGLISH)
    tables = {name: known.table(name) for name in _FILES}
    groups = {name: frozenset(thing(one) for one in things) for name, things in tables["objects"].items()}
    cues = {name: tuple(phrases) for name, phrases in tables["cues"].items()}
    blocks = tuple(_block(entry) for entry in tables["operations"]["operation"])
    return Wordbook(
        tables["grammar"],
        groups,
        blocks,
        tables["verbs"]["past"],
        tuple(tables["verbs"]["common"]),
        tables["sizes"],
        cues,
        tables["speech"],
    )


def _extended(book: Wordbook, own: OwnWords) -> Wordbook:
    groups = dict(book.groups)
    for name, things in own.objects:
        groups[name] = groups.get(name, frozenset()) | {thing(one) for one in things}
    blocks = tuple(
        Block(
            print=one.print,
            act=one.act,
            verbs=frozenset(one.verbs),
            opposite=one.opposite,
            particles=frozenset(one.particles),
            things=frozenset(one.things),
            state=one.state,
            scrap=one.scrap,
        )
        for one in own.operations
    )
    nicknames = {thing(said): name for said, name in own.nicknames}
    return replace(book, groups=groups, blocks=(*blocks, *book.blocks), nicknames=nicknames)


def _block(entry: Mapping[str, Any]) -> Block:
    sets = ("verbs", "particles", "not_alone", "things", "so", "where", "unless", "by")
    values: dict[str, Any] = {key: frozenset(value) if key in sets else value for key, value in entry.items()}
    return Block(**{**values, "act": Act(entry["act"])})
