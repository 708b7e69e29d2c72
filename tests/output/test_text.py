"""The text of an answer made by hand."""

import re
from dataclasses import replace

import pytest
import sample

from tipsight.advice.answer import Answer, Change, ShotLine
from tipsight.advice.facts import (
    CarryLight,
    Failure,
    Limit,
    Note,
    OtherStretch,
    Repaint,
    Show,
    StandHigher,
    Undo,
    Warn,
)
from tipsight.load import shot
from tipsight.load.causes import Cause, Part
from tipsight.load.line import ShotChange
from tipsight.output import doing, readings, telling
from tipsight.output.head import gained, head, places
from tipsight.output.measures import Reader
from tipsight.output.text import text

ANSWERS = {
    "plain": sample.answer(),
    "no bench": sample.answer(bench=False),
    "passes": sample.answer(passes=True),
    "two waters": sample.answer(waters=("dark", "bright")),
    "four waters": sample.answer(waters=("dark", "bright", "sun lane", "trees 9 m high")),
    "long": sample.longwinded(),
}


@pytest.mark.parametrize("name", ANSWERS)
def test_it_fits_the_screen(name: str) -> None:
    lines = text(ANSWERS[name]).splitlines()
    assert len(lines) <= 40
    assert max(map(len, lines)) <= 80
    assert all(line == line.rstrip() for line in lines)
    assert all(len(line) <= 80 for line in text(ANSWERS[name], full=True).splitlines())


def places_of(answer: Answer) -> dict[str, str]:
    """The first lines by label, those of the bench marked."""
    return {
        f"{'bench ' * place.bench}{place.label}": "; ".join(place.clauses)
        for place in places(answer)
    }


@pytest.mark.parametrize("name", ANSWERS)
def test_the_first_lines_say_what_to_do_in_places(name: str) -> None:
    said = places_of(ANSWERS[name])
    assert said["NOW"] == (
        "pen the top 10 mm (3/8 in) black and let 30 mm (1¼ in) show: take off a No 8"
    )
    assert said["YOU GET"].startswith(
        "kept in view, where it was in and out"
        if name == "passes"
        else "followed, where it was in and out; short of kept in view"
    )
    assert said["PRICE"] == "the pen ends the paint beneath for the day"
    if ANSWERS[name].at_the_bench is not None:
        assert said["bench AT THE BENCH"].startswith(
            "fit 5 mm thin tube (4 mm bore), 45 mm (1¾ in) showing, black 22 mm over "
            "fluorescent orange 23 mm: put on a No 6 and a No 10; kept in view, where it was in and "
            "out; "
        )
        assert "a No 5 and a No 12 (0.14 g) bury it" in said["bench AT THE BENCH"]


@pytest.mark.parametrize("name", ANSWERS)
def test_they_are_six_lines_at_the_most_and_none_is_cut(name: str) -> None:
    lines = head(ANSWERS[name])
    assert len(lines) <= 6
    assert not any(line.endswith("...") for line in lines)
    assert text(ANSWERS[name]).splitlines()[: len(lines)] == list(lines)


def test_how_soon_a_bite_is_noticed_is_said() -> None:
    assert (
        "a tip that stays down is noticed in about 2½ s" in places_of(sample.answer())["YOU GET"]
    )
    old = sample.answer()
    seen = replace(old.at_the_bank.block.visibility, notice_s=None)
    dull = replace(old.at_the_bank, block=replace(old.at_the_bank.block, visibility=seen))
    assert "noticed" not in places_of(replace(old, at_the_bank=dull))["YOU GET"]


def test_just_short_is_not_out_of_reach() -> None:
    old = sample.answer(passes=True)
    seen = replace(old.at_the_bank.block.visibility, level=4.8, grade="followed")
    block = replace(old.at_the_bank.block, visibility=seen)
    said = places_of(replace(old, at_the_bank=replace(old.at_the_bank, block=block)))["YOU GET"]
    assert "followed, where it was in and out; just short of kept in view" in said


def _as_it_is(answer: Answer, fails: tuple[Failure, ...]) -> Answer:
    block = replace(answer.tip_in_hand, fails=fails)
    return replace(
        answer,
        tip_in_hand=block,
        at_the_bank=Change((), True, Undo.NOTHING, block),
    )


