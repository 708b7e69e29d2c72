"""Own tables: obeyed or refused, row by row, and given to another process."""

import pickle
import subprocess
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from typing import get_args

import numpy as np
import pytest

from tipsight import tables
from tipsight.errors import Mistakes
from tipsight.inputs import case, parts, values
from tipsight.inputs.items import ITEMS, words_of
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import materials, patterns, shot, tips, usual
from tipsight.paper import sheet_words
from tipsight.scene import (
    bank,
    daylight,
    general_sky,
    observer,
    paint,
    sky,
    sky_scale,
    spectra,
    water_body,
)
from tipsight.sight import grades
from tipsight.tables.kinds import OneOf
from tipsight.tables.schemas import SCHEMAS

ROOT = Path(__file__).parents[2]
NAMES = sorted(path.stem for path in tables.PACKAGED.glob("*.csv"))
FREE = [name for name in NAMES if not SCHEMAS[name].fixed]


def written(folder, **texts):
    """Write tables into a folder, each a header and rows with their columns in order."""
    for name, lines in texts.items():
        (folder / f"{name}.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return folder


def lines_of(name, *changes):
    """Return the header, and a packaged row for each change: (key, {column: text})."""
    text = (tables.PACKAGED / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    head, *packaged = (line for line in text if not line.startswith("#"))
    found = [head]
    for begins, change in changes:
        row = next(line for line in packaged if line.startswith(begins))
        for old, new in change.items():
            assert old in row
            row = row.replace(old, new, 1)
        found.append(row)
    return found


def test_each_table_has_a_schema():
    assert sorted(SCHEMAS) == NAMES
    assert [name for name in NAMES if SCHEMAS[name].fixed] == ["items"]


@pytest.mark.parametrize("name", NAMES)
def test_packaged_columns_are_those_of_the_schema(name):
    needed = set(SCHEMAS[name].columns) - set(SCHEMAS[name].optional)
    assert sorted(lines_of(name)[0].split(",")) == sorted(needed)


def test_packaged_tables_keep_their_own_rules(tmp_path):
    for name in FREE:
        text = (tables.PACKAGED / f"{name}.csv").read_text(encoding="utf-8")
        (tmp_path / f"{name}.csv").write_text(text, encoding="utf-8")
    before = {name: tables.rows(name) for name in FREE}
    with tables.using(tmp_path):
        assert {name: tables.rows(name) for name in FREE} == before


@pytest.mark.parametrize("name", [n for n in NAMES if n != "water_spectra"])
def test_every_packaged_row_names_its_source(name):
    assert all(row["source"] for row in tables.rows(name))


@pytest.mark.parametrize(
    ("table", "column", "words"),
    [
        ("pattern_parts", "role", parts.ROLES),
        ("pattern_parts", "shape", parts.SHAPES),
        ("patterns", "fixing", get_args(case.Fixing)),
    ],
)
def test_words_of_a_schema_are_those_of_the_case(table, column, words):
    kind = SCHEMAS[table].columns[column]
    assert isinstance(kind, OneOf)
    assert kind.words == words


def test_rows_are_typed():
    row = tables.row("paints", "black", "paint")
    assert (row["on_shelf"], row["fluorescent"], row["low"], row["takes"]) == (
        True, False, 0.026, None,
    )  # fmt: skip
    assert tables.rows("general_sky")[11]["type"] == 12
    assert isinstance(tables.rows("general_sky")[11]["type"], int)


# What each table is read for, with a row of one's own: table, row, question to the sums, answer.
OBEYED = {
    "also": (("sky,grey", {"dull": "bright"}),
             lambda: values.read(ITEMS["sky"], "grey").word, "bright overcast"),
    "banks": (("mud", {",0.1,": ",0.7,"}), lambda: bank.self_shade("mud"), 0.7),
    "bench_steps": (("clear", {"overnight": "two nights"}),
                    lambda: next(r["drying"] for r in sheet_words.steps(GLOWING)
                                 if r["step"] == "clear"), "two nights"),
    "coats": (("tip coat", {"30": "50"}),
              lambda: float(tips.painted_diameter_mm(3.0, 2)), pytest.approx(3.2)),
    "cones": (("555", {"1,": "0.5,"}),
              lambda: float(spectra.eye("photopic")[spectra.WAVELENGTHS_NM == 555][0]), 0.5),
    "d_series": (("560,100,", {"100": "50"}),
                 lambda: d65_at_560() / D65_AT_560, pytest.approx(0.5)),
    "finishes": (("water-based,wood", {"raises grain": "softens"}),
                 lambda: materials.harms("balsa", "water-based").does, "softens"),
    "general_sky": (("1,4.0", {"4.0": "0.0"}),
                    lambda: float(general_sky.relative(1, 10.0, 0.0, 30.0)), pytest.approx(1.0)),
    "grades": (("easy", {"10": "7"}), lambda: grades.grade(8.0), "easy"),
    "kittler": (("12,", {"1.036": "2.072"}), lambda: sky_scale.diffuse_lx(CLEAR_SKY) - DIFFUSE_LX,
                pytest.approx(1036.0 * 3.5 * 0.5 * general_sky.horizontal_sr(12, 30.0))),
    "materials": (("balsa", {"140": "150"}), lambda: materials.material("balsa").density_kg_m3, 150.0),
    "paints": (("red", {"0.62": "0.5"}),
               lambda: float(paint.reflected_part("red")[-1]), pytest.approx(0.52)),
    "pattern_parts": (("bolo type,16.5 mm", {"mm": "mm"}),
                      lambda: len(patterns.built("bolo type").parts), 1),
    "patterns": (("quill avon", {"0.47": "0.5"}), lambda: patterns.pattern("quill avon").mass_share, 0.5),
    "shot": (("BB", {"0.4": "0.42"}), lambda: {s.name: s.mass_g for s in shot.sizes()}["BB"], 0.42),
    "shot_metals": (("tin", {"7290": "7300"}), lambda: shot.density_kg_m3("tin"), 7300.0),
    "skies": (("hazy", {"13": "12"}), lambda: settle(Question(sky="hazy")).light.sky_type, 12),
    "stock": (("thin tube", {"0.5": "0.4"}), lambda: materials.stock("thin tube", 5.0).bore_mm, 4.2),
    "sun_colour": (("30,", {"4868": "5200"}),
                   lambda: round(1e6 / beam_mired()), 5200),
    "tints": (("grey", {"0.15": "0.3"}),
              lambda: float(observer.transmittance("grey")[0]), pytest.approx(0.3)),
    "twilight_colour": (("-12,", {"55,90": "55,140"}), lambda: dusk_moves(), True),
    "usno": (("5,", {"3.05": "4.05"}),
             lambda: round(float(sky_scale.usno_lx(12.0)) / USNO_12, 6), 10.0),
    "usual_loads": (("0.6,", {"2.0": "1.5"}), lambda: float(usual.most_shot_g(2.0, 0.5)), 3.0),
    "water_colours": (("tea", {"0.0019": "0.003"}), lambda: water_body.luminance_factor("tea"), 0.003),
    "water_spectra": (("560,", {",": ",7", }),
                      lambda: bool(water_body.spectrum("clear").max() > 5 * CLEAR_MOST), True),
    "words": (("eye,sat", {"1.1": "0.9"}), lambda: settle(Question(eye="sat")).place.eye_height_m, 0.9),
}  # fmt: skip
GLOWING = settle(Question(paint="fluorescent red")).tip
CLEAR_SKY = sky.Light(sky_type=12, beam=True, sun_height_deg=30.0)
DUSK = sky.Light(sky_type=1, sun_height_deg=-12.0)
DIFFUSE_LX = sky_scale.diffuse_lx(CLEAR_SKY)
USNO_12 = float(sky_scale.usno_lx(12.0))
CLEAR_MOST = water_body.spectrum("clear").max()
DUSK_WEIGHTS = daylight.diffuse_weights(sky.sky_state(DUSK))


def d65_at_560():
    """Return D65 at 560 nm, where the mean alone counts, over its neighbour."""
    light = spectra.daylight(6504.0)
    return float((light[spectra.WAVELENGTHS_NM == 560] / light[spectra.WAVELENGTHS_NM == 565])[0])


D65_AT_560 = d65_at_560()


def beam_mired():
    weights = daylight.beam_weights(sky.sky_state(CLEAR_SKY))
    return float(weights @ daylight.basis().mired / weights.sum())


def dusk_moves():
    return not np.allclose(daylight.diffuse_weights(sky.sky_state(DUSK)), DUSK_WEIGHTS)


def test_every_free_table_is_tried():
    assert sorted(OBEYED) == FREE


@pytest.mark.parametrize("name", OBEYED)
def test_a_row_of_ones_own_is_obeyed(name, tmp_path):
    change, ask, wanted = OBEYED[name]
    before = ask()
    assert before != wanted
    with tables.using(written(tmp_path, **{name: lines_of(name, change)})):
        assert ask() == wanted
    assert ask() == before


def shot_csv(*rows):
    return ["name,group,mass_g,source", *rows]


def names_of_shot():
    return [row["name"] for row in tables.rows("shot")]


def test_rows_that_are_not_told_stay(tmp_path):
    own = shot_csv("# mine", "LG,shot,3.0,weighed", "BB,shot,0.42,weighed")
    before = names_of_shot()
    with tables.using(written(tmp_path, shot=own)):
        assert names_of_shot() == [*before, "LG"]
        assert tables.row("shot", "BB", "shot")["mass_g"] == 0.42
        assert tables.row("shot", "AAA", "shot")["mass_g"] == 0.8


def test_a_new_row_of_a_scale_takes_its_place(tmp_path):
    own = ["temperature_k,sun_height_deg,source", "4100,12.5,mine"]
    with tables.using(written(tmp_path, sun_colour=own)):
        heights = tables.columns("sun_colour")["sun_height_deg"].tolist()
        assert heights == sorted(heights)
        at = heights.index(12.5)
        assert tables.columns("sun_colour")["temperature_k"][at] == 4100.0
    assert 12.5 not in tables.columns("sun_colour")["sun_height_deg"]


def test_the_parts_of_a_size_are_replaced_together(tmp_path):
    head = ",".join(SCHEMAS["pattern_parts"].columns)
    own = [
        head,
        "quill avon,12 mm,body,ellipsoid,balsa,60,12,12,0,0,mine",
        "quill avon,5 mm,body,ellipsoid,balsa,50,5,5,0,0,mine",
        "quill avon,5 mm,stem,cylinder,quill,80,3,3,0,40,mine",
    ]
    before = patterns.sizes("quill avon")
    with tables.using(written(tmp_path, pattern_parts=own)):
        assert [part.shape for part in patterns.built("quill avon", "12 mm").parts] == [
            "ellipsoid"
        ]
        assert len(patterns.built("quill avon", "5 mm").parts) == 2
        assert patterns.sizes("quill avon") == ("5 mm", *before)
        assert parts.sizes_of("quill avon") == ("5 mm", *before)


def test_a_pattern_of_ones_own_in_wood_of_ones_own(tmp_path):
    own = written(
        tmp_path,
        materials=["name,density_kg_m3,low_kg_m3,high_kg_m3,kind,foam,styrene,source",
                   "elder pith,45,30,60,wood,no,no,mine"],
        patterns=[",".join(SCHEMAS["patterns"].columns),
                  "pith,mine,elder pith,10 mm,cane,3,15,10,8,bulk,0.4,14,60,0.6,2,5,3,40,mine"],
        pattern_parts=[",".join(SCHEMAS["pattern_parts"].columns),
                       "pith,10 mm,body,ellipsoid,elder pith,60,10,10,0,0,mine"],
    )  # fmt: skip
    with tables.using(own):
        float_ = settle(Question(pattern="pith", size="10 mm", shot_metal="tin")).float_
        assert float_.parts[0].material == "elder pith"


def test_a_light_stick_of_ones_own_weighs_what_is_told(tmp_path):
    head = ",".join(SCHEMAS["words"].columns)
    own = [head, "light_stick_on,3 x 23 mm,0.2,g,,weighed", "light_stick_on,2 x 15 mm,0.1,g,,mine"]
    assert [tips.light_stick_g(w.word) for w in words_of("light_stick_on")] == [0.0, 0.26, 0.7]
    with tables.using(written(tmp_path, words=own)):
        assert tips.light_stick_g("3 x 23 mm") == pytest.approx(0.3)
        assert tips.light_stick_g("2 x 15 mm") == pytest.approx(0.2)


def test_what_a_spreadsheet_leaves_in_a_file_is_read(tmp_path):
    text = '\ufeff"# title: shot, by mass"\r\nname,group,mass_g,source\r\nBB, shot ,0.41,mine\r\n,,,\r\n'
    (tmp_path / "shot.csv").write_text(text, encoding="utf-8", newline="")
    with tables.using(tmp_path):
        assert tables.row("shot", "BB", "shot")["mass_g"] == 0.41


def test_tables_within_tables(tmp_path):
    one, two = tmp_path / "one", tmp_path / "two"
    one.mkdir()
    two.mkdir()
    first = tables.read_folder(written(one, shot=shot_csv("BB,shot,0.41,mine")))
    second = tables.read_folder(written(two, shot=shot_csv("BB,shot,0.42,mine")))

    def bb():
        return {s.name: s.mass_g for s in shot.sizes()}["BB"]

    with tables.using(first):
        with tables.using(second):
            assert (bb(), tables.in_use()) == (0.42, second)
        assert (bb(), tables.in_use()) == (0.41, first)
        with tables.using(None):
            assert (bb(), tables.in_use()) == (0.4, None)
    assert tables.in_use() is None


def test_tables_are_put_away_when_something_goes_wrong(tmp_path):
    own = written(tmp_path, shot=shot_csv("BB,shot,0.41,mine"))
    with pytest.raises(Mistakes, match="shot metal: 'gold'"), tables.using(own):
        shot.sizes("gold")
    assert tables.in_use() is None


def test_what_is_made_of_the_tables_is_kept_for_each(tmp_path):
    made = []

    @tables.derived
    def heaviest(group, least_g=0.0):
        made.append(tables.in_use())
        return max(r["mass_g"] for r in tables.rows("shot") if r["group"] == group) + least_g

    own = tables.read_folder(written(tmp_path, shot=shot_csv("SSG,shot,1.7,mine")))
    for _ in range(2):
        assert heaviest("shot", least_g=1.0) == 2.6
        with tables.using(own):
            assert heaviest("shot", least_g=1.0) == 2.7
    assert made == [None, own]


def weighed(own, name):
    with tables.using(own):
        return next(s.mass_g for s in shot.sizes() if s.name == name)


def test_another_process_is_given_the_same_tables(tmp_path):
    own = tables.read_folder(written(tmp_path, shot=shot_csv("BB,shot,0.43,mine")))
    assert pickle.loads(pickle.dumps(own)) == own  # noqa: S301
    (tmp_path / "shot.csv").unlink()  # what was read is what counts
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as pool:
        assert list(pool.map(weighed, [own, None, own], ["BB"] * 3)) == [0.43, 0.4, 0.43]


def test_tables_are_light_to_load():
    loads = "import sys, tipsight.tables; print('numpy' in sys.modules)"
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", loads], cwd=ROOT, capture_output=True, check=True, encoding="utf-8"
    )
    assert done.stdout == "False\n"


WORDS, ALSO = ",".join(SCHEMAS["words"].columns), "item,said,meant,source"
STOCK, PAINTS = (lines_of(name)[0] for name in ("stock", "paints"))
RED = "red,yes,{},red,,0.02,0.62,612,9,0,500,30,{},#b01f24,mine"
PATTERN = "mine,,balsa,{},cane,3,15,10,8,bulk,0.4,14,60,0.6,2,5,3,40,mine"


@pytest.mark.parametrize(
    ("name", "lines", "said"),
    [
        ("shot", ["name,group,mass_g", "BB,shot,0.4"], "shot.csv, line 1: the columns source are missing"),
        ("shot", ["name,group,mass,source"],
         "shot.csv, line 1: 'mass' will not do; the columns are name, group, mass_g, source, each "
         "once, with commas between them"),
        ("shot", ["name;group;mass_g;source"],
         "shot.csv, line 1: 'name;group;mass_g;source' will not do; the columns are name, group, "
         "mass_g, source, each once, with commas between them"),
        ("shot", ["name,group,mass_g,source,source"],
         "shot.csv, line 1: 'source' will not do; the columns are name, group, mass_g, source, each "
         "once, with commas between them"),
        ("shot", [], "shot.csv, line 1: the columns name, group, mass_g, source are missing"),
        ("shot", shot_csv("# mine", "BB,shot,heavy,mine"),
         "shot.csv, line 3, mass_g: 'heavy' will not do; say a number from 0.001 to 60"),
        ("shot", shot_csv("BB,shot,,mine"),
         "shot.csv, line 2, mass_g: say a number from 0.001 to 60"),
        ("shot", shot_csv("BB,shot,nan,mine"),
         "shot.csv, line 2, mass_g: 'nan' will not do; say a number from 0.001 to 60"),
        ("shot", shot_csv("BB,shots,0.4,mine", "AB,shot,-1,mine"),
         "shot.csv, line 2, group: 'shots' will not do; say one of shot, olivette\n"
         "shot.csv, line 3, mass_g: '-1' will not do; say a number from 0.001 to 60"),
        ("shot", shot_csv("BB,shot,0,4,mine"),
         "shot.csv, line 2: there are 5 cells and 4 columns; quote a cell with a comma in it"),
        ("shot", shot_csv("BB,shot,0.4,mine", "AB,shot,0.6,mine", "BB,shot,0.5,mine"),
         "shot.csv, line 4: 'BB' will not do; this row stands on line 2 already"),
        ("shot", shot_csv("B*B,shot,0.4,mine"),
         "shot.csv, line 2, name: 'B*B' will not do; say a name of letters, digits, blanks, dots and "
         "hyphens"),
        ("shot_metals", ["name,density_kg_m3,lead_law,says,source", "tin,7290,maybe,,mine"],
         "shot_metals.csv, line 2, lead_law: 'maybe' will not do; say yes or no"),
        ("banks", [",".join(SCHEMAS["banks"].columns), "Mud,,0,0,500,30,0,500,30,0,mine"],
         "banks.csv, line 2, name: 'Mud' will not do; say a name of small letters, digits, blanks, "
         "dots and hyphens"),
        ("coats", ["name,thickness_um,density_kg_m3,source", "dope,15,1450,mine"],
         "coats.csv, line 2, name: 'dope' will not do; say one of varnish, paint, tip coat"),
        ("usno", ["from_deg,l0,l1,l2,l3,source", "7,1,1,1,1,mine"],
         "usno.csv, line 2, from_deg: '7' will not do; say one of -18, -12, -5, -0.8, 5, 20"),
        ("skies", [",".join(SCHEMAS["skies"].columns), "milky,,7.5,3,yes,yes,no,,mine"],
         "skies.csv, line 2, type: '7.5' will not do; say a whole number from 1 to 15"),
        ("stock", [STOCK, "reed,700,2,3,6,yes,,mine"],
         "stock.csv, line 2, wall_mm: '2' will not do; two walls are less than from_mm, 3"),
        ("stock", [STOCK, "reed,700,,6,3,yes,,mine"],
         "stock.csv, line 2, to_mm: '3' will not do; it is not below from_mm, 6"),
        ("stock", [STOCK, "reed,700,thin,3,6,yes,,mine"],
         "stock.csv, line 2, wall_mm: 'thin' will not do; say a number from 0 to 10, or leave it empty"),
        ("materials", ["name,density_kg_m3,low_kg_m3,high_kg_m3,kind,foam,styrene,source",
                       "balsa,140,150,170,wood,no,no,mine"],
         "materials.csv, line 2, density_kg_m3: '140' will not do; it is not below low_kg_m3, 150"),
        ("paints", [PAINTS, RED.format("no", "1,,,,,,,,,")],
         "paints.csv, line 2, takes: '1' will not do; leave it empty for a paint that is not "
         "fluorescent"),
        ("paints", [PAINTS, RED.format("yes", "0.9,500,10,0,440,35,0.3,620,14,")],
         "paints.csv, line 2, glow_long_nm: a fluorescent paint needs a number"),
        ("paints", [PAINTS, RED.format("no", ",,,,,,,,,").replace("#b01f24", "red")],
         "paints.csv, line 2, swatch: 'red' will not do; say a colour of a screen such as #f0f0ef"),
        ("kittler", [",".join(SCHEMAS["kittler"].columns), "1,1,,,,,0,mine"],
         "kittler.csv, line 2, a1: '1' will not do; a sky of type 1 takes none: leave it empty"),
        ("kittler", [",".join(SCHEMAS["kittler"].columns), "2,,,,,,0,mine"],
         "kittler.csv, line 2, diffuse_share: a sky of type 2 needs a number"),
        ("water_colours", ["name,says,forel_ule,factor,source", "peat,,18,0.1,mine"],
         "water_colours.csv, line 2, forel_ule: '18' will not do; say one of 9, 10, 11, 12, 14, 17, 19"),
        ("patterns", [",".join(SCHEMAS["patterns"].columns), PATTERN.format("12 mm")],
         "patterns.csv, line 2, name: 'mine' will not do; pattern_parts.csv has no parts of it"),
        ("patterns", [",".join(SCHEMAS["patterns"].columns),
                      PATTERN.format("9 mm").replace("mine,", "foam taper,", 1)],
         "patterns.csv, line 2, default_size: '9 mm' will not do; say one of 10 mm, 11 mm, 12 mm, 13 mm, "
         "13.5 mm"),
        ("patterns", [",".join(SCHEMAS["patterns"].columns),
                      PATTERN.format("12 mm").replace("mine,", "foam taper,", 1).replace("2,5,", "5.5,5,")],
         "patterns.csv, line 2, usual_to_mm: '5' will not do; it is not below usual_from_mm, 5.5"),
        ("patterns", [",".join(SCHEMAS["patterns"].columns),
                      PATTERN.format("12 mm").replace("mine,", "foam taper,", 1).replace("3,40,", "50,40,")],
         "patterns.csv, line 2, usual_showing_to_mm: '40' will not do; it is not below "
         "usual_showing_from_mm, 50"),
        ("pattern_parts", [",".join(SCHEMAS["pattern_parts"].columns),
                           "quill avn,12 mm,body,cone,balsa,8,3,12,0,0,mine"],
         "pattern_parts.csv, line 2, pattern: 'quill avn' will not do; say one of straight balsa, long "
         "cane balsa, wire avon, clear tube avon, quill avon, alloy stick 1.6, alloy stick 2.0, bolo "
         "type, foam taper, balsa taper, hollow-tip foam taper, hollow-tip balsa taper, canal balsa, "
         "wire stick, cane stick, chunky trotter, bottom-end peacock"),
        ("also", [ALSO, "sky,murky,dull,mine"],
         "also.csv, line 2, meant: 'dull' will not do; say one of dull overcast, bright overcast, broken "
         "cloud, hazy, clear"),
        ("also", [ALSO, "pace,crawl,slow,mine"],
         "also.csv, line 2, meant: 'slow' will not do; say one of slack, slow walk, walk, brisk, rushing"),
        ("also", [ALSO, "depth,deep,deeper,mine"],
         "also.csv, line 2, item: 'depth' will not do; this item has no words"),
        ("words", [WORDS, "wind,gusty,12,mph,,mine"],
         "words.csv, line 2, unit: 'mph' will not do; say m/s"),
        ("words", [WORDS, "wind,gusty,12,,,mine"], "words.csv, line 2, unit: say m/s"),
        ("words", [WORDS, "wind,gusty,120,m/s,,mine"],
         "words.csv, line 2, value: '120' will not do; say a number from 0 to 25"),
        ("words", [WORDS, "sun_is,aside,200,deg,,mine"],
         "words.csv, line 2, value: '200' will not do; say a number from 0 to 180"),
        ("words", [WORDS, "known,dreamt,1.5,share,,mine"],
         "words.csv, line 2, value: '1.5' will not do; say a number from 0.001 to 1"),
        ("words", [WORDS, "line,floating,1,,,mine"],
         "words.csv, line 2, value: '1' will not do; leave it empty: this word stands for no number"),
        ("words", [WORDS, "boils,weir,3,times,,mine"],
         "words.csv, line 2, unit: 'times' will not do; leave it empty"),
        ("words", [WORDS, "line,braided,,,,mine"],
         "words.csv, line 2, word: 'braided' will not do; say one of floating, sinking"),
        ("words", [WORDS, "bank,hedge,leaves,row of banks.csv,,mine"],
         "words.csv, line 2, value: 'leaves' will not do; say one of dark trees, bare trees, grass, reed, "
         "brick, mud, concrete, snow"),
        ("items", ["key"],
         "items.csv: this table cannot be replaced: it holds the questions themselves, which are asked "
         "before a table is read; words.csv and also.csv can be replaced"),
        ("shott", ["name"], "shott.csv: there is no packaged table of this name; did you mean 'shot'?"),
    ],
)  # fmt: skip
def test_what_does_not_serve_is_refused(tmp_path, name, lines, said):
    with pytest.raises(Mistakes) as caught, tables.using(written(tmp_path, **{name: lines})):
        pass
    assert str(caught.value).replace(f"{tmp_path}/", "") == said
    assert tables.in_use() is None


def test_an_unknown_item_of_words_is_refused(tmp_path):
    own = written(
        tmp_path, words=[WORDS, "weather,foul,1,,,mine"], also=[ALSO, "colours,x,y,mine"]
    )
    with pytest.raises(Mistakes) as caught:
        tables.read_folder(own)
    first, second = str(caught.value).replace(f"{tmp_path}/", "").split("\n")
    assert first.startswith(
        "also.csv, line 2, item: 'colours' will not do; say one of distance, known, eye"
    )
    assert second.startswith(
        "words.csv, line 2, item: 'weather' will not do; say one of known, eye, pace"
    )


def test_all_tables_are_read_before_any_is_refused(tmp_path):
    own = written(
        tmp_path, shot=shot_csv("BB,shot,x,mine"), stock=[STOCK, "reed,x,,3,6,yes,,mine"]
    )
    with pytest.raises(Mistakes) as caught:
        tables.read_folder(own)
    assert str(caught.value).replace(f"{tmp_path}/", "") == (
        "shot.csv, line 2, mass_g: 'x' will not do; say a number from 0.001 to 60\n"
        "stock.csv, line 2, density_kg_m3: 'x' will not do; say a number from 1 to 25000"
    )


def test_files_that_are_no_tables(tmp_path):
    (tmp_path / "shot.csv").write_bytes(b"name\xff")
    (tmp_path / "paints.csv").mkdir()
    (tmp_path / "STOCK.CSV").write_text("x", encoding="utf-8")
    (tmp_path / "notes.txt").write_text("x", encoding="utf-8")
    with pytest.raises(Mistakes) as caught:
        tables.read_folder(tmp_path)
    assert str(caught.value).replace(f"{tmp_path}/", "").split("\n") == [
        "STOCK.CSV: there is no packaged table of this name; did you mean 'stock'?",
        "paints.csv: this file cannot be read: Is a directory",
        "shot.csv: this is not a text file in UTF-8",
    ]


def test_folders_without_tables(tmp_path):
    with pytest.raises(Mistakes) as caught:
        tables.read_folder(tmp_path)
    assert (
        str(caught.value)
        == f"tables: {str(tmp_path)!r} will not do; there is no table in this folder"
    )
    with pytest.raises(Mistakes) as caught:
        tables.read_folder(tmp_path / "mine")
    assert str(caught.value) == (
        f"tables: {str(tmp_path / 'mine')!r} will not do; there is no such folder (for example my-tables)"
    )
