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
    told = jobs.carry(swims, serves)
    assert sorted(told.fewest.which) == [0, 1]
    assert told.least == 2
    assert told.one_fewer.which == (1,)  # 6 times a season against 5
    assert (told.unserved, told.given_up) == ((3,), (0,))
    assert jobs.idle([Question()] * len(serves), serves) == (jobs.Idle(2, None),)
