"""How the words of a language are told apart: the same thing in singular and plural, whatever its case and spelling."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import takewhile

Ending = tuple[str, str, int]
"""An ending, what it becomes, and how many letters must stand before it."""


@dataclass(frozen=True, slots=True, eq=False)
class VerbForms:
    """How a language that puts verbs last changes them."""

    particles: frozenset[str] = frozenset()
    """Front parts of verbs that can stand apart, at the end of a clause: ``ab`` of ``abziehen``."""
    prefixes: frozenset[str] = frozenset()
    """Front parts of verbs that never stand apart."""
    participle: str = ""
    """Stands before the stem of a participle: ``ge``."""
    infinitive: str = ""
    """Stands between particle and verb: ``zu``."""
    verbs: str = ""
    """Ending of the verbs whose participle has nothing before it: ``ier`` of ``montiert``."""
    odd_forms: Mapping[str, str] = field(default_factory=dict)
    """Forms that no rule makes: ``gezogen`` of ``ziehen``."""
    kinds: tuple[tuple[str, ...], ...] = ()
    """Verbs of commands, those of one kind together."""


@dataclass(frozen=True, slots=True, eq=False)
class CommandWords:
    """Where a command begins, and what tells that a sentence is none."""

    begins_behind: frozenset[str] = frozenset()
    manner: str = ""
    """Ending of a word that tells how, behind which a command can begin: ``gradually``."""
    joints: tuple[str, ...] = ()
    """What joins two commands, the longer ones first."""
    surely: frozenset[str] = frozenset()
    """Joints behind which a verb surely begins a command."""
    takes_object: frozenset[str] = frozenset()
    """Words behind a verb. "pin the lever" is a second command; the pin of "clip and pin" is a thing."""
    never_nouns: frozenset[str] = frozenset()
    """Verbs that surely begin a command behind a joint."""
    at_once: frozenset[str] = frozenset()
    """Verbs of one hand while the other one works: such a pair is one command."""
    asks: frozenset[str] = frozenset()
    """Verbs after which a condition asks whether something is so."""
    no_command: frozenset[str] = frozenset()
    """With these no command begins."""
    telling: str = ""
    """Ending of a verb that tells what happens."""
    not_telling: frozenset[str] = frozenset()
    """Verbs that end so and begin a command."""
    condition: tuple[str, ...] = ()
    """With these a condition begins."""
    condition_behind: tuple[str, ...] = ()
    """Of these, what tells a condition behind a command too."""
    condition_first: str = ""
    """A command with its condition in front: ``If {condition}, {lowered}``, or ``{command}`` as it is written."""


@dataclass(frozen=True, slots=True, eq=False)
class Words:
    """What is known of the words of one language; without anything, words are the same when their letters are."""

    articles: frozenset[str] = frozenset()
    """In front of a name they say nothing."""
    passed_over: frozenset[str] = frozenset()
    """They may stand within a phrase without changing it."""
    denies: frozenset[str] = frozenset()
    """One of these shortly before a phrase denies it."""
    denies_behind: frozenset[str] = frozenset()
    of: frozenset[str] = frozenset()
    """The name of a thing ends in front of these."""
    no_part_of_a_name: frozenset[str] = frozenset()
    """Words that do not make another thing of what stands before them, as "bracket" does of "gearbox bracket"."""
    particles: frozenset[str] = frozenset()
    """Of these, words that belong to a verb: ``off``."""
    letters: Mapping[str, str] = field(default_factory=dict)
    """Letters that are written in two ways."""
    plurals: tuple[Ending, ...] = ()
    cases: tuple[Ending, ...] = ()
    """Endings that make no plural."""
    no_plurals: frozenset[str] = frozenset()
    """Words that end like a plural and are none."""
    odd_forms: Mapping[str, str] = field(default_factory=dict)
    spellings: Mapping[str, str] = field(default_factory=dict)
    compounds: bool = False
    """Words are written together; what such a word is stands at its end."""
    capital_nouns: bool = False
    verbs: VerbForms = VerbForms()
    verb_last: bool = False
    """A command ends with its verb."""
    command: CommandWords = CommandWords()
    plainly_read: bool = False
    """The formulas of reading ease hold for it."""

    def written(self, word: str) -> str:
        """In small letters, each written in one way."""
        word = word.casefold()
        for letters, other in self.letters.items():
            word = word.replace(letters, other)
        return word

    def singular(self, word: str) -> str:
        """In small letters without its plural ending: ``nuts`` and ``nut`` are then the same."""
        return _singular(self, word)

    def folded(self, word: str) -> str:
        """By which all forms and spellings of a word are the same; more than one word where it is written apart."""
        return _folded(self, word)

    def named(self, text: str) -> str:
        """A name without the articles in front of it."""
        first, _, rest = text.strip().partition(" ")
        return self.named(rest) if rest.strip() and self.written(first) in self.articles else text.strip()

    def thing(self, name: str) -> str:
        """By which two mentions are the same thing: case, spaces, articles, plurals and spelling ignored."""
        return _thing(self, name)

    def as_spelled(self, name: str) -> str:
        """As ``thing``, but each spelling is a word of its own."""
        return " ".join(self.singular(word) for word in self.named(name).split())

    def is_plural(self, name: str) -> bool:
        """True when what the name is about has a plural ending: ``wheel nuts``, but not ``mains plug``."""
        head = self.named(name).partition(",")[0]
        words = list(takewhile(lambda word: self.written(word) not in self.of, head.split()))
        nouns = [word for word in words if word[:1].isupper()] if self.capital_nouns else words[-1:]
        return any(self.singular(word) != self.written(word) for word in nouns or words)


UNKNOWN = Words()
"""Those of a language of which nothing is known."""


@lru_cache(maxsize=20_000)
def _singular(words: Words, word: str) -> str:
    word = words.written(word)
    if (odd := _odd_form(words, word)) or _is_among(words, word, words.no_plurals):
        return odd or word
    one = _without(word, words.plurals)
    return _odd_form(words, one) or one


@lru_cache(maxsize=20_000)
def _folded(words: Words, word: str) -> str:
    one = _without(_singular(words, word), words.cases)
    return words.spellings.get(one, one)


@lru_cache(maxsize=20_000)
def _thing(words: Words, name: str) -> str:
    return " ".join(words.folded(word) for word in words.named(name).split())


def _without(word: str, endings: Iterable[Ending]) -> str:
    """Only the first ending that fits is changed."""
    for ending, becomes, before in endings:
        if word.endswith(ending) and len(word) - len(ending) >= before:
            return word.removesuffix(ending) + becomes
    return word


def _odd_form(words: Words, word: str) -> str:
    """The usual form of an odd one, which may be the end of a compound; empty for any other word."""
    return _ending_so(word, words.odd_forms) if words.compounds else words.odd_forms.get(word, "")


def _ending_so(word: str, forms: Mapping[str, str]) -> str:
    """A word with the longest of the forms at its end changed; empty when it ends with none."""
    longest = max((form for form in forms if word.endswith(form)), key=len, default="")
    return word.removesuffix(longest) + forms[longest] if longest else ""


def _is_among(words: Words, word: str, listed: frozenset[str]) -> bool:
    return word in listed or (words.compounds and word.endswith(tuple(listed)))


@lru_cache(maxsize=20_000)
def verb_forms(words: Words, word: str) -> frozenset[str]:
    """The verbs of which a word can be a form, folded: ``abziehen`` of "abgezogen" and "abzuziehen"."""
    word = words.written(word)
    odd = {words.folded(verb) for verb in (_ending_so(word, words.verbs.odd_forms),) if verb}
    made = (match for pattern in _made_forms(words.verbs) if (match := pattern.fullmatch(word)))
    return frozenset(odd | {"".join(filter(None, match.groups())) for match in made})


@lru_cache(maxsize=20)
def _made_forms(verbs: VerbForms) -> tuple[re.Pattern[str], ...]:
    if not verbs.participle:
        return ()
    apart, never = ("|".join(sorted(parts, key=len, reverse=True)) for parts in (verbs.particles, verbs.prefixes))
    return (
        re.compile(rf"({apart}){verbs.infinitive}(\w{{2,}}?)e?n"),
        re.compile(rf"({apart})?{verbs.participle}(\w{{3,}}?)e?t(?:e[nmrs]?)?"),
        re.compile(rf"((?:{apart})?(?:{never})\w{{3,}}?)e?t(?:e[nmrs]?)?"),
        re.compile(rf"(\w+{verbs.verbs})t(?:e[nmrs]?)?"),
        re.compile(r"(\w{3,}?)e?t"),
    )
