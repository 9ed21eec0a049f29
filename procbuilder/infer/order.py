"""Rules of order: what must come before what, read from ``order.toml`` and looked for in the steps."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import takewhile

from procbuilder.model.activity import Disorder, Done, Order, Work
from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import Phrases
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.words import Words


@dataclass(slots=True)
class _Seen:
    """The steps in which the acts of one rule are done."""

    first: list[Done] = field(default_factory=list)
    """Wherever it is said."""
    surely: list[Done] = field(default_factory=list)
    """Those firsts that a command or a move says."""
    then: list[Done] = field(default_factory=list)
    since: list[Done] = field(default_factory=list)


def disorders(procedure: Procedure, lexicon: Lexicon) -> tuple[Disorder, ...]:
    """The rules that a procedure breaks; each once, at the first step that comes too early and for one name of a thing.

    What comes too early is judged by commands and by what is moved; what should have come before it counts
    wherever it is said, in the same step too.
    """
    orders = lexicon.orders
    acts = _Acts(lexicon)
    seen = [_Seen() for _ in orders]
    for number, done, strict, texts in _told(procedure, lexicon):
        for order, role in acts.done(strict, ends=True) if number else ():
            getattr(seen[order], "surely" if role == "first" else role).append(done)
        for order, role in acts.done([*strict, *texts], ends=False):
            if role == "first":
                seen[order].first.append(done)
    broken = [found for order, one in zip(orders, seen, strict=True) if (found := _broken(order, one))]
    # One thing under two names is asked once, each condition of a set by itself.
    told = {(one.order.why, one.order.id.partition(".")[2], one.then.number): one for one in reversed(broken)}
    return tuple(told.values())[::-1]


def _broken(order: Order, seen: _Seen) -> Disorder | None:
    since = seen.since[0] if seen.since else None
    if order.since and since is None:
        return None
    begins = since.number if since else -1
    then = next((done for done in seen.then if done.number > begins), None)
    if then is None:
        return None
    at_once = any(since and done.number == begins for done in seen.surely)
    if at_once or any(begins < done.number <= then.number for done in seen.first):
        return None
    late = next((done for done in seen.surely if done.number > then.number), None)
    return Disorder(order, then, late, since) if late or order.missing else None


def _told(procedure: Procedure, lexicon: Lexicon) -> Iterator[tuple[int, Done, list[str], list[str]]]:
    """What is said before the steps, then each step: what is done in it, and all else that it says."""
    front = [entry.raw for entry in procedure.listed("Condition")]
    yield 0, Done(0, "", procedure.place), [], [prose.text for prose in procedure.intro] + front
    for number, step in enumerate(procedure.steps, 1):
        texts = [*(prose.text for prose in step.prose), *(entry.raw for entry in step.fields)]
        yield number, Done(number, step.command, step.place), _done_in(step, lexicon), texts


def _done_in(step: Step, lexicon: Lexicon) -> list[str]:
    moves = (f"{lexicon.moves[entry.name]} {_thing(entry, lexicon.words)}" for entry in step.all(*lexicon.moves))
    return [step.command, *moves]


def _thing(entry: Field, words: Words) -> str:
    """What is moved, without where: of "clamp on the fuel hose" the clamp."""
    name = words.named(entry.item.name if entry.items else entry.part(entry.kind.parts[0])).split()
    ends = words.no_part_of_a_name - words.particles
    return " ".join(takewhile(lambda word: words.written(word) not in ends, name))


class _Acts:
    """All acts of all rules, found in one go. A list of words that several acts share is looked for once."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lists: dict[tuple[str, ...], int] = {}
        self._acts: dict[int, list[tuple[int, int, str]]] = {}
        """By its things: verbs, number of the rule, role; without things, by its verbs."""
        for number, order in enumerate(lexicon.orders):
            for role in ("first", "then", "since"):
                for act in getattr(order, role):
                    self._add(act, number, role)
        self._phrases = Phrases(self._lists, lexicon.words)

    def _add(self, act: Work, number: int, role: str) -> None:
        verbs = self._key(act.verbs)
        self._acts.setdefault(self._key(act.things or act.verbs), []).append((verbs, number, role))

    def _key(self, words: tuple[str, ...]) -> int:
        return self._lists.setdefault(words, len(self._lists))

    def done(self, texts: Iterable[str], *, ends: bool) -> Iterator[tuple[int, str]]:
        """Number of the rule and role of each act whose verb and thing stand in one clause of the texts.

        With ``ends`` the thing must be named whole: a gearbox bracket is no gearbox.
        """
        for text in texts:
            found = list(self._phrases.found(text))
            there = {(one.key, one.clause) for one in found}
            for one in found:
                for verbs, number, role in self._acts.get(one.key, ()):
                    if (verbs, one.clause) in there and (not ends or verbs == one.key or one.whole):
                        yield number, role
