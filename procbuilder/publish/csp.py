"""The content security policy of a page that carries its own script and style."""

import base64
import hashlib


def digest(text: str) -> str:
    """The hash by which a policy names one inline script or style."""
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def policy(*scripts: str, style: str) -> str:
    """Everything is refused but these scripts, this style, and pictures and clips beside or inside the page."""
    allowed = " ".join(f"'{digest(script)}'" for script in scripts) or "'none'"
    return "; ".join(
        (
            "default-src 'none'",
            f"script-src {allowed}",
            f"style-src '{digest(style)}'",
            "img-src 'self' data:",
            "media-src 'self' data:",
            "base-uri 'none'",
            "form-action 'none'",
        )
    )
