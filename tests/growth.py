"""How the cost of work grows with its input: told as a ratio, so that a slow machine is no failure."""

import gc
import time
from collections.abc import Callable
from typing import TypeVar

TIMES = 4
"""How much smaller the input is that is worked on first."""
MOST = 10
"""Times its cost: four where the cost grows with the input, sixteen where it grows with the square."""
_TOO_SHORT = 0.5
"""Seconds of the processor, below which nothing can be told, and nothing has blown up."""
Made = TypeVar("Made")


def no_blow_up(prepare: Callable[[int], Callable[[], Made]], size: int) -> Made:
    """What the work makes that ``prepare`` makes ready for this size; fails when the work blows up.

    A quarter of the size is worked on first, which also pays for what is loaded once.
    """
    _seconds(prepare(size // TIMES))
    little, _ = _seconds(prepare(size // TIMES))
    much, made = _seconds(prepare(size))
    assert much <= max(_TOO_SHORT, MOST * little), f"{little:.2f} s for {size // TIMES}, {much:.2f} s for {size}"
    return made


def _seconds(work: Callable[[], Made]) -> tuple[float, Made]:
    """Without the pauses in which Python looks for what is no longer used: they come when they like."""
    gc.collect()
    gc.disable()
    try:
        begin = time.process_time()
        made = work()
        return time.process_time() - begin, made
    finally:
        gc.enable()
