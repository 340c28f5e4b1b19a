"""Why a file cannot be read as lines of `key: value`, in words for the person who typed it."""

import re

import yaml

from quotegen.problem import Problem, Source

LARGEST_FILE_BYTES = 1_000_000
START = "`quotegen new` with a folder writes a company's files and a first job to start from"
_LINES_OF_A_SLIP = 3
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
_NOT_IN_TEXT = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ud800-\udfff]")
_SAID = (
    (
        "mapping values are not allowed here",
        "a colon stands here where none can",
        "quote a text that has a colon in it; or the line above lacks its own colon",
    ),
    (
        "could not find expected ':'",
        "a line like `key: value` has no colon",
        "add the colon and a blank after the key, or check the indent near this line",
    ),
    (
        "expected <block end>",
        "this does not line up with the lines above",
        "indent it as far as the lines that it belongs with",
    ),
    (
        "found unexpected end of stream",
        "a quote is opened here and never closed",
        "add the closing quote at the end of the text",
    ),
    (
        "expected ',' or",
        "a bracket is opened here and not closed, or a comma is missing in it",
        "close each [ with ] and each { with }, with commas between",
    ),
    (
        "sequence entries are not allowed here",
        "a list cannot begin here",
        "begin it on the line below its key, or write it as [one, two]",
    ),
    (
        "cannot start any token",
        "no text can begin with this character",
        "put the text in quotes",
    ),
)


_TYPED_BY_A_PHONE = str.maketrans(dict.fromkeys("\u00a0\u2007\u2009\u202f", " "))
"""Blanks that do not break, which a phone or a word processor types for plain ones."""
_LONG_DASH = re.compile("(?m)^([ ]*)[\u2013\u2014](?= )")
"""A dash as a phone types it, where the item of a list begins."""
_NO_BLANK = re.compile(r"^\s*(?:- +)?[A-Za-z_]\w*:(?=[^\s/:])")
_APOSTROPHE = re.compile(r"(?<![\w'])'(?P<text>[^'\n]*\w'\w[^'\n]*)'")


def decode(data: bytes, file: str, size_bytes: int) -> str | Problem:
    """Turn the bytes of a file into text, or say why it is no text to read."""
    start = Source(file=file)
    if size_bytes > LARGEST_FILE_BYTES:
        size = f"{size_bytes / LARGEST_FILE_BYTES:,.1f} MB"
        return Problem(
            code="file-too-large",
            source=start,
            message=f"the file is {size}; at most 1 MB is read",
            hint="a job file is a page or two of text: is this the right file?",
        )
    if data.startswith(_UTF_16):
        return _not_utf_8(start, "the file is saved as UTF-16")
    if b"\x00" in data:
        line = data.count(b"\n", 0, data.index(b"\x00")) + 1
        return Problem(
            code="not-text",
            source=Source(file=file, line=line),
            message="this is not a text file: it holds binary data",
            hint="name the job file (.yaml), not a picture, a PDF or a spreadsheet",
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        place = _place(file, data[: error.start].decode("utf-8-sig"))
        return _not_utf_8(place, f"the byte 0x{data[error.start]:02X} is not UTF-8 text")
    if not text.strip():
        return Problem(
            code="empty-file",
            source=start,
            message="the file is empty",
            hint=START,
        )
    return _LONG_DASH.sub(r"\1-", text.translate(_TYPED_BY_A_PHONE))


def yaml_problem(error: yaml.YAMLError, text: str, file: str) -> Problem:
    """Return what PyYAML stumbled over, in plain words."""
    if isinstance(error, yaml.reader.ReaderError):  # a character that no text holds
        return control_character(_place(file, text[: error.position]))
    if not isinstance(error, yaml.MarkedYAMLError):
        raise error
    mark = error.problem_mark or error.context_mark
    if slip := _slip(error, text, file):
        return slip
    if "could not find expected ':'" in (error.problem or ""):
        mark = error.context_mark or mark  # the line that lacks it, not the one below
    if error.context and ("quoted" in error.context or "flow" in error.context):
        mark = error.context_mark or mark  # where it was opened, not where the file ran out
    line, column = (mark.line, mark.column) if mark else (0, 0)
    said = error.problem or "it cannot be read"
    message, hint = f"this cannot be read: {said}", "check the indent, the colons and the quotes"
    for words, plain, help_ in _SAID:
        if words in said:
            message, hint = plain, help_
            break
    indents = re.findall(r"(?m)^[ ]*\t", "\n".join(text.split("\n")[line : line + 1]))
    if "\\t" in said or indents:
        message, hint = "a tab is used to indent", "indent with spaces"
    place = Source(file=file, line=line + 1, column=column + 1)
    return _syntax(place, message, hint)


def _slip(error: yaml.MarkedYAMLError, text: str, file: str) -> Problem | None:
    """Return a slip of typing in the lines that could not be read, None where none is seen."""
    marks = [mark for mark in (error.context_mark, error.problem_mark) if mark is not None]
    if not marks:
        return None
    last = max(mark.line for mark in marks)
    above = min(mark.line for mark in marks) - 1  # a slip is often seen a line too late
    first = max(above, last - _LINES_OF_A_SLIP, 0)
    for number, line in enumerate(text.split("\n")[first : last + 1], start=first + 1):
        if found := _NO_BLANK.match(line):
            place = Source(file=file, line=number, column=found.end())
            hint = f"type it as `{found[0].strip()} {line[found.end() :].strip()}`"
            return _syntax(place, "there is no blank after this colon", hint)
        if found := _APOSTROPHE.search(line):
            inner = found.start("text") + found["text"].index("'") + 1
            place = Source(file=file, line=number, column=inner)
            hint = f'put the text in double quotes: "{found["text"]}"'
            return _syntax(place, "this apostrophe ends the quotes too soon", hint)
    return None


def _syntax(place: Source, message: str, hint: str) -> Problem:
    return Problem(code="yaml-syntax", source=place, message=message, hint=hint)


def control_character(place: Source) -> Problem:
    """Return the problem with a character that cannot be seen."""
    return Problem(
        code="control-character",
        source=place,
        message="there is a control character here that text cannot hold",
        hint="delete the character and type the line again",
    )


def is_plain_text(text: str) -> bool:
    """Whether a text holds only what a page can show."""
    return not _NOT_IN_TEXT.search(text)


def _not_utf_8(place: Source, message: str) -> Problem:
    return Problem(
        code="not-utf-8",
        source=place,
        message=message,
        hint="save the file again as UTF-8 (in the editor: Save as, encoding UTF-8)",
    )


def _place(file: str, before: str) -> Source:
    column = len(before) - (before.rfind("\n") + 1) + 1
    return Source(file=file, line=before.count("\n") + 1, column=column)
