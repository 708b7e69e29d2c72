"""A measured spectrum of a surface: a small CSV file beside a table, named in one of its rows."""

import csv

from tipsight.errors import Mistake, Mistakes

COLUMNS = ("wavelength_nm", "reflectance")
FROM_NM, TO_NM, WIDEST_NM = 400.0, 700.0, 20.0
"""What it has to cover, and how far apart its points may be (judgement)."""
EXAMPLE = "400,0.04"
Points = tuple[tuple[float, float], ...]


def points(text: str, where: str) -> Points:
    """Return wavelength [nm] and reflectance [-] of each line of a file.

    Raises Mistakes with the first that is wrong, by line: no header, no number, wavelengths that do
    not rise, too few, too far apart, or a reflectance outside 0 to 1.
    """
    lines = [
        (number, [cell.strip() for cell in next(csv.reader([line]))])
        for number, line in enumerate(text.splitlines(), 1)
        if line.strip(', "\t') and not line.lstrip('"').startswith("#")
    ]

    def wrong(at: int, said: str, allowed: str) -> Mistakes:
        return Mistakes([Mistake(f"{where}, line {at}", said, allowed, EXAMPLE)])

    if not lines or tuple(lines[0][1]) != COLUMNS:
        raise wrong(1, "", f"the columns are {' and '.join(COLUMNS)}")
    found: list[tuple[float, float]] = []
    for at, cells in lines[1:]:
        try:
            nm, share = (float(cell) for cell in cells)
        except ValueError:
            raise wrong(at, ", ".join(cells), "two numbers are wanted") from None
        if not 0.0 <= share <= 1.0:
            allowed = "a surface gives back 0 to 1 of its light; what gives more glows"
            raise wrong(at, f"{share:g}", allowed)
        if found and not found[-1][0] < nm <= found[-1][0] + WIDEST_NM:
            raise wrong(at, f"{nm:g}", f"wavelengths rise, by {WIDEST_NM:g} nm at the most")
        if not found and nm > FROM_NM:
            raise wrong(at, f"{nm:g}", f"it begins at {FROM_NM:g} nm at the latest")
        found.append((nm, share))
    if not found or found[-1][0] < TO_NM:
        last = f"{found[-1][0]:g}" if found else ""
        raise wrong(lines[-1][0], last, f"it goes to {TO_NM:g} nm at the least")
    return tuple(found)
