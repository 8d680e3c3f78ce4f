# SPDX-License-Identifier: GPL-3.0-or-later
"""Wheel bearings: setting, rock, friction, stiffness, and what an inspection lets pass."""

import math

from calculation import Calculation
from compare import ANYTHING, Quantity
from draw import Draw
from judging import INF, angle_factor, combined, conformance, decided, graduation_u, judged, one_of
from judging import quantile, rectangular, side_of, standard_deviation, too_coarse
from units import INCH, radians, read, read_or

PLANNED = 3  # readings that a play or pull is usually read with


# --- play and pull as a series -----------------------------------------------------------------

def mean_of(values: list[float]) -> float:
    """Arithmetic mean."""
    return math.fsum(values) / len(values)


def difference_parts(instrument: dict, unit: str) -> list[tuple[float, float]]:
    """A travel is a difference of two readings of one instrument: its own error cancels, the
    graduation counts twice, a local error stays (JCGM 100 F.1.2.4 for the common error)."""
    parts = [(math.sqrt(2) * graduation_u(read(instrument["graduation"], unit)), INF)]
    if "local_error" in instrument:
        parts.append((rectangular(read(instrument["local_error"], unit)), INF))
    return parts


def single_parts(instrument: dict, unit: str) -> list[tuple[float, float]]:
    """A pull is one reading: graduation once, the permissible error as it is."""
    parts = [(graduation_u(read(instrument["graduation"], unit)), INF)]
    if "permissible_error" in instrument:
        parts.append((rectangular(read(instrument["permissible_error"], unit)), INF))
    return parts


def scatter_part(values: list[float]) -> list[tuple[float, float]]:
    """s / sqrt(n) with n - 1; nothing for one reading."""
    if len(values) < 2:
        return []
    return [(standard_deviation(values) / math.sqrt(len(values)), len(values) - 1)]


def series_judged(values: list[float], instrument: dict, limit: dict, confidence: float) -> dict:
    """A play held against its limit. Fewer than three readings are provisional; one shows no
    scatter, so it has no probability; an instrument too coarse for the band replaces undecided."""
    y = mean_of(values)
    own = difference_parts(instrument, "mm")
    u, nu = combined(scatter_part(values) + own)
    low, high = (read(limit[name], "mm") if name in limit else None for name in ("min", "max"))
    result = judged(y, u, nu, (low, high), "mm", confidence)
    if low is None and high is None:
        return result
    return settled(result, y, u, nu, (low, high), own, confidence, len(values))


def settled(result: dict, y: float, u: float, nu: float, limit: tuple, own: list,
            confidence: float, count: int) -> dict:
    """The verdict as a series gives it."""
    low, high = limit
    coarse = too_coarse(low, high, combined(own)[0], confidence)
    if count == 1:
        inside = conformance(y, 0, INF, low, high).inside > 0
        del result["conformance_probability"]
        words, sides = ("undecided",), ("inside_likely" if inside else "outside_likely",)
    else:
        shares = conformance(y, u, nu, low, high)
        words = decided(y, shares, low, high, confidence)
        sides = tuple(side_of(word, shares) for word in words)
    words = tuple("instrument_too_coarse" if word == "undecided" and coarse else word
                  for word in words)
    if count < PLANNED:
        words = tuple(word if word == "instrument_too_coarse" else "provisional"
                      for word in words)
    return result | {"verdict": one_of(words), "side": one_of(sides)}


# --- wheel-bearing -----------------------------------------------------------------------------

def draw_play_instrument(draw: Draw) -> dict:
    """A dial gauge."""
    instrument: dict = {"graduation": draw.choice(("0.01 mm", "0.001 mm", "0.0005 in", "0.5 thou"))}
    draw.sometimes(instrument, "local_error", lambda: draw.quantity(0.001, 0.01, "mm", 2))
    draw.sometimes(instrument, "permissible_error", lambda: draw.quantity(0.002, 0.02, "mm", 2))
    return instrument


