"""What is done at the bank: the order of trouble, which of one kind is offered, and what leads."""

from dataclasses import replace

import pytest
import sample

from tipsight.advice import on_the_spot
from tipsight.advice.answer import Block, Change
from tipsight.advice.facts import (
    Action,
    CarryLight,
    ComeCloser,
    Failure,
    Insert,
    Limit,
    OtherStretch,
    Pen,
    Show,
    Sleeve,
    StandHigher,
    Undo,
)
from tipsight.advice.on_the_spot import Variant, changes, lead, penned, reset, undo_of
from tipsight.inputs.case import Band, Light, Stock, Tip

QUILL = Stock("quill", 3.0)
TIP = Tip(QUILL, 20.0, 10.0, 5.0, (Band("white", 0, 8), Band("black", 8, 20)))
LESS, MORE, PEN = Show(15.0, False), Show(25.0, True), Pen(10.0, False)
SLEEVE, INSERT = Sleeve("white", 20.0), Insert(QUILL, 20.0)
LIGHT, CLOSER = CarryLight("3 x 23 mm"), ComeCloser(20 * 0.9144)


def variant(action: Action, showing_mm: float, level: float, sound: bool = True) -> Variant:
    return Variant((action,), replace(TIP, showing_mm=showing_mm), level, sound)


@pytest.mark.parametrize(
    ("among", "offered_mm"),
    [
        # enough is 5: the shortest that is enough, though a longer one is seen better
        ([(20, 4.0), (25, 5.0), (30, 9.0)], 25),
        # of those as short as that, the one seen best
        ([(25, 5.0), (25, 7.0), (30, 9.0)], 25),
        # none is enough: the best seen
        ([(20, 1.0), (25, 2.0), (30, 3.0)], 30),
        # within three hundredths of the best is as good, and the shorter of them is taken
        ([(20, 1.0), (25, 2.93), (30, 3.0)], 25),
        ([(20, 1.0), (25, 2.90), (30, 3.0)], 30),
        # one that breaks a limit gives way to one that is enough and breaks none
        ([(25, 6.0, False), (30, 5.0)], 30),
        # none is enough and sound: of what is enough the shortest
        ([(25, 6.0, False), (30, 7.0, False), (35, 4.0)], 25),
        # none is enough: a sound one before a better one that is not
        ([(25, 3.0), (30, 4.0, False)], 25),
        # none is sound and none is enough: the best of them
        ([(25, 3.0, False), (30, 4.0, False)], 30),
    ],
)
def test_which_length_is_offered(among: list[tuple[float, ...]], offered_mm: float) -> None:
    made = [variant(MORE, *one) for one in among]
    assert on_the_spot.best_of(made, 5.0).tip.showing_mm == offered_mm


def test_of_those_as_short_the_one_seen_best_is_offered() -> None:
    made = [variant(PEN, 25, 5.0), variant(PEN, 25, 7.0), variant(PEN, 25, 6.0)]
    assert on_the_spot.best_of(made, 5.0).level == 7.0


def test_a_tip_is_let_down_as_far_as_is_enough() -> None:
    made = [variant(LESS, 10, 4.0), variant(LESS, 12, 5.0), variant(LESS, 15, 8.0)]
    assert on_the_spot.best_of(made, 5.0).tip.showing_mm == 12


@pytest.mark.parametrize(
    ("fails", "level", "sound", "worth"),
    [
        ((), 5.0, True, True),  # a spare length that is seen all the same
        ((), 4.9, True, False),
        ((Limit.SIGHT,), 5.0, True, False),  # it was not even seen at its length
        ((Limit.BITE,), 5.0, True, True),  # too stiff, and still seen
        ((Limit.BITE,), 4.9, True, False),
        ((Limit.SIGHT, Limit.STRENGTH), 0.5, True, True),  # too long always
        ((Limit.SIGHT, Limit.STRENGTH), 0.5, False, False),
        ((Limit.RIDE,), 5.0, True, False),
    ],
)
def test_when_it_is_worth_letting_a_tip_down(
    fails: tuple[Limit, ...], level: float, sound: bool, worth: bool
) -> None:
    in_hand = sample.block(TIP, 6.0, "kept in view", None, tuple(Failure(x, 1, 2) for x in fails))
    less = variant(LESS, 15, level, sound)
    assert on_the_spot._worth_less(in_hand, less, 5.0) is worth


