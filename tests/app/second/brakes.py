# SPDX-License-Identifier: GPL-3.0-or-later
"""Brake discs: thickness, runout, indexing; decisions and wear are in axle_discs.py."""

import cmath
import math

import numpy as np

import axle_discs
from calculation import Calculation
from compare import Number, Quantity
from draw import Draw
from judging import INF, combined, graduation_u, judged, rectangular, too_coarse
from units import converted, radians, read, read_or
from written import mm

STEPS = {"mm": 0.001, "in": 0.00005, "thou": 0.05, "cm": 0.0001, "m": 1e-6, "um": 1.0}


# --- one gauge ---------------------------------------------------------------------------------

def draw_gauge(draw: Draw) -> dict:
    """A micrometer or an indicator."""
    instrument: dict = {"graduation": draw.choice(("0.01 mm", "0.001 mm", "0.0001 in", "1 um"))}
    draw.sometimes(instrument, "permissible_error", lambda: draw.quantity(0.002, 0.02, "mm", 2))
    draw.sometimes(instrument, "local_error", lambda: draw.quantity(0.0005, 0.005, "mm", 2), 0.3)
    return instrument


def draw_readings(draw: Draw, centre: float, half: float, count: int) -> list[str]:
    """Readings of one instrument, all in its own unit."""
    own = draw.choice([unit for unit in STEPS if converted(centre, "mm", unit) >= 0.01])
    return [draw.in_unit(draw.random.uniform(centre - half, centre + half), own, STEPS[own])
            for _ in range(count)]


def reading_u(instrument: dict, repeat: tuple[float, float] | None) -> tuple[float, float]:
    """One reading: graduation, permissible error, repeatability."""
    parts = [(graduation_u(read(instrument["graduation"], "mm")), INF)]
    if "permissible_error" in instrument:
        parts.append((rectangular(read(instrument["permissible_error"], "mm")), INF))
    return combined(parts + ([repeat] if repeat else []))


def difference_u(instrument: dict, repeat: tuple[float, float] | None,
                 behind: float = 1.0) -> tuple[float, float]:
    """A difference of two values of one gauge, `behind` readings behind each: its own error
    cancels, the graduation counts twice, a local error stays, only repeatability gets smaller."""
    parts = instrument_parts(instrument)
    if repeat:
        parts.append((repeat[0] * math.sqrt(2 / behind), repeat[1]))
    return combined(parts)


def instrument_parts(instrument: dict) -> list[tuple[float, float]]:
    """Of a difference, from the instrument alone."""
    parts = [(math.sqrt(2) * graduation_u(read(instrument["graduation"], "mm")), INF)]
    if "local_error" in instrument:
        parts.append((rectangular(read(instrument["local_error"], "mm")), INF))
    return parts


# --- orders of a turn --------------------------------------------------------------------------

def captured_share(points: int, order: int) -> float:
    """Least part of the peak-to-peak of a wave that even points show, over all phases. The readings
    are cosines at M = N / gcd(N, h) even steps; searched over the phases where the extremes change:
    multiples of half a step."""
    places = points // math.gcd(points, order)
    steps = 2 * math.pi * np.arange(places) / places
    return min(float(np.ptp(np.cos(steps + phase))) / 2
               for phase in (0.0, math.pi / places / 2, math.pi / places))


def waves(values: list[float]) -> list[complex]:
    """c_n = (2/N) sum r_j exp(i n t_j): wave |c| cos(n t - arg c)."""
    count = len(values)
    return [2 / count * sum(v * cmath.exp(2j * math.pi * order * j / count)
                            for j, v in enumerate(values)) for order in range(1, 5)]


def orders_of(values: list[float]) -> list[dict]:
    """Orders 1 to 4; below half the number of points they can be told from others."""
    rows = []
    size = max(abs(v) for v in values)
    for order, wave in enumerate(waves(values), start=1):
        row: dict = {"order": order,
                     "captured_share": Number(captured_share(len(values), order), absolute=1e-9)}
        if 2 * order < len(values):
            row |= written_wave(wave, size)
        rows.append(row)
    return rows


