"""``tipsight box``: floats put in, looked at, changed, dropped and brought back, by the command alone."""

import json
import re

import click
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


def test_a_new_tip_leaves_what_it_takes_to_the_tip_before(run):
    run("put", AVON, "--seasons", "3")
    said = run("change", "1", "4 mm cane 30 mm black")
    assert "\n  weighed tip: 3 mm quill, was not told\n" in said
    assert "\n  takes showing: 20 mm, was not told\n" in said
    assert "\n  seasons: not told, was 3\n" in said
    assert (
        "What is new of seasons, weighed tip, takes showing and weighed wet follows from it; to mend"
        in (" ".join(said.split()))
    )
    run("put", "wire stick, 4 No 4, 4 mm solid 8 mm black")
    assert run("change", "2", "5 mm cane", "--told-wrong").count(", was ") == 2


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


def test_words_from_right_to_left_do_not_turn_the_rest_of_the_line(run):
    """An isolate about them (Unicode Standard Annex 9) ends whatever order they began."""
    run("put", AVON, "--lies", "שלום", "--note", "a \u202e b")
    run("put", AVON, "--lies", "Åland 🎣")
    first, second = run("list").split("\n2  ")
    assert "\u2068שלום\u2069; \u2068a \u202e b\u2069" in first
    assert "\u2068" not in second
    assert "\n  lies in   \u2068שלום\u2069\n" in run("show", "1")
    assert json.loads(run("list", "שלום", "--json"))["floats"][0]["lies"] == "שלום"


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


TABLE = """alike;pattern;takes;paint;note
12;quill avon;6BB;fluorescent orange;'=mine
2;wire stick;4 No 4;black;
"""


@pytest.fixture
def typed(tmp_path):
    path = tmp_path / "floats.csv"
    path.write_text(TABLE, encoding="utf-8")
    return path


def test_a_table_out_and_in_again_is_the_same_box(run, typed, tmp_path):
    assert run("take-in", str(typed)) == "Taken in: 2 kinds, 14 floats.\n"
    out, other = tmp_path / "out.csv", tmp_path / "other.box"
    assert run("write-out", str(out)) == f"{out}: 2 kinds, 14 floats\n"
    assert "'=mine" in out.read_text("utf-8-sig")
    run("take-in", str(out), box=other)
    assert json.loads(run("list", "--json", box=other)) == json.loads(run("list", "--json"))
    assert json.loads(run("list", "--json"))["floats"][0]["note"] == "=mine"
    assert run("take-in", str(out)) == "Taken in: 0 floats.\nTwo as they were.\n"
    before = out.read_bytes()
    assert "this file is there already; name another, or say --over" in run("write-out", str(out))
    run("drop", "1")
    assert out.read_bytes() == before
    assert run("write-out", str(out), "--over") == f"{out}: 2 floats\n"
    box = tmp_path / "my.box"
    assert "this is the box itself; name another file" in run("write-out", str(box), "--over")
    assert "it cannot be written there" in run("write-out", str(tmp_path / "none" / "out.csv"))


def test_nothing_is_taken_in_until_all_is_right(run, typed, tmp_path):
    typed.write_text(TABLE.replace("black", "mauve"), encoding="utf-8")
    assert run("take-in", str(typed)).startswith("row 3, paint: 'mauve' will not do; say paints")
    assert not (tmp_path / "my.box").exists()
    said = run("take-in", str(typed), "--good-rows")
    assert said.startswith(
        "Taken in: 12 floats.\nNot taken in:\n  row 3, paint: 'mauve' will not do;"
    )
    assert "there is no such file" in run("take-in", str(tmp_path / "none.csv"))
    assert "this is a folder, not a file" in run("take-in", str(tmp_path))
    typed.with_name("tabs.csv").write_bytes(b"\xff")
    assert "this is not text in UTF-8" in run("take-in", str(typed.with_name("tabs.csv")))


def test_rows_told_twice_are_asked_about(run, typed, monkeypatch):
    run("take-in", str(typed))
    monkeypatch.setattr("sys.stdin.isatty", lambda: False)
    assert run("take-in", str(typed)).splitlines() == [
        "row 2: it tells of float 1",
        "row 3: it tells of float 2",
        "--twice: nothing was taken in; say what is done with these rows, skip, more, change or own (for "
        "example tipsight box take-in floats.csv --twice skip)",
    ]
    assert run("take-in", str(typed), "--twice", "more").endswith(
        "Floats 1 and 2: counted as more of it.\n"
    )
    assert "12 of them" not in run("list", "avon")
    assert "24 of them" in run("list", "avon")
    assert run("take-in", str(typed), "--twice", "skip").endswith("Left out: rows 2 and 3.\n")
    assert run("take-in", str(typed), "--twice", "change").endswith("Floats 1 and 2: told anew.\n")
    monkeypatch.setattr("sys.stdin.isatty", lambda: True)
    answers = iter(["perhaps", "own"])
    monkeypatch.setattr("click.prompt", lambda *_, **__: next(answers))
    monkeypatch.setattr("click.echo", lambda *_, **__: None)
    assert run("take-in", str(typed)) == "Taken in: 2 kinds, 14 floats.\n"

    def broken_off(*_, **__):
        raise click.Abort

    monkeypatch.setattr("click.prompt", broken_off)
    assert "it was broken off; nothing was taken in" in run("take-in", str(typed))


def test_two_rows_alike_in_one_table(run, typed):
    typed.write_text(TABLE + TABLE.splitlines()[1] + "\n", encoding="utf-8")
    assert run("take-in", str(typed)).startswith(
        "row 4: it tells what a row before does\n--twice: "
    )


def test_an_empty_table_has_the_columns(tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("TIPSIGHT_BOX", str(tmp_path / "none.box"))
    out = tmp_path / "empty.csv"
    assert cli.main(["box", "write-out", str(out)]) == 0
    assert capsys.readouterr().out.endswith("empty.csv: 0 floats\n")
    assert out.read_text("utf-8-sig").startswith(
        "number,alike,lies,made,fished,note,pattern,takes,"
    )
    assert not (tmp_path / "none.box").exists()


def test_the_invented_box_and_a_copy_of_it(run, tmp_path, monkeypatch, capsys):
    assert run("demo").endswith("my.box: 93 kinds, 240 floats, all invented\n")
    assert "there are floats in it; name another file for the invented ones" in run("demo")
    copy = tmp_path / "copy.box"
    assert run("copy", str(copy)) == f"{copy}: 93 kinds, 240 floats\n"
    assert run("list", box=copy) == run("list")
    monkeypatch.setenv("TIPSIGHT_BOX", str(tmp_path / "mine.box"))
    assert cli.main(["box", "demo"]) == 2
    assert "so that your own box stays your own" in capsys.readouterr().err
    assert not (tmp_path / "mine.box").exists()
