"""The page answers whatever it is asked: an answer or what to mend, never a crash.

``FUZZ=250`` before the command makes it five thousand addresses instead of two hundred and forty.
"""

import os
from urllib.parse import quote, urlencode

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.advise import advise
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.settle import settle
from webui import create_app

MOST = int(os.environ.get("FUZZ", "12"))
NUMBERS = st.floats(-5, 200).map(lambda x: f"{x:.3g}") | st.sampled_from(
    ["nan", "inf", "1e999", "1/0", "-0", "٣"]
)
UNITS = st.sampled_from(
    ["", " yd", " m", " ft", " mm", " s", " m/s", " g", "%", "°", " in", "' 6\""]
)
JUNK = st.text(max_size=30) | st.text(st.sampled_from("'\"<>&;,+%=\\\n\x00éß"), max_size=8)


@st.composite
def said(draw, key):
    item = ITEMS[key]
    words = [word.word for word in item.words] or [item.example or "all"]
    near = st.sampled_from([item.example, item.default, *words])
    number = st.tuples(NUMBERS, UNITS).map("".join)
    pair = st.tuples(near | number, st.sampled_from(["; ", ", ", " ", " 60%; "]), near | number)
    many = st.lists(near | number, min_size=3, max_size=40).map("; ".join)
    return draw(near | near | number | JUNK | pair.map("".join) | many)


@st.composite
def addresses(draw):
    keys = draw(st.lists(st.sampled_from(list(ITEMS)), max_size=6))
    pairs = [(key, draw(said(key))) for key in keys]
    pairs += draw(
        st.lists(
            st.tuples(st.sampled_from(["far", "high", "set", "was_distance", "x", ""]), JUNK),
            max_size=2,
        )
    )
    if draw(st.integers(0, 19)) == 0:
        return quote(draw(JUNK), safe="&=+%")
    return urlencode(pairs)


@pytest.fixture(scope="module")
def quick():
    """An app that settles every question, and gives one answer to all that can be settled."""
    answer = advise(demo.question())

    def settled(question):
        settle(question)
        return answer

    return create_app(advise=settled).test_client()


@settings(deadline=None, derandomize=True, max_examples=20 * MOST)
@given(addresses())
def test_any_address_is_read(quick, query):
    reply = quick.get(f"/advise.json?{query}")
    assert reply.status_code in (200, 422)
    assert (reply.status_code == 422) == ("mistakes" in reply.json)


@settings(deadline=None, derandomize=True, max_examples=4 * MOST)
@given(addresses())
def test_any_address_makes_a_page_by_the_rules(quick, rules, query):
    reply = quick.get(f"/?{query}")
    if reply.status_code == 303:
        reply = quick.get(reply.headers["Location"])
    assert reply.status_code in (200, 422)
    rules(reply.text)


@settings(deadline=None, derandomize=True, max_examples=MOST)
@given(addresses())
def test_any_address_is_worked_out(house, query):
    assert house.get(f"/advise.json?{query}").status_code in (200, 422)
