"""Your floats on the page: what is found, who may write, and that nothing typed is lost."""

import html
import re
from datetime import date

import pytest

from tipsight.box import floats, keeping, recorded
from tipsight.inputs.entry import Entry
from tipsight.inputs.question import Question
from tipsight.output import rank_words
from tipsight.paper import cards
from tipsight.season.ranking import rank
from webui import box_page, create_app

LAN = {"REMOTE_ADDR": "192.168.1.30"}
ADDRESS = "192.168.1.20"
TODAY = date(2026, 10, 3)
AVON = {"pattern": "quill avon", "takes": "6BB", "diameter": "3 mm", "stock": "quill", "showing": "20 mm",
        "paint": "red"}  # fmt: skip
BOLO = {"pattern": "bolo type", "takes": "4 g", "diameter": "3 mm", "stock": "solid", "paint": "black"}


def text(reply):
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", reply.text)).split())


@pytest.fixture
def box(tmp_path):
    """A box of two kinds."""
    path = tmp_path / "my.box"
    with keeping.opened(path, "write") as one:
        floats.put(one, Entry(AVON, alike=12, lies="tray 1", fished="2026-01"), TODAY)
        floats.put(one, Entry(BOLO, note="the best <of> them", fished="2024"), TODAY)
    return path


def kept(path):
    with keeping.opened(path) as one:
        return [(k.number, k.entry.told.get("paint"), k.entry.alike) for k in floats.listed(one)]


@pytest.fixture
def client(box):
    return create_app(box=box).test_client()


def token(client, **how):
    return re.search('name="token" value="([^"]+)"', client.get("/box", **how).text)[1]


def send(client, path, **told):
    return client.post(path, data={"token": token(client), **told})


def numbers(reply):
    return [int(n) for n in re.findall(r'<li id="f(\d+)"><details', reply.text)]


def test_the_list_holds_the_rules_of_the_house(client, rules):
    reply = client.get("/box")
    rules(reply.text)
    assert "2 kinds, 13 floats" in text(reply)
    assert "the best <of> them" in text(reply)
    rules(client.get("/box/1").text)
    assert "lies in tray 1" in text(client.get("/box/1"))


@pytest.mark.parametrize(
    ("query", "found"),
    [("", [1, 2]), ("find=tray+avon", [1]), ("find=zander", []), ("kind=bolo+type", [2]),
     ("sort=pattern", [2, 1]), ("sort=fished", [2, 1]), ("sort=frog&from=x", [1, 2]), ("from=1", [2]),
     ("distance=40+yd&pattern=quill+avon", [1, 2])],
)  # fmt: skip
def test_floats_are_found_and_sorted(client, query, found):
    assert numbers(client.get(f"/box?{query}")) == found


def test_by_load_is_by_weight_and_what_is_known_by_size_comes_last(client, box):
    """6BB are 2.4 g, 10BB are 4.0 g (BB 0.4 g, common practice), 0.5 g is the least."""
    for takes in ({"takes": "10BB"}, {"takes": "0.5 g"}, {"size": "16 mm"}, {"size": "9 mm"}):
        told = {**{k: v for k, v in AVON.items() if k != "takes"}, **takes}
        with keeping.opened(box, "write") as one:
            floats.put(one, Entry(told), TODAY)
    assert numbers(client.get("/box?sort=load")) == [4, 1, 2, 3, 6, 5]


def test_one_line_puts_a_float_in(client, box):
    reply = send(client, "/box/put", line="wire stick, 5 No 4, 3.5 mm solid 8 mm white, two of them")
    assert (reply.status_code, reply.headers["Location"]) == (303, "/box?float=3#f3")
    assert kept(box)[2] == (3, "white", 2)
    assert "Put in: 3, wire stick, 5 No 4" in text(client.get("/box?float=3"))


