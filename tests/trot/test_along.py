"""The whole trot: held to the plain question, and to what was worked out by hand."""

import json
from dataclasses import replace
from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.advise import advise, examine
from tipsight.advice.swim import swim
from tipsight.cli import main
from tipsight.inputs.case import Leg
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.output import trot_words
from tipsight.pictures import trot_strip
from tipsight.sight import grades
from tipsight.trot.along import AllAlong, Trot, Yards, _choice, _yards, along
from tipsight.units import YARD_M

TIP = {"diameter": "3 mm", "stock": "quill", "showing": "20 mm", "paint": "fluorescent orange"}
THREE = "0-15 dark trees, 15-30 bright, 30-40 broken with boils"
YARD = st.integers(8, 50)


@pytest.fixture(scope="module")
def three():
    return along(Question(distance="40 yd", trot=THREE, **TIP))


@settings(max_examples=6, deadline=None)
@given(YARD, st.sampled_from(["dark", "bright"]), st.sampled_from(["glass", "fur", "ripple"]))
def test_a_trot_of_one_stretch_is_the_plain_question(yards, behind, looks) -> None:
    plain = Question(distance=f"{yards} yd", behind=behind, looks=looks, **TIP)
    one = along(Question(distance=f"{yards} yd", trot=f"0-{yards} {behind} {looks}", **TIP))
    answer = advise(plain)
    assert one.answers[0].at_the_bank == answer.at_the_bank
    assert one.answers[0].at_the_bench == answer.at_the_bench
    assert one.in_hand.blocks == (examine(plain),)
    assert one.in_hand.level == answer.tip_in_hand.visibility.level
    bare = along(plain)
    assert bare.in_hand.least == one.in_hand.least
    assert bare.change == one.change


def test_the_far_end_is_what_the_last_stretch_tells_of_it() -> None:
    """What the question itself tells stands before it."""
    far = settle(Question(distance="40 yd", trot=THREE))
    same = settle(Question(distance="40 yd", behind="broken", boils="boily"))
    assert (far.stretches, far.stream) == (same.stretches, same.stream)
    told = settle(Question(distance="40 yd", trot=THREE, behind="dark"))
    assert [one.name for one in told.stretches] == ["dark"]


def test_each_stretch_is_seen_as_its_own_question_has_it(three) -> None:
    """At the far end exactly; in between within what the level is off between two worked distances."""
    parts = [{"behind": "dark"}, {"behind": "bright"}, {"behind": "broken", "boils": "boily"}]
    for yards, part, block in zip((15, 30, 40), parts, three.in_hand.blocks, strict=True):
        plain = examine(Question(distance=f"{yards} yd", **part, **TIP))
        assert block.visibility.level == pytest.approx(plain.visibility.level, rel=1e-9)
    for yards, part in ((10, parts[0]), (22, parts[1]), (35, parts[2])):
        plain = examine(Question(distance=f"{yards} yd", **part, **TIP))
        assert three.in_hand.least[yards] == pytest.approx(plain.visibility.level, rel=0.02)


def test_where_two_stretches_meet_the_worse_counts(three) -> None:
    dark, bright = (
        examine(Question(distance="15 yd", behind=water, **TIP)).visibility.level
        for water in ("dark", "bright")
    )
    assert bright < dark
    assert three.in_hand.least[15] == pytest.approx(bright, rel=0.01)


def test_the_choice_is_followed_on_the_most_of_it(three) -> None:
    """No tip does on all three; black alone is followed to 29 yd, if not where the dark ends."""
    assert not three.chosen.passes
    others = [answer.at_the_bench.block.tip for answer in three.answers]
    assert three.chosen.tip in others
    assert three.chosen.tip.bands[0].paint == "black"
    assert three.chosen.lost_yards == ((15, 15), (30, 40))
    assert three.in_hand.lost_yards == ((16, 40),)


def test_what_does_on_the_hardest_stretch_and_on_the_others_is_the_choice() -> None:
    found = along(Question(distance="22 yd", trot="0-10 bright glass, 10-22 bright fur", **TIP))
    hardest = found.answers[1]
    assert found.in_hand.worst == 1
    assert found.chosen.passes
    assert found.chosen.tip == hardest.at_the_bank.block.tip


def test_the_time_is_that_of_each_stretch_at_its_own_pace() -> None:
    """15 yd at 0.6 m/s are 22.86 s, 25 yd at 0.9 m/s are 25.4 s."""
    found = along(Question(distance="40 yd", trot="0-15 dark walk, 15-40 bright brisk", **TIP))
    assert found.seconds == pytest.approx((22.86, 25.4))
    assert found.followed_s <= sum(found.seconds)
    still = along(Question(distance="20 yd", trot="0-20 dark", pace="0 m/s", **TIP))
    assert np.isinf(sum(still.seconds))
    assert "some of it stands still" in trot_words.text(still)
    assert trot_words.form(still)["followed_s"] is None


