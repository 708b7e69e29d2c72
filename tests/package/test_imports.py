"""Data goes one way: no room imports from one below it, and no module from itself by a circle."""

import ast
import graphlib
from pathlib import Path

ROOT = Path(__file__).parents[2]
ORDER = (
    *("units", "nature", "errors", "checks", "few", "tables", "inputs", "scene", "sight", "afloat"),
    *("load", "advice", "own", "hours", "trot", "box", "learning", "season"),
    *("output", "pictures", "paper", "webui"),
    *("commands", "cli"),
    "__main__",
)
FRONT = "tipsight"
"""It gives out what the rooms offer, when it is asked for."""


def modules() -> dict[str, Path]:
    """Return the file of every module by its dotted name."""
    found = {}
    for path in sorted((*ROOT.glob("tipsight/**/*.py"), *ROOT.glob("webui/**/*.py"))):
        parts = path.relative_to(ROOT).with_suffix("").parts
        found[".".join(parts).removesuffix(".__init__")] = path
    return found


def imports(*, types: bool) -> dict[str, set[str]]:
    """Return which modules of ours each module imports, perhaps also for their types alone."""
    known = modules()
    found: dict[str, set[str]] = {}
    for name, path in known.items():
        named: set[str] = set()
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for_types = {
            id(inner)
            for node in ast.walk(tree)
            if isinstance(node, ast.If) and getattr(node.test, "id", "") == "TYPE_CHECKING"
            for inner in ast.walk(node)
        }
        for node in ast.walk(tree):
            if id(node) in for_types and not types:
                continue
            if isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
                each = {f"{node.module}.{alias.name}" for alias in node.names}
                named |= {one if one in known else node.module for one in each}
            elif isinstance(node, ast.Import):
                named |= {alias.name for alias in node.names}
        found[name] = (named & set(known)) - {name}
    return found


def place(module: str) -> int:
    """Return how far down the flow a module's room is."""
    parts = module.split(".")
    return ORDER.index(parts[0] if parts[0] == "webui" else parts[1])


def test_no_arrow_goes_back() -> None:
    found = imports(types=True)
    assert sum(map(len, found.values())) > 300
    back = [
        f"{one} -> {other}"
        for one, others in found.items()
        for other in others
        if FRONT not in (one, other) and place(other) > place(one)
    ]
    assert back == []


def test_no_circle() -> None:
    list(graphlib.TopologicalSorter(imports(types=False)).static_order())
