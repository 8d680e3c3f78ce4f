# SPDX-License-Identifier: GPL-3.0-or-later
"""Fasteners: threads, clamp force and torque (VDI 2230-1); the rest of them is in wrenches.py and
nuts.py."""

import math

from scipy import optimize

import nuts
import threads
import wrenches
from calculation import Calculation
from compare import Number, Quantity
from draw import Draw
from threads import WRITTEN, Thread, draw_class, draw_thread
from units import FACTORS, KINDS, read, split
from written import nm

COS_30 = math.cos(math.pi / 6)
# Bearing face and hole of a hexagon head in mm: ISO 4014 grade A (M18 from memory), ISO 273 medium.
HEADS = {5: (6.88, 5.5), 6: (8.88, 6.6), 8: (11.63, 9), 10: (14.63, 11), 12: (16.63, 13.5),
         14: (19.37, 15.5), 16: (22.49, 17.5), 18: (25.34, 20), 20: (28.19, 22)}
# VDI 2230-1, table of friction classes; E has no upper end.
FRICTION_CLASSES = {"A": (0.04, 0.10), "B": (0.08, 0.16), "C": (0.14, 0.24), "D": (0.20, 0.35),
                    "E": (0.30, None)}


def span(low: float, high: float) -> dict:
    """Two numbers as the ends of a range."""
    return {"min": float(low), "max": float(high)}


# --- the joint ---------------------------------------------------------------------------------

class Joint:
    """M = F [d2/2 t + D/2 mu_K] in N mm; t = P/(pi d2) + mu_G/cos 30 linear, tan(phi + rho') exact
    (Kellermann and Klein; VDI 2230-1, from memory)."""

    def __init__(self, thread: Thread, friction_diameter: float, exact: bool = False) -> None:
        self.thread, self.face, self.exact = thread, friction_diameter, exact
        self.slope = thread.pitch / (math.pi * thread.pitch_diameter)

    def t(self, mu: float, sign: float = 1.0) -> float:
        """Thread torque over F d2/2; sign -1 for undoing."""
        rough = mu / COS_30
        if not self.exact:
            return rough + sign * self.slope
        return math.tan(math.atan(rough) + sign * math.atan(self.slope))

    def bracket(self, thread_mu: float, head_mu: float, sign: float = 1.0) -> float:
        """M / F in mm."""
        return (self.thread.pitch_diameter / 2 * self.t(thread_mu, sign)
                + self.face / 2 * head_mu)

    def stress_per_force(self, thread_mu: float, elastic: bool) -> float:
        """sigma_red / F in 1/mm2: sigma = F/As, tau = M_G/W_p, W_p = pi/12 d0^3 plastic or
        pi/16 d0^3 elastic."""
        d0 = self.thread.stress_diameter
        torsion = (self.thread.pitch_diameter / 2 * self.t(thread_mu)
                   / (math.pi / (16 if elastic else 12) * d0**3))
        return math.hypot(1 / self.thread.stress_area, math.sqrt(3) * torsion)

    def utilisation(self, torque: float, frictions: tuple, strength: float,
                    elastic: bool) -> tuple[float, float]:
        """Least and greatest sigma_red / yield over the whole range of both frictions, torque in
        N mm: searched by SciPy between the ends."""
        (low, high), (head_low, head_high) = frictions

        def at(mu: float, head: float) -> float:
            return torque / self.bracket(mu, head) * self.stress_per_force(mu, elastic) / strength
        corners = [at(mu, head) for mu in (low, high) for head in (head_low, head_high)]
        inner = []
        if high > low:
            for head, sign in ((head_high, 1.0), (head_low, -1.0)):
                found = optimize.minimize_scalar(lambda mu: sign * at(mu, head), method="bounded",
                                                 bounds=(low, high), options={"xatol": 1e-12})
                inner.append(at(float(found.x), head))
        return min(corners + inner), max(corners + inner)


def draw_face(draw: Draw, inputs: dict, thread: Thread) -> None:
    """The face that rubs, where it is no plain head."""
    known = thread.metric and thread.diameter in HEADS
    if draw.chance(0.3):
        inputs["bearing_diameter"] = draw.quantity(1.5 * thread.diameter, 2.4 * thread.diameter,
                                                   "mm")
    if draw.chance(0.5) and (known or "bearing_diameter" in inputs):
        inputs["hole_diameter"] = draw.quantity(1.01 * thread.diameter, 1.3 * thread.diameter, "mm")
    if not known and "bearing_diameter" in inputs and "hole_diameter" not in inputs:
        del inputs["bearing_diameter"]


