"""A paint of one's own: a row for the table of paints, and the file of its spectrum."""

import csv
import io
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Finish
from tipsight.own import colours
from tipsight.scene import paint
from tipsight.scene.spectra import WAVELENGTHS_NM, daylight
from tipsight.tables.schemas import GLOW, NAME, SCHEMAS
from tipsight.tables.spectrum_file import points

Array = NDArray[np.float64]
Glows = Literal["not at all", "a little", "strongly"]

YIELDS: Mapping[Glows, float] = {"not at all": 0.0, "a little": 0.5, "strongly": 1.0}
"""Of the glow of the fluorescent paint of ours that is nearest in colour (judgement)."""
TOLD_DOUBT = 1.5
"""How well (x/÷) contrast is known from a colour alone, or from a glow told in words (judgement)."""
TRIED = (1.0, 0.7, 0.4, 0.2, 1.3, 1.7)
"""Times the glow asked for that are tried, until what is left of the colour is some plain paint's."""
KIN = 2
"""Of our glowing paints, how many of the nearest are tried."""
DAYLIGHT_K = 6504.0
FLAT = {"step": 0.0, "edge_nm": 500.0, "width_nm": 30.0, "bump": 0.0, "centre_nm": 500.0,
        "spread_nm": 30.0}  # fmt: skip
"""The rest of a smooth spectrum that is even: the measured one stands before it."""


@dataclass(frozen=True)
class OwnPaint:
    """A paint of one's own, ready to be written."""

    name: str
    xyz: Array
    """Its colour in daylight, glow and all, as far as that was told."""
    row: Mapping[str, Any]
    spectrum: str
    """The text of the file that the row names."""
    near: str
    """The paint of ours that is nearest in colour."""
    off: float
    """How far that is apart, CIEDE2000."""


def in_daylight(name: str) -> Array:
    """Return the colour of a fresh paint of the tables in daylight, glow included, CIE XYZ."""
    light = daylight(DAYLIGHT_K)
    back = paint.surface(Finish(name)) @ light
    return colours.colour_of(back / np.maximum(light, 1e-12), WAVELENGTHS_NM)


def nearest(xyz: Array, glowing: bool | None = None) -> tuple[str, float]:
    """Return the packaged paint nearest in colour, and how far apart; of glowing ones or others."""
    rows = [r for r in tables.rows("paints") if glowing is None or r["fluorescent"] is glowing]
    apart = [(colours.apart(in_daylight(row["name"]), xyz), row["name"]) for row in rows]
    off, name = min(apart)
    return name, off


def file_of(name: str) -> str:
    """Return the name of the file of a paint's spectrum, which no table has."""
    return f"spectrum-{name.replace(' ', '-')}.csv"


def from_colour(name: str, said: str, glows: Glows = "not at all") -> OwnPaint:
    """Return a paint made from a colour as it was told; see `colours.read`.

    A told colour is what the eye has of the paint in daylight, its glow included; that is the one of the
    nearest fluorescent paint of ours, or half of it, or as near to this as leaves the colour. Raises
    Mistakes for a name that will not do, a colour that is not understood or that no paint has.
    """
    xyz = colours.read(said)
    if glows == "not at all":
        kin, of_yield = None, 0.0
        nm, share = colours.recovered(xyz, said)
    else:
        nm = WAVELENGTHS_NM
        kin, of_yield, share = _parted(xyz, said, YIELDS[glows])
    keep = (nm >= 380.0) & (nm <= 780.0)
    lines = [f"{at:g},{value:.4f}" for at, value in zip(nm[keep], share[keep], strict=True)]
    text = "\n".join(
        ["# recovered from a colour, not measured", "wavelength_nm,reflectance", *lines]
    )
    source = f"own: from the colour {said}"
    return _made(name, xyz, text + "\n", kin, of_yield, source, TOLD_DOUBT)


def _parted(xyz: Array, said: str, wanted: float) -> tuple[str, float, Array]:
    """Return whose glow is in a colour, how much of it, and the reflectance that makes up the rest."""
    glowing = [row["name"] for row in tables.rows("paints") if row["fluorescent"]]
    kin = sorted(glowing, key=lambda name: colours.apart(in_daylight(name), xyz))[:KIN]
    light = np.maximum(daylight(DAYLIGHT_K), 1e-12)
    for times in TRIED:
        for name in kin:
            glow = times * wanted * (paint.glowing_part(name) @ light) / light
            share = colours.beside(xyz, glow, 1.0 - paint.absorbed(name), WAVELENGTHS_NM)
            if share is not None:
                return name, times * wanted, share
    allowed = f"no paint that glows has this colour; the nearest of ours is {kin[0]}"
    raise Mistakes([Mistake("--colour", said, allowed, colours.EXAMPLE)])


