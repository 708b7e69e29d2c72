"""The answer as one plain object for programs, schema version 1."""

import math
from typing import Any

from tipsight.advice.answer import Answer, Block, Change, Reason, Rung, Sight, Step, TradePoint
from tipsight.output.things import shown
from tipsight.output.words import MOST_MARGIN

SCHEMA = 1
FIGURES = 4
"""Figures that numbers are told to; the sums hold no more."""
Told = dict[str, Any]
_NULL = {
    "goes_at_m": "the level does not cross what is wanted within the distances looked at",
    "gone_at_m": "the tip is not gone within the distances looked at",
    "ordinary_dip_s": "the tip hardly ever goes under",
    "lean_deg": "held back so hard, the float lies flat",
    "slow_bite_g": "no dip can be told at this distance",
    "visible_dip_mm": "no dip can be told at this distance",
}
"""Why a number may be null."""


def number(value: float | None) -> float | int | None:
    """Return a number to four figures, null where it is undefined or without limit.

    Parameters
    ----------
    value : float or None
        Any number.

    Returns
    -------
    float or int or None
        What can stand in JSON.

    Examples
    --------
    >>> number(1.234567), number(float("inf")), number(None), number(0.0)
    (1.235, None, None, 0.0)
    """
    if value is None or not math.isfinite(value):
        return None
    return float(f"{value:.{FIGURES}g}")


def _sight(one: Sight) -> Told:
    return {
        "name": one.name,
        "level": number(one.level),
        "low": number(one.low),
        "high": number(one.high),
        "grade": one.grade,
    }


def block_form(block: Block) -> Told:
    """Return one tip on this float in this swim.

    Parameters
    ----------
    block : Block
        The tip looked at.

    Returns
    -------
    dict
        With the keys ``tip``, ``paint``, ``visibility``, ``handling``, ``load``.
    """
    tip, seen, handled, loaded = block.tip, block.visibility, block.handling, block.load
    return {
        "tip": {
            "diameter_mm": number(tip.stock.diameter_mm),
            "showing_mm": number(tip.showing_mm),
            "stock": tip.stock.kind,
        },
        "paint": [
            {
                "paint": band.paint,
                "from_top_mm": number(band.from_top_mm),
                "to_top_mm": number(band.to_top_mm),
            }
            for band in shown(block.bands, tip.showing_mm)
        ],
        "visibility": {
            "level": number(seen.level),
            "low": number(seen.low),
            "high": number(seen.high),
            "grade": seen.grade,
            "goes_at_m": number(seen.goes_at_m),
            "gone_at_m": number(seen.gone_at_m),
            "by_background": [_sight(one) for one in seen.by_background],
        },
        "handling": {
            "sink_force_g": number(handled.sink_force_g),
            "stiffness_g_per_mm": number(handled.stiffness_g_per_mm),
            "ride_margin": number(min(handled.ride_margin, MOST_MARGIN)),
            "time_under": number(handled.time_under),
            "dips_per_min": number(handled.dips_per_min),
            "ordinary_dip_s": number(handled.ordinary_dip_s),
            "hidden_mm": number(handled.hidden_mm),
            "slow_bite_g": number(handled.slow_bite_g),
            "pluck_g": number(handled.pluck_g),
            "visible_dip_mm": number(handled.visible_dip_mm),
            "lean_deg": number(handled.lean_deg),
            "upright": bool(handled.upright),
        },
        "load": {
            "shot_metal": loaded.shot_metal,
            "shot_g": number(loaded.shot_g),
            "change_g": number(loaded.change_g),
            "shot": [
                {"name": line.name, "count": line.count, "where": line.where}
                for line in loaded.shot
            ],
            "short_by_g": number(loaded.short_by_g),
        },
    }


def _change(change: Change) -> Told:
    return {
        "kind": change.kind,
        "at_the_bank": change.at_the_bank,
        "words": change.words,
        "undo": change.undo,
        "options": dict(change.options),
        "block": block_form(change.block),
    }


