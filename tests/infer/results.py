"""What has been told before a result is, and what the last sentence tells of it."""

from procbuilder.infer.dictionary.english import thing
from procbuilder.infer.hearing.operations import operations
from tests.infer.spoken import spoken

OFF = "Take the cover off."
APART = "Undo the four bolts. / Take the cover off. / Pull the belt off. / Take the pulley off. / Pull the spacer off."
"""Of a machine that is taken apart."""
LATE = f"{APART} / Clean the shaft. / Slide the spacer back on."
"""And put together again."""
SLACK = "Slacken the two clamp bolts. / Move the motor. / Slide the belt on."
LEANING = "Put a strap round the frame. / Push a rag into the port. / Take the cover off. / Put the cover back on."


def last(before: str, sentence: str) -> list[str]:
    """The operations of the sentence behind some others, which stand with `` / `` between them."""
    lines = [*filter(None, before.split(" / ")), sentence]
    return [f"{one.act} {thing(one.object)}" for one in operations(spoken(*lines)) if one.said.number == len(lines)]
