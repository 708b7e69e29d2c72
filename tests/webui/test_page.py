"""What the page answers, whatever it is asked; every reply is held to the rules of the house."""

import gzip
import html
import json
import re
import struct
import threading
import time
from dataclasses import replace
from pathlib import Path
from urllib.parse import parse_qsl, urlencode

import pytest

import webui
from tipsight.advice.advise import advise
from tipsight.advice.facts import Note, Warn
from tipsight.errors import OutOfRange
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.output import measures, telling
from tipsight.output.json_form import json_form
from tipsight.pictures import film, legend, view
from webui import create_app, drawer
from webui.asking import typed_of

FRAGMENT = {"X-Fragment": "1"}


def address(**told):
    return f"/?{urlencode({**{k: v[0] for k, v in typed_of(demo.question()).items()}, **told})}"


def texts(reply):
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", reply.text)).split())


def there(client, address):
    """Ask until what is drawn behind the requests is there."""
    for _ in range(600):
        reply = client.get(address)
        if reply.status_code != 202:
            return reply
        time.sleep(0.05)
    raise AssertionError("it is never there")


def test_the_first_page_answers_an_invented_swim_and_says_so(house):
    reply = house.get("/")
    assert reply.status_code == 200
    said = texts(reply)
    assert "An invented swim, until you tell yours" in said
    assert "An invented swim: 40 yd (37 m)" in said
    order = [said.index(one) for one in ("Pen all that", "At the bench", "Far", "The question")]
    assert order == sorted(order)
    for title in ("Sight", "Ride", "What sinks it", "Shot", "Seen against sunk"):
        assert f">{title}<" in reply.text


def test_an_own_question_stands_where_nothing_is_typed(client_of):
    own = Question(distance="22 yd", behind=["dark"], paint="white")
    reply = client_of(own=own).get("/")
    assert "invented" not in reply.text
    assert "22 yd (20 m), dark water behind the tip" in texts(reply)
    assert 'value="22 yd"' in reply.text


def test_one_address_is_one_answer(house):
    assert house.get(address(distance="30 yd")).data == house.get(address(distance="30 yd")).data


def test_the_form_as_a_browser_sends_it_leads_to_the_short_address(house):
    sent = [(key, "") for key in ITEMS if key not in ("distance", "behind")]
    sent += [("distance", "40"), ("behind", "dark"), ("far", "yd")]
    reply = house.get(f"/?{urlencode(sent)}")
    assert reply.status_code == 303
    assert reply.headers["Location"] == "/?distance=40+yd&behind=dark"


def test_nothing_told_is_a_question_too(house):
    assert house.get("/?distance=&age=").headers["Location"] == "/?distance="
    reply = house.get("/?distance=")
    assert reply.status_code == 200
    assert "invented" not in reply.text


def test_a_tap_changes_one_thing_and_tells_what_it_was(house):
    reply = house.get("/?distance=40+yd&behind=dark&set=distance%3D25%2Byd")
    assert reply.headers["Location"] == "/?distance=25+yd&behind=dark&was_distance=40+yd"
    page = house.get(reply.headers["Location"])
    assert "What that changed" in page.text
    assert re.search(r">distance</th><td>40 yd</td><td>25 yd<", page.text)


def test_a_tap_that_tells_a_blank_leads_to_the_answer_at_once(house):
    reply = house.get("/?distance=40+yd&set=age%3D%250D&set=%3D%250D")
    assert reply.headers["Location"] == "/?distance=40+yd"
    assert house.get(reply.headers["Location"]).status_code == 200


def test_what_changed_is_what_the_two_answers_say(house):
    page = house.get(address(showing="30 mm", was_showing="20 mm", wet="0 mm", was_wet="10 mm"))
    before = advise(demo.question()).tip_in_hand
    after = advise(demo.question().with_options(showing="30 mm", wet="0 mm")).tip_in_hand
    row = re.search(r">Seen</th><td>([^<]*)</td><td>([^<]*)<", page.text)
    assert row.groups() == tuple(
        f"{one.visibility.grade} (level {measures.level(one.visibility.level)})"
        for one in (before, after)
    )


