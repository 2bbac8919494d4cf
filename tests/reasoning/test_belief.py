"""The exact sum against enumeration of every cause and link, and against published examples."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings

from diagnose.reasoning.belief import Belief, Impossible, believe
from diagnose.reasoning.network import Network, Node
from tests.judges.enumeration import Verdict, judge
from tests.reasoning.networks import networks

CLOSE = 1e-12


def judged(network: Network) -> Verdict:
    priors = {n.id: n.prior for n in network.nodes}
    links = {n.id: n.links for n in network.nodes}
    priors["unlisted"], links["unlisted"] = network.unlisted_prior, network.unlisted
    reports = {n.id: (n.there, n.absent) for n in network.nodes}
    return judge(priors, links, network.background, network.evidence, network.complaint, reports)


@settings(max_examples=60, deadline=None)
@given(networks())
def test_every_figure_equals_enumeration_of_all_causes_and_links(network: Network) -> None:
    belief, verdict = believe(network), judged(network)
    assert math.exp(belief.log_evidence) == pytest.approx(verdict.total, abs=CLOSE)
    for ranked in belief.ranked:
        assert ranked.present == pytest.approx(verdict.present[ranked.cause], abs=CLOSE)
        assert ranked.acts == pytest.approx(verdict.acts[ranked.cause], abs=CLOSE)
        assert ranked.cures_alone == pytest.approx(verdict.cures_alone[ranked.cause], abs=CLOSE)
    none = verdict.background_alone + verdict.unlisted_alone
    assert belief.none == pytest.approx(none, abs=CLOSE)


@settings(max_examples=100, deadline=None)
@given(networks(causes=7, signs=5))
def test_the_partition_sums_to_one_and_nothing_leaves_zero_to_one(network: Network) -> None:
    belief = believe(network)
    whole = sum(r.cures_alone for r in belief.ranked) + belief.several + belief.none
    assert whole == pytest.approx(1.0, abs=1e-9)
    figures = [x for r in belief.ranked for x in (r.acts, r.present, r.cures_alone)]
    figures += [belief.several, belief.none]
    assert all(math.isfinite(x) and 0.0 <= x <= 1.0 for x in figures)
    assert all(r.acts <= r.present + 1e-12 for r in belief.ranked)


def leaky(evidence: dict[str, bool]) -> Belief:
    """T5: priors .2 .05 .001; fever leak .02, q .4 .8 .9; chills leak .01, q .3 0 .6."""
    fever = {"cold": 0.4, "flu": 0.8, "malaria": 0.9}
    chills = {"cold": 0.3, "malaria": 0.6}
    priors = {"cold": 0.2, "flu": 0.05, "malaria": 0.001}
    nodes = []
    for name, prior in priors.items():
        links = {"fever": (1 - fever[name], fever[name])}
        if name in chills:
            links["chills"] = (1 - chills[name], chills[name])
        nodes.append(Node(name, prior, 1.0, 1.0, links))
    background = {"fever": (0.98, 0.02), "chills": (0.99, 0.01)}
    vectors = {s: (0.0, 1.0) if yes else (1.0, 0.0) for s, yes in evidence.items()}
    quiet = {"fever": (1.0, 0.0), "chills": (1.0, 0.0)}
    complaint = tuple(s for s, yes in evidence.items() if yes)
    return believe(Network(tuple(nodes), background, 0.0, quiet, vectors, complaint))


@pytest.mark.parametrize(
    ("evidence", "total", "posteriors"),
    [
        ({"fever": True}, 0.135242982, (0.644806890, 0.303099750, 0.006754110)),
        (
            {"fever": True, "chills": False},
            0.107481529,
            (0.561538530, 0.352932710, 0.003156880),
        ),
        (
            {"fever": True, "chills": True},
            0.027761454,
            (0.967189510, 0.110165950, 0.020681210),
        ),
        (
            {"chills": True, "fever": False},
            0.042196906,
            (0.820737260, 0.010416670, 0.001270700),
        ),
    ],
)
def test_leaky_noisy_or_of_three_engines(
    evidence: dict[str, bool], total: float, posteriors: tuple[float, float, float]
) -> None:
    """Source: three independent engines agreeing to 1e-15 (worked out by us, to nine digits)."""
    belief = leaky(evidence)
    assert math.exp(belief.log_evidence) == pytest.approx(total, abs=1e-9)
    for name, expected in zip(("cold", "flu", "malaria"), posteriors, strict=True):
        ranked = belief.of(name)
        assert ranked is not None
        assert ranked.present == pytest.approx(expected, abs=6e-9)


@pytest.mark.parametrize(
    ("there", "fever"),
    [
        ((), 0.0),
        (("cold",), 0.4),
        (("flu",), 0.8),
        (("malaria",), 0.9),
        (("cold", "flu"), 0.88),
        (("cold", "malaria"), 0.94),
        (("flu", "malaria"), 0.98),
        (("cold", "flu", "malaria"), 0.988),
    ],
)
def test_noisy_or_table_of_russell_and_norvig(there: tuple[str, ...], fever: float) -> None:
    """T4. Source: Russell & Norvig, AIMA, noisy-OR table; inhibitions .6 .2 .1, no leak."""
    inhibit = {"cold": 0.6, "flu": 0.2, "malaria": 0.1}
    nodes = tuple(
        Node(n, 1.0 if n in there else 0.0, 1.0, 1.0, {"fever": (q, 1 - q)})
        for n, q in inhibit.items()
    )
    network = Network(
        nodes, {"fever": (1.0, 0.0)}, 0.0, {"fever": (1.0, 0.0)}, {"fever": (0.0, 1.0)}, ("fever",)
    )
    if not there:
        with pytest.raises(Impossible):
            believe(network)
    else:
        assert math.exp(believe(network).log_evidence) == pytest.approx(fever, abs=1e-12)
