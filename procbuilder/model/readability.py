"""How easy a text reads, from its counts: Flesch reading ease (1948) and Flesch-Kincaid grade (1975), for English."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

_WORD = re.compile(r"[^\W_]+(?:['’-][^\W_]+)*")
_END = re.compile(r"[.!?]+(?=\s|\Z)")
_VOWELS = re.compile(r"[aeiouy]+")
_SILENT = re.compile(r"(?:[^aeiouyl]e|[qg]ue|[^aeiouytd]ed|[^aeiouysxzg]es)\Z")


@dataclass(frozen=True, slots=True)
class Counts:
    """What the formulas ask for."""

    words: int
    sentences: int
    syllables: int

    @property
    def ease(self) -> float:
        """206.835 − 1.015 words per sentence − 84.6 syllables per word; 60 and more reads plainly."""
        return 206.835 - 1.015 * self.words / self.sentences - 84.6 * self.syllables / self.words

    @property
    def grade(self) -> float:
        """0.39 words per sentence + 11.8 syllables per word − 15.59: years of school in the United States."""
        return 0.39 * self.words / self.sentences + 11.8 * self.syllables / self.words - 15.59


def counted(texts: Iterable[str]) -> Counts | None:
    """The counts of some texts, each of which is at least one sentence; None when there is no word."""
    words, sentences, syllables_ = 0, 0, 0
    for text in texts:
        for sentence in _END.split(text):
            found = _WORD.findall(sentence)
            words += len(found)
            sentences += bool(found)
            syllables_ += sum(map(syllables, found))
    return Counts(words, sentences, syllables_) if words else None


def syllables(word: str) -> int:
    """Syllables of an English word by its groups of vowels, a silent ending left out; at least one."""
    folded = word.casefold()
    return max(1, len(_VOWELS.findall(folded)) - bool(_SILENT.search(folded)))
