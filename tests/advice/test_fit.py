"""What is fitted, by hand: a shelf and a pot of paint of which only the levels are known."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
import pytest
import sample

from tipsight.advice import advise, bench, fit
from tipsight.advice.answer import Block, Change
from tipsight.advice.choose import Field
from tipsight.advice.facts import Failure, Fit, Limit, Note, Repaint
from tipsight.advice.limits import BY_LIMIT
from tipsight.advice.swim import Swim
from tipsight.inputs.case import Band, Stock, Wanted

SWIM = replace(sample.SWIM, case=replace(sample.CASE, wanted=Wanted(5.0, 0.2)))
TIP = sample.CASE.tip
SIGHT = Failure(Limit.SIGHT, 1.0, 5.0)
STIFF = Failure(Limit.BITE, 0.5, 0.4)
WHITE = replace(TIP, bands=(Band("white", 0.0, TIP.showing_mm),))
THICK = replace(TIP, stock=Stock("cane", 5.0))


def tip_at(level: float, tip=TIP, *fails: Failure) -> Block:
    """A tip seen so; short of 4.75, nineteen parts in twenty of what is wanted, it fails."""
    short = () if level >= 4.75 else (SIGHT,)
    return sample.block(tip, level, "any", None, (*short, *fails))


@dataclass(frozen=True)
class Known:
    """What could be fitted: one tip at each of some levels, all of them sound."""

    swim: Swim
    tip: object
    levels: tuple[float, ...]

    limits = ()

    def fields(self, *_: Limit, usual: bool = True) -> tuple[Field, ...]:
        level = np.array(self.levels).reshape(-1, 1, 1)
        flat = np.zeros(level.shape[:2])
        return (Field(level, flat, flat, flat == 0.0, flat[:, 0]),)

    def passing(self, _: tuple[Field, ...], wanted: float) -> Iterator[Block]:
        """The least of those that do, as the choice has it."""
        return (tip_at(level, self.tip) for level in sorted(self.levels) if level >= wanted)

    def either(self, *_: object) -> tuple[str, ...]:
        return ()


def fitted(monkeypatch, in_hand, spot, painted, shelf, floor=0.0) -> fit.Fitted:
    monkeypatch.setattr(fit, "repaint", lambda _: Known(SWIM, WHITE, painted))
    return fit.fit(Known(SWIM, THICK, shelf), in_hand, spot, floor)


def what(change: Change | None) -> tuple[str, float]:
    assert change is not None
    kinds = {Repaint: "repaint", Fit: "fit"}
    does = kinds[type(change.actions[0])] if change.actions else "leave"
    return does, change.block.visibility.level


@pytest.mark.parametrize(
    ("hand", "spot", "painted", "shelf", "does", "warned"),
    [
        # the tip in hand does: it stays, unless new paint shows it twice as well
        (6.0, 6.0, (11.9,), (20.0,), ("leave", 6.0), None),
        (6.0, 6.0, (12.0,), (20.0,), ("repaint", 12.0), None),
        # it does not: new paint that comes to nineteen parts in twenty of what is asked, 5
        (2.0, 2.0, (4.8, 9.0), (5.0,), ("repaint", 4.8), None),
        (2.0, 2.0, (4.7,), (5.1, 9.0), ("fit", 5.1), None),
        # 5 cannot be had: asked is 0.85 of the best, 4, but never less than can be followed
        (2.0, 2.0, (2.0,), (3.3, 3.5, 4.0), ("fit", 3.5), Note.OUT_OF_REACH),
        (1.0, 1.0, (1.0,), (2.3, 2.45, 2.6), ("fit", 2.45), Note.OUT_OF_REACH),
        (1.0, 1.0, (1.0,), (1.1, 1.9, 2.0), ("fit", 2.0), Note.OUT_OF_REACH),
        # nothing is fitted that is seen worse than what is done by the water
        (2.0, 3.8, (2.0,), (3.5, 4.0), ("fit", 4.0), Note.OUT_OF_REACH),
        (2.0, 4.5, (2.0,), (3.5, 4.0), ("leave", 4.5), Note.NONE_BETTER),
        # beyond what is wanted that is no matter
        (2.0, 9.0, (2.0,), (5.0, 6.0), ("fit", 5.0), None),
    ],
)
def test_what_is_fitted(monkeypatch, hand, spot, painted, shelf, does, warned) -> None:
    by_the_water = tip_at(spot, TIP if spot == hand else replace(TIP, showing_mm=30.0))
    found = fitted(monkeypatch, tip_at(hand), by_the_water, painted, shelf)
    assert what(found.change) == does
    assert [one.kind for one in found.in_the_way] == ([] if warned is None else [warned])


def test_what_breaks_another_limit_by_the_water_holds_nothing_up(monkeypatch) -> None:
    spot = tip_at(4.5, replace(TIP, showing_mm=30.0), STIFF)
    found = fitted(monkeypatch, tip_at(2.0), spot, (2.0,), (3.5, 4.0))
    assert what(found.change) == ("fit", 3.5)


def test_where_none_is_better_the_tip_in_hand_stays(monkeypatch) -> None:
    hand = tip_at(2.2)
    found = fitted(monkeypatch, hand, hand, (2.0,), (2.1,))
    assert what(found.change) == ("leave", 2.2)
    assert found.in_the_way[0].values == {"level": 2.2, "wanted": 5.0}


def test_a_floor_that_is_told_holds(monkeypatch) -> None:
    found = fitted(monkeypatch, tip_at(2.0), tip_at(2.0), (2.0,), (3.5, 4.0), 3.9)
    assert what(found.change) == ("fit", 4.0)


RIDE = Failure(Limit.RIDE, 1.5, 2.0)


@dataclass(frozen=True)
class Broken:
    """A shelf on which, with one limit left out, a tip of some level is had that breaks others."""

    levels: dict[Limit, float]
    fails: tuple[Failure, ...]

    @property
    def limits(self) -> tuple[Limit, ...]:
        return tuple(self.levels)

    def nearest(self, limit: Limit, followed: float) -> tuple[Field, ...]:
        assert followed == 2.4
        flat = np.zeros((1, 1))
        return (Field(np.full((1, 1, 1), self.levels[limit]), flat, flat, flat == 0.0, flat[0]),)

    def looked_at(self, picks) -> Iterator[Block]:
        return (tip_at(pick.level, TIP, *self.fails) for pick in picks)


@pytest.mark.parametrize(
    ("levels", "fails", "told"),
    [
        # each limit in its turn, if the tip without it could be followed, from 2.4 on
        ({Limit.RIDE: 3.0, Limit.BITE: 4.0}, (RIDE, STIFF), [RIDE, STIFF]),
        ({Limit.RIDE: 2.4, Limit.BITE: 2.3}, (RIDE, STIFF), [RIDE]),
        ({Limit.RIDE: 2.3, Limit.BITE: 2.4}, (RIDE, STIFF), [STIFF]),
        # only of the limit that was left out
        ({Limit.RIDE: 3.0, Limit.BITE: 4.0}, (STIFF,), [STIFF]),
        ({Limit.RIDE: 3.0}, (), []),
    ],
)
def test_what_stands_in_the_way_limit_by_limit(levels, fails, told) -> None:
    found = fit._nearly(Broken(levels, fails))
    assert [one.failure for one in found] == told
    assert all(one.cures == BY_LIMIT[one.failure.limit].cures for one in found)


@dataclass(frozen=True)
class Stiff:
    """A shelf on which every tip takes so much of the pull to sink."""

    swim: Swim
    share: float

    def fields(self) -> tuple[Field, ...]:
        one, flat = np.ones((1, 1, 1)), np.zeros((1, 1))
        allowed = np.array([[self.share <= self.swim.case.wanted.bite_share]])
        return (Field(one, flat, flat, allowed, flat[0]),)

    def wanting(self, wanted) -> "Stiff":
        return replace(self, swim=replace(self.swim, case=replace(self.swim.case, wanted=wanted)))


def test_other_wishes_alter_no_level_and_do_alter_what_is_allowed() -> None:
    plain = bench.shelf(sample.SWIM)
    bold = plain.wanting(replace(sample.CASE.wanted, bite_share=0.9))
    again = bench.shelf(replace(sample.SWIM, case=bold.swim.case))
    for one, other in zip(bold.fields(), again.fields(), strict=True):
        assert (one.level == other.level).all()
        assert (one.allowed == other.allowed).all()
    assert any((a.allowed != b.allowed).any() for a, b in zip(plain.fields(), bold.fields(), strict=True))


@pytest.mark.parametrize(
    ("share", "told", "bold"),
    [
        (0.2, False, False),  # ordinary bites do
        (0.21, False, True),
        (0.21, True, False),  # who told his bites is not asked for others
        (0.35, False, True),
        (0.36, False, False),  # not even bold ones would do
    ],
)
def test_bites_turn_bold_only_where_the_water_asks_for_it(share, told, bold) -> None:
    wanted = replace(sample.CASE.wanted, bite_share=0.2, bites_told=told)
    swim = replace(sample.SWIM, case=replace(sample.CASE, wanted=wanted))
    found = advise._bolder(Stiff(swim, share))
    assert (found is not None) is bold
    if found is not None:
        assert found.swim.case.wanted.bite_share == 0.35
