# SPDX-License-Identifier: GPL-3.0-or-later
"""What a tyre's marking says, and the way it rolls."""

import math
from dataclasses import dataclass, field

from calculation import Calculation
from compare import Quantity
from draw import Draw
from units import INCH, read, read_or

# Loads of the indices 70 to 120 in kg: public trade tables; 120 from memory of the same.
LOADS = (335, 345, 355, 365, 375, 387, 400, 412, 425, 437,
         450, 462, 475, 487, 500, 515, 530, 545, 560, 580,
         600, 615, 630, 650, 670, 690, 710, 730, 750, 775,
         800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030,
         1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, 1400)
# Speeds of the symbols in km/h: public trade tables. H stands between U and V.
SPEEDS = {"F": 80, "G": 90, "J": 100, "K": 110, "L": 120, "M": 130, "N": 140, "P": 150, "Q": 160,
          "R": 170, "S": 180, "T": 190, "U": 200, "H": 210, "V": 240, "W": 270, "Y": 300}
CONSTRUCTIONS = {"R": "radial", "ZR": "radial", "-": "diagonal", "D": "diagonal",
                 "B": "bias_belted"}


@dataclass
class Marking:
    """A marking by its parts; the text is what stands on the tyre."""

    form: str
    structure: str
    width: float  # mm
    rim_code: float
    aspect: int | None = None
    overall: float | None = None  # mm
    size: str = ""
    prefix: str = ""
    behind: list[str] = field(default_factory=list)
    indices: tuple[int, ...] = ()
    symbol: str | None = None
    plies: int | None = None
    marks: list[str] = field(default_factory=list)

    def text(self) -> str:
        """As marked."""
        separator = "" if self.structure == "-" else " "
        rim = f"{self.structure}{self.rim_code:g}"
        return " ".join([f"{self.prefix}{self.size}{separator}{rim}", *self.behind])


MARKINGS: dict[str, Marking] = {}


def draw_marking(draw: Draw, forms: tuple[str, ...]) -> str:
    """A marking of one of these forms; its parts are kept under its text."""
    form = draw.choice(forms)
    structure = draw.choice(("R", "R", "R", "-", "D", "B", "ZR"))
    rim = draw.choice((13, 14, 15, 16, 16, 17, 18, 19.5, 22.5))
    if form == "flotation":
        overall, width = draw.whole(56, 84) / 2, draw.whole(32, 58) / 4
        marking = Marking(form, structure, width * INCH, min(rim, 18), overall=overall * INCH,
                          size=f"{overall:g}x{width:.2f}")
    elif form == "inch_width":
        width = draw.choice((5.5, 6.0, 6.5, 7.0, 7.5, 8.25, 9.0))
        marking = Marking(form, structure, width * INCH, rim, size=f"{width:.2f}")
    else:
        width = 10 * draw.whole(12, 33) + 5
        marking = Marking(form, structure, float(width), rim, size=str(width))
        if form == "metric_with_aspect":
            marking.aspect = 5 * draw.whole(6, 18)
            marking.size += f"/{marking.aspect}"
        else:
            marking.structure = "R"
    draw_behind(draw, marking)
    MARKINGS[marking.text()] = marking
    return marking.text()


def draw_behind(draw: Draw, marking: Marking) -> None:
    """Load index, speed symbol, plies and marks."""
    if marking.form.startswith("metric") and draw.chance(0.2):
        marking.prefix = draw.choice(("P", "LT"))
        if marking.prefix == "LT":
            marking.marks.append("LT")
        else:
            marking.marks.append("P")
    if draw.chance(0.6):
        first = draw.whole(70, 120)
        marking.indices = (first, first - draw.whole(1, 4)) if draw.chance(0.2) and first > 75 \
            else (first,)
        text = "/".join(map(str, marking.indices))
        if draw.chance(0.8):
            marking.symbol = draw.choice(sorted(SPEEDS))
            text += marking.symbol
        marking.behind.append(text)
    if draw.chance(0.2):
        marking.plies = draw.choice((4, 6, 8, 10))
        marking.behind.append(f"{marking.plies}PR")
    if draw.chance(0.2):
        mark = draw.choice(("XL", "M+S", "TL", "TT"))
        marking.marks.append(mark)
        marking.behind.append(mark)


