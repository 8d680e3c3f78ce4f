# SPDX-License-Identifier: GPL-3.0-or-later
"""Fasteners: clamp force and torque (VDI 2230-1), wrenches, locking nuts, orders and rechecks."""

import calendar
import datetime
import math

from scipy import optimize

import threads
from calculation import Calculation
from compare import Number, Quantity
from draw import Draw
from judging import graduation_u, rectangular
from threads import WRITTEN, Thread, draw_class, draw_thread
from units import FACTORS, KINDS, converted, radians, read, split

COS_30 = math.cos(math.pi / 6)
# Bearing face and hole of a hexagon head in mm: ISO 4014 grade A (M18 from memory), ISO 273 medium.
HEADS = {5: (6.88, 5.5), 6: (8.88, 6.6), 8: (11.63, 9), 10: (14.63, 11), 12: (16.63, 13.5),
         14: (19.37, 15.5), 16: (22.49, 17.5), 18: (25.34, 20), 20: (28.19, 22)}
# VDI 2230-1, table of friction classes; E has no upper end.
FRICTION_CLASSES = {"A": (0.04, 0.10), "B": (0.08, 0.16), "C": (0.14, 0.24), "D": (0.20, 0.35),
                    "E": (0.30, None)}


def nm(value: float) -> Quantity:
    """A torque of an answer."""
    return Quantity(value, "N m")


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


# --- wrench-setting ----------------------------------------------------------------------------

def draw_wrench_setting(draw: Draw) -> dict:
    """A setting with an adapter, wrenches, a check, or all of it."""
    inputs: dict = {}
    if draw.chance(0.9):
        inputs["torque"] = draw.quantity(5, 300, "N m")
        if draw.chance(0.5):
            inputs["adapter"] = {"lever_length": draw.quantity(200, 900, "mm"),
                                 "adapter_length": draw.quantity(0, 150, "mm")}
            draw.sometimes(inputs["adapter"], "adapter_angle",
                           lambda: draw.quantity(-180, 180, "deg", 3))
        if draw.chance(0.6):
            inputs["today"] = draw_day(draw)
            inputs["wrenches"] = [draw_wrench(draw, f"wrench {i}") for i in range(draw.whole(1, 4))]
            if draw.chance(0.3):
                inputs["interval"] = {"months": draw.whole(1, 36),
                                      "operations": draw.whole(1, 9000)}
    if draw.chance(0.4) or "torque" not in inputs:
        inputs["check"] = draw_check(draw)
    return inputs


def draw_day(draw: Draw) -> str:
    """A day of the thirties."""
    return str(datetime.date(2030, 1, 1) + datetime.timedelta(days=draw.whole(0, 1500)))


def draw_wrench(draw: Draw, name: str) -> dict:
    """A torque wrench of a tool wall."""
    most = draw.choice((10, 25, 60, 100, 200, 320, 400))
    wrench: dict = {"name": name,
                    "maximum": draw.choice((f"{most} N m", f"{most * 0.75:g} lbf ft"))}
    draw.sometimes(wrench, "lowest_mark", lambda: draw.quantity(most * 0.1, most * 0.4, "N m", 2))
    draw.sometimes(wrench, "deviation", lambda: draw.number(0.01, 0.1, 2), 0.3)
    draw.sometimes(wrench, "graduation", lambda: draw.choice(("0.5 N m", "1 N m", "5 lbf ft")))
    draw.sometimes(wrench, "handling", lambda: draw.number(0.005, 0.05, 2), 0.3)
    draw.sometimes(wrench, "calibrated_on", lambda: draw_day(draw), 0.8)
    draw.sometimes(wrench, "operations", lambda: draw.whole(0, 9000), 0.4)
    draw.sometimes(wrench, "condition",
                   lambda: draw.choice(("sound", "sound", "dropped_or_overloaded")), 0.3)
    return wrench


