"""What the commands say besides problems and faults."""

from procbuilder.model.estimate import Basis
from procbuilder.model.facts import Value, facts
from procbuilder.publish.language import Language
from procbuilder.publish.wording.gaps import filled
from procbuilder.publish.wording.patterns import Plural, Text

STATUSES = ("draft", "review", "withdrawn")
"""How a procedure stands, where it is told in a line."""

MESSAGES: dict[str, Text] = {
    "stopped": "stopped; what was there before is unchanged",
    "new-needs": "new needs at least one --recording, or --refit alone for a procedure that is there",
    "made": Plural(
        "{path}: {count} step. Fill it in, then run: procbuilder build {folder}",
        "{path}: {count} steps. Fill it in, then run: procbuilder build {folder}",
    ),
    "heard": Plural(
        "{path}: where each sentence went; {count} is in no step",
        "{path}: where each sentence went; {count} are in no step",
    ),
    "ids-written": Plural("{count} step id written", "{count} step ids written"),
    "library": Plural(
        "{count} procedure: {good} without a stop, {stopped} with one",
        "{count} procedures: {good} without a stop, {stopped} with one",
    ),
    "library-failed": Plural(
        "{count} procedure: {good} without a stop, {stopped} with one, {failed} failed",
        "{count} procedures: {good} without a stop, {stopped} with one, {failed} failed",
    ),
    "unread": "{recording} has not been read yet, so times were not compared with it: procbuilder build {folder}",
    "unscanned": "{recording} has not been scanned yet for cuts, talk and stillness: procbuilder build {folder}",
    "filmed": "{recording}: filmed {day} {begins} to {ends}, by the clock of its camera",
    "nothing-added": "nothing was added to {log}",
    "serving": "{folder} is at {address} – Ctrl+C ends it",
    "questions": (
        'Questions that only you can answer, the worst first. Type the line that is shown; "look up" is an answer '
        'too, and "- Refused: the words in brackets | why" settles what does not matter here:'
    ),
    "more-questions": "{more}: procbuilder check --all {folder} shows them",
    "must-be-answered": Plural(
        "{count} of the questions must be answered before anyone may approve it",
        "{count} of the questions must be answered before anyone may approve it",
    ),
    "reading-ease": (
        "Text: {words} words, {each:.0f} a sentence; reading ease {ease:.0f} (Flesch; 60 and more reads plainly), "
        "school grade {grade:.0f}"
    ),
    "nothing-wrong": "nothing is wrong or missing",
    "unprintable": "the PDF shows {signs} as an empty box: its typeface lacks them",
    "unprintable-at": "{step}: the PDF shows {signs} as an empty box: its typeface lacks them",
    "status": "Status: {status}; {summary}",
    "status-because": Plural(
        "Status: {status} ({count} problem must be settled before it may be approved); {summary}",
        "Status: {status} ({count} problems must be settled before it may be approved); {summary}",
    ),
    "page": "Page: {path}",
    "pdf": "PDF:  {path}",
    "film": "Film: {path}, {length}",
    "film-dropped": "The film did not fit any more; make it anew with: procbuilder build {folder} --film",
    "torque": "Torque: {item}, {step}: {value}, {source}",
    "torque-blank": "Torque: {item}, {step}: left blank, {source}",
    "still-open": "Still open: {item}, {opening}{film} ({step}); no step closes it{way}",
    "assumed-closed": "Only assumed closed: {item}, {opening}{film} ({step}); {closing} tells to refit in reverse{way}",
    "still-dangerous": Plural(
        "Still dangerous at step {runs:,}: {signal}: {hazard}",
        "Still dangerous at steps {runs:,}: {signal}: {hazard}",
    ),
    "nothing-derived": "{path}: there is nothing new to derive; nothing was written",
    "derived": Plural(
        "{path}: {count} refit step added, derived and not filmed",
        "{path}: {count} refit steps added, derived and not filmed",
    ),
    "to-decide": Plural(
        "{count} of them only asks: pressed, bled, timed, preloaded or single-use work",
        "{count} of them only ask: pressed, bled, timed, preloaded or single-use work",
    ),
    "accept": 'Read each one, put it right, and take its "- Derived:" line away; check asks until then',
    "rows-added": Plural("{count} row added to {log}{known}", "{count} rows added to {log}{known}"),
    "before": "Before: {estimate}",
    "after": "After:  {estimate}",
    "outdated": "Older than the {kept} for which rows are kept: delete line {rows:,} of {log}",
}
"""By the name that a command uses."""

CLAUSES: dict[str, Text] = {
    "filmed-at": " at {time}",
    "not-filmed": ", not filmed",
    "look-in": "see {document}",
    "look-it-up": "look it up in the maker's data",
    "from-to": "{first} to {last}",
    "known-already": Plural("; {count} was there already", "; {count} were there already"),
    "one-time": "{likely} min ({source})",
    "range": "{low}–{high} min, likely {likely} ({source})",
    "logged-runs": Plural("{count} logged run", "{count} logged runs"),
    Basis.TYPED: "typed",
    Basis.FOOTAGE: "footage",
    Basis.CUT: "cut footage",
    Basis.NOTHING: "no time known",
}
"""Parts of these sentences."""


def tell(form: str, language: Language, /, **values: Value) -> str:
    """What a command says, in the language of the reader."""
    return filled(MESSAGES[form], facts(**values), language)


def clause(form: str, language: Language, /, **values: Value) -> str:
    """A part of what a command says."""
    return filled(CLAUSES[form], facts(**values), language)
