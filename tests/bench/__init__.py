"""The bench: how right, how near the optimum and how fast the reasoning is on this machine."""
