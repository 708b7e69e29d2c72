"""Each limit inside, at and outside its edge: one verdict in the mask, in the failures, in words."""

from collections.abc import Callable
from dataclasses import replace
from functools import reduce

import numpy as np
import pytest
import sample

from tipsight.advice import bench, limits
from tipsight.advice.advise import advise, examine
from tipsight.advice.bench import shelf
from tipsight.advice.choose import Pick
from tipsight.advice.close_look import close_look, is_sound
from tipsight.advice.facts import Cure, Failure, Limit
from tipsight.advice.limits import BOUNDS, BY_LIMIT, Measures, failures, kept
from tipsight.advice.swim import Swim
from tipsight.inputs.case import Stock, Wanted
from tipsight.inputs.question import Question
from tipsight.load import balance
from tipsight.output import telling, warned

SWIM = replace(
    sample.SWIM,
    case=replace(sample.CASE, wanted=Wanted(level=5.0, bite_share=0.2)),
    pattern=replace(
        sample.SWIM.pattern, max_showing_diameters=12.0, max_showing_mm=35.0, max_body_share=0.4
    ),
    hull=replace(sample.SWIM.hull, body_diameter_mm=12.5, body_length_mm=60.0),
)
GOOD = Measures(
    level=6.0, ride_margin=3.0, sink_force_g=0.2, pull_g=2.0, diameter_mm=2.5, showing_mm=25.0,
    glued_mm=20.0, outside_mm=35.0, uprightness=4.0,
)  # fmt: skip
LIGHT = replace(GOOD, sink_force_g=0.001)
THICK = replace(GOOD, diameter_mm=4.0)
TALL = replace(GOOD, outside_mm=50.0)
EDGES = [
    # limit, the rest of the tip, what is measured, inside, the edge, outside, in words outside;
    # of the level that is wanted, 5, nineteen parts in twenty will do
    (Limit.SIGHT, GOOD, "level", 4.76, 4.75, 4.74,
     "sight: followed (level 4.7) where kept in view (5) is wanted"),
    (Limit.RIDE, GOOD, "ride_margin", 2.01, 2.0, 1.99,
     "ride: margin 1.9 where 2 is the least"),
    (Limit.BITE, GOOD, "sink_force_g", 0.39, 0.4, 0.41,
     "bite: 0.41 g to sink it where 0.40 g is the most"),  # a fifth of 2 g
    (Limit.STRENGTH, GOOD, "showing_mm", 29.0, 30.0, 31.0,
     "strength: 31 mm showing where 30 mm is the most"),  # twelve of 2.5 mm
    (Limit.STRENGTH, THICK, "showing_mm", 34.0, 35.0, 36.0,
     "strength: 36 mm showing where 35 mm is the most"),  # though twelve of 4 mm are 48 mm
    (Limit.BODY, GOOD, "diameter_mm", 4.9, 5.0, 5.1,
     "body: 5.1 mm thick where 5.0 mm is the most"),  # two fifths of 12.5 mm
    (Limit.ROOM, GOOD, "glued_mm", 59.0, 60.0, 61.0,
     "room: 61 mm to glue in where the body has 60 mm"),
    (Limit.GLUE, GOOD, "glued_mm", 5.1, 5.0, 4.9,
     "glue: 4.9 mm glued in where 5.0 mm is the least"),
    (Limit.GLUE, TALL, "glued_mm", 6.1, 6.0, 5.9,
     "glue: 5.9 mm glued in where 6.0 mm is the least"),  # .12 of 50 mm
    (Limit.LOAD, LIGHT, "pull_g", 0.03, 0.02, 0.01,
     "load: 0.01 g left for shot where 0.02 g is the least"),
    (Limit.BALANCE, GOOD, "uprightness", 3.01, 3.0, 2.99,
     "balance: top-heavy, it leans or falls over"),
]  # fmt: skip
ROUNDING = 4e-10


def test_every_limit_has_its_edge() -> None:
    assert {row[0] for row in EDGES} == set(Limit) == {bound.limit for bound in BOUNDS}
    assert failures(SWIM, GOOD) == failures(SWIM, LIGHT) == failures(SWIM, THICK) == ()