def draw_check(draw: Draw) -> dict:
    """One reading on a tester."""
    setting = draw.random.uniform(5, 200)
    check: dict = {"set": f"{setting:.1f} N m",
                   "reference": f"{setting * draw.random.uniform(0.9, 1.1):.2f} N m"}
    if draw.chance(0.5):
        check["maximum"] = draw.quantity(setting, 3 * setting, "N m", 3)
    if "maximum" not in check or draw.chance(0.3):
        check["deviation"] = draw.number(0.01, 0.08, 2)
    return check


def wrench_setting(inputs: dict) -> dict:
    """set = T L/(L + E cos a) (plane statics); the wrenches by ISO 6789, from memory."""
    result: dict = {}
    ratio = 1.0
    if "adapter" in inputs:
        lever = read(inputs["adapter"]["lever_length"], "mm")
        beyond = (read(inputs["adapter"]["adapter_length"], "mm")
                  * math.cos(radians(inputs["adapter"].get("adapter_angle", 0.0))))
        ratio = (lever + beyond) / lever
        result["adapter_ratio"] = ratio
    if "torque" in inputs:
        setting = read(inputs["torque"], "N m") / ratio
        result["set"] = nm(setting)
        if "wrenches" in inputs:
            fits = [fit(wrench, setting, ratio, inputs) for wrench in inputs["wrenches"]]
            fits.sort(key=lambda each: each[0])
            result["wrenches"] = [row for _, row in fits]
            if fits[0][1]["use"] != "refuse":
                result["best"] = fits[0][1]["name"]
    if "check" in inputs:
        result["check"] = check_result(inputs["check"])
    return result


def permitted(maximum: float) -> float:
    """4 % above 10 N m, 6 % up to it: setting tools of ISO 6789."""
    return 0.04 if maximum > 10 * (1 + 1e-9) else 0.06


REASONS = ("above_maximum", "below_lowest_mark", "below_20_percent", "dropped_or_overloaded",
           "never_calibrated", "calibration_overdue", "below_30_percent", "calibration_due")


def fit(wrench: dict, setting: float, ratio: float, inputs: dict) -> tuple[tuple, dict]:
    """How one wrench does, and by what it is ranked: use, mildest reason, smallest maximum."""
    most = read(wrench["maximum"], "N m")
    deviation = wrench.get("deviation", permitted(most))
    mark = read(wrench["graduation"], "N m") if "graduation" in wrench else 0.0
    u = math.hypot(rectangular(deviation * setting), graduation_u(mark),
                   rectangular(wrench.get("handling", 0.0) * setting))
    state, due = calibration(wrench, inputs)
    reasons = range_reasons(wrench, setting, most)
    if wrench.get("condition") == "dropped_or_overloaded":
        reasons.append("dropped_or_overloaded")
    if state != "ok":
        reasons.append(state if state == "never_calibrated" else f"calibration_{state}")
    ranks = [REASONS.index(reason) for reason in reasons]
    use = 0 if not ranks else 2 if min(ranks) <= 3 else 1
    row: dict = {"name": wrench["name"], "use": ("ok", "warn", "refuse")[use], "reasons": reasons,
                 "calibration": state, "deviation": float(deviation),
                 "standard_uncertainty": nm(u), "expanded_uncertainty": nm(2 * u)}
    if due:
        row["calibration_due"] = str(due)
    if mark:
        nearest = math.floor(setting / mark + 0.5) * mark
        row |= {"mark": nm(nearest), "at_fastener": nm(nearest * ratio)}
    return (use, -min(ranks, default=99), most), row


def range_reasons(wrench: dict, setting: float, most: float) -> list[str]:
    """From the lowest mark to the maximum; without a lowest mark below 20 % is refused, below 30 %
    warned of."""
    if setting > most * (1 + 1e-9):
        return ["above_maximum"]
    if "lowest_mark" in wrench:
        below = setting < read(wrench["lowest_mark"], "N m") * (1 - 1e-9)
        return ["below_lowest_mark"] if below else []
    if setting < 0.2 * most * (1 - 1e-9):
        return ["below_20_percent"]
    return ["below_30_percent"] if setting < 0.3 * most * (1 - 1e-9) else []