def _all(yards, levels, notice, own, block):
    on = Yards(np.array(yards), np.array(levels), np.array(notice), own)
    return AllAlong(block.tip, (block,), (on,))


def test_where_it_is_lost_and_at_what_to_strike_by_hand() -> None:
    """Followed from 2.4 on; the water's own dips of 0.8 s make any shorter one none to strike at."""
    block = examine(Question(**TIP))
    nan = float("nan")
    one = _all([10, 11, 12, 13, 14], [9.0, 2.5, 2.3, 2.6, 1.0], [0.3, 0.9, nan, 1.4, nan], 0.8, block)
    assert grades.followed() == 2.4
    assert one.lost_yards == ((12, 12), (14, 14))
    assert one.followed_yards == 3
    assert one.strikes == ((10, 11, 1.0), (12, 12, None), (13, 13, 2.0), (14, 14, None))
    calm = _all([10, 11], [9.0, 2.5], [0.3, 0.9], 0.0, block)
    assert calm.strikes == ((10, 10, 0.5), (11, 11, 1.0))
    assert trot_words.strikes(one) == (
        "from 10 to 11 yd only at what stays down a second; at 12 yd no dip shows; "
        "at 13 yd only at what stays down two seconds; at 14 yd no dip shows"
    )


def test_a_long_notice_and_a_seldom_dip() -> None:
    """Longer than ten seconds nobody waits; dips of the water that hardly come are not waited out."""
    block = examine(Question(**TIP))
    assert _all([20], [2.4], [12.0], 0.0, block).strikes == ((20, 20, None),)
    glide = along(Question(distance="12 yd", behind="dark", looks="glass", wind="calm", **TIP))
    assert glide.in_hand.on[0].own_dip_s == 0.0


def _on(yards, levels, notice):
    return Yards(np.array(yards), np.array(levels), np.array(notice), 0.0)


@pytest.mark.parametrize("turned", [1, -1])
def test_where_two_stretches_meet_the_longer_dip_is_struck_at(turned) -> None:
    """At 12 yd one asks for 2 s (1.4 s and more), the other for 1 s; no dip on one is none on both."""
    block = examine(Question(**TIP))
    near, far = _on([11, 12], [9.0, 9.0], [0.3, 1.4]), _on([12, 13], [9.0, 9.0], [0.9, 0.3])
    both = AllAlong(block.tip, (block, block), (near, far)[::turned])
    assert both.strikes == ((11, 11, 0.5), (12, 12, 2.0), (13, 13, 0.5))
    lost = _on([11, 12], [9.0, 1.0], [0.3, float("nan")])
    both = AllAlong(block.tip, (block, block), (lost, far)[::turned])
    assert both.strikes == ((11, 11, 0.5), (12, 12, None), (13, 13, 0.5))


def test_of_stretches_on_which_as_little_is_seen_the_farthest_is_the_worst() -> None:
    block = examine(Question(**TIP))
    assert AllAlong(block.tip, (block, block), ()).worst == 1
    dim = replace(block, visibility=replace(block.visibility, level=0.5 * block.visibility.level))
    assert AllAlong(block.tip, (dim, block), ()).worst == 0
    assert AllAlong(block.tip, (dim, block), ()).level == 0.5 * block.visibility.level


def test_for_how_long_it_is_followed_by_hand() -> None:
    """Half of the yards of 20 s and all of those of 30 s are 40 s; nearer than 4 yd nobody looks."""
    block = examine(Question(**TIP))
    half = _on([4, 5, 6, 7], [9.0, 2.5, 2.3, 1.0], [0.3] * 4)
    chosen = AllAlong(block.tip, (block,) * 3, (half, _on([8], [9.0], [0.3]), _on([], [], [])))
    assert Trot((), (), chosen, None, chosen, (20.0, 30.0, 5.0)).followed_s == pytest.approx(40.0)


def test_how_long_a_dip_must_last_is_that_of_the_worst_water() -> None:
    """At its far end a stretch is looked at as the plain question looks at it."""
    found = along(Question(distance="12 yd", behind="dark 50%; broken 50%", looks="ripple", **TIP)).in_hand
    dark, broken = found.blocks[0].visibility.by_background
    assert dark.notice_s < 0.2 * broken.notice_s
    assert found.on[0].notice_s[-1] == pytest.approx(broken.notice_s, rel=1e-9)


