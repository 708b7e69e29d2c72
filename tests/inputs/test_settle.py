"""How the items play together: swim, light, water behind the tip, eyes."""

import math

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs.case import Assumed
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle


def _case(**told):
    return settle(Question(**told))


def _mistakes(**told):
    with pytest.raises(Mistakes) as caught:
        settle(Question(**told))
    return str(caught.value)


def _taken(case):
    return {assumed.item: assumed.taken for assumed in case.assumed}


def test_nothing_told_is_a_whole_question():
    case = _case()
    assert case.place.range_m == pytest.approx(36.576)
    assert [(stretch.name, stretch.share, stretch.might_be) for stretch in case.stretches] == [
        ("dark", 0.5, True),
        ("bright", 0.5, True),
    ]
    assert case.box.shot_metal == "tin"
    assert {"distance", "behind", "age", "pattern", "size", "showing", "shot"} <= set(_taken(case))


def test_what_is_told_is_not_listed():
    case = _case(distance="40 yd", depth="7 ft")
    assert not {"distance", "depth"} & set(_taken(case))


def test_what_was_taken_is_listed_in_the_order_of_the_question():
    items = [assumed.item for assumed in _case().assumed]
    assert items[:3] == ["distance", "known", "eye"]
    assert items[-1] == "shot_metal"


def test_paces_count_as_paced_unless_told_otherwise():
    case = _case(distance="40 paces of 0.8 m")
    assert (case.place.range_m, case.place.range_doubt) == (32.0, 0.15)
    assert _taken(case)["known"] == "paced"
    assert _case(distance="40 paces", known="measured").place.range_doubt == 0.03
    assert _case(distance="40 yd").place.range_doubt == 0.25


class TestWind:
    def test_a_ripple_told_stands_before_the_wind(self):
        wind = _case(looks="ripple", wind="6 mph").wind
        assert wind.ripple_height_m == pytest.approx(0.015)
        assert wind.speed_m_s == pytest.approx(2.68224)

    def test_a_wind_told_leaves_the_ripple_to_the_sums(self):
        case = _case(wind="6 mph")
        assert case.wind.ripple_height_m is None
        assert "looks" not in _taken(case)
        assert "open_water" in _taken(case)

    @pytest.mark.parametrize("looks", ["ripple", "wavelets", "200 mm"])
    def test_a_ripple_told_brings_no_wind(self, looks):
        case = _case(looks=looks)
        assert _taken(case)["wind"] == "calm"
        assert case.wind.speed_m_s == 0.0

    def test_shelter_halves_the_wind(self):
        assert _case(wind="4 m/s", sheltered=True).wind.speed_m_s == pytest.approx(2.0)

    def test_shelter_does_not_halve_a_ripple(self):
        wind = _case(looks="ripple", wind="4 m/s", sheltered="yes").wind
        assert (wind.ripple_height_m, wind.speed_m_s) == pytest.approx((0.015, 2.0))

    @pytest.mark.parametrize(
        ("told", "variance"),
        [
            ({"looks": "glass"}, 2e-5),
            ({"looks": "ripple"}, 2e-4),
            ({"boils": "even"}, 2e-4),
            ({"boils": "boily"}, 2e-3),
            ({"boils": "weir"}, 2e-2),
            ({"boils": "6"}, 2e-2),
            ({"looks": "glass", "boils": "boily"}, 2e-3),
            ({"wind": "calm"}, 2e-4),
        ],
    )
    def test_slope_without_wind(self, told, variance):
        assert _case(**told).wind.base_slope_variance == pytest.approx(variance)

    @pytest.mark.parametrize(("word", "deg"), [("upstream", 0), ("downstream", 0), ("across", 90)])
    def test_which_way(self, word, deg):
        assert _case(wind_blows=word).wind.bearing_deg == deg


@pytest.mark.parametrize("told", [{"looks": "wavelets"}, {"boils": "weir"}, {"wind": "8 m/s"}])
def test_rough_water_alone_turns_no_bite_bold(told):
    case = _case(**told)
    assert (case.wanted.bite_share, case.wanted.bites_told) == (0.2, False)
    assert _case(**told, bites="ordinary").wanted.bites_told


