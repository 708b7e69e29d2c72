"""Faults planted one by one, to see whether the tests notice: by hand, as it takes long.

``python tests/benchmark/faults.py`` tries all, ``--only advice`` those of one room, ``--check``
only looks whether each text to be replaced still stands once in its file. The tree is copied; a
fault is killed if a test fails, and survives if none does.
"""

import argparse
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
MOST_S = 900
EVERY_FIELD, BY_GRAMMAR = "package/test_every_field.py", "package/test_facts_first.py"
ON_BOX, ON_EYES, ON_DAY, OWN_READINGS = (
    (f"webui/test_{one}.py",) for one in ("box_page", "eyes_page", "day_page", "own_readings")
)
TESTS = {
    "inputs": ("inputs",),
    "tables": ("tables",),
    "scene": ("scene", "published/test_scene_light.py", "published/test_scene_water.py"),
    "sight": ("sight", "published/test_sight.py", "published/test_sight_clutter.py"),
    "afloat": ("afloat", "published/test_afloat.py", "published/test_afloat_ride.py"),
    "load": ("load", "published/test_load.py"),
    "advice": ("advice",),
    "hours": ("hours",),
    "own": ("own",),
    "box": ("box", "inputs/test_entry_table.py", "learning/test_eyes_commands.py"),
    "learning": ("learning",),
    "season": ("season",),
    "trot": ("trot",),
    "output": ("output", EVERY_FIELD),
    "pictures": ("pictures", EVERY_FIELD),
    "paper": ("paper", EVERY_FIELD),
    "webui": ("webui", EVERY_FIELD),
    "commands": ("package/test_cli.py", "package/test_paper_commands.py"),
}
"""What is run for a fault in each room, where the fault names nothing else."""


class Fault(NamedTuple):
    """One fault: its room and file, what stands there, what is put in its place."""

    room: str
    file: str
    old: str
    new: str
    tests: tuple[str, ...] = ()

    @property
    def path(self) -> str:
        """The file from the root."""
        return self.file if self.room == "webui" else f"tipsight/{self.file}"


