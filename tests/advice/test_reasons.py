"""Why, worked by hand: the angle of a tip, its paint's contrast, what the ripple hides."""

import math
from dataclasses import replace

import numpy as np
import pytest
import sample

from tipsight.advice import reasons
from tipsight.advice.answer import PaintShows, Size, WaterHides
from tipsight.advice.close_look import close_look
from tipsight.advice.handling import handling
from tipsight.afloat import lean
from tipsight.inputs.case import Band, Finish, Stock, Tip

SWIM = replace(sample.SWIM, judged=("bright",))
TIP = Tip(Stock("quill", 3.0), 40.0, bands=(Band("black", 0, 20), Band("white", 20, 40)))
BLOCK = replace(sample.block(TIP, 2.0, "in and out", None), painted_mm=3.2)


def test_the_angle_of_a_tip_is_tall_and_narrow() -> None:
    """At 36.576 m an arc minute spans 10.64 mm; the paint counts for the angle, not for the name."""
    told = reasons._size(SWIM, BLOCK)
    assert told == Size(
        pytest.approx(36.576), 40.0, 3.0, pytest.approx(3.760, abs=1e-3),
        pytest.approx(0.3008, abs=1e-4),
    )  # fmt: skip


def water(name: str, black: float, white: float):
    """A water on which the two paints have these contrasts in luminance, and others in colour."""
    one = sample.SWIM.waters["bright"]
    contrast = np.zeros((2, *one.contrast.shape[1:]))
    contrast[:, :, 0] = [[black], [white]]
    contrast[:, :, 1] = 9.0
    return replace(one, name=name, contrast=contrast)


def with_waters(*waters):
    keys = [f"{n}" for n in range(len(waters))]
    return replace(
        sample.SWIM, finishes=(Finish("black"), Finish("white")),
        waters=dict(zip(keys, waters, strict=True)), judged=tuple(keys),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("waters", "told"),
    [
        # the paint that stands out most from the water, darker or brighter
        ([("bright", -0.9, 0.4)], [("bright", "black", -0.9)]),
        ([("dark", -0.2, 3.0)], [("dark", "white", 3.0)]),
        ([("bright", -0.9, 0.4), ("dark", -0.2, 3.0)],
         [("bright", "black", -0.9), ("dark", "white", 3.0)]),
        # of the lights of one stretch, the one in which it shows least
        ([("bright", -0.9, 0.4), ("bright", -0.6, 0.5)], [("bright", "black", -0.6)]),
        ([("bright", -0.6, 0.5), ("bright", -0.9, 0.4)], [("bright", "black", -0.6)]),
    ],
)  # fmt: skip
def test_the_paint_that_shows_is_told_for_each_water(waters, told) -> None:
    swim = with_waters(*(water(*one) for one in waters))
    assert reasons._paint(swim, BLOCK) == [PaintShows(*one) for one in told]


@pytest.mark.parametrize(
    ("hidden_mm", "share", "told"),
    [(0.9, 0.09, False), (1.0, 0.0, True), (0.0, 0.1, True), (3.0, 0.4, True)],
)
def test_what_the_ripple_does_is_told_where_it_is_worth_a_line(
    monkeypatch, hidden_mm, share, told
) -> None:
    monkeypatch.setattr(reasons, "streaks_share", lambda *_: share)
    block = replace(BLOCK, handling=replace(BLOCK.handling, hidden_mm=hidden_mm))
    assert reasons._ripple(SWIM, block) == [WaterHides(hidden_mm, share)] * told


@pytest.mark.parametrize(
    ("held_deg", "blown_deg", "lean_deg"),
    [(12.0, 7.0, 12.0), (3.0, 7.0, 7.0), (math.nan, 7.0, None), (3.0, math.nan, None)],
)
def test_a_float_leans_as_the_wind_or_the_line_has_it_whichever_is_more(
    monkeypatch, held_deg, blown_deg, lean_deg
) -> None:
    monkeypatch.setattr("tipsight.advice.handling._held_back", lambda *_: (held_deg, 0.1))
    monkeypatch.setattr(lean, "wind_lean_deg", lambda *_: np.float64(blown_deg))
    tip = sample.CASE.tip
    block = close_look(sample.SWIM, tip)
    assert handling(sample.SWIM, tip, block.painted_mm, block.rig, 5.0).lean_deg == lean_deg
