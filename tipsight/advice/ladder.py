"""The same tip nearer and farther, longer and thicker: what each step gains and costs."""

from dataclasses import replace

import numpy as np

from tipsight.advice.answer import Rung, TradePoint
from tipsight.advice.examine import quick_level, series
from tipsight.advice.limits import quick_fails
from tipsight.advice.swim import BRIGHT, DARK, LADDER_YD, Swim, painted_mm
from tipsight.inputs.case import Band, Tip
from tipsight.load import budget
from tipsight.units import INCH_MM, YARD_M

QUARTER_INCH_MM = INCH_MM / 4
THINNEST_MM = 1.0


def by_distance(swim: Swim, in_hand: Tip, advised: Tip) -> tuple[Rung, ...]:
    """Return the level of both tips at 10 to 60 yd on dark and on bright water.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    in_hand, advised : Tip
        The two tips.

    Returns
    -------
    tuple of Rung
        Nearest first.
    """
    levels = {
        (which, water.name): series(swim, swim.waters[water.name], tip)
        for which, tip in (("in hand", in_hand), ("advised", advised))
        for water in (DARK, BRIGHT)
    }
    rungs = []
    for yards in LADDER_YD:
        i = int(np.argmin(np.abs(swim.range_m - yards * YARD_M)))
        old, new = (
            {w.name: float(levels[which, w.name][i]) for w in (DARK, BRIGHT)}
            for which in ("in hand", "advised")
        )
        rungs.append(Rung(yards * YARD_M, old, new))
    return tuple(rungs)


def stretched(tip: Tip, showing_mm: float) -> Tip:
    """Return the same tip with more or less of it showing, its bands in the same shares.

    Parameters
    ----------
    tip : Tip
        The tip.
    showing_mm : float
        Length to show [mm].

    Returns
    -------
    Tip
        The tip, its wet and glued parts unchanged.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> tip = Tip(Stock("solid", 3.0), 20.0, bands=(Band("black", 0, 10), Band("white", 10, 20)))
    >>> stretched(tip, 40.0).bands[0].to_top_mm
    20.0
    """
    scale = showing_mm / tip.showing_mm
    bands = tuple(Band(b.paint, b.from_top_mm * scale, b.to_top_mm * scale) for b in tip.bands)
    return replace(tip, showing_mm=showing_mm, bands=bands)


def _point(swim: Swim, tip: Tip, chosen: Tip, of: str) -> TradePoint:
    level = quick_level(swim, tip)
    force = float(
        budget.sink_force_g(painted_mm(tip), tip.showing_mm, swim.case.stream.temperature_c)
    )
    margin = float(swim.ride_margin(painted_mm(tip), tip.showing_mm)[0])
    passes = level >= swim.case.wanted.level and not quick_fails(swim, tip)
    return TradePoint(
        tip.stock.diameter_mm, tip.showing_mm, level, force, margin, passes, tip == chosen, of
    )


def trade_off(swim: Swim, tip: Tip) -> tuple[TradePoint, ...]:
    """Return what each added quarter inch, and each half millimetre of thickness, gains and costs.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    tip : Tip
        The tip advised.

    Returns
    -------
    tuple of TradePoint
        Quarter inches from a half up, the tip itself among them; then thicknesses.
    """
    lengths = sorted({*(QUARTER_INCH_MM * n for n in range(2, 10)), tip.showing_mm})
    points = [_point(swim, stretched(tip, float(x)), tip, "longer") for x in lengths]
    wall = tip.stock.diameter_mm - tip.stock.bore_mm if tip.stock.bore_mm else 0.0
    for step in (-1.0, -0.5, 0.0, 0.5, 1.0):
        diameter = tip.stock.diameter_mm + step
        if THINNEST_MM <= diameter <= swim.thickest_mm and diameter > wall:
            stock = replace(
                tip.stock, diameter_mm=diameter, bore_mm=diameter - wall if wall else 0.0
            )
            points.append(_point(swim, replace(tip, stock=stock), tip, "thicker"))
    return tuple(points)