def test_what_cannot_be_read_is_told_and_not_lost(client, box):
    reply = send(client, "/box/put", line='wire <stick>, 4 "zz')
    assert reply.status_code == 422
    assert 'value="wire &lt;stick&gt;, 4 &#34;zz"' in reply.text
    assert "'4 \"zz': say its pattern, load, tip, paint or how many" in text(reply)
    assert len(kept(box)) == 2


def test_a_change_a_drop_and_the_way_back(client, box):
    assert send(client, "/box/1/change", line="paint black, eleven of them", was="1").status_code == 303
    assert kept(box)[0] == (1, "black", 11)
    reply = send(client, "/box/1/change", line="paint black")
    assert (reply.status_code, "say what is other than it was" in text(reply)) == (422, True)
    send(client, "/box/1/drop", was="3")
    assert [n for n, *_ in kept(box)] == [2]
    reply = client.get("/box?float=1")
    assert "Dropped: 1, quill avon" in text(reply)
    assert reply.text.count('action="/box/1/back"') == 2  # in the list of dropped ones, too
    send(client, "/box/1/back", was="4")
    assert [n for n, *_ in kept(box)] == [1, 2]
    assert "brought back" in text(client.get("/box/1"))


def test_a_stale_form_shows_both_and_loses_neither(client, box):
    send(client, "/box/1/change", line="paint black", was="1")
    reply = send(client, "/box/1/change", line="paint white, nine of them", was="1")
    assert reply.status_code == 409
    assert "it is now: quill avon, 6BB, 3 mm quill, 20 mm showing, black" in text(reply)
    assert 'value="paint white, nine of them"' in reply.text
    assert kept(box)[0] == (1, "black", 12)
    mark = re.search(r'action="/box/1/change".*?name="was" value="(\d+)"', reply.text, re.DOTALL)[1]
    send(client, "/box/1/change", line="paint white, nine of them", was=mark)
    assert kept(box)[0] == (1, "white", 9)


def test_a_form_of_a_page_started_before_is_shown_again(client, box):
    line = "wire stick, 5 No 4, 3.5 mm solid 8 mm white"
    reply = client.post("/box/put", data={"token": "old", "line": line})
    assert reply.status_code == 409
    assert "this page was started anew meanwhile; send it once more" in text(reply)
    assert f'value="{line}"' in reply.text
    assert len(kept(box)) == 2


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_another_site_writes_nothing(client, box, site):
    data = {"token": token(client), "was": "1"}
    reply = client.post("/box/1/drop", data=data, headers={"Sec-Fetch-Site": site})
    assert reply.status_code == 403
    assert len(kept(box)) == 2


@pytest.mark.parametrize("let", [False, True])
def test_the_house_network_writes_only_where_it_may(box, let):
    app = create_app(box=box, hosts=[ADDRESS], let_write=let)
    phone = app.test_client()
    how = {"environ_base": LAN, "headers": {"Host": f"{ADDRESS}:8765"}}
    looked = phone.get("/box", **how)
    assert ("<form" in looked.text and "Put it in" in looked.text) is let
    data = {"token": token(app.test_client()), "was": "1"}
    reply = phone.post("/box/1/drop", data=data, **how)
    assert reply.status_code == (303 if let else 403)
    assert ("start it with --let-write" in text(reply)) is not let
    assert len(kept(box)) == (1 if let else 2)


@pytest.mark.parametrize("host", ["127.0.0.1", "localhost"])
def test_a_borrowed_name_does_not_make_it_this_machine(box, host):
    phone = create_app(box=box, hosts=[ADDRESS]).test_client()
    how = {"environ_base": LAN, "headers": {"Host": host}}
    assert phone.post("/box/1/drop", data={"token": "x"}, **how).status_code == 403


@pytest.mark.parametrize(
    ("host", "asks", "code"),
    [(f"{ADDRESS}:8765", "127.0.0.1", 403), ("localhost", "", 403), ("localhost", "x", 403),
     ("localhost:8765", "127.0.0.1", 303), ("127.0.0.1", "::1", 303)],
)  # fmt: skip
def test_this_machine_is_known_by_its_name_and_by_where_it_asks_from(box, host, asks, code):
    app = create_app(box=box, hosts=[ADDRESS])
    how = {"environ_base": {"REMOTE_ADDR": asks}, "headers": {"Host": host}}
    data = {"token": token(app.test_client()), "was": "1"}
    assert app.test_client().post("/box/1/drop", data=data, **how).status_code == code
    assert len(kept(box)) == (1 if code == 303 else 2)


