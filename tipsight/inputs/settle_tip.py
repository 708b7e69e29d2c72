"""The tip in hand, and the tip with which the float took its shot."""

import math
from dataclasses import dataclass, replace

from tipsight import tables
from tipsight.inputs.blocks import BlockSaid
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.inputs.reading import written
from tipsight.inputs.tackle import StockSaid
from tipsight.inputs.teller import Teller

GLUED_SHARE, GLUED_LEAST_MM = 0.12, 5.0
"""Of the length outside that must be glued in, and the least of it (judgement)."""
WET_MM = 10.0


@dataclass(frozen=True)
class Tips:
    """The tip in hand and the one with which a weighed float took its shot."""

    now: Tip
    weighed: Tip


def stock_of(said: StockSaid) -> Stock:
    """Return tip stock with its bore and density from stock.csv where they were not told.

    Parameters
    ----------
    said : StockSaid
        Kind, diameter and perhaps bore.

    Returns
    -------
    Stock
        A tube too thin for its wall has no bore.

    Examples
    --------
    >>> stock_of(StockSaid("thin tube", 5.0)).bore_mm
    4.0
    """
    row = next(row for row in tables.rows("stock") if row["name"] == said.kind)
    wall = float(row["wall_mm"]) if row["wall_mm"] else 0.0
    bore = max(said.diameter_mm - 2 * wall, 0.0) if wall else 0.0
    kind = said.kind
    return Stock(
        kind=kind,  # type: ignore[arg-type]
        diameter_mm=said.diameter_mm,
        bore_mm=bore if said.bore_mm is None else said.bore_mm,
        density_kg_m3=float(row["density_kg_m3"]),
    )


def stock_words(stock: Stock) -> str:
    """Return tip stock as a person types it.

    Parameters
    ----------
    stock : Stock
        A stick or a tube.

    Returns
    -------
    str
        What reads back as the same stock.

    Examples
    --------
    >>> stock_words(Stock("thin tube", 5.0, 4.0)), stock_words(Stock("quill", 2.5))
    ('5/4 mm thin tube', '2.5 mm quill')
    """
    bore = f"/{stock.bore_mm:.12g}" if stock.bore_mm else ""
    return f"{stock.diameter_mm:.12g}{bore} mm {stock.kind}"


def glued_needed_mm(outside_mm: float) -> float:
    """Return how much of a tip must be glued in to hold the rest.

    Parameters
    ----------
    outside_mm : float
        Length outside the body. [mm]

    Returns
    -------
    float
        The least. [mm]

    Examples
    --------
    >>> glued_needed_mm(30.0), glued_needed_mm(50.0)
    (5.0, 6.0)
    """
    return max(GLUED_LEAST_MM, GLUED_SHARE * outside_mm)


def settle_tips(teller: Teller, pattern: dict[str, str], weighed: bool) -> Tips:
    """Return the tips.

    Parameters
    ----------
    teller : Teller
        What was told.
    pattern : dict
        The float's row of patterns.csv, with its usual tip.
    weighed : bool
        Whether the float is known by what it takes.

    Returns
    -------
    Tips
        The same stick twice unless the tip was changed since.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> row = next(r for r in tables.rows("patterns") if r["name"] == "quill avon")
    >>> tips = settle_tips(Teller(Question(diameter="3", showing="20")), row, weighed=False)
    >>> tips.now.wet_mm, tips.now.glued_mm
    (10.0, 5.0)
    """
    stock = _stock(teller, pattern)
    showing = teller.take("showing", f"{float(pattern['tip_showing_mm']):g} mm")
    took_showing = teller.take("takes_showing", _mm(showing)) if weighed else showing
    changed = weighed and teller.ask("weighed_tip")
    wet, took_wet = _wet(teller, showing, took_showing, bool(changed), weighed)
    now = Tip(
        stock=stock,
        showing_mm=showing,
        wet_mm=wet,
        glued_mm=_glued(teller, showing + wet, bool(changed)),
        bands=_bands(teller, showing, wet),
        seasons=teller.take("seasons"),
        gloss=teller.take("finish").word == "gloss",
        undercoat=teller.take("undercoat"),
        coats=int(teller.take("tip_coats")),
        pulls_out=teller.take("pulls_out"),
        sleeve=teller.take("sleeve_on"),
        light_stick=teller.take("light_stick_on").word,
    )
    if not weighed:
        return Tips(now, now)
    then = replace(
        now,
        showing_mm=took_showing,
        wet_mm=took_wet,
        coats=int(teller.take("weighed_coats", f"{now.coats}", quiet=not changed)),
        sleeve=False,
        light_stick="none",
    )
    if changed:
        needed = _half_up(glued_needed_mm(took_showing + took_wet))
        then = replace(
            then,
            stock=_weighed_stock(teller, changed),
            glued_mm=teller.take("weighed_glued", _mm(needed)),
        )
    return Tips(now, then)


