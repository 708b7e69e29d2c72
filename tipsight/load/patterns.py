"""Float patterns by generic name: plain dimensions that a maker may change."""

from dataclasses import dataclass

from tipsight import tables
from tipsight.inputs.case import BuiltFloat, Fixing, Part, Tip
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


@tables.derived
def _parts() -> dict[str, dict[str, tuple[Part, ...]]]:
    found: dict[str, dict[str, tuple[Part, ...]]] = {}
    for row in tables.rows("pattern_parts"):
        part = Part(
            row["role"],
            row["shape"],
            row["material"],
            *(row[key] for key in ("length_mm", "top_mm", "foot_mm", "bore_mm", "inside_mm")),
        )
        sizes = found.setdefault(row["pattern"], {})
        sizes[row["size"]] = (*sizes.get(row["size"], ()), part)
    # An own size stands behind the packaged ones in the table.
    return {
        name: dict(sorted(sizes.items(), key=lambda entry: float(entry[0].removesuffix(" mm"))))
        for name, sizes in found.items()
    }


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
        tuple(_parts()[row["name"]]),
        row["default_size"],
        tip,
        row["fixing"],
        row["mass_share"],
        row["max_showing_diameters"],
        row["max_showing_mm"],
        row["max_body_share"],
    )


def names() -> tuple[str, ...]:
    """Return the patterns' names.

    Returns
    -------
    tuple of str
        In the order of patterns.csv.

    Examples
    --------
    >>> names()[:2]
    ('straight balsa', 'long cane balsa')
    """
    return tuple(_patterns())


def pattern(name: str) -> Pattern:
    """Return the pattern of that name.

    Parameters
    ----------
    name : str
        A name of patterns.csv.

    Returns
    -------
    Pattern
        Its sizes, usual tip and limits.

    Raises
    ------
    Mistakes
        If no row has that name.

    Examples
    --------
    >>> pattern("bolo type").fixing
    'bulk'
    """
    if name not in _patterns():
        raise materials.unknown("pattern", name, list(_patterns()))
    return _patterns()[name]


def sizes(name: str) -> tuple[str, ...]:
    """Return the sizes of a pattern, smallest first.

    Parameters
    ----------
    name : str
        A name of patterns.csv.

    Returns
    -------
    tuple of str
        Named by the body's largest diameter.

    Raises
    ------
    Mistakes
        If no row has that name.

    Examples
    --------
    >>> sizes("canal balsa")
    ('3.3 mm', '3.7 mm', '4 mm', '4.4 mm')
    """
    return pattern(name).sizes


def built(name: str, size: str | None = None) -> BuiltFloat:
    """Return a pattern at a size as a float known by its parts.

    Parameters
    ----------
    name : str
        A name of patterns.csv.
    size : str or None
        One of its sizes; None takes the default one.

    Returns
    -------
    BuiltFloat
        Its parts, from the top of the body downwards.

    Raises
    ------
    Mistakes
        If there is no such pattern, or it has no such size.

    Examples
    --------
    >>> [part.material for part in built("quill avon").parts]
    ['balsa', 'balsa', 'quill']
    """
    chosen = pattern(name)
    size = size or chosen.default_size
    if size not in chosen.sizes:
        raise materials.unknown(f"size of {name}", size, list(chosen.sizes))
    return BuiltFloat(name, _parts()[name][size])
