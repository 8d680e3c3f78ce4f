# SPDX-License-Identifier: GPL-3.0-or-later
"""Brake discs: thickness, runout, indexing, wear, and what becomes of them."""

import cmath
import math

import numpy as np

from calculation import Calculation
from compare import ANYTHING, Number, Quantity, Refused
from draw import Draw
from judging import INF, combined, coverage, graduation_u, judged, rectangular, too_coarse
from units import converted, radians, read, read_or

STEPS = {"mm": 0.001, "in": 0.00005, "thou": 0.05, "cm": 0.0001, "m": 1e-6, "um": 1.0}


def mm(value: float, absolute: float = 1e-12) -> Quantity:
    """A length of an answer."""
    return Quantity(value, "mm", absolute=absolute)


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


# --- disc-decision -----------------------------------------------------------------------------

def draw_disc_decision(draw: Draw) -> dict:
    """Two discs of an axle and their limits."""
    discard = draw.random.uniform(8, 25)
    inputs: dict = {"mounting": draw.choice(("outside_hub", "behind_hub")),
                    "discs": [draw_disc(draw, side, discard) for side in ("left", "right")],
                    "discard": f"{discard:.3f} mm"}
    draw.sometimes(inputs, "machine_to", lambda: f"{discard + 0.3:.3f} mm", 0.8)
    draw.sometimes(inputs, "variation_limit", lambda: draw.quantity(0.015, 0.06, "mm", 2), 0.8)
    draw.sometimes(inputs, "runout_limit", lambda: draw.quantity(0.05, 0.2, "mm", 2), 0.8)
    draw.sometimes(inputs, "difference_limit", lambda: draw.quantity(0.2, 1, "mm", 2), 0.3)
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))}, 0.3)
    return inputs


def draw_disc(draw: Draw, side: str, discard: float) -> dict:
    """One disc, mostly a usable one."""
    low = -0.02 if draw.chance(0.15) else 0.4
    disc: dict = {"side": side,
                  "minimum": draw.quantity(discard + low, discard + 1.2, "mm", 6),
                  "minimum_uncertainty": draw.quantity(0.001, 0.01, "mm", 2),
                  "condition": draw.choice(("none",) * 12 + ("cracks", "blue_spots",
                                                             "heavy_corrosion"))}
    for name, most, share in (("variation", 0.06, 0.9), ("runout", 0.18, 0.9),
                              ("residual", 0.15, 0.85)):
        if draw.chance(share):
            disc[name] = draw.quantity(0.002, most, "mm", 3)
            disc[name + "_uncertainty"] = draw.quantity(0.0002, 0.004, "mm", 2)
    draw.sometimes(disc, "first_order", lambda: draw.quantity(0, 0.1, "mm", 2))
    draw.sometimes(disc, "cut_per_side", lambda: draw.quantity(0.05, 0.25, "mm", 2), 0.85)
    return disc


class Reasons:
    """What was found, in the order it is told."""

    def __init__(self) -> None:
        self.rows: list[dict] = []

    def add(self, reason: str, side: str | None = None, value: float | None = None,
            limit: float | None = None) -> None:
        """One finding."""
        row: dict = {"reason": reason, "text": ANYTHING}
        if side:
            row["side"] = side
        if value is not None:
            row["value"] = mm(value)
        if limit is not None:
            row["limit"] = mm(limit)
        self.rows.append(row)

    def has(self, *reasons: str) -> bool:
        """Whether any of these was found."""
        return any(row["reason"] in reasons for row in self.rows)


