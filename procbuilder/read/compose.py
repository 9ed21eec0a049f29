"""The first text of a procedure file, made from a rough step list or from what a narration tells."""

from collections.abc import Collection, Mapping, Sequence
from fractions import Fraction

from procbuilder.model.drafted import DerivedStep, DraftTexts, Landing, ProposedField, ProposedStep
from procbuilder.model.fields import BY_NAME
from procbuilder.model.procedure import ListedStep, NamedFile
from procbuilder.model.timecode import Span, format_time
from procbuilder.read.headings import free_id, slug


def compose(
    title: str,
    steps: Sequence[ListedStep],
    texts: DraftTexts,
    *,
    recordings: Sequence[NamedFile],
    narration: Sequence[NamedFile] = (),
    durations: Mapping[str, Fraction],
    proposed: Sequence[ProposedStep] = (),
    before: Sequence[ProposedField] = (),
) -> str:
    """Text of a new ``procedure.md``: what is known is written, what is not is left for the technician.

    ``durations`` are the seconds of each recording: there the last step of a list ends.
    The front lists get no values: an empty list is asked for, an invented one would be believed.
    ``proposed`` are steps told in a narration, ``before`` what it says of the whole job; each of their
    fields shows when it was said.
    """
    parts = [_front(recordings, narration, texts.language), f"# {title}"]
    parts += [f"## {texts.before}", texts.ready, *_block(before)]
    if steps or proposed:
        parts += [f"## {texts.steps}", *_steps(steps, recordings, durations), *_proposed(proposed, recordings)]
    return "\n\n".join(parts) + "\n"


def derived_section(title: str, steps: Sequence[DerivedStep], taken: Collection[str]) -> str:
    """Text of a section of refit steps, to be put behind a procedure that has these ids already."""
    known = dict.fromkeys(taken, 1)
    parts = [f"## {title}"]
    for step in steps:
        step_id = free_id(slug(f"{step.thing} back"), known)
        fields = "\n".join(f"- {name}: {value}" for name, value in step.fields)
        parts += [f"### {step.command} {{#{step_id}}}", fields]
    return "\n\n".join(parts) + "\n"


def receipts(landings: Sequence[Landing]) -> str:
    """Every sentence of a narration with its time, and where it went in the draft."""
    lines = [f"{one.sentence.origin.words}: {_where(one)}: {one.sentence.words}" for one in landings]
    head = (
        "What was heard, and where it went. The step numbers are those of the draft. What stands behind perhaps was"
        " found by one of two readings only: look at it first."
    )
    return "\n".join([head, "", *lines, ""])


def _where(landing: Landing) -> str:
    if landing.aside:
        return f"set aside ({landing.how})"
    return f"step {landing.step} ({landing.how})" if landing.step else landing.how


def _front(recordings: Sequence[NamedFile], narration: Sequence[NamedFile], language: str) -> str:
    lines = ["---", "format: 1", "number:", "revision: A", "status: draft", "item:", "author:"]
    for key, files in (("recordings", recordings), ("narration", narration)):
        if files:
            lines += [f"{key}:", *(f"  {file.name}: {_quoted(file.path)}" for file in files)]
    return "\n".join([*lines, f"language: {language}", "---"])


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _steps(
    steps: Sequence[ListedStep], recordings: Sequence[NamedFile], durations: Mapping[str, Fraction]
) -> list[str]:
    return _proposed(as_proposed(steps, recordings, durations), recordings)


def as_proposed(
    steps: Sequence[ListedStep], recordings: Sequence[NamedFile], durations: Mapping[str, Fraction]
) -> tuple[ProposedStep, ...]:
    """Typed steps without fields yet; the last one of a recording ends with it."""
    made = []
    for step in steps:
        name = step.recording or recordings[0].name
        end = durations.get(name, step.start) if step.end is None else step.end
        made.append(ProposedStep(step.text, Span(name, step.start, end), ()))
    return tuple(made)


def _command(text: str) -> str:
    """The words with a capital in front, without a comma there, which would join them to the time before."""
    words = " ".join(text.split()).rstrip(".").lstrip(", ")
    return words[:1].upper() + words[1:]


def _proposed(steps: Sequence[ProposedStep], recordings: Sequence[NamedFile]) -> list[str]:
    taken: dict[str, int] = {}
    texts = []
    for step in steps:
        span = f"{_span(step.span, recordings)} " if step.span else ""
        step_id = free_id(slug(step.command), taken)
        texts += [f"### {span}{_command(step.command)} {{#{step_id}}}", *_block(step.fields)]
    return texts


def _span(span: Span, recordings: Sequence[NamedFile]) -> str:
    times = f"{format_time(span.start)}-{format_time(span.end)}"
    return f"{span.recording} {times}" if len(recordings) > 1 else times


def _block(fields: Sequence[ProposedField]) -> list[str]:
    """The fields as one list, with their origin at the end of each; nothing where there are none."""
    lines = [f"- {one.name}: {_value(one)} ({one.origin.words})" for one in fields]
    return ["\n".join(lines)] if lines else []


def _value(field: ProposedField) -> str:
    return " | ".join(_literal(field, part) for part in field.parts)


def _literal(field: ProposedField, part: str) -> str:
    """Spoken words on one line, with the signs that part the field kept as such."""
    text = " ".join(part.split()).replace("|", "\\|")
    return text.replace(";", "\\;") if BY_NAME[field.name.casefold()].items == "many" else text
