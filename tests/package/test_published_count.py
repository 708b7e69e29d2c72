"""How much is held against the outside: values, named sources, and each of the checks promised.

Run as a script it prints how many values and checks there are of each kind.
"""

import csv
import json
import re
import subprocess
import sys
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "tests" / "published"
GOLD = {"published", "library", "from memory"}
OURS = {"own formula", "fitted to"}
"""A named source stands behind the product itself there: none can tell us that we are wrong."""
KINDS = GOLD | OURS | {"common practice", "analytic", "by row"}
ROOMS = ("scene", "sight", "afloat", "load")
LEAST_VALUES, LEAST_SOURCES, LEAST_IN_A_ROOM = 100, 20, 8
COLLECT = """
import json, pytest, sys
class Listing:
    def pytest_collection_modifyitems(self, items):
        rows = [(i.path.stem, getattr(i, "originalname", i.name),
                 str(getattr(i, "callspec", None) and i.callspec.params.get("source") or ""))
                for i in items]
        print("LISTED" + json.dumps(rows))
done = pytest.main(["--collect-only", "-q", "-p", "no:cacheprovider", sys.argv[1]], [Listing()])
raise SystemExit(done)
"""
PROMISED = {
    "Blackwell's discs": "test_blackwell_disc",
    "Blackwell as a whole": "test_blackwell_as_a_whole",
    "ModelFest ratios": "test_modelfest_ratio",
    "the thin wire": "test_hecht_and_mintz_wire",
    "CIE skies and integrals, USNO": "test_light_agrees_with_outside",
    "Fresnel": "test_fresnel_table",
    "Cox and Munk": "test_cox_munk_growth",
    "Mobley": "test_mobley_1999",
    "colour boxes of paints": "test_paint_in_its_box",
    "tables cell by cell": "test_every_cell_is_colour_science_s",
    "where the sun stands": "test_sun_stands_where_the_reference_algorithm_says",
    "water": "test_water",
    "Lamb": "test_lamb",
    "heave by boundary elements": "test_heave_against_boundary_elements",
    "chop": "test_fetch_law",
    "shot": "test_shot_sizes",
    "wet weights": "test_eleven_bb_in_water",
    "shot optimum": "test_shot_optima",
    "streaks": "test_the_fit_keeps_its_scatter",
}


@cache
def collected() -> tuple[tuple[str, str, str], ...]:
    """Return module, test and row's own source of every check that pytest finds there."""
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", COLLECT, str(FOLDER)],
        cwd=ROOT,
        capture_output=True,
        check=False,
        encoding="utf-8",
    )
    listed = [line for line in done.stdout.splitlines() if line.startswith("LISTED")]
    assert done.returncode == 0, done.stdout + done.stderr
    return tuple(tuple(row) for row in json.loads(listed[0].removeprefix("LISTED")))


@cache
def sources() -> dict[str, tuple[str, tuple[str, ...]]]:
    """Return kind and named sources of each check, as sources.csv has them."""
    with (FOLDER / "sources.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    found = {
        row["test"]: (
            row["kind"],
            tuple(name for name in row["source"].split(";") if name),
        )
        for row in rows
    }
    assert len(found) == len(rows), "a check stands twice in sources.csv"
    return found


def kind_of(module: str, test: str, row_source: str) -> str:
    """Return the kind of one value; where each row names its source, the row decides."""
    kind = sources()[test][0]
    if kind != "by row":
        return kind
    assert row_source, f"{module}::{test} has a row without its source"
    return kind_of_row(row_source)


def kind_of_row(source: str) -> str:
    """Return the kind that a row's own source tells: ours first, as a source may be both."""
    for kind in ("own formula", "fitted to", "from memory"):
        if kind in source:
            return kind
    return "analytic" if re.match("analytic|computed", source) else "published"


def counts() -> dict[str, tuple[int, int]]:
    """Return how many values, and how many checks, there are of each kind."""
    kinds = [(kind_of(*row), row[1]) for row in collected() if row[1] in sources()]
    return {
        kind: (sum(k == kind for k, _ in kinds), len({test for k, test in kinds if k == kind}))
        for kind in sorted(KINDS - {"by row"})
    }


def gold() -> list[tuple[str, str, str]]:
    """Return the values that come from outside."""
    return [row for row in collected() if row[1] in sources() and kind_of(*row) in GOLD]


def words_of(module: str) -> str:
    """Return what a module and the tables beside it say, on one line and in small letters."""
    texts = [
        FOLDER / f"{module}.py",
        *sorted(set(FOLDER.glob("*.csv")) - {FOLDER / "sources.csv"}),
    ]
    raw = " ".join(path.read_text(encoding="utf-8") for path in texts)
    return re.sub(r"\s+", " ", re.sub(r"\n\s*#", " ", raw)).casefold()


def test_every_check_says_where_it_comes_from() -> None:
    found = {test for _, test, _ in collected()}
    assert len(found) == len({row[:2] for row in collected()}), "two checks have one name"
    assert found - set(sources()) == set(), "add a row to tests/published/sources.csv"
    assert set(sources()) - found == set(), "sources.csv names checks that are not there"


@pytest.mark.parametrize("check", sources())
def test_a_check_names_its_sources(check: str) -> None:
    kind, names = sources()[check]
    assert kind in KINDS
    assert bool(names) == (kind in GOLD | OURS | {"by row"})
    said = words_of(next(module for module, test, _ in collected() if test == check))
    for name in names:
        assert name.casefold() in said, f"{name} is not named beside it"


def test_enough_values_from_outside() -> None:
    assert len(gold()) >= LEAST_VALUES


@pytest.mark.parametrize(
    ("source", "kind"),
    [
        ("colour-science 0.4.7, docstring; printed digits", "published"),
        ("Bird and Riordan 1986, own formula: the same coefficients", "own formula"),
        ("Kasten and Young 1989, from memory; own formula", "own formula"),
        ("fitted to the threshold table of Blackwell 1946", "fitted to"),
        ("IES and CIE overcast formula, from memory", "from memory"),
        ("analytic", "analytic"),
        ("computed by Gauss nodes", "analytic"),
    ],
)
def test_a_row_tells_its_kind(source: str, kind: str) -> None:
    assert kind_of_row(source) == kind


def test_our_own_numbers_come_back_as_no_gold() -> None:
    found = counts()
    assert sum(values for values, _ in found.values()) == len(collected())
    assert sum(found[kind][0] for kind in GOLD) == len(gold())
    assert all(found[kind][0] > 0 for kind in GOLD | OURS)


@pytest.mark.parametrize("room", ROOMS)
def test_enough_values_in_each_room(room: str) -> None:
    by_room = Counter(module.removeprefix("test_").split("_")[0] for module, _, _ in gold())
    assert by_room[room] >= LEAST_IN_A_ROOM


def test_enough_named_sources() -> None:
    checks = {test for _, test, _ in gold()}
    names = {name.casefold() for check in checks for name in sources()[check][1]}
    assert len(names) >= LEAST_SOURCES


@pytest.mark.parametrize("what", PROMISED)
def test_what_was_promised_is_checked(what: str) -> None:
    assert PROMISED[what] in {test for _, test, _ in collected()}


if __name__ == "__main__":
    for kind, (values, checks) in counts().items():
        mark = "outside" if kind in GOLD else ""
        print(f"{kind:16}{values:5} values{checks:5} checks  {mark}".rstrip())  # noqa: T201
