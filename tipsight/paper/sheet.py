"""The bench sheet: the tip and the float at true size, and all that is done to make it."""

from tipsight import tables
from tipsight.advice.answer import Answer, Block
from tipsight.advice.swim import painted_mm
from tipsight.inputs.case import Case, Tip
from tipsight.load import hull, materials, plan, shot, staircase
from tipsight.output import things, words
from tipsight.paper.page import TALL_MM, WIDE_MM, Page, Paper
from tipsight.pictures.subject import advised
from tipsight.pictures.svg import shown

_COLUMN_MM = 74.0
"""Where the words begin, right of the drawings."""
_FLOOR_MM = 20.0
"""Above the check lines."""
_TOP_MM = TALL_MM - 20.0
"""Where the drawings begin."""
JOBS = (
    "cut to length",
    "glued square",
    "edges marked",
    "white dry",
    "colours dry",
    "clear dry",
    "tried in the jar",
    "shot changed",
    "card in the lid",
)


def subject(answer: Answer) -> tuple[str, Block]:
    """Return the tip that is made: the one for the bench if there is one.

    Parameters
    ----------
    answer : Answer
        The answer.

    Returns
    -------
    title : str
        What it is.
    block : Block
        The tip.
    """
    if answer.at_the_bench is not None:
        return "to fit at the bench", answer.at_the_bench.block
    title, block = advised(answer)
    return title.lower().replace("advised, ", "as it is to be "), block


def pdf(answer: Answer, paper: Paper = "a4") -> bytes:
    """Return the bench sheet: one page, one to one.

    Parameters
    ----------
    answer : Answer
        The answer; its tip for the bench is drawn, or else the one for the bank.
    paper : str
        ``a4`` or ``letter``; the printed part is the same and fits both.

    Returns
    -------
    bytes
        A PDF.

    Raises
    ------
    Mistakes
        For any other paper.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> pdf(advise(Question(behind=["dark"])))[:5]
    b'%PDF-'
    """
    case = answer.case
    title, block = subject(answer)
    tip = block.tip
    page = Page(paper, f"Bench sheet: {things.stock(tip)}")
    page.text(0, TALL_MM - 6, f"Bench sheet: tip {title}", 14, bold=True)
    wanted = f"{block.visibility.grade} at {words.yards(case.place.range_m)}"
    page.text(
        0,
        TALL_MM - 12,
        f"{case.float_.pattern}; {things.stock(tip)}, "
        f"{words.length(tip.showing_mm)} showing: {wanted}",
        8.5,
    )
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    _piece(page, 20.0, tip)
    _float(page, 54.0, tip, body)
    y = _sizes(page, TALL_MM - 20, block, body)
    y = _coats(page, y - 2.5, tip, body)
    y = _stairs(page, y - 2.5, case, tip, body)
    y = _jobs(page, y - 2.5)
    _cautions(page, y - 2.5, answer, tip)
    page.ruler(0, 6, 100.0, "100 mm")
    page.ruler(108, 6, 76.2, "3 in")
    page.text(
        0,
        0,
        "Print at 100 %, not fitted to the page; then measure these two lines before you cut.",
        8,
        bold=True,
    )
    return page.bytes()


def _head(page: Page, y: float, said: str) -> float:
    page.line(_COLUMN_MM, y + 4.4, WIDE_MM, y + 4.4, 0.15)
    page.text(_COLUMN_MM, y, said, 9, bold=True)
    return y - 4.6


def _edges(tip: Tip) -> list[tuple[float, str]]:
    """Return each edge of the cut piece below its top, with what it is."""
    found = [(0.0, "top")]
    found += [(end, f"foot of {paint}") for paint, _, end in shown(tip.bands, tip.showing_mm)[:-1]]
    found.append((tip.showing_mm, "waterline"))
    outside = tip.showing_mm + tip.wet_mm
    found.append((outside, "body begins"))
    if tip.glued_mm:
        found.append((outside + tip.glued_mm, "end, glued in"))
    return found