def _stock(teller: Teller, pattern: dict[str, str]) -> Stock:
    diameter = teller.take("diameter", f"{float(pattern['tip_diameter_mm']):g} mm")
    kind = teller.take("stock", pattern["tip_stock"]).word
    bare = stock_of(StockSaid(kind, diameter))
    bore = teller.take("bore", _mm(bare.bore_mm), quiet="tube" not in kind)
    _check_bore(teller, "bore" if teller.knows("bore") else "diameter", kind, diameter, bore)
    return replace(bare, bore_mm=bore)


def _weighed_stock(teller: Teller, said: StockSaid) -> Stock:
    stock = stock_of(said)
    _check_bore(teller, "weighed_tip", said.kind, said.diameter_mm, stock.bore_mm)
    return stock


def _check_bore(teller: Teller, key: str, kind: str, diameter: float, bore: float) -> None:
    if "tube" in kind and not 0 < bore < diameter:
        cure = f"a {kind} of {diameter:g} mm needs a bore above 0 and below {diameter:g} mm"
        teller.wrong(
            key,
            f"{cure}; tell the bore, or say solid",
            example="5/4 mm thin tube" if key == "weighed_tip" else "bore 2 mm in a tip of 3 mm",
        )
    if "tube" not in kind and bore > 0:
        teller.wrong(key, f"{kind} has no bore; say thin tube or thick tube", example="thin tube")


def _wet(
    teller: Teller, showing: float, took: float, changed: bool, weighed: bool
) -> tuple[float, float]:
    """Return the wet part now and when the float took its shot, of one stick unless changed."""
    if changed:
        return teller.take("wet", _mm(WET_MM)), teller.take("weighed_wet", _mm(WET_MM))
    then = teller.ask("weighed_wet") if weighed else None
    now = teller.ask("wet")
    if now is None and then is not None:
        now = then + took - showing
        if now < 0:
            teller.wrong(
                "showing",
                f"only {then + took:g} mm of this tip stands out of the body; show "
                "less, or say weighed_tip if it is another tip",
                example="20 mm",
            )
        return now, then
    if now is None:
        now = teller.take("wet", _mm(max(took - showing, 0.0) + WET_MM))
    if then is not None and abs(showing + now - took - then) > 0.5:
        teller.wrong(
            "weighed_wet",
            f"one tip cannot stand {took + then:g} mm out of the body then and "
            f"{showing + now:g} mm now; say weighed_tip if it was changed",
            example="10 mm",
        )
        return now, then
    if showing + now < took:
        teller.wrong(
            "takes_showing",
            f"only {showing + now:g} mm of this tip stands out of the body; say "
            "less, or say weighed_tip if it was another tip",
            example="20 mm",
        )
    return now, showing + now - took


def _glued(teller: Teller, outside: float, changed: bool) -> float:
    needed = glued_needed_mm(outside)
    then = None if changed else teller.ask("weighed_glued")
    glued: float = teller.take(
        "glued", _mm(_half_up(needed) if then is None else then), quiet=then is not None
    )
    key = "glued" if teller.knows("glued") else "weighed_glued"
    if glued < needed - 1e-9 and teller.knows(key):
        teller.wrong(
            key,
            f"{glued:g} mm will not hold a tip with {outside:g} mm outside the body; glue "
            f"in {_half_up(needed):g} mm or more, or let less show",
            example=_mm(_half_up(needed)),
        )
    return glued


def _bands(teller: Teller, showing: float, wet: float) -> tuple[Band, ...]:
    blocks: tuple[BlockSaid, ...] = teller.take("paint")
    last = blocks[-1]
    if last.from_top_mm >= showing:
        teller.wrong(
            "paint",
            f"the lowest block begins at {last.from_top_mm:g} mm and only {showing:g} mm "
            "show; let more show or make the blocks above it shorter",
            example="black 0-15 mm, fluorescent orange 15-30 mm",
        )
    elif last.to_top_mm is not None and last.to_top_mm > showing + wet + 1e-9:
        teller.wrong(
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
