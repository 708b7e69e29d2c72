"""Your eyes on the page: a card told, a note tapped, what each did, and that nothing typed is lost."""

import html
import re

import pytest

from tipsight.box import keeping, recorded
from tipsight.inputs import saw
from tipsight.inputs.question import Question
from webui import create_app

LAN = {"REMOTE_ADDR": "192.168.1.30"}
ADDRESS = "192.168.1.20"
OWN = Question(distance="34 yd", behind="bright", looks="fur", showing="30 mm", paint="black")
CARD = {"pace": "0.85 m", "age": "60", **{f"out{n}": f"{far}" for n, far in
        enumerate((17, 24, 32, 16, 22, 28), 1)}}  # fmt: skip


def text(reply):
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", reply.text)).split())


@pytest.fixture
def box(tmp_path):
    return tmp_path / "my.box"


@pytest.fixture
def client(box):
    return create_app(OWN, box=box).test_client()


def kept(box):
    if not box.exists():
        return []
    with keeping.opened(box) as one:
        return recorded.listed(one)


def token(client):
    return re.search('name="token" value="([^"]+)"', client.get("/eyes").text)[1]


def send(client, path, follow=True, **told):
    return client.post(path, data={"token": token(client), **told}, follow_redirects=follow)


def taken(client, query="distance=34+yd"):
    told = client.get(f"/advise.json?{query}").get_json()["assumed"]
    return {one["item"]: one["taken"] for one in told}


def test_a_card_is_kept_drawn_and_in_every_answer_at_once(client, box, rules):
    rules(client.get("/eyes").text)
    assert "nothing is known of them yet" in text(client.get("/eyes"))
    assert taken(client)["own_eye"] == "1"
    reply = send(client, "/eyes/card", **CARD)
    rules(reply.text)
    assert "Kept:" in reply.text
    assert "With that there is enough to say of your eyes: 0.92 times the usual" in text(reply)
    assert "Your eyes: 0.92 times what is usual at your age (" in text(reply)
    assert "1: 16 yd" in text(reply)  # 17 paces of 0.85 m are 15.8 yd
    (one,) = kept(box)
    assert one.told == {
        "counts": {"1": [17.0], "2": [24.0], "3": [32.0], "4": [16.0], "5": [22.0], "6": [28.0]},
        "pace_m": 0.85, "step": "measured", "ruler_mm": 100.0, "age": "60",
    }  # fmt: skip
    assert taken(client)["own_eye"] == "0.92, from 6 bars"
    assert "Not told, so taken as your eyes 0.92, from 6 bars; and as usual:" in text(
        client.get("/?distance=34+yd")
    )


def test_out_and_back_and_the_odd_bar_named(client, box):
    back = {f"back{n}": f"{far}" for n, far in enumerate((16, 23, 30, 15, 21, 27), 1)}
    reply = send(client, "/eyes/card", **{**CARD, **back, "out3": "9", "back3": ""})
    assert "fence card, 6 bars, out and back" in text(reply)
    assert "Bar 3 lies far from the rest and counts for little: miscounted?" in text(reply)
    assert kept(box)[0].told["counts"]["1"] == [17.0, 16.0]


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ({"out2": "frog"}, "'frog' will not do; say how many paces; 3.5 to 118 (for example 17)"),
        ({"back2": "900"}, "'900' will not do; say how many paces; 3.5 to 118 (for example 17)"),
        ({"pace": "5 m"}, "'5 m' will not do; say how long one pace is, 0.4 to 1.2 m"),
        ({"pace": ""}, "'17' will not do; say how far with its unit, or how long a pace is; 3 to 100 m"),
        ({"age": "900"}, "'900' will not do; "),
        ({"sight": "<b>"}, "'<b>' will not do; "),
        ({"ruler": "9 m"}, "say how long the printed ruler is, 50 to 150 mm"),
        ({"squares": "90 m"}, "say how far off the squares were two, with its unit, 3 to 35 m"),
        ({"day": "2199-01-01"}, "say a day, today or before (for example 2026-10-03)"),
        ({"who": "nobody"}, "say a name, 60 letters at the most"),
        ({f"out{n}": "" for n in range(1, 7)}, "not one bar was seen; nothing was kept"),
    ],
)
def test_what_cannot_be_read_is_told_at_its_field_and_nothing_is_lost(client, box, rules, told, said):
    reply = send(client, "/eyes/card", **{**CARD, **told})
    assert reply.status_code == 422
    rules(reply.text)
    assert said in text(reply)
    for name, typed in {**CARD, **told}.items():
        assert re.search(rf'id="{name}"[^>]* value="{re.escape(html.escape(typed))}"', reply.text)
    assert kept(box) == []