def draw_wheel_bearing(draw: Draw) -> dict:
    """One of the three kinds of setting."""
    kind = draw.choice(("end_float", "preload_pull", "unit_without_setting"))
    inputs: dict = {"kind": kind}
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))})
    if kind == "preload_pull":
        return inputs | draw_pull(draw)
    centre = draw.random.uniform(0.01, 0.2)
    inputs["readings"] = [draw.quantity(centre * 0.9, centre * 1.1, "mm", 3)
                          for _ in range(draw.whole(1, 6))]
    inputs["instrument"] = draw_play_instrument(draw)
    limit: dict = {}
    if kind == "end_float":
        draw.sometimes(limit, "min", lambda: draw.quantity(0.005, 0.06, "mm", 3), 0.4)
    draw.sometimes(limit, "max", lambda: draw.quantity(0.06, 0.2, "mm", 3), 0.5)
    if limit:
        inputs["limit"] = limit
    return inputs


def draw_pull(draw: Draw) -> dict:
    """A pull at a stud."""
    centre = draw.random.uniform(5, 60)
    instrument: dict = {"graduation": draw.choice(("0.5 N", "0.1 N", "0.05 kgf", "0.1 lbf"))}
    draw.sometimes(instrument, "permissible_error", lambda: draw.quantity(0.2, 1, "N", 2))
    inputs: dict = {"readings": [draw.quantity(centre * 0.9, centre * 1.1, "N", 3)
                                 for _ in range(draw.whole(1, 6))],
                    "instrument": instrument, "radius": draw.quantity(40, 120, "mm")}
    draw.sometimes(inputs, "radius_uncertainty", lambda: draw.quantity(0.1, 2, "mm", 2))
    draw.sometimes(inputs, "off_square_within", lambda: draw.quantity(1, 30, "deg", 2))
    limit: dict = {}
    draw.sometimes(limit, "min", lambda: draw.quantity(0.2, 1.5, "N m", 3), 0.4)
    draw.sometimes(limit, "max", lambda: draw.quantity(1.5, 6, "N m", 3), 0.5)
    if limit:
        inputs["limit"] = limit
    return inputs


