"""A paint of one's own in words, beside the nearest of ours, on two waters."""

from collections.abc import Mapping
from pathlib import Path

from tipsight.output.layout import hanging, table
from tipsight.output.measures import listed

Contrasts = Mapping[str, Mapping[str, float]]
"""Contrast of each paint in luminance, by the water behind it."""
CLOSE, LIKE = 2.0, 10.0
"""Colours so near (CIEDE2000) can hardly be told apart, and are alike (judgement)."""


def like(near: str, off: float) -> str:
    """Return how near the nearest paint of ours is.

    Examples
    --------
    >>> like("orange", 1.2), like("orange", 31.0)
    ('hardly to be told from our orange', 'nearest to our orange, and far from it')
    """
    if off < CLOSE:
        return f"hardly to be told from our {near}"
    return f"like our {near}" if off < LIKE else f"nearest to our {near}, and far from it"


def contrast(share: float) -> str:
    """Return a contrast as times brighter or as a share of the water's light.

    Examples
    --------
    >>> contrast(3.2), contrast(-0.95), contrast(0.4)
    ('4.2 times as bright', '5 % as bright', '1.4 times as bright')
    """
    ratio = 1.0 + share
    return f"{100 * ratio:.0f} % as bright" if ratio < 1 else f"{ratio:.1f} times as bright"


def text(
    name: str, swatch: str, near: str, off: float, told: Contrasts, doubt: float, files: list[Path]
) -> str:
    """Return what was made, how it shows beside the nearest of ours, and where it stands."""
    waters = list(next(iter(told.values())))
    rows = [("", *(f"on {water} water" for water in waters))]
    rows += [(one, *(contrast(on[water]) for water in waters)) for one, on in told.items()]
    folder = files[0].parent
    known = (
        "It was measured: its contrast is known as well as that of ours."
        if doubt <= 1.0
        else "A colour or a glow told in words says little of a spectrum: its contrast may be half as "
        "much again or less, and the answers say so. A measured spectrum is better."
    )
    return "\n".join(
        (
            *hanging(f"{name}: {swatch} on a screen, {like(near, off)}."),
            *table(rows),
            *hanging(known),
            *hanging(
                f"It stands in {listed([f'{one}' for one in files])}: answer with --tables {folder}."
            ),
            "",
        )
    )
