"""Float patterns by generic name: plain dimensions that a maker may change."""

from dataclasses import dataclass

from tipsight import tables
from tipsight.inputs.case import BuiltFloat, Fixing, Tip
from tipsight.inputs.parts import parts_of, sizes_of
from tipsight.load import materials


@dataclass(frozen=True)
class Pattern:
    """One row of patterns.csv, with its sizes from pattern_parts.csv."""

    name: str
    says: str
    body: str
    """A row of materials.csv."""
    sizes: tuple[str, ...]
    """Smallest first, named by the body's largest diameter."""
    default_size: str
    tip: Tip
    """The tip it usually carries, unpainted."""
    fixing: Fixing
    mass_share: float
    """Least weight of a finished float, as a share of the pull of its shot."""
    max_showing_diameters: float
    """Longest showing part, in diameters of its stock."""
    max_showing_mm: float
    max_body_share: float
    """Thickest tip stock, as a share of the body's diameter."""
    usual_from_mm: float
    """Thinnest stock that people use on it."""
    usual_to_mm: float
    usual_showing_from_mm: float
    """Shortest showing part that people give it, in calm water."""
    usual_showing_to_mm: float


@tables.derived
def _patterns() -> dict[str, Pattern]:
    return {row["name"]: _pattern(row) for row in tables.rows("patterns")}


def _pattern(row: tables.Row) -> Pattern:
    piece = materials.stock(row["tip_stock"], row["tip_diameter_mm"])
    tip = Tip(piece, row["tip_showing_mm"], row["tip_wet_mm"], row["tip_glued_mm"])
    return Pattern(
        row["name"],
        row["says"],
        row["body"],
        sizes_of(row["name"]),
        row["default_size"],
        tip,
        row["fixing"],
        row["mass_share"],
        row["max_showing_diameters"],
        row["max_showing_mm"],
        row["max_body_share"],
        row["usual_from_mm"],
        row["usual_to_mm"],
        row["usual_showing_from_mm"],
        row["usual_showing_to_mm"],
    )


def pattern(name: str) -> Pattern:
    """Return the pattern of a name of patterns.csv, or raise Mistakes.

    >>> pattern("bolo type").fixing
    'bulk'
    """
    if name not in _patterns():
        raise materials.unknown("pattern", name, list(_patterns()))
    return _patterns()[name]


def sizes(name: str) -> tuple[str, ...]:
    """Return the sizes of a pattern, smallest first, named by the body's largest diameter.

    >>> sizes("canal balsa")
    ('3.3 mm', '3.7 mm', '4 mm', '4.4 mm')
    """
    return pattern(name).sizes


def built(name: str, size: str | None = None) -> BuiltFloat:
    """Return a pattern at a size, or at its default one, as a float known by its parts.

    Raises Mistakes if there is no such pattern, or it has no such size.

    >>> [part.material for part in built("quill avon").parts]
    ['balsa', 'balsa', 'quill']
    """
    chosen = pattern(name)
    size = size or chosen.default_size
    if size not in chosen.sizes:
        raise materials.unknown(f"size of {name}", size, list(chosen.sizes))
    return BuiltFloat(name, parts_of(name, size))
