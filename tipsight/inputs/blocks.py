"""What people type for the paint of a tip: one paint, or blocks from the very top downwards."""

import re
from dataclasses import dataclass

from tipsight.inputs.items import Word
from tipsight.inputs.reading import Unread, clean, length_mm, range_mm
from tipsight.inputs.spelling import choose


@dataclass(frozen=True)
class BlockSaid:
    """A block of paint as said, from the very top; None where it runs on to the foot."""

    paint: str
    from_top_mm: float
    to_top_mm: float | None


def blocks_said(text: str, paints: tuple[Word, ...]) -> tuple[BlockSaid, ...]:
    """Read the paint of a tip, whole or in blocks from the very top downwards.

    Parameters
    ----------
    text : str
        Such as ``black 0-15 mm, fluorescent orange 15-30 mm``, ``black 15 mm, white`` or
        ``white``.
    paints : tuple of Word
        The paints that there are.

    Returns
    -------
    tuple of BlockSaid
        Touching one another, from the top.

    Raises
    ------
    Unread
        If a paint is unknown, or blocks leave a gap, overlap or have no height.

    Examples
    --------
    >>> blocks_said("black 15 mm, white", (Word("black"), Word("white")))[1]
    BlockSaid(paint='white', from_top_mm=15.0, to_top_mm=None)
    """
    blocks: list[BlockSaid] = []
    top = 0.0
    parts = re.split(r"[;+]|,(?!\d)|\bover\b|\bthen\b", clean(text))
    for index, part in enumerate(parts):
        found = re.fullmatch(r"([^\d]+?)\s*((?:\d|[.,]\d).*)?", part.strip())
        if not found:
            raise Unread("")
        name = found[1].strip(" ,:")
        paint = choose(paints, name).word
        start, end = top, None
        if found[2] and (limits := range_mm(found[2])):
            start, end = limits
        elif found[2]:
            end = top + length_mm(found[2])
        elif index < len(parts) - 1:
            raise Unread("say how tall each block is but the last, in mm from the top")
        if start != top:
            raise Unread(f"blocks must touch: the one above ends at {top:g} mm")
        if end is not None and end <= start:
            raise Unread("a block must have some height")
        blocks.append(BlockSaid(paint, start, end))
        top = end if end is not None else top
    return tuple(blocks)
