"""Sentences about torques that do not agree with each other, with the thread, or with the wrenches."""

from procbuilder.publish.wording.patterns import Patterns


def _for(lacking: str) -> str:
    return f"{lacking} {{values}}; a wrench reads well from 20 to 100 % of its range (common practice)"


_NOT_REACHED = _for("no torque wrench of the list reaches")
_NOT_LISTED = _for("no torque wrench is listed with its range, for")
_NAME = "name the torque wrench with its range in a Tool line"

PATTERNS: Patterns = {
    "torques-contradict": {
        "": (
            "the torque of {item} is {value} in {step}, and {other} in {before} ({there})",
            'write the right one in both lines, or say with " | when: …" what is different',
        ),
    },
    "said-and-typed-differ": {
        "": (
            "the torque of {item} is {value}, but {source} is {heard} ({there})",
            'write the right one with its document, or "{answer}"',
        ),
    },
    "torque-against-thread": {
        "": (
            "{value} is far from what an {thread} thread{strength} is usually tightened to: "
            "is the value, its unit or the thread typed wrong?",
            'put it right, or write "{answer}"',
        ),
    },
    "torque-wrench-range": {
        "none-reaches": (_NOT_REACHED, 'add "{line}"'),
        "none-listed": (_NOT_LISTED, 'add "{line}"'),
        "none-reaches-nor-known": (_NOT_REACHED, _NAME),
        "none-listed-nor-known": (_NOT_LISTED, _NAME),
    },
}
