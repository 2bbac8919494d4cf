"""pyAgrum kept warm: the network of the judge, its engine, one update of every posterior."""

from __future__ import annotations

import pyagrum as gum

from diagnose.reasoning.belief import believe
from diagnose.reasoning.network import UNLISTED, Network
from tests.judges.agrum import _sign


class Engine:
    """One network in pyAgrum (each sign a running maximum, as the judge writes it)."""

    def __init__(self, network: Network) -> None:
        self.network = network
        self.net = gum.BayesNet()
        self.ids: dict[str, int] = {}
        priors = {n.id: n.prior for n in network.nodes} | {UNLISTED: network.unlisted_prior}
        for name, prior in priors.items():
            self.ids[name] = self.net.add(gum.LabelizedVariable(name, name, 2))
            self.net.cpt(self.ids[name]).fillWith([1.0 - prior, prior])
        for sign, likelihood in network.evidence.items():
            links = {n.id: n.links[sign] for n in network.nodes if sign in n.links}
            links[UNLISTED] = network.unlisted[sign]
            _sign(
                self.net, self.ids, sign, len(likelihood), list(links), links,
                network.background[sign],
            )  # fmt: skip
        self.told = {s: [float(x) for x in v] for s, v in network.evidence.items()}
        self.engine = gum.LazyPropagation(self.net)

    def update(self) -> dict[str, float]:
        """Evidence given anew, then the posterior of every cause."""
        self.engine.setEvidence(self.told)
        self.engine.makeInference()
        return {n: float(self.engine.posterior(i)[1]) for n, i in self.ids.items()}

    def gap(self) -> float:
        """Largest difference of a posterior from ours."""
        theirs = self.update()
        return max(abs(r.present - theirs[r.cause]) for r in believe(self.network).ranked)
