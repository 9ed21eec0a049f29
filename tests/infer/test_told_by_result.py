"""What is told by how a thing is then, without a verb of work: each way with its near misses."""

import pytest

from procbuilder.infer.operations import operations
from procbuilder.model.words import thing
from tests.infer.spoken import spoken

OFF = "Take the cover off."
APART = "Undo the four bolts. / Take the cover off. / Pull the belt off. / Take the pulley off. / Pull the spacer off."
"""Of a machine that is taken apart."""
LATE = f"{APART} / Clean the shaft. / Slide the spacer back on."
"""And put together again."""
SLACK = "Slacken the two clamp bolts. / Move the motor. / Slide the belt on."
LEANING = "Put a strap round the frame. / Push a rag into the port. / Take the cover off. / Put the cover back on."

HEARD = {
    "that is it off": [
        ("Undo the bolt.", "There we go, so that's the stem off.", "off stem"),
        ("Undo the bolt.", "So that's the housing out of there.", "off housing"),
        ("", "Okay, that's the shroud off now.", "off shroud"),
        ("", "And that's both brackets off.", "off bracket"),
        ("", "Right then, so that's your rotor out.", "off rotor"),
        ("", "There's the top cap out, and its bolt.", "off top cap; off bolt"),
        ("", "So that's the top cap out, and its bolt.", "off top cap; off bolt"),
        ("", "That's the nut and the washer off.", "off nut; off washer"),
        ("", "So the calipers are off.", "off caliper"),
        ("", "I've got the rotor off.", "off rotor"),
        ("", "We have the bumper off now.", "off bumper"),
        (LATE, "So that's the pulley back on.", "on pulley"),
        (LATE, "There, that's the belt on.", "on belt"),
        (LATE, "And that's the cover home.", "on cover"),
    ],
    "joined by and": [
        ("", "Nut off, washer off, and the spacer.", "off nut; off washer; off spacer"),
        ("", "The nut's off and so is the washer.", "off nut; off washer"),
        ("", "Both springs out, and the shoes.", "off spring; off shoe"),
        ("", "The grille's off, and its clips.", "off grille; off clip"),
        ("", "Screws out, cover off.", "off screw; off cover"),
        ("", "Screws out and cover off.", "off screw; off cover"),
        (LATE, "The pulley's on, and the belt.", "on pulley; on belt"),
        (LATE, "Belt and cover back on.", "on belt; on cover"),
        (LATE, "Cover's on, bolts are in.", "on cover; on bolt"),
        (LATE, "The bolts are in and tight.", "on bolt; tighten bolt"),
        (LATE, "Bolts in and done up.", "on bolt; tighten bolt"),
    ],
    "thing, result": [
        ("", "The drum, off.", "off drum"),
        ("", "Last screw, out.", "off screw"),
        ("", "Splash shield, off.", "off splash shield"),
        (LATE, "Pulley, on.", "on pulley"),
        (LATE, "Cover, back on.", "on cover"),
    ],
    "off with it": [
        ("", "Off with the guard.", "off guard"),
        ("There's a gasket on the flange.", "Off with it.", "off gasket"),
        ("Here's the bearing.", "Then out with it.", "off bearing"),
        ("Two nuts on the flange.", "So, off with those.", "off nut"),
        (LATE, "On with the pulley.", "on pulley"),
        (LATE, "Then back on with the cover.", "on cover"),
        (LATE, "And in go the bolts.", "on bolt"),
    ],
    "tight": [
        (SLACK, "The clamp bolts are tight.", "tighten clamp bolt"),
        (SLACK, "Clamp bolts tight.", "tighten clamp bolt"),
        (SLACK, "And that's the clamp bolts tight.", "tighten clamp bolt"),
        (SLACK, "Both bolts are tight now, five newton metres.", "tighten bolt"),
        (SLACK, "And those two clamp bolts are tight, both sides.", "tighten clamp bolt"),
        (SLACK, "Clamp bolts done up.", "tighten clamp bolt"),
        (SLACK, "Bolts to twenty newton metres.", "tighten bolt"),
        (SLACK, "The bolts are at twenty-five.", "tighten bolt"),
        (SLACK, "And now they're all at five.", "tighten clamp bolt"),
        (SLACK, "So they're tight.", "tighten clamp bolt"),
        (SLACK, "Now the clamp bolts, and I mean tight.", "tighten clamp bolt"),
        (SLACK, "Clamp bolts nice and tight.", "tighten clamp bolt"),
        (LATE, "Nuts on and tight.", "on nut; tighten nut"),
        (LATE, "All four bolts are torqued.", "tighten bolt"),
    ],
    "loose": [
        ("", "That's the clamp bolts loose.", "slacken clamp bolt"),
        ("", "Both lock nuts loose.", "slacken lock nut"),
        ("", "Okay, the upper bolt's loose now.", "slacken upper bolt"),
        ("", "So the two nuts are slack.", "slacken nut"),
    ],
    "at its place": [
        (LATE, "The pulley on its shaft.", "on pulley"),
        (LATE, "The belt in its groove.", "on belt"),
        (LATE, "The cover over them.", "on cover"),
        (LATE, "The cover's over that.", "on cover"),
        (LATE, "Then the pulley, all the way up on the shaft.", "on pulley"),
        (LATE, "Pulley onto the shaft.", "on pulley"),
        (LATE, "Belt round the pulley.", "on belt"),
        (LATE, "And the cover's back up where it lives.", "on cover"),
        (LATE, "The cover is back where it belongs.", "on cover"),
        (LATE, "Pulley's back on the shaft.", "on pulley"),
        (LATE, "The belt's in its groove again.", "on belt"),
        (LATE, "Now the cover on its studs.", "on cover"),
        (LATE, "Pulley up to the shoulder.", "on pulley"),
        (LATE, "Bolts through the flange.", "on bolt"),
        (LATE, "The pulley's seated.", "on pulley"),
        (LATE, "Cover in place.", "on cover"),
        (LATE, "The pulley's home.", "on pulley"),
        (f"{LATE} / Take the seal out.", "New seal in the bore.", "on seal"),
        (f"{LATE} / Take the valve off.", "New valve up to the frame.", "on valve"),
    ],
    "named in its turn": [
        (LATE, "Pulley.", "on pulley"),
        (LATE, "Then the pulley.", "on pulley"),
        (LATE, "Pulley, belt.", "on pulley; on belt"),
        (LATE, "Pulley, then the belt, then the cover.", "on pulley; on belt; on cover"),
        (LATE, "Pulley, big end inwards.", "on pulley"),
        (LATE, "Pulley, and the belt over it.", "on pulley; on belt"),
        (LATE, "The four bolts, all of them started by hand.", "on bolt"),
        (LATE, "Belt next.", "on belt"),
        (LATE, "Cover, and its four bolts.", "on cover; on bolt"),
        (LATE, "Now the cover, dowels first.", "on cover"),
        (
            "Take the cover off. / Take the ring off. / Fit the new seal.",
            "Ring, pushed down snug around the shaft.",
            "on ring",
        ),
    ],
    "too": [
        ("Take the cap off.", "Faceplate too.", "off faceplate"),
        ("Take the left bracket off.", "Right one as well.", "off right bracket"),
        ("Take the cap off.", "And the seal.", "off seal"),
        ("Take the cap off.", "Same for the ring.", "off ring"),
        ("Slacken the upper bolt.", "Lower one too.", "slacken lower bolt"),
        (f"{LATE} / Pulley on.", "Belt too.", "on belt"),
        ("Take the cap off.", "Likewise the shield.", "off shield"),
        ("Take the cap off.", "The spring and the ball too.", "off spring; off ball"),
    ],
    "moves off": [
        ("Slacken the motor bolts.", "The belt rolls off the big pulley.", "off belt"),
        ("Undo the bolt.", "The rod falls out.", "off rod"),
        ("Undo the two bolts.", "And the whole housing drops down.", "off housing"),
        ("Undo the two bolts.", "The plate falls forward.", "off plate"),
        ("", "One bolt in the bottom, and the bowl drops.", "off bolt; off bowl"),
        ("Undo the bolt.", "The ball joint pops right out.", "off ball joint"),
        ("Undo the bolt.", "The shaft draws through.", "off shaft"),
        ("Undo the bolt.", "The anchor drops into my hand.", "off anchor"),
        ("Undo the bolt.", "The pin taps out from the left.", "off pin"),
        ("Undo the bolts.", "The cover lifts away.", "off cover"),
        ("Undo the bolt.", "The bearing just fell in my palm.", "off bearing"),
        ("Undo the bolt.", "The seal came away in two pieces.", "off seal"),
        ("Undo the bolt.", "The seal off the crown came away in two pieces.", "off seal"),
        ("Undo the bolt.", "The spindle slides out of the hub.", "off spindle"),
        ("Undo the bolt.", "The box comes towards you.", "off box"),
        ("Undo the bolt.", "The hose works loose.", "off hose"),
        ("Undo the bolt.", "The cover has come off.", "off cover"),
    ],
    "moves on": [
        (LATE, "The pulley slides home.", "on pulley"),
        (LATE, "Cover drops into place.", "on cover"),
        (LATE, "The belt rolls on.", "on belt"),
        (LATE, "The bolts run in by hand.", "on bolt"),
        (LATE, "The cover snaps on.", "on cover"),
        (LATE, "The pulley slips over the shaft.", "on pulley"),
        (LATE, "The cover pops in.", "on cover"),
    ],
    "comes with it": [
        ("", "Pull the float out, and the needle comes with it.", "off float; off needle"),
        ("", "The hub slides off and brings the bearing with it.", "off hub; off bearing"),
        ("", "Stem off, and the spacers came up with it.", "off stem; off spacer"),
        ("", "Take the nut off, washer too.", "off nut; off washer"),
    ],
    "a pronoun": [
        ("There's a pin in the fork. / Tap the pin.", "There, he's out.", "off pin"),
        ("There's a seal in the bore. / Twist the seal.", "And it's out.", "off seal"),
        ("Here's the valve. / Wiggle the valve.", "And she's off.", "off valve"),
        ("There's two screws in the lid. / Turn the screws.", "Now they're out.", "off screw"),
        (LATE + " / Grease the pulley.", "And it's back on.", "on pulley"),
        (LATE + " / Wipe the cover.", "So that's on.", "on cover"),
    ],
    "fitted for now": [
        ("Take the carb off.", "Rag in the intake.", "for now rag"),
        ("Take the carb off.", "Then a rag in the port so nothing falls in.", "for now rag"),
        ("", "Wedge under each wheel.", "for now wedge"),
        ("", "Timber under the frame.", "for now timber"),
        ("", "A board across the bed.", "for now board"),
        ("", "Little cup under it.", "for now cup"),
        ("", "Second thing is a ratchet strap round the mast.", "for now ratchet strap"),
        ("Take the hose off.", "A bung in the pipe.", "for now bung"),
        ("Take the hose off.", "Hose clamp on the line.", "for now hose clamp"),
        ("Take the stem off.", "And the bars are hanging off the tube in a strap.", "for now strap"),
        ("", "Bucket underneath.", "for now bucket"),
    ],
    "out again": [
        (LEANING, "Strap's back on its nail.", "out again strap"),
        (LEANING, "The strap is back on the shelf.", "out again strap"),
        (LEANING, "The strap goes back in the drawer.", "out again strap"),
        (LEANING, "Strap off.", "out again strap"),
        (LEANING, "Rag out.", "out again rag"),
        (LEANING, "And that's the rag out.", "out again rag"),
        (LEANING, "The rag slides out.", "out again rag"),
        (LEANING, "Rag's in the bin.", "out again rag"),
        (LEANING, "The strap can go back behind the door.", "out again strap"),
        (LEANING, "The rag's gone.", "out again rag"),
    ],
}
SILENT = {
    "found so": [
        ("", "The wheel's out of true."),
        ("", "The bolts were loose when I got here."),
        ("", "That bearing's gone."),
        ("", "The bolts are tight, so I'll need the long bar."),
        ("", "The nut's really tight."),
        ("", "The bolts are still tight."),
        ("", "That pulley's way out."),
        ("", "The belt was off."),
        ("", "The seal is out of stock."),
        ("", "That screw was loose."),
    ],
    "where it is": [
        (APART, "The bolts are in the tray."),
        (APART, "The cover's on the bench."),
        (APART, "The pulley's over there by the vice."),
        (APART, "The bolts are in my pocket."),
        ("", "The filter's behind the cover."),
        ("", "The pump is under the sink."),
        ("", "The bolt on the left."),
        ("", "Two bolts under the cover."),
        ("", "The bolts are in the corners."),
        ("", "There's a spring in the bore."),
        (LATE, "The new belt's in the box."),
        (LATE, "The cover from the old one."),
    ],
    "named only": [
        (APART, "Pulley."),
        (APART, "The cover, by the way, costs a fortune."),
        (LATE, "Gearbox."),
        (LATE, "Nice pulley, that."),
        (LATE, "That's the pulley."),
        ("", "Stem."),
        (LATE, "The pulley is cracked."),
        (LATE, "What about the pulley?"),
        (LATE, "No pulley yet."),
    ],
    "none of it": [
        ("", "That's not the cover off."),
        ("", "The cover isn't off yet."),
        ("", "Don't want the cover off."),
        ("", "With the cover off you can see the belt."),
        ("", "If the cover's off, you can see it."),
        ("", "Once the cover's off you can see it."),
        (LATE, "The pulley won't go on."),
        (SLACK, "Are the bolts tight?"),
        (SLACK, "The bolts aren't tight yet."),
        ("Slacken the nut.", "Not too tight."),
    ],
    "moves otherwise": [
        ("", "The oil runs out."),
        ("", "Water drips off the pipe."),
        ("", "The motor turns over."),
        ("", "The belt runs round the pulley."),
        ("", "The price drops."),
        ("", "The brush rolls under the bench."),
        ("", "The revs drop."),
        ("", "The light comes on."),
        ("", "My phone rang off."),
        ("", "The spring falls out if you're not careful."),
        ("", "The wheel rolls away on you."),
    ],
    "things that stay": [
        ("", "Light under the bench."),
        ("", "Dust in the intake."),
        ("", "There's a tray under the sink that we don't need."),
        ("", "No rag in there."),
        (LEANING, "Strap's holding."),
        (LEANING, "The rag's still in."),
    ],
}  # fmt: skip


def _last(before: str, sentence: str) -> list[str]:
    lines = [*filter(None, before.split(" / ")), sentence]
    return [f"{one.act} {thing(one.object)}" for one in operations(spoken(*lines)) if one.said.number == len(lines)]


@pytest.mark.parametrize(
    ("before", "sentence", "wanted"),
    [pytest.param(*case, id=f"{name}: {case[1]}") for name, cases in HEARD.items() for case in cases],
)
def test_it_is_heard(before: str, sentence: str, wanted: str) -> None:
    assert _last(before, sentence) == wanted.split("; ")


@pytest.mark.parametrize(
    ("before", "sentence"),
    [pytest.param(*case, id=f"{name}: {case[1]}") for name, cases in SILENT.items() for case in cases],
)
def test_nothing_is_heard(before: str, sentence: str) -> None:
    assert _last(before, sentence) == []
