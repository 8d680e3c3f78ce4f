# SPDX-License-Identifier: GPL-3.0-or-later
"""Shim packs that can be made, counted by brute force."""

import itertools
from dataclasses import dataclass

from compare import Quantity
from draw import Draw
from units import read


@dataclass(frozen=True)
class Pack:
    """Shims in mm, thickest first."""

    shims: tuple[float, ...]

    @property
    def total(self) -> float:
        """Clean and flat shims add up."""
        return sum(self.shims)

    def written(self) -> dict:
        """As the program writes it."""
        return {"pack": Quantity(self.total, "mm"), "count": len(self.shims),
                "shims": [Quantity(shim, "mm") for shim in self.shims]}


def draw_stock(draw: Draw) -> dict:
    """Two to four sizes on hand."""
    sizes = draw.random.sample(("0.05 mm", "0.1 mm", "0.15 mm", "0.2 mm", "0.35 mm", "0.5 mm",
                                "3 thou", "5 thou", "0.01 in"), draw.whole(2, 4))
    shims = []
    for size in sizes:
        shim: dict = {"thickness": size}
        draw.sometimes(shim, "on_hand", lambda: draw.whole(1, 4))
        shims.append(shim)
    stock: dict = {"shims": shims, "max_count": draw.whole(2, 4)}
    draw.sometimes(stock, "max_pack", lambda: draw.choice(("1 mm", "0.85 mm", "0.04 in")), 0.6)
    return stock


def makeable(inputs: dict) -> list[Pack]:
    """Every selection of at least one shim; totals alike to a micrometre are one pack, made of the
    fewest shims, of these of the thickest. Thinnest first."""
    most = inputs["max_count"]
    sizes = [read(shim["thickness"], "mm") for shim in inputs["shims"]]
    limits = [min(most, shim.get("on_hand", most)) for shim in inputs["shims"]]
    thickest = read(inputs["max_pack"], "mm") if "max_pack" in inputs else 1e9
    best: dict[int, Pack] = {}
    for counts in itertools.product(*(range(limit + 1) for limit in limits)):
        if not 0 < sum(counts) <= most:
            continue
        pack = Pack(tuple(sorted((size for size, count in zip(sizes, counts)
                                  for _ in range(count)), reverse=True)))
        if pack.total > thickest + 1e-6:
            continue
        key = round(pack.total * 1000)
        if key not in best or rank(pack) < rank(best[key]):
            best[key] = pack
    return [best[key] for key in sorted(best)]


def rank(pack: Pack) -> tuple:
    """Fewest shims, then the thickest."""
    return (len(pack.shims), tuple(-shim for shim in pack.shims))
