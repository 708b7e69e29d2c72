"""The bench's load job alone: shot to each mark of the tip, shot left, and the shot list."""

from collections.abc import Sequence

from tipsight.inputs.case import Case, Hung, WeighedFloat
from tipsight.load import balance, budget, change, hull, law, line, plan, shot, staircase
from tipsight.load.tips import showing_diameter_mm
from tipsight.output import measures, names, shot_words
from tipsight.output.layout import entry, hanging, table


def places(hung: Sequence[Hung], depth_m: float) -> tuple[str, ...]:
    """Return where on the line each shot goes, as a table.

    Parameters
    ----------
    hung : sequence of Hung
        What makes up the load.
    depth_m : float
        From float to hook [m].

    Returns
    -------
    tuple of str
        One line a place, from the float down.
    """
    rows = [
        (
            f"{one.count} {one.name}",
            one.where,
            "under the float"
            if one.where == plan.TRIM
            else f"{100 * one.from_hook_m:.0f} cm from the hook",
        )
        for one in plan.layout([(h.name, h.count, h.where) for h in hung], depth_m)
    ]
    return table(rows)


def shotting(case: Case) -> str:
    """Return what a float takes to each mark of its tip, and the shot that makes up the load.

    Parameters
    ----------
    case : Case
        The question in numbers; water and light are not looked at, but for depth and warmth.

    Returns
    -------
    str
        Lines of 80 columns at the most.

    Raises
    ------
    Mistakes
        If the float sinks, or is shorter than what is glued into it.
    """
    tip, box, warm = case.tip, case.box, case.stream.temperature_c
    body = hull.hull_of(case.float_, case.weighed_tip, warm)
    pull = budget.pull_g(body, tip, warm)
    share = float(shot.wet_share(box.shot_metal, warm))
    shots = box.shot or shot.sizes(box.shot_metal)
    hung = line.hanging(box.hanging, pull, box.shot, body.fixing, warm)
    hung_g = line.mass_g(hung)
    known = "weighed" if isinstance(case.float_, WeighedFloat) else "worked out from its parts"
    painted = showing_diameter_mm(tip)
    stands = balance.uprighting_g_mm(body, tip, warm)
    sinks = float(budget.sink_force_g(painted, tip.showing_mm, warm)) / share
    steps = staircase.staircase(body, tip, box.shot_metal, shots, warm)
    lines = [
        *hanging(
            f"{case.float_.pattern}, {known}, with a tip of {names.stock(tip)}, "
            f"{measures.ANGLER.length(tip.showing_mm)} showing; {box.shot_metal} shot, water at {warm:g} C"
        ),
        "",
        "SHOT TO EACH BAND, from the body up",
        *table(
            [
                ("down to", "showing", "shot", "by name, about"),
                *(
                    (
                        shot_words.mark(s),
                        measures.ANGLER.length(s.showing_mm),
                        measures.grams(s.shot_g),
                        shot_words.counted(s.shot),
                    )
                    for s in steps
                ),
            ]
        ),
        "",
        *entry(
            "SHOT LEFT",
            f"{measures.grams(pull / share)} as it is to show (a pull of "
            f"{measures.grams(pull)} in water)",
        ),
        *entry(
            "SINKS IT",
            f"{shot_words.near(change.nearest(sinks, law.usable(shots)))} more "
            f"({measures.grams(sinks)})",
        ),
        *(() if stands > 0.0 else entry("BALANCE", "with all its shot on it falls over")),
        *entry("WEIGHS", f"{measures.grams(balance.float_mass_g(body, tip))} with its tip, dry"),
        "",
        "SHOT LIST, the float set to the depth",
        *(places(hung, case.stream.depth_m) if hung else ("  no shot that you have fits",)),
        *entry("IN ALL", f"{measures.grams(hung_g)}; {_short(pull / share - hung_g, case)}"),
    ]
    if any(shot.is_lead(one.metal) for one in box.shot):
        said = shot_words.lead_care()
        heavy = [one.name for one in box.shot if one not in law.usable(box.shot)]
        left_out = f" Left out: {', '.join(heavy)}." if heavy else ""
        lines += ["", *entry("CARE", f"{said[0].upper()}{said[1:]}.{left_out}")]
    return "\n".join(lines) + "\n"


def _short(left_g: float, case: Case) -> str:
    if left_g < -0.005:
        return f"{measures.grams(-left_g)} more than it takes"
    if left_g < 0.005:
        return "nothing left over"
    short = f"{measures.grams(left_g)} short"
    told = case.box.hanging
    return (
        f"{short} of what it takes" if told else f"{short}, which no shot that you have makes up"
    )
