"""The choice of few that serve many, held to trying them all."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.inputs.question import Question
from tipsight.season import covering, jobs
from tipsight.season.covering import Chosen
from tipsight.season.swims import Fished


@st.composite
def boxes(draw: st.DrawFn) -> tuple[np.ndarray, np.ndarray]:
    floats, swims = draw(st.integers(1, 7)), draw(st.integers(1, 9))
    cells = st.lists(st.booleans(), min_size=floats * swims, max_size=floats * swims)
    often = st.lists(st.integers(0, 9), min_size=swims, max_size=swims)
    return np.array(draw(cells)).reshape(floats, swims), np.array(draw(often), dtype=float)


def by_trying(serves: np.ndarray, weight: np.ndarray, count: int) -> float:
    rows = range(len(serves))
    each = (c for n in range(count + 1) for c in combinations(rows, min(n, len(serves))))
    return max(sum(weight[s] for s in range(len(weight)) if serves[list(c), s].any()) for c in each)


@settings(max_examples=60, deadline=None)
@given(boxes(), st.integers(1, 4))
def test_the_most_is_what_trying_all_finds(box, count: int) -> None:
    serves, weight = box
    found = covering.most(serves, weight, count)
    assert found.worth == pytest.approx(by_trying(serves, weight, count))
    assert found.could_be == pytest.approx(found.worth)
    assert len(found.which) == len(set(found.which)) <= count
    assert covering.worth(serves, weight, found.which) == pytest.approx(found.worth)
    assert sum(found.adds) == pytest.approx(found.worth)
    assert list(found.adds) == sorted(found.adds, reverse=True)


@settings(max_examples=60, deadline=None)
@given(boxes())
def test_the_fewest_is_what_trying_all_finds(box) -> None:
    serves, weight = box
    found, least = covering.fewest(serves, weight)
    can = serves.any(axis=0)
    assert (serves[list(found.which)].any(axis=0) == can).all()
    fewest = next(
        n
        for n in range(len(serves) + 1)
        for c in combinations(range(len(serves)), n)
        if (serves[list(c)].any(axis=0) == can).all()
    )
    assert len(found.which) == least == fewest


@settings(max_examples=60, deadline=None)
@given(boxes())
def test_what_is_spare_can_all_be_left_out_together(box) -> None:
    serves, _ = box
    spare = covering.spare(serves)
    kept = [n for n in range(len(serves)) if n not in spare]
    assert (serves[kept].any(axis=0) == serves.any(axis=0)).all()
    for n in kept:  # and no kept one is covered by another
        assert serves[n].any()
        assert not any((serves[n] <= serves[k]).all() for k in kept if k != n)
    for n, instead in spare.items():
        assert instead is None or (instead in kept and (serves[n] <= serves[instead]).all())
        assert (instead is None) == (not serves[n].any())


@settings(max_examples=60, deadline=None)
@given(boxes(), st.randoms(use_true_random=False))
def test_only_what_is_sunk_as_easily_stands_in(box, random) -> None:
    serves, _ = box
    force = np.array([random.choice([0.2, 0.21, 0.4]) for _ in serves])
    spare = covering.spare(serves, force)
    kept = [n for n in range(len(serves)) if n not in spare]

    def stands_in(n, k):
        return (serves[n] <= serves[k]).all() and force[k] <= 1.1 * force[n]

    for n in kept:
        assert not any(stands_in(n, k) and serves[k].sum() > serves[n].sum() for k in kept if k != n)
    for n, instead in spare.items():
        assert (instead is None) == (not serves[n].any())
        assert instead is None or (instead in kept and stands_in(n, instead))


@settings(max_examples=60, deadline=None)
@given(boxes(), st.randoms(use_true_random=False))
def test_only_what_is_in_no_merit_worse_stands_in(box, random) -> None:
    serves, _ = box
    merits = np.array([[[random.randint(0, 2) for _ in range(2)] for _ in one] for one in serves])
    merits = merits.reshape(*serves.shape, 2)
    spare = covering.spare(serves, None, merits)
    kept = [n for n in range(len(serves)) if n not in spare]

    def stands_in(n, k):
        return all(serves[k, s] and (merits[k, s] >= merits[n, s]).all() for s in np.flatnonzero(serves[n]))

    for n in kept:
        assert serves[n].any()
        assert not any(stands_in(n, k) for k in kept if k != n)
    for n, instead in spare.items():
        assert (instead is None) == (not serves[n].any())
        assert instead is None or (instead in kept and stands_in(n, instead))


@settings(max_examples=60, deadline=None)
@given(boxes(), st.randoms(use_true_random=False))
def test_of_choices_as_few_the_one_that_is_sunk_most_easily(box, random) -> None:
    serves, weight = box
    force = np.array([random.choice([0.05, 0.2, 0.3, 1.7]) for _ in serves])
    found, least = covering.fewest(serves, weight, force=force)
    can = serves.any(axis=0)
    for few in range(len(serves) + 1):
        do = [c for c in combinations(range(len(serves)), few) if not can.any() or
              (serves[list(c)].any(axis=0) >= can).all()]  # fmt: skip
        if do:
            break
    assert len(found.which) == least == few
    assert force[list(found.which)].sum() == pytest.approx(min(force[list(c)].sum() for c in do))


def test_more_than_sixty_four_swims() -> None:
    """One float for each of a hundred swims, and one for the last ninety of them."""
    serves = np.vstack([np.eye(100, dtype=bool), np.arange(100)[None, :] >= 10])
    found = covering.most(serves, np.ones(100), 3)
    assert (found.worth, found.which[0], found.adds) == (92.0, 100, (90.0, 1.0, 1.0))
    fewest, least = covering.fewest(serves, np.ones(100))
    assert (len(fewest.which), least) == (11, 11)


def test_no_floats_or_no_swims_that_count_choose_none() -> None:
    none = Chosen((), 0.0, (), 0.0)
    assert covering.most(np.zeros((0, 3), bool), np.ones(3), 2) == none
    assert covering.most(np.ones((2, 3), bool), np.zeros(3), 2) == none
    assert covering.most(np.ones((2, 3), bool), np.ones(3), 0) == none
    assert covering.fewest(np.zeros((2, 3), bool), np.ones(3)) == (none, 0)


def test_a_search_that_is_broken_off_tells_what_might_be_had() -> None:
    serves = np.random.default_rng(3).random((200, 300)) < 0.04
    found = covering.most(serves, np.ones(300), 25, long_s=1e-3)
    assert 0.0 < found.worth <= found.could_be <= 300.0
    assert covering.worth(serves, np.ones(300), found.which) == found.worth


def test_what_to_carry_and_what_one_fewer_gives_up() -> None:
    """Float 1 alone serves a and b, float 2 b and c, float 3 nothing; d is served by none."""
    swims = [Fished(name, often, Question()) for name, often in zip("abcd", (1, 4, 2, 9), strict=True)]
    serves = np.array([[1, 1, 0, 0], [0, 1, 1, 0], [0, 0, 0, 0]], dtype=bool)
    told = jobs.carry([Question()] * len(serves), swims, serves)
    assert sorted(told.fewest.which) == [0, 1]
    assert told.least == 2
    assert told.one_fewer.which == (1,)  # 6 times a season against 5
    assert (told.unserved, told.given_up) == ((3,), (0,))
    assert [told.for_[told.fewest.which.index(n)] for n in (0, 1)] == [(0,), (1, 2)]
    assert jobs.idle([Question()] * len(serves), serves) == (jobs.Idle(2, None),)


def test_of_two_that_serve_a_swim_the_one_sunk_more_easily_is_for_it() -> None:
    """A long tip serves all three, a short one the first two: by two rows nothing is spared."""
    swims = [Fished(name, 1.0, Question()) for name in "abc"]
    serves = np.array([[1, 1, 0, 0], [0, 1, 1, 0], [0, 1, 1, 0]], dtype=bool)[:, :3]
    floats = [Question(showing=long) for long in ("20 mm", "40 mm", "10 mm")]
    told = jobs.carry(floats, swims, serves)
    assert sorted(told.fewest.which) == [0, 2]  # the short one, not the long one
    assert dict(zip(told.fewest.which, told.for_, strict=True)) == {0: (0,), 2: (1, 2)}


def test_a_float_is_idle_only_beside_one_that_is_seen_as_well_and_is_no_heavier_for_the_swim() -> None:
    """Grades by the table: a level of 5 keeps in view, 2 is followed; both serve both swims."""
    floats, serves = [Question()] * 2, np.ones((2, 2), dtype=bool)
    level = np.array([[5.2, 5.4], [5.1, 5.3]])
    assert jobs.idle(floats, serves, level) == (jobs.Idle(1, 0),)  # no grade apart: the first is kept
    assert jobs.idle(floats, serves, np.array([[5.2, 2.4], [5.1, 5.3]])) == (jobs.Idle(0, 1),)
    assert jobs.idle(floats, serves, np.array([[5.2, 2.4], [2.2, 5.3]])) == ()
    share = np.array([[0.8, 1.2], [0.8, 0.9]])
    assert jobs.idle(floats, serves, level, share) == (jobs.Idle(0, 1),)
    assert jobs.idle(floats, serves, level, np.array([[0.5, 0.7], [0.8, 0.9]])) == (jobs.Idle(1, 0),)


def test_swims_that_only_heavy_floats_serve() -> None:
    """The third float is light but does not serve swim 1; a load just at the limit is no heavy one."""
    serves = np.array([[1, 1, 1], [1, 1, 0], [1, 0, 0]], dtype=bool)
    share = np.array([[1.6, 1.6, 1.0], [1.4, 1.3, 0.4], [1.1, 0.5, 0.2]])
    assert jobs.heavy_only(serves, share) == (jobs.Heavy(0, 2, 1.1), jobs.Heavy(1, 1, 1.3))
    assert jobs.heavy_only(serves[:0], share[:0]) == ()
