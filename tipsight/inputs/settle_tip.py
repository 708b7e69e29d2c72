"""The tip in hand, and the tip with which the float took its shot."""

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.inputs.quantities import written
from tipsight.inputs.tackle import BlockSaid, StockSaid
from tipsight.inputs.values import Asker

GLUED_SHARE, GLUED_LEAST_MM = 0.12, 5.0
"""Share of the length outside that must be glued in, and the least of it (judgement)."""
WET_MM = 10.0
"""Of a tip outside the body, where nothing of it was told (judgement)."""


@dataclass(frozen=True)
class Tips:
    """The tip in hand and the one with which a weighed float took its shot."""

    now: Tip
    weighed: Tip


def stock_of(said: StockSaid) -> Stock:
    """Return tip stock with its bore and density from stock.csv where they were not told.

    A tube too thin for its wall has no bore.

    >>> stock_of(StockSaid("thin tube", 5.0)).bore_mm
    4.0
    """
    row = tables.row("stock", said.kind, "stock")
    wall = row["wall_mm"] or 0.0
    bore = max(said.diameter_mm - 2 * wall, 0.0) if wall else 0.0
    kind = said.kind
    return Stock(
        kind=kind,  # type: ignore[arg-type]
        diameter_mm=said.diameter_mm,
        bore_mm=bore if said.bore_mm is None else said.bore_mm,
        density_kg_m3=row["density_kg_m3"],
    )


def stock_words(stock: Stock) -> str:
    """Return tip stock as a person types it, to read back as the same stock.

    >>> stock_words(Stock("thin tube", 5.0, 4.0)), stock_words(Stock("quill", 2.5))
    ('5/4 mm thin tube', '2.5 mm quill')
    """
    bore = f"/{stock.bore_mm:.12g}" if stock.bore_mm else ""
    return f"{stock.diameter_mm:.12g}{bore} mm {stock.kind}"


def glued_needed_mm(outside_mm: ArrayLike) -> NDArray[np.float64]:
    """Return how much of a tip [mm] must be glued in to hold ``outside_mm`` outside the body.

    >>> glued_needed_mm([30.0, 50.0]).tolist()
    [5.0, 6.0]
    """
    return np.maximum(GLUED_LEAST_MM, GLUED_SHARE * np.asarray(outside_mm, dtype=float))


def settle_tips(asker: Asker, pattern: tables.Row, weighed: bool) -> Tips:
    """Return the tips, the same stick twice unless it was changed since the float was weighed.

    ``pattern`` is the float's row of patterns.csv, with its usual tip.

    >>> from tipsight.inputs.question import Question
    >>> row = tables.row("patterns", "quill avon", "pattern")
    >>> tips = settle_tips(Asker(Question(diameter="3", showing="20")), row, weighed=False)
    >>> tips.now.wet_mm, tips.now.glued_mm
    (10.0, 5.0)
    """
    stock = _stock(asker, pattern)
    showing = asker.take("showing", f"{pattern['tip_showing_mm']:g} mm")
    took_showing = asker.take("takes_showing", _mm(showing)) if weighed else showing
    changed = weighed and asker.ask("weighed_tip")
    wet, took_wet = _wet(asker, showing, took_showing, bool(changed), weighed)
    now = Tip(
        stock=stock,
        showing_mm=showing,
        wet_mm=wet,
        glued_mm=_glued(asker, showing + wet, bool(changed)),
        bands=_bands(asker, showing, wet),
        seasons=asker.take("seasons"),
        gloss=asker.take("finish").word == "gloss",
        undercoat=asker.take("undercoat"),
        coats=int(asker.take("tip_coats")),
        pulls_out=asker.take("pulls_out"),
        sleeve=asker.take("sleeve_on"),
        light_stick=asker.take("light_stick_on").word,
    )
    if not weighed:
        return Tips(now, now)
    then = replace(
        now,
        showing_mm=took_showing,
        wet_mm=took_wet,
        coats=int(asker.take("weighed_coats", f"{now.coats}", quiet=not changed)),
        sleeve=False,
        light_stick="none",
    )
    if changed:
        needed = _half_up(float(glued_needed_mm(took_showing + took_wet)))
        then = replace(
            then,
            stock=_weighed_stock(asker, changed),
            glued_mm=asker.take("weighed_glued", _mm(needed)),
        )
    return Tips(now, then)


