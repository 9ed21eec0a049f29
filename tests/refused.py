"""That something ends with a fault, and what is said of it."""

import re
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from procbuilder.model.fault import Fault
from procbuilder.publish.wording.faults import said_fault


@contextmanager
def refused(kind: type[Fault], words: str) -> Iterator[None]:
    """The block raises a fault of a kind whose sentence, in English, holds words that the pattern finds."""
    with pytest.raises(kind) as raised:
        yield
    assert re.search(words, told := said_fault(raised.value)), told
