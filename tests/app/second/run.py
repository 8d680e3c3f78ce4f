# SPDX-License-Identifier: GPL-3.0-or-later
"""Asks the program and its second implementation the same questions and compares the answers.

    run.py --program build/release/app/swivelwright [--count N] [SUBJECT or CALCULATION ...]

Prints a line a calculation and ends with status 1 on any disagreement, 2 where SciPy is missing
(0 instead where SW_ALLOW_NO_SCIPY=1 is set).
"""

import argparse
import importlib
import json
import os
import sys

sys.dont_write_bytecode = True

SUBJECTS = ("measuring", "swivel", "shim_pack", "brakes", "bearings", "bolts", "wheels", "geometry",
            "support")
SHOWN = 3  # disagreements of one calculation that are printed in full
REFUSALS = 20  # refused inputs allowed for each valid one


def scipy_is_there() -> bool:
    """Whether SciPy can be used; says so where it cannot."""
    try:
        importlib.import_module("scipy.special")
        return True
    except ImportError as error:
        print(f"the second implementation needs /usr/bin/python3 with SciPy (Debian package "
              f"python3-scipy): {error}", file=sys.stderr)
        return False


def status_without_scipy() -> int:
    """A failure, unless the environment says that it may be missing."""
    return 0 if os.environ.get("SW_ALLOW_NO_SCIPY") == "1" else 2


def calculations(names: list[str]) -> list:
    """Those of these names or subjects; all when there are none."""
    return [calculation for subject in SUBJECTS
            for calculation in importlib.import_module(subject).CALCULATIONS
            if not names or subject in names or calculation.name in names]


def expected_of(calculation, inputs):
    """What the second implementation says: an Expected, or the Refused that it raises."""
    from compare import Expected, Refused
    try:
        expected = calculation.expected(inputs)
    except Refused as refusal:
        return refusal
    return expected if isinstance(expected, Expected) else Expected(expected)


def disagreements(expected, answer, comparison) -> list[str] | None:
    """What differs; None where both refuse the input."""
    from compare import Refused
    if isinstance(expected, Refused):
        code = answer.get("error", {}).get("code")
        return None if code == str(expected) else [f"expected the error {expected}, got {answer}"]
    if "error" in answer:
        return [f"refused: {answer['error']}"]
    return comparison.differences(expected, answer)


def report(inputs: dict, found: list[str]) -> None:
    """One disagreement, with the input that shows it."""
    print("  input " + json.dumps(inputs, ensure_ascii=False))
    for line in found[:8]:
        print("    " + line)


def agrees(calculation, program, count: int | None) -> bool:
    """Runs one calculation; prints its line."""
    from compare import Comparison
    from draw import Draw
    wanted = calculation.count if count is None else count
    draw, comparison = Draw(calculation.name), Comparison()
    valid = good = refused = 0
    while valid < wanted and refused <= REFUSALS * wanted:
        inputs = calculation.draw(draw)
        answer = program.ask(calculation.name, inputs)
        found = disagreements(expected_of(calculation, inputs), answer, comparison)
        if found is None:
            refused += 1
            continue
        valid += 1
        good += not found
        if found and valid - good <= SHOWN:
            report(inputs, found)
    worst = comparison.deviation
    extra = f", {refused} refused alike" if refused else ""
    print(f"{calculation.name}: {good} of {valid} agree, worst {worst.worst:.1e} in {worst.where}"
          f"{extra}", flush=True)
    return good == valid == wanted


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", required=True)
    parser.add_argument("--count", type=int)
    parser.add_argument("names", nargs="*", help="subjects or calculations; all when absent")
    options = parser.parse_args()
    if not scipy_is_there():
        return status_without_scipy()
    from program import Program
    chosen = calculations(options.names)
    if not chosen:
        parser.error("no calculation of these names")
    with Program(options.program) as program:
        results = [agrees(calculation, program, options.count) for calculation in chosen]
    return 0 if all(results) else 1


if __name__ == "__main__":
    sys.exit(main())
