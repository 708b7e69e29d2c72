"""The words of the bench sheet: sizes, coats in order, shot to each band, jobs to tick, care."""

from tipsight import tables
from tipsight.advice.answer import Answer, Block
from tipsight.advice.facts import Care, Caution
from tipsight.inputs.case import Tip
from tipsight.load import hull, materials, shot, staircase
from tipsight.output import doing, measures, names, readings, shot_words, telling, warned
from tipsight.output.measures import sentence
from tipsight.paper.leaf import POINT_MM, WIDE_MM, Page
from tipsight.paper.seat import Seat, seat
from tipsight.pictures.subject import Work, made

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
"""To be ticked."""


class _Column:
    """Words one under the other in one size of type."""

    def __init__(self, page: Page, x: float, y: float, points: float) -> None:
        self.page, self.x, self.y, self.points = page, x, y, points
        self.step_mm = 1.3 * points * POINT_MM

    def head(self, said: str) -> None:
        """Begin a part, a line above it."""
        self.y -= 0.7 * self.step_mm
        self.page.line(
            self.x, self.y + 1.3 * self.step_mm, WIDE_MM, self.y + 1.3 * self.step_mm, 0.15
        )
        self.page.text(self.x, self.y, said, self.points + 1.5, bold=True)
        self.y -= 1.35 * self.step_mm

    def say(self, said: str, inset_mm: float = 0.0, *, bold: bool = False) -> None:
        """Say something in as many lines as it needs."""
        at = self.x + inset_mm
        self.y = self.page.lines(at, self.y, said, WIDE_MM - at, self.points, bold)

    def named(self, name: str, said: str, inset_mm: float) -> None:
        """Say something with its name in front."""
        self.page.text(self.x, self.y, name, self.points, bold=True)
        self.say(said, inset_mm)


NOT_MADE = "Not to be made"
_NO_CUT = ("cut to length", "glued square")
_AT_THE_BANK = ("tried in the jar", "shot changed", "card in the lid")


def steps(tip: Tip, *, foam: bool = False) -> list[tables.Row]:
    """Return the work that a tip takes, in order: the rows of bench_steps.csv that apply.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> [row["step"] for row in steps(Tip(Stock("cane", 3.0), 20.0))]
    ['cut', 'key', 'glue', 'white', 'colour', 'clear', 'jar']
    """
    true = {
        "always": True,
        "quill": tip.stock.kind == "quill",
        "tube": bool(tip.stock.bore_mm),
        "white": tip.undercoat,
        "glued": bool(tip.glued_mm),
        "foam": foam,
    }
    return [row for row in tables.rows("bench_steps") if true.get(row["when"], False)]


def let_in(how: Seat, tip: Tip) -> str:
    """Return how a tip thicker than the body's top is let in."""
    bare = tip.stock.diameter_mm
    said = f"the body's top is {how.top_mm:.1f} mm, thinner than the tip's {bare:g} mm: "
    if how.back_mm is not None:
        return said + (
            f"cut {how.back_mm:.1f} mm off it (broken line), then open it to {bare:g} mm, "
            f"{tip.glued_mm:g} mm deep from where the top was; the tip's mark for the body stays "
            "where the top was"
        )
    if how.is_none:
        return (
            said + "too thin to take a peg; do not glue it: take a thinner tip or a thicker body"
        )
    if tip.stock.bore_mm:
        peg = f"glue a cane peg into it that stands out as the glued {tip.glued_mm:g} mm and is"
    else:
        peg = f"taper the glued {tip.glued_mm:g} mm of the tip (broken lines) until it is"
    return said + f"{peg} {how.peg_mm:.1f} mm thick, and open the top to that and no more"


def _is_foam(body: hull.Hull) -> bool:
    return any(materials.material(made).foam for made in body.materials)


def paint_warnings(body: hull.Hull) -> tuple[str, ...]:
    """Return which finish harms what the float is made of, each said once; often none."""
    found = (
        materials.harms(made, finish)
        for made in body.materials
        if materials.material(made).foam or materials.material(made).styrene
        for finish in materials.finishes()
    )
    return tuple(dict.fromkeys(shot_words.harm(harm) for harm in found if harm))


def column(
    page: Page, x: float, y: float, points: float, answer: Answer, body: hull.Hull
) -> float:
    """Print all the words of the sheet from an upper left corner [mm]; return how far down they reach."""
    told = _Column(page, x, y, points)
    what, block = made(answer)
    how = seat(body, block.tip) if what == "fit" else None
    stuck = how is not None and how.is_none
    can = block.sound and not stuck
    worked = can and what != "bank"
    _sizes(told, block, body, what, worked=worked)
    if what == "bank":
        told.head("What to do, at the bank")
        change = answer.at_the_bank
        for said in (doing.change(change), doing.undo(change)):
            told.say(sentence(said))
    if worked:
        _coats(told, block.tip, body, what)
    if how is not None and stuck:
        told.head(NOT_MADE)
        told.say(sentence(let_in(how, block.tip)), bold=True)
    _stairs(told, answer, block, body)
    if not block.passes:
        _why_not(told, answer, block)
    if can:
        _jobs(told, what)
    _care(told, answer, block.tip, what)
    return told.y


