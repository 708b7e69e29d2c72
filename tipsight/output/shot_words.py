"""Shot said by name, and what is said of lead and of paint that harms a float."""

from collections.abc import Collection

from tipsight import tables
from tipsight.load.change import Counted, Near
from tipsight.load.law import SMALL_LEAD_G
from tipsight.load.line import ShotChange
from tipsight.load.materials import Harm
from tipsight.load.staircase import Step
from tipsight.output.measures import listed, number

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


def change(step: ShotChange, left: Collection[str] = ()) -> str:
    """Return what to do to the shot; ``left`` are the sizes of which some stay on the line.

    Examples
    --------
    >>> change(ShotChange((), (("No 8", 1),), -0.06, 0.0), ["No 8"])
    'take off a No 8'
    >>> change(ShotChange((("No 1", 1),), (("BB", 1),), -0.1, 0.0))
    'swap the BB for a No 1'
    >>> change(ShotChange((), (), 0.0, 0.0))
    'leave the shot as it is'
    """
    if step.off and step.on:
        return f"swap {_taken(step.off, left)} for {counted(step.on)}"
    if step.off:
        return f"take off {_taken(step.off, left)}"
    return f"put on {counted(step.on)}" if step.on else "leave the shot as it is"


def _taken(off: Counted, left: Collection[str]) -> str:
    """Return shot to be taken off, the only one of its size by its article."""
    each = [
        f"the {name}" if count == 1 and name not in left else counted(((name, count),))
        for name, count in off
    ]
    return listed(each)


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
    'cellulose melts foam at once: use water-based paint only'
    """
    rows = tables.rows("finishes")
    row = next(r for r in rows if (r["finish"], r["on"]) == (what.finish, what.on))
    return f"{row['warning']}"
