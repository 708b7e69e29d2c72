"""The file: nothing lost, nothing half kept, and one clear line for what is wrong with it."""

import errno
import os
import shutil
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from tipsight.box import floats, keeping, recorded
from tipsight.box.recorded import Reading
from tipsight.errors import Mistakes

DAY = date(2026, 10, 3)
ROOT = Path(__file__).parents[2]


def note(far, whose="me"):
    return Reading("note", whose, DAY, "1", {"range_m": far})


@pytest.fixture
def box(tmp_path):
    return tmp_path / "deep" / "my.box"


def all_of(path):
    with keeping.opened(path) as one:
        return recorded.listed(one)


def test_what_is_kept_comes_out_as_it_was_told(box):
    told = {"question": {"paint": "“röd” ‮ 🎣'", "behind": ["dark", "bright"]}, "range_m": 31.09}
    with keeping.opened(box, "write") as one:
        number = recorded.add(one, Reading("note", 'Åsa "the" O\'Neill', DAY, "1", told))
    (found,) = all_of(box)
    assert (found.number, found.whose, found.made_on) == (number, 'Åsa "the" O\'Neill', DAY)
    assert found.told == told
    assert not found.dropped


def test_a_dropped_reading_comes_back_as_often_as_one_likes(box):
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
    before = all_of(box)
    for _ in range(3):
        with keeping.opened(box, "write") as one:
            recorded.act(one, 1, "drop", DAY)
        assert [r.dropped for r in all_of(box)] == [True]
        with keeping.opened(box, "write") as one:
            recorded.act(one, 1, "back", DAY)
        assert all_of(box) == before


@pytest.mark.parametrize(
    ("number", "what", "says"),
    [
        (1, "back", "there is no such reading to bring back"),
        (9, "drop", "there is no such reading"),
    ],
)
def test_what_cannot_be_dropped_or_brought_back(box, number, what, says):
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
    with pytest.raises(Mistakes, match=says), keeping.opened(box, "write") as one:
        recorded.act(one, number, what, DAY)


def add_and_fail(path):
    with keeping.opened(path, "write") as one:
        recorded.add(one, note(40.0))
        raise RuntimeError


def fill(path, pages):
    with keeping.opened(path, "write") as one:
        one.execute(f"PRAGMA max_page_count = {pages}")
        for far in range(4000):
            recorded.add(one, note(float(far)))


def touch(path, how="write"):
    with keeping.opened(path, how):
        pass


def test_a_block_that_fails_keeps_nothing(box):
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
    with pytest.raises(RuntimeError):
        add_and_fail(box)
    assert [r.told["range_m"] for r in all_of(box)] == [30.0]


def test_the_last_question_stands_in_place_of_the_one_before(box):
    with keeping.opened(box, "write") as one:
        assert recorded.asked_last(one) is None
        recorded.keep_asked(one, {"age": "60"})
        recorded.keep_asked(one, {"age": "61"})
    with keeping.opened(box) as one:
        assert recorded.asked_last(one) == {"age": "61"}


WRITER = (
    "import sys; from datetime import date; from pathlib import Path\n"
    "from tipsight.box import keeping, recorded\n"
    "for n in range(int(sys.argv[2])):\n"
    "    with keeping.opened(Path(sys.argv[1]), 'write') as one:\n"
    "        for half in (0, 1):\n"
    "            told = {'n': n, 'half': half}\n"
    "            recorded.add(one, recorded.Reading('note', 'me', date(2026, 1, 1), '1', told))\n"
    "    print(n, flush=True)\n"
)


def writing(box, count):
    return subprocess.Popen(  # noqa: S603
        [sys.executable, "-c", WRITER, str(box), str(count)], cwd=ROOT, stdout=subprocess.PIPE
    )


def test_two_who_write_at_once_are_both_in(box):
    both = [writing(box, 40) for _ in range(2)]
    assert [one.communicate() and one.returncode for one in both] == [0, 0]
    assert len(all_of(box)) == 2 * 40 * 2


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="no kill -9 here")
def test_one_killed_while_writing_leaves_whole_pairs(box):
    """Each is killed after so many lines of its own, wherever in the next pair it then is."""
    done = 0
    for lines in (1, 2, 3, 5, 8):
        one = writing(box, 10_000)
        for _ in range(lines):
            one.stdout.readline()
        os.kill(one.pid, signal.SIGKILL)
        one.communicate()
        found = all_of(box)
        assert len(found) % 2 == 0
        assert len(found) >= done + 2 * lines
        done = len(found)


def test_what_is_no_box(tmp_path):
    words, other = tmp_path / "words", tmp_path / "other.sqlite"
    words.write_text("no database " * 200, encoding="utf-8")
    with sqlite3.connect(other) as one:
        one.execute("CREATE TABLE t (x)")
    one.close()
    for path in (words, other):
        before = path.read_bytes()
        for how in ("read", "write"):
            with pytest.raises(Mistakes, match="this is not a box; name another"):
                touch(path, how)
        assert path.read_bytes() == before


