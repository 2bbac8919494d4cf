"""`python -m tests.stories`: every story played with the players' answers, and the counts."""

from __future__ import annotations

import statistics
import sys

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from tests.stories.replaying import ANSWERS, Told, judged, play


def row(told: Told) -> str:
    """The story as a row of the table in PLAYED.md."""
    places = "; ".join(f"{p.cause} {p.place or '-'}, {p.share:.2f}" for p in told.places)
    where = places or f"{told.kind}; first {told.first}, none of these {told.none:.2f}"
    ended = told.end if told.end.startswith("fix") else told.end.split()[0]
    return (
        f"| {told.number} | {where} | {told.questions} ({told.unknown}) "
        f"| {told.told} "
        f"| {', '.join(told.stops) or '-'} | {ended} |"
    )


def counts(plays: list[Told]) -> str:
    """First, first three, questions, hazards."""
    listed = [t for t in plays if t.places]
    right = {t.number: set(judged()[t.number].get("stops", ())) for t in plays}
    dangers = [t for t in plays if right[t.number]]
    return (
        f"true cause first {sum(t.best == 1 for t in listed)} of {len(listed)}, "
        f"in the first three {sum(t.best <= 3 for t in listed)}; "
        f"questions {statistics.median(t.questions for t in plays):g} at the median "
        f"(each list one of them), {statistics.median(t.told for t in plays):g} looks told; "
        f"hazards stopped {sum(bool(right[t.number] & set(t.stops)) for t in dangers)} "
        f"of {len(dangers)}"
    )


def main() -> int:
    """Play and print."""
    book = load_book(knowledge_folder())
    wanted = sys.argv[1:] or sorted((p.stem for p in ANSWERS.glob("*.yaml")), key=int)
    plays = [play(book, number) for number in wanted]
    print(
        "| story | true cause: place, share | questions (don't know) | told | stops | ends with |"
    )
    print("|---|---|---|---|---|---|")
    for told in plays:
        print(row(told))
    print(counts(plays))
    return 0


if __name__ == "__main__":
    sys.exit(main())
