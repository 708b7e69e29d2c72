"""The same tip nearer and farther, longer and thicker: what each step gains and costs."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from tipsight.advice.answer import Rung, TradePoint
from tipsight.advice.close_look import is_sound
from tipsight.advice.sighting import along, quick_levels
from tipsight.advice.swim import BRIGHT, DARK, LADDER_YD, Swim
from tipsight.inputs.case import Band, Tip
from tipsight.load import budget
from tipsight.load.tips import showing_diameter_mm
from tipsight.units import YARD_M

QUARTER_INCH_MM = 6.35
THINNEST_MM = 1.0


def by_distance(swim: Swim, in_hand: Tip, advised: Tip) -> tuple[Rung, ...]:
    """Return the level of both tips at 10 to 60 yd on dark and on bright water."""
    levels = {
        (which, water.name): along(swim, swim.waters[water.name], tip).level
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


def _points(swim: Swim, tips: Sequence[Tip], chosen: Tip, of: str) -> list[TradePoint]:
    found = []
    for tip, level in zip(tips, quick_levels(swim, tips), strict=True):
        painted = showing_diameter_mm(tip)
        force = budget.sink_force_g(painted, tip.showing_mm, swim.case.stream.temperature_c)
        found.append(
            TradePoint(
                diameter_mm=tip.stock.diameter_mm,
                showing_mm=tip.showing_mm,
                level=level,
                sink_force_g=float(force),
                ride_margin=float(swim.ride_margin(painted, tip.showing_mm)[0]),
                passes=level >= swim.case.wanted.level and bool(is_sound(swim, tip)),
                chosen=tip == chosen,
                of=of,
            )
        )
    return found


def trade_off(swim: Swim, tip: Tip) -> tuple[TradePoint, ...]:
    """Return what each added quarter inch, and each half millimetre of thickness, gains and costs.

    Quarter inches from a half up, the tip itself among them; then thicknesses.
    """
    lengths = sorted({*(QUARTER_INCH_MM * n for n in range(2, 10)), tip.showing_mm})
    longer = [stretched(tip, float(x)) for x in lengths]
    wall = tip.stock.diameter_mm - tip.stock.bore_mm if tip.stock.bore_mm else 0.0
    thicker = []
    for step in (-1.0, -0.5, 0.0, 0.5, 1.0):
        diameter = tip.stock.diameter_mm + step
        if THINNEST_MM <= diameter <= swim.thickest_mm and diameter > wall:
            stock = replace(
                tip.stock, diameter_mm=diameter, bore_mm=diameter - wall if wall else 0.0
            )
            thicker.append(replace(tip, stock=stock))
    return (*_points(swim, longer, tip, "longer"), *_points(swim, thicker, tip, "thicker"))