COMPUTABLE = ("metric_with_aspect", "metric_without_aspect", "flotation")


@dataclass(frozen=True)
class Size:
    """Nominal dimensions in mm."""

    diameter: float
    height: float
    aspect: float
    aspect_from: str


def size_of(marking: Marking, assumed_aspect: float) -> Size | None:
    """D = d + 2 H, H = aspect x width (ISO 4000-1); flotation: D as marked, H = (D - d) / 2. A size
    by its width in inches, or a metric one without aspect that is no radial, does not tell it."""
    rim = marking.rim_code * INCH
    if marking.overall is not None:
        height = (marking.overall - rim) / 2
        return Size(marking.overall, height, 100 * height / marking.width, "from_diameter")
    if marking.aspect is not None:
        aspect, source = float(marking.aspect), "marked"
    elif marking.form == "metric_without_aspect" and CONSTRUCTIONS[marking.structure] == "radial":
        aspect, source = assumed_aspect, "assumed"
    else:
        return None
    height = aspect / 100 * marking.width
    return Size(rim + 2 * height, height, aspect, source)


# --- tyre --------------------------------------------------------------------------------------

def draw_tyre(draw: Draw) -> dict:
    """A marking with what may be known beside it."""
    inputs: dict = {"designation": draw_marking(draw, (*COMPUTABLE, "inch_width"))}
    indices = MARKINGS[inputs["designation"]].indices
    draw.sometimes(inputs, "diameter", lambda: draw.quantity(500, 1000, "mm"), 0.3)
    if draw.chance(0.3):
        inputs["measuring_rim_width"] = draw.quantity(127, 228, "mm", 3)
        inputs["rim_width"] = draw.quantity(140, 226, "mm", 3)
    if draw.chance(0.5):
        draw_pressure(draw, inputs, indices)
    if draw.chance(0.3):
        inputs["cold_pressure"] = draw.quantity(1, 5, "bar", 3)
        inputs["hot_temperature"] = draw.quantity(-10, 90, "K", 3)
        draw.sometimes(inputs, "cold_temperature", lambda: draw.quantity(-20, 40, "K", 3))
    options: dict = {}
    draw.sometimes(options, "assumed_aspect", lambda: draw.number(60, 100, 3), 0.3)
    draw.sometimes(options, "ambient_pressure", lambda: draw.quantity(0.8, 1.1, "bar"), 0.3)
    if options:
        inputs["options"] = options
    return inputs


def draw_pressure(draw: Draw, inputs: dict, indices: tuple[int, ...]) -> None:
    """Load over pressure, below the reference."""
    inputs["reference_pressure"] = draw.quantity(3, 6, "bar", 3)
    if not indices or draw.chance(0.3):
        inputs["reference_load"] = draw.quantity(700, 1500, "kg")
    most = read(inputs["reference_load"], "kg") if "reference_load" in inputs else \
        LOADS[indices[0] - 70]
    draw.sometimes(inputs, "pressure", lambda: draw.quantity(0.8, 3, "bar", 3), 0.7)
    draw.sometimes(inputs, "load", lambda: draw.quantity(150, min(most, 700) * 0.999, "kg"), 0.7)


def tyre(inputs: dict) -> dict:
    """Everything the marking tells, and pressures: load over pressure to the power 0.8 (test
    pressure clause of UN R117, from memory), constant volume for the temperature."""
    marking = MARKINGS[inputs["designation"]]
    options = inputs.get("options", {})
    construction = CONSTRUCTIONS[marking.structure]
    result: dict = {"form": marking.form, "construction": construction,
                    "section_width": Quantity(marking.width, "mm"),
                    "rim_diameter": Quantity(marking.rim_code * INCH, "mm")}
    if marking.symbol:
        result |= {"speed_symbol": marking.symbol,
                   "top_speed": Quantity(SPEEDS[marking.symbol], "km/h")}
    if marking.plies:
        result["ply_rating"] = marking.plies
    if marking.marks:
        result["marks"] = marking.marks
    result |= dimensions(inputs, marking, size_of(marking, options.get("assumed_aspect", 82.0)))
    if marking.indices:
        result |= {"load_index": marking.indices[0],
                   "load_of_index": Quantity(LOADS[marking.indices[0] - 70], "kg")}
    if len(marking.indices) > 1:
        result |= {"load_index_dual": marking.indices[1],
                   "load_of_index_dual": Quantity(LOADS[marking.indices[1] - 70], "kg")}
    return result | pressures(inputs, marking)


