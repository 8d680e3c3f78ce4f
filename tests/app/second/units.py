# SPDX-License-Identifier: GPL-3.0-or-later
"""Units from their legal definitions, and quantities as people type them.

Sources: inch, foot, mile and pound by the yard and pound agreement of 1959; standard gravity
9.80665 m/s2 by the 3rd CGPM (1901); litre by the 12th CGPM (1964); the rest SI Brochure, 9th
edition. Each kind has a base unit; a factor says how many base units one unit is.
"""

import math

POUND = 0.45359237  # kg
GRAVITY = 9.80665  # m/s2
POUND_FORCE = POUND * GRAVITY  # N
INCH = 25.4  # mm

KINDS: dict[str, dict[str, float]] = {
    "length": {"mm": 1.0, "in": INCH, "thou": INCH / 1000, "cm": 10.0, "m": 1000.0, "um": 1e-3,
               "ft": 12 * INCH, "yd": 36 * INCH, "km": 1e6, "mi": 5280 * 12 * INCH},
    "force": {"N": 1.0, "kgf": GRAVITY, "lbf": POUND_FORCE, "gf": GRAVITY / 1000,
              "ozf": POUND_FORCE / 16, "daN": 10.0, "kN": 1000.0},
    "torque": {"N m": 1.0, "lbf ft": POUND_FORCE * 0.3048, "kgf m": GRAVITY,
               "lbf in": POUND_FORCE * 0.0254, "kgf cm": GRAVITY / 100, "N cm": 0.01,
               "ozf in": POUND_FORCE / 16 * 0.0254, "daN m": 10.0},
    "angle": {"deg": 1.0, "rad": 180 / math.pi},
    "mass": {"kg": 1.0, "lb": POUND, "g": 1e-3, "oz": POUND / 16, "t": 1000.0},
    "speed": {"km/h": 1.0, "mph": 1.609344, "m/s": 3.6},
    "frequency": {"Hz": 1.0, "rpm": 1 / 60, "kHz": 1000.0},
    "pressure": {"bar": 1.0, "psi": POUND_FORCE / 0.0254**2 / 1e5, "kPa": 0.01,
                 "kgf/cm2": GRAVITY / 10, "MPa": 10.0, "Pa": 1e-5},
    "duration": {"min": 1.0, "h": 60.0, "s": 1 / 60},
    "volume": {"l": 1.0, "ml": 1e-3, "cm3": 1e-3},
    "temperature_difference": {"K": 1.0, "degC": 1.0},
    "stiffness": {"N/mm": 1.0, "kN/mm": 1000.0},
    "area": {"mm2": 1.0},
    "unbalance": {"g mm": 1.0},
}
FACTORS: dict[str, tuple[str, float]] = {
    unit: (kind, factor) for kind, units in KINDS.items() for unit, factor in units.items()}


def kind_of(unit: str) -> str:
    """The kind of quantity a unit measures."""
    return FACTORS[unit][0]


def converted(value: float, unit: str, wanted: str) -> float:
    """A value in another unit of its kind."""
    kind, factor = FACTORS[unit]
    wanted_kind, wanted_factor = FACTORS[wanted]
    if kind != wanted_kind:
        raise ValueError(f"{unit} is no {wanted_kind}")
    return value * factor / wanted_factor


def split(text: str) -> tuple[str, str]:
    """A typed quantity as its number and its unit."""
    number, _, unit = text.partition(" ")
    return number.replace(",", "."), unit


def read(typed: object, unit: str) -> float:
    """A quantity of an input, in `unit`: text with a unit, or a bare number in `unit` itself."""
    if isinstance(typed, (int, float)):
        return float(typed)
    number, own = split(str(typed))
    return converted(float(number), own, unit)


def read_or(inputs: dict, name: str, unit: str, default: float) -> float:
    """A quantity of an input that may be absent."""
    return read(inputs[name], unit) if name in inputs else default


def radians(typed: object) -> float:
    """An angle of an input in radians."""
    return math.radians(read(typed, "deg"))
