"""The odds factors with which the book's own `acts`, complaint alone, comes out as learned.

Multiplying each prior's odds by learned/model once does not do it: all causes of a complaint
share one normaliser. For one complaint f let a_c = P(c) q_c be the chance that c is there and
makes f, and b the chance that f shows with no listed cause. Then

    acts(c) = a_c / Z,    Z = P(f) = 1 - (1 - b) prod_c (1 - a_c),

so every a_c must be s_c Z for the learned shares s, and Z solves Z = h(Z) with
h(Z) = 1 - (1 - b) prod_c (1 - s_c Z). h is rising and concave with h(0) = b > 0 and h(1) < 1: it
has exactly one fixed point, and Z <- h(Z) walks to it from any side. That walk is what repeating
the factor learned/model does, each time around the model as it then stands; it needs nothing but
the model's own acts, so the same loop serves complaints of several symptoms and machines of
which different things are known. A prior cannot exceed 1: where the link of a cause to the
complaint is too weak for its share, the factor stops at MOST and the rest is fitted around it
(a_c is then the lesser of s_c Z and its bound: h stays concave, the fixed point unique).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.belief import believe
from diagnose.reasoning.network import Network

MOST = 1000.0  # bound of an odds factor, up and down
CLOSE = 1e-9
WALKS, SLOW_WALKS = 5000, 60


@dataclass(frozen=True)
class Setting:
    """One state of what stands before the complaint (the machine's facts): how many cases."""

    network: Network
    cases: int


class Acts:
    """The mean `acts` of every cause over some settings, at given odds factors."""

    def __init__(self, settings: Sequence[Setting]) -> None:
        self.settings = tuple(settings)
        self.causes = sorted({n.id for s in settings for n in s.network.nodes})
        self.at = {c: i for i, c in enumerate(self.causes)}
        self.share = np.array([s.cases for s in settings], dtype=float)
        self.share /= self.share.sum()
        self.quick = all(_plain(s.network) for s in settings)
        size = (len(settings), len(self.causes))
        self.odds, self.link, self.base = np.zeros(size), np.zeros(size), np.zeros(len(settings))
        if self.quick:
            for k, setting in enumerate(settings):
                self._read(k, setting.network)

    def _read(self, k: int, network: Network) -> None:
        (sign,) = network.complaint
        self.base[k] = 1.0 - network.background[sign][0] * (
            1.0 - network.unlisted_prior * (1.0 - network.unlisted[sign][0])
        )
        for node in network.nodes:
            at = self.at[node.id]
            self.odds[k, at] = node.prior / (1.0 - node.prior)
            self.link[k, at] = 1.0 - node.links[sign][0] if sign in node.links else 0.0

    def of(self, factors: Floats) -> Floats:
        """The mean `acts` of each cause with its odds times its factor."""
        if not self.quick:
            rows = [self._believed(s.network, factors) for s in self.settings]
            mean: Floats = self.share @ np.array(rows)
            return mean
        odds = self.odds * factors
        makes = odds / (1.0 + odds) * self.link
        whole = 1.0 - (1.0 - self.base) * np.prod(1.0 - makes, axis=1)
        found: Floats = self.share @ (makes / whole[:, None])
        return found

    def start(self, factors: Mapping[str, float]) -> Floats:
        """Factors by cause as `of` takes them; 1 for a cause not named."""
        return np.array([factors.get(c, 1.0) for c in self.causes])

    def _believed(self, network: Network, factors: Floats) -> Floats:
        nodes = tuple(
            replace(n, prior=_times(n.prior, float(factors[self.at[n.id]]))) for n in network.nodes
        )
        found = np.zeros(len(self.causes))
        for ranked in believe(replace(network, nodes=nodes)).ranked:
            found[self.at[ranked.cause]] = ranked.acts
        return found


def fit(acts: Acts, wanted: Mapping[str, float]) -> Floats:
    """Odds factors, a cause each, at which the mean `acts` are as wanted, as far as can be."""
    factors = acts.start({})
    target = np.array([wanted.get(c, 0.0) for c in acts.causes])
    for _ in range(WALKS if acts.quick else SLOW_WALKS):
        now = acts.of(factors)
        can = (now > 0.0) & (target > 0.0)
        step = np.where(can, target / np.where(can, now, 1.0), 1.0)
        new = np.clip(factors * step, 1.0 / MOST, MOST)
        if np.abs(new / factors - 1.0).max(initial=0.0) < CLOSE:
            break
        factors = new
    return factors


def _plain(network: Network) -> bool:
    """True when nothing is known but the complaint of one symptom, and no cause is reported."""
    return (
        len(network.complaint) == 1
        and set(network.evidence) == set(network.complaint)
        and len(network.evidence[network.complaint[0]]) == 2
        and network.evidence[network.complaint[0]][0] == 0.0
        and all(n.there == n.absent == 1.0 for n in network.nodes)
    )


def _times(prior: float, factor: float) -> float:
    odds = factor * prior / (1.0 - prior)
    return odds / (1.0 + odds)
