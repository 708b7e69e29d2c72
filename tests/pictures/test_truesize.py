"""True size: what a bank card tells of a screen, and how much smaller a picture must be."""

import numpy as np
import pytest

from tipsight.cli import main
from tipsight.errors import OutOfRange
from tipsight.pictures import truesize, view


def test_a_bank_card_tells_the_pixels():
    """ISO/IEC 7810, ID-1: 85.60 mm; at 96 to the inch 323.5 pixels."""
    assert truesize.of_card(85.60 / 25.4 * 96) == pytest.approx(96 / 25.4)
    assert truesize.of_screen(344.0, 1920.0) == pytest.approx(5.581, abs=1e-3)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: truesize.of_card(20.0), "width of a bank card must be"),
        (lambda: truesize.of_screen(5.0, 1920.0), "width of the screen must be"),
        (lambda: truesize.of_screen(500.0, 19.0), "width of the screen must be"),
        (lambda: truesize.times_too_large(0.1), "pixels to the millimetre must be"),
        (lambda: truesize.times_too_large(4.0, 9.0), "distance to the screen must be"),
    ],
)
def test_what_no_screen_has_is_refused(call, said):
    with pytest.raises(OutOfRange, match=said):
        call()


def test_a_phone_held_nearer_shows_it_larger():
    """18 px/mm from 0.3 m: 5 m x 3.78 / (0.3 x 18) = 3.5 times."""
    assert truesize.times_too_large(18.0, 0.3) == pytest.approx(3.4996, abs=1e-3)


def test_light_is_mixed_not_the_screen_s_numbers():
    picture = np.zeros((10, 10, 4))
    picture[:, 4] = 50.0
    assert truesize.shrunk(picture, 10.0)[0, 0] == pytest.approx(5.0)


@pytest.mark.parametrize(
    ("told", "fine"),
    [
        (["--card", "428"], 5.0),
        (["--screen-mm", "480", "--screen-px", "1920"], 4.0),
        ([], None),
    ],
)
def test_the_command_takes_a_card_or_the_screen(told, fine, tmp_path, monkeypatch):
    asked = []
    monkeypatch.setattr(view, "png", lambda *put: asked.append(put) or b"png")
    assert main(["view", "-o", str(tmp_path / "v.png"), "--read-from", "35", *told]) == 0
    assert asked[0][3:] == (fine and pytest.approx(fine), 0.35)


def test_half_a_screen_is_asked_for_the_rest(capsys):
    assert main(["view", "--screen-mm", "480"]) != 0
    assert "--screen-px: tell both the width and the pixels across" in capsys.readouterr().err
