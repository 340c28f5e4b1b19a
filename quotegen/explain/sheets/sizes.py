"""How large each drawing of the quote is, on paper and on a phone."""

from quotegen.explain.drawing.scale import Viewport

PLAN = Viewport(
    width_px=680, height_px=399, left_px=58, right_px=48, top_px=30, bottom_px=72, to_scale=True
)
NARROW = Viewport(
    width_px=328, height_px=460, left_px=44, right_px=34, top_px=60, bottom_px=88, to_scale=False
)
DOOR = Viewport(
    width_px=680, height_px=460, left_px=58, right_px=48, top_px=40, bottom_px=70, to_scale=False
)
JOINTS = Viewport(
    width_px=330, height_px=215, left_px=8, right_px=8, top_px=8, bottom_px=40, to_scale=False
)
WIDE_PX, NARROW_PX, STEPS_PX = 680.0, 328.0, 328.0
