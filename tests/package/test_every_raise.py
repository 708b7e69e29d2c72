"""Every refusal in the code is read by some test: a piece of its text stands in ``tests``."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
MODULES = sorted((*ROOT.glob("tipsight/**/*.py"), *ROOT.glob("webui/**/*.py")))
WINDOW = 20
"""So many letters in a row are taken for the same text."""
LEAST = 8
"""A shorter piece of text says nothing."""
SAYS = {"Mistake": 2, "wrong": 1, "within": 0, "unknown": 0, "_unknown": 0}
"""Calls that word a refusal, and which argument holds the words."""
CARRIERS = {"Mistakes", "SystemExit", "unknown", "_unknown"}
"""What is raised with words that stand elsewhere, as sites of their own."""


class Site(NamedTuple):
    """One place where something is refused, and the pieces of text that it is refused with."""

    where: str
    pieces: tuple[str, ...]


def name_of(call: ast.AST) -> str:
    """Return the last part of the name of what is called."""
    if not isinstance(call, ast.Call):
        return ""
    return getattr(call.func, "attr", getattr(call.func, "id", ""))


def texts(nodes: list[ast.AST]) -> list[str]:
    """Return all literal pieces of text under some nodes, docstrings left out."""
    found = []
    for node in nodes:
        doc = {id(n.value) for n in ast.walk(node) if isinstance(n, ast.Expr)}
        found += [
            n.value
            for n in ast.walk(node)
            if isinstance(n, ast.Constant) and isinstance(n.value, str) and id(n) not in doc
        ]
    return [text for text in found if len(text.strip()) >= LEAST]


def named(nodes: list[ast.AST], scope: ast.AST, module: ast.AST) -> list[ast.AST]:
    """Return where the words come from that the nodes only name: values given, functions called."""
    wanted = {n.id for node in nodes for n in ast.walk(node) if isinstance(n, ast.Name)}
    found: list[ast.AST] = []
    for n in ast.walk(scope):
        if (
            isinstance(n, ast.Assign | ast.AnnAssign | ast.For | ast.comprehension)
            and n is not None
        ):
            target = n.targets[0] if isinstance(n, ast.Assign) else n.target
            value = n.value if isinstance(n, ast.Assign | ast.AnnAssign) else n.iter
            if value is not None and wanted & {
                x.id for x in ast.walk(target) if isinstance(x, ast.Name)
            }:
                found.append(value)
    found += [
        n
        for n in ast.walk(module)
        if isinstance(n, ast.FunctionDef) and n.name in wanted - {"within"}
    ]
    return found


def sites(source: str, where: str = "") -> Iterator[Site]:
    """Yield every refusal of a module."""
    module = ast.parse(source)
    scopes = [n for n in ast.walk(module) if isinstance(n, ast.FunctionDef)]
    for node in ast.walk(module):
        if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call):
            if name_of(node.exc) in CARRIERS:
                continue
            words: list[ast.AST] = [*node.exc.args]
        elif (at := SAYS.get(name_of(node))) is not None:
            words = node.args[at : at + 1] if isinstance(node, ast.Call) else []
        else:
            continue
        if [w.value for w in words if isinstance(w, ast.Constant)] == [""]:
            continue  # the words are those of the item, which mistakes.csv reads one by one
        inner = [s for s in scopes if s.lineno <= node.lineno <= (s.end_lineno or 0)]
        scope = max(inner, key=lambda s: s.lineno) if inner else module
        if isinstance(scope, ast.FunctionDef) and name_of(node) == scope.name:
            continue
        pieces = texts(words)
        short = name_of(node) in ("within", "unknown", "_unknown")
        if short and isinstance(words[0], ast.Constant):
            pieces = [f"{words[0].value} must be" if name_of(node) == "within" else words[0].value]
        elif not pieces:
            pieces = texts(named(words, scope, module))
        if pieces:  # without words of its own it passes on those of another site
            yield Site(f"{where}:{node.lineno}", tuple(pieces))


@cache
def read_by_tests() -> str:
    """Return all text that stands in the tests, the backslashes of patterns taken out."""
    found = []
    for path in sorted((ROOT / "tests").glob("**/*.py")):
        if path != Path(__file__):
            tree = ast.parse(path.read_text(encoding="utf-8"))
            found += [
                n.value.replace("\\", "")
                for n in ast.walk(tree)
                if isinstance(n, ast.Constant) and isinstance(n.value, str)
            ]
    found += [p.read_text(encoding="utf-8") for p in sorted((ROOT / "tests").glob("**/*.csv"))]
    return "\0".join(found)


def is_read(piece: str) -> bool:
    """Return whether so many letters in a row of a text stand in some test."""
    text = piece.strip()
    size = min(len(text), WINDOW)
    return any(text[i : i + size] in read_by_tests() for i in range(len(text) - size + 1))


def of_file(path: Path) -> list[Site]:
    """Return every refusal of one file."""
    return list(sites(path.read_text(encoding="utf-8"), str(path.relative_to(ROOT))))


def test_every_refusal_is_read() -> None:
    unread = [
        f"{site.where} {site.pieces}"
        for path in MODULES
        for site in of_file(path)
        if not any(is_read(piece) for piece in site.pieces)
    ]
    assert not unread, "\n".join(unread)


def test_refusals_are_found() -> None:
    source = (
        "def f(x):\n"
        "    why = 'it is far too long'\n"
        "    within('some length', x, 0, 1)\n"
        "    if x:\n"
        "        raise Mistakes([Mistake('tip', x, why, 'an example')])\n"
        "    teller.wrong('age', f'nobody is {x} years old')\n"
        "    raise ValueError(f'{x} levels do not fit')\n"
    )
    assert {site.pieces for site in sites(source)} == {
        ("it is far too long",),
        ("some length must be",),
        ("nobody is ", " years old"),
        (" levels do not fit",),
    }
    assert len([site for path in MODULES for site in of_file(path)]) > 100


def test_a_text_that_no_test_reads_is_found() -> None:
    assert not is_read("".join(["zqxj ", "wvkp ", "no such words at all"]))
    assert is_read("there is no such " + re.sub("_", "", "fol_der"))
