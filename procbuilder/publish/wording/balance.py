"""Sentences about what was opened and must be closed again."""

from procbuilder.publish.wording.patterns import Patterns

_REFIT = 'add "{close}" to the step that refits it, or "{left}"'
_TIGHTEN = 'add "{close}" to the step that tightens it, or "{left}"'
_TAKE_OUT = 'add "{close}" to the step that takes it out, or "{left}"'
_OFF = '{guess} "{open}" to the step that takes it off, or write "{new}" for a new one'
_FOR_NOW = '{guess} "{open}" to the step that fits it'

PATTERNS: Patterns = {
    "unbalanced-ledger": {
        "scrapped": (
            "{way}{item} came off {opened} as scrap and no new one goes on",
            'add "{close}" to the step that fits it, or "{left}"',
        ),
        "spoilt": (
            "{way}{item} came off {opened} and cannot be used again ({why}), and no new one goes on",
            'add "{close}" to the step that fits a new one, or "{left}"',
        ),
        "off": ("{way}{item} came off {opened} and does not go back on", _REFIT),
        "off-many": ("{way}{item} came off {opened} and do not go back on", _REFIT),
        "off-only-one": ("{way}{item} came off {opened} and only {back} goes back on", _REFIT),
        "off-only": ("{way}{item} came off {opened} and only {back} go back on", _REFIT),
        "slackened": ("{way}{item} is slackened {opened} and never tightened for good", _TIGHTEN),
        "slackened-many": ("{way}{item} are slackened {opened} and never tightened for good", _TIGHTEN),
        "nipped": ("{way}{item} is only nipped up {opened} and never tightened for good", _TIGHTEN),
        "nipped-many": ("{way}{item} are only nipped up {opened} and never tightened for good", _TIGHTEN),
        "temporary": ("{way}{item} went in for now {opened} and does not come out again", _TAKE_OUT),
        "temporary-many": ("{way}{item} went in for now {opened} and do not come out again", _TAKE_OUT),
        "temporary-only-one": ("{way}{item} went in for now {opened} and only {back} comes out again", _TAKE_OUT),
        "temporary-only": ("{way}{item} went in for now {opened} and only {back} come out again", _TAKE_OUT),
        "state": (
            '{way}the state "{item}" begins {opened} and does not end',
            'add "{close}" to the step that ends it, or "{left}"',
        ),
    },
    "closed-but-never-opened": {
        "off": ("{item} goes on {closed}, but {never}", _OFF),
        "off-many": ("{item} go on {closed}, but {never}", _OFF),
        "temporary": ("{item} comes out again {closed}, but {never}", _FOR_NOW),
        "temporary-many": ("{item} come out again {closed}, but {never}", _FOR_NOW),
        "state": (
            'the state "{item}" ends {closed}, but {never}',
            '{guess} "{open}" to the step that brings it about',
        ),
    },
}
