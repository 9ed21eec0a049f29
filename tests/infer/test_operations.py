"""Operations from words: one sentence of a technician after the other."""

import pytest

from procbuilder.infer.hearing.operations import operations
from tests.infer.spoken import heard, spoken, told


@pytest.mark.parametrize(
    ("sentence", "operation"),
    [
        ("Remove the dust cap.", "off dust cap"),
        ("Take off the dust cap.", "off dust cap"),
        ("Take the dust cap off.", "off dust cap"),
        ("Whip the cover off.", "off cover"),
        ("Pull the hose off the pump.", "off hose"),
        ("The cover just lifts off.", "off cover"),
        ("Cover's off.", "off cover"),
        ("Washer off.", "off washer"),
        ("I've got the two bolts out.", "off 2 x bolts"),
        ("Unplug the connector.", "off connector"),
        ("Undo the bolts on the left.", "off bolts"),
        ("Slacken the clamp bolt.", "slacken clamp bolt"),
        ("Crack the wheel nuts loose.", "slacken wheel nuts"),
        ("Break the lug nuts loose.", "slacken lug nuts"),
        ("Nip the bolt up.", "nip bolt"),
        ("Tighten the bolt.", "tighten bolt"),
        ("Torque the lug nuts.", "tighten lug nuts"),
        ("Pop the cover back on.", "on cover"),
        ("Refit the cover.", "on cover"),
        ("Install the new seal.", "on seal, new"),
        ("Slip the belt over the pulley.", "on belt"),
        ("Put the washer on the shaft.", "on washer"),
        ("Plug the connector back in.", "on connector"),
        ("Drain the coolant.", "state coolant drained"),
        ("Jack up the trailer.", "state trailer raised"),
        ("Lower the trailer down.", "ends trailer raised"),
        ("Ignition off.", "state ignition off"),
        ("Open the bonnet.", "state bonnet open"),
        ("Stuff a rag in the port.", "for now rag"),
        ("Get two axle stands under it.", "for now 2 x axle stands"),
        ("Hang the caliper up with a strap.", "for now strap"),
        ("Take the rag out.", "out again rag"),
        ("Cut the cable tie off.", "off cable tie, scrap"),
        ("Replace the filter.", "renew filter"),
        ("Check the pads for wear.", "check pads"),
        ("Look for leaks.", "check leaks"),
        ("Clean the face with a wire brush.", "work face"),
        ("Put a dab of grease on the pin.", "work grease"),
        ("Turn the hub by hand.", "work hub"),
    ],
)
def test_an_operation_is_heard(sentence: str, operation: str) -> None:
    assert told(sentence) == [operation]


@pytest.mark.parametrize(
    ("sentence", "operation"),
    [
        ("Crack the bleeder open.", "slacken bleeder"),
        ("Drop the exhaust off.", "off exhaust"),
        ("Drop the needle back in.", "on needle"),
        ("Release the parking brake.", "ends parking brake on"),
        ("Release the clip.", "off clip"),
        ("Release the pressure.", "state pressure released"),
        ("Bleed the brakes.", "work brakes"),
        ("Bleed the pressure off.", "state pressure released"),
        ("Pull the spark plug out.", "off spark plug"),
        ("Plug the lead in.", "on lead"),
        ("Strip the pump apart.", "off pump"),
        ("Knock the rust off.", "work rust"),
        ("Lock the isolator off.", "state isolator locked off"),
    ],
)
def test_the_thing_decides_what_a_verb_means(sentence: str, operation: str) -> None:
    assert told(sentence) == [operation]


@pytest.mark.parametrize(
    "sentence",
    [
        "Don't take the belt off.",
        "Do not remove the cover.",
        "You needn't remove the cover.",
        "There's no need to take the wheel off.",
        "You can do it without taking the pump off.",
        "Never undo the union.",
        "Somebody took the guard off.",
        "Stop there, because the bolt comes out on its own.",
        "Put it on the bench.",
        "Put a socket on the nut.",
        "I changed the pads two years ago.",
        "The kettle's on and the tea comes out in a minute.",
        "There's a spring in there.",
        "It's a thirteen.",
        "I'm happy with that.",
    ],
)
def test_nothing_is_heard_where_nothing_is_done(sentence: str) -> None:
    assert told(sentence) == []


