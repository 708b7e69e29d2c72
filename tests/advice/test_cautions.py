"""What brings each caution up, and what just does not: the sun above all."""

from dataclasses import replace

import pytest
import sample

from tipsight.advice.answer import Block, Change, ShotLine
from tipsight.advice.cautions import cautions
from tipsight.advice.facts import (
    Action,
    Care,
    CarryLight,
    Caution,
    ComeCloser,
    Fit,
    Show,
    Undo,
)
from tipsight.advice.swim import Swim
from tipsight.inputs.case import Band, Light, Shot, Stock, Stretch, Tip

TIP = sample.CASE.tip
OLD = sample.block(TIP, 4.0, "seen when stared at", None)


def change(*actions: Action, block: Block = OLD) -> Change:
    return Change(actions, True, Undo.EASY, block)


NOW = change()


def swim_of(**changes: object) -> Swim:
    return replace(sample.SWIM, case=replace(sample.CASE, **changes))


def kinds(swim: Swim, now: Change = NOW, bench: Change | None = None, *others: Change) -> list:
    return [one.kind for one in cautions(swim, now, bench, (now, *others))]


def test_nothing_is_said_where_nothing_can_hurt() -> None:
    assert kinds(sample.SWIM) == []


@pytest.mark.parametrize(
    ("beam", "height_deg", "bearing_deg", "lane", "told"),
    [
        (True, 30.0, 0.0, False, True),  # straight ahead, shining
        (True, 30.0, 44.9, False, True),
        (True, 30.0, 45.0, False, True),  # the edge is in
        (True, 30.0, 45.1, False, False),
        (True, 30.0, 90.0, False, False),  # beside him
        (True, 30.0, 180.0, False, False),  # at his back
        (False, 30.0, 0.0, False, False),  # behind cloud
        (True, 0.1, 0.0, False, True),
        (True, 0.0, 0.0, False, False),  # just down
        (True, -3.0, 0.0, False, False),
        (False, 30.0, 180.0, True, True),  # the lane is the sun's own, whatever else is told
        (True, -3.0, 180.0, True, True),
    ],
)
def test_when_never_to_look_into_the_sun(beam, height_deg, bearing_deg, lane, told) -> None:
    light = Light(beam=beam, sun_height_deg=height_deg, sun_bearing_deg=bearing_deg)
    waters = (Stretch("bright"), Stretch("sun lane", sun_ahead=lane))
    assert (Care.SUN in kinds(swim_of(light=light, stretches=waters))) is told


@pytest.mark.parametrize(("height_deg", "told"), [(0.1, False), (0.0, False), (-0.1, True)])
def test_dusk_is_when_the_sun_is_down(height_deg: float, told: bool) -> None:
    swim = swim_of(light=Light(sun_height_deg=height_deg))
    assert (Care.DUSK in kinds(swim)) is told


BOX = replace(
    sample.CASE.box,
    shot=(Shot("BB", 0.4, "tin"), Shot("No 8", 0.06, "lead"), Shot("No 6", 0.1, "tungsten")),
)


def taking(name: str) -> Block:
    return replace(OLD, load=replace(OLD.load, shot=(ShotLine(name, 2, "bulk"),)))


@pytest.mark.parametrize(
    ("bank", "bench", "told"),
    [
        ("BB", None, False),  # lead in the box alone hurts nobody
        ("No 8", None, True),
        ("BB", "No 8", True),
        ("BB", "No 6", False),
    ],
)
def test_lead_is_told_of_where_it_is_in_a_shot_list(bank, bench, told) -> None:
    fit = None if bench is None else change(block=taking(bench))
    found = kinds(swim_of(box=BOX), change(block=taking(bank)), fit)
    assert (Care.LEAD in found) is told


@pytest.mark.parametrize(
    ("offered", "care"),
    [
        (change(Show(25.0, True)), None),
        (change(Show(25.0, True), ComeCloser(20.0)), Care.WADING),
        (change(ComeCloser(20.0)), Care.WADING),
        (change(CarryLight("3 x 23 mm")), Care.LIGHT_STICK),
    ],
)
def test_what_is_only_offered_is_told_of_too(offered: Change, care: Care | None) -> None:
    expected = [] if care is None else [care]
    assert kinds(sample.SWIM, NOW, None, offered) == expected
    assert kinds(sample.SWIM, offered) == expected


def fitted(tip: Tip) -> Change:
    return Change((Fit(tip.stock, tip.showing_mm, tip.bands),), False, Undo.NEVER,
                  replace(OLD, tip=tip))  # fmt: skip


OTHER = (Band("white", 0.0, 20.0),)


@pytest.mark.parametrize(
    ("bench", "told"),
    [
        (change(), []),  # nothing is done
        (fitted(replace(TIP, stock=Stock("balsa", 5.0))), [Care.DUST, Care.PAINT]),
        (fitted(replace(TIP, stock=Stock("quill", 5.0))), [Care.QUILL, Care.PAINT]),
        (fitted(replace(TIP, wet_mm=TIP.wet_mm + 1)), [Care.QUILL, Care.PAINT]),
        (fitted(replace(TIP, glued_mm=TIP.glued_mm + 1)), [Care.QUILL, Care.PAINT]),
        # only painted anew: nothing is cut
        (fitted(replace(TIP, bands=OTHER)), [Care.PAINT]),
    ],
)
def test_the_bench_tells_of_what_is_cut_and_painted(bench: Change, told: list[Care]) -> None:
    assert TIP.stock.kind == "quill"
    assert kinds(sample.SWIM, NOW, bench) == told


@pytest.mark.parametrize(
    ("materials", "told"),
    [
        (("balsa", "cane"), False),
        (("foam",), True),
        (("cane", "bead foam"), True),
        (("polystyrene",), False),  # which spirit softens, and does not melt
    ],
)
def test_foam_is_told_of_where_spirit_melts_it_and_something_is_painted(materials, told) -> None:
    swim = replace(sample.SWIM, hull=replace(sample.SWIM.hull, materials=materials))
    painted = fitted(replace(TIP, bands=OTHER))
    assert (Care.FOAM in kinds(swim, NOW, painted)) is told
    assert kinds(swim, NOW, change()) == []


def test_they_come_in_the_order_in_which_a_person_meets_them() -> None:
    dusk = swim_of(
        light=Light(sun_height_deg=-4.0), stretches=(Stretch("sun lane", sun_ahead=True),), box=BOX
    )
    dusk = replace(dusk, hull=replace(dusk.hull, materials=("foam",)))
    closer, stick = change(ComeCloser(20.0)), change(CarryLight("3 x 23 mm"))
    bench = fitted(replace(TIP, stock=Stock("cane", 4.0)))
    found = cautions(dusk, change(block=taking("No 8")), bench, (NOW, closer, stick))
    assert found == (
        *map(Caution, (Care.LEAD, Care.SUN, Care.WADING, Care.LIGHT_STICK, Care.DUSK)),
        *(Caution(Care.DUST, "cane"), Caution(Care.PAINT), Caution(Care.FOAM)),
    )
    assert {one.kind for one in found} | {Care.QUILL} == set(Care)
