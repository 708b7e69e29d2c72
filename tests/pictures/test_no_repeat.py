"""No patch of a drawn water stands in it twice, not even where the sheet does not reach."""

import numpy as np
import pytest

from tipsight import Question, advise
from tipsight.pictures import panels, patch
from tipsight.pictures.subject import deciding, waters

TALL, WIDE = 24, 120
"""Of the patches that are looked for [pixels]; unlike ones of a picture are alike to a quarter."""


def likeness(grey):
    """Return how alike the most alike two patches are, one at the left edge and one elsewhere [0 to 1]."""
    rows, columns = grey.shape
    grey = grey - grey.mean(axis=1, keepdims=True)
    room = (0, rows - TALL), (0, columns - WIDE)
    within = np.fft.rfft2(np.pad(np.ones((TALL, WIDE)), room))
    power = np.fft.irfft2(np.fft.rfft2(grey**2) * within.conj(), s=grey.shape)
    whole, best = np.fft.rfft2(grey), 0.0
    for row in range(0, rows - TALL, 8):
        one = grey[row : row + TALL, :WIDE]
        one = (one - one.mean()) / one.std() / np.sqrt(TALL * WIDE)
        found = np.fft.irfft2(whole * np.fft.rfft2(np.pad(one, room)).conj(), s=grey.shape)
        found /= np.sqrt(np.maximum(power, 1e-12))
        found = found[: rows - TALL, : columns - WIDE]
        found[max(0, row - TALL) : row + TALL, : WIDE // 2] = 0.0  # itself
        best = max(best, float(found.max()))
    return best


def test_the_measure_finds_a_patch_that_stands_twice():
    grey = np.random.default_rng(3).normal(size=(190, 430))
    assert likeness(grey) < 0.2
    grey[100:124, 200:320] = grey[16:40, :120]
    assert likeness(grey) > 0.95


@pytest.mark.parametrize("eye", ["1.3 m", "0.8 m"])
def test_no_patch_repeats(eye):
    """From 0.8 m at 60 yd the picture reaches 37 m, three times as far as a sheet."""
    answer = advise(Question(distance="60 yd", eye=eye, behind=["bright"], showing="30 mm"))
    of = panels.view_of(answer, deciding(answer, waters(answer)[0], answer.tip_in_hand.tip), "good")
    frame, _ = panels.frames(of.case.place.range_m, 40.0)
    picture, _ = patch.rippled(of, patch.water_sheet(of, frame), frame)
    assert likeness(picture[..., 0]) < 0.35
