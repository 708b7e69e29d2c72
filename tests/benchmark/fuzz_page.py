"""Ask the page five thousand things that no person would, with all the sums; run by hand.

``.venv/bin/python -m tests.benchmark.fuzz_page [HOW MANY]`` prints what came back, and the slowest reply.
"""

import collections
import sys
import time

from hypothesis import HealthCheck, given, settings

from tests.webui.test_anything import addresses
from webui import create_app

ASKED = int(sys.argv[1]) if len(sys.argv) > 1 else 5000
client = create_app().test_client()
replies: collections.Counter[int] = collections.Counter()
slowest: list[tuple[float, str]] = []


@settings(
    deadline=None,
    derandomize=True,
    max_examples=ASKED,
    database=None,
    suppress_health_check=list(HealthCheck),
)
@given(addresses())
def ask(query: str) -> None:
    """Ask one thing, as a browser would, and where that leads."""
    start = time.perf_counter()
    reply = client.get(f"/?{query}")
    if reply.status_code == 303:
        reply = client.get(reply.headers["Location"])
    slowest.append((time.perf_counter() - start, query))
    slowest.sort(reverse=True)
    del slowest[3:]
    replies[reply.status_code] += 1
    assert reply.status_code in (200, 422), query


if __name__ == "__main__":
    ask()
    print(dict(replies), [(round(took, 2), query[:90]) for took, query in slowest])
