"""A paint of one's own: its row, its file, what an answer makes of it, and what is refused."""

import math
import pickle
from xml.etree import ElementTree

import numpy as np
import pytest

from tipsight import tables
from tipsight.advice.advise import advise
from tipsight.advice.sighting import contrast_doubt
from tipsight.cli import main
from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.own import colours, paint_row, shows
from tipsight.scene import paint

HALF = "wavelength_nm,reflectance\n" + "".join(f"{nm},0.5\n" for nm in range(400, 701, 20))


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "mine"


def test_a_measured_paint_reflects_as_it_was_measured(folder, tmp_path):
    file = tmp_path / "grey.csv"
    file.write_text(HALF, encoding="utf-8")
    paint_row.write(paint_row.from_spectrum("half grey", file), folder)
    with tables.using(folder):
        assert paint.reflected_part("half grey") == pytest.approx(np.full(97, 0.5))
        assert paint.doubt("half grey") == 1.0
        assert tables.row("paints", "half grey", "paint")["family"] in ("dark", "pale", "green")
        assert tables.row("paints", "white", "paint")["low"] == 0.05  # ours stand beside it
    assert paint.doubt("white") == 1.0


def test_a_paint_from_a_colour_has_it_in_daylight(folder):
    made = paint_row.from_colour("boat green", "5G 4/8")
    paint_row.write(made, folder)
    with tables.using(folder):
        assert colours.apart(paint_row.in_daylight("boat green"), made.xyz) < 1.0
        assert tables.row("paints", "boat green", "paint")["family"] == "green"
        assert paint.doubt("boat green") == 1.5


# Of #ff6a00 by IEC 61966-2-1: green 106/255 is linear ((.4157 + .055)/1.055)^2.4 = .1441, so that
# X = .4124 + .1441 x .3576 = .4639, Y = .2126 + .1441 x .7152 = .3157, Z = .0193 + .1441 x .1192 = .0365.
ORANGE_XYZ = (0.4639, 0.3157, 0.0365)


@pytest.mark.parametrize("how", ["not at all", "a little", "strongly"])
def test_a_told_colour_is_what_is_seen_of_the_paint_its_glow_included(folder, how):
    """To half a unit of CIEDE2000: a glow laid on top of the told colour was 12 of them off."""
    paint_row.write(paint_row.from_colour("mine", "#ff6a00", how), folder)
    with tables.using(folder):
        whole, plain = paint_row.in_daylight("mine"), paint.reflected_part("mine")
        assert colours.apart(whole, np.array(ORANGE_XYZ)) < 0.5
        assert plain.min() >= 0.0
        alone = colours.colour_of(plain, paint_row.WAVELENGTHS_NM)[1]
    ours = tables.row("paints", "fluorescent orange", "paint")["quantum_yield"]
    with tables.using(folder):
        glowing = tables.row("paints", "mine", "paint")["quantum_yield"]
    if how == "not at all":
        assert (glowing, alone) == (None, pytest.approx(0.3157, abs=2e-3))
    else:  # what glows is the rest of the luminance
        assert glowing == pytest.approx(ours * {"a little": 0.5, "strongly": 1.0}[how], rel=1e-4)
        assert alone < 0.3157 - 0.3 * glowing


def test_what_is_too_bright_for_plain_paint_may_glow():
    with pytest.raises(Mistakes, match="if it glows, say so"):
        paint_row.from_colour("hot", "lab 80 60 100")
    assert paint_row.from_colour("hot", "lab 80 60 100", "strongly").row["fluorescent"] == "yes"
    with pytest.raises(Mistakes, match="no paint that glows has this colour; the nearest of ours is"):
        paint_row.from_colour("sky", "#0000ff", "strongly")


def test_doubts_of_contrast_add_as_the_sides_of_a_right_angle(folder):
    """A fifth of the water's contrast and half of the paint's: e^hypot(ln 1.2, ln 1.5) = 1.5598."""
    paint_row.write(paint_row.from_colour("boat green", "5G 4/8"), folder)
    bands = (Band("black", 0, 10), Band("boat green", 10, 20))
    with tables.using(folder):
        found = contrast_doubt(Tip(Stock("quill", 3.0), 20.0, bands=bands))
    assert found == pytest.approx(1.5598, abs=1e-4)
    assert contrast_doubt(Tip(Stock("quill", 3.0), 20.0, bands=bands[:1])) == pytest.approx(1.2)
    assert found == pytest.approx(math.exp(math.hypot(math.log(1.2), math.log(1.5))))


