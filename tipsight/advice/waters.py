"""The waters behind the tip, from light to contrast and noise, over all distances."""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import product

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.checks import Outside
from tipsight.few import Few
from tipsight.inputs.case import Angler, Case, Finish, Light, Stream, Stretch, Wind
from tipsight.scene.look import Look, look
from tipsight.scene.slopes import slope_variance
from tipsight.sight import contrast, eye, kernel
from tipsight.sight.clutter import Clutter, outside_domain

Array = NDArray[np.float64]

STREAKS_DOUBT = 2.0
"""The noise power of the streaks may be twice or half what is taken (judgement)."""
DARKER_DEG, BRIGHTER_DEG = 15.0, 9.5
"""How much higher and lower the skylines of broken water's patches stand on glass (judgement)."""
COARSE = 16
"""Distances at which the scene is lit; between them its channels are drawn straight."""


KEPT = 12
"""Waters kept in mind, each a megabyte or two: what is asked next is mostly of the same swim."""
HELD = 12
"""Distances and factors that a water holds in mind."""
Times = tuple[float, ...]
"""Factors on something, each tried by itself."""


@dataclass(frozen=True)
class Water:
    """One water behind the tip, as the eye has it at each distance."""

    name: str
    """Of the stretch; one stretch may be several waters, by the light and by its patches."""
    contrast: Array
    """Of each finish, shape (finish, range, channel) [-]."""
    adaptation_cd_m2: Array
    """Shape (range,)."""
    water: Array
    """Channels of the water, shape (range, 4) [cd/m2]."""
    tips: Array
    """Channels of each finish, shape (finish, range, 4) [cd/m2]."""
    clutter: Clutter
    """The streaks at each distance."""
    kernels: kernel.Kernels
    eye: eye.Eye
    outside: tuple[Outside, ...]
    """What lies outside the range of the streaks' model at the asked distance."""
    held: Few[tuple[int, Times, Times], kernel.Kernels] = field(
        default_factory=lambda: Few(HELD), compare=False
    )
    """What `at` has worked out."""

    def at(self, here: int, factor: Times = (1.0,), better: Times = (1.0,)) -> kernel.Kernels:
        """Return the noise at one distance, once for each factor on streaks and on own eyes."""
        asked = (here, factor, better)
        if factor == better == (1.0,):
            return self.kernels[here : here + 1]
        if asked not in self.held:
            range_m = np.full(len(factor), self.kernels.range_m[here])
            streaks = replace(self.clutter[here], factor=factor)
            eyes = replace(self.eye, own_factor=np.multiply(self.eye.own_factor, better))
            light = self.adaptation_cd_m2[here]
            self.held[asked] = kernel.kernels(range_m, light, eyes, streaks)
        return self.held[asked]


def _between(coarse_m: Array, values: Array, fine_m: Array) -> Array:
    """Return values over distance, the last axis but any channels, straight in log distance."""
    x, at = np.log(fine_m), np.log(coarse_m)
    high = np.clip(np.searchsorted(at, x), 1, at.size - 1)
    share = (x - at[high - 1]) / (at[high] - at[high - 1])
    if values.ndim == 1:
        return np.asarray(values[high - 1] * (1 - share) + values[high] * share)
    return np.asarray(
        values[..., high - 1, :] * (1 - share)[:, None] + values[..., high, :] * share[:, None]
    )


def _streaks(
    seen: Look,
    coarse_m: Array,
    fine_m: Array,
    wavelength_mm: float,
    bearing_deg: float,
    left: Array,
) -> Clutter:
    """Return the streaks as the eye has them, ``left`` being the share of contrast the veil leaves."""
    facet, sparkle, down, sky = (
        _between(coarse_m, values, fine_m)
        for values in (
            seen.facet_contrast,
            seen.sparkle_mm2,
            seen.look_down_deg,
            seen.sky_correlation,
        )
    )
    return Clutter(
        left * facet,
        wavelength_mm,
        seen.slope_rms,
        seen.bank_height_deg,
        down,
        sky,
        left**2 * np.maximum(sparkle, 0.0),
        across=math.sin(math.radians(bearing_deg)) ** 2,
    )


def water(
    case: Case,
    light: Light,
    stretch: Stretch,
    finishes: Sequence[Finish],
    range_m: Array,
    here: int | tuple[int, ...],
    eyes: eye.Eye,
    wavelength_mm: float,
) -> Water:
    """Return a stretch in one light as the eye has it at each distance [m], rising.

    ``here`` is which of them are asked about, ``wavelength_mm`` the length of the ripple.
    """
    around = case.wind, case.stream, case.angler, case.place.eye_height_m
    far = tuple(range_m.tolist())
    here = (here,) if isinstance(here, int) else here
    return _water(light, stretch, *around, tuple(finishes), far, here, eyes, wavelength_mm)


