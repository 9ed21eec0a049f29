"""How well narrations are heard, and what each rule of hearing is worth.

``python -m tests.bench.hearing`` prints precision and recall of operations for each kind of speaker. With
``--rules MODULE`` each rule of a module of ``infer/hearing`` is switched off in turn, and what that costs is printed,
the cheapest first: a rule that costs less than 0.002 of both on all narrations together may go, with the sentences of
the tests that only it serves.
"""

import sys
from collections.abc import Iterator, Sequence
from importlib import import_module
from inspect import getmembers, isclass, isfunction
from types import CodeType, FunctionType

from tests.infer.narrated import Told
from tests.infer.test_narrations import FREE, SEEN, UNSEEN, Score, score, together
from tests.infer.test_running_captions import RUNNING
from tests.infer.test_running_captions import score as running

KINDS = {
    "explained, looked at": SEEN,
    "explained, never looked at": UNSEEN,
    "aloud, looked at": [told for told in FREE if not told.unseen],
    "aloud, never looked at": [told for told in FREE if told.unseen],
}
EVERY: list[Told] = [*SEEN, *UNSEEN, *FREE]


def main(arguments: Sequence[str]) -> None:
    if arguments[:1] == ["--rules"]:
        for name in arguments[1:]:
            rules(name)
        return
    for kind, group in KINDS.items():
        show(kind, together(map(score, group)))
    show("running captions", together(Score(*running(path)) for path in RUNNING))


def show(title: str, found: Score) -> None:
    print(
        f"{title}: precision {found.precision:.3f}, recall {found.recall:.3f}, {found.right + found.missed} operations"
    )


def rules(name: str) -> None:
    """What each rule of a module is worth; a negative figure tells that it does harm."""
    whole = together(map(score, EVERY))
    worth = [(rule.__qualname__, *cost(rule, code, whole)) for rule, code in switches(name)]
    for rule, precision, recall in sorted(worth, key=lambda one: one[1] + one[2]):
        print(f"{name}.{rule}: precision {precision:+.4f}, recall {recall:+.4f}")


def switches(name: str) -> Iterator[tuple[FunctionType, CodeType]]:
    """The functions of a module that say yes or no, or give something or nothing, with code that says no."""
    module = import_module(f"procbuilder.infer.hearing.{name}")
    holders = [module, *(one for _, one in getmembers(module, isclass) if one.__module__ == module.__name__)]
    for rule in (one for holder in holders for _, one in getmembers(holder, isfunction)):
        given = str(rule.__annotations__.get("return", ""))
        if rule.__module__ == module.__name__ and (given == "<class 'bool'>" or given.endswith("| None")):
            yield rule, (_no if "bool" in given else _nothing).__code__


def cost(rule: FunctionType, code: CodeType, whole: Score) -> tuple[float, float]:
    """By how much precision and recall are lower without a rule."""
    kept, rule.__code__ = rule.__code__, code
    try:
        without = together(map(score, EVERY))
    except Exception:  # what stands on the rule cannot do without it
        return 1.0, 1.0
    finally:
        rule.__code__ = kept
    return whole.precision - without.precision, whole.recall - without.recall


def _no(*_: object, **__: object) -> bool:
    return False


def _nothing(*_: object, **__: object) -> None:
    return None


if __name__ == "__main__":
    main(sys.argv[1:])
