"""The commands as a person uses and misuses them, and what was learned in every answer."""

import json
import re
import shlex
from pathlib import Path

import pytest

from tipsight.cli import main
from tipsight.commands import kept
from tipsight.errors import Mistake, Mistakes

CARD = "eyes card --age 60 --paces 0.85m 17 24 32 16 22 28"
SWIM = "--distance 34yd --behind bright --looks fur --showing '30 mm' --paint black"

LAST = (
    "shot",
    "day --date '2026-10-15 UTC' --place '52 N 1 W' --facing SW",
    "sheet",
    "card shotting",
    "card wall",
    "view --svg tip",
    "pocket",
)
"""Commands that ask a question; the first two print."""


@pytest.fixture
def tell(capsys, tmp_path, monkeypatch):
    monkeypatch.setenv("TIPSIGHT_BOX", str(tmp_path / "my.box"))

    def go(line):
        code = main(shlex.split(line))
        said, wrong = capsys.readouterr()
        return code, " ".join(said.split()), " ".join(wrong.split())

    return go


def test_a_card_is_kept_and_said(tell):
    code, said, wrong = tell(CARD)
    assert (code, wrong) == (0, "")
    assert said.startswith("Kept as reading 1. EYES Your eyes: 0.92 times what is usual at your age (")
    assert "from 6 bars; how readily you say 'gone' is in it" in said
    assert "no eye test" in said
    assert "o-" in said
    assert tell("eyes")[1] in said


def test_a_card_out_and_back_is_narrower_and_a_missed_bar_is_no_bar(tell):
    assert "from 6 bars" in tell(f"{CARD} 16 23 30 15 21 27")[1]
    tell("eyes drop 1")
    said = tell("eyes card --age 60 --paces 0.85m 17 - 32 - - -")[1]
    assert "not enough yet to say, from 2 bars" in said
    assert "LEFT OUT 1;" in said


def test_a_bar_miscounted_is_named(tell):
    said = tell("eyes card --age 60 --paces 0.85m 17 24 11 16 22 28")[1]
    assert "ODD bar 3 lies far from the rest" in said


def test_a_card_by_being_asked(tell, monkeypatch):
    answers = iter(["17", "16", "24", "23", "32", "-", "16", "-", "-", "-", "28", "27"])
    monkeypatch.setattr("click.prompt", lambda *_, **__: next(answers))
    assert "from 5 bars" in tell("eyes card --asked --paces 0.85m --age 60")[1]


def test_corners_lead_on_until_narrow_enough(tell, monkeypatch):
    asked = []

    def answer(said, **_):
        asked.append(said)
        return "y" if int(said.split()[0]) < 36 else "n"

    monkeypatch.setattr("click.prompt", answer)
    said = tell("eyes corners --age 60 --until 1.3")[1]
    assert 3 <= len(asked) < 40
    low, high = re.search(r"no say-so in it: [\d.]+ \(([\d.]+) to ([\d.]+)\) by this one bar", said).groups()
    assert float(high) / float(low) == pytest.approx(1.3**2, abs=0.12)  # and not much narrower
    assert "Kept as reading 1" in said


def test_no_look_keeps_nothing(tell, monkeypatch):
    monkeypatch.setattr("click.prompt", lambda *_, **__: "")
    assert tell("eyes corners")[1].startswith("No look was told; nothing was kept.")


def test_notes_are_kept_and_undone(tell):
    tell(CARD)
    before = tell("eyes")[1]
    said = tell(f"note {SWIM} --went 34yd")[1]
    assert "from 6 bars and 1 note" in said
    assert "2: " in said
    assert tell("eyes drop 2")[1].startswith("Reading 2, of ")
    assert "from 6 bars;" in tell("eyes")[1]
    tell("eyes back 2")
    assert "from 6 bars and 1 note" in tell("eyes")[1]
    assert before != tell("eyes")[1]


def test_a_note_of_the_last_question(tell, tmp_path):
    assert "no question is kept yet, as there is no box; tell it here" in tell("note --last --went 30yd")[2]
    tell(f"advise {SWIM}")
    assert not (tmp_path / "my.box").exists()  # to be answered makes no file
    tell(CARD)
    assert "none was asked since this box was begun" in tell("note --last --went 30yd")[2]
    tell(f"advise {SWIM}")
    tell("advise")  # the invented swim is nobody's question
    said = tell("note --last --followed 30yd")[1]
    assert said.startswith(
        "Kept as reading 2, of the question asked last: distance 34yd, behind bright, showing 30 mm, "
        "paint black."
    )
    assert "followed to 30 yd" in said
    assert "there is no such file" in tell(f"note --last --went 30yd --box {tmp_path / 'none'}")[2]


