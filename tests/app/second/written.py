# SPDX-License-Identifier: GPL-3.0-or-later
"""Lengths and torques of an answer."""

from compare import Quantity


def nm(value: float) -> Quantity:
    """A torque of an answer."""
    return Quantity(value, "N m")


def mm(value: float, absolute: float = 1e-12) -> Quantity:
    """A length of an answer."""
    return Quantity(value, "mm", absolute=absolute)