def test_a_newer_box_is_left_alone(box):
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
    raw = sqlite3.connect(box)
    raw.execute("PRAGMA user_version = 99")
    raw.close()
    with pytest.raises(Mistakes, match="a newer tipsight made this box"), keeping.opened(box):
        pass


@pytest.fixture(params=sorted(Path(__file__).parent.glob("schema*.box")), ids=lambda one: one.stem)
def older(request, tmp_path):
    """A box as an older tipsight left it, of each schema that ever was out."""
    return Path(shutil.copy(request.param, tmp_path / "old.box"))


def test_a_box_of_every_older_schema_is_read_as_it_stands_and_copied_before_it_grows(older):
    before, schema = older.read_bytes(), older_schema(older)
    assert schema < len(keeping.MIGRATIONS)
    found = all_of(older)
    assert [(r.told["range_m"], r.dropped) for r in found] == [(30.0, True), (31.0, False)]
    with keeping.opened(older) as one:
        assert len(floats.listed(one)) == (schema > 1)  # schema 1 had no floats
    assert older.read_bytes() == before
    touch(older, "write")
    assert all_of(older) == found
    assert older_schema(older) == len(keeping.MIGRATIONS)
    copy = older.with_name(f"old.box.schema{schema}")
    assert older_schema(copy) == schema
    assert all_of(copy) == found
    assert len(list(older.parent.iterdir())) == 2


def test_a_copy_of_an_older_box_never_goes_over_another(older):
    before, schema = all_of(older), older_schema(older)
    older.with_name(f"old.box.schema{schema}").write_text("mine", encoding="utf-8")
    touch(older, "write")
    assert older.with_name(f"old.box.schema{schema}").read_text("utf-8") == "mine"
    assert all_of(older.with_name(f"old.box.schema{schema}-1")) == before


def test_an_older_box_that_cannot_be_copied_stays_as_it_is(older, monkeypatch):
    before = older.read_bytes()
    for number, says in (
        (errno.ENOSPC, "the disk is full; nothing"),
        (errno.EACCES, "it cannot be copied there"),
    ):

        def fails(*_, number=number):
            raise OSError(number, "")

        monkeypatch.setattr(keeping.Path, "replace", fails)
        with pytest.raises(Mistakes, match=says):
            touch(older, "write")
    assert older.read_bytes() == before
    assert [one.name for one in older.parent.iterdir()] == ["old.box"]


def older_schema(path):
    with closing(sqlite3.connect(path)) as one:
        return one.execute("PRAGMA user_version").fetchone()[0]


def test_a_file_with_nothing_in_it_is_a_box_with_nothing_in_it(tmp_path):
    """As one killed before it first wrote leaves it."""
    empty = tmp_path / "empty.box"
    empty.touch()
    assert all_of(empty) == ()
    assert empty.read_bytes() == b""


def test_a_damaged_box(box):
    with keeping.opened(box, "write") as one:
        for far in range(400):
            recorded.add(one, note(float(far)))
    data = bytearray(box.read_bytes())
    data[4096 + 100 : 4096 * 6] = b"\xff" * (4096 * 5 - 100)
    box.write_bytes(bytes(data))
    with pytest.raises(Mistakes, match="this box is damaged; put the last"):
        all_of(box)


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may write everywhere")
def test_a_folder_that_may_only_be_read(box):
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
    box.chmod(0o444)
    box.parent.chmod(0o555)
    try:
        assert len(all_of(box)) == 1
        with pytest.raises(Mistakes, match="nothing may be written there"):
            touch(box)
    finally:
        box.parent.chmod(0o755)


def test_where_it_cannot_be(tmp_path):
    (tmp_path / "file").write_text("", encoding="utf-8")
    for path in (tmp_path / "file" / "my.box", tmp_path):
        with pytest.raises(Mistakes, match="it cannot be opened there"):
            touch(path)


def test_the_usual_place(monkeypatch, tmp_path):
    monkeypatch.setenv("TIPSIGHT_BOX", str(tmp_path / "mine"))
    assert keeping.place() == tmp_path / "mine"
    assert keeping.place("other.box") == Path("other.box")
    monkeypatch.delenv("TIPSIGHT_BOX")
    assert keeping.place().name == "box.sqlite"


def test_one_who_waits_too_long_is_told(box, monkeypatch):
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
        monkeypatch.setattr(keeping, "WAIT_S", 0.05)
        with pytest.raises(Mistakes, match="another program is writing to it; try again"):
            touch(box)
    assert len(all_of(box)) == 1


def test_the_disk_is_full(box):
    """SQLite's own limit on the file stands in for the disk: the error is the same."""
    with keeping.opened(box, "write") as one:
        recorded.add(one, note(30.0))
    with pytest.raises(Mistakes, match="the disk is full; nothing was changed"):
        fill(box, 8)
    assert len(all_of(box)) == 1


def test_any_other_failure(box):
    with (
        pytest.raises(Mistakes, match="it could not be read or written; nothing"),
        keeping.opened(box, "write") as one,
    ):
        one.execute("INSERT INTO reading (kind) VALUES ('odd')")
