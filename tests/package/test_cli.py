"""The command line, as a person uses and misuses it."""

import json
import os
import re
import shlex
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import click
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import tipsight
from tipsight import cli
from tipsight.commands import shot
from tipsight.errors import OutOfRange
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS, SECTIONS
from tipsight.inputs.options import as_arguments, as_line
from tipsight.inputs.toml_text import read

ROOT = Path(__file__).parents[2]
Run = tuple[int, str, str]
Runner = Callable[..., Run]


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    def go(*arguments: str) -> Run:
        code = cli.main(list(arguments))
        out, err = capsys.readouterr()
        return code, out, err

    return go


def fresh(*arguments: str, **environment: str) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(  # noqa: S603
        [sys.executable, "-m", "tipsight", *arguments],
        cwd=ROOT,
        env={**os.environ, **environment},
        capture_output=True,
        check=False,
    )


def test_help_names_the_commands(run: Runner) -> None:
    for arguments in ((), ("--help",), ("-h",), ("help",)):
        code, out, err = run(*arguments)
        assert (code, err) == (0, "")
        for name, says in cli.COMMANDS.items():
            assert re.search(rf"^  {name} +{re.escape(says)}$", out, re.MULTILINE)


@pytest.mark.parametrize("command", ["advise", "shot"])
def test_help_of_a_command_lists_every_item(run: Runner, command: str) -> None:
    code, out, err = run(command, "--help", "all")
    assert (code, err) == (0, "")
    for item in ITEMS.values():
        assert re.search(rf"^  {item.option} ", out, re.MULTILINE)
    for title in SECTIONS.values():
        assert f"\n{title}:\n" in out
    assert "Not told, 40 yd is taken." in " ".join(out.split())
    assert "Say 3.3 to 109 yd, in yards or metres." in " ".join(out.split())
    assert max(map(len, out.splitlines())) <= 80


def test_help_fits_two_screens(run: Runner) -> None:
    """Of 24 lines and 80 columns: what most people tell, and the command's own options."""
    out = run("advise", "--help")[1]
    assert len(out.splitlines()) <= 48
    assert max(map(len, out.splitlines())) <= 80
    for item in ITEMS.values():
        assert bool(re.search(rf"^  {item.option} ", out, re.MULTILINE)) != item.folded
        if not item.folded:
            example = shlex.quote(item.example)
            assert f"{item.option} {item.question} {example}" in " ".join(out.split())
    for option in ("--full", "--json", "--question", "--units", "--tables", "--help all"):
        assert option in out
    assert run("advise", "-h")[1] == run("advise", "demo", "--help")[1] == out


def test_the_answer_in_metres(run: Runner) -> None:
    """40 yd are 36.6 m, half a metre off the next whole one; a reader of metres has no inches."""
    code, out, err = run("advise", "demo", "--units", "metres", "--full")
    assert (code, err) == (0, "")
    assert "SIGHT at 37 m, by the water" in out
    assert "tipsight advise demo --units metres --" in out
    assert "\nMETRES " in out
    answer = re.sub(r"--\S+='[^']*'", "", out.partition("NOT TOLD")[0])  # but for what is typed
    assert not re.search(r"\d yd|[\d¼½¾] in\b", answer)
    assert run("advise", "demo", "--units", "yards")[1] == run("advise", "demo")[1]
    told, usual = (
        json.loads(run("advise", "demo", "--json", "--units", units)[1])
        for units in ("metres", "yards")
    )
    said, usually = (" ".join(one["text"] for one in form["changes"]) for form in (told, usual))
    assert re.search(r"\d yd", usually)
    assert not re.search(r"\d yd|[\d¼½¾] in\b", said)
    assert told["tip_in_hand"] == usual["tip_in_hand"]


def test_mistakes_are_told_in_metres_too(run: Runner) -> None:
    assert "say 3 to 100 m" in run("advise", "--distance", "200 yd", "--units", "metres")[2]
    assert "say 3.3 to 109 yd" in run("advise", "--distance", "200 yd")[2]


