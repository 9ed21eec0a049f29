"""The refit recording: from the new parts to the check after the first run."""

from story import Event, Habit, Line, Sound, Step, Take

REFIT_TAKES = (
    Take(
        "kit",
        Step("compare", "Compare the new parts with the old", "new kit, compare"),
        (Line(0.3, "New kit. Compare each part with the old one before anything goes in."),),
        zoom=0.05,
    ),
    Take(
        "cups-in",
        Step("new-cups", "Drive in both new cups", "new cups in"),
        (Line(0.2, "New cups, wide side out."), Line(5.4, "When it is home, the sound goes dull.")),
        (Sound(2.0, "knock", 3), Sound(3.86, "knock"), Sound(4.82, "dull")),
        (
            Event(4.9, "new outer cup home", closes="outer bearing cup"),
            Event(8.0, "new inner cup home, not filmed", closes="inner bearing cup"),
        ),
    ),
    Take(
        "grease",
        Step("pack", "Pack both bearings with grease", "pack bearings"),
        (Line(0.4, "Pack the bearing. Push grease in from the wide side, until it comes out at the top."),),
        events=(Event(5.0, "new bearing packed with grease"),),
        covered=((1.0, 5.0),),
    ),
    Take(
        "inner-in",
        Step("inner-in", "Put in the inner bearing", "inner bearing in"),
        (Line(0.3, "Inner bearing first, and only then the seal."),),
        events=(Event(1.8, "inner bearing in", closes="inner bearing"),),
        covered=((1.0, 2.6),),
    ),
    Take(
        "seal-in",
        Step("new-seal", "Tap in the new grease seal flush", "new seal, flush"),
        (Line(0.2, "New seal, lip towards the bearing."), Line(5.3, "Tap it flush, with a wood block.")),
        (Sound(2.3, "dull", 3), Sound(4.36, "dull"), Sound(5.0, "dull")),
        (Event(5.1, "new seal flush", closes="grease seal"),),
        covered=((1.4, 7.2),),
    ),
    Take(
        "hub-on",
        Step("hub-on", "Slide the hub on to the stub axle", "hub on, mind the lip"),
        (Line(0.4, "Hub on, straight, so that the thread can't cut the seal lip."),),
        events=(Event(3.4, "hub on", closes="hub"),),
    ),
    Take(
        "outer-in",
        Step("outer-in", "Put in the outer bearing", "outer bearing in"),
        (Line(0.4, "Outer bearing, packed as well."),),
        events=(Event(1.7, "outer bearing in", closes="outer bearing"),),
        covered=((1.0, 2.4),),
    ),
    Take(
        "washer-in",
        Step("washer-in", "Put on the washer", "washer on"),
        (Line(0.8, "Then the washer."),),
        (Sound(1.6, "clink"),),
        (Event(1.6, "washer on", closes="washer"),),
        covered=((0.8, 2.3),),
    ),
    Take(
        "nut-tight",
        Step("seat", "Tighten the castle nut while turning the hub", "nut up, turn the hub"),
        (
            Line(0.4, "Castle nut. Tighten it while you turn the hub, that seats the rollers."),
            Line(
                5.6,
                "Thirty newton metres on our sheet. Look up yours.",
                "30 newton metres on our sheet. Look up yours.",
            ),
        ),
        (Sound(2.0, "creak", 4, 1.6),),
        (Event(7.6, "castle nut tightened"),),
        covered=((0.6, 9.2),),
    ),
    Take(
        "nut-back",
        Step("back-off", "Back off the nut to the next slot", "back off to next slot"),
        (
            Line(0.3, "Now back it off to the next slot, until the hole is clear."),
            Line(
                4.9,
                "End float, five to ten hundredths, with the dial gauge. Look that up as well.",
                "End float, 0.05 to 0.10 mm, with the dial gauge. Look that up as well.",
            ),
        ),
        events=(Event(2.8, "castle nut set to the slot", closes="castle nut"),),
        covered=((0.7, 3.6),),
    ),
    Take(
        "pin-in",
        Step("new-pin", "Fit a new split pin"),
        (Line(0.3, "New split pin. Push it right through."), Line(4.4, "One leg over the end, one leg down the flat.")),
        events=(Event(2.0, "new split pin in"), Event(5.1, "legs bent", closes="split pin")),
        covered=((1.0, 2.7), (3.5, 5.6)),
        habits=(Habit(0, 9.0, "forgotten in the rough list", "the new split pin is filmed but not in the list"),),
    ),
    Take(
        "cap-on",
        Step("cap-on", "Tap on the dust cap", "cap on"),
        (Line(0.3, "Cap on, tap round the rim."),),
        (Sound(2.5, "dull"), Sound(3.3, "dull")),
        (Event(3.3, "dust cap on", closes="dust cap"),),
        (Habit(0, 0.6, "exposure jump", "the camera opens up after the cut"),),
        ((1.0, 4.2),),
    ),
    Take(
        "wheel-on",
        Step("wheel-on", "Put on the wheel", "wheel on"),
        (Line(0.3, "Wheel on."),),
        (Sound(2.1, "thud"),),
        (Event(2.1, "wheel on", closes="wheel"),),
    ),
    Take(
        "nuts-by-hand",
        Step("nip-up", "Nip up the four wheel nuts crosswise", "wheel nuts nipped up"),
        (
            Line(
                0.2, "All four nuts by hand, then nipped up crosswise.", "All 4 nuts by hand, then nipped up crosswise."
            ),
        ),
        events=(Event(2.6, "wheel nuts on, nipped up", closes="wheel nuts off, four"),),
        habits=(Habit(0, 0.2, "jump cut", "three nuts went on between the cuts"),),
        covered=((0, 2.9),),
    ),
    Take(
        "spin",
        Step("spin-rock", "Spin and rock the wheel", "spin and rock"),
        (Line(0.3, "Spin it. It must run quietly."),),
        (Sound(0, "whirr"),),
        (Event(0, "wheel spun"),),
        (Habit(0, 4.4, "motion blur", "the wheel turns"),),
    ),
    Take(
        "rock",
        None,
        (Line(0.3, "Rock it, top and bottom. Hardly any play, and no knock."),),
        events=(Event(0, "wheel rocked"),),
        finished=((0.0, 5.4),),
    ),
    Take(
        "lower",
        Step("lower", "Lower the trailer off its stand", "stand out, down"),
        (Line(0.4, "Stand out, and down on the ground."),),
        (Sound(0.8, "scrape"), Sound(3.4, "hiss")),
        (Event(2.2, "axle stand out", closes="axle stand"), Event(5.6, "trailer lowered", closes="trailer raised")),
    ),
    Take(
        "torque",
        Step("torque", "Tighten the wheel nuts crosswise to the torque", "nuts crosswise, torque wrench"),
        (
            Line(0.4, "Crosswise, in two goes. Forty-five first,", "Crosswise, in 2 goes. 45 first,"),
            Line(
                5.2,
                "then ninety newton metres. Those are our sheet's numbers, look up yours.",
                "then 90 newton metres. Those are our sheet's numbers, look up yours.",
            ),
        ),
        (Sound(1.7, "click", 4, 2.5), Sound(6.2, "wrench")),
        (Event(11.0, "wheel nuts tightened", closes="wheel nuts slackened"),),
        (Habit(6.2, 8.6, "tool noise", "an impact wrench next door, over the speech"),),
        ((0.6, 10.2),),
    ),
    Take(
        "chocks-out",
        Step("chocks-out", "Take the chocks away", "chocks away"),
        (Line(0.3, "Chocks away from the other wheel."),),
        (Sound(2.0, "scrape"),),
        (Event(2.8, "chocks taken away", closes="chocks at the other wheel"),),
        covered=((0.9, 2.8),),
    ),
    Take(
        "departure",
        Step("recheck", "Check hub and wheel nuts after the first run", "check nuts after 50 km"),
        (
            Line(
                0.4,
                "Nuts again after fifty kilometres. I have told the owner.",
                "Nuts again after 50 kilometres. I have told the owner.",
            ),
            Line(5.0, "And feel the hub after the first run. Warm is right, hot is not."),
        ),
        events=(Event(0, "re-check of the wheel nuts due after 50 km"),),
        zoom=0.05,
    ),
)
