"""Sentences stand where they can be said in another language, never in the code that finds what they say.

Any text outside ``publish`` that holds three words of small letters is looked at. What is written in ``publish``
has to stand in the catalogues, which ``tests/publish/test_language.py`` tells.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[1] / "procbuilder"
_WORDS = re.compile(r"(?<!\S)[\"'(]?[a-z]{2,}[\"'),.;:?!]*(?!\S)")

NO_SENTENCES = {
    "infer/hearing/said_late.py": "a pattern of words that are heard",
    "infer/hearing/telling.py": "words that are heard",
    "infer/hearing/remarks.py": "words that are heard",
    "infer/dictionary/said_tools.py": "words that are heard",
    "model/fields.py": "names of the parts of fields, which are the same in every language",
    "read/values.py": "a pattern of a field",
    "read/workshop.py": "values of the format, which are the same in every language",
    "cli.py": "help, which is English in every language",
}
"""Modules whose words in small letters are no sentence for a reader."""

NOT_YET = {
    "read/compose.py": "where the sentences of a narration went, written in English so far",
    "infer/hearing/draft.py": "a draft, written in English so far",
    "infer/hearing/filled.py": "where a sentence of a narration went, written in English so far",
}
"""Modules whose sentences still have to move."""


def test_no_sentence_stands_outside_the_rooms_of_words() -> None:
    found = {
        f"{name}:{line}: {text}"
        for path in sorted(ROOT.rglob("*.py"))
        if not (name := path.relative_to(ROOT).as_posix()).startswith("publish/") and name not in NO_SENTENCES | NOT_YET
        for line, text in sentences(path.read_text(encoding="utf-8"))
    }
    assert found == set()


def test_the_exceptions_are_needed() -> None:
    for name in NO_SENTENCES:
        assert list(sentences((ROOT / name).read_text(encoding="utf-8"))), name


def test_a_sentence_would_be_noticed() -> None:
    source = (
        '"""A module of words."""\n\ndef f(n):\n    """How many are there."""\n    return f"step {n} is the last one"\n'
    )
    assert list(sentences(source)) == [(5, "step … is the last one")]
    assert list(sentences("x = 'what is right'\ny = 'hub bearing'\n")) == [(1, "what is right")]
    assert list(sentences("def f():\n    raise ValueError('not a known word')\n")) == []


def sentences(source: str) -> Iterator[tuple[int, str]]:
    """Texts with their lines, but no docstrings, and nothing that only a programmer reads when a call was wrong."""
    tree = ast.parse(source)
    silent = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            silent |= {id(part) for part in node.values}
        elif isinstance(node, ast.Raise):
            silent |= {id(part) for part in ast.walk(node)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant | ast.JoinedStr) and id(node) not in silent:
            text = _text(node)
            if len(_WORDS.findall(text)) >= 3:
                yield node.lineno, text


def _text(node: ast.Constant | ast.JoinedStr) -> str:
    if isinstance(node, ast.JoinedStr):
        return "".join(str(part.value) if isinstance(part, ast.Constant) else "…" for part in node.values)
    return node.value if isinstance(node.value, str) else ""
