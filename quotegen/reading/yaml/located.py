"""YAML text to nodes that know their line and column.

Every scalar stays text: the fields decide what it means, so YAML never makes a float of a
price or a date of a quote number. Anchors and aliases are refused, which also ends alias bombs.
"""

import re
from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import TypeAlias

import yaml

from quotegen.problem import Problem, Severity, Source
from quotegen.reading.yaml.unreadable import (
    START,
    control_character,
    decode,
    is_plain_text,
    yaml_problem,
)

DEEPEST_NESTING = 30
MOST_OF_ONE = 1_000
"""How many items a list, or keys a mapping, may have; a long list is a file gone wrong."""

Plain: TypeAlias = "str | list[Plain] | dict[str, Plain]"
DocumentPath: TypeAlias = tuple[str | int, ...]
Loader: TypeAlias = "yaml.SafeLoader | yaml.CSafeLoader"  # the second is not on every machine

_FAST: type[Loader] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_READ_OTHERWISE = re.compile(r"[\t\ufeff?!]|:\s*[,\]}]")
"""Where libyaml, ten times as fast, may let pass or place otherwise what PyYAML does not."""


@dataclass(frozen=True, slots=True)
class Places:
    """Where everything stands in one file; nothing of what stands there.

    Attributes:
        file: the name to show.
        keys: where each key or list item begins.
        values: where each value begins.
    """

    file: str
    keys: Mapping[DocumentPath, Source] = field(default_factory=dict, repr=False)
    values: Mapping[DocumentPath, Source] = field(default_factory=dict, repr=False)

    def of_key(self, path: DocumentPath) -> Source:
        """Return where the key stands, or the nearest place above it."""
        return self._nearest(self.keys, path)

    def of(self, path: DocumentPath) -> Source:
        """Return where the value stands, or the nearest place above it."""
        return self._nearest(self.values, path)

    def without(self, keys: Set[str]) -> "Places":
        """Return the places without those under some keys at the top of the file."""
        kept = (
            {path: place for path, place in places.items() if not path or path[0] not in keys}
            for places in (self.keys, self.values)
        )
        return Places(self.file, *map(MappingProxyType, kept))

    def fault(self, path: DocumentPath, code: str, message: str, hint: str) -> Problem:
        """Return an error in the value at a path of the file."""
        source = self.of(path)
        return Problem(code=code, source=source, path=path_text(path), message=message, hint=hint)

    def warning(self, path: DocumentPath, code: str, message: str, hint: str) -> Problem:
        """Return a warning about the value at a path of the file."""
        return replace(self.fault(path, code, message, hint), severity=Severity.WARNING)

    def _nearest(self, places: Mapping[DocumentPath, Source], path: DocumentPath) -> Source:
        for length in range(len(path), -1, -1):
            if path[:length] in places:
                return places[path[:length]]
        return Source(file=self.file)


def path_text(path: DocumentPath) -> str:
    """Write a document path as a person would, such as `placements[0].thickness`."""
    parts = (f"[{part}]" if isinstance(part, int) else f".{part}" for part in path)
    return "".join(parts).removeprefix(".")


@dataclass(frozen=True, slots=True)
class Document:
    """One file as read: its text, lists and mappings by key, and where they stand.

    Attributes:
        comments: what stands after a # right behind the colon of a key that has no value.
    """

    content: dict[str, Plain] = field(repr=False)
    places: Places
    comments: Mapping[DocumentPath, str] = field(default_factory=dict, repr=False)


def parse(
    data: bytes, file: str, size_bytes: int = 0, *, ours: bool = False
) -> Document | tuple[Problem, ...]:
    """Read the bytes of a YAML file.

    Args:
        data: the bytes, or as many of them as are needed to see that there are too many.
        file: the name to show in messages.
        size_bytes: the size of the whole file, where only a part was read.
        ours: whether it is a page of content, which has nothing that libyaml reads otherwise.

    Returns:
        The document, or every fault that keeps it from being one.
    """
    text = decode(data, file, max(size_bytes, len(data)))
    if isinstance(text, Problem):
        return (text,)
    slowly = not ours and _READ_OTHERWISE.search(text)
    return _parsed(text, file, yaml.SafeLoader if slowly else _FAST)


def _parsed(text: str, file: str, loader: type[Loader]) -> Document | tuple[Problem, ...]:
    """Read a text by a loader; a fault is always told in words for PyYAML's."""
    reader = _Reader(file)
    try:
        content = reader.read(text, loader)
    except _EndlessError as error:
        return (error.problem,)
    except yaml.YAMLError as error:
        if loader is not yaml.SafeLoader:  # only PyYAML's own words for a fault are known here
            return _parsed(text, file, yaml.SafeLoader)
        return (yaml_problem(error, text, file),)
    except (ValueError, OverflowError):  # an escape such as "\\UFFFFFFFF" that stands for nothing
        return (control_character(reader.last),)
    if reader.problems or not isinstance(content, dict):
        return tuple(reader.problems)
    keys, values = MappingProxyType(reader.keys), MappingProxyType(reader.values)
    comments = MappingProxyType(reader.comments)
    return Document(content, Places(file, keys, values), comments)


