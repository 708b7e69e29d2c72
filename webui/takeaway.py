"""What can be taken away from an answer: paper at true size, and the view from the bank."""

from collections.abc import Callable
from urllib.parse import parse_qsl, urlencode

from flask import Flask, Response, abort, redirect, render_template, request

from tipsight.advice.answer import Answer
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.learnt import Learnt
from webui.asking import CARD, Asked, card_px
from webui.drawer import Drawer, FullError
from webui.kept import Kept

Key = tuple[str, Learnt]
KEPT, KEPT_BYTES = 8, 8_000_000
"""Pictures that are kept, so that a page and its picture cost one drawing; all of them [bytes]."""

AGAIN_S = 2
"""After how long a page that waits for a picture asks again."""


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


def _view(answer: Answer) -> bytes:
    from tipsight.pictures import view

    return view.png(answer)


def _film(answer: Answer) -> bytes:
    from tipsight.pictures import film

    return film.webp(answer)


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

    def draw_panels(key: tuple[Key, float | None, int]) -> tuple[bytes, ...]:
        from tipsight.pictures import truesize, view

        _, card, water = key
        fine = truesize.of_card(card) if card else None
        return view.drawn(answered()[1], pixels_per_mm=fine, only=water)

    drawer = Drawer(most=KEPT, most_bytes=KEPT_BYTES)
    panels = Kept(
        draw_panels, most=KEPT, most_bytes=KEPT_BYTES, size=lambda drawn: sum(map(len, drawn))
    )

    def behind(make: Callable[[Answer], bytes], mimetype: str) -> Callable[[], Response]:
        """Return a view of a picture that is drawn behind the request, and said to be until it is there."""

        def shown(asked: Asked, answer: Answer) -> Response:
            key = mimetype, asked.key
            try:
                picture = drawer(key, lambda: make(answer))
            except FullError:
                abort(503)
            if picture is not None:
                return Response(picture, mimetype=mimetype)
            page = Response(render_template("drawing.html"), 202)
            page.headers["Refresh"] = page.headers["Retry-After"] = f"{AGAIN_S}"
            return page

        return mended(shown)

    def panel(number: int) -> Response:
        def make(asked: Asked, answer: Answer) -> Response:
            try:
                card = card_px(request.args)
                water, at = divmod(number, 6 if card else 4)
                drawn = panels((asked.key, card, water))
            except Mistakes:
                abort(404)
            if not drawn:
                abort(404)
            return Response(drawn[at], mimetype="image/png")

        return mended(make)()

    def view_page(asked: Asked, answer: Answer) -> Response:
        from tipsight.pictures import legend, truesize
        from tipsight.pictures import panels as panels_of

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
            large=legend.too_large(answer, fine),
            about=truesize.about,
            sized=legend.sized(),
            far=panels_of.FAR_PX,
            heading=legend.heading(answer, asked.units.reader),
            captions=legend.captions(answer),
            care=legend.sun_care(answer),
            here=legend.of_this_water(answer),
            look=legend.how_to_look(answer),
            film=legend.film_described(answer, asked.units.reader),
        )
        return Response(page, 422 if wrong else 200)

    for file, (_, make) in PAPERS.items():
        app.add_url_rule(f"/{file}", file, paper(make))
    app.add_url_rule("/view.png", "picture", behind(_view, "image/png"))
    app.add_url_rule("/view.webp", "moving", behind(_film, "image/webp"))
    app.add_url_rule("/view-<int:number>.png", "panel", panel)
    app.add_url_rule("/view", "view", mended(view_page))
