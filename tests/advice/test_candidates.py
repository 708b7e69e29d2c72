"""All tips worth a thought, and the ones left out."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.candidates import bands_of, pairings, schemes, showing_lengths_mm
from tipsight.sight.energy import MM_PER_ARCMIN_M

FAMILIES = ["dark", "pale", "red", "orange", "dark"]


def test_no_black_no_pair():
    assert pairings(["pale", "orange"], black=None) == []


def test_lengths_are_those_that_a_person_measures_out():
    lengths = showing_lengths_mm(60)
    assert lengths[:3].tolist() == [2, 3, 4]
    assert lengths[-3:].tolist() == [50, 55, 60]
    assert all(x % 5 == 0 for x in lengths if x >= 15)


def test_a_band_too_small_to_tell_apart_is_left_out_and_counted():
    at_40_yd, left_out = schemes(np.array([20.0]), [0, 1], [(0, 1)], 36.6)
    assert [s.bands for s in at_40_yd] == [1]
    assert left_out == 3
    near, left_out = schemes(np.array([20.0]), [0, 1], [(0, 1)], 10.0)
    assert [s.bands for s in near] == [1, 2]
    assert left_out == 0


@settings(deadline=None, derandomize=True, max_examples=40)
@given(
    length=st.sampled_from([10.0, 15.0, 30.0, 60.0]),
    range_m=st.floats(3, 60),
    paints=st.integers(1, 5),
)
def test_every_scheme_keeps_its_bands_and_its_neighbours_apart(length, range_m, paints):
    least = max(5.0, MM_PER_ARCMIN_M * range_m)
    pairs = pairings(FAMILIES[:paints], black=0)
    for scheme in schemes(np.array([length]), list(range(paints)), pairs, range_m)[0]:
        heights = np.diff(scheme.edges_mm)
        assert (heights > 0).all()
        assert scheme.bands == 1 or heights.min() >= least - 1e-6
        for paints_ in scheme.paints[:, :] if scheme.bands > 1 else ():
            assert 0 in paints_  # black with one other
            assert not {FAMILIES[i] for i in paints_ if i} & {"dark", "red"}
        bands = bands_of([str(p) for p in scheme.paints[0]], scheme.edges_mm[0])
        assert bands[0].from_top_mm == 0
        assert bands[-1].to_top_mm == length
