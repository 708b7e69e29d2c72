"""The float and its tip: weighed or built, one stick or another, and what cannot be."""

import pytest

from tipsight import tables
from tipsight.errors import Mistakes
from tipsight.inputs.case import Band, BuiltFloat, WeighedFloat
from tipsight.inputs.parts import part_said, parts_of, sizes_of
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.inputs.settle_tip import stock_words
from tipsight.inputs.tackle import stock_said

TIP = {
    "pattern": "quill avon",
    "takes": "6BB",
    "diameter": "3 mm",
    "stock": "quill",
    "showing": "20 mm",
}


def _case(**told):
    return settle(Question(**{**TIP, **told}))


def _mistakes(**told):
    with pytest.raises(Mistakes) as caught:
        settle(Question(**{**TIP, **told}))
    return str(caught.value)


class TestFloat:
    def test_weighed(self):
        case = _case(weighs="1.8 g")
        assert case.float_ == WeighedFloat("quill avon", pytest.approx(2.4), "tin", 1.8)

    def test_ten_of_mine_weigh_in_the_floats_marking_too(self):
        assert _case(ten_weigh="BB 3.8 g").float_.shot_g == pytest.approx(6 * 0.38)

    def test_the_metal_of_the_marking_is_that_of_the_box_and_said(self):
        case = _case(shot_metal="bismuth")
        assert case.float_.shot_metal == "bismuth"
        assert {a.item: a.taken for a in case.assumed}["marked_in"] == "bismuth"
        assert _case(shot_metal="bismuth", marked_in="lead").float_.shot_metal == "lead"

    def test_a_weight(self):
        assert _case(takes="2.4 g").float_.shot_g == 2.4

    def test_built_of_a_pattern(self):
        case = settle(Question(pattern="straight balsa", size="8"))
        assert case.float_ == BuiltFloat("straight balsa", parts_of("straight balsa", "8 mm"))

    def test_built_at_the_usual_size(self):
        case = settle(Question(pattern="straight balsa"))
        row = tables.row("patterns", "straight balsa", "pattern")
        assert case.float_.parts == parts_of("straight balsa", row["default_size"])

    def test_built_of_parts(self):
        parts = (
            "shoulder, cone, balsa, 8 mm long, 3 mm top, 12 mm foot",
            "body, ellipsoid, hard balsa, 45 mm long, 14 mm thick",
            "stem: cylinder, cane, 90 mm long, 3 mm thick, 20 mm inside",
        )
        float_ = settle(Question(parts=parts, varnish_coats="2", paint_coats=4.0)).float_
        assert float_.parts == tuple(part_said(part) for part in parts)
        assert (float_.varnish_coats, float_.paint_coats) == (2, 4)
        assert float_.parts[1].foot_mm == 14.0
        assert float_.parts[2].inside_mm == 20.0

    def test_a_cone_comes_to_a_point_unless_told(self):
        assert part_said("body, cone, balsa, 20 mm long, 8 mm top").foot_mm == 0.0

    @pytest.mark.parametrize(
        ("long", "thick", "inside", "said"),
        [
            (1, 0.3, 0, ""),
            (600, 60, 600, ""),
            (0.9, 9, 0, "a part is 1 to 600 mm long"),
            (601, 9, 0, "a part is 1 to 600 mm long"),
            (9, 0.29, 0, "a part is 0.3 to 60 mm thick"),
            (9, 60.1, 0, "a part is 0.3 to 60 mm thick"),
            (9, 9, 601, "a part runs 0 to 600 mm inside the one above it"),
        ],
    )
    def test_how_large_a_part_may_be(self, long, thick, inside, said):
        text = f"stem, cylinder, cane, {long} mm long, {thick} mm thick, {inside} mm inside"
        if said:
            with pytest.raises(Unread, match=f"^{said}$"):
                part_said(text)
        else:
            assert part_said(text).top_mm == thick

    @pytest.mark.parametrize(
        "other", [{"size": "12 mm"}, {"parts": ("body, dome, balsa, 9 mm long, 9 mm top",)}]
    )
    def test_weighed_and_built_at_once(self, other):
        text = _mistakes(**other)
        assert "a float is known by what it takes or by how it is built; leave one out" in text

    def test_size_and_parts_at_once(self):
        with pytest.raises(
            Mistakes, match="size: '12 mm' will not do; the parts tell how it is built"
        ):
            settle(Question(size="12 mm", parts="body, cylinder, balsa, 90 mm long, 8 mm thick"))

    @pytest.mark.parametrize(
        ("said", "fixing"),
        [
            ("as the pattern", None),
            ("bulk and droppers", "bulk"),
            ("shirt-button", "spread"),
            ("even string", "even"),
        ],
    )
    def test_how_the_line_is_shotted(self, said, fixing):
        assert _case(shotting=said).float_.fixing == fixing

    def test_too_much_shot(self):
        assert "that is 158.4 g of shot; a float takes 0.05 to 60 g" in _mistakes(takes="99 SSG")

    @pytest.mark.parametrize("pattern", [row["name"] for row in tables.rows("patterns")])
    def test_every_pattern_in_every_size(self, pattern):
        for size in sizes_of(pattern):
            parts = settle(Question(pattern=pattern, size=size)).float_.parts
            assert any(part.role == "body" for part in parts)