def _step(step: Step) -> Told:
    return {
        "grade": step.grade,
        "words": step.words,
        "options": dict(step.options),
        "block": block_form(step.block) if step.block is not None else None,
    }


def _reason(reason: Reason) -> Told:
    return {
        "words": reason.words,
        "options": dict(reason.options),
        "block": block_form(reason.block) if reason.block is not None else None,
    }


def _rung(rung: Rung) -> Told:
    return {
        "range_m": number(rung.range_m),
        "tip_in_hand": {name: number(level) for name, level in rung.in_hand.items()},
        "advised": {name: number(level) for name, level in rung.advised.items()},
    }


def _point(point: TradePoint) -> Told:
    return {
        "of": point.of,
        "diameter_mm": number(point.diameter_mm),
        "showing_mm": number(point.showing_mm),
        "level": number(point.level),
        "sink_force_g": number(point.sink_force_g),
        "ride_margin": number(min(point.ride_margin, MOST_MARGIN)),
        "passes": bool(point.passes),
        "chosen": bool(point.chosen),
    }


def nulls(told: Any, where: str = "") -> dict[str, list[str]]:
    """Return where numbers are null, by the last key of each.

    Parameters
    ----------
    told : dict, list or plain value
        A part of the object.
    where : str
        How it is reached from the top.

    Returns
    -------
    dict of list of str
        Places by key.

    Examples
    --------
    >>> nulls({"visibility": {"goes_at_m": None, "level": 2.0}})
    {'goes_at_m': ['visibility.goes_at_m']}
    """
    found: dict[str, list[str]] = {}
    if isinstance(told, dict):
        parts = [(f"{where}.{key}" if where else key, key, value) for key, value in told.items()]
    elif isinstance(told, list):
        parts = [(f"{where}[{n}]", "", value) for n, value in enumerate(told)]
    else:
        return found
    for path, key, value in parts:
        if value is None and key not in ("block", "at_the_bench"):
            found.setdefault(key, []).append(path)
        for name, places in nulls(value, path).items():
            found.setdefault(name, []).extend(places)
    return found


def _null_warnings(told: Told) -> list[str]:
    return [
        f"{key} is null in {', '.join(places)}: "
        f"{_NULL.get(key, 'it is undefined or without limit here')}"
        for key, places in nulls(told).items()
    ]


def json_form(answer: Answer) -> Told:
    """Return the answer as a plain object, ready for ``json.dumps``.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    dict
        Schema version 1. Numbers are told to four figures; ride margins end at 20; what is
        undefined or without limit is None, and ``warnings`` says why.

    Examples
    --------
    >>> from tipsight.advice.advise import advise
    >>> from tipsight.inputs.question import Question
    >>> told = json_form(advise(Question(distance="12 yd", behind=["dark"], paint="white")))
    >>> list(told)[:5]
    ['schema', 'question', 'assumed', 'tip_in_hand', 'at_the_bank']
    """
    bench = answer.at_the_bench
    told: Told = {
        "schema": SCHEMA,
        "question": {
            key: list(value) if isinstance(value, tuple) else value
            for key, value in answer.question.items()
        },
        "assumed": [{"item": one.item, "taken": one.taken} for one in answer.assumed],
        "tip_in_hand": block_form(answer.tip_in_hand),
        "at_the_bank": block_form(answer.at_the_bank.block),
        "at_the_bench": block_form(bench.block) if bench is not None else None,
        "changes": [_change(change) for change in answer.changes],
        "next_step": [_step(step) for step in answer.next_step],
        "by_distance": [_rung(rung) for rung in answer.by_distance],
        "trade_off": [_point(point) for point in answer.trade_off],
        "reasons": [_reason(reason) for reason in answer.reasons],
        "doubts": [
            {"name": doubt.name, "words": doubt.words, "spread": number(doubt.spread)}
            for doubt in answer.doubts
        ],
    }
    told["warnings"] = [*answer.warnings, *_null_warnings(told)]
    told["cautions"] = [
        {"words": caution.words, "trigger": caution.trigger} for caution in answer.cautions
    ]
    return told
