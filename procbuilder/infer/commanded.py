"""What the command of a step does to which thing, where the verb stands last: "Deckel und Kette abnehmen"."""

from collections.abc import Iterable, Iterator
from itertools import islice

from procbuilder.infer.dictionary.wordbook import is_heard
from procbuilder.infer.hearing.operations import operations
from procbuilder.model.commands import split_commands, without_verb
from procbuilder.model.heard import Act, Operation, Sentence
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.words import Words
from procbuilder.model.workshop import OwnWords


def commanded(sentences: Iterable[Sentence], lexicon: Lexicon, own: OwnWords) -> tuple[Operation, ...]:
    """The operations of commands: heard where the language has a grammar, else told by its lists of verbs alone."""
    if is_heard(lexicon.language):
        return operations(sentences, lexicon.language, own, commands=True)
    return tuple(one for sentence in sentences for one in _told(sentence, lexicon))


def _told(sentence: Sentence, lexicon: Lexicon) -> Iterator[Operation]:
    words = lexicon.words
    verbs = [(verb, doing) for doing in lexicon.doings for verb in doing.verbs]
    verbs.sort(key=lambda one: -len(one[0]))
    for piece in split_commands(sentence.words, lexicon.commands, words) or [sentence.words]:
        rests = ((verb, doing, without_verb(piece, [verb], words)) for verb, doing in verbs)
        for verb, doing, rest in islice((one for one in rests if one[2] is not None), 1):
            for name in things(rest or "", words):
                plural, act = words.is_plural(name), Act(doing.act)
                yield Operation(verb, act, name, sentence, plural=plural, words=piece, opposite=doing.opposite)


def things(text: str, words: Words) -> list[str]:
    """The things that a clause names without its verb, but for those behind a preposition or in the genitive.

    "beide Schläuche von der Pumpe" names the Schläuche, "mit dem Kettenzug den Zylinder" the Zylinder.
    """
    found: list[list[str]] = [[]]
    aside = False
    for word in _nouns_first(text.replace(",", " , ").split(), words):
        low = words.written(word)
        if low in words.passed_over:
            aside = low in words.of if found[-1] else aside
            found.append([])
        elif low == "," or low in words.command.joints:
            found.append([])
        elif low in words.no_part_of_a_name:
            aside = True
            found.append([])
        elif not words.capital_nouns or word[:1].isupper() or text.islower():
            if not aside:
                found[-1].append(word)
            aside = False
    return [" ".join(name) for name in found if name]


def _nouns_first(said: list[str], words: Words) -> list[str]:
    """Without the capital of an adjective that begins a heading: "Neue Pumpe"."""
    begins = words.capital_nouns and len(said) > 1 and all(word[:1].isupper() for word in said[:2])
    return [said[0].casefold(), *said[1:]] if begins else said