def dimensions(inputs: dict, marking: Marking, size: Size | None) -> dict:
    """Sizes in mm; new metric radials measure d + 2 H 0.97 to d + 2 H 1.04 (UN R30)."""
    result: dict = {}
    if size:
        result |= {"aspect": size.aspect, "aspect_from": size.aspect_from,
                   "nominal_diameter": Quantity(size.diameter, "mm"),
                   "section_height": Quantity(size.height, "mm")}
        if marking.form.startswith("metric") and CONSTRUCTIONS[marking.structure] == "radial":
            rim = marking.rim_code * INCH
            result |= {"least_diameter": Quantity(rim + 2 * size.height * 0.97, "mm"),
                       "most_diameter": Quantity(rim + 2 * size.height * 1.04, "mm")}
    if "diameter" in inputs:
        result |= {"diameter": Quantity(read(inputs["diameter"], "mm"), "mm"),
                   "diameter_from": "measured"}
    elif size:
        result |= {"diameter": Quantity(size.diameter, "mm"), "diameter_from": "designation"}
    else:
        result["diameter_from"] = "not_computable"
    if "rim_width" in inputs:
        wider = read(inputs["rim_width"], "mm") - read(inputs["measuring_rim_width"], "mm")
        result["width_on_rim"] = Quantity(marking.width + 0.4 * wider, "mm")
    return result


def pressures(inputs: dict, marking: Marking) -> dict:
    """Q = Qref (P/Pref)^0.8 and back; (P + Pa)/T constant."""
    result = {}
    if "reference_pressure" in inputs:
        reference = read(inputs["reference_pressure"], "bar")
        load = read(inputs["reference_load"], "kg") if "reference_load" in inputs else \
            LOADS[marking.indices[0] - 70]
        if "pressure" in inputs:
            result["load_at_pressure"] = Quantity(
                load * (read(inputs["pressure"], "bar") / reference) ** 0.8, "kg")
        if "load" in inputs:
            result["pressure_for_load"] = Quantity(
                reference * (read(inputs["load"], "kg") / load) ** 1.25, "bar")
    if "cold_pressure" in inputs:
        air = read_or(inputs.get("options", {}), "ambient_pressure", "bar", 1.01325)
        cold = 273.15 + read_or(inputs, "cold_temperature", "K", 20.0)
        hot = 273.15 + read(inputs["hot_temperature"], "K")
        result["hot_pressure"] = Quantity(
            (read(inputs["cold_pressure"], "bar") + air) * hot / cold - air, "bar")
    return result


# --- the way a wheel rolls ---------------------------------------------------------------------

FACTORS = {"geometric": math.pi, "dynamic_radial": 3.05, "dynamic_diagonal": 2.99}


def draw_rolling(draw: Draw, inputs: dict, options: dict) -> None:
    """One of the four ways to know the circumference."""
    way = draw.choice(("tyre_on", "diameter", "static_radius", "roll_out"))
    if way == "tyre_on":
        inputs[way] = draw_marking(draw, COMPUTABLE)
        draw.sometimes(inputs, "tread_worn", lambda: draw.quantity(0, 10, "mm", 2))
        draw.sometimes(options, "assumed_aspect", lambda: draw.number(60, 100, 3), 0.3)
    elif way == "diameter":
        inputs[way] = draw.quantity(500, 1000, "mm")
    elif way == "static_radius":
        inputs[way] = draw.quantity(250, 500, "mm")
    else:
        inputs["turns"] = draw.whole(1, 6)
        inputs[way] = draw.quantity(1600.0 * inputs["turns"], 3000.0 * inputs["turns"], "mm")
    if way in ("tyre_on", "diameter"):
        draw.sometimes(options, "convention", lambda: draw.choice(sorted(FACTORS)), 0.3)
    draw.sometimes(options, "circumference_uncertainty", lambda: draw.number(0.001, 0.1, 2), 0.3)


