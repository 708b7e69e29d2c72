"""Killed, full, read-only, two at once: what was in a box stays in it, and one line says what is wrong.

The long form: TIPSIGHT_KILLS=200 TIPSIGHT_WRITES=200.
"""

import os
import random
import shutil
import signal
import subprocess
import time
from contextlib import contextmanager
from datetime import date
from pathlib import Path

import pytest

from tipsight.box import copying, floats, keeping, taking
from tipsight.errors import Mistakes
from tipsight.inputs.entry import Entry, with_told
from tipsight.inputs.entry_table import Row

KILLS = int(os.environ.get("TIPSIGHT_KILLS", "20"))
WRITES = int(os.environ.get("TIPSIGHT_WRITES", "20"))
DAY = date(2026, 10, 3)
AVON = Entry({"pattern": "quill avon", "takes": "6BB"})
ROWS = 25

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="no processes of this kind here")


@pytest.fixture
def box(tmp_path):
    return tmp_path / "my.box"


def all_of(path):
    with keeping.opened(path) as one:
        return floats.listed(one)


def table(n):
    return [Row(at, None, with_told(AVON, {}, lies=f"round {n}, {at}")) for at in range(ROWS)]


def put(path, entry=AVON):
    with keeping.opened(path, "write") as one:
        return floats.put(one, entry, DAY)


@contextmanager
def child(work, *arguments):
    """Run some work in a process of its own; yield its number. It is killed at the end."""
    number = os.fork()
    if not number:
        try:
            work(*arguments)
        finally:
            os._exit(0 if work is not None else 1)
    try:
        yield number
    finally:
        os.kill(number, signal.SIGKILL)
        os.waitpid(number, 0)


def rounds(path, tell, start):
    """Take in a table, tell so, change all of it at once, tell so, without end."""
    for n in range(start, start + 1000):
        with keeping.opened(path, "write") as one:
            taking.take_in(one, table(n), DAY, "own")
        os.write(tell, b"t")
        with keeping.opened(path, "write") as one:
            for kept in floats.listed(one)[-ROWS:]:
                floats.change(one, kept.number, with_told(kept.entry, {}, alike=2), DAY)
        os.write(tell, b"c")


def test_one_killed_at_any_moment_leaves_the_old_or_the_new(box):
    dice, done = random.Random(1), 0  # noqa: S311
    begun = time.perf_counter()  # a loaded machine takes longer, and is killed as late
    with keeping.opened(box.with_name("tried.box"), "write") as one:
        taking.take_in(one, table(0), DAY, "own")
    span_s = max(0.08, 4.0 * (time.perf_counter() - begun))
    for kill in range(KILLS):
        mine, theirs = os.pipe()
        with child(rounds, box, theirs, 1000 * kill):
            time.sleep(dice.uniform(0.0, span_s))
        os.close(theirs)
        told = os.read(mine, 10_000)
        os.close(mine)
        if not box.exists():
            continue
        found = all_of(box)
        taken, rest = divmod(len(found), ROWS)
        assert rest == 0, "a table is in as a whole or not at all"
        assert done + told.count(b"t") <= taken <= done + told.count(b"t") + 1
        alike = [
            {kept.entry.alike for kept in found[n : n + ROWS]} for n in range(0, len(found), ROWS)
        ]
        assert all(one in ({1}, {2}) for one in alike), "and so is what was changed together"
        assert alike.count({2}) >= told.count(b"c")
        done = taken
    assert done > 0


def test_what_a_killed_writer_left_half_done_is_taken_back_by_one_who_only_reads(box):
    """The journal and the half-written file are as SQLite leaves them: both are kept and put back."""
    for n in range(80):
        put(box, with_told(AVON, {}, lies=f"tray {n}"))
    before, journal = all_of(box), box.with_name("my.box-journal")
    with keeping.opened(box, "write") as one:
        one.execute("PRAGMA cache_size = 1")  # so that pages go into the file before all is done
        taking.take_in(one, table(0) + table(1) + table(2), DAY, "own")
        left = [(path, path.read_bytes()) for path in (box, journal)]
    assert len(all_of(box)) == len(before) + 3 * ROWS
    for path, data in left:
        path.write_bytes(data)
    assert all_of(box) == before
    assert not journal.exists()


def adds(path, who, count):
    for n in range(count):
        put(path, with_told(AVON, {}, lies=f"{who} {n}"))


def test_two_who_write_at_once_are_both_in(box):
    numbers = []
    for who in ("one", "other"):
        if not (number := os.fork()):
            adds(box, who, WRITES)
            os._exit(0)
        numbers.append(number)
    assert [os.waitpid(number, 0)[1] for number in numbers] == [0, 0]
    there = {kept.entry.lies for kept in all_of(box)}
    assert there == {f"{who} {n}" for who in ("one", "other") for n in range(WRITES)}


@pytest.fixture
def small(tmp_path):
    """A disk of a few pages; root may have one."""
    place, mount = tmp_path / "disk", shutil.which("mount")
    place.mkdir()
    line = [f"{mount}", "-t", "tmpfs", "-o", "size=128k", "tmpfs", f"{place}"]
    if mount is None or subprocess.run(line, check=False, capture_output=True).returncode:  # noqa: S603
        pytest.skip("no disk may be mounted here")
    yield place
    subprocess.run([f"{shutil.which('umount')}", f"{place}"], check=True)  # noqa: S603