@pytest.mark.parametrize(("sleeve", "wide_px"), [("no", 12.72), ("yes", 16.72)])
def test_a_tip_is_drawn_as_thick_as_it_is_with_its_paint_and_sleeve(house, sleeve, wide_px):
    """3 mm, three coats of 0.03 mm on each side, and a sleeve of a millimetre: 4 px to the mm."""
    told = {"diameter": "3 mm", "showing": "20 mm", "tip_coats": "3", "sleeve_on": sleeve}
    page = house.get(f"/?{urlencode({'distance': '40 yd', 'paint': 'black', **told})}").text
    drawn = page[page.index("The tips, four dots") :]
    in_hand = drawn[drawn.index("<svg") : drawn.index("</svg>")]
    wide = [float(one) for one in re.findall(r'<rect[^>]* width="([\d.]+)"', in_hand)]
    assert len(wide) == 2  # what shows, and what is under water
    assert wide == pytest.approx([wide_px] * 2, abs=0.06)


def test_every_what_if_is_a_link_to_an_answer(house):
    page = house.get("/").text
    row = page[page.index('aria-label="What if"') : page.index("<h3>Compare")]
    links = dict(re.findall(r'href="\?([^"]*)">([^<]*)</a>', row))
    assert set(links.values()) == {
        *("Show 10 mm more", "Show 10 mm less", "1 mm thicker", "1 mm thinner"),
        *("Paint it black", "Paint it white", "The sun comes out", "A dull sky"),
    }
    for query, said in links.items():
        led = house.get(f"/?{html.unescape(query)}")
        assert led.status_code == 303
        told = dict(parse_qsl(led.headers["Location"].removeprefix("/?")))
        reply = house.get(led.headers["Location"])
        assert (reply.status_code, said) == (200, said)
        assert "What that changed" in reply.text
        if said == "Show 10 mm more":
            assert (told["showing"], told["wet"], told["was_showing"]) == (
                "30 mm",
                "0 mm",
                "20 mm",
            )
        if said == "The sun comes out":
            assert (told["sky"], told["sun_out"]) == ("clear", "yes")


def test_every_change_that_is_offered_can_be_taken(house):
    page = house.get("/").text
    page = page[page.index("What can be done") :]
    offered = re.findall(r'form="q" name="set" value="([^"]*)"', page)
    answer = advise(demo.question())
    own = demo.question().told()
    changes = [change.options for change in answer.changes if change.options]
    assert [dict(parse_qsl(html.unescape(one))) for one in offered][: len(changes)] == [
        {key: text for key, text in one.items() if own.get(key) != text} for one in changes
    ]
    taken = house.get(f"{address()}&{urlencode({'set': html.unescape(offered[-1])})}")
    assert taken.status_code == 303
    assert house.get(taken.headers["Location"]).status_code == 200


def test_a_fragment_is_the_answer_alone(house):
    reply = house.get(address(distance="30 yd"), headers=FRAGMENT)
    assert reply.status_code == 200
    assert "<form" not in reply.text
    assert 'data-brief="' in reply.text
    assert "X-Fragment" in ", ".join(reply.headers.getlist("Vary"))
    whole = house.get(address(distance="30 yd")).text
    for part in re.split('(?=<div id="more">)', reply.text):
        assert part.strip() in whole


def test_mistakes_are_counted_linked_and_kept(house):
    reply = house.get(address(distance="frog", sky="cleer", paint="purpel"))
    assert reply.status_code == 422
    assert "<title>Three things to mend - tipsight</title>" in reply.text
    main = reply.text[reply.text.index("<main") :]
    assert main.index('id="mend"') < main.index("<h1>")
    for key, typed in (("distance", "frog"), ("sky", "cleer"), ("paint", "purpel")):
        assert f'<a href="#{key}-f">' in reply.text
        assert f'value="{typed}"' in reply.text
        field = re.search(rf'<p class="wrong" id="{key}-m">(.*?)</p>', reply.text)[1]
        words = html.unescape(field.partition("</span>")[2])
        assert words in texts(reply).split("Which tip can you watch?")[0]
        assert f"'{typed}' will not do; " in words
    assert 'value="6BB"' in reply.text
    assert reply.text.count('aria-invalid="true"') == 3


def test_mistakes_are_told_in_the_order_of_their_fields(house):
    page = house.get("/?age=x&temperature=900&behind=sideways&sky=cleer&distance=frog&nix=1").text
    listed = re.findall(r'<li data-item="([a-z]+)"', page)
    assert listed == ["distance", "sky", "behind", "temperature", "age", "nix"]
    fields = [page.index(f'id="{key}-f"') for key in listed[:-1]]
    assert fields == sorted(fields)


