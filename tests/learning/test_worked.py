"""What was worked out is kept by all that it hangs on, and may be thrown away: answers stay the same."""

import json
import shlex
import sqlite3
from contextlib import closing

import numpy as np
import pytest

from tipsight import tables
from tipsight.box import keeping, worked_out
from tipsight.cli import main
from tipsight.learning import boiling, home_water, river, worked

SWIM = "--distance 34yd --behind bright --looks fur --showing '12 mm' --paint black"


@pytest.fixture
def box(tmp_path, monkeypatch):
    path = tmp_path / "my.box"
    monkeypatch.setenv("TIPSIGHT_BOX", str(path))
    monkeypatch.setattr(worked, "HERE", {})
    return path


@pytest.fixture
def tell(box, capsys):
    def go(line):
        assert main(shlex.split(line)) == 0
        return capsys.readouterr().out

    return go


@pytest.fixture
def counted(monkeypatch):
    """How often a note and a count are worked out."""
    done = {"notes": 0, "counts": 0}
    nodes, curve = river.nodes, boiling.curve

    def note(*told):
        done["notes"] += 1
        return nodes(*told)

    def count(*told):
        done["counts"] += 1
        return curve(*told)

    monkeypatch.setattr(river, "nodes", note)
    monkeypatch.setattr(boiling, "curve", count)
    return done


def taken(said):
    return {one["item"]: one["taken"] for one in json.loads(said)["assumed"]}


def forget(box):
    """Leave nothing that was worked out, neither here nor in the box."""
    worked.HERE.clear()
    with closing(sqlite3.connect(box)) as one, one:
        one.execute("DELETE FROM worked_out")


def kept(box):
    with closing(sqlite3.connect(box)) as one:
        return one.execute("SELECT hangs_on, sums, length(numbers) FROM worked_out").fetchall()


def test_a_note_and_a_count_are_worked_out_once(box, tell, counted):
    tell(f"note {SWIM} --went 34yd --age 60")
    tell(f"note {SWIM} --followed 30yd --age 60")
    tell(f"water 'Mill run' {SWIM} --dips '3 in 2 min'")
    assert counted == {"notes": 2, "counts": 1}
    worked.HERE.clear()  # as in another process
    tell("eyes")
    tell("water 'Mill run'")
    said = tell(f"advise {SWIM} --water 'Mill run' --json")
    assert counted == {"notes": 2, "counts": 1}
    assert [length for _, _, length in kept(box)] == [
        8 * 2 * 13 * 9, 8 * 2 * 13 * 9, 8 * boiling.F.size
    ]  # fmt: skip
    forget(box)
    assert tell(f"advise {SWIM} --water 'Mill run' --json") == said
    assert counted == {"notes": 4, "counts": 2}


def test_an_age_told_otherwise_is_worked_out_anew_and_then_kept_too(tell, counted):
    tell(f"note {SWIM} --went 34yd --age 60")
    tell(f"advise {SWIM} --age 71")
    tell(f"advise {SWIM} --age 71")
    tell("eyes")
    assert counted["notes"] == 2


def test_a_box_that_may_not_be_written_is_worked_out_once_in_a_process(tell, counted, monkeypatch):
    tell(f"note {SWIM} --went 34yd --age 60")
    monkeypatch.setattr(worked_out, "recalled", lambda *_: {})
    monkeypatch.setattr(worked_out, "remember", lambda *_: None)
    worked.HERE.clear()
    tell("eyes")
    tell("eyes")
    assert counted["notes"] == 2


def test_numbers_of_other_sums_are_dropped_and_broken_ones_worked_out_anew(box, tell, counted):
    tell(f"note {SWIM} --went 34yd --age 60")
    said = tell("eyes")
    ((key, sums, _),) = kept(box)
    worked.HERE.clear()
    for broken in (b"", b"123", bytes(8 * 5), np.full(2 * 13 * 9, np.nan).tobytes()):
        with closing(sqlite3.connect(box)) as one, one:
            one.execute("UPDATE worked_out SET numbers = ?", (broken,))
        assert tell("eyes") == said
        worked.HERE.clear()
    assert counted["notes"] == 5
    with closing(sqlite3.connect(box)) as one, one:
        one.execute("UPDATE worked_out SET sums = 'of another tipsight'")
    assert tell("eyes") == said
    assert [(k, s) for k, s, _ in kept(box)] == [(key, sums)]


def test_only_so_many_are_kept(box, monkeypatch):
    monkeypatch.setattr(worked_out, "MOST", 3)
    with keeping.opened(box, "write") as one:
        for n in range(5):
            worked_out.remember(one, "now", {f"{n}": np.array([n, 0.5])})
        found = worked_out.recalled(one, "now")
    assert {key: list(numbers) for key, numbers in found.items()} == {
        "2": [2, 0.5], "3": [3, 0.5], "4": [4, 0.5]
    }  # fmt: skip


def test_it_hangs_on_own_tables_and_on_the_sums(tmp_path, monkeypatch):
    kept, made = {}, iter(range(9))

    def once():
        return worked.once(kept, lambda: np.array([float(next(made))]), (1,), "a reading")[0]

    assert [once(), once()] == [0.0, 0.0]
    (tmp_path / "shot.csv").write_text(
        (tables.PACKAGED / "shot.csv").read_text("utf-8"), encoding="utf-8"
    )
    with tables.using(tmp_path):
        assert [once(), once()] == [1.0, 1.0]
    monkeypatch.setattr(worked, "sums", lambda: "others")
    assert once() == 2.0


def test_any_file_of_the_sums_marks_them(monkeypatch):
    now = worked.sums()
    assert now == worked.sums.__wrapped__()
    monkeypatch.setattr(worked, "_SUMS", worked._SUMS[:-1])
    assert worked.sums.__wrapped__() != now


def test_the_library_keeps_within_the_process(monkeypatch, counted):
    from datetime import date

    from tipsight.box.recorded import Reading

    monkeypatch.setattr(worked, "HERE", {})
    asked = {"distance": "34 yd", "behind": ["bright"], "showing": "12 mm"}
    one = Reading("dips", "w", date(2026, 10, 3), "1", {"dips": 3, "minutes": 2, "question": asked}, 1)
    first, again = (home_water.home_water("w", [one], date(2026, 10, 3)) for _ in range(2))
    assert counted["counts"] == 1
    assert first.boils.told == again.boils.told
