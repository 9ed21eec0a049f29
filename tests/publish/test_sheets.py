"""The sheets: what stands on each, and that page and PDF say the same."""

import io
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis
from procbuilder.model.footage import Weakness
from procbuilder.model.ledger import Balance, Ledger
from procbuilder.model.timecode import Span
from procbuilder.publish import words
from procbuilder.publish.data import plain
from procbuilder.publish.html import page, sheets_page
from procbuilder.publish.pdf import sheets_pdf
from procbuilder.publish.sheets.blocks import CellLook, Cutouts, Fill, Pairs, Points, Sheet, Table, Text, Turns, numbers
from procbuilder.publish.sheets.every import sheets
from tests.publish.blocks import TEMPLATES, read
from tests.publish.sheet import EPOCH, pages, solid, with_step

UNREAD = {
    "marks",
    "marked",
    "labels",
    "id",
    "kind",
    "look",
    "file",
    "source",
    "reason",
    "origin",
    "recording",
    "original",
    "shape",
    "state",
    "alt",
    "caption",
    "legend",
    "words",
}
"""Keys whose text is not read as such on a sheet."""


def _read(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from (text for key, inner in value.items() if key not in UNREAD for text in _read(inner))
    elif isinstance(value, list):
        yield from (text for inner in value for text in _read(inner))


@pytest.fixture(scope="module")
def printed_sheets(edition: Edition, media: Path) -> bytes:
    return sheets_pdf(edition, templates=TEMPLATES, media=media, epoch=EPOCH).data


@pytest.fixture(scope="module")
def made(edition: Edition) -> dict[str, Sheet]:
    return {sheet.id: sheet for sheet in sheets(edition)}


def rows(sheet: Sheet, which: int = 0) -> list[list[str]]:
    table = [block for block in sheet.blocks if isinstance(block, Table)][which]
    return [[cell.text or cell.look.value for cell in row] for row in table.rows]


def points(sheet: Sheet) -> list[str]:
    return [line for block in sheet.blocks if isinstance(block, Points) for line in block.lines]


def test_there_is_a_sheet_for_each_need_in_the_order_of_the_job(made: dict[str, Sheet]) -> None:
    assert list(made) == [
        "tools", "order", "tightening", "trays", "card", "ledger", "findings", "breakdown", "sign-off", "filming",
    ]  # fmt: skip


def test_page_and_pdf_say_the_same(edition: Edition, printed_sheets: bytes) -> None:
    """Every text of every sheet stands in both."""
    page_text = solid(" ".join(read(sheets_page(edition, templates=TEMPLATES))[""]))
    print_text = solid(" ".join(pages(printed_sheets)))
    texts = [text for sheet in sheets(edition) for text in _read(plain(sheet)) if text]
    assert len(texts) > 200
    assert [text for text in texts if solid(text) not in page_text] == []
    assert [text for text in texts if solid(text) not in print_text] == []


def test_each_sheet_begins_on_a_page_of_its_own_and_stands_in_the_outline(
    edition: Edition, printed_sheets: bytes
) -> None:
    titles = [sheet.title for sheet in sheets(edition)]
    outline = PdfReader(io.BytesIO(printed_sheets)).outline
    inner = next(entry for entry in outline if isinstance(entry, list))
    assert [entry.title for entry in inner if not isinstance(entry, list)] == titles
    starts = [page for page in pages(printed_sheets)[1:] if any(f"DRAFT {title}" in page for title in titles)]
    assert len(starts) == len(titles)


def test_tools_are_counted_before_and_after(made: dict[str, Sheet]) -> None:
    assert rows(made["tools"]) == [
        ["blank", "blank", "axle stand", "2 x", "1"],
        ["blank", "blank", "flat bar", "plain", "3"],
        ["blank", "blank", "torque wrench", "plain", "8"],
    ]
    [count] = [block for block in made["tools"].blocks if isinstance(block, Fill)]
    assert count.labels == ("Tools before", "Tools after", "Initials")
    assert rows(made["tools"], 2) == [
        ["tick", "bearing and seal kit, new", "1 x", "7"], ["tick", "split pin, new", "1 x", "8"],
    ]  # fmt: skip


def test_without_a_tool_the_sheet_does_not_say_that_none_is_needed(edition: Edition) -> None:
    sheet = sheets(replace(edition, tools=()))[0]
    assert Text(words.NO_TOOL, CellLook.UNSURE) in sheet.blocks


def test_what_to_order_leaves_the_number_to_the_makers_data(made: dict[str, Sheet], edition: Edition) -> None:
    assert rows(made["order"])[0] == ["Part", "bearing and seal kit, new", "1 x", "blank", "blank", "tick"]
    bare = replace(edition, parts=(replace(edition.parts[0], quantity=None),), supplies=())
    assert rows(sheets(bare)[1]) == [["Part", "bearing and seal kit, new", "not known", "blank", "blank", "tick"]]


def test_tightening_has_every_torque_and_a_blank_for_each_missing_one(made: dict[str, Sheet]) -> None:
    assert rows(made["tightening"]) == [
        [
            "keeper bolts",
            "8",
            "15 N·m then 30 N·m (11 lbf·ft then 22 lbf·ft)",
            "cross · dry threads",
            "from D1 p. 4",
            "blank",
        ],
        ["hub nut", "8", "No value given. D1, section 3", "weight on wheels · stage 1", "blank", "blank"],
        ["wheel nuts", "8", f"No value given. {words.LOOK_UP}", "plain", "blank", "blank"],
        ["cap screw", "8", "4 N·m", "plain", "from memory, not confirmed", "blank"],
    ]


def test_turns_are_drawn_and_told_in_words(made: dict[str, Sheet]) -> None:
    turns = [block for block in made["tightening"].blocks if isinstance(block, Turns)]
    assert [(block.caption, block.alt) for block in turns] == [
        ("keeper bolts: 4 fasteners, in this order",
         "A circle of 4 fasteners; clockwise from the top they are tightened as number 1, 3, 2, 4."),
        ("cap screw: 6 fasteners, in this order",
         "2 rows of 3 fasteners; row by row they are tightened as number 3, 1, 5, 6, 2, 4."),
    ]  # fmt: skip


def test_trays_and_bags_have_cards(made: dict[str, Sheet]) -> None:
    cards, labels = (block.cutouts for block in made["trays"].blocks if isinstance(block, Cutouts))
    assert [(card.title, card.lines) for card in cards] == [("Tray 3", (("Step 3", "dust cap"),))]
    assert cards[0].figure is not None
    assert cards[0].figure.still.file == "dust-cap.jpg"
    assert [(card.title, card.lines) for card in labels] == [
        ("dust cap", (("Off at step", "3"), ("Back on at step", "not said"), ("Tray", "3"))),
        ("2 x M8 bolt, 13 mm", (("Holds", "keeper"), ("Off at step", "4"), ("Back on at step", "8"))),
    ]


def test_the_breakdown_has_steps_key_points_and_reasons(made: dict[str, Sheet]) -> None:
    assert rows(made["breakdown"])[:3] == [
        ["2", "Raise the axle and set both stands under it",
         "Hold point: rock the trailer: it must not move on the stands", "plain"],
        ["3", "Prise off the dust cap", "turn the hub a little after each push", "a bent cap lets water in"],
        ["plain", "plain", "keep the bar flat", "plain"],
    ]  # fmt: skip
    assert Text("Steps without a key point are left out here: 1, 4, 5, 7–11.") in made["breakdown"].blocks
    assert points(made["breakdown"]) == list(words.WAYS_OF_TEACHING)


def test_the_breakdown_stays_on_one_page(edition: Edition, media: Path) -> None:
    """As many key points as the longest job on record here has steps."""
    step = edition.steps[2]
    many = with_step(edition, 3, key_points=step.key_points * 20)
    told = pages(sheets_pdf(many, templates=TEMPLATES, media=media, epoch=EPOCH).data)
    assert sum("turn the hub a little after each push" in page for page in told) == 1


def test_the_sign_off_names_levels_hold_points_and_reserved_steps(made: dict[str, Sheet]) -> None:
    assert [row[0] for row in rows(made["sign-off"])] == ["1", "2", "3", "4", "5", "6"]
    assert rows(made["sign-off"])[3][1:3] == [
        "supervised: did it all, checked at the hold points", "date, job, supervisor, steps failed",
    ]  # fmt: skip
    assert rows(made["sign-off"], 1) == [
        ["2", "rock the trailer: it must not move on the stands", "the senior technician", "blank"],
        ["9", "leak test passed and written down", "the gas fitter", "blank"],
    ]
    assert rows(made["sign-off"], 2) == [["9", "Have the gas locker reconnected", "a licensed gas fitter", "blank"]]


def test_the_card_has_all_that_a_step_says_where_no_phone_may_be(made: dict[str, Sheet]) -> None:
    [cards] = [block.cutouts for block in made["card"].blocks if isinstance(block, Cutouts)]
    [card] = cards
    assert card.title == "6 Wipe the stub axle clean"
    assert card.lines == (
        ("DANGER", "the trailer can drop off the stands – crushed, will kill – "
         "keep both stands under the axle, nobody underneath"),
        ("Leave in place", "2 x axle stand; wheel chock"),
        ("Supply", "lint-free rag; brake cleaner, 50 ml"),
        ("Key point", "wipe away from the seat – grit cuts the new bearing"),
    )  # fmt: skip
    assert [sign.number for sign in card.signs] == ["W019", "P024"]


def test_no_sheet_tells_the_method_of_a_reserved_step(edition: Edition, media: Path) -> None:
    fire = with_step(edition, 9, no_phone="gas can leak")
    html = sheets_page(fire, templates=TEMPLATES)
    print_text = " ".join(pages(sheets_pdf(fire, templates=TEMPLATES, media=media, epoch=EPOCH).data))
    assert "Have the gas locker reconnected" in html
    assert "secret" not in html.casefold() + print_text.casefold()
    assert "Stop: done by" in print_text


def test_sheets_that_a_job_does_not_need_are_left_out(edition: Edition) -> None:
    bare = with_step(replace(edition, torques=(), trays=()), 6, no_phone="")
    assert {"tightening", "trays", "card"}.isdisjoint(sheet.id for sheet in sheets(bare))


def test_the_ledger_has_what_is_unsettled_first_and_pairs_of_pictures(made: dict[str, Sheet]) -> None:
    assert made["ledger"].blocks[0] == Text(
        "Not balanced: 3 of 5 still open, never opened, or closed only by assumption.", CellLook.UNSURE
    )
    assert rows(made["ledger"])[:2] == [
        ["dust cap", "off", "step 3, strip 1:09", "–", "Still open; 0 of 1 closed"],
        ["M8 bolt", "off", "step 4", "step 8", "Still open; 1 of 2 closed"],
    ]
    assert rows(made["ledger"])[-1] == ["hub", "off", "step 5, strip 2:20", "step 7", "Closed"]
    [pairs] = [block.pairs for block in made["ledger"].blocks if isinstance(block, Pairs)]
    assert [(pair.title, pair.before_words, pair.after_words) for pair in pairs] == [
        ("hub", "As found, step 5", "Done, step 7")
    ]
    assert (pairs[0].before.still.file, pairs[0].after.still.file) == ("keeper-found.jpg", "keeper-found.jpg")


def test_a_balanced_ledger_says_so(edition: Edition) -> None:
    closed = replace(edition, ledger=Ledger(edition.ledger.having(Balance.CLOSED, Balance.LEFT_OPEN)))
    [sheet] = [sheet for sheet in sheets(closed) if sheet.id == "ledger"]
    assert sheet.blocks[0] == Text(words.BALANCED, CellLook.STRONG)


def test_findings_have_room_for_the_answer(made: dict[str, Sheet]) -> None:
    assert rows(made["findings"])[0] == [
        "Finding", "rust in the left wheel arch", "watch · told the owner, no answer yet", "blank",
    ]  # fmt: skip


def test_three_things_to_film_next_time_the_dangerous_ones_first(made: dict[str, Sheet]) -> None:
    assert points(made["filming"])[-3:] == [
        "step 2 was not filmed: Raise the axle and set both stands under it",
        "step 8 was not filmed: Fit the keeper and tighten its bolts crosswise",
        "step 4 was not filmed: Draw the split pin and take the keeper off",
    ]
    assert "step 4: count aloud – 2 x M8 bolt, 13 mm" in points(made["filming"])
    assert "step 8: say the torque and where it stands – hub nut" in points(made["filming"])


def test_weak_pictures_and_cuts_are_worth_filming_again(edition: Edition) -> None:
    filmed = edition
    for step in edition.steps:
        figures = step.figures or edition.steps[0].figures
        filmed = with_step(filmed, step.number, spans=(Span("strip", Fraction(0), Fraction(9)),), figures=figures)
    [last] = [sheet for sheet in sheets(filmed) if sheet.id == "filming"]
    assert Text(words.FILM_ENOUGH) in last.blocks
    figure = edition.steps[0].figures[0]
    weak = replace(figure, still=replace(figure.still, weak=(Weakness.DARK, Weakness.BLURRED)))
    filmed = with_step(with_step(filmed, 5, figures=(weak,)), 7, basis=Basis.CUT)
    filmed = with_step(filmed, 6, figures=())
    [last] = [sheet for sheet in sheets(filmed) if sheet.id == "filming"]
    assert points(last)[-3:] == [
        "step 6 has no picture: Wipe the stub axle clean",
        "step 5 has a weak picture (dark, blurred): Pull the hub off the stub axle",
        "step 7 was filmed with cuts, so that its time is not known: "
        "Slide the hub with its new bearings onto the stub axle",
    ]


def test_numbers_of_steps_are_drawn_together() -> None:
    assert [numbers(steps) for steps in ([], [3], [1, 2], [1, 2, 3, 5, 7, 8])] == ["", "3", "1, 2", "1–3, 5, 7, 8"]


def test_the_page_leads_to_the_sheets_and_nothing_typed_can_act_there(edition: Edition) -> None:
    assert 'href="sheets.html"' in page(edition, templates=TEMPLATES)
    html = sheets_page(edition, templates=TEMPLATES)
    assert "<script" not in html
    assert all(f'href="#{sheet.id}"' in html for sheet in sheets(edition))


def test_same_edition_gives_the_same_bytes(edition: Edition, media: Path, printed_sheets: bytes) -> None:
    assert sheets_pdf(edition, templates=TEMPLATES, media=media, epoch=EPOCH).data == printed_sheets


def test_a_character_without_a_letter_is_told_on_the_sheets_too(edition: Edition, media: Path) -> None:
    odd = replace(edition, title="Hub \U0001f527")
    made = sheets_pdf(odd, templates=TEMPLATES, media=media, epoch=EPOCH)
    assert made.unprintable == ("\U0001f527",)
    assert "□ stands for a character that this sheet has no letter for: U+1F527" in pages(made.data)[0]
