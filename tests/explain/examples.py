"""What is drawn and built of the examples, once for all tests of a process that read it."""

import xml.etree.ElementTree as ET
from functools import cache
from pathlib import Path

import pytest

from quotegen.explain.papers.measuring_sheet import measuring_sheet
from quotegen.explain.papers.measuring_views import MeasuringSheet
from quotegen.explain.pictures.joint_drawing import draw_joints
from quotegen.explain.pictures.plan import draw_plan
from quotegen.explain.private.crew_sheet import FLAT, CrewSheet, crew_sheet
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.sizes import DOOR, NARROW, PLAN
from quotegen.explain.sheets.views import CustomerView
from tests.explain.drawn import parsed
from tests.once_per_run import once_per_run
from tests.pricing import shop

VIEWPORTS = {"wide": PLAN, "narrow": NARROW, "door": DOOR}

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
EVERY_VIEWPORT = pytest.mark.parametrize("viewport", VIEWPORTS)


@cache
def example_plan(job_file: Path, viewport: str) -> ET.Element:
    """The plan of an example in one of the viewports, taken apart."""
    return parsed(draw_plan(shop.example_results(job_file), VIEWPORTS[viewport], "plan"))


@cache
def example_joints(job_file: Path) -> ET.Element:
    """The joint drawing of an example, taken apart."""
    return parsed(draw_joints(shop.example_results(job_file), FLAT, "joints").drawing)


@cache
def example_measuring_sheet(job_file: Path) -> MeasuringSheet:
    """The measuring sheet of an example."""
    return measuring_sheet(shop.example_results(job_file))


@cache
def example_crew_sheet(job_file: Path) -> CrewSheet:
    """The crew sheet of an example."""
    return crew_sheet(shop.example_results(job_file))


@cache
def example_view(job_file: Path) -> CustomerView:
    """All that the customer of an example reads."""
    return once_per_run(
        f"view {job_file.stem}", lambda: customer_view(shop.example_results(job_file))
    )