@pytest.mark.parametrize("asked", LAST)
def test_the_last_question_may_be_any_commands(tell, asked, tmp_path, monkeypatch):
    monkeypatch.setattr("tipsight.paper.pocket.html", lambda *_: "")
    monkeypatch.setattr("tipsight.hours.skies.course", lambda *_: None)
    monkeypatch.setattr("tipsight.output.course_words.text", lambda _: "")
    tell(CARD)
    tell(f"advise {SWIM}")
    out = "" if asked in LAST[:2] else f"-o {tmp_path / 'out'}"
    code, _, wrong = tell(f"{asked} --distance 31yd {out}")
    assert (code, wrong) == (0, "")
    said = tell("note --last --followed 30yd")[1]
    assert said.startswith("Kept as reading 2, of the question asked last: distance 31yd.")


def test_what_was_learned_is_in_every_answer(tell):
    plain = json.loads(tell(f"advise {SWIM} --age 60 --json")[1])
    tell(CARD)
    learned = json.loads(tell(f"advise {SWIM} --json")[1])
    taken = {one["item"]: one["taken"] for one in learned["assumed"]}
    assert taken["own_eye"] == "0.92, from 6 bars"
    assert taken["age"] == "60"
    was, now = (one["tip_in_hand"]["visibility"] for one in (plain, learned))
    assert now["level"] < was["level"]
    assert now["high"] / now["low"] < was["high"] / was["low"]
    told = json.loads(tell(f"advise {SWIM} --age 60 --own-eye 1 --json")[1])
    assert told["tip_in_hand"]["visibility"]["level"] == was["level"]
    nobody = json.loads(tell(f"advise {SWIM} --age 60 --who nobody --json")[1])
    assert nobody["tip_in_hand"]["visibility"] == was
    assert "your eyes: 0.92, from 6 bars" in tell(f"advise {SWIM} --full")[1]


def test_it_is_on_page_and_paper_too(tell, tmp_path):
    from tipsight.inputs.question import Question
    from webui import create_app

    tell(CARD)
    known = kept.learnt(Question(), None, None, None)
    client = create_app(Question(learnt=known)).test_client()
    said = client.get("/advise.json", query_string={"distance": "34 yd"}).get_json()
    assert {"item": "own_eye", "taken": "0.92, from 6 bars"} in said["assumed"]
    assert "0.92, from 6 bars" in client.get("/", query_string={"distance": "34 yd"}).text
    for command in ("sheet", "card bank", "card wall", "view --svg tip"):
        assert tell(f"{command} -o {tmp_path / 'out'}")[0] == 0


def test_it_is_in_the_pocket_file_and_the_day_too(tell, monkeypatch, tmp_path):
    """Each asks the question that goes with what was learned; tests/hours and tests/paper see it counted."""
    put = []
    monkeypatch.setattr("tipsight.paper.pocket.html", lambda question, *_: put.append(question) or "")
    monkeypatch.setattr("tipsight.hours.skies.course", lambda question, *_: put.append(question))
    monkeypatch.setattr("tipsight.output.course_words.text", lambda _: "")
    tell(CARD)
    for line in (f"pocket {SWIM} -o {tmp_path / 'out'}", f"{LAST[1]} {SWIM} --sky clear"):
        assert tell(line)[0] == 0
    assert [one.learnt.of("own_eye").taken for one in put] == ["0.92, from 6 bars"] * 2
    assert tell(f"{LAST[1]} {SWIM} --sky clear --who nobody")[0] == 0
    assert put[-1].learnt.of("own_eye") is None


@pytest.mark.parametrize("job", ["gaps", "make 1", "carry", "idle"])
def test_it_is_in_every_job_of_a_season(tell, job, monkeypatch, tmp_path):
    """The swim that tells his age is read with the eyes of that age; the other takes what he told."""
    seen = []

    def served(*told, **_):
        seen.extend(told[0] if job == "make 1" else told[1])
        raise Mistakes([Mistake("season", "", "that is enough", "")])

    monkeypatch.setattr("tipsight.season.served.served", served)
    monkeypatch.setattr("tipsight.season.making.make", served)
    tell(CARD)
    tell("box put 'quill avon, 6BB, 3 mm quill 20 mm black'")
    swims = tmp_path / "swims.toml"
    swims.write_text("[[swim]]\n[[swim]]\neyes.age = \"80\"\n")
    tell(f"box {job} --swims {swims}")
    taken = [one.question.learnt.of("own_eye").text for one in seen]
    assert taken[0] == "0.92" < taken[1]
    tell(f"box {job} --swims {swims} --who nobody")
    assert [one.question.learnt.of("own_eye") for one in seen[2:]] == [None, None]
    assert "--who: 'Ann' will not do; there are readings of me" in tell(f"box {job} --who Ann")[2]


def test_more_than_one_person(tell):
    tell(CARD)
    tell("eyes card --who Ann --age 30 --paces 0.85m 30 40 50 28 45 52")
    assert "The eyes of Ann:" in tell("eyes --who Ann")[1]
    assert "0.92 times" in tell("eyes")[1]
    ann = json.loads(tell(f"advise {SWIM} --who Ann --json")[1])
    assert {"item": "age", "taken": "30"} in ann["assumed"]


def wide(handling):
    return handling["ride_margin_high"] / handling["ride_margin_low"]


