"""An answer made by hand, so that what is said of it can be told apart from what is worked out."""

from dataclasses import replace

from tipsight.advice.answer import (
    Answer,
    Block,
    Change,
    Handling,
    Load,
    Nearly,
    PaintShows,
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
    ComeCloser,
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
from tipsight.advice.swim import swim
from tipsight.inputs import demo
from tipsight.inputs.case import Band, Stock, Stretch, Tip
from tipsight.inputs.settle import settle
from tipsight.load.line import ShotChange

QUESTION = demo.question()
CASE = settle(QUESTION)
SWIM = swim(CASE)
RIG = SWIM.rig
SIGHT = Failure(Limit.SIGHT, 1.6, 5.0)
NOTHING = ShotChange((), (), 0.0, 0.0)
QUILL = Stock("quill", 3.0)
TUBE = Stock("thin tube", 5.0, 4.0)


def sight(name: str, level: float, grade: str, goes_at_m: float | None) -> Sight:
    return Sight(name, level, level / 1.8, level * 1.7, grade, goes_at_m, None, 2.4, 0.2)


def block(
    tip: Tip,
    level: float,
    grade: str,
    goes_at_m: float | None,
    fails: tuple[Failure, ...] = (),
    waters: tuple[str, ...] = ("bright",),
    step: ShotChange = NOTHING,
) -> Block:
    seen = tuple(sight(name, level * (1 + i), grade, goes_at_m) for i, name in enumerate(waters))
    shot = (
        ShotLine("BB", 4, "bulk"),
        ShotLine("No 6", 1, "dropper"),
        ShotLine("No 8", 2, "dropper"),
    )
    return Block(
        tip,
        tip.stock.diameter_mm + 0.18,
        RIG,
        Visibility(level, level / 1.8, level * 1.7, grade, goes_at_m, None, 2.4, seen),
        Handling(
            0.144,
            0.2,
            0.0072,
            3.4,
            2.7,
            4.3,
            0.004,
            4.2,
            1.1,
            4.0,
            9.0,
            0.061,
            0.3,
            3.2,
            1.5,
            9.0,
            True,
            0.0,
        ),
        Load("tin", 1.82, 1.57, step.change_g, step, shot, 0.012, 1.3),
        fails,
    )


OFF = ShotChange((), (("No 8", 1),), -0.06, 0.0)
ON = ShotChange((("No 6", 1), ("No 10", 1)), (), 0.14, 0.0)


def answer(
    *, bench: bool = True, passes: bool = False, waters: tuple[str, ...] = ("bright",)
) -> Answer:
    hand_tip = Tip(QUILL, 20.0, bands=(Band("fluorescent orange", 0, 20),), gloss=True)
    bank_tip = Tip(
        QUILL, 30.0, 0.0, bands=(Band("felt pen", 0, 10), Band("fluorescent orange", 10, 30))
    )
    bench_tip = Tip(
        TUBE, 45.0, 12.0, 7.0, (Band("black", 0, 22.5), Band("fluorescent orange", 22.5, 45))
    )
    short = (SIGHT,)
    in_hand = block(hand_tip, 1.6, "in and out", 25.0, short, waters)
    grade, level = ("kept in view", 5.2) if passes else ("followed", 2.9)
    now = Change(
        (Pen(10.0, False), Show(30.0, True)),
        True,
        Undo.PAINT_LOST,
        block(bank_tip, level, grade, 33.0, () if passes else short, waters, OFF),
        {"showing": "30 mm", "paint": "felt pen 0-10 mm, fluorescent orange 10-30 mm"},
    )
    fit = Change(
        (Fit(TUBE, 45.0, bench_tip.bands),),
        False,
        Undo.NEVER,
        block(bench_tip, 5.4, "kept in view", None, (), waters, ON),
        {"diameter": "5 mm", "stock": "thin tube", "showing": "45 mm"},
    )
    as_it_is = Change((), True, Undo.NOTHING, in_hand)
    levels = {"dark": 8.123456, "bright": 2.0}
    return Answer(
        case=replace(CASE, stretches=tuple(Stretch(name) for name in waters)),
        question=dict(QUESTION.told()),
        assumed=CASE.assumed,
        tip_in_hand=in_hand,
        at_the_bank=now,
        at_the_bench=fit if bench else None,
        changes=(as_it_is, now, *((fit,) if bench else ())),
        next_step=(
            Step("followed", now.block, options={"showing": "25 mm"}),
            Step("kept in view", fit.block, options=fit.options),
            Step("easy", None),
        ),
        by_distance=tuple(Rung(y * 0.9144, levels, levels) for y in (10, 20, 30, 40, 50, 60)),
        trade_off=(
            TradePoint(5.0, 38.1, 4.7, 0.4, 3.0, False, False, "longer"),
            TradePoint(5.0, 45.0, 5.4, 0.5, 2.9, True, True, "longer"),
            TradePoint(6.0, 45.0, 6.1, 0.8, 41.0, True, False, "thicker"),
        ),
        reasons=(
            Size(36.576, 45.0, 5.0, 4.2, 0.47),
            PaintShows(waters[-1], "black", -0.8),
            WaterHides(10.0, 0.05),
            Turns({"behind": "dark"}, fit.block, water="dark"),
        ),
        doubts=(Unsure(Doubt.WATER, 1.8), Unsure(Doubt.EYES, 1.3)),
        warnings=() if bench else (DRAGGED,),
        cautions=(Caution(Care.DUST, "balsa"), Caution(Care.SUN)),
    )


DRAGGED = Nearly(
    block(Tip(QUILL, 25.0, bands=(Band("black", 0, 25),)), 2.7, "followed", 20.0),
    Failure(Limit.RIDE, 1.2, 2.0),
    (Cure.CALMER_WATER,),
)
"""What would be seen if the water did not drag it under."""


def longwinded() -> Answer:
    """Everything as long as it can get."""
    many = answer(bench=False, waters=("dark", "bright", "sun lane", "trees 9 m high"))
    return replace(
        many,
        warnings=tuple(Warn(kind) for kind in (Note.LEAD_LEFT_OUT, *PLAIN_NOTES)),
        cautions=tuple(Caution(kind, "cane") for kind in Care),
        reasons=many.reasons * 2,
    )


PLAIN_NOTES = (Note.NO_STOCK, Note.SINKING_LINE, Note.LIGHT_NOT_RECKONED, Note.LIGHT_AIR)


def closer(change: Change, yards: int, grade: str = "kept in view") -> Change:
    """The same change, done nearer."""
    seen = replace(change.block.visibility, grade=grade)
    return Change(
        (*change.actions, ComeCloser(yards * 0.9144)),
        True,
        change.undo,
        replace(change.block, visibility=seen, fails=()),
        {**change.options, "distance": f"{yards} yd"},
    )
