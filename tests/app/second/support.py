# SPDX-License-Identifier: GPL-3.0-or-later
"""Support under a raised axle."""

from calculation import Calculation
from compare import Quantity
from draw import Draw
from units import read


def draw_stand_load(draw: Draw) -> dict:
    """A load known in one of four ways, and stands marked in one of two."""
    inputs: dict = {"known_from": draw.choice(("weighed", "vehicle_documents", "mass_and_share",
                                               "mass_only")),
                    "rating": draw.quantity(200, 6000, "kg"),
                    "rating_means": draw.choice(("each", "per_pair"))}
    if inputs["known_from"] in ("weighed", "vehicle_documents"):
        inputs["axle_load"] = draw.quantity(200, 3000, "kg")
    else:
        inputs["vehicle_mass"] = draw.quantity(600, 6000, "kg")
    if inputs["known_from"] == "mass_and_share":
        inputs["axle_share"] = draw.number(0.05, 1, 3)
    draw.sometimes(inputs, "stands", lambda: draw.whole(2, 6))
    return inputs


def stand_load(inputs: dict) -> dict:
    """Half of the axle's load on each stand, however many there are; each must be rated for more
    (common practice, no source). A rating per pair counts half."""
    if "axle_load" in inputs:
        load = read(inputs["axle_load"], "kg")
    else:
        load = read(inputs["vehicle_mass"], "kg") * inputs.get("axle_share", 1.0)
    rated = read(inputs["rating"], "kg") / (2 if inputs["rating_means"] == "per_pair" else 1)
    needed = load / 2
    return {"axle_load": Quantity(load, "kg"), "needed_each": Quantity(needed, "kg"),
            "rated_each": Quantity(rated, "kg"), "margin": rated / needed - 1,
            "verdict": "enough" if rated > needed else "not_enough"}


CALCULATIONS = (Calculation("stand-load", draw_stand_load, stand_load),)
