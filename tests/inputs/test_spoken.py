"""What may be said, told in the reader's own units."""

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.inputs.spoken import ANGLERS, Spoken
from tipsight.inputs.values import read

METRES = Spoken("m", "m")


@pytest.mark.parametrize(
    ("key", "yards", "metres"),
    [
        ("distance", "3.3 to 109 yd", "3 to 100 m"),  # 3/0.9144 = 3.28, 100/0.9144 = 109.4
        ("depth", "0.7 to 39 ft", "0.2 to 12 m"),  # 0.2/0.3048 = 0.66, 12/0.3048 = 39.4
        ("wind", "0 to 55.9 mph", "0 to 25 m/s"),  # 25/0.44704 = 55.92
        ("pace", "0 to 6.7 mph", "0 to 3 m/s"),  # 3/0.44704 = 6.71
        ("mist", "22 yd to 62 miles", "20 to 100000 m"),  # 20/0.9144 = 21.9, 100/1.609 = 62.1
        ("showing", "1 to 80 mm", "1 to 80 mm"),
        ("temperature", "0 to 30 C", "0 to 30 C"),
        ("sky", "", ""),
    ],
)
def test_limits(key, yards, metres):
    assert ANGLERS.limits(ITEMS[key]) == yards
    assert METRES.limits(ITEMS[key]) == metres
    assert yards in ANGLERS.allowed(ITEMS[key])
    assert metres in METRES.allowed(ITEMS[key])


@pytest.mark.parametrize("spoken", [ANGLERS, METRES], ids=["yards", "metres"])
def test_limits_that_are_told_may_be_typed(spoken):
    for item in ITEMS.values():
        limits = spoken.limits(item)
        if item.kind in ("length", "speed", "pace") and limits:
            low, high = limits.split(" to ")
            unit = high.split()[1]
            read(item, low if " " in low else f"{low} {unit}")
            read(item, high)


@pytest.mark.parametrize(
    ("told", "yards", "metres"),
    [
        ({"run": "2 mph"}, "the water runs at 1.3 mph; ", "the water runs at 0.6 m/s; "),
        (
            {"behind": "9 m high"},
            "to 328 ft, and how far beyond the float it stands, to 5468 yd",
            "to 100 m, and how far beyond the float it stands, to 5000 m",
        ),
        ({"distance": "200 yd"}, "say 3.3 to 109 yd, ", "say 3 to 100 m, "),
    ],
)
def test_mistakes_in_the_readers_units(told, yards, metres):
    for spoken, said in ((ANGLERS, yards), (METRES, metres)):
        with pytest.raises(Mistakes) as caught:
            settle(Question(**told), spoken)
        assert said in str(caught.value)
