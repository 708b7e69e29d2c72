"""An answer in which every field has a number of its own, so that none can stand for another.

What is said with one decimal has a number of one decimal, distances are whole yards, and so on, so
that each number is told as it stands here.
"""

from dataclasses import replace
from typing import Any

import sample

from tipsight.advice.answer import (
    Answer,
    Block,
    Change,
    Handling,
    Load,
    Nearly,
    PaintShows,
    Run,
    Rung,
    ShotLine,
    Sight,
    Size,
    Step,
    TradePoint,
    Turns,
    Unsure,
    Visibility,
    WaterHides,
)
from tipsight.advice.facts import (
    Care,
    Caution,
    Cure,
    Doubt,
    Failure,
    Fit,
    Limit,
    Note,
    Pen,
    Show,
    Undo,
    Warn,
)
from tipsight.inputs.case import Band, Place, Stock, Stretch, Tip, Wanted
from tipsight.load.line import ShotChange

YARD_M = 0.9144
Numbers = dict[str, Any]

IN_HAND: Numbers = {
    "stock": "quill", "diameter_mm": 3.1, "bore_mm": 0.0, "showing_mm": 21.0, "wet_mm": 14.0,
    "glued_mm": 9.0, "coats": 4, "paints": ("red", "white"), "band_mm": 8.0, "painted_mm": 3.37,
    "level": 1.4, "low": 0.6, "high": 2.1, "goes_at_yd": 19, "gone_at_yd": 37, "notice_s": 9.5,
    "dark": {"level": 3.3, "low": 2.6, "high": 4.7, "goes_at_yd": 31, "gone_at_yd": 53, "notice_s": 4.5,
             "colour_share": 0.11},
    "bright": {"level": 1.3, "low": 0.7, "high": 1.9, "goes_at_yd": 17, "gone_at_yd": 29, "notice_s": 10.5,
               "colour_share": 0.13},
    "sink_force_g": 0.23, "sink_force_high_g": 0.31, "stiffness_g_per_mm": 0.0073,
    "ride_margin": 3.7, "ride_margin_low": 2.6, "ride_margin_high": 5.3,
    "time_under": 0.043, "dips_per_min": 13.0, "ordinary_dip_s": 2.5,
    "hidden_mm": 6.0, "hidden_high_mm": 11.0, "slow_bite_g": 0.17, "pluck_g": 0.41,
    "visible_dip_mm": 7.0, "lean_deg": 12.0, "uprightness": 5.9, "lift_g": 0.47,
    "shot_g": 2.27, "pull_g": 1.97, "change_g": 0.59, "on": (("BB", 1), ("No 6", 2)), "off": (),
    "step_g": 0.61, "left_g": 0.021, "shot": (("AAA", 3, "bulk"), ("No 8", 5, "dropper")),
    "short_by_g": 0.053, "high_mm": 6.7, "fails": ((Limit.BITE, 0.62, 0.39),),
}  # fmt: skip
AT_THE_BANK: Numbers = {
    "stock": "quill", "diameter_mm": 3.2, "bore_mm": 0.0, "showing_mm": 33.0, "wet_mm": 4.0,
    "glued_mm": 10.0, "coats": 5, "paints": ("felt pen", "yellow"), "band_mm": 13.0,
    "painted_mm": 3.59,
    "level": 2.8, "low": 1.7, "high": 4.3, "goes_at_yd": 27, "gone_at_yd": 43, "notice_s": 8.5,
    "dark": {"level": 5.7, "low": 4.1, "high": 7.9, "goes_at_yd": 41, "gone_at_yd": 61, "notice_s": 2.5,
             "colour_share": 0.17},
    "bright": {"level": 2.7, "low": 1.6, "high": 4.4, "goes_at_yd": 26, "gone_at_yd": 47, "notice_s": 7.0,
               "colour_share": 0.19},
    "sink_force_g": 0.36, "sink_force_high_g": 0.44, "stiffness_g_per_mm": 0.0083,
    "ride_margin": 4.9, "ride_margin_low": 3.3, "ride_margin_high": 6.6,
    "time_under": 0.029, "dips_per_min": 11.0, "ordinary_dip_s": 1.5,
    "hidden_mm": 5.0, "hidden_high_mm": 12.0, "slow_bite_g": 0.19, "pluck_g": 0.53,
    "visible_dip_mm": 8.0, "lean_deg": 16.0, "uprightness": 6.1, "lift_g": 0.37,
    "shot_g": 2.02, "pull_g": 1.74, "change_g": -0.25, "on": (), "off": (("No 4", 1),),
    "step_g": -0.27, "left_g": 0.019, "shot": (("AB", 2, "bulk"), ("No 10", 7, "dropper")),
    "short_by_g": 0.043, "high_mm": 5.4, "fails": ((Limit.SIGHT, 2.9, 5.2),),
}  # fmt: skip
AT_THE_BENCH: Numbers = {
    "stock": "thin tube", "diameter_mm": 4.3, "bore_mm": 3.4, "showing_mm": 46.0, "wet_mm": 17.0,
    "glued_mm": 8.0, "coats": 6, "paints": ("black", "fluorescent orange"), "band_mm": 24.0,
    "painted_mm": 4.83,
    "level": 5.9, "low": 3.4, "high": 8.2, "goes_at_yd": 44, "gone_at_yd": 71, "notice_s": 5.5,
    "dark": {"level": 9.1, "low": 6.7, "high": 9.7, "goes_at_yd": 57, "gone_at_yd": 83, "notice_s": 1.5,
             "colour_share": 0.23},
    "bright": {"level": 5.8, "low": 3.6, "high": 8.3, "goes_at_yd": 39, "gone_at_yd": 73, "notice_s": 6.5,
               "colour_share": 0.29},
    "sink_force_g": 0.67, "sink_force_high_g": 0.79, "stiffness_g_per_mm": 0.0181,
    "ride_margin": 2.3, "ride_margin_low": 2.1, "ride_margin_high": 3.1,
    "time_under": 0.061, "dips_per_min": 17.0, "ordinary_dip_s": 3.5,
    "hidden_mm": 4.0, "hidden_high_mm": 15.0, "slow_bite_g": 0.22, "pluck_g": 0.71,
    "visible_dip_mm": 9.0, "lean_deg": 19.0, "uprightness": 7.3, "lift_g": 0.27,
    "shot_g": 2.93, "pull_g": 2.51, "change_g": 0.66, "on": (("No 1", 2),), "off": (),
    "step_g": 0.64, "left_g": 0.023, "shot": (("SSG", 1, "bulk"), ("No 12", 9, "dropper")),
    "short_by_g": 0.033, "high_mm": 4.2, "fails": ((Limit.RIDE, 1.8, 2.4),),
}  # fmt: skip