@pytest.mark.parametrize(
    ("limit", "rest", "name", "inside", "edge", "outside", "words"),
    EDGES,
    ids=[f"{row[0]}{n}" for n, row in enumerate(EDGES)],
)
def test_an_edge_is_the_same_for_the_shelf_for_one_tip_and_in_words(
    limit: Limit, rest: Measures, name: str, inside: float, edge: float, outside: float, words: str
) -> None:
    outwards = ROUNDING if outside > edge else -ROUNDING
    values = (inside, edge, edge + outwards, edge + 4 * outwards, outside)
    keeps = [True, True, True, False, False]
    many = kept(SWIM, replace(rest, **{name: np.array(values)}))
    assert np.broadcast_to(many[limit], 5).tolist() == keeps
    others = (mask for one, mask in many.items() if one is not limit)
    assert np.broadcast_to(reduce(np.logical_and, others), 5).all()
    for value, keep in zip(values, keeps, strict=True):
        fails = failures(SWIM, replace(rest, **{name: value}))
        allowed = 5.0 if limit is Limit.SIGHT else pytest.approx(edge)
        assert fails == (() if keep else (Failure(limit, value, allowed),))
    block = replace(sample.answer().tip_in_hand, fails=fails)
    assert telling.failure(fails[0]) == words
    assert [fail.limit for fail in block.broken] == [limit]
    assert block.breaks(limit)
    assert not block.passes
    assert block.sound is (limit is Limit.SIGHT)


def test_failures_come_in_the_order_of_the_limits_and_what_is_left_out_is_not_looked_at() -> None:
    bad = Measures(
        level=1.0, ride_margin=1.0, sink_force_g=9.0, pull_g=0.0, diameter_mm=9.0, showing_mm=80.0,
        glued_mm=90.0, outside_mm=800.0, uprightness=1.0,
    )  # fmt: skip
    order = ["sight", "ride", "bite", "strength", "body", "room", "glue", "load", "balance"]
    assert [fail.limit for fail in failures(SWIM, bad)] == order
    blind = replace(bad, level=None, uprightness=None)
    assert [fail.limit for fail in failures(SWIM, blind)] == order[1:-1]
    assert list(kept(SWIM, blind)) == order[1:-1]


@pytest.mark.parametrize(
    ("limit", "cures"),
    [
        (Limit.SIGHT, (Cure.COME_CLOSER, Cure.STAND_HIGHER, Cure.OTHER_STRETCH)),
        (
            Limit.RIDE,
            (Cure.EASE_OFF, Cure.SHALLOWER, Cure.MORE_TOP, Cure.NEXT_SIZE, Cure.CALMER_WATER),
        ),
        (Limit.BITE, (Cure.BOLDER_BITES, Cure.MORE_SHOT)),
        (Limit.STRENGTH, (Cure.THICKER_TIP,)),
        (Limit.BODY, (Cure.THICKER_BODY,)),
        (Limit.ROOM, (Cure.LONGER_BODY,)),
        (Limit.GLUE, (Cure.MORE_GLUED,)),
        (Limit.LOAD, (Cure.BIGGER_FLOAT, Cure.LIGHTER_TIP)),
        (Limit.BALANCE, (Cure.BIGGER_FLOAT, Cure.LIGHTER_TIP)),
    ],
)
def test_each_limit_has_its_cures(limit: Limit, cures: tuple[Cure, ...]) -> None:
    assert BY_LIMIT[limit].cures == cures


@pytest.mark.parametrize(
    ("wave_rms_mm", "wet_mm"), [(0.0, 10), (5.0, 10), (5.01, 11), (6.0, 12), (7.4, 15)]
)
def test_twice_the_ups_and_downs_stay_wet_and_never_less_than_10_mm(wave_rms_mm, wet_mm):
    assert limits.least_wet_mm(wave_rms_mm) == wet_mm


@pytest.mark.parametrize(
    ("outside_mm", "glued_mm"),
    [(10.0, 5), (41.6, 5), (41.7, 6), (50.0, 6), (50.1, 7), (75.0, 9), (100.0, 12)],
)
def test_twelve_hundredths_of_what_stands_outside_are_glued_and_never_less_than_5_mm(
    outside_mm, glued_mm
):
    assert limits.least_glued_mm(outside_mm) == glued_mm


# --- a real tip at the edge: search, glance and close look say the same

PIECE, LENGTH = 35, 13
"""A quill of 4 mm with 15 mm showing, which keeps every limit but sight."""
SHELF = shelf(sample.SWIM)
TIP = SHELF.tip(Pick(0, PIECE, LENGTH, 0, 0.0, 0.0, 0.0))
BLOCK = close_look(sample.SWIM, TIP)


def wanting(**changes: float) -> Swim:
    return replace(
        sample.SWIM,
        case=replace(sample.CASE, wanted=replace(sample.CASE.wanted, **changes)),
    )


