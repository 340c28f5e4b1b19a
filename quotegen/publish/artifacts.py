"""Artifacts: everything to be written, as path and bytes, gathered before a file is opened."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import TypeAlias

Artifacts: TypeAlias = Mapping[str, bytes]
"""Relative path, with forward slashes, to the bytes of the file."""


def under(folder: str, files: Artifacts) -> Artifacts:
    """Return the files moved under a folder."""
    return MappingProxyType({f"{folder}/{path}": data for path, data in files.items()})


def joined(*parts: Artifacts) -> Artifacts:
    """Join artifacts; no two may have the same path."""
    paths = [path for part in parts for path in part]
    if len(paths) != len(set(paths)):
        message = "two artifacts have the same path"
        raise ValueError(message)
    return MappingProxyType({path: data for part in parts for path, data in part.items()})