FAULTS = [
    # --- what was said
    Fault("inputs", "inputs/quantities.py", "return (value - 32) * 5 / 9",
          "return (value - 30) * 5 / 9"),
    Fault("inputs", "inputs/quantities.py", "1852 / 3600", "1609.344 / 3600"),
    Fault("inputs", "inputs/quantities.py", "0.836 * float(int(force[1]) ** 1.5)",
          "0.836 * float(int(force[1]) ** 1.4)"),
    Fault("inputs", "inputs/settle_swim.py", "SHELTER = 0.5", "SHELTER = 0.6"),
    Fault("inputs", "inputs/settle_swim.py", "> SAME_SUN_DEG:", "> 2 * SAME_SUN_DEG:"),
    Fault("inputs", "inputs/settle_swim.py", "10.0**boils", "10.0 * boils"),
    Fault("inputs", "inputs/settle_swim.py", "if abs(value - told[0][1]) > SAME_SUN_DEG:",
          "if value - told[0][1] > SAME_SUN_DEG:"),
    Fault("inputs", "inputs/settle_swim.py", "wind * left", "wind / left"),
    Fault("inputs", "inputs/settle_behind.py", "math.atan2(height, beyond)",
          "math.atan2(height, beyond + 10)"),
    Fault("inputs", "inputs/settle_behind.py", "light.sun_bearing_deg >= 90",
          "light.sun_bearing_deg <= 90"),
    Fault("inputs", "inputs/settle_tip.py", "GLUED_LEAST_MM = 0.12, 5.0",
          "GLUED_LEAST_MM = 0.15, 5.0"),
    Fault("inputs", "inputs/settle_tip.py", "now = then + took - showing",
          "now = then - took + showing"),
    Fault("inputs", "inputs/clock.py", '(-1 if found[4] == "w" else 1)',
          '(-1 if found[4] == "e" else 1)'),
    Fault("inputs", "inputs/values.py", "10 * YARD_M / time_s", "10 / time_s"),
    # --- tables
    Fault("tables", "tables/kinds.py", "self.low <= value <= self.high",
          "self.low < value <= self.high", ("tables", "inputs")),
    Fault("tables", "tables/__init__.py", "return kept(_own, *args, **named)",
          "return kept(None, *args, **named)"),
    Fault("tables", "tables/row_checks.py", "if row[upper] < row[lower]:",
          "if row[upper] <= 0.5 * row[lower]:"),
    Fault("tables", "tables/row_checks.py", '0.0 < 2.0 * row["wall_mm"]', '0.0 < row["wall_mm"]'),
    Fault("tables", "tables/reading.py", "merged = dict(sorted(merged.items()))",
          "merged = dict(merged.items())"),
    Fault("tables", "tables/row_checks.py", '"known": (0.001, 1.0)', '"known": (0.001, 2.0)'),
    # --- light and water
    Fault("scene", "scene/cylinder.py", "(math.pi - turn) * np.cos(turn)",
          "math.pi * np.cos(turn)"),
    Fault("scene", "scene/fresnel.py", "(index * cosine - inside)", "(cosine - inside)"),
    Fault("scene", "scene/mist.py", "RANGE_THRESHOLD = 0.05", "RANGE_THRESHOLD = 0.02"),
    Fault("scene", "scene/slopes.py", "RIVER_SHARE = 0.5", "RIVER_SHARE = 0.6"),
    Fault("scene", "scene/slopes.py", "ALONG_WIND_SHARE = 0.75", "ALONG_WIND_SHARE = 0.25"),
    Fault("scene", "scene/glint.py", "4.0 * np.sin(down) * (1.0 + hidden_eye",
          "4.0 * np.cos(down) * (1.0 + hidden_eye"),
    Fault("scene", "scene/sky_scale.py", "0.50572 * (sun + 6.07995) ** -1.6364",
          "0.50572 * (sun + 6.07995) ** -1.5"),
    Fault("scene", "scene/facets.py", "facing = np.maximum(sine - along * cosine, 0.0)",
          "facing = np.maximum(sine + along * cosine, 0.0)"),
    Fault("scene", "scene/look.py", "air = (1.0 - clear)[:, None] * horizon",
          "air = (1.0 - clear**2)[:, None] * horizon"),
    Fault("scene", "scene/look.py", "sparkle_mm2=coverage * ratio**2",
          "sparkle_mm2=coverage * ratio"),
    Fault("scene", "scene/glitter.py", "out = angle >= BESIDE_FROM_DEG", "out = angle >= 1.0"),
    Fault("scene", "scene/glitter.py", "here.sun_azimuth_deg - turn_deg", "here.sun_azimuth_deg"),
    Fault("scene", "scene/look.py", "np.take(np.concatenate([one, more], axis), order, axis)",
          "np.concatenate([one, more], axis)"),
    Fault("advice", "advice/waters.py", "left = behind[:, 0] / (behind[:, 0] + veil)",
          "left = np.ones_like(veil)", ("scene/test_chain.py",)),
    Fault("sight", "sight/twilight.py", "ALL_CONES_CD_M2 = 10.0", "ALL_CONES_CD_M2 = 1.0"),
    Fault("scene", "scene/paint.py", "left = 2.0 ** (-seasons", "left = 2.0 ** (-2.0 * seasons"),
    Fault("scene", "scene/paint.py", "BARE_STICK = 0.7", "BARE_STICK = 0.8"),
    Fault("scene", "scene/setting.py", "sky.global_lx(state) / 2.0 * ground",
          "sky.global_lx(state) * ground"),
    Fault("scene", "scene/setting.py", "math.cos(math.radians(sun))",
          "math.sin(math.radians(sun))"),
    Fault("scene", "scene/glare.py", "return np.asarray(level - np.sin(down)",
          "return np.asarray(level + np.sin(down)"),
    Fault("scene", "scene/daylight.py", "CHAIN_SLOPE = 59.77", "CHAIN_SLOPE = 49.77"),
    # --- the eye
    Fault("sight", "sight/energy.py", "0.5 * t * scipy.special.erf(u)",
          "t * scipy.special.erf(u)"),
    Fault("sight", "sight/contrast.py", "behind[..., 0] + veil, behind[..., 3] + veil",
          "behind[..., 0] + veil, behind[..., 3]"),
    Fault("sight", "sight/contrast.py", "more[..., 1:3] / photopic",
          "more[..., 2:0:-1] / photopic"),
    Fault("sight", "sight/dip.py", "LENGTH_SHARE * height) ** 2 + ripple**2",
          "LENGTH_SHARE * height) ** 2 + ripple"),
    Fault("sight", "sight/dip.py", "LEAST_LOSS, LOSS_POWER = 0.15, -0.4",
          "LEAST_LOSS, LOSS_POWER = 0.20, -0.4"),
    Fault("sight", "sight/twilight.py", "aim = 0.7670 + 0.3334", "aim = 0.7670 + 0.2334"),
    Fault("sight", "sight/channels.py", "area / (area + self.fade_arcmin2)",
          "area / (area + 2.0 * self.fade_arcmin2)"),
    Fault("sight", "sight/channels.py", "0.22 * red, 0.0018 * red", "0.0018 * red, 0.22 * red"),
    Fault("sight", "sight/eye.py", "(age / 62.5) ** 4", "(age / 62.5) ** 3"),
    Fault("sight", "sight/eye.py", "0.5 * np.sqrt(mar**2 - 1.0)", "np.sqrt(mar**2 - 1.0)"),
    Fault("sight", "sight/reach.py", "last = int(good[-1])", "last = int(good[0])"),
    Fault("sight", "sight/kernel.py", "own = scale**2 / grey.gain", "own = scale / grey.gain"),
    Fault("sight", "sight/clutter.py", "z = np.minimum(0.5 * np.deg2rad(bank)",
          "z = np.minimum(np.deg2rad(bank)"),
    Fault("sight", "sight/detect.py", "np.maximum(np.asarray(edges_mm",
          "np.minimum(np.asarray(edges_mm"),
    Fault("sight", "sight/energy.py", "step[..., 1:] -= bands", "step[..., 1:] += bands"),
    Fault("sight", "sight/kernel.py", "weight /= noise", "weight /= noise[..., ::-1, :]"),
    # --- how it rides
    Fault("afloat", "afloat/lean.py", "np.cos(angle) - square * s.side_at_m",
          "np.cos(angle) + square * s.side_at_m"),
    Fault("afloat", "afloat/lean.py", "dtype=float) - s.side_at_m", "dtype=float) - s.lift_at_m"),
    Fault("afloat", "afloat/lean.py", "SAFE = 3.0",
          "SAFE = 2.0", ("afloat", "advice/test_limits.py")),
    Fault("afloat", "afloat/bite.py", "spring + 0.5 * meniscus_band_g",
          "spring + meniscus_band_g"),
    Fault("afloat", "afloat/ride.py", "TAIL = 1.12", "TAIL = 1.0"),
    Fault("afloat", "afloat/ride.py", "held**2 / (2.0 * GRAVITY", "held**2 / (GRAVITY"),
    Fault("afloat", "afloat/ride.py", "(showing - ride.sink_mm) / ride.rms_mm",
          "(showing - ride.sink_mm) / ride.tail_rms_mm"),
    Fault("afloat", "afloat/hidden.py", "0.55 * height_mm", "0.6 * height_mm"),
    Fault("afloat", "afloat/chop.py", "reach**-0.33", "reach**-0.30"),
    Fault("afloat", "afloat/boils.py", "from_bed = 1.0 - below / stream.depth_m",
          "from_bed = below / stream.depth_m"),
    Fault("afloat", "afloat/heave.py", "1.5 * rho * rig.shot_volume_m3,",
          "1.0 * rho * rig.shot_volume_m3,"),
    Fault("afloat", "afloat/stance.py", "1e-3 * (rig.line_mm - foot)",
          "1e-3 * (rig.waterline_mm - foot)"),
    Fault("afloat", "afloat/wind.py", "** (1.0 / 7.0)", "** (1.0 / 6.0)"),
    Fault("afloat", "afloat/freshwater.py", "0.625 * tau", "0.525 * tau"),
    # --- what it carries
    Fault("load", "load/balance.py", "0.5 * (outside_mm - tip.glued_mm)",
          "0.5 * (outside_mm + tip.glued_mm)"),
    Fault("load", "load/balance.py", "+ float(gone_g) * 0.5 * tip.glued_mm",
          "- float(gone_g) * 0.5 * tip.glued_mm"),
    Fault("load", "load/balance.py", "wet_mm3 * (0.5 * tip.wet_mm - foot_mm)",
          "wet_mm3 * (tip.wet_mm - foot_mm)"),
    Fault("load", "load/budget.py", "- gone_g) - HOOK_AND_BAIT_G", "- gone_g)"),
    Fault("load", "load/bored.py", "2.0 * top_r_mm * foot_r_mm + 3.0",
          "3.0 * top_r_mm * foot_r_mm + 2.0"),
    Fault("load", "load/staircase.py", "(dry_stiffness if deeper_mm > 0.0 else wet_stiffness)",
          "(wet_stiffness if deeper_mm > 0.0 else dry_stiffness)"),
    Fault("load", "load/plan.py", "BULK_DEPTH_SHARE = 0.45", "BULK_DEPTH_SHARE = 0.55"),
    Fault("load", "load/plan.py", "exact.Rule(0.70, 0.92, 2, 4, 3)",
          "exact.Rule(0.70, 0.92, 1, 4, 3)"),
    Fault("load", "load/change.py", "PIECE_MG, KIND_MG = 3.0, 3.0",
          "PIECE_MG, KIND_MG = 3.0, 9.0"),
    Fault("load", "load/shot.py", "1.0 - freshwater.density_kg_m3(temperature_c) /",
          "1.0 - 0.9 * freshwater.density_kg_m3(temperature_c) /"),
    Fault("load", "load/tips.py", "SLEEVE_G_PER_MM = 0.002", "SLEEVE_G_PER_MM = 0.004"),
    # --- advice
    Fault("advice", "advice/limits.py", "np.multiply(swim.case.wanted.bite_share, told.pull_g)",
          "np.multiply(swim.case.wanted.bite_share**2, told.pull_g)"),
    Fault("advice", "advice/limits.py", "RIDES_WELL, RIDES = 3.0, 2.0",
          "RIDES_WELL, RIDES = 3.0, 2.2"),
    Fault("advice", "advice/limits.py", "float(math.ceil(2 * wave_rms_mm))",
          "float(math.ceil(1.6 * wave_rms_mm))"),
    Fault("advice", "advice/limits.py", "LEAST_PULL_G = 0.02", "LEAST_PULL_G = 0.03"),
    Fault("advice", "advice/limits.py", "spare if self.least else -spare", "spare"),
    Fault("advice", "advice/sighting.py",
          "float(np.sqrt(sum(min(0.0, s * side) ** 2 for s in ends)))",
          "float(sum(abs(min(0.0, s * side)) for s in ends))"),
    Fault("advice", "advice/sighting.py", "return level * np.exp(-down), level * np.exp(up)",
          "return level * np.exp(-up), level * np.exp(down)"),
    Fault("advice", "advice/sighting.py", "worst = np.min([one.level for group",
          "worst = np.max([one.level for group"),
    Fault("advice", "advice/sighting.py", "WATER_CONTRAST_DOUBT = 1.2",
          "WATER_CONTRAST_DOUBT = 1.3"),
    Fault("advice", "advice/waters.py", "STREAKS_DOUBT = 2.0", "STREAKS_DOUBT = 1.5"),
    Fault("advice", "advice/cautions.py", "NEAR_SUN_DEG = 45.0", "NEAR_SUN_DEG = 90.0"),
    Fault("advice", "advice/cautions.py", "sun.beam and sun.sun_height_deg > 0",
          "sun.sun_height_deg > 0"),
    Fault("advice", "advice/on_the_spot.py",
          '    ("pen",),\n'
          '    ("pen", "show more"),\n',
          '    ("pen", "show more"),\n'
          '    ("pen",),\n'),
    Fault("advice", "advice/on_the_spot.py", "wet_mm=tip.showing_mm + tip.wet_mm - showing_mm",
          "wet_mm=tip.wet_mm"),
    Fault("advice", "advice/on_the_spot.py", "CLOSE_ENOUGH = 1.03", "CLOSE_ENOUGH = 1.1"),
    Fault("advice", "advice/loading.py", "change_g=wanted - now", "change_g=now - wanted"),
    Fault("advice", "advice/doubtful.py", "ODD_WEIGHT = 2.5", "ODD_WEIGHT = 3.0"),
    Fault("advice", "advice/doubtful.py", "s.colour_share > COLOUR_CARRIES",
          "s.colour_share > 0.8"),
    Fault("advice", "advice/reasons.py", "key=lambda doubt: -round(doubt.spread, 2)",
          "key=lambda doubt: doubt.spread"),
    Fault("advice", "advice/reasons.py", "tall, wide = (x /", "wide, tall = (x /"),
    Fault("advice", "advice/as_values.py", '"take_off": _counted(load.step.off)',
          '"take_off": _counted(load.step.on)', (EVERY_FIELD,)),
    Fault("advice", "advice/sighting.py", "CRESTS_LEAVE = 0.4", "CRESTS_LEAVE = 0.5"),
    Fault("advice", "advice/limits.py", "ENOUGH = 0.95", "ENOUGH = 0.9"),
    Fault("advice", "advice/on_the_spot.py", "GAIN = 1.05", "GAIN = 1.2"),
    Fault("advice", "advice/handling.py", "lean_deg=None if lies else max(held_deg, blown_deg)",
          "lean_deg=None if lies else min(held_deg, blown_deg)"),
    Fault("advice", "advice/swim.py",
          "return self.pattern.max_body_share * self.hull.body_diameter_mm",
          "return self.pattern.max_body_share**2 * self.hull.body_diameter_mm"),
    Fault("advice", "advice/swim.py", "SHOT_SLIP = 0.25", "SHOT_SLIP = 0.5"),
    Fault("advice", "advice/advise.py", "with tables.using(own):", "with tables.using(None):"),
    Fault("advice", "advice/answer.py", "all(fail.limit is Limit.SIGHT",
          "any(fail.limit is Limit.SIGHT"),
    Fault("advice", "advice/sighting.py", "max(s for s in slowest", "min(s for s in slowest"),
    Fault("advice", "advice/sighting.py", "max(highs) if swim.unsure else", "min(highs) if swim.unsure else"),
    Fault("advice", "advice/advise.py", "if wanted.bites_told or any(", "if any("),
    Fault("advice", "advice/fit.py", "TWICE = 2.0", "TWICE = 1.5"),
    Fault("advice", "advice/fit.py", "beyond = block is None", "beyond = block is not None"),
    Fault("advice", "advice/fit.py", "for limit in shelf.limits:", "for limit in list(shelf.limits)[:1]:"),
    Fault("advice", "advice/bench.py", "waves_mm / 2", "waves_mm"),
    Fault("advice", "advice/bench.py", "HEAVY_G, LONGEST_LIGHT_MM = 8.0, 45.0",
          "HEAVY_G, LONGEST_LIGHT_MM = 8.0, 55.0"),
    Fault("advice", "advice/bench.py", "if family not in worn and", "if family in worn and"),
    Fault("advice", "advice/waters.py", "DARKER_DEG, BRIGHTER_DEG = 15.0, 9.5",
          "DARKER_DEG, BRIGHTER_DEG = 9.5, 15.0"),
    Fault("advice", "advice/ladder.py", "QUARTER_INCH_MM = 6.35", "QUARTER_INCH_MM = 6.0"),
    Fault("advice", "advice/handling.py", "dips_per_min=float(ride.dips_per_min(",
          "dips_per_min=60.0 * float(ride.dips_per_min("),
    Fault("advice", "advice/candidates.py", "LEAST_BAND_MM = 5.0", "LEAST_BAND_MM = 8.0"),
    Fault("advice", "advice/choose.py", "NEAR_BEST = 0.85", "NEAR_BEST = 0.75"),
    Fault("advice", "advice/choose.py", "NEAR_FORCE = 1.10", "NEAR_FORCE = 1.30"),
    Fault("advice", "advice/choose.py", "AS_WELL = 0.85", "AS_WELL = 0.70"),
    # --- his own paint, eyes, water and floats
    Fault("own", "own/paint_row.py", "_parted(xyz, said, YIELDS[glows])",
          "_parted(xyz, said, 1.0)"),
    Fault("own", "own/paint_row.py", "of_yield, source, TOLD_DOUBT)", "of_yield, source, 1.0)"),
    Fault("own", "own/paint_row.py", "off, name = min(apart)", "off, name = max(apart)"),
    Fault("box", "box/recorded.py", "ORDER BY a.id DESC LIMIT 1", "ORDER BY a.id LIMIT 1"),
    Fault("box", "box/keeping.py", "if schema > len(MIGRATIONS):", "if schema > 99:"),
    Fault("box", "box/keeping.py", 'one.execute("ROLLBACK")\n                raise',
          'one.execute("COMMIT")\n                raise'),
    Fault("box", "box/keeping.py", "if 0 < schema < len(MIGRATIONS):", "if len(MIGRATIONS) < schema:"),
    Fault("box", "box/floats.py", "was is not None and was != found.mark", "was is not None and was < 0"),
    Fault("box", "box/floats.py", "if seal != _seal(tuple(row_told)):", 'if seal == "":'),
    Fault("box", "box/taking.py", "None if row.number in used else row.number", "None"),
    Fault("box", "inputs/entry_table.py", "return plain[1:] if _GUARDED", "return plain[0:] if _GUARDED"),
    Fault("learning", "learning/belief.py", "followed(-np.asarray(over, dtype=float), sd)",
          "followed(np.asarray(over, dtype=float), sd)"),
    Fault("learning", "learning/belief.py", "return PRIOR_SD_OLD if age_years > OLD_YEARS",
          "return PRIOR_SD_OLD if age_years < OLD_YEARS"),
    Fault("learning", "learning/bars.py", "READING_SD**2 / len(distances)", "READING_SD**2"),
    Fault("learning", "learning/corners.py", "weight * (chance if look.right else 1.0 - chance)",
          "weight * (1.0 - chance if look.right else chance)"),
    Fault("learning", "learning/corners.py", "- weight @ _entropy(right)", "+ weight @ _entropy(right)"),
    Fault("learning", "learning/boiling.py", "CLUMPED + 1.0 / mu", "CLUMPED + 2.0 / mu"),
    Fault("learning", "learning/boiling.py", "(m + 0.577 / m)", "(m - 0.577 / m)"),
    Fault("learning", "learning/boiling.py", "seconds * per_min / 60.0, 0.001", "seconds / 60.0, 0.001"),
    Fault("season", "season/covering.py", "[np.zeros(c), -gain]", "[np.zeros(c), -np.ones(s)]"),
    Fault("season", "season/covering.py", "LinearConstraint(few, 0.0, float(count))",
          "LinearConstraint(few, 0.0, float(count + 1))"),
    Fault("season", "season/covering.py", "open_[serves[row]] = 0.0", "open_[row] = 0.0"),
    Fault("season", "season/making.py", "fair = shot_share(here, pull_g) <= MOST_SHARE",
          "fair = np.bool_(True)"),
    Fault("season", "season/making.py", "have.with_bank & (have.shot_share <= MOST_SHARE)",
          "have.with_bank"),
    Fault("season", "season/jobs.py", "(shot_share <= MOST_SHARE).astype(np.intp)", "even"),
    Fault("season", "season/jobs.py", "(level[..., None] >= edges).sum(axis=-1)", "even"),
    Fault("season", "season/jobs.py", "least[:, s].min() > MOST_SHARE", "least[:, s].min() > 2.0"),
    Fault("season", "season/covering.py", "(good[kept] >= good[row]).all(axis=-1)",
          "(good[kept] >= good[row]).any(axis=-1)"),
    Fault("season", "season/covering.py", "force[rows] / (2.0 * force[rows].sum())",
          "0.0 * force[rows]"),
    Fault("season", "season/served.py", "pull_g) / here.wet_share / most_g", "pull_g) / most_g"),
    Fault("trot", "trot/along.py", "if level < grades.followed()", "if level < 1.0"),
    Fault("trot", "trot/along.py", "min(level, found.get(yard, level))", "level"),
    Fault("trot", "trot/along.py", "worse if worse is None else max(worse, found.get(yard) or 0.0)",
          "worse"),
    Fault("trot", "trot/along.py", "np.maximum(self.notice_s, self.own_dip_s)", "self.notice_s"),
    Fault("trot", "trot/along.py", "if one[1].followed_yards == most", "if one"),
    Fault("trot", "trot/along.py", "(leg.to_m - leg.from_m) / one.stream", "leg.to_m / one.stream"),
    Fault("trot", "trot/along.py", "own if often else 0.0", "own"),
    Fault("trot", "trot/along.py", "worst = waters[int(np.argmin(", "worst = waters[int(np.argmax("),
    Fault("trot", "trot/along.py", "yards * YARD_M), own if", "yards), own if"),
    Fault("trot", "trot/along.py", "if all(block.sound for block in one[1].blocks)]", "]"),
    Fault("trot", "trot/along.py", "seconds * float((one.level >= followed).mean())", "seconds"),
    Fault("trot", "trot/along.py", "None if step is None or found.get(yard, 0.0) is None else step", "step"),
    Fault("trot", "trot/along.py", "SELDOM_PER_MIN = 0.5", "SELDOM_PER_MIN = 5.0"),
    # --- words
    Fault("output", "output/measures.py", "math.floor(10 * value + 1e-6) / 10",
          "round(10 * value) / 10"),
    Fault("output", "output/measures.py", "count if whole else math.floor(count + 1e-6)", "count"),
    Fault("output", "output/text.py", "handled.hidden_mm:.0f} mm by the nearer",
          "handled.hidden_high_mm:.0f} mm by the nearer"),
    Fault("output", "output/readings.py", "quick = force(case, handled.pluck_g).shot",
          "quick = force(case, handled.slow_bite_g or 0.0).shot"),
    Fault("output", "output/readings.py", ">= handled.sink_force_g:", ">= handled.sink_force_high_g:"),
    Fault("output", "output/readings.py", "is {dip:.0f} mm", "is {2 * dip:.0f} mm"),
    Fault("output", "output/telling.py", "1 + contrast:.2g", "contrast:.2g"),
    Fault("output", "output/telling.py",
          '    Limit.BODY: "too thick for the body",\n'
          '    Limit.ROOM: "no room in the body to glue it",',
          '    Limit.ROOM: "too thick for the body",\n'
          '    Limit.BODY: "no room in the body to glue it",'),
    Fault("output", "output/json_form.py", "FIGURES = 4", "FIGURES = 3"),
    Fault("output", "output/shot_words.py", "swap {_taken(step.off, left)} for {counted(step.on)}",
          "swap {_taken(step.on, left)} for {counted(step.off)}"),
    Fault("output", "output/shot_words.py", "count == 1 and name not in left", "count == 1"),
    Fault("load", "load/line.py", "NEAR_MM = 2.0", "NEAR_MM = 3.0", ("advice/test_hanging.py",)),
    Fault("load", "load/line.py", "wanted - near_g - _EDGE_G", "wanted - 2 * near_g - _EDGE_G"),
    Fault("load", "load/line.py", "float(np.maximum(off.counts[i] - elsewhere, 0).sum())", "0.0"),
    Fault("load", "load/line.py", "and one.where != plan.DROPPER", ""),
    Fault("load", "load/line.py", "np.arange(most + 1, sum(limits) + 1)", "np.arange(most + 1, most + 1)"),
    Fault("load", "load/line.py", "np.lexsort((short[near], touched[near]))",
          "np.lexsort((touched[near], short[near]))"),
    Fault("advice", "advice/loading.py", "<= max(tip.wet_mm, line.NEAR_MM)", "<= 1e9",
          ("advice/test_hanging.py",)),
    Fault("output", "output/shotting.py", "what it takes\" if told", "what it takes\" if not told",
          ("advice/test_hanging.py",)),
    Fault("load", "load/line.py", "-float(off_g[n] + on_g[m])", "float(off_g[n] + on_g[m])"),
    Fault("load", "load/line.py", "else shot.count - on_line.get(shot.name, 0)", "else shot.count"),
    Fault("load", "load/line.py", "rest if heavy else before.where", "before.where"),
    Fault("load", "load/causes.py", "factorial(k) * factorial(n - k - 1)",
          "factorial(k - 1) * factorial(n - k)"),
    Fault("load", "load/causes.py", "- state.drunk_g", "+ state.drunk_g"),
    Fault("load", "load/causes.py", "coats_g = float(", "coats_g = 2 * float("),
    Fault("hours", "hours/course.py", "ENOUGH * asked(", "asked("),
    Fault("hours", "hours/course.py", "int(np.argmax(lasts))", "int(np.argmin(lasts))"),
    Fault("hours", "hours/course.py", "low=min(last.low, level)", "low=level"),
    Fault("hours", "hours/moments.py", "now += QUARTER", "now += 2 * QUARTER"),
    Fault("hours", "scene/setting.py", "return ahead and light", "return light"),
    Fault("output", "output/names.py", "round(band.to_top_mm) - round(band.from_top_mm)",
          "round(band.to_top_mm)"),
    Fault("output", "output/head.py", "seconds(after.visibility.notice_s)",
          "seconds(2 * after.visibility.notice_s)"),
    Fault("output", "output/head.py", "if one.limit in mended and one.limit is not Limit.SIGHT",
          'if one.limit in mended and not f"{one.limit}".startswith("sight")', (BY_GRAMMAR,)),
    # --- drawings
    Fault("pictures", "pictures/svg.py", "PX_PER_MM = 4.0", "PX_PER_MM = 5.0"),
    Fault("pictures", "pictures/patch.py", "-seen.rise_away[part]", "seen.rise_away[part]"),
    Fault("pictures", "pictures/ripple.py", "1e3, 1j * self.away_rad_m, 1j * self.right_rad_m",
          "1e3, 1j * self.right_rad_m, 1j * self.away_rad_m"),
    Fault("pictures", "pictures/ripple.py", "scale = (sea.height_m / 4.0) ** 2",
          "scale = (sea.height_m / 3.0) ** 2"),
    Fault("pictures", "pictures/screen.py", "WHITE_REFLECTANCE = 0.85",
          "WHITE_REFLECTANCE = 0.75"),
    Fault("pictures", "pictures/trade.py", "force_g / most_g",
          "point.ride_margin / most_g"),
    Fault("pictures", "pictures/patch.py", "half = showing_diameter_mm(tip) / 2.0",
          "half = tip.stock.diameter_mm / 2.0"),
    # --- paper
    Fault("paper", "paper/sheet_words.py", "bare, wide = tip.stock.diameter_mm, block.painted_mm",
          "bare, wide = block.painted_mm, tip.stock.diameter_mm"),
    Fault("paper", "paper/leaf.py", "POINT_MM = INCH_MM / 72.0", "POINT_MM = INCH_MM / 72.27"),
    Fault("paper", "paper/cards.py", "tip.showing_mm - n * step_mm",
          "tip.showing_mm + n * step_mm"),
    Fault("paper", "paper/wall.py", "mark.height_mm * hang_m / range_m",
          "mark.height_mm * range_m / hang_m"),
    Fault("paper", "paper/sheet.py", "water = top - tip.showing_mm", "water = top - tip.wet_mm"),
    Fault("paper", "paper/cells.py", '[("off", self.off), ("on", self.on)]',
          '[("off", self.on), ("on", self.off)]'),
    Fault("paper", "paper/pocket.py", "cells[at('water')+1]",
          "cells[at('water')]", ("paper", "browser/test_pocket_file.py")),
    # --- the page
    Fault("webui", "webui/findings.py",
          "low, high = grades.grade(seen.low), grades.grade(seen.high)",
          "high, low = grades.grade(seen.low), grades.grade(seen.high)"),
    Fault("webui", "webui/findings.py",
          "(readings.takes(block), (readings.hangs(block), doing.shot(block)))",
          "(readings.takes(block), (doing.shot(block), readings.takes(block)))"),
    Fault("webui", "webui/say.py",
          '    sections.AS_IS: "Tip in hand",\n'
          '    sections.BANK: "Now, at the bank",',
          '    sections.BANK: "Tip in hand",\n'
          '    sections.AS_IS: "Now, at the bank",'),
    Fault("webui", "webui/whatif.py", "then = tip.showing_mm + step_mm",
          "then = tip.showing_mm - step_mm"),
    Fault("webui", "webui/asking.py", "urlencode(self.apart(changes))", "urlencode(changes)"),
    Fault("webui", "webui/reader_units.py", 'return "" if unit == "ft" else unit', "return unit"),
    Fault("webui", "webui/asking.py", "return urlencode(self.chosen) if self.own", 'return "" if self.own'),
    Fault("webui", "webui/writing.py", "name in OWN_HOSTS and ip_address", "ip_address"),
    Fault("webui", "webui/writing.py", "(self.let_write or _from_here())", "bool(self.token)"),
    Fault("webui", "webui/writing.py", "return hmac.compare_digest(", "return True or hmac.compare_digest("),
    Fault("webui", "webui/box_page.py", "floats.change(box, number, entry, on, was=_mark())",
          "floats.change(box, number, entry, on)"),
    Fault("webui", "webui/box_page.py", 'if self.kind in ("", one.entry.told.get("pattern"))', "if one"),
    Fault("webui", "webui/box_page.py", "if one.trouble is not None or not only", "if one"),
    Fault("webui", "webui/box_page.py", "asked, question = learned(asked)", "question = asked.question()"),
    Fault("webui", "webui/eyes_page.py", 'mine = "" if whose == own.whose(asked) else whose', 'mine = ""'),
    Fault("webui", "webui/day_page.py", "if time.monotonic() > until:", "if until < 0.0:"),
    Fault("webui", "webui/writing.py", 'get(TOKEN, "").encode(), self.token.encode()',
          'get(TOKEN, ""), self.token', ON_BOX),
    Fault("webui", "webui/writing.py", "secrets.token_urlsafe(18)", '"page"', ON_BOX),
    Fault("webui", "webui/writing.py", "    except ValueError:\n        return False",
          "    except ValueError:\n        return True", ON_BOX),
    Fault("webui", "webui/writing.py", "self.box is not None and (self", "(self", ON_EYES),
    Fault("webui", "webui/box_page.py", "[sought.first : sought.first + MOST_SHOWN]",
          "[:MOST_SHOWN]", ON_BOX),
    Fault("webui", "webui/box_page.py", "floats.drop(box, number, on, was=_mark())",
          "floats.drop(box, number, on)", ON_BOX),
    Fault("webui", "webui/box_page.py", "floats.back(box, number, on, was=_mark())",
          "floats.back(box, number, on)", ON_BOX),
    Fault("webui", "webui/box_page.py", 'Fished("", 1.0, learned(asked)[1])',
          'Fished("", 1.0, asked.question())', ON_BOX),
    Fault("webui", "webui/eyes_page.py", "        settle(question)  # a note",
          "        pass  # a note", ON_EYES),
    Fault("webui", "webui/eyes_page.py", "for n, key in enumerate(BACK)}", "for n, key in enumerate(OUT)}",
          ON_EYES),
    Fault("webui", "webui/eyes_page.py", "own.whose(asked),\n                saw.today()",
          '"me",\n                saw.today()', ON_EYES),
    Fault("webui", "webui/eyes_page.py", 'if each.kind != "dips" and each.whose == who]',
          'if each.kind != "dips"]', ON_EYES),
    Fault("webui", "webui/eyes_page.py", "words = eyes_words.known(now) if did.dropped else", "words =",
          ON_EYES),
    Fault("webui", "webui/day_page.py", "asked, question = learned(asked)", "question = asked.question()",
          ON_DAY),
    Fault("webui", "webui/day_page.py", 'found["facing"], hours, units)', 'found["facing"], hours, Units())',
          ON_DAY),
    Fault("webui", "webui/day_page.py", "course_strip.drawing(found, QUARTER_PX)",
          "course_strip.drawing(found[:1], QUARTER_PX)", ON_DAY),
    Fault("webui", "webui/day_page.py", 'if one.item == "--to" else one', 'if one.item == "to" else one',
          ON_DAY),
    Fault("webui", "webui/own_readings.py", "len({*self.people, self.who}) > 1", "len(self.people) > 1",
          OWN_READINGS),
    Fault("webui", "webui/own_readings.py", "who, water = asked.who or self._who,", "who, water = asked.who,",
          OWN_READINGS),
    Fault("webui", "webui/own_readings.py", 'repr(told.get("sight"))', '""', OWN_READINGS),
    Fault("webui", "webui/own_readings.py", "(not found and not who and not water)", "(not found)",
          OWN_READINGS),
    Fault("webui", "webui/safety.py", "MOST_QUERY = 8000", "MOST_QUERY = 80000"),
    # --- the command
    Fault("commands", "commands/parsing.py", 'if not waiting or waiting[0].startswith("--"):',
          "if not waiting:"),
    Fault("commands", "commands/writing.py", "PATIENCE_S = 2.0", "PATIENCE_S = 3.0"),
    Fault("commands", "cli.py", "_WRONG, _STOPPED = 2, 130", "_WRONG, _STOPPED = 1, 130"),
    Fault("commands", "commands/view.py", "view.png(answer, eyes, ripple, fine",
          "view.png(answer, eyes, 0, fine"),
    Fault("commands", "commands/sheet.py", "sheet.pdf(answer, paper)", "sheet.pdf(answer)"),
    Fault("commands", "commands/card.py", 'if card == "shotting":', 'if card == "wall":'),
]  # fmt: skip


