"""The page as text: what stands in it, in which order, and that nothing typed can run."""

import base64
import dataclasses
import re
import shutil
from fractions import Fraction
from pathlib import Path

import pytest
from jinja2 import UndefinedError

from procbuilder.model.edition import Edition
from procbuilder.model.footage import Clip
from procbuilder.model.ledger import Balance, Ledger
from procbuilder.model.worked import Estimate, Standing
from procbuilder.publish import words
from procbuilder.publish.csp import digest
from procbuilder.publish.html import page, phone
from tests.publish.blocks import read
from tests.publish.sample import SCRIPT, sample_edition

TEMPLATES = Path(__file__).parents[2] / "templates"
STILL_DANGEROUS = (
    "Still dangerous: DANGER the trailer can drop off the stands – keep both stands under the axle, "
    "nobody underneath (while: trailer raised)"
)
LEAVE = "Leave in place: 2 x axle stand; wheel chock"
ASK = "Something does not match? Stop and ask: workshop foreman, extension 12"
RUNNING = "P-014 · revision B · DRAFT – not approved"


@pytest.fixture(scope="module")
def media(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("edition") / "media"


@pytest.fixture(scope="module")
def edition(media: Path) -> Edition:
    return sample_edition(media)


def views(edition: Edition) -> dict[str, list[str]]:
    return read(page(edition, templates=TEMPLATES))


def changed_step(edition: Edition, name: str, **changes: object) -> Edition:
    """The edition with one step changed."""
    sections = tuple(
        dataclasses.replace(
            section,
            steps=tuple(
                dataclasses.replace(step, **changes) if step.id == name else step  # type: ignore[arg-type]
                for step in section.steps
            ),
        )
        for section in edition.sections
    )
    return dataclasses.replace(edition, sections=sections)


def after(blocks: list[str], title: str, count: int) -> list[str]:
    at = blocks.index(title) + 1
    return blocks[at : at + count]


def test_page_a_step_reads_in_the_order_in_which_it_is_worked(edition: Edition) -> None:
    """Where we are, standing dangers, own dangers, command, facts, picture, words; nothing else."""
    assert views(edition)["dust-cap"] == [
        RUNNING,
        "Step 3 of 11 · Strip",
        STILL_DANGEROUS,
        LEAVE,
        "CAUTION",
        "the bar can slip: cut hand",
        "To avoid it: push away from you, other hand clear",
        "Prise off the dust cap",
        "Wear",
        "eye protection",
        "gloves from memory, not checked",
        "Tool",
        "flat bar said strip 0:44",
        "[picture: dust cap started evenly all round]",
        "[clip: media/dust-cap.mp4]",
        "Show the picture",
        "Cap started evenly all round",
        "start here",
        "then here",
        "done, seen strip 0:42",
        "[picture: rim of the cap from the side]",
        "The rim from the side",
        "detail, seen strip 0:42",
        "Work round the rim with the flat bar, a little at a time.",
        "first the top",
        "then the sides",
        '<script>alert(1)</script> and #import "x" and $a$',
        "Key points",
        "turn the hub a little after each push – because a bent cap lets water in",
        "keep the bar flat said strip 0:51",
        "What opens and closes",
        "Off: dust cap – tray: 3",
        "filmed: strip 0:42-1:15",
        ASK,
        "Step 3 is done",
        words.RECORD,
    ]


def test_page_dangers_stand_worst_first_and_before_hold_and_command(edition: Edition) -> None:
    blocks = views(edition)["raise"]
    assert blocks[2:18] == [
        "DANGER",
        "the trailer can drop off the stands: crushed, will kill",
        "To avoid it: keep both stands under the axle, nobody underneath",
        "Holds while: trailer raised",
        "WARNING",
        "the trailer can roll: crushed foot",
        "To avoid it: check the chocks first",
        "from memory, not checked",
        "CAUTION",
        "the jack handle springs back: bruised hand",
        "To avoid it: let it down slowly",
        "NOTICE",
        "the jack can dent the floor plate: bent plate",
        "To avoid it: use the jacking point",
        "HOLD Before the next step this must be checked: rock the trailer: it must not move on the stands"
        " – by the senior technician",
        "Raise the axle and set both stands under it",
    ]
    assert blocks[-5:-2] == ["There is no picture of this step. This step was not filmed.", blocks[16], ASK]


def test_page_a_state_without_a_hazard_still_stands(edition: Edition) -> None:
    bare = Standing((), ("fuel line open",), ())
    blocks = views(changed_step(edition, "clean", standing=bare))["clean"]
    assert blocks[3:5] == ["Still dangerous: fuel line open", "Wipe the stub axle clean"]


def test_page_a_missing_torque_is_a_ruled_blank_that_says_where_to_look(edition: Edition) -> None:
    blocks = views(edition)["keeper-on"]
    assert after(blocks, "Held by", 6) == [
        "2 x M8 bolt, 13 mm (keeper)",
        "Torque",
        "keeper bolts, order: cross, when: dry threads 15 N·m then 30 N·m from D1 p. 4",
        "hub nut, stage 1, when: weight on wheels value source initials Look it up in D1, section 3.",
        "wheel nuts tightened here, but no torque was given value source initials "
        "Look up the value in the maker's current data for exactly this item.",
        "cap screw 4 N·m from memory, not checked",
    ]
    html = page(edition, templates=TEMPLATES)
    blank = "<span>value <i></i></span> <span>source <i></i></span> <span>initials <i></i></span>"
    assert html.count(blank) == 4


def test_page_refit_shows_how_it_was_found_and_in_which_step(edition: Edition) -> None:
    blocks = views(edition)["bearings"]
    assert after(blocks, "On: hub", 4) == [
        "As found, not proof that it was right (step 5)",
        "[picture: hub before it came off]",
        "Hub before it came off",
        "found, seen strip 0:42",
    ]


def test_page_a_reserved_step_shows_no_method(edition: Edition) -> None:
    """The method is not in the file at all, neither in view nor hidden."""
    assert views(edition)["gas"] == [
        RUNNING,
        "Step 9 of 11 · Refit",
        STILL_DANGEROUS,
        LEAVE,
        "DANGER",
        "gas can leak: explosion, will kill",
        "To avoid it: no flame, no switch nearby",
        "Stop: done by a licensed gas fitter",
        "Have the gas locker reconnected",
        "Before you go on:",
        "leak test passed and written down – by the gas fitter",
        ASK,
        "Step 9 is done",
        words.RECORD,
    ]
    assert "ecret" not in page(edition, templates=TEMPLATES)


def test_page_a_reserved_step_without_a_hold_asks_for_the_word_of_whoever_did_it(edition: Edition) -> None:
    blocks = views(changed_step(edition, "gas", holds=()))["gas"]
    assert after(blocks, "Before you go on:", 1) == ["a licensed gas fitter has told you that it is done and safe."]


def test_page_only_if_stands_before_the_command(edition: Edition) -> None:
    blocks = views(edition)["keeper"]
    assert after(blocks, "Only if the hub has a keeper over the nut", 1) == [
        "Draw the split pin and take the keeper off"
    ]


def test_page_words_of_a_section_stand_in_its_first_step_or_before_the_start(edition: Edition) -> None:
    read_page = views(edition)
    assert read_page["chock"][2] == "Lay the parts out in the order in which they come off."
    assert read_page["clean"][2] == "Note: clean hands, clean rag"
    assert after(read_page["_overview"], "Before you start", 2) == ["Read the whole procedure once.", "Conditions"]


def test_page_no_time_stands_beside_a_step(edition: Edition) -> None:
    steps = [block for name, blocks in views(edition).items() if name not in ("", "_overview") for block in blocks]
    assert not [block for block in steps if re.search(r"\bmin\b|\bminutes?\b|\bhours?\b", block)]


def test_page_overview_names_identity_status_and_what_comes_first(edition: Edition) -> None:
    read_page = views(edition)
    assert read_page[""][:4] == [
        "P-014 – Trailer wheel hub – renew the bearings",
        "Trailer wheel hub – renew the bearings",
        "P-014 revision B Check the current revision before use",
        "DRAFT – not approved 2 problems stop an approval",
    ]
    assert read_page["_overview"][:20] == [
        "Overview",
        *("Item", "Single-axle trailer, unbraked, 750 kg"),
        *("Applies to", "25 mm stub axle, four-stud hub"),
        *("Not for", "braked hubs"),
        *("Status", "DRAFT – not approved"),
        *("Place", "stands"),
        *("People", "1"),
        *("Author", "K."),
        *("Whom to ask", "workshop foreman, extension 12"),
        "When the wheel rocks at the top or the hub runs hot after a short trip.",
        words.PRIORITY,
        words.QUALIFIED,
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
    assert after(blocks, "How long it takes", 6) == [
        "Hands-on: 0.4 to 0.7 h, most likely 0.5 h. This is a lower bound. It rests on:",
        "4 steps: time typed",
        "2 steps: footage only: a lower bound if the film has cuts",
        "5 steps: no time known",
        "Waiting, apart from that: 10 min.",
        "The technician states: 1.5 h.",
    ]
    nothing = Estimate(tuple(step for step in edition.estimate.steps if not step.likely))
    blocks = views(dataclasses.replace(edition, estimate=nothing))["_overview"]
    assert after(blocks, "How long it takes", 2) == ["No time is known. The steps:", "5 steps: no time known"]


def test_page_problems_come_worst_first_and_fold_after_five(edition: Edition) -> None:
    blocks = views(edition)["_overview"]
    listed = after(blocks, "Problems still open: 7", 8)
    assert listed[0] == "stop hub nut has no torque – add Torque: hub nut | value | from: procedure.md:90"
    assert listed[5] == "2 more"
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
        f"refit, 3:36, 720 × 1280; the sound breaks off at 2:10; odd title {SCRIPT}",
    ]
    assert blocks.count("9 Have the gas locker reconnected Done by a licensed gas fitter ✓ ticked") == 1


@pytest.mark.parametrize(
    ("status", "said"),
    [
        ("draft", "DRAFT – not approved"),
        ("review", "IN REVIEW – not approved"),
        ("withdrawn", "WITHDRAWN – do not work by it"),
    ],
)
def test_page_status_is_plain_at_the_top_of_every_view(edition: Edition, status: str, said: str) -> None:
    read_page = views(dataclasses.replace(edition, status=status, why_draft=""))
    assert read_page[""][3] == said
    assert all(blocks[0].endswith(said) for name, blocks in read_page.items() if name not in ("", "_overview"))


def test_page_typed_text_never_becomes_markup(edition: Edition) -> None:
    """Hostile text in any field reads as text; the only script is the page's own."""
    hostile = dataclasses.replace(edition, title=f"{SCRIPT}</title>", item='"><img src=x onerror=alert(1)>', ask=SCRIPT)
    html = page(hostile, templates=TEMPLATES)
    assert html.count("<script") == 1
    assert "<img src=x" not in html
    assert read(html)["_overview"][2] == '"><img src=x onerror=alert(1)>'
    assert read(html)[""][1] == "<script>alert(1)</script></title>"


def test_page_policy_names_exactly_its_own_script_and_style(edition: Edition) -> None:
    html = page(edition, templates=TEMPLATES)
    script = re.findall(r"<script>(.*?)</script>", html, re.DOTALL)
    style = re.findall(r"<style>(.*?)</style>", html, re.DOTALL)
    assert len(script) == len(style) == 1
    policy = (
        f"default-src 'none'; script-src '{digest(script[0])}'; style-src '{digest(style[0])}'; "
        "img-src 'self' data:; media-src 'self' data:; base-uri 'none'; form-action 'none'"
    ).replace("'", "&#39;")
    assert f'<meta http-equiv="Content-Security-Policy" content="{policy}">' in html
    assert not re.search(r"""<[^>]*\s(style|on[a-z]+)=""", html)


def test_page_refers_only_to_media_beside_it(edition: Edition, media: Path) -> None:
    html = page(edition, templates=TEMPLATES)
    sources = {source for source in re.findall(r'(?:src|poster)="([^"]*)"', html) if not source.startswith("data:")}
    assert sources == {f"media/{file.name}" for file in media.iterdir()}
    odd = changed_step(edition, "dust-cap", clip=Clip('a "b" #1.mp4', Fraction(2), 320, 180, sound=False))
    assert 'src="media/a%20%22b%22%20%231.mp4"' in page(odd, templates=TEMPLATES)


def test_page_language_is_that_of_the_edition(edition: Edition) -> None:
    assert '<html lang="en-GB">' in page(edition, templates=TEMPLATES)
    assert '<html lang="en">' in page(dataclasses.replace(edition, language=""), templates=TEMPLATES)


def test_page_same_edition_gives_same_bytes(edition: Edition) -> None:
    assert page(edition, templates=TEMPLATES) == page(edition, templates=TEMPLATES)


def test_page_a_template_that_asks_for_an_unknown_word_fails(edition: Edition, tmp_path: Path) -> None:
    shutil.copytree(TEMPLATES / "html", tmp_path / "html")
    (tmp_path / "html" / "standing.html").write_text("{{ step.not_there }}", encoding="utf-8")
    with pytest.raises(UndefinedError, match="EditionStep object' has no attribute 'not_there'"):
        page(edition, templates=tmp_path)


def test_phone_holds_stills_and_short_clips_inside(edition: Edition, media: Path) -> None:
    html = phone(edition, templates=TEMPLATES, media=media)
    assert not [source for source in re.findall(r'(?:src|poster)="([^"]*)"', html) if not source.startswith("data:")]
    still = base64.b64encode((media / "dust-cap.jpg").read_bytes()).decode()
    assert html.count(f"data:image/jpeg;base64,{still}") == 1
    clip = base64.b64encode((media / "dust-cap.mp4").read_bytes()).decode()
    assert f'<video src="data:video/mp4;base64,{clip}"' in html


def test_phone_says_the_same_as_the_page(edition: Edition, media: Path) -> None:
    def without_clips(html: str) -> dict[str, list[str]]:
        return {name: [b for b in blocks if not b.startswith("[clip")] for name, blocks in read(html).items()}

    inside = phone(edition, templates=TEMPLATES, media=media)
    assert without_clips(inside) == without_clips(page(edition, templates=TEMPLATES))


def test_phone_a_long_clip_gives_way_to_its_still(edition: Edition, media: Path) -> None:
    just = changed_step(edition, "dust-cap", clip=Clip("dust-cap.mp4", Fraction(20), 320, 180, sound=False))
    assert "<video" in phone(just, templates=TEMPLATES, media=media)
    long = changed_step(edition, "dust-cap", clip=Clip("dust-cap.mp4", Fraction(201, 10), 320, 180, sound=False))
    html = phone(long, templates=TEMPLATES, media=media)
    assert "<video" not in html
    assert "[picture: dust cap started evenly all round]" in read(html)["dust-cap"]


def test_phone_clips_end_when_the_room_is_used_up(
    edition: Edition, media: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copyfile(media / "dust-cap.mp4", media / "second.mp4")
    two = changed_step(edition, "keeper", clip=Clip("second.mp4", Fraction(2), 320, 180, sound=False))
    size = (media / "second.mp4").stat().st_size
    monkeypatch.setattr("procbuilder.publish.html.CLIP_BYTES_INSIDE", 2 * size)
    assert phone(two, templates=TEMPLATES, media=media).count("<video") == 2
    monkeypatch.setattr("procbuilder.publish.html.CLIP_BYTES_INSIDE", 2 * size - 1)
    html = phone(two, templates=TEMPLATES, media=media)
    (media / "second.mp4").unlink()
    assert html.count("<video") == 1
    assert "[picture: hub without its keeper]" in read(html)["keeper"]
