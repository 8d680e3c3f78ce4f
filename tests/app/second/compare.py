# SPDX-License-Identifier: GPL-3.0-or-later
"""What an answer should be, and how near the program came to it."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

RELATIVE = 1e-9  # closed forms: rounding, and 15 printed digits
ABSOLUTE = 1e-12  # of a result that may be zero, in its own unit


@dataclass(frozen=True)
class Number:
    """A number and how near is near enough."""

    value: float
    relative: float = RELATIVE
    absolute: float = ABSOLUTE


@dataclass(frozen=True)
class Quantity:
    """A quantity in the unit the program answers in; a turn is compared round the circle."""

    value: float
    unit: str
    relative: float = RELATIVE
    absolute: float = ABSOLUTE
    turn: bool = False


@dataclass(frozen=True)
class OneOf:
    """Either of several answers: the input lies on the very edge between them."""

    options: tuple[object, ...]


@dataclass(frozen=True)
class Anything:
    """Not compared: words for people."""


@dataclass(frozen=True)
class Check:
    """A value that is asked back: its error by `test` must not exceed `most`."""

    test: Callable[[object], float]
    most: float
    meaning: str
    absent: bool = False


ANYTHING = Anything()


class Refused(Exception):
    """The input is one the program has to refuse; the argument is the error's code."""


@dataclass(frozen=True)
class Expected:
    """The fields of a result, and which notes must and must not stand beside it."""

    result: Mapping[str, object]
    notes: Mapping[str, bool] = field(default_factory=dict)


@dataclass
class Deviation:
    """The largest relative deviation so far, and where."""

    worst: float = 0.0
    where: str = "-"

    def take(self, amount: float, where: str) -> None:
        """Keeps it if it is the largest."""
        if amount > self.worst:
            self.worst, self.where = amount, where


class Comparison:
    """Compares answers and keeps the worst deviation that still agreed."""

    def __init__(self) -> None:
        self.deviation = Deviation()

    def differences(self, expected: Expected, answer: Mapping) -> list[str]:
        """All disagreements of one answer, in words; none means that it agrees."""
        found = self._compared(expected.result, answer["result"], "")
        codes = [note["code"] for note in answer["notes"]]
        for code, wanted in expected.notes.items():
            if (code in codes) != wanted:
                found.append(f"note {code}: expected {'it' if wanted else 'none'}, got {codes}")
        return found

    def _compared(self, expected: object, got: object, where: str) -> list[str]:
        if isinstance(expected, Anything):
            return []
        if isinstance(expected, OneOf):
            tried = [self._compared(option, got, where) for option in expected.options]
            return [] if [] in tried else tried[0]
        if isinstance(expected, Check):
            return self._check(expected, got, where)
        if isinstance(expected, Mapping):
            return self._object(expected, got, where)
        if isinstance(expected, (list, tuple)):
            return self._list(expected, got, where)
        if isinstance(expected, Quantity):
            return self._quantity(expected, got, where)
        if isinstance(expected, float):
            return self._number(Number(expected), got, where)
        if isinstance(expected, Number):
            return self._number(expected, got, where)
        same = expected == got and isinstance(expected, bool) == isinstance(got, bool)
        return [] if same else [f"{where}: expected {expected!r}, got {got!r}"]

    def _object(self, expected: Mapping, got: object, where: str) -> list[str]:
        if not isinstance(got, Mapping):
            return [f"{where}: expected an object, got {got!r}"]
        found = [f"{where}/{name}: not expected, got {got[name]!r}"
                 for name in got if name not in expected]
        for name, value in expected.items():
            if name in got:
                found += self._compared(value, got[name], f"{where}/{name}")
            elif not isinstance(value, Anything) and not getattr(value, "absent", False):
                found.append(f"{where}/{name}: expected {value!r}, got nothing")
        return found

    def _check(self, expected: Check, got: object, where: str) -> list[str]:
        error = expected.test(got)
        if not error <= expected.most:
            return [f"{where}: expected {expected.meaning}, got {got!r}, off by {error:.2g}"]
        self.deviation.take(error, where)
        return []

    def _list(self, expected: list | tuple, got: object, where: str) -> list[str]:
        if not isinstance(got, list) or len(got) != len(expected):
            return [f"{where}: expected {len(expected)} entries, got {got!r}"]
        found = []
        for index, (one, other) in enumerate(zip(expected, got)):
            found += self._compared(one, other, f"{where}/{index}")
        return found

    def _quantity(self, expected: Quantity, got: object, where: str) -> list[str]:
        number, _, unit = str(got).partition(" ")
        if unit != expected.unit:
            return [f"{where}: expected {expected.value!r} {expected.unit}, got {got!r}"]
        value = float(number)
        if expected.turn:
            value = expected.value + (value - expected.value + 180.0) % 360.0 - 180.0
        return self._near(expected.value, value, expected, where)

    def _number(self, expected: Number, got: object, where: str) -> list[str]:
        if math.isinf(expected.value):
            return [] if got == "infinity" else [f"{where}: expected infinity, got {got!r}"]
        if isinstance(got, bool) or not isinstance(got, (int, float)):
            return [f"{where}: expected {expected.value!r}, got {got!r}"]
        return self._near(expected.value, float(got), expected, where)

    def _near(self, wanted: float, got: float, tolerance: Number | Quantity,
              where: str) -> list[str]:
        scale = max(abs(wanted), tolerance.absolute / tolerance.relative)
        deviation = abs(got - wanted) / scale
        if not deviation <= tolerance.relative:
            return [f"{where}: expected {wanted!r}, got {got!r}, off by {deviation:.2g}"]
        self.deviation.take(deviation, where)
        return []