def test_one_mistake_is_one_thing(house):
    assert "<title>One thing to mend" in house.get("/?distance=frog").text


def test_the_words_of_a_mistake_are_those_of_the_command(house):
    with pytest.raises(ValueError, match="eye: '9000 m' will not do") as caught:
        advise(Question(eye="9000 m"))
    words = str(caught.value).partition(": ")[2]
    assert words in texts(house.get("/?eye=9000+m"))


def test_what_is_no_item_is_a_mistake_with_the_nearest_spelling(house):
    reply = house.get("/?distnace=40")
    assert reply.status_code == 422
    assert "distnace There is no such item; did you mean 'distance'?" in texts(reply)


def test_what_is_folded_opens_where_something_is_to_be_mended(house):
    assert "<details open>" not in house.get("/?age=60").text.partition("<form")[2]
    part = house.get("/?temperature=900").text.partition('<details class="part" open>')[2]
    assert part.startswith("<summary>The water")
    assert part.index("<details open>") < part.index('name="temperature"')
    assert 'class="part" open' not in part


def test_typed_text_cannot_become_page(house):
    reply = house.get("/?" + urlencode({"paint": '"><script src="//x">', "<b>": "<i>"}))
    assert reply.status_code == 422
    assert "<i>" not in reply.text
    assert "<b>" not in reply.text.partition("<form")[0]
    assert 'src="//x"' not in reply.text


def test_nothing_passes_is_an_answer(client_of):
    answer = advise(demo.question())
    none = replace(
        answer, at_the_bench=None, warnings=(Warn(Note.NOTHING_FITS), Warn(Note.LIGHT_AIR))
    )
    reply = client_of(advise=lambda question: none).get("/")
    assert reply.status_code == 200
    said = texts(reply)
    stuck = said[said.index("Nothing passes ") : said.index("At the bench: nothing")]
    assert "No tip that you have keeps the limits on this float; take a float" in stuck
    assert "rough guess" not in stuck
    assert (
        "Mind: So light a wind makes cat's-paws, no even ripple: the ride is a rough guess."
        in said
    )
    assert all(
        f"At the bank: {telling.failure(one)}." in stuck for one in answer.at_the_bank.block.fails
    )
    assert 'id="mend"' not in reply.text


def test_a_question_that_nothing_passes_is_answered(house):
    told = {"distance": "60 yd", "bites": "shy"}
    assert not advise(Question(**told)).at_the_bench.block.passes
    assert "Not all that was wanted" in texts(house.get(f"/?{urlencode(told)}"))


def test_short_of_what_was_wanted_says_so_and_how_to_mend_it(client_of):
    answer = advise(demo.question())
    numbers = {"level": 2.84, "wanted": 5.0, "goes_at_m": 29 * 0.9144}
    short = replace(answer, warnings=(Warn(Note.OUT_OF_REACH, numbers),))
    said = texts(client_of(advise=lambda question: short).get("/"))
    stuck = said[said.index("Not all that was wanted") : said.index("What if,")]
    assert "Sight: followed (level 2.7) where kept in view (5) is wanted." in stuck
    assert "what you have; fish it no farther than 29 yd, stand higher or" in stuck
    assert "Mind" not in said


def test_a_number_outside_the_sums_is_a_mistake_not_a_crash(client_of):
    def outside(question):
        raise OutOfRange("slope of the ripple", 0.5, 0.0, 0.3)

    reply = client_of(advise=outside).get("/?distance=40+yd")
    assert reply.status_code == 422
    assert "sums Slope of the ripple must be 0 to 0.3, got 0.5" in texts(reply)


def test_yards_and_metres_are_switched_for_the_whole_page(house):
    metres = house.get(address(far="m", high="m"))
    said = texts(metres)
    assert "37 m, bright water behind the tip" in said
    answer = said.partition("This answer again")[0]
    assert not re.search(r"\d yd", answer.partition("What was asked")[0])
    assert "How far is the end of the trot? (metres)" in said
    assert "3 to 100 m may be typed" in said
    assert "How deep is the water at the end of the trot? (metres)" in said
    assert house.get("/?distance=40&far=m").headers["Location"] == "/?distance=40+m&far=m"
    assert house.get("/?eye=1.5&high=m").headers["Location"] == "/?eye=1.5+m&high=m"
    yards = texts(house.get(address()))
    assert "3.3 to 109 yd may be typed" in yards
    assert "Heights in metres" in yards
    assert "Distances in yards" in said


