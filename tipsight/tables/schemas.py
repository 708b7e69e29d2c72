"""What each table of tipsight/data holds: its columns, their limits, and the key of its rows.

The limits keep slips of the pen out, not poor values: they are judgement, wider than any row.
"""

from tipsight.tables import row_checks
from tipsight.tables.kinds import Kind, NameOf, Number, OneOf, Schema, Text, YesNo


def each(names: str, kind: Kind) -> dict[str, Kind]:
    """Return the same kind for several columns."""
    return dict.fromkeys(names.split(), kind)


ANY, TEXT, YES_NO = Text(".*"), Text(), YesNo()
NAME = Text(
    "[a-z0-9][a-z0-9 .-]*", "say a name of small letters, digits, blanks, dots and hyphens"
)
SHOT_NAME = Text(
    "[A-Za-z0-9][A-Za-z0-9 .-]*", "say a name of letters, digits, blanks, dots and hyphens"
)
SOURCE = {"source": ANY}
SHARE, SHIFT, COEFFICIENT = Number(0.0, 1.0), Number(-1.0, 1.0), Number(-1e4, 1e4)
DENSITY_KG_M3 = Number(1.0, 25_000.0)
DIAMETER_MM, LENGTH_MM, TIP_MM = Number(0.0, 100.0), Number(0.0, 1000.0), Number(0.0, 150.0)
SKY_TYPE = Number(1, 15, whole=True)
PAINT_FAMILY = OneOf(("dark", "red", "orange", "green", "pale"))
NM, WIDTH_NM = Number(100.0, 2000.0), Number(0.1, 500.0)
SPECTRUM = {"low": SHARE, "step": SHIFT, "edge_nm": NM, "width_nm": WIDTH_NM,
            "bump": SHIFT, "centre_nm": NM, "spread_nm": WIDTH_NM}  # fmt: skip
GLOW = {
    **each("takes gap quantum_yield", Number(0.0, 1.0, blank=True)),
    **each("takes_edge_nm gap_nm", Number(100.0, 2000.0, blank=True)),
    **each("takes_width_nm gap_width_nm", Number(0.1, 500.0, blank=True)),
    "glow_nm": Number(300.0, 780.0, blank=True),
    **each("glow_short_nm glow_long_nm", Number(1.0, 500.0, blank=True)),
}