def friction_diameter(inputs: dict, thread: Thread) -> tuple[float, str]:
    """(outer + hole)/2; of a standard head where not given; 1.3 d where there is none."""
    given = "bearing_diameter" in inputs or "hole_diameter" in inputs
    head = HEADS.get(thread.diameter) if thread.metric else None
    if not given and head is None:
        return 1.3 * thread.diameter, "rule_of_thumb"
    outer, hole = head or (0.0, 0.0)
    if "bearing_diameter" in inputs:
        outer = read(inputs["bearing_diameter"], "mm")
    if "hole_diameter" in inputs:
        hole = read(inputs["hole_diameter"], "mm")
    return (outer + hole) / 2, "given" if given else "standard_head"


def draw_friction(draw: Draw, inputs: dict, names: tuple[str, ...]) -> None:
    """A class, figures, or both."""
    if draw.chance(0.4):
        inputs["friction_class"] = draw.choice("ABCDE")
    if draw.chance(0.3) or inputs.get("friction_class") == "E":
        inputs["friction"] = {"min": draw.number(0.05, 0.3, 2), "max": draw.number(0.31, 0.6, 2)}
    for name in names:
        if draw.chance(0.25):
            inputs[name] = {"min": draw.number(0.05, 0.15, 2), "max": draw.number(0.151, 0.5, 3)}


def friction_range(inputs: dict, name: str = "friction") -> tuple[float, float]:
    """The usual 0.08 to 0.24; ends of a class; figures replace them."""
    low, high = FRICTION_CLASSES.get(inputs.get("friction_class"), (0.08, 0.24))
    for given in (inputs.get("friction", {}), inputs.get(name, {})):
        low, high = given.get("min", low), given.get("max", high)
    return low, high


# --- clamp-force -------------------------------------------------------------------------------

def draw_clamp_force(draw: Draw) -> dict:
    """Torque, force, both or none."""
    inputs: dict = {"thread": draw_thread(draw)}
    thread = WRITTEN[inputs["thread"]].thread
    way = draw.choice(("torque", "clamp_force", "both", "none", "nut_factor"))
    size = thread.diameter**3
    if way in ("torque", "both") or (way == "nut_factor" and draw.chance(0.5)):
        inputs["torque"] = draw.quantity(0.01 * size, 0.15 * size, "N m")
    elif way in ("clamp_force", "nut_factor"):
        inputs["clamp_force"] = draw.quantity(50 * thread.diameter**2, 700 * thread.diameter**2,
                                              "N")
    if way == "both":
        torque = read(inputs["torque"], "N m") * 1000
        inputs["clamp_force"] = draw.quantity(torque / (0.35 * thread.diameter),
                                              torque / (0.03 * thread.diameter), "N")
    if way == "nut_factor":
        inputs["nut_factor"] = draw.number(0.08, 0.5, 3)
    if way != "nut_factor" and (way == "none" or draw.chance(0.7)):
        inputs["strength_class"] = draw_class(draw, thread)
        draw.sometimes(inputs, "tightening_factor", lambda: draw.number(1, 4, 3))
    draw_friction(draw, inputs, ("thread_friction", "head_friction"))
    draw_face(draw, inputs, thread)
    options: dict = {}
    draw.sometimes(options, "torsion", lambda: draw.choice(("plastic", "elastic")))
    draw.sometimes(options, "formula", lambda: draw.choice(("linear", "exact")))
    draw.sometimes(options, "utilisation", lambda: draw.number(0.1, 1, 2))
    if options:
        inputs["options"] = options
    return inputs


def clamp_force(inputs: dict) -> dict:
    """The full form, the short form M = K d F, or what a pair of torque and force implies."""
    thread = WRITTEN[inputs["thread"]].thread
    result: dict = {"thread": thread.name}
    if "nut_factor" in inputs:
        return result | short_form(inputs, thread)
    face, source = friction_diameter(inputs, thread)
    result |= {"friction_diameter": Quantity(face, "mm"), "friction_diameter_from": source}
    joint = Joint(thread, face, inputs.get("options", {}).get("formula") == "exact")
    if "torque" in inputs and "clamp_force" in inputs:
        return result | implied(inputs, joint)
    ranges = (friction_range(inputs, "thread_friction"), friction_range(inputs, "head_friction"))
    result |= {"thread_friction": span(*ranges[0]), "head_friction": span(*ranges[1])}
    result |= cases(inputs, joint, ranges)
    if "strength_class" in inputs:
        result |= strengths(inputs, joint, ranges)
    return result