def written_wave(wave: complex, size: float) -> dict:
    """Below a picometre it is rounding."""
    amount = abs(wave)
    if amount < 1e-9:
        return {"amplitude": mm(0.0), "phase": Quantity(0.0, "deg")}
    return {"amplitude": mm(amount), "phase": bearing(wave, size)}


def bearing(vector: complex, size: float) -> Quantity:
    """The direction of a vector that came from sums of numbers of this size."""
    loss = math.degrees(1e-14 * size / abs(vector)) if vector != 0 else 360.0
    return Quantity(math.degrees(cmath.phase(vector)) % 360.0, "deg",
                    absolute=max(1e-8, 10 * loss), turn=True)


# --- disc-thickness ----------------------------------------------------------------------------

def draw_disc_thickness(draw: Draw) -> dict:
    """A disc read at one radius or at two."""
    centre = draw.random.uniform(8, 30)
    half = draw.choice((0.002, 0.01, 0.03))
    inputs: dict = {"gauge": draw.choice(("micrometer", "micrometer", "caliper_over_lip")),
                    "readings": draw_readings(draw, centre, half, draw.whole(4, 16)),
                    "instrument": draw_gauge(draw)}
    if draw.chance(0.3):
        inputs["other_radius"] = draw_readings(draw, centre + draw.random.uniform(-0.03, 0.03),
                                               half, draw.whole(4, 16))
    if draw.chance(0.4):
        inputs["repeatability"] = {"amount": draw.quantity(0.0005, 0.01, "mm", 2),
                                   "readings": draw.whole(2, 30)}
    draw.sometimes(inputs, "discard", lambda: draw.quantity(centre - 0.1, centre + 0.02, "mm", 5))
    draw.sometimes(inputs, "variation_limit", lambda: draw.quantity(0.005, 0.06, "mm", 2), 0.7)
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))}, 0.3)
    return inputs


def repeat_of(inputs: dict) -> tuple[float, float] | None:
    """Scatter known from so many readings: s with one degree of freedom less."""
    if "repeatability" not in inputs:
        return None
    known = inputs["repeatability"]
    return read(known["amount"], "mm"), known["readings"] - 1.0


