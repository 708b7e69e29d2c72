"""The float among all waves and boils at once, in balance with the drag that damps it."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import body, boils, chop, frequencies
from tipsight.afloat.chop import Sea
from tipsight.afloat.heave import Parts, felt_share, parts
from tipsight.afloat.rig import Rig
from tipsight.checks import within
from tipsight.inputs.case import Stream

Array = NDArray[np.float64]
_ROUNDS, _CLOSE = 100, 1e-4
_LINEAR = 8.0 / np.pi


def linear_speed(variance_m2_s2: ArrayLike, slip_m_s: ArrayLike = 0.0) -> Array:
    """Return the speed that makes linear drag take as much as quadratic drag does [m/s].

    Of a variance of the speed through the water [m2/s2] and a steady flow square to the rest
    [m/s], any shapes that broadcast. Statistical linearisation for a Gaussian speed, sqrt(8 / pi)
    rms (Borgman 1967, Journal of the Waterways and Harbors Division ASCE 93; from memory); a
    steady flow is added by its square, which is within 2 % of a sum over draws.

    >>> round(float(linear_speed(1.0)), 4)
    1.5958
    """
    return np.asarray(np.sqrt(np.square(slip_m_s) + _LINEAR * np.asarray(variance_m2_s2)))


class Waves:
    """Sums over the waves' spectrum that the drag takes part in."""

    def __init__(self, p: Parts, omega: Array, energy: Array, felt: Array, shot: Array) -> None:
        pushed = p.carried_kg * felt + p.shot_carried_kg * shot
        w2 = omega**2
        self.w2, self.energy, self.skin = w2, energy, p.skin * np.sqrt(omega)
        self.whole2 = (p.spring_n_m - w2 * p.mass_kg) ** 2
        self.lag2 = (w2 * (p.mass_kg - pushed)) ** 2
        self.body2 = (p.spring_n_m * (felt - 1.0) - w2 * (felt * p.mass_kg - pushed)) ** 2
        self.shot2 = (p.spring_n_m * (shot - 1.0) - w2 * (shot * p.mass_kg - pushed)) ** 2
        self.body_left, self.shot_left, self.apart2 = 1.0 - felt, 1.0 - shot, (felt - shot) ** 2

    def _over(self, drag_body: Array, drag_shot: Array) -> tuple[Array, Array]:
        along = drag_body + self.skin
        return along, self.energy / (self.whole2 + self.w2 * (along + drag_shot) ** 2)

    def speeds(self, drag_body: Array, drag_shot: Array) -> Array:
        """Return variances of the water's speed past body and shot, shape (2, D)."""
        along, over = self._over(drag_body, drag_shot)
        over = over * self.w2
        apart = self.w2 * self.apart2
        past_body = ((self.body2 + apart * drag_shot**2) * over).sum(axis=-1)
        past_shot = ((self.shot2 + apart * along**2) * over).sum(axis=-1)
        return np.stack([past_body, past_shot])

    def water(self, drag_body: Array, drag_shot: Array) -> tuple[Array, Array]:
        """Return variances of the water along the tip and of its speed, each (D,)."""
        along, over = self._over(drag_body, drag_shot)
        pulled = along * self.body_left + drag_shot * self.shot_left
        each = (self.lag2 + self.w2 * pulled**2) * over
        return each.sum(axis=-1), each @ self.w2


class Swirls:
    """Sums over the boils' spectrum that the drag takes part in."""

    def __init__(self, p: Parts, at_body: Array, at_shot: Array, stream: Stream) -> None:
        omega, edges = frequencies.boil_grid()
        self.w2 = omega**2
        self.energy = boils.variance_shares(edges, boils.time_scale_s(stream))
        self.at_body2, self.at_shot2 = at_body**2, at_shot**2
        self.skin = p.skin * np.sqrt(omega)
        self.whole2 = (p.spring_n_m - self.w2 * p.mass_kg) ** 2
        self.body2 = (p.spring_n_m - self.w2 * (p.mass_kg - p.carried_kg)) ** 2
        self.shot2 = (p.spring_n_m - self.w2 * (p.mass_kg - p.shot_carried_kg)) ** 2
        self.carried2 = self.w2 * p.carried_kg**2
        self.shot_carried2 = self.w2 * p.shot_carried_kg**2

    def _over(self, drag_body: Array, drag_shot: Array) -> tuple[Array, Array]:
        along = drag_body + self.skin
        return along, self.energy / (self.whole2 + self.w2 * (along + drag_shot) ** 2)

    def speeds(self, drag_body: Array, drag_shot: Array) -> Array:
        """Return variances of the water's speed past body and shot, shape (2, D)."""
        along, over = self._over(drag_body, drag_shot)
        moved_body = self.carried2 + along**2
        moved_shot = self.shot_carried2 + drag_shot**2
        past_body = (
            self.body2 + self.w2 * drag_shot**2
        ) * self.at_body2 + self.w2 * moved_shot * self.at_shot2
        past_shot = (
            self.shot2 + self.w2 * along**2
        ) * self.at_shot2 + self.w2 * moved_body * self.at_body2
        return np.stack([(past_body * over).sum(axis=-1), (past_shot * over).sum(axis=-1)])

    def water(self, drag_body: Array, drag_shot: Array) -> tuple[Array, Array]:
        """Return variances of the water along the tip and of its speed, each (D,)."""
        along, over = self._over(drag_body, drag_shot)
        each = over * (
            self.at_body2 * (self.carried2 + along**2)
            + self.at_shot2 * (self.shot_carried2 + drag_shot**2)
        )
        return each.sum(axis=-1), each @ self.w2


