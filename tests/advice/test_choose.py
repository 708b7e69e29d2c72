"""The rule of choice against a plain search of every candidate."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.choose import Field, asked, best, brightest, ranked

SHELF = st.integers(0, 2**32 - 1)


def shelf(seed: int) -> tuple[Field, ...]:
    """Five hundred candidates: 10 pieces of stock, with many ties."""
    rng = np.random.default_rng(seed)
    fields = []
    for edges, paints in ((5, 4), (5, 6)):
        fields.append(
            Field(
                rng.uniform(0, 12, (10, edges, paints)),
                rng.choice([0.05, 0.1, 0.2, 0.3], (10, edges)),
                rng.choice([-0.2, -0.1, 0.0, 0.1, 0.2], (10, edges)),
                rng.random((10, edges)) < 0.6,
                rng.choice([0.0, 0.5, 1.0], 10),
            )
        )
    assert sum(f.level.size for f in fields) == 500
    return tuple(fields)


def exhaustive(fields: tuple[Field, ...], wanted: float) -> tuple[int, int, int, int] | None:
    """The rule word by word: least force; within a tenth of it 0.85 as well seen as the best."""
    good = [
        (
            f.sink_force_g[i, j],
            n,
            f.level[i, j, k],
            abs(f.change_g[i, j]),
            f.off_mm[i],
            (n, i, j, k),
        )
        for n, f in enumerate(fields)
        for i, j, k in np.ndindex(f.level.shape)
        if f.level[i, j, k] >= wanted and f.allowed[i, j]
    ]
    if not good:
        return None
    least = min(one[0] for one in good)
    near = [one for one in good if one[0] <= 1.1 * least]
    well = [one for one in near if one[2] >= 0.85 * max(other[2] for other in near)]
    return min(well, key=lambda one: (one[1], -one[2], one[3], one[4]))[5]


@settings(deadline=None, derandomize=True, max_examples=60)
@given(seed=SHELF, wanted=st.sampled_from([2.4, 5.0, 10.0, 11.9]))
def test_the_choice_equals_an_exhaustive_search_of_five_hundred(seed, wanted):
    fields = shelf(seed)
    pick = next(ranked(fields, wanted), None)
    expected = exhaustive(fields, wanted)
    got = None if pick is None else (pick.scheme, pick.stock, pick.edges, pick.paints)
    assert got == expected


def test_what_was_chosen_does_not_come_again():
    picks = list(ranked(shelf(3), 5.0, ceiling=60))
    assert len({(p.scheme, p.stock, p.edges, p.paints) for p in picks}) == len(picks) == 60


def one(level, force, change=0.0, off=0.0, allowed=True):
    """A field of single candidates side by side, each of its own length."""
    columns = [np.atleast_1d(np.asarray(x, dtype=float)) for x in (level, force, change)]
    level, force, change = np.broadcast_arrays(*columns)
    return Field(
        level[None, :, None], force[None, :], change[None, :], np.full(force[None, :].shape, allowed),
        np.array([off]),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("field", "chosen"),
    [
        (one([6, 6], [0.20, 0.10]), 1),  # the least force
        (one([5.0, 9.0], [0.100, 0.109]), 1),  # within a tenth the better seen ...
        (one([5.0, 9.0], [0.100, 0.111]), 0),  # ... and not beyond it
        (one([8.0, 9.0], [0.100, 0.105]), 1),  # 8.0 is within 0.85 of 9.0: then the better seen
        (one([6, 6], [0.1, 0.1], [-0.3, 0.1]), 1),  # of equals the least change of shot
    ],
)
def test_the_choice_by_hand(field, chosen):
    assert next(ranked((field,), 5.0)).edges == chosen


def test_fewest_bands_come_before_the_better_seen():
    single, pair = one(8.0, 0.1), one(9.0, 0.1)
    assert next(ranked((single, pair), 5.0)).scheme == 0
    worse = one(7.6, 0.1)  # under 0.85 of nine
    assert next(ranked((worse, pair), 5.0)).scheme == 1


def test_the_diameter_nearest_to_the_one_in_hand_comes_last():
    far, near = one(8.0, 0.1, off=1.0), one(8.0, 0.1, off=0.5)
    both = Field(*(np.concatenate([getattr(f, k) for f in (far, near)]) for k in vars(far)))
    assert next(ranked((both,), 5.0)).stock == 1


@pytest.mark.parametrize(
    ("wish", "best_", "asked_"),
    [
        (5, 12, 5),
        (5, 5.8, 4.93),
        (5, 4, 3.4),
        (5, 2.7, 2.4),
        (5, 2.0, 2.0),
        (2.4, 9, 2.4),
        (5, 0, 0),
    ],
)
def test_what_is_asked_moves_smoothly_with_what_can_be_had(wish, best_, asked_):
    """min(wish, max(0.85 best, min(best, 2.4)))."""
    assert asked(wish, best_) == pytest.approx(asked_)


def test_the_best_is_of_what_is_allowed():
    assert best((one([6.0, 9.0], 0.1), one(11.0, 0.1, allowed=False))) == 9.0
    assert best((one(11.0, 0.1, allowed=False),)) == 0.0


@settings(deadline=None, derandomize=True, max_examples=20)
@given(seed=SHELF)
def test_the_brightest_is_the_highest_level_allowed(seed):
    fields = shelf(seed)
    first = next(brightest(fields), None)
    highest = max(np.where(f.allowed[..., None], f.level, -1).max() for f in fields)
    assert first is not None
    assert first.level == pytest.approx(highest)
