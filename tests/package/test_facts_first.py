"""Nothing reads a sentence back: facts are names and numbers, words are made once, in ``output``.

The code is read by its grammar, as no type tells a sentence from a name. In the rooms that hold or
show an answer no text is taken apart, none is compared with words, and only names are kept.
"""

import ast
import re
from collections.abc import Iterator
from enum import Enum
from functools import cache
from pathlib import Path

import pytest
import sample

from tipsight import tables
from tipsight.advice import facts
from tipsight.advice.advise import advise
from tipsight.inputs import demo
from tipsight.load import causes
from tipsight.sight import grades

ROOT = Path(__file__).parents[2]
TYPED = ("tipsight/inputs/", "tipsight/tables/", "tipsight/own/", "tipsight/commands/", "tipsight/cli.py",
         "webui/asking.py", "webui/reader_units.py", "webui/form.py")  # fmt: skip
"""Where what people typed, files, addresses and markup are read, which is what reading is for."""
TAKES_APART = {
    *("startswith", "endswith", "removeprefix", "removesuffix", "splitlines", "find", "rfind"),
    *("split", "rsplit", "rpartition", "partition", "fullmatch", "findall", "finditer"),
}
"""Methods that take a text apart."""
WITH_TEXT = {
    *("replace", "index", "rindex", "count", "strip", "lstrip", "rstrip"),
    *("match", "search", "sub"),
}
"""Methods that take a text apart where they are given one."""
MAY = {
    "tipsight/advice/choose.py": {"partition"},  # numpy's
    "tipsight/output/head.py": {"rsplit", "rstrip"},  # the last line, cut at a blank
    "tipsight/output/layout.py": {"replace", "sub", "re"},  # blanks that hold a number to its unit
    "tipsight/output/measures.py": {"rstrip"},  # the stop of a sentence
    "tipsight/output/plain.py": {"replace", "sub", "re"},  # marks that a terminal has not
    "tipsight/output/sections.py": {"replace"},  # keys of items
    "tipsight/pictures/svg_parts.py": {"removesuffix"},  # numbers
    "tipsight/scene/observer.py": {"startswith", "endswith"},  # 'red-weak': a name of two parts
    "webui/findings.py": {"replace", "startswith"},  # keys of items
    "webui/whatif.py": {"startswith"},  # keys of options
}
"""What may be done to a text all the same, and to which."""
NAMES = {"felt pen", "sun lane", "3 x 23 mm", "4.5 x 39 mm"}
"""Names of more than one word that a table or a type holds."""
HELD_IN = {"X-Fragment", "block"}
"""Keys that may be looked for in a mapping by name."""
WORDS = {"doing", "telling", "warned", "readings", "shot_words", "sentence", "listed", "grams"}
"""What makes words in ``output``: nothing that they return is compared with anything."""


def modules() -> list[Path]:
    return sorted((*ROOT.glob("tipsight/**/*.py"), *ROOT.glob("webui/**/*.py")))