@dataclass(frozen=True, eq=False)
class Motion:
    """Variances of the water along the tip, and of its speed; arrays (D,)."""

    wave_m2: Array
    wave_speed_m2_s2: Array
    boil_m2: Array
    boil_speed_m2_s2: Array


def motion(rig: Rig, sea: Sea, stream: Stream, diameter_mm: ArrayLike) -> Motion:
    """Return how the water goes up and down along tips of shape (D,), or a scalar, in mm.

    Spectral sums of the response to waves and to the vertical velocity at the body and at the
    shot, taken uncorrelated, about the still waterline. In a wave a slender vertical body moves by
    Z/a = [C - w^2 ((rho V + A33) e + 1.5 rho V_s e_s) + i w (B e + B_s e_s)] over [C - w^2 (M +
    A33 + rho V_s / 2) + i w (B + B_s)], e the volume mean of exp(k z) (Newman 1977, Marine
    Hydrodynamics, ch. 6; from memory); without drag within 0.02 of boundary elements for periods
    of 0.2 to 1 s. Quadratic drag by `linear_speed`, solved together with the motion that it damps
    by half steps until variances change by less than 1e-4; boils so slow that a tip follows them
    as they stand come out 8 % too weak by it, for the square of a Gaussian speed has sqrt(3) and
    not sqrt(8 / pi) times its variance.
    """
    return _balanced(rig, sea, stream, diameter_mm)[0]


def follows(
    rig: Rig, sea: Sea, stream: Stream, diameter_mm: float, wavenumber_rad_m: Array
) -> NDArray[np.complex128]:
    """Return how much of each wave a float follows, with its phase, by the sum of `motion` [-].

    Of a wave that goes as exp(-i w t) at the float; wavenumbers above nothing, shape (F,).
    """
    _, drag_body, drag_shot = _balanced(rig, sea, stream, diameter_mm)
    p, omega = (
        parts(rig, diameter_mm, stream.temperature_c),
        chop.angular_rad_s(wavenumber_rad_m, stream.temperature_c),
    )
    felt, shot = felt_share(rig, diameter_mm, wavenumber_rad_m)
    along = drag_body + p.skin * np.sqrt(omega)
    pushed = p.carried_kg * felt + p.shot_carried_kg * shot
    over = p.spring_n_m - omega**2 * pushed - 1j * omega * (along * felt + drag_shot * shot)
    under = p.spring_n_m - omega**2 * p.mass_kg - 1j * omega * (along + drag_shot)
    return np.asarray((over / under)[0])


def _balanced(
    rig: Rig, sea: Sea, stream: Stream, diameter_mm: ArrayLike
) -> tuple[Motion, Array, Array]:
    """Return the motion, and the linear drag of body and shot, (D, 1), that it is in balance with."""
    within("depth of the shot", rig.shot_depth_m, 0.0, stream.depth_m, "m")
    p = parts(rig, diameter_mm, stream.temperature_c)
    ratio, share = frequencies.wave_grid()
    omega = ratio * 2.0 * np.pi / sea.peak_period_s
    felt, felt_shot = felt_share(
        rig, diameter_mm, chop.wavenumber_rad_m(omega, stream.temperature_c)
    )
    waves = Waves(p, omega, share * sea.height_m**2 / 16.0, felt, felt_shot)
    depth_m = 1e-3 * (rig.waterline_mm - body.centroid_mm(rig.profile))
    strong = boils.vertical_rms_m_s(stream, [depth_m, rig.shot_depth_m])
    swirls = Swirls(p, strong[0], strong[1], stream)
    speed2 = np.full((2, p.mass_kg.shape[0]), 1e-4)
    for _ in range(_ROUNDS):
        drag_body = p.body_drag * linear_speed(speed2[0])[:, None]
        drag_shot = p.shot_drag * linear_speed(speed2[1], p.slip_m_s)[:, None]
        new = waves.speeds(drag_body, drag_shot) + swirls.speeds(drag_body, drag_shot)
        done = bool((np.abs(new - speed2) <= _CLOSE * speed2).all())
        speed2 = 0.5 * (speed2 + new)
        if done:
            break
    else:
        raise ArithmeticError("the float's drag and its motion did not come to a balance")
    moved = Motion(*waves.water(drag_body, drag_shot), *swirls.water(drag_body, drag_shot))
    return moved, drag_body, drag_shot
