"""The YAML parsers with nothing guessed: the C one when it is there, else the pure one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml
from yaml import YAMLError

__all__ = ["YAMLError", "compose", "events"]


class PureText(yaml.SafeLoader):
    """Python parser that leaves every scalar as text."""

    yaml_implicit_resolvers = {}  # noqa: RUF012 - the stubs call it an instance variable


TextLoader: Any = PureText

if hasattr(yaml, "CSafeLoader"):

    class CText(yaml.CSafeLoader):
        """C parser that leaves every scalar as text."""

        yaml_implicit_resolvers = {}  # noqa: RUF012 - the stubs call it an instance variable

    TextLoader = CText


def compose(text: str) -> Any:
    """The root node of the one document in the text, or None when there is none."""
    return yaml.compose(text, Loader=TextLoader)


def events(text: str) -> Iterator[Any]:
    """The parser's events, which carry anchors, aliases and tags."""
    return iter(yaml.parse(text, Loader=TextLoader))
