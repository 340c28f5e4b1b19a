"""The options of a command, from their text to values; wrong usage is said as click says it."""

from pathlib import Path

import click

from quotegen.arguments import if_typed, parsed
from quotegen.reading.fields import road_fields as road
from quotegen.reading.fields import text_fields as text
from quotegen.reading.files.job import Use
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.paced_job import Asked


def asked(folder: Path, sizes: tuple[str, ...], typed: dict[str, str | None]) -> Asked:
    """Return what was asked of a ballpark, each option read from its text."""
    if bool(sizes) == bool(typed["area"]):
        message = "type either --size, such as '24 ft x 16 ft', or --area, such as '640 sq ft'"
        raise click.UsageError(message)
    paced = {EdgeKind.POOL: typed["pool_edge"], EdgeKind.FORMED: typed["formed_edge"]}
    edges = {
        kind: parsed(f"--{kind.value.replace(' ', '-')}", text.parse_positive_length, length)
        for kind, length in paced.items()
        if length
    }
    return Asked(
        folder=folder,
        sizes=tuple(parsed("--size", text.parse_size, size) for size in sizes),
        area_sqft=if_typed("--area", text.parse_area_sqft, typed["area"]),
        edges=edges,
        finish=typed["finish"],
        use=Use(typed["use"] or ""),
        on=if_typed("--date", text.parse_date, typed["on"]),
        distance=if_typed("--distance", road.parse_distance, typed["distance"]),
        drive_time=if_typed("--drive-time", road.parse_drive_time, typed["drive_time"]),
    )
