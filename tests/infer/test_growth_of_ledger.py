"""Two thousand steps are followed without a blow-up, with every second one in a branch of its own, too."""

from collections.abc import Callable

import pytest

from procbuilder.infer.by_words import taken_off_by_words
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.torques import torques
from procbuilder.infer.trays import trays
from procbuilder.model.ledger import Balance
from tests.growth import no_blow_up
from tests.infer.large import steps_of
from tests.infer.written import written


@pytest.mark.parametrize(
    ("branches", "fields"), [(False, True), (True, True), (False, False)], ids=["plain", "branches", "words"]
)
def test_two_thousand_steps(*, branches: bool, fields: bool) -> None:
    lexicon = load()

    def prepare(half: int) -> Callable[[], object]:
        procedure = written(steps_of(half, branches=branches, fields=fields))

        def work() -> None:
            book = ledger(procedure, lexicon)
            trays(book, lexicon)
            torques(procedure, lexicon)
            taken_off_by_words(procedure)
            assert len(book.entries) == (2 * half if fields else 0)
            assert {entry.balance for entry in book.entries} <= {Balance.CLOSED}

        return work

    no_blow_up(prepare, 1000)