def _piece(page: Page, x: float, tip: Tip) -> None:
    """Draw the piece to be cut, its edges marked for a pencil."""
    top, bare = _TOP_MM - 6.0, tip.stock.diameter_mm
    page.text(x, top + 3.0, "the piece to cut, 1:1", 7, align="middle")
    for paint, start, end in shown(tip.bands, tip.showing_mm):
        page.box(x - bare / 2, top - end, bare, end - start, fill=_fill(paint), edge_mm=0.1)
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    page.box(x - bare / 2, top - whole, bare, whole, edge_mm=0.1)
    if tip.stock.bore_mm:
        for side in (-0.5, 0.5):
            at = x + side * tip.stock.bore_mm
            page.line(at, top - whole, at, top, 0.1, (1.0, 1.0))
    label = top + 9.0
    for at, said in _edges(tip):
        y = top - at
        label = min(y - 1.0, label - 6.4)
        page.line(x - bare / 2 - 4, y, x + bare / 2, y, 0.1)
        page.line(x - bare / 2 - 4, y, x - bare / 2 - 6, label + 1.0, 0.1)
        page.text(x - bare / 2 - 6.5, label, f"{at:.3g}", 7, bold=True, align="right")
        page.text(x + bare / 2 + 2, y - (0.2 if at else -0.2), said, 6)


def _fill(paint: str) -> str:
    """Return the screen colour of a paint, for print."""
    row = next((row for row in tables.rows("paints") if row["name"] == paint), None)
    return row["swatch"] if row else "#ffffff"


def _float(page: Page, x: float, tip: Tip, body: hull.Hull) -> None:
    """Draw the float's outline with its tip, cut off where the page ends."""
    top, painted = _TOP_MM - 6.0, painted_mm(tip)
    page.text(x, top + 3.0, "the float, 1:1", 7, align="middle")
    for paint, start, end in shown(tip.bands, tip.showing_mm):
        page.box(x - painted / 2, top - end, painted, end - start, fill=_fill(paint), edge_mm=0.1)
    outside = tip.showing_mm + tip.wet_mm
    page.box(x - painted / 2, top - outside, painted, tip.wet_mm, edge_mm=0.1)
    water = top - tip.showing_mm
    for side in (-1, 1):
        page.line(
            x + side * (painted / 2 + 0.5),
            water,
            x + side * (painted / 2 + 8),
            water,
            0.2,
            (1.0, 0.8),
        )
    page.text(x + painted / 2 + 1, water + 0.8, "water", 6)
    root, z, r = top - outside, body.profile.z_mm, body.profile.r_mm
    room = root - _FLOOR_MM
    lowest = -float(z[-1])
    kept = [(float(b), root + float(a)) for a, b in zip(z, r, strict=True) if -a <= room]
    if lowest > room:
        kept.append((float(_radius_at(body, -room)), _FLOOR_MM))
    page.outline([(x + b, y) for b, y in kept], closed=False)
    page.outline([(x - b, y) for b, y in kept], closed=False)
    if lowest > room:
        page.outline(
            [
                (x - 6, _FLOOR_MM - 0.6),
                (x - 2, _FLOOR_MM + 0.6),
                (x + 2, _FLOOR_MM - 0.6),
                (x + 6, _FLOOR_MM + 0.6),
            ],
            closed=False,
        )
        page.text(x, _FLOOR_MM - 4, f"goes on {lowest - room:.0f} mm", 6, align="middle")


def _radius_at(body: hull.Hull, z_mm: float) -> float:
    z, r = body.profile.z_mm, body.profile.r_mm
    i = next(i for i, at in enumerate(z) if at <= z_mm)
    if i == 0 or z[i] == z[i - 1]:
        return float(r[i])
    return float(r[i - 1] + (r[i] - r[i - 1]) * (z_mm - z[i - 1]) / (z[i] - z[i - 1]))


def _sizes(page: Page, y: float, block: Block, body: hull.Hull) -> float:
    tip = block.tip
    y = _head(page, y, "Sizes")
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    rows = [
        ("stock", f"{things.stock(tip)}"),
        (
            "cut it",
            f"{whole:.3g} mm ({words.inches(whole)}): {tip.showing_mm:.3g} showing + "
            f"{tip.wet_mm:.3g} wet + {tip.glued_mm:.3g} glued in",
        ),
        (
            "thickness",
            f"bare {tip.stock.diameter_mm:.3g} mm; with {tip.coats} coats {painted_mm(tip):.2f} mm",
        ),
        (
            "body",
            f"{body.body_diameter_mm:.3g} mm by {body.body_length_mm:.3g} mm; "
            f"{', '.join(body.materials)}",
        ),
    ]
    for name, said in rows:
        page.text(_COLUMN_MM, y, name, 7.5, bold=True)
        y = page.lines(_COLUMN_MM + 19, y, said, WIDE_MM - _COLUMN_MM - 19, 7.5)
    return y


