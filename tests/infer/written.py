"""Procedures for the tests, as a technician could have typed them."""

from textwrap import dedent

from procbuilder.model.procedure import Procedure
from procbuilder.read.procedure import read_text

HEAD = """\
---
format: 1
recordings: {strip: strip.mp4, refit: refit.mp4}
---
# Hub – renew the bearings

"""


def written(text: str, *, head: str = HEAD) -> Procedure:
    """The procedure of a text below a plain head; the text must have no fault of its own."""
    procedure, problems = read_text(head + dedent(text).lstrip("\n"))
    assert problems == ()
    return procedure