def test_a_mistake_stands_at_its_own_bar_and_a_pace_spoils_no_other(client):
    reply = send(client, "/eyes/card", **{**CARD, "back2": "900"})
    assert re.findall(r'class="wrong" id="([^"]+)"', reply.text) == ["back2-m"]
    reply = send(client, "/eyes/card", **{**CARD, "pace": "5 m", "out3": "frog"})
    assert re.findall(r'class="wrong" id="([^"]+)"', reply.text) == ["pace-m", "out3-m"]


def test_where_the_squares_parted_is_kept(client, box):
    send(client, "/eyes/card", **{**CARD, "squares": "9 m", "sight": "6/9"})
    assert (kept(box)[0].told["squares_m"], kept(box)[0].told["sight"]) == (9.0, "6/9")


def test_one_tap_keeps_where_it_went_and_one_undoes_it(client, box):
    send(client, "/eyes/card", **CARD)
    page = client.get("/?distance=40+yd&behind=dark")
    assert 'action="/eyes/note?distance=40+yd&amp;behind=dark"' in page.text
    assert 'name="far" autocomplete="off" value="40 yd"' in page.text
    reply = send(client, "/eyes/note?distance=40+yd&behind=dark", far="40", saw="went")
    assert "Kept: 26" not in reply.text  # the day stands as it is written
    assert "went at 40 yd. Your eyes" in text(reply)
    assert "from 6 bars and 1 note" in text(reply)
    note = kept(box)[1]
    assert note.told["question"] == {"distance": "40 yd", "behind": "dark"}
    assert (note.told["saw"], round(note.told["range_m"], 2)) == ("went", 36.58)
    assert taken(client)["own_eye"].endswith("from 6 bars and 1 note")
    undone = send(client, "/eyes/2/drop?distance=40+yd&behind=dark")
    assert "Left out:" in undone.text
    assert "went at 40 yd. Your eyes: 0.92 times what is usual" in text(undone)
    assert taken(client)["own_eye"] == "0.92, from 6 bars"
    assert 'href="/?distance=40+yd&amp;behind=dark"' in undone.text
    send(client, "/eyes/2/back")
    assert taken(client)["own_eye"].endswith("from 6 bars and 1 note")
    assert "there is no such reading" in text(send(client, "/eyes/9/drop"))


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ({"far": "frog", "saw": "went"}, "'frog' will not do; say how far, with its unit, 3.3 to 109 yd"),
        ({"far": "40 yd", "saw": "frog"}, "say whether it went there"),
    ],
)
def test_a_note_that_cannot_be_read_keeps_nothing(client, box, told, said):
    reply = send(client, "/eyes/note", **told)
    assert (reply.status_code, said in text(reply), kept(box)) == (422, True, [])
    assert f'value="{told["far"]}"' in reply.text


def test_a_note_keeps_age_and_sight_and_whose_it_is(client, box):
    send(client, "/eyes/card", **CARD, who="Ann")
    send(client, "/eyes/note?distance=40+yd&age=60&sight=6/9&who=Ann", far="40", saw="went")
    note = kept(box)[1]
    assert (note.whose, note.told["age"], note.told["sight"]) == ("Ann", "60", "6/9")


def test_a_note_of_a_question_that_cannot_be_answered_is_not_kept(client, box):
    reply = send(client, "/eyes/note?distance=40+yd&showing=frog", far="40", saw="went")
    assert (reply.status_code, kept(box)) == (422, [])
    assert "showing 'frog': a number is wanted; say 1 to 80 mm" in text(reply)
    assert 'value="40"' in reply.text


def test_with_nobodys_eyes_and_without_a_box_no_note_is_offered(client):
    assert "/eyes/note" in client.get("/eyes?distance=40+yd").text
    for path in ("/?distance=40+yd&who=nobody", "/eyes?distance=40+yd&who=nobody"):
        assert "/eyes/note" not in client.get(path).text
    boxless = create_app(OWN).test_client()
    for path in ("/", "/eyes"):
        assert not re.search("/eyes/(note|card)", boxless.get(path).text)


def test_a_form_leads_to_whose_it_was_and_each_sees_his_own(box):
    """Who a page is of needs no name in an address."""
    client = create_app(OWN, box=box).test_client()
    mine = send(client, "/eyes/card", follow=False, **CARD)
    anns = send(client, "/eyes/card", follow=False, **CARD, who="Ann")
    assert [one.headers["Location"] for one in (mine, anns)] == [
        "/eyes?reading=1", "/eyes?who=Ann&reading=2",
    ]  # fmt: skip
    hers = create_app(OWN, box=box, who="Ann").test_client()
    assert send(hers, "/eyes/card", follow=False, **CARD, who="Ann").headers["Location"] == "/eyes?reading=3"
    lists = [re.findall(r'<li id="r(\d+)"', one.get("/eyes").text) for one in (client, hers)]
    assert lists == [["1"], ["3", "2"]]


