"""The rule of choice against a plain search of every candidate."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.choose import Field, brightest, ranked

SHELF = st.integers(0, 2**32 - 1)


def shelf(seed: int) -> tuple[Field, ...]:
    """Five hundred candidates: 10 pieces of stock, with many ties."""
    rng = np.random.default_rng(seed)
    fields = []
    for edges, paints in ((5, 4), (3, 6), (2, 6)):
        fields.append(
            Field(
                rng.uniform(0, 12, (10, edges, paints)),
                rng.choice([0.05, 0.1, 0.2, 0.3], (10, edges)),
                rng.choice([-0.2, -0.1, 0.0, 0.1, 0.2], (10, edges)),
                rng.random((10, edges)) < 0.6,
            )
        )
    assert sum(f.level.size for f in fields) == 500
    return tuple(fields)


def exhaustive(fields: tuple[Field, ...], wanted: float) -> tuple[int, int, int, int] | None:
    best, found = None, None
    for n, field in enumerate(fields):
        for i in range(field.level.shape[0]):
            for j in range(field.level.shape[1]):
                for k in range(field.level.shape[2]):
                    if field.level[i, j, k] < wanted or not field.allowed[i, j]:
                        continue
                    key = (
                        field.sink_force_g[i, j],
                        abs(field.change_g[i, j]),
                        n,
                        -field.level[i, j, k],
                    )
                    if best is None or key < best:
                        best, found = key, (n, i, j, k)
    return found


@settings(deadline=None, derandomize=True, max_examples=60)
@given(seed=SHELF, wanted=st.sampled_from([2.5, 5.0, 10.0, 11.9]))
def test_the_choice_equals_an_exhaustive_search_of_five_hundred(seed, wanted):
    fields = shelf(seed)
    pick = next(ranked(fields, wanted), None)
    expected = exhaustive(fields, wanted)
    got = None if pick is None else (pick.scheme, pick.stock, pick.edges, pick.paints)
    assert got == expected


@settings(deadline=None, derandomize=True, max_examples=20)
@given(seed=SHELF)
def test_the_order_never_turns_back(seed):
    picks = list(ranked(shelf(seed), 5.0, ceiling=60))
    keys = [(p.sink_force_g, round(abs(p.change_g), 5), p.scheme) for p in picks]
    assert keys == sorted(keys)


@settings(deadline=None, derandomize=True, max_examples=20)
@given(seed=SHELF)
def test_the_brightest_is_the_highest_level_allowed(seed):
    fields = shelf(seed)
    best = next(brightest(fields), None)
    highest = max(np.where(f.allowed[..., None], f.level, -1).max() for f in fields)
    assert best is not None
    assert best.level == pytest.approx(highest)


# --- by hand: two pieces of stock, two lengths, two paints; then two bands of one piece


ONE = Field(
    level=np.array([[[4.0, 6.0], [7.0, 8.0]], [[5.0, 9.0], [6.0, 6.0]]]),
    sink_force_g=np.array([[0.10, 0.20], [0.10, 0.30]]),
    change_g=np.array([[-0.2, 0.1], [0.1, 0.0]]),
    allowed=np.array([[True, True], [True, False]]),
)
TWO = Field(
    level=np.array([[[9.5]]]),
    sink_force_g=np.array([[0.10]]),
    change_g=np.array([[-0.1]]),
    allowed=np.array([[True]]),
)


def picked(found) -> list[tuple[int, int, int, int]]:
    return [(one.scheme, one.stock, one.edges, one.paints) for one in found]


def test_the_choice_by_hand() -> None:
    """Least to sink it, then least change of shot either way, then fewest bands, then the level."""
    assert picked(ranked((ONE, TWO), 5.0)) == [
        (0, 1, 0, 1),  # 0.10 g, 0.1 on, one band, level 9
        (0, 1, 0, 0),  # the same at level 5, which is just enough
        (1, 0, 0, 0),  # 0.10 g, 0.1 off, two bands, though level 9.5
        (0, 0, 0, 1),  # 0.10 g, 0.2 off
        (0, 0, 1, 1),  # 0.20 g, level 8
        (0, 0, 1, 0),  # the same, level 7
    ]


def test_the_brightest_by_hand() -> None:
    """By the level alone, whether it is enough or not; what is not allowed stays away."""
    assert [one.level for one in brightest((ONE, TWO))] == [9.5, 9.0, 8.0, 7.0, 6.0, 5.0, 4.0]
    assert picked(brightest((ONE, TWO)))[:2] == [(1, 0, 0, 0), (0, 1, 0, 1)]


def test_a_pick_carries_the_numbers_of_its_own_place() -> None:
    found = list(ranked((ONE, TWO), 5.0))
    assert (found[2].level, found[2].sink_force_g, found[2].change_g) == (9.5, 0.1, -0.1)
    assert (found[4].level, found[4].sink_force_g, found[4].change_g) == (8.0, 0.2, 0.1)
