"""Bags and trays: what comes off and is kept, with the steps of its way back."""

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.trays import trays
from tests.infer.written import written


def lines(text: str) -> list[tuple[str, str, str, int, tuple[int, ...]]]:
    """Tray, contents, what they hold, and the steps of each line."""
    told = trays(ledger(written(text), load()), load())
    return [(line.tray, line.contents.words, line.holds, line.off, line.on) for line in told]


def test_fasteners_go_into_the_tray_of_their_part() -> None:
    text = """
    ## Work
    ### Unbolt the keeper
    - Off: keeper | by: 2 x M8 bolt, 13 mm; dowel | tray: 3
    ### Fit the keeper
    - On: keeper
    """
    assert lines(text) == [
        ("3", "2 x M8 bolt, 13 mm", "keeper", 1, (2,)),
        ("3", "dowel", "keeper", 1, (2,)),
    ]


def test_fasteners_on_their_own_are_kept_even_without_a_named_tray() -> None:
    text = """
    ## Work
    ### Take off the nuts
    - Off: 4 x wheel nut
    - Off: cover
    ### Fit one nut
    - On: 1 x wheel nut
    """
    assert lines(text) == [("", "4 x wheel nut", "", 1, (2,))]


def test_what_is_thrown_away_goes_into_no_tray() -> None:
    assert lines("## Work\n### Pull the pin\n- Off: split pin, scrap | tray: 2\n") == []


def test_fasteners_of_which_some_stay_off_are_still_one_line() -> None:
    text = """
    ## Work
    ### Unbolt the keeper
    - Off: keeper | by: 6 x bolt
    ### Fit the keeper
    - On: keeper | by: 5 x bolt
    """
    assert lines(text) == [("", "6 x bolt", "keeper", 1, (2,))]