def of_pattern(**changes: float) -> Swim:
    return replace(sample.SWIM, pattern=replace(sample.SWIM.pattern, **changes))


Make = Callable[[float, pytest.MonkeyPatch], Swim]
MADE: dict[Limit, Make] = {
    Limit.BITE: lambda x, _: wanting(
        bite_share=x * BLOCK.handling.sink_force_g / BLOCK.load.pull_g
    ),
    Limit.STRENGTH: lambda x, _: of_pattern(max_showing_diameters=x * 15.0 / 4.0),
    Limit.BODY: lambda x, _: of_pattern(
        max_body_share=x * 4.0 / sample.SWIM.hull.body_diameter_mm
    ),
    Limit.RIDE: lambda x, patch: [
        patch.setattr(limits, "RIDES", x * BLOCK.handling.ride_margin),
        sample.SWIM,
    ][-1],
    Limit.LOAD: lambda x, patch: [
        patch.setattr(limits, "LEAST_PULL_G", x * BLOCK.load.pull_g),
        sample.SWIM,
    ][-1],
}
"""The swim with what a limit allows brought to so many times what the tip has."""


def test_the_tip_keeps_all_but_sight() -> None:
    assert (TIP.stock.kind, TIP.stock.diameter_mm, TIP.showing_mm) == ("quill", 4.0, 15.0)
    assert BLOCK.sound