def short_form(inputs: dict, thread: Thread) -> dict:
    """M = K d F."""
    arm = inputs["nut_factor"] * thread.diameter / 1000
    result: dict = {"nut_factor": span(inputs["nut_factor"], inputs["nut_factor"])}
    if "torque" in inputs:
        force = Quantity(read(inputs["torque"], "N m") / arm, "N")
        return result | {"clamp_force": {"min": force, "max": force}}
    torque = nm(read(inputs["clamp_force"], "N") * arm)
    return result | {"torque": {"min": torque, "max": torque}}


def implied(inputs: dict, joint: Joint) -> dict:
    """K = M/(d F), and the one friction in thread and under the head that fits, linear form."""
    arm = read(inputs["torque"], "N m") * 1000 / read(inputs["clamp_force"], "N")
    factor = arm / joint.thread.diameter
    friction = ((arm - joint.thread.pitch / (2 * math.pi))
                / (joint.thread.pitch_diameter / (2 * COS_30) + joint.face / 2))
    result: dict = {"nut_factor": span(factor, factor)}
    if friction >= 0:
        result["implied_friction"] = Number(friction, relative=1e-8, absolute=1e-11)
    return result


def cases(inputs: dict, joint: Joint, ranges: tuple) -> dict:
    """At the least and at the greatest friction of both."""
    ends = list(dict.fromkeys(zip(*ranges)))
    arms = [joint.bracket(*end) for end in ends]
    result: dict = {"nut_factor": span(arms[0] / joint.thread.diameter,
                                       arms[-1] / joint.thread.diameter),
                    "cases": [case(inputs, joint, end) for end in ends]}
    if "torque" in inputs:
        torque = read(inputs["torque"], "N m") * 1000
        result["clamp_force"] = {"min": Quantity(torque / arms[-1], "N"),
                                 "max": Quantity(torque / arms[0], "N")}
    elif "clamp_force" in inputs:
        force = read(inputs["clamp_force"], "N")
        result["torque"] = {"min": nm(force * arms[0] / 1000), "max": nm(force * arms[-1] / 1000)}
    return result


def case(inputs: dict, joint: Joint, end: tuple[float, float]) -> dict:
    """One friction: where the torque goes, and what undoes it."""
    arm, undoing = joint.bracket(*end), joint.bracket(*end, sign=-1.0)
    stretch = joint.thread.pitch / (2 * math.pi)
    head = joint.face / 2 * end[1]
    row: dict = {"thread_friction": float(end[0]), "head_friction": float(end[1]),
                 "nut_factor": arm / joint.thread.diameter, "stretch_share": stretch / arm,
                 "thread_share": (arm - head - stretch) / arm, "head_share": head / arm,
                 "undoing_share": undoing / arm}
    if "torque" in inputs:
        force = read(inputs["torque"], "N m") * 1000 / arm
    elif "clamp_force" in inputs:
        force = read(inputs["clamp_force"], "N")
    else:
        return row
    return row | {"clamp_force": Quantity(force, "N"), "torque": nm(force * arm / 1000),
                  "undoing_torque": nm(force * undoing / 1000)}


def strengths(inputs: dict, joint: Joint, ranges: tuple) -> dict:
    """Greatest preload and torque for a share of yield, and what is used of it."""
    options = inputs.get("options", {})
    share, elastic = options.get("utilisation", 0.9), options.get("torsion") == "elastic"
    yielding = threads.strength(inputs["strength_class"], joint.thread.diameter)[1]
    preloads = [share * yielding / joint.stress_per_force(mu, elastic) for mu in ranges[0]]
    per_torque = joint.utilisation(1.0, ranges, yielding, elastic)
    result: dict = {"greatest_preload": {"min": Quantity(preloads[1], "N"),
                                         "max": Quantity(preloads[0], "N")},
                    "greatest_torque": nm(share / per_torque[1] / 1000)}
    if "tightening_factor" in inputs:
        result["least_preload"] = Quantity(preloads[0] / inputs["tightening_factor"], "N")
    if "torque" in inputs:
        torque = read(inputs["torque"], "N m") * 1000
        result["utilisation"] = span(torque * per_torque[0], torque * per_torque[1])
    elif "clamp_force" in inputs:
        force = read(inputs["clamp_force"], "N")
        result["utilisation"] = span(*(force * joint.stress_per_force(mu, elastic) / yielding
                                       for mu in ranges[0]))
    return result