def test_json_is_that_of_the_command(house):
    told = {"distance": "30 yd", "behind": "dark", "paint": "white"}
    reply = house.get(f"/advise.json?{urlencode(told)}")
    assert reply.mimetype == "application/json"
    assert reply.json == json.loads(json.dumps(json_form(advise(Question(**told)))))
    assert house.get("/advise.json").json == json.loads(
        json.dumps(json_form(advise(demo.question())))
    )


def test_json_lists_the_mistakes(house):
    reply = house.get("/advise.json?distance=40&eye=frog")
    assert reply.status_code == 422
    assert reply.json["mistakes"][0] == {
        "item": "distance",
        "said": "40",
        "allowed": "say the unit, yards or metres",
        "example": "40 yd",
    }
    assert [one["item"] for one in reply.json["mistakes"]] == ["distance", "eye"]


def test_the_paper_has_the_question_and_the_whole_link(house):
    page = house.get(address(distance="30 yd")).text
    paper = page[page.index('class="paper"') :]
    assert "distance 30 yd; known counted;" in texts(house.get(address(distance="30 yd")))
    link = html.unescape(re.search(r'class="link">([^<]*)<', paper)[1])
    assert link.startswith("http://localhost/?distance=30+yd&")
    assert house.get(link).data == house.get(address(distance="30 yd")).data


@pytest.mark.parametrize(
    "path",
    [
        *("/", "/?far=m&high=m", "/?distance=", "/?distance=60+yd&bites=shy"),
        *("/?set=showing%3D30%2Bmm", "/?set=sky%3Dclear%26sun_out%3Dyes"),
        *(
            f"/?{urlencode({k: v[0] for k, v in typed_of(demo.question(n)).items()})}"
            for n in demo.names()
        ),
        "/?distance=35+yd&eye=stood&sky=broken+cloud&sun_out=yes&behind=dark&depth=6+ft&pace=walk"
        "&looks=fur&age=63&diameter=3+mm&stock=cane&showing=15+mm&paint=fluorescent+yellow",
        "/?distance=frog&sky=cleer&temperature=900&showing=20&distnace=1",
    ],
)
def test_the_page_is_small_before_and_after_it_is_squeezed(house, path):
    """All that the first visit fetches, as it stands: page, style sheet, script, icon."""
    page = house.client.get(path, follow_redirects=True).data
    static = Path(webui.__file__).parent / "static"
    files = [file for file in static.iterdir() if f"/static/{file.name}?".encode() in page]
    assert {file.suffix for file in files} == {".css", ".js", ".svg"}
    assert len(page) + sum(file.stat().st_size for file in files) <= 100_000
    sent = house.client.get(path, follow_redirects=True, headers={"Accept-Encoding": "gzip"})
    small = {"Accept-Encoding": "gzip"}
    rest = [house.client.get(f"/static/{file.name}", headers=small).data for file in files]
    assert len(sent.data) + sum(map(len, rest)) <= 25_000
    assert gzip.decompress(sent.data) == page


def test_a_bare_number_for_a_height_is_asked_back_not_taken_as_feet(house):
    for key in ("eye", "depth"):
        reply = house.get(f"/?{key}=1.5")
        assert reply.status_code == 422
        assert "say the unit, feet or metres" in texts(reply)


def test_mistakes_are_told_in_the_units_of_the_page(house):
    assert "ay 3.3 to 109 yd, in yards or metres" in texts(house.get("/?distance=900+m"))
    assert "ay 3 to 100 m, in yards or metres" in texts(house.get("/?distance=900+m&far=m"))


def test_no_item_reads_like_a_sign_in_an_address():
    """The parts of an address in a link stand bare; ``&copy=`` would be another sign to some."""
    query = "&".join(("", *ITEMS, *(f"was_{key}" for key in ITEMS), "far", "high", "set"))
    assert html.unescape(query) == query


