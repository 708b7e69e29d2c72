"""The whole trot drawn: how each tip is seen yard by yard, and which water is where."""

from dataclasses import replace

from tipsight.advice.answer import Sight
from tipsight.output import trot_words
from tipsight.output.measures import ANGLER, Reader
from tipsight.pictures.strips import WIDE, across, axis, bar, patterns, shown, swatch_at
from tipsight.pictures.svg_parts import Drawing, line, text
from tipsight.trot.along import AllAlong, Trot


def _sight(one: AllAlong) -> Sight:
    return replace(one.blocks[one.worst].visibility.worst, runs=one.by_grade)


def drawing(told: Trot, reader: Reader = ANGLER, *, alone: bool = True) -> Drawing:
    """Return a strip for the tip as it is and one for the advised, over the stretches of the trot.

    Parameters
    ----------
    told : Trot
        The trot.
    reader : Reader
        In whose unit it is told.
    alone : bool
        Whether it brings the patterns of the grades along; a page has them already.

    Returns
    -------
    Drawing
        354 pixels wide; its words say the same.

    Examples
    --------
    >>> from tipsight import Question
    >>> from tipsight.trot.along import along
    >>> found = along(Question(distance="30 yd", trot="0-20 dark, 20-30 bright"))
    >>> "dark" in drawing(found).alone()
    True
    """
    range_m = told.legs[-1].to_m
    each = [("As it is", told.in_hand)]
    if told.change.actions:
        each.append(("With that done", told.chosen))
    parts, labels, said = [patterns()] if alone else [], [], []
    y = 0.0
    for label, one in each:
        labels.append(text(0, y + 18, label))
        parts += bar(_sight(one), range_m, y + 28, reader)
        said.append(f"{label}: {trot_words.seen(one, told)}")
        y += 64
    axis_at = f"translate(0 {y:.0f})"
    labels.append(f'<g transform="{axis_at}">{"".join(axis(range_m, reader).labels)}</g>')
    y += 30
    for leg in told.legs:
        left, right = across(leg.from_m, reader), across(leg.to_m, reader)
        parts.append(line(left + 1, y, max(right - 1, left + 1), y, 3))
        labels.append(text(0, y + 22, trot_words.leg_name(leg)))
        y += 34
    for n, grade in enumerate(shown([_sight(one) for _, one in each])):
        left = 180.0 * (n % 2)
        parts.append(swatch_at(left, y, grade))
        labels.append(text(left + 24, y + 15, grade))
        y += 26 * (n % 2)
    return Drawing((WIDE, y + 28), "The whole trot", ". ".join(said), parts, labels)