@pytest.mark.parametrize(
    ("actions", "undo"),
    [
        ((), Undo.NOTHING),
        ((MORE,), Undo.EASY),
        ((SLEEVE,), Undo.EASY),
        ((LIGHT,), Undo.EASY),
        ((MORE, CLOSER), Undo.EASY),
        ((INSERT,), Undo.UNTIL_CUT),
        ((PEN,), Undo.PAINT_LOST),
        ((PEN, MORE), Undo.PAINT_LOST),
        ((INSERT, PEN), Undo.PAINT_LOST),  # the worst of them decides
        ((PEN, CLOSER), Undo.PAINT_LOST),
    ],
)
def test_what_can_be_undone(actions: tuple[Action, ...], undo: Undo) -> None:
    assert undo_of(actions) is undo


@pytest.mark.parametrize(
    ("showing_mm", "wet_mm"), [(20.0, 10.0), (26.0, 4.0), (30.0, 0.0), (15.0, 15.0), (2.0, 28.0)]
)
def test_what_comes_out_of_the_water_was_wet_before(showing_mm: float, wet_mm: float) -> None:
    again = reset(TIP, showing_mm)
    assert (again.showing_mm, again.wet_mm, again.glued_mm) == (showing_mm, wet_mm, 5.0)
    assert again.bands == TIP.bands


@pytest.mark.parametrize(
    ("showing_mm", "share", "bands"),
    [
        (20.0, 2 / 3, [("felt pen", 0, 13), ("black", 13, 20)]),  # 13.3 mm to the whole one
        (20.0, 1 / 3, [("felt pen", 0, 7), ("white", 7, 8), ("black", 8, 20)]),
        # raised to 30 mm the foot's paint runs on to the water
        (30.0, 0.5, [("felt pen", 0, 15), ("black", 15, 30)]),
        (30.0, 1.0, [("felt pen", 0, 30)]),
        # let down to 10 mm the foot's band stays as long as it is, under the water
        (10.0, 0.5, [("felt pen", 0, 5), ("white", 5, 8), ("black", 8, 20)]),
    ],
)
def test_ink_goes_down_from_the_top_in_whole_millimetres(showing_mm, share, bands) -> None:
    inked = penned(reset(TIP, showing_mm), share)
    assert [(b.paint, b.from_top_mm, b.to_top_mm) for b in inked.bands] == bands


def test_the_pen_tries_all_a_half_a_third_and_two_thirds() -> None:
    made = on_the_spot._inked(Variant((MORE,), reset(TIP, 24.0)), first=True)
    inks = [(one.actions[0].ink_mm, one.actions[0].whole) for one in made]
    assert inks == [(24, True), (12, False), (8, False), (16, False)]
    assert all(one.actions[1:] == (MORE,) for one in made)
    after = on_the_spot._inked(Variant((INSERT,), TIP), first=False)
    assert all(one.actions[0] == INSERT for one in after)


def two_waters(dark: float, bright: float, sink_force_g: float, *fails: Limit) -> Block:
    """A tip seen so on two waters."""
    block = sample.block(
        TIP, min(dark, bright), "any", None, tuple(Failure(x, 1, 2) for x in fails)
    )
    waters = tuple(
        sample.sight(name, level, "any", None)
        for name, level in (("dark", dark), ("bright", bright))
    )
    return replace(
        block,
        visibility=replace(block.visibility, by_background=waters),
        handling=replace(block.handling, sink_force_g=sink_force_g),
    )


BEFORE = (
    two_waters(4.0, 2.0, 0.42, Limit.SIGHT, Limit.BITE),
    two_waters(0.5, 0.4, 0.42, Limit.SIGHT),
)


