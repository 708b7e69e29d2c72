"""Numbers worked out of readings, so that an answer need not wait for them again: never the only copy."""

import sqlite3
from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

MOST = 2000
"""More than so many of the latest are not kept: some 4 MB."""


def recalled(box: sqlite3.Connection, sums: str) -> dict[str, Array]:
    """Return what these sums worked out, by what it hangs on; what cannot be read is as if it were not."""
    rows = box.execute("SELECT hangs_on, numbers FROM worked_out WHERE sums = ?", (sums,))
    return {key: np.frombuffer(numbers, "<f8") for key, numbers in rows if len(numbers) % 8 == 0}


def remember(box: sqlite3.Connection, sums: str, numbers: Mapping[str, Array]) -> None:
    """Keep what these sums worked out; what others did is dropped, and the oldest beyond a few thousand."""
    box.execute("DELETE FROM worked_out WHERE sums <> ?", (sums,))
    box.executemany(
        "INSERT OR REPLACE INTO worked_out (hangs_on, sums, numbers) VALUES (?, ?, ?)",
        [(key, sums, one.astype("<f8").tobytes()) for key, one in numbers.items()],
    )
    box.execute(
        "DELETE FROM worked_out WHERE rowid <= (SELECT max(rowid) FROM worked_out) - ?", (MOST,)
    )
