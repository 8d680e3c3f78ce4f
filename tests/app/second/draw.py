# SPDX-License-Identifier: GPL-3.0-or-later
"""Random inputs as people would type them, the same ones every time."""

import math
import random
from collections.abc import Callable, Sequence
from typing import TypeVar

from units import KINDS, converted, kind_of

T = TypeVar("T")

# What people type for a kind; a range that does not suit a unit leaves it out.
TYPED_UNITS: dict[str, tuple[str, ...]] = {
    "length": ("mm", "in", "thou", "cm", "m", "um", "km", "mi"),
    "force": ("N", "kgf", "lbf", "ozf", "daN", "kN"),
    "torque": ("N m", "lbf ft", "kgf m", "lbf in", "kgf cm"),
    "angle": ("deg", "rad"),
    "mass": ("kg", "lb", "g", "oz", "t"),
    "speed": ("km/h", "mph", "m/s"),
    "frequency": ("Hz", "rpm"),
    "pressure": ("bar", "psi", "kPa"),
    "duration": ("min", "h"),
    "volume": ("l", "ml"),
    "temperature_difference": ("K", "degC"),
    "stiffness": ("N/mm", "kN/mm"),
}
LEAST_TYPED, MOST_TYPED = 0.01, 200000.0
EDGE, BARE, COMMA = 0.04, 0.15, 0.1


class Draw:
    """A source of random inputs with a fixed seed."""

    def __init__(self, seed: str) -> None:
        self.random = random.Random(seed)

    def chance(self, probability: float) -> bool:
        """True with this probability."""
        return self.random.random() < probability

    def choice(self, options: Sequence[T]) -> T:
        """One of several."""
        return self.random.choice(options)

    def whole(self, low: int, high: int) -> int:
        """A whole number, both ends included."""
        return self.random.randint(low, high)

    def number(self, low: float, high: float, digits: int = 4) -> float:
        """A number as typed, with so many significant digits; now and then an end of the range."""
        if self.chance(EDGE):
            return self.choice((low, high))
        value = self._rounded(self._between(low, high), digits)
        return value if low <= value <= high else (low + high) / 2

    def quantity(self, low: float, high: float, unit: str, digits: int = 4) -> str | float:
        """A quantity between two values in `unit`, typed in any unit of its kind."""
        if self.chance(BARE):
            return self.number(low, high, digits)
        value, own = self.typed(low, high, unit, digits)
        return self.text(value, own)

    def typed(self, low: float, high: float, unit: str, digits: int = 4) -> tuple[str, str]:
        """The same as the text of its number and its unit."""
        if self.chance(EDGE):
            return self._plain(self.choice((low, high))), unit
        value = self._between(low, high)
        own = self.choice(self._suitable(value, unit))
        rounded = self._rounded(converted(value, unit, own), digits)
        if low <= converted(rounded, own, unit) <= high:
            return self._plain(rounded), own
        return self._plain((low + high) / 2), unit

    def in_unit(self, value: float, own: str, step: float) -> str:
        """A length of so many mm as an instrument of this unit and step shows it."""
        return self.text(self._plain(round(converted(value, "mm", own) / step) * step), own)

    def text(self, number: str, unit: str) -> str:
        """Number and unit as typed; now and then with a decimal comma."""
        decimals = number.partition(".")[2]
        if decimals and len(decimals) != 3 and self.chance(COMMA):
            number = number.replace(".", ",")
        return f"{number} {unit}"

    def sometimes(self, target: dict, name: str, value: Callable[[], object],
                  probability: float = 0.5) -> None:
        """Sets a field now and then."""
        if self.chance(probability):
            target[name] = value()

    def _between(self, low: float, high: float) -> float:
        if low > 0 and high / low > 20 and self.chance(0.5):
            return math.exp(self.random.uniform(math.log(low), math.log(high)))
        return self.random.uniform(low, high)

    @staticmethod
    def _suitable(value: float, unit: str) -> list[str]:
        kind = kind_of(unit)
        candidates = TYPED_UNITS.get(kind, tuple(KINDS[kind]))
        suitable = [own for own in candidates
                    if LEAST_TYPED <= abs(converted(value, unit, own)) <= MOST_TYPED]
        return suitable or [unit]

    @staticmethod
    def _rounded(value: float, digits: int) -> float:
        return float(f"{value:.{digits}g}")

    @staticmethod
    def _plain(value: float) -> str:
        text = f"{value:.10f}".rstrip("0").rstrip(".")
        return "0" if text in ("-0", "") else text
