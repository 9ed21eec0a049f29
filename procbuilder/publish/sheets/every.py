"""All sheets of an edition, in the order of the job."""

from procbuilder.model.edition import Edition
from procbuilder.publish import words
from procbuilder.publish.language import words_in
from procbuilder.publish.sheets.after import findings, ledger
from procbuilder.publish.sheets.before import order, tools
from procbuilder.publish.sheets.blocks import Sheet
from procbuilder.publish.sheets.card import card
from procbuilder.publish.sheets.filming import filming
from procbuilder.publish.sheets.teaching import breakdown, sign_off
from procbuilder.publish.sheets.tightening import tightening
from procbuilder.publish.sheets.trays import trays
from procbuilder.publish.speaker import spoken

MAKERS = (tools, order, tightening, trays, card, ledger, findings, breakdown, sign_off, filming)


def sheets(edition: Edition) -> tuple[Sheet, ...]:
    """Those that this job needs: without torques, for instance, there is no tightening sheet."""
    told = spoken(edition)
    said = words_in(words, told.language)
    return tuple(sheet for make in MAKERS if (sheet := make(told, said)))