def test_who_comes_in_still_knows_his_distance_as_well(run: Runner) -> None:
    """Told again in yards, a distance that counted as paced (15 %) would be a guess (25 %)."""
    paced = ("advise", "demo", "--distance", "40 paces", "--known", "not told")
    told = json.loads(run(*paced, "--json")[1])
    closer = [one for one in told["changes"] if "distance" in one["options"]]
    assert closer
    for change in closer:
        assert change["options"]["known"] == "paced"
        again = json.loads(run("advise", "demo", *as_arguments(change["options"]), "--json")[1])
        retold, printed = again["tip_in_hand"]["visibility"], change["block"]["visibility"]
        for end in ("low", "high"):  # told to four figures, between other distances: 1e-3 apart
            assert retold[end] == pytest.approx(printed[end], rel=1e-3)
        guess = json.loads(
            run(
                "advise",
                "demo",
                *as_arguments({**change["options"], "known": "guessed"}),
                "--json",
            )[1]
        )["tip_in_hand"]["visibility"]
        assert guess["high"] > 1.01 * printed["high"]


def test_no_item_is_hidden_by_an_option_of_the_command() -> None:
    assert not {"file", "tables", "full", "json", "question", "units"} & set(ITEMS)


def test_without_arguments_the_invented_swim_is_answered(run: Runner) -> None:
    code, out, err = run("advise")
    assert (code, err) == (0, "")
    assert out.startswith("NOW          ")
    assert len(out.splitlines()) <= 40
    assert max(map(len, out.splitlines())) <= 80
    assert out == run("advise", "demo")[1]


@pytest.mark.parametrize("name", demo.names())
def test_the_invented_swims_are_answered_whole(run: Runner, name: str) -> None:
    code, out, err = run("advise", name)
    assert (code, err) == (0, "")
    assert len(out.splitlines()) <= 40
    code, full, err = run("advise", name, "--full")
    assert (code, err) == (0, "")
    assert full.splitlines()[:6] == out.splitlines()[:6]
    assert max(map(len, (*out.splitlines(), *full.splitlines()))) <= 80


@pytest.mark.parametrize("name", demo.names())
def test_the_whole_question_fed_back_gives_the_same_answer(
    run: Runner, tmp_path: Path, name: str
) -> None:
    written = run("advise", name, "--question")[1]
    path = tmp_path / "mine.toml"
    path.write_text(written, encoding="utf-8")
    first, again = (json.loads(run("advise", source, "--json")[1]) for source in (name, str(path)))
    told, back = first.pop("question"), again.pop("question")
    assert again == first
    assert list(back) == list(told)


def test_taken_lines_uncommented_give_the_same_answer(run: Runner, tmp_path: Path) -> None:
    written = run("advise", "match", "--question")[1]
    told = re.sub(r"^# (\w+ = .*?)  # not told, so taken as$", r"\1", written, flags=re.MULTILINE)
    path = tmp_path / "mine.toml"
    path.write_text(told, encoding="utf-8")
    assert len(read(told).told()) > len(demo.question("match").told())
    first, again = (
        json.loads(run("advise", source, "--json")[1]) for source in ("match", str(path))
    )
    for key in ("tip_in_hand", "at_the_bank", "at_the_bench", "by_distance", "doubts"):
        assert again[key] == first[key]


