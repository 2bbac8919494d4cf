"""Random small networks and evidence for the judges."""

from __future__ import annotations

from hypothesis import strategies as st

from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import Network, Node

chance = st.floats(0.01, 0.9)


@st.composite
def vectors(draw: st.DrawFn, size: int) -> Vector:
    """Chances of proposing each of `size` values, nothing first."""
    weights = [draw(st.floats(0.02, 1.0)) for _ in range(size - 1)]
    whole = draw(st.floats(0.02, 0.9))
    fired = [whole * w / sum(weights) for w in weights]
    return (1.0 - sum(fired), *fired)


@st.composite
def networks(draw: st.DrawFn, causes: int = 4, signs: int = 3) -> Network:
    """Up to `causes` causes and `signs` signs; the first sign, or two, is the complaint."""
    sizes = {f"s{i}": draw(st.integers(2, 3)) for i in range(draw(st.integers(1, signs)))}
    background = {s: draw(vectors(k)) for s, k in sizes.items()}
    unlisted = {s: draw(vectors(k)) for s, k in sizes.items()}
    nodes = []
    for i in range(draw(st.integers(1, causes))):
        linked = [s for s in sizes if draw(st.booleans())]
        links = {s: draw(vectors(sizes[s])) for s in linked}
        report = (draw(chance), draw(chance)) if draw(st.booleans()) else (1.0, 1.0)
        nodes.append(Node(f"c{i}", draw(chance), *report, links))
    evidence = {s: draw(_evidence(k)) for s, k in sizes.items()}
    complaint = ["s0"] if len(sizes) < 2 or draw(st.booleans()) else ["s0", "s1"]
    for sign in complaint:
        seen = draw(st.integers(1, sizes[sign] - 1))
        evidence[sign] = tuple(float(k == seen) for k in range(sizes[sign]))
    return Network(tuple(nodes), background, draw(chance), unlisted, evidence, tuple(complaint))


@st.composite
def _evidence(draw: st.DrawFn, size: int) -> Vector:
    if draw(st.booleans()):
        return tuple(draw(st.floats(0.05, 1.0)) for _ in range(size))
    seen = draw(st.integers(0, size - 1))
    return tuple(float(k == seen) for k in range(size))
