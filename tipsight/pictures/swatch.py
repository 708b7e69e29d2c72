"""A paint of one's own drawn beside the nearest of ours, each before dark and before bright water."""

from collections.abc import Sequence

import numpy as np

from tipsight import tables
from tipsight.own import colours, paint_row, shows
from tipsight.pictures.svg_parts import Drawing, rect, text
from tipsight.scene.spectra import WAVELENGTHS_NM

WIDE, HIGH, EDGE = 150.0, 110.0, 12.0


def drawing(names: Sequence[str], folder: str) -> Drawing:
    """Return patches of paints as a screen shows them, on water as bright beside them as it is.

    Daylight on the paint is taken for the screen's white; screens and papers differ.
    """
    with tables.using(folder):
        told = shows.contrasts(names)
        white = colours.colour_of(np.ones_like(WAVELENGTHS_NM), WAVELENGTHS_NM)
        parts, labels = [], []
        for column, name in enumerate(names):
            xyz = paint_row.in_daylight(name)
            x = EDGE + column * (WIDE + EDGE)
            labels.append(text(x, 24.0, name))
            for row, (water, contrast) in enumerate(told[name].items()):
                y = 36.0 + row * (HIGH + EDGE)
                grey = float(xyz[1]) / (1.0 + contrast) if contrast > -1.0 else 1.0
                behind = colours.screen(min(grey, 1.0) * white)
                parts.append(rect(x, y, WIDE, HIGH, behind, 'stroke="none"'))
                parts.append(
                    rect(x + 55, y + 20, 40, HIGH - 40, colours.screen(xyz), 'stroke="none"')
                )
                if column == 0:
                    labels.append(
                        text(EDGE + 2 * (WIDE + EDGE), y + HIGH / 2, f"on {water} water")
                    )
    desc = " and ".join(names) + ", each before dark and before bright water"
    return Drawing(
        (2 * (WIDE + EDGE) + 190, 2 * (HIGH + EDGE) + 48), "Paints", desc, parts, labels
    )
