"""Every field of an answer has a number of its own, and each is found where it belongs.

In JSON under its own name, in the text in full, on the page and on the bench sheet: a field that
stands in another's place is noticed, as no two numbers are alike.
"""

import os
import re
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import fields, replace
from html import unescape
from typing import Any

import numbered
import pytest
from numbered import AT_THE_BANK, AT_THE_BENCH, IN_HAND, Numbers

from tipsight.advice.answer import Answer, Handling, Load, Sight, Visibility
from tipsight.inputs.case import Tip
from tipsight.output.json_form import json_form
from tipsight.output.text import text
from tipsight.paper import cards, sheet, wall
from webui import create_app

ANSWER = numbered.answer()
BLOCKS = {"tip_in_hand": IN_HAND, "at_the_bank": AT_THE_BANK, "at_the_bench": AT_THE_BENCH}
HEADS = {"tip_in_hand": "AS IT IS", "at_the_bank": "AT THE BANK", "at_the_bench": "AT THE BENCH"}
LABELS = {
    "tip_in_hand": "Tip in hand",
    "at_the_bank": "Now, at the bank",
    "at_the_bench": "At the bench",
}

PLACES: dict[str, tuple[str, str, str, str]] = {
    # field: in JSON; in the text of its own block; on the page; on the sheet. Empty: not told there
    "diameter_mm": ("tip.diameter_mm", "tip {:g} mm {stock}", "{label}: {:g} mm {stock}",
                    "bare {:g} mm;"),
    "showing_mm": ("tip.showing_mm", "{:g} mm, {inches} showing", "{:g} mm, {inches} showing",
                   "{:g} showing +"),
    "wet_mm": ("", "{:g} mm wet", "", "+ {:g} wet +"),
    "glued_mm": ("", "{:g} mm glued in", "", "+ {:g} glued in"),
    "coats": ("", "{} coats", "", "with {} coats"),
    "painted_mm": ("", "", 'width="{width:.1f}"', "coats {:.2f} mm"),
    "band_mm": ("paint.0.to_top_mm", "paint {top} {:g} mm over {foot}", "{top} 0 to {:g} mm",
                "{top} {:g} mm over"),
    "level": ("visibility.level", "", "level {:g}, likely", ""),
    "low": ("visibility.low", "", "likely {:g} to {high:g}: ", ""),
    "high": ("visibility.high", "", "likely {low:g} to {:g}: ", ""),
    "goes_at_yd": ("visibility.goes_at_m", "", "", ""),
    "gone_at_yd": ("visibility.gone_at_m", "", "", ""),
    "notice_s": ("visibility.notice_s", "", "", ""),
    "sink_force_g": ("handling.sink_force_g", "({:g} g); dragged", "({:g} g) a slow pull", ""),
    "sink_force_high_g": ("", "top dry, {:g} g", "", ""),
    "stiffness_g_per_mm": ("handling.stiffness_g_per_mm", "{:.2g} g for each mm", "", ""),
    "ride_margin": ("handling.ride_margin", "(margin {:g}, likely", "margin {:g}, likely", ""),
    "ride_margin_low": ("handling.ride_margin_low", "likely {:g} to {ride_margin_high:g})",
                        "likely {:g} to {ride_margin_high:g}, where", ""),
    "ride_margin_high": ("handling.ride_margin_high", "likely {ride_margin_low:g} to {:g})",
                         "likely {ride_margin_low:g} to {:g}, where", ""),
    "time_under": ("handling.time_under", "under {:.1%} of the time", "", ""),
    "dips_per_min": ("handling.dips_per_min", "{:g} times a minute", "{:g} times a minute", ""),
    "ordinary_dip_s": ("handling.ordinary_dip_s", "about {halves} s", "about {halves} s", ""),
    "hidden_mm": ("handling.hidden_mm", "hidden {:g} mm by the nearer", "ripples hide {:g} mm", ""),
    "hidden_high_mm": ("", "{:g} mm by the highest", "", ""),
    "slow_bite_g": ("handling.slow_bite_g", "slow pull of {slow} or a", "slow pull of {slow} or a", ""),
    "pluck_g": ("handling.pluck_g", "quick one of {quick} shows", "quick one of {quick} shows", ""),
    "visible_dip_mm": ("handling.visible_dip_mm", "dip seen is {:g} mm", "", ""),
    "lean_deg": ("handling.lean_deg", "leaning {:g} deg", "", ""),
    "lift_g": ("", "lifts it by {:g} g", "", ""),
    "shot_g": ("load.shot_g", "shot {:g} g of tin", "{:g} g of tin", ""),
    "change_g": ("load.change_g", "({:+g} g)", "", ""),
    "short_by_g": ("load.short_by_g", "", "", ""),
    "high_mm": ("load.high_mm", "{:.0f} mm more than that", "{:.0f} mm more than that",
                "{:.0f} mm more than that"),
}  # fmt: skip
IN_THE_SIGHT_TABLE = ("level", "low", "high", "goes_at_yd")
NOWHERE = {
    "uprightness": "only whether it keeps its limit",
    "colour_share": "only a warning where it is more than half",
    "left_g": "the shot by name says it",
    "step_g": "the shot by name says it",
}
"""What is told by no number, and what is told of it."""
INCHES = {21.0: "7/8 in", 33.0: "1¼ in", 46.0: "1¾ in"}
PULLS = {
    0.17: "a No 4", 0.19: "a No 4 and a No 12", 0.22: "a No 3",
    0.41: "a BB and two No 10", 0.53: "an AB and a No 13", 0.71: "a AAA and a No 12",
}  # fmt: skip
"""In tin by name, which keeps 0.863 of its weight in water: 0.17 g are 0.197 g in air, and so on."""
HALVES = {2.5: "2½", 1.5: "1½", 3.5: "3½"}