def test_a_water_by_name(tell):
    asked = "--distance 34yd --behind bright --showing '12 mm'"
    said = tell(f"water 'Mill run' {asked} --dips '6 in 2 min'")[1]
    assert said.startswith("Kept as reading 1. WATER Mill run boils ")
    assert "from 1 count on 1 visit" in said
    assert "on 1 visit" in tell("water 'Mill run'")[1]
    tell(f"water 'Mill run' {asked} --lowest 20mm")
    tell(f"water 'Mill run' {asked} --under '1.5 s 3 a minute' --dips 'none in 3 min'")
    assert "from 4 counts" in tell("water 'Mill run'")[1]
    tell(f"advise {asked}")
    said = tell("water 'Other run' --last --dips '2 in 2 min'")[1]
    assert said.startswith("Kept as reading 5, of the question asked last: distance 34yd, behind bright")
    found = json.loads(tell(f"advise {asked} --water 'Mill run' --json")[1])
    (boils,) = [one["taken"] for one in found["assumed"] if one["item"] == "boils"]
    assert boils.endswith(", from 4 counts")
    plain = json.loads(tell(f"advise {asked} --boils {boils.split(',')[0]} --json")[1])
    counted, told = (one["tip_in_hand"]["handling"] for one in (found, plain))
    assert counted["ride_margin"] == told["ride_margin"]
    assert wide(counted) < 1.5 < wide(told)  # sd .1 of today's counts for the .4 of a word


MISTAKES = {
    "eyes card 17 24": "eyes card: say six numbers, or twelve with the way back; these are 2",
    "eyes card 1 2 3 4 5 6": "say how far with its unit, or how long a pace is; 3 to 100 m",
    "eyes card --paces 0.85m 17 24 x 16 22 900": "bar 3: 'x' will not do; say how many paces; 3.5 to 118",
    "eyes card --paces 2m 17 24 32 16 22 28": "--paces: '2m' will not do; say how long one pace is",
    "eyes card --paces 0.85m - - - - - -": "not one bar was seen; nothing was kept",
    "eyes card --ruler 9mm 17 24 32 16 22 28": "say how long the printed ruler is, 50 to 150 mm",
    "eyes card --squares 90m 17 24 32 16 22 28": "say how far off the squares were two",
    "eyes card --age 900 17 24 32 16 22 28": "--age: '900' will not do; ",
    "eyes corners --until 3": "--until: '3' will not do; say how narrow, 1.12 to 1.5",
    "eyes look": "eyes: 'look' will not do; say card or corners or drop or back, or nothing",
    "eyes --age 60": "eyes: say card before what you saw",
    "eyes drop x": "eyes drop: 'x' will not do; say the number of one reading",
    "eyes drop 7": "reading: '7' will not do; there is no such reading",
    "eyes --date 2999-01-01": "--date: '2999-01-01' will not do; say a day, today or before",
    "eyes --box /nowhere/at.all": "--box: '/nowhere/at.all' will not do; there is no such file",
    "note --went 34yd": "note: say of which swim and tip, by its file or as you asked it, or --last",
    "note demo": "note: say one of --went, --followed and --not-seen",
    "note demo --went 34": "--went: '34' will not do; say how far, with its unit, 3.3 to 109 yd",
    "note demo --last --went 34yd": "--last: it stands for the whole question; leave the rest out",
    "note demo --distance 9 --went 34yd": "distance: '9' will not do; say the unit",
    "water 'Mill run'": "water: 'Mill run' will not do; nothing was told of it yet; count its dips",
    "water 'Mill run' demo --dips 6": "--dips: '6' will not do; say how many in how many minutes",
    "water 'Mill run' demo --dips '70 in 1 min'": "--dips: '70 in 1 min' will not do; say how many in how",
    "water 'Mill run' --dips '6 in 2 min'": "water: say on which swim with which float, by its file",
    "water 'Mill run' demo --lowest 900mm": "say how far, 0.5 to 200 mm",
    "water 'Mill run' demo --under '60 s 9 a minute'": "say how long, and how often a minute, under",
    "water '' demo": "say a name, 60 letters at the most",
    "advise --who Ann": "--who: 'Ann' will not do; there are readings of me",
    "advise --water Mill": "--water: 'Mill' will not do; there are no readings yet",
}


@pytest.mark.parametrize("line", MISTAKES)
def test_a_mistake_is_told_plainly_and_keeps_nothing(tell, line):
    tell(CARD)
    before = tell("eyes")[1]
    code, said, wrong = tell(line)
    assert (code, said) == (2, "")
    assert MISTAKES[line] in wrong
    assert tell("eyes")[1] == before


def test_it_was_broken_off(tell, monkeypatch):
    import click

    def stop(*_, **__):
        raise click.Abort

    monkeypatch.setattr("click.prompt", stop)
    assert "it was broken off; nothing was kept" in tell("eyes card --asked --paces 0.85m")[2]


def test_the_readme_says_what_its_owner_is_told(tell):
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    part = readme.partition("## Make it yours")[2].partition("\n## ")[0]
    sentence = " ".join(part.partition("is told: *")[2].partition("*")[0].split())
    assert CARD in part
    assert len(sentence) > 80
    assert sentence in tell(CARD)[1]