# --- torque-plausibility -----------------------------------------------------------------------

def draw_plausibility(draw: Draw) -> dict:
    """A figure, sometimes a slip."""
    inputs: dict = {"thread": draw_thread(draw)}
    thread = WRITTEN[inputs["thread"]].thread
    inputs["strength_class"] = draw_class(draw, thread)
    centre = 0.045 * thread.diameter**3 * draw.choice((1.0, 1.0, 10.0, 0.1))
    inputs["torque"] = draw.quantity(0.4 * centre, 2.5 * centre, "N m", draw.choice((2, 3, 4)))
    draw_friction(draw, inputs, ())
    draw_face(draw, inputs, thread)
    draw.sometimes(inputs, "duty", lambda: draw.choice(("joint", "angle_tightened", "bearing",
                                                        "taper_joint")))
    return inputs


SEVERITY = (("impossible", 2), ("check", 1), ("note", 0))


def plausibility(inputs: dict) -> dict:
    """u of yield at the least friction, at 0.14 (or the end of the range nearest to it) and at the
    greatest (0.24 at least). Bounds of the verdicts: common practice, no source."""
    thread = WRITTEN[inputs["thread"]].thread
    low, high = friction_range(inputs)
    high = max(high, 0.24)
    frictions = (low, min(max(0.14, low), friction_range(inputs)[1]), high)
    joint = Joint(thread, friction_diameter(inputs, thread)[0])
    yielding = threads.strength(inputs["strength_class"], thread.diameter)[1]
    per_nm = [1000 * joint.stress_per_force(mu, False) / joint.bracket(mu, mu) / yielding
              for mu in frictions]
    torque = read(inputs["torque"], "N m")
    u = [each * torque for each in per_nm]
    bare = next((word for word, index in SEVERITY if u[index] > 1),
                "suspiciously_low" if u[0] < 0.2 else "plausible")
    duty = inputs.get("duty", "joint")
    exempt = (bare in ("check", "note", "suspiciously_low") if duty == "angle_tightened"
              else bare == "suspiciously_low" and duty in ("bearing", "taper_joint"))
    number, unit = split(inputs["torque"]) if isinstance(inputs["torque"], str) else (
        f"{inputs['torque']:.15g}", "N m")
    result: dict = {"verdict": "exempt" if exempt else bare, "torque": nm(torque),
                    "torque_as_typed": f"{float(number):.15g} {unit}", "thread": thread.name,
                    "cases": [{"friction": float(mu), "utilisation": each}
                              for mu, each in zip(frictions, u)],
                    "other_readings": []}
    if exempt:
        result["exempt_from"] = bare
    elif bare != "plausible":
        result["other_readings"] = rereadings(float(number), unit, per_nm[1])
    return result


def rereadings(number: float, unit: str, per_nm: float) -> list[dict]:
    """The figure times 10, 100, 1/10, 1/100, and the same number in every other unit of torque,
    where u then lies from 0.4 to 1.0 at the middle friction."""
    tried = [(number * slip, unit, "decimal_slip") for slip in (10.0, 100.0, 0.1, 0.01)]
    tried += [(number, other, "other_unit") for other in KINDS["torque"] if other != unit]
    rows = []
    for value, own, reading in tried:
        u = value * FACTORS[own][1] * per_nm
        if 0.4 <= u <= 1.0:
            rows.append({"torque": f"{value:.15g} {own}", "as": reading, "utilisation": u})
    return rows


CALCULATIONS = (
    Calculation("thread", threads.draw_thread_input, threads.thread_result),
    Calculation("clamp-force", draw_clamp_force, clamp_force),
    Calculation("torque-plausibility", draw_plausibility, plausibility),
    *wrenches.CALCULATIONS,
    *nuts.CALCULATIONS,
)
