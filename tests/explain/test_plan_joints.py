"""Joints on the plan: thin dash-dot lines, and sizes that fit into their panels."""

from quotegen.explain.frame import Room, frame_for
from quotegen.explain.free_space import Box, FreeSpace
from quotegen.explain.plan_joints import DASH, joint_lines, panel_sizes
from quotegen.explain.wording import Words
from quotegen.quantity import Units
from tests.takeoff.plans import joints_of, line

LABELS = {"panel_size": "{long} x {short}", "panel_by": "x {short}", "panel_number": "no. {number}"}
WORDS = Words(labels=LABELS, locale="en_US", units=Units.US)
ROOM = Room(
    width_px=400, height_px=300, left_px=10, right_px=10, top_px=10, bottom_px=10, to_scale=False
)
PATIO = joints_of({"rectangle": "36 ft x 20 ft"})
FRAME = frame_for(((0, 0), (36, 20)), ROOM, Units.US)


def _space() -> FreeSpace:
    return FreeSpace(Box(0, 0, 400, 300))


def test_every_joint_is_drawn_dash_dot():
    """Each joint is one thin line of its own kind, which reads in black and white."""
    drawn = list(joint_lines(PATIO, FRAME, _space()))
    assert len(drawn) == len(PATIO.joints)
    assert all(DASH in one for one in drawn)


def test_every_panel_with_room_says_its_size():
    """Eight panels of 10 by 9 ft have room for their size, in two lines here."""
    space = _space()
    list(joint_lines(PATIO, FRAME, space))
    drawn = list(panel_sizes(PATIO, WORDS, FRAME, space))
    assert len(drawn) == 8
    assert all("10&#x27;-0&quot;" in one and "9&#x27;-0&quot;" in one for one in drawn)


def test_a_size_that_has_no_room_is_left_out():
    """On a small drawing no size is squeezed over a line."""
    tiny = Room(
        width_px=120, height_px=90, left_px=5, right_px=5, top_px=5, bottom_px=5, to_scale=False
    )
    frame = frame_for(((0, 0), (36, 20)), tiny, Units.US)
    assert list(panel_sizes(PATIO, WORDS, frame, _space())) == []


def test_a_panel_at_fault_shows_its_number():
    """The number that a sentence names stands in its panel."""
    lines = (line((18, 0), (18, 20)),)
    plan = joints_of({"rectangle": "36 ft x 20 ft"}, lines=lines)
    drawn = list(panel_sizes(plan, WORDS, FRAME, _space()))
    assert ["no. 1" in drawn[0], "no. 2" in drawn[1]] == [True, True]