def test_a_count_of_dips_is_no_reading_of_the_eyes(client, box):
    with keeping.opened(box, "write") as one:
        dips = {"dips": 6.0, "minutes": 2.0, "question": dict(OWN.told())}
        recorded.add(one, recorded.Reading("dips", "Mill run", saw.today(), "1", dips))
    reply = client.get("/eyes?reading=1")
    assert (reply.status_code, "Kept:" in reply.text) == (200, False)


def test_of_an_invented_swim_no_note_is_kept(box):
    client = create_app(box=box).test_client()
    assert "/eyes/note" not in client.get("/").text
    reply = send(client, "/eyes/note", far="40 yd", saw="went")
    assert (reply.status_code, kept(box)) == (422, [])
    assert "this is an invented swim; tell your own, then note what you saw" in text(reply)
    assert "/eyes/note" in client.get("/?distance=40+yd").text


def test_more_than_one_person_and_an_own_water_by_name(client, box, rules):
    send(client, "/eyes/card", **CARD)
    far = {f"out{n}": f"{far}" for n, far in enumerate((30, 40, 50, 28, 45, 52), 1)}
    reply = send(client, "/eyes/card", **{**CARD, **far, "who": "Ann <b>", "age": "30"})
    assert "The eyes of Ann <b>" in text(reply)
    with keeping.opened(box, "write") as one:
        dips = {"dips": 6.0, "minutes": 2.0, "question": dict(OWN.told())}
        recorded.add(one, recorded.Reading("dips", "Mill run", saw.today(), "1", dips))
    page = client.get("/?distance=34+yd")
    rules(page.text)
    assert "Whose eyes, which water: me" in text(page)
    ann = taken(client, "distance=34+yd&who=Ann+%3Cb%3E&water=Mill+run")
    assert ann["own_eye"] != taken(client)["own_eye"]
    assert ann["boils"].endswith("from 1 count")
    assert taken(client, "distance=34+yd&who=nobody")["own_eye"] == "1"
    chosen = client.get("/?distance=34+yd&who=Ann+%3Cb%3E&water=Mill+run")
    assert "who=Ann+%3Cb%3E" in chosen.text  # it goes with every tap
    before = {"X-Fragment": "1", "X-Before": "distance=34+yd"}
    changed = client.get("/?distance=34+yd&who=Ann+%3Cb%3E", headers=before).text
    assert 'data-change="level ' in changed  # another person's eyes are no "same answer"
    wrong = client.get("/?distance=34+yd&who=Zed")
    rules(wrong.text)
    assert "'Zed' will not do; there are readings of Ann <b>, me" in text(wrong)


def test_a_form_of_a_page_started_before_is_shown_again(client, box):
    reply = client.post("/eyes/card", data={**CARD, "token": "old"})
    assert reply.status_code == 409
    assert "this page was started anew meanwhile; send it once more" in text(reply)
    assert 'id="out3"' in reply.text
    assert kept(box) == []


@pytest.mark.parametrize("path", ["/eyes/card", "/eyes/note", "/eyes/1/drop"])
@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_another_site_writes_nothing(client, box, path, site):
    data = {**CARD, "token": token(client), "far": "40 yd", "saw": "went"}
    reply = client.post(path, data=data, headers={"Sec-Fetch-Site": site})
    assert (reply.status_code, kept(box)) == (403, [])


@pytest.mark.parametrize("let", [False, True])
def test_the_house_network_writes_only_where_it_may(box, let):
    app = create_app(OWN, box=box, hosts=[ADDRESS], let_write=let)
    how = {"environ_base": LAN, "headers": {"Host": f"{ADDRESS}:8765"}}
    phone = app.test_client()
    assert ("/eyes/note" in phone.get("/", **how).text) is let
    assert ("/eyes/card" in phone.get("/eyes", **how).text) is let
    data = {**CARD, "token": token(app.test_client())}
    assert phone.post("/eyes/card", data=data, **how).status_code == (303 if let else 403)
    assert len(kept(box)) == let


def test_nothing_of_it_is_in_a_log(client, caplog):
    with caplog.at_level("DEBUG"):
        send(client, "/eyes/card", **CARD)
    assert "17" not in caplog.text


def test_a_box_that_is_none_is_told_in_a_line(box):
    box.write_text("no box", encoding="utf-8")
    client = create_app(OWN, box=box).test_client()
    for path in ("/eyes", "/"):
        reply = client.get(path)
        assert (reply.status_code, "this is not a box; name another file" in text(reply)) == (422, True)