def test_options_stand_on_top_of_a_file(run: Runner, tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text('[place]\ndistance = "40 yd"\n[eyes]\nage = 60\n', encoding="utf-8")
    told = json.loads(run("advise", str(path), "--distance", "25yd", "--json")[1])["question"]
    assert told == {"distance": "25yd", "age": 60.0}
    code, out, _ = run("advise", str(path), "--age", "not told", "--question")
    assert code == 0
    assert "# age = " in out


def test_a_file_of_ones_own_stands_before_an_invented_swim_of_its_name(
    run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "demo").write_text("\ufeff[place]\ndistance = '17 yd'\n", encoding="utf-8")
    assert 'distance = "17 yd"' in run("advise", "demo", "--question")[1]


def test_options_alone_are_the_whole_question(run: Runner) -> None:
    told = json.loads(run("advise", "--distance=20 yd", "--json")[1])
    assert told["question"] == {"distance": "20 yd"}
    assert len(told["assumed"]) > 20


def test_an_option_may_be_given_several_times(run: Runner) -> None:
    out = run("advise", "--behind", "dark 60%", "--behind", "bright 40%", "--question")[1]
    assert 'behind = ["dark 60%", "bright 40%"]' in out


@pytest.mark.parametrize("value", ["-5", "-5 deg"])
def test_a_value_may_begin_with_a_minus(run: Runner, value: str) -> None:
    code, out, err = run("advise", "--sun-height", value, "--question")
    assert (code, err) == (0, "")
    assert f'sun_height = "{value}"' in out


@pytest.mark.slow
def test_the_commands_that_are_printed_can_be_typed(run: Runner) -> None:
    out = run("advise", "dusk", "--age=50", "--behind=dark", "--full")[1]
    lines = re.findall(r"^  (tipsight advise .*)$", out.replace(" \\\n", " "), re.MULTILINE)
    assert len(lines) >= 3
    for line in lines:
        program, *arguments = shlex.split(line)
        assert program == "tipsight"
        assert arguments[:2] == ["advise", "dusk"]
        code, said, err = run(*arguments, "--question")
        assert (code, err) == (0, ""), line
        assert "age = " in said


def test_shot_does_the_benchs_job_alone(run: Runner) -> None:
    code, out, err = run("shot")
    assert (code, err) == (0, "")
    assert max(map(len, out.splitlines())) <= 80
    # The demo's float takes 6BB (2.40 g, common practice, no source) as it is to show.
    assert re.search(r"^  as it is to show +20 mm, ¾ in +2\.40 g ", out, re.MULTILINE)
    assert "SHOT LEFT    2.40 g as it is to show" in out
    assert "CARE" not in out


def test_shot_cares_about_lead(run: Runner) -> None:
    out = run("shot", "demo", "--shot-metal", "lead")[1]
    assert "CARE" in out
    assert "check the current rules" in re.sub(r"\s+", " ", out)
    assert re.search(r"Left out: SSG, AAA", re.sub(r"\s+", " ", out))


MISTAKES = {
    "advize": "command: 'advize' will not do; the commands are advise, shot",
    "advize now": "did you mean 'advise'? (for example tipsight advise)",
    "advise --distanse '3 yd'": "--distanse: there is no such option; did you mean '--distance'?",
    "advise --zzzz": "--zzzz: there is no such option\n",
    "advise -x": "-x: there is no such option\n",
    "advise --tint": "--tint: say a value after it (for example --tint none)",
    "advise --tint --age 60": "--tint: say a value after it (for example --tint none)",
    "advise --distance --sun-height 3": "--distance: say a value after it (for example "
    "--distance '40 yd')",
    "shot --tint": "--tint: say a value after it (for example --tint none)",
    "card": "card: say shotting or bank or wall or fence (for example tipsight card shotting)",
    "view --ripple x": "--ripple: 'x' will not do; say a whole number, 0 to 999999 (for example 3)",
    "page --port 0": "--port: '0' will not do; say a whole number, 1 to 65535 (for example 8765)",
    "page --port 8o8o": "--port: '8o8o' will not do; say a whole number, 1 to 65535",
    "page --port 65536": "--port: '65536' will not do; say a whole number, 1 to 65535",
    "advise --units feet": "--units: 'feet' will not do; say yards or metres (for example yards)",
    "advise --units": "--units: say a value after it (for example --units yards)",
    "advise --eye 5": "eye: '5' will not do; say the unit, feet or metres (for example 5 ft)",
    "sheet --paper": "--paper: say a value after it (for example --paper a4)",
    "sheet --out": "--out: say a value after it (for example --out FILE)",
    "shot --dist 3": "--dist: there is no such option; did you mean '--distance'?",
    "advise ''": "file: '.' will not do; this is a folder, not a file",
    "advise --full=3": "--full: it takes no value (for example --full)",
    "advise --json --question": "--question: it does not go together with --json; leave one",
    "advise --full --json": "--json: it does not go together with --full; leave one of them out",
    "advise demo yd": "command line: 'yd' will not do; this stands alone, with no option before "
    "it; text with a blank in it stands in quotes (for example --distance '40 yd')",
    "advise mach": "file: 'mach' will not do; there is no such file; did you mean 'match'?",
    "advise /": "file: '/' will not do; this is a folder, not a file (for example mine.toml)",
    "advise a\0b": "file: 'a\\x00b' will not do; this file cannot be read",
    "advise --distance 40": "distance: '40' will not do; say the unit, yards or metres",
    "advise --distance 'nan yd'": "distance: 'nan yd' will not do; ",
    "advise --stock wool": "stock: 'wool' will not do; say solid, thin tube, ",
    "advise --tables /nowhere": "tables: '/nowhere' will not do; there is no such folder",
}


@pytest.mark.parametrize("line", MISTAKES)
def test_a_mistake_is_told_plainly(run: Runner, line: str) -> None:
    code, out, err = run(*shlex.split(line))
    assert code == 2
    assert out == ""
    assert MISTAKES[line] in err
    assert err.endswith("\n")


def test_all_mistakes_are_told_at_once(run: Runner) -> None:
    code, out, err = run("advise", "--distance", "4000 yd", "--age", "nan", "--tint", "pink")
    assert (code, out) == (2, "")
    assert [line.partition(":")[0] for line in err.splitlines()] == ["distance", "age", "tint"]
    code, out, err = run("shot", "--distanse", "3", "--tint", "--agge", "3", "--full=3")
    assert [line.partition(":")[0] for line in err.splitlines()] == [
        "--distanse", "--tint", "--agge", "--full",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"\xff\xfe\x00", "this is not a text file in UTF-8"),
        (b"distance = 40 yd", "this is not TOML at line 1"),
        (b"[place]\ndistanse = '40 yd'", "distanse: there is no such item in [place]; did"),
        (b"[tip]\nshowing = '60 mm'\nglued = '151 mm'", "glued: '151 mm' will not do; say 0 to 150"),
    ],
    ids=["bytes", "toml", "spelling", "glued"],
)  # fmt: skip
def test_a_file_that_will_not_do(run: Runner, tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "mine.toml"
    path.write_bytes(content)
    code, out, err = run("advise", str(path))
    assert (code, out) == (2, "")
    assert said in err


def test_a_float_that_sinks_is_told_of(run: Runner) -> None:
    code, out, err = run("shot", "--pattern", "canal balsa", "--diameter", "1.5 mm", "--showing",
                         "8 mm", "--stock", "solid", "--weighs", "30 g")  # fmt: skip
    assert (code, out) == (2, "")
    assert err


def test_a_float_that_falls_over_is_told_of(run: Runner) -> None:
    """Four millimetres of solid plastic, 80 mm high, on an inch of foam."""
    code, out, err = run("shot", "--parts", "body, cylinder, foam, 25 mm long, 11 mm thick",
                         "--diameter", "4 mm", "--stock", "solid", "--showing", "80 mm",
                         "--wet", "5 mm")  # fmt: skip
    assert (code, err) == (0, "")
    assert "BALANCE      with all its shot on it falls over" in out
    assert "falls over" not in run("shot", "demo")[1]


def test_own_tables_stand_in_and_are_put_away_again(run: Runner, tmp_path: Path) -> None:
    before = run("shot", "demo")[1]
    own = "name,group,mass_g,source\nBB,shot,0.44,weighed\n"
    (tmp_path / "shot.csv").write_text(own, encoding="utf-8")
    code, out, err = run("shot", "demo", "--tables", str(tmp_path))
    assert (code, err) == (0, "")
    assert "SHOT LEFT    2.64 g" in out  # six of 0.44 g
    assert run("shot", "demo")[1] == before


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("shot.csv", "name,group\nBB,shot\n", "line 1: the columns mass_g, source are missing"),
        ("shott.csv", "name\n", "there is no packaged table of this name; did you mean 'shot'?"),
        ("notes.txt", "nothing", "there is no table in this folder"),
    ],
)
def test_own_tables_that_do_not_serve(
    run: Runner, tmp_path: Path, name: str, content: str, said: str
) -> None:
    (tmp_path / name).write_text(content, encoding="utf-8")
    code, out, err = run("shot", "demo", "--tables", str(tmp_path))
    assert (code, out) == (2, "")
    assert said in err
    assert run("shot", "demo")[0] == 0


