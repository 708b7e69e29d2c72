"""Shot said by name, and what is said of lead and of paint that harms a float."""

from tipsight import tables
from tipsight.load.change import Counted, Near, ShotChange
from tipsight.load.law import SMALL_LEAD_G
from tipsight.load.materials import Harm
from tipsight.load.staircase import Step
from tipsight.output.measures import number

_AN = ("SSG", "AB")
_MARKS = {
    "shoulder": "the body's shoulder",
    "as told": "as it is to show",
    "band": "the foot of the {}",
    "top": "the very top",
}


def counted(shot: Counted) -> str:
    """Return shot by name, as one says it.

    Examples
    --------
    >>> counted((("AAA", 2), ("BB", 1), ("No 8", 1)))
    'two AAA, a BB and a No 8'
    """
    said = []
    for name, count in shot:
        one = "an" if name in _AN else "a"
        said.append(f"{one if count == 1 else number(count)} {name}")
    if len(said) < 2:
        return "".join(said) or "nothing"
    return f"{', '.join(said[:-1])} and {said[-1]}"


def near(mass: Near) -> str:
    """Return a small mass said in shot.

    Examples
    --------
    >>> from tipsight.load.change import nearest
    >>> from tipsight.load.shot import sizes
    >>> near(nearest(0.46, sizes())), near(nearest(0.003, sizes()))
    ('a BB and a No 8', 'less than a No 13')
    """
    if mass.shot or mass.mass_g == 0.0:
        return counted(mass.shot)
    return f"less than a {mass.lightest}" if mass.lightest else f"{mass.mass_g:.2f} g"


def change(step: ShotChange) -> str:
    """Return what to do to the shot.

    Examples
    --------
    >>> change(ShotChange((), (("No 8", 1),), -0.06, 0.0))
    'take off a No 8'
    >>> change(ShotChange((), (), 0.0, 0.0))
    'leave the shot as it is'
    """
    todo = (("take off", step.off), ("put on", step.on))
    return (
        " and ".join(f"{verb} {counted(what)}" for verb, what in todo if what)
        or "leave the shot as it is"
    )


def mark(step: Step) -> str:
    """Return what a mark of the staircase is called."""
    return _MARKS[step.mark].format(step.paint)


def lead_care() -> str:
    """Return what to tell an angler who has lead in his box.

    Examples
    --------
    >>> lead_care()[:52]
    'lead is counted on only up to 0.06 g (No 8 and small'
    """
    return (
        f"lead is counted on only up to {SMALL_LEAD_G:g} g (No 8 and smaller), where a local code "
        "could allow it; check the current rules and the fishery's own. Do not bite lead shot, "
        "wash your hands after it, and keep it from children"
    )


def harm(what: Harm) -> str:
    """Return what a finish does to a float, and what to do instead, as finishes.csv words it.

    Examples
    --------
    >>> from tipsight.load.materials import harms
    >>> harm(harms("foam", "cellulose"))
    'cellulose melts foam at once: use water-based paint; or seal every pinhole with it first'
    """
    rows = tables.rows("finishes")
    row = next(r for r in rows if (r["finish"], r["on"]) == (what.finish, what.on))
    return f"{row['warning']}"
