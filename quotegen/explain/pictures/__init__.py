"""The drawings themselves: plan, section, timeline, swatches, charts."""
