"""The colours that page, print and film share, read from ``templates/tokens.toml``."""

import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from procbuilder.model.film import Panel
from procbuilder.model.signal import Signal

FILE = "tokens.toml"

_DAY = ":root"
_DARK = ':root[data-scheme="dark"]'
_DARK_DEVICE = ':root:not([data-scheme="bright"])'
_BRIGHT = ':root[data-scheme="bright"]'


def panels(templates: Path) -> Mapping[Signal, Panel]:
    """How each signal word is set."""
    return {Signal(word): Panel(**look) for word, look in _tokens(templates)["panels"].items()}


def style(templates: Path) -> str:
    """The tokens as CSS: a scheme for each light, as the device or its switch says, and a class a signal word."""
    return "\n".join(_rules(templates))


def _rules(templates: Path) -> Iterator[str]:
    schemes = _tokens(templates)["schemes"]
    yield _scheme(_DAY, "light dark", schemes["day"])
    yield f"@media (prefers-color-scheme: dark) {{ {_scheme(_DARK_DEVICE, '', schemes['dark'])} }}"
    yield _scheme(_DARK, "dark", schemes["dark"])
    yield _scheme(_BRIGHT, "light", schemes["bright"])
    yield f"@media print {{ {_scheme(_DAY, '', schemes['print'])} }}"
    for signal, panel in panels(templates).items():
        slanted = "" if panel.alert else " font-style: italic;"
        yield f".{signal.value.lower()} {{ background: {panel.ground}; color: {panel.ink};{slanted} }}"


def _scheme(where: str, scheme: str, colours: Mapping[str, str]) -> str:
    means = f"color-scheme: {scheme}; " if scheme else ""
    return f"{where} {{ {means}{' '.join(f'--{name}: {colour};' for name, colour in colours.items())} }}"


@cache
def _tokens(templates: Path) -> dict[str, Any]:
    return tomllib.loads((templates / FILE).read_text(encoding="utf-8"))
