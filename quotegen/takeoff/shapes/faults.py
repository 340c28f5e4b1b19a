"""Faults of a shape, told apart from the file that it stands in until the very end."""

from dataclasses import dataclass

from quotegen.problem import Problem, Severity
from quotegen.quantity import rounded, tape
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import DocumentPath, path_text
from quotegen.takeoff.plan_geometry import Point

_PLACES_FOR_TAPE = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One fault of a shape.

    Attributes:
        code: stable name of the kind of fault.
        path: where it is, counted from the placement, such as `("add", 0, "outline", 2)`.
        message: what was found, in feet and inches, and what is allowed.
        hint: what to do.
    """

    code: str
    path: DocumentPath
    message: str
    hint: str

    def under(self, *above: str | int) -> "Fault":
        """Return the same fault with its path counted from further up."""
        return self.at(*above, *self.path)

    def at(self, *path: str | int) -> "Fault":
        """Return the same fault at another path."""
        return Fault(code=self.code, path=path, message=self.message, hint=self.hint)

    def problem(self, job: JobSpec, severity: Severity = Severity.ERROR) -> Problem:
        """Return the fault as a problem of the job file; its path must start at the top."""
        return Problem(
            severity=severity,
            code=self.code,
            source=job.source(*self.path),
            path=path_text(self.path),
            message=self.message,
            hint=self.hint,
        )


def tape_of(feet: float) -> str:
    """Print a length that geometry worked out; a whole number of feet may come as an int."""
    return tape(rounded(feet + 0.0, _PLACES_FOR_TAPE))


def spot(point: Point) -> str:
    """Print a point of the plan as a person types it."""
    return f"[{tape_of(point[0])}, {tape_of(point[1])}]"


def shape_name(group: str, index: int, kind: str) -> str:
    """Name a shape in a message; shapes count from one there."""
    return f"shape {index + 1} of `{group}` ({kind.replace('_', ' ')})"
