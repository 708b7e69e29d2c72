"""What people, their browsers, programs and other sites ask of the page, over and over."""

import random
from collections.abc import Iterator
from urllib.parse import urlencode

OTHER_SITE = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors"}
Asking = tuple[str, dict[str, str]]


def question(pick: random.Random) -> dict[str, str]:
    """One of some ten thousand questions."""
    return {
        "distance": f"{pick.randrange(15, 61)} yd",
        "behind": pick.choice(["dark", "bright", "broken", "dark 60%; bright", "not sure"]),
        "sky": pick.choice(["clear", "hazy", "dull overcast"]),
        "showing": f"{pick.randrange(10, 41)} mm",
        "diameter": pick.choice(["2.5 mm", "3 mm", "4 mm"]),
    }


def mixed(seed: int, drawn: bool = True) -> Iterator[Asking]:
    """Yield paths with their headers without end: new questions, old ones, mistakes and intruders."""
    pick = random.Random(seed)  # noqa: S311 - no secret
    common = [question(pick) for _ in range(40)]
    while True:
        told = question(pick) if pick.random() < 0.25 else pick.choice(common)
        query = urlencode(told)
        yield pick.choice(
            [
                *((f"/?{query}", {}), (f"/?{query}", {"X-Fragment": "1"})),
                *((f"/?{query}&far=m", {"Accept-Encoding": "gzip"}), (f"/?{query}&age=", {})),
                (f"/?{query}&was_showing={pick.choice(common)['showing']}", {}),
                *((f"/advise.json?{query}", {}), (f"/view.png?{query}", OTHER_SITE)),
                *(("/static/page.js", {}), ("/nowhere", {}), ("/?" + "x" * 9000, {})),
                (f"/?distance={pick.randrange(10**9)}+frogs&behind=drk;wibble", {}),
                (f"/?{query}&" + "&".join(["behind=dark"] * 150), {}),
            ]
        )
        if drawn and (one := pick.random()) < 0.1:
            file = "view.png" if one < 0.01 else pick.choice(["sheet.pdf", "card.pdf", "wall.pdf"])
            yield f"/{file}?{query}", {}
