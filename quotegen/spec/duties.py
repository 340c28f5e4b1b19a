"""Work beside ours that a job or a company may give to somebody by name."""

from enum import StrEnum


class Duty(StrEnum):
    """A duty; content/ has a page for each that says who has it where nothing else is typed."""

    PERMITS = "permits"
    PRIVATE_LINES = "private_lines"
    GROUND = "ground"
    POOL_FILL = "pool_fill"
    POOL_PIPES = "pool_pipes"
    BONDING = "bonding"
    POOL_SEAL = "pool_seal"
    BARRIER = "barrier"
    LAWN = "lawn"
