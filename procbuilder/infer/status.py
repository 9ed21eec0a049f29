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
        """Remember what was done; what was fitted for now and is taken off comes out again."""
        key = thing(name)
        if act is Act.OFF and self._acts.get(key) is Act.FOR_NOW:
            act = Act.OUT_AGAIN
        if act in OPENING:
            self._acts[key] = act
        elif act in CLOSING:
            self._acts.pop(key, None)
        return act

    def is_open(self, name: str) -> bool:
        """True for a thing that something was done to that must be undone."""
        return thing(name) in self._acts

    @property
    def off(self) -> list[str]:
        """What is off now."""
        return [name for name, act in self._acts.items() if act in (Act.OFF, Act.SLACKEN)]
