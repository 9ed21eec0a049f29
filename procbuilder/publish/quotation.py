"""What an office quotes and books from: scope, labour, parts, and what needs approval; page and PDF say the same."""

from collections.abc import Iterable
from dataclasses import dataclass

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Estimate, Extra, Price
from procbuilder.publish import words
from procbuilder.publish.language import Language
from procbuilder.publish.speaker import spoken
from procbuilder.publish.spoken import Spoken
from procbuilder.publish.terms import minutes
from procbuilder.publish.timewords import labour, span
from procbuilder.publish.told import Told, ToldItem

UNKNOWN = words.NOT_KNOWN
NO_PRICE = "No price: the workshop file names no rate."


@dataclass(frozen=True, slots=True)
class Quotation:
    """The rows of the quotation as they are read."""

    labour: tuple[str, ...]
    included: tuple[str, ...]
    not_included: tuple[str, ...]
    items: tuple[tuple[str, str, str], ...]
    """(kind, thing, quantity)"""
    extras: tuple[tuple[str, str], ...]
    """(condition, minutes) of what is done only after approval."""
    findings: tuple[tuple[str, str], ...]
    """(finding, what is on record of its approval)"""


def quotation(edition: Edition) -> Quotation:
    """The quotation of an edition. Nothing stands in it that is not in the edition."""
    told = spoken(edition)
    estimate, language = edition.estimate, told.language
    kinds = ((words.PART, told.parts), (words.SUPPLY, told.supplies))
    return Quotation(
        labour=(labour(estimate, language), _price(estimate, language)),
        included=_listed(told, "Included"),
        not_included=_listed(told, "Not included"),
        items=tuple(_item(language.text(kind), line, language) for kind, lines in kinds for line in lines),
        extras=tuple((extra.condition, _minutes(extra, language)) for extra in estimate.extras),
        findings=tuple(_findings(told.closing)),
    )


def _listed(told: Spoken, name: str) -> tuple[str, ...]:
    return tuple(line.text for each in told.lists if each.name == name for line in each.lines)


def _item(kind: str, line: ToldItem, language: Language) -> tuple[str, str, str]:
    name = f"{line.name}, {language.text(words.NEW)}" if line.new else line.name
    return kind, name, line.quantity or language.text(UNKNOWN)


def _minutes(extra: Extra, language: Language) -> str:
    return minutes(extra.minutes) or language.text(UNKNOWN)


def _findings(closing: Iterable[Told]) -> Iterable[tuple[str, str]]:
    for entry in closing:
        if entry.name == "Finding":
            yield entry.text, "; ".join(entry.extra)


def _price(estimate: Estimate, language: Language) -> str:
    price: Price | None = estimate.price
    if price is None:
        return language.text(NO_PRICE)
    return language.text(
        "Labour at {rate} {currency} an hour (workshop file): {price} {currency}.",
        rate=language.number(price.rate), currency=price.currency, price=span(price.low, price.high, language),
    )  # fmt: skip