def fill_up(path):
    for n in range(1000):
        put(path, with_told(AVON, {}, note=f"{n} {'x' * 3000}"))


def test_a_full_disk(small):
    path = small / "my.box"
    with pytest.raises(Mistakes, match="the disk is full; nothing was changed"):
        fill_up(path)
    before = all_of(path)
    assert len(before) > 3
    for _ in range(2):
        with pytest.raises(Mistakes) as told:
            put(path, with_told(AVON, {}, note="x" * 4000))
        assert len(str(told.value).splitlines()) == 1
        assert all_of(path) == before
    with pytest.raises(Mistakes, match=r"copy: .* the disk is full; nothing was changed"):
        copying.copy(path, small / "copy.box")
    assert [one.name for one in small.iterdir()] == ["my.box"]
    path.rename(path.with_name("other.box"))
    shutil.copy(small / "other.box", small.parent / "rescued.box")
    assert all_of(small.parent / "rescued.box") == before


def test_a_disk_too_full_to_copy_an_older_box(small):
    path = Path(shutil.copy(Path(__file__).parent / "schema1.box", small / "old.box"))
    (small / "rest").write_bytes(b"x" * (128 * 1024 - path.stat().st_size - 8192))
    before = path.read_bytes()
    with pytest.raises(Mistakes, match="the disk is full; nothing was changed"):
        put(path)
    assert path.read_bytes() == before
    assert {one.name for one in small.iterdir()} == {"old.box", "rest"}


def test_a_folder_that_may_only_be_read_is_read(small):
    path = small / "my.box"
    kept = put(path)
    mount = f"{shutil.which('mount')}"
    subprocess.run([mount, "-o", "remount,ro", f"{small}"], check=True)  # noqa: S603
    assert all_of(path) == (kept,)
    with pytest.raises(Mistakes, match="nothing may be written there; name another"):
        put(path)
    with pytest.raises(Mistakes, match="it cannot be opened there"):
        put(small / "other.box")
    copying.copy(path, small.parent / "copy.box")
    assert all_of(small.parent / "copy.box") == (kept,)


def test_a_broken_off_change_where_nothing_may_be_written(small):
    path = small / "my.box"
    for n in range(40):
        put(path, with_told(AVON, {}, lies=f"tray {n}"))
    with keeping.opened(path, "write") as one:
        one.execute("PRAGMA cache_size = 1")
        taking.take_in(one, table(0) + table(1), DAY, "own")
        left = [(p, p.read_bytes()) for p in (path, small / "my.box-journal")]
    for one, data in left:
        one.write_bytes(data)
    subprocess.run([f"{shutil.which('mount')}", "-o", "remount,ro", f"{small}"], check=True)  # noqa: S603
    with pytest.raises(
        Mistakes, match="a change was broken off; copy it and its journal to where"
    ):
        all_of(path)
    for one, _ in left:
        shutil.copy(one, small.parent)
    assert len(all_of(small.parent / "my.box")) == 40


def test_two_who_bring_an_older_box_up_at_once_are_both_in(box):
    shutil.copy(Path(__file__).parent / "schema1.box", box)
    numbers = []
    for who in ("one", "other", "third"):
        if not (number := os.fork()):
            adds(box, who, 2)
            os._exit(0)
        numbers.append(number)
    assert [os.waitpid(number, 0)[1] for number in numbers] == [0, 0, 0]
    assert len(all_of(box)) == 6
    assert sorted(one.name for one in box.parent.iterdir()) == ["my.box", "my.box.schema1"]


def test_a_copy_is_whole_while_others_write(box):
    put(box)
    copy = box.with_name("copy.box")
    with child(rounds, box, os.open(os.devnull, os.O_WRONLY), 0):
        sizes = []
        for _ in range(12):
            time.sleep(0.01)
            copying.copy(box, copy)
            sizes.append(len(all_of(copy)))
    assert all(size % ROWS == 1 for size in sizes)
    assert sizes == sorted(sizes)
    assert sizes[-1] > 1
    assert {one.name for one in box.parent.iterdir()} <= {"my.box", "copy.box", "my.box-journal"}


def test_where_a_copy_may_not_go(box):
    put(box)
    other = box.with_name("words.txt")
    other.write_text("no box " * 100, encoding="utf-8")
    empty = box.with_name("empty")
    empty.touch()
    for to, says in (
        (box, "copy: .* this is the box itself; name another file"),
        (other, "copy: .* this is not a box; name another file"),
        (empty, "copy: .* this is not a box; name another file"),
        (box.parent / "none" / "copy.box", "copy: .* it cannot be opened there"),
    ):
        with pytest.raises(Mistakes, match=says):
            copying.copy(box, to)
    assert other.read_text("utf-8") == "no box " * 100
    assert {one.name for one in box.parent.iterdir()} == {"my.box", "words.txt", "empty"}


def test_a_copy_that_cannot_be_put_in_its_place(box, monkeypatch):
    put(box)

    def fails(*_):
        raise PermissionError

    monkeypatch.setattr(copying.Path, "replace", fails)
    with pytest.raises(Mistakes, match="it cannot be copied there"):
        copying.copy(box, box.with_name("copy.box"))
    assert [one.name for one in box.parent.iterdir()] == ["my.box"]


def test_nothing_of_a_float_is_ever_logged(box, caplog, capfd):
    caplog.set_level(0)
    put(box, with_told(AVON, {}, note="my secret swim"))
    all_of(box)
    assert caplog.text == ""
    assert capfd.readouterr() == ("", "")
