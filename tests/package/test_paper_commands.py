"""The commands that make files: sheet, card, view, pocket."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from tipsight.cli import main
from tipsight.commands import pocket as commands_pocket
from tipsight.commands import writing
from tipsight.paper import cards, pocket, sheet, wall
from tipsight.paper.cells import Cell
from tipsight.pictures import view

CELL = Cell(20.0, "easy")


def ran(capsys, *arguments):
    code = main(list(arguments))
    told = capsys.readouterr()
    return code, told.out, told.err


@pytest.mark.parametrize(
    ("arguments", "start"),
    [
        (["sheet"], b"%PDF-"),
        (["sheet", "dusk", "--paper", "letter"], b"%PDF-"),
        (["card", "shotting"], b"%PDF-"),
        (["card", "wall", "dusk"], b"%PDF-"),
        (["card", "fence", "--paper", "letter"], b"%PDF-"),
        (["view"], b"\x89PNG"),
        (["view", "dusk", "--eyes", "told", "--ripple", "3"], b"\x89PNG"),
        (["view", "--svg", "tip"], b"<svg"),
        (["view", "--svg", "sunk"], b"<svg"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_a_file_is_written_and_told_of(capsys, tmp_path, arguments, start):
    out = tmp_path / "out"
    code, said, wrong = ran(capsys, *arguments, "-o", str(out))
    assert (code, wrong) == (0, "")
    assert said.startswith(f"{out}: ")
    assert out.read_bytes().startswith(start)


def test_short_options_take_a_value_behind_an_equals_sign(capsys, tmp_path):
    out = tmp_path / "out.svg"
    assert ran(capsys, "view", "--svg", "tip", f"-o={out}")[0] == 0
    assert out.exists()


def test_the_view_is_of_the_eyes_and_the_ripple_that_were_asked_for(capsys, tmp_path, monkeypatch):
    asked = []
    monkeypatch.setattr(view, "png", lambda _answer, *how: asked.append(how) or b"")
    for how in ((), ("--eyes", "good", "--ripple", "3")):
        assert ran(capsys, "view", *how, "-o", str(tmp_path / "out"))[0] == 0
    assert [how[:2] for how in asked] == [("told", 0), ("good", 3)]


def test_the_card_is_the_one_that_was_asked_for(capsys, tmp_path, monkeypatch):
    for module, name in ((cards, "shotting"), (cards, "bank"), (wall, "pdf")):
        monkeypatch.setattr(module, name, lambda *_, name=name: name.encode())
    out = tmp_path / "out"
    for card, written in (("shotting", b"shotting"), ("bank", b"bank"), ("wall", b"pdf")):
        assert ran(capsys, "card", card, "-o", str(out))[0] == 0
        assert out.read_bytes() == written


def test_the_sheet_is_of_the_paper_that_was_asked_for(capsys, tmp_path, monkeypatch):
    asked = []
    monkeypatch.setattr(sheet, "pdf", lambda _answer, *how: asked.append(how) or b"")
    for how in ((), ("--paper", "letter")):
        assert ran(capsys, "sheet", *how, "-o", str(tmp_path / "out"))[0] == 0
    assert asked == [("a4",), ("letter",)]


def test_the_pocket_file_is_written(capsys, tmp_path, monkeypatch):
    monkeypatch.setattr(commands_pocket, "ProcessPoolExecutor", lambda _: ThreadPoolExecutor(1))
    monkeypatch.setattr(pocket, "column", lambda _, yards, *__: dict.fromkeys(yards, CELL))
    out = tmp_path / "float.html"
    code, said, _ = ran(capsys, "pocket", "demo", "-o", str(out))
    assert code == 0
    assert "needs no network" in said
    assert out.read_text(encoding="utf-8").startswith("<!doctype html>")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["sheet", "--paper", "a5"], "--paper: 'a5' will not do; say a4 or letter"),
        (["card", "beer"], "'beer' will not do; say shotting or bank or wall"),
        (["view", "--eyes", "mine"], "'mine' will not do; say good or told"),
        (["view", "--svg", "boat"], "'boat' will not do; say tip or float or shot or sunk"),
        (["sheet", "-o", "/no/such/folder/tip.pdf"], "there is no such folder"),
        (["sheet", "--distance", "40"], "distance: "),
        (["view", "nothere.toml"], "there is no such file"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_what_is_wrong_is_told_plainly(capsys, arguments, words):
    code, said, wrong = ran(capsys, *arguments)
    assert (code, said) == (2, "")
    assert words in wrong
    assert "Traceback" not in wrong


@pytest.mark.parametrize(
    ("name", "words"), [(".", "this is a folder; name a file"), ("x\0y", "it cannot be written")]
)
def test_where_it_cannot_be_written(tmp_path, monkeypatch, name, words):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(ValueError, match=words):
        writing.write(name, b"", "")


def test_long_work_says_how_far_it_has_come(capsys, monkeypatch):
    now = [0.0]
    monkeypatch.setattr(writing.time, "monotonic", lambda: now[0])
    tell = writing.progress("answers")
    for done, at in ((1, 1.0), (2, 2.5), (3, 3.0), (4, 5.0), (5, 5.1)):
        now[0] = at
        tell(done, 5)
    assert capsys.readouterr().err.splitlines() == [
        "2 of 5 answers", "4 of 5 answers", "5 of 5 answers",
    ]  # fmt: skip
