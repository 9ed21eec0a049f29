"""Cues joined into sentences."""

from fractions import Fraction

from procbuilder.infer.hearing.sentences import MOST_WORDS, sentences
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration


def joined(*cues: tuple[float, float, str]) -> list[tuple[str, float, float, int]]:
    made = tuple(Cue(Place("t.srt", n), Fraction(a), Fraction(b), text) for n, (a, b, text) in enumerate(cues, 1))
    found = sentences(Narration("strip", made))
    assert [one.number for one in found] == list(range(1, len(found) + 1))
    return [(one.words, float(one.start), float(one.end), one.place.line) for one in found]


def test_a_sentence_runs_over_its_cues() -> None:
    assert joined((0, 2, "Take the cover"), (2, 3, "off.")) == [("Take the cover off.", 0, 3, 1)]


def test_a_cue_is_cut_at_its_full_stops_and_its_time_shared_out() -> None:
    assert joined((0, 10, "Bolt. Nut off.")) == [("Bolt.", 0, 25 / 7, 1), ("Nut off.", 25 / 7, 10, 1)]


def test_a_point_within_a_number_ends_nothing() -> None:
    assert [one[0] for one in joined((0, 1, "It is 5.5 mm. Good."))] == ["It is 5.5 mm.", "Good."]


def test_without_full_stops_a_pause_ends_a_sentence() -> None:
    assert joined((0, 1, "cover off"), (1, 2, "washer"), (5, 6, "nut")) == [
        ("cover off washer", 0, 2, 1),
        ("nut", 5, 6, 3),
    ]


def test_cues_are_taken_by_time_and_empty_ones_passed_over() -> None:
    assert [one[0] for one in joined((5, 6, "Two."), (0, 1, "One."), (2, 3, " "))] == ["One.", "Two."]


def test_no_word_is_lost_of_a_sentence_that_is_too_long() -> None:
    words = " ".join(f"w{n}" for n in range(500))
    found = joined((0, 100, words))
    assert " ".join(one[0] for one in found) == words
    assert max(len(one[0].split()) for one in found) <= MOST_WORDS
