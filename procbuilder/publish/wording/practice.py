"""Sentences about practice times."""

from procbuilder.publish.wording.patterns import Patterns

_AGAIN = "export the times from the page once more"

PATTERNS: Patterns = {
    "practice-log": {
        "columns": ("the first line is {typed}", "write the columns {columns} there, in any order"),
        "long-cell": ("a cell is far too long", "take out what is not a time"),
        "cells": (
            "the row has {cells} cells, the first line {columns}",
            "write one cell for each column; a decimal has a point: 4.5",
        ),
        "broken-off": ("the file breaks off or was changed", _AGAIN),
        "no-export": ("the file is not {format}", _AGAIN),
        "row": ("the row does not have just {columns:,}", _AGAIN),
        "who": ("{typed} is no initials", "write initials or a code of up to 12 signs"),
        "to-come": (
            "{when} is still to come: today is {today}",
            "set the day on which it was done, or the clock of this machine or of the phone",
        ),
        "when": ("{typed} is no date", "write 2026-05-04, or 2026-05-04T14:30"),
        "step": ("{typed} is no step id", "write what stands in {{#…}} at the step"),
        "minutes": (
            "{typed} is no number of minutes",
            "write minutes such as 4.5, more than 0 and at most {most}",
        ),
        "other-procedure": (
            "the times are of {procedure}, the folder holds {number}",
            "name the folder of that procedure",
        ),
        "near-step": ("the procedure has no step {step}", "did you mean {near}?"),
        "no-step": ("the procedure has no step {step}", "write one of its ids: {ids:,}"),
        "no-step-of-many": ("the procedure has no step {step}", "write one of its ids: {ids:,} …"),
    },
}
