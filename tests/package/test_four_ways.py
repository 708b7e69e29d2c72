"""One question, four ways in: Python, a file, the command and the page give the same numbers."""

import json

import pytest

from tipsight.advice.advise import advise
from tipsight.cli import main
from tipsight.inputs.options import as_arguments
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.inputs.toml_text import write
from tipsight.output.json_form import json_form
from webui import create_app

SAID = {
    "distance": "32 yd",
    "eye": "sat",
    "pace": "12 s",
    "looks": "ripple",
    "sky": "dull overcast",
    "behind": ("dark 40%", "bright 60%"),
    "age": "63",
    "takes": "3AAA+2BB+1 No 8",
    "diameter": "3,5 mm",
    "showing": "1¼in",
    "paint": "black 0-15 mm, fluorescent orange",
}
NUMBERS = ("tip_in_hand", "at_the_bank", "at_the_bench", "by_distance", "trade_off")


@pytest.fixture(scope="module")
def from_python():
    return json_form(advise(Question(**SAID)))


def printed(capsys, *arguments):
    assert main(["advise", *arguments, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_numbers_and_lists_say_the_same_as_texts(from_python):
    said = {**SAID, "behind": ["dark 40%", "bright 60%"], "age": 63, "diameter": 3.5}
    found = json_form(advise(Question(**said)))
    assert [found[key] for key in NUMBERS] == [from_python[key] for key in NUMBERS]


def test_a_file_gives_the_same_numbers(from_python, capsys, tmp_path):
    question = Question(**SAID)
    path = tmp_path / "mine.toml"
    path.write_text(write(question, settle(question)), encoding="utf-8")
    found = printed(capsys, str(path))
    assert [found[key] for key in NUMBERS] == [from_python[key] for key in NUMBERS]


def test_the_command_gives_the_same_numbers(from_python, capsys):
    found = printed(capsys, *as_arguments(SAID))
    assert [found[key] for key in NUMBERS] == [from_python[key] for key in NUMBERS]


def test_the_page_gives_the_same_numbers(from_python):
    reply = create_app().test_client().get("/advise.json", query_string=SAID)
    assert reply.status_code == 200
    found = reply.get_json()
    assert [found[key] for key in NUMBERS] == [from_python[key] for key in NUMBERS]
