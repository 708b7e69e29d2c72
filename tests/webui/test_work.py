"""The heaviest question that the limits allow: its work is counted, so that it stays bounded.

Counted and not timed: waters lit, tips looked at in each of them, and sums of shot told apart.
"""

import gc
import pickle
import tracemalloc
from itertools import islice
from urllib.parse import urlencode

import numpy as np
import pytest
from page_requests import mixed

from tipsight import tables
from tipsight.advice.advise import advise
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.load import exact
from tipsight.sight import kernel
from webui import app, create_app, safety


def sizes(kind, low, high):
    return f"{kind} " + ", ".join(f"{size:.2f}" for size in np.linspace(low, high, 48))


def weighed():
    """Every shot and olivette weighed so finely that no two share a grain, most of them few."""
    shot = [(row["name"], float(row["mass_g"])) for row in tables.rows("shot")]
    box = ", ".join(f"{8 + n % 9} x {name}" if n % 3 else name for n, (name, _) in enumerate(shot))
    ten = "; ".join(
        f"{name} {10 * g + 0.013 * (n % 5 + 1):.3f} g" for n, (name, g) in enumerate(shot)
    )
    return box, ten


def heaviest():
    box, ten = weighed()
    banks = "; ".join(f"reed {high} m high, 20 m beyond" for high in (1, 2, 4, 8))
    blocks = ", ".join(f"{('black', 'white')[n % 2]} {5 * n}-{5 * n + 5}" for n in range(8))
    return {
        "distance": "9.37 yd",
        "sky": "clear",
        "sun_height": "30",
        "behind": f"{banks}; broken; bright",
        "goes_under": "3",
        "colour_vision": "red-weak",
        "seen": "kept in view",
        "bites": "bold",
        "pattern": "straight balsa",
        "takes": "60 g",
        "diameter": "5 mm",
        "stock": "solid",
        "showing": "40 mm",
        "paint": blocks,
        "pulls_out": "yes",
        "tips": sizes("solid", 1.5, 7.9),
        "inserts": sizes("cane", 1.51, 7.91),
        "paints": ", ".join(word.word for word in ITEMS["paints"].words),
        "pen": "yes",
        "sleeves": "yes",
        "light_stick": "yes",
        "shot": box,
        "ten_weigh": ten,
    }


@pytest.fixture
def work(monkeypatch):
    """What is counted while a question is answered."""
    counts = {"waters": 0, "candidates": 0, "looks": 0, "sums": 0}
    makes, grid, parts, offer = (
        kernel.kernels, kernel.level_grid, kernel.level_parts, exact._with,
    )  # fmt: skip

    def kernels(range_m, *args, **kw):
        counts["waters"] += np.ptp(range_m) > 0.0
        return makes(range_m, *args, **kw)

    def level_grid(*args, **kw):
        found = grid(*args, **kw)
        counts["candidates"] += found.size
        return found

    def level_parts(*args, **kw):
        found = parts(*args, **kw)
        counts["looks"] += found[0].size
        return found

    def with_(index, grain, limit, fewest, trace):
        offer(index, grain, limit, fewest, trace)
        counts["sums"] += fewest.size

    monkeypatch.setattr(kernel, "kernels", kernels)
    monkeypatch.setattr(kernel, "level_grid", level_grid)
    monkeypatch.setattr(kernel, "level_parts", level_parts)
    monkeypatch.setattr(exact, "_with", with_)
    return counts


def test_a_question_that_says_more_is_refused(house):
    """Each list of the heaviest question, one longer, is told to be too long."""
    for key, more, says in (
        ("behind", "; mud 3 m high, 20 m beyond", "7 different waters; 6 are the most"),
        ("tips", ", 8", "49 sizes, and 48 are the most"),
        ("inserts", ", 8", "49 sizes, and 48 are the most"),
        ("paint", ", red", "9 blocks, and 8 are the most"),
    ):
        told = heaviest()
        told[key] += more
        reply = house.get(f"/advise.json?{urlencode(told)}")
        assert reply.status_code == 422, key
        assert [one["item"] for one in reply.json["mistakes"]] == [key]
        assert says in reply.json["mistakes"][0]["allowed"]


def test_the_heaviest_question_is_bounded_work(work):
    query = urlencode(heaviest())
    assert len(query) <= safety.MOST_QUERY
    reply = create_app().test_client().get(f"/advise.json?{query}")
    assert reply.status_code == 200, reply.text
    # six told waters, and dark and bright to compare, once more for eyes that see all colours
    assert work["waters"] <= 2 * (6 + 2)
    # 96 pieces of stock in all; measured 2.0 million, 50,000 and 70 million
    assert work["candidates"] <= 3_000_000
    assert work["looks"] <= 60_000, work
    assert work["sums"] <= 80_000_000


def test_memory_is_flat_over_some_hundred_mixed_requests(monkeypatch):
    """What ``tests/benchmark/memory_page.py`` asks twenty thousand times with all the sums.

    A page of 60 kB lost now and then would show.
    """
    monkeypatch.setattr(app, "KEPT", 10)
    answer = pickle.dumps(advise(demo.question()))
    client = create_app(advise=lambda _: pickle.loads(answer)).test_client()  # noqa: S301 - ours
    asking = mixed(1, drawn=False)

    def held_after(requests):
        for path, headers in islice(asking, requests):
            with client.get(path, headers=headers) as reply:
                assert reply.status_code in (200, 303, 403, 404, 414, 422)
        gc.collect()
        return tracemalloc.get_traced_memory()[0]

    tracemalloc.start()
    try:
        before = held_after(60)
        assert held_after(150) - before < 120_000
    finally:
        tracemalloc.stop()