def test_units_are_switched_with_what_is_typed_kept(house):
    reply = house.get("/?distance=40&eye=5&paint=&set=far%3Dm")
    assert reply.headers["Location"] == "/?distance=40+yd&eye=5&far=m"
    reply = house.get("/?distance=40&far=m&set=far%3Dyd")
    assert reply.headers["Location"] == "/?distance=40+m"


def test_enter_in_a_field_takes_no_change(house):
    """The button that Enter presses is the first of the form in the page (HTML, 4.10.21.2)."""
    page = house.get("/").text
    first = re.search(r'<button[^>]*form="q"[^>]*>', page)[0]
    assert first == '<button form="q" hidden>'
    assert page.index(first) < page.index("<form")


@pytest.mark.parametrize("path", ["/nowhere", "/static/../app.py", "/static/nothing.css"])
def test_there_is_nothing_else(house, path):
    assert house.get(path).status_code == 404


@pytest.mark.parametrize("file", ["sheet.pdf", "card.pdf", "wall.pdf"])
def test_paper_is_that_of_the_same_answer(house, file):
    query = address(distance="30 yd")[1:]
    assert f'<button form="q" formaction="/{file}">' in house.get(f"/{query}").text
    reply = house.get(f"/{file}{query}")
    assert (reply.status_code, reply.mimetype) == (200, "application/pdf")
    assert reply.data[:5] == b"%PDF-"


def test_the_view_is_drawn_and_told(house):
    answer = advise(demo.question())
    page = house.get("/view")
    said = texts(page)
    for caption in legend.captions(answer)["bright"]:
        assert all(words in said for words in caption[1:])
    for one in (*legend.of_this_water(answer), *legend.how_to_look(answer)):
        assert one in said
    shown = [html.unescape(one) for one in re.findall(r'src="(/view-[^"]*)"', page.text)]
    assert shown.pop() == shown[0]  # the still of the film
    assert len(shown) == 4
    drawn = view.drawn(answer)
    for address, png in zip(shown, drawn, strict=True):
        picture = house.get(address)
        assert (picture.status_code, picture.mimetype) == (200, "image/png")
        assert picture.data == png
    assert house.get(shown[3].replace("view-3", "view-4")).status_code == 404
    whole = there(house, html.unescape(re.search(r'href="(/view.png[^"]*)"', page.text)[1]))
    assert (whole.status_code, whole.data) == (200, view.png(answer))


def test_a_card_laid_on_the_screen_brings_the_tips_at_true_size(house):
    """428 px to 85.6 mm, 5 to the mm: 9.4 times too large; a third picture to each tip, 46 x 20."""
    page = house.get("/view?distance=40+yd&behind=bright&card=428")
    shown = [html.unescape(one) for one in re.findall(r'src="(/view-[^"]*)"', page.text)]
    assert [int(re.search(r"view-(\d+)", one)[1]) for one in shown] == [2, 0, 1, 5, 3, 4, 0]
    assert all(one.endswith("&card=428") for one in shown)
    assert struct.unpack(">II", house.get(shown[0]).data[16:24]) == (46, 20)
    assert house.get(shown[0].replace("view-2", "view-6")).status_code == 404
    assert house.get(shown[0].replace("428", "frog")).status_code == 404
    assert "Read from 40 cm, drawn about 9.4 times too large" in texts(page)
    assert "True size, read from 40 cm" in texts(page)


def test_a_card_that_no_screen_shows_is_refused_at_its_field(house):
    for text, said in (
        ("20", "width of a bank card must be"),
        ("frog", "'frog' will not do; say a whole number, 100 to 4000 (for example 324)"),
        ("nan", "width of a bank card must be"),
    ):
        page = house.get(f"/view?distance=40+yd&behind=bright&card={text}")
        assert page.status_code == 422
        assert said in texts(page)
        assert "True size" not in texts(page)


def test_a_card_is_kept_on_the_way_to_the_short_address(house):
    reply = house.get("/view?distance=40&behind=dark&paint=&card=428")
    assert reply.headers["Location"] == "/view?distance=40+yd&behind=dark&card=428"
    assert house.get("/?distance=40+yd&behind=dark&card=428").status_code == 200


