# SPDX-License-Identifier: GPL-3.0-or-later
"""One calculation of the program with its second implementation."""

from collections.abc import Callable
from dataclasses import dataclass

from compare import Expected
from draw import Draw


@dataclass(frozen=True)
class Calculation:
    """A name of the program, random valid inputs for it, and what it must answer to them."""

    name: str
    draw: Callable[[Draw], dict]
    expected: Callable[[dict], Expected | dict]
    count: int = 1000