def test_an_answer_with_it_is_wider(folder, tmp_path):
    file = tmp_path / "same.csv"
    made = paint_row.from_colour("told", "#1f6f3a")
    file.write_text(made.spectrum, encoding="utf-8")
    paint_row.write(made, folder)
    paint_row.write(paint_row.from_spectrum("measured", file), folder)
    with tables.using(folder):
        wide, narrow = (
            advise(demo.question("match").with_options(paint=name, pen="no")).tip_in_hand.visibility
            for name in ("told", "measured")
        )
    assert wide.level == pytest.approx(narrow.level, rel=1e-9)
    assert wide.low < narrow.low
    assert wide.high > narrow.high


def test_own_tables_with_a_spectrum_reach_another_process(folder):
    paint_row.write(paint_row.from_colour("boat green", "5G 4/8"), folder)
    own = pickle.loads(pickle.dumps(tables.read_folder(folder)))  # noqa: S301 - our own
    with tables.using(own):
        assert paint.reflected_part("boat green").max() < 0.3


def test_ours_beside_it_on_two_waters():
    found = shows.contrasts(["black", "white"])
    assert set(found["black"]) == {"dark", "bright"}
    assert found["black"]["bright"] < -0.8
    assert found["white"]["dark"] > 5.0


# --- files that will not do


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("nm,share\n400,0.1\n", "line 1: the columns are wavelength_nm and reflectance"),
        ("", "line 1: the columns are"),
        (HALF.replace("500,0.5", "500,x"), "line 7: '500, x' will not do; two numbers are wanted"),
        (HALF.replace("500,0.5", "500,1.2"), "line 7: '1.2' will not do; a surface gives back 0 to 1"),
        (HALF.replace("500,0.5", "490,0.5"), "line 8: '520' will not do; wavelengths rise, by 20 nm"),
        (HALF.replace("500,0.5", "480,0.5"), "line 7: '480' will not do; wavelengths rise, by 20 nm"),
        (HALF.replace("400,0.5\n", ""), "line 2: '420' will not do; it begins at 400 nm at the latest"),
        (HALF.replace("700,0.5\n", ""), "line 16: '680' will not do; it goes to 700 nm at the least"),
    ],
)
def test_a_spectrum_that_will_not_do(text, says, tmp_path):
    file = tmp_path / "mine.csv"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(Mistakes) as told:
        paint_row.from_spectrum("mine", file)
    assert says in str(told.value)


def test_a_row_whose_file_is_not_there(folder):
    path, beside = paint_row.write(paint_row.from_colour("boat green", "5G 4/8"), folder)
    beside.unlink()
    with pytest.raises(Mistakes, match=r"a row of paints\.csv names this file, and it cannot be read"):
        tables.read_folder(folder)
    with pytest.raises(Mistakes, match="there is no such file of text"):
        paint_row.from_spectrum("mine", folder / "nowhere.csv")
    assert path.exists()


def test_nothing_is_written_that_could_not_be_read(folder):
    folder.mkdir()
    (folder / "paints.csv").write_text("name\nodd\n", encoding="utf-8")
    before = (folder / "paints.csv").read_bytes()
    with pytest.raises(Mistakes):
        paint_row.write(paint_row.from_colour("boat green", "5G 4/8"), folder)
    assert (folder / "paints.csv").read_bytes() == before
    assert [one.name for one in folder.iterdir()] == ["paints.csv"]


def test_a_folder_that_cannot_be_made(tmp_path):
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(Mistakes, match="it cannot be written there"):
        paint_row.write(paint_row.from_colour("boat green", "5G 4/8"), tmp_path / "file" / "mine")


# --- the command


def test_the_command(folder, capsys, tmp_path):
    line = ["paint", "my orange", "--colour", "#ff6a00", "--glows", "a little", "--tables", f"{folder}"]
    picture = tmp_path / "mine.svg"
    assert main([*line, "-o", f"{picture}"]) == 0
    text = capsys.readouterr().out
    assert text.startswith("my orange: #ff6a00 on a screen, ")
    assert "on dark water" in text
    assert "may be half as much again" in " ".join(text.split())
    assert f"--tables {folder}" in " ".join(text.split())
    words = "".join(ElementTree.parse(picture).getroot().itertext())  # noqa: S314 - our own
    assert "on bright water" in words
    assert main(line) == 2
    assert "say --again to make it anew" in capsys.readouterr().err
    assert main([*line, "--again"]) == 0
    capsys.readouterr()
    assert main(["advise", "demo", "--paint", "my orange", "--tables", f"{folder}"]) == 0


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ([], "name: say what you call it, in small letters"),
        (["mine", "--tables", "x"], "say either a colour or a file with a measured spectrum"),
        (["mine", "--colour", "#ff6a00"], "--tables: say the folder of your own tables"),
        (["Mine!", "--colour", "#ff6a00", "--tables", "x"], "say a name of small letters"),
        (["mine", "--colour", "#ff6a00", "--glows", "madly", "--tables", "x"], "say not at all or"),
    ],
)
def test_what_the_command_refuses(line, says, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert main(["paint", *line]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert says in err
    assert list(tmp_path.iterdir()) == []
