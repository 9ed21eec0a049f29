"""Where sentences begin in captions that speech recognition wrote without full stops."""

from collections.abc import Mapping, Sequence

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.tokens import plain
from procbuilder.infer.dictionary.wordbook import Wordbook

_BEFORE = ("openers", "subordinate", "and")
"""Lists of small words that belong to what follows them: "and then", "so", "if"."""
_DONE_BY = ("helpers", "doers", "strict_articles", "negations", "others")
"""Behind these a verb is no command, or its sentence has begun already."""


def begins(texts: Sequence[str], book: Wordbook) -> Mapping[int, list[int]]:
    """The places in each text at which a sentence begins, by the number of the text.

    A sentence begins with a command, or with who does it, and with the small words before: "and then take the cover".
    """
    told = [(number, token) for number, text in enumerate(texts) for token in plain(text)]
    words = [token.low for _, token in told]
    found: dict[int, list[int]] = {}
    last = 0
    for at in range(1, len(words)):
        if not (book.has("speakers", words[at]) or _is_command(words, at, book)):
            continue
        first = at
        while first > last and any(book.has(kind, words[first - 1]) for kind in _BEFORE):
            first -= 1
        if first > last:
            number, token = told[first]
            found.setdefault(number, []).append(token.start)
            last = at
    return found


def _is_command(words: Sequence[str], at: int, book: Wordbook) -> bool:
    """A verb of work with an article, a pronoun or a number behind it, and nobody before it who does it."""
    base = any(form is Form.BASE for _, form in book.forms.get(words[at], ()))
    behind = words[at + 1] if at + 1 < len(words) else ""
    kinds = ("articles", "one_pronouns", "many_pronouns")
    takes = behind in book.numbers or any(book.has(kind, behind) for kind in kinds)
    return base and takes and not any(book.has(kind, words[at - 1]) for kind in _DONE_BY)
