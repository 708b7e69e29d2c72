"""``tipsight box``: floats put in, looked at, changed, dropped and brought back, by the command alone."""

import json
import re

import pytest

from tipsight import cli
from tipsight.commands.box import PARTS

AVON = "quill avon, 6BB, 3 mm quill 20 mm fluorescent orange, twelve of them"


@pytest.fixture
def run(capsys, tmp_path):
    """Run a line on a box; return its code and what it printed."""

    def go(*words, box=tmp_path / "my.box"):
        code = cli.main(["box", *words, "--box", str(box)])
        out, err = capsys.readouterr()
        assert bool(code) == bool(err)
        return out or err

    return go


def test_its_help_names_all_that_it_does(capsys):
    for words in ((), ("--help",), ("help",)):
        assert cli.main(["box", *words]) == 0
        out = capsys.readouterr().out
        for name, part in PARTS.items():
            assert re.search(rf"^  {name} +{re.escape(part.says)}$", out, re.MULTILINE)
    for name in PARTS:
        assert cli.main(["box", name, "--help"]) == 0
        assert f"Usage: tipsight box {name} " in capsys.readouterr().out
    assert cli.main(["box", "frop"]) == 2
    assert "tipsight box: 'frop' will not do; say put, list," in capsys.readouterr().err


def test_a_float_from_one_line_to_its_history(run):
    assert run("put", AVON) == (
        "Float 1: quill avon, 6BB, 3 mm quill, 20 mm showing, fluorescent orange; 12 of\nthem.\n"
    )
    said = run(
        "change", "1", "paint black, eleven of them", "--lies", "tray 3", "--fished", "today"
    )
    assert (
        "\n  paint: black, was fluorescent orange\n  how many: 11, was 12\n  lies in: tray 3, was not told\n"
        in said
    )
    assert run("list") == (
        "1  quill avon, 6BB, 3 mm quill, 20 mm showing, black; 11 of them; tray 3\n11 floats in all.\n"
    )
    assert "Float 1 dropped: quill avon" in run("drop", "1")
    assert run("list") == "There is no float in it.\n"
    assert "black; 11 of them; tray 3;\n   dropped\n" in run("list", "--dropped")
    assert "Float 1 brought back: quill avon" in run("back", "1")
    shown = run("show", "1")
    assert "Float 1, 11 alike\n" in shown
    assert re.search(r"\n  lies in      tray 3\n  last fished  \d{4}-\d\d-\d\d\n", shown)
    acts = re.findall(r"^  \d\d\.\d\d\.\d{4}  (\w+ ?\w+)", shown, re.MULTILINE)
    assert acts == ["brought back", "dropped", "changed", "put in"]
    assert "lies in: not told, was tray 3" in run("change", "1", "--lies", "not told")


def test_options_stand_on_top_of_the_line(run):
    said = run(
        "put",
        AVON,
        "--paint",
        "red",
        "--parts",
        "not told",
        "--alike",
        "2",
        "--note",
        "leaks\na bit",
    )
    assert (
        said
        == "Float 1: quill avon, 6BB, 3 mm quill, 20 mm showing, red; two of them.\n  note: leaks a bit\n"
    )
    assert (
        run("put", "--pattern", "wire stick", "--size", "8.5 mm")
        == "Float 2: wire stick, 8.5 mm body.\n"
    )
    assert "float 2" not in run("put", "wire stick", "--size", "8 mm")


def test_one_told_twice_is_told_so(run):
    run("put", AVON)
    assert "\n  told just so before: float 1. If they are the same, drop this one;" in run(
        "put", AVON
    )
    assert "before" not in run("put", AVON, "--lies", "tray 3")


def test_a_list_is_searched_and_printed_for_programs(run):
    run("put", AVON)
    run("put", "wire stick, 4 No 4, 4 mm solid 8 mm black, in the Åland tray, note: dear to me")
    assert run("list", "åland", "STICK").startswith("2  wire stick, 4 No 4")
    assert run("list", "dear stick").startswith("2  wire stick")
    run("put", AVON, "--note", "word " * 20)
    assert "word word ...\n" in " ".join(run("list", "word").split(" ")).replace("\n   ", " ")
    run("drop", "3")
    assert run("list", "bolo") == "No float has all of these words.\n"
    (found,) = json.loads(run("list", "avon", "--json"))["floats"]
    assert (found["number"], found["alike"], found["told"]["paint"]) == (
        1,
        12,
        "fluorescent orange",
    )
    form = json.loads(run("show", "1", "--json"))
    assert [one["act"] for one in form["was"]] == ["put"]
    assert run("change", "1", "--alike", "3", "--was", f"{form['float']['mark']}").startswith(
        "Float 1:"
    )
    stale = run("change", "1", "--alike", "4", "--was", f"{form['float']['mark']}")
    assert stale.startswith(
        "float 1: it was changed meanwhile; look at it and say again what you want"
    )


def test_what_will_not_do_is_told_in_a_line(run, tmp_path):
    assert "there is no box yet; put a float in first" in run("list")
    run("put", AVON)
    before = (tmp_path / "my.box").read_bytes()
    for words, says in (
        (("put", "quil avon"), "did you mean 'quill avon'?"),
        (("put",), "pattern: say which pattern it is"),
        (("change", "1"), "change: '1' will not do; say what is other than it was"),
        (("change", "7", "black"), "float 7: there is no such float"),
        (("drop",), "float: say the number of a float"),
        (("drop", "1", "7"), "float 7: there is no such float"),
        (("show", "x"), "number: 'x' will not do; say a whole number"),
    ):
        assert says in run(*words)
        assert (tmp_path / "my.box").read_bytes() == before
