"""The page in one file, for a phone."""

import base64
import re
import shutil
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.footage import Clip
from procbuilder.publish.html import page, phone
from tests.publish.blocks import TEMPLATES, read
from tests.publish.sample import changed_step


def test_phone_holds_stills_and_short_clips_inside(edition: Edition, media: Path) -> None:
    html = phone(edition, templates=TEMPLATES, media=media).decode()
    assert not [source for source in re.findall(r'(?:src|poster)="([^"]*)"', html) if not source.startswith("data:")]
    still = base64.b64encode((media / "dust-cap.jpg").read_bytes()).decode()
    assert html.count(f"data:image/jpeg;base64,{still}") == 1
    clip = base64.b64encode((media / "dust-cap.mp4").read_bytes()).decode()
    assert f'<video src="data:video/mp4;base64,{clip}"' in html


def test_phone_says_the_same_as_the_page(edition: Edition, media: Path) -> None:
    """But for the clips, the way to the quotation, which is a file of its own, and pictures that are shown twice."""

    def alone(html: str) -> dict[str, list[str]]:
        apart = {"_overview": ("[clip", "[picture", "Quotation and booking")}
        return {
            name: [block for block in blocks if not block.startswith(apart.get(name, "[clip"))]
            for name, blocks in read(html).items()
        }

    inside = phone(edition, templates=TEMPLATES, media=media).decode()
    assert alone(inside) == alone(page(edition, templates=TEMPLATES))


def test_phone_a_long_clip_gives_way_to_its_still(edition: Edition, media: Path) -> None:
    just = changed_step(edition, "dust-cap", clip=Clip("dust-cap.mp4", Fraction(20), 320, 180, sound=False))
    assert "<video" in phone(just, templates=TEMPLATES, media=media).decode()
    long = changed_step(edition, "dust-cap", clip=Clip("dust-cap.mp4", Fraction(201, 10), 320, 180, sound=False))
    html = phone(long, templates=TEMPLATES, media=media).decode()
    assert "<video" not in html
    assert (
        "[picture: Cap started evenly all round. Marked: arrow, start here; ring, then here]" in read(html)["dust-cap"]
    )


def test_phone_clips_end_when_the_room_is_used_up(
    edition: Edition, media: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copyfile(media / "dust-cap.mp4", media / "second.mp4")
    two = changed_step(edition, "keeper", clip=Clip("second.mp4", Fraction(2), 320, 180, sound=False))
    size = (media / "second.mp4").stat().st_size
    monkeypatch.setattr("procbuilder.publish.html.CLIP_BYTES_INSIDE", 2 * size)
    assert phone(two, templates=TEMPLATES, media=media).decode().count("<video") == 2
    monkeypatch.setattr("procbuilder.publish.html.CLIP_BYTES_INSIDE", 2 * size - 1)
    html = phone(two, templates=TEMPLATES, media=media).decode()
    (media / "second.mp4").unlink()
    assert html.count("<video") == 1
    assert "[picture: Keeper off]" in read(html)["keeper"]
