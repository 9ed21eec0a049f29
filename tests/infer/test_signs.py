"""Which safety signs the words of a danger call for.

Numbers and meanings: ISO 7010, from a public transcription of its register; the standard itself prevails.
"""

import pytest

from procbuilder.infer.dangers import hazards
from procbuilder.infer.lexicon import load
from procbuilder.infer.signs import MOST, danger_signs, worn_signs
from procbuilder.model.sign import Sign
from tests.infer.written import written

WORDS = load()


def _numbers(found: tuple[Sign, ...]) -> list[str]:
    return [sign.number for sign in found]


def _signs_of(danger: str) -> tuple[Sign, ...]:
    hazard, consequence, avoid = danger.split(" | ")
    return danger_signs(hazard, consequence, avoid, WORDS)


@pytest.mark.parametrize(
    ("danger", "numbers"),
    [
        ("the trailer can fall off the jack | crushed under the axle | never work on the jack alone", ["W019"]),
        ("the jack can sink | hand crushed under the beam | keep out from under the trailer", ["W024", "P024"]),
        ("petrol vapour | fire, burns | no naked flame, extinguisher at hand", ["W021", "P003", "F001"]),
        ("the hub can be hot after a run | burnt hand | let it cool", ["W017"]),
        ("steam when the cap comes off | scalded face | face shield on", ["W080", "M013"]),
        ("hot coolant under the cap | scalded | open it in stages", ["W079"]),
        ("battery acid | eye injury | goggles and gloves", ["W023", "M004", "M009"]),
        ("the belt can start to turn | fingers drawn in | plug pulled, no gloves", ["W018", "P028", "M006"]),
        ("exhaust gas in a closed room | poisoning | extraction hose on", ["W016", "M057"]),
        ("brake dust | lung damage | respirator, never blow it off", ["W071", "M017"]),
        ("the bar slips | bruised knuckles | push with the flat hand", []),
    ],
)
def test_a_danger_gets_the_sign_of_what_may_hurt_and_of_how_to_avoid_it(danger: str, numbers: list[str]) -> None:
    assert _numbers(_signs_of(danger)) == numbers


def test_the_hazard_counts_before_its_consequence() -> None:
    assert _numbers(danger_signs("sharp edge", "crushed finger", "", WORDS)) == ["W022"]
    assert _numbers(danger_signs("the edge", "crushed finger", "", WORDS)) == ["W024"]


def test_a_typed_number_calls_for_its_sign_and_an_unknown_one_for_none() -> None:
    assert _numbers(danger_signs("hot manifold (W029)", "", "P010", WORDS)) == ["W029", "P010"]
    assert _numbers(danger_signs("hot manifold (P010)", "", "", WORDS)) == ["P010", "W017"]
    assert danger_signs("see W099", "", "", WORDS) == ()


def test_no_danger_has_more_signs_than_anybody_reads() -> None:
    found = danger_signs("fire", "", "no smoking, no flame, goggles, gloves, extinguisher", WORDS)
    assert len(found) == MOST == 3


def test_a_notice_has_no_sign_of_what_may_hurt() -> None:
    """ANSI Z535.6: a notice is about things, and has no safety alert."""
    told = "- Notice: tight belt | bearings run hot | guard on\n- Caution: hot bearing | burn\n"
    found = hazards(written(f"## Work\n### Set the belt\n{told}").everywhere("Notice", "Caution"), WORDS)
    assert [(each.signal.value, _numbers(each.signs)) for each in found] == [
        ("CAUTION", ["W017"]),
        ("NOTICE", ["M027"]),
    ]


@pytest.mark.parametrize(
    ("worn", "numbers"),
    [
        ("eye protection", ["M004"]),
        ("Safety glasses", ["M004"]),
        ("gloves", ["M009"]),
        ("no gloves near the belt", ["P028"]),
        ("ear defenders", ["M003"]),
        ("safety shoes", ["M008"]),
        ("face shield over goggles", ["M013", "M004"]),
        ("welding mask", ["M019"]),
        ("half mask, filter A2", ["M017"]),
        ("dust mask", ["M016"]),
        ("hi-vis jacket", ["M015"]),
        ("a warm jacket", []),
    ],
)
def test_what_is_worn_gets_its_sign(worn: str, numbers: list[str]) -> None:
    assert _numbers(worn_signs(worn, WORDS)) == numbers


def test_no_number_and_no_words_stand_twice() -> None:
    assert len(WORDS.signs) == 88
    kinds: dict[str, list[str]] = {}
    for number, sign in WORDS.signs.items():
        kinds.setdefault("W" if number[0] == "W" else "PMEF", []).extend(sign.words)
    assert [word for words in kinds.values() for word in words if words.count(word) > 1] == []