@pytest.mark.parametrize(
    ("before", "after", "gains"),
    [
        # a twentieth better on one water, whatever becomes of the other
        (BEFORE[0], two_waters(4.2, 1.0, 0.42, Limit.SIGHT, Limit.BITE), True),
        (BEFORE[0], two_waters(1.0, 2.1, 0.42, Limit.SIGHT, Limit.BITE), True),
        (BEFORE[0], two_waters(4.19, 2.09, 0.42, Limit.SIGHT, Limit.BITE), False),
        # a limit that is kept at last
        (BEFORE[0], two_waters(3.0, 1.0, 0.42, Limit.SIGHT), True),
        # for another that is broken
        (BEFORE[0], two_waters(3.0, 1.0, 0.42, Limit.SIGHT, Limit.RIDE), True),
        # a finer tip by more than a twentieth, where it does
        (BEFORE[1], two_waters(0.4, 0.4, 0.39), True),
        (BEFORE[1], two_waters(0.4, 0.4, 0.39, Limit.SIGHT), False),
        # what is not seen at all is no better for being twice as bright
        (BEFORE[1], two_waters(0.99, 0.9, 0.42, Limit.SIGHT), False),
        (BEFORE[1], two_waters(1.0, 0.4, 0.42, Limit.SIGHT), True),
    ],
)
def test_what_is_gained(before: Block, after: Block, gains: bool) -> None:
    assert on_the_spot._gains(before, after) is gains


def test_what_gains_nothing_is_not_offered(made_by_hand) -> None:
    made_by_hand({(PEN,): 4.1, (SLEEVE,): 4.3}, 2.0)
    found = changes(sample.SWIM, sample.block(TIP, 4.05, "any", 2.0, (sample.SIGHT,)))
    assert [one.kind for one in found if one.stays] == ["as it is", "sleeve"]


# --- the order in which it is offered


EACH = (
    (Show(19.0, False),),
    (MORE,),
    (PEN,),
    (PEN, MORE),
    (SLEEVE,),
    (INSERT,),
    (INSERT, PEN),
)
WANTED = sample.CASE.wanted.level
IN_ORDER = ["as it is", "show more", "show less", "pen", "pen and show more", "sleeve", "insert",
            "insert and pen"]  # fmt: skip


@pytest.fixture
def made_by_hand(monkeypatch: pytest.MonkeyPatch):
    """Let every kind be had, all alike but for how they are seen, 4 at best unless told."""
    Told = dict[tuple[Action, ...], float]

    def give(levels: Told, goes_at_m: float = 30.0, farther: Told | None = None) -> None:
        tips = {
            actions: replace(TIP, wet_mm=11.0 + n) for n, actions in enumerate(EACH)
        }  # told apart by what is wet
        by_tip = {tips[actions]: levels.get(actions, 4.0) for actions in EACH}
        goes = {tips[actions]: at for actions, at in (farther or {}).items()}

        def looked(swim, tip: Tip) -> Block:
            level = by_tip.get(tip, 4.0)
            near = swim is not sample.SWIM
            fails = () if level >= WANTED or near else (Failure(Limit.SIGHT, level, WANTED),)
            return sample.block(tip, level, "any", goes.get(tip, goes_at_m), fails)

        found = [Variant(actions, tips[actions], by_tip[tips[actions]]) for actions in EACH]
        monkeypatch.setattr(on_the_spot, "variants", lambda _: found)
        monkeypatch.setattr(on_the_spot, "close_look", looked)

    return give


def test_the_least_trouble_comes_first_and_coming_closer_last(made_by_hand) -> None:
    made_by_hand({})
    in_hand = sample.block(TIP, 6.0, "any", 30.0, (Failure(Limit.BITE, 0.5, 0.4),))
    found = changes(sample.SWIM, in_hand)
    assert [one.kind for one in found[:-1]] == [kind for kind in IN_ORDER if kind != "show less"]
    assert found[-1].kind == "show more and come closer"  # the least that breaks no other limit
    assert found[-1].range_m == pytest.approx(32 * 0.9144)  # 30 m are 32.8 yd
    assert found[-1].options["distance"] == "32 yd"


def test_nobody_comes_closer_where_something_else_is_enough(made_by_hand) -> None:
    made_by_hand({(SLEEVE,): 5.0, EACH[0]: 5.5})
    stiff = sample.block(TIP, 6.0, "any", 30.0, (Failure(Limit.BITE, 0.5, 0.4),))
    found = changes(sample.SWIM, stiff)
    assert [one.kind for one in found] == IN_ORDER


@pytest.mark.parametrize(("goes_at_m", "offered"), [(4.5 * 0.9144, True), (3.9 * 0.9144, False)])
def test_nobody_trots_closer_than_four_yards(made_by_hand, goes_at_m, offered) -> None:
    made_by_hand({}, goes_at_m)
    found = changes(sample.SWIM, sample.block(TIP, 4.0, "any", goes_at_m, (sample.SIGHT,)))
    assert any(one.range_m is not None for one in found) is offered