def test_each_page_has_its_own_token_and_any_text_may_be_sent_for_it(box):
    """18 bytes by chance are 24 letters."""
    one, other = (token(create_app(box=box).test_client()) for _ in range(2))
    assert one != other
    assert len(one) == len(other) == 24
    reply = create_app(box=box).test_client().post("/box/1/drop", data={"token": "é", "was": "1"})
    assert reply.status_code == 409
    assert len(kept(box)) == 2


def test_a_stale_form_neither_drops_nor_brings_back(client, box):
    reply = send(client, "/box/1/drop", was="99")
    assert (reply.status_code, "Somebody changed it meanwhile" in text(reply)) == (409, True)
    assert len(kept(box)) == 2
    send(client, "/box/1/drop", was="1")
    assert send(client, "/box/1/back", was="1").status_code == 409
    assert [n for n, *_ in kept(box)] == [2]


def test_what_was_typed_for_a_float_that_is_not_listed_is_shown(client, box, rules):
    send(client, "/box/1/drop", was="1")
    reply = send(client, "/box/1/change", line="paint white, nine of them", was="1")
    rules(reply.text)
    assert reply.status_code == 409
    assert "it was changed meanwhile; look at it and say again what you want" in text(reply)
    assert "Float 1, dropped, is now: quill avon, 6BB" in text(reply)
    assert "You had typed: paint white, nine of them" in text(reply)
    reply = send(client, "/box/99/change", line="paint white")
    assert "there is no such float" in text(reply)
    assert "You had typed: paint white" in text(reply)


def test_a_page_without_a_box_says_so():
    client = create_app().test_client()
    assert "One float" not in text(client.get("/box"))
    reply = client.post("/box/put", data={"line": "x"})
    assert (reply.status_code, "started without a box" in text(reply)) == (403, True)
    assert "this page was started without one" in text(client.get("/box/1"))


def test_a_box_that_is_none_is_told_in_a_line(tmp_path):
    path = tmp_path / "my.box"
    path.write_text("no box", encoding="utf-8")
    reply = create_app(box=path).test_client().get("/box")
    assert (reply.status_code, "this is not a box; name another file" in text(reply)) == (422, True)
    assert path.read_text(encoding="utf-8") == "no box"


def test_a_float_that_is_not_there(client):
    assert "there is no such float" in text(client.get("/box/99"))
    assert send(client, "/box/99/drop").status_code == 422


def test_the_answer_leads_to_the_box_and_back(client):
    assert 'href="/box?distance=40+yd"' in client.get("/?distance=40+yd").text
    reply = client.get("/box?distance=40+yd")
    assert 'href="/?distance=40+yd"' in reply.text
    with_it = html.unescape(re.search(r'href="(/\?[^"]+)">Ask with this float', reply.text)[1])
    answer = client.get(with_it)
    assert answer.status_code == 200
    assert "paint=red" in with_it
    assert "takes=6BB" in with_it


def test_which_for_this_swim(client, box):
    """The best first, each with what is done for it; two floats are as the ranking itself has them."""
    reply = client.get("/box?distance=20+yd&behind=bright&looks=fur&sort=number&sort=here")
    assert reply.status_code == 200
    assert "20 yd, bright: " in text(reply)
    listed = numbers(reply)
    assert sorted(listed) == [1, 2]
    with keeping.opened(box) as one:
        kept_ = floats.listed(one)
    swim = Question(distance="20 yd", behind="bright", looks="fur")
    best = rank(swim, [k.question() for k in kept_])
    assert listed == [kept_[one.float_].number for one in best.floats]
    assert rank_words.line(best.floats[0], best)[1:] in text(reply)


