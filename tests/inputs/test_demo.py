"""The invented swims."""

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.settle import settle


def test_the_long_trot():
    case = settle(demo.question())
    assert case.place.range_m == pytest.approx(36.576)
    assert case.place.eye_height_m == 1.3
    assert case.wind.ripple_height_m == pytest.approx(0.005)
    assert case.float_.shot_g == pytest.approx(2.4)
    assert (case.tip.stock.kind, case.tip.showing_mm, case.tip.wet_mm, case.tip.glued_mm) == (
        "quill",
        20.0,
        10.0,
        5.0,
    )
    assert case.weighed_tip == case.tip


def test_the_match():
    case = settle(demo.question("match"))
    assert case.angler.age_years == 40.0
    assert case.wind.base_slope_variance == 2e-5
    assert case.stretches[0].bank_height_deg == pytest.approx(26.2, abs=0.1)


def test_dusk():
    case = settle(demo.question("dusk"))
    assert case.angler.colour_vision == "red-weak"
    assert case.light.sun_height_deg == -3.0
    assert case.float_.shot_g == 3.0


def test_each_says_that_it_is_invented():
    for name in demo.names():
        assert "invented" in demo.text(name).splitlines()[0]


def test_an_unknown_one():
    with pytest.raises(Mistakes) as caught:
        demo.text("dsk")
    assert str(caught.value) == (
        "demo: 'dsk' will not do; the invented swims are demo, dusk, match; did you mean 'dusk'? "
        "(for example demo)"
    )


def test_longer_tip_on_the_demo_is_another_tip_on_the_same_float():
    case = settle(
        demo.question().with_options(showing="40 mm", diameter="5 mm", stock="thin tube")
    )
    assert (case.weighed_tip.showing_mm, case.weighed_tip.stock.kind) == (20.0, "quill")
    assert case.tip.glued_mm == 6.0
