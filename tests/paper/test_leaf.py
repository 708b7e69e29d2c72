"""A page by itself: what is drawn stands where it was told to, in millimetres."""

import numpy as np
import pytest

from tipsight.paper.leaf import Page

LEFT, FOOT, PIXEL_MM = 10.0, 21.0, 0.05
"""Of the printed part on A4: (210 - 190) / 2 and (297 - 255) / 2."""


def extent(marked):
    """Return where marked pixels begin and end along a line [mm]."""
    at = np.flatnonzero(marked)
    return at[0] * PIXEL_MM, (at[-1] + 1) * PIXEL_MM


def test_the_edge_of_a_box_lies_inside_its_size(poppler):
    """20 by 10 mm at (30, 40) with an edge of 2 mm, to a pixel at either end."""
    page = Page("a4", "Box")
    page.box(30.0, 40.0, 20.0, 10.0, edge_mm=2.0)
    window = poppler.ink(poppler.raster(page.bytes()), LEFT + 25, FOOT + 35, 30.0, 20.0)
    assert extent(window.any(axis=0)) == pytest.approx((5.0, 25.0), abs=0.06)
    assert extent(window.any(axis=1)) == pytest.approx((5.0, 15.0), abs=0.06)
    inner = window[np.ix_(window.sum(axis=1) < 150, window.sum(axis=0) < 150)]
    assert inner.size * PIXEL_MM**2 > 16.0 * 6.0


@pytest.mark.parametrize(
    ("align", "begins", "ends"), [("left", 95, None), ("middle", None, None), ("right", None, 95)]
)
def test_words_stand_where_they_are_told(poppler, align, begins, ends):
    """Capital H of 20 points, at 95 mm; a letter leaves half a millimetre free on either side."""
    page = Page("a4", "Words")
    page.text(95.0, 100.0, "HHHH", 20.0, align=align)
    window = poppler.ink(poppler.raster(page.bytes()), LEFT, FOOT + 99.0, 190.0, 8.0)
    first, last = extent(window.any(axis=0))
    assert window.any(axis=1)[-30:].any()
    if begins:
        assert first == pytest.approx(begins + 0.6, abs=0.6)
    elif ends:
        assert last == pytest.approx(ends - 0.6, abs=0.6)
    else:
        assert (first + last) / 2 == pytest.approx(95.0, abs=0.1)


def test_words_break_into_lines_and_tell_where_the_next_stands():
    """8 points are 2.82 mm, a line 1.3 times that; each of three words is wider than 10 mm."""
    page = Page("a4", "Words")
    assert page.lines(0.0, 50.0, "fluorescent fluorescent fluorescent", 10.0, 8.0) == (
        pytest.approx(50.0 - 3 * 1.3 * 8.0 * 25.4 / 72.0)
    )
