"""What comes with the program: where the templates and the demo lie."""

from pathlib import Path

_PACKAGE = Path(__file__).parent.parent


def shipped(name: str) -> Path:
    """A folder that comes with procbuilder, such as ``templates`` or ``sample_media``.

    It lies inside the installed package, or beside it in a clone.
    """
    inside = _PACKAGE / "shipped" / name
    return inside if inside.is_dir() else _PACKAGE.parent / name
