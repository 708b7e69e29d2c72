"""The day on the page: drawn and said as the command does, worked out once, and never for long."""

import html
import re
from datetime import date

import pytest

from tipsight.box import keeping, recorded
from tipsight.errors import Mistakes
from tipsight.hours import skies
from tipsight.inputs.question import Question
from webui import create_app, day_page

SWIM = "distance=34+yd&behind=bright&sky=clear"
ASKED = f"{SWIM}&day=2026-10-15+Europe/London&place=52.1+N+1.5+W&facing=south-west&from=12:00&to=12:30"


def text(reply):
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", reply.text)).split())


@pytest.fixture(scope="module")
def client():
    return create_app(Question(distance="34 yd", behind="bright")).test_client()


def test_a_day_is_drawn_and_said_and_worked_out_once(client, rules, monkeypatch):
    done = []
    real = skies.under_skies

    def count(*told):
        done.append(told)
        return real(*told)

    monkeypatch.setattr(skies, "under_skies", count)
    reply = client.get(f"/day?{ASKED}")
    assert reply.status_code == 200
    rules(reply.text)
    assert '<svg xmlns="http://www.w3.org/2000/svg"' in reply.text
    assert "15 October 2026, clear sky" in text(reply)
    assert "34 yd off, looking SW; the sun is up all the while." in text(reply)
    assert "At the bank" in text(reply)
    assert client.get(f"/day?{ASKED}").text == reply.text
    assert len(done) == 1
    (question, (day, zone), place, looking, hours, _) = done[0]
    assert (question.distance, f"{day}", f"{zone}", place, looking) == (
        "34 yd", "2026-10-15", "Europe/London", (52.1, -1.5), 225.0,
    )  # fmt: skip
    assert [f"{one:%H:%M}" for one in hours] == ["12:00", "12:30"]
    assert client.get(f"/?{SWIM}").text.count('href="/day?') == 1


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        (("2026-10-15+Europe/London", "frog"), "'frog' will not do; say a day, and the zone if"),
        (("52.1+N+1.5+W", ""), "say latitude and longitude in degrees (for example 52.1 N 1.5 W)"),
        (("south-west", "up"), "'up' will not do; say a point of the compass, or degrees from north"),
        (("12:30", "25:00"), "'25:00' will not do; say a time of day (for example 17:30)"),
        (("12:30", "11:00"), "it begins at 12:00: end later"),
        (("2026-10-15+Europe/London&place=52.1+N", "2026-12-21+UTC&place=89+N"), "12 deg and more below"),
        (("distance=34+yd", "distance=frog"), "'frog' will not do"),
    ],
)
def test_what_cannot_be_read_is_told_at_its_field_and_kept(client, changed, said):
    reply = client.get(f"/day?{ASKED.replace(*changed)}")
    assert reply.status_code == 422
    assert said in text(reply)
    assert 'name="from"' in reply.text
    assert 'value="12:00"' in reply.text


def test_an_end_before_the_beginning_is_told_at_the_end(client):
    reply = client.get(f"/day?{ASKED.replace('to=12:30', 'to=11:00')}")
    assert re.findall(r'class="wrong" id="([^"]+)"', reply.text) == ["to-m"]


def test_today_and_whose_eyes_are_taken_where_nothing_else_is_told(tmp_path, monkeypatch):
    path = tmp_path / "my.box"
    counts = {f"{n}": [far] for n, far in enumerate((8, 11, 14, 8, 10, 12), 1)}
    card = {"counts": counts, "pace_m": 0.85, "step": "measured", "ruler_mm": 100.0, "age": "60"}
    with keeping.opened(path, "write") as box:
        recorded.add(box, recorded.Reading("card", "Ada", date(2026, 10, 3), "1", card))
    asked = []

    def only_asked(*told):
        asked.append(told)
        raise Mistakes([])

    monkeypatch.setattr(skies, "under_skies", only_asked)
    monkeypatch.setattr(day_page, "today", lambda: date(2026, 10, 4))
    client = create_app(Question(distance="34 yd"), box=path).test_client()
    here = f"/day?{SWIM}&day=&place=52.1+N+1.5+W&facing=south-west"
    client.get(here)
    client.get(f"{here}&who=Ada")
    assert [told[1] for told in asked] == [(date(2026, 10, 4), None)] * 2
    assert [told[4] for told in asked] == [(None, None)] * 2
    usual, hers = (told[0].learnt.of("own_eye") for told in asked)
    assert (usual, hers.bars) == (None, 6)


def test_each_sky_is_drawn_and_told_in_the_units_of_the_page(client):
    """34 yd are 31.1 m."""
    asked = ASKED.replace("&sky=clear", "").replace("to=12:30", "to=12:15")
    reply = client.get(f"/day?{asked}&far=m")
    drawn = re.search(r'<svg xmlns="http://www.w3.org/2000/svg".*?</svg>', reply.text, re.DOTALL)[0]
    for sky in ("bright overcast sky", "clear sky"):
        assert f">15 October 2026, {sky}<" in drawn
        assert f"15 October 2026, {sky}, 31 m off, looking SW" in text(reply)


def test_place_and_facing_are_taken_from_the_question(client, rules):
    reply = client.get(f"/day?{SWIM}&at=52.1+N+1.5+W&looking=SW")
    rules(reply.text)
    assert 'value="52.1 N 1.5 W"' in reply.text
    assert 'value="SW"' in reply.text


def test_one_day_at_a_time_and_none_for_long(client, monkeypatch):
    asked = ASKED.replace("34+yd", "33+yd")
    with day_page._ONE:
        reply = client.get(f"/day?{asked}")
    assert (reply.status_code, "another day is being worked out" in text(reply)) == (503, True)
    monkeypatch.setattr(day_page, "MOST_S", -1.0)
    reply = client.get(f"/day?{asked}")
    assert (reply.status_code, "this swim takes too long here: ask for fewer hours" in text(reply)) == (
        422,
        True,
    )
    assert not day_page._ONE.locked()
