"""Tools named in a sentence, with their size."""

from collections.abc import Sequence

from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.dictionary.sizes import sizes
from procbuilder.infer.dictionary.tokens import Token, plain
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.model.heard import Size, SizeKind


def said_tools(words: str, book: Wordbook) -> tuple[str, ...]:
    """Tools as written in a Tool field: ``15 mm spanner``, ``wire brush``; a bare hexagon needs one or the other."""
    tokens = plain(words)
    found: dict[str, None] = {}
    at = 0 if any(book.has("uses", token.low) for token in tokens) else len(tokens)
    while at < len(tokens):
        thing = read_thing(tokens, at, book)
        if (
            thing is not None
            and thing.name
            and book.is_in(thing.name, ("tool",))
            and _is_used(tokens, thing.start, book)
        ):
            found[_without_size(thing.name, book)] = None
        at = thing.end if thing is not None else at + 1
    named = tuple(size for size in sizes(words, book) if size.kind is not SizeKind.HEXAGON or _turns(tokens, book))
    if not named:
        return tuple(found)
    return tuple(_sized(list(found), named))


def _turns(tokens: Sequence[Token], book: Wordbook) -> bool:
    """True when a fastener or a spanner is named, or nothing else that a size could be of."""
    turned = any(book.is_in(token.low, ("fastener", "tool")) for token in tokens)
    return turned or not any(book.knows(token.low) for token in tokens)


def _without_size(name: str, book: Wordbook) -> str:
    words = name.split()
    while len(words) > 1 and _is_size_word(words[0].casefold(), book):
        words = words[1:]
    return " ".join(words)


def _is_size_word(word: str, book: Wordbook) -> bool:
    parts = set(word.split("-"))
    return book.has("units", word) or word in book.numbers or bool(parts & {*book.sizes["parts"], *book.sizes["inch"]})


def _is_used(tokens: Sequence[Token], at: int, book: Wordbook) -> bool:
    """True behind "with", "use" and their like; a tool that is only spoken of is not used."""
    return any(book.has("uses", token.low) for token in tokens[max(at - 2, 0) : at])


def _sized(tools: list[str], named: tuple[Size, ...]) -> list[str]:
    """The first size goes with the first tool; every other one is a tool to be named."""
    texts = []
    for place, size in enumerate(named):
        tool = tools.pop(0) if tools and place == 0 else _class_of(size)
        texts.append(f"{size.text} {tool}".strip() if tool not in size.text else size.text)
    return texts + tools


def _class_of(size: Size) -> str:
    match size.kind:
        case SizeKind.HEXAGON:
            return "spanner or socket"
        case SizeKind.BIT:
            return "socket" if size.text.startswith("E") else "bit"
        case SizeKind.DRIVE:
            return "ratchet"
    return "(hexagon or drive)"
