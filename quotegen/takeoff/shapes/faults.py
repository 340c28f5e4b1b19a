"""Faults of a shape: found without knowing its file, which is only looked up at the end."""

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
        path: where it is, from the placement down, such as `("add", 0, "outline", 2)`.
        message: what was found, in feet and inches, and what is allowed.
        hint: what to do.
    """

    code: str
    path: DocumentPath
    message: str
    hint: str

    def under(self, *above: str | int) -> "Fault":
        """Return the same fault with its path starting further up."""
        return self.at(*above, *self.path)

    def at(self, *path: str | int) -> "Fault":
        """Return the same fault at another path."""
        return Fault(code=self.code, path=path, message=self.message, hint=self.hint)

    def problem(self, job: JobSpec, severity: Severity = Severity.ERROR) -> Problem:
        """Return the fault as a problem in the job file; its path must start at the top."""
        return Problem(
            severity=severity,
            code=self.code,
            source=job.source(*self.path),
            path=path_text(self.path),
            message=self.message,
            hint=self.hint,
        )


def tape_of(feet: float) -> str:
    """Print a length that geometry worked out, also one that is an int."""
    return tape(rounded(feet + 0.0, _PLACES_FOR_TAPE))


def spot(point: Point) -> str:
    """Print a point on the plan as a person types it."""
    return f"[{tape_of(point[0])}, {tape_of(point[1])}]"


def shape_name(group: str, index: int, kind: str) -> str:
    """Name a shape in a message, where shapes are counted from one."""
    return f"shape {index + 1} of `{group}` ({kind.replace('_', ' ')})"


def sqft_text(area_sqft: float) -> str:
    """Print an area in a message to 0.1 sq ft, or say that it is less."""
    shown = rounded(area_sqft, 1)
    return f"{shown:,} sq ft" if shown else "less than 0.1 sq ft"
