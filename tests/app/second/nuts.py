# SPDX-License-Identifier: GPL-3.0-or-later
"""Locking nuts, castellated nuts, the order of a circle of fasteners, and when wheel nuts are
checked again."""

import math

import threads
from calculation import Calculation
from compare import Quantity
from draw import Draw
from threads import WRITTEN, draw_thread
from units import converted, read, split
from written import nm

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
    Calculation("prevailing-torque", draw_prevailing, prevailing),
    Calculation("castle-nut", draw_castle, castle),
    Calculation("tighten-pattern", draw_pattern, pattern),
    Calculation("wheel-nut-recheck", draw_recheck, recheck),
)
