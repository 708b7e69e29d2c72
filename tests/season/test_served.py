"""Which float serves which swim, held to the close look; and what to make, to making them all."""

from concurrent.futures import ThreadPoolExecutor
from itertools import combinations

import numpy as np
import pytest

from tipsight import tables
from tipsight.advice.advise import advise, examine
from tipsight.errors import Mistakes
from tipsight.inputs.question import Question
from tipsight.load import patterns
from tipsight.season import jobs, making, swims
from tipsight.season.served import at_the_bank, served
from tipsight.season.swims import Fished


def _told(far: str, behind: str, looks: str, pace: str, boils: str = "even") -> Question:
    water = Question(looks=looks, pace=pace, boils=boils, depth="6 ft")
    return water.with_options(distance=far, behind=(behind,), age="55")


NEAR = Fished("pool", 3.0, _told("14 yd", "dark", "glass", "0.3 m/s"))
FAR = Fished("flat", 2.0, _told("26 yd", "bright", "fur", "0.6 m/s"))
ROUGH = Fished("weir", 1.0, _told("14 yd", "dark", "wavelets", "1 m/s", "weir"))
FLOATS = [
    Question(pattern="quill avon", takes="6BB", diameter="3 mm", stock="quill", showing=showing, paint=paint)
    for showing, paint in (
        ("12 mm", "black"), ("12 mm", "fluorescent orange"), ("30 mm", "black"),
        ("30 mm", "fluorescent orange"), ("30 mm", "black 0-15 mm, white 15-30 mm"),
    )
] + [
    Question(pattern="wire stick", takes="6 No 4", diameter="2 mm", stock="solid", showing="15 mm",
             paint="white"),
    Question(pattern="quill avon", takes="1 No 8", weighed_tip="2 mm solid", takes_showing="5 mm",
             diameter="6 mm", stock="solid", showing="40 mm", paint="white"),
]  # fmt: skip


@pytest.fixture(scope="module")
def found():
    return served(FLOATS, [NEAR, FAR, ROUGH])


def test_as_the_close_look_has_it(found) -> None:
    for f, one in enumerate(FLOATS):
        for s, fished in enumerate((NEAR, FAR, ROUGH)):
            try:
                passes = examine(fished.with_float(one)).passes
            except Mistakes:
                passes = False
                assert np.isinf(found.short_by[f, s])
            assert found.passes[f, s] == passes == (found.short_by[f, s] == 0.0)
    assert found.passes[:, 0].any()
    assert not found.passes[:, 2].all()


def test_the_level_and_the_share_of_the_usual_shot(found) -> None:
    """Six feet at a walk want 3.66 g at the most, at 1 m/s half as much again; 6BB are 2.4 g."""
    assert found.shot_share[:5, 0] == pytest.approx(2.4 / (2.0 * 1.8288), rel=0.01)
    assert found.shot_share[:5, 2] == pytest.approx(2.4 / (3.0 * 1.8288), rel=0.01)
    assert np.isnan(found.shot_share[6]).all()  # it sinks
    for f in (0, 3):
        told = examine(FAR.with_float(FLOATS[f]))
        assert found.level[f, 1] == pytest.approx(told.visibility.level, rel=1e-3)


def test_with_the_bank_is_what_the_answer_says_can_be_done() -> None:
    told = served(FLOATS[:3], [NEAR, FAR], with_bank=True)
    for f, one in enumerate(FLOATS[:3]):
        for s, fished in enumerate((NEAR, FAR)):
            assert told.with_bank[f, s] == advise(fished.with_float(one)).at_the_bank.block.passes
    assert (told.with_bank >= told.passes).all()
    assert told.with_bank.sum() > told.passes.sum()
    assert not at_the_bank(NEAR.with_float(FLOATS[-1]))


def test_threads_and_twins_give_the_same(found) -> None:
    with ThreadPoolExecutor(2) as pool:
        twice = served([*FLOATS, *FLOATS[:2]], [NEAR, FAR, ROUGH], executor=pool)
    assert (twice.passes == np.vstack([found.passes, found.passes[:2]])).all()


def test_floats_told_wrongly_are_told_by_their_place() -> None:
    thick, odd = FLOATS[0].with_options(diameter="900 mm"), FLOATS[1].with_options(takes="6XX")
    wrong = [FLOATS[0], FLOATS[0], thick, odd]
    with pytest.raises(Mistakes, match=r"float 3: diameter: .*\nfloat 4: takes: "):
        served(wrong, [NEAR])


def test_the_nearest_of_a_gap_and_what_would_cure_it(found) -> None:
    serves = np.zeros_like(found.passes)
    told = jobs.gaps(FLOATS, [NEAR, FAR, ROUGH], serves, found.short_by)
    assert [gap.swim for gap in told] == [0, 1, 2]  # as often as they are fished
    rough = told[2]
    assert found.short_by[rough.nearest, 2] == found.short_by[:, 2].min()
    broken = {fail.limit for fail in rough.block.broken}
    assert broken
    assert rough.block.tip.bands[0].paint in FLOATS[rough.nearest].paint
    assert rough.cures
    assert jobs.gaps([], [FAR, NEAR], serves[:0, :2], found.short_by[:0, :2]) == (
        jobs.Gap(1, None, None, ()), jobs.Gap(0, None, None, ()),
    )  # fmt: skip


HAVE = {"tips": ("quill 3", "solid 2"), "paints": ("black", "fluorescent orange", "white")}
OPEN = [Fished(one.name, one.often, one.question.with_options(**HAVE)) for one in (NEAR, FAR, ROUGH)]
HULLS = (("quill avon", "9 mm"), ("wire stick", "7.5 mm"))


