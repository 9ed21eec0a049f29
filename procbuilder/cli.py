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
from procbuilder.model.fault import CannotRead, Fault, cause_of

if TYPE_CHECKING:
    from procbuilder.pipeline.build import Built
    from procbuilder.pipeline.check import Checked
    from procbuilder.pipeline.library import Failed
    from procbuilder.publish.language import Language

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
    except OSError as error:
        denied = CannotRead(Path(error.filename or "."), cause_of(error.errno))
        message(said_fault(denied, language))
        raise typer.Exit(denied.code) from None
    except KeyboardInterrupt:
        message(tell("stopped", language))
        raise typer.Exit(3) from None


def _end(results: "Sequence[Built | Checked | Failed]", language: "Language", *, alone: bool) -> NoReturn:
    """Say how the procedures of a library came out, and end with the gravest exit code."""
    from procbuilder.report.results import exit_code, library_lines

    for line in [] if alone else library_lines(results, language):
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
    from procbuilder.report.highlights import highlights
    from procbuilder.report.results import outcome
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
    from procbuilder.report.problems import problem_lines
    from procbuilder.report.results import made_lines

    if refit and not (recording or steps or narration):
        _refit(folder)
        return
    with _speaking() as language:
        if refit or not recording:
            message(tell("new-needs", language))
            raise typer.Exit(2)
        with progress(language) as report:
            made = run(folder, recording, steps, narration or [], report, language)
        for line in problem_lines(made.problems, language):
            message(line)
        for line in made_lines(made, language):
            answer(line)
        raise typer.Exit(1 if made.problems else 0)


def _refit(folder: Path) -> None:
    """Propose the refit of a procedure."""
    from procbuilder.pipeline.refit import refit
    from procbuilder.report.results import refit_lines

    with _speaking(folder) as language:
        for line in refit_lines(refit(folder), language):
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
    from procbuilder.publish.wording.commands import tell
    from procbuilder.report.problems import checked_lines, known_lines, problem_data
    from procbuilder.speech import language_for

    with _speaking(folder) as language:
        if add_ids:
            message(tell("ids-written", language, count=sum(map(write_ids, procedures(folder)))))
        alone = is_procedure(folder)
        results = [run(folder)] if alone else list(check_all(folder))
        checked = [(each, language_for(each.folder)) for each in results if not isinstance(each, Failed)]
        if as_json:
            data = [one for each, own in checked for one in problem_data(each, own, alone=alone)]
            answer(json.dumps(data, ensure_ascii=False, indent=2, default=str))
        for each, own in checked:
            for line in [] if as_json else checked_lines(each.problems, each.folder, own, everything=everything):
                answer(line)
            for line in known_lines(each, own):
                message(line)
        _end(results, language, alone=alone)


@app.command()
def build(
    folder: Library,
    edition: Annotated[
        str, typer.Option("--edition", metavar="NAME", help="For people of this qualification; see workshop.toml.")
    ] = "",
    dita: Annotated[bool, typer.Option("--dita", help="Write a DITA 1.3 task too: out/procedure.dita.")] = False,
    film: Annotated[bool, typer.Option("--film", help="Make one film of the whole job, too.")] = False,
    thorough: Annotated[
        bool, typer.Option("--thorough", help="Look for cuts in every picture, also of the largest recordings; slow.")
    ] = False,
) -> None:
    """Make the page, the PDFs and the data of a procedure, or of every procedure of a library.

    Steps reserved by law do not say how they are done, except in the edition for those who are qualified for them,
    which goes to a folder of its own.

    What can be read is published; while something must stop an approval it is a draft, and the exit code is 1. Of a
    library, a procedure that fails keeps its last good output, the others are built, and the gravest exit code counts.
    """
    from procbuilder.pipeline.build import Options
    from procbuilder.pipeline.build import build as run
    from procbuilder.pipeline.jobs import Job, jobs
    from procbuilder.pipeline.library import Failed, is_procedure
    from procbuilder.pipeline.outputs import TASK
    from procbuilder.report.problems import checked_lines
    from procbuilder.report.results import outcome
    from procbuilder.speech import language_for

    options = Options(edition, (TASK,) if dita else (), film, thorough)
    with _speaking(folder) as language:
        alone = is_procedure(folder)
        results: list[Built | Failed] = []
        for job in [Job(folder, partial(run, folder, options=options))] if alone else jobs(folder, options):
            own = language_for(job.folder)
            with progress(own) as told:
                results.append(built := job.run(told))
            if isinstance(built, Failed):
                continue
            for line in checked_lines(built.problems, built.folder, own):
                message(line)
            for line in outcome(built, own):
                answer(line)
        _end(results, language, alone=alone)


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
    from procbuilder.report.problems import problem_lines
    from procbuilder.report.results import log_lines

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
    from procbuilder.edit.serve import output_of
    from procbuilder.edit.serve import serve as run
    from procbuilder.publish.wording.commands import tell

    with _speaking(folder) as language:
        served = output_of(folder)
        run(folder, port, lambda address: message(tell("serving", language, folder=served, address=address)))


def main() -> None:
    """The program."""
    for stream in (sys.stdout, sys.stderr):
        plain_signs(stream)
    app()


if __name__ == "__main__":
    main()
