"""What is not known widens the range of an answer and never narrows it."""

from dataclasses import replace

import pytest

from tipsight.advice.close_look import close_look
from tipsight.advice.swim import swim
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

COUNTED_AS_TOLD = ("bites", "sun_out")
"""For these it matters whether they were told: untold bites may turn bold, an untold sun comes and goes."""
UNSURE = [key for key, item in ITEMS.items() if item.takes_not_sure]
SIMPLE = Question(distance="30 yd", behind=("bright",), pattern="quill avon", diameter="3 mm",
                  stock="quill", showing="20 mm", paint="fluorescent orange")  # fmt: skip


def seen(question: Question) -> tuple[float, float]:
    told = settle(question)
    sight = close_look(swim(told), told.tip).visibility
    return float(sight.low), float(sight.high)


@pytest.mark.parametrize("key", [key for key in UNSURE if key != "behind"])
def test_not_sure_is_no_surer_than_the_answer_that_is_taken(key):
    """What is taken is listed, and telling it outright gives the very same range."""
    unsure = settle(SIMPLE.with_options(**{key: "not sure"}))
    told = {a.item: a.taken for a in unsure.assumed if a.item not in COUNTED_AS_TOLD}
    outright = settle(SIMPLE.with_options(**told))
    assert replace(unsure, assumed=()) == replace(outright, assumed=())


@pytest.mark.parametrize("word", [word.word for word in ITEMS["known"].words])
def test_not_sure_how_the_distance_is_known_is_no_surer_than_any_word(word):
    low, high = seen(SIMPLE.with_options(known="not sure"))
    surer_low, surer_high = seen(SIMPLE.with_options(known=word))
    assert low <= surer_low * (1 + 1e-9)
    assert high >= surer_high * (1 - 1e-9)


@pytest.mark.parametrize("paint", ["black", "white", "fluorescent orange"])
@pytest.mark.parametrize("word", ["dark", "bright"])
def test_not_sure_of_the_water_spans_what_it_may_be(word, paint):
    base = SIMPLE.with_options(paint=paint)
    low, high = seen(base.with_options(behind=("not sure",)))
    surer_low, surer_high = seen(base.with_options(behind=(word,)))
    assert low <= surer_low * (1 + 1e-9)
    assert high >= surer_high * (1 - 1e-9)
