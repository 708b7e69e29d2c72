"""Doubts worked by hand: how they add up, which is the largest, and what each stands for."""

import math
from dataclasses import replace

import numpy as np
import pytest
import sample

from tipsight.advice import reasons, sighting
from tipsight.advice.advise import advise
from tipsight.advice.facts import Doubt
from tipsight.advice.sighting import Seen, quick_level, seen, visibility
from tipsight.advice.swim import Swim
from tipsight.advice.waters import Water
from tipsight.inputs.case import Wanted
from tipsight.inputs.learnt import Learnt, Lesson
from tipsight.inputs.question import Question
from tipsight.sight import kernel
from tipsight.sight.clutter import sea_doubt

SWIM = replace(sample.SWIM, judged=("bright",))
HERE = SWIM.here
EVEN = replace(SWIM, hidden_high_mm=SWIM.hidden_mm)
"""All crests alike, so that the level that counts is the level with the mean of them."""
BOTH = {Doubt.DISTANCE: (-0.3, 0.3), Doubt.EYES: (-0.4, 0.4)}
ALONG = sample.SWIM.range_m


def seen_as(doubts: dict[Doubt, tuple[float, float]], level: float = 5.0, name: str = "bright"):
    """A tip whose level falls as the inverse square of the distance."""
    levels = level * (ALONG[HERE] / ALONG) ** 2
    return Seen(water=name, level=levels, colour_share=0.2, streaks_slope=0.0, doubts=doubts)


@pytest.mark.parametrize(
    ("doubts", "down", "up"),
    [
        ({}, 0.0, 0.0),
        ({Doubt.EYES: (-0.4, 0.3)}, 0.4, 0.3),
        # independent: as the sides of a right angle, 3, 4 and 5
        (BOTH, 0.5, 0.5),
        ({**BOTH, Doubt.STREAKS: (-1.2, 1.2)}, 1.3, 1.3),
        # one that only ever takes away
        ({Doubt.EYES: (-0.3, 0.3), Doubt.RIPPLE: (-0.4, 0.0)}, 0.5, 0.3),
        # one whose worse end is told last
        ({Doubt.EYES: (-0.3, 0.3), Doubt.WATER: (0.4, -0.4)}, 0.5, 0.5),
        # one whose both ends are better takes nothing away
        ({Doubt.EYES: (-0.3, 0.3), Doubt.DISTANCE: (0.1, 0.4)}, 0.3, 0.5),
        ({Doubt.EYES: (-0.3, 0.3), Doubt.DISTANCE: (-0.4, -0.1)}, 0.5, 0.3),
    ],
)
def test_doubts_are_independent_in_the_logarithm(doubts, down: float, up: float) -> None:
    low, high = seen_as(doubts).band(HERE)
    assert (low, high) == (
        pytest.approx(5.0 * math.exp(-down)), pytest.approx(5.0 * math.exp(up))
    )  # fmt: skip


def test_one_doubt_can_be_left_out() -> None:
    assert seen_as(BOTH).band(HERE, without=Doubt.EYES) == pytest.approx(
        (5.0 * math.exp(-0.3), 5.0 * math.exp(0.3))
    )
    assert seen_as(BOTH).band(HERE, without=Doubt.DISTANCE) == pytest.approx(
        (5.0 * math.exp(-0.4), 5.0 * math.exp(0.4))
    )


def named(swim: Swim, *names: str, unsure: bool = False) -> Swim:
    water = sample.SWIM.waters["bright"]
    waters = {name: replace(water, name=name) for name in names}
    return replace(swim, waters=waters, judged=names, unsure=unsure)


def by_hand(monkeypatch: pytest.MonkeyPatch, **given: Seen) -> None:
    monkeypatch.setattr(reasons, "seen", lambda swim, water, tip: given[water.name])


def test_the_doubt_whose_removal_helps_most_comes_first(monkeypatch) -> None:
    """Range e^(2 x 0.5); without the eyes e^(2 x 0.3), without the distance e^(2 x 0.4)."""
    by_hand(monkeypatch, bright=seen_as(BOTH))
    found = reasons.doubts(named(sample.SWIM, "bright"), sample.CASE.tip)
    assert [one.kind for one in found] == [Doubt.EYES, Doubt.DISTANCE]
    assert [one.spread for one in found] == pytest.approx([math.exp(0.4), math.exp(0.2)])


def test_doubts_are_those_of_the_worst_water(monkeypatch) -> None:
    better = seen_as({Doubt.WATER: (-2.0, 2.0)}, 6.0, "dark")
    by_hand(monkeypatch, bright=seen_as(BOTH), dark=better)
    found = reasons.doubts(named(sample.SWIM, "dark", "bright"), sample.CASE.tip)
    assert [one.kind for one in found] == [Doubt.EYES, Doubt.DISTANCE]


