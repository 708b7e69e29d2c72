"""Fit a paint's row to a standard's colour box again: ``python tests/benchmark/fit_paint.py yellow``.

Moves the numbers of a packaged row (low, step, edge, width; of a fluorescent one its yield and
where it glows) until the colour in daylight stands deep in the box and as bright as the standard
asks, and prints the row beside the packaged one. Nothing is written: look, then edit paints.csv.
"""

import argparse
import sys
import tempfile
from pathlib import Path

import numpy as np
from scipy.optimize import minimize

ROOT = Path(__file__).parents[2]
sys.path += [str(ROOT / "tests" / "helpers"), str(ROOT / "tests" / "published")]
PLAIN = ("low", "step", "edge_nm", "width_nm")
GLOWING = ("quantum_yield", "glow_nm")
SCALE = {"low": 0.01, "step": 0.1, "edge_nm": 10.0, "width_nm": 2.0, "quantum_yield": 0.1, "glow_nm": 5.0}


def inward(x: float, y: float, corners: list[tuple[float, float]]) -> float:
    """Return how far a chromaticity stands inside a box, less than nothing outside it."""
    ends = list(zip(corners, corners[1:] + corners[:1], strict=True))
    turn = sum(ax * by - bx * ay for (ax, ay), (bx, by) in ends)
    return min(
        np.sign(turn) * ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / np.hypot(bx - ax, by - ay)
        for (ax, ay), (bx, by) in ends
    )


def main() -> int:
    """Fit one paint, and print what was found."""
    import test_scene_water as published

    from tipsight import tables
    from tipsight.own import paint_row

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("paint", choices=sorted({box[0] for box in published.BOXES}))
    name = parser.parse_args().paint
    boxes = [box for box in published.BOXES if box[0] == name]
    row = dict(tables.row("paints", name, "paint"))
    keys = (*PLAIN, *(GLOWING if row["fluorescent"] else ()))
    start = np.array([row[key] / SCALE[key] for key in keys])

    def worth(at: np.ndarray) -> tuple[float, float, float, float]:
        """Return chromaticity, luminance factor and the least room in any box."""
        cells = {**row, **{key: value * SCALE[key] for key, value in zip(keys, at, strict=True)}}
        with tempfile.TemporaryDirectory() as folder:
            columns = [one for one in tables.SCHEMAS["paints"].columns if one in cells]
            said = [paint_row._cell(_yes_no(cells[one])) for one in columns]
            line = ",".join(f'"{one}"' for one in said)
            (Path(folder) / "paints.csv").write_text(f"{','.join(columns)}\n{line}\n", "utf-8")
            with tables.using(folder):
                xyz = paint_row.in_daylight(name)
        x, y = xyz[:2] / xyz.sum()
        room = min(inward(x, y, corners) for *_, corners in boxes)
        return float(x), float(y), float(xyz[1]), room

    def cost(at: np.ndarray) -> float:
        try:
            _, _, factor, room = worth(at)
        except Exception:  # a row outside the table's limits is no candidate
            return 1e3
        short = max(0.0, max(least for _, _, least, _ in boxes) * 1.02 - factor)
        return 100 * max(0.0, 0.004 - room) + 10 * short + 1e-3 * float(np.sum((at - start) ** 2))

    found = minimize(cost, start, method="Nelder-Mead", options={"maxfev": 300, "xatol": 1e-3})
    for label, at in (("packaged", start), ("fitted", found.x)):
        x, y, factor, room = worth(at)
        cells = ", ".join(f"{k} {v * SCALE[k]:.4g}" for k, v in zip(keys, at, strict=True))
        print(f"{label:9s} x {x:.4f} y {y:.4f} factor {factor:.3f}, {room:+.4f} inside; {cells}")
    return 0


def _yes_no(value: object) -> object:
    return value if not isinstance(value, bool) else "yes" if value else "no"


if __name__ == "__main__":
    raise SystemExit(main())
