"""What the command of a step does to which thing, where the verb stands last: "Deckel und Kette abnehmen"."""

from collections.abc import Iterable, Iterator

from procbuilder.infer.hearing.operations import operations
from procbuilder.infer.hearing.wordbook import is_heard
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
        verb, doing, rest = next((one for one in rests if one[2] is not None), ("", None, ""))
        for name in things(rest or "", words) if doing else ():
            plural, opposite = words.is_plural(name), doing.opposite
            yield Operation(verb, Act(doing.act), name, sentence, plural=plural, words=piece, opposite=opposite)


def things(text: str, words: Words) -> list[str]:
    """The things that a clause names without its verb, but for those behind a preposition or in the genitive.

    "beide Schläuche von der Pumpe" names the Schläuche, "mit dem Kettenzug den Zylinder" the Zylinder.
    """
    found: list[str] = []
    name: list[str] = []
    aside = False
    said = text.replace(",", " , ").split()
    if len(said) > 1 and words.capital_nouns and all(word[:1].isupper() for word in said[:2]):
        said[0] = said[0].casefold()
    for word in said:
        low = words.written(word)
        noun = not words.capital_nouns or word[:1].isupper() or text.islower()
        if low in words.passed_over:
            aside = aside and not name or bool(name) and low in words.of
            found, name = found + _whole(name), []
        elif low == "," or low in words.command.joints:
            found, name = found + _whole(name), []
        elif low in words.no_part_of_a_name:
            found, name, aside = found + _whole(name), [], True
        elif noun and aside:
            aside = False
        elif noun:
            name.append(word)
    return found + _whole(name)


def _whole(name: list[str]) -> list[str]:
    return [" ".join(name)] if name else []
