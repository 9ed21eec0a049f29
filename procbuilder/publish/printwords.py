"""All that the PDF says by itself, beside what it shares with the page.

``{name}`` stands for something that is filled in.
"""

from procbuilder.publish.pagewords import (
    ASSUMED_CLOSED,
    BEFORE_GOING_ON,
    FILM_LASTS,
    HOLDS_WHILE,
    LOOK_IN,
    NIPPED_UP,
    NO_SOURCE,
    NOT_WRITTEN,
    ONLY_IF,
    ORDER,
    OUT_AND_BACK,
    PART_OF,
    QUOTE_FINDINGS,
    RENEWED,
    STEP_OF,
    STOP_DONE_BY,
    TO_AVOID,
    TOLD_SAFE,
    TRAYS,
    TRAYS_HEAD,
    WHEN,
    WHILE,
    WHOLE_JOB,
)
from procbuilder.publish.words import (
    AS_FOUND,
    BASIS_WORDS,
    CHECK_REVISION,
    CLIP,
    LEAVE_IN_PLACE,
    LOOK_UP,
    MARKED,
    NO_PHONE,
    PRIORITY,
    QR_CODE,
    QUALIFIED,
    RECORD,
    SIGNAL_MEANING,
    STILL_DANGEROUS,
    VAPOUR,
    WEAK_PICTURE,
)
