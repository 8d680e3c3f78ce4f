# SPDX-License-Identifier: GPL-3.0-or-later
"""What becomes of the two brake discs of an axle, and how fast a disc wears."""

import math

import numpy as np

from calculation import Calculation
from compare import ANYTHING, Quantity, Refused
from draw import Draw
from judging import INF, coverage, judged
from units import read, read_or
from written import mm

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


CALCULATIONS = (
    Calculation("disc-decision", draw_disc_decision, disc_decision),
    Calculation("disc-wear", draw_disc_wear, disc_wear),
)
