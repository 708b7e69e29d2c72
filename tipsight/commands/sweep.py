"""``tipsight sweep``: a whole season answered, one flat row for each swim."""

import json as as_json
from pathlib import Path

import click

from tipsight import tables as own_tables
from tipsight.commands import COMMANDS
from tipsight.commands.parsing import Alone, Line
from tipsight.commands.season_options import cores_option, season_of, tables_option, workers
from tipsight.commands.writing import progress, write
from tipsight.errors import Mistake, Mistakes


def _run(swims: str, out: str | None, cores: int | None, tables: str | None, json: bool) -> str:
    """Write the table, or return its rows as JSON."""
    if out is None and not json:
        why = "say which file to write"
        raise Mistakes([Mistake("--out", "", why, "-o season.csv, or --json")])
    from tipsight.season import sweep_table

    with own_tables.using(tables), workers(cores) as pool:
        season = season_of(swims)
        tell = progress("swims answered")
        if out is None:
            rows = []
            for row in sweep_table.rows(season, pool):
                rows.append(row)
                tell(len(rows), len(season))
            return as_json.dumps({"sweep": rows}, indent=2, allow_nan=False) + "\n"
        path = Path(out)
        if not path.exists():
            write(out, b"", "")  # says at once where it cannot be written
        for done, of in sweep_table.write(path, season, pool):
            tell(done, of)
    return f"{out}: {len(season)} swims, a row each\n"


run = click.command("sweep", Line, help=f"{COMMANDS['sweep'][0].upper()}{COMMANDS['sweep'][1:]}.")(
    _run
)
run.params += [
    Alone(
        ["swims"],
        "a file of swims, the invented 'season', or the 'ladder'",
        metavar="[SEASON.toml]",
        required=False,
        default="season",
    ),
    click.Option(
        ["-o", "--out"],
        metavar="FILE",
        help="the table to write (CSV); one that was broken off is gone on with",
    ),
    cores_option(),
    tables_option(),
    click.Option(["--json"], is_flag=True, help="print the rows as one JSON object instead"),
]