def test_a_terminal_without_fractions_is_served() -> None:
    done = fresh("shot", "demo", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"20 mm, 3/4 in" in done.stdout


def test_a_mistake_in_strange_letters_is_told_on_a_plain_terminal() -> None:
    done = fresh("advise", "--stock", "wöl ¼", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert (done.returncode, done.stdout) == (2, b"")
    assert b"stock:" in done.stderr
    assert b"Traceback" not in done.stderr


def test_a_pipe_that_no_one_reads_is_no_matter() -> None:
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [sys.executable, "-m", "tipsight", "shot"],
        cwd=ROOT,
        stdout=writer,
        stderr=subprocess.PIPE,
        check=False,
    )
    os.close(writer)
    assert (done.returncode, done.stderr) == (0, b"")


def test_stopping_it_is_quiet(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(**_: object) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr("tipsight.commands.shot.run.callback", stopped)
    assert run("shot") == (130, "", "")


def test_what_the_sums_do_not_reach_is_told_plainly(
    run: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    def beyond(**_: object) -> str:
        raise OutOfRange("visibility", 5.0, 20.0, 100000.0, "m")

    monkeypatch.setattr("tipsight.commands.shot.run.callback", beyond)
    assert run("shot") == (2, "", "visibility must be 20 to 100000 m, got 5 m\n")


def test_a_file_that_may_not_be_read(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> str:
        raise PermissionError

    monkeypatch.setattr(Path, "read_text", refused)
    code, out, err = run("advise", "locked.toml")
    assert (code, out) == (2, "")
    assert (
        err
        == "file: 'locked.toml' will not do; you may not read this file (for example mine.toml)\n"
    )


def test_a_complaint_of_another_kind_is_passed_on(
    run: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    def strange(**_: object) -> str:
        raise click.UsageError("something strange")

    monkeypatch.setattr("tipsight.commands.shot.run.callback", strange)
    assert run("shot") == (2, "", "command line: something strange\n")


def test_what_stands_behind_two_dashes_is_no_option(run: Runner) -> None:
    assert run("advise", "--", "--json")[2].startswith(
        "file: '--json' will not do; there is no such file"
    )


def told_of(*arguments: str) -> dict[str, object]:
    """Return what a line gives that is not left out."""
    given = shot.run.make_context("shot", list(arguments)).params
    return {key: value for key, value in given.items() if value not in (None, ())}


@settings(deadline=None, derandomize=True, max_examples=200)
@given(
    st.dictionaries(
        st.sampled_from([key for key, item in ITEMS.items() if not item.repeats]),
        st.text(min_size=1, max_size=20).filter(lambda text: text.strip()),
        max_size=5,
    )
)
def test_options_read_back(options: dict[str, str]) -> None:
    assert told_of(*as_arguments(options)) == options
    assert shlex.split(as_line(options)) == as_arguments(options)


def test_options_of_other_kinds_read_back() -> None:
    options = {"behind": ("dark 60%", "bright 40%"), "sun_height": -3.0, "pen": False, "age": None}
    assert told_of(*as_arguments(options)) == {
        "behind": ("dark 60%", "bright 40%"),
        "sun_height": "-3",
        "pen": "no",
        "age": "not told",
    }


def test_not_told_takes_an_item_back(run: Runner) -> None:
    out = run("advise", "demo", "--distance", "not told", "--behind", "not told", "--question")[1]
    assert "# distance = " in out
    assert "# behind = " in out
    assert 'pattern = "quill avon"' in out


def test_a_name_that_is_not_public() -> None:
    with pytest.raises(AttributeError, match="module 'tipsight' has no attribute 'advice_'"):
        tipsight.advice_  # noqa: B018
    assert {"Question", "advise"} <= set(dir(tipsight))


@pytest.mark.slow
@pytest.mark.parametrize("name", demo.names())
def test_the_options_of_each_change_give_the_printed_answer(run: Runner, name: str) -> None:
    """Told again with its options, a change is the tip in hand, and its figures hold."""
    told = json.loads(run("advise", name, "--json")[1])
    offered = [*told["changes"], *told["next_step"]]
    for change in offered:
        if change["block"] is None:
            continue
        code, out, err = run("advise", name, *as_arguments(change["options"]), "--json")
        assert (code, err) == (0, ""), change["text"]
        again, printed = json.loads(out)["tip_in_hand"], change["block"]
        assert again["tip"] == printed["tip"], change["text"]
        assert again["paint"] == printed["paint"], change["text"]
        assert again["visibility"]["grade"] == printed["visibility"]["grade"], change["text"]
        assert again["load"]["shot"] == printed["load"]["shot"], change["text"]
    for reason in told["reasons"]:
        if "block" in reason:
            code, out, err = run("advise", name, *as_arguments(reason["options"]), "--json")
            again = json.loads(out)
            made = [again[key] for key in ("tip_in_hand", "at_the_bench") if again[key]]
            assert [block["tip"] for block in made].count(reason["block"]["tip"])
            assert [block["paint"] for block in made].count(reason["block"]["paint"])
            grades = [block["visibility"]["grade"] for block in made]
            assert reason["block"]["visibility"]["grade"] in grades, reason["text"]


def test_why_a_float_now_takes_less(run, tmp_path):
    """The demo's float in a file, and later with a thicker tip: cause by cause, adding up."""
    old = tmp_path / "old.toml"
    old.write_text(run("advise", "demo", "--question")[1], encoding="utf-8")
    code, out, err = run("shot", "demo", "--was", str(old), "--diameter", "4 mm",
                         "--weighed-tip", "3 mm quill")  # fmt: skip
    assert (code, err) == (0, "")
    assert out.startswith("WHY IT TAKES WHAT IT TAKES\nIt takes ")
    grams = [float(word) for word in re.findall(r"([-+]\d\.\d{3}) g", out)]
    then, now = (float(word) for word in re.findall(r"(\d\.\d\d) g (?:then|now)", out))
    assert sum(grams) == pytest.approx(now - then, abs=0.011)
    assert (
        run("shot", "demo", "--was", "demo")[1].splitlines()[1].startswith("It takes as much as")
    )
    assert "two floats" not in out
    other = run("shot", "match", "--was", "demo")[1].split("\n", 1)[1]
    assert " ".join(other.split()).startswith(
        "These are two floats: then quill avon, now alloy stick 1.6. What parts their bodies stands "
        "under 'the body itself'. It takes 1.20 g less: 2.40 g then, 1.20 g now, in air. the body "
        "itself -1.089 g"
    )
    assert "soak" not in other
    assert run("shot", "demo", "--was", "nowhere.toml")[2].startswith("file: 'nowhere.toml'")
