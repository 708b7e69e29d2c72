"""Where the points of the drawing stand: farther right is harder to sink, higher is seen better."""

import math
import re
from dataclasses import replace

import pytest

from tipsight.advice.answer import TradePoint
from tipsight.pictures.trade import seen_against_sunk

EASY = TradePoint(3.0, 25.0, 2.0, 0.25, 3.4, False, False, "longer")
STIFF = replace(EASY, showing_mm=50.0, level=8.0, sink_force_g=0.5, ride_margin=2.2, chosen=True)


def test_the_points_stand_by_what_sinks_them_and_by_the_logarithm_of_their_level() -> None:
    """222 px for 1.08 times the most; 232 px from a level of 2/1.25 to one of 8 x 1.25."""
    drawn = seen_against_sunk((EASY, STIFF), 5.0).alone()
    marks = re.findall(r'<use href="#[a-z\d]+" x="([\d.]+)" y="([\d.]+)"/>', drawn)
    found = [(float(x), float(y)) for x, y in marks]
    span = math.log(10.0 / 1.6)
    assert found == [
        pytest.approx((40 + 222 * 0.25 / 0.54, 310 - 232 * math.log(2.0 / 1.6) / span), abs=0.06),
        pytest.approx((40 + 222 * 0.50 / 0.54, 310 - 232 * math.log(8.0 / 1.6) / span), abs=0.06),
    ]
    ring = re.search(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="13"', drawn)
    assert ring is not None
    assert (float(ring[1]), float(ring[2])) == found[1]
    assert ">0.5<" in drawn
