"""What each warning is raised by, at both sides of its edge; where sums are held, see test_held."""

from dataclasses import replace

import pytest
import sample

from tipsight.advice import doubtful
from tipsight.advice.answer import Block
from tipsight.advice.bench import shelf
from tipsight.advice.facts import Failure, Limit, Note, Warn
from tipsight.advice.swim import Swim
from tipsight.checks import Outside
from tipsight.inputs.case import Shot, Stock, Stretch, Wind
from tipsight.output.warned import warning as in_words

WATER = replace(sample.SWIM.waters["bright"], outside=())
SWIM = replace(sample.SWIM, waters={"bright": WATER}, judged=("bright",))
"""One water, and nothing of it outside the streaks' model."""
TIP = sample.CASE.tip
FAR_M = 36.576
LEAD = sample.block(replace(TIP, wet_mm=10.0), 4.0, "seen when stared at", 30.0)
LEAD = replace(
    LEAD,
    visibility=replace(
        LEAD.visibility,
        gone_at_m=60.0,
        by_background=(replace(LEAD.visibility.by_background[0], gone_at_m=60.0),),
    ),
)


def handled(**changes: object) -> Block:
    return replace(LEAD, handling=replace(LEAD.handling, **changes))


def told(swim: Swim, lead: Block = LEAD) -> list[Warn]:
    return [*doubtful._float(swim, lead), *doubtful._sight(swim, lead), *doubtful._held(swim)]


def swim_of(**changes: object) -> Swim:
    return replace(SWIM, case=replace(sample.CASE, **changes))


def test_nothing_is_said_of_a_plain_tip_in_a_plain_swim() -> None:
    assert told(SWIM) == []
    assert doubtful.asked_again(SWIM) == ()


# --- the float


@pytest.mark.parametrize(
    ("lead", "warned"),
    [
        (handled(upright=False), [Warn(Note.TOP_HEAVY)]),
        (
            handled(upright=False, uprightness=1.0, lift_g=None, lean_deg=None),
            [Warn(Note.FALLS_OVER)],
        ),
        (
            replace(LEAD, fails=(Failure(Limit.GLUE, 5.0, 5.4, True),)),
            [Warn(Note.AS_IT_IS, {"limit": Limit.GLUE, "value": 5.0, "allowed": 5.4})],
        ),
        (replace(LEAD, fails=(Failure(Limit.BODY, 5.0, 3.5),)), []),
        (replace(LEAD, fails=(Failure(Limit.BALANCE, 2.0, 3.0, True),)), []),  # told by itself
        (handled(lift_g=None), [Warn(Note.LIES_FLAT)]),
        (handled(lift_g=0.3), []),  # not held back, so nothing lifts it
        (handled(ordinary_dip_s=None), [Warn(Note.HARDLY_DIPS)]),
        (handled(visible_dip_mm=None), [Warn(Note.NO_DIP_SEEN)]),
        (handled(slow_bite_g=None), []),
        (replace(LEAD, tip=replace(TIP, wet_mm=9.9)), [Warn(Note.SHOULDER_OUT, {"wet_mm": 9.9})]),
        (
            replace(LEAD, tip=replace(LEAD.tip, light_stick="3 x 23 mm")),
            [Warn(Note.LIGHT_NOT_RECKONED)],
        ),
    ],
)
def test_what_is_said_of_the_float(lead: Block, warned: list[Warn]) -> None:
    assert told(SWIM, lead) == warned


@pytest.mark.parametrize(
    ("told", "said"),
    [
        (
            Warn(Note.AS_IT_IS, {"limit": Limit.BODY, "value": 5.0, "allowed": 3.52}),
            "this tip is 5 mm thick, where such a body is well off with 3.5 mm",
        ),
        (
            Warn(Note.AS_IT_IS, {"limit": Limit.ROOM, "value": 70.0, "allowed": 56.0}),
            "70 mm of this tip run on inside, where the body has 56 mm",
        ),
        (
            Warn(Note.AS_IT_IS, {"limit": Limit.GLUE, "value": 5.0, "allowed": 5.4}),
            "5 mm of this tip are glued in, where 5.4 mm would hold it well",
        ),
        (
            Warn(Note.FALLS_OVER),
            "with all its shot on this float falls over: take a lighter or shorter tip, a heavier or "
            "longer stem, or a bigger body",
        ),
    ],
)
def test_what_is_not_as_one_would_make_it_in_words(told: Warn, said: str) -> None:
    assert in_words(told, sample.CASE) == said


