"""The overview of the page: what is read before the first step."""

import dataclasses

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Estimate
from procbuilder.model.ledger import Balance, Ledger
from procbuilder.publish import pagewords as words
from tests.publish.blocks import after, views
from tests.publish.sample_words import SCRIPT


def test_page_overview_names_identity_status_and_what_comes_first(edition: Edition) -> None:
    read_page = views(edition)
    assert read_page[""][:4] == [
        "P-014 – Trailer wheel hub – renew the bearings",
        "Trailer wheel hub – renew the bearings",
        "P-014 revision B Check the current revision before use",
        "DRAFT – not approved 2 problems must be settled before it may be approved",
    ]
    assert read_page["_overview"][:20] == [
        "Overview",
        "When the wheel rocks at the top or the hub runs hot after a short trip.",
        *("Item", "Single-axle trailer, unbraked, 750 kg"),
        *("Applies to", "25 mm stub axle, four-stud hub"),
        *("Not for", "braked hubs"),
        *("Status", "DRAFT – not approved"),
        *("Place", "stands"),
        *("People", "1"),
        *("Author", "K."),
        *("Whom to ask", "workshop foreman, extension 12"),
        "Handover note Study and self-test",
        "This screen",
    ]
    assert after(read_page["_overview"], "Keep the screen on", 2) == [words.PRIORITY, words.QUALIFIED]


def test_page_overview_names_who_may_do_what(edition: Edition) -> None:
    assert after(views(edition)["_overview"], "Who may do it", 2) == [
        "Reserved: step 9 is done by a licensed gas fitter",
        "Stops for a check: step 2, rock the trailer: it must not move on the stands – by the senior technician",
    ]


def test_page_lists_before_the_start_say_an_explicit_none(edition: Edition) -> None:
    assert after(views(edition)["_overview"], "Not included", 10) == [
        "None: there is nothing, and that is known.",
        "Tools",
        "2 x axle stand steps 1, 2",
        "flat bar step 3 said strip 0:44",
        "torque wrench step 8",
        "Supplies",
        "60 g bearing grease step 7",
        "Parts",
        "1 x bearing and seal kit new step 7",
        "1 x split pin new step 8",
    ]


def test_page_an_empty_list_is_not_taken_for_none(edition: Edition) -> None:
    lists = tuple(dataclasses.replace(one, lines=(), none=False) for one in edition.lists)
    assert after(views(dataclasses.replace(edition, lists=lists))["_overview"], "Conditions", 1) == [
        "Nothing is written here yet."
    ]


def test_page_without_tools_supplies_and_parts_says_so(edition: Edition) -> None:
    bare = dataclasses.replace(edition, tools=(), supplies=(), parts=())
    assert after(views(bare)["_overview"], "Tools", 5) == [
        *("None are listed.", "Supplies", "None are listed.", "Parts", "None are listed.")
    ]


def test_page_ledger_names_what_is_open_first_with_its_moment(edition: Edition) -> None:
    assert after(views(edition)["_overview"], "What was opened and closed", 6) == [
        "3 not in balance.",
        "dust cap still open off at step 3 (strip 1:09); 1 out, 0 back; tray 3",
        "M8 bolt still open off at step 4; closed at step 8; 2 out, 1 back",
        "hub nut closed but never opened slackened; closed at step 8; 0 out, 1 back",
        "wheel chock left open on purpose fitted for now at step 1 (strip 0:12); 1 out, 0 back; "
        "stays until the trailer is unhitched, K.",
        "hub closed off at step 5 (strip 2:20); closed at step 7",
    ]


@pytest.mark.parametrize(
    ("balances", "said"),
    [
        ((), "Nothing is taken off, slackened, fitted for now or put into another state."),
        ((Balance.CLOSED,), "Balanced: everything that was opened is closed again."),
        ((Balance.CLOSED, Balance.LEFT_OPEN), "Balanced but for what is left open on purpose."),
    ],
)
def test_page_ledger_says_so_when_it_balances(edition: Edition, balances: tuple[Balance, ...], said: str) -> None:
    balanced = dataclasses.replace(edition, ledger=Ledger(edition.ledger.having(*balances)))
    assert after(views(balanced)["_overview"], "What was opened and closed", 1) == [said]


def test_page_a_total_never_stands_without_its_basis(edition: Edition) -> None:
    blocks = views(edition)["_overview"]
    assert after(blocks, "How long it takes", 8) == [
        "Hands-on at least 0.5 h (a lower bound: not every step has a time of its own), waiting 10 min, one person, "
        "third time or later; from typed times (4 steps), 2 films (2 steps; a lower bound if cut) "
        "and no time known (5 steps).",
        "The technician states: 1.5 h.",
        "Quotation and booking Sheets to print", "Minutes of each step",
        "Step", "Minutes", "From",
        "1 Chock the other wheel in front and behind",
    ]  # fmt: skip
    nothing = Estimate(tuple(step for step in edition.estimate.steps if not step.likely))
    blocks = views(dataclasses.replace(edition, estimate=nothing))["_overview"]
    assert after(blocks, "How long it takes", 2) == [
        "Hands-on time is not known, one person; from no time known (5 steps).",
        "Quotation and booking Sheets to print",
    ]  # fmt: skip


def test_page_problems_come_worst_first_and_fold_after_five(edition: Edition) -> None:
    blocks = views(edition)["_overview"]
    listed = after(blocks, "Problems still open: 7", 8)
    assert listed[0] == (
        "stop the torque of hub nut is to be looked up, but it does not say where – "
        'write "- Torque: hub nut | value" procedure.md:90'
    )
    assert listed[5] == "2 more: 1 about what comes off and goes on, 1 about time"
    assert " ".join(block.split()[0] for block in listed) == "stop stop ask ask advice 2 advice advice"
    clean = views(dataclasses.replace(edition, problems=()))["_overview"]
    assert after(clean, "Problems still open: 0", 1) == ["None was found."]


def test_page_rest_of_the_overview_is_complete(edition: Edition) -> None:
    blocks = views(edition)["_overview"]
    assert after(blocks, "Dangers of the whole job", 3) == [
        "WARNING",
        "grease spatter from the pressed bearing: eye injury",
        "To avoid it: wear eye protection",
    ]
    assert after(blocks, "Findings and later checks", 2) == [
        "Finding: rust in the left wheel arch – watch – told the owner, no answer yet",
        "Later: check the wheel nuts again – after 50 km – owner told",
    ]
    key = [text for word, meaning in words.SIGNAL_MEANING.items() for text in (word.value, meaning)]
    assert after(blocks, "Signal words", 8) == key
    assert after(blocks, "Recordings", 2) == [
        "strip, 3:15, 1280 × 720",
        "refit, 3:36, 720 × 1280; the sound ends 130.0 s before the picture; "
        f"filmed in high dynamic range ({SCRIPT}); shown in the range of ordinary screens",
    ]
    assert blocks.count("9 Have the gas locker reconnected Done by a licensed gas fitter ✓ ticked") == 1
