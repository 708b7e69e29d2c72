"""Lines that wrap, and sections that give way."""

from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.output.layout import Section, entry, fitted, hanging, table

often = settings(deadline=None, derandomize=True, max_examples=60)
prose = st.lists(st.text("abc4 ", min_size=1, max_size=12), max_size=60).map(" ".join)


@given(prose)
@often
def test_no_word_is_lost(text: str) -> None:
    for lines in (hanging(text), entry("LABEL", text)):
        assert all(len(line) <= 80 for line in lines)
        said = " ".join(" ".join(lines).split())
        assert said.removeprefix("LABEL").split() == text.split()


def test_a_number_keeps_its_unit_on_its_line() -> None:
    text = "x " * 38 + "22.5 mm and No 8"
    lines = hanging(text)
    assert lines[1].startswith("  22.5 mm")
    assert hanging("y" * 74 + " a No 8")[1] == "  No 8"


def test_columns_line_up() -> None:
    lines = table([("a", "bb", "c"), ("aaa", "b", "c")], 0, 1)
    assert lines == ("a   bb c", "aaa b  c")
    assert table([]) == ()


def test_sections_give_way_in_their_order_and_no_further_than_needed() -> None:
    parts = (Section("a", (("a1", "a2"), ("a1",))), Section("b", (("b1", "b2"), ("b1",), ())))
    assert fitted(parts, 4, ("b", "a")) == ("a1", "a2", "b1", "b2")
    assert fitted(parts, 3, ("b", "a")) == ("a1", "a2", "b1")
    assert fitted(parts, 2, ("b", "a")) == ("a1", "b1")
    assert fitted(parts, 1, ("b", "a", "b", "b")) == ("a1",)
    assert fitted(parts, 0, ("a", "b", "b", "strange")) == ("a1",)