@pytest.mark.parametrize(("per_min", "own_s"), [(0.49, 0.0), (0.5, 0.8), (4.0, 0.8)])
def test_dips_of_the_water_count_from_one_in_two_minutes_on(per_min, own_s) -> None:
    case = settle(Question(distance="12 yd", behind="dark", **TIP))
    block = examine(Question(distance="12 yd", behind="dark", **TIP))
    handled = replace(block.handling, dips_per_min=per_min, ordinary_dip_s=0.8)
    leg = Leg(0.0, case.place.range_m, ())
    assert _yards(leg, swim(case), replace(block, handling=handled)).own_dip_s == own_s


def _offer(name, yards, level, *, passes=False, sound=True):
    blocks = (SimpleNamespace(sound=True), SimpleNamespace(sound=sound))
    return name, SimpleNamespace(passes=passes, followed_yards=yards, level=level, blocks=blocks)


@pytest.mark.parametrize(
    ("offered", "taken"),
    [
        ([_offer("a", 30, 3.0), _offer("b", 20, 2.5, passes=True)], "b"),
        ([_offer("a", 30, 1.0), _offer("b", 31, 0.5)], "b"),
        ([_offer("a", 31, 1.0, sound=False), _offer("b", 30, 0.5)], "b"),
        ([_offer("a", 30, 1.0, sound=False), _offer("b", 31, 0.5, sound=False)], "b"),
        ([_offer("a", 30, 0.94), _offer("b", 30, 1.0)], "b"),
        ([_offer("a", 30, 0.96), _offer("b", 30, 1.0)], "a"),
    ],
)  # fmt: skip
def test_the_choice_by_hand(offered, taken) -> None:
    """What does on all; else of sound tips the most yards; of as many the least trouble within 5 %."""
    assert _choice(offered)[0] == taken


def test_it_is_told_to_people_and_to_programs(capsys) -> None:
    line = ["trot", "--distance", "40yd", "--trot", THREE, "--diameter", "3 mm", "--stock", "quill",
            "--showing", "20 mm", "--paint", "fluorescent orange"]  # fmt: skip
    assert main(line) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith("TROT 0 to 15 yd (dark); 15 to 30 yd (bright); 30 to 40 yd (broken, boily).")
    assert "AS IT IS worst on 30 to 40 yd (broken, boily): not seen at its far end; not followed from" in said
    assert "black" in said
    assert "not followed at 15 yd and from 30 to 40 yd: look harder there, or fish it" in said
    assert "this is followed on the most of it" in said
    assert "from cast to end, followed for" in said
    assert main([*line, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert [leg["told"] for leg in told["legs"]][2] == {"behind": "broken", "boils": "boily"}
    assert told["advised"]["not_followed_yd"] == [[15, 15], [30, 40]]
    assert told["as_it_is"]["worst_leg"] == 2
    assert [one["yard"] for one in told["advised"]["by_yard"]] == list(range(4, 41))


def test_a_comma_wants_no_blank_behind_it() -> None:
    tight = settle(Question(distance="40 yd", trot="0-15 dark,15-30 bright;30-40 broken boily")).trot
    assert tight == settle(Question(distance="40 yd", trot=THREE)).trot


def test_a_leg_in_metres_meets_one_in_yards() -> None:
    """13.72 m are 15 yd to the centimetre."""
    legs = settle(Question(distance="40 yd", trot="0-13.72 m dark, 15-40 yd bright")).trot
    assert legs[0] == Leg(0.0, 13.72, (("behind", "dark"),))
    assert legs[1].to_m == pytest.approx(40 * YARD_M)


def test_it_is_drawn_for_the_page_and_to_stand_alone(three, tmp_path, capsys) -> None:
    drawn = trot_strip.drawing(three)
    assert drawn.alone().count("<pattern") == 5
    assert "0 to 15 yd (dark)" in drawn.alone()
    assert "<pattern" not in trot_strip.drawing(three, alone=False).alone()
    assert [run.grade for run in three.chosen.by_grade][-1] == "not seen"
    ends = [(run.from_m / YARD_M, run.to_m / YARD_M) for run in three.chosen.by_grade]
    assert (ends[0][0], ends[-1][1]) == pytest.approx((3.5, 40.5))
    assert all(a[1] == pytest.approx(b[0]) for a, b in pairwise(ends))
    assert main(["trot", "--trot", THREE, "-o", str(tmp_path / "t.svg")]) == 0
    assert (tmp_path / "t.svg").read_text(encoding="utf-8").startswith("<svg")
    assert "the whole trot" in capsys.readouterr().out
