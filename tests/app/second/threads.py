# SPDX-License-Identifier: GPL-3.0-or-later
"""Screw threads: series, profile and strength.

Profile: ISO 68-1, ISO 724, ISO 898-1, ASME B1.1. Series: ISO 261 and ASME B1.1, from memory.
Strength: ISO 898-1:2013; SAE J429 in ksi, 1 ksi = 6.894757293... MPa.
"""

import math
from dataclasses import dataclass

from compare import Quantity
from draw import Draw
from units import INCH, POUND_FORCE

# Coarse pitch first.
METRIC = {2: (0.4, 0.25), 2.5: (0.45, 0.35), 3: (0.5, 0.35), 4: (0.7, 0.5), 5: (0.8, 0.5),
          6: (1, 0.75), 7: (1, 0.75), 8: (1.25, 1, 0.75), 9: (1.25, 1, 0.75),
          10: (1.5, 1.25, 1, 0.75), 11: (1.5, 1, 0.75), 12: (1.75, 1.5, 1.25, 1),
          14: (2, 1.5, 1.25, 1), 16: (2, 1.5, 1), 18: (2.5, 2, 1.5, 1), 20: (2.5, 2, 1.5, 1),
          22: (2.5, 2, 1.5, 1), 24: (3, 2, 1.5, 1), 27: (3, 2, 1.5, 1), 30: (3.5, 3, 2, 1.5, 1),
          33: (3.5, 3, 2, 1.5), 36: (4, 3, 2, 1.5), 39: (4, 3, 2, 1.5)}
# Size, diameter in inches, threads an inch: UNC, UNF.
UNIFIED = (("#0", 0.06, 0, 80), ("#1", 0.073, 64, 72), ("#2", 0.086, 56, 64), ("#3", 0.099, 48, 56),
           ("#4", 0.112, 40, 48), ("#5", 0.125, 40, 44), ("#6", 0.138, 32, 40),
           ("#8", 0.164, 32, 36), ("#10", 0.19, 24, 32), ("#12", 0.216, 24, 28),
           ("1/4", 1 / 4, 20, 28), ("5/16", 5 / 16, 18, 24), ("3/8", 3 / 8, 16, 24),
           ("7/16", 7 / 16, 14, 20), ("1/2", 1 / 2, 13, 20), ("9/16", 9 / 16, 12, 18),
           ("5/8", 5 / 8, 11, 18), ("3/4", 3 / 4, 10, 16), ("7/8", 7 / 8, 9, 14), ("1", 1, 8, 12),
           ("1-1/8", 9 / 8, 7, 12), ("1-1/4", 5 / 4, 7, 12), ("1-3/8", 11 / 8, 6, 12),
           ("1-1/2", 3 / 2, 6, 12))


@dataclass(frozen=True)
class Thread:
    """Nominal sizes in mm."""

    name: str
    metric: bool
    diameter: float
    pitch: float
    series: str = ""  # "coarse_series" or "fine_series"

    @property
    def pitch_diameter(self) -> float:
        """d2 = d - 3/4 H, H = sqrt(3)/2 P."""
        return self.diameter - 3 / 4 * self._height

    @property
    def nut_minor(self) -> float:
        """D1 = d - 5/4 H."""
        return self.diameter - 5 / 4 * self._height

    @property
    def root(self) -> float:
        """d3 = d - 17/12 H of ISO 898-1; UNR root d - 1.190785 P of ASME B1.1."""
        if self.metric:
            return self.diameter - 17 / 12 * self._height
        return self.diameter - 1.190785 * self.pitch

    @property
    def stress_diameter(self) -> float:
        """(d2 + d3)/2; inch: d - 9 sqrt(3)/16 P."""
        if self.metric:
            return (self.pitch_diameter + self.root) / 2
        return self.diameter - 9 * math.sqrt(3) / 16 * self.pitch

    @property
    def stress_area(self) -> float:
        """A circle of that diameter."""
        return math.pi / 4 * self.stress_diameter**2

    @property
    def _height(self) -> float:
        return math.sqrt(3) / 2 * self.pitch


def all_threads() -> list[Thread]:
    """The series, metric before inch, each size with its coarse pitch first."""
    threads = [Thread(f"M{d:g}x{p:g}", True, float(d), float(p),
                      "coarse_series" if p == pitches[0] else "fine_series")
               for d, pitches in METRIC.items() for p in pitches]
    for size, diameter, coarse, fine in UNIFIED:
        for count, series, word in ((coarse, "coarse_series", "UNC"), (fine, "fine_series", "UNF")):
            if count:
                threads.append(Thread(f"{size}-{count} {word}", False, diameter * INCH,
                                      INCH / count, series))
    return threads


ALL = all_threads()


@dataclass(frozen=True)
class Written:
    """A thread, and whether its pitch was written or looked up."""

    thread: Thread
    pitch_from: str


WRITTEN: dict[str, Written] = {}


def draw_thread(draw: Draw, largest: float = 40.0) -> str:
    """A thread as people write it; what it means is kept under the text."""
    thread = draw.choice([each for each in ALL if 3 <= each.diameter <= largest])
    if thread.metric and draw.chance(0.1):
        pitch = draw.choice((0.9, 1.1, 1.4))
        if thread.diameter / 12 <= pitch <= thread.diameter / 5:
            name = f"M{thread.diameter:g}x{pitch:g}"
            thread = next((each for each in ALL if each.name == name),
                          Thread(name, True, thread.diameter, pitch))
    text, pitch_from = draw_spelling(draw, thread)
    WRITTEN[text] = Written(thread, pitch_from)
    return text