def _stock(asker: Asker, pattern: tables.Row) -> Stock:
    diameter = asker.take("diameter", f"{pattern['tip_diameter_mm']:g} mm")
    kind = asker.take("stock", pattern["tip_stock"]).word
    bare = stock_of(StockSaid(kind, diameter))
    bore = asker.take("bore", _mm(bare.bore_mm), quiet=kind not in _hollow())
    _check_bore(asker, "bore" if asker.knows("bore") else "diameter", kind, diameter, bore)
    return replace(bare, bore_mm=bore)


def _hollow() -> tuple[str, ...]:
    return tuple(row["name"] for row in tables.rows("stock") if row["wall_mm"] is not None)


def _weighed_stock(asker: Asker, said: StockSaid) -> Stock:
    stock = stock_of(said)
    _check_bore(asker, "weighed_tip", said.kind, said.diameter_mm, stock.bore_mm)
    return stock


def _check_bore(asker: Asker, key: str, kind: str, diameter: float, bore: float) -> None:
    if kind in _hollow() and not 0 < bore < diameter:
        cure = f"a {kind} of {diameter:g} mm needs a bore above 0 and below {diameter:g} mm"
        asker.wrong(
            key,
            f"{cure}; tell the bore, or say solid",
            example="5/4 mm thin tube" if key == "weighed_tip" else "bore 2 mm in a tip of 3 mm",
        )
    if kind not in _hollow() and bore > 0:
        *most, last = _hollow()
        cure = f"{kind} has no bore; say {', '.join(most)} or {last}"
        asker.wrong(key, cure, example="thin tube")


def _wet(
    asker: Asker, showing: float, took: float, changed: bool, weighed: bool
) -> tuple[float, float]:
    """Return the wet part now and when the float took its shot, of one stick unless changed."""
    if changed:
        return asker.take("wet", _mm(WET_MM)), asker.take("weighed_wet", _mm(WET_MM))
    then = asker.ask("weighed_wet") if weighed else None
    now = asker.ask("wet")
    if now is None and then is not None:
        now = then + took - showing
        if now < 0:
            asker.wrong(
                "showing",
                f"only {then + took:g} mm of this tip stands out of the body; show "
                "less, or say weighed_tip if it is another tip",
                example="20 mm",
            )
        return now, then
    if now is None:
        now = asker.take("wet", _mm(max(took - showing, 0.0) + WET_MM))
    if then is not None and abs(showing + now - took - then) > 0.5:
        asker.wrong(
            "weighed_wet",
            f"one tip cannot stand {took + then:g} mm out of the body then and "
            f"{showing + now:g} mm now; say weighed_tip if it was changed",
            example="10 mm",
        )
        return now, then
    if showing + now < took:
        asker.wrong(
            "takes_showing",
            f"only {showing + now:g} mm of this tip stands out of the body; say "
            "less, or say weighed_tip if it was another tip",
            example="20 mm",
        )
    return now, showing + now - took


def _glued(asker: Asker, outside: float, changed: bool) -> float:
    needed = float(glued_needed_mm(outside))
    then = None if changed else asker.ask("weighed_glued")
    glued: float = asker.take(
        "glued", _mm(_half_up(needed) if then is None else then), quiet=then is not None
    )
    return glued


def _bands(asker: Asker, showing: float, wet: float) -> tuple[Band, ...]:
    blocks: tuple[BlockSaid, ...] = asker.take("paint")
    last = blocks[-1]
    if last.from_top_mm >= showing:
        asker.wrong(
            "paint",
            f"the lowest block begins at {last.from_top_mm:g} mm and only {showing:g} mm "
            "show; let more show or make the blocks above it shorter",
            example="black 0-15 mm, fluorescent orange 15-30 mm",
        )
    elif last.to_top_mm is not None and last.to_top_mm > showing + wet + 1e-9:
        asker.wrong(
            "paint",
            f"the blocks go to {last.to_top_mm:g} mm and only {showing + wet:g} mm of the "
            "tip stand out of the body; make them shorter",
            example="black 0-15 mm, fluorescent orange 15-30 mm",
        )
    return tuple(
        Band(
            block.paint, block.from_top_mm, showing if block.to_top_mm is None else block.to_top_mm
        )
        for block in blocks
    )


def _half_up(length_mm: float) -> float:
    return math.ceil(2 * length_mm - 1e-9) / 2


def _mm(length_mm: float) -> str:
    return f"{written(length_mm)} mm"
