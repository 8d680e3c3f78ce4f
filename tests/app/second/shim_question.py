# SPDX-License-Identifier: GPL-3.0-or-later
"""Random questions to the shim advisor, and the same in plain numbers."""

import math
from dataclasses import dataclass

import numpy as np

from draw import Draw
from judging import angle_factor, graduation_u, rectangular
from knee_line import History, Pulls, learned
from shims import Pack, draw_stock, makeable
from units import radians, read, read_or

# --- inputs ------------------------------------------------------------------------------------

class Axle:
    """An axle that might be: drag, knee and slope, and a scale to pull it with."""

    def __init__(self, draw: Draw, inner: bool) -> None:
        self.draw, self.sign = draw, 1.0 if inner else -1.0
        self.drag = draw.random.uniform(3, 15)
        self.slope = math.exp(draw.random.uniform(math.log(15), math.log(300)))
        self.knee = self.sign * draw.random.uniform(0.3, 0.9)
        self.scatter = draw.random.uniform(0.2, 1.0)
        self.step = draw.choice((0.1, 0.5))

    def force(self, pack: float) -> float:
        """True force of a pack in mm."""
        return self.drag + self.slope * max(0.0, self.sign * pack - self.knee)

    def pulls(self, pack: float) -> list[str]:
        """Some pulls as the scale shows them."""
        mean = self.force(pack)
        shown = [max(0.0, self.draw.random.gauss(mean, self.scatter))
                 for _ in range(self.draw.whole(1, 5))]
        return [f"{round(value / self.step) * self.step:.1f} N" for value in shown]


def draw_shim_pack(draw: Draw) -> dict:
    """An axle with some packs pulled."""
    layout = draw.choice(("cap_flange", "inner"))
    inputs: dict = {"layout": layout} | draw_stock(draw)
    axle = Axle(draw, layout == "inner")
    packs = makeable(inputs)
    totals = [pack.total for pack in packs]
    count = min(draw.choice((0, 1, 1, 2, 2, 3, 3)), len(totals))
    if count:
        inputs["measured"] = [{"pack": f"{pack:.4f} mm", "pulls": axle.pulls(pack)}
                              for pack in draw.random.sample(totals, count)]
    draw_limit(draw, inputs, axle)
    draw.sometimes(inputs, "instrument", lambda: draw_scale(draw, axle), 0.7)
    draw.sometimes(inputs, "scatter", lambda: {"amount": draw.quantity(0.2, 1.5, "N", 2),
                                               "readings": draw.whole(2, 40)}, 0.5)
    draw.sometimes(inputs, "rebuild_scatter", lambda: draw.quantity(0, 1, "N", 2), 0.4)
    draw.sometimes(inputs, "off_square", lambda: draw.quantity(-20, 20, "deg", 2), 0.2)
    draw.sometimes(inputs, "pull_angle_within", lambda: draw.quantity(0, 15, "deg", 2), 0.2)
    draw.sometimes(inputs, "other_side", lambda: draw.quantity(5, 40, "N", 3), 0.3)
    draw.sometimes(inputs, "options", lambda: {"planned": draw.whole(1, 8)}, 0.5)
    draw_beliefs(draw, inputs, axle)
    draw_states(draw, inputs)
    return inputs


def draw_limit(draw: Draw, inputs: dict, axle: Axle) -> None:
    """Of the force, or as a torque at an arm."""
    middle = draw.random.uniform(axle.drag + 3, axle.drag + 40)
    half = draw.random.uniform(1.5, 8)
    limit: dict = {"min": max(0.0, middle - half), "max": middle + half}
    if draw.chance(0.3):
        del limit[draw.choice(("min", "max"))]
    if draw.chance(0.25):
        inputs["arm"] = f"{draw.whole(150, 250)} mm"
        draw.sometimes(inputs, "limit_arm", lambda: f"{draw.whole(150, 250)} mm")
        arm = read(inputs.get("limit_arm", inputs["arm"]), "mm") / 1000
        inputs["limit_torque"] = {name: f"{value * arm:.3f} N m" for name, value in limit.items()}
    else:
        inputs["limit"] = {name: f"{value:.1f} N" for name, value in limit.items()}


def draw_scale(draw: Draw, axle: Axle) -> dict:
    """A spring scale."""
    scale: dict = {"graduation": f"{axle.step} N"}
    draw.sometimes(scale, "permissible_error", lambda: draw.quantity(0.2, 1, "N", 2))
    return scale


def draw_beliefs(draw: Draw, inputs: dict, axle: Axle) -> None:
    """A measured float, a film of sealant, closed jobs."""
    if draw.chance(0.3):
        inputs["measured_float"] = {
            "pack": f"{max(0.0, axle.sign * axle.knee + draw.random.gauss(0, 0.02)):.3f} mm",
            "standard_uncertainty": draw.quantity(0.01, 0.05, "mm", 2)}
    if draw.chance(0.25):
        inputs["film"] = {"least": "0.01 mm", "most": f"{draw.whole(15, 60) / 1000} mm"}
    if draw.chance(0.3):
        inputs["history"] = [{"packs": draw_side(draw, inputs["layout"] == "inner")}
                             for _ in range(draw.whole(1, 5))]


