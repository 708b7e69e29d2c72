"""The fence card as a printer has it: bars to a twentieth of a millimetre, and nothing else beside them."""

import numpy as np
import pytest

from tipsight.errors import Mistakes
from tipsight.paper import fence

PIXEL_MM = 0.05
LEFT = {"a4": (210.0 - 190.0) / 2, "letter": (215.9 - 190.0) / 2}
FOOT = {"a4": (297.0 - 255.0) / 2, "letter": (279.4 - 255.0) / 2}
SOLID = {
    # centre, width, height, from our own note
    1: (47.5, 212.5, 1.2, 9.0),
    2: (142.5, 212.5, 1.5, 15.0),
    3: (47.5, 127.5, 2.2, 18.0),
    4: (142.5, 127.5, 3.0, 3.0),
    5: (47.5, 42.5, 0.8, 45.0),
}
PALE = (142.5, 42.5, 7.5, 30.0)


def sides(ink):
    """Return left, right, top and foot of what is marked [mm]."""
    across, down = np.flatnonzero(ink.any(axis=0)), np.flatnonzero(ink.any(axis=1))
    return (across[0], across[-1] + 1, down[0], down[-1] + 1)


def window(poppler, page, paper, x, y, half=30.0):
    return poppler.ink(page, LEFT[paper] + x - half, FOOT[paper] + y - half, 2 * half, 2 * half)


def measured(ink):
    left, right, top, foot = (side * PIXEL_MM for side in sides(ink))
    return right - left, foot - top, (left + right) / 2 - 30.0, 30.0 - (top + foot) / 2


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_bars_are_true_and_alone(poppler, paper):
    page = poppler.raster(fence.pdf(paper))
    for x, y, wide, tall in SOLID.values():
        ink = window(poppler, page, paper, x, y)
        got = measured(ink)
        assert got[:2] == pytest.approx((wide, tall), abs=PIXEL_MM + 1e-9)
        assert got[2:] == pytest.approx((0.0, 0.0), abs=0.06)
    x, y, _, tall = PALE
    ink = window(poppler, page, paper, x, y)
    assert measured(ink)[1] == pytest.approx(tall, abs=PIXEL_MM + 1e-9)
    row = np.flatnonzero(np.diff(np.r_[0, ink[ink.shape[0] // 2].astype(int), 0])) * PIXEL_MM
    assert row.size == 6  # three lines, an edge on either side
    assert row[1::2] - row[::2] == pytest.approx([0.5] * 3, abs=PIXEL_MM + 1e-9)
    assert np.diff((row[1::2] + row[::2]) / 2) == pytest.approx([2.5] * 2, abs=PIXEL_MM + 1e-9)
    bars_mm2 = sum(wide * tall for *_, wide, tall in SOLID.values()) + 3 * 0.5 * 30.0
    all_mm2 = float((255.0 - page).sum() / 255.0) * PIXEL_MM**2
    assert all_mm2 == pytest.approx(bars_mm2, rel=0.02)


def test_the_page_of_words_has_a_ruler_and_two_squares(poppler):
    data = fence.pdf()
    page = poppler.raster(data, page=2)
    squares = window(poppler, page, "a4", 95.0, 47.0, half=30.0)
    assert measured(squares)[:2] == pytest.approx((9.0, 3.0), abs=PIXEL_MM + 1e-9)
    row = squares[squares.shape[0] // 2]
    gap = np.flatnonzero(np.diff(row.astype(int))) * PIXEL_MM
    assert gap[2] - gap[1] == pytest.approx(3.0, abs=PIXEL_MM + 1e-9)
    ruler = poppler.ink(page, LEFT["a4"] - 2.0, FOOT["a4"] + 7.4, 106.0, 1.0)
    ends = np.flatnonzero(ruler.any(axis=0)) * PIXEL_MM
    assert ends[-1] - ends[0] == pytest.approx(100.0, abs=0.2)
    words = poppler.words(data)
    for said in ("no eye test", "never a road", "water's edge", "see an optician", "ten of your own"):
        assert said in words
    assert poppler.info(data)["Pages"] == "4"


@pytest.mark.parametrize(("page", "x"), [(3, 47.5), (4, 142.5)])
def test_the_pages_for_the_corners_turn_into_the_other_two(poppler, page, x):
    """One bar in an upper corner; upside down it stands as far from the opposite one."""
    raster = poppler.raster(fence.pdf(), page=page)
    assert measured(window(poppler, raster, "a4", x, 212.5))[:2] == pytest.approx(
        (1.5, 15.0), abs=PIXEL_MM + 1e-9
    )
    turned = measured(window(poppler, raster[::-1, ::-1], "a4", 190.0 - x, 42.5))
    assert turned == pytest.approx((1.5, 15.0, 0.0, 0.0), abs=0.06)
    assert float((raster < 128).sum()) * PIXEL_MM**2 == pytest.approx(1.5 * 15.0, rel=0.08)


def test_no_other_paper():
    with pytest.raises(Mistakes, match="say a4 or letter"):
        fence.pdf("a3")
