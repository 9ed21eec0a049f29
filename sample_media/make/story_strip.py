"""The strip recording: from the parked trailer to the bare stub axle."""

from story import Event, Habit, Line, Sound, Step, Take

STRIP_TAKES = (
    Take(
        "arrival",
        lines=(
            Line(0.4, "Trailer hub, near side. The wheel rocks at the top, and the hub runs hot."),
            Line(5.4, "New bearings and a new seal today."),
        ),
        events=(Event(0, "hitched to the parked tow car", opens="trailer hitched to the tow car"),),
        habits=(Habit(0, 9.0, "number plate", "an invented plate on the tail board, to be hidden"),),
        zoom=0.05,
    ),
    Take(
        "chocks-in",
        Step("chock", "Chock the other wheel in front and behind", "other wheel chocked"),
        (Line(0.3, "Other wheel chocked, in front and behind, so that it can't roll off the stand."),),
        events=(Event(2.8, "chock put behind the other wheel", opens="chocks at the other wheel"),),
        covered=((0, 4.0),),
    ),
    Take(
        "nuts-slack",
        Step(
            "slacken-nuts",
            "Slacken the four wheel nuts with the wheel on the ground",
            "wheel nuts slackened, on the ground, 19 socket",
        ),
        (
            Line(
                0.3,
                "Wheel nuts, four of them. Seventeen socket. No, sorry, nineteen.",
                "Wheel nuts, 4 of them. 17 socket. No, sorry, 19.",
            ),
            Line(5.8, "Half a turn each, while the wheel is still on the ground."),
        ),
        (Sound(2.3, "creak", 2, 3.4),),
        (Event(2.8, "first wheel nut slackened", opens="wheel nuts slackened"),),
        (
            Habit(0.3, 5.0, "fastener count", "four wheel nuts"),
            Habit(2.6, 5.2, "corrected number", "17, corrected to 19 mm socket"),
        ),
        ((1.2, 3.8), (4.6, 7.4)),
    ),
    Take(
        "jack-up",
        Step("raise", "Raise the trailer with the jack under the frame", "jack under the frame, up"),
        (Line(0.5, "Jack under the frame, behind the wheel."), Line(4.6, "Up until the tyre is clear of the floor.")),
        (Sound(1.5, "pump", 4, 0.96),),
        (Event(5.0, "trailer raised", opens="trailer raised"),),
    ),
    Take(
        "stand-in",
        Step("stand", "Set the axle stand under the beam", "axle stand in"),
        (Line(0.8, "Axle stand under the beam, and let the weight down on it. Never work on the jack alone."),),
        (Sound(2.4, "clink"),),
        (Event(2.4, "axle stand under the beam", opens="axle stand"),),
        covered=((0, 3.4),),
    ),
    Take(
        "wheel-nut-off",
        Step("wheel-off", "Take off the four wheel nuts and the wheel", "wheel off, 4 nuts in the tray"),
        (Line(0.3, "Nuts off, all four in the tray.", "Nuts off, all 4 in the tray."),),
        (Sound(3.9, "clink"),),
        (Event(3.6, "first wheel nut off", opens="wheel nuts off, four"),),
        covered=((0.6, 4.0),),
    ),
    Take(
        "wheel-off",
        None,
        (Line(0.6, "Wheel off, and lay it flat."),),
        (Sound(3.7, "thud"),),
        (Event(1.7, "wheel off", opens="wheel"),),
        (Habit(0, 0.2, "jump cut", "the other three nuts came off between the cuts"),),
        ((0, 3.8),),
    ),
    Take(
        "cap-off",
        Step("dust-cap", "Prise off the dust cap", "dust cap off"),
        (
            Line(0.3, "Dust cap. Flat bar on the rim."),
            Line(2.9, "Slipped. Try again."),
            Line(5.2, "A little at a time, and turn the hub between the pushes."),
            Line(9.4, "A bent cap lets water in."),
        ),
        (Sound(2.0, "scrape"), Sound(5.4, "creak", 3, 0.9)),
        (Event(7.3, "dust cap loose", opens="dust cap"), Event(9.9, "dust cap taken away")),
        (Habit(1.3, 2.9, "repeated attempt", "the flat bar slips; tried again at once"),),
        ((0.8, 8.0),),
    ),
    Take(
        "pin-out",
        Step("split-pin", "Pull out the split pin", "split pin out"),
        (
            Line(0.3, "Split pin next. Straighten the legs with the pliers,"),
            Line(5.9, "then pull it out by the eye. It is scrap, never use it twice."),
        ),
        (Sound(9.9, "clink"),),
        (Event(4.8, "legs of the split pin straightened"), Event(9.2, "split pin out", opens="split pin")),
        covered=((3.0, 6.2), (7.0, 10.0)),
    ),
    Take(
        "nut-slack",
        Step("nut-slack", "Slacken the castle nut", "castle nut slack, 24"),
        (
            Line(0.3, "Castle nut, twenty-four millimetre. Anticlockwise.", "Castle nut, 24 mm. Anticlockwise."),
            Line(4.4, "It should be only just tight."),
        ),
        (Sound(1.5, "clink"), Sound(5.1, "clink")),
        (Event(3.6, "castle nut slackened"),),
        covered=((0.8, 5.6),),
    ),
    Take(
        "nut-off",
        Step("castle-nut", "Spin off the castle nut by hand", "castle nut off"),
        (
            Line(0.3, "Spin it off by hand."),
            Line(2.5, "Should have said, the brake on the tow car goes on before any of this."),
        ),
        (Sound(5.9, "clink"),),
        (Event(5.2, "castle nut off", opens="castle nut"),),
        (
            Habit(2.5, 6.4, "out of order", "the tow car's brake belongs before the first step"),
            Habit(1.0, 5.0, "hidden part", "the hand hides the castle nut while it is turned"),
        ),
        ((1.0, 5.0),),
    ),
    Take(
        "washer-off",
        Step("washer", "Take off the washer", "washer off"),
        (Line(0.8, "Washer off, in the tray."),),
        (Sound(3.4, "clink"),),
        (Event(2.1, "washer off", opens="washer"),),
        covered=((0.6, 2.0),),
    ),
    Take(
        "bearing-off",
        Step("outer-bearing", "Take out the outer bearing", "outer bearing out"),
        (Line(0.6, "Outer bearing. Thumb over it, or it drops in the dirt."),),
        events=(Event(2.0, "outer bearing out", opens="outer bearing"),),
        habits=(Habit(0, 0.6, "exposure jump", "the camera opens up after the cut"),),
        covered=((0.6, 2.0),),
    ),
    Take(
        "hub-off",
        Step("hub", "Draw the hub off the stub axle", "hub off"),
        (Line(0.4, "Hub straight off, with both hands. It is heavier than it looks."),),
        events=(Event(2.3, "hub off", opens="hub"),),
    ),
    Take(
        "phone",
        None,
        (
            Line(
                0.9,
                "Hang on. Hello? Yes, the kettle's on. Two sugars, please.",
                "Hang on. Hello? Yes, the kettle's on. 2 sugars, please.",
            ),
            Line(5.7, "Right, where were we."),
        ),
        (Sound(0.1, "ring"),),
        habits=(
            Habit(0, 7.0, "talk unrelated to the job", "a telephone call"),
            Habit(0, 7.0, "face", "a drawn face on a poster, to be hidden"),
        ),
        zoom=0.04,
    ),
    Take(
        "seal-out",
        Step("seal", "Lever out the grease seal", "seal levered out"),
        (Line(0.3, "Seal out, lever it up bit by bit. It is scrap."), Line(5.2, "Mind the bore, don't score it.")),
        (Sound(2.2, "creak", 2, 1.0),),
        (Event(3.5, "seal loose"), Event(7.2, "seal out", opens="grease seal")),
        covered=((0.8, 4.8),),
    ),
    Take(
        "inner-out",
        Step("inner-bearing", "Lift out the inner bearing", "inner bearing out"),
        (Line(0.5, "Inner bearing lifts out. Keep it with its cup."),),
        events=(Event(2.1, "inner bearing out", opens="inner bearing"),),
        covered=((0.9, 2.2),),
    ),
    Take(
        "cups-out",
        Step("cups", "Drive out both bearing cups", "cups drifted out, goggles"),
        (
            Line(0.2, "Cups out with a brass drift. Eye protection on."),
            Line(6.5, "Turn it over, and the same for the inner one."),
        ),
        (Sound(1.6, "knock", 4), Sound(5.2, "knock"), Sound(5.92, "knock"), Sound(6.4, "clink")),
        (
            Event(6.1, "outer cup out", opens="outer bearing cup"),
            Event(8.8, "inner cup out, not filmed", opens="inner bearing cup"),
        ),
        (Habit(1.6, 6.6, "tool noise", "hammer blows"),),
    ),
    Take(
        "blue-race",
        Step("inspect", "Clean and inspect the bearing cups", "inspect, outer race blue"),
        (
            Line(0.6, "Wiped clean. Look at that, the outer race is blue."),
            Line(5.2, "It has run hot. So both bearings go, and the cups as well."),
        ),
        events=(Event(1.0, "finding: the outer race is blue"),),
    ),
    Take(
        "stub-clean",
        Step("stub", "Clean and inspect the stub axle", "stub axle cleaned, ok"),
        (
            Line(0.4, "Clean the stub axle. No steps, no scores."),
            Line(4.0, "If a bearing has spun on it, stop and ask the foreman."),
        ),
        events=(Event(4.0, "stub axle clean"),),
        habits=(Habit(3.9, 5.0, "blur", "the camera loses focus for a moment"),),
        covered=((0.4, 4.4),),
    ),
)