@pytest.mark.parametrize(
    ("other", "order"),
    [
        (8.0, [Doubt.BEHIND, Doubt.EYES, Doubt.DISTANCE]),  # 1.6 times
        (7.0, [Doubt.EYES, Doubt.BEHIND, Doubt.DISTANCE]),  # 1.4 times
    ],
)
def test_what_the_water_might_be_is_a_doubt_too(monkeypatch, other, order) -> None:
    by_hand(monkeypatch, bright=seen_as(BOTH), dark=seen_as({}, other, "dark"))
    found = reasons.doubts(named(sample.SWIM, "dark", "bright", unsure=True), sample.CASE.tip)
    assert [one.kind for one in found] == order
    behind = next(one for one in found if one.kind is Doubt.BEHIND)
    assert behind.spread == pytest.approx(other / 5.0)


def test_of_what_is_not_seen_at_all_nothing_is_doubted(monkeypatch) -> None:
    by_hand(monkeypatch, bright=seen_as(BOTH, 0.0))
    assert reasons.doubts(named(sample.SWIM, "bright"), sample.CASE.tip) == ()


# --- what each doubt stands for, by going there


@pytest.fixture(scope="module")
def told() -> Seen:
    return seen(EVEN, EVEN.waters["bright"], sample.CASE.tip)


NOW = quick_level(EVEN, sample.CASE.tip)


def level_with(water: Water) -> float:
    return quick_level(replace(EVEN, waters={"bright": water}), sample.CASE.tip)


def log_ratio(level: float) -> float:
    return math.log(level / NOW)


@pytest.mark.parametrize(("end", "times"), [(0, 1 / 1.2), (1, 1.2)])
def test_the_doubt_of_the_water_is_a_fifth_of_its_contrast(told, end, times) -> None:
    water = sample.SWIM.waters["bright"]
    there = level_with(replace(water, contrast=times * water.contrast))
    assert told.doubts[Doubt.WATER][end] == pytest.approx(log_ratio(there), abs=1e-6)


@pytest.mark.parametrize(("end", "power"), [(0, 2.0), (1, 0.5)])
def test_the_doubt_of_the_streaks_is_twice_or_half_their_power(told, end, power) -> None:
    water = sample.SWIM.waters["bright"]
    clutter = replace(water.clutter, factor=power)
    noise = kernel.kernels(ALONG, water.adaptation_cd_m2, water.eye, clutter)
    there = level_with(replace(water, clutter=clutter, kernels=noise))
    assert told.doubts[Doubt.STREAKS][end] == pytest.approx(log_ratio(there), abs=1e-6)
    assert (told.doubts[Doubt.STREAKS][end] < 0) is (end == 0)


def test_the_doubt_of_the_distance_is_the_level_so_much_farther_and_nearer(told) -> None:
    """A tenth of the distance, as it was counted in steps; straight between the worked distances."""
    assert sample.CASE.place.range_doubt == 0.1
    farther, nearer = told.doubts[Doubt.DISTANCE]
    far_m = 1.1 * ALONG[HERE]
    at = int(np.searchsorted(ALONG, far_m))
    logs = np.log(told.level)
    share = math.log(far_m / ALONG[at - 1]) / math.log(ALONG[at] / ALONG[at - 1])
    there = (1 - share) * logs[at - 1] + share * logs[at]
    assert farther == pytest.approx(there - logs[HERE], abs=1e-9)
    assert farther < 0 < nearer


@pytest.mark.parametrize("end", [0, 1])
def test_the_doubt_of_the_eyes_is_their_own(told, end) -> None:
    own = sample.CASE.angler.own_eye_doubt
    assert own > 1.2
    times = own if end else 1 / own
    water = sample.SWIM.waters["bright"]
    eyes = replace(water.eye, own_factor=times * water.eye.own_factor)
    noise = kernel.kernels(ALONG, water.adaptation_cd_m2, eyes, water.clutter)
    there = level_with(replace(water, eye=eyes, kernels=noise))
    assert told.doubts[Doubt.EYES][end] == pytest.approx(log_ratio(there), abs=1e-6)


def test_the_doubt_of_the_sea_is_what_another_sea_of_that_height_would_do(told) -> None:
    sea = math.log(sea_doubt(sample.SWIM.waters["bright"].clutter[HERE]))
    assert sea > 0
    assert told.doubts[Doubt.SEA] == pytest.approx((-sea, sea))


def test_no_sea_hides_more_than_calm_water_would_show(monkeypatch) -> None:
    water = sample.SWIM.waters["bright"]
    clutter = replace(water.clutter, factor=0.0)
    noise = kernel.kernels(ALONG, water.adaptation_cd_m2, water.eye, clutter)
    calm = log_ratio(level_with(replace(water, clutter=clutter, kernels=noise)))
    monkeypatch.setattr(sighting, "sea_doubt", lambda _: 1e9)
    told = seen(EVEN, water, sample.CASE.tip)
    assert told.doubts[Doubt.SEA] == pytest.approx((-calm, calm), abs=1e-6)


def test_the_doubt_of_the_ripple_is_what_the_crests_hide_and_leave() -> None:
    """From the level that counts down to that among the highest crests, and up to that among mean."""
    high, counts = (
        quick_level(swim, sample.CASE.tip)
        for swim in (replace(SWIM, hidden_mm=SWIM.hidden_high_mm), SWIM)
    )
    assert high < counts
    told = seen(SWIM, SWIM.waters["bright"], sample.CASE.tip)
    assert told.doubts[Doubt.RIPPLE] == (
        pytest.approx(math.log(high / counts), abs=1e-6),
        pytest.approx(math.log(NOW / counts), abs=1e-6),
    )


