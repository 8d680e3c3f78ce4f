# SPDX-License-Identifier: GPL-3.0-or-later
"""Steering geometry. Signs of ISO 8855: toe-in positive for a wheel and in total; caster positive
with the axis leaning back, inclination positive with the top inboard, camber positive with the top
outboard."""

import math

import numpy as np
from scipy import optimize

from calculation import Calculation
from compare import Number, Quantity
from draw import Draw
from judging import INF, conformance, decided, graduation_u, one_of, too_coarse
from units import radians, read, read_or


def turn(angle: float, absolute: float = 1e-12) -> Quantity:
    """An angle of an answer, from radians."""
    return Quantity(math.degrees(angle), "deg", absolute=absolute)


def angle_verdict(y: float, u: float, limit: dict, confidence: float,
                  own: float | None = None) -> tuple[str, ...]:
    """A verdict on an angle in degrees, the instrument being all of its uncertainty."""
    low, high = (read(limit[name], "deg") if name in limit else None for name in ("min", "max"))
    words = decided(y, conformance(y, u, INF, low, high), low, high, confidence)
    coarse = too_coarse(low, high, u if own is None else own, confidence)
    return tuple("instrument_too_coarse" if word == "undecided" and coarse else word
                 for word in words)


# --- toe ---------------------------------------------------------------------------------------

def draw_toe(draw: Draw) -> dict:
    """Toe by readings, as a total, as an angle or wheel by wheel."""
    inputs: dict = {"diameter": draw.quantity(350, 850, "mm")}
    way = draw.choice(("readings", "total", "total_angle", "wheels"))
    if way == "readings":
        base = draw.random.uniform(1100, 1600)
        inputs["readings"] = [
            {"front": draw.quantity(base - 8, base + 8, "mm", 6),
             "rear": draw.quantity(base - 8, base + 8, "mm", 6)} for _ in range(draw.whole(1, 4))]
    elif way == "total":
        inputs["total"] = draw.quantity(-30, 30, "mm")
    elif way == "total_angle":
        inputs["total_angle"] = draw.quantity(-5, 5, "deg")
    else:
        inputs["left"], inputs["right"] = draw.quantity(-3, 3, "deg"), draw.quantity(-3, 3, "deg")
    if way in ("readings", "total"):
        draw.sometimes(inputs, "graduation", lambda: draw.quantity(0.1, 1, "mm", 2))
    else:
        draw.sometimes(inputs, "angle_graduation", lambda: draw.quantity(0.01, 0.2, "deg", 2))
    return inputs | draw_toe_limit(draw)


def draw_toe_limit(draw: Draw) -> dict:
    """A limit of the total as an angle or as a length of its own diameter."""
    extra: dict = {}
    if draw.chance(0.3):
        extra["limit"] = draw_band(draw, -0.5, 0.5, "deg")
    elif draw.chance(0.5):
        extra["limit_length"] = draw_band(draw, -4, 4, "mm")
        draw.sometimes(extra, "limit_diameter", lambda: draw.quantity(350, 850, "mm"))
    draw.sometimes(extra, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))}, 0.3)
    return extra


def draw_band(draw: Draw, low: float, high: float, unit: str) -> dict:
    """A lower limit, an upper one, or both."""
    middle = (low + high) / 2
    band: dict = {}
    draw.sometimes(band, "min", lambda: draw.quantity(low, middle, unit, 3), 0.6)
    if not band or draw.chance(0.6):
        band["max"] = draw.quantity(middle, high, unit, 3)
    return band


def toe_total(inputs: dict) -> tuple[float, float]:
    """Total toe as a length (mm) and as an angle (rad). An angle shared by both wheels: length
    2 D sin(t/2); of the two wheels: D (sin l + sin r)."""
    diameter = read(inputs["diameter"], "mm")
    if "total_angle" in inputs:
        angle = radians(inputs["total_angle"])
        return 2 * diameter * math.sin(angle / 2), angle
    if "left" in inputs:
        left, right = radians(inputs["left"]), radians(inputs["right"])
        return diameter * (math.sin(left) + math.sin(right)), left + right
    if "readings" in inputs:
        toes = toe_readings(inputs)
        length = math.fsum(toes) / len(toes)
    else:
        length = read(inputs["total"], "mm")
    return length, 2 * math.asin(length / (2 * diameter))


def toe_readings(inputs: dict) -> list[float]:
    """Rear less front."""
    return [read(pair["rear"], "mm") - read(pair["front"], "mm") for pair in inputs["readings"]]


