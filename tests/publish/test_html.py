"""The page as text: what stands in a step, in which order, and that nothing typed can run."""

import dataclasses
import re
import shutil
from fractions import Fraction
from pathlib import Path

import pytest
from jinja2 import UndefinedError

from procbuilder.model.edition import Edition
from procbuilder.model.footage import Clip
from procbuilder.model.worked import Standing
from procbuilder.publish import pagewords as words
from procbuilder.publish.csp import digest
from procbuilder.publish.html import page
from tests.publish.blocks import TEMPLATES, after, read, views
from tests.publish.sample import changed_step
from tests.publish.sample_words import SCRIPT
from tests.publish.typed import typed

STILL_DANGEROUS = (
    "Still dangerous: DANGER the trailer can drop off the stands – keep both stands under the axle, "
    "nobody underneath (while: trailer raised)"
)
LEAVE = "Leave in place: 2 x axle stand; wheel chock"
STOP = "Stop. Leave everything as it is."
STOP_AND_LEAVE = f"{STOP} {LEAVE}."
ASK = "Something does not match? Stop and ask: workshop foreman, extension 12"
RUNNING = "P-014 · revision B · DRAFT – not approved"


def test_page_a_step_reads_in_the_order_in_which_it_is_worked(edition: Edition) -> None:
    """Where we are, standing dangers, own dangers, command, facts, picture, words; nothing else."""
    assert views(edition)["dust-cap"] == [
        RUNNING,
        "Step 3 of 11 · Strip · 1 still open",
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
        "[picture: Cap started evenly all round. Marked: arrow, start here; ring, then here]",
        "[clip: media/dust-cap.mp4]",
        *("Show picture", "Slower", "Picture back", "Picture on"),
        "Cap started evenly all round",
        "Marked: start here; then here",
        "done, strip 0:42",
        "[picture: The rim from the side]",
        "The rim from the side",
        "detail, strip 0:42",
        "Work round the rim with the flat bar, a little at a time.",
        "first the top",
        "then the sides",
        '<script>alert(1)</script> and #import "x" and $a$',
        "Key point: turn the hub a little after each push",
        "because a bent cap lets water in",
        "Key point: keep the bar flat said strip 0:51",
        "Step 3 is done",
        words.RECORD,
        "It does not look like this",
        STOP_AND_LEAVE,
        "Step 4 is for: the hub has a keeper over the nut 4",
        ASK,
        "Still open when this step begins: 1",
        "wheel chock: fitted for now",
        "What is said in the clip",
        "a little at a time",
        f"nuts & bolts --> {SCRIPT}",
        "What opens and closes",
        "Off: dust cap – tray: 3",
        "filmed: strip 0:42-1:15",
    ]


def test_page_dangers_stand_worst_first_and_before_hold_and_command(edition: Edition) -> None:
    blocks = views(edition)["raise"]
    assert blocks[2:20] == [
        "DANGER",
        "the trailer can drop off the stands: crushed, will kill",
        "To avoid it: keep both stands under the axle, nobody underneath",
        "Holds while: trailer raised",
        "W019 Crushing",
        "P024 Do not walk or stand here",
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
        "HOLD after this step: rock the trailer: it must not move on the stands",
        "Raise the axle and set both stands under it",
    ]
    assert after(blocks, "trolley jack seen strip 0:31", 4) == [
        "HOLD Before the next step this must be checked: rock the trailer: it must not move on the stands"
        " – by the senior technician",
        "Checked by (initials)",
        words.CHECKER,
        "Step 2 is done",
    ]
    assert blocks[-1] == "There is no picture of this step. This step was not filmed."


def test_page_a_state_without_a_hazard_still_stands(edition: Edition) -> None:
    bare = Standing((), ("fuel line open",), ())
    blocks = views(changed_step(edition, "clean", standing=bare))["clean"]
    assert blocks[4:6] == ["Still dangerous: fuel line open", "Wipe the stub axle clean"]