def flat(words: str) -> str:
    return " ".join(words.split())


def expected(numbers: Numbers, place: int, label: str = "") -> Iterator[tuple[str, str]]:
    """Yield each field with the words that must stand in one place."""
    said = {
        "stock": numbers["stock"], "top": numbers["paints"][0], "foot": numbers["paints"][1],
        "inches": INCHES[numbers["showing_mm"]], "halves": HALVES[numbers["ordinary_dip_s"]],
        "width": 4 * numbers["painted_mm"], "low": numbers["low"], "high": numbers["high"],
        "ride_margin_low": numbers["ride_margin_low"], "ride_margin_high": numbers["ride_margin_high"],
        "label": label, "slow": PULLS[numbers["slow_bite_g"]], "quick": PULLS[numbers["pluck_g"]],
    }  # fmt: skip
    for name, places in PLACES.items():
        if places[place]:
            yield name, places[place].format(numbers[name], **said)


def test_no_two_numbers_are_alike() -> None:
    for name in (*PLACES, *NOWHERE):
        if name not in ("bore_mm", "colour_share"):
            each = [numbers[name] for numbers in BLOCKS.values()]
            assert len(set(each)) == 3, name
    for numbers in BLOCKS.values():
        waters = [numbers, numbers["dark"], numbers["bright"]]
        seen = [of[name] for of in waters for name in IN_THE_SIGHT_TABLE]
        in_grams = [numbers[name] for name in numbers if name.endswith("_g")]
        for each in (seen, in_grams):
            assert len(set(each)) == len(each)


def test_every_field_has_its_place_or_a_reason() -> None:
    known = {*PLACES, *NOWHERE, "goes_at_m", "gone_at_m"}
    names = {"upright", "runs", "grade", "name", "by_background", "shot_metal", "step", "shot"}
    tip = {"stock", "bands", "seasons", "gloss", "undercoat", "pulls_out", "sleeve", "light_stick"}
    load = {"pull_g"}  # on the card for the box
    for kind in (Sight, Visibility, Handling, Load, Tip):
        assert {field.name for field in fields(kind)} - known - names - tip - load == set()


# --- JSON


def at(told: Any, path: str) -> Any:
    for key in path.split("."):
        told = told[int(key) if key.isdigit() else key]
    return told


JSON = json_form(ANSWER)


@pytest.mark.parametrize("which", BLOCKS)
def test_json_has_each_number_of_a_block_under_its_own_name(which: str) -> None:
    told, numbers = JSON[which], BLOCKS[which]
    for name, (path, *_) in PLACES.items():
        if path:
            value = numbers[name] * (0.9144 if name.endswith("_yd") else 1)
            assert at(told, path) == pytest.approx(value, rel=5e-4), name
    for water in told["visibility"]["by_background"]:
        for key in ("level", "low", "high"):
            assert water[key] == numbers[water["name"]][key]
    on, off = ([{"name": n, "count": c} for n, c in numbers[k]] for k in ("on", "off"))
    assert (told["load"]["put_on"], told["load"]["take_off"]) == (on, off)
    assert [tuple(line.values()) for line in told["load"]["shot"]] == list(numbers["shot"])
    fails = [(*fail, False) for fail in numbers["fails"]]  # it is made anew, not as it is
    assert [tuple(fail.values()) for fail in told["fails"]] == fails
    assert [band["paint"] for band in told["paint"]] == list(numbers["paints"])
    assert (told["tip"]["stock"], told["passes"]) == (numbers["stock"], False)


