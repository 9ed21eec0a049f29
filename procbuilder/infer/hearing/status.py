"""What is off, fitted for now or otherwise open at this moment of a narration."""

from collections.abc import Collection, Iterable

from procbuilder.infer.dictionary.english import singular, thing
from procbuilder.model.heard import Act

OPENING = (Act.OFF, Act.SLACKEN, Act.FOR_NOW, Act.STATE)
CLOSING = (Act.ON, Act.TIGHTEN, Act.NIP, Act.OUT_AGAIN, Act.ENDS)

_ONLY = {"slack": Act.SLACKEN, "for now": Act.FOR_NOW}


class Status:
    """Names of things by what was done to them last."""

    def __init__(self) -> None:
        self._acts: dict[str, Act] = {}
        self._states: dict[str, str] = {}
        self._only_turned: set[str] = set()
        """What was slackened or tightened and never taken off."""
        self._taken: set[str] = set()
        """What was ever taken off."""
        self._beside: dict[str, set[str]] = {}
        """Words of the sentences in which a thing was named."""
        self._closing = False
        """Something has been put back."""

    def enter(self, act: Act, name: str, state: str = "") -> Act:
        """Remember what was done; what was fitted for now comes out again, what was off goes on again."""
        key = thing(name)
        if act is Act.OFF and self.is_for_now(name):
            act, key = Act.OUT_AGAIN, _known(key, self._acts)
        elif act is Act.FOR_NOW and self._acts.get(_known(key, self._acts)) is Act.OFF:
            act = Act.ON
        if act is Act.STATE:
            self._states[key] = state
        elif act in OPENING:
            self._acts[key] = act
            (self._only_turned.add if act is Act.SLACKEN else self._only_turned.discard)(key)
            if act is Act.OFF:
                self._taken.add(key)
        elif act in CLOSING:
            self._close(act, key)
        return act

    def turn(self) -> None:
        """From here on things are put back."""
        self._closing = True

    def _close(self, act: Act, key: str) -> None:
        if act is Act.ENDS:
            ended = self._states.pop(_known(key, self._states), None)
            self._closing = self._closing or ended is not None
            return
        self._closing = True
        if act is not Act.ON and key not in self._taken:
            self._only_turned.add(key)
        known = _known(key, self._acts)
        if act is not Act.ON or len(known) >= len(key):
            self._acts.pop(known, None)

    def hear(self, words: Iterable[str], watched: frozenset[str]) -> None:
        """The words of a sentence; those beside a watched thing are kept."""
        said = {singular(word) for word in words}
        for name in said & watched:
            self._beside.setdefault(name, set()).update(said)

    def named_with(self, name: str, words: frozenset[str]) -> bool:
        """True when a thing was named together with one of these words."""
        return bool(words) and not words.isdisjoint(self._beside.get(singular(name.split()[-1]) if name else "", ()))

    def is_for_now(self, name: str) -> bool:
        """True for what was fitted for the job only."""
        return self._act(name) is Act.FOR_NOW

    def _act(self, name: str) -> Act | None:
        return self._acts.get(_known(thing(name), self._acts))

    def holds(self, when: str, name: str, state: str = "") -> bool:
        """True when a thing is ``off``, ``on``, ``slack``, fitted ``for now``, or ``open`` in this state.

        ``only slackened``: it was slackened and tightened, and never taken off.

        ``any open``: something is in this state. ``late``: something has been put back.
        """
        match when:
            case "":
                return True
            case "any open":
                return state in self._states.values()
            case "open":
                return bool(state) and self._states.get(_known(thing(name), self._states)) == state
            case "late":
                return self._closing
            case "only slackened":
                return self._act(name) is None and _known(thing(name), self._only_turned) in self._only_turned
            case "on":
                return self._acts.get(thing(name)) not in (Act.OFF, Act.SLACKEN)
        act = self._act(name)
        return act is _ONLY[when] if when in _ONLY else act in (Act.OFF, Act.SLACKEN)

    def state_of(self, name: str) -> str:
        """The state that a thing is in, as "open" or "raised"; empty when it is in none."""
        return self._states.get(_known(thing(name), self._states), "")

    def is_gone(self, name: str) -> bool:
        """True for a thing that was said to be off, by this very name."""
        return self._acts.get(thing(name)) is Act.OFF

    def is_open(self, name: str) -> bool:
        """True for a thing that something was done to that must be undone."""
        return self._act(name) is not None

    def last_in(self, state: str) -> str:
        """The last thing that is in a state now; empty when none is."""
        return next((name for name, now in reversed(self._states.items()) if state and now == state), "")

    @property
    def is_late(self) -> bool:
        """True when something has been put back."""
        return self._closing

    @property
    def gone(self) -> list[str]:
        """What was said to be off, and not only slackened."""
        return [name for name, act in self._acts.items() if act is Act.OFF]

    @property
    def off(self) -> list[str]:
        """What is off now."""
        return [name for name, act in self._acts.items() if act in (Act.OFF, Act.SLACKEN)]


def _known(key: str, names: Collection[str]) -> str:
    """The name itself; when it is not among the names, the last one that is a longer or shorter name of the same."""
    if key in names or not key:
        return key
    words = key.split()
    return next((known for known in reversed(list(names)) if _same(known.split(), words)), key)


def _same(one: list[str], other: list[str]) -> bool:
    """True for ``cover`` and ``belt cover``."""
    return one[-1] == other[-1] and (set(one) <= set(other) or set(other) <= set(one))
