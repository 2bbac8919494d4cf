"""A patient expert beside the surface grinder."""

__version__ = "0.1.0"