def wheel_bearing(inputs: dict) -> dict:
    """Play as a series; a pull times its radius as a torque (plane statics)."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    if inputs["kind"] == "preload_pull":
        return {"torque": pull_torque(inputs, confidence),
                "readings_used": len(inputs["readings"])}
    values = [read(text, "mm") for text in inputs["readings"]]
    limit = inputs.get("limit", {})
    result = {"play": series_judged(values, inputs["instrument"], limit, confidence),
              "readings_used": len(values)}
    if inputs["kind"] == "end_float" and not limit:
        plausible = {"min": "0.001 in", "max": "0.005 in"}
        verdict = series_judged(values, inputs["instrument"], plausible, confidence)
        result["plausibility"] = verdict["verdict"]
    return result


def pull_torque(inputs: dict, confidence: float) -> dict:
    """M = F r; u by JCGM 100 5.1: u(F) from scatter, graduation, permissible error and the
    unknown direction; u(r) as given. Effective degrees of freedom over all of it."""
    values = [read(text, "N") for text in inputs["readings"]]
    radius = read(inputs["radius"], "mm") / 1000
    factor, spread = angle_factor(math.radians(read_or(inputs, "off_square_within", "deg", 0)))
    pull = mean_of(values)
    own = single_parts(inputs["instrument"], "N")
    parts = [(u * factor * radius, nu) for u, nu in scatter_part(values) + own]
    parts.append((pull * spread * radius, INF))
    parts.append((pull * factor * read_or(inputs, "radius_uncertainty", "mm", 0) / 1000, INF))
    u, nu = combined(parts)
    y = pull * factor * radius
    limit = inputs.get("limit", {})
    low, high = (read(limit[name], "N m") if name in limit else None for name in ("min", "max"))
    result = judged(y, u, nu, (low, high), "N m", confidence)
    if not limit:
        return result
    scaled = [(part * factor * radius, nu_part) for part, nu_part in own]
    return settled(result, y, u, nu, (low, high), scaled, confidence, len(values))


# --- rock-test ---------------------------------------------------------------------------------

def draw_rock_test(draw: Draw) -> dict:
    """Rock with the brake on and off."""
    on, increase = draw.random.uniform(0, 2), draw.random.uniform(-0.3, 3)
    spread = draw.random.uniform(0.01, 0.3)

    def readings(centre: float) -> list:
        return [draw.quantity(max(0.0, centre - spread), max(0.0, centre) + spread, "mm", 3)
                for _ in range(draw.whole(1, 6))]
    inputs: dict = {"brake_on": readings(on), "brake_off": readings(on + increase),
                    "instrument": draw_play_instrument(draw),
                    "diameter": draw.quantity(350, 800, "mm")}
    draw.sometimes(inputs, "noticeable", lambda: draw.quantity(0.1, 2, "mm", 2))
    if draw.chance(0.4):
        inputs["bearing"] = {"end_float": draw.quantity(0, 0.4, "mm", 3),
                             "contact_angle": draw.quantity(5, 40, "deg", 3),
                             "spread": draw.quantity(20, 120, "mm", 3)}
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))})
    return inputs


def rock_state(y: float, u: float, nu: float, noticeable: float, confidence: float) -> str:
    """None noticeable where the one-sided upper end lies below it, else found where the lower end
    lies above nothing."""
    reach = quantile(confidence, nu) * u
    if y + reach < noticeable:
        return "none_noticeable"
    return "found" if y - reach > 0 else "cannot_tell"


def rock_test(inputs: dict) -> dict:
    """Brake on: swivel. The increase with the brake off: wheel bearing, carrying both rocks; less
    rock with the brake off, proved, tells nothing of it. A part whose scatter no repetition shows
    has no probability.
    Floors: 10 mm on a 500 mm wheel (British guide of 2012), 1/8 in (COMAR 11.22.03.04)."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    on = [read(text, "mm") for text in inputs["brake_on"]]
    off = [read(text, "mm") for text in inputs["brake_off"]]
    noticeable = read_or(inputs, "noticeable", "mm", 0.5)
    diameter = read(inputs["diameter"], "mm")
    own = difference_parts(inputs["instrument"], "mm")
    swivel = (mean_of(on), *combined(scatter_part(on) + own))
    bearing = (mean_of(off) - mean_of(on), *combined(
        scatter_part(on) + own + scatter_part(off) + own))
    repeated = len(on) > 1 and len(off) > 1
    reversed_ = bearing[0] + quantile(confidence, bearing[2]) * bearing[1] < 0
    result = {}
    for name, part, floor, own_scatter, told in (
            ("swivel", swivel, 10 * diameter / 500, len(on) > 1, repeated),
            ("bearing", bearing, INCH / 8, repeated, repeated and not reversed_)):
        rock = judged(*part, (None, floor), "mm", confidence)
        if not repeated:
            rock["verdict"] = "provisional"
        if not own_scatter:
            del rock["conformance_probability"]
            rock["side"] = "inside_likely" if part[0] <= floor else "outside_likely"
        state = rock_state(*part, noticeable, confidence) if told else "cannot_tell"
        result[name] = {"rock": rock, "floor": Quantity(floor, "mm"), "state": state}
    if "bearing" in inputs:
        pair = inputs["bearing"]
        result["expected_rock"] = Quantity(
            2 * read(pair["end_float"], "mm") * math.tan(radians(pair["contact_angle"]))
            / read(pair["spread"], "mm") * diameter / 2, "mm")
    return result


# --- friction, stiffness, limits ---------------------------------------------------------------

def draw_bearing_friction(draw: Draw) -> dict:
    """A load on a bore."""
    inputs: dict = {"load": draw.quantity(0, 20000, "N"), "bore": draw.quantity(10, 120, "mm")}
    draw.sometimes(inputs, "friction_factor", lambda: draw.number(0.0005, 0.01, 3))
    draw.sometimes(inputs, "start_factor", lambda: draw.number(1, 4, 3))
    return inputs


def bearing_friction(inputs: dict) -> dict:
    """M = f F d / 2 (machine design tables); starting up to twice that."""
    running = (inputs.get("friction_factor", 0.0018) * read(inputs["load"], "N")
               * read(inputs["bore"], "mm") / 2000)
    return {"running": Quantity(running, "N m"),
            "starting_up_to": Quantity(running * inputs.get("start_factor", 2.0), "N m")}


def draw_bearing_stiffness(draw: Draw) -> dict:
    """A taper bearing under a load or at a displacement."""
    inputs: dict = {"rollers": draw.whole(3, 60), "contact_angle": draw.quantity(3, 60, "deg"),
                    "roller_length": draw.quantity(3, 60, "mm")}
    if draw.chance(0.5):
        inputs["load"] = draw.quantity(0, 50000, "N")
    else:
        inputs["displacement"] = draw.quantity(0, 0.1, "mm")
    return inputs