@pytest.mark.parametrize(
    ("told", "types", "beams"),
    [
        ({"sky": "dull overcast"}, [1, 3], [False, False]),
        ({"sky": "bright overcast"}, [3, 1], [False, False]),
        ({"sky": "broken cloud"}, [8, 8], [True, False]),
        ({"sky": "broken cloud", "sun_out": "no"}, [8], [False]),
        ({"sky": "broken cloud", "sun_out": "yes"}, [8], [True]),
        ({"sky": "clear"}, [12], [True]),
    ],
)
def test_what_the_light_may_turn_to_counts_as_well(told, types, beams):
    case = _case(**told)
    lights = (case.light, *case.other_lights)
    assert [light.sky_type for light in lights] == types
    assert [light.beam for light in lights] == beams
    assert len({light.sun_height_deg for light in lights}) == 1


class TestStream:
    def test_dips_stand_before_boils(self):
        case = _case(goes_under="3")
        assert case.stream.dips_per_min_told == 3.0
        assert "boils" not in _taken(case)

    def test_holding_back_harder_than_the_water_runs(self):
        text = _mistakes(pace="0.1 m/s", run="held hard")
        assert text == (
            "run: 'held hard' will not do; the water runs at 0.22 mph; a float cannot be held back "
            "by more than that (for example checked)"
        )

    def test_a_float_may_be_held_still(self):
        assert _case(pace="0.2 m/s", run="held hard").stream.hold_m_s == 0.2

    def test_line(self):
        assert not _case(line="sinking").stream.floating_line


class TestLight:
    def test_an_overcast_hides_the_sun(self):
        case = _case(sky="dull overcast", sun_out=True)
        assert not case.light.beam
        assert case.light.sun_height_deg == 30.0

    def test_a_clear_sky_asks_for_the_sun(self):
        case = _case(sky="clear")
        assert case.light.beam
        assert _taken(case)["sun_out"] == "yes"
        assert not _case(sky="clear", sun_out="no").light.beam

    def test_shadow(self):
        assert _case(shadow="twice").light.sun_height_deg == 27.0

    def test_day_time_and_place(self):
        # USNO and the almanac give the equinox noon sun at 90 - latitude, within a degree of
        # time and refraction; due south.
        light = _case(when="2026-03-20 12:13 UTC", at="52 N 1.5 W", looking="S").light
        assert light.sun_height_deg == pytest.approx(38.0, abs=0.5)
        assert light.sun_bearing_deg == pytest.approx(0.0, abs=2.0)
        back = _case(when="2026-03-20 12:13 UTC", at="52 N 1.5 W", looking="N").light
        assert back.sun_bearing_deg == pytest.approx(180.0, abs=2.0)

    def test_without_looking_the_bearing_is_taken(self):
        case = _case(when="2026-03-20 12:13 UTC", at="52 N 1.5 W")
        assert _taken(case)["sun_is"] == "from the side"
        assert "sun_height" not in _taken(case)

    def test_a_time_without_a_place(self):
        assert _mistakes(when="2026-03-20 12:13 UTC") == (
            "at: a day and time need a place; say latitude and longitude in degrees "
            "(for example 52.1 N 1.5 W)"
        )

    def test_night(self):
        assert _mistakes(when="2026-12-20 23:59 UTC", at="52 N 1.5 W").startswith(
            "when: '2026-12-20 23:59 UTC' will not do; the sun then stands 61 deg below level; "
            "the sums end at 12, the last of dusk"
        )

    def test_the_last_of_dusk(self):
        """Three minutes apart, 11.6 and 12.04 degrees below level."""
        last = _case(when="2026-03-20 19:24 UTC", at="52 N 0 E", sun_is="in my face")
        assert last.light.sun_height_deg == pytest.approx(-11.6, abs=0.03)
        assert "12 deg below level" in _mistakes(when="2026-03-20 19:27 UTC", at="52 N 0 E")

    def test_shadow_and_degrees_that_clash(self):
        assert _mistakes(shadow="much longer", sun_height="60") == (
            "shadow: 'much longer' will not do; it puts the sun at 12 deg, but sun_height "
            "says 60; "
            "leave one of them out"
        )

    def test_shadow_and_degrees_that_agree(self):
        assert _case(shadow="much longer", sun_height="24").light.sun_height_deg == 24.0
        assert "sun_height says 24; " in _mistakes(shadow="much longer", sun_height="24.1")

    def test_bearings_that_agree(self):
        assert _case(sun_is="behind me", sun_bearing="135").light.sun_bearing_deg == 135.0
        assert "sun_bearing says 135; " in _mistakes(sun_is="behind me", sun_bearing="134.9")

    def test_bearings_that_clash(self):
        assert _mistakes(sun_bearing="10", sun_is="behind me") == (
            "sun_is: 'behind me' will not do; it puts the sun 180 deg from the line along "
            "which you "
            "look, but sun_bearing says 10; leave one of them out"
        )