def _sizes(told: _Column, block: Block, body: hull.Hull, what: Work, *, worked: bool) -> None:
    tip = block.tip
    told.head("Sizes")
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    parts = f"{tip.showing_mm:.3g} showing + {tip.wet_mm:.3g} wet + {tip.glued_mm:.3g} glued in"
    bare, wide = tip.stock.diameter_mm, block.painted_mm
    body_size = f"{body.body_diameter_mm:.3g} mm by {body.body_length_mm:.3g} mm"
    inset = 2.9 * told.points
    told.named("stock", names.stock(tip), inset)
    if not worked:  # else the coats tell it
        told.named("paint", names.paint(tip.bands, tip.showing_mm), inset)
    long = "cut it" if what == "fit" and worked else "length"
    told.named(long, f"{whole:.3g} mm ({measures.inches(whole)}): {parts}", inset)
    told.named("thick", f"bare {bare:.3g} mm; with {tip.coats} coats {wide:.2f} mm", inset)
    told.named("body", f"{body_size}; {', '.join(body.materials)}", inset)


def _coats(told: _Column, tip: Tip, body: hull.Hull, what: Work) -> None:
    told.head("Work and coats, in order")
    foam = _is_foam(body)
    cuts = ("cut", "quill", "tube", "glue") if what == "repaint" else ()
    rows = [row for row in steps(tip, foam=foam) if row["step"] not in cuts]
    how = seat(body, tip) if what == "fit" else None
    work: list[str] = []
    for row in rows:
        said, drying = row["words"], row["drying_on_foam" if foam else "drying"]
        if row["step"] == "colour":
            said = f"{names.paint(tip.bands, tip.showing_mm)}, from the top down. {said}"
        if row["step"] == "glue" and how:
            work.append(let_in(how, tip))
        work.append(said + (f" ({drying})" if drying else ""))
    for number, said in enumerate(work, 1):
        told.named(str(number), said, 5.0)
    if warned := paint_warnings(body):
        told.say(f"Mind: {'; '.join(warned)}.", bold=True)
    else:
        told.say("No paint melts this body as foam would; try any paint on an offcut first.")


def _stairs(told: _Column, answer: Answer, block: Block, body: hull.Hull) -> None:
    box, warm = answer.case.box, answer.case.stream.temperature_c
    told.head(f"Shot to each band, {box.shot_metal}, in air")
    told.page.text(
        WIDE_MM, told.y + 1.3 * told.step_mm, "the jar said, g", told.points - 1, align="right"
    )
    shots = box.shot or shot.sizes(box.shot_metal)
    for step in reversed(staircase.staircase(body, block.tip, box.shot_metal, shots, warm)):
        told.page.box(WIDE_MM - 20, told.y - 1.8, 20, 5.6, edge_mm=0.2)
        shows = f"{step.showing_mm:.0f} mm showing" if step.showing_mm else "all drowned"
        told.page.text(told.x, told.y + 0.6, f"{shot_words.mark(step)}, {shows}", told.points)
        told.y -= told.step_mm
        told.page.text(
            told.x + 5, told.y + 0.6, measures.grams(step.shot_g), told.points, bold=True
        )
        # what hangs as the tip is to show stands below, once
        if abs(step.showing_mm - block.tip.showing_mm) > 0.05:
            about = f"about {shot_words.counted(step.shot)}"
            told.page.text(told.x + 22, told.y + 0.6, about, told.points)
        told.y -= 1.3 * told.step_mm
    listed = ", ".join(f"{line.count} {line.name} {line.where}" for line in block.load.shot)
    told.say(
        f"Shot list: as it is to show it takes {measures.grams(block.load.shot_g)}: "
        f"{listed or 'no shot that you have fits'}{readings.high(block)}."
    )


def _jobs(told: _Column, what: Work) -> None:
    told.head("Done")
    across = (WIDE_MM - told.x) / 3.0
    jobs: tuple[str, ...] = _AT_THE_BANK if what == "bank" else JOBS
    if what == "repaint":
        jobs = tuple(job for job in JOBS if job not in _NO_CUT)
    for number, job in enumerate(jobs):
        at = told.x + (number % 3) * across
        told.page.box(at, told.y - 0.6, 3.4, 3.4, edge_mm=0.25)
        told.page.text(at + 5, told.y, job, told.points)
        if number % 3 == 2 or number == len(jobs) - 1:
            told.y -= max(1.6 * told.step_mm, 5.0)


def _why_not(told: _Column, answer: Answer, block: Block) -> None:
    """Say what is broken and what would help.

    A tip that only is not seen well enough is what the answer advises to fit for want of a better.
    """
    made_so = (
        "Falls short here, the best there is" if block.sound else f"{NOT_MADE}: no tip passes"
    )
    told.head(made_so)
    for fail in block.broken:
        told.say(f"{sentence(telling.failure(fail))}", bold=True)
    ways = [one for one in answer.warnings if warned.in_the_way(one)]
    for one in ways:
        told.say(sentence(warned.warning(one, answer.case)))
    moves = [change for change in answer.changes if change.block.passes and change.actions]
    if moves:
        told.say(f"What does: {doing.change(moves[0])}.")
    elif not ways:
        told.say("Way out: come closer, stand higher, or take another float for this swim.")


def _care(told: _Column, answer: Answer, tip: Tip, what: Work) -> None:
    kinds = [] if what == "bank" else [Care.DUST, Care.PAINT]
    if what == "fit" and tip.stock.kind == "quill":
        kinds.append(Care.QUILL)
    asked = {caution.kind for caution in answer.cautions}
    kinds += [kind for kind in (Care.LEAD, Care.LIGHT_STICK) if kind in asked]
    if kinds:
        told.head("Care")
    for kind in kinds:
        told.say(telling.caution(Caution(kind)))
