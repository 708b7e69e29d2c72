"""The most shot that a float is usually given: two grams a metre at a walk, three in strong flow."""

import numpy as np
import pytest

from tipsight import tables
from tipsight.errors import OutOfRange
from tipsight.load import usual


@pytest.mark.parametrize(
    ("depth_m", "pace_m_s", "most_g"),
    [(1.8288, 0.2, 3.6576), (1.8288, 0.6, 3.6576), (1.8288, 0.9, 5.0292), (2.0, 1.0, 6.0), (2.0, 3.0, 6.0)],
)
def test_by_hand(depth_m, pace_m_s, most_g):
    """Six feet are 1.8288 m; .9 m/s is three quarters of the way from two grams to three."""
    assert float(usual.most_shot_g(depth_m, pace_m_s)) == pytest.approx(most_g)


def test_depths_and_paces_broadcast():
    assert usual.most_shot_g([[1.0], [2.0]], [0.5, 0.8, 1.1]).tolist() == pytest.approx(
        np.array([[2.0, 2.5, 3.0], [4.0, 5.0, 6.0]])
    )


def test_his_own_rows_are_obeyed(tmp_path):
    own = "pace_m_s,most_g_per_m,source\n1.0,5.0,mine\n0.6,1.0,mine\n"
    (tmp_path / "usual_loads.csv").write_text(own, encoding="utf-8")
    with tables.using(tmp_path):
        assert float(usual.most_shot_g(2.0, 0.8)) == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("told", "says"),
    [((0.0, 0.5), "depth must be 0.1 to 30 m"), ((1.0, 6.0), "pace must be 0 to 5 m/s")],
)
def test_beyond_is_refused(told, says):
    with pytest.raises(OutOfRange, match=says):
        usual.most_shot_g(*told)
