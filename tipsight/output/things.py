"""What tips, paint and shot are called."""

from collections.abc import Sequence
from dataclasses import replace

from tipsight.advice.answer import ShotLine
from tipsight.inputs.case import Band, Tip


def paint(bands: Sequence[Band], showing_mm: float) -> str:
    """Return the paint of a tip from the top down, with the height of each block in whole mm.

    Parameters
    ----------
    bands : sequence of Band
        From the top down.
    showing_mm : float
        Length out of the water [mm].

    Returns
    -------
    str
        One paint, or blocks one over the other.

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


def shown(bands: Sequence[Band], showing_mm: float) -> tuple[Band, ...]:
    """Return the bands that show, the last of them as far down as the water.

    Parameters
    ----------
    bands : sequence of Band
        From the top down.
    showing_mm : float
        Length out of the water [mm].

    Returns
    -------
    tuple of Band
        Those that show, ending at the waterline.

    Examples
    --------
    >>> shown((Band("black", 0, 15), Band("white", 15, 20)), 30)[-1].to_top_mm
    30
    """
    above = [band for band in bands if band.from_top_mm < showing_mm]
    return tuple(
        replace(band, to_top_mm=showing_mm if n == len(above) - 1 else band.to_top_mm)
        for n, band in enumerate(above)
    )


def stock(tip: Tip) -> str:
    """Return what a tip is cut from, with what it wears.

    Parameters
    ----------
    tip : Tip
        The tip.

    Returns
    -------
    str
        Diameter and kind.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> stock(Tip(Stock("thin tube", 5.0, 4.0), 30.0))
    '5 mm thin tube (4 mm bore)'
    """
    said = f"{tip.stock.diameter_mm:g} mm {tip.stock.kind}"
    if tip.stock.bore_mm:
        said += f" ({tip.stock.bore_mm:g} mm bore)"
    if tip.sleeve:
        said += " with a sleeve"
    if tip.light_stick != "none":
        said += f" with a {tip.light_stick} light stick"
    return said


def shot_list(lines: Sequence[ShotLine]) -> str:
    """Return a shot list by place.

    Parameters
    ----------
    lines : sequence of ShotLine
        In the order in which they are told.

    Returns
    -------
    str
        Each place with its shot.

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
