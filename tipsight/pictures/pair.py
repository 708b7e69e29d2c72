"""Two tips side by side on one waterline, to one scale: what he has, and what is advised."""

import textwrap
from collections.abc import Sequence

from tipsight.advice.answer import Block
from tipsight.inputs.case import shown
from tipsight.output import briefly
from tipsight.pictures.svg_parts import BARE, Drawing, path, rect, swatches, text

WIDE, LETTERS, LINE = 354, 15, 20
"""Width of the drawing, letters in a line of words beside a tip, height of such a line [px]."""
MOST = 6
"""Lines beside a tip; beyond them its stick is not named."""
_BANK, _WET = 20.0, 12.0
_SCALE, _TALL = 4.0, 84.0
"""Largest scale [px/mm], and the height that the longer tip has at the least room [px]."""


def _wrapped(lines: Sequence[str]) -> list[str]:
    return [one for said in lines for one in textwrap.wrap(said, LETTERS)]


def _tip(block: Block, x: float, water: float, k: float) -> list[str]:
    tip, wide = block.tip, block.painted_mm * k
    top = water - tip.showing_mm * k
    edge = 'stroke-width=".7"'
    parts = [
        rect(
            x - wide / 2,
            top + one.from_top_mm * k,
            wide,
            (one.to_top_mm - one.from_top_mm) * k,
            swatches().get(one.paint, BARE),
            edge,
        )
        for one in shown(tip.bands, tip.showing_mm)
    ] or [rect(x - wide / 2, top, wide, tip.showing_mm * k, BARE, edge)]
    foot = swatches().get(tip.bands[-1].paint, BARE) if tip.bands else BARE
    return [*parts, rect(x - wide / 2, water, wide, _WET, foot, 'opacity=".35"')]


def pair(tips: Sequence[tuple[str, Block]]) -> Drawing:
    """Return one or two tips on one waterline under a far bank, each with its name and its bands.

    Parameters
    ----------
    tips : sequence of (str, Block)
        Label and tip, what he has first.

    Returns
    -------
    Drawing
        To one scale, which a bar of 10 mm tells.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> drawn = pair([("As it is", advise(Question(paint="red", showing="20 mm")).tip_in_hand)])
    >>> drawn.desc
    'As it is: 20 mm red, 2.5 mm solid, not seen'
    """
    said = [(label, [*briefly.tip(block), block.visibility.grade]) for label, block in tips]
    beside = []
    for label, lines in said:
        whole, without_stick = (
            _wrapped([label, *each]) for each in (lines, [*lines[:-2], lines[-1]])
        )
        beside.append(whole if len(whole) <= MOST else without_stick)
    water = max(_BANK + _TALL + 6, _BANK + 4 + LINE * max(map(len, beside)))
    longest = max(block.tip.showing_mm for _, block in tips)
    k = min(_SCALE, (water - 8) / longest)
    high = water + _WET + 3
    hills = f"M0 {_BANK - 6:.0f}q40 -12 84 -3t90 -2 92 3 88 -3V{_BANK:.0f}H0z"
    waves = "".join(f"t{WIDE / 8:.2f} 0 " for _ in range(7))
    parts = [
        f'<g class="scene" stroke="none" fill="currentColor">'
        f'<path d="M0 {_BANK:.0f}h{WIDE}v{high - _BANK:.0f}H0z" opacity=".07"/>'
        f'<path d="{hills}" opacity=".3"/></g>'
    ]
    labels = []
    for n, ((_, block), lines) in enumerate(zip(tips, beside, strict=True)):
        x = (72.0, 210.0)[n]
        parts += _tip(block, x, water, k)
        for row, words in enumerate(lines):
            bold = 'font-weight="700"' if row == 0 or row == len(lines) - 1 else ""
            at = x + block.painted_mm * k / 2 + 8
            labels.append(text(at, _BANK + LINE * (row + 1) - 3, words, bold))
    bar = 10 * k
    parts += [
        path(f"M0 {water:.1f}q{WIDE / 16:.2f} -4 {WIDE / 8:.2f} 0{waves}", 'stroke-width="1.5"'),
        path(f"M16 {water:.1f}v{-bar:.1f}m-5 0h10m-10 {bar:.1f}h10", 'stroke-width="1.5"'),
    ]
    labels.append(text(0, max(water - bar - 7, 16), "10 mm"))
    desc = "; ".join(f"{label}: {', '.join(lines)}" for label, lines in said)
    return Drawing((WIDE, high), "To one scale on one waterline", desc, parts, labels)
