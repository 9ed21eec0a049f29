"""A rich edition for the tests of everything that is published: each kind of field is filled once."""

import dataclasses
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from procbuilder.model.edition import Edition, ItemLine, TrayLine
from procbuilder.model.footage import Oddity, Recording, Remark
from procbuilder.model.origin import Origin, OriginKind, Place
from procbuilder.model.quantity import Item, Quantity
from procbuilder.model.signal import Signal
from tests.publish.sample_media import write_media
from tests.publish.sample_steps import hazard, pairs, sections, torques
from tests.publish.sample_sums import estimate, ledger, lists, problems
from tests.publish.sample_words import SCRIPT
from tests.publish.typed import typed

ONE = Quantity(Decimal(1))


def sample_edition(media: Path) -> Edition:
    """Write the media files and return the edition that names them."""
    write_media(media)
    return Edition(
        title="Trailer wheel hub – renew the bearings",
        number="P-014",
        revision="B",
        status="draft",
        item="Single-axle trailer, unbraked, 750 kg",
        applies_to="25 mm stub axle, four-stud hub",
        not_for="braked hubs",
        author="K.",
        work_place="stands",
        people="1",
        ask="workshop foreman, extension 12",
        language="en-GB",
        intro=("When the wheel **rocks at the top** or the hub runs hot after a short trip.",),
        hazards=(
            hazard(Signal.WARNING, "grease spatter from the pressed bearing", "eye injury", "wear eye protection"),
        ),
        lists=lists(),
        tools=(
            ItemLine("axle stand", Quantity(Decimal(2)), False, (1, 2)),
            ItemLine("flat bar", None, False, (3,), Origin(OriginKind.SAID, "strip", Fraction(44))),
            ItemLine("torque wrench", None, False, (8,)),
        ),
        supplies=(ItemLine("bearing grease", Quantity(Decimal(60), "g"), False, (7,)),),
        parts=(
            ItemLine("bearing and seal kit", Quantity(Decimal(1)), True, (7,)),
            ItemLine("split pin", Quantity(Decimal(1)), True, (8,)),
        ),
        trays=(
            TrayLine("3", Item("dust cap", Place("procedure.md", 40)), "", 3, ()),
            TrayLine("", Item("M8 bolt, 13 mm", Place("procedure.md", 50), Quantity(Decimal(2))), "keeper", 4, (8,)),
        ),
        sections=sections(),
        torques=torques(),
        ledger=ledger(),
        pairs=pairs(),
        estimate=estimate(),
        closing=(
            typed("Finding: rust in the left wheel arch | watch | told the owner, no answer yet"),
            typed("Later: check the wheel nuts again | after 50 km | owner told"),
        ),
        problems=problems(),
        recordings=(
            Recording("strip", "recordings/hub-strip.mp4", "0" * 64, Fraction(195), 1280, 720, codec="h264"),
            Recording(
                "refit",
                "recordings/hub-refit.mp4",
                "1" * 64,
                Fraction(4321, 20),
                720,
                1280,
                rotation=270,
                remarks=(Remark(Oddity.SOUND_ENDS_EARLY, (Fraction(130),)), Remark(Oddity.HIGH_RANGE, names=(SCRIPT,))),
            ),
        ),
    )


def changed_step(edition: Edition, name: str, **changes: object) -> Edition:
    """The edition with one step changed."""
    sections = tuple(
        dataclasses.replace(
            section,
            steps=tuple(
                dataclasses.replace(step, **changes) if step.id == name else step  # type: ignore[arg-type]
                for step in section.steps
            ),
        )
        for section in edition.sections
    )
    return dataclasses.replace(edition, sections=sections)
