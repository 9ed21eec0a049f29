"""Commands: parse, call one function, print. Messages go to stderr, data to stdout."""

import json
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, NoReturn

import typer

from procbuilder import __version__
from procbuilder.console import answer, message, plain_signs, progress
from procbuilder.model.fault import Fault

if TYPE_CHECKING:
    from procbuilder.pipeline.build import Built
    from procbuilder.pipeline.check import Checked
    from procbuilder.pipeline.library import Failed

app = typer.Typer(
    help="Makes a procedure that an apprentice can follow out of the clips of a repair and a rough list of times.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)

Folder = Annotated[Path, typer.Argument(metavar="DIR", help="Folder of the procedure.")]
Library = Annotated[Path, typer.Argument(metavar="DIR", help="Folder of a procedure, or of a library.")]


@contextmanager
def _faults_shown() -> Iterator[None]:
    """Print a fault as one line and end with its exit code."""
    try:
        yield
    except Fault as fault:
        from procbuilder.publish.wording.faults import said_fault

        message(said_fault(fault))
        raise typer.Exit(fault.code) from None
    except KeyboardInterrupt:
        message("stopped; what was there before is unchanged")
        raise typer.Exit(3) from None


def _end(results: "Sequence[Built | Checked | Failed]", *, alone: bool) -> NoReturn:
    """Say how the procedures of a library came out, and end with the gravest exit code."""
    from procbuilder.report import exit_code, library_lines

    for line in [] if alone else library_lines(results):
        message(line)
    raise typer.Exit(max(map(exit_code, results)))


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

    with _faults_shown():
        with progress() as report:
            first, *others = run(folder, report)
        for line in [*highlights(first.edition), *outcome(first)]:
            answer(line)
        for built in others:
            for line in [built.edition.title, *outcome(built)]:
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
    from procbuilder.report import problem_lines

    if refit and not (recording or steps or narration):
        _refit(folder)
        return
    if refit or not recording:
        message("new needs at least one --recording, or --refit alone for a procedure that is there")
        raise typer.Exit(2)
    with _faults_shown():
        with progress() as report:
            made = run(folder, recording, steps, narration or [], report)
        for line in problem_lines(made.problems):
            message(line)
        answer(f"{made.folder / 'procedure.md'}: {made.steps} steps. Fill it in, then run: procbuilder build {folder}")
        if made.set_aside is not None:
            answer(f"{made.folder / 'narration/heard.txt'}: where each sentence went; {made.set_aside} are in no step")
        raise typer.Exit(1 if made.problems else 0)


def _refit(folder: Path) -> None:
    """Propose the refit of a procedure."""
    from procbuilder.pipeline.refit import refit
    from procbuilder.report import refit_lines

    with _faults_shown():
        for line in refit_lines(refit(folder)):
            answer(line)


@app.command()
def check(
    folder: Library,
    as_json: Annotated[bool, typer.Option("--json", help="Print the problems as JSON.")] = False,
    add_ids: Annotated[bool, typer.Option("--add-ids", help="Write missing step ids into procedure.md first.")] = False,
    everything: Annotated[bool, typer.Option("--all", help="Show all questions, not only the first.")] = False,
) -> None:
    """Show what is wrong or missing, worst first, in a procedure or in every procedure of a library.

    The exit code is 1 if something must stop an approval.

    Recordings are not opened: what an earlier build knows of them is used.
    """
    from procbuilder.pipeline.check import check as run
    from procbuilder.pipeline.check import check_all, write_ids
    from procbuilder.pipeline.library import Failed, is_procedure, procedures
    from procbuilder.report import checked_lines, checked_notes, problem_data

    with _faults_shown():
        if add_ids:
            message(f"{sum(write_ids(each) for each in procedures(folder))} step ids written")
        alone = is_procedure(folder)
        results = [run(folder)] if alone else list(check_all(folder))
        checked = [each for each in results if not isinstance(each, Failed)]
        if as_json:
            data = [one for each in checked for one in problem_data(each.problems, None if alone else each.folder.name)]
            answer(json.dumps(data, ensure_ascii=False, indent=2))
        for each in checked:
            for line in [] if as_json else checked_lines(each.problems, each.folder, everything=everything):
                answer(line)
            for line in checked_notes(each):
                message(line)
        _end(results, alone=alone)


@app.command()
def build(
    folder: Library,
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

    What can be read is published; while something must stop an approval it is a draft, and the exit code is 1. Of a
    library, a procedure that fails keeps its last good output, the others are built, and the gravest exit code counts.
    """
    from procbuilder.pipeline.build import Options, jobs
    from procbuilder.pipeline.build import build as run
    from procbuilder.pipeline.library import Failed, is_procedure
    from procbuilder.pipeline.outputs import TASK
    from procbuilder.report import checked_lines, outcome

    options = Options(edition, (TASK,) if dita else (), film, thorough)
    with _faults_shown():
        alone = is_procedure(folder)
        results: list[Built | Failed] = []
        for job in [partial(run, folder, options=options)] if alone else jobs(folder, options):
            with progress() as told:
                built = job(told)
            results.append(built)
            if isinstance(built, Failed):
                continue
            for line in checked_lines(built.problems, built.folder):
                message(line)
            for line in outcome(built):
                answer(line)
        _end(results, alone=alone)


@app.command()
def log(
    folder: Folder,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Times as CSV, or the file that the page exports.")],
) -> None:
    """Add practice times to the log of a procedure, and tell how its estimate moves.

    The columns are who (initials or a code), when, step (its id) and minutes. All rows are added, or none.
    """
    from procbuilder.pipeline.log import log as run
    from procbuilder.report import log_lines, problem_lines

    with _faults_shown():
        logged = run(folder, file)
        for line in problem_lines(logged.problems):
            message(line)
        if logged.problems:
            message(f"nothing was added to {logged.log}")
            raise typer.Exit(1)
        for line in log_lines(logged):
            answer(line)


@app.command()
def serve(
    folder: Folder,
    port: Annotated[int, typer.Option("--port", "-p", min=1, max=65535, help="Port on this machine.")] = 8765,
) -> None:
    """Show a built procedure in the browser from this machine; nobody else can reach it. Ctrl+C ends it."""
    from procbuilder.edit.serve import HOST, output_of
    from procbuilder.edit.serve import serve as run

    with _faults_shown():
        message(f"{output_of(folder)} is at http://{HOST}:{port}/ – Ctrl+C ends it")
        run(folder, port)


def main() -> None:
    """The program."""
    for stream in (sys.stdout, sys.stderr):
        plain_signs(stream)
    app()


if __name__ == "__main__":
    main()
