"""Sentences with a verb of work, class by class: what must be heard of them."""

import pytest

from tests.infer.spoken import told

HEARD = {
    "the thing in front": [
        ("The key I drew out with long-nose pliers.", "off key"),
        ("The lower hose I pulled off by hand.", "off lower hose"),
        ("That bracket you can unbolt from behind.", "off bracket"),
        ("Two bolts on the mount, the long ones, I slackened a turn each.", "slacken 2 x bolts"),
        ("The two at the back, the clamp bolts, I've just cracked off.", "slacken 2 x clamp bolts"),
        ("The old seal I had to dig out with a pick.", "off seal"),
        ("The cover plate we lift away in one piece.", "off cover plate"),
        ("The filter, which was filthy, I've taken out.", "off filter"),
        ("This spring we unhook first.", "off spring"),
        ("Pull the old bearing out. / The new one you press in dry.", "on bearing, new"),
        ("The last screw I undid with a stubby.", "off screw"),
        ("Both wheel nuts I tightened by hand.", "tighten 2 x wheel nuts"),
        ("The top hose comes off, and the bottom one I had to cut off with a knife.", "off bottom hose, scrap"),
        ("The circlip you squeeze and lift out.", "off circlip"),
        ("The earth strap I unbolted from the block, and the plug I pulled by hand.", "off plug"),
        ("The chuck key I'm leaving out, but the guard I'll take off.", "off guard"),
    ],
    "where it is": [
        ("The lower bolt is behind the bracket, so I slacken it with the long bar.", "slacken lower bolt"),
        ("The second screw hides behind the cable, I undo it by feel.", "off second screw"),
        ("The drain plug's under the guard, so undo it with the ring spanner.", "off drain plug"),
        (
            "Slacken the upper nut. / The lower one is next to the pipe, so I loosen it with the crowfoot.",
            "slacken lower nut",
        ),
        ("The sensor lives beside the pump, unplug it.", "off sensor"),
        ("The fuse is in the black box, pull it.", "off fuse"),
        ("The plug sits down by the radiator, unscrew it.", "off plug"),
        ("The rear bolt is hidden by the hose, crack it off with the bar.", "slacken rear bolt"),
        ("The filter's up above the tank and you unscrew it from below.", "off filter"),
        ("There's a nut behind the cover, undo it.", "off nut"),
    ],
    "undone and done up again": [
        (
            "Slacken the upper bolt. / Tighten the upper bolt. / It's crept, so I undo what I've just done.",
            "slacken upper bolt",
        ),
        ("Slacken the pinch bolt. / Tighten the pinch bolt. / Undo that again.", "slacken pinch bolt"),
        ("Let the two bolts go again.", "slacken 2 x bolts"),
        (
            "Slacken the two bolts. / Tighten the two bolts. / That is too much, back them off again.",
            "slacken 2 x bolts",
        ),
        ("Slacken the lock nut. / Tighten the lock nut. / Let it go again.", "slacken lock nut"),
        ("Slacken the pinch bolts. / Nudge the stem over. / Do them back up.", "tighten pinch bolts"),
        ("Slacken the terminals. / Do the terminals up.", "tighten terminals"),
        ("Slacken the clamp. / Then pull it up again.", "tighten clamp"),
    ],
    "requests": [
        ("Would you undo the clamp for me?", "off clamp"),
        ("Can you take the guard off, please?", "off guard"),
        ("Could you tighten the top nut?", "tighten top nut"),
        ("I'd like you to loosen the two bolts.", "slacken 2 x bolts"),
        ("I want you to take the cap off.", "off cap"),
        ("I'll have you slide the cover off.", "off cover"),
        ("Do you want to unplug the sensor?", "off sensor"),
        ("Sam, would you pop the cap off.", "off cap"),
        ("Will you pull the drain plug out for us?", "off drain plug"),
    ],
    "emphatic, and got done": [
        ("I did check the bearing.", "check bearing"),
        ("I did also take the belt off.", "off belt"),
        ("Do check the seal.", "check seal"),
        ("Get the bolts started by hand.", "on bolts"),
        ("Get the old gasket scraped off.", "off gasket, scrap"),
        ("I've got the cover unbolted.", "off cover"),
        ("Get that nut undone.", "off nut"),
        ("Get the drain plug loosened.", "slacken drain plug"),
        ("Let's get the cover bolted back on.", "on cover"),
        ("You want the clip taken off now.", "off clip"),
        ("Get both lock nuts tightened up.", "tighten 2 x lock nuts"),
    ],
    "told late": [
        ("There was a clip on that hose, I undid it before the hose and I never said.", "off clip (earlier)"),
        ("I took the cap off before that and never told you.", "off cap (earlier)"),
        ("One thing I did without telling you, I put a rag in the intake.", "for now rag (earlier)"),
        ("I'd already drained the tank.", "state tank drained (earlier)"),
        ("I had the wheel off before you came in.", "off wheel (earlier)"),
        ("I've already unplugged the sensor and taken the clip off.", "off clip (earlier)"),
        ("I've already flipped the breaker off and put my tag on it.", "for now tag (earlier)"),
        ("Before all this I shut the fuel tap.", "state fuel tap off (earlier)"),
        ("What I did before any of this, I loosened the clamp.", "slacken clamp (earlier)"),
        ("You didn't see me do it, but I stuffed a rag in the bore.", "for now rag (earlier)"),
        ("While the camera was off I took the belt off.", "off belt (earlier)"),
        ("I don't think I showed you, I pulled the fuse before we started.", "off fuse (earlier)"),
    ],
    "looks and what is given": [
        ("Have a good look at the pipe ends.", "check pipe ends"),
        ("Take a quick look at the brushes.", "check brushes"),
        ("Have a feel of the bearing.", "check bearing"),
        ("Have a look inside the housing.", "check housing"),
        ("Cast an eye over the hoses.", "check hoses"),
        ("I had a look in the tank.", "check tank"),
        ("I'm looking at the cage for pits.", "check cage"),
        ("Give each terminal a tug.", "work terminal"),
        ("I gave both housings a wipe.", "work 2 x housings"),
        ("We had a good feel of the bearing for play.", "check bearing"),
    ],
    "turned to a value": [
        ("Start the pump. / Turn it down to two.", "work pump"),
        ("Turn the pressure up to three bar.", "work pressure"),
        ("Turn the dial down to one.", "work dial"),
    ],
    "as spoken": [
        ("Pull the pin outta the shaft.", "off pin"),
        ("Here's the two nuts. / Take 'em both off.", "off 2 x nuts"),
        ("I'm takin' the cover off.", "off cover"),
        ("Lemme get the nut off.", "off nut"),
        ("Chock the wheels. / Kick them chocks out.", "out again chocks"),
        ("Undo them two screws.", "off 2 x screws"),
        ("Them bolts want tightening.", "tighten bolts"),
        ("Pop that seal outta there.", "off seal"),
        ("I'm undoin' the clamp now.", "off clamp"),
        ("We hafta pull the drain plug out.", "off drain plug"),
        ("You gotta slide the belt offa the pulley.", "off belt"),
    ],
    "what comes of it": [
        ("Wipe the chain first or you're measuring muck.", "work chain"),
        ("Slide the cover off, else the clip falls out.", "off cover"),
        ("Undo the nut slowly or the spring shoots out.", "off nut"),
    ],
    "no part of the item": [
        ("Fit a bag over the intake. / Bag's going back in the drawer.", "out again bag"),
        ("Set the bucket under it. / The bucket goes back in the shed.", "out again bucket"),
        ("Take the cover off. / It goes on the bench.", "off cover"),
        ("Take the pulley off. / Pulley in my left hand, puller in my right.", "off pulley"),
    ],
}
"""Sentences parted by a slash, and what is heard of the last one at last."""


@pytest.mark.parametrize(
    ("lines", "last"),
    [pytest.param(lines, last, id=f"{name}: {lines}") for name, cases in HEARD.items() for lines, last in cases],
)
def test_the_work_is_heard(lines: str, last: str) -> None:
    assert told(*lines.split(" / "))[-1:] == [last]
