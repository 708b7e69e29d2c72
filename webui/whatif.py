"""What-ifs: one step each way from a question, each with its address."""

from dataclasses import dataclass

from tipsight.advice.answer import Answer
from tipsight.advice.retelling import paint_words, weighed_options
from tipsight.inputs.case import Band, Tip
from webui.asking import Asked

PAINTS = ("black", "white", "fluorescent orange", "fluorescent yellow")
"""Offered by a tap (judgement)."""


@dataclass(frozen=True)
class WhatIf:
    """A what-if: its words, and the address that tells."""

    words: str
    query: str


def _scaled(tip: Tip, showing_mm: float) -> str:
    scale = showing_mm / tip.showing_mm
    return paint_words(
        tuple(Band(b.paint, b.from_top_mm * scale, b.to_top_mm * scale) for b in tip.bands),
        showing_mm,
    )


def _showing(answer: Answer, step_mm: float) -> dict[str, str] | None:
    tip = answer.tip_in_hand.tip
    then = tip.showing_mm + step_mm
    wet = tip.wet_mm - step_mm if tip.wet_mm >= step_mm else tip.wet_mm
    if not 1 <= then <= 80:
        return None
    options = {"showing": f"{then:.12g} mm", "wet": f"{wet:.12g} mm", **weighed_options(answer.case)}
    return {**options, "paint": _scaled(tip, then)} if len(tip.bands) > 1 else options


def _thicker(answer: Answer, step_mm: float) -> dict[str, str] | None:
    tip = answer.tip_in_hand.tip
    then = tip.stock.diameter_mm + step_mm
    if not 1 <= then <= 10:
        return None
    options = {"diameter": f"{then:.12g} mm", **weighed_options(answer.case)}
    if tip.stock.bore_mm:
        bore = tip.stock.bore_mm + step_mm
        if bore <= 0:
            return None
        options["bore"] = f"{bore:.12g} mm"
    return options


def _others(answer: Answer) -> list[str]:
    """Return the paints that are offered in place of what the tip in hand wears."""
    worn = tuple(b.paint for b in answer.tip_in_hand.tip.bands)
    return [paint for paint in PAINTS if (paint,) != worn]


def what_ifs(answer: Answer, asked: Asked) -> tuple[WhatIf, ...]:
    """Return one step each way from the question, each with its address."""
    paints = _others(answer)
    sun = answer.case.light.beam
    sky = {"sky": "dull overcast", "sun_out": ""} if sun else {"sky": "clear", "sun_out": "yes"}
    offered: list[tuple[str, dict[str, str] | None]] = [
        ("Show 10 mm more", _showing(answer, 10)),
        ("Show 10 mm less", _showing(answer, -10)),
        ("1 mm thicker", _thicker(answer, 1)),
        ("1 mm thinner", _thicker(answer, -1)),
        *((f"Paint it {paint}", {"paint": paint, "seasons": ""}) for paint in paints[:2]),
        ("The sun goes in" if sun else "The sun comes out", sky),
        ("A dull sky", {"sky": "dull overcast", "sun_out": ""}),
    ]
    return tuple(
        WhatIf(said, asked.link(changes))
        for said, changes in offered
        if changes is not None
        and any(asked.typed.get(k, ("",)) != (v,) for k, v in changes.items())
    )[:8]


def beside(answer: Answer, asked: Asked) -> tuple[WhatIf, ...]:
    """Return other paints, and the tip that is advised, each with this answer kept beside it."""
    offered = [
        (f"This beside {paint}", {"paint": paint, "seasons": ""}) for paint in _others(answer)
    ]
    bench = answer.at_the_bench
    if bench is not None and bench.options:
        offered.insert(0, ("This beside the tip for the bench", bench.options))
    return tuple(WhatIf(words, asked.link_beside(told)) for words, told in offered)
