"""``tipsight eyes``: your own eyes, from a fence card, a check with a helper, and notes from the river."""

import secrets
from datetime import date
from typing import Any

import click

from tipsight.box import keeping, recorded
from tipsight.commands import COMMANDS
from tipsight.commands.kept import DAY, box_file, item, keep, listed, owner_of, today, whose
from tipsight.commands.parsing import Alone, Line, Said
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import saw
from tipsight.inputs.quantities import Unread, number

CARD, CORNERS, DROP, BACK = "card", "corners", "drop", "back"
DOES = (CARD, CORNERS, DROP, BACK)
MOST_LOOKS = 60
NARROWEST, USUAL, WIDEST = 1.12, 1.22, 1.5
"""Half a range that holds nine in ten (x/÷): some 60 looks, 20 and a few."""


def _until(text: str) -> float | None:
    try:
        found = number(text)
    except Unread:
        return None
    return found if NARROWEST <= found <= WIDEST else None


PACE, RULER, SQUARES = (
    Said(one.read, one.allowed, one.example) for one in (saw.PACE, saw.RULER, saw.SQUARES)
)
UNTIL = Said(_until, f"say how narrow, {NARROWEST:g} to {WIDEST:g}", f"{USUAL:g}")


@click.command("eyes", Line, help=f"{COMMANDS['eyes'][0].upper()}{COMMANDS['eyes'][1:]}.")
@click.argument(
    "does",
    cls=Alone,
    says="card: keep what you saw of the fence card; corners: the check with a helper; drop or back: "
    "a reading by its number; nothing: your eyes as they are known now",
    metavar="[card|corners|drop|back]",
    required=False,
)
@click.argument(
    "seen",
    cls=Alone,
    says="for card, where each of the six bars went, in order, and behind them where each came "
    "again, - for one that you missed; for drop and back the number",
    metavar="[NUMBERS]",
    nargs=-1,
)
@click.option(
    "--paces",
    type=PACE,
    metavar="LENGTH",
    help="the numbers are paces, each so long; 'yard' if you did not measure it; without it each "
    "number has its unit, and was taped",
)
@click.option("--asked", is_flag=True, help="be asked for one bar after the other")
@click.option("--ruler", type=RULER, metavar="LENGTH", help="how long the ruler of 100 mm came out")
@click.option("--squares", type=SQUARES, metavar="LENGTH", help="how far off the squares were two")
@click.option("--age", type=item("age", "--age"), metavar="YEARS", help="how old you are")
@click.option("--sight", type=item("sight", "--sight"), metavar="SIGHT", help="6/9, or in words")
@click.option(
    "--until",
    type=UNTIL,
    default=USUAL,
    metavar="TIMES",
    help="corners: go on until the range is so many times more or less",
)
@click.option("--date", "day", type=DAY, metavar="DAY", help="when it was; today if not told")
@whose
@box_file
def run(
    does: str | None,
    seen: tuple[str, ...],
    paces: tuple[str, float] | None,
    asked: bool,
    ruler: float | None,
    squares: float | None,
    age: str | None,
    sight: str | None,
    until: float,
    day: date | None,
    who: str,
    box: str | None,
) -> str:
    """Keep what was told, and return what is known now."""
    if does not in (None, *DOES):
        raise Mistakes([Mistake("eyes", f"{does}", f"say {' or '.join(DOES)}, or nothing", saw.CARD)])
    also = {"age": age, "sight": sight, "squares_m": squares}
    also = {key: value for key, value in also.items() if value is not None}
    kept = ""
    if does == CARD:
        told = saw.card(_by_asking(paces) if asked else seen, paces)
        told |= {"ruler_mm": ruler or 100.0, **also}
        kept = f"Kept as reading {keep(box, 'card', who, day, told)}.\n"
    elif does == CORNERS:
        kept = _corners(who, box, day, also, until)
    elif does in (DROP, BACK):
        kept = _acted(does, seen, box)
    elif seen or also:
        raise Mistakes([Mistake("eyes", "", f"say {CARD} before what you saw", saw.CARD)])
    from tipsight.output.learnt_words import eyes

    return kept + eyes(owner_of(box, who))


def _by_asking(paces: tuple[str, float] | None) -> tuple[str, ...]:
    """Return what is answered to one question a bar."""
    unit = "paces" if paces else "with its unit"
    found: dict[str, list[str]] = {"went at": [], "came again at": []}
    click.echo(f"Enter alone for one that you missed. Each {unit}.", err=True)
    try:
        for n in range(1, 7):
            for what, each in found.items():
                each.append(
                    click.prompt(f"Bar {n} {what}", default=saw.MISSED, show_default=False, err=True)
                )
    except click.Abort:
        raise Mistakes([Mistake("eyes card", "", "it was broken off; nothing was kept", "")]) from None
    return (*found["went at"], *found["came again at"])


def _acted(does: str, seen: tuple[str, ...], box: str | None) -> str:
    if len(seen) != 1 or not seen[0].isdecimal() or len(seen[0]) > 9:
        why = "say the number of one reading"
        raise Mistakes([Mistake(f"eyes {does}", " ".join(seen), why, f"tipsight eyes {does} 3")])
    listed(box)  # a box that is not there is not made for this
    with keeping.opened(keeping.place(box), "write") as one:
        found = recorded.act(one, int(seen[0]), "drop" if does == DROP else "back", today())
    verb = "left out; 'tipsight eyes back' brings it in again" if does == DROP else "counts again"
    return f"Reading {found.number}, of {found.made_on:%d.%m.%Y}: {verb}.\n"


def _corners(who: str, box: str | None, day: date | None, also: dict[str, Any], until: float) -> str:
    """Lead through the check, keep its looks."""
    import math

    from tipsight.learning import corners
    from tipsight.learning.belief import RANGE_SDS

    now = owner_of(box, who)
    from tipsight.inputs.items import ITEMS
    from tipsight.inputs.values import read

    age = float(read(ITEMS["age"], also["age"])) if "age" in also else now.age_years
    age = min(age, 85.0)
    looks = [
        corners.Look(*one)
        for found in listed(box)
        if found.kind == "corners" and found.whose == who and not found.dropped
        for one in found.told["looks"]
    ]
    before = len(looks)
    click.echo(
        "One of you turns page 3 or 4 of the fence card so that the bar stands where it is said here; "
        "the other stands off with his back turned, then looks and names the corner, guessing if he "
        "must. y: right, n: wrong, Enter alone ends.",
        err=True,
    )
    while len(looks) - before < MOST_LOOKS:
        known = corners.after(looks, age, now.mar_arcmin)
        if RANGE_SDS * known.sd <= math.log(until):
            break
        where = secrets.choice(corners.PLACES)
        try:
            said = click.prompt(
                f"{known.next_yards} yd, {where}", default="", show_default=False, err=True
            )
        except click.Abort:
            break
        plain = said.strip().casefold()
        if not plain:
            break
        if plain in ("y", "yes", "n", "no"):
            looks.append(corners.Look(known.next_yards, plain in ("y", "yes")))
        else:
            click.echo("say y or n, or Enter alone to end", err=True)
    if len(looks) == before:
        return "No look was told; nothing was kept.\n"
    told = {"looks": [[one.yards, one.right] for one in looks[before:]], **also}
    return f"Kept as reading {keep(box, 'corners', who, day, told)}.\n"


