"""One option for each item, and options written so that they read back."""

import argparse
import shlex

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import Mistakes
from tipsight.inputs.items import ITEMS
from tipsight.inputs.options import add_options, as_arguments, as_line, question_from
from tipsight.inputs.question import Question


def _parser():
    parser = argparse.ArgumentParser()
    add_options(parser)
    return parser


def test_every_item_has_its_option_and_help():
    text = _parser().format_help()
    for item in ITEMS.values():
        assert item.option in text
    assert "Where you stand" in text
    assert "Not told, 40 yd is taken" in " ".join(text.split())


def test_nothing_given_leaves_the_question_alone():
    base = Question(distance="40 yd")
    assert question_from(_parser().parse_args([]), base) == base


def test_not_told_takes_an_item_back():
    given = _parser().parse_args(["--distance", "not told", "--behind", "not told"])
    base = Question(distance="40 yd", behind=("dark",), depth="7 ft")
    assert question_from(given, base).told() == {"depth": "7 ft"}


def test_an_unknown_item_cannot_be_written():
    with pytest.raises(
        Mistakes, match=r"^distnce: there is no such item; did you mean 'distance'"
    ):
        as_arguments({"distnce": "40 yd"})


@settings(deadline=None, derandomize=True, max_examples=200)
@given(
    st.dictionaries(
        st.sampled_from([key for key, item in ITEMS.items() if not item.repeats]),
        st.text(min_size=1, max_size=20).filter(lambda text: text.strip()),
        max_size=5,
    )
)
def test_options_read_back(options):
    given = _PARSER.parse_args(as_arguments(options))
    told = {key: getattr(given, key) for key in options}
    assert told == options
    assert shlex.split(as_line(options), posix=True) == as_arguments(options)


_PARSER = _parser()


def test_a_list_reads_back():
    options = {"behind": ("dark 60%", "bright 40%"), "sun_height": -3.0, "pen": False}
    given = _parser().parse_args(as_arguments(options))
    question = question_from(given, Question())
    assert question.told() == {
        "sun_height": "-3",
        "behind": ("dark 60%", "bright 40%"),
        "pen": "no",
    }