def without_blocks(told: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [{k: v for k, v in one.items() if k not in ("block", "text")} for one in told]


def test_json_has_each_number_beside_the_blocks_under_its_own_name() -> None:
    assert without_blocks(JSON["reasons"]) == [
        {"kind": "size", "range_m": 34.75, "showing_mm": 49.0, "diameter_mm": 4.7,
         "tall_arcmin": 4.9, "wide_arcmin": 0.52},
        {"kind": "paint", "water": "bright", "paint": "black", "contrast": -0.83},
        {"kind": "paint", "water": "dark", "paint": "white", "contrast": 3.4},
        {"kind": "water hides", "hidden_mm": 18.0, "streaks_share": 0.28},
        {"kind": "turns", "options": {"behind": "dark"}, "water": "dark"},
    ]  # fmt: skip
    assert without_blocks(JSON["doubts"]) == [
        {"kind": "water", "spread": 1.87}, {"kind": "eyes", "spread": 1.36},
    ]  # fmt: skip
    assert [one for one in without_blocks(JSON["warnings"]) if one["kind"] != "null"] == [
        {"kind": "out of reach", "level": 3.2, "wanted": 5.0, "goes_at_m": 21.03},
        {"kind": "nearly", "limit": "strength", "value": 56.0, "allowed": 41.0, "as_it_is": False,
         "cures": ["thicker tip"]},
        {"kind": "held lifts", "lift_g": 0.33},
        {"kind": "outside", "name": "slope_rms", "value": 0.21, "low": 0.056, "high": 0.107,
         "unit": "", "waters": ["dark"]},
    ]  # fmt: skip
    assert [
        (one["range_m"], one["tip_in_hand"], one["advised"]) for one in JSON["by_distance"]
    ] == [
        (9.144, {"dark": 1.1, "bright": 2.2}, {"dark": 3.9, "bright": 5.1}),
        (18.29, {"dark": 10.1, "bright": 0.9}, {"dark": 20.1, "bright": 6.2}),
    ]
    names = ("diameter_mm", "showing_mm", "level", "sink_force_g", "ride_margin", "passes",
             "chosen", "of")  # fmt: skip
    assert [tuple(one[name] for name in names) for one in JSON["trade_off"]] == [*numbered.POINTS]
    assert [one["actions"] for one in JSON["changes"]][:2] == [
        [],
        [{"do": "pen", "ink_mm": 14.0, "whole": False},
         {"do": "show", "showing_mm": 34.0, "more": True}],
    ]  # fmt: skip
    fit = JSON["changes"][2]["actions"][0]
    assert (fit["do"], fit["stock"]["diameter_mm"], fit["showing_mm"]) == ("fit", 4.4, 51.0)
    shown = [one["block"]["tip"]["showing_mm"] for one in JSON["changes"]]
    assert shown == [21.0, 33.0, 46.0]
    steps = [(one["grade"], one["in_hand"], one["options"]) for one in JSON["next_step"]]
    assert steps == [
        ("followed", False, {"showing": "29 mm"}), ("kept in view", True, {}),
        ("easy", False, {}),
    ]  # fmt: skip
    assert JSON["question"] == {"distance": "40 yd", "age": "63"}
    assert [one["kind"] for one in JSON["cautions"]] == ["sun", "dust"]


def test_a_row_has_each_number_under_its_own_name() -> None:
    row = ANSWER.row()
    names = (
        "diameter_mm",
        "showing_mm",
        "level",
        "sink_force_g",
        "ride_margin",
        "shot_g",
        "change_g",
    )
    for which, numbers in BLOCKS.items():
        assert [row[f"{which}_{name}"] for name in names] == [numbers[name] for name in names]
        assert row[f"{which}_goes_at_m"] == numbers["goes_at_yd"] * 0.9144
        assert row[f"{which}_paint"] == " over ".join(numbers["paints"])
        assert row[f"{which}_stock"] == numbers["stock"]
    assert (row["range_m"], row["wanted_level"]) == (40 * 0.9144, 5.3)


# --- the text in full


FULL = text(ANSWER, full=True)


@pytest.mark.parametrize("which", BLOCKS)
def test_the_text_has_each_number_of_a_block_with_its_word(which: str) -> None:
    said = re.search(rf"^{HEADS[which]}\n(.*?)\n\n", FULL, re.MULTILINE | re.DOTALL)
    assert said is not None
    part = flat(said[1])
    missing = {name: words for name, words in expected(BLOCKS[which], 1) if words not in part}
    assert missing == {}


@pytest.mark.parametrize("which", BLOCKS)
def test_the_table_of_sight_has_each_water_s_numbers(which: str) -> None:
    for water in ("dark", "bright"):
        seen = BLOCKS[which][water]
        level, low, high, far = (seen[name] for name in IN_THE_SIGHT_TABLE)
        line = rf"^  {water} +{HEADS[which].lower()} .*  {level:g} \({low:g} to {high:g}\)  .*{far} yd$"
        assert re.search(line, FULL, re.MULTILINE)


BESIDE = (
    # what stands beside the blocks; the first column in the text alone, the second on the page too
    ("(1.4), not enough", ""), ("(2.8), not enough", ""), ("(5.9), not enough", ""),
    ("", "pen the top 14 mm (½ in) black and let 34 mm (1¼ in) show"),
    ("", "fit 4.4 mm cane, 51 mm (2 in) showing, white: put on two No 1"),
    ("4.1 mm 38 mm, 1½ in 4.6 0.57 g 3.8 4.2", "4.1 mm 38 mm, 1½ in 4.6 0.57 g"),
    ("4.2 mm 47 mm, 1¾ in 5.6 0.69 g 2.6 advised", "4.2 mm 47 mm, 1¾ in 5.6 0.69 g"),
    ("5.1 mm 48 mm, 2 in 6.4 0.87 g 2.1 passes", "5.1 mm 48 mm, 2 in 6.4 0.87 g"),
    # 4.9 by 0.52 arc minutes, each 0.873 mm at 3 m
    ("", "At 38 yd 49 mm of 4.7 mm is like a mark 4.3 by 0.45 mm across a room of 3 m"),
    ("", "bright water black is 83% darker"),
    ("", "dark water white is 4.4 times as bright"),
    ("", "hide about 18 mm of its foot; its streaks leave three quarters of"),
    ("x 1.87 water:", ""), ("x 1.36 eyes:", ""),
    ("", "fish it no farther than 23 yd"),
    ("", "it would show 56 mm where 41 mm is the most"),
    ("", "lifts the float by 0.33 g"),
    ("(dark water): 0.21, where it was checked from 0.056 to 0.107", "as steep as this (dark water)"),
    ("bite: 0.62 g to sink it where 0.39 g is the most", ""),
    ("sight: followed (level 2.9) where kept in view (5.2) is wanted", ""),
    ("", "ride: margin 1.8 where 2.4 is the least"),
    ("as it is, dark in-out easy as it is, bright in-out not seen", ""),
    ("at the bench, dark followed stands at the bench, bright kept kept", ""),
    ("tipsight advise --showing='29 mm'", ""), ("tipsight advise --showing='34 mm'", ""),
)  # fmt: skip


@pytest.mark.parametrize("words", [one for pair in BESIDE for one in pair if one])
def test_the_text_has_each_number_beside_the_blocks(words: str) -> None:
    assert words.casefold() in flat(FULL).casefold()


# --- the page


@pytest.fixture(scope="module")
def page() -> str:
    """What the page shows, its marks left out but for the drawings of the tips."""
    reply = create_app(advise=lambda _: ANSWER).test_client().get("/?distance=40+yd")
    assert reply.status_code == 200
    html = reply.text
    shown = re.sub(r"<(?!rect)[^>]*>", " ", html[: html.index('<form id="q"')])
    return flat(unescape(shown)) + " " + flat(" ".join(re.findall(r'aria-label="([^"]*)"', html)))


@pytest.mark.parametrize("which", BLOCKS)
def test_the_page_has_each_number_of_a_block_with_its_word(page: str, which: str) -> None:
    missing = {
        name: words
        for name, words in expected(BLOCKS[which], 2, LABELS[which])
        if words not in page
    }
    assert missing == {}


@pytest.mark.parametrize("title", ["Sight", "Ride", "What sinks it", "Shot"])
def test_the_page_has_the_readings_of_each_tip_behind_its_own_label(page: str, title: str) -> None:
    """The level, the margin, the force and the shot of the three tips follow their labels."""
    key = {"Sight": "level", "Ride": "ride_margin", "What sinks it": "sink_force_g",
           "Shot": "shot_g"}[title]  # fmt: skip
    part = page[page.index(f" {title} Tip in hand") :]
    spots = [
        (part.index(LABELS[which]), part.index(f"{numbers[key]:g}"))
        for which, numbers in BLOCKS.items()
    ]
    order = [place for pair in spots for place in pair]
    assert order == sorted(order)


@pytest.mark.parametrize("which", BLOCKS)
def test_the_page_has_each_water_s_numbers(page: str, which: str) -> None:
    for water in ("dark", "bright"):
        seen = BLOCKS[which][water]
        said = rf"on {water}: [a-z ]+ \({seen['level']:g}\), goes at about {seen['goes_at_yd']} yd"
        assert re.search(said, page)


def test_the_page_has_the_grades_of_both_ends(page: str) -> None:
    for words in (
        "likely 0.6 to 2.1: not seen to in and out",
        "likely 1.7 to 4.3: in and out to followed",
        "likely 3.4 to 8.2: followed to kept in view",
    ):
        assert words in page


def test_the_page_has_how_soon_a_tip_that_stays_down_is_noticed(page: str) -> None:
    assert page.index("noticed in about 8½ s") < page.index("noticed in about 5½ s")


@pytest.mark.parametrize("words", [pair[1] for pair in BESIDE if pair[1]])
def test_the_page_has_each_number_beside_the_blocks(page: str, words: str) -> None:
    assert words.casefold() in page.casefold()


def test_the_page_has_the_doubts_and_the_grades_over_distance(page: str) -> None:
    assert page.index("How bright the water") < page.index("× 1.87") < page.index("× 1.36")
    for which, numbers in BLOCKS.items():
        for water in ("dark", "bright"):
            said = rf"{LABELS[which]}, {water} water: [a-z ]+ to {numbers[water]['goes_at_yd']} yd\."
            assert re.search(said, page), (which, water)


# --- paper


def printed(data: bytes, folder: Any) -> str:
    """Return the words of a PDF; without poppler a person skips this, a checking machine must not."""
    if not shutil.which("pdftotext"):
        missing = "no poppler here: 'apt-get install poppler-utils' gets it"
        (pytest.fail if os.environ.get("CI") else pytest.skip)(missing)
    file = folder / "page.pdf"
    file.write_bytes(data)
    done = subprocess.run(  # noqa: S603
        ["pdftotext", str(file), "-"],  # noqa: S607
        capture_output=True,
        check=True,
    )
    return flat(done.stdout.decode("utf-8"))


@pytest.mark.parametrize("which", ["at_the_bank", "at_the_bench"])
def test_the_sheet_has_each_number_of_the_tip_that_is_made(which: str, tmp_path) -> None:
    answer: Answer = ANSWER if which == "at_the_bench" else replace(ANSWER, at_the_bench=None)
    words, numbers = printed(sheet.pdf(answer), tmp_path), BLOCKS[which]
    missing = {name: said for name, said in expected(numbers, 3) if said not in words}
    assert missing == {}
    whole = numbers["showing_mm"] + numbers["wet_mm"] + numbers["glued_mm"]
    assert f"{whole:g} mm (" in words
    for name, count, where in numbers["shot"]:
        assert f"{count} {name} {where}" in words
    assert "at 40 yd (37 m): " + answer_grade(numbers) in words


def answer_grade(numbers: Numbers) -> str:
    return "kept in view" if numbers["level"] >= 5.0 else "followed"


def test_the_card_is_of_the_pull_of_the_tip_advised(tmp_path) -> None:
    """2.51 g of pull at the bench and 1.74 g at the bank."""
    assert " 2.51 g in water" in printed(cards.shotting(ANSWER), tmp_path)
    bank = printed(cards.shotting(replace(ANSWER, at_the_bench=None)), tmp_path)
    assert " 1.74 g in water" in bank
    assert "3.2 mm quill, 33 mm, 1¼ in showing" in bank


def test_the_wall_card_is_of_the_painted_tips(tmp_path) -> None:
    """At 3 m as at 36.576 m: 4.83 by 46 mm and 3.37 by 21 mm, 12.192 times smaller."""
    words = printed(wall.pdf(ANSWER), tmp_path)
    assert "0.40 by 3.77 mm" in words
    assert "0.28 by 1.72 mm" in words
