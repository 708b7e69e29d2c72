"""``tipsight day``: what it prints, draws and refuses."""

import json
import re
from xml.etree import ElementTree

import pytest

from tipsight.cli import main

LINE = ["day", "demo", "--date", "2026-10-15 Europe/London", "--place", "52.1 N 1.5 W",
        "--facing", "south-west"]  # fmt: skip
AFTERNOON = [*LINE, "--from", "13:00", "--to", "18.30"]


@pytest.fixture
def printed(capsys):
    def run(*arguments):
        assert main(arguments) == 0
        return capsys.readouterr().out

    return run


@pytest.fixture(scope="module")
def told():
    """The whole day under a clear sky, as an object."""
    import contextlib
    import io

    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        assert main([*AFTERNOON, "--sky", "clear", "--json"]) == 0
    return json.loads(out.getvalue())["day"][0]


def test_the_day_is_read_as_it_is_said(printed, told):
    text = printed(*AFTERNOON, "--sky", "clear")
    assert max(map(len, text.splitlines())) <= 80
    assert text.startswith(
        "THE DAY      Thursday 15 October 2026, clear sky, 40 yd off, looking SW;"
    )
    plain = " ".join(text.split())
    lane = [one["when"][11:16] for one in told["quarters"] if one["lane"]]
    assert f"from {lane[0]} to {lane[-1]} the sun's glitter lies behind the tip" in plain
    assert "Never look into the sun" in plain
    for which in ("at_the_bank", "at_the_bench"):
        for spell in told[which]:
            assert spell["from"][11:16] in plain or spell["to"][11:16] in plain
    assert "what the weather does nobody can promise" in plain


def test_each_strip_has_a_sign_for_each_quarter(printed, told):
    text = printed(*AFTERNOON, "--sky", "clear").splitlines()
    rows = [line for line in text if line.startswith("  on bright")]
    signs = " .:+#@"
    on = [*told["at_the_bank"], *told["at_the_bench"], {"option": 0}]
    used = sorted({spell["option"] for spell in on} - {None})
    for row, option in zip(rows, used, strict=True):
        found = row[22:].ljust(len(told["quarters"]))
        for sign, quarter in zip(found, told["quarters"], strict=True):
            level = quarter["levels"][option][0]
            edges = (0.0, 1.0, 2.4, 5.0, 10.0, 20.0)
            assert sign == signs[sum(level >= edge for edge in edges) - 1]


def test_a_sky_that_was_not_told_is_tried_both_ways(printed):
    text = printed("day", "--distance", "30yd", *LINE[2:], "--from", "16:00", "--to", "16:30")
    assert re.findall(r"2026, ([a-z ]+) sky,", text) == ["bright overcast", "clear"]


@pytest.mark.parametrize(
    ("typed", "named"),
    [("blue sky", ["clear"]), ("grey", ["dull overcast"]), ("not sure", ["bright overcast", "clear"])],
)
def test_a_sky_is_named_as_the_tool_has_it_however_it_was_typed(printed, typed, named):
    text = printed(*LINE, "--from", "16:00", "--to", "16:15", "--sky", typed)
    assert re.findall(r"2026, ([a-z ]+) sky,", text) == named


def test_a_sky_that_there_is_none_of_is_told_though_the_place_is_known(capsys):
    assert main([*AFTERNOON, "--sky", "plaid"]) == 2
    assert "sky: 'plaid' will not do" in capsys.readouterr().err


def test_a_drawing(printed, tmp_path):
    file = tmp_path / "day.svg"
    said = printed(*AFTERNOON, "--sky", "clear", "-o", str(file))
    assert (
        said
        == f"{file}: The day: how well each tip is seen by the hour, on each water behind it\n"
    )
    words = "".join(ElementTree.parse(file).getroot().itertext())  # noqa: S314 - our own
    for one in ("sun lane", "as it is, on bright", "kept in view", "14:00"):
        assert one in words


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("--date", "tomorrow"), "--date: 'tomorrow' will not do; say a day, and the zone"),
        (("--date", "2026-10-15 Europe/Nowhere"), "say a day, and the zone"),
        (("--place", "here"), "--place: 'here' will not do; say latitude and longitude"),
        (("--facing", "upstream"), "--facing: 'upstream' will not do; say a point of the compass"),
        (("--from", "noon"), "--from: 'noon' will not do; say a time of day"),
        (("--to", "06:00", "--from", "12:00"), "it begins at 12:00: end later"),
        (("--date", "2026-12-21 UTC", "--place", "89 N 0 E"), "12 deg and more below level"),
        (("--distance", "40"), "distance"),
        (("--age", "nan"), "age"),
    ],
)
def test_what_is_refused(change, says, capsys):
    line = [*LINE]
    for name, value in zip(change[::2], change[1::2], strict=True):
        line += [name, value]
    assert main(line) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert says in err
    assert "Traceback" not in err


def test_all_that_lacks_is_told_at_once(capsys):
    assert main(["day", "demo"]) == 2
    assert capsys.readouterr().err.splitlines() == [
        "--place: say where on earth (for example --place '52.1 N 1.5 W')",
        "--facing: say which way you look (for example --facing SW)",
    ]


def test_a_place_of_the_question_that_is_none(capsys):
    assert main(["day", "demo", "--at", "here", "--facing", "SW"]) == 2
    assert capsys.readouterr().err.startswith("at: 'here' ")


def test_place_and_facing_of_the_question_serve(printed):
    own = printed("day", "demo", "--at", "52.1 N 1.5 W", "--looking", "SW", *LINE[2:4],
                  "--from", "17:00", "--to", "17:15")  # fmt: skip
    assert own == printed(*LINE, "--from", "17:00", "--to", "17:15")
