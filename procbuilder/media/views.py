"""Looks at the pictures around a moment: decoded when they are asked for, or remembered from a pass through all."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Protocol

from procbuilder.media.look import Look, look
from procbuilder.media.sample import sampled
from procbuilder.model.timecode import Span


class Views(Protocol):
    """Where looks at a recording come from, up to sixteen a second."""

    def within(self, span: Span) -> list[Look]:
        """All of a span."""
        ...

    def outwards(
        self, span: Span, moment: Fraction, reaches: Sequence[Fraction], *, forwards: bool
    ) -> Iterator[tuple[Fraction, list[Look]]]:
        """More and more of a span, until it is enough: of each reach, the looks up to so many seconds from a moment.

        They begin at the start of the span and go on beyond the moment, or else begin at its end and go back.
        """
        ...


@dataclass(frozen=True, slots=True)
class Decoded:
    """A recording; the pictures of each span are decoded once, and no more than are asked for."""

    path: Path

    def within(self, span: Span) -> list[Look]:
        """All of a span."""
        return [look(*each) for each in sampled(self.path, span, span.start)]

    def outwards(
        self, span: Span, moment: Fraction, reaches: Sequence[Fraction], *, forwards: bool
    ) -> Iterator[tuple[Fraction, list[Look]]]:
        """Picture by picture forwards, or one group of pictures before the other backwards."""
        if forwards:
            return _onwards(self.path, span, moment, list(reaches))
        return _backwards(self.path, span, moment, reaches, [])


@dataclass(frozen=True, slots=True)
class Remembered:
    """Looks at hand; what lies before them is decoded when it is asked for."""

    path: Path
    looks: Sequence[Look]

    def within(self, span: Span) -> list[Look]:
        """Those of a span."""
        return [each for each in self.looks if span.start <= each.time < span.end]

    def outwards(
        self, span: Span, moment: Fraction, reaches: Sequence[Fraction], *, forwards: bool
    ) -> Iterator[tuple[Fraction, list[Look]]]:
        """All at once forwards, and backwards from where they begin."""
        if forwards:
            return iter([(reaches[-1], self.within(span))])
        return _backwards(self.path, span, moment, reaches, self.within(span))


def _onwards(
    path: Path, span: Span, moment: Fraction, reaches: list[Fraction]
) -> Iterator[tuple[Fraction, list[Look]]]:
    looks: list[Look] = []
    for time, frame in sampled(path, span, span.start):
        if reaches[1:] and time >= moment + reaches[0]:
            yield reaches.pop(0), looks
        looks.append(look(time, frame))
    yield reaches[-1], looks


def _backwards(
    path: Path, span: Span, moment: Fraction, reaches: Sequence[Fraction], looks: list[Look]
) -> Iterator[tuple[Fraction, list[Look]]]:
    begin = looks[0].time if looks else span.end
    for reach in reaches:
        start = max(span.start, moment - reach)
        if start < begin:
            earlier = sampled(path, replace(span, start=start, end=begin), start, span.start)
            looks = [*(look(*each) for each in earlier), *looks]
            begin = looks[0].time if looks else begin
        yield reach, looks
