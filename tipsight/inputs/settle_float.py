"""The float, weighed or built, and what the angler has."""

from tipsight import tables
from tipsight.inputs.case import Box, BuiltFloat, Fixing, Hung, Part, Shot, Tip, WeighedFloat
from tipsight.inputs.parts import EXAMPLE, choose_size, part_said, parts_of
from tipsight.inputs.quantities import Unread
from tipsight.inputs.settle_tip import settle_tips, stock_of
from tipsight.inputs.values import Asker

Float = WeighedFloat | BuiltFloat


def shot_mass_g(weighed: dict[str, float]) -> dict[str, float]:
    """Return the mass of one of each size of shot [g]; what he weighed stands before the table.

    >>> shot_mass_g({"No 4": 0.19})["No 4"]
    0.19
    """
    return {row["name"]: row["mass_g"] for row in tables.rows("shot")} | weighed


def settle_box(asker: Asker) -> Box:
    """Return what the angler has, from which alone is advised.

    >>> from tipsight.inputs.question import Question
    >>> box = settle_box(Asker(Question(shot=("BB", "20 No 4"), ten_weigh=("No 4 1.9 g",))))
    >>> [(shot.name, shot.mass_g, shot.count) for shot in box.shot]
    [('BB', 0.4, None), ('No 4', 0.19, 20)]
    """
    metal = asker.take("shot_metal").word
    masses = shot_mass_g(asker.ask("ten_weigh") or {})
    return Box(
        stock=tuple(stock_of(said) for said in asker.take("tips")),
        inserts=tuple(stock_of(said) for said in asker.take("inserts")),
        paints=asker.take("paints"),
        pen=asker.take("pen"),
        sleeves=asker.take("sleeves"),
        light_stick=asker.take("light_stick"),
        shot=tuple(Shot(name, masses[name], metal, count) for name, count in asker.take("shot")),
        shot_metal=metal,
        hanging=tuple(Hung(name, n, at, masses[name]) for name, n, at in asker.ask("hangs") or ()),
    )


def settle_float(asker: Asker, box: Box) -> tuple[Float, Tip, Tip]:
    """Return the float, the tip with which it took its shot, and the tip in hand.

    A float whose shot was told is weighed, any other is built; the metal of the box's shot is
    taken for the float's where that was not told.

    >>> from tipsight.inputs.question import Question
    >>> settle_float(Asker(Question(takes="6BB")), Box())[0].shot_g
    2.4000000000000004
    """
    name = asker.take("pattern").word
    row = tables.row("patterns", name, "pattern")
    weighed = asker.knows("takes")
    for key in ("size", "parts"):
        if weighed and asker.knows(key):
            asker.wrong(
                key,
                "a float is known by what it takes or by how it is built; "
                "leave one out or say not told",
            )
    tips = settle_tips(asker, row, weighed)
    float_ = _weighed(asker, name, box) if weighed else _built(asker, name, row["default_size"])
    return float_, tips.weighed, tips.now


def _weighed(asker: Asker, pattern: str, box: Box) -> WeighedFloat:
    takes = asker.ask("takes")
    shot_g = takes if isinstance(takes, float) else 0.0
    if isinstance(takes, tuple):
        masses = shot_mass_g(asker.ask("ten_weigh") or {})
        shot_g = sum(count * masses[name] for name, count in takes)
        if not 0.05 <= shot_g <= 60:
            asker.wrong(
                "takes", f"that is {shot_g:g} g of shot; a float takes 0.05 to 60 g", example="6BB"
            )
    metal = asker.take("marked_in", box.shot_metal).word
    return WeighedFloat(
        pattern,
        shot_g,
        metal,
        asker.ask("weighs"),
        _fixing(asker),
        varnish_coats=int(asker.take("varnish_coats", quiet=True)),
        paint_coats=int(asker.take("paint_coats", quiet=True)),
        drunk_g=_drunk_g(asker),
    )


def _drunk_g(asker: Asker) -> float:
    """Return the water that a float drinks in an hour."""
    dry_g, soaked_g = asker.ask("weighs"), asker.ask("soaked")
    if soaked_g is None:
        return 0.0
    if dry_g is None:
        if not asker.knows("weighs"):
            asker.wrong("soaked", "say what it weighs dry too", example="2.1 g, with weighs 2 g")
        return 0.0
    if soaked_g < dry_g:
        asker.wrong("soaked", f"dry it weighs {dry_g:g} g; wet it cannot weigh less")
        return 0.0
    return float(soaked_g - dry_g)


def _built(asker: Asker, pattern: str, default_size: str) -> BuiltFloat:
    texts = asker.ask("parts")
    parts: list[Part] = []
    if texts:
        if asker.knows("size"):
            asker.wrong("size", "the parts tell how it is built; leave one out")
        for text in texts:
            try:
                parts.append(part_said(text))
            except Unread as unread:
                asker.wrong("parts", f"{unread}", said=text, example=EXAMPLE)
        if parts and not any(part.role == "body" for part in parts):
            asker.wrong("parts", "one part must be a body", example=EXAMPLE)
    else:
        said = asker.take("size", default_size)
        try:
            parts = list(parts_of(pattern, choose_size(pattern, said)))
        except Unread as unread:
            asker.wrong("size", f"{unread}", example=default_size)
    return BuiltFloat(
        pattern=pattern,
        parts=tuple(parts),
        varnish_coats=int(asker.take("varnish_coats")),
        paint_coats=int(asker.take("paint_coats")),
        weighs_g=asker.ask("weighs"),
        fixing=_fixing(asker),
        drunk_g=_drunk_g(asker),
    )


def _fixing(asker: Asker) -> Fixing | None:
    """Return how the float is shotted, None as its pattern is."""
    ways: dict[str, Fixing] = {
        "bulk and droppers": "bulk",
        "shirt-button": "spread",
        "even string": "even",
    }
    return ways.get(asker.take("shotting").word)