@pytest.mark.parametrize("limit", MADE)
@pytest.mark.parametrize("keeps", [True, False])
def test_the_shelf_a_glance_and_a_close_look_agree_at_the_edge(
    limit: Limit, keeps: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    least = BY_LIMIT[limit].least
    inside = 1 - 1e-6 if least else 1 + 1e-6
    there = replace(MADE[limit](inside if keeps else 2 - inside, monkeypatch))  # nothing seen yet
    masks = replace(SHELF, swim=there).limits
    shape = SHELF.pull_g.shape
    by_search = {one for one, mask in masks.items()
                 if not np.broadcast_to(mask, shape)[PIECE, LENGTH]}  # fmt: skip
    fails = {fail.limit for fail in close_look(there, TIP).fails} - {Limit.SIGHT}
    assert by_search == fails == (set() if keeps else {limit})
    assert is_sound(there, TIP) is keeps


def test_sight_is_measured_by_the_worst_water() -> None:
    level = BLOCK.visibility.level
    just, over = level / 0.95, level / 0.95 * (1 + 1e-5)
    assert close_look(wanting(level=just), TIP).fails == ()
    assert close_look(wanting(level=over), TIP).fails == (Failure(Limit.SIGHT, level, over),)


def test_a_close_look_hands_each_measure_to_its_own_limit() -> None:
    """Everything made unreachable, each failure holds what the block itself says."""
    harsh = replace(
        wanting(level=99.0, bite_share=1e-6),
        pattern=replace(sample.SWIM.pattern, max_showing_mm=1.0, max_body_share=0.1),
    )
    found = {fail.limit: fail for fail in close_look(harsh, TIP).fails}
    assert found[Limit.SIGHT] == Failure(Limit.SIGHT, BLOCK.visibility.level, 99.0)
    assert found[Limit.BITE] == Failure(
        Limit.BITE, BLOCK.handling.sink_force_g, pytest.approx(1e-6 * BLOCK.load.pull_g)
    )
    assert found[Limit.STRENGTH] == Failure(Limit.STRENGTH, 15.0, 1.0)
    assert found[Limit.BODY] == Failure(
        Limit.BODY, 4.0, pytest.approx(0.1 * harsh.hull.body_diameter_mm)
    )


# --- what exists is its own proof: a wish that the tip in hand breaks may be broken as much

BENT = replace(
    SWIM,
    case=replace(
        SWIM.case,
        tip=replace(
            SWIM.case.tip, stock=Stock("solid", 5.5), showing_mm=40.0, wet_mm=10.0, glued_mm=5.0
        ),
    ),
)
"""5.5 mm thick where 5 mm is the most, and 5 mm glued in where 6 mm is the least."""
FLAT = replace(BENT, hull=replace(BENT.hull, body_length_mm=4.0))


@pytest.mark.parametrize(
    ("limit", "rest", "name", "alike", "better", "worse", "allowed"),
    [
        (Limit.BODY, GOOD, "diameter_mm", 5.5, 5.2, 5.6, 5.0),
        (Limit.GLUE, TALL, "glued_mm", 5.0, 5.5, 4.9, 6.0),
        # of another length outside it is the shortfall that counts, of 1 mm
        (Limit.GLUE, GOOD, "glued_mm", 4.0, 4.5, 3.9, 5.0),
    ],
)
def test_a_wish_may_be_broken_as_much_as_it_is(
    limit: Limit, rest: Measures, name: str, alike: float, better: float, worse: float,
    allowed: float,
) -> None:  # fmt: skip
    for value, as_it_is in ((alike, True), (better, True), (worse, False)):
        told = replace(rest, **{name: value})
        fails = failures(BENT, told)
        assert fails == (Failure(limit, value, pytest.approx(allowed), as_it_is),)
        assert bool(kept(BENT, told)[limit]) is as_it_is
        block = replace(sample.answer().tip_in_hand, fails=fails)
        assert (block.passes, block.sound, not block.breaks(limit)) == (as_it_is,) * 3
        assert telling.failure(fails[0]).endswith(", as it is") is as_it_is
        assert bool(block.broken) is not as_it_is
    assert failures(SWIM, replace(rest, **{name: alike}))[0].as_it_is is False


def test_more_room_than_the_body_has_may_be_taken_as_it_is() -> None:
    assert failures(FLAT, replace(GOOD, glued_mm=5.0)) == (Failure(Limit.ROOM, 5.0, 4.0, True),)
    assert failures(FLAT, replace(GOOD, glued_mm=5.1)) == (Failure(Limit.ROOM, 5.1, 4.0, False),)


@pytest.mark.parametrize(
    ("in_hand", "uprightness", "as_it_is"),
    [(2.0, 2.0, True), (2.0, 1.9, False), (4.0, 2.9, False), (0.9, 0.9, False), (0.9, 2.9, False)],
)
def test_a_float_that_stands_may_be_as_top_heavy_as_it_is_and_one_that_falls_over_may_not(
    in_hand: float, uprightness: float, as_it_is: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Swim, "uprightness", in_hand)
    told = replace(GOOD, uprightness=uprightness)
    anew = replace(SWIM)  # that nothing of it has been worked out
    assert failures(anew, told) == (Failure(Limit.BALANCE, uprightness, 3.0, as_it_is),)


def test_what_merely_breaks_a_wish_is_looked_at_and_no_worse_is_advised() -> None:
    """Of 45 mm outside, .12 or 5.4 mm should be glued in; three mm are."""
    answer = advise(Question(showing="35 mm", glued="3 mm", behind=("dark",), paint="white"))
    fail = next(one for one in answer.tip_in_hand.fails if one.limit is Limit.GLUE)
    assert fail == Failure(Limit.GLUE, 3.0, pytest.approx(5.4), True)
    assert answer.tip_in_hand.passes
    assert answer.at_the_bank.actions == ()
    said = "3 mm of this tip are glued in, where 5.4 mm would hold it well"
    assert said in warned.warnings(answer)


def test_a_tip_that_pulls_out_of_a_socket_needs_no_glue() -> None:
    told = Question(showing="35 mm", glued="3 mm", behind=("dark",), paint="white")
    assert examine(told).fails != ()
    assert examine(replace(told, pulls_out="yes")).fails == ()


def test_a_tip_thicker_than_its_body_is_looked_at() -> None:
    told = Question(pattern="straight balsa", takes="3BB", behind=("dark",))
    block = examine(told)
    fail = next(one for one in block.fails if one.limit is Limit.BODY)
    assert (fail.value, fail.as_it_is) == (5.0, True)
    assert fail.allowed == pytest.approx(
        3.9, abs=0.1
    )  # 1.2 g by the size of 5 mm, which takes 2.3


def test_a_glance_leaves_out_what_falls_over(monkeypatch: pytest.MonkeyPatch) -> None:
    assert is_sound(sample.SWIM, TIP) is True
    monkeypatch.setattr(balance, "uprighting_g_mm", lambda *_: 0.0)
    assert is_sound(replace(sample.SWIM), TIP) is None


def test_the_bench_passes_by_what_falls_over(monkeypatch: pytest.MonkeyPatch) -> None:
    pick = Pick(0, PIECE, LENGTH, 0, 0.0, 0.0, 0.0)
    assert len(list(SHELF.looked_at([pick]))) == 1
    for uprightness, found in ((1.01, 1), (1.0, 0)):
        handled = replace(BLOCK.handling, uprightness=uprightness)
        looked = replace(BLOCK, handling=handled)
        monkeypatch.setattr(bench, "close_look", lambda *_, looked=looked: looked)
        assert len(list(SHELF.looked_at([pick]))) == found