SCHEMAS: dict[str, Schema] = {
    "also": Schema(
        {"item": NameOf("items", "key"), "said": TEXT, "meant": TEXT, **SOURCE},
        key=("item", "said"), check=row_checks.also,
    ),
    "banks": Schema({"name": NAME, "says": ANY, **SPECTRUM, "self_shade": SHARE, **SOURCE}),
    "bench_steps": Schema(
        {"step": NAME, "when": OneOf(("always", "quill", "tube", "white", "glued", "foam")),
         "words": TEXT, "drying": ANY, "drying_on_foam": ANY, **SOURCE},
        key=("step",),
    ),
    "coats": Schema(
        {"name": NAME, "thickness_um": Number(1.0, 500.0), "density_kg_m3": DENSITY_KG_M3, **SOURCE},
        closed="name",
    ),
    "cones": Schema(
        {"wavelength_nm": NM, **each("long medium short photopic scotopic", SHARE), **SOURCE},
        key=("wavelength_nm",), closed="wavelength_nm",
    ),
    "d_series": Schema(
        {"wavelength_nm": NM, **each("s0 s1 s2", COEFFICIENT), **SOURCE},
        key=("wavelength_nm",), closed="wavelength_nm",
    ),
    "finishes": Schema(
        {"finish": NAME,
         "on": OneOf(("foam", "styrene", "wood", "quill", "carbon", "glass", "metal", "plastic")),
         "does": OneOf(("melts", "softens", "crazes", "fogs", "attacks", "raises grain")),
         "warning": TEXT, **SOURCE},
        key=("finish", "on"),
    ),
    "general_sky": Schema(
        {"type": SKY_TYPE, **each("a b c d e", COEFFICIENT), **SOURCE}, key=("type",)
    ),
    "grades": Schema(
        {"word": NAME, "from_level": Number(0.0, 1e4), **SOURCE}, key=("word",), closed="word"
    ),
    "items": Schema(
        {**each("key section kind", TEXT), **each("unit units", ANY),
         **each("low high", Number(-1e6, 1e6, blank=True)), **each("table default", ANY),
         **each("not_sure folded", YES_NO), **each("example question", TEXT), "hint": ANY, **SOURCE},
        key=("key",),
        fixed="it holds the questions themselves, which are asked before a table is read; "
        "words.csv and also.csv can be replaced",
    ),
    "kittler": Schema(
        {"type": SKY_TYPE, **each("a1 a2 c d", Number(-100.0, 100.0, blank=True)),
         "diffuse_share": Number(0.0, 1.0, blank=True), "blue_share": SHARE, **SOURCE},
        key=("type",), check=row_checks.kittler,
    ),
    "materials": Schema(
        {"name": NAME, **each("density_kg_m3 low_kg_m3 high_kg_m3", DENSITY_KG_M3),
         "kind": OneOf(("wood", "quill", "carbon", "glass", "plastic", "metal")),
         **each("foam styrene", YES_NO), **SOURCE},
        check=row_checks.material,
    ),
    "paints": Schema(
        {"name": NAME, **each("on_shelf fluorescent", YES_NO), "family": PAINT_FAMILY, "says": ANY,
         **SPECTRUM, **GLOW,
         "swatch": Text("#[0-9a-fA-F]{6}", "say a colour of a screen such as #f0f0ef"), **SOURCE,
         "spectrum": Text(r"([A-Za-z0-9][A-Za-z0-9 ._-]*\.csv)?", "name a file such as mine.csv"),
         "doubt": Number(1.0, 5.0, blank=True)},
        check=row_checks.paint, optional=("spectrum", "doubt"),
    ),
    "pattern_parts": Schema(
        {"pattern": NameOf("patterns"),
         "size": Text(r"\d+(\.\d+)? mm", "say a diameter such as 12 mm"),
         "role": OneOf(("body", "shoulder", "stem", "keel")),
         "shape": OneOf(("cylinder", "cone", "ellipsoid", "dome")),
         "material": NameOf("materials"), "length_mm": LENGTH_MM,
         **each("top_mm foot_mm bore_mm", DIAMETER_MM), "inside_mm": LENGTH_MM, **SOURCE},
        key=("pattern", "size"), grouped=True,
    ),
    "patterns": Schema(
        {"name": NAME, "says": ANY, "body": NameOf("materials"), "default_size": TEXT,
         "tip_stock": NameOf("stock"), "tip_diameter_mm": Number(0.5, 14.0),
         **each("tip_showing_mm tip_wet_mm tip_glued_mm", TIP_MM),
         "fixing": OneOf(("bulk", "spread", "even")), "mass_share": Number(0.05, 5.0),
         "max_showing_diameters": Number(1.0, 100.0), "max_showing_mm": Number(1.0, 200.0),
         "max_body_share": Number(0.05, 1.0), **each("usual_from_mm usual_to_mm", Number(0.5, 14.0)),
         **each("usual_showing_from_mm usual_showing_to_mm", Number(1.0, 200.0)), **SOURCE},
        check=row_checks.pattern,
    ),
    "shot": Schema(
        {"name": SHOT_NAME, "group": OneOf(("shot", "olivette")), "mass_g": Number(0.001, 60.0),
         **SOURCE}
    ),
    "shot_metals": Schema(
        {"name": NAME, "density_kg_m3": Number(1500.0, 25_000.0), "lead_law": YES_NO, "says": ANY,
         **SOURCE}
    ),
    "skies": Schema(
        {"name": NAME, "says": ANY, "type": SKY_TYPE, "turbidity": Number(1.5, 8.0),
         **each("beam beam_asked sun_comes_and_goes", YES_NO), "turns_to": ANY, **SOURCE}
    ),
    "stock": Schema(
        {"name": NAME, "density_kg_m3": DENSITY_KG_M3, "wall_mm": Number(0.0, 10.0, blank=True),
         **each("from_mm to_mm", Number(0.5, 14.0)), "on_shelf": YES_NO, "says": ANY, **SOURCE},
        check=row_checks.stock,
    ),
    "sun_colour": Schema(
        {"sun_height_deg": Number(0.0, 90.0), "temperature_k": Number(1000.0, 25_000.0), **SOURCE},
        key=("sun_height_deg",),
    ),
    "tints": Schema(
        {"name": NAME, "says": ANY, "transmittance": Number(0.01, 1.0), "low": SHARE, "edge_nm": NM,
         "width_nm": WIDTH_NM, "polarised": YES_NO, **SOURCE}
    ),
    "twilight_colour": Schema(
        {"sun_height_deg": Number(-18.0, 90.0),
         **each("sky_mired cloud_mired glow_mired", Number(40.0, 1000.0)), "glow_share": SHARE,
         **SOURCE},
        key=("sun_height_deg",),
    ),
    "usual_loads": Schema(
        {"pace_m_s": Number(0.0, 5.0), "most_g_per_m": Number(0.1, 50.0), **SOURCE}, key=("pace_m_s",)
    ),
    "usno": Schema(
        {"from_deg": Number(-18.0, 90.0), **each("l0 l1 l2 l3", COEFFICIENT), **SOURCE},
        key=("from_deg",), closed="from_deg",
    ),
    "water_colours": Schema(
        {"name": NAME, "says": ANY, "forel_ule": Number(1, 21, whole=True), "factor": SHARE, **SOURCE},
        check=row_checks.water,
    ),
    "water_spectra": Schema(
        {"wavelength_nm": NM, **each("fu9 fu10 fu11 fu12 fu14 fu17 fu19", Number(0.0, 100.0))},
        key=("wavelength_nm",), closed="wavelength_nm",
    ),
    "words": Schema(
        {**each("item word", TEXT), **each("value unit says", ANY), **SOURCE},
        key=("item", "word"), closed="item", check=row_checks.word,
    ),
}  # fmt: skip