def test_the_tip_as_it_is_is_told_with_its_shot() -> None:
    done = places_of(_as_it_is(sample.answer(), ()))
    assert done["NOW"] == "leave it as it is, 20 mm (¾ in) showing, 1.82 g of tin shot"
    assert done["YOU GET"].startswith("in and out")
    assert "PRICE" not in done
    short = places_of(_as_it_is(sample.answer(), (Failure(Limit.RIDE, 1.2, 2.0),)))
    assert short["YOU GET"].startswith("in and out; does not ride this water")


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        (Limit.SIGHT, "short of easy"),
        (Limit.RIDE, "does not ride this water"),
        (Limit.BITE, "stiffer than the bites allow"),
        (Limit.STRENGTH, "longer than such a tip can stand"),
        (Limit.BALANCE, "top-heavy"),
        (Limit.BODY, "too thick for the body"),
        (Limit.ROOM, "no room in the body to glue it"),
        (Limit.GLUE, "held by little glue"),
        (Limit.LOAD, "no shot left to cock it"),
    ],
)
def test_each_limit_in_few_words(limit: Limit, said: str) -> None:
    assert telling.shortcoming(limit, "easy") == said


@pytest.mark.parametrize(
    ("failure", "said"),
    [
        (
            Failure(Limit.SIGHT, 1.69, 5.0),
            "sight: in and out (level 1.6) where kept in view (5) is wanted",
        ),
        (Failure(Limit.RIDE, 1.98, 2.0), "ride: margin 1.9 where 2 is the least"),
        (
            Failure(Limit.BITE, 0.912, 0.33),
            "bite: 0.91 g to sink it where 0.33 g is the most",
        ),
        (
            Failure(Limit.STRENGTH, 60.0, 35.0),
            "strength: 60 mm showing where 35 mm is the most",
        ),
        (Failure(Limit.BALANCE, 1.2, 3.0), "balance: top-heavy, it leans or falls over"),
        (Failure(Limit.BODY, 5.5, 4.26), "body: 5.5 mm thick where 4.3 mm is the most"),
        (Failure(Limit.ROOM, 8.0, 6.0), "room: 8 mm to glue in where the body has 6 mm"),
        (Failure(Limit.GLUE, 5.0, 5.4), "glue: 5 mm glued in where 5.4 mm is the least"),
        (
            Failure(Limit.BODY, 5.5, 4.26, as_it_is=True),
            "body: 5.5 mm thick where 4.3 mm is the most, as it is",
        ),
        (Failure(Limit.LOAD, 0.01, 0.02), "load: 0.01 g left for shot where 0.02 g is the least"),
    ],
)
def test_each_limit_with_its_numbers(failure: Failure, said: str) -> None:
    assert telling.failure(failure) == said


def test_a_repaint_is_no_refit() -> None:
    old = sample.answer().at_the_bench
    tip = old.block.tip
    change = replace(old, actions=(Repaint(tip.showing_mm, tip.bands),))
    assert doing.change(change).startswith(
        "repaint it black 22 mm over fluorescent orange 23 mm, 45 mm"
    )
    assert "CUT " not in text(replace(sample.answer(), at_the_bench=change))


def test_when_nothing_can_be_fitted_the_bench_says_which_limit_and_the_cure() -> None:
    assert places_of(sample.answer(bench=False))["bench AT THE BENCH"] == (
        "3 mm quill, 25 mm showing, black could be seen, but its ride margin is 1.2 where 2 is the "
        "least; look for calmer water"
    )


def test_metres_leave_no_yard_and_no_inch() -> None:
    reader = Reader("m", inches=False)
    for answer in ANSWERS.values():
        for full in (False, True):
            said = text(answer, full=full, reader=reader)
            assert not re.search(r"\d yd|[¼½¾\d] in\b|YARDS", said)
    assert "SIGHT at 37 m, by" in text(sample.answer(), reader=reader)
    assert "goes at about 25 m" in text(sample.answer(), reader=reader)


def test_the_sections_stand_in_their_order() -> None:
    said = text(sample.answer())
    order = ["SIGHT", "RIDES", "BITES", "SHOT", "CUT", "NEXT STEP", "YARDS", "WHY", "MOST UNSURE",
             "NOT TOLD", "CARE"]  # fmt: skip
    found = [said.index(f"\n{name}") for name in order]
    assert found == sorted(found)