class TestBehind:
    def test_shares_that_add_nearly_to_the_whole_are_brought_to_it(self):
        shares = [one.share for one in _case(behind="dark 60%; bright 36%").stretches]
        assert shares == pytest.approx([0.625, 0.375])
        assert "the shares add to 94 %; " in _mistakes(behind="dark 60%; bright 34%")

    def test_words(self):
        case = _case(behind=("dark", "broken", "bright", "sun lane"))
        assert [stretch.bank_height_deg for stretch in case.stretches] == [25.0, 10.0, 0.5, 0.5]
        assert [stretch.sun_ahead for stretch in case.stretches] == [False, False, False, True]
        assert [stretch.share for stretch in case.stretches] == [0.25] * 4

    def test_shares_fill_up(self):
        assert [s.share for s in _case(behind="dark 60%; bright").stretches] == pytest.approx(
            [0.6, 0.4]
        )

    def test_shares_may_be_a_little_out(self):
        shares = [s.share for s in _case(behind="dark 66%; bright 33%").stretches]
        assert sum(shares) == pytest.approx(1.0)
        assert shares[0] == pytest.approx(66 / 99)

    def test_not_sure_for_a_part(self):
        stretches = _case(behind=("dark 60%", "not sure 40%")).stretches
        assert [(s.name, s.share, s.might_be) for s in stretches] == [
            ("dark", 0.6, False),
            ("dark 2", 0.2, True),
            ("bright", 0.2, True),
        ]

    def test_the_same_water_told_again_is_one_water_with_both_shares(self):
        said = ("dark 20%", "bright 30%", "dark 10%", "trees 9 m high, 20 m beyond, unlit, 15%")
        said = (*said, "wood 18 m high, 40 m beyond, unlit, 25%")
        assert [(s.name, s.share) for s in _case(behind=said).stretches] == [
            ("dark", pytest.approx(0.3)),
            ("bright", 0.3),
            ("trees, 24 deg", 0.4),
        ]
        assert [(s.name, s.share) for s in _case(behind=("dark",) * 300).stretches] == [
            ("dark", pytest.approx(1.0))
        ]

    def test_six_waters_are_the_most(self):
        banks = tuple(f"trees {high} m high, 20 m beyond, unlit" for high in range(1, 7))
        assert len(_case(behind=banks).stretches) == 6
        assert _mistakes(behind=(*banks, "bright")) == (
            "behind: these are 7 different waters; 6 are the most (for example dark 60%; bright 40%)"
        )

    def test_a_bank(self):
        (bank,) = _case(behind="trees 9 m high, 20 yd beyond the float, unlit").stretches
        assert bank.bank_height_deg == pytest.approx(math.degrees(math.atan(9 / 18.288)))
        assert (bank.bank, bank.bank_sunlit) == ("dark trees", False)

    def test_a_bank_is_lit_by_a_sun_behind_the_angler(self):
        behind = "reed 2 m high, 10 m beyond"
        lit = _case(behind=behind, sky="clear", sun_is="behind me", shadow="twice")
        against = _case(behind=behind, sky="clear", sun_is="in my face", shadow="twice")
        assert (lit.stretches[0].bank_sunlit, against.stretches[0].bank_sunlit) == (True, False)
        said = _case(behind=behind + ", back-lit", sky="clear", sun_is="behind me")
        assert not said.stretches[0].bank_sunlit

    @pytest.mark.parametrize(
        "text",
        [
            "trees 9 m high, 20 m beyond the float, sunlit, 40%",
            "trees, 9 m high, 20 m beyond, sunlit, 40 %",
            "40% trees 9 m tall, 20 m past the float, sunlit",
            "9 m high, 20 m beyond, sunlit 40%",
        ],
    )
    def test_ways_of_saying_a_bank(self, text):
        bank, rest = _case(behind=(text, "bright")).stretches
        assert bank.bank_height_deg == pytest.approx(math.degrees(math.atan(9 / 20)))
        assert (bank.bank_sunlit, bank.share, rest.share) == (True, 0.4, 0.6)

    def test_an_unknown_bank(self):
        text = _mistakes(behind="wal 9 m high, 20 yd beyond")
        assert "the banks are dark trees" in text

    def test_a_word_of_a_bank_that_means_nothing(self):
        assert "'purple' is not understood" in _mistakes(
            behind="trees 9 m high, 20 m beyond, purple"
        )