@dataclass(frozen=True)
class Rolling:
    """A circumference in mm with its relative standard uncertainty; standing or at 60 km/h."""

    circumference: float
    relative: float
    known_at: float  # km/h

    def at(self, speed: float, growth: bool) -> float:
        """C(v) = C60 (1 + (v - 60)/10000), v in km/h (WdK, as quoted)."""
        if not growth:
            return self.circumference
        return self.at_sixty() * (1 + (speed - 60) / 10000)

    def at_sixty(self) -> float:
        """What was measured standing counts as C at 0 km/h."""
        return self.circumference / (1 + (self.known_at - 60) / 10000)


def by_diameter(diameter: float, structure: str, options: dict) -> Rolling:
    """C = factor x D at 60 km/h: pi, 3.05 or 2.99 (ETRTO, as quoted)."""
    construction = CONSTRUCTIONS[structure]
    usual = "dynamic_diagonal" if construction == "diagonal" else "dynamic_radial"
    convention = options.get("convention", usual)
    return Rolling(FACTORS[convention] * diameter, options.get("circumference_uncertainty", 0.015),
                   60)


def marked_rolling(text: str, worn: float, options: dict) -> Rolling:
    """Of a marked size; worn tread takes twice its depth off the diameter."""
    marking = MARKINGS[text]
    diameter = size_of(marking, options.get("assumed_aspect", 82.0)).diameter - 2 * worn
    return by_diameter(diameter, marking.structure, options)


def rolling_of(inputs: dict, options: dict) -> Rolling:
    """By marking, diameter, static radius (C = 2 pi SLR) or roll-out."""
    if "tyre_on" in inputs:
        return marked_rolling(inputs["tyre_on"], read_or(inputs, "tread_worn", "mm", 0), options)
    if "diameter" in inputs:
        return by_diameter(read(inputs["diameter"], "mm"), "R", options)
    if "static_radius" in inputs:
        return Rolling(2 * math.pi * read(inputs["static_radius"], "mm"),
                       options.get("circumference_uncertainty", 0.015), 0)
    return Rolling(read(inputs["roll_out"], "mm") / inputs.get("turns", 1),
                   options.get("circumference_uncertainty", 0.003), 0)


# --- wheel-frequency ---------------------------------------------------------------------------

def draw_wheel_frequency(draw: Draw) -> dict:
    """Speeds, frequencies or both."""
    inputs: dict = {}
    options: dict = {}
    draw_rolling(draw, inputs, options)
    if draw.chance(0.3):
        inputs["built_with_tyre"] = draw_marking(draw, COMPUTABLE)
        draw.sometimes(inputs, "speed_from", lambda: draw.choice(("true", "dial", "dial")), 0.8)
    what = draw.choice(("speeds", "frequencies", "both"))
    if what != "frequencies":
        inputs["speeds"] = [draw.quantity(0, 200, "km/h", 3) for _ in range(draw.whole(1, 3))]
        draw.sometimes(inputs, "speed_uncertainty", lambda: draw.quantity(0, 5, "km/h", 2))
    if what != "speeds":
        inputs["frequencies"] = [draw.quantity(0, 25, "Hz", 3) for _ in range(draw.whole(1, 3))]
        draw.sometimes(inputs, "frequency_uncertainty", lambda: draw.quantity(0, 1, "Hz", 2))
    draw.sometimes(inputs, "final_drive", lambda: draw.number(2.5, 6, 3), 0.4)
    draw.sometimes(options, "orders", lambda: draw.whole(1, 6))
    if inputs.get("speed_from") != "dial":
        draw.sometimes(options, "speed_growth", lambda: draw.choice(("none", "linear")), 0.4)
    if options:
        inputs["options"] = options
    return inputs


def multiples_of(inputs: dict) -> list[tuple[str, float]]:
    """Orders of the wheel, and the prop shaft by the final drive."""
    orders = inputs.get("options", {}).get("orders", 3)
    multiples = [("order", float(order)) for order in range(1, orders + 1)]
    if "final_drive" in inputs:
        multiples.append(("prop_shaft", inputs["final_drive"]))
    return multiples


