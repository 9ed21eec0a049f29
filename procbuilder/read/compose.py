"""The first text of a procedure file, made from a rough step list."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from procbuilder.model.procedure import ListedStep, NamedFile
from procbuilder.model.timecode import format_time
from procbuilder.read.headings import free_id, slug

_LISTS = ("Condition", "Tool", "Wear", "Supply", "Part")


def compose(
    title: str,
    steps: Sequence[ListedStep],
    *,
    recordings: Sequence[NamedFile],
    narration: Sequence[NamedFile] = (),
    durations: Mapping[str, Fraction],
) -> str:
    """Text of a new ``procedure.md``: what is known is written, what is not is left for the technician.

    ``durations`` are the seconds of each recording: there the last step of a list ends.
    The front lists get no values: an empty list is asked for, an invented one would be believed.
    """
    parts = [_front(recordings, narration), f"# {title}", _before()]
    if steps:
        parts += ["## Steps", *_steps(steps, recordings, durations)]
    return "\n\n".join(parts) + "\n"


def _front(recordings: Sequence[NamedFile], narration: Sequence[NamedFile]) -> str:
    lines = ["---", "format: 1", "number:", "revision: A", "status: draft", "item:", "author:"]
    for key, files in (("recordings", recordings), ("narration", narration)):
        if files:
            lines += [f"{key}:", *(f"  {file.name}: {_quoted(file.path)}" for file in files)]
    return "\n".join([*lines, "language: en-GB", "---"])


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _before() -> str:
    words = ", ".join(f"`- {name}: …`" for name in _LISTS)
    return f"## Before you start\n\nFill in what must be ready: {words}. Write `none` where there is nothing."


def _steps(
    steps: Sequence[ListedStep], recordings: Sequence[NamedFile], durations: Mapping[str, Fraction]
) -> list[str]:
    taken: dict[str, int] = {}
    texts = []
    for step in steps:
        name = step.recording or recordings[0].name
        end = durations.get(name, step.start) if step.end is None else step.end
        span = f"{format_time(step.start)}-{format_time(end)}"
        span = f"{name} {span}" if len(recordings) > 1 else span
        step_id = free_id(slug(step.text), taken)
        texts.append(f"### {span} {_command(step.text)} {{#{step_id}}}")
    return texts


def _command(text: str) -> str:
    """The words with a capital in front; nothing else is changed."""
    words = " ".join(text.split()).rstrip(".")
    return words[:1].upper() + words[1:]
