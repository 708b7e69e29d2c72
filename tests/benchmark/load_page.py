"""Ask the page as fifty people at once for twenty seconds, on this machine alone; run by hand.

``.venv/bin/python tests/benchmark/load_page.py`` prints replies, errors, the slow end, and memory.
"""

import http.client
import random
import socket
import subprocess
import sys
import threading
import time
from pathlib import Path

CLIENTS, SECONDS = 50, 20.0
PLACES = [
    f"/?distance={far}+yd&behind={water}&showing={long}+mm&diameter=3+mm"
    for far in (15, 20, 25, 30, 35, 40, 50, 60)
    for water in ("dark", "bright", "broken")
    for long in (15, 25, 35)
]
"""Seventy-two questions, more than a house asks in a day."""


def memory_mb(pid: int) -> float:
    status = Path(f"/proc/{pid}/status").read_text(encoding="ascii")
    return int(status.partition("VmRSS:")[2].split()[0]) / 1024


def ask(port: int, until: float, seed: int, took: list[float], wrong: list[str]) -> None:
    pick = random.Random(seed)  # noqa: S311 - no secret
    line = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    while time.monotonic() < until:
        start = time.monotonic()
        try:
            line.request("GET", pick.choice(PLACES), headers={"Accept-Encoding": "gzip"})
            reply = line.getresponse()
            reply.read()
            if reply.status not in (200, 303):
                wrong.append(f"status {reply.status}")
        except OSError as error:
            wrong.append(repr(error))
            line.close()
        took.append(time.monotonic() - start)
    line.close()


def main() -> None:
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        port = one.getsockname()[1]
    command = [sys.executable, "-m", "tipsight", "page", "--port", str(port)]
    server = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, encoding="utf-8")  # noqa: S603
    assert server.stdout is not None
    server.stdout.readline()
    try:
        for name in ("first round", "second round"):
            took: list[float] = []
            wrong: list[str] = []
            until = time.monotonic() + SECONDS
            clients = [
                threading.Thread(target=ask, args=(port, until, n, took, wrong))
                for n in range(CLIENTS)
            ]
            for client in clients:
                client.start()
            for client in clients:
                client.join()
            took.sort()
            print(
                f"{name}: {len(took)} replies, {len(wrong)} errors {wrong[:2]}, median "
                f"{took[len(took) // 2]:.2f} s, p95 {took[int(0.95 * len(took))]:.2f} s, most "
                f"{took[-1]:.2f} s, memory {memory_mb(server.pid):.0f} MB"
            )
    finally:
        server.terminate()
        server.wait()


if __name__ == "__main__":
    main()
