"""The wheel as a user gets it: built, unpacked, and run far from the checkout."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    subprocess.run(  # noqa: S603
        [sys.executable, "-m", "pip", "wheel", "--no-deps", "--quiet",
         "--disable-pip-version-check", "--wheel-dir", str(folder), str(ROOT)],
        check=True,
    )  # fmt: skip
    wheels = list(folder.glob("tipsight-*.whl"))
    assert len(wheels) == 1
    home = folder / "home"
    with zipfile.ZipFile(wheels[0]) as wheel:
        wheel.extractall(home)
    return home


def run(home: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(home), "PYTHONIOENCODING": "utf-8"}
    return subprocess.run(  # noqa: S603
        [sys.executable, *arguments],
        cwd=home.parent,
        env=environment,
        capture_output=True,
        check=False,
        encoding="utf-8",
    )


def test_it_brings_its_tables_its_swims_and_its_types(unpacked: Path) -> None:
    def names(folder: Path) -> set[str]:
        inside = folder / "tipsight"
        return {
            str(path.relative_to(folder))
            for path in (*inside.glob("data/*"), *inside.glob("demo/*"))
        }

    assert names(unpacked) == {n for n in names(ROOT) if "__pycache__" not in n}
    assert (unpacked / "tipsight/py.typed").is_file()
    assert (unpacked / "webui/py.typed").is_file()


def test_it_brings_nothing_else(unpacked: Path) -> None:
    found = {path.name for path in unpacked.iterdir() if not path.name.endswith(".dist-info")}
    assert found == {"tipsight", "webui"}


def test_it_answers_away_from_the_checkout(unpacked: Path) -> None:
    where = run(unpacked, "-c", "import tipsight.cli; print(tipsight.cli.__file__)")
    assert where.stdout.startswith(str(unpacked)), where.stderr
    done = run(unpacked, "-m", "tipsight", "advise")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("NOW          ")


def test_it_needs_nothing_of_the_tests(unpacked: Path) -> None:
    done = run(
        unpacked, "-c",
        "import sys\n"
        "for name in ('pytest', 'hypothesis', 'playwright'): sys.modules[name] = None\n"
        "from tipsight.cli import main\n"
        "raise SystemExit(main(['shot']))",
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert "SHOT TO EACH BAND" in done.stdout
