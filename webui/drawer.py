"""Pictures that take longer than a request may: drawn behind it one at a time, and kept."""

import threading
from collections.abc import Callable, Hashable
from concurrent.futures import Future
from concurrent.futures import TimeoutError as NotYet

from webui.kept import Kept

WAITING = 4
"""Pictures that may wait for the one that is being drawn."""
AT_ONCE_S = 1.0
"""What is drawn within this time is given in the request that asked for it."""


class FullError(Exception):
    """So many wait already that no more are taken."""


class Drawer:
    """Draws what is asked for in a thread of its own, one after the other.

    >>> drawer = Drawer(most=2, most_bytes=10)
    >>> drawer("a", lambda: b"picture", wait_s=5.0)
    b'picture'
    """

    def __init__(self, *, most: int, most_bytes: int) -> None:
        self._kept: Kept[Hashable, bytes] = Kept(
            self._drawn, most=most, most_bytes=most_bytes, size=len
        )
        self._asked: dict[Hashable, tuple[Callable[[], bytes], Future[bytes]]] = {}
        self._lock, self._one = threading.Lock(), threading.Lock()

    def _drawn(self, key: Hashable) -> bytes:
        return self._asked[key][0]()

    def __call__(
        self, key: Hashable, make: Callable[[], bytes], wait_s: float | None = None
    ) -> bytes | None:
        """Return what is made for a key; None while it is being drawn or waits for that.

        Raises
        ------
        FullError
            If too many wait already.
        """
        done = self._kept.held(key)
        if done is not None:
            return done
        with self._lock:
            if key not in self._asked:
                if len(self._asked) > WAITING:
                    raise FullError
                self._asked[key] = make, Future()
                threading.Thread(target=self._draw, args=(key,), daemon=True).start()
            coming = self._asked[key][1]
        try:
            return coming.result(AT_ONCE_S if wait_s is None else wait_s)
        except NotYet:
            return None

    def _draw(self, key: Hashable) -> None:
        coming = self._asked[key][1]
        try:
            with self._one:
                coming.set_result(self._kept(key))
        except Exception as error:  # told to those who wait; whoever asks again begins anew
            coming.set_exception(error)
        finally:
            with self._lock:
                del self._asked[key]
