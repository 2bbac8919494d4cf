"""What a tried fix says, against enumeration of every cause and link."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from diagnose.reasoning.belief import believe
from diagnose.reasoning.network import Network
from diagnose.reasoning.trials import after_trial
from tests.reasoning.networks import networks
from tests.reasoning.test_belief import judged

CLOSE = 1e-9


def forced(network: Network, cause: str) -> Network:
    """The network in which a cause is surely there."""
    nodes = tuple(replace(n, prior=1.0) if n.id == cause else n for n in network.nodes)
    return replace(network, nodes=nodes)


@settings(max_examples=25, deadline=None)
@given(networks(causes=3))
def test_gone_and_stays_is_the_belief_given_that_the_cause_made_it_alone(network: Network) -> None:
    """P(k there | c alone) = P(c alone | k) P(k) / P(c alone), each side enumerated."""
    cause = network.nodes[0].id
    assume(all(s in network.nodes[0].links for s in network.complaint))
    before = judged(network)
    assume(before.cures_alone[cause] > 1e-9)

    after = believe(after_trial(network, cause, "gone and stays", 0.9))
    here = after.of(cause)
    assert here is not None
    assert (here.acts, here.cures_alone, here.present) == pytest.approx((1, 1, 1), abs=CLOSE)
    assert after.several == pytest.approx(0.0, abs=CLOSE)
    assert after.none == pytest.approx(0.0, abs=CLOSE)
    for node in network.nodes[1:]:
        other, given_it = after.of(node.id), judged(forced(network, node.id))
        assert other is not None
        with_both = given_it.cures_alone[cause] * given_it.total * node.prior
        expected = with_both / (before.cures_alone[cause] * before.total)
        assert other.acts == pytest.approx(0.0, abs=CLOSE)
        assert other.present == pytest.approx(expected, abs=1e-7)


@settings(max_examples=60, deadline=None)
@given(networks(), st.floats(0.05, 0.95))
def test_the_same_as_before_weakens_only_what_the_fix_would_have_cured(
    network: Network, cures: float
) -> None:
    cause = network.nodes[0].id

    after = after_trial(network, cause, "same", cures)
    old, new = network.nodes[0].links, after.nodes[0].links
    for sign, vector in old.items():
        keep = 1.0 - cures if sign in network.complaint else 1.0
        assert new[sign][1:] == pytest.approx([p * keep for p in vector[1:]])
        assert sum(new[sign]) == pytest.approx(1.0)
    assert after.nodes[1:] == network.nodes[1:]
    ranked, verdict = believe(after).of(cause), judged(after)
    assert ranked is not None
    assert ranked.acts == pytest.approx(verdict.acts[cause], abs=CLOSE)
    before = believe(network).of(cause)
    assert before is not None
    assert ranked.acts <= before.acts + CLOSE


@settings(max_examples=60, deadline=None)
@given(networks(), st.sampled_from(["better", "gone and comes back"]))
def test_what_is_better_or_comes_back_has_something_else_in_it(
    network: Network, outcome: str
) -> None:
    cause = network.nodes[0].id

    after = believe(after_trial(network, cause, outcome, 0.9))
    here = after.of(cause)
    assert here is not None
    assert here.present == pytest.approx(1.0, abs=CLOSE)
    assert here.acts == pytest.approx(0.0, abs=CLOSE)
    shares = sum(r.cures_alone for r in after.ranked) + after.several + after.none
    assert shares == pytest.approx(1.0, abs=CLOSE)


@given(networks(causes=3))
def test_what_was_not_done_says_nothing(network: Network) -> None:
    assert after_trial(network, network.nodes[0].id, "not done", 0.9) == network
