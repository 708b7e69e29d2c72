"""Ask one page twenty thousand mixed things and print what memory it holds; run by hand.

``.venv/bin/python tests/benchmark/memory_page.py [HOW MANY]`` prints a line each thousand.
"""

import collections
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "helpers"))

ASKED = 20_000


def memory_mb() -> float:
    """What this process holds in memory now."""
    status = Path("/proc/self/status").read_text(encoding="ascii")
    return int(status.partition("VmRSS:")[2].split()[0]) / 1024


def main() -> None:
    """Ask, and print."""
    from page_requests import mixed

    from webui import create_app

    client = create_app().test_client()
    asked = int(sys.argv[1]) if len(sys.argv) > 1 else ASKED
    replies: collections.Counter[int] = collections.Counter()
    start = time.monotonic()
    for n, (path, headers) in enumerate(mixed(1), 1):
        with client.get(path, headers=headers) as reply:
            replies[reply.status_code] += len(reply.data) > 0
        if n % 1000 == 0 or n == asked:
            print(f"{n:6d} {memory_mb():6.1f} MB {time.monotonic() - start:6.0f} s", flush=True)
        if n == asked:
            break
    print(dict(replies))


if __name__ == "__main__":
    main()
