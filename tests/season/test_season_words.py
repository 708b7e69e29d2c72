"""What the jobs of a season say, line by line, and as JSON."""

import json
from dataclasses import replace
from datetime import date

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.facts import Cure, Failure, Limit
from tipsight.box import floats, keeping
from tipsight.cli import main
from tipsight.inputs.case import Band, Stock
from tipsight.inputs.entry import Entry
from tipsight.inputs.question import Question
from tipsight.output import season_words
from tipsight.output.measures import ANGLER
from tipsight.season import making
from tipsight.season.covering import Chosen
from tipsight.season.jobs import Carry, Gap, Heavy, Idle
from tipsight.season.making import Candidate, Makings, Worth
from tipsight.season.swims import Fished

SWIMS = [Fished(name, often, Question()) for name, often in (("pool", 6), ("glide", 4), ("weir", 2))]
TODAY = date(2026, 10, 3)
CALLED = ["float 1, quill avon, 6BB", "float 2, wire stick, 6 No 4"]
MORE = (*CALLED, "float 3, balsa taper", "float 4, bolo type")
MADE = Candidate("quill avon", "9 mm", Stock("quill", 3.0), 30.0, 10.0, 5.0,
                 (Band("black", 0.0, 10.0), Band("white", 10.0, 30.0)), 0.21)  # fmt: skip


def test_what_to_make_and_where_a_next_one_no_longer_pays() -> None:
    chosen = Chosen((0,), 10.0, (10.0,), 10.0)
    told = Makings(1234567, (0, 1, 2), (2,), (
        Worth(1, (MADE,), ((0, 1),), chosen),
        Worth(2, (MADE,), ((0, 1),), chosen),
    ))  # fmt: skip
    said = season_words.makings_text(told, SWIMS)
    assert said == (
        "3 of 3 swims are open, 12 times a season together; 1,234,567 floats that could\n"
        "  be made were weighed against each other, each only where it takes no more shot\n"
        "  than depth and pace usually want.\n"
        "\n"
        "One float: 10 of 12 times\n"
        "  quill avon 9 mm: 3 mm quill, 30 mm (1¼ in) showing, black 10 mm over white\n"
        "  20 mm; 0.21 g sinks it\n"
        "  adds 10 times: pool; glide\n"
        "\n"
        "More than one float adds nothing.\n"
        "\n"
        "No float of all these serves: weir.\n"
        "\n"
        "Each on its bench sheet:\n"
        "  tipsight sheet --pattern='quill avon' --size='9 mm' --diameter='3 mm' --stock=quill "
        "--showing='30 mm' --wet='10 mm' --glued='5 mm' "
        "--paint='black 0-10 mm, white 10-30 mm' --tip-coats=3\n"
    )


def test_a_search_broken_off_tells_its_gap() -> None:
    chosen = Chosen((0,), 10.0, (10.0,), 11.5)
    told = Makings(9, (0, 1, 2), (), (Worth(1, (MADE,), ((0, 1),), chosen),))
    said = " ".join(season_words.makings_text(told, SWIMS).split())
    assert "10 of 12 times (the search was broken off: up to 1.5 more may be had)" in said
    assert "adds nothing" not in said


def test_nothing_to_make() -> None:
    assert "every swim is served" in season_words.makings_text(Makings(0, (), (), ()), SWIMS)
    none = Makings(9, (2,), (2,), (Worth(1, (), (), Chosen((), 0.0, (), 0.0)),))
    said = season_words.makings_text(none, SWIMS)
    assert "Nothing that could be made from this stock serves any of them." in said
    assert "bench sheet" not in said


def test_what_to_carry() -> None:
    told = Carry(Chosen((1, 0), 12.0, (8.0, 4.0), 12.0), 2, Chosen((1,), 8.0, (8.0,), 8.0), (), (1,),
                 ((0, 2), (1,)))  # fmt: skip
    assert season_words.carry_text(told, SWIMS, CALLED) == (
        "Two floats for every swim:\n"
        "  float 2, wire stick, 6 No 4\n"
        "    for: pool; weir\n"
        "  float 1, quill avon, 6BB\n"
        "    for: glide\n"
        "\n"
        "With one fewer, one float:\n"
        "  float 2, wire stick, 6 No 4\n"
        "  gives up: glide\n"
    )
    none = Carry(Chosen((), 0.0, (), 0.0), 0, Chosen((), 0.0, (), 0.0), (0, 1, 2), ())
    assert "None of these floats serves any" in season_words.carry_text(none, SWIMS, CALLED)


