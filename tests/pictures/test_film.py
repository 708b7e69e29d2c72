"""The film: its sea in time, the tip that follows it, the bite, and what it takes up."""

import io
import math

import numpy as np
import pytest
from PIL import Image

from tipsight import advise
from tipsight.advice import swim
from tipsight.afloat import chop, frequencies, motion
from tipsight.cli import main
from tipsight.inputs import demo
from tipsight.pictures import film, patch, ripple, view
from tipsight.pictures.stage import scene
from tipsight.pictures.subject import advised, waters


@pytest.fixture(scope="module")
def answer():
    return advise(demo.question())


@pytest.fixture(scope="module")
def stills(answer):
    """Pictures at 0, 1.25, 2.5 and 3.75 s; the last in the bite."""
    return film.stills(answer, "good", count=4)


def sea(of):
    return ripple.waves(
        of.sea, of.case.wind, of.here.slopes, near_mm=300.0, far_mm=900.0, wide_mm=400.0
    )


def test_a_point_of_the_sea_goes_up_and_down_as_its_waves_do(make):
    waves = sea(make())
    times = np.array([0.0, 0.31, 2.0])
    share = np.ones(waves.height.shape, complex)
    found = waves.along_mm(share, times, 60.0)
    column = waves.columns // 2 + 20
    drawn = [waves.at(t).height_mm[waves.tip_row, column] for t in times]
    assert found == pytest.approx(drawn, abs=1e-6)
    assert waves.at(2.0).height_mm.std() == pytest.approx(waves.at().height_mm.std(), rel=0.05)


def test_a_wave_runs_as_deep_water_lets_it_and_before_the_wind(make):
    """A wave of 62.8 mm (100 rad/m) at 10 deg C: w2 = g k + (sigma / rho) k3 = 981 + 74 (Lamb), so
    32.5 rad/s; in a fortieth of a second it goes 0.81 rad, 8.1 mm, away from him."""
    waves = sea(make())
    rows = waves.height.shape[0]
    row = int(np.argmin(np.abs(waves.away_rad_m[: rows // 2, 0] - 100.0)))
    k = float(waves.away_rad_m[row, 0])
    crest = [np.angle(np.fft.fft(waves.at(t).height_mm.mean(axis=1))[row]) for t in (0.0, 0.025)]
    turned = (crest[0] - crest[1] + math.pi) % (2.0 * math.pi) - math.pi
    assert turned == pytest.approx(0.025 * math.sqrt(9.81 * k + 7.42e-5 * k**3), rel=0.01)


def test_a_tip_follows_as_its_ride_reckons(answer):
    """What it does not follow, squared over all waves, is the variance of the ride."""
    here = swim.swim(answer.case)
    tip = answer.tip_in_hand
    ratio, share = frequencies.wave_grid()
    omega = ratio * 2.0 * math.pi / here.sea.peak_period_s
    k = chop.wavenumber_rad_m(omega, here.stream.temperature_c)
    rigged = here.rigged(tip.tip)
    followed = motion.follows(rigged, here.sea, here.stream, tip.painted_mm, k)
    missed = (np.abs(1.0 - followed) ** 2 * share).sum() * here.sea.height_m**2 / 16.0
    ride = motion.motion(rigged, here.sea, here.stream, tip.painted_mm)
    assert missed == pytest.approx(float(ride.wave_m2[0]), rel=1e-6)


def test_the_light_of_the_table_is_that_of_the_sum(make):
    of = make()
    main, _ = film.frames(30.0, 30.0)
    water = sea(of).at()
    seen = patch.seen_on(of, water, main)
    table, summed = film.Lamp(of, water).lit(seen, main.rows), patch._lit(of, seen, main)
    assert np.abs(table - summed)[..., 0].mean() < 0.01 * of.water[0]


def test_it_shows_both_tips_and_the_bite_takes_them_down(answer, stills):
    _, near = film.frames(answer.case.place.range_m, 35.0)
    assert [still.shape for still in stills] == [(270, 480, 3)] * 4
    assert film.bite_mm(np.array([1.25, 3.75]), 35.0).tolist() == [0.0, 45.0]

    def dark(still):  # a black tip, of the advised
        return int((still[: near.rows, near.columns + film.GAP_PX :].max(axis=-1) < 60).sum())

    assert dark(stills[0]) > 200
    assert dark(stills[3]) < 20
    assert not np.array_equal(stills[0], stills[1])


def test_tips_ride_up_and_down(answer):
    here, block = swim.swim(answer.case), answer.tip_in_hand
    of = scene(answer.case, waters(answer)[0], [block.tip])
    times = np.linspace(0.0, 2.5, 40)
    found = film.drift(here, sea(of), block, 0.0, times, 0).raised_mm
    assert 0.2 < found.std() < 5.0


def test_it_is_five_seconds_long_and_small(answer, monkeypatch, stills):
    monkeypatch.setattr(film, "stills", lambda *_: stills)
    data = film.webp(answer, count=4)
    picture = Image.open(io.BytesIO(data))
    assert (picture.format, picture.size, picture.n_frames) == ("WEBP", (480, 270), 4)
    picture.load()
    assert picture.info["duration"] == 1250
    assert len(data) < film.MOST_BYTES / 15


def test_the_command_writes_the_film(answer, tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(film, "webp", lambda *_, **__: b"film")
    assert main(["view", "--moving", "-o", str(tmp_path / "tip.webp")]) == 0
    assert (tmp_path / "tip.webp").read_bytes() == b"film"
    said = capsys.readouterr().out
    assert "Computed film of both tips at 40 yd (37 m) on bright water." in said
    assert "Now: not seen; advised: followed. One bite takes both down" in said


def test_the_film_says_how_many_times_too_large_it_is(answer, monkeypatch):
    """As the panels at 96 to the inch; above, (longest + 26) mm in 104 pixels in place of 1.9353 mm
    each at 40 yd."""
    written = []
    plain = view.label
    monkeypatch.setattr(view, "label", lambda *p: written.append(p[3]) or plain(*p))
    film.webp(answer, count=1)
    longest = max(b.tip.showing_mm for b in (answer.tip_in_hand, advised(answer)[1]))
    near = 12.5 * 1.9353 / ((longest + 26.0) / 104.0)
    assert written == ["about 12 times too large, read from 40 cm", f"about {near:.0f} times"]