def test_the_film_is_a_still_page_s_until_it_is_asked_for(house, monkeypatch):
    """Folded away and lazy, so that nothing moves or is drawn before a tap; drawn once, then kept."""
    drawn = []
    monkeypatch.setattr(film, "webp", lambda answer: drawn.append(answer) or b"film")
    page = house.get("/view").text
    folded = re.search(r'<details class="moving">.*?</details>', page, re.S)[0]
    assert 'loading="lazy"' in folded
    assert "Computed film of both tips at 40 yd" in folded
    assert 'src="/view-0.png' in folded
    address = html.unescape(re.search(r'data-film="(/view.webp[^"]*)"', folded)[1])
    assert not drawn
    for _ in range(2):
        reply = there(house, address)
        assert (reply.status_code, reply.mimetype, reply.data) == (200, "image/webp", b"film")
    assert len(drawn) == 1


def test_a_film_is_drawn_behind_the_request_one_at_a_time_and_few_wait(monkeypatch):
    """The first is held up: all that ask get a page that comes again by itself, the sixth is sent away."""
    monkeypatch.setattr(drawer, "AT_ONCE_S", 0.0)
    go, at_once, most = threading.Event(), [0], []

    def webp(answer):
        at_once[0] += 1
        most.append(at_once[0])
        go.wait(20.0)
        at_once[0] -= 1
        return b"film"

    monkeypatch.setattr(film, "webp", webp)
    client = create_app().test_client()
    addresses = [f"/view.webp?distance={far}+yd" for far in range(25, 31)]
    replies = [client.get(address) for address in (*addresses[:5], addresses[0])]
    assert [one.status_code for one in replies] == [202] * 6
    assert {one.headers["Refresh"] for one in replies} == {"2"}
    assert "turns into the picture by itself" in texts(replies[0])
    full = client.get(addresses[5])
    assert full.status_code == 503
    assert "Several pictures are being drawn already" in texts(full)
    go.set()
    assert [there(client, one).data for one in addresses] == [b"film"] * 6
    assert most == [1] * 6


def test_a_film_that_fails_is_told_and_begun_anew(monkeypatch):
    found = [RuntimeError("no such water"), b"film"]

    def webp(answer):
        one = found.pop(0)
        if isinstance(one, Exception):
            raise one
        return one

    monkeypatch.setattr(film, "webp", webp)
    client = create_app().test_client()
    assert client.get("/view.webp?distance=25+yd").status_code == 500
    assert there(client, "/view.webp?distance=25+yd").data == b"film"


def test_each_water_is_drawn_by_itself(house, monkeypatch):
    """So that the work of one request is that of one water, however many were told."""
    asked, plain = [], view.drawn
    monkeypatch.setattr(view, "drawn", lambda *a, **k: asked.append(k["only"]) or plain(*a, **k))
    query = "?distance=30+yd&behind=dark&behind=bright&showing=30+mm"
    first, second = (house.get(f"/view-{n}.png{query}") for n in (0, 4))
    assert (first.status_code, second.status_code, asked) == (200, 200, [0, 1])
    assert first.data != second.data
    assert house.get(f"/view-8.png{query}").status_code == 404


def test_a_page_is_told_in_its_units(house):
    assert "37 m, eye" in texts(house.get("/view?distance=40+yd&far=m"))


def test_paper_asked_by_the_form_has_the_short_address(house):
    reply = house.get("/view?distance=40&behind=dark&paint=&age=")
    assert (reply.status_code, reply.headers["Location"]) == (
        303,
        "/view?distance=40+yd&behind=dark",
    )


@pytest.mark.parametrize("file", ["sheet.pdf", "view", "view.png"])
def test_what_cannot_be_taken_away_is_mended_first(house, file):
    reply = house.get(f"/{file}?distance=frog")
    assert (reply.status_code, reply.headers["Location"]) == (303, "/?distance=frog")


def test_a_word_that_is_no_item_hides_no_other_mistake(house):
    said = texts(house.get("/?distnace=40&eye=frog&sky=cleer"))
    assert "Three things to mend" in said
    assert "did you mean 'clear'?" in said


def test_a_trot_of_several_stretches_has_its_fold(house):
    page = house.get("/?distance=40+yd&trot=0-15+dark,+15-30+bright,+30-40+broken+boily").text
    assert "Along the trot: worst on 30 to 40 yd (broken, boily)" in page
    assert "not followed from" in page
    assert "Along the trot" not in house.get("/?distance=40+yd").text