def toe(inputs: dict) -> dict:
    """A difference of two readings counts the graduation twice; it is not divided by the number of
    readings, since a coarse scale repeats its error. One reading is provisional: it holds the
    runout of the rims."""
    diameter = read(inputs["diameter"], "mm")
    length, angle = toe_total(inputs)
    if "readings" in inputs or "total" in inputs:
        u_length = math.sqrt(2) * graduation_u(read_or(inputs, "graduation", "mm", 0))
        u_angle = u_length / diameter
    else:
        marks = 2 if "left" in inputs else 1
        u_angle = math.sqrt(marks) * graduation_u(
            math.radians(read_or(inputs, "angle_graduation", "deg", 0)))
        u_length = u_angle * diameter
    result = {"total": Quantity(length, "mm", absolute=1e-11), "total_angle": turn(angle, 1e-11),
              "standard_uncertainty": turn(u_angle),
              "length_uncertainty": Quantity(u_length, "mm")}
    if "readings" in inputs and len(inputs["readings"]) == 2:
        one, two = toe_readings(inputs)
        result["runout"] = Quantity(abs(one - two) / 2, "mm", absolute=1e-11)
    if "left" in inputs:
        left, right = radians(inputs["left"]), radians(inputs["right"])
        result |= {"left": turn(left), "right": turn(right), "left_steer_angle": turn(-left),
                   "right_steer_angle": turn(right)}
    return result | toe_verdict(inputs, angle, u_angle)


def toe_verdict(inputs: dict, angle: float, u_angle: float) -> dict:
    """Against a limit in degrees, or in millimetres turned into an angle at its own diameter."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    if "limit" in inputs:
        limit = inputs["limit"]
    elif "limit_length" in inputs:
        diameter = read(inputs.get("limit_diameter", inputs["diameter"]), "mm")
        limit = {name: math.degrees(2 * math.asin(read(typed, "mm") / (2 * diameter)))
                 for name, typed in inputs["limit_length"].items()}
    else:
        return {"verdict": "no_limit"}
    words = angle_verdict(math.degrees(angle), math.degrees(u_angle), limit, confidence)
    if len(inputs.get("readings", "-")) == 1 and "readings" in inputs:
        return {"verdict": "provisional", "decision_so_far": one_of(words)}
    if "total" in inputs:
        return {"verdict": one_of(words)}
    return {"verdict": one_of(words)}


# --- track-rod-turns ---------------------------------------------------------------------------

def draw_track_rod(draw: Draw) -> dict:
    """An adjuster and a toe to be changed."""
    inputs: dict = {"pitch": draw.quantity(0.8, 3, "mm", 3),
                    "thread": draw.choice(("one_end", "both_ends")),
                    "arm": draw.quantity(90, 220, "mm"),
                    "rod": draw.choice(("behind_axle", "ahead_of_axle"))}
    if draw.chance(0.5):
        inputs["present"] = draw.quantity(-15, 15, "mm", 3)
        inputs["wanted"] = draw.quantity(-5, 5, "mm", 3)
        inputs["diameter"] = draw.quantity(350, 850, "mm")
        draw.sometimes(inputs, "graduation", lambda: draw.quantity(0.1, 1, "mm", 2))
    else:
        inputs["present_angle"] = draw.quantity(-2, 2, "deg", 3)
        inputs["wanted_angle"] = draw.quantity(-1, 1, "deg", 3)
        draw.sometimes(inputs, "present_uncertainty", lambda: draw.quantity(0, 0.2, "deg", 2))
    return inputs


def track_rod(inputs: dict) -> dict:
    """One turn moves the rod by a pitch, by two with a thread at either end, and the total toe by
    that over the arm (rad). A longer rod behind the axle pushes the wheels' rear apart: toe-in."""
    step = read(inputs["pitch"], "mm") * (2 if inputs["thread"] == "both_ends" else 1)
    per_turn = step / read(inputs["arm"], "mm")
    result: dict = {"toe_per_turn": turn(per_turn)}
    if "present" in inputs:
        diameter = read(inputs["diameter"], "mm")
        present, wanted = (2 * math.asin(read(inputs[name], "mm") / (2 * diameter))
                           for name in ("present", "wanted"))
        u = math.sqrt(2) * graduation_u(read_or(inputs, "graduation", "mm", 0)) / diameter
        result["length_per_turn"] = Quantity(2 * diameter * math.sin(per_turn / 2), "mm")
    else:
        present, wanted = radians(inputs["present_angle"]), radians(inputs["wanted_angle"])
        u = math.radians(read_or(inputs, "present_uncertainty", "deg", 0))
    longer = (wanted > present) == (inputs["rod"] == "behind_axle")
    turns = abs(wanted - present) / per_turn
    change = "leave" if wanted == present else "lengthen" if longer else "shorten"
    return result | {"change": change, "turns": Number(turns, absolute=1e-11),
                     "flats": Number(6 * turns, absolute=1e-11),
                     "standard_uncertainty": u / per_turn}


