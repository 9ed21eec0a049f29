"""The command of a proposed step, in the imperative."""

from collections.abc import Sequence

from procbuilder.infer.dictionary.english import is_plural
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.model.heard import Act, Operation

MOST_WORDS = 20
"""Words of a command: ASD-STE100, rule 5.1."""

_WITH_TAIL = (Act.WORK, Act.CHECK, Act.FOR_NOW)
"""Operations whose command is not clear without what follows: "turn the drum until the spring drops in"."""


def command(operations: Sequence[Operation], book: Wordbook) -> str:
    """One command for operations of one verb: ``Remove the governor spring and the throttle rod``."""
    first = operations[0]
    things = " and ".join(dict.fromkeys(_thing(operation, book) for operation in operations))
    tail = first.tail if first.act in _WITH_TAIL and not first.verb.endswith(" with") else ""
    text = f"{_verb(first.verb, tail)} {things}"
    whole = f"{text}{tail}" if tail.startswith(("'", "’")) else f"{text} {tail}".strip()
    text = whole if len(whole.split()) <= MOST_WORDS else text
    return " ".join(text.split()[:MOST_WORDS])


def own_words(operation: Operation) -> str:
    """What the speaker said of an operation, with a capital: ``Washer off``."""
    words = f"{operation.words} {operation.tail}".rstrip(" .,;:").split()[:MOST_WORDS]
    return " ".join([words[0][:1].upper() + words[0][1:], *words[1:]])


def _verb(verb: str, tail: str) -> str:
    """ "Clean", and not "clean off", before "the muck off the panel"."""
    words = verb.split()
    return " ".join(words[:-1]) if len(words) > 1 and words[-1] == tail.partition(" ")[0] else verb


def _thing(operation: Operation, book: Wordbook) -> str:
    name = f"new {operation.object}" if operation.new else operation.object
    if operation.count is not None and (operation.count > 1 or not operation.plural):
        return f"{operation.count:f} {_many(name)}" if operation.count > 1 else f"the {name}"
    if book.is_in(operation.object, ("record",)) and not operation.plural:
        return f"a {name}"
    bare = operation.verb.endswith(" for") or book.is_in(operation.object, ("fluid", "paste"))
    return name if bare and operation.act in (Act.WORK, Act.CHECK) else f"the {name}"


def _many(name: str) -> str:
    """``split pins`` for "split pin"; what is plural already stays."""
    if is_plural(name):
        return name
    if name.endswith(("s", "x", "z", "ch", "sh")):
        return f"{name}es"
    return f"{name[:-1]}ies" if name.endswith("y") and name[-2:-1] not in "aeou" else f"{name}s"
