"""Two thousand steps are followed in well under two seconds, with every second one in a branch of its own, too."""

import time

import pytest

from procbuilder.infer.by_words import taken_off_by_words
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.torques import torques
from procbuilder.infer.trays import trays
from procbuilder.model.ledger import Balance
from tests.infer.written import written

HALF = 1000


def many(*, branches: bool, fields: bool) -> str:
    parts = ["## Work\n"]
    for verb, moves in (
        ("Take off", "- Off: cover {n} | by: 2 x M8 bolt {n}, 13 mm | tray: {n}\n- Slacken: nut {n}\n"),
        ("Fit", "- On: cover {n}\n- Torque: nut {n} | 20 N·m | from: D1\n"),
    ):
        for n in range(HALF):
            branch = f"- Only if: variant {n}\n" if branches and n % 2 else ""
            parts.append(f"### {verb} the cover number {n}\n\n{moves.format(n=n) if fields else ''}{branch}\n")
    return "".join(parts)


@pytest.mark.parametrize(
    ("branches", "fields"), [(False, True), (True, True), (False, False)], ids=["plain", "branches", "words"]
)
def test_two_thousand_steps(*, branches: bool, fields: bool) -> None:
    procedure, lexicon = written(many(branches=branches, fields=fields)), load()
    begin = time.process_time()
    book = ledger(procedure, lexicon)
    trays(book)
    torques(procedure, lexicon)
    taken_off_by_words(procedure)
    seconds = time.process_time() - begin
    print(f"{len(procedure.steps)} steps: {seconds:.2f} s")
    assert seconds <= 2
    assert len(book.entries) == (2 * HALF if fields else 0)
    assert {entry.balance for entry in book.entries} <= {Balance.CLOSED}