def from_spectrum(name: str, path: Path, glows: Glows = "not at all") -> OwnPaint:
    """Return a paint made from a measured reflectance in a CSV file; see `spectrum_file.points`."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        why = "there is no such file of text"
        raise Mistakes([Mistake("--spectrum", f"{path}", why, "mine.csv")]) from None
    nm, share = np.array(points(text, f"{path}")).T
    doubt = 1.0 if glows == "not at all" else TOLD_DOUBT
    xyz = colours.colour_of(share, nm)
    kin = None if glows == "not at all" else nearest(xyz, glowing=True)[0]
    return _made(name, xyz, text, kin, YIELDS[glows], f"own: measured, {path.name}", doubt)


def _made(
    name: str,
    xyz: Array,
    spectrum: str,
    kin: str | None,
    of_yield: float,
    source: str,
    doubt: float,
) -> OwnPaint:
    """Return a paint that glows by a part of the yield of a paint of ours, or not at all."""
    try:
        NAME.read(name)
    except ValueError:
        raise Mistakes([Mistake("paint", name, NAME.allowed, "my orange")]) from None
    near, off = nearest(xyz)
    like = tables.row("paints", kin or near, "paint")
    glow = {key: like[key] if kin else None for key in GLOW}
    if kin:
        glow["quantum_yield"] = float(like["quantum_yield"]) * of_yield
    row = {
        "name": name,
        "on_shelf": "yes",
        "fluorescent": "yes" if kin else "no",
        "family": like["family"],
        "says": "",
        "low": round(float(np.clip(xyz[1], 0.0, 1.0)), 4),
        **FLAT,
        **glow,
        "swatch": colours.screen(xyz),
        "source": source,
        "spectrum": file_of(name),
        "doubt": doubt,
    }
    return OwnPaint(name, xyz, row, spectrum, near, off)


def _cell(value: object) -> str:
    return "" if value is None else f"{value:g}" if isinstance(value, float) else f"{value}"


def write(made: OwnPaint, folder: Path, again: bool = False) -> tuple[Path, Path]:
    """Put a paint into the own tables of a folder, and return the two files that were written.

    The folder is made if there is none. All is checked first as `tables.read_folder` would; a file
    is written whole or not at all. Raises Mistakes if the paint stands there already (unless
    ``again``), or what then stood there could not be read.
    """
    path, beside = folder / "paints.csv", folder / file_of(made.name)
    columns = list(SCHEMAS["paints"].columns)
    rows = []
    if path.exists():
        with path.open(encoding="utf-8-sig", newline="") as file:
            kept = [line for line in file if not line.lstrip('"').startswith("#")]
        rows = list(csv.DictReader(kept))
    if not again and any(row.get("name") == made.name for row in rows):
        why = f"it stands in {path} already; say --again to make it anew"
        raise Mistakes([Mistake("paint", made.name, why, "")])
    rows = [row for row in rows if row.get("name") != made.name]
    rows.append({key: _cell(value) for key, value in made.row.items()})
    out = io.StringIO()
    writer = csv.DictWriter(out, columns, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows({key: row.get(key) or "" for key in columns} for row in rows)
    files = {path: out.getvalue(), beside: made.spectrum}
    _checked(folder, {one.name: text for one, text in files.items()})
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for one, text in reversed(
            files.items()
        ):  # the spectrum first: no row names what is not there
            new = one.with_name(one.name + ".new")
            new.write_text(text, encoding="utf-8")
            new.replace(one)
    except OSError as error:
        why = f"it cannot be written there: {error.strerror}"
        raise Mistakes([Mistake("--tables", f"{folder}", why, "my-tables")]) from None
    return path, beside


def _checked(folder: Path, files: Mapping[str, str]) -> None:
    """Refuse what could not be read as own tables, before anything is written."""
    with tempfile.TemporaryDirectory() as trial:
        old = folder.glob("*.csv") if folder.is_dir() else ()
        for one in old:
            (Path(trial) / one.name).write_bytes(one.read_bytes())
        for name, text in files.items():
            (Path(trial) / name).write_text(text, encoding="utf-8")
        tables.read_folder(trial)