@pytest.mark.parametrize(
    ("mean", "crests", "counts"),
    [
        (5.0, 5.0, 5.0),
        (5.0, 2.4, 5.0),  # followed still while the crests stand before it, at 2.4 of 5
        (5.0, 1.2, 2.5),  # half of that: half the level counts
        (5.0, 0.0, 2.0),  # they stand there only at times: two fifths are left
        (0.0, 0.0, 0.0),
    ],
)
def test_what_counts_is_what_the_crests_leave(mean, crests, counts) -> None:
    assert sighting.counted(mean, crests) == pytest.approx(counts)


# --- several waters


@pytest.mark.parametrize(
    ("unsure", "high"), [(False, 5.0 * math.exp(0.5)), (True, 8.0 * math.exp(0.2))]
)
def test_the_worst_water_counts_and_the_range_spans_all_that_it_might_be(
    monkeypatch, unsure, high
) -> None:
    """The low of the one that falls lowest, though its level is the better."""
    wanted = replace(sample.CASE, wanted=Wanted(2.5, 0.2))
    swim = named(replace(sample.SWIM, case=wanted), "dark", "bright", unsure=unsure)
    worst = seen_as(BOTH, 5.0)
    other = seen_as({Doubt.WATER: (-1.2, 0.2)}, 8.0, "dark")
    given = {"dark": other, "bright": worst}
    monkeypatch.setattr(sighting, "along", lambda swim, water, tip: given[water.name])
    monkeypatch.setattr(sighting, "seen", lambda swim, water, tip, levels: given[water.name])
    found = visibility(swim, sample.CASE.tip)
    # 28 s over the square of the level, where no streaks are
    assert found.notice_s == pytest.approx(28 / 25)
    assert [one.notice_s for one in found.by_background] == pytest.approx([28 / 64, 28 / 25])
    assert found.level == 5.0
    assert found.grade == "kept in view"
    assert found.low == pytest.approx(8.0 * math.exp(-1.2))  # 2.4, where the other has 3.0
    assert found.high == pytest.approx(high)
    assert found.worst.name == "bright"
    assert [(one.name, one.level) for one in found.by_background] == [
        ("dark", 8.0),
        ("bright", 5.0),
    ]
    # level 5 (far/r)^2 reaches 2.5 at far times the root of 2, level 1 at far times that of 5
    far = ALONG[HERE]
    assert found.goes_at_m == pytest.approx(far * math.sqrt(2.0), rel=1e-6)
    assert found.gone_at_m == pytest.approx(far * math.sqrt(5.0), rel=1e-6)
    assert found.by_background[0].goes_at_m == pytest.approx(far * math.sqrt(3.2), rel=1e-6)


def test_colour_s_share_is_of_the_energy() -> None:
    """Of 5, of which 4 by colour, 3 by brightness: 16 of 25."""
    five, four = np.full(ALONG.shape, 5.0), np.full(ALONG.shape, 4.0)
    levels = sighting.Along(five, five, four)
    told = seen(sample.SWIM, sample.SWIM.waters["bright"], sample.CASE.tip, levels)
    assert told.level[HERE] == pytest.approx(5.0)
    assert told.colour_share == pytest.approx(16 / 25)


def test_the_ride_is_as_doubtful_as_the_waters_boils():
    """A word for them is known to exp(.40): the ends are the margins at .67 and 1.49 times the boils."""
    swim_ = {"distance": "30 yd", "looks": "fur", "showing": "20 mm"}
    one, less, more = (
        advise(Question(**swim_, boils=f"{1.5 * math.exp(off)}")).tip_in_hand.handling
        for off in (0.0, -0.40, 0.40)
    )
    assert one.ride_margin_low == pytest.approx(more.ride_margin, rel=1e-4)
    assert one.ride_margin_high == pytest.approx(less.ride_margin, rel=1e-4)
    assert one.ride_margin_low < 0.8 * one.ride_margin
    learnt = Learnt((Lesson("boils", "1.5", counts=2),), boil_doubt=1.1)
    known = advise(Question(**swim_, learnt=learnt)).tip_in_hand.handling
    assert known.ride_margin == one.ride_margin
    assert one.ride_margin_low < known.ride_margin_low < known.ride_margin
    counted = advise(Question(**swim_, goes_under="3")).case.stream
    assert counted.boil_doubt == pytest.approx(math.exp(0.12))
    assert advise(Question(**swim_, learnt=learnt, boils="1.5")).case.stream.boil_doubt == pytest.approx(
        math.exp(0.40)
    )


def test_no_boils_no_doubt_and_never_beyond_what_the_sums_know():
    none, wild = (
        advise(Question(distance="30 yd", boils=boils)).tip_in_hand.handling for boils in ("0", "6")
    )
    assert none.ride_margin_high == pytest.approx(none.ride_margin_low, rel=1e-6)
    assert 0.0 < wild.ride_margin_low < wild.ride_margin
