"""Safety signs against the register of ISO 7010, as transcribed with its titles in a public library of all signs.

Several public lists have gloves, helmet and ear protection changed for each other: those three are told apart here.
"""

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.signs import danger_signs

REGISTER = {
    "M001": "mandatory", "M002": "manual", "M003": "ear", "M004": "eye", "M005": "earth", "M006": "plug",
    "M007": "opaque", "M008": "footwear", "M009": "gloves", "M010": "clothing", "M011": "wash your hands",
    "M013": "face shield", "M014": "head", "M016": "mask", "M017": "respiratory", "M018": "harness",
    "M019": "welding mask", "M021": "disconnect", "M022": "barrier cream", "M026": "apron",
    "M057": "continuous ventilation", "M068": "lock moving", "M069": "tether",
    "W001": "general", "W002": "explosive", "W006": "magnetic", "W007": "obstacle", "W008": "drop",
    "W010": "low temperature",
    "W011": "slippery", "W012": "electricity", "W015": "overhead load", "W016": "toxic", "W017": "hot surface",
    "W018": "automatic start", "W019": "crushing", "W021": "flammable", "W022": "sharp", "W023": "corrosive",
    "W024": "hands", "W025": "rollers", "W026": "battery", "W027": "optical", "W028": "oxidising", "W029": "cylinder",
    "W035": "falling", "W038": "sudden loud noise", "W041": "asphyxiating", "W042": "arc", "W071": "health",
    "W079": "hot content", "W080": "steam", "W087": "loud", "W088": "blades", "W089": "gears",
    "P001": "prohibition", "P002": "smoking", "P003": "flame", "P004": "thoroughfare", "P007": "heart implant",
    "P008": "metal", "P010": "touch", "P011": "water", "P013": "phone", "P015": "reaching in", "P024": "stand",
    "P028": "gloves", "P031": "switch", "P039": "hot work", "P080": "unauthorised",
}  # fmt: skip


MEANINGS = {number: sign.meaning.lower() for number, sign in load().signs.items()}


@pytest.mark.parametrize(("number", "word"), REGISTER.items())
def test_each_number_means_what_the_register_says(number: str, word: str) -> None:
    assert word in MEANINGS[number]


def test_no_activity_names_a_sign_that_is_not_listed() -> None:
    lexicon = load()
    assert [sign for one in lexicon.activities for sign in one.signs if sign not in MEANINGS] == []


def test_every_activity_shows_its_hazard() -> None:
    """But for jets, flying parts, harm that comes later and harm to things, for which the register has no sign, and
    for radiation and germs, whose signs are not drawn yet."""
    bare = {one.id for one in load().activities if not any(sign.startswith("W") for sign in one.signs)}
    assert bare == {
        "steering-joints", "bicycle", "moving-vehicle", "pullers-and-chisels", "compressed-air", "jet-wash",
        "accumulator", "pressure-test", "lathe", "vibration", "timing-marks", "esd", "sewage", "bio", "radioactive",
        "posture", "lone",
    }  # fmt: skip


def test_the_words_of_every_danger_call_for_a_sign_of_its_activity() -> None:
    """Where the register has a sign for it."""
    other = []
    for one in load().activities:
        found = [sign.number for sign in danger_signs(one.hazard, one.consequence, one.avoid, load())]
        if any(sign[0] == "W" for sign in one.signs) and found[0] not in one.signs:
            other.append(one.id)
    assert other == []


def test_signal_words_follow_the_standard_in_their_order() -> None:
    """ANSI Z535.6: a harm to things alone is a NOTICE, and only that."""
    notices = [one.id for one in load().activities if one.signal.value == "NOTICE"]
    assert notices == ["timing-marks", "esd"]
