"""The answer as one plain object for programs, schema version 2: facts, and beside them their text."""

import math
from typing import Any

from tipsight.advice import as_values
from tipsight.advice.answer import Answer, Block
from tipsight.output import doing, readings, telling, warned
from tipsight.output.measures import ANGLER, MOST_MARGIN, Reader

SCHEMA = 2
FIGURES = 4
"""Figures that numbers are told to; the sums hold no more."""
Told = dict[str, Any]
_NULL = {
    "goes_at_m": "the level does not cross what is wanted within the distances looked at",
    "gone_at_m": "the tip is not gone within the distances looked at",
    "notice_s": "the tip is not followed, so nothing tells that it has gone",
    "ordinary_dip_s": "the tip hardly ever goes under",
    "lean_deg": "held back so hard, the float lies flat",
    "slow_bite_g": "no dip can be told at this distance",
    "visible_dip_mm": "no dip can be told at this distance",
}
"""Why a number may be null."""
_MAY_BE_NULL = ("block", "at_the_bench")


def number(value: float | None) -> float | int | None:
    """Return a number to four figures, null where it is undefined or without limit.

    Examples
    --------
    >>> number(1.234567), number(float("inf")), number(None), number(0.0)
    (1.235, None, None, 0.0)
    """
    if value is None or not math.isfinite(value):
        return None
    return float(f"{value:.{FIGURES}g}")


_MARGINS = ("ride_margin", "ride_margin_low", "ride_margin_high")


def _rounded(told: Any, key: str = "") -> Any:
    """Return plain values to four figures, ride margins held at their end."""
    if isinstance(told, dict):
        return {name: _rounded(one, name) for name, one in told.items()}
    if isinstance(told, list):
        return [_rounded(one) for one in told]
    if key in _MARGINS and told is not None:
        return number(min(told, MOST_MARGIN))
    return number(told) if isinstance(told, float) else told


def block_form(block: Block) -> Told:
    """Return one tip on this float in this swim, numbers to four figures."""
    found: Told = _rounded(as_values.block(block))
    return found


def nulls(told: Any, where: str = "") -> dict[str, list[str]]:
    """Return where numbers are null, by the last key of each.

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
        if value is None and key not in _MAY_BE_NULL:
            found.setdefault(key, []).append(path)
        for name, places in nulls(value, path).items():
            found.setdefault(name, []).extend(places)
    return found


def _null_warnings(told: Told) -> list[Told]:
    return [
        {
            "kind": "null",
            "key": key,
            "places": places,
            "text": f"{key} is null in {', '.join(places)}: "
            f"{_NULL.get(key, 'it is undefined or without limit here')}",
        }
        for key, places in nulls(told).items()
    ]


def json_form(answer: Answer, reader: Reader = ANGLER) -> Told:
    """Return the answer as a plain object, ready for ``json.dumps``.

    Parameters
    ----------
    answer : Answer
        Facts.
    reader : Reader
        In whose units the texts are; the numbers keep the units of their names.

    Returns
    -------
    dict
        Schema version 2. Numbers are told to four figures; ride margins end at 20; what is
        undefined or without limit is None, and ``warnings`` says why.

    Examples
    --------
    >>> from tipsight.advice.advise import advise
    >>> from tipsight.inputs.question import Question
    >>> told = json_form(advise(Question(distance="12 yd", behind=["dark"], paint="white")))
    >>> list(told)[:5]
    ['schema', 'question', 'assumed', 'tip_in_hand', 'at_the_bank']
    """
    told: Told = {"schema": SCHEMA, **_rounded(answer.to_dict())}
    case = answer.case
    for key, texts in {
        "changes": [doing.change(one, reader) for one in answer.changes],
        "next_step": [readings.step(case, one) for one in answer.next_step],
        "reasons": [telling.reason(one, case, reader) for one in answer.reasons],
        "doubts": [telling.doubt(one) for one in answer.doubts],
        "warnings": [warned.warning(one, case, reader) for one in answer.warnings],
        "cautions": [telling.caution(one) for one in answer.cautions],
    }.items():
        for facts, text in zip(told[key], texts, strict=True):
            facts["text"] = text
    for facts, caution in zip(told["cautions"], answer.cautions, strict=True):
        facts["trigger"] = telling.trigger(caution)
    told["warnings"] += _null_warnings(told)
    return told