def calibration(wrench: dict, inputs: dict) -> tuple[str, datetime.date | None]:
    """12 months or 5000 operations; due on the very day and at the very number."""
    if "calibrated_on" not in wrench:
        return "never_calibrated", None
    interval = inputs.get("interval", {})
    start = datetime.date.fromisoformat(wrench["calibrated_on"])
    month = start.month - 1 + interval.get("months", 12)
    year, month = start.year + month // 12, month % 12 + 1
    due = datetime.date(year, month, min(start.day, calendar.monthrange(year, month)[1]))
    today = datetime.date.fromisoformat(inputs["today"])
    by_day = (today > due) - (today < due)
    number, most = wrench.get("operations", -1), interval.get("operations", 5000)
    by_use = (number > most) - (number < most)
    return ("ok", "due", "overdue")[max(by_day, by_use) + 1], due


def check_result(check: dict) -> dict:
    """a = (set - reference)/reference; passes from S/(1 + p) to S/(1 - p)."""
    setting, reference = read(check["set"], "N m"), read(check["reference"], "N m")
    share = check.get("deviation") or permitted(read(check["maximum"], "N m"))
    low, high = setting / (1 + share), setting / (1 - share)
    inside = low * (1 - 1e-9) <= reference <= high * (1 + 1e-9)
    return {"deviation": Number((setting - reference) / reference, absolute=1e-11),
            "permitted": float(share), "pass_band": {"min": nm(low), "max": nm(high)},
            "verdict": "within" if inside else "outside"}


# --- prevailing-torque, castle-nut -------------------------------------------------------------

def draw_range(draw: Draw, low: float, high: float) -> dict:
    """One figure, or a range."""
    limits: dict = {"min": draw.quantity(low, high, "N m", 3)}
    least = read(limits["min"], "N m")
    draw.sometimes(limits, "max", lambda: draw.quantity(least * 1.001, least * 1.5, "N m"), 0.7)
    return limits


# Least breakaway of a used nut in lbf in: TM 1-1500-204-23-6 table 2-8.
USED_NUTS = {"5/16-24 UNF": 6.5, "3/8-24 UNF": 9.5, "7/16-20 UNF": 14, "1/2-20 UNF": 18,
             "9/16-18 UNF": 24}


def draw_prevailing(draw: Draw) -> dict:
    """A sheet's torque with drag, a used nut, or both."""
    inputs: dict = {}
    if draw.chance(0.8):
        inputs["torque"] = draw_range(draw, 5, 150)
        inputs["drag"] = draw.quantity(0, 40, "N m", 3)
        inputs["rule"] = draw.choice(("included", "add_always", "add_if_third"))
    if draw.chance(0.5) or not inputs:
        thread = draw.choice(sorted(USED_NUTS)) if draw.chance(0.7) else draw_thread(draw)
        if thread in USED_NUTS:
            WRITTEN[thread] = threads.Written(next(each for each in threads.ALL
                                                   if each.name == thread), "designation")
        inputs["used_nut"] = {"thread": thread,
                              "breakaway_torque": draw.quantity(0.2, 4, "N m", 3)}
    return inputs


def prevailing(inputs: dict) -> dict:
    """Drag added by the rule of the sheet (FAA AC 43.13-1B 7-40; US Army TM 5-2330-325-13&P)."""
    result: dict = {}
    if "torque" in inputs:
        drag = read(inputs["drag"], "N m")
        third = read(inputs["torque"]["min"], "N m") / 3
        added = drag if inputs["rule"] == "add_always" or (
            inputs["rule"] == "add_if_third" and drag >= third * (1 - 1e-9)) else 0.0
        result = {"torque": {name: nm(read(typed, "N m") + added)
                             for name, typed in inputs["torque"].items()}, "added": nm(added)}
        if inputs["rule"] == "add_if_third":
            result["counts_from"] = nm(third)
    if "used_nut" in inputs:
        name = WRITTEN[inputs["used_nut"]["thread"]].thread.name
        row: dict = {"thread": name, "verdict": "no_limit"}
        if name in USED_NUTS:
            least = converted(USED_NUTS[name], "lbf in", "N m")
            holds = read(inputs["used_nut"]["breakaway_torque"], "N m") >= least * (1 - 1e-9)
            row |= {"least_breakaway": nm(least), "verdict": "reuse" if holds else "discard"}
        result["used_nut"] = row
    return result