@pytest.mark.parametrize(
    "piece",
    [
        "SIGHT at 40 yd (37 m)",
        "bright  as it is      in and out    1.6 (0.9 to 2.7)  goes at about 27 yd",
        "bright  at the bench  kept in view  5.4 (3.0 to 9.2)  holds past 100 yd",
        "rides well (margin 3.4, likely 2.7 to 4.3); it goes under by itself",
        "a No 5 and a No 12 (0.14 g) bury it; a slow pull of a",
        "1.82 g of tin: bulk 4 BB; droppers No 6, 2 No 8\n",
        "64 mm, 2½ in: 45 mm shows, 12 wet, 7 glued in; 3 coats in all",
        "easy: out of reach with what you have",
        "as it is, bright in-out",
        "MOST UNSURE  how bright the water behind the tip is",
        "NOT TOLD     so taken as:",
        "[a balsa tip to",
    ],
)
def test_it_says(piece: str) -> None:
    assert piece in text(sample.answer())


def test_what_sinks_it_is_said_in_shot_weighed_in_air() -> None:
    """0.144 g of pull in water is 0.167 g of tin in air (density 7290, water 999.7 kg/m3)."""
    assert "a No 5 and a No 12 (0.14 g) bury it" in re.sub(r"\s+", " ", text(sample.answer()))


def test_what_cannot_be_seen_is_not_made_up() -> None:
    answer = sample.answer()
    blind = replace(
        answer.tip_in_hand,
        handling=replace(answer.tip_in_hand.handling, visible_dip_mm=None, slow_bite_g=None),
    )
    said = text(replace(_as_it_is(answer, ()), tip_in_hand=blind))
    assert "seen too poorly to show a bite that does not bury it" in re.sub(r"\s+", " ", said)


def test_cautions_and_warnings_outlive_everything_else() -> None:
    answer = sample.longwinded()
    said = re.sub(r"\s+", " ", text(answer))
    assert all(telling.caution(one) in said for one in answer.cautions)
    assert "NOTES Of your lead only No 8" in said
    assert "NOT TOLD so taken as:" in said


def test_full_says_why_the_load_changes() -> None:
    told = sample.answer()
    parts = (Part(Cause.TIP_WEIGHT, -0.056), Part(Cause.TIP_WET, 0.0002))
    changes = [replace(one, causes=() if one.at_the_bank else parts) for one in told.changes]
    bench = replace(told.at_the_bench, causes=parts)
    said = text(replace(told, at_the_bench=bench, changes=tuple(changes)), full=True)
    line = "\nWHY THE SHOT against the tip in hand: the tip's own weight -0.06 g\n"
    assert line in said
    assert "WHY THE SHOT" not in text(told, full=True)


def test_full_says_everything() -> None:
    answer = sample.answer(waters=("dark", "bright"))
    said = text(answer, full=True, start="tipsight advise mine.toml", given={"age": "60"})
    assert said.splitlines()[:5] == text(answer).splitlines()[:5]
    flat = re.sub(r"\s+", " ", said.replace("\\\n", " "))
    for piece in (
        "tipsight advise mine.toml --age=60 --showing='30 mm' --paint='felt pen 0-10 mm, "
        "fluorescent orange 10-30 mm'",
        "tipsight advise mine.toml --age=60 --behind=dark",
        "5 mm 38 mm, 1½ in 4.7 0.40 g 3.0 5 mm 45 mm, 1¾ in 5.4 0.50 g 2.9 advised",
        "6 mm 45 mm, 1¾ in 6.1 0.80 g 20+ passes",
        "x 1.80 water: how bright",
        "x 1.30 eyes:",
        "limits sight: in and out (level 1.6) where kept in view (5) is wanted",
        "under 0.4% of the time",
        "leave it as it is: in and out (1.6), not enough; nothing to undo",
    ):
        assert piece in flat
    named = {"own_eye": "your eyes"}
    for one in answer.assumed:
        assert f"{named.get(one.item, one.item.replace('_', ' '))}: {one.taken}" in flat
    for water in ("dark", "bright"):
        rows = rf"^  {water} +(?:as it is|at the bank|at the bench) "
        assert len(re.findall(rows, said, re.MULTILINE)) == 3


