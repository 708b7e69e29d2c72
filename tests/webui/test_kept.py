"""What is kept: what was asked last, within a number and a size, each worked out once."""

import threading

import pytest

from tipsight.advice.advise import advise
from tipsight.inputs import demo
from webui import app
from webui.kept import Kept


def counted(**bounds):
    """A function that keeps, and the list of what it was asked to make."""
    made = []

    def make(key):
        made.append(key)
        return key * 10

    return Kept(
        make, **{"most": 3, "most_bytes": 100, "size": lambda value: value, **bounds}
    ), made


def test_the_last_asked_stay_and_the_number_is_never_passed():
    kept, made = counted()
    for key in (1, 2, 3, 1, 4):  # 2 was asked for longest ago
        kept(key)
    assert made == [1, 2, 3, 4]
    assert (len(kept), kept.bytes) == (3, 80)
    assert [kept(key) for key in (1, 3, 4)] == [10, 30, 40]
    assert made == [1, 2, 3, 4]
    kept(2)
    assert made == [1, 2, 3, 4, 2]


def test_the_size_is_never_passed():
    kept, made = counted(most=50)
    for key in (4, 5, 1):  # 40 + 50 + 10 bytes just fit
        kept(key)
    assert (len(kept), kept.bytes) == (3, 100)
    kept(3)
    assert (len(kept), kept.bytes) == (3, 90)
    kept(4)
    assert made == [4, 5, 1, 3, 4]


def test_what_is_larger_than_all_is_given_and_not_kept():
    kept, made = counted()
    assert kept(11) == 110
    assert (len(kept), kept.bytes) == (0, 0)
    assert kept(11) == 110
    assert made == [11, 11]


def test_a_failure_is_told_and_not_kept():
    asked = []

    def fails(key):
        asked.append(key)
        raise ValueError(f"no {key}")

    kept = Kept(fails, most=3, most_bytes=100, size=len)
    for _ in range(2):
        with pytest.raises(ValueError, match="no frog"):
            kept("frog")
    assert (asked, len(kept)) == (["frog", "frog"], 0)


def test_many_who_ask_the_same_at_once_cost_one():
    made, begun, go = [], threading.Event(), threading.Event()

    def slow(key):
        made.append(key)
        begun.set()
        assert go.wait(10)
        return key

    kept = Kept(slow, most=3, most_bytes=100, size=lambda _: 1)
    got = []
    people = [threading.Thread(target=lambda: got.append(kept("one"))) for _ in range(5)]
    for person in people:
        person.start()
    assert begun.wait(10)
    go.set()
    for person in people:
        person.join(10)
    assert (made, got) == (["one"], ["one"] * 5)


def test_a_page_is_written_once_and_again_for_another_host_question_or_unit(monkeypatch):
    """What hangs on the address that was asked, such as the link of the answer, is its own."""
    written = []
    plain = app._page
    monkeypatch.setattr(app, "_page", lambda *a, **k: written.append(1) or plain(*a, **k))
    answer = advise(demo.question())
    client = app.create_app(advise=lambda _: answer).test_client()
    first, again = (client.get("/?distance=40+yd").text for _ in range(2))
    assert (first == again, len(written)) == (True, 1)
    other = client.get("/?distance=40+yd", base_url="http://127.0.0.1:8000").text
    assert "http://127.0.0.1:8000/?distance" in other
    assert "http://localhost/?distance" in first
    metres = client.get("/?distance=40+yd&far=m").text
    assert metres != first
    assert len(written) == 3
    part = client.get("/?distance=40+yd", headers={"X-Fragment": "1"}).text
    assert "<html" not in part
    assert client.get("/?distance=40+yd").text == first