# --- caster ------------------------------------------------------------------------------------

class Wheel:
    """A wheel on an axis in space: x ahead, y outboard, z up. The axis leans back by the caster
    and inboard by the inclination, each as seen in its own plane; spin and fore-and-aft lines turn
    with the wheel."""

    def __init__(self, caster: float, inclination: float, camber: float) -> None:
        axis = np.array([-math.tan(caster), -math.tan(inclination), 1.0])
        self.axis = axis / np.linalg.norm(axis)
        self.spin = np.array([0.0, math.cos(camber), -math.sin(camber)])
        self.ahead = np.array([1.0, 0.0, 0.0])

    def turned(self, line: np.ndarray, angle: float) -> np.ndarray:
        """A line turned about the axis (Rodrigues)."""
        c, s = math.cos(angle), math.sin(angle)
        return (line * c + np.cross(self.axis, line) * s
                + self.axis * float(self.axis @ line) * (1 - c))

    def heading(self, angle: float) -> float:
        """How far the wheel points outward, as a turntable shows it: the trace of its plane on the
        ground, which is square to the level part of the spin axis."""
        spin = self.turned(self.spin, angle)
        return math.atan2(-spin[0], spin[1])

    def readings(self, outward: float) -> tuple[float, float]:
        """Camber and tilt of the fore-and-aft line, front end up, at a turn about the axis."""
        spin, ahead = self.turned(self.spin, outward), self.turned(self.ahead, outward)
        return math.asin(-spin[2]), math.asin(ahead[2])


def turn_about_axis(wheel: Wheel, shown: float, way: str) -> float:
    """The turn about the axis that shows this much."""
    if way == "about_axis":
        return shown
    start = wheel.heading(0.0)
    return float(optimize.brentq(lambda a: wheel.heading(a) - start - shown, shown - 0.4,
                                 shown + 0.4, xtol=1e-15, rtol=1e-15))


def swing(wheel: Wheel, turn_shown: float, way: str) -> tuple[float, float]:
    """Differences of camber and of tilt, outward less inward; sines, since those add up."""
    out = wheel.readings(turn_about_axis(wheel, turn_shown, way))
    inward = wheel.readings(turn_about_axis(wheel, -turn_shown, way))
    return math.sin(out[0]) - math.sin(inward[0]), math.sin(out[1]) - math.sin(inward[1])


def draw_caster(draw: Draw) -> dict:
    """Readings that an axis gives, to the gauge's places."""
    caster, inclination = draw.random.uniform(-4, 8), draw.random.uniform(2, 14)
    camber, shown = draw.random.uniform(-2, 3), draw.random.uniform(8, 28)
    way = draw.choice(("turntable", "about_axis"))
    wheel = Wheel(*map(math.radians, (caster, inclination, camber)))
    out, inward = (wheel.readings(turn_about_axis(wheel, sign * math.radians(shown), way))
                   for sign in (1, -1))
    inputs: dict = {"turn": f"{shown:.2f} deg",
                    "camber_outward": f"{math.degrees(out[0]):.3f} deg",
                    "camber_inward": round(math.degrees(inward[0]), 3)}
    options: dict = {}
    draw.sometimes(options, "method", lambda: draw.choice(("small_angle", "exact", "exact")), 0.8)
    if "method" in options:
        draw.sometimes(options, "turn_shown", lambda: way, 0.9)
    if draw.chance(0.6):
        inputs["tilt_outward"] = f"{out[1]:.5f} rad"
        inputs["tilt_inward"] = f"{math.degrees(inward[1]):.3f} deg"
    elif options.get("method") == "exact":
        inputs["kingpin_inclination"] = f"{inclination:.2f} deg"
    draw.sometimes(inputs, "camber_ahead", lambda: f"{camber:.2f} deg", 0.7)
    draw.sometimes(inputs, "reading_uncertainty", lambda: draw.quantity(0, 0.2, "deg", 2))
    draw.sometimes(inputs, "turn_uncertainty", lambda: draw.quantity(0, 1, "deg", 2))
    draw.sometimes(inputs, "frame_angle", lambda: draw.quantity(-3, 3, "deg", 3))
    if draw.chance(0.5):
        inputs["limit"] = draw_band(draw, -1, 6, "deg")
    draw.sometimes(options, "confidence", lambda: draw.choice((0.9, 0.95, 0.99)), 0.3)
    if options:
        inputs["options"] = options
    return inputs