def test_what_may_rest_is_said_gently() -> None:
    said = season_words.idle_text((Idle(0, 1), Idle(2, None), Idle(3, 1)), SWIMS, MORE)
    assert said == (
        "Going by these three swims alone, three floats could rest. A float is also a\n"
        "  pleasure, and another river may want it.\n"
        "\n"
        "Float 2, wire stick, 6 No 4, is as good in all that these serve:\n"
        "  float 1, quill avon, 6BB\n"
        "  float 4, bolo type\n"
        "Pass none of these swims as they are:\n"
        "  float 3, balsa taper\n"
    )
    assert "Every float serves some swim" in season_words.idle_text((), SWIMS, CALLED)


def test_swims_that_only_heavy_floats_serve_are_told_apart() -> None:
    said = season_words.gaps_text((), SWIMS, CALLED, (Heavy(0, 1, 1.32), Heavy(2, 1, 1.01)))
    assert said == (
        "Every one of the three swims is served by some float.\n"
        "\n"
        "Two swims served only by floats that take more shot than such depth and pace\n"
        "  usually want; the lightest of them:\n"
        "  float 2, wire stick, 6 No 4:\n"
        "    pool: 1.3 times as much\n"
        "    weir: barely more\n"
    )


def test_gaps_in_words() -> None:
    assert "served by some float" in season_words.gaps_text((), SWIMS, CALLED)
    said = season_words.gaps_text((Gap(0, None, None, ()),), SWIMS, CALLED)
    assert said.startswith("One swim of 3 that no float passes")
    assert said.endswith("Nothing in the box can be fished in:\n    pool, 6 times\n")


def test_gaps_alike_are_told_once() -> None:
    """Each swim of a kind in one line, with how near it would have to be fished."""
    block = advise(Question(distance="40 yd", behind=("bright",))).tip_in_hand
    cures = (Cure.COME_CLOSER, Cure.STAND_HIGHER)
    rough = replace(block, fails=(Failure(Limit.RIDE, 1.0, 2.0),))
    gaps = (
        Gap(0, 1, block, cures), Gap(1, 1, block, cures), Gap(2, 1, rough, (Cure.EASE_OFF,)),
    )  # fmt: skip
    far = ANGLER.far(block.visibility.goes_at_m)
    assert season_words.gaps_text(gaps, SWIMS, CALLED) == (
        "Three swims of 3 that no float passes, 12 times a season together.\n"
        "\n"
        "Float 2, wire stick, 6 No 4, is nearest: short of kept in view.\n"
        "  Stand higher, or come in to the yards told:\n"
        f"    pool, 6 times: {far}\n"
        f"    glide, 4 times: {far}\n"
        "Float 2, wire stick, 6 No 4, is nearest: does not ride this water.\n"
        "  Ease off:\n"
        "    weir, 2 times\n"
    )


def test_a_long_list_of_swims_is_counted() -> None:
    many = [Fished(f"peg {n}", 1.0, Question()) for n in range(9)]
    said = season_words.swims_named(range(9), many)
    assert said == "peg 0; peg 1; peg 2; peg 3; peg 4; peg 5; and 3 more"


SEASON = """
[all.have]
tips = ["quill 3"]
paints = ["white", "black"]
[[swim]]
name = "near"
often = 3
place.distance = "12 yd"
behind.behind = ["dark"]
[[swim]]
name = "far"
place.distance = "44 yd"
behind.behind = ["bright"]
"""


@pytest.mark.parametrize("job", ["gaps", "make", "carry", "idle"])
def test_the_commands_say_it_and_tell_it_to_programs(job: str, tmp_path, monkeypatch, capsys) -> None:
    monkeypatch.setattr(making, "hulls", lambda: (("quill avon", "9 mm"),))
    season, mine = tmp_path / "season.toml", tmp_path / "my.box"
    season.write_text(SEASON, encoding="utf-8")
    with keeping.opened(mine, "write") as box:
        floats.put(box, Entry({"pattern": "quill avon", "takes": "6BB", "paint": "black"}), TODAY, 7)
    line = ["box", job, "--box", str(mine), "--swims", str(season), "--cores", "1"]
    line += ["2"] if job == "make" else []
    assert main(line) == 0
    assert capsys.readouterr().out.endswith("\n")
    assert main([*line, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["swims"] == [{"name": "near", "often": 3.0}, {"name": "far", "often": 1.0}]
    assert job in told
    if job == "make":
        assert told["make"]["open"] == [0, 1]
        made = told["make"]["by_count"][0]["floats"][0]
        assert made["closes"] == [0]
        assert made["question"]["paint"] == "white"
    if job == "gaps":
        assert [one["swim"] for one in told["gaps"]["unserved"]] == [0, 1]
        assert {one["nearest"] for one in told["gaps"]["unserved"]} == {7}
        assert told["gaps"]["heavy_only"] == []
