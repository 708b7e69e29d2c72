"""What tips, paints, waters and shot are called."""

from collections.abc import Sequence

from tipsight.advice.answer import ShotLine
from tipsight.advice.swim import BRIGHT, DARK
from tipsight.inputs.case import Band, Case, Stock, Stretch, Tip, shown


def paint(bands: Sequence[Band], showing_mm: float) -> str:
    """Return the paint of a tip from the top down, with the height of each block in whole mm.

    Examples
    --------
    >>> paint((Band("black", 0, 15), Band("fluorescent orange", 15, 40)), 30)
    'black 15 mm over fluorescent orange 15 mm'
    >>> paint((Band("black", 0, 36.7), Band("red", 36.7, 55)), 55)
    'black 37 mm over red 18 mm'
    """
    blocks = shown(bands, showing_mm)
    if len(blocks) < 2:
        return blocks[0].paint if blocks else "bare"
    return " over ".join(
        f"{band.paint} {round(band.to_top_mm) - round(band.from_top_mm)} mm" for band in blocks
    )


def fitting(tip: Tip) -> str:
    """Return a tip as a maker would ask for it: stock, length and paint.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> fitting(Tip(Stock("quill", 3.0), 30.0, bands=(Band("black", 0, 30),)))
    '3 mm quill, 30 mm showing, black'
    """
    paints = " over ".join(band.paint for band in tip.bands)
    return f"{stick(tip.stock)}, {tip.showing_mm:g} mm showing, {paints}"


def stick(stock: Stock) -> str:
    """Return a piece of stock: diameter and kind."""
    return f"{stock.diameter_mm:g} mm {stock.kind}"


def stick_with_bore(stock: Stock) -> str:
    """Return a piece of stock, with its bore where it is hollow."""
    return stick(stock) + (f" ({stock.bore_mm:g} mm bore)" if stock.bore_mm else "")


def stock(tip: Tip) -> str:
    """Return what a tip is cut from, with what it wears.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> stock(Tip(Stock("thin tube", 5.0, 4.0), 30.0))
    '5 mm thin tube (4 mm bore)'
    """
    said = stick_with_bore(tip.stock)
    if tip.sleeve:
        said += " with a sleeve"
    if tip.light_stick != "none":
        said += f" with a {tip.light_stick} light stick"
    return said


def shot_list(lines: Sequence[ShotLine]) -> str:
    """Return a shot list by place.

    Examples
    --------
    >>> shot_list((ShotLine("BB", 4, "bulk"), ShotLine("No 8", 2, "dropper")))
    'bulk 4 BB; droppers 2 No 8'
    """
    places: dict[str, list[ShotLine]] = {}
    for line in lines:
        places.setdefault(line.where, []).append(line)
    return (
        "; ".join(
            f"{_many(where, sum(line.count for line in group))} "
            + ", ".join(
                line.name if line.count == 1 else f"{line.count} {line.name}" for line in group
            )
            for where, group in places.items()
        )
        or "no shot"
    )


def _many(where: str, count: int) -> str:
    return f"{where}s" if where == "dropper" and count > 1 else where


def whole_water(stretch: Stretch) -> str:
    """Return the water behind the tip by name, a bank with its height."""
    return stretch.name


def short_water(stretch: Stretch) -> str:
    """Return the water behind the tip by name, a bank without its height."""
    return stretch.mirrors or stretch.name


def stretch(case: Case, name: str) -> Stretch:
    """Return the stretch of a question, or the plain dark or bright one, that has a name."""
    return next(s for s in (*case.stretches, DARK, BRIGHT) if s.name == name)
