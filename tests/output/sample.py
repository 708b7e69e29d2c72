"""An answer made by hand, so that what is said of it can be told apart from what is worked out."""

from dataclasses import replace

from tipsight.advice.answer import (
    Answer,
    Block,
    Caution,
    Change,
    Doubt,
    Handling,
    Load,
    Reason,
    Rung,
    ShotLine,
    Sight,
    Step,
    TradePoint,
    Visibility,
)
from tipsight.inputs import demo
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.inputs.settle import settle

QUESTION = demo.question()
CASE = settle(QUESTION)
QUILL = Stock("quill", 3.0)
TUBE = Stock("thin tube", 5.0, 4.0)


def sight(name: str, level: float, grade: str, goes_at_m: float | None) -> Sight:
    return Sight(name, level, level / 1.8, level * 1.7, grade, goes_at_m, None, 0.2)


def block(
    tip: Tip,
    level: float,
    grade: str,
    goes_at_m: float | None,
    fails: tuple[str, ...] = (),
    waters: tuple[str, ...] = ("bright",),
    change_words: str = "",
    change_g: float = 0.0,
) -> Block:
    seen = tuple(sight(name, level * (1 + i), grade, goes_at_m) for i, name in enumerate(waters))
    shot = (
        ShotLine("BB", 4, "bulk"),
        ShotLine("No 6", 1, "dropper"),
        ShotLine("No 8", 2, "dropper"),
    )
    return Block(
        tip,
        tip.bands,
        Visibility(level, level / 1.8, level * 1.7, grade, goes_at_m, None, seen),
        Handling(
            0.144, 0.2, 0.0072, 3.4, 0.004, 4.2, 1.1, 4.0, 9.0, 0.061, 0.3, 3.2, 1.5, True, 0.0
        ),
        Load("tin", 1.82, 1.57, change_g, change_words, shot, 0.012),
        fails,
    )


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
    short = ("sight: in and out (level 1.6) where kept in view (5) is wanted",)
    in_hand = block(hand_tip, 1.6, "in and out", 25.0, short, waters)
    grade, level = ("kept in view", 5.2) if passes else ("seen when stared at", 2.9)
    now = Change(
        "pen and show more",
        True,
        "pen the top 10 mm black and let 30 mm show: take off a No 8",
        "the pen ends the paint beneath for the day",
        block(
            bank_tip, level, grade, 33.0, () if passes else short, waters, "take off a No 8", -0.06
        ),
        {"showing": "30 mm", "paint": "felt pen 0-10 mm, fluorescent orange 10-30 mm"},
    )
    fit = Change(
        "fit",
        False,
        "fit 5 mm thin tube, 45 mm showing, black over fluorescent orange",
        "cannot be undone",
        block(bench_tip, 5.4, "kept in view", None, (), waters, "put on a No 6 and a No 10", 0.14),
        {"diameter": "5 mm", "stock": "thin tube", "showing": "45 mm"},
    )
    as_it_is = Change("as it is", True, "leave it as it is", "nothing to undo", in_hand, {})
    levels = {"dark": 8.123456, "bright": 2.0}
    return Answer(
        case=CASE,
        question=dict(QUESTION.told()),
        assumed=CASE.assumed,
        tip_in_hand=in_hand,
        at_the_bank=now,
        at_the_bench=fit if bench else None,
        changes=(as_it_is, now, *((fit,) if bench else ())),
        next_step=(
            Step(
                "seen when stared at",
                now.block,
                "3 mm quill, 25 mm showing, black",
                {"showing": "25 mm"},
            ),
            Step(
                "kept in view",
                fit.block,
                "5 mm thin tube, 45 mm showing, black over fluorescent orange",
                fit.options,
            ),
            Step("easy", None, "out of reach with what you have"),
        ),
        by_distance=tuple(Rung(y * 0.9144, levels, levels) for y in (10, 20, 30, 40, 50, 60)),
        trade_off=(
            TradePoint(5.0, 38.1, 4.7, 0.4, 3.0, False, False, "longer"),
            TradePoint(5.0, 45.0, 5.4, 0.5, 2.9, True, True, "longer"),
            TradePoint(6.0, 45.0, 6.1, 0.8, 41.0, True, False, "thicker"),
        ),
        reasons=(
            Reason(
                "At 40 yd, 45 mm of 5 mm spans 4.2 by 0.47 arc minutes: "
                "it is seen by its area, not its shape."
            ),
            Reason("On bright water black shows best: darker than the water by 80%."),
            Reason("The nearer ripples hide about 10 mm of the foot."),
            Reason(
                "Were the water behind it dark, the choice would turn to yellow.",
                {"behind": "dark"},
                fit.block,
            ),
        ),
        doubts=(
            Doubt(
                "water",
                "how bright the water behind the tip is: look from where your eye will be",
                1.8,
            ),
            Doubt("eyes", "your own eyes against those of your age", 1.3),
        ),
        warnings=()
        if bench
        else ("nothing passes; the water would drag it under (margin 1.2 where 2 is the least)",),
        cautions=(
            Caution(
                "Cutting and sanding makes dust: wear a mask, or sand wet.",
                "a tip is cut to length",
            ),
            Caution("Do not stare into the sun: check your local rules.", "the sun is near"),
        ),
    )


def longwinded() -> Answer:
    """Everything as long as it can get."""
    many = answer(bench=False, waters=("dark", "bright", "sun lane", "trees 9 m high"))
    return replace(
        many,
        warnings=tuple(
            f"warning {i}: {'this is told at some length, as some are ' * 4}" for i in range(5)
        ),
        cautions=tuple(
            Caution(f"Caution {i}: {'take the usual care with this thing ' * 3}", "a trigger")
            for i in range(6)
        ),
        reasons=many.reasons * 2,
    )