def draw_side(draw: Draw, inner: bool) -> list[dict]:
    """One side of a closed job."""
    axle = Axle(draw, inner)
    packs = draw.random.sample((0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8), draw.whole(1, 3))
    return [{"pack": f"{pack} mm", "pulls": axle.pulls(pack)} for pack in packs]


def draw_states(draw: Draw, inputs: dict) -> None:
    """Packs pulled in another state are left out."""
    if len(inputs.get("measured", [])) > 1 and draw.chance(0.2):
        for pack in inputs["measured"]:
            pack["state"] = draw.choice(("bare", "bare", "sealed"))
        draw.sometimes(inputs, "state", lambda: inputs["measured"][0]["state"])


# --- the question ------------------------------------------------------------------------------

@dataclass
class Question:
    """Everything in N and mm, z along the direction that raises the force."""

    packs: list[Pack]
    sign: float
    low: float | None
    high: float | None
    pulls: list[tuple[float, list[float]]]  # z and forces, pack by pack
    instrument_u: float
    graduation_u: float
    scatter: tuple[float, float] | None
    set_up: float
    knee: tuple[float, float] | None
    film: tuple[float, float] | None
    history: History | None
    other: float | None
    planned: int

    @property
    def loose(self) -> float:
        """By how much the tolerances grow."""
        return 2.0 if self.history else 1.0

    def z(self, pack: float) -> float:
        """The raising direction: thinner under a cap flange, thicker between pin and cap."""
        return self.sign * pack


def pull_factor(inputs: dict) -> tuple[float, float]:
    """What a pull means at the limit's arm, square to it, and the relative uncertainty of a
    direction that is not known."""
    factor = 1.0
    if "limit_arm" in inputs:
        factor = read(inputs["arm"], "mm") / read(inputs["limit_arm"], "mm")
    mean, spread = angle_factor(radians(inputs.get("pull_angle_within", 0.0)))
    return factor * math.cos(radians(inputs.get("off_square", 0.0))) * mean, spread / mean


def band(inputs: dict) -> tuple[float | None, float | None]:
    """The limit as a force."""
    if "limit" in inputs:
        limit, unit, arm = inputs["limit"], "N", 1.0
    else:
        limit, unit = inputs["limit_torque"], "N m"
        arm = read(inputs.get("limit_arm", inputs["arm"]), "mm") / 1000
    low, high = (read(limit[name], unit) / arm if name in limit else None
                 for name in ("min", "max"))
    return low, high


def asked(inputs: dict) -> Question:
    """The input in plain numbers."""
    sign = 1.0 if inputs["layout"] == "inner" else -1.0
    factor, angle_u = pull_factor(inputs)
    low, high = band(inputs)
    scale = inputs.get("instrument")
    error = rectangular(read_or(scale, "permissible_error", "N", 0.0)) if scale else 0.0
    mark = graduation_u(read(scale["graduation"], "N")) if scale else 0.0
    middle = ((low if low is not None else high) + (high if high is not None else low)) / 2
    known = inputs.get("scatter")
    scatter = (read(known["amount"], "N"), float(known["readings"])) if known else None

    def forces(pack: dict) -> tuple[float, list[float]]:
        return (sign * read(pack["pack"], "mm"), [factor * read(pull, "N")
                                                  for pull in pack["pulls"]])
    sides = [side_pulls([forces(pack) for pack in side["packs"]])
             for side in inputs.get("history", [])]
    grain = factor * mark * math.sqrt(12)
    float_ = inputs.get("measured_float")
    film = inputs.get("film")
    return Question(
        makeable(inputs), sign, low, high, [forces(pack) for pack in of_one_state(inputs)],
        math.hypot(factor * error, angle_u * middle), factor * mark, scatter,
        read_or(inputs, "rebuild_scatter", "N", 0.0),
        (sign * read(float_["pack"], "mm"), read(float_["standard_uncertainty"], "mm"))
        if float_ else None,
        (read(film["least"], "mm"), read(film["most"], "mm")) if film else None,
        learned(sides, scatter or (max(grain, 0.1), 2.0)),
        read(inputs["other_side"], "N") if "other_side" in inputs else None,
        inputs.get("options", {}).get("planned", 5))


def of_one_state(inputs: dict) -> list[dict]:
    """Only the state asked for, or that of the last pack."""
    measured = inputs.get("measured", [])
    if not measured:
        return []
    state = inputs.get("state", measured[-1].get("state", ""))
    return [pack for pack in measured if pack.get("state", "") == state]


def side_pulls(packs: list[tuple[float, list[float]]]) -> Pulls:
    """Pull by pull."""
    return Pulls(np.array([z for z, forces in packs for _ in forces]),
                 np.array([force for _, forces in packs for force in forces]),
                 np.array([k for k, (_, forces) in enumerate(packs) for _ in forces]))
