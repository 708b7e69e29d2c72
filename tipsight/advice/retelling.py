"""Options that make a change: told again with them, the question gives the printed answer."""

import math

from tipsight.advice.answer import Block
from tipsight.inputs.case import Band, Case, Tip, WeighedFloat
from tipsight.inputs.settle_tip import stock_words
from tipsight.load.plan import TRIM

SHORT = {TRIM: "trim"}
"""Places on the line that are typed in fewer words."""


def paint_words(bands: tuple[Band, ...], showing_mm: float) -> str:
    """Return bands as a person would type them.

    Parameters
    ----------
    bands : tuple of Band
        From the top down.
    showing_mm : float
        Length out of the water [mm]; the last band is said to end there.

    Returns
    -------
    str
        One paint, or paints with where each lies.

    Examples
    --------
    >>> paint_words((Band("black", 0, 15), Band("fluorescent orange", 15, 30)), 30)
    'black 0-15 mm, fluorescent orange 15-30 mm'
    >>> paint_words((Band("black", 0, 30),), 30)
    'black'
    """
    if len(bands) == 1:
        return bands[0].paint
    ends = [*(band.to_top_mm for band in bands[:-1]), showing_mm]
    return ", ".join(
        f"{band.paint} {band.from_top_mm:.12g}-{end:.12g} mm"
        for band, end in zip(bands, ends, strict=True)
    )


def _tip(tip: Tip) -> dict[str, str]:
    options = {
        "diameter": f"{tip.stock.diameter_mm:.12g} mm",
        "stock": tip.stock.kind,
        "showing": f"{tip.showing_mm:.12g} mm",
        "wet": f"{tip.wet_mm:.12g} mm",
        "glued": f"{tip.glued_mm:.12g} mm",
        "paint": paint_words(tip.bands, tip.showing_mm),
        "seasons": f"{tip.seasons:.12g}",
        "finish": "gloss" if tip.gloss else "matt",
        "undercoat": "yes" if tip.undercoat else "no",
        "tip_coats": f"{tip.coats}",
    }
    if tip.stock.bore_mm:
        options["bore"] = f"{tip.stock.bore_mm:.12g} mm"
    if tip.sleeve:
        options["sleeve_on"] = "yes"
    if tip.light_stick != "none":
        options["light_stick_on"] = tip.light_stick
    return options


def shot_options(block: Block) -> dict[str, str]:
    """Return the options that hang the shot of a block on the line, none where the load stays."""
    if math.isclose(block.load.change_g, 0.0, abs_tol=1e-9):
        return {}
    places: dict[str, list[str]] = {}
    for one in block.load.shot:
        said = one.name if one.count == 1 else f"{one.count} {one.name}"
        places.setdefault(SHORT.get(one.where, one.where), []).append(said)
    return {"hangs": "; ".join(f"{where} {', '.join(each)}" for where, each in places.items())}


def tip_options(case: Case, tip: Tip) -> dict[str, str]:
    """Return the options that put ``tip`` on the float of ``case``.

    A weighed float goes on being known by the tip that it was weighed with.

    Parameters
    ----------
    case : Case
        The question.
    tip : Tip
        The tip to be on the float.

    Returns
    -------
    dict of str
        Item and value as typed.
    """
    now, then = _tip(case.tip), _tip(tip)
    options = {key: value for key, value in then.items() if now.get(key) != value}
    return {**options, **weighed_options(case)} if options else {}


def weighed_options(case: Case) -> dict[str, str]:
    """Return the options that keep a weighed float the same float when its tip is told otherwise."""
    if not isinstance(case.float_, WeighedFloat):
        return {}
    weighed = case.weighed_tip
    return {
        "takes_showing": f"{weighed.showing_mm:.12g} mm",
        "weighed_tip": stock_words(weighed.stock),
        "weighed_wet": f"{weighed.wet_mm:.12g} mm",
        "weighed_glued": f"{weighed.glued_mm:.12g} mm",
        "weighed_coats": f"{weighed.coats}",
    }
