"""An answer as plain values: what ``Answer.to_dict`` and ``Answer.row`` return; facts, no sentence."""

import math
from typing import TYPE_CHECKING, Any

from tipsight.inputs.case import shown

if TYPE_CHECKING:
    from tipsight.advice.answer import Answer, Block, Change, Nearly, Reason, Step
    from tipsight.advice.facts import Warn

Told = dict[str, Any]
_HANDLING = (
    *("sink_force_g", "stiffness_g_per_mm", "ride_margin", "ride_margin_low", "ride_margin_high"),
    *("time_under", "dips_per_min"),
    *("ordinary_dip_s", "hidden_mm", "slow_bite_g", "pluck_g", "visible_dip_mm", "lean_deg"),
    "upright",
)
_SEEN = ("level", "low", "high", "grade")


def plain(value: Any) -> Any:
    """Return any fact as plain values, None for a number that is undefined or without limit.

    Examples
    --------
    >>> plain((1.5, float("inf"), {"paint": "black"}))
    [1.5, None, {'paint': 'black'}]
    """
    if isinstance(value, str):
        return f"{value}"
    if isinstance(value, float):
        return float(value) if math.isfinite(value) else None
    if isinstance(value, bool | int) or value is None:
        return value
    if isinstance(value, tuple | list):
        return [plain(one) for one in value]
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    return {key: plain(one) for key, one in vars(value).items()}


def _picked(thing: object, *keys: str) -> Told:
    return {key: plain(getattr(thing, key)) for key in keys}


def _counted(shot: tuple[tuple[str, int], ...]) -> list[Told]:
    return [{"name": name, "count": count} for name, count in shot]


def block(told: "Block") -> Told:
    """Return one tip on this float in this swim."""
    tip, seen, load = told.tip, told.visibility, told.load
    return {
        "tip": {
            **_picked(tip.stock, "diameter_mm"),
            **_picked(tip, "showing_mm"),
            "stock": tip.stock.kind,
        },
        "paint": plain(shown(tip.bands, tip.showing_mm)),
        "visibility": {
            **_picked(seen, *_SEEN, "goes_at_m", "gone_at_m", "notice_s"),
            "by_background": [_picked(one, "name", *_SEEN) for one in seen.by_background],
        },
        "handling": _picked(told.handling, *_HANDLING),
        "load": {
            **_picked(load, "shot_metal", "shot_g", "change_g"),
            "put_on": _counted(load.step.on),
            "take_off": _counted(load.step.off),
            **_picked(load, "shot", "short_by_g", "high_mm"),
        },
        "passes": told.passes,
        "fails": plain(told.fails),
    }


def _change(told: "Change") -> Told:
    return {
        "kind": told.kind,
        "at_the_bank": told.at_the_bank,
        "actions": [{"do": one.do, **plain(one)} for one in told.actions],
        **_picked(told, "undo", "options", "either"),
        "causes": [_picked(part, "cause", "shot_g") for part in told.causes],
        "block": block(told.block),
    }


def _step(told: "Step") -> Told:
    return {
        **_picked(told, "grade", "in_hand", "unusual", "options"),
        "block": block(told.block) if told.block is not None else None,
    }


def _reason(told: "Reason") -> Told:
    facts = {key: one for key, one in vars(told).items() if one not in ("", None)}
    seen = {"block": block(facts.pop("block"))} if "block" in facts else {}
    return {"kind": told.kind, **plain(facts), **seen}


def _warning(told: "Warn | Nearly") -> Told:
    facts = {"kind": f"{told.kind}", **plain(dict(told.facts))}
    near = getattr(told, "block", None)
    return facts if near is None else {**facts, "block": block(near)}


def answer(told: "Answer") -> Told:
    """Return the whole answer, numbers as they were worked out."""
    bench = told.at_the_bench
    return {
        "question": plain(dict(told.question)),
        "assumed": plain(told.assumed),
        "tip_in_hand": block(told.tip_in_hand),
        "at_the_bank": block(told.at_the_bank.block),
        "at_the_bench": block(bench.block) if bench is not None else None,
        "changes": [_change(one) for one in told.changes],
        "next_step": [_step(one) for one in told.next_step],
        "by_distance": [
            {
                "range_m": rung.range_m,
                "tip_in_hand": plain(rung.in_hand),
                "advised": plain(rung.advised),
            }
            for rung in told.by_distance
        ],
        "trade_off": [
            {"of": point.of, **{k: v for k, v in plain(point).items() if k != "of"}}
            for point in told.trade_off
        ],
        "reasons": [_reason(one) for one in told.reasons],
        "doubts": plain(told.doubts),
        "warnings": [_warning(one) for one in told.warnings],
        "cautions": plain(told.cautions),
    }


def row(told: "Answer") -> dict[str, float | str | bool | None]:
    """Return the answer as one flat row: what was asked, then each of its three tips."""
    case, bench = told.case, told.at_the_bench
    flat: dict[str, float | str | bool | None] = {
        "range_m": case.place.range_m,
        "behind": "; ".join(stretch.name for stretch in case.stretches),
        "wanted_level": case.wanted.level,
        "pattern": case.float_.pattern,
        "at_the_bank_kind": told.at_the_bank.kind,
        "at_the_bench_kind": bench.kind if bench else None,
    }
    tips = {
        "tip_in_hand": told.tip_in_hand,
        "at_the_bank": told.at_the_bank.block,
        "at_the_bench": bench.block if bench else None,
    }
    for name, one in tips.items():
        flat |= {f"{name}_{key}": value for key, value in _flat(one).items()}
    return flat


def _flat(one: "Block | None") -> dict[str, float | str | bool | None]:
    if one is None:
        return dict.fromkeys(_FLAT)
    values = (
        one.tip.stock.kind,
        one.tip.stock.diameter_mm,
        one.tip.showing_mm,
        " over ".join(band.paint for band in one.tip.bands),
        one.visibility.level,
        one.visibility.grade,
        one.visibility.goes_at_m,
        one.handling.sink_force_g,
        one.handling.ride_margin,
        one.load.shot_g,
        one.load.change_g,
        one.passes,
    )
    return dict(zip(_FLAT, values, strict=True))


_FLAT = (
    *("stock", "diameter_mm", "showing_mm", "paint", "level", "grade", "goes_at_m"),
    *("sink_force_g", "ride_margin", "shot_g", "change_g", "passes"),
)