def disc_thickness(inputs: dict) -> dict:
    """Minimum, variation, orders and taper."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    instrument, repeat = inputs["instrument"], repeat_of(inputs)
    values = [read(text, "mm") for text in inputs["readings"]]
    others = [read(text, "mm") for text in inputs.get("other_radius", [])]
    result: dict = {"points": len(values), "mean": mm(math.fsum(values) / len(values)),
                    "thinnest_point": values.index(min(values)) + 1, "orders": orders_of(values)}
    result["minimum"] = minimum_judged(inputs, min(values + others), reading_u(instrument, repeat),
                                       confidence)
    variation = max(np.ptp(values), np.ptp(others) if others else 0.0)
    result |= variation_judged(inputs, float(variation), min(len(values), len(others) or 99),
                               confidence)
    if others:
        taper = math.fsum(others) / len(others) - math.fsum(values) / len(values)
        u = difference_u(instrument, repeat, min(len(values), len(others)))
        result["taper"] = judged(taper, *u, (None, None), "mm", confidence)
    return result


def minimum_judged(inputs: dict, least: float, u: tuple[float, float], confidence: float) -> dict:
    """Within only where it is proved: by a gauge whose error is known, and not over a lip of rust,
    which reads thick."""
    discard = read(inputs["discard"], "mm") if "discard" in inputs else None
    result = judged(least, *u, (discard, None), "mm", confidence)
    proves = inputs["gauge"] == "micrometer" and "permissible_error" in inputs["instrument"]
    if not proves and result["verdict"] == "within":
        result |= {"verdict": "undecided", "side": "inside_likely"}
    return result


def variation_judged(inputs: dict, variation: float, points: int, confidence: float) -> dict:
    """By probability; then what these points and this gauge cannot show: over a lip nothing, with a
    coarse gauge or fewer than eight points nothing but "outside"."""
    limit = read(inputs["variation_limit"], "mm") if "variation_limit" in inputs else None
    instrument = inputs["instrument"]
    u = difference_u(instrument, repeat_of(inputs))
    result = judged(variation, *u, (None, limit), "mm", confidence)
    decision = result["verdict"]
    own = combined(instrument_parts(instrument))[0]
    if decision == "no_limit":
        verdict = decision
    elif inputs["gauge"] == "caliper_over_lip":
        verdict = "undecided"
    elif decision == "outside":
        verdict = decision
    elif too_coarse(0.0, limit, own, confidence):
        verdict = "instrument_too_coarse"
    else:
        verdict = "undecided" if decision == "within" and points < 8 else decision
    if decision == "within" and verdict != "within":
        result["side"] = "inside_likely"
    return {"variation": result | {"verdict": verdict}, "variation_decision": decision}


# --- disc-runout -------------------------------------------------------------------------------

def draw_disc_runout(draw: Draw) -> dict:
    """An indicator over one turn or several, as a list or place by place."""
    turns, places = draw.whole(1, 3), draw.choice((4, 6, 8, 9, 10, 11, 12, 16))
    tilt, phase = draw.random.uniform(0, 0.06), draw.random.uniform(0, 2 * math.pi)
    wave = draw.random.uniform(0, 0.02)
    own = draw.choice(("mm", "thou", "um"))

    def shown(place: int) -> str:
        t = 2 * math.pi * place / places
        value = 0.1 + tilt * math.cos(t - phase) + wave * math.cos(2 * t)
        return draw.in_unit(value + draw.random.uniform(-0.002, 0.002), own, STEPS[own])
    rows = [[shown(place) for place in range(places)] for _ in range(turns)]
    inputs: dict = {"instrument": draw_gauge(draw)}
    if draw.chance(0.6):
        inputs["readings"] = [text for row in rows for text in row]
        if turns > 1 or draw.chance(0.3):
            inputs["turns"] = turns
    else:
        inputs["points"] = draw_points(draw, rows, places)
    draw.sometimes(inputs, "plunger_off_square", lambda: draw.quantity(-30, 40, "deg", 3), 0.4)
    draw.sometimes(inputs, "runout_limit", lambda: draw.quantity(0.03, 0.2, "mm", 2), 0.7)
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))}, 0.3)
    return inputs


def draw_points(draw: Draw, rows: list[list[str]], places: int) -> list[dict]:
    """Each turn in an order of its own, places by clock or by angle."""
    points = []
    for row in rows:
        order = list(range(places))
        draw.random.shuffle(order)
        for place in order:
            if draw.chance(0.5):
                clock = 12 * place / places
                at: dict = {"clock": draw.choice((0, 12)) if place == 0 else round(clock, 6)}
            else:
                at = {"angle": f"{360 * place / places:.4f} deg"}
            points.append(at | {"reading": row[place]})
    return points


def runout_table(inputs: dict) -> np.ndarray:
    """Readings in mm, a row a turn."""
    if "readings" in inputs:
        values = np.array([read(text, "mm") for text in inputs["readings"]])
        return values.reshape(inputs.get("turns", 1), -1)
    places: dict[int, list[float]] = {}
    for point in inputs["points"]:
        angle = point["clock"] * 30 if "clock" in point else read(point["angle"], "deg")
        places.setdefault(round(angle * 100) % 36000, []).append(read(point["reading"], "mm"))
    return np.array([places[place] for place in sorted(places)]).T


def disc_runout(inputs: dict) -> dict:
    """A plunger a off square reads TIR / cos a. Places are averaged over the turns; repeatability
    is pooled over the places, with N (turns - 1) degrees of freedom. An order's amount has
    u sqrt(2/N), u that of a reading (least squares on orthogonal columns)."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    table = runout_table(inputs) * math.cos(math.radians(
        read_or(inputs, "plunger_off_square", "deg", 0)))
    turns, places = table.shape
    means = table.mean(axis=0)
    result: dict = {"places": places, "mean": mm(float(means.mean())),
                    "orders": orders_of(list(means))}
    repeat = None
    if turns > 1:
        freedom = places * (turns - 1)
        s = math.sqrt(float(((table - means) ** 2).sum()) / freedom)
        repeat = (s, float(freedom))
        result |= {"repeatability": mm(s), "drift": mm(float(table[-1].mean() - table[0].mean()))}
    u, nu = difference_u(inputs["instrument"], repeat, turns)
    limit = read(inputs["runout_limit"], "mm") if "runout_limit" in inputs else None
    result["total"] = judged(float(np.ptp(means)), u, nu, (None, limit), "mm", confidence)
    wave = waves(list(means))[0]
    t = 2 * math.pi * np.arange(places) / places
    flat = means - abs(wave) * np.cos(t - cmath.phase(wave))
    result |= {"tilt": {"amount": mm(abs(wave)), "angle": bearing(wave, float(np.abs(means).max())),
                        "standard_uncertainty": mm(u / math.sqrt(2) * math.sqrt(2 / places)),
                        "runout": mm(2 * abs(wave))},
               "residual": mm(float(np.ptp(flat))), "residual_standard_uncertainty": mm(u)}
    return result