@pytest.mark.parametrize(
    ("upright", "lean_deg", "lift_g", "said"),
    [
        (True, 2.4, 0.0, "upright, leaning 2 deg"),
        (True, 12.0, 0.2, "upright, leaning 12 deg; holding back lifts it by 0.20 g"),
        (True, None, None, "held back so, it lies flat"),
        (False, 90.0, 0.0, "falls over"),
    ],
)
def test_how_it_stands(
    upright: bool, lean_deg: float | None, lift_g: float | None, said: str
) -> None:
    block = sample.answer().tip_in_hand
    handled = replace(block.handling, upright=upright, lean_deg=lean_deg, lift_g=lift_g)
    assert readings.stands(replace(block, handling=handled)) == said


def test_a_bare_answer_is_told_without_a_stumble() -> None:
    bare = replace(
        sample.answer(bench=False), doubts=(), assumed=(), warnings=(), cautions=(), reasons=(),
        by_distance=(), trade_off=(), next_step=(),
    )  # fmt: skip
    said = text(bare)
    assert "AT THE BENCH nothing that you have does better" in said
    assert not re.search(r"^(CARE|NOTE|WHY|NOT TOLD|YARDS|NEXT)", said, re.MULTILINE)
    assert "DOUBTS" not in text(bare, full=True)


def _not_followed(answer: Answer) -> Answer:
    seen = replace(answer.at_the_bank.block.visibility, level=1.3, grade="in and out")
    block = replace(answer.at_the_bank.block, visibility=seen)
    return replace(answer, at_the_bank=replace(answer.at_the_bank, block=block))


def test_where_it_is_not_even_followed_how_far_in_to_come_is_said_first() -> None:
    old = _not_followed(sample.answer())
    said = places_of(replace(old, changes=(*old.changes, sample.closer(old.at_the_bank, 26))))
    assert said["NOW"] == (
        "pen the top 10 mm (3/8 in) black and let 30 mm (1¼ in) show: take off a No 8, "
        "and come in to 26 yd"
    )
    assert said["YOU GET"] == "kept in view there; at 40 yd it is in and out at the best"


def test_where_it_is_followed_to_come_in_is_the_other_way() -> None:
    old = sample.answer()
    same = sample.closer(old.at_the_bank, 26)
    said = places_of(replace(old, changes=(*old.changes, same)))
    assert said["OR"] == "come in to 26 yd: kept in view"
    tip = replace(old.at_the_bank.block.tip, showing_mm=33.0)
    block = replace(old.at_the_bank.block, tip=tip)
    shown = replace(old.at_the_bank, actions=(Show(33.0, True),), block=block)
    said = places_of(replace(old, changes=(*old.changes, sample.closer(shown, 26))))
    assert said["OR"] == (
        "let 33 mm (1¼ in) show: take off a No 8, and come in to 26 yd: kept in view"
    )


def test_other_ways_out_stand_beside_it() -> None:
    old = sample.answer()
    high = replace(old.at_the_bank, actions=(StandHigher(2.5),))
    dark = replace(old.at_the_bank, actions=(OtherStretch("dark"),))
    said = places_of(replace(old, changes=(*old.changes, high, dark)))
    assert said["OR"] == (
        "stand with your eye 8 ft above the water: followed; "
        "fish a stretch with dark water behind the tip: followed"
    )


def test_a_sun_lane_is_said_before_all_else() -> None:
    lane = replace(sample.answer(), warnings=(Warn(Note.SUN_LANE),))
    first = places(lane)[0]
    assert (first.label, first.clauses[0][:45]) == (
        "FIRST",
        "nothing inside the sun lane can be depended o",
    )


def test_paints_that_do_as_well_are_named() -> None:
    old = sample.answer()
    either = replace(old.at_the_bench, either=("fluorescent yellow",))
    assert doing.change(either).endswith("(or fluorescent yellow: either will do)")
    several = replace(old.at_the_bench, either=("white", "orange"))
    assert doing.change(several).endswith("(or white or orange: any will do)")


def test_a_grade_beyond_the_usual_is_told_with_its_price() -> None:
    step = sample.answer().next_step[1]
    assert readings.step(sample.CASE, step) == (
        "5 mm thin tube, 45 mm showing, black over fluorescent orange"
    )
    assert readings.step(sample.CASE, replace(step, unusual=True)) == (
        "5 mm thin tube, 45 mm showing, black over fluorescent orange, and a No 5 and a No 12 to "
        "sink it: beyond the usual"
    )