def exact_axis(inputs: dict, way: str) -> tuple[float, float]:
    """The axis whose wheel gives the readings, sought in space by SciPy."""
    shown = radians(inputs["turn"])
    camber = math.radians(read_or(inputs, "camber_ahead", "deg", 0))
    wanted_camber = (math.sin(radians(inputs["camber_outward"]))
                     - math.sin(radians(inputs["camber_inward"])))
    if "tilt_outward" in inputs:
        wanted_tilt = (math.sin(radians(inputs["tilt_outward"]))
                       - math.sin(radians(inputs["tilt_inward"])))

        def both(axis: np.ndarray) -> list[float]:
            got = swing(Wheel(axis[0], axis[1], camber), shown, way)
            return [got[0] - wanted_camber, got[1] - wanted_tilt]
        start = [wanted_camber / (2 * math.sin(shown)), wanted_tilt / (2 * math.sin(shown))]
        found = optimize.root(both, start, tol=1e-13).x
        return float(found[0]), float(found[1])
    inclination = radians(inputs["kingpin_inclination"])
    caster = optimize.brentq(
        lambda c: swing(Wheel(c, inclination, camber), shown, way)[0] - wanted_camber,
        math.radians(-25), math.radians(25), xtol=1e-14, rtol=1e-14)
    return float(caster), inclination


def caster(inputs: dict) -> dict:
    """Small angles: (outward - inward) / (2 sin A). Exact: the axis in space that gives the
    readings. u by JCGM 100 5.1: each reading over 2 sin A, the turn by c / tan A."""
    options = inputs.get("options", {})
    shown = radians(inputs["turn"])
    factor = 1 / (2 * math.sin(shown))
    small = (radians(inputs["camber_outward"]) - radians(inputs["camber_inward"])) * factor
    exact = options.get("method") == "exact"
    near = 1e-9
    if exact:
        angle, inclination = exact_axis(inputs, options.get("turn_shown", "turntable"))
        near = 2e-8  # both sides iterate
    else:
        angle = small
        inclination = None
        if "tilt_outward" in inputs:
            inclination = factor * (radians(inputs["tilt_outward"])
                                    - radians(inputs["tilt_inward"]))
    u_reading = math.radians(read_or(inputs, "reading_uncertainty", "deg", 0))
    u_turn = math.radians(read_or(inputs, "turn_uncertainty", "deg", 0))
    u = math.hypot(math.sqrt(2) * u_reading * factor, angle * u_turn / math.tan(shown))
    level = math.degrees(angle) + read_or(inputs, "frame_angle", "deg", 0)

    def near_turn(value: float) -> Quantity:
        return Quantity(value, "deg", relative=near, absolute=1e-10)
    result = {"caster": near_turn(math.degrees(angle)), "standard_uncertainty": Quantity(
        math.degrees(u), "deg", relative=near), "factor": factor}
    if "tilt_outward" in inputs:
        result["kingpin_inclination"] = near_turn(math.degrees(inclination))
    if "frame_angle" in inputs:
        result["caster_at_level_frame"] = near_turn(level)
    if "limit" not in inputs:
        return result | {"verdict": "no_limit"}
    return result | {"verdict": one_of(angle_verdict(
        level, math.degrees(u), inputs["limit"], options.get("confidence", 0.95)))}


# --- trail, lift, ackermann --------------------------------------------------------------------

def draw_trail(draw: Draw) -> dict:
    """Trail, scrub or both."""
    inputs: dict = {"loaded_radius": draw.quantity(200, 500, "mm")}
    way = draw.choice(("trail", "scrub", "both"))
    if way != "scrub":
        inputs["caster"] = draw.quantity(-10, 15, "deg", 3)
        draw.sometimes(inputs, "hub_offset", lambda: draw.quantity(-30, 30, "mm", 3))
    if way != "trail":
        inputs["axis_to_wheel"] = draw.quantity(-50, 150, "mm", 3)
        inputs["kingpin_inclination"] = draw.quantity(-5, 20, "deg", 3)
        draw.sometimes(inputs, "camber", lambda: draw.quantity(-5, 5, "deg", 3))
        draw.sometimes(inputs, "spacer", lambda: draw.quantity(-30, 60, "mm", 3))
    return inputs