def draw_castle(draw: Draw) -> dict:
    """A nut somewhere on its way."""
    inputs: dict = {"thread": draw_thread(draw), "torque": draw_range(draw, 20, 150),
                    "slot": draw.choice(("aligned", "not_aligned"))}
    least = read(inputs["torque"]["min"], "N m")
    draw.sometimes(inputs, "drag", lambda: draw.quantity(0, 15, "N m", 3), 0.4)
    inputs["reached"] = inputs["torque"]["min"] if draw.chance(0.1) and "drag" not in inputs else \
        draw.quantity(0.7 * least, 1.8 * least, "N m")
    draw.sometimes(inputs, "reached_by", lambda: draw.choice(("tightening_on", "tightening_on",
                                                              "backing_off")))
    draw.sometimes(inputs, "purpose", lambda: draw.choice(("clamps_joint", "clamps_joint",
                                                           "sets_bearing")))
    draw.sometimes(inputs, "slots", lambda: 2 * draw.whole(1, 12))
    draw.sometimes(inputs, "cross_holes", lambda: draw.whole(1, 2))
    return inputs


def castle(inputs: dict) -> dict:
    """On to the next slot between the limits, never back (FAA AC 43.13-1B 7-40, trade rule). Slots
    and hole ends coincide every so many degrees: counted here by turning the nut."""
    drag = read(inputs.get("drag", 0.0), "N m")
    limits = {name: read(typed, "N m") + drag for name, typed in inputs["torque"].items()}
    step = castle_step(inputs.get("slots", 6), inputs.get("cross_holes", 1))
    pitch = WRITTEN[inputs["thread"]].thread.pitch
    return {"action": castle_action(inputs, limits, read(inputs["reached"], "N m")),
            "limits": {name: nm(value) for name, value in limits.items()},
            "step": Quantity(step, "deg"), "step_travel": Quantity(pitch * step / 360, "mm")}


