"""What a command costs: seconds of processor and wall time, and peak memory."""

import os
import subprocess
import time
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Cost:
    """One run of a command with all its children."""

    cpu: float
    """Seconds, user and system."""
    wall: float
    peak: int
    """Megabytes of memory at the most."""


def cost(command: Sequence[str], *, exit_codes: Sequence[int] = (0,)) -> Cost:
    """Run a command and measure it. RuntimeError with its last words when it fails."""
    begin = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
    assert process.stderr
    words = process.stderr.read()
    _, status, usage = os.wait4(process.pid, 0)
    wall = time.monotonic() - begin
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode not in exit_codes:
        raise RuntimeError(f"{command[0]} ended with {process.returncode}: {words[-500:]}")
    return Cost(usage.ru_utime + usage.ru_stime, wall, usage.ru_maxrss // 1024)