def disc_decision(inputs: dict) -> dict:
    """The rules in their order (common practice, no source): replace; resurface both discs where
    both may be cut; measure again; clean and index; keep. Each figure by JCGM 106."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    limits = {name: read(inputs[name], "mm") if name in inputs else None
              for name in ("discard", "machine_to", "variation_limit", "runout_limit")}
    limits["difference"] = read_or(inputs, "difference_limit", "mm", 0.5)
    rows, values = [], []
    for disc in inputs["discs"]:
        row, value = judged_disc(disc, limits, confidence)
        rows.append(row)
        values.append(value)
    result: dict = {"discs": rows}
    if all("after_machining" in row for row in rows):
        apart = abs(values[0]["after_machining"] - values[1]["after_machining"])
        u = math.hypot(*(read(disc["minimum_uncertainty"], "mm") for disc in inputs["discs"]))
        values.append({"difference": apart})
        result["difference_after"] = judged(apart, u, INF, (None, limits["difference"]), "mm",
                                            confidence, 1e-11)
    found = findings(inputs, result, values, limits)
    result["decision"] = action(found)
    if result["decision"] == "keep":
        found.add("all_within")
    return result | {"reasons": found.rows}


def judged_disc(disc: dict, limits: dict, confidence: float) -> tuple[dict, dict]:
    """The figures of one disc as judged, and as plain numbers."""
    row: dict = {"side": disc["side"]}
    value = {"minimum": read(disc["minimum"], "mm")}
    u = read(disc["minimum_uncertainty"], "mm")
    row["minimum"] = judged(value["minimum"], u, INF, (limits["discard"], None), "mm", confidence)
    for name, limit in (("variation", "variation_limit"), ("runout", "runout_limit"),
                        ("residual", "runout_limit")):
        if name in disc:
            value[name] = read(disc[name], "mm")
            row[name] = judged(value[name], read(disc[name + "_uncertainty"], "mm"), INF,
                               (None, limits[limit]), "mm", confidence)
    if "first_order" in disc:
        row["tilt"] = mm(2 * read(disc["first_order"], "mm"))
    if "cut_per_side" in disc and limits["machine_to"] is not None:
        value["after_machining"] = value["minimum"] - 2 * read(disc["cut_per_side"], "mm")
        row["after_machining"] = judged(value["after_machining"], u, INF,
                                        (limits["machine_to"], None), "mm", confidence)
    return row, value


def findings(inputs: dict, result: dict, values: list[dict], limits: dict) -> Reasons:
    """Of both discs, disc by disc."""
    found = Reasons()
    for disc, row, value in zip(inputs["discs"], result["discs"], values):
        side = disc["side"]
        if disc["condition"] != "none":
            found.add("condition", side)
        if row["minimum"]["verdict"] != "within":
            name = "below_discard" if row["minimum"]["verdict"] == "outside" else \
                "minimum_not_proved"
            found.add(name, side, value["minimum"], limits["discard"])
    for row, value in zip(result["discs"], values):
        faults(found, row, value, limits)
    if found.has("variation_outside", "not_flat"):
        machining(found, result, values, limits)
    return found


def faults(found: Reasons, row: dict, value: dict, limits: dict) -> None:
    """Variation, flatness and total runout, each outside, undecided or missing."""
    names = [("variation", "variation_limit", "variation_outside", "variation_undecided",
              "variation_missing")]
    if "residual" in row or "runout" in row:
        names.append(("residual", "runout_limit", "not_flat", "flatness_undecided",
                      "runout_missing"))
    names.append(("runout", "runout_limit", "seat_tilted", "runout_undecided", "runout_missing"))
    for name, limit, outside, undecided, missing in names:
        if limits[limit] is None:
            continue
        if name not in row:
            found.add(missing, row["side"], None, limits[limit])
        elif row[name]["verdict"] == "outside":
            found.add(outside, row["side"], value[name], limits[limit])
        elif row[name]["verdict"] == "undecided":
            found.add(undecided, row["side"], value[name], limits[limit])


def machining(found: Reasons, result: dict, values: list[dict], limits: dict) -> None:
    """Whether both may be cut, and whether they end up alike."""
    for row, value in zip(result["discs"], values):
        if "after_machining" not in row:
            found.add("machining_unknown", row["side"])
        elif row["after_machining"]["verdict"] != "within":
            outside = row["after_machining"]["verdict"] == "outside"
            found.add("not_machinable" if outside else "machining_not_proved", row["side"],
                      value["after_machining"], limits["machine_to"])
    if "difference_after" in result and result["difference_after"]["verdict"] != "within":
        outside = result["difference_after"]["verdict"] == "outside"
        found.add("difference_too_large" if outside else "difference_not_proved", None,
                  values[2]["difference"], limits["difference"])


def action(found: Reasons) -> str:
    """The first rule that applies."""
    if found.has("condition", "below_discard"):
        return "replace"
    if found.has("variation_outside", "not_flat"):
        if found.has("not_machinable"):
            return "replace"
        return "not_decided" if found.has("machining_unknown", "machining_not_proved",
                                          "difference_too_large", "difference_not_proved") \
            else "resurface"
    if found.has("minimum_not_proved", "variation_undecided", "variation_missing",
                 "flatness_undecided", "runout_missing"):
        return "not_decided"
    if found.has("seat_tilted"):
        return "clean_and_index"
    return "not_decided" if found.has("runout_undecided") else "keep"


# --- disc-wear ---------------------------------------------------------------------------------

def draw_disc_wear(draw: Draw) -> dict:
    """Visits of a disc that wears, and some noise."""
    rate = draw.random.uniform(0.02, 0.3)  # mm in 10 000 km
    count = draw.whole(2, 6)
    road = sorted(draw.random.sample(range(1000, 200000), count))
    new, noise = draw.random.uniform(10, 30), draw.choice((0.0, 0.003, 0.02))
    visits = []
    for odometer in road:
        minimum = new - rate * odometer / 1e4 + draw.random.gauss(0, noise)
        visits.append({"odometer": draw.choice((f"{odometer} km", float(odometer),
                                                f"{odometer / 1.609344:.1f} mi")),
                       "minimum": draw.choice((f"{minimum:.3f} mm", f"{minimum / 25.4:.5f} in")),
                       "uncertainty": draw.quantity(0.001, 0.02, "mm", 2)})
    draw.random.shuffle(visits)
    discard = new - rate * road[-1] / 1e4 - draw.random.uniform(-0.2, 3)
    inputs: dict = {"visits": visits, "discard": f"{discard:.3f} mm"}
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.choice((0.9, 0.95, 0.99))}, 0.3)
    return inputs


def disc_wear(inputs: dict) -> dict:
    """Weighted straight line; scatter beyond the stated uncertainties raises them by the Birge
    ratio, k then Student's for n - 2. Distance with Fieller's interval for a quotient."""
    confidence = inputs.get("options", {}).get("confidence", 0.95)
    visits = sorted((read(v["odometer"], "km"), read(v["minimum"], "mm"),
                     read(v["uncertainty"], "mm")) for v in inputs["visits"])
    x, t, u = (np.array(column) for column in zip(*visits))
    discard = read(inputs["discard"], "mm")
    refuse_thicker(visits, confidence)
    w = 1 / u**2
    middle, mean = float(np.average(x, weights=w)), float(np.average(t, weights=w))
    sxx = float((w * (x - middle) ** 2).sum())
    wear = -float((w * (x - middle) * (t - mean)).sum()) / sxx
    if wear <= 0:
        raise Refused("degenerate")
    chi2 = float((w * (t - mean + wear * (x - middle)) ** 2).sum())
    freedom = len(visits) - 2
    birge, nu = (chi2 / freedom, freedom) if freedom and chi2 > freedom else (1.0, INF)
    var_mean, var_wear = birge / float(w.sum()), birge / sxx
    k = coverage(confidence, nu)
    line = mean - wear * (x[-1] - middle)
    spread = k * math.sqrt(var_wear)
    near = max(1e-9, 1e-13 * float(t.max()) / (wear * (x[-1] - x[0])))
    result = {"wear": mm_loose(wear * 1e4, near),
              "wear_least": mm_loose((wear - spread) * 1e4, near),
              "wear_most": mm_loose((wear + spread) * 1e4, near), "thickness": mm(line, 1e-10),
              "coverage_factor": k}
    return result | distances(wear, mean - discard, x[-1] - middle, x[-1] - x[0], var_mean,
                              var_wear, k, line <= discard)


def mm_loose(value: float, near: float) -> Quantity:
    """A small difference of large thicknesses."""
    return Quantity(value, "mm", relative=near, absolute=near * 0.1)


def refuse_thicker(visits: list[tuple], confidence: float) -> None:
    """A disc that is proved thicker later is another disc or a fault."""
    k = coverage(confidence, INF)
    for i, earlier in enumerate(visits):
        for later in visits[i + 1:]:
            if later[1] - earlier[1] > k * math.hypot(earlier[2], later[2]):
                raise Refused("degenerate")


def distances(wear: float, margin: float, beyond: float, spanned: float, var_margin: float,
              var_wear: float, k: float, gone: bool) -> dict:
    """All q with (m - w q)^2 <= k^2 (u(m)^2 + q^2 u(w)^2), q from the weighted middle of the
    visits: the roots of a quadratic, found with NumPy. km."""
    def km(value: float) -> Quantity:
        return Quantity(max(0.0, value), "km", relative=1e-8, absolute=1e-6)
    if gone:
        return {name: Quantity(0.0, "km") for name in ("distance_to_discard", "distance_least",
                                                       "distance_most", "recheck_after")}
    a = wear**2 - k**2 * var_wear
    b = -2 * margin * wear
    c = margin**2 - k**2 * var_margin
    roots = sorted(np.roots([a, b, c]).real)
    result = {"distance_to_discard": km(margin / wear - beyond)}
    if a > 0:
        least = roots[0] - beyond
        result["distance_most"] = km(roots[1] - beyond)
    elif c > 0:
        least = max(roots) - beyond  # outside the two roots holds; the positive one bounds it
    else:
        least = 0.0
    result["distance_least"] = km(least)
    result["recheck_after"] = km(min(max(0.0, least) / 2, spanned))
    return result


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
    Calculation("disc-decision", draw_disc_decision, disc_decision),
    Calculation("disc-wear", draw_disc_wear, disc_wear),
    Calculation("brake-torque-variation", draw_torque_variation, torque_variation),
)
