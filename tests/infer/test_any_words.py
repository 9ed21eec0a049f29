"""Words in any order, and cut anywhere, are heard without a fault."""

import random

from procbuilder.infer.hearing.draft import draft
from procbuilder.infer.hearing.operations import operations
from tests.infer.narrated import NAMES, read
from tests.infer.spoken import narrated, spoken

SENTENCES = [sentence.words for name in NAMES for sentence in read(name).sentences]
WORDS = " ".join(SENTENCES).replace(".", " .").replace(",", " ,").split()


def test_words_in_any_order_are_heard() -> None:
    chance = random.Random(1)
    for _ in range(1500):
        lines = [f"{' '.join(chance.choices(WORDS, k=chance.randint(1, 14)))}." for _ in range(3)]
        assert all(one.object and one.verb for one in operations(spoken(*lines))), lines


def test_sentences_cut_anywhere_are_drafted() -> None:
    chance = random.Random(2)
    for sentence in chance.sample(SENTENCES, 300):
        words = sentence.split()
        at = chance.randrange(len(words))
        made = draft([narrated(" ".join(words[:at]) or "So.", " ".join(words[at:]))])
        assert len(made.landings) >= 1