class _EndlessError(Exception):
    """Ends the walk of a document that nests, or lists, without end."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


def _error(code: str, message: str, place: Source) -> _EndlessError:
    hint = "a job file needs far fewer: is a bracket missing near this line?"
    return _EndlessError(Problem(code=code, source=place, message=message, hint=hint))


class _Reader:
    """Walks the events of one YAML document and notes where everything stands."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.keys: dict[DocumentPath, Source] = {}
        self.values: dict[DocumentPath, Source] = {}
        self.comments: dict[DocumentPath, str] = {}
        self.last = Source(file=file)
        self.lines: list[str] = []

    def read(self, text: str, loader: type[Loader]) -> Plain:
        """Read the first document; a second one is a fault."""
        events, self.lines = yaml.parse(text, Loader=loader), text.splitlines()
        content: Plain = ""
        documents = 0
        for event in events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self._fault(
                        event,
                        "two-documents",
                        "a second document starts here (---)",
                        "keep one job in one file",
                    )
                    break
                content = self._node(next(events), events, ())
        if not isinstance(content, dict) and not self.problems:
            self.problems.append(
                Problem(
                    code="not-a-mapping",
                    source=Source(file=self.file),
                    message="the file must be lines of `key: value`",
                    hint=START,
                )
            )
        return content

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event], path: DocumentPath) -> Plain:
        self.last = self.values[path] = self._place(event)
        if getattr(event, "anchor", None) is not None:
            self._fault(
                event,
                "alias",
                "anchors and aliases (& and *) are not used here",
                "write the value out in full; quote a text that begins with & or *",
            )
            if isinstance(event, yaml.AliasEvent):
                return ""
        if len(path) > DEEPEST_NESTING:
            message = f"more than {DEEPEST_NESTING} levels of nesting"
            raise _error("too-deep", message, self._place(event))
        if getattr(event, "tag", None) is not None:
            self._fault(
                event,
                "tag",
                "a text that begins with ! is not read as text",
                "put the text in quotes",
            )
        if isinstance(event, yaml.MappingStartEvent):
            return self._mapping(events, path)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(events, path)
        value = str(getattr(event, "value", ""))
        if not is_plain_text(value):
            self.problems.append(control_character(self.last))
        if not value and self.last.line <= len(self.lines):
            rest = self.lines[self.last.line - 1][self.last.column - 1 :].strip()
            if rest.startswith("#"):
                self.comments[path] = rest
        return value

    def _sequence(self, events: Iterator[yaml.Event], path: DocumentPath) -> Plain:
        items: list[Plain] = []
        while not isinstance(event := next(events), yaml.SequenceEndEvent):
            here = (*path, len(items))
            self._counted(len(items), event)
            self.keys[here] = self._place(event)
            items.append(self._node(event, events, here))
        return items

    def _mapping(self, events: Iterator[yaml.Event], path: DocumentPath) -> Plain:
        entries: dict[str, Plain] = {}
        while not isinstance(event := next(events), yaml.MappingEndEvent):
            key = self._node(event, events, (*path, "?"))
            if not isinstance(key, str):
                self._fault(
                    event,
                    "bad-key",
                    "a key must be a word, not a list or a mapping",
                    "quote the text if it begins with [ or {",
                )
                key = "?"
            here = (*path, key)
            if key in entries:
                first = self.keys[here]
                self._fault(
                    event,
                    "duplicate-key",
                    f"`{key}` stands here a second time; the first is on line {first.line}",
                    "keep one of the two",
                )
                self._node(next(events), events, (*path, "?"))
                continue
            self._counted(len(entries), event)
            self.keys[here] = self._place(event)
            entries[key] = self._node(next(events), events, here)
        return entries

    def _counted(self, before: int, event: yaml.Event) -> None:
        if before >= MOST_OF_ONE:
            message = f"more than {MOST_OF_ONE:,} items or keys in one place"
            raise _error("too-many-here", message, self._place(event))

    def _place(self, event: yaml.Event) -> Source:
        mark = event.start_mark
        if mark is None:
            return Source(file=self.file)
        return Source(file=self.file, line=mark.line + 1, column=mark.column + 1)

    def _fault(self, event: yaml.Event, code: str, message: str, hint: str) -> None:
        self.problems.append(
            Problem(code=code, source=self._place(event), message=message, hint=hint)
        )
