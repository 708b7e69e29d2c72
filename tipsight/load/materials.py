"""What floats and tips are made of: densities, tip stock, and which paint goes on what."""

from dataclasses import dataclass, fields
from difflib import get_close_matches

from tipsight import tables
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Stock, Stocks


@dataclass(frozen=True)
class Material:
    """One row of materials.csv."""

    name: str
    density_kg_m3: float
    low_kg_m3: float
    high_kg_m3: float
    kind: str
    """wood, quill, carbon, glass, plastic or metal."""
    foam: bool
    """Whether spirit and cellulose melt it."""
    styrene: bool
    """Whether cellulose crazes it."""


@tables.derived
def _materials() -> dict[str, Material]:
    return {
        row["name"]: Material(**{field.name: row[field.name] for field in fields(Material)})
        for row in tables.rows("materials")
    }


def unknown(item: str, said: str, known: list[str]) -> Mistakes:
    """Return the mistake of a name that no table has, with the nearest that one has.

    >>> print(unknown("material", "basla", ["balsa", "cane"]))
    material: 'basla' will not do; it is one of balsa, cane (for example balsa)
    """
    near = get_close_matches(said, known, 1)
    return Mistakes(
        [Mistake(item, said, f"it is one of {', '.join(known)}", near[0] if near else known[0])]
    )


def material(name: str) -> Material:
    """Return the material of a name of materials.csv, or raise Mistakes.

    >>> material("balsa").density_kg_m3
    140.0
    """
    if name not in _materials():
        raise unknown("material", name, list(_materials()))
    return _materials()[name]


def stock(kind: Stocks, diameter_mm: float, bore_mm: float | None = None) -> Stock:
    """Return a piece of tip stock of stock.csv, its bore from the kind's usual wall unless told.

    Outside and inside diameter in mm; a quill counts as a solid rod. Raises Mistakes if no row has
    that kind, or the wall leaves no bore.

    >>> stock("thin tube", 5.0).bore_mm
    4.0
    """
    rows = {row["name"]: row for row in tables.rows("stock")}
    if kind not in rows:
        raise unknown("stock", kind, list(rows))
    row = rows[kind]
    wall_mm = row["wall_mm"] or 0.0
    if bore_mm is None:
        bore_mm = diameter_mm - 2 * wall_mm if wall_mm else 0.0
    if not 0.0 <= bore_mm < diameter_mm:
        raise Mistakes(
            [
                Mistake(
                    "bore",
                    f"{bore_mm:g} mm in {diameter_mm:g} mm",
                    "the bore is less than the outside diameter and not below nothing",
                    "5 mm with a bore of 4 mm",
                )
            ]
        )
    return Stock(kind, diameter_mm, bore_mm, row["density_kg_m3"])


@tables.derived
def shelf() -> tuple[Stock, ...]:
    """Return the tip stock of a well-kept bench: half millimetres to 5 mm, whole ones above.

    >>> [piece.diameter_mm for piece in shelf() if piece.kind == "cane"]
    [3.0, 3.5, 4.0, 4.5, 5.0, 6.0]
    """
    grid_mm = [0.5 * half for half in range(1, 11)] + [float(whole) for whole in range(6, 16)]
    return tuple(
        stock(row["name"], size_mm)
        for row in tables.rows("stock")
        if row["on_shelf"]
        for size_mm in grid_mm
        if row["from_mm"] <= size_mm <= row["to_mm"]
    )


@dataclass(frozen=True)
class Harm:
    """What a finish does to a material: one row of finishes.csv."""

    finish: str
    on: str
    """foam, styrene, or the kind of material."""
    does: str
    """melts, softens, crazes, fogs, attacks or raises grain."""


@tables.derived
def finishes() -> tuple[str, ...]:
    """Return the finishes that harm something, in the order of finishes.csv."""
    return tuple(dict.fromkeys(row["finish"] for row in tables.rows("finishes")))


def harms(material_name: str, finish: str) -> Harm | None:
    """Return what goes wrong with one of `finishes` on a material; None when nothing does.

    Raises Mistakes if either name is in no table.

    >>> harms("foam", "cellulose").does
    'melts'
    >>> harms("balsa", "cellulose") is None
    True
    """
    what = material(material_name)
    if finish not in finishes():
        raise unknown("finish", finish, list(finishes()))
    on = "foam" if what.foam else "styrene" if what.styrene else what.kind
    for row in tables.rows("finishes"):
        if row["finish"] == finish and row["on"] == on:
            return Harm(finish, on, row["does"])
    return None
