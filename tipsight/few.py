"""A dictionary that holds so much in mind and no more."""

from typing import TypeVar

K = TypeVar("K")
V = TypeVar("V")


class Few(dict[K, V]):
    """Forgets all that it holds when it would hold more than so many.

    >>> few = Few(2)
    >>> for key in (1, 2, 3):
    ...     few[key] = 10 * key
    >>> few
    {3: 30}
    """

    def __init__(self, most: int) -> None:
        super().__init__()
        self.most = most

    def __setitem__(self, key: K, found: V) -> None:
        if len(self) >= self.most:
            self.clear()
        super().__setitem__(key, found)