def bearing_stiffness(inputs: dict) -> dict:
    """Line contact of steel (Palmgren, as in Harris): d = 7.68e-5 Q^0.9 / (sin a l^0.8) in mm and
    N, Q = F / (Z sin a). Hence F from d by the inverse, dF/dd = F / (0.9 d); an opposed pair in a
    rigid housing shares a shim between both bearings."""
    sine = math.sin(radians(inputs["contact_angle"]))
    count = inputs["rollers"]
    gain = 7.68e-5 / (sine * read(inputs["roller_length"], "mm") ** 0.8)
    if "load" in inputs:
        load = read(inputs["load"], "N")
        displacement = gain * (load / (count * sine)) ** 0.9
    else:
        displacement = read(inputs["displacement"], "mm")
        load = count * sine * (displacement / gain) ** (1 / 0.9)
    slope = load / (0.9 * displacement) if displacement > 0 else 0.0
    return {"load": Quantity(load, "N"), "displacement": Quantity(displacement, "mm"),
            "slope": Quantity(slope, "N/mm"), "shim_slope": Quantity(slope / 2, "N/mm")}


def draw_play_limits(draw: Draw) -> dict:
    """What is known of wheel, rim and steering wheel."""
    inputs: dict = {}
    draw.sometimes(inputs, "wheel_diameter", lambda: draw.quantity(300, 900, "mm"))
    if draw.chance(0.5):
        inputs["rim_diameter"] = draw.choice(
            ("15 in", "16 in", "16.5 in", "17.5 in", "18 in", "19.5 in", "381 mm", "22.5 in"))
        inputs["gross_mass"] = draw.quantity(1000, 9000, "kg")
    if draw.chance(0.6):
        inputs["steering_wheel_diameter"] = draw.choice(
            ("16 in", "18 in", "20 in", "22 in", draw.quantity(300, 600, "mm")))
        draw.sometimes(inputs, "steering_gear", lambda: draw.choice(("box", "rack")))
    return inputs


def linkage_limit(rim: float, gross: float) -> float:
    """49 CFR 570.60: 1/4 in up to 10 000 lb gross; above that by the rim: 1/4 to 16 in, 3/8 to 18,
    1/2 beyond."""
    if gross <= 10000 * 0.45359237 or rim <= 16 * INCH + 1e-9:
        return INCH / 4
    return INCH * (3 / 8 if rim <= 18 * INCH + 1e-9 else 1 / 2)


def lash_limit(diameter: float) -> float:
    """49 CFR 570.60: 2 in to a 16 in wheel, a quarter more for each two inches up to 22; between
    two sizes the smaller counts."""
    steps = min(3, max(0, math.floor((diameter / INCH - 16) / 2 + 1e-9)))
    return INCH * (2 + steps / 4)


def play_limits(inputs: dict) -> dict:
    """One row for each that can be told. British guide of 2012: 10 mm on 500 mm for a kingpin,
    75 mm (box) or 13 mm (rack) on 380 mm for the lash, others in proportion."""
    british, federal = "superseded British inspection guide of 2012", "49 CFR 570.60"
    rows = [("wheel_bearing", INCH / 8, "COMAR 11.22.03.04")]
    if "wheel_diameter" in inputs:
        rows.append(("kingpin", read(inputs["wheel_diameter"], "mm") / 50, british))
    if "rim_diameter" in inputs:
        rows.append(("steering_linkage", linkage_limit(read(inputs["rim_diameter"], "mm"),
                                                       read(inputs["gross_mass"], "kg")),
                     federal))
    if "steering_wheel_diameter" in inputs:
        diameter = read(inputs["steering_wheel_diameter"], "mm")
        rows.append(("steering_wheel_lash", lash_limit(diameter), federal))
        if "steering_gear" in inputs:
            per_380 = 75 if inputs["steering_gear"] == "box" else 13
            rows.append(("steering_wheel_lash", per_380 * diameter / 380, british))
    return {"limits": [{"check": check, "limit": Quantity(limit, "mm"), "where": ANYTHING,
                        "source": source} for check, limit, source in rows]}


CALCULATIONS = (
    Calculation("wheel-bearing", draw_wheel_bearing, wheel_bearing),
    Calculation("rock-test", draw_rock_test, rock_test),
    Calculation("play-limits", draw_play_limits, play_limits),
    Calculation("bearing-friction", draw_bearing_friction, bearing_friction),
    Calculation("bearing-stiffness", draw_bearing_stiffness, bearing_stiffness),
)