def text_of(node: ast.AST) -> str | None:
    """Return the words of a literal, also of one with numbers in it."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value
    if isinstance(node, ast.JoinedStr):
        return "".join(one.value if isinstance(one, ast.Constant) else "" for one in node.values)
    return None


def is_prose(words: str) -> bool:
    """Return whether a literal is more than a name: two words, or a word that announces others."""
    return words not in NAMES and (len(words.split()) > 1 or words.rstrip().endswith(":"))


def is_made(node: ast.AST) -> bool:
    """Return whether something is what a maker of words returned."""
    if not isinstance(node, ast.Call):
        return False
    called = node.func
    if isinstance(called, ast.Attribute) and isinstance(called.value, ast.Name):
        return called.value.id in WORDS
    return isinstance(called, ast.Name) and called.id in WORDS


def read_back(source: str, name: str = "tipsight/output/any.py") -> Iterator[tuple[int, str]]:
    """Yield line and code of all that may read a sentence back."""
    if name.startswith(TYPED):
        return
    may = MAY.get(name, set())
    for node in ast.walk(ast.parse(source)):
        found = False
        if isinstance(node, ast.Import | ast.ImportFrom):
            named = [one.name for one in node.names] + [getattr(node, "module", "")]
            found = "re" in named and "re" not in may
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            does = node.func.attr
            given = any(text_of(one) is not None for one in node.args)
            found = does not in may and (does in TAKES_APART or (does in WITH_TEXT and given))
        elif isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
            said = [words for side in sides if (words := text_of(side)) is not None]
            found = any(map(is_prose, said)) or any(map(is_made, sides))
            looked_for = isinstance(node.ops[0], ast.In | ast.NotIn) and text_of(node.left)
            literal = isinstance(node.comparators[0], ast.Tuple | ast.List | ast.Set | ast.Dict)
            if looked_for and not literal:
                found = found or looked_for not in HELD_IN
        elif isinstance(node, ast.MatchValue):
            found = is_prose(text_of(node.value) or "")
        if found:
            yield node.lineno, ast.unparse(node)


PLANTED = (
    'fail.text.startswith("sight")',
    'head, _, rest = said.partition(":")',
    'fail.removeprefix("ride: ")',
    'words.split(", ")',
    'if "out of reach" in warning: pass',
    'if "reach" not in warning.text: pass',
    'if telling.failure(fail) == short: pass',
    'if said == "nothing passes": pass',
    'if trigger == "lead in the shot list": pass',
    'said.replace("yd", "m")',
    'said.replace(" showing", "")',
    "import re",
    "from re import sub",
    'match said:\n    case "not seen": pass',
    'numbers = said.count("mm")',
    'at = said.find("g")',
    'if f"fish it no farther than {yards} yd" in said: pass',
    'doing.shot(block) != "leave the shot as it is"',
)  # fmt: skip
SPARED = (
    'tip.stock.kind == "quill"',
    'band.paint != "felt pen"',
    "replace(tip, showing_mm=3.0)",
    "swim.finishes.index(finish_of(tip, paint))",
    'name in ("dark", "bright")',
    '" ".join(words)',
    "fail.limit is Limit.SIGHT",
)  # fmt: skip


@pytest.mark.parametrize("code", PLANTED)
def test_a_sentence_read_back_is_found(code: str) -> None:
    assert list(read_back(code))


@pytest.mark.parametrize("code", SPARED)
def test_a_name_may_be_compared(code: str) -> None:
    assert list(read_back(code)) == []


def test_nothing_reads_a_sentence_back() -> None:
    found = {}
    for path in modules():
        name = path.relative_to(ROOT).as_posix()
        if lines := list(read_back(path.read_text("utf-8"), name)):
            found[name] = lines
    assert found == {}


def test_no_template_takes_a_text_apart() -> None:
    apart = re.compile(
        r"\.(?:startswith|endswith|split|r?partition|replace|remove\w+|find)\(|\|\s*(?:replace|regex)"
        r"|[=!]=\s*\"[^\"]* [^\"]*\"|\"[^\"]* [^\"]*\"\s+in\s"
    )
    templates = sorted(ROOT.glob("webui/templates/*.html"))
    assert len(templates) > 4
    assert apart.search('{% if said.startswith("not") %}')
    assert apart.search('{% if said == "nothing passes" %}')
    for path in templates:
        assert not apart.search(path.read_text("utf-8")), path.name


# --- what an answer holds


TEXTS = {
    "OtherStretch": {"water"},
    "Waters": {"views", "held"},
    # names of waters, grades, paints, stock, shot and places on the line
    "Run": {"grade"},
    "Sight": {"name", "grade"},
    "Visibility": {"grade"},
    "ShotLine": {"name", "where"},
    "Load": {"shot_metal"},
    "Step": {"grade", "options"},
    "Rung": {"in_hand", "advised"},  # by water
    "TradePoint": {"of"},
    "PaintShows": {"water", "paint"},
    "Turns": {"options", "water", "colour_vision"},
    "Change": {"either", "options"},
    "Sleeve": {"paint"},
    "Warn": {"values"},  # names of waters and of what was measured, with its unit
    "Caution": {"stock"},
    "Answer": {"question"},  # as it was told
    # inside the sums
    "Swim": {"judged", "waters"},
    "Water": {"name"},
    "Seen": {"water"},
}
"""Which fields of advice hold text: what each is, is a name, or what was typed."""


def text_fields(source: str) -> dict[str, set[str]]:
    """Return the fields that are said to hold text, by class."""
    found: dict[str, set[str]] = {}
    for one in ast.walk(ast.parse(source)):
        if isinstance(one, ast.ClassDef):
            for line in one.body:
                if isinstance(line, ast.AnnAssign) and re.search(
                    r"\bstr\b", ast.unparse(line.annotation)
                ):
                    found.setdefault(one.name, set()).add(ast.unparse(line.target))
    return found


def test_a_field_of_text_is_found() -> None:
    assert text_fields("class Fail:\n    text: str\n    kinds: tuple[str, ...]\n    a: float") == {
        "Fail": {"text", "kinds"}
    }


def test_advice_keeps_no_text_but_names() -> None:
    extra = {
        name: texts - TEXTS.get(name, set())
        for path in sorted((ROOT / "tipsight" / "advice").glob("*.py"))
        for name, texts in text_fields(path.read_text("utf-8")).items()
    }
    assert {name: texts for name, texts in extra.items() if texts} == {}


@cache
def names_known() -> frozenset[str]:
    """Return every name that a table, an enum or a unit gives."""
    enums = {
        one.value
        for kind in (*vars(facts).values(), causes.Cause)
        if isinstance(kind, type) and issubclass(kind, Enum)
        for one in kind
    }
    by_table = {
        row[key]
        for table, key in (
            *(("paints", "name"), ("shot", "name"), ("shot_metals", "name"), ("banks", "name")),
            *(("patterns", "name"), ("words", "word")),
        )
        for row in tables.rows(table)
    }
    stock = {row["name"] for row in tables.rows("stock")}
    seen = {word for word, _ in grades.limits()}
    own = {"bulk", "dropper", "spread", "even", "trim under the float", "longer", "thicker"}
    return frozenset({*enums, *by_table, *stock, *seen, *own})


def texts_in(told: object, where: str = "") -> Iterator[tuple[str, str]]:
    """Yield every text that facts hold, but for what was typed and the options that are to be."""
    if isinstance(told, str):
        yield where, told
    elif isinstance(told, dict):
        for key, one in told.items():
            if key not in ("question", "assumed", "options"):
                yield from texts_in(one, f"{where}.{key}")
    elif isinstance(told, list):
        for one in told:
            yield from texts_in(one, where)


KINDS = {
    *("as it is", "show more", "show less", "pen", "sleeve", "insert", "light stick", "fit"),
    *("repaint", "come closer", "turns", "size", "paint", "water hides", "nearly", "show"),
}
"""Of changes, actions and reasons."""


def is_name(text: str) -> bool:
    """Return whether a text is a name: one that is known, or one word in small letters."""
    known = names_known() | KINDS
    if text in known or set(text.split(" and ")) <= known:
        return True
    return re.fullmatch(r"[a-z]+(?:_[a-z0-9]+)*|", text) is not None


def test_what_is_no_name_is_found() -> None:
    assert is_name("pen and show more")
    assert is_name("peak_wavelength_mm")
    assert not is_name("short of kept in view")
    assert not is_name("Lead: most sizes are banned")


@pytest.mark.parametrize("which", ["demo", "match", "dusk", "by hand", "long"])
def test_an_answer_holds_names_and_numbers_alone(which: str) -> None:
    if which == "by hand":
        answer = sample.answer(bench=False, waters=("dark", "bright"))
    elif which == "long":
        answer = sample.longwinded()
    else:
        answer = advise(demo.question(which))
    waters = {stretch.name for stretch in answer.case.stretches}
    bands = {band.paint for band in answer.case.tip.bands}
    odd = {
        (where, text)
        for where, text in texts_in(answer.to_dict())
        if text not in waters | bands and not is_name(text)
    }
    assert odd == set()
