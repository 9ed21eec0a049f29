"""All sheets of an edition, in the order of the job."""

from procbuilder.model.edition import Edition
from procbuilder.publish import words
from procbuilder.publish.language import language_of, words_in
from procbuilder.publish.sheets.after import findings, ledger
from procbuilder.publish.sheets.before import order, tools
from procbuilder.publish.sheets.blocks import Sheet
from procbuilder.publish.sheets.card import card
from procbuilder.publish.sheets.filming import filming
from procbuilder.publish.sheets.teaching import breakdown, sign_off
from procbuilder.publish.sheets.tightening import tightening
from procbuilder.publish.sheets.trays import trays

MAKERS = (tools, order, tightening, trays, card, ledger, findings, breakdown, sign_off, filming)


def sheets(edition: Edition) -> tuple[Sheet, ...]:
    """Those that this job needs: without torques, for instance, there is no tightening sheet."""
    said = words_in(words, language_of(edition.language))
    return tuple(sheet for make in MAKERS if (sheet := make(edition, said)))
