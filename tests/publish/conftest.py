"""The sample, its pictures and its printed sheet, made once."""

from pathlib import Path

import pytest

from procbuilder.model.edition import Edition
from tests.publish.sample import sample_edition
from tests.publish.sheet import sheet, whole


@pytest.fixture(scope="session")
def media(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("media")


@pytest.fixture(scope="session")
def edition(media: Path) -> Edition:
    return sample_edition(media)


@pytest.fixture(scope="session")
def printed(edition: Edition, media: Path) -> bytes:
    return sheet(edition, media)


@pytest.fixture(scope="session")
def text(printed: bytes) -> str:
    return whole(printed)
