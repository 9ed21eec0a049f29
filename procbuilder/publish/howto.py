"""The procedure for machines: a schema.org HowTo, as JSON-LD in the page."""

from collections.abc import Callable, Iterable
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.footage import Clip
from procbuilder.publish.pagewords import PRIORITY
from procbuilder.publish.speaker import spoken
from procbuilder.publish.spoken import SpokenSection, SpokenStep
from procbuilder.publish.told import ToldItem

BEGINS_WORK = {"Off", "Slacken"}
"""With the first of these the preparing is over and the work begins."""

Address = Callable[[str], str]
"""Where a media file is found from the page; empty when it is left out."""


def howto(edition: Edition, *, still: Address, clip: Address) -> dict[str, Any]:
    """The edition as a HowTo of schema.org; keys without a value are left out.

    ``tool`` stays on the item's side of the bench, ``supply`` is used up or stays on the item. Times are given only
    when every step has its own; the preparing is all that comes before something is taken off or slackened, so that
    ``totalTime`` = ``prepTime`` + ``performTime``. A reserved step tells who does it, never how.
    """

    told = spoken(edition)

    def step(each: SpokenStep) -> dict[str, Any]:
        return _step(each, still, clip)

    return _filled({
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": edition.title,
        "identifier": edition.number,
        "version": edition.revision,
        "inLanguage": edition.language,
        "creativeWorkStatus": told.status_words or edition.status,
        "about": edition.item,
        "description": " ".join(edition.intro),
        "usageInfo": told.language.text(PRIORITY),
        **_times(edition),
        "tool": [_thing("HowToTool", line) for line in told.tools],
        "supply": [_thing("HowToSupply", line) for line in (*told.parts, *told.supplies)],
        "step": [_section(section, step) for section in told.sections if section.steps],
    })  # fmt: skip


def _section(section: SpokenSection, step: Callable[[SpokenStep], dict[str, Any]]) -> dict[str, Any]:
    return {"@type": "HowToSection", "name": section.title, "itemListElement": [step(each) for each in section.steps]}


def _step(step: SpokenStep, still: Address, clip: Address) -> dict[str, Any]:
    figure = step.figures[0] if step.figures and not step.reserved else None
    image = still(figure.still.file) if figure else ""
    film = None if step.reserved else step.clip
    return _filled({
        "@type": "HowToStep",
        "position": step.number,
        "name": step.command,
        "text": step.stop if step.reserved else " ".join((step.command, *step.prose)),
        "url": f"#{step.id}",
        "image": _filled({"@type": "ImageObject", "contentUrl": image, "caption": figure.alt}) if figure else None,
        "video": _film(step, film, clip(film.file), image) if film else None,
    })  # fmt: skip


def _film(step: SpokenStep, film: Clip, address: str, image: str) -> dict[str, Any] | None:
    if not address:
        return None
    seconds = f"{Decimal(film.seconds.numerator) / Decimal(film.seconds.denominator):.1f}"
    return _filled({
        "@type": "VideoObject", "name": step.command, "contentUrl": address, "thumbnailUrl": image,
        "duration": f"PT{seconds.removesuffix('.0')}S", "width": film.width, "height": film.height,
    })  # fmt: skip


def _thing(kind: str, line: ToldItem) -> dict[str, Any]:
    return _filled({"@type": kind, "name": line.name, "requiredQuantity": line.quantity})


def _times(edition: Edition) -> dict[str, str]:
    estimate = edition.estimate
    if estimate.lower_bound or not estimate.likely:
        return {}
    apart = {time.step for time in estimate.steps if time.extra}
    minutes = {time.step: time.likely for time in estimate.steps if not time.extra}
    before = _before_opening(step for step in edition.steps if step.id not in apart)
    preparing = _whole(sum((minutes.get(name, Decimal(0)) for name in before), Decimal(0)))
    total = _whole(sum(minutes.values(), Decimal(0)) + estimate.waiting)
    return {
        "prepTime": duration(preparing),
        "performTime": duration(total - preparing),
        "totalTime": duration(total),
    }


def _before_opening(steps: Iterable[EditionStep]) -> list[str]:
    before: list[str] = []
    for step in steps:
        if any(move.name in BEGINS_WORK for move in step.moves):
            break
        before.append(step.id)
    return before


def _whole(minutes: Decimal) -> int:
    return int(minutes.quantize(Decimal(1), ROUND_HALF_UP))


def duration(minutes: int) -> str:
    """Whole minutes as an ISO 8601 duration: ``PT1H42M``, ``PT5M``, ``PT0M``."""
    hours, rest = divmod(minutes, 60)
    return "PT" + (f"{hours}H" if hours else "") + (f"{rest}M" if rest or not hours else "")


def _filled(record: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in record.items() if value not in ("", None, [])}
