"""Whatever is told, the answer is a case or lines that say what to mend, never anything else."""

from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import Mistakes
from tipsight.inputs import toml_text
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

PIECES = st.sampled_from(
    [
        *("40", "yd", "mm", "g", "%", "dark", "trees", "high", "beyond", "BB", "No 4", "x", "+"),
        *(",", ";", "-", "/", "0", "1/0", "6/9", "solid", "tube", "black", "N", "UTC", "°", "'"),
        *("not sure", "all", "none", "body", "balsa", "long", "thick", "2026-10-15 17:00", "1e9"),
    ]
)
ANY = st.one_of(
    st.lists(PIECES, max_size=7).map(" ".join),
    st.text(max_size=12),
    st.floats(),
    st.booleans(),
    st.lists(st.lists(PIECES, max_size=4).map(" ".join), max_size=3),
    st.none(),
)


def _told(mistakes):
    """Return whether each mistake names its item and says what is allowed."""
    return bool(mistakes) and all(one.allowed and one.item for one in mistakes)


def _lines(do):
    try:
        do()
    except Mistakes as caught:
        return caught.mistakes
    return None


@settings(deadline=None, derandomize=True, max_examples=300)
@given(st.dictionaries(st.sampled_from(sorted(ITEMS)), ANY, max_size=8))
def test_settle(told):
    mistakes = _lines(lambda: settle(Question(**told)))
    assert mistakes is None or _told(mistakes)


@settings(deadline=None, derandomize=True, max_examples=200)
@given(
    st.lists(
        st.one_of(PIECES, st.sampled_from(["[place]", "=", '"', "distance", "\n"])), max_size=12
    )
)
def test_read(pieces):
    mistakes = _lines(lambda: toml_text.read(" ".join(pieces)))
    assert mistakes is None or _told(mistakes)