def draw_spelling(draw: Draw, thread: Thread) -> tuple[str, str]:
    """One of the usual spellings."""
    if thread.metric:
        size, pitch = thread.name[1:].split("x")
        if thread.series == "coarse_series" and draw.chance(0.3):
            return f"M{size}", "coarse_series"
        spelling = draw.choice(("M{}x{}", "M{} x {}", "M{}-{}", "M{}x{}-6g"))
        pitch = pitch.replace(".", ",") if draw.chance(0.1) else pitch
        return spelling.format(size, pitch), "designation"
    size, word = thread.name.split(" ")
    if draw.chance(0.2):
        return f"{size.rpartition('-')[0]} {word}", thread.series
    return draw.choice((thread.name, size, thread.name + "-2A")), "designation"


def look_alikes(thread: Thread) -> list[dict]:
    """Of another size of the series, the diameter within 7 % and the pitch within 15 % of the
    smaller (common practice, no source); how deep the smaller bolt sits in the larger nut."""
    rows = []
    for other in ALL:
        if other.metric == thread.metric and abs(other.diameter - thread.diameter) < 1e-3:
            continue
        wide = abs(other.diameter - thread.diameter) <= 0.07 * min(other.diameter, thread.diameter)
        near = abs(other.pitch - thread.pitch) <= 0.15 * min(other.pitch, thread.pitch)
        if not (wide and near):
            continue
        bolt, nut = sorted((thread, other), key=lambda each: each.diameter)
        depth = (bolt.diameter - nut.nut_minor) / (nut.diameter - nut.nut_minor)
        rows.append({"thread": other.name,
                     "diameter_difference": Quantity(other.diameter - thread.diameter, "mm",
                                                     absolute=1e-9),
                     "pitch_difference": Quantity(other.pitch - thread.pitch, "mm", absolute=1e-9),
                     "engaged_depth": max(0.0, depth)})
    return rows


# --- strength ----------------------------------------------------------------------------------

# Rm, yield, proof in MPa: ISO 898-1:2013. 8.8 splits above 16 mm; 9.8 goes to 16 mm.
ISO_CLASSES = {"4.6": (400, 240, 225), "4.8": (420, 340, 310), "5.6": (500, 300, 280),
               "5.8": (520, 420, 380), "6.8": (600, 480, 440), "8.8": (800, 640, 580),
               "9.8": (900, 720, 650), "10.9": (1040, 940, 830), "12.9": (1220, 1100, 970)}
KSI = 1000 * POUND_FORCE / INCH**2  # MPa
SAE_GRADES = {"grade_2": (74, 57, 55), "grade_5": (120, 92, 85), "grade_8": (150, 130, 120)}


def draw_class(draw: Draw, thread: Thread) -> str:
    """A class that there is for this size: SAE J429 begins at 1/4 in, grade 2 ends at 3/4 in."""
    if not thread.metric and thread.diameter > 6.3 and draw.chance(0.8):
        return draw.choice([name for name in SAE_GRADES
                            if name != "grade_2" or thread.diameter <= 19.06])
    return draw.choice([name for name in ISO_CLASSES if name != "9.8" or thread.diameter <= 16])


def strength(name: str, diameter: float) -> tuple[float, float, float]:
    """Rm, yield, proof in MPa."""
    if name == "8.8" and diameter > 16:
        return 830, 660, 600
    if name in ISO_CLASSES:
        return ISO_CLASSES[name]
    if name == "grade_5" and diameter > INCH * (1 + 1e-9):
        return 105 * KSI, 81 * KSI, 74 * KSI
    tensile, yielding, proof = SAE_GRADES[name]
    return tensile * KSI, yielding * KSI, proof * KSI


# --- the calculation ---------------------------------------------------------------------------

def draw_thread_input(draw: Draw) -> dict:
    """A thread with or without a class."""
    inputs = {"thread": draw_thread(draw)}
    thread = WRITTEN[inputs["thread"]].thread
    draw.sometimes(inputs, "strength_class", lambda: draw_class(draw, thread), 0.7)
    return inputs


def thread_result(inputs: dict) -> dict:
    """Everything the profile and the class say."""
    written = WRITTEN[inputs["thread"]]
    thread = written.thread
    result: dict = {
        "thread": thread.name, "standard": "iso_metric" if thread.metric else "unified_inch",
        "pitch_from": written.pitch_from, "diameter": Quantity(thread.diameter, "mm"),
        "pitch": Quantity(thread.pitch, "mm"),
        "pitch_diameter": Quantity(thread.pitch_diameter, "mm"),
        "nut_minor_diameter": Quantity(thread.nut_minor, "mm"),
        "root_diameter": Quantity(thread.root, "mm"),
        "stress_diameter": Quantity(thread.stress_diameter, "mm"),
        "stress_area": Quantity(thread.stress_area, "mm2"), "look_alikes": look_alikes(thread)}
    if not thread.metric:
        result["threads_per_inch"] = INCH / thread.pitch
    if "strength_class" in inputs:
        tensile, yielding, proof = strength(inputs["strength_class"], thread.diameter)
        result |= {"tensile_strength": Quantity(tensile, "MPa"),
                   "yield_strength": Quantity(yielding, "MPa"),
                   "proof_stress": Quantity(proof, "MPa"),
                   "proof_load": Quantity(proof * thread.stress_area, "N"),
                   "breaking_load": Quantity(tensile * thread.stress_area, "N")}
    return result