@pytest.mark.parametrize(
    ("hold_m_s", "lift_g", "warned"),
    [
        (0.0, 0.3, []),
        (0.01, 0.3, [Warn(Note.HELD_LIFTS, {"lift_g": 0.3})]),
        (0.01, 0.0, [Warn(Note.HELD_LIFTS, {"lift_g": 0.0})]),
        (0.01, None, [Warn(Note.LIES_FLAT)]),
    ],
)
def test_holding_back_lifts(hold_m_s: float, lift_g: float | None, warned: list[Warn]) -> None:
    held = replace(SWIM, stream=replace(SWIM.stream, hold_m_s=hold_m_s))
    assert told(held, handled(lift_g=lift_g)) == warned


def test_a_sinking_line_is_told_of() -> None:
    sunk = swim_of(stream=replace(sample.CASE.stream, floating_line=False))
    assert told(sunk) == [Warn(Note.SINKING_LINE)]


def test_a_light_stick_on_the_tip_in_hand_is_told_of_whatever_is_advised() -> None:
    lit = swim_of(tip=replace(TIP, light_stick="3 x 23 mm"))
    assert told(lit) == [Warn(Note.LIGHT_NOT_RECKONED)]


# --- the sight


@pytest.mark.parametrize(("shares", "waters"), [
    ((0.5, 0.5), ()), ((0.51, 0.5), ("dark",)), ((0.0, 0.51), ("bright",)),
    ((0.9, 0.8), ("dark", "bright")),
])  # fmt: skip
def test_colour_carries_from_half_the_energy_on(shares, waters) -> None:
    one = LEAD.visibility.by_background[0]
    each = tuple(
        replace(one, name=name, colour_share=share)
        for name, share in zip(("dark", "bright"), shares, strict=True)
    )
    lead = replace(LEAD, visibility=replace(LEAD.visibility, by_background=each))
    assert told(SWIM, lead) == [Warn(Note.COLOUR_CARRIES, {"waters": waters})] * bool(waters)


@pytest.mark.parametrize(
    ("goes_at_m", "gone_at_m", "said"),
    [(30.0, 60.0, False), (None, 60.0, True), (30.0, None, True)],
)
def test_what_is_still_seen_where_the_sums_end_is_told(goes_at_m, gone_at_m, said) -> None:
    one = replace(LEAD.visibility.by_background[0], goes_at_m=goes_at_m)
    seen = replace(LEAD.visibility, gone_at_m=gone_at_m, by_background=(one,))
    warned = [Warn(Note.SEEN_TO_THE_END, {"farthest_m": 100.0})] * said
    assert told(SWIM, replace(LEAD, visibility=seen)) == warned


@pytest.mark.parametrize(
    ("speed_m_s", "ripple_m", "said"),
    [(0.0, None, False), (0.1, None, True), (2.9, None, True), (3.0, None, False),
     (2.9, 0.01, False)],
)  # fmt: skip
def test_a_light_air_makes_no_even_ripple(speed_m_s, ripple_m, said) -> None:
    swim = swim_of(wind=Wind(speed_m_s, ripple_height_m=ripple_m))
    assert told(swim) == [Warn(Note.LIGHT_AIR)] * said


@pytest.mark.parametrize(
    ("bearing_deg", "height_m", "said"),
    [(45.0, 0.01, False), (45.1, 0.01, True), (90.0, 0.005, False), (90.0, 0.0051, True)],
)
def test_waves_across_the_line_of_sight(bearing_deg, height_m, said) -> None:
    swim = swim_of(wind=replace(sample.CASE.wind, bearing_deg=bearing_deg))
    swim = replace(swim, sea=replace(swim.sea, height_m=height_m))
    assert told(swim) == [Warn(Note.WAVES_ACROSS)] * said


ARCMIN_MM = 1e3 * FAR_M * 2.908882e-4  # at 36.576 m: 10.64 mm


@pytest.mark.parametrize(
    ("wide", "tall", "name"),
    [
        (4.99, 10.0, None), (5.01, 10.0, "width_arcmin"),
        (0.0201, 10.0, None), (0.0199, 10.0, "width_arcmin"),
        (1.0, 0.201, None), (1.0, 0.199, "height_arcmin"),
        (1.0, 59.9, None), (1.0, 60.1, "height_arcmin"),
    ],
)  # fmt: skip
def test_a_tip_outside_what_the_detector_was_compared_with(wide, tall, name) -> None:
    tip = replace(LEAD.tip, showing_mm=tall * ARCMIN_MM)
    found = told(SWIM, replace(LEAD, tip=tip, painted_mm=wide * ARCMIN_MM))
    assert [(one.kind, one.values["name"]) for one in found] == (
        [] if name is None else [(Note.OUTSIDE, name)]
    )
    for one in found:
        value = wide if name == "width_arcmin" else tall
        assert one.values["value"] == pytest.approx(value, rel=1e-5)
        low, high = (0.02, 5.0) if name == "width_arcmin" else (0.2, 60.0)
        assert (one.values["low"], one.values["high"], one.values["unit"]) == (low, high, "arcmin")