def castle_step(slots: int, holes: int) -> float:
    """The least turn that brings a slot over an end of a hole again; all angles in 1/48 of the
    common raster of slots and hole ends."""
    raster = slots * 2 * holes
    slot_places = {k * raster // slots for k in range(slots)}
    ends = {k * raster // (2 * holes) for k in range(2 * holes)}
    turns = [turn for turn in range(1, raster + 1)
             if any((slot + turn) % raster in ends for slot in slot_places)]
    return 360 * turns[0] / raster


def castle_action(inputs: dict, limits: dict, reached: float) -> str:
    """What to do now."""
    if inputs.get("purpose") == "sets_bearing":
        return "follow_procedure"
    if inputs.get("reached_by") == "backing_off":
        return "backing_off_refused"
    least, most = limits["min"], limits.get("max")
    near = 1e-9 * least
    if reached < least - near:
        return "tighten_on"
    aligned = inputs["slot"] == "aligned"
    if most is None:
        return "fit_pin" if aligned and reached <= least + near else "ask_upper_limit"
    if reached > most + near or (not aligned and reached >= most - near):
        return "change_washer_or_nut"
    return "fit_pin" if aligned else "tighten_on"


# --- tighten-pattern, wheel-nut-recheck --------------------------------------------------------

def draw_pattern(draw: Draw) -> dict:
    """A circle of fasteners."""
    inputs: dict = {"fasteners": draw.whole(1, 12)}
    if draw.chance(0.7):
        inputs["torque"] = draw.quantity(5, 400, "N m")
        draw.sometimes(inputs, "stages", lambda: [
            *sorted({draw.number(0.05, 0.95, 2) for _ in range(draw.whole(0, 5))}), 1])
    return inputs


def crosswise(count: int) -> list[int]:
    """Odd: always on by (n - 1)/2. Even: opposite pairs, the pairs in the order of half as many
    (common practice, no source: 4: 1-3-2-4, 5: 1-3-5-2-4, 6: 1-4-2-5-3-6)."""
    if count % 2:
        return [1 + k * (count - 1) // 2 % count for k in range(count)]
    half = count // 2
    return [place + side for place in crosswise(half) for side in (0, half)]


def pattern(inputs: dict) -> dict:
    """Each stage is a round; one more at the full torque confirms."""
    result: dict = {"order": crosswise(inputs["fasteners"])}
    if "torque" in inputs:
        torque = read(inputs["torque"], "N m")
        rounds = [("tighten", share) for share in inputs.get("stages", [0.5, 1])] + [("confirm", 1)]
        result["rounds"] = [{"purpose": purpose, "share": float(share),
                             "torque": nm(torque * share)} for purpose, share in rounds]
    return result


def draw_recheck(draw: Draw) -> dict:
    """An odometer in its own unit."""
    unit, per = draw.choice((("km", 1.0), ("mi", 1.609344)))
    start = draw.whole(0, 300000)
    inputs: dict = {"odometer": f"{start} {unit}"}
    draw.sometimes(inputs, "odometer_now",
                   lambda: f"{start + draw.whole(0, int(250 / per))} {unit}", 0.7)
    draw.sometimes(inputs, "first_after", lambda: f"{draw.number(5, 99, 3)} km", 0.4)
    draw.sometimes(inputs, "vehicle", lambda: draw.choice(("light", "heavy")))
    return inputs


def recheck(inputs: dict) -> dict:
    """Light: 50 to 100 km and 100 to 160 km (tyre trade advice); heavy: 40 to 80 km or 30 minutes,
    and 100 to 160 km (BS AU 50-2.7a:1995, at second hand)."""
    heavy = inputs.get("vehicle") == "heavy"
    first = read(inputs["first_after"], "km") if "first_after" in inputs else 40 if heavy else 50
    rows = [(first, max(80, first) if heavy else 100), (100, 160)]
    start, unit = read(inputs["odometer"], "km"), split(inputs["odometer"])[1]
    result = []
    for after, by in rows:
        row: dict = {"after": km(after), "by": km(by), "from_reading": km(start + after),
                     "by_reading": km(start + by),
                     "from_on_odometer": shown(start + after, unit),
                     "by_on_odometer": shown(start + by, unit)}
        if "odometer_now" in inputs:
            now = read(inputs["odometer_now"], "km")
            row["state"] = "not_yet" if now < start + after - 1e-9 else \
                "due" if now <= start + by + 1e-9 else "passed"
        result.append(row)
    if heavy:
        result[0]["or_after"] = Quantity(30, "min")
    return {"rechecks": result}


def km(value: float) -> Quantity:
    """A road of an answer."""
    return Quantity(value, "km")


def shown(distance: float, unit: str) -> str:
    """Whole units, as an odometer shows them."""
    return f"{math.floor(converted(distance, 'km', unit) + 0.5)} {unit}"


CALCULATIONS = (
    Calculation("thread", threads.draw_thread_input, threads.thread_result),
    Calculation("clamp-force", draw_clamp_force, clamp_force),
    Calculation("torque-plausibility", draw_plausibility, plausibility),
    Calculation("wrench-setting", draw_wrench_setting, wrench_setting),
    Calculation("prevailing-torque", draw_prevailing, prevailing),
    Calculation("castle-nut", draw_castle, castle),
    Calculation("tighten-pattern", draw_pattern, pattern),
    Calculation("wheel-nut-recheck", draw_recheck, recheck),
)
