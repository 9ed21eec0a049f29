"""What the tests of bad input share."""

from pathlib import Path

from typer.testing import CliRunner

from procbuilder.cli import app
from tests.pipeline.text import WHOLE

TITLE = "Drill belt cover – off and on"
FRONT = WHOLE.split("# Drill")[0]


def run_build(home: Path) -> tuple[int, list[str]]:
    """Exit code and messages of the command, with the folder left out of them; never a traceback."""
    result = CliRunner().invoke(app, ["build", str(home)])
    assert result.exception is None or isinstance(result.exception, SystemExit)
    return result.exit_code, result.stderr.replace(f"{home}/", "").splitlines()
