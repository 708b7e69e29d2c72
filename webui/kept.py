"""What was worked out and may be asked for again, kept within a number and within a size."""

import threading
from collections import OrderedDict
from collections.abc import Callable, Hashable
from concurrent.futures import Future
from typing import Generic, TypeVar

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


class Kept(Generic[K, V]):
    """A function whose last results are kept, and which works each out once however many ask.

    >>> twice = Kept(lambda x: 2 * x, most=2, most_bytes=100, size=lambda _: 40)
    >>> [twice(x) for x in (1, 2, 3, 3)], len(twice), twice.bytes
    ([2, 4, 6, 6], 2, 80)
    """

    def __init__(
        self, make: Callable[[K], V], *, most: int, most_bytes: int, size: Callable[[V], int]
    ) -> None:
        self._make, self._size = make, size
        self._most, self._most_bytes = most, most_bytes
        self._held: OrderedDict[K, Future[V]] = OrderedDict()
        self._bytes: dict[K, int] = {}
        self._lock = threading.Lock()

    def __len__(self) -> int:
        return len(self._bytes)

    @property
    def bytes(self) -> int:
        """What all that is kept takes up [bytes]."""
        return sum(self._bytes.values())

    def held(self, key: K) -> V | None:
        """Return what was made of a key, None where it was not or is no longer kept."""
        with self._lock:
            held = self._held.get(key)
        return held.result() if held is not None and held.done() else None

    def __call__(self, key: K) -> V:
        """Return what is made of a key, now or before."""
        with self._lock:
            held = self._held.get(key)
            if held is not None:
                self._held.move_to_end(key)
            else:
                mine = self._held[key] = Future()
        if held is not None:
            return held.result()
        try:
            made = self._make(key)
        except BaseException as error:
            with self._lock:
                del self._held[key]
            mine.set_exception(error)  # for those who wait for it too
            raise
        mine.set_result(made)
        with self._lock:
            self._bytes[key] = self._size(made)
            for oldest in list(self._held):
                if len(self._bytes) <= self._most and self.bytes <= self._most_bytes:
                    break
                if oldest in self._bytes:  # what is still in the making is not counted yet
                    del self._held[oldest], self._bytes[oldest]
        return made
