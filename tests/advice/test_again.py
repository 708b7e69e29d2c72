"""What is printed with options comes true when the question is asked again with them."""

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.answer import Turns
from tipsight.inputs import demo
from tipsight.inputs.settle import settle
from tipsight.inputs.toml_text import read, write

NAMES = ("demo", "match", "dusk")


@pytest.fixture(scope="module")
def asked():
    return {name: (demo.question(name), advise(demo.question(name))) for name in NAMES}


def same(printed, now):
    assert now.visibility.grade == printed.visibility.grade
    assert now.visibility.level == pytest.approx(printed.visibility.level, rel=0.02)
    assert [b.paint for b in now.tip.bands] == [b.paint for b in printed.tip.bands]
    assert now.load.shot == printed.load.shot
    assert now.load.shot_g == pytest.approx(printed.load.shot_g, abs=1e-6)


@pytest.mark.parametrize("name", NAMES)
def test_every_change_comes_true(asked, name):
    question, answer = asked[name]
    for change in answer.changes:
        same(change.block, advise(question.with_options(**change.options)).tip_in_hand)


@pytest.mark.parametrize("name", NAMES)
def test_every_next_step_comes_true(asked, name):
    question, answer = asked[name]
    for step in answer.next_step:
        if step.block is not None:
            same(step.block, advise(question.with_options(**step.options)).tip_in_hand)


@pytest.mark.parametrize("name", NAMES)
def test_every_turn_comes_true(asked, name):
    question, answer = asked[name]
    turns = [reason for reason in answer.reasons if isinstance(reason, Turns)]
    for reason in turns:
        again = advise(question.with_options(**reason.options))
        if reason.block.tip == answer.case.tip:
            same(reason.block, again.tip_in_hand)
        else:
            same(reason.block, again.at_the_bench.block)


def test_some_turn_is_told(asked):
    assert any(isinstance(r, Turns) for _, answer in asked.values() for r in answer.reasons)


@pytest.mark.parametrize("name", NAMES)
def test_the_printed_question_gives_the_same_answer(asked, name):
    question, answer = asked[name]
    again = advise(read(write(question, settle(question))))
    assert again.tip_in_hand == answer.tip_in_hand
    assert again.at_the_bench == answer.at_the_bench
    assert again.assumed == answer.assumed
