"""Every pattern answers at every size, and at every load from half its least to twice its greatest."""

import math

import numpy as np
import pytest

from tipsight import tables
from tipsight.advice.advise import advise, examine
from tipsight.advice.answer import Block
from tipsight.advice.facts import Limit
from tipsight.inputs.question import Question
from tipsight.load import patterns

NAMES = [row["name"] for row in tables.rows("patterns")]
WISHES = {Limit.BODY, Limit.ROOM, Limit.GLUE, Limit.BALANCE}
STEPS = 7
"""Loads tried of each pattern, each as many times the one before."""


def answers(block: Block, name: str) -> None:
    """Assert that a tip is looked at whole: the pattern's own, standing, with no wish counted."""
    usual = patterns.pattern(name).tip
    assert (block.tip.stock, block.tip.showing_mm) == (usual.stock, usual.showing_mm)
    assert not block.handling.falls_over
    assert block.handling.lean_deg is not None
    assert math.isfinite(block.visibility.level)
    assert block.load.pull_g > 0.0
    assert WISHES.isdisjoint(fail.limit for fail in block.broken)


def grid(name: str) -> list[Block]:
    """Return what each size of a pattern is with its own tip."""
    return [examine(Question(pattern=name, size=size)) for size in patterns.sizes(name)]


@pytest.mark.parametrize("name", NAMES)
def test_every_size_and_every_load_is_answered_with_the_patterns_own_tip(name: str) -> None:
    sizes = grid(name)
    shot_g = [block.load.shot_g for block in sizes]
    assert shot_g == sorted(shot_g)
    told_g = np.geomspace(shot_g[0] / 2, 2 * shot_g[-1], STEPS)
    weighed = [examine(Question(pattern=name, takes=f"{one:.6f} g")) for one in told_g]
    assert [block.load.shot_g for block in weighed] == pytest.approx(told_g, abs=1e-6)
    for block in (*sizes, *weighed):
        answers(block, name)


@pytest.mark.parametrize("name", NAMES)
def test_no_advice_makes_a_wish_worse_at_the_least_load(name: str) -> None:
    """The smallest float has the thinnest body, to which its own tip is already too thick."""
    least_g = examine(Question(pattern=name, size=patterns.sizes(name)[0])).load.shot_g / 2
    answer = advise(Question(pattern=name, takes=f"{least_g:.6f} g", distance="25 yd"))
    broken = {fail.limit for fail in answer.at_the_bank.block.broken}
    assert (WISHES - {Limit.BALANCE}).isdisjoint(broken)
    assert answer.at_the_bench is not None
    assert WISHES.isdisjoint(fail.limit for fail in answer.at_the_bench.block.broken)