@pytest.fixture
def small(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(making, "hulls", lambda: HULLS)


def every_float(pool: list[making.Candidate]) -> list[Question]:
    """Return every float of two hulls, three pieces of stock and three paints in one or two bands."""
    wet = {(one.pattern, one.stock): one.wet_mm for one in pool}
    found = []
    for (pattern, stock), below in wet.items():
        size = dict(HULLS)[pattern]
        usual = patterns.pattern(pattern)
        for showing in [*range(2, 15), *range(15, 61, 5)]:
            low, high = usual.usual_showing_from_mm, usual.usual_showing_to_mm
            if not low <= showing <= high + 20 or showing > 60:
                continue
            cuts = [showing * share for share in (1 / 2, 1 / 3, 2 / 3)]
            pairs = [(a, b) for a, b in (("black", "fluorescent orange"), ("black", "white"))]
            two = [
                f"{up} 0-{cut:.6g} mm, {low_} {cut:.6g}-{showing} mm"
                for a, b in pairs for up, low_ in ((a, b), (b, a)) for cut in cuts
                if min(cut, showing - cut) >= 5 - 1e-9
            ]  # fmt: skip
            glued = making.least_glued_mm(showing + below)
            for paint in ("black", "fluorescent orange", "white", *two):
                found.append(Question(pattern=pattern, size=size, stock=stock.kind,
                                      diameter=stock.diameter_mm, showing=float(showing), wet=below,
                                      glued=glued, paint=paint, tip_coats=3))  # fmt: skip
    return found


def test_nothing_is_made_that_takes_more_shot_than_is_usual(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two feet of water at a walk want 1.2 g at the most; the body of 19 mm takes some 8 g."""
    monkeypatch.setattr(making, "hulls", lambda: (("chunky trotter", "19 mm"),))
    near = NEAR.question.with_options(**{**HAVE, "tips": ("balsa 8",)}, pace="0.6 m/s")
    shallow, deep = (Fished(d, 1.0, near.with_options(depth=d)) for d in ("2 ft", "20 ft"))
    assert making.make([shallow], [], 1).never == (0,)
    made = making.make([deep], [], 1).by_count[0].floats[0]
    assert made.size == "19 mm"


def test_what_to_make_is_what_making_them_all_finds(small: None) -> None:
    pool, _, tried = making.candidates(OPEN)
    all_ = every_float(pool)
    assert len(all_) > 200
    assert tried > len(all_)
    serves = served(all_, OPEN).passes
    weight = np.array([one.often for one in OPEN])
    told = making.make(OPEN, [], 2)
    assert told.open == (0, 1, 2)
    masks = np.unique(serves, axis=0)
    for worth in told.by_count:
        best = max(
            float(weight[masks[list(c)].any(axis=0)].sum())
            for c in combinations(range(len(masks)), min(worth.count, len(masks)))
        )
        assert worth.chosen.worth == pytest.approx(best)
        close = served([one.question() for one in worth.floats], OPEN).passes
        assert float(weight[close.any(axis=0)].sum()) == pytest.approx(best)
    assert told.never == tuple(np.flatnonzero(~serves.any(axis=0)))


def test_nothing_is_made_for_what_is_served(small: None) -> None:
    first = making.make(OPEN[:1], [], 1).by_count[0]
    assert first.closes == ((0,),)
    box = [one.question() for one in first.floats]
    assert making.make(OPEN[:1], box, 2) == making.Makings(0, (), (), ())
    more = making.make(OPEN[:2], box, 2)
    assert more.open in ((), (1,))


def test_a_swim_that_only_a_heavy_float_serves_is_open_for_a_lighter_one(small: None) -> None:
    """Six feet at a walk want 3.66 g at the most, twelve 7.3 g; this float takes 5 g."""
    heavy = FLOATS[1].with_options(takes="5 g")
    deep = Fished("deep", 1.0, OPEN[0].question.with_options(depth="12 ft"))
    told = making.make([OPEN[0], deep], [heavy], 1)
    assert served([heavy], [OPEN[0], deep]).passes.all()
    assert told.open == (0,)
    assert told.by_count[0].closes == ((0,),)


def test_what_is_made_settles_as_it_was_meant(small: None) -> None:
    pool, _, _ = making.candidates(OPEN)
    for one in pool[:: max(1, len(pool) // 8)]:
        tip = advise_tip(one)
        assert (tip.stock, tip.showing_mm, tip.wet_mm, tip.glued_mm) == (
            one.stock, one.showing_mm, one.wet_mm, one.glued_mm,
        )  # fmt: skip
        assert [b.paint for b in tip.bands] == [b.paint for b in one.bands]
        assert [b.to_top_mm for b in tip.bands] == pytest.approx([b.to_top_mm for b in one.bands], abs=1e-3)


def advise_tip(one: making.Candidate):
    from tipsight.inputs.settle import settle

    return settle(one.question()).tip


def test_own_tables_count(tmp_path, small: None) -> None:
    """Where a BB weighs next to nothing, six of them cock no quill avon as they did."""
    own = "name,mass_g,group,source\nBB,0.02,shot,weighed\n"
    (tmp_path / "shot.csv").write_text(own, encoding="utf-8")
    usual = served(FLOATS[:2], [NEAR]).short_by
    with tables.using(tmp_path):
        other = served(FLOATS[:2], [NEAR]).short_by
    assert (usual != other).any()


def test_the_ladder_is_whole() -> None:
    assert len(swims.ladder(Question(age="60"))) == 4 * 3 * 2 * 2
