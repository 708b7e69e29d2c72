"""What brings drawn streaks to the answer's strength, on pictures made up for it."""

import numpy as np
import pytest
import scipy.fft
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.pictures.streaks import Streaks, factor
from tipsight.sight.clutter import Clutter

RIPPLE = Clutter(0.2, 127.0, 0.064, 0.5, 2.5, 0.6)


def grain(rows, columns, spread, seed=0):
    """Return a picture of even grain, over 0."""
    return np.exp(spread * np.random.default_rng(seed).standard_normal((rows, columns)))


@settings(max_examples=30, deadline=None)
@given(
    rows=st.integers(2, 120),
    columns=st.integers(2, 200),
    spread=st.floats(1e-6, 1.5),
    contrast=st.floats(0.0, 2.0),
    length=st.floats(20.0, 2000.0),
    bank=st.floats(0.0, 40.0),
    sky=st.floats(0.0, 1.0),
)
def test_light_stays_above_nothing_and_its_mean_stays(
    rows, columns, spread, contrast, length, bank, sky
):
    water = grain(rows, columns, spread)
    clutter = Clutter(contrast, length, 0.07, bank, 3.0, sky)
    times = factor(water, 1.5, 3.0, float(water.mean()), clutter)
    assert np.isfinite(times).all()
    assert (times > 0.0).all()
    assert (water * times).mean() == pytest.approx(water.mean(), rel=1e-9)


def test_twice_the_contrast_draws_streaks_twice_as_strong():
    """Bands hold a few hundred waves; what is left of the logarithm's bend is under 3 %."""
    water = grain(200, 400, 0.02)
    once, twice = (
        water * factor(water, 1.5, 3.0, 1.0, Clutter(c, 127.0, 0.064, 0.5, 2.5, 0.6))
        for c in (0.05, 0.1)
    )
    low = np.abs(np.fft.fft2(np.stack([once, twice]))[:, 1:8, 1:20])
    ratio = np.sqrt((low[1] ** 2).sum() / (low[0] ** 2).sum())
    assert ratio == pytest.approx(2.0, rel=0.03)


@pytest.mark.parametrize(
    ("water", "clutter"),
    [
        (np.full((50, 80), 3.0), RIPPLE),
        (grain(50, 80, 0.1), Clutter(0.0, 127.0, 0.064, 0.5, 2.5, 0.6)),
    ],
    ids=["level water", "no streaks told"],
)
def test_nothing_to_bring_to_strength_stays_as_it_was_cast(water, clutter):
    assert factor(water, 1.5, 3.0, 3.0, clutter) == pytest.approx(1.0, abs=1e-9)


def test_fine_streaks_stay_as_they_were_cast():
    """Finer than 0.096 across or 0.06 up: of the logarithm nothing changes but the mean."""
    water = grain(200, 400, 0.1)
    change = scipy.fft.dctn(np.log(factor(water, 1.5, 3.0, 1.0, RIPPLE)), norm="ortho")
    up = (np.arange(200) / (2 * 200 * 1.5))[:, None]
    across = (np.arange(400) / (2 * 400 * 3.0))[None, :]
    assert np.abs(change[(up < 0.05) & (across < 0.09)]).max() > 0.1
    assert np.abs(change[(up > 0.06) | (across > 0.096)]).max() < 1e-9


def test_the_factor_is_read_between_its_places_and_held_at_its_edges():
    held = Streaks(np.array([[1.0, 2.0], [3.0, 4.0]]), 10.0, 2.0, -3.0, 6.0)
    assert held.at(np.array([10.0, 11.0, 12.0]), np.array([-3.0, 0.0])).tolist() == [
        [1.0, 1.5],
        [2.0, 2.5],
        [3.0, 3.5],
    ]
    assert held.at(np.array([0.0, 40.0]), np.array([50.0])).ravel().tolist() == [2.0, 4.0]
