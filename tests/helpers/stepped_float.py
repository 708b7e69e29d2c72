"""Slow, literal stand-ins for the quick sums of afloat, by another way: drawn seas, stepped time.

Run as a script it prints the tables that the product's constants were taken from.
"""

import numpy as np
from scipy.special import ellipe, ellipkm1


def jonswap_shares(ratio, peakedness=3.3):
    """Return unnormalised JONSWAP density over angular frequency in units of the peak's."""
    width = np.where(ratio <= 1.0, 0.07, 0.09)
    peak = peakedness ** np.exp(-((ratio - 1.0) ** 2) / (2.0 * width**2))
    return ratio**-5.0 * np.exp(-1.25 * ratio**-4.0) * peak


def hidden_shares(chi, *, seas=60, seed=1, cut=6.0):
    """Return mean and 95th percentile of the height that crests hide, over significant height.

    Long-crested seas run straight to the eye; a height h above the still waterline at x0 is hidden
    when the surface anywhere between x0 and the eye stands above the sight line through it.
    Lengths are in wavelengths of the peak, heights in significant heights; gravity waves.
    """
    rng = np.random.default_rng(seed)
    n, step = 2**14, 1.0 / 64.0
    k = np.fft.rfftfreq(n, step)
    ratio = np.sqrt(np.maximum(k, 1e-9))
    density = np.where((ratio > 0.5) & (ratio < cut), jonswap_shares(ratio) * 0.5 / ratio, 0.0)
    share = density / density.sum() / 16.0
    means, all_heights = [], [[] for _ in chi]
    x = step * np.arange(n)
    for _ in range(seas):
        noise = rng.normal(size=(2, k.size))
        surface = np.fft.irfft(np.sqrt(share) * (noise[0] + 1j * noise[1]), n) * n / 2.0
        for heights, slope in zip(all_heights, chi, strict=True):
            line = (surface - slope * x)[::-1]
            top = np.maximum.accumulate(line)[::-1] + slope * x
            heights.append(top[: n // 2 : 4])
    for heights in all_heights:
        values = np.concatenate(heights)
        means.append((values.mean(), np.quantile(values, 0.95)))
    return np.array(means).T


def time_under(*, mass_kg, added_kg, volume_m3, body_drag_kg_m, skin_kg_s,
               shot_volume_m3, shot_drag_kg_m, slip_m_s, tip_area_m2, showing_m,
               height_m, peak_period_s, boils_m_s, scale_s, felt, minutes=60.0, copies=32,
               step_s=0.01, seed=1):  # fmt: skip
    """Return rms [m], share of time under, dips a minute, and length that 95 % of dips stay below.

    All from the stepped nonlinear equation, each for the K lengths that show, shape (K,).

    Quadratic drag, and a tip whose buoyancy ends where it is wholly under or wholly out. Waves
    are sums of 60 cosines, boils Ornstein-Uhlenbeck processes. `copies` floats of each drift at once.
    """
    rho, g = 999.7, 9.81
    rng = np.random.default_rng(seed)
    lengths_m, each_copies = np.atleast_1d(showing_m), copies
    showing_m = np.repeat(lengths_m, copies)
    copies = showing_m.size
    ratio = np.geomspace(0.5, 5.0, 61)
    middle = np.sqrt(ratio[1:] * ratio[:-1])
    share = jonswap_shares(middle) * np.diff(ratio)
    amplitude = np.sqrt(2.0 * share / share.sum()) * height_m / 4.0
    omega = middle * 2.0 * np.pi / peak_period_s
    phase = rng.uniform(0.0, 2.0 * np.pi, (copies, omega.size))
    ebar, eshot = felt(omega)
    wave = amplitude * np.exp(1j * phase)
    sums = np.stack(
        [np.ones_like(omega), 1j * omega * ebar, 1j * omega * eshot, -(omega**2) * ebar,
         -(omega**2) * eshot], axis=1,
    )  # fmt: skip
    keep = np.exp(-step_s / scale_s)
    kick = np.sqrt(1.0 - keep**2)
    w = np.asarray(boils_m_s)[:, None] * rng.normal(size=(2, copies))
    z, speed = np.zeros(copies), np.zeros(copies)
    moving = mass_kg + added_kg + 0.5 * rho * shot_volume_m3
    seen = []
    chunk = 250
    for i in range(int(minutes * 60.0 / step_s / each_copies)):
        if i % chunk == 0:
            turn = np.exp(1j * step_s * omega[:, None] * np.arange(i, i + chunk))
            many = wave @ (turn[:, :, None] * sums[:, None, :]).reshape(omega.size, -1)
            waves = many.real.reshape(copies, chunk, 5).transpose(1, 2, 0)
        surface, w_body, w_shot, a_body, a_shot = waves[i % chunk]
        new = keep * w + kick * np.asarray(boils_m_s)[:, None] * rng.normal(size=w.shape)
        dw = (new - w) / step_s
        w = new
        at_body, at_shot = w_body + w[0], w_shot + w[1]
        acc_body, acc_shot = a_body + dw[0], a_shot + dw[1]
        up = np.clip(surface - z, -0.02, showing_m)
        past, past_shot = at_body - speed, at_shot - speed
        force = (
            rho * g * tip_area_m2 * up
            + (rho * volume_m3 + added_kg) * acc_body
            + body_drag_kg_m * np.abs(past) * past
            + skin_kg_s * past
            + 1.5 * rho * shot_volume_m3 * acc_shot
            + shot_drag_kg_m * np.hypot(slip_m_s, past_shot) * past_shot
        )
        speed = speed + step_s * force / moving
        z = z + step_s * speed
        if i * step_s < 20.0:
            continue
        seen.append(surface - z)
    found = []
    for length, along in zip(
        lengths_m, np.split(np.array(seen), lengths_m.size, axis=1), strict=True
    ):
        covered = along > length
        lengths = step_s * dip_lengths(covered)
        each = 60.0 * lengths.size / (covered.size * step_s)
        long = float(np.quantile(lengths, 0.95)) if lengths.size else float("nan")
        found.append((float(along.std()), float(covered.mean()), each, long))
    return np.array(found).T


def added_mass_share(z_mm, r_mm, *, floating=False, panels=160):
    """Return a heaving body's added mass over (2/3) pi rho R^3: potential flow by ring sources.

    In water without end; `floating`, with its open top in a still surface, which is a wall to
    motions as slow as a float's.
    """
    z, r = np.asarray(z_mm, dtype=float), np.asarray(r_mm, dtype=float)
    z, r = np.append(z, z[-1]), np.append(r, 0.0)
    if not floating:
        z, r = np.append(z[0], z), np.append(0.0, r)
    long = np.hypot(np.diff(z), np.diff(r))
    ends = []
    for i in np.flatnonzero(long > 0.0):
        n = max(4, int(np.ceil(panels * long[i] / long.sum())))
        part = 0.5 * (1.0 - np.cos(np.pi * np.arange(n + 1) / n))
        line = np.stack([z[i] + part * (z[i + 1] - z[i]), r[i] + part * (r[i + 1] - r[i])])
        ends.append(np.stack([line[:, :-1], line[:, 1:]]))
    (za, ra), (zb, rb) = np.concatenate(ends, axis=-1)
    wide = np.hypot(zb - za, rb - ra)
    up, out = (rb - ra) / wide, (za - zb) / wide
    zm, rm = 0.5 * (za + zb), 0.5 * (ra + rb)

    def felt(z0, r0, up, out, z1, r1):
        sums = 0.0
        for at in (z1, -z1) if floating else (z1,):
            over, apart = (r0 + r1) ** 2 + (z0 - at) ** 2, (r0 - r1) ** 2 + (z0 - at) ** 2
            k, e = ellipkm1(apart / over), ellipe(1.0 - apart / over)
            across = 0.5 / r0 * (k - (r1**2 - r0**2 + (z0 - at) ** 2) / apart * e)
            along = (z0 - at) / apart * e
            sums = sums + r1 / np.pi / np.sqrt(over) * np.stack([-k, across * out + along * up])
        return sums

    nodes, weights = np.polynomial.legendre.leggauss(8)
    nodes, weights = 0.5 + 0.5 * nodes, 0.5 * weights
    potential, flow = np.einsum(
        "q,fijq->fij",
        weights,
        felt(
            zm[:, None, None],
            rm[:, None, None],
            up[:, None, None],
            out[:, None, None],
            za[:, None] + np.multiply.outer(zb - za, nodes),
            ra[:, None] + np.multiply.outer(rb - ra, nodes),
        ),
    ) * wide  # fmt: skip
    # each panel on its own middle: pieces that halve towards it, on both sides
    halves = 0.5 * 0.5 ** np.arange(9.0)
    inner = np.append(halves[1:], 0.0)
    away = (inner[:, None] + np.multiply.outer(halves - inner, nodes)).ravel()
    share = np.multiply.outer(halves - inner, weights).ravel()
    own = 0.0
    for part in (0.5 + away, 0.5 - away):
        own = own + wide * (
            share
            @ felt(zm, rm, up, out, za + part[:, None] * (zb - za), ra + part[:, None] * (rb - ra))
            .transpose(1, 0, 2)
            .reshape(share.size, -1)
        ).reshape(2, -1)
    np.fill_diagonal(potential, own[0])
    np.fill_diagonal(flow, own[1] + 0.5)
    moved = potential @ np.linalg.solve(flow, up)
    return float(
        -(moved * up * 2.0 * np.pi * rm * wide).sum() / (2.0 / 3.0 * np.pi * r.max() ** 3)
    )


def dip_lengths(covered):
    """Return the lengths in steps of the runs of True down each column."""
    padded = np.pad(covered.astype(np.int8), ((1, 1), (0, 0)))
    change = np.diff(padded.T, axis=1)
    starts, ends = np.nonzero(change > 0), np.nonzero(change < 0)
    return ends[1] - starts[1]


def gaussian(omega, variance, *, steps=2**15, step_s=0.01, copies=40, seed=1):
    """Return drawn Gaussian processes of a spectrum of lines, shape (steps, copies)."""
    rng = np.random.default_rng(seed)
    frequency = 2.0 * np.pi * np.fft.rfftfreq(steps, step_s)
    edges = np.concatenate([[0.0], 0.5 * (omega[1:] + omega[:-1]), [omega[-1] * 1.01]])
    density = np.interp(frequency, omega, variance / np.diff(edges), left=0.0, right=0.0)
    lines = density * (frequency[1] - frequency[0])
    noise = rng.normal(size=(2, copies, frequency.size))
    drawn = np.fft.irfft(np.sqrt(lines) * (noise[0] + 1j * noise[1]), steps, axis=1)
    return (drawn * steps / 2.0).T


if __name__ == "__main__":
    at = np.array([0.03, 0.05, 0.1, 0.17, 0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0])
    for row in zip(at, *hidden_shares(at, seas=400), strict=True):
        print(*(f"{value:.3f}" for value in row))  # noqa: T201
