"""Commands: parse, call one function, print. Messages go to stderr, data to stdout."""

import json
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from procbuilder import __version__
from procbuilder.console import answer, message, plain_signs, progress
from procbuilder.model.fault import Fault
from procbuilder.model.problem import stops

if TYPE_CHECKING:
    from procbuilder.publish.language import Language

app = typer.Typer(
    help="Makes a procedure that an apprentice can follow out of the clips of a repair and a rough list of times.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)

Folder = Annotated[Path, typer.Argument(metavar="DIR", help="Folder of the procedure.")]


@contextmanager
def _speaking(folder: Path | None = None) -> Iterator["Language"]:
    """The language in which to tell of a procedure; a fault is printed as one line and ends with its exit code."""
    from procbuilder.publish.wording.commands import tell
    from procbuilder.publish.wording.faults import said_fault
    from procbuilder.speech import language_for

    language = language_for(folder)
    try:
        yield language
    except Fault as fault:
        message(said_fault(fault, language))
        raise typer.Exit(fault.code) from None
    except KeyboardInterrupt:
        message(tell("stopped", language))
        raise typer.Exit(3) from None


def _version(wanted: bool) -> None:
    if wanted:
        answer(f"procbuilder {__version__}")
        raise typer.Exit


@app.callback()
def _options(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    """Makes a procedure that an apprentice can follow out of the clips of a repair and a rough list of times."""


@app.command()
def demo(
    folder: Annotated[Path, typer.Argument(metavar="[DIR]", help="Where to put the demo.")] = Path("demo"),
) -> None:
    """Copy the demo, a library of two procedures, to a folder, build it, and say where the pages and the PDFs are.

    The demo recordings are drawn and their values are for show.
    """
    from procbuilder.pipeline.demo import demo as run
    from procbuilder.report import highlights, outcome
    from procbuilder.speech import language_for

    with _speaking() as language:
        with progress(language) as report:
            first, *others = run(folder, report)
        own = language_for(first.folder)
        for line in [*highlights(first.edition, own), *outcome(first, own)]:
            answer(line)
        for built in others:
            for line in [built.edition.title, *outcome(built, language_for(built.folder))]:
                answer(line)


@app.command()
def new(
    folder: Annotated[Path, typer.Argument(metavar="DIR", help="Folder to make; it must be new or empty.")],
    recording: Annotated[
        list[Path] | None, typer.Option("--recording", "-r", help="A film of the repair; repeat for several.")
    ] = None,
    steps: Annotated[
        Path | None, typer.Option("--steps", "-s", help="Rough list of times and words: text, CSV, TSV, SRT or WebVTT.")
    ] = None,
    narration: Annotated[
        list[Path] | None, typer.Option("--narration", "-n", help="Subtitles, in the order of the recordings.")
    ] = None,
    refit: Annotated[
        bool, typer.Option("--refit", help="DIR is a procedure: propose the refit of all that it leaves open.")
    ] = False,
) -> None:
    """Make a procedure folder from recordings and a rough list of times.

    Without a list, the steps are drafted from the narration; everything in it is a proposal to be read and changed.
    """
    from procbuilder.pipeline.new import new as run
    from procbuilder.publish.wording.commands import tell
    from procbuilder.report import made_lines, problem_lines

    if refit and not (recording or steps or narration):
        _refit(folder)
        return
    with _speaking() as language:
        if refit or not recording:
            message(tell("new-needs", language))
            raise typer.Exit(2)
        with progress(language) as report:
            made = run(folder, recording, steps, narration or [], report)
        for line in problem_lines(made.problems, language):
            message(line)
        for line in made_lines(made, language):
            answer(line)
        raise typer.Exit(1 if made.problems else 0)


def _refit(folder: Path) -> None:
    """Propose the refit of a procedure."""
    from procbuilder.pipeline.refit import refit
    from procbuilder.report import refit_lines

    with _speaking(folder) as language:
        for line in refit_lines(refit(folder), language):
            answer(line)


@app.command()
def check(
    folder: Folder,
    as_json: Annotated[bool, typer.Option("--json", help="Print the problems as JSON.")] = False,
    add_ids: Annotated[bool, typer.Option("--add-ids", help="Write missing step ids into procedure.md first.")] = False,
    everything: Annotated[bool, typer.Option("--all", help="Show all questions, not only the first.")] = False,
) -> None:
    """Show what is wrong or missing, worst first; exit 1 if something must stop an approval.

    Recordings are not opened: what an earlier build knows of them is used.
    """
    from procbuilder.pipeline.check import check as run
    from procbuilder.pipeline.check import write_ids
    from procbuilder.publish.wording.commands import tell
    from procbuilder.report import checked_lines, known_lines, problem_data

    with _speaking(folder) as language:
        if add_ids:
            message(tell("ids-written", language, count=write_ids(folder)))
        checked = run(folder)
        if as_json:
            answer(json.dumps(problem_data(checked.problems, language), ensure_ascii=False, indent=2, default=str))
        else:
            for line in checked_lines(checked.problems, folder, language, everything=everything):
                answer(line)
        for line in known_lines(checked, language):
            message(line)
        raise typer.Exit(1 if stops(checked.problems) else 0)


@app.command()
def build(
    folder: Annotated[Path, typer.Argument(metavar="DIR", help="Folder of a procedure, or of a library.")],
    edition: Annotated[
        str, typer.Option("--edition", metavar="NAME", help="For people of this qualification; see workshop.toml.")
    ] = "",
    dita: Annotated[bool, typer.Option("--dita", help="Write a DITA 1.3 task too: out/procedure.dita.")] = False,
    film: Annotated[bool, typer.Option("--film", help="Make one film of the whole job, too.")] = False,
    thorough: Annotated[
        bool, typer.Option("--thorough", help="Look for cuts in every picture of the steps; takes much longer.")
    ] = False,
) -> None:
    """Make the page, the PDFs and the data of a procedure, or of every procedure of a library.

    Steps reserved by law do not say how they are done, except in the edition for those who are qualified for them,
    which goes to a folder of its own.

    What can be read is published; while something must stop an approval it is a draft, and the exit code is 1.
    """
    from procbuilder.pipeline.build import Options, procedures
    from procbuilder.pipeline.build import build as run
    from procbuilder.pipeline.outputs import TASK
    from procbuilder.report import checked_lines, outcome

    stopped = False
    with _speaking(folder):
        every = procedures(folder)
    for each in every:
        with _speaking(each) as language:
            with progress(language) as report:
                options = Options(edition, (TASK,) if dita else (), film, thorough)
                built = run(each, report, options)
            for line in checked_lines(built.problems, each, language):
                message(line)
            for line in outcome(built, language):
                answer(line)
            stopped = stopped or bool(stops(built.problems))
    raise typer.Exit(1 if stopped else 0)


@app.command()
def log(
    folder: Folder,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Times as CSV, or the file that the page exports.")],
) -> None:
    """Add practice times to the log of a procedure, and tell how its estimate moves.

    The columns are who (initials or a code), when, step (its id) and minutes. All rows are added, or none.
    """
    from procbuilder.pipeline.log import log as run
    from procbuilder.publish.wording.commands import tell
    from procbuilder.report import log_lines, problem_lines

    with _speaking(folder) as language:
        logged = run(folder, file)
        for line in problem_lines(logged.problems, language):
            message(line)
        if logged.problems:
            message(tell("nothing-added", language, log=logged.log))
            raise typer.Exit(1)
        for line in log_lines(logged, language):
            answer(line)


@app.command()
def serve(
    folder: Folder,
    port: Annotated[int, typer.Option("--port", "-p", min=1, max=65535, help="Port on this machine.")] = 8765,
) -> None:
    """Show a built procedure in the browser from this machine; nobody else can reach it. Ctrl+C ends it."""
    from procbuilder.edit.serve import HOST, output_of
    from procbuilder.edit.serve import serve as run
    from procbuilder.publish.wording.commands import tell

    with _speaking(folder) as language:
        message(tell("serving", language, folder=output_of(folder), address=f"http://{HOST}:{port}/"))
        run(folder, port)


def main() -> None:
    """The program."""
    for stream in (sys.stdout, sys.stderr):
        plain_signs(stream)
    app()


if __name__ == "__main__":
    main()
