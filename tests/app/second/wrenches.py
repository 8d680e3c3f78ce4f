# SPDX-License-Identifier: GPL-3.0-or-later
"""What to set a torque wrench to, and which one."""

import calendar
import datetime
import math

from calculation import Calculation
from compare import Number
from draw import Draw
from judging import graduation_u, rectangular
from units import radians, read
from written import nm


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


CALCULATIONS = (Calculation("wrench-setting", draw_wrench_setting, wrench_setting),)
