"""Which float for this swim: held to what the answer itself says of each float by itself."""

import json
from datetime import date

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.on_the_spot import TROUBLE, kind_of
from tipsight.box import floats, keeping
from tipsight.box.floats import Kept
from tipsight.cli import main
from tipsight.inputs.entry import Entry
from tipsight.inputs.question import Question
from tipsight.output import rank_words
from tipsight.season.ranking import rank
from tipsight.season.swims import Fished
from tipsight.sight import grades

SWIM = Question(distance="20 yd", behind=("bright",), looks="fur", age=50, pen="yes", sleeves="no")
QUILL = {"pattern": "quill avon", "takes": "6BB", "diameter": "3 mm", "stock": "quill"}
FLOATS = [
    Question(**QUILL, showing="30 mm", paint="black"),
    Question(**QUILL, showing="30 mm", paint="white"),
    Question(**QUILL, showing="8 mm", paint="red"),
    Question(**QUILL, showing="12 mm", paint="black"),
    Question(
        pattern="bolo type", takes="4 g", diameter="3 mm", stock="solid", showing="30 mm", paint="black"
    ),
    Question(pattern="canal balsa", takes="3 No 8", diameter="1.5 mm", showing="8 mm", paint="white"),
    Question(**QUILL, showing="30 mm", paint="black"),
]


@pytest.fixture(scope="module")
def found():
    return rank(SWIM, FLOATS)


def test_each_float_is_told_as_its_own_answer_tells_it(found):
    """The answer's own choice at the bank: what is done, its level, and the shot for it."""
    swim = Fished("", 1.0, SWIM)
    passed = 0
    for one in found.floats:
        bank = advise(swim.with_float(FLOATS[one.float_])).at_the_bank
        if not bank.block.passes:
            assert one.trouble is None
            continue
        passed += 1
        wanted = TROUBLE.index(kind_of(bank.actions)) + 1 if bank.actions else 0
        assert one.trouble == wanted
        assert one.change.actions == bank.actions
        assert one.change.block.visibility.level == pytest.approx(bank.block.visibility.level, rel=1e-9)
        assert one.level == pytest.approx(bank.block.visibility.level, rel=1e-9)
        assert one.change.block.load.step == bank.block.load.step
    assert passed >= 4
    assert found.as_they_are + found.with_something_done == passed


def test_those_that_pass_untouched_come_first_then_by_trouble_sight_and_bites(found):
    keys = [
        (one.trouble is None, one.trouble or 0, -sum(one.level >= least for _, least in grades.limits()),
         one.sink_force_g)
        for one in found.floats
    ]  # fmt: skip
    assert keys == sorted(keys)
    assert {one.float_ for one in found.floats} == set(range(len(FLOATS)))
    assert found.floats[0].trouble == 0
    assert found.floats[-1].trouble is None


def test_only_the_first_are_looked_at_closely():
    few = rank(SWIM, FLOATS, most=2)
    assert [one.change is not None for one in few.floats[:2]] == [True, True]
    looked = {repr(FLOATS[one.float_]) for one in few.floats if one.change}
    assert len(looked) == 2
    assert [one.float_ for one in few.floats] == [one.float_ for one in rank(SWIM, FLOATS).floats]


def test_no_float_at_all():
    assert rank(SWIM, []).floats == ()
    assert rank_words.text(rank(SWIM, []), [], 20) == (
        "20 yd, bright: none of no floats would do, whatever is done at the bank.\n\n"
    )


def kept(n, question):
    return Kept(n + 1, Entry({k: f"{v}" for k, v in question.told().items()}), n + 1, "put",
                date(2026, 10, 3))  # fmt: skip


def test_it_is_told_in_words(found):
    said = rank_words.text(found, [kept(n, q) for n, q in enumerate(FLOATS)], 20)
    assert said.startswith("20 yd, bright: three of seven floats would do as they are, two more with")
    first = found.floats[0].float_ + 1
    assert f"\n{first}: quill avon, 6BB, 3 mm quill, 30 mm showing, black\n  as it is: kept in view" in said
    assert "let 20 mm (¾ in) show" in said or "pen all that shows black" in said
    assert "short of kept in view" in said


def test_the_command_tells_it_to_people_and_to_programs(tmp_path, capsys):
    path = tmp_path / "my.box"
    with keeping.opened(path, "write") as box:
        for question in FLOATS[:3]:
            told = {k: f"{v}" for k, v in question.told().items()}
            floats.put(box, Entry(told), date(2026, 10, 3))
    line = ["box", "rank", "--box", str(path), "--distance", "20yd", "--behind", "bright", "--age", "50",
            "--looks", "fur"]  # fmt: skip
    assert main(line) == 0
    assert capsys.readouterr().out.startswith("20 yd, bright: one of three floats would do as it is")
    assert main([*line, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["floats"][0]["number"] == 1
    assert told["floats"][0]["passes"] is True
    assert told["floats"][0]["does"] == []
    assert told["floats"][1]["put_on"] or told["floats"][1]["take_off"] or told["floats"][1]["does"]
    assert main(["box", "rank", "--box", str(tmp_path / "none.box")]) == 2
    assert "there is no such file" in capsys.readouterr().err
