"""Reads the fault files: each block is one change to the good procedure and what the rules then say.

``# title``, then ``-`` lines as they stand in the good procedure, ``+`` lines that replace them, and
``>`` lines: severity, danger, rule and sentence of each problem, the worst first. An empty line
parts one change from the next.
"""

from dataclasses import dataclass, field
from pathlib import Path

FOLDER = Path(__file__).parent / "faults"


@dataclass
class Fault:
    """One block."""

    title: str
    changes: list[tuple[list[str], list[str]]] = field(default_factory=list)
    expected: list[str] = field(default_factory=list)

    def applied(self, text: str) -> str:
        """The good procedure with this fault; each changed place must stand in it exactly once."""
        places = []
        for old, new in self.changes:
            before = "\n" + "".join(f"{line}\n" for line in old)
            assert text.count(before) == 1, f"{self.title}: {old} stands {text.count(before)} times"
            places.append((text.index(before) + 1, len(before) - 1, "".join(f"{line}\n" for line in new)))
        for start, length, after in sorted(places, reverse=True):
            text = text[:start] + after + text[start + length :]
        return text


def faults(name: str) -> list[Fault]:
    """The blocks of one file."""
    found: list[Fault] = []
    sign = ""
    for line in (FOLDER / f"{name}.txt").read_text(encoding="utf-8").splitlines():
        before, sign, text = sign, line[:1], line[2:]
        if sign == "#":
            found.append(Fault(text))
        elif sign == "-":
            if before != "-":
                found[-1].changes.append(([], []))
            found[-1].changes[-1][0].append(text)
        elif sign == "+":
            found[-1].changes[-1][1].append(text)
        elif sign == ">":
            found[-1].expected.append(text)
    return found
