"""Small drawings of what the water behind the tip may look like."""

_SKY, _TREES = "#dfe8ee", "#1d2b1f"
_MIRROR, _SHADE = "#c9d6df", "#26352c"
_TIP = '<path d="M35 16h2v12h-2z" fill="#ff5a1f" stroke="#111"/>'
_BROKEN = (
    '<path d="M3 18l6-9 7 9 6-12 8 12 5-8 8 8 6-11 7 11 5-7 6 7z" fill="#1d2b1f"/>'
    '<path d="M3 21h20m8 0h12m7 0h18M8 25h9m9 0h14m8 0h8M2 29h14m7 0h9m8 0h16M10 33h12m9 0h7" '
    'stroke="#1d2b1f" stroke-width="2.5"/>'
)
_LANE = (
    '<circle cx="36" cy="9" r="6" fill="#ffd23c"/>'
    '<path d="M33 20h6m-8 4h10m-11 4h12m-14 4h16m-18 4h20" stroke="#fff3c4" stroke-width="2.2"/>'
)


def _two(left: str, right: str, y: int, high: int) -> str:
    whole = f'<path d="M0 {y}h72v{high}H0z" fill="{left}"/>'
    return whole if left == right else f'{whole}<path d="M36 {y}h36v{high}H36z" fill="{right}"/>'


_DRAWN = {
    "dark": _two(_TREES, _TREES, 0, 18) + _two(_SHADE, _SHADE, 18, 22),
    "bright": _two(_SKY, _SKY, 0, 18) + _two(_MIRROR, _MIRROR, 18, 22),
    "broken": _two(_SKY, _SKY, 0, 18) + _two(_MIRROR, _MIRROR, 18, 22) + _BROKEN,
    "sun lane": _two(_SKY, _SKY, 0, 18) + _two("#5f7787", "#5f7787", 18, 22) + _LANE,
    "not sure": _two(_TREES, _SKY, 0, 18) + _two(_SHADE, _MIRROR, 18, 22),
}


def water(name: str) -> str:
    """Return an SVG that stands beside a word for the water and says nothing of its own.

    >>> water("dark").startswith("<svg"), water("fur")
    (True, '')
    """
    drawn = _DRAWN.get(name, "")
    if not drawn:
        return ""
    return f'<svg viewBox="0 0 72 40" aria-hidden="true">{drawn}{_TIP}</svg>'