@pytest.mark.parametrize(
    ("light_cd_m2", "said"), [(0.039, True), (0.041, False), (4999.0, False), (5001.0, True)]
)
def test_a_light_outside_it(light_cd_m2: float, said: bool) -> None:
    lit = replace(WATER, adaptation_cd_m2=0.0 * WATER.adaptation_cd_m2 + light_cd_m2)
    found = told(replace(SWIM, waters={"bright": lit}))
    assert [one.values["name"] for one in found] == ["adaptation_cd_m2"] * said


def test_streaks_outside_their_model_are_told_once_with_all_their_waters() -> None:
    steep, high = (
        Outside("slope_rms", 0.2, 0.056, 0.107, ""),
        Outside("bank_height_deg", 30.0, 0.5, 20.0, "deg"),
    )
    waters = {
        "dark": replace(WATER, name="dark", outside=(steep, high)),
        "bright": replace(WATER, outside=(steep,)),
    }
    found = told(replace(SWIM, waters=waters, judged=("dark", "bright")))
    assert [one.values["waters"] for one in found] == [("dark", "bright"), ("dark",)]
    assert [one.values["value"] for one in found] == [0.2, 30.0]


def test_the_sun_s_lane_is_told_of_before_all_else_and_its_glasses_too() -> None:
    lane = swim_of(stretches=(*sample.CASE.stretches, Stretch("sun lane", sun_ahead=True)))
    assert doubtful.asked_again(lane) == (Warn(Note.SUN_LANE),)
    assert told(lane) == [Warn(Note.LANE_GLASSES)]


# --- what was told oddly


@pytest.mark.parametrize(("times", "said"), [(2.49, False), (2.51, True)])
def test_a_float_two_and_a_half_times_as_heavy_as_its_like(times: float, said: bool) -> None:
    usual_g = 0.9 * 2.0
    pattern = replace(sample.SWIM.pattern, mass_share=0.9)
    heavy = replace(sample.CASE.float_, weighs_g=times * usual_g)
    swim = replace(swim_of(float_=heavy), pattern=pattern, pull_g=2.0)
    numbers = {"weighs_g": pytest.approx(times * 1.8), "usual_g": pytest.approx(1.8)}
    found = doubtful.asked_again(swim)
    assert [one.kind for one in found] == [Note.WEIGHT_ODD] * said
    assert all(one.values == numbers for one in found)


@pytest.mark.parametrize(
    ("mass_g", "metal", "said"),
    [(0.06, "lead", False), (0.061, "lead", True), (0.4, "tin", False), (28.4, "lead", False)],
)
def test_lead_that_is_not_counted_on(mass_g: float, metal: str, said: bool) -> None:
    box = replace(sample.CASE.box, shot=(Shot("one", mass_g, metal),))
    assert doubtful.asked_again(swim_of(box=box)) == (Warn(Note.LEAD_LEFT_OUT),) * said


QUILL = (Stock("quill", 3.0),)


@pytest.mark.parametrize(
    ("stock", "inserts", "said"),
    [((), (), True), (QUILL, (), False), ((), QUILL, False)],
)
def test_an_empty_box_is_told_of(stock, inserts, said) -> None:
    box = replace(sample.CASE.box, stock=stock, inserts=inserts)
    assert doubtful.asked_again(swim_of(box=box)) == (Warn(Note.NO_STOCK),) * said


@pytest.mark.parametrize("count", [0, 1, 7])
def test_divisions_left_out_are_counted(count: int) -> None:
    of = replace(shelf(SWIM), left_out=count)
    expected = (Warn(Note.DIVISIONS_LEFT_OUT, {"count": count}),) if count else ()
    assert doubtful.warnings(SWIM, of, LEAD) == expected


def test_the_most_telling_comes_first() -> None:
    """Of the float, of the sight, of what is held; what was not tried last."""
    far = swim_of(wind=Wind(2.0), angler=replace(sample.CASE.angler, age_years=16.0))
    of = replace(shelf(SWIM), left_out=3)
    found = [one.kind for one in doubtful.warnings(far, of, handled(upright=False))]
    assert found == [Note.TOP_HEAVY, Note.LIGHT_AIR, Note.YOUNG_EYES, Note.DIVISIONS_LEFT_OUT]
