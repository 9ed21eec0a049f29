"""Footage time is not work time: how the footage of a step is spent."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from procbuilder.model.footage import Cut, FootageSplit, Heard, Looked, PacketFacts
from procbuilder.model.stretch import Stretch, seconds, shared, without

EDGE = Fraction(1)
"""Seconds from the ends of a stretch within which a cut belongs to the next step: times are typed roughly."""


@dataclass(frozen=True, slots=True)
class Scanned:
    """What is known of one stretch of a step, nothing of it skipped."""

    stretch: Stretch
    film: PacketFacts
    looked: Looked
    heard: Heard | None
    """None when there is no sound."""
    cuts: tuple[Cut, ...]
    """Found in this stretch."""


def split(parts: Sequence[Scanned]) -> FootageSplit:
    """Seconds of hands-on, of talk over a still picture, and of neither; what is not surely still is hands-on.

    Where one part ends and another begins, something was left out: that is a cut too.
    """
    found = [_split(part) for part in parts]
    speeds = {part.film.speed or Fraction(1) for part in parts}
    return FootageSplit(
        hands_on=sum((each.hands_on for each in found), Fraction(0)),
        talk=sum((each.talk for each in found), Fraction(0)),
        still=sum((each.still for each in found), Fraction(0)),
        cuts=sum(each.cuts for each in found) + len(found) - 1,
        speed=next((speed for speed in sorted(speeds) if speed != 1), Fraction(1)),
    )


def _split(part: Scanned) -> FootageSplit:
    whole = part.stretch
    unmoved = shared([whole], part.looked.still)
    speech, noise = (part.heard.speech, part.heard.noise) if part.heard else ((), ())
    talk = shared(unmoved, speech)
    still = without(unmoved, (*speech, *noise))
    return FootageSplit(
        hands_on=whole.seconds - seconds(talk) - seconds(still),
        talk=seconds(talk),
        still=seconds(still),
        cuts=_inside(part.cuts, whole),
    )


def _inside(cuts: Iterable[Cut], whole: Stretch) -> int:
    return sum(whole.start + EDGE < cut.time < whole.end - EDGE for cut in cuts)
