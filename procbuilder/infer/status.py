"""What is off, fitted for now or otherwise open at this moment of a narration."""

from collections.abc import Iterable

from procbuilder.model.heard import Act
from procbuilder.model.words import singular, thing

OPENING = (Act.OFF, Act.SLACKEN, Act.FOR_NOW, Act.STATE)
CLOSING = (Act.ON, Act.TIGHTEN, Act.NIP, Act.OUT_AGAIN, Act.ENDS)

_ONLY = {"slack": Act.SLACKEN, "for now": Act.FOR_NOW}


class Status:
    """Names of things by what was done to them last."""

    def __init__(self) -> None:
        self._acts: dict[str, tuple[Act, str]] = {}
        self._beside: dict[str, set[str]] = {}
        """Words of the sentences in which a thing was named."""
        self._closing = False
        """Something has been put back."""

    def enter(self, act: Act, name: str, state: str = "") -> Act:
        """Remember what was done; what was fitted for now comes out again, what was off goes on again."""
        key = thing(name)
        before = self._open(name)[0]
        if act is Act.OFF and self.is_for_now(name):
            act, key = Act.OUT_AGAIN, self._key(name)
        elif act is Act.FOR_NOW and before is Act.OFF:
            act = Act.ON
        if act in OPENING:
            self._acts[key] = (act, state)
        elif act in CLOSING:
            known = self._key(name)
            if act is not Act.ON or len(known) >= len(key):
                self._acts.pop(known, None)
            self._closing = True
        return act

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
        return self._open(name)[0] is Act.FOR_NOW

    def _key(self, name: str) -> str:
        """The name itself; when nothing is open of it, the last one that is a longer or shorter name of the same."""
        key = thing(name)
        if key in self._acts or not key:
            return key
        words = key.split()
        return next((known for known in reversed(self._acts) if _same(known.split(), words)), key)

    def _open(self, name: str) -> tuple[Act | None, str]:
        return self._acts.get(self._key(name), (None, ""))

    def holds(self, when: str, name: str, state: str = "") -> bool:
        """True when a thing is ``off``, ``on``, ``slack``, fitted ``for now``, or ``open`` in this state.

        ``any open``: something is in this state. ``late``: something has been put back.
        """
        if when == "on":
            return self._acts.get(thing(name), (None, ""))[0] not in (Act.OFF, Act.SLACKEN)
        if not when:
            return True
        if when == "any open":
            return any(act is Act.STATE and now == state for act, now in self._acts.values())
        if when == "late":
            return self._closing
        act, now = self._open(name)
        if when == "open":
            return act is Act.STATE and now == state
        return act is _ONLY[when] if when in _ONLY else act in (Act.OFF, Act.SLACKEN)

    def is_open(self, name: str) -> bool:
        """True for a thing that something was done to that must be undone."""
        return self._open(name)[0] is not None

    def last_in(self, state: str) -> str:
        """The last thing that is in a state now; empty when none is."""
        return next((name for name, (_, now) in reversed(self._acts.items()) if state and now == state), "")

    @property
    def is_late(self) -> bool:
        """True when something has been put back."""
        return self._closing

    @property
    def off(self) -> list[str]:
        """What is off now."""
        return [name for name, (act, _) in self._acts.items() if act in (Act.OFF, Act.SLACKEN)]


def _same(one: list[str], other: list[str]) -> bool:
    """True for ``cover`` and ``belt cover``."""
    return one[-1] == other[-1] and (set(one) <= set(other) or set(other) <= set(one))