def trail(inputs: dict) -> dict:
    """trail = r tan(caster) - hub offset; scrub = q - r tan(KPI) - r tan(camber) + spacers."""
    radius = read(inputs["loaded_radius"], "mm")
    result = {}
    if "caster" in inputs:
        result["trail"] = Quantity(radius * math.tan(radians(inputs["caster"]))
                                   - read_or(inputs, "hub_offset", "mm", 0), "mm", absolute=1e-11)
    if "axis_to_wheel" in inputs:
        bare = (read(inputs["axis_to_wheel"], "mm")
                - radius * math.tan(radians(inputs["kingpin_inclination"]))
                - radius * math.tan(math.radians(read_or(inputs, "camber", "deg", 0))))
        result["scrub"] = Quantity(bare + read_or(inputs, "spacer", "mm", 0), "mm",
                                   absolute=1e-11)
        result["scrub_without_spacer"] = Quantity(bare, "mm", absolute=1e-11)
    return result


def draw_lift(draw: Draw) -> dict:
    """A lift on one kind of arms."""
    inputs: dict = {"arms": draw.choice(("leading", "trailing", "parallel")),
                    "lift": draw.quantity(-80, 150, "mm", 3)}
    if inputs["arms"] != "parallel":
        inputs["arm_length"] = draw.quantity(500, 1200, "mm")
        inputs["pivot_height"] = draw.quantity(-150, 250, "mm", 3)
    draw.sometimes(inputs, "caster_before", lambda: draw.quantity(-3, 8, "deg", 3))
    if draw.chance(0.5):
        inputs["wedge_length"] = draw.quantity(40, 150, "mm", 3)
        draw.sometimes(inputs, "wedge_rise", lambda: draw.quantity(0, 20, "mm", 3))
    return inputs


def lift(inputs: dict) -> dict:
    """Turn of the arm asin((h0 + h)/L) - asin(h0/L): caster falls by it on leading arms, rises on
    trailing ones; parallel links turn nothing. Wedge: tan = rise / length."""
    turned = 0.0
    if inputs["arms"] != "parallel":
        length, height = read(inputs["arm_length"], "mm"), read(inputs["pivot_height"], "mm")
        turned = (math.asin((height + read(inputs["lift"], "mm")) / length)
                  - math.asin(height / length))
    change = -turned if inputs["arms"] == "leading" else turned
    result = {"caster_change": turn(change, 1e-11), "pinion_nose_down": turn(change, 1e-11)}
    if "caster_before" in inputs:
        result["caster_after"] = turn(radians(inputs["caster_before"]) + change, 1e-11)
    if "wedge_length" in inputs:
        length = read(inputs["wedge_length"], "mm")
        result["wedge_rise_to_undo"] = Quantity(length * math.tan(abs(change)), "mm",
                                                absolute=1e-11)
        if "wedge_rise" in inputs:
            result["wedge_angle"] = turn(math.atan(read(inputs["wedge_rise"], "mm") / length))
    return result


def draw_ackermann(draw: Draw) -> dict:
    """A bend by its outer or its inner angle."""
    inputs: dict = {"kingpin_spacing": draw.quantity(900, 1700, "mm"),
                    "wheelbase": draw.quantity(1900, 3800, "mm")}
    if draw.chance(0.6):
        inputs["outer"] = draw.quantity(0, 35, "deg", 3)
        draw.sometimes(inputs, "measured_inner", lambda: draw.quantity(0, 60, "deg", 3))
    else:
        inputs["inner"] = draw.quantity(0, 60, "deg", 3)
    return inputs


def ackermann(inputs: dict) -> dict:
    """Both front wheels roll about one point on the line of the rear axle: with c its distance from
    the middle of the swivel axes, tan(inner) = L/(c - b/2) and tan(outer) = L/(c + b/2)."""
    spacing, base = read(inputs["kingpin_spacing"], "mm"), read(inputs["wheelbase"], "mm")
    if "outer" in inputs:
        outer = radians(inputs["outer"])
        inner = math.atan2(base * math.sin(outer),
                           base * math.cos(outer) - spacing * math.sin(outer))
    else:
        inner = radians(inputs["inner"])
        outer = math.atan2(base * math.sin(inner),
                           base * math.cos(inner) + spacing * math.sin(inner))
    result = {"outer": turn(outer), "inner": turn(inner),
              "toe_out_on_turn": turn(inner - outer, 1e-11)}
    if "measured_inner" in inputs:
        result["deviation"] = turn(radians(inputs["measured_inner"]) - inner, 1e-11)
    return result


CALCULATIONS = (
    Calculation("toe", draw_toe, toe),
    Calculation("track-rod-turns", draw_track_rod, track_rod),
    Calculation("caster", draw_caster, caster),
    Calculation("trail", draw_trail, trail),
    Calculation("lift", draw_lift, lift),
    Calculation("ackermann", draw_ackermann, ackermann),
)
