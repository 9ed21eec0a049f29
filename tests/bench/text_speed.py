"""How fast texts are worked out: ``python -m tests.bench.text_speed``.

Processor seconds, beside those that markdown-it-py takes to parse the source of the two thousand steps once.
"""

import time
from collections.abc import Callable
from functools import partial

from markdown_it import MarkdownIt
from rich.console import Console
from rich.table import Table

from procbuilder.infer.by_words import taken_off_by_words
from procbuilder.infer.dangers import standing
from procbuilder.infer.hearing.draft import draft
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.order import disorders
from procbuilder.infer.proposed import noticed
from procbuilder.infer.torques import torques
from procbuilder.infer.trays import trays
from tests.infer.large import BY_EXPRESSIONS, HOSTILE, repeated, steps_of, told_for
from tests.infer.written import HEAD, written

_STEPS = steps_of(1000, branches=True, fields=True)


def main() -> None:
    """Print the table."""
    reference = _seconds(partial(MarkdownIt().parse, HEAD + _STEPS))
    table = Table("worked out", "s", "times parsing", "limit, s")
    for name, took, limit in (
        ("two thousand steps: ledger, trays, torques, order, dangers", _two_thousand_steps(), 2.0),
        ("three hours of narration, drafted", _three_hours(), 2.0),
        ("worst expression on 100 kB of hostile text", _worst_expression(), 0.5),
    ):
        table.add_row(name, f"{took:.2f}", f"{took / reference:.1f}", f"{limit}")
    Console().print(table)


def _two_thousand_steps() -> float:
    procedure, lexicon = written(_STEPS), load()

    def work() -> None:
        trays(ledger(procedure, lexicon), lexicon)
        torques(procedure, lexicon)
        taken_off_by_words(procedure)
        disorders(procedure, lexicon)
        noticed(procedure, standing(procedure, lexicon), lexicon)

    return _seconds(work)


def _three_hours() -> float:
    return _seconds(partial(draft, [told_for(3 * 3600)]))


def _worst_expression() -> float:
    texts = [repeated(words, 100_000) for words in HOSTILE.values()]
    return max(_seconds(partial(work, text)) for work in BY_EXPRESSIONS.values() for text in texts)


def _seconds(work: Callable[[], object]) -> float:
    begin = time.process_time()
    work()
    return time.process_time() - begin


if __name__ == "__main__":
    main()