def test_what_one_water_gains_is_told_though_the_worst_stays() -> None:
    tip = sample.answer().tip_in_hand.tip
    before = sample.block(tip, 0.4, "not seen", None, (sample.SIGHT,), ("bright", "dark"))
    bright, dark = before.visibility.by_background
    better = replace(dark, level=3.0, grade="followed")
    seen = replace(before.visibility, by_background=(bright, better))
    after = replace(before, visibility=seen)
    assert gained(before, before) == []
    assert gained(before, after) == ["on dark water followed, where it was not seen"]
    assert gained(after, before) == []


@pytest.mark.parametrize(
    ("force_g", "said"),
    [(0.144, "a No 5 and a No 12 (0.14 g) bury it"), (0.345, "a BB (0.34 g) buries it")],
)
def test_one_shot_sinks_it_and_two_sink_it(force_g: float, said: str) -> None:
    block = sample.answer().tip_in_hand
    block = replace(block, handling=replace(block.handling, sink_force_g=force_g))
    assert readings.bites(sample.CASE, block).startswith(said)


def test_nothing_is_told_of_bites_where_it_does_not_ride() -> None:
    block = sample.answer().tip_in_hand
    wild = replace(
        block, handling=replace(block.handling, ride_margin=1.97, ride_margin_low=1.6, ride_margin_high=2.4)
    )
    assert readings.ride(wild) == (
        "does not ride this water (margin 1.9, likely 1.6 to 2.4); it goes under by itself four times "
        "a minute: too often to tell a bite by"
    )
    fallen = replace(block, handling=replace(block.handling, upright=False))
    assert readings.ride(fallen) == "falls over"


@pytest.mark.parametrize(("count", "told"), [(16, False), (17, True)])
def test_shot_past_counting_is_told_of(count: int, told: bool) -> None:
    block = sample.answer().tip_in_hand
    lines = (ShotLine("No 8", count, "bulk"),)
    said = readings.load(replace(block, load=replace(block.load, shot=lines)))
    assert ("too many to pinch on" in said) is told


def test_what_was_amiss_before_is_told_where_the_change_cures_it() -> None:
    old = sample.answer(passes=True)
    stiff = replace(old.tip_in_hand, fails=(sample.SIGHT, Failure(Limit.BITE, 0.9, 0.3)))
    said = places_of(replace(old, tip_in_hand=stiff))["YOU GET"]
    assert "kept in view, where it was in and out; no longer stiffer than the bites allow" in said


def test_a_light_stick_that_is_offered_stands_in_the_first_lines() -> None:
    old = sample.answer()
    off = ShotChange((), (("No 1", 1),), -0.3, 0.0)
    block = replace(old.tip_in_hand, load=replace(old.tip_in_hand.load, step=off))
    stick = replace(old.at_the_bank, actions=(CarryLight("3 x 23 mm"),), block=block)
    offered = replace(old, changes=(*old.changes, stick))
    assert places_of(offered)["OR"] == "a light stick, where allowed: take off the No 1"
    assert "light stick" not in " ".join(head(old))


@pytest.mark.parametrize(
    ("slow_g", "said"),
    [
        (0.1, "a slow pull of two No 8 or a quick one of a No 1 and a No 9 shows"),
        (0.15, "a slow one that shows buries it"),  # 0.144 g is enough, its meniscus left aside
        (0.2, "a slow one that shows buries it"),
        (None, "a slow one that shows buries it"),
    ],
)
def test_no_slow_pull_is_told_that_is_more_than_what_buries_it(
    slow_g: float | None, said: str
) -> None:
    block = sample.answer().tip_in_hand
    handled = replace(block.handling, slow_bite_g=slow_g)
    assert said in readings.bites(sample.CASE, replace(block, handling=handled))


def test_a_force_is_said_in_no_lead_that_the_rules_leave_out() -> None:
    box = sample.CASE.box
    lead = replace(box, shot_metal="lead", shot=shot.sizes("lead"))
    said = readings.force(replace(sample.CASE, box=lead), 0.27)
    assert said.words == "five No 8 (0.27 g)"
    assert said.many
