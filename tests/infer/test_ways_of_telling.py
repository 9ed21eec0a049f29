"""Ways in which a technician tells what is done, and ways that look like it: for each a sentence of both kinds."""

import pytest

from tests.infer.spoken import heard, told

HEARD = {
    "of a list with what goes along": (["Undo the hose and the clip that goes with it."], "off clip"),
    "with their bolts behind a comma": (["Put the clamps back on, with their bolts."], "on bolts"),
    "what a gauge does": (["Check that the gauge reads nought."], "check gauge"),
    "screwed in again": (["Run the two nuts back in."], "on 2 x nuts"),
    "washers under bolts": (["Put new copper washers under the two long ones."], "on copper washers, new"),
    "a tool comes away": (["Take the dial indicator off."], "out again dial indicator"),
    "kicked out": (["Chock the wheels.", "Kick the chocks out."], "out again chocks"),
    "let down": (["Tilt the cab.", "Let the cab down."], "ends cab tilted"),
    "poured away is not filled in": (["Drain the oil.", "Pour that oil in the waste drum."], "work oil"),
    "unknown verb": (["Bevel the edge."], "work edge"),
    "unknown verb of a thing": (["The clip pings off."], "off clip"),
    "verb with a mark": (["Wire-brush the face."], "work face"),
    "what is given": (["Give the flange a good wipe."], "work flange"),
    "tightening that is given": (["Give the bolt a final nip."], "nip bolt"),
    "inverted": (["Undo the nuts.", "Off comes the cover."], "off cover"),
    "inverted with with": (["Out with the old seal."], "off seal"),
    "inverted pronoun": (["Here's the lens, two screws.", "Undo those.", "Off it comes."], "off lens"),
    "passive": (["The bolts get tightened."], "tighten bolts"),
    "must be done": (["The seal has to be pressed out."], "off seal"),
    "wants doing": (["Slacken the nut.", "The nut wants tightening up."], "tighten nut"),
    "list of subjects": (["The washer and the spring come off."], "off spring"),
    "list with what became of it": (["Washer, spring and cap off."], "off cap"),
    "temporary thing laid there": (["Drip tray under it."], "for now drip tray"),
    "supply put on": (["A smear of grease on the lip."], "work grease"),
    "next": (["Undo the nut and take the cover off.", "Mudguard next, four bolts."], "off mudguard"),
    "goes back where it was off": (["Take the bracket off.", "Bracket back on in the same place."], "on bracket"),
    "a place follows while it is put back": (
        ["Take the sprocket off.", "Take the cap off.", "Cap on.", "Sprocket on the shaft."],
        "on sprocket",
    ),
    "list while things are put back": (
        ["Take the breather off.", "Take the air box off.", "Take the jet out.", "Jet in.", "Breather, air box."],
        "on air box",
    ),
    "through": (["Take the spindle out.", "Spindle through the hub."], "on spindle"),
    "the new one": (["Pull the old bearing out.", "Clean the bore.", "Press the new one in."], "on bearing, new"),
    "the new one goes on as new": (["Peel the gasket off.", "Grease the new one and hang it on."], "on gasket, new"),
    "the first of several": (["It's held by three P-clips.", "Slacken the first one."], "slacken p-clip"),
    "ordinal before a number": (["Tighten the first two bolts."], "tighten 2 x bolts"),
    "pronoun of bolts": (
        ["There's two nuts behind it.", "A drop of penetrating oil on those.", "Crack them both off."],
        "slacken 2 x nuts",
    ),
    "both of them": (["Slacken the nuts.", "Take them both off."], "off 2 x nuts"),
    "stop": (["Start the pump.", "Check the belt.", "Stop it on the button."], "ends pump running"),
    "engine off at first": (["Engine off."], "state engine off"),
    "engine off at last": (["Take the cap off.", "Cap on.", "Engine off."], "ends engine running"),
    "what is switched": (["Turn the lights off."], "state lights off"),
    "and on again": (["Turn the lights off.", "Lights on."], "ends lights off"),
    "valve that was not shut": (["Open the drain tap."], "state drain tap open"),
    "main valve": (["Turn the water off.", "Open the stopcock."], "ends stopcock off"),
    "lock": (["Isolator off, padlock on it."], "for now padlock"),
    "tool that stayed on": (["Take the strap wrench off."], "out again strap wrench"),
    "key of a shaft": (["There's a key in the shaft.", "Pull the key out."], "off key"),
    "key of a machine": (["Take the key out."], "state key out"),
    "do up what is slack": (["Slacken the pinch bolt.", "Do the pinch bolt up."], "tighten pinch bolt"),
    "do up what is off": (["Take the bolt out.", "Do the bolt up."], "on bolt"),
    "then tighten": (["Screw the plug in by hand, then tighten with the socket."], "tighten plug"),
    "until and on": (["Lever the idler over till the belt gives and nip the bolt up."], "nip bolt"),
    "time first, no comma": (["While I've got it here I'll clean the bore."], "work bore"),
    "what is then possible": (["Take the guard off so you can get the pump out."], "off guard"),
    "before an if": (["Spin the wheel, if it rubs, you'll hear it."], "work wheel"),
    "if in a later clause": (["Spin the wheel, and if it rubs, slacken the bolts."], "slacken bolts (if)"),
    "another day": (["When we get a new lens, that tape comes off."], "out again tape (later)"),
    "come back": (["I'll come back tomorrow and check the sag."], "check sag (later)"),
    "modifier": (["Take the hose off.", "Drain hose on, round the back."], "on drain hose"),
    "name by its way": (["Undo the through axle."], "off through axle"),
    "owner": (["Pull the pin's clip off."], "off pin clip"),
    "place behind a thing is no particle": (["Crack the drain plug under the casing."], "slacken drain plug"),
    "photo": (["Get a photo of the wires."], "work photo"),
    "held up to the light": (["Hold the jet up to the light."], "check jet"),
    "check that": (["Fit both plates.", "Check they're level."], "check 2 x plates"),
}
SILENT = {
    "moved for a measurement": "Set the dial indicator on the hub and push it in and out.",
    "prepositional": "Behind the guard there's a pulley.",
    "unknown word and a clause": "Whatever the cause is, it's not the pump.",
    "given time": "Give it a minute.",
    "what might be done": "You could take the wheel off.",
    "what would be done": "I'd change the belt too.",
    "usual": "Normally you'd pull the pump out.",
    "habit": "I always put the bolts back in their holes.",
    "used to": "I used to take the tank off for this.",
    "others": "Some folk hammer the bearing in.",
    "which thing it is": "The bolts you took out are the long ones.",
    "supposed": "It's supposed to go back on by itself.",
    "damage": "The clip snapped.",
    "finding": "That bearing wants replacing.",
    "what pushes": "The spring pushes the pad out.",
    "how it is made": "The bottom loop goes over a pin.",
    "only": "It only goes in one way round.",
    "it was": "The bulb was out.",
    "already": "The nut's on there already.",
    "which way round": "Shiny side out.",
    "none": "No grease in there.",
    "what keeps it": "Grease on the end keeps it off.",
    "laid beside": "Lay the new cable beside the old one.",
    "on its side": "Lay it on its side.",
    "himself": "Sit in the car.",
    "advice": "If it's stuck, tap the cap with a mallet.",
    "somebody else": "She'll take a few pulls to fill the bowl.",
    "what turns by itself": "It tightens up as it runs.",
    "reading": "I nodded off at eighty.",
    "work on what is only pointed at": "Move it over a bit.",
    "talk": "My wife took the dog out.",
}


@pytest.mark.parametrize(("sentences", "last"), HEARD.values(), ids=HEARD.keys())
def test_it_is_heard(sentences: list[str], last: str) -> None:
    assert told(*sentences)[-1:] == [last]


@pytest.mark.parametrize("sentence", SILENT.values(), ids=SILENT.keys())
def test_nothing_is_heard(sentence: str) -> None:
    assert told(sentence) == []


@pytest.mark.parametrize(
    ("sentences", "verb"),
    [
        (["Take the cover off.", "Put the cover back on."], "Put back"),
        (["Put the new cover on."], "Fit"),
        (["Clip the cover on."], "Clip on"),
        (["Strip forty mil of the sheath off."], "Strip off"),
    ],
)
def test_the_printed_verb_says_what_was_meant(sentences: list[str], verb: str) -> None:
    assert heard(*sentences)[-1].verb == verb


def test_a_length_is_no_count() -> None:
    (one,) = heard("Strip forty mil of the sheath off.")
    assert (one.act, one.count, one.size) == ("work", None, None)
