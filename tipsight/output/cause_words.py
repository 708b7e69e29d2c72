"""Why a float takes more or less than it did, in words: each cause in grams and in shot."""

from collections.abc import Sequence

from tipsight.inputs.case import Case, Shot
from tipsight.load import law
from tipsight.load.causes import LEAST_G, Account, Cause, Part
from tipsight.load.change import nearest
from tipsight.output import shot_words
from tipsight.output.layout import hanging, table
from tipsight.output.measures import grams, listed

SOAK_FROM_G = 0.02
"""An unexplained change from here up is worth an hour's soak (judgement)."""
_CALLED = {
    Cause.TIP_WEIGHT: "the tip's own weight",
    Cause.TIP_WET: "the tip's thickness under water",
    Cause.TIP_COATS: "coats on the tip",
    Cause.BODY_COATS: "coats on the body",
    Cause.SHOULDER: "how much of the tip is under water",
    Cause.BODY: "the body itself",
    Cause.WATER_DRUNK: "water that it drinks",
    Cause.TEMPERATURE: "the warmth of the water",
    Cause.UNEXPLAINED: "what nothing told explains",
}


def called(part: Part) -> str:
    """Return a cause as one says it, with what it adds.

    Examples
    --------
    >>> called(Part(Cause.TIP_COATS, -0.018))
    'coats on the tip -0.02 g'
    """
    return f"{_CALLED[part.cause]} {part.shot_g:+.2f} g"


def told(parts: Sequence[Part]) -> tuple[Part, ...]:
    """Return the parts that any scale would show."""
    return tuple(part for part in parts if abs(part.shot_g) >= LEAST_G)


def one_line(parts: Sequence[Part]) -> str:
    """Return the causes of a change of load in one line, the largest first."""
    return listed([called(part) for part in told(parts)]) or "nothing that a scale would show"


def _in_shot(part: Part, shots: Sequence[Shot]) -> str:
    way = "more" if part.shot_g > 0 else "less"
    return f"{shot_words.near(nearest(abs(part.shot_g), law.usable(shots)))} {way}"


def two_floats(old: Case, new: Case) -> tuple[str, ...]:
    """Return as lines of text that two questions have two floats; empty where they may be one."""
    was, now = old.float_.pattern, new.float_.pattern
    if was == now:
        return ()
    return hanging(
        f"These are two floats: then {was}, now {now}. What parts their bodies stands under "
        f"'{_CALLED[Cause.BODY]}'."
    )


def account_lines(
    account: Account, shots: Sequence[Shot], two: Sequence[str] = ()
) -> tuple[str, ...]:
    """Return the whole account as lines of text, with the soak where nothing explains it.

    What two weighed floats (``two``: from `two_floats`) take apart from their tips is their bodies'.
    """
    change = account.new_g - account.old_g
    way = "more" if change > 0 else "less"
    much = "as much as it did" if abs(change) < LEAST_G else f"{grams(abs(change))} {way}"
    names_of = _CALLED | {Cause.UNEXPLAINED: _CALLED[Cause.BODY]} if two else _CALLED
    rows = [
        (names_of[part.cause], f"{part.shot_g:+.3f} g", _in_shot(part, shots))
        for part in told(account.parts)
    ]
    odd = [p for p in account.parts if p.cause is Cause.UNEXPLAINED and p.shot_g <= -SOAK_FROM_G]
    soaked = any(part.cause is Cause.WATER_DRUNK for part in account.parts)  # told already
    soak = hanging(
        "To find it: weigh the float dry, soak it for an hour, wipe it and weigh it again, and tell "
        "both (weighs and soaked). Water is the usual cause, let in by a chip in the varnish or at "
        "the eye."
    )
    return (
        *two,
        *hanging(
            f"It takes {much}: {grams(account.old_g)} then, {grams(account.new_g)} now, in air."
        ),
        *table(rows),
        *(soak if odd and not soaked and not two else ()),
    )
