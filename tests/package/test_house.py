"""Rules of the house that a reader of the code can count on."""

import ast
import subprocess
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[2]
TOP = {
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "pyproject.toml",
    "tipsight",
    "webui",
    "tests",
    ".ci",
    ".gitignore",
}
MODULES = sorted((*ROOT.glob("tipsight/**/*.py"), *ROOT.glob("webui/**/*.py")))
READERS = ("open", "read_text", "write_text")


def test_there_are_modules() -> None:
    assert len(MODULES) > 50


def test_the_top_level_holds_these_names_and_no_others() -> None:
    """What is kept under version control, so that an editor's own folders do no harm."""
    if not (ROOT / ".git").exists():  # unpacked without its history
        found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
        assert {name for name in TOP if not name.startswith(".")} <= found
        return
    listed = subprocess.run(
        ["git", "ls-files", "-z"],  # noqa: S607
        cwd=ROOT,
        capture_output=True,
        check=True,
        encoding="utf-8",
    ).stdout
    assert {name.partition("/")[0] for name in listed.split("\0") if name} == TOP


def test_no_module_is_longer_than_400_lines() -> None:
    lines = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert {name: count for name, count in lines.items() if count > 400} == {}


def test_no_two_modules_share_a_name() -> None:
    """Outside commands/, where each module bears the name of its command."""
    names = [path.stem for path in MODULES if path.parent.name != "commands"]
    assert {name for name in names if names.count(name) > 1} == {"__init__"}


def unencoded(source: str) -> list[int]:
    """Return the lines on which a text is read or written without its encoding being named."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call):
            continue
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        owner = getattr(getattr(node.func, "value", None), "id", "")
        if name not in READERS or owner == "os" or any(k.arg == "encoding" for k in node.keywords):
            continue
        mode = [a.value for a in node.args if isinstance(a, ast.Constant)]
        mode += [k.value.value for k in node.keywords
                 if k.arg == "mode" and isinstance(k.value, ast.Constant)]  # fmt: skip
        if not any(isinstance(m, str) and "b" in m and len(m) <= 3 for m in mode):
            found.append(node.lineno)
    return found


def test_what_is_unencoded_is_found() -> None:
    assert unencoded("open('a')\np.read_text()\np.open('rb')\nopen('a', encoding='utf-8')") == [
        1,
        2,
    ]


def test_every_text_is_read_with_its_encoding() -> None:
    found = {str(path): unencoded(path.read_text(encoding="utf-8")) for path in MODULES}
    assert {path: lines for path, lines in found.items() if lines} == {}


def test_every_table_says_its_title_and_names_its_sources() -> None:
    tables = sorted(ROOT.glob("tipsight/data/*.csv"))
    assert len(tables) > 15
    for path in tables:
        assert path.read_text(encoding="utf-8").startswith("#"), path.name


def test_the_command_is_declared() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert project["scripts"] == {"tipsight": "tipsight.cli:main"}
