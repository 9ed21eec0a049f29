"""What is off, fitted for now or otherwise open at this moment of a narration."""

from procbuilder.model.heard import Act
from procbuilder.model.words import thing

OPENING = (Act.OFF, Act.SLACKEN, Act.FOR_NOW, Act.STATE)
CLOSING = (Act.ON, Act.TIGHTEN, Act.NIP, Act.OUT_AGAIN, Act.ENDS)


class Status:
    """Names of things by what was done to them last."""

    def __init__(self) -> None:
        self._acts: dict[str, Act] = {}

    def enter(self, act: Act, name: str) -> Act:
        """Remember what was done; what was fitted for now comes out again, what was off goes on again."""
        key = thing(name)
        before = self._acts.get(key)
        if act is Act.OFF and before is Act.FOR_NOW:
            act = Act.OUT_AGAIN
        elif act is Act.FOR_NOW and before is Act.OFF:
            act = Act.ON
        if act in OPENING:
            self._acts[key] = act
        elif act in CLOSING:
            self._acts.pop(key, None)
        return act

    def is_for_now(self, name: str) -> bool:
        """True for what was fitted for the job only."""
        return self._acts.get(thing(name)) is Act.FOR_NOW

    def holds(self, when: str, name: str) -> bool:
        """True when a thing is ``off``, ``on`` or ``open`` now."""
        act = self._acts.get(thing(name))
        if when == "open":
            return act is Act.STATE
        return (act in (Act.OFF, Act.SLACKEN)) is (when == "off")

    def is_open(self, name: str) -> bool:
        """True for a thing that something was done to that must be undone."""
        return thing(name) in self._acts

    @property
    def off(self) -> list[str]:
        """What is off now."""
        return [name for name, act in self._acts.items() if act in (Act.OFF, Act.SLACKEN)]
