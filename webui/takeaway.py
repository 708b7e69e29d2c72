"""What can be taken away from an answer: paper at true size, and the view from the bank."""

import threading
from collections.abc import Callable
from urllib.parse import parse_qsl, urlencode

from flask import Flask, Response, abort, redirect, render_template, request

from tipsight.advice.answer import Answer
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.learnt import Learnt
from webui.asking import CARD, Asked, card_px
from webui.kept import Kept

Key = tuple[str, Learnt]
KEPT, KEPT_BYTES = 8, 8_000_000
"""Pictures that are kept, so that a page and its picture cost one drawing; all of them [bytes]."""


def _with_card() -> str:
    card = request.args.get(CARD)
    return f"&{urlencode({CARD: card})}" if card else ""


def _sheet(answer: Answer) -> bytes:
    from tipsight.paper import sheet

    return sheet.pdf(answer)


def _card(answer: Answer) -> bytes:
    from tipsight.paper import cards

    return cards.shotting(answer)


def _wall(answer: Answer) -> bytes:
    from tipsight.paper import wall

    return wall.pdf(answer)


PAPERS = {
    "sheet.pdf": ("Bench sheet", _sheet),
    "card.pdf": ("Shotting card", _card),
    "wall.pdf": ("Wall card", _wall),
}
"""Each paper with its name and what makes it."""
LINKS = {**{file: name for file, (name, _) in PAPERS.items()}, "view": "View from the bank"}
"""What the page offers, by address."""


def add(app: Flask, answered: Callable[[], tuple[Asked, Answer]]) -> None:
    """Add the papers and the view to an app; ``answered`` tells what the present address asks."""

    def mended(make: Callable[[Asked, Answer], Response]) -> Callable[[], Response]:
        """Return a view of what ``make`` makes, for a question without mistakes or blanks."""

        def shown() -> Response:
            try:
                asked, answer = answered()
                if not asked.is_short(request.args):
                    short = f"{request.path}?{asked.query()}{_with_card()}"
                    return redirect(short, 303)  # type: ignore[return-value]
                return make(asked, answer)
            except Mistakes:
                query = request.query_string.decode("ascii", "replace")
                return redirect(f"/?{query}", 303)  # type: ignore[return-value]

        return shown

    def paper(make: Callable[[Answer], bytes]) -> Callable[[], Response]:
        def shown(asked: Asked, answer: Answer) -> Response:
            return Response(make(answer), mimetype="application/pdf")

        return mended(shown)

    def draw(key: Key) -> bytes:
        from tipsight.pictures import view

        return view.png(answered()[1])

    def draw_panels(key: tuple[Key, float | None]) -> tuple[bytes, ...]:
        from tipsight.pictures import truesize, view

        fine = truesize.of_card(key[1]) if key[1] else None
        return view.drawn(answered()[1], pixels_per_mm=fine)

    drawing = threading.Lock()

    def draw_film(key: Key) -> bytes:
        """Draw the film; it takes ten seconds of the machine, so never two at a time."""
        from tipsight.pictures import film

        if not drawing.acquire(blocking=False):
            abort(503)
        try:
            return film.webp(answered()[1])
        finally:
            drawing.release()

    films = Kept(draw_film, most=KEPT, most_bytes=KEPT_BYTES, size=len)
    whole = Kept(draw, most=KEPT, most_bytes=KEPT_BYTES, size=len)
    panels = Kept(
        draw_panels, most=KEPT, most_bytes=KEPT_BYTES, size=lambda drawn: sum(map(len, drawn))
    )

    def picture(asked: Asked, answer: Answer) -> Response:
        return Response(whole(asked.key), mimetype="image/png")

    def moving(asked: Asked, answer: Answer) -> Response:
        return Response(films(asked.key), mimetype="image/webp")

    def panel(number: int) -> Response:
        def make(asked: Asked, answer: Answer) -> Response:
            try:
                drawn = panels((asked.key, card_px(request.args)))
            except Mistakes:
                abort(404)
            if number >= len(drawn):
                abort(404)
            return Response(drawn[number], mimetype="image/png")

        return mended(make)()

    def view_page(asked: Asked, answer: Answer) -> Response:
        from tipsight.pictures import panels as panels_of
        from tipsight.pictures import truesize, view

        card: float | None = None
        wrong: tuple[Mistake, ...] = ()
        fine = panels_of.PIXELS_PER_MM
        try:
            card = card_px(request.args)
            fine = truesize.of_card(card) if card else fine
        except Mistakes as mistaken:
            wrong = mistaken.mistakes
        page = render_template(
            "view.html",
            asked=asked,
            card=card,
            typed=request.args.get(CARD, ""),
            wrong=wrong,
            hidden=parse_qsl(asked.query(), keep_blank_values=True),
            large=view.too_large(answer, fine),
            about=truesize.about,
            sized=view.sized(),
            far=panels_of.FAR_PX,
            heading=view.heading(answer, asked.units.reader),
            captions=view.captions(answer),
            foot=view.foot(answer),
            film=view.film_described(answer, asked.units.reader),
        )
        return Response(page, 422 if wrong else 200)

    for file, (_, make) in PAPERS.items():
        app.add_url_rule(f"/{file}", file, paper(make))
    app.add_url_rule("/view.png", "picture", mended(picture))
    app.add_url_rule("/view.webp", "moving", mended(moving))
    app.add_url_rule("/view-<int:number>.png", "panel", panel)
    app.add_url_rule("/view", "view", mended(view_page))
