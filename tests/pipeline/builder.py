"""Builds in processes of their own, quickly begun, so that they can be killed at any moment."""

import os
import subprocess
import sys
from contextlib import AbstractContextManager
from pathlib import Path
from types import TracebackType

_CODE = """
import os, sys
from pathlib import Path
import av, cv2, typst
from procbuilder.media import clips, keyframe, probe, stills
from procbuilder.pipeline.build import build
for line in sys.stdin:
    child = os.fork()
    if not child:
        build(Path(line.rstrip()))
        os._exit(0)
    print(child, flush=True)
    print(os.waitpid(child, 0)[1], flush=True)
"""


class Builder(AbstractContextManager["Builder"]):
    """A process in which all is loaded and nothing has run yet; it splits off a child for each build."""

    def __init__(self) -> None:
        environment = {**os.environ, "OPENBLAS_NUM_THREADS": "1"}
        command = [sys.executable, "-c", _CODE]
        self._process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=environment
        )

    def begin(self, folder: Path) -> int:
        """Begin to build a folder; the id of the process that does it."""
        assert self._process.stdin
        self._process.stdin.write(f"{folder}\n")
        self._process.stdin.flush()
        return int(self._line())

    def end(self) -> int:
        """Wait for the end of the build; 0 when it was done."""
        return int(self._line())

    def _line(self) -> str:
        assert self._process.stdout
        return self._process.stdout.readline()

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._process.communicate()