def test_page_a_missing_torque_is_a_ruled_blank_that_says_where_to_look(edition: Edition) -> None:
    blocks = views(edition)["keeper-on"]
    assert after(blocks, "Held by", 6) == [
        "2 x M8 bolt, 13 mm (keeper)",
        "Torque",
        "keeper bolts, order: cross, when: dry threads 15 N·m then 30 N·m (11 lbf·ft then 22 lbf·ft) from D1 p. 4",
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
    assert after(blocks, "Hub home against the seal", 5) == [
        "done, strip 0:42",
        "As found, not proof that it was right – step 5",
        "[picture: Hub before it came off]",
        "Hub before it came off",
        "found, strip 0:42",
    ]


def test_page_a_reserved_step_shows_no_method(edition: Edition) -> None:
    """The method is not in the file at all, neither in view nor hidden."""
    assert views(edition)["gas"] == [
        RUNNING,
        "Step 9 of 11 · Refit · 3 still open",
        STILL_DANGEROUS,
        LEAVE,
        "DANGER",
        "gas can leak: explosion, will kill",
        "To avoid it: no flame, no switch nearby",
        "Stop: done by a licensed gas fitter",
        "Have the gas locker reconnected",
        "Before you go on:",
        "leak test passed and written down – by the gas fitter",
        "Checked by (initials)",
        words.CHECKER,
        "Step 9 is done",
        words.RECORD,
        "It does not look like this",
        STOP_AND_LEAVE,
        ASK,
        "Still open when this step begins: 3",
        "wheel chock: fitted for now",
        "dust cap: off, tray 3",
        "M8 bolt: off",
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


def test_page_where_a_step_leads_stands_once_behind_its_checks_with_a_link(edition: Edition) -> None:
    leads = typed("Then: #dust-cap")
    changed = changed_step(edition, "clean", notes=(leads, typed("Note: keep the rag")))
    blocks = views(changed)["clean"]
    line = "Then: step 3, Prise off the dust cap – from there on everything once more"
    assert blocks.count(line) == 1
    assert blocks.index(line) < blocks.index("Note: keep the rag")
    assert '<a class="jump words" href="#dust-cap">step 3, Prise off the dust cap</a>' in page(
        changed, templates=TEMPLATES
    )


def test_page_words_of_a_section_stand_in_its_first_step_or_before_the_start(edition: Edition) -> None:
    read_page = views(edition)
    assert read_page["chock"][2] == "Lay the parts out in the order in which they come off."
    assert read_page["clean"][2] == "Note: clean hands, clean rag"
    assert after(read_page["_overview"], "Before you start", 2) == ["Read the whole procedure once.", "Conditions"]


def test_page_no_time_stands_beside_a_step(edition: Edition) -> None:
    steps = [block for name, blocks in views(edition).items() if name and not name.startswith("_") for block in blocks]
    assert not [
        block for block in steps if not block.startswith("If:") and re.search(r"\bmin\b|\bminutes?\b|\bhours?\b", block)
    ]


@pytest.mark.parametrize(
    ("status", "said"),
    [
        ("draft", "DRAFT – not approved"),
        ("review", "IN REVIEW – not approved"),
        ("withdrawn", "WITHDRAWN – do not work by it"),
    ],
)
def test_page_status_is_plain_at_the_top_of_every_view(edition: Edition, status: str, said: str) -> None:
    read_page = views(dataclasses.replace(edition, status=status, problems=()))
    assert read_page[""][3] == said
    assert all(blocks[0].endswith(said) for name, blocks in read_page.items() if name and not name.startswith("_"))


def test_page_typed_text_never_becomes_markup(edition: Edition) -> None:
    """Hostile text in any field reads as text; the only scripts are the page's own, two of them only data."""
    hostile = dataclasses.replace(edition, title=f"{SCRIPT}</title>", item='"><img src=x onerror=alert(1)>', ask=SCRIPT)
    html = page(hostile, templates=TEMPLATES)
    scripts = re.findall(r"<script[^>]*>", html)
    data = ['<script type="application/json" id="_words">', '<script type="application/ld+json">']
    assert scripts == ["<script>", *data, "<script>"]
    assert html.count("</script>") == 4
    assert "<img src=x" not in re.sub(r"<script.*?</script>", "", html, flags=re.DOTALL)
    assert read(html)["_overview"][3] == '"><img src=x onerror=alert(1)>'
    assert read(html)[""][1] == "<script>alert(1)</script></title>"


def test_page_policy_names_exactly_its_own_script_and_style(edition: Edition) -> None:
    html = page(edition, templates=TEMPLATES)
    script = re.findall(r"<script>(.*?)</script>", html, re.DOTALL)
    style = re.findall(r"<style>(.*?)</style>", html, re.DOTALL)
    assert (len(script), len(style)) == (2, 1)
    policy = (
        f"default-src 'none'; script-src '{digest(script[0])}' '{digest(script[1])}'; style-src '{digest(style[0])}'; "
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
    shutil.copytree(TEMPLATES, tmp_path, dirs_exist_ok=True)
    (tmp_path / "html" / "standing.html").write_text("{{ step.not_there }}", encoding="utf-8")
    with pytest.raises(UndefinedError, match="SpokenStep object' has no attribute 'not_there'"):
        page(edition, templates=tmp_path)
