"""A season's table: a row each, gone on with where it was broken off, and no other season's."""

import csv
import io
import json
from pathlib import Path

import pytest

from tipsight import tables
from tipsight.advice.advise import advise
from tipsight.cli import main
from tipsight.errors import Mistakes
from tipsight.inputs.question import Question
from tipsight.season import sweep_table
from tipsight.season.swims import Fished

EASY = Question(behind=("dark",), takes="6BB", paint="white", tips=("quill 3",), paints=("white",))
SWIMS = tuple(
    Fished(f"peg {yards}, left", yards / 10, EASY.with_options(distance=f"{yards} yd"))
    for yards in (10, 14, 18)
)


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("sweep") / "all.csv"
    assert list(sweep_table.write(path, SWIMS)) == [(0, 3), (1, 3), (2, 3), (3, 3)]
    return path.read_bytes()


def test_a_row_for_each_swim(whole: bytes) -> None:
    found = list(csv.DictReader(io.StringIO(whole.decode(), newline="")))
    assert [row["swim"] for row in found] == ["peg 10, left", "peg 14, left", "peg 18, left"]
    assert [float(row["often"]) for row in found] == [1.0, 1.4, 1.8]
    answer = advise(SWIMS[1].question).row()
    assert float(found[1]["tip_in_hand_level"]) == answer["tip_in_hand_level"]
    assert set(found[1]) == {*sweep_table.KEYS, *answer}
    assert found[1]["tip_in_hand_passes"] in ("yes", "no")


def test_broken_off_anywhere_it_ends_the_same(whole: bytes, tmp_path: Path) -> None:
    """In the first line, just behind it, in the middle of a row, at its end, in a line end."""
    first = whole.index(b"\r\n") + 2
    second = whole.index(b"\r\n", first) + 2
    for cut in (0, 3, first, first + 40, second, second + 200, len(whole) - 1, len(whole)):
        path = tmp_path / f"{cut}.csv"
        path.write_bytes(whole[:cut])
        told = list(sweep_table.write(path, SWIMS))
        assert path.read_bytes() == whole, cut
        assert told[0] == (whole[:cut].count(b"\r\n") - 1 if cut >= first else 0, 3)


@pytest.mark.parametrize("other", [b"\xff\xfe", b"a,b\r\n1,2\r\n", b"swim,often,asked\r\nx\r\n", b"notes"])
def test_another_file_is_left_alone(other: bytes, tmp_path: Path) -> None:
    path = tmp_path / "other.csv"
    path.write_bytes(other)
    with pytest.raises(Mistakes, match="this table is of another season"):
        list(sweep_table.write(path, SWIMS))
    assert path.read_bytes() == other


def test_another_season_and_other_tables_are_noticed(whole: bytes, tmp_path: Path) -> None:
    path = tmp_path / "all.csv"
    path.write_bytes(whole)
    with pytest.raises(Mistakes, match="this table is of another season"):
        sweep_table.begun(path, SWIMS[::-1])
    with pytest.raises(Mistakes, match="this table is of another season"):
        sweep_table.begun(path, SWIMS[:2])
    own = "name,mass_g,group,source\nBB,0.5,shot,weighed\n"
    for folder in ("mine", "moved"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "shot.csv").write_text(own, encoding="utf-8")
    before = sweep_table.mark(SWIMS[0])
    with tables.using(tmp_path / "mine"):
        assert sweep_table.mark(SWIMS[0]) != before
        mine = sweep_table.mark(SWIMS[0])
    with tables.using(tmp_path / "moved"):
        assert sweep_table.mark(SWIMS[0]) == mine  # read again they are the same


FILE = """
[all.have]
tips = ["quill 3"]
paints = ["white"]
[[swim]]
name = "peg"
place.distance = "12 yd"
"""


def test_the_command_writes_it_on_two_cores(tmp_path: Path, capsys) -> None:
    season, out = tmp_path / "mine.toml", tmp_path / "t.csv"
    season.write_text(FILE, encoding="utf-8")
    assert main(["sweep", str(season), "-o", str(out), "--cores", "2"]) == 0
    assert capsys.readouterr().out == f"{out}: 1 swims, a row each\n"
    assert main(["sweep", str(season), "--json", "--cores", "1"]) == 0
    rows = json.loads(capsys.readouterr().out)["sweep"]
    assert (rows[0]["swim"], round(rows[0]["range_m"], 2)) == ("peg", 10.97)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["sweep"], "--out: say which file to write"),
        (["sweep", "-o", "no/such/t.csv"], "there is no such folder"),
        (["sweep", "nothing.toml", "-o", "t.csv"], "there is no such file"),
        (["sweep", "--cores", "0", "-o", "t.csv"], "say a whole number, 1 to 1024"),
        (["box", "gaps", "--box", "none.box"], "there is no box yet; put a float in first"),
        (["box", "make", "13"], "say a whole number, 1 to 12"),
        (["box", "sell"], "say put, list, show"),
        (["box", "carry", "--swims", "none.toml"], "there is no box yet"),
    ],
)
def test_what_will_not_do_on_the_line(arguments: list[str], said: str, capsys, tmp_path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(arguments) == 2
    told = capsys.readouterr()
    assert said in told.err
    assert told.out == ""
