"""Reading ease and school grade against published examples, from counts: counters of syllables differ.

Flesch, "A new readability yardstick", Journal of Applied Psychology 32 (1948); Kincaid and others, Research
Branch Report 8-75, US Navy (1975); the results for these counts are those that public test suites give.
"""

import pytest

from procbuilder.model.readability import Counts, counted


@pytest.mark.parametrize(
    ("sentences", "words", "syllables", "ease", "grade"),
    [(1, 6, 6, 116.145, -1.45), (1, 13, 26, 24.44, 13.08), (1, 2, 2, 120.205, -3.01)],
)
def test_published_examples(sentences: int, words: int, syllables: int, ease: float, grade: float) -> None:
    counts = Counts(words, sentences, syllables)
    assert counts.ease == pytest.approx(ease, abs=0.005)
    assert counts.grade == pytest.approx(grade, abs=0.005)


def test_sentences_and_words_are_counted_as_a_reader_would() -> None:
    """M8 is a word, 1.5 is no end of a sentence, a heading is a sentence without a full stop."""
    assert counted(["Fit the M8 bolt", "Leave 1.5 mm free. Do not turn it!"]) == Counts(13, 3, 13)


def test_no_words_no_counts() -> None:
    assert counted(["", "– !"]) is None