@pytest.mark.parametrize(
    ("sun_deg", "has_one", "offered"),
    [(0.1, True, False), (0.0, True, False), (-0.1, True, True), (-6.0, False, False)],
)
def test_a_light_stick_is_offered_when_the_sun_is_down(
    made_by_hand, sun_deg, has_one, offered
) -> None:
    made_by_hand({})
    light, box = Light(sun_height_deg=sun_deg), replace(sample.CASE.box, light_stick=has_one)
    dusk = replace(sample.SWIM, case=replace(sample.CASE, light=light, box=box))
    found = changes(dusk, sample.block(TIP, 4.0, "any", 30.0, (sample.SIGHT,)))
    assert any(one.does(CarryLight) for one in found) is offered


@pytest.mark.parametrize(
    ("farther_m", "kind"),
    [(24.9, "show more and come closer"), (25.1, "pen and show more and come closer")],
)
def test_one_comes_closer_with_another_tip_only_where_it_reaches_a_quarter_farther(
    made_by_hand, farther_m, kind
) -> None:
    made_by_hand({}, 20.0, {(PEN, MORE): farther_m})
    found = changes(sample.SWIM, sample.block(TIP, 3.0, "any", 20.0, (sample.SIGHT,)))
    assert [one.kind for one in found if one.range_m is not None] == [kind]


# --- what leads


def change(action: Action | None, *levels: float, fails: tuple[Limit, ...] = ()) -> Change:
    """A change with the level that it has on each of two waters."""
    block = sample.block(TIP, min(levels), "any", None, tuple(Failure(x, 1, 2) for x in fails))
    waters = tuple(
        sample.sight(name, level, "any", None)
        for name, level in zip(("dark", "bright"), levels, strict=False)
    )
    seen = replace(block.visibility, by_background=waters)
    actions = () if action is None else (action,)
    return Change(actions, True, Undo.EASY, replace(block, visibility=seen))


SHORT = (Limit.SIGHT,)


@pytest.mark.parametrize(
    ("offered", "leads"),
    [
        # the first that is enough, though a later one is seen better
        ([change(None, 4.0, fails=SHORT), change(MORE, 5.0), change(PEN, 9.0)], 1),
        ([change(None, 5.0), change(PEN, 9.0)], 0),
        # none is enough: the best seen
        ([change(None, 2.0, fails=SHORT), change(MORE, 3.0, fails=SHORT),
          change(PEN, 4.0, fails=SHORT)], 2),
        # as good as the best within three hundredths: the lesser trouble
        ([change(None, 2.0, fails=SHORT), change(MORE, 3.9, fails=SHORT),
          change(PEN, 4.0, fails=SHORT)], 1),
        ([change(None, 2.0, fails=SHORT), change(MORE, 3.85, fails=SHORT),
          change(PEN, 4.0, fails=SHORT)], 2),
        # what breaks another limit does not lead while something keeps them
        ([change(None, 2.0, fails=SHORT), change(PEN, 4.0, fails=(Limit.SIGHT, Limit.RIDE))], 0),
        ([change(None, 2.0, fails=(Limit.RIDE,)), change(PEN, 4.0, fails=(Limit.RIDE,))], 1),
        # under a level of 1 nothing is seen, and one that is not is no better than another
        ([change(None, 0.1, fails=SHORT), change(PEN, 0.9, fails=SHORT)], 0),
        ([change(None, 0.1, fails=SHORT), change(PEN, 1.1, fails=SHORT)], 1),
        # the worst water first, then the other
        ([change(None, 0.1, 3.0, fails=SHORT), change(PEN, 0.5, 2.0, fails=SHORT)], 0),
        ([change(None, 1.5, 3.0, fails=SHORT), change(PEN, 1.5, 4.0, fails=SHORT)], 1),
        # a light stick is offered and never leads, nor does coming closer
        ([change(None, 2.0, fails=SHORT), change(LIGHT, 4.0, fails=SHORT)], 0),
        ([change(None, 2.0, fails=SHORT), change(CLOSER, 9.0)], 0),
        ([change(None, 2.0, fails=SHORT), change(StandHigher(2.5), 9.0)], 0),
        ([change(None, 2.0, fails=SHORT), change(OtherStretch("dark"), 9.0)], 0),
    ],
)  # fmt: skip
def test_what_leads(offered: list[Change], leads: int) -> None:
    assert lead(offered) is offered[leads]