# --- runout-at-track, disc-index ---------------------------------------------------------------

def draw_runout_at_track(draw: Draw) -> dict:
    """One of the two faults."""
    inputs: dict = {"fault": draw.choice(("hub_runout", "speck")),
                    "track_radius": draw.quantity(80, 180, "mm")}
    if inputs["fault"] == "hub_runout":
        inputs["hub_runout"] = draw.quantity(0, 0.2, "mm", 3)
        inputs["hub_radius"] = draw.quantity(30, 100, "mm")
    else:
        inputs["speck"] = draw.quantity(0, 0.2, "mm", 3)
        inputs["seat_diameter"] = draw.quantity(80, 200, "mm")
    draw.sometimes(inputs, "runout_limit", lambda: draw.quantity(0.02, 0.2, "mm", 3))
    return inputs


def runout_at_track(inputs: dict) -> dict:
    """Rigid tilt: TIR grows with the radius; a speck s under an edge of a seat d tilts by s / d."""
    radius = read(inputs["track_radius"], "mm")
    if inputs["fault"] == "hub_runout":
        fault, gain = read(inputs["hub_runout"], "mm"), radius / read(inputs["hub_radius"], "mm")
    else:
        fault, gain = read(inputs["speck"], "mm"), 2 * radius / read(inputs["seat_diameter"], "mm")
    result: dict = {"runout": mm(fault * gain), "gain": gain}
    if "runout_limit" in inputs:
        result["largest_fault"] = mm(read(inputs["runout_limit"], "mm") / gain)
    return result


def draw_part(draw: Draw) -> dict:
    """A first-order runout with its uncertainty."""
    part: dict = {"amount": draw.quantity(0.005, 0.15, "mm", 3),
                  "angle": draw.quantity(-180, 360, "deg", 4)}
    draw.sometimes(part, "uncertainty", lambda: draw.quantity(0.0005, 0.01, "mm", 2), 0.7)
    return part


def draw_disc_index(draw: Draw) -> dict:
    """Two runs, or hub and disc by themselves."""
    studs = draw.whole(3, 12)
    inputs: dict = {"studs": studs}
    if draw.chance(0.6):
        places = draw.random.sample(range(studs), 2)
        inputs["runs"] = [{"position": place} | draw_part(draw) for place in places]
    else:
        inputs["hub"], inputs["disc"] = draw_part(draw), draw_part(draw)
    draw.sometimes(inputs, "runout_limit", lambda: draw.quantity(0.02, 0.3, "mm", 2), 0.7)
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))}, 0.3)
    return inputs


