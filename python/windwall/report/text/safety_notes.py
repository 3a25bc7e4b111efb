"""What comes before any number, and the last words under any advice."""

from __future__ import annotations

from windwall.report.text_layout import Blocks, paragraph, section

__all__ = ["FIRST_STEPS", "NOT_MODELLED", "WHO_DECIDES", "safety_notes"]

FIRST_STEPS = (
    "Before any of this is used at speed: part throttle first, plugs read, one change at a time, "
    "on a closed course."
)
WHO_DECIDES = (
    "Component ratings, local rules for the road and for the venue, and licensed practice come "
    "before anything printed here."
)
NOT_MODELLED = "Brakes, hubs, steering, lift and stability are not modelled."


def safety_notes() -> Blocks:
    """The end of every answer."""
    return section(
        "Care", [*paragraph(FIRST_STEPS), *paragraph(WHO_DECIDES), *paragraph(NOT_MODELLED)]
    )
