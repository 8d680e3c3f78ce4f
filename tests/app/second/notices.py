# SPDX-License-Identifier: GPL-3.0-or-later
"""Does the comparison notice? Each figure and word of some answers is changed by a little, one at a
time, and the second implementation has to disagree with every answer so changed.

    notices.py --program build/release/app/swivelwright
"""

import argparse
import copy
import sys
from collections.abc import Iterator

import run

INPUTS = 10  # of each calculation
FEWER = {"shim-pack": 2}  # a table of hundreds of figures each
CHANGE = 1e-5  # relative: far more than the tolerance of a closed form
ROUGH = {"shim-pack": 0.2}  # a mixture, compared by its probabilities
NOT_COMPARED = {"text", "where", "read_as", "advice"}  # words for people


def leaves(value: object, path: tuple = ()) -> Iterator[tuple]:
    """The paths to all figures and words of a result."""
    if isinstance(value, dict):
        for name, each in value.items():
            if name not in NOT_COMPARED:
                yield from leaves(each, (*path, name))
    elif isinstance(value, list):
        for index, each in enumerate(value):
            yield from leaves(each, (*path, index))
    else:
        yield path


def changed(value: object, share: float) -> object:
    """Another value that is near to it."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return value + 1
    if isinstance(value, float):
        return value * (1 + share) if value else share
    number, _, unit = str(value).partition(" ")
    try:
        figure = float(number)
    except ValueError:
        return f"{value}x"
    return f"{figure * (1 + share) if figure else share!r} {unit}"


def with_change(answer: dict, path: tuple, share: float) -> dict:
    """The answer with one leaf changed."""
    other = copy.deepcopy(answer)
    place = other["result"]
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = changed(place[path[-1]], share)
    return other


def unnoticed(calculation, program) -> tuple[int, set[str]]:
    """How many changes were tried, and the fields of those that nobody noticed."""
    from compare import Comparison
    from draw import Draw
    draw, tried, missed = Draw("notices " + calculation.name), 0, {}
    for _ in range(FEWER.get(calculation.name, INPUTS)):
        inputs = calculation.draw(draw)
        answer = program.ask(calculation.name, inputs)
        if "error" in answer:
            continue
        expected = run.expected_of(calculation, inputs)
        for path in leaves(answer["result"]):
            name = "/".join(str(step) for step in path if isinstance(step, str))
            other = with_change(answer, path, ROUGH.get(calculation.name, CHANGE))
            tried += 1
            noticed = run.disagreements(expected, other, Comparison())
            seen, total = missed.get(name, (0, 0))
            missed[name] = (seen + bool(noticed), total + 1)
    # A figure may round to the same answer, or lie where any will do, but not always.
    return tried, {name for name, (seen, _) in missed.items() if not seen}


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", required=True)
    parser.add_argument("names", nargs="*")
    options = parser.parse_args()
    if not run.scipy_is_there():
        return run.status_without_scipy()
    from program import Program
    good = True
    with Program(options.program) as program:
        for calculation in run.calculations(options.names):
            tried, missed = unnoticed(calculation, program)
            print(f"{calculation.name}: {tried} changes, unnoticed in {sorted(missed) or 'none'}",
                  flush=True)
            good &= tried > 0 and not missed
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