@pytest.mark.parametrize(
    ("sentences", "operations"),
    [
        (["Undo six bolts."], ["off 6 x bolts"]),
        (["Undo the bolts, all six of them."], ["off 6 x bolts"]),
        (["Take the pins out, one on each side."], ["off 2 x pins"]),
        (["Take both pins out."], ["off 2 x pins"]),
        (["Undo twenty-four screws."], ["off 24 x screws"]),
        (["Undo 13 screws."], ["off 13 x screws"]),
        (["Undo the bolts.", "Take the other three out."], ["off bolts", "off 3 x bolts"]),
        (["There are two screws in there.", "Take those out."], ["off 2 x screws"]),
        (["Undo one of the bolts."], ["off 1 x bolts"]),
    ],
)
def test_counts(sentences: list[str], operations: list[str]) -> None:
    assert told(*sentences) == operations


@pytest.mark.parametrize(
    ("sentences", "last"),
    [
        (["Take the cover off.", "Pop it back on."], "on cover"),
        (["Undo the lower slide bolt.", "Then loosen the upper one."], "slacken upper slide bolt"),
        (["Slide the front pins out.", "Then the rear pins."], "off rear pins"),
        (["Take the top hose off.", "Do the same with the bottom hose."], "off bottom hose"),
        (["Unplug the machine.", "Turn the water off.", "Plug it back in."], "ends machine unplugged"),
        (["Put the needle back in, then the float."], "on float"),
        (["Unhook the spring and the rod."], "off rod"),
        (["Undo the nut, the washer and the bolt."], "off bolt"),
        (["Push the locking pin in.", "Take the locking pin out."], "out again locking pin"),
    ],
)
def test_what_is_only_pointed_at_gets_its_name(sentences: list[str], last: str) -> None:
    assert told(*sentences)[-1] == last


@pytest.mark.parametrize(
    ("sentences", "sure"),
    [
        (["Take the cover off."], True),
        (["Cover's off."], True),
        (["Take the cover off.", "Pop it back on."], True),
        (["Bevel the edge."], False),
        (["Undo the nut.", "Then the washer."], False),
    ],
    ids=["named", "told by its result", "pointed at", "a strange verb", "in its turn"],
)
def test_what_a_second_reading_finds_too_is_sure(sentences: list[str], sure: bool) -> None:
    assert heard(*sentences)[-1].sure is sure


def test_of_a_speaker_on_whom_the_readings_seldom_agree_nothing_is_sure() -> None:
    strange, plain = ["Bevel the edge.", "Bevel the bore."], ["Clean the pin.", "Clean the shaft."]
    assert [one.sure for one in heard(*strange * 4, *plain * 4)] == [False] * 8 + [True] * 8
    assert not any(one.sure for one in heard(*strange * 9, *plain * 6))


@pytest.mark.parametrize(
    ("sentence", "operation"),
    [
        ("I've already taken the wheel off.", "off wheel (earlier)"),
        ("I took the grass box off earlier.", "off grass box (earlier)"),
        ("If you have air-con, take the compressor off.", "off compressor (if)"),
        ("We'll put the guard back on later.", "on guard (later)"),
        ("We'll tighten the bolts at the end.", "tighten bolts (later)"),
        ("Don't forget to put the guard back on.", "on guard"),
        ("Make sure you take the rag out.", "out again rag"),
        ("I'm going to take the guard off.", "off guard"),
    ],
)
def test_when_it_is_done(sentence: str, operation: str) -> None:
    assert told(sentence) == [operation]


def test_a_correction_keeps_the_last_size_and_shows_both() -> None:
    (one,) = heard("Undo the bolt, that's a thirteen, sorry, fifteen mil.")
    assert one.size is not None
    assert (one.size.text, one.size.corrected) == ("15 mm", ("13 mm",))


def test_an_operation_keeps_its_words_and_its_time() -> None:
    (one,) = heard("Right, take the cover off with the flat bar.")
    assert (one.words, one.tail) == ("take the cover off", "with the flat bar")
    assert one.said.origin.words == "said strip 0:01"
    assert str(one.said.place) == "talk.srt:1"


def test_american_and_british_words_mean_the_same() -> None:
    british = told("Bonnet open.", "Slacken the wheel nuts.", "Prise the cap off.", "Undo the union.")
    american = told("Hood open.", "Loosen the lug nuts.", "Pry the cap off.", "Unscrew the union.")
    assert [one.split()[0] for one in british] == [one.split()[0] for one in american]


def test_a_command_of_a_list_begins_with_its_verb_even_if_that_is_not_known() -> None:
    (one,) = operations(spoken("emboss the metal plate"), commands=True)
    assert (one.verb, one.object, one.sure) == ("Emboss", "metal plate", False)
    assert told("emboss metal plate") == []


def test_an_unknown_language_is_heard_as_english() -> None:
    assert [one.object for one in operations(spoken("Remove the cap."), "xx")] == ["cap"]