def standing(root: Path) -> Iterator[str]:
    """Yield a line for each fault whose text does not stand exactly once in its file."""
    for fault in FAULTS:
        path = root / fault.path
        count = path.read_text("utf-8").count(fault.old) if path.exists() else 0
        if count != 1:
            yield f"{fault.path}: stands {count} times: {fault.old!r}"


def copied(folder: Path) -> Path:
    """Copy the tree as it is on the disk, without what is built."""
    tree = folder / "tree"
    skipped = shutil.ignore_patterns(
        ".git", ".venv", "__pycache__", ".*_cache", "shots", "*.egg-info"
    )
    shutil.copytree(ROOT, tree, ignore=skipped)
    return tree


def run(tree: Path, tests: Sequence[str]) -> tuple[str, str]:
    """Run some tests, and return what became of them and the first that failed."""
    # no compiled files: two faults of one length within one second would pass for each other
    environment = {**os.environ, "PYTHONPATH": f"{tree}", "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider"]
    try:
        done = subprocess.run(  # noqa: S603 - our own
            [*command, *(f"tests/{one}" for one in tests)],
            cwd=tree, env=environment, capture_output=True, text=True, check=False, timeout=MOST_S,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        return "too long", ""
    failed = [line for line in done.stdout.splitlines() if line.startswith(("FAILED", "ERROR"))]
    if done.returncode == 0:
        return "survived", ""
    if not failed:
        return "killed", f"pytest ended with {done.returncode}"
    return "killed", failed[0].split(" - ")[0].removeprefix("FAILED ").removeprefix("tests/")


def tried(tree: Path, fault: Fault) -> tuple[str, str]:
    """Plant a fault, run its tests, and return what became of it and which test noticed."""
    path = tree / fault.path
    whole = path.read_text("utf-8")
    path.write_text(whole.replace(fault.old, fault.new), encoding="utf-8")
    try:
        return run(tree, fault.tests or TESTS[fault.room])
    finally:
        path.write_text(whole, encoding="utf-8")


def main() -> int:
    """Try the faults, and tell what became of each and of each room."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--only", action="append", choices=TESTS, help="a room; may be said again")
    parser.add_argument("--like", default="", help="only those with this in their file or text")
    parser.add_argument("--check", action="store_true", help="only look where each text stands")
    asked = parser.parse_args()
    moved = list(standing(ROOT))
    print("\n".join(moved) or f"each of {len(FAULTS)} texts stands once")
    if moved or asked.check:
        return bool(moved)
    signal.signal(signal.SIGINT, signal.default_int_handler)  # in the background none would come
    rooms = asked.only or list(TESTS)
    found: dict[str, list[tuple[Fault, str]]] = {room: [] for room in rooms}
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        faults = [one for one in FAULTS if one.room in rooms]
        faults = [one for one in faults if asked.like in f"{one.file} {one.old}"]
        for tests in dict.fromkeys(one.tests or TESTS[one.room] for one in faults):
            fate, by = run(tree, tests)
            if fate != "survived":  # what fails by itself can tell nothing
                print(f"without a fault: {' '.join(tests)}: {fate}  {by}")
                return 1
        for fault in faults:
            start = time.monotonic()
            fate, by = tried(tree, fault)
            found[fault.room].append((fault, fate))
            took = time.monotonic() - start
            print(f"{fate:9s}{took:5.0f} s  {fault.path}: {fault.new!r:.60}  {by}", flush=True)
    print("\nroom      killed  of")
    for room, each in found.items():
        print(f"{room:9s} {sum(fate == 'killed' for _, fate in each):6d}  {len(each)}")
    left = [(fault, fate) for each in found.values() for fault, fate in each if fate != "killed"]
    for fault, fate in left:
        print(f"{fate}: {fault.path}: {fault.old!r} -> {fault.new!r}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
