"""The streaks of the ripple against the random seas that their fit was made from.

Computed, not measured: nobody has published such seas on rivers.
"""

import csv
from pathlib import Path

import numpy as np
import pytest
from sight_level import visibility_level

from tipsight.inputs.case import Angler, Light, Stream, Stretch, Wind
from tipsight.scene import slopes
from tipsight.scene.look import look
from tipsight.scene.slopes import SlopeVariance
from tipsight.sight import clutter
from tipsight.sight.clutter import Clutter
from tipsight.sight.eye import Eye


def seas():
    with Path(__file__).with_name("streak_seas.csv").open(encoding="utf-8", newline="") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        return [{key: float(value) for key, value in row.items()} for row in rows]


SEAS = seas()
OPEN = np.array([sea["bank_height_deg"] < 1.0 for sea in SEAS])
DIRECT = np.array([[sea[key] for key in ("b0_mm2", "f0_per_mm", "b1_mm2")] for sea in SEAS])


def water(sea):
    return Clutter(*(
        sea[key] for key in ("facet_contrast", "peak_wavelength_mm", "slope_rms",
                             "bank_height_deg", "look_down_deg", "sky_correlation")
    ))  # fmt: skip


OFF = np.log([clutter.shape(water(sea)) for sea in SEAS] / DIRECT)


# One sea may be off by 2.7, 1.4 and 2.1 times; together rms as found when the fit was made, to
# about three times as many seas as stand here, and a tenth more.
@pytest.mark.parametrize(("k", "worst", "rms"), [(0, 1.0, 0.45), (1, 0.35, 0.15), (2, 0.75, 0.35)])
def test_the_fit_keeps_its_scatter(k, worst, rms):
    assert len(SEAS) == 44
    assert np.abs(OFF[:, k]).max() < worst
    for open_ in (True, False):
        assert np.sqrt(np.mean(OFF[open_ == OPEN, k] ** 2)) < rms


@pytest.mark.parametrize("k", [0, 1, 2])
def test_the_fit_is_within_a_third_on_the_whole(k):
    assert np.median(np.abs(OFF[:, k])) < np.log(1.3)


# What counts is the level: of a tip among the fitted streaks over the same among the sea's own.
@pytest.mark.parametrize(("d", "h"), [(3.0, 31.75), (5.0, 30.0)])
def test_the_level_among_fitted_streaks(d, h, monkeypatch):
    def levels():
        return np.array([
            visibility_level(
                d, [0.0, h], [[-0.95, 0.0, 0.0]], adaptation_cd_m2=733.0, eye=Eye(40.0),
                range_m=1.3 / np.tan(np.deg2rad(sea["look_down_deg"])), clutter=water(sea),
            ) for sea in SEAS
        ])  # fmt: skip

    fitted = levels()

    def key(of):
        return tuple(float(getattr(of, name)) for name in ("facet_contrast", *clutter.DOMAIN))

    own = {key(water(sea)): direct for sea, direct in zip(SEAS, DIRECT, strict=True)}
    assert len(own) == len(SEAS)
    monkeypatch.setattr(clutter, "shape", lambda of: own[key(of)])
    off = np.log(fitted / levels())
    assert np.abs(off[OPEN]).max() < np.log(1.10)
    assert np.abs(off[~OPEN]).max() < np.log(1.15)
    assert abs(off.mean()) < 0.02


def seen(sea, monkeypatch):
    """Return what the scene's own sum over facets makes of the same water."""
    spread = SlopeVariance(sea["slope_rms"] ** 2, sea["slope_rms"] ** 2 / 3.0)
    monkeypatch.setattr(slopes, "slope_variance", lambda wind: spread)
    light, stretch = Light(sky_type=int(sea["sky_type"])), Stretch("", 1.0, sea["bank_height_deg"])
    eye_m = 30.0 * np.tan(np.deg2rad(sea["look_down_deg"]))
    wind = Wind(sea["slope_rms"])  # of another name for each slope, as settings are kept in mind
    return look(light, stretch, wind, Stream(), Angler(), [], [30.0], eye_m)


# 0.05, but 0.065 where the cast found none at all: the facets know nothing of hidden ones behind.
@pytest.mark.parametrize("sea", SEAS, ids=lambda sea: "-".join(f"{x:g}" for x in sea.values()))
def test_the_skys_correlation_against_the_cast(sea, monkeypatch):
    half = 0.05 if sea["sky_correlation"] > 0.0 else 0.065
    found = float(seen(sea, monkeypatch).sky_correlation[0])
    assert found == pytest.approx(sea["sky_correlation"], abs=half)


# Known miss: the sum over facets finds up to a fifth more contrast than the cast on open water, a
# seventh under a bank of 10 deg, and up to half as much again under one of 20.
@pytest.mark.parametrize(
    ("bank", "least", "most"), [(0.5, 0.96, 1.19), (10.0, 1.06, 1.135), (20.0, 1.13, 1.46)]
)
def test_known_miss_of_the_facets_contrast(bank, least, most, monkeypatch):
    ratio = [
        float(seen(sea, monkeypatch).facet_contrast[0]) / sea["facet_contrast"]
        for sea in SEAS
        if sea["bank_height_deg"] == bank
    ]
    assert min(ratio) == pytest.approx(least, abs=0.015)
    assert max(ratio) == pytest.approx(most, abs=0.015)