@tables.lately(KEPT)
def _seen_over(
    light: Light,
    stretch: Stretch,
    wind: Wind,
    stream: Stream,
    angler: Angler,
    finishes: tuple[Finish, ...],
    from_m: float,
    to_m: float,
    eye_height_m: float,
) -> Look:
    """Return the look of a water at the coarse distances, which another distance asked about shares."""
    coarse = np.geomspace(from_m, to_m, COARSE)
    return look(light, stretch, wind, stream, angler, finishes, coarse, eye_height_m)


@tables.lately(KEPT)
def _water(
    light: Light,
    stretch: Stretch,
    wind: Wind,
    stream: Stream,
    angler: Angler,
    eye_height_m: float,
    finishes: tuple[Finish, ...],
    far_m: tuple[float, ...],
    here: tuple[int, ...],
    eyes: eye.Eye,
    wavelength_mm: float,
) -> Water:
    """Return the same, from what it hangs on alone, and kept for who asks again."""
    range_m = np.array(far_m)
    around = light, stretch, wind, stream, angler, finishes
    ends = _seen_over(*around, far_m[0], far_m[-1], eye_height_m)
    asked = np.setdiff1d(range_m[list(here)], ends.range_m)
    seen = ends.with_more(look(*around, asked, eye_height_m)) if asked.size else ends
    coarse = seen.range_m
    behind, tips = (_between(coarse, values, range_m) for values in (seen.water, seen.tips))
    glare_lx, angle_deg = seen.sky_glare
    veil = _between(coarse, eye.veil(glare_lx, angle_deg, eyes.age_years).sum(axis=-1), range_m)
    seen_as, adapted = contrast.both(tips, behind, veil)
    # the veil lies over the streaks as it lies over the tip
    left = behind[:, 0] / (behind[:, 0] + veil)
    clutter = _streaks(seen, coarse, range_m, wavelength_mm, wind.bearing_deg, left)
    return Water(
        name=stretch.name,
        contrast=seen_as,
        adaptation_cd_m2=adapted,
        water=behind,
        tips=tips,
        clutter=clutter,
        kernels=kernel.kernels(range_m, adapted, eyes, clutter),
        eye=eyes,
        outside=outside_domain(clutter[here[0]]),
    )


def patches(stretch: Stretch, wind: Wind) -> tuple[Stretch, ...]:
    """Return the kinds of water that a stretch shows by turns.

    Broken water that is too smooth to mix what it mirrors is half dark, half bright: with
    w = (1 - 2 s/e)/0.5 held to 0 and 1, s the slope's rms along the sight and e the skyline's angle,
    its patches mirror skylines of e + 15 w and e - 9.5 w degrees; in a ripple it is one water
    (judgement).
    """
    edge = math.radians(stretch.bank_height_deg)
    if not stretch.patchy or edge <= 0.0:
        return (stretch,)
    spread = math.sqrt(slope_variance(wind).along)
    share = min(max((1.0 - 2.0 * spread / edge) / 0.5, 0.0), 1.0)
    if share == 0.0:
        return (stretch,)
    high, low = DARKER_DEG * share, BRIGHTER_DEG * share
    return (
        replace(stretch, bank_height_deg=stretch.bank_height_deg + high),
        replace(stretch, bank_height_deg=stretch.bank_height_deg - low),
    )


@dataclass(frozen=True)
class Waters(Mapping[str, Water]):
    """The waters of a swim by key, each lit when it is first asked for."""

    views: Mapping[str, tuple[Light, Stretch]]
    lit: Callable[[Light, Stretch], Water]
    held: dict[str, Water] = field(default_factory=dict, repr=False, compare=False)

    def __getitem__(self, key: str) -> Water:
        if key not in self.held:
            self.held[key] = self.lit(*self.views[key])
        return self.held[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self.views)

    def __len__(self) -> int:
        return len(self.views)

    def of(self, name: str) -> tuple[str, ...]:
        """Return the keys of all that one stretch may be."""
        return tuple(key for key, (_, stretch) in self.views.items() if stretch.name == name)


def views(case: Case, stretches: Iterable[Stretch]) -> dict[str, tuple[Light, Stretch]]:
    """Return every light and patch of each stretch, the first under the stretch's own name."""
    found: dict[str, tuple[Light, Stretch]] = {}
    for stretch in stretches:
        each = product((case.light, *case.other_lights), patches(stretch, case.wind))
        for n, view in enumerate(each):
            found.setdefault(f"{stretch.name}/{n}" if n else stretch.name, view)
    return found