class TestEyes:
    def test_beyond_85_the_age_is_held_and_said(self):
        case = _case(age="92")
        assert case.angler.age_years == 85.0
        assert Assumed("age", "85, beyond which the sums do not go") in case.assumed

    def test_words(self):
        case = _case(
            sight="number plate",
            colour_vision="red weak",
            tint="polarised",
            bites="shy",
            seen="easy",
            own_eye="1.2",
        )
        angler = case.angler
        assert (angler.mar_arcmin, angler.colour_vision, angler.tint) == (
            1.0,
            "red-weak",
            "polarised",
        )
        assert (case.wanted.level, case.wanted.bite_share, angler.own_eye_factor) == (
            10.0,
            0.1,
            1.2,
        )


class TestBox:
    def test_all_is_the_table(self):
        box = _case().box
        assert {stock.kind for stock in box.stock} >= {
            "solid",
            "thin tube",
            "cane",
            "quill",
            "balsa",
        }
        assert "felt pen" not in box.paints
        assert "black" in box.paints
        assert [shot.name for shot in box.shot][:3] == ["SSG", "AAA", "AB"]
        assert not any("olivette" in shot.name for shot in box.shot)

    def test_what_he_says_he_has(self):
        box = _case(
            tips=("solid 3-4", "5/3.5 mm thick tube"),
            inserts="solid 2; solid 3",
            paints="black",
            pen="no",
            sleeves="yes",
            light_stick="yes",
            shot="BB; 10 No 4",
            shot_metal="bismuth",
            ten_weigh="No 4 1.9 g",
        ).box
        assert [(stock.kind, stock.diameter_mm, stock.bore_mm) for stock in box.stock] == [
            ("solid", 3.0, 0.0),
            ("solid", 3.5, 0.0),
            ("solid", 4.0, 0.0),
            ("thick tube", 5.0, 3.5),
        ]
        assert len(box.inserts) == 2
        assert (box.paints, box.pen, box.sleeves, box.light_stick) == (
            ("black",),
            False,
            True,
            True,
        )
        assert [(s.name, s.mass_g, s.count, s.metal) for s in box.shot] == [
            ("BB", 0.4, None, "bismuth"),
            ("No 4", pytest.approx(0.19), 10, "bismuth"),
        ]

    def test_none(self):
        box = _case(tips="none", shot="none").box
        assert (box.stock, box.shot) == ((), ())


@pytest.mark.parametrize(
    ("said", "stretches"),
    [
        ("dark 60%, bright 40%", [("dark", 0.6), ("bright", 0.4)]),
        ("dark and bright", [("dark", 0.5), ("bright", 0.5)]),
        ("60% dark, sun lane", [("dark", 0.6), ("sun lane", 0.4)]),
        ("trees 9 m high, 20 yd beyond the float, unlit", [("trees, 26 deg", 1.0)]),
    ],
)
def test_stretches_may_be_told_in_one_breath(said, stretches):
    case = settle(Question(behind=said))
    assert [(one.name, pytest.approx(one.share)) for one in case.stretches] == stretches