def _steps(tip: Tip) -> list[dict[str, str]]:
    worn = {band.paint for band in tip.bands}
    glowing = {row["name"] for row in tables.rows("paints") if row["fluorescent"] == "yes"}
    true = {
        "always": True,
        "quill": tip.stock.kind == "quill",
        "tube": bool(tip.stock.bore_mm),
        "white": tip.undercoat,
        "fluorescent": bool(worn & glowing),
    }
    return [row for row in tables.rows("bench_steps") if true.get(row["when"], False)]


def _coats(page: Page, y: float, tip: Tip, body: hull.Hull) -> float:
    y = _head(page, y, "Work and coats, in order")
    for number, row in enumerate(_steps(tip), 1):
        said = row["words"]
        if row["step"] == "colour":
            said = f"{things.paint(tip.bands, tip.showing_mm)}, from the top: {said}"
        said += f" ({row['drying']})" if row["drying"] else ""
        page.text(_COLUMN_MM, y, f"{number}", 7, bold=True)
        y = page.lines(_COLUMN_MM + 5, y, said, WIDE_MM - _COLUMN_MM - 5, 7)
    finishes = dict.fromkeys(row["finish"] for row in tables.rows("finishes"))
    warned = dict.fromkeys(
        said
        for made in body.materials
        for finish in finishes
        if (said := materials.paint_warning(made, finish)) and "grain" not in said
    )
    if warned:
        return page.lines(
            _COLUMN_MM, y, f"Mind: {'; '.join(warned)}.", WIDE_MM - _COLUMN_MM, 7, bold=True
        )
    return page.lines(
        _COLUMN_MM,
        y,
        "No paint in the table melts this body; foam it would: try any paint on an offcut first.",
        WIDE_MM - _COLUMN_MM,
        7,
    )


def _stairs(page: Page, y: float, case: Case, tip: Tip, body: hull.Hull) -> float:
    box, warm = case.box, case.stream.temperature_c
    y = _head(page, y, f"Shot to each band ({box.shot_metal}, in air, water {warm:g} C)")
    page.text(WIDE_MM - 24, y + 4.6, "the jar said, g", 7)
    shots = box.shot or shot.sizes(box.shot_metal)
    for step in reversed(staircase.staircase(body, tip, box.shot_metal, shots, warm)):
        page.text(_COLUMN_MM, y, f"{step.mark}", 7)
        page.text(_COLUMN_MM + 54, y, words.grams(step.shot_g), 7, bold=True, align="right")
        page.text(_COLUMN_MM + 56, y, step.words, 7)
        page.box(WIDE_MM - 18, y - 1.5, 18, 5.2, edge_mm=0.2)
        y -= 6.0
    planned = plan.plan(_pull_g(body, tip, warm), box.shot, body.fixing, warm)
    if planned.shot:
        told = ", ".join(f"{count} {name} {where}" for name, count, where in planned.shot)
        y = page.lines(_COLUMN_MM, y, f"Shot list: {told}.", WIDE_MM - _COLUMN_MM, 7)
    return y


def _pull_g(body: hull.Hull, tip: Tip, warm: float) -> float:
    from tipsight.load import budget

    return budget.pull_g(body, tip, warm)


def _jobs(page: Page, y: float) -> float:
    y = _head(page, y, "Done")
    for number, job in enumerate(JOBS):
        x = _COLUMN_MM + (number % 3) * 39.0
        page.box(x, y - 0.6, 3.4, 3.4, edge_mm=0.25)
        page.text(x + 5, y, job, 7)
        if number % 3 == 2:
            y -= 5.4
    return y


def _cautions(page: Page, y: float, answer: Answer, tip: Tip) -> float:
    y = _head(page, y, "Care")
    said = [
        "Cutting and sanding makes dust: wear a mask and glasses, or sand wet; sweep nothing dry.",
        "Paint, thinner, glue: window open, no flame, gloves; the label stands first.",
    ]
    if tip.stock.kind == "quill":
        said.append(
            "Quills only from domestic birds or a known lawful source; check your local rules."
        )
    said += [
        c.words
        for c in answer.cautions
        if "lead" in c.words.lower() or "light stick" in c.words.lower()
    ]
    for words_ in said:
        y = page.lines(_COLUMN_MM, y, words_, WIDE_MM - _COLUMN_MM, 7)
    return y
