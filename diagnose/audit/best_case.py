"""The case in which everything speaks for one cause: what the book can say of it at the most.

Its strongest complaint, the signs that tell most at their most telling value, what else it shows
not looked for, every other sign that can be asked for not there, its circumstances so. Where even
that does not bring it forward, no answers can.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from diagnose.audit.acting import bare_network
from diagnose.book.model import Book, Cause
from diagnose.reasoning.assembly import width
from diagnose.reasoning.belief import believe
from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import Network

MOST_SEEN = 6  # signs seen at once; more only makes the sum wide


@dataclass(frozen=True)
class BestCase:
    """Rank of the cause in its own best case (0: ruled out), who stands above, what is left out."""

    cause: str
    complaint: str
    rank: int
    acts: float
    above: str
    width: int  # of the exact sum, as a number of combinations


def best_case(book: Book, cause: Cause) -> BestCase | None:
    """The best case of a cause; None when it shows no symptom."""
    shown = [link for link in cause.shows if link.finding in book.symptoms]
    if not shown:
        return None
    complaint = max(shown, key=lambda link: (link.how_often, link.finding)).finding
    network = _network(book, cause, complaint)
    wide = width(network, network.evidence)
    belief = believe(network)
    names = [r.cause for r in belief.ranked]
    rank = names.index(cause.id) + 1 if cause.id in names else 0
    acts = belief.ranked[rank - 1].acts if rank else 0.0
    above = ", ".join(names[: min(3, max(rank - 1, 0))])
    return BestCase(cause.id, complaint, rank, acts, above, wide)


def _network(book: Book, cause: Cause, complaint: str) -> Network:
    network = bare_network(book, complaint)
    seen = _most_telling(book, cause, complaint)
    asked = {f for c in book.checks.values() for f in c.settles}
    shown = {link.finding for link in cause.shows}
    evidence: dict[str, Vector] = {complaint: (0.0, 1.0)}
    for sign, vector in network.background.items():
        place = seen.get(sign, 0)
        if sign == complaint or sign in book.symptoms or (sign not in asked and not place):
            continue
        if sign in shown and sign not in seen:
            continue
        evidence[sign] = tuple(float(k == place) for k in range(len(vector)))
    named = complaint
    for sign in sorted(seen):
        blunter = book.findings[sign].sharpens
        while blunter:
            named = sign if blunter == named else named
            evidence.pop(blunter, None)
            blunter = book.findings[blunter].sharpens
    nodes = tuple(
        replace(n, prior=_raised(book, cause), there=1.0, absent=_absent(cause))
        if n.id == cause.id
        else n
        for n in network.nodes
    )
    return replace(network, nodes=nodes, evidence=evidence, complaint=(named,))


def _most_telling(book: Book, cause: Cause, complaint: str) -> dict[str, int]:
    """Sign -> place of the value that speaks most for the cause; the most telling signs only."""
    best: dict[str, tuple[float, int]] = {}
    for link in cause.shows:
        finding = book.findings[link.finding]
        if link.finding == complaint or link.finding in book.symptoms:
            continue
        place = finding.value_ids.index(link.value)
        ratio = link.how_often / (finding.values[place].without_cause or 1.0)
        best[link.finding] = max(best.get(link.finding, (0.0, 0)), (ratio, place))
    told = sorted(best.items(), key=lambda item: (-item[1][0], item[0]))[:MOST_SEEN]
    return {sign: place for sign, (_, place) in told}


def _raised(book: Book, cause: Cause) -> float:
    if cause.set_by:
        return book.words.set_high
    factor = 1.0
    for shift in cause.more_likely_when:
        factor *= max(1.0, shift.factor)
    odds = min(factor, book.words.odds_limit) * cause.prior / (1.0 - cause.prior)
    return odds / (1.0 + odds)


def _absent(cause: Cause) -> float:
    """How likely its own reports would speak for it if it were not there, over if it were."""
    result = 1.0
    for confirm in cause.be_sure:
        result *= (1.0 - confirm.right_when_not) / confirm.right_when_there
    return result