def test_whose_eyes_they_are_counts_and_stays_through_every_form(box):
    """Ada sees far less than is usual at her age; the ranking is that of her own eyes."""
    counts = {f"{n}": [far] for n, far in enumerate((8, 11, 14, 8, 10, 12), 1)}
    card = {"counts": counts, "pace_m": 0.85, "step": "measured", "ruler_mm": 100.0, "age": "60"}
    with keeping.opened(box, "write") as one:
        recorded.add(one, recorded.Reading("card", "Ada", TODAY, "1", card))
    client = create_app(box=box).test_client()
    here = "/box?distance=20+yd&behind=dark&looks=fur&sort=here"
    usual, hers = client.get(here), client.get(f"{here}&who=Ada")
    near, far = (int(re.search(r"goes at about (\d+) yd", text(one))[1]) for one in (hers, usual))
    assert near < 0.9 * far
    assert '<input type="hidden" name="who" value="Ada">' in hers.text
    own = create_app(Question(distance="20 yd"), box=box).test_client()
    assert 'href="/box?who=Ada"' in own.get("/?who=Ada").text
    assert 'action="/box/put?who=Ada"' in own.get("/box?who=Ada").text


def test_a_swim_with_a_mistake_and_a_box_too_large_are_told(client, monkeypatch):
    reply = client.get("/box?distance=frog&sort=here")
    assert (reply.status_code, "'frog'" in text(reply)) == (422, True)
    monkeypatch.setattr(box_page, "MOST_RANKED", 1)
    reply = client.get("/box?distance=20+yd&sort=here")
    too_many = "2 kinds of float are too many at once; look for some words"
    assert (reply.status_code, too_many in text(reply)) == (422, True)
    assert numbers(reply) == [1, 2]


def test_the_cards_of_what_was_found(client):
    reply = client.get("/box?kind=bolo+type")
    assert 'href="/box/cards.pdf?kind=bolo+type"' in reply.text
    for query, pages in (("", 1), ("kind=bolo+type", 1)):
        card = client.get(f"/box/cards.pdf?{query}")
        assert (card.status_code, card.mimetype) == (200, "application/pdf")
        assert len(re.findall(rb"/Type /Page\b", card.data)) == pages
    assert client.get("/box/cards.pdf?find=zander").status_code == 422


def test_the_cards_are_of_what_is_shown_and_of_whose_eyes_they_are(box, monkeypatch):
    """From the second on it is the second; a dropped one has none; Ada's eyes go with each."""
    counts = {f"{n}": [far] for n, far in enumerate((8, 11, 14, 8, 10, 12), 1)}
    card = {"counts": counts, "pace_m": 0.85, "step": "measured", "ruler_mm": 100.0, "age": "60"}
    with keeping.opened(box, "write") as one:
        recorded.add(one, recorded.Reading("card", "Ada", TODAY, "1", card))
    printed = []
    monkeypatch.setattr(cards, "of_floats", lambda told: printed.append(told) or b"%PDF")
    client = create_app(box=box).test_client()
    client.get("/box/cards.pdf?distance=20+yd")
    client.get("/box/cards.pdf?distance=20+yd&from=1&who=Ada")
    send(client, "/box/1/drop", was="1")
    client.get("/box/cards.pdf?distance=20+yd")
    assert [[one.paint for one in told] for told in printed] == [["red", "black"], ["black"], ["black"]]
    eyes = [told[0].learnt.of("own_eye") for told in printed]
    assert (eyes[0], eyes[2], eyes[1].bars) == (None, None, 6)


def test_only_those_that_do_here(client):
    """A black bolo does at 12 yd on bright water; the red quill does there only with the pen."""
    near = client.get("/box?distance=60+yd&behind=bright&looks=wavelets&sort=does")
    assert numbers(near) == []
    assert "none of two floats would do" in text(near)
    assert set(numbers(client.get("/box?distance=12+yd&behind=bright&looks=fur&sort=does"))) == {1, 2}