def _sight(name: str, told: Numbers) -> Sight:
    return Sight(
        name=name,
        level=told["level"],
        low=told["low"],
        high=told["high"],
        grade=_grade(told["level"]),
        goes_at_m=told["goes_at_yd"] * YARD_M,
        gone_at_m=told["gone_at_yd"] * YARD_M,
        notice_s=told["notice_s"],
        colour_share=told["colour_share"],
        runs=(Run(_grade(told["level"]), 10 * YARD_M, told["goes_at_yd"] * YARD_M),),
    )


def _grade(level: float) -> str:
    words = ((1.0, "not seen"), (2.4, "in and out"), (5.0, "followed"))
    return next((word for top, word in words if level < top), "kept in view")


HANDLED = (
    *("sink_force_g", "sink_force_high_g", "stiffness_g_per_mm", "ride_margin", "time_under"),
    *("ride_margin_low", "ride_margin_high", "dips_per_min", "ordinary_dip_s", "hidden_mm"),
    *("hidden_high_mm", "slow_bite_g", "pluck_g"),
    *("visible_dip_mm", "lean_deg", "uprightness", "lift_g"),
)


def block(told: Numbers) -> Block:
    """A block of the numbers told."""
    top, foot = told["paints"]
    tip = Tip(
        stock=Stock(told["stock"], told["diameter_mm"], told["bore_mm"]),
        showing_mm=told["showing_mm"],
        wet_mm=told["wet_mm"],
        glued_mm=told["glued_mm"],
        bands=(
            Band(top, 0.0, told["band_mm"]),
            Band(foot, told["band_mm"], told["showing_mm"]),
        ),
        coats=told["coats"],
    )
    return Block(
        tip=tip,
        painted_mm=told["painted_mm"],
        rig=sample.RIG,
        visibility=Visibility(
            level=told["level"],
            low=told["low"],
            high=told["high"],
            grade=_grade(told["level"]),
            goes_at_m=told["goes_at_yd"] * YARD_M,
            gone_at_m=told["gone_at_yd"] * YARD_M,
            notice_s=told["notice_s"],
            by_background=(_sight("dark", told["dark"]), _sight("bright", told["bright"])),
        ),
        handling=Handling(**{key: told[key] for key in HANDLED}, upright=True),
        load=Load(
            shot_metal="tin",
            shot_g=told["shot_g"],
            pull_g=told["pull_g"],
            change_g=told["change_g"],
            step=ShotChange(told["on"], told["off"], told["step_g"], told["left_g"]),
            shot=tuple(ShotLine(*line) for line in told["shot"]),
            short_by_g=told["short_by_g"],
            high_mm=told["high_mm"],
        ),
        fails=tuple(Failure(*fail) for fail in told["fails"]),
    )