def disc_index(inputs: dict) -> dict:
    """T_k = H + D z^k, z = exp(i 360 / N). Solved from two runs as a linear system, the uncertainty
    by the same linear map (JCGM 100 5.1: each vector has u along and across, all independent)."""
    studs = inputs["studs"]
    z = np.exp(2j * math.pi * np.arange(studs) / studs)
    given = inputs.get("runs") or [inputs["hub"], inputs["disc"]]
    vectors = np.array([cmath.rect(read(part["amount"], "mm"), radians(part["angle"]))
                        for part in given])
    spreads = np.array([read_or(part, "uncertainty", "mm", 0.0) for part in given])
    if "runs" in inputs:
        places = [run["position"] for run in inputs["runs"]]
        from_given = np.linalg.inv(np.array([[1, z[place]] for place in places]))
    else:
        from_given = np.eye(2)
    hub, disc = from_given @ vectors
    to_positions = np.column_stack([np.ones(studs), z]) @ from_given
    totals = to_positions @ vectors
    spread = np.sqrt((np.abs(to_positions) ** 2) @ spreads**2)
    size = float(np.abs(vectors).sum()) * 10
    amounts = np.abs(totals)
    alike = 1e-12 * size  # of positions alike the lower number is named
    best = int(np.flatnonzero(amounts <= amounts.min() + alike)[0])
    worst = int(np.flatnonzero(amounts >= amounts.max() - alike)[0])
    limit = read(inputs["runout_limit"], "mm") if "runout_limit" in inputs else None

    part_spread = np.sqrt((np.abs(from_given) ** 2) @ spreads**2)

    def written(vector: complex, u: float) -> dict:
        return {"amount": mm(abs(vector), 1e-11), "angle": bearing(vector, size),
                "standard_uncertainty": mm(u)}
    return {"hub": written(hub, part_spread[0]), "disc": written(disc, part_spread[1]),
            "positions": [{"position": k} | written(total, spread[k])
                          for k, total in enumerate(totals)],
            "best": best, "worst": worst,
            "best_runout": judged(2 * abs(totals[best]), 2 * float(spread[best]), INF,
                                  (None, limit), "mm",
                                  inputs.get("options", {}).get("confidence", 0.95), 1e-11),
            "floor": mm(abs(abs(hub) - abs(disc)), 1e-11), "ceiling": mm(abs(hub) + abs(disc))}


# --- brake-torque-variation --------------------------------------------------------------------

def draw_torque_variation(draw: Draw) -> dict:
    """A disc of uneven thickness under a caliper."""
    inputs: dict = {"thickness_variation": draw.quantity(0, 0.1, "mm", 3),
                    "stiffness": draw.quantity(2000, 50000, "N/mm", 3),
                    "effective_radius": draw.quantity(60, 180, "mm")}
    draw.sometimes(inputs, "friction", lambda: draw.number(0.1, 0.7, 2))
    draw.sometimes(inputs, "piston_diameter", lambda: draw.quantity(25, 70, "mm", 3))
    if draw.chance(0.5):
        inputs["speed"] = draw.quantity(10, 150, "km/h", 3)
        inputs["rolling_circumference"] = draw.quantity(1600, 2900, "mm")
        draw.sometimes(inputs, "order", lambda: draw.whole(1, 20))
    return inputs


def torque_variation(inputs: dict) -> dict:
    """dN = k dx; two faces: dT = 2 mu r dN; dp = dN / area; order n at v: n v / C (plane statics).
    N, mm: N/mm^2 is 10 bar."""
    force = read(inputs["stiffness"], "N/mm") * read(inputs["thickness_variation"], "mm")
    result = {"clamping_force": Quantity(force, "N"), "torque": Quantity(
        2 * inputs.get("friction", 0.4) * force * read(inputs["effective_radius"], "mm") / 1000,
        "N m")}
    if "piston_diameter" in inputs:
        area = math.pi / 4 * read(inputs["piston_diameter"], "mm") ** 2
        result["pressure"] = Quantity(10 * force / area, "bar")
    if "speed" in inputs:
        result["frequency"] = Quantity(
            inputs.get("order", 1) * read(inputs["speed"], "km/h") / 3.6
            / (read(inputs["rolling_circumference"], "mm") / 1000), "Hz")
    return result


CALCULATIONS = (
    Calculation("disc-thickness", draw_disc_thickness, disc_thickness),
    Calculation("disc-runout", draw_disc_runout, disc_runout),
    Calculation("runout-at-track", draw_runout_at_track, runout_at_track),
    Calculation("disc-index", draw_disc_index, disc_index),
    *axle_discs.CALCULATIONS,
    Calculation("brake-torque-variation", draw_torque_variation, torque_variation),
)