def grouped(multiples: list[tuple[str, float]], rows: list[dict]) -> dict:
    """As the program arranges them."""
    result: dict = {"orders": []}
    for (kind, multiple), row in zip(multiples, rows):
        if kind == "order":
            result["orders"].append({"order": int(multiple)} | row)
        else:
            result["prop_shaft"] = row
    return result


def wheel_frequency(inputs: dict) -> dict:
    """f = m v / C and v = f C / m; a dial counts turns for the tyre the vehicle was built with, so
    there C is that tyre's. u by JCGM 100 5.1.6, as a product."""
    options = inputs.get("options", {})
    on = rolling_of(inputs, options)
    result: dict = {"circumference": Quantity(on.circumference, "mm"),
                    "standard_uncertainty": Quantity(on.circumference * on.relative, "mm"),
                    "dynamic_radius": Quantity(on.circumference / (2 * math.pi), "mm"),
                    "turns_per_kilometre": 1e6 / on.circumference}
    growth = options.get("speed_growth") == "linear"
    dial = inputs.get("speed_from") == "dial"
    resting = on
    if "built_with_tyre" in inputs:
        # A stated uncertainty is that of the tyre on.
        built = marked_rolling(inputs["built_with_tyre"], 0.0, {
            name: value for name, value in options.items() if name != "circumference_uncertainty"})
        result["true_over_dial"] = on.circumference / built.circumference
        if dial:
            resting = built
    if "speeds" in inputs:
        result["at_speeds"] = [
            at_speed(inputs, read(typed, "km/h"), resting, growth, result if dial else {})
            for typed in inputs["speeds"]]
    if "frequencies" in inputs:
        result["at_frequencies"] = [at_frequency(inputs, read(typed, "Hz"), resting, growth)
                                    for typed in inputs["frequencies"]]
    return result


def at_speed(inputs: dict, speed: float, rolling: Rolling, growth: bool, dial: dict) -> dict:
    """The frequencies at one speed (km/h; mm)."""
    around = rolling.at(speed, growth)
    u_speed = read_or(inputs, "speed_uncertainty", "km/h", 0)
    rows = []
    for _, multiple in multiples_of(inputs):
        per_speed = multiple / around / 3.6 * 1000
        u = per_speed * math.hypot(u_speed, speed * rolling.relative)
        rows.append({"frequency": Quantity(per_speed * speed, "Hz"),
                     "standard_uncertainty": Quantity(u, "Hz")})
    result = {"speed": Quantity(speed, "km/h"), "circumference": Quantity(around, "mm")}
    if dial:
        result["true_speed"] = Quantity(speed * dial["true_over_dial"], "km/h")
    return result | grouped(multiples_of(inputs), rows)


def at_frequency(inputs: dict, frequency: float, rolling: Rolling, growth: bool) -> dict:
    """The speeds for one frequency. With growth v = k (1 + (v - 60)/10000), k = f C60 / m, solved
    for v; beyond 300 km/h it grows no more."""
    u_frequency = read_or(inputs, "frequency_uncertainty", "Hz", 0)
    rows = []
    for _, multiple in multiples_of(inputs):
        per_hertz = rolling.circumference * 3.6 / 1000 / multiple
        if growth:
            at_sixty = rolling.at_sixty() * 3.6 / 1000 / multiple
            speed = frequency * at_sixty * (1 - 0.006) / (1 - frequency * at_sixty / 10000)
            per_hertz = rolling.at(min(speed, 300.0), True) * 3.6 / 1000 / multiple
        speed = frequency * per_hertz
        u = per_hertz * math.hypot(u_frequency, frequency * rolling.relative)
        rows.append({"speed": Quantity(speed, "km/h"),
                     "standard_uncertainty": Quantity(u, "km/h")})
    return {"frequency": Quantity(frequency, "Hz")} | grouped(multiples_of(inputs), rows)


CALCULATIONS = (
    Calculation("tyre", draw_tyre, tyre),
    Calculation("wheel-frequency", draw_wheel_frequency, wheel_frequency),
)