RUNGS = (
    (10, {"dark": 1.1, "bright": 2.2}, {"dark": 3.9, "bright": 5.1}),
    (20, {"dark": 10.1, "bright": 0.9}, {"dark": 20.1, "bright": 6.2}),
)
POINTS = (
    (4.1, 38.0, 4.6, 0.57, 3.8, False, False, "longer"),
    (4.2, 47.0, 5.6, 0.69, 2.6, True, True, "longer"),
    (5.1, 48.0, 6.4, 0.87, 2.1, True, False, "thicker"),
)


def answer() -> Answer:
    """The answer."""
    hand, bank, bench = (block(one) for one in (IN_HAND, AT_THE_BANK, AT_THE_BENCH))
    now = Change(
        (Pen(14.0, False), Show(34.0, True)), True, Undo.PAINT_LOST, bank, {"showing": "34 mm"}
    )
    fit = Change(
        (Fit(Stock("cane", 4.4), 51.0, (Band("white", 0.0, 51.0),)),), False, Undo.NEVER, bench,
        {"diameter": "4.4 mm"},
    )  # fmt: skip
    case = replace(
        sample.CASE,
        place=Place(range_m=40 * YARD_M),
        wanted=Wanted(5.3, 0.2),
        stretches=(Stretch("dark"), Stretch("bright")),
    )
    return Answer(
        case=case,
        question={"distance": "40 yd", "age": "63"},
        assumed=sample.CASE.assumed[:3],
        tip_in_hand=hand,
        at_the_bank=now,
        at_the_bench=fit,
        changes=(Change((), True, Undo.NOTHING, hand), now, fit),
        next_step=(
            Step("followed", bank, options={"showing": "29 mm"}),
            Step("kept in view", hand, in_hand=True),
            Step("easy", None),
        ),
        by_distance=tuple(Rung(yards * YARD_M, old, new) for yards, old, new in RUNGS),
        trade_off=tuple(TradePoint(*point) for point in POINTS),
        reasons=(
            Size(38 * YARD_M, 49.0, 4.7, 4.9, 0.52),
            PaintShows("bright", "black", -0.83),
            PaintShows("dark", "white", 3.4),
            WaterHides(18.0, 0.28),
            Turns({"behind": "dark"}, bench, water="dark"),
        ),
        doubts=(Unsure(Doubt.WATER, 1.87), Unsure(Doubt.EYES, 1.36)),
        warnings=(
            Warn(Note.OUT_OF_REACH, {"level": 3.2, "wanted": 5.0, "goes_at_m": 23 * YARD_M}),
            Nearly(bank, Failure(Limit.STRENGTH, 56.0, 41.0), (Cure.THICKER_TIP,)),
            Warn(Note.HELD_LIFTS, {"lift_g": 0.33}),
            Warn(
                Note.OUTSIDE,
                {"name": "slope_rms", "value": 0.21, "low": 0.056, "high": 0.107, "unit": "",
                 "waters": ("dark",)},
            ),
        ),
        cautions=(Caution(Care.SUN), Caution(Care.DUST, "balsa")),
    )  # fmt: skip
