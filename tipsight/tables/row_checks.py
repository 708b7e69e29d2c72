"""What a row must keep beyond each cell by itself: other cells, other tables."""

from itertools import pairwise

from tipsight.tables.kinds import Fault, Number, Row, Rows

GLOW = (
    "takes", "takes_edge_nm", "takes_width_nm", "gap", "gap_nm", "gap_width_nm", "quantum_yield",
    "glow_nm", "glow_short_nm", "glow_long_nm",
)  # fmt: skip
"""Columns that fluorescent paints have."""
OVERCAST_TO = 6
"""Types of sky to here take their light from other formulas than a zenith luminance."""
WORD_LIMITS = {
    "known": (0.001, 1.0),
    "wind_blows": (0.0, 180.0),
    "bed": (0.01, 0.2),
    "shadow": (0.0, 90.0),
    "sun_is": (0.0, 180.0),
    "behind": (0.0, 90.0),
    "seen": (1.0, 1000.0),
    "bites": (0.01, 1.0),
    "light_stick_on": (0.0, 10.0),
}
"""Limits of the numbers of words, where items.csv gives the item none; judgement."""


def _listed(words: list[str]) -> str:
    return f"say one of {', '.join(dict.fromkeys(words))}"


def _falls(row: Row, *columns: str) -> Fault | None:
    for lower, upper in pairwise(columns):
        if row[upper] < row[lower]:
            return upper, f"it is not below {lower}, {row[lower]:g}"
    return None


def material(row: Row, _rows: Rows, _packaged: Rows) -> Fault | None:
    """Hold a density between its low and high ones."""
    return _falls(row, "low_kg_m3", "density_kg_m3", "high_kg_m3")


def stock(row: Row, _rows: Rows, _packaged: Rows) -> Fault | None:
    """Hold sizes in order, and leave the thinnest tube a bore."""
    if row["wall_mm"] is not None and not 0.0 < 2.0 * row["wall_mm"] < row["from_mm"]:
        return "wall_mm", f"two walls are less than from_mm, {row['from_mm']:g}"
    return _falls(row, "from_mm", "to_mm")


def paint(row: Row, _rows: Rows, _packaged: Rows) -> Fault | None:
    """Give a glow to fluorescent paints alone."""
    for column in GLOW:
        if row["fluorescent"] == (row[column] is None):
            return column, (
                "a fluorescent paint needs a number" if row["fluorescent"]
                else "leave it empty for a paint that is not fluorescent"
            )  # fmt: skip
    return None


def kittler(row: Row, _rows: Rows, _packaged: Rows) -> Fault | None:
    """Give each type of sky the constants of its own formula and no others."""
    clear, even = row["type"] > OVERCAST_TO, row["type"] in (2, 4, 6)
    for column, wanted in {
        **dict.fromkeys(("a1", "a2", "c", "d"), clear),
        "diffuse_share": even,
    }.items():
        if wanted == (row[column] is None):
            needs = "needs a number" if wanted else "takes none: leave it empty"
            return column, f"a sky of type {row['type']} {needs}"
    return None


def pattern(row: Row, rows: Rows, _packaged: Rows) -> Fault | None:
    """Let the default size be one of the pattern's, and hold its usual tips in order."""
    sizes = [part["size"] for part in rows("pattern_parts") if part["pattern"] == row["name"]]
    if not sizes:
        return "name", "pattern_parts.csv has no parts of it"
    if row["default_size"] not in sizes:
        return "default_size", _listed(sizes)
    return _falls(row, "usual_from_mm", "usual_to_mm") or _falls(
        row, "usual_showing_from_mm", "usual_showing_to_mm"
    )


def water(row: Row, rows: Rows, _packaged: Rows) -> Fault | None:
    """Let the class of the hue be one that has a spectrum."""
    classes = [
        name.removeprefix("fu") for name in rows("water_spectra")[0] if name != "wavelength_nm"
    ]
    return None if str(row["forel_ule"]) in classes else ("forel_ule", _listed(classes))


def also(row: Row, rows: Rows, _packaged: Rows) -> Fault | None:
    """Let another word mean one that its item has."""
    table = next(item["table"] for item in rows("items") if item["key"] == row["item"])
    if table in ("", "sizes"):
        return "item", "this item has no words"
    if table == "words":
        words = [word["word"] for word in rows("words") if word["item"] == row["item"]]
    else:
        words = [named["name"] for named in rows(table)]
    return None if row["meant"] in words else ("meant", _listed(words))


def word(row: Row, rows: Rows, packaged: Rows) -> Fault | None:
    """Hold a word's number to the limits and the unit of its item."""
    item = row["item"]
    if item == "bank":
        banks = [bank["name"] for bank in rows("banks")]
        return None if row["value"] in banks else ("value", _listed(banks))
    ours = [one for one in packaged("words") if one["item"] == item]
    same = next((one for one in ours if one["word"] == row["word"]), None)
    # Where a word stands for no number the sums go by the word itself, so no other can be added.
    if same is None and not all(one["value"] for one in ours):
        return "word", _listed([one["word"] for one in ours])
    model = same or ours[0]
    if row["unit"] != model["unit"]:
        return "unit", f"say {model['unit']}" if model["unit"] else "leave it empty"
    if not model["value"]:
        return (
            ("value", "leave it empty: this word stands for no number") if row["value"] else None
        )
    of_item = next(one for one in rows("items") if one["key"] == item)
    number = Number(*WORD_LIMITS.get(item, (of_item["low"], of_item["high"])))
    try:
        number.read(row["value"])
    except ValueError:
        return "value", number.allowed
    return None
