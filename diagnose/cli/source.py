"""Where a case comes from: a file, standard input, or answers typed on the command line."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.book.nodes import Page
    from diagnose.case.entries import Case, Entry

F = TypeVar("F", bound=Callable[..., Any])
STDIN = "standard input"


def planned_options(command: F) -> F:
    """CASE, --answer, --machine, --wheel."""
    for add in (
        click.option("--wheel", help="Id of a wheel card of the shop."),
        click.option("--machine", help="Id of a machine card of the shop."),
        click.option(
            "--answer",
            "-a",
            "answers",
            multiple=True,
            metavar="CHECK=VALUE",
            help="One answer; may be repeated.",
        ),
        click.argument("case", required=False, metavar="[CASE]"),
    ):
        command = add(command)
    return command


def case_options(command: F) -> F:
    """CASE, --complaint, --answer, --machine, --wheel."""
    complaint = click.option(
        "--complaint",
        "-c",
        "complaints",
        multiple=True,
        metavar="WORDS",
        help="What is wrong with the part; may be repeated.",
    )
    return complaint(planned_options(command))


def case_from(
    book: Book,
    name: str | None,
    complaints: Sequence[str],
    answers: Sequence[str],
    machine: str | None = None,
    wheel: str | None = None,
) -> Case:
    """The case named or typed; typed answers come after those of the file.

    Raises BookError with every fault, click.UsageError when there is no case at all.
    """
    from diagnose.case.entries import Case

    if name is None and not complaints:
        raise click.UsageError(
            "name a case file, or say what is wrong with --complaint WORDS "
            "and give answers with --answer CHECK=VALUE"
        )
    case = load(name, book) if name is not None else Case("typed on the command line", ())
    symptoms = tuple(symptom_meant(words, book) for words in complaints)
    entries = tuple(entry_typed(text, book) for text in answers)
    complaint = tuple(dict.fromkeys((*case.complaint, *symptoms)))
    if not complaint:
        mend = "review it with: diagnose review CASE, or add --complaint WORDS"
        raise fault("this is a planned job: it has no complaint yet", mend)
    return replace(
        case,
        complaint=complaint,
        entries=(*case.entries, *entries),
        machine=machine or case.machine,
        wheel=wheel or case.wheel,
    )


def planned_from(
    book: Book,
    name: str | None,
    answers: Sequence[str],
    machine: str | None = None,
    wheel: str | None = None,
) -> Case:
    """The planned job named or typed. A case with a complaint is reviewed as it was set up.

    Raises BookError with every fault, click.UsageError when there is nothing to review.
    """
    from diagnose.case.entries import Case

    if name is None and not answers:
        raise click.UsageError(
            "name a case file, or say how it is set up with --answer CHECK=VALUE"
        )
    case = load(name, book) if name is not None else Case("typed on the command line", ())
    entries = tuple(entry_typed(text, book) for text in answers)
    return replace(
        case,
        entries=(*case.entries, *entries),
        machine=machine or case.machine,
        wheel=wheel or case.wheel,
    )


def load(name: str, book: Book) -> Case:
    """The case of a file, or of standard input for `-`. Raises BookError."""
    from diagnose.case.files import case_of, load_case

    return case_of(_typed_page(), book) if name == "-" else load_case(Path(name), book)


def _typed_page() -> Page:
    from diagnose.book.nodes import Refused
    from diagnose.book.pages import MOST_BYTES, page_of
    from diagnose.book.problems import BookError

    try:
        return page_of(STDIN, sys.stdin.buffer.read(MOST_BYTES + 1))
    except Refused as refused:
        raise BookError(refused.problems) from None


def fault(what: str, mend: str = "", near: str = "") -> Exception:
    from diagnose.book.problems import BookError, Problem

    return BookError([Problem("command line", 0, 0, what, mend, near)])


def symptom_meant(words: str, book: Book) -> str:
    """The one symptom these words mean. Raises BookError with the nearest names."""
    from diagnose.book.complaints import symptoms_meant
    from diagnose.book.near import listed, nearest

    meant = symptoms_meant(words, book)
    if len(meant) == 1:
        return meant[0]
    if meant:
        what = f"'{words}' could be more than one complaint"
        raise fault(what, f"write which one: {listed(meant)}")
    near = nearest("-".join(words.lower().split()), book.symptoms)
    mend = "" if near else f"the complaints are: {listed(book.symptoms, 40)}"
    raise fault(f"no complaint is known as '{words}'", mend, near)


def entry_typed(text: str, book: Book) -> Entry:
    from diagnose.book.answers import AnswerError, read_answer
    from diagnose.book.near import listed, nearest
    from diagnose.case.entries import Entry

    name, equals, value = text.partition("=")
    name = book.renamed.get(name.strip(), name.strip())
    if not equals:
        raise fault(f"'{text}' is no answer", "write it as CHECK=VALUE")
    check = book.checks.get(name)
    if check is None:
        near = nearest(name, book.checks)
        mend = "" if near else f"the checks are: {listed(book.checks, 40)}"
        raise fault(f"there is no check '{name}'", mend, near)
    try:
        return Entry("answer", name, read_answer(check, value, numbered=False))
    except AnswerError as error:
        raise fault(error.what, error.mend, error.near) from None