class TestOneStick:
    def test_taken_alike_when_nothing_else_is_told(self):
        case = _case()
        assert case.weighed_tip == case.tip
        assert (case.tip.wet_mm, case.tip.glued_mm) == (10.0, 5.0)

    def test_showing_more_of_one_stick_leaves_less_of_it_wet(self):
        case = _case(showing="30 mm", takes_showing="20 mm", weighed_wet="15 mm")
        assert (case.tip.showing_mm, case.tip.wet_mm) == (30.0, 5.0)
        assert (case.weighed_tip.showing_mm, case.weighed_tip.wet_mm) == (20.0, 15.0)

    def test_wet_now_tells_wet_then(self):
        case = _case(showing="30 mm", takes_showing="20 mm", wet="10 mm")
        assert case.weighed_tip.wet_mm == 20.0

    def test_nothing_told_of_wet(self):
        case = _case(showing="15 mm", takes_showing="20 mm")
        assert (case.tip.wet_mm, case.weighed_tip.wet_mm) == (15.0, 10.0)

    def test_more_showing_than_there_is(self):
        assert _mistakes(showing="40 mm", takes_showing="20 mm", weighed_wet="10 mm") == (
            "showing: '40 mm' will not do; only 30 mm of this tip stands out of the body; "
            "show less, "
            "or say weighed_tip if it is another tip (for example 20 mm)"
        )

    def test_more_showing_then_than_there_is(self):
        assert _mistakes(showing="10 mm", wet="5 mm", takes_showing="20 mm") == (
            "takes_showing: '20 mm' will not do; only 15 mm of this tip stands out of the "
            "body; say "
            "less, or say weighed_tip if it was another tip (for example 20 mm)"
        )

    def test_lengths_that_clash(self):
        assert _mistakes(wet="10 mm", takes_showing="20 mm", weighed_wet="20 mm") == (
            "weighed_wet: '20 mm' will not do; one tip cannot stand 40 mm out of the body "
            "then and "
            "30 mm now; say weighed_tip if it was changed (for example 10 mm)"
        )

    def test_lengths_that_clash_by_less_than_they_are_measured(self):
        """It is one stick: how much is wet now then tells how much was."""
        told = {"wet": "10 mm", "takes_showing": "20 mm"}
        assert _case(**told, weighed_wet="10.5 mm").weighed_tip.wet_mm == 10.0
        assert "one tip cannot stand 30.6 mm out" in _mistakes(**told, weighed_wet="10.6 mm")

    def test_what_is_glued_in_is_taken_in_half_millimetres_upwards(self):
        """Of 45 mm outside, .12 or 5.4 mm must be glued."""
        assert _case(showing="35 mm").tip.glued_mm == 5.5
        assert _case(showing="35 mm", glued="5.3 mm").tip.glued_mm == 5.3

    def test_a_tip_that_was_changed(self):
        case = _case(
            diameter="5 mm",
            stock="thin tube",
            showing="40 mm",
            takes_showing="20 mm",
            weighed_tip="3 mm quill",
            weighed_wet="8 mm",
            weighed_coats="2",
            sleeve_on="yes",
            light_stick_on="3 x 23 mm",
        )
        assert (case.tip.stock.kind, case.tip.stock.bore_mm, case.tip.glued_mm) == (
            "thin tube",
            4.0,
            6.0,
        )
        then = case.weighed_tip
        assert (then.stock.kind, then.stock.diameter_mm, then.stock.density_kg_m3) == (
            "quill",
            3.0,
            300.0,
        )
        assert (then.showing_mm, then.wet_mm, then.glued_mm, then.coats) == (20.0, 8.0, 5.0, 2)
        assert (case.tip.sleeve, case.tip.light_stick) == (True, "3 x 23 mm")
        assert (then.sleeve, then.light_stick) == (False, "none")

    def test_glued_then_is_glued_now(self):
        case = _case(weighed_glued="12 mm")
        assert (case.tip.glued_mm, case.weighed_tip.glued_mm) == (12.0, 12.0)


