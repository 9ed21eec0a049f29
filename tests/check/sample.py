"""A procedure without a fault, and ways to make it wrong in exactly one."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import cache

from procbuilder.check.case import Case
from procbuilder.check.run import problems
from procbuilder.check.settled import unsettled
from procbuilder.infer.by_words import taken_off_by_words
from procbuilder.infer.dangers import removed_protection, standing
from procbuilder.infer.heard_torques import heard_torques
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.order import disorders
from procbuilder.infer.proposed import noticed
from procbuilder.infer.torques import torques
from procbuilder.model.footage import PacketFacts, Recording
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import Narration, Procedure
from procbuilder.publish.wording.problems import line
from procbuilder.read.procedure import read_text

GOOD = """\
---
format: 1
number: P-014
revision: B
recordings: {strip: recordings/strip.mp4, refit: recordings/refit.mp4}
author: RB
---
# Trailer wheel hub – renew the bearings

## Before you start

- Condition: hard level ground
- Tool: wheel brace; torque wrench 5–25 N·m
- Supply: bearing grease, 60 g
- Part: 1 x split pin, new
- Wear: eye protection

## Strip

### strip 0:02-0:05 Slacken the wheel nuts {#slacken}

- Slacken: 4 x wheel nut

### strip 0:05-0:10 Raise the trailer {#raise}

- State: trailer raised
- For now: 2 x axle stand | while: trailer raised
- Danger: the trailer falls | crushing | never on the jack alone | while: trailer raised

### strip 0:10-0:20 Take off the wheel {#wheel}

- Off: wheel | by: 4 x wheel nut
- Off: split pin, scrap
- Off: washer
- Picture: 0:18 | wheel off | done

## Refit

### refit 0:00-0:10 Fit the bearing washer {#washer}

- On: washer
- On: split pin, new
- Torque: keeper bolt | 15 N·m | from: D1 p. 4

### refit 0:10-0:30 Fit the wheel {#fit}

- On: wheel

### refit 0:30-0:40 Lower the trailer {#lower}

- Out again: 2 x axle stand
- Ends: trailer raised

### Tighten the wheel nuts in a star {#star}

- Torque: wheel nuts | look up | D1, section 4
- Check: spin the wheel | no noise

## Who looked at it

- Dangers confirmed: RB | 2026-03-02
- Warning: a wheel that is not tightened works loose | the wheel comes off | crosswise, to the torque
"""

DURATIONS = {"strip": Fraction(24), "refit": Fraction(406, 10)}


def recording(name: str, duration: Fraction) -> Recording:
    """A recording of which only the length matters."""
    return Recording(name, f"recordings/{name}.mp4", "0" * 64, duration, 1280, 720)


def found(
    text: str,
    *,
    durations: Mapping[str, Fraction] = DURATIONS,
    films: Mapping[str, PacketFacts] | None = None,
    narration: Iterable[Narration] = (),
) -> tuple[Problem, ...]:
    """What the rules find in a text, the worst first; its reading itself must find nothing."""
    return _found(text, tuple(durations.items()), tuple((films or {}).items()), tuple(narration))


@cache
def _found(
    text: str,
    durations: tuple[tuple[str, Fraction], ...],
    films: tuple[tuple[str, PacketFacts], ...],
    narration: tuple[Narration, ...],
) -> tuple[Problem, ...]:
    procedure, faults = read_text(text)
    assert faults == ()
    return problems(_case(procedure, dict(durations), dict(films), narration))


def all_found(text: str, *, durations: Mapping[str, Fraction] = DURATIONS) -> tuple[Problem, ...]:
    """The same with what reading the text finds, which need not be faultless."""
    procedure, faults = read_text(text)
    return (*unsettled(procedure, faults), *problems(_case(procedure, durations, {}, ())))


def _case(
    procedure: Procedure,
    durations: Mapping[str, Fraction],
    films: Mapping[str, PacketFacts],
    narration: tuple[Narration, ...],
) -> Case:
    lexicon = load(procedure.front["language"])
    recordings = {name: recording(name, duration) for name, duration in durations.items()}
    still = standing(procedure, lexicon)
    return Case(
        procedure=procedure,
        recordings=recordings,
        ledger=ledger(procedure, lexicon),
        removed=removed_protection(procedure, lexicon),
        torques=torques(procedure, lexicon),
        lexicon=lexicon,
        heard=heard_torques(procedure, narration),
        films=films,
        standing=still,
        noticed=noticed(procedure, still, lexicon, narration),
        taken_off=taken_off_by_words(procedure),
        disorders=disorders(procedure, lexicon),
    )


def changed(*changes: tuple[str, str]) -> str:
    """The good procedure with some text replaced; each old text must stand in it exactly once."""
    text = GOOD
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return text


def said(
    text: str, *, durations: Mapping[str, Fraction] = DURATIONS, films: Mapping[str, PacketFacts] | None = None
) -> list[str]:
    """Each problem in one line: severity, danger, rule, sentence."""
    return [
        f"{problem.severity} {problem.danger} {problem.rule} {line(problem)}"
        for problem in found(text, durations=durations, films=films)
    ]
