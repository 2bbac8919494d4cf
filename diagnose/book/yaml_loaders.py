"""The YAML parsers with nothing guessed: the C one when it is there, else the pure one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml
from yaml import YAMLError

__all__ = ["YAMLError", "compose", "events"]


TAGS = {
    yaml.ScalarNode: "tag:yaml.org,2002:str",
    yaml.SequenceNode: "tag:yaml.org,2002:seq",
    yaml.MappingNode: "tag:yaml.org,2002:map",
}


class _NothingGuessed:
    """No tag is worked out for a node: the field tables give the types."""

    def resolve(self, kind: Any, *_: Any) -> str:
        return TAGS[kind]

    def descend_resolver(self, *_: Any) -> None:
        return None

    def ascend_resolver(self) -> None:
        return None


class PureText(_NothingGuessed, yaml.SafeLoader):
    """Python parser that leaves every scalar as text."""


TextLoader: Any = PureText

if hasattr(yaml, "CSafeLoader"):

    class CText(_NothingGuessed, yaml.CSafeLoader):
        """C parser that leaves every scalar as text."""

    TextLoader = CText


def compose(text: str) -> Any:
    """The root node of the one document in the text, or None when there is none."""
    return yaml.compose(text, Loader=TextLoader)


def events(text: str) -> Iterator[Any]:
    """The parser's events, which carry anchors, aliases and tags."""
    return iter(yaml.parse(text, Loader=TextLoader))