class TestTip:
    def test_the_usual_tip_of_the_pattern(self):
        row = tables.row("patterns", "hollow-tip balsa taper", "pattern")
        case = settle(Question(pattern="hollow-tip balsa taper"))
        assert case.tip.stock.kind == row["tip_stock"]
        assert case.tip.stock.diameter_mm == float(row["tip_diameter_mm"])
        assert case.tip.showing_mm == float(row["tip_showing_mm"])

    def test_a_tip_that_is_hardly_glued_in_is_taken_as_it_is(self):
        assert _case(showing="40 mm", glued="2 mm").tip.glued_mm == 2.0

    def test_a_tube_without_a_bore(self):
        assert _mistakes(stock="thick tube", diameter="2 mm") == (
            "diameter: '2 mm' will not do; a thick tube of 2 mm needs a bore above 0 and "
            "below 2 mm; "
            "tell the bore, or say solid (for example bore 2 mm in a tip of 3 mm)"
        )

    def test_a_bore_as_wide_as_the_tip(self):
        assert _mistakes(stock="thin tube", bore="3 mm") == (
            "bore: '3 mm' will not do; a thin tube of 3 mm needs a bore above 0 and below 3 mm; "
            "tell the bore, or say solid (for example bore 2 mm in a tip of 3 mm)"
        )

    def test_a_bore_in_what_has_none(self):
        assert _mistakes(bore="1 mm") == (
            "bore: '1 mm' will not do; quill has no bore; say thin tube, thick tube or hollow "
            "glass (for example thin tube)"
        )

    def test_a_weighed_tip_with_a_bore_too_wide(self):
        text = _mistakes(weighed_tip="3/4 mm thin tube")
        assert text.startswith(
            "weighed_tip: '3/4 mm thin tube' will not do; a thin tube of 3 mm needs"
        )

    def test_one_paint(self):
        assert _case(paint="black").tip.bands == (Band("black", 0.0, 20.0),)

    def test_blocks(self):
        bands = _case(paint="black 0-12 mm, fluorescent orange 12-30 mm").tip.bands
        assert bands == (Band("black", 0.0, 12.0), Band("fluorescent orange", 12.0, 30.0))

    def test_a_block_under_water(self):
        assert _mistakes(paint="black 20 mm, white").startswith(
            "paint: 'black 20 mm, white' will not do; the lowest block begins at 20 mm "
            "and only 20 mm "
            "show; let more show or make the blocks above it shorter"
        )

    def test_blocks_longer_than_the_tip(self):
        assert _mistakes(paint="black 0-10 mm, white 10-31 mm").startswith(
            "paint: 'black 0-10 mm, white 10-31 mm' will not do; the blocks go to 31 mm "
            "and only 30 mm "
            "of the tip stand out of the body; make them shorter"
        )

    def test_the_rest(self):
        tip = _case(seasons="2", finish="gloss", undercoat="no", tip_coats="5", pulls_out=True).tip
        assert (tip.seasons, tip.gloss, tip.undercoat, tip.coats, tip.pulls_out) == (
            2.0,
            True,
            False,
            5,
            True,
        )

    @pytest.mark.parametrize("text", ["5/4 mm thin tube", "3 mm quill", "4.5/2.5 mm thick tube"])
    def test_stock_words_read_back(self, text):
        from tipsight.inputs.settle_tip import stock_of

        assert stock_words(stock_of(stock_said(text))) == text


def test_the_parts_of_a_pattern_are_those_that_its_load_is_worked_out_from():
    from tipsight.load import patterns

    for name in (row["name"] for row in tables.rows("patterns")):
        for size in sizes_of(name):
            assert parts_of(name, size) == patterns.built(name, size).parts


def test_a_soaked_float_weighs_no_less_than_dry():
    with pytest.raises(Mistakes, match=r"dry it weighs 2\.1 g; wet it cannot weigh less"):
        _case(weighs="2.1 g", soaked="2 g")
    assert _case(weighs="2.1 g", soaked="2.15 g").float_.drunk_g == pytest.approx(0.05)
    assert _case(weighs="2.1 g").float_.drunk_g == 0.0
