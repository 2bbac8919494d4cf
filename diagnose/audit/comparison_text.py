"""The comparison of two knowledge folders as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.comparing import Comparison, Move, Stand
from diagnose.audit.otherwise import Said

SHOWN = 12  # rows of one list on the terminal; --all and --json have them all
WIDEST = 60  # signs of a text before and after; what is alike in both is cut first
AROUND = 2  # words kept on either side of what differs


def comparison_text(view: Comparison, all_rows: bool = False) -> str:
    """What is said otherwise, then what moved, worse first; long lists are folded."""
    most = None if all_rows else SHOWN
    lines = [f"From knowledge {view.old} to {view.new}", ""]
    if view.said:
        places = "1 place" if len(view.said) == 1 else f"{len(view.said)} places"
        lines += [f"Said otherwise, in {places}:", *_folded([_said(s) for s in view.said], most)]
    else:
        lines.append("Nothing is said otherwise.")
    kinds = [
        (f"{kind}, {what}", ids) for kind, t in view.changes.items() for what, ids in t.items()
    ]
    if kinds:
        lines += ["", "Entries by kind:", *(f"  {what}: {_ids(ids, most)}" for what, ids in kinds)]
    counts = ", ".join(f"{view.count(v)} {v}" for v in ("worse", "better", "moved", "same"))
    lines += ["", f"{len(view.moves)} examples and cases: {counts}"]
    for verdict in ("worse", "better", "moved"):
        rows = [_move(m) for m in view.moves if m.verdict == verdict]
        if rows:
            lines += ["", f"{verdict.capitalize()}:", *_folded(rows, most)]
    return "\n".join(lines)


def _folded(rows: list[str], most: int | None) -> Iterator[str]:
    yield from (f"  {row}" for row in rows[:most])
    if most is not None and len(rows) > most:
        yield f"  and {len(rows) - most} more; --all"


def _ids(ids: tuple[str, ...], most: int | None) -> str:
    more = f" and {len(ids) - most} more; --all" if most is not None and len(ids) > most else ""
    return ", ".join(ids[:most]) + more


def _said(said: Said) -> str:
    before, after = shortened(said.before, said.after)
    told = {
        "changed": f": {before} -> {after}",
        "moved": f": {before} -> {after}",
        "new": f", added: {after}",
        "gone": f", taken out: {before}",
    }[said.what]
    what = f"{said.kind} {said.entry}" + (f", {said.field}" if said.field else "")
    if not said.field:
        told = f" is new: {after}" if said.what == "new" else f" is gone: {before}"
    place = f"{said.file}:{said.line}" + (" (before)" if said.version == "old" else "")
    return f"{place}: {what}{told}"


def shortened(before: str, after: str) -> tuple[str, str]:
    """Both texts on one line, cut down to what differs and a word or two around it."""
    old, new = before.split(), after.split()
    if old == new and before != after:
        return "blanks", "other blanks"
    if max(len(before), len(after)) <= WIDEST:
        return " ".join(old) or "nothing", " ".join(new) or "nothing"
    shorter = min(len(old), len(new))
    head = next((n for n in range(shorter) if old[n] != new[n]), shorter)
    tail = next((n for n in range(shorter - head) if old[-1 - n] != new[-1 - n]), shorter - head)
    return _cut(old, head, tail), _cut(new, head, tail)


def _cut(words: list[str], head: int, tail: int) -> str:
    """The words without those alike at both ends, but for a few."""
    first, last = max(0, head - AROUND), min(len(words), len(words) - tail + AROUND)
    text = " ".join(words[first:last])
    if len(text) > WIDEST:
        text, last = text[:WIDEST].rsplit(" ", 1)[0], 0
    before = "... " if first else ""
    return f"{before}{text}{' ...' if last < len(words) else ''}" if words else "nothing"


def _move(move: Move) -> str:
    who = f"{move.cause} ({move.wanted})" if move.cause else "who is first"
    row = f"{move.kind} '{move.title}', {who}: {_stand(move.before)} -> {_stand(move.after)}"
    if move.before.first != move.after.first:
        row += f"; first was {move.before.first or 'nothing'}, is {move.after.first or 'nothing'}"
    notes = [n for n in (move.before.note, move.after.note) if n]
    return f"{row} [{'; '.join(dict.fromkeys(notes))}]" if notes else row


def _stand(stand: Stand) -> str:
    return f"{stand.rank or 'nowhere'} ({stand.chance:.2f})"
