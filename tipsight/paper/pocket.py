"""The pocket file: one page for a phone without a network, every answer of this float worked out."""

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Executor
from functools import partial
from html import escape

from tipsight import tables
from tipsight.inputs.case import Case
from tipsight.inputs.options import as_line
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.output import names
from tipsight.paper.cells import RIPPLES, SKIES, SUNLESS, WATERS, YARDS, Cell, column
from tipsight.sight import grades
from tipsight.units import YARD_M

Progress = Callable[[int, int], None]
Key = tuple[str, str, int, str]
"""Sky, ripple, distance in yards, water."""

_POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:"
)
_STYLE = """
:root{color-scheme:light dark;--ink:#111;--paper:#fff;--mild:#e8e8e8}
@media(prefers-color-scheme:dark){:root{--ink:#f4f4f4;--paper:#111;--mild:#333}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:40rem;padding:.6rem;font:1.125rem/1.5 sans-serif;color:var(--ink);
background:var(--paper)}
h1{font-size:1.3rem;margin:.2rem 0}h2{font-size:1.15rem;margin:1rem 0 .3rem}p{margin:.4rem 0}
form,#now{display:none}.live form,.live #now{display:block}
fieldset{border:0;margin:0 0 .3rem;padding:0}legend{padding:0;font-weight:bold}
.row{display:flex;flex-wrap:wrap;gap:.25rem}
input{position:absolute;opacity:0;width:2.75rem;height:2.75rem;margin:0;pointer-events:none}
.row label{position:relative;display:inline-flex}
.row span{display:inline-flex;align-items:center;justify-content:center;min-width:2.75rem;
min-height:2.75rem;padding:.1rem .5rem;border:1px solid var(--ink);border-radius:.3rem}
input:checked+span{background:var(--ink);color:var(--paper);font-weight:bold;text-decoration:underline}
input:focus-visible+span{outline:4px solid var(--ink);outline-offset:2px}
#now{position:sticky;top:0;border:3px solid var(--ink);background:var(--paper);padding:.4rem .6rem;
margin:.3rem 0;z-index:1}#now b{font-size:1.5rem;display:block}#now i{font-style:normal;display:block}
.wide{overflow-x:auto;margin:.5rem 0}table{border-collapse:collapse;font-size:1rem;width:100%}
caption{text-align:left;font-weight:bold}th,td{border:1px solid var(--ink);padding:.2rem .35rem;
text-align:left;vertical-align:top}th{background:var(--mild)}td b,td i{display:block}td i{font-style:normal}
textarea{width:100%;font:1rem/1.4 monospace;color:var(--ink);background:var(--paper);
border:1px solid var(--ink);overflow-wrap:anywhere}
button{font:inherit;min-height:2.75rem;padding:.1rem .8rem;color:var(--ink);background:var(--mild);
border:1px solid var(--ink);border-radius:.3rem}
summary{min-height:2.75rem;padding:.6rem 0;font-weight:bold;cursor:pointer}
"""
_SCRIPT = """
const root=document.documentElement,form=document.querySelector('form'),now=document.querySelector('#now');
const line=document.querySelector('#line');
root.classList.add('live');
function tell(){
 const at=name=>+form.elements[name].value;
 const table=document.getElementById('t'+at('sky')+'-'+at('looks'));
 now.innerHTML=table.tBodies[0].rows[at('yards')].cells[at('water')+1].innerHTML;
 const said=name=>[...form.elements[name]].find(each=>each.checked).nextElementSibling.textContent;
 const far="='"+said('yards')+" yd'",sky=said('sky'),day=new Date(),two=x=>String(x).padStart(2,'0');
 line.value=[line.dataset.told,line.dataset.sunless.split(';').includes(sky)?'':line.dataset.sunny,
  '--distance'+far,"--behind='"+said('water')+"'","--looks='"+said('looks')+"'","--sky='"+sky+"'",
  '--'+said('saw').replace(' ','-')+far,
  '--date='+[day.getFullYear(),two(day.getMonth()+1),two(day.getDate())].join('-')].filter(Boolean).join(' ');
}
document.querySelector('button').onclick=async event=>{
 line.select();
 try{await navigator.clipboard.writeText(line.value)}catch(refused){document.execCommand('copy')}
 event.target.textContent='Copied';
};
const names=['yards','water','looks','sky'];
const taken=new URLSearchParams(location.hash.slice(1));
for(const name of names){
 const one=[...form.elements[name]].find(each=>each.nextElementSibling.textContent===taken.get(name));
 if(one)one.checked=true;
}
function keep(){
 const said=new URLSearchParams();
 for(const name of names){
  const one=[...form.elements[name]].find(each=>each.checked);
  said.set(name,one.nextElementSibling.textContent);
 }
 try{history.replaceState(null,'','#'+said)}catch(refused){location.hash=said}
}
form.addEventListener('change',()=>{tell();keep()});tell();
document.querySelectorAll('details').forEach(one=>{one.open=false});
"""


def cells(
    question: Question,
    progress: Progress | None = None,
    yards: Sequence[int] = YARDS,
    waters: Sequence[str] = WATERS,
    ripples: Sequence[str] = RIPPLES,
    skies: Sequence[str] = SKIES,
    executor: Executor | None = None,
) -> dict[Key, Cell]:
    """Return every cell of the file, by sky, ripple, distance and water that can be tapped.

    An executor works on several waters side by side; own tables go with them.
    """
    columns = [(s, r, w) for s in skies for r in ripples for w in waters]
    work = partial(_column, tables.in_use(), question, tuple(yards))
    done = map(work, columns) if executor is None else executor.map(work, columns)
    found: dict[Key, Cell] = {}
    for (sky, ripple, water), each in zip(columns, done, strict=True):
        found |= {(sky, ripple, yard, water): one for yard, one in each.items()}
        if progress:
            progress(len(found), len(columns) * len(yards))
    return {(s, r, y, w): found[s, r, y, w] for s, r, w in columns for y in yards}


def _column(
    own: tables.Tables | None,
    question: Question,
    yards: tuple[int, ...],
    at: tuple[str, str, str],
) -> dict[int, Cell]:
    sky, ripple, water = at
    with tables.using(own):
        return column(question, yards, water, ripple, sky)


def _choices(title: str, name: str, said: Sequence[str], chosen: int) -> str:
    taps = "".join(
        f'<label><input type="radio" name="{name}" value="{i}"{" checked" if i == chosen else ""}>'
        f"<span>{escape(one)}</span></label>"
        for i, one in enumerate(said)
    )
    return f'<fieldset><legend>{title}</legend><div class="row">{taps}</div></fieldset>'


def _cell(one: Cell, come_in_to: int | None) -> str:
    shot = f"{escape(one.shot)} " if one.shot else ""
    nearer = "" if come_in_to is None else f"; come in to {come_in_to} yd"
    return f"<td><b>{escape(one.show)}</b>{shot}<i>{escape(one.grade)}{nearer}</i></td>"


def come_in_to(yard: int, column: Mapping[int, Cell]) -> int | None:
    """Return the farthest distance of a column below one at which the tip is kept in view.

    None where it is at least seen at the one asked, or where no nearer one will do.
    """
    order = [word for word, _ in grades.limits()]
    kept = grades.grade(grades.wanted()[1])
    if column[yard].grade != order[0]:
        return None
    nearer = [y for y in column if y < yard]
    enough = [y for y in nearer if order.index(column[y].grade) >= order.index(kept)]
    return max(enough, default=None)


def _table(where: str, title: str, rows: dict[int, list[Cell]], waters: Sequence[str]) -> str:
    head = "".join(f'<th scope="col">{escape(water)}</th>' for water in waters)
    columns = [{yard: row[i] for yard, row in rows.items()} for i in range(len(waters))]
    body = "".join(
        f'<tr><th scope="row">{yard} yd</th>'
        f"{''.join(_cell(one[yard], come_in_to(yard, one)) for one in columns)}</tr>"
        for yard in rows
    )
    return (
        f'<div class="wide" tabindex="0" role="region" aria-label="{escape(title)}">'
        f'<table id="{where}"><caption>{escape(title)}</caption><thead><tr><td></td>{head}</tr></thead>'
        f"<tbody>{body}</tbody></table></div>"
    )


def _note(question: Question) -> str:
    """Return where the line stands that keeps a note of the shown swim, when it is typed in later."""
    asked = ("distance", "behind", "looks", "sky", "sun_out")
    rest = {key: value for key, value in question.told().items() if key not in asked}
    sunny = {"sun_out": question.sun_out} if question.sun_out is not None else {}
    told = f"tipsight note {as_line(rest)}".strip()
    return (
        "<details open><summary>Where did it go? A line to type in later</summary>"
        f"{_choices('At those yards the tip', 'saw', ('went', 'followed', 'not seen'), 0)}"
        '<p><label for="line">It is of the tip as it is, and of today; it makes the answers learn your '
        "eyes.</label></p>"
        f'<textarea id="line" rows="6" readonly data-told="{escape(told)}" '
        f'data-sunny="{escape(as_line(sunny))}" data-sunless="{";".join(SUNLESS)}"></textarea>'
        '<p><button type="button">Copy</button></p></details>'
    )


def _about(case: Case) -> str:
    tip, angler = case.tip, case.angler
    return (
        f"{case.float_.pattern}, {names.stock(tip)}, {names.paint(tip.bands, tip.showing_mm)}, "
        f"as it is {tip.showing_mm:.3g} mm showing; eyes of {angler.age_years:.0f} years, colour "
        f"vision {angler.colour_vision}, {case.place.eye_height_m:.3g} m above the water; "
        f"{case.box.shot_metal} shot"
    )


def page(
    question: Question,
    found: dict[Key, Cell],
) -> str:
    """Return the file for cells that are worked out: HTML that reads as tables without a script."""
    skies, ripples, waters = (
        [str(word) for word in dict.fromkeys(key[k] for key in found)] for k in (0, 1, 3)
    )
    yards = list(dict.fromkeys(key[2] for key in found))
    case = settle(question)
    far = case.place.range_m / YARD_M
    near = min(range(len(yards)), key=lambda i: abs(yards[i] - far))

    def first(options: list[str], told: object) -> int:
        return options.index(str(told)) if told in options else 0

    behind = (
        question.behind[0]
        if isinstance(question.behind, tuple) and question.behind
        else question.behind
    )
    taps = (
        _choices("Yards", "yards", [str(y) for y in yards], near),
        _choices("Water behind the tip", "water", waters, first(waters, behind)),
        _choices("Surface", "looks", ripples, first(ripples, question.looks)),
        _choices("Sky", "sky", skies, first(skies, question.sky)),
    )
    parts = []
    for s, sky in enumerate(skies):
        tables = "".join(
            _table(
                f"t{s}-{r}",
                f"{sky}, surface: {ripple}",
                {yard: [found[sky, ripple, yard, water] for water in waters] for yard in yards},
                waters,
            )
            for r, ripple in enumerate(ripples)
        )
        parts.append(f"<details open><summary>{escape(sky)}</summary>{tables}</details>")
    about = escape(_about(case))
    return (
        '<!doctype html><html lang="en-GB"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width,initial-scale=1">'
        f'<meta http-equiv="Content-Security-Policy" content="{_POLICY}">'
        f'<link rel="icon" href="data:,"><title>What to show: {escape(case.float_.pattern)}</title>'
        f"<style>{_STYLE}</style></head><body><main><h1>What to show: {escape(case.float_.pattern)}</h1>"
        '<section aria-label="By four taps"><div id="now" role="status" aria-label="What to do now"></div>'
        f"<form>{''.join(taps)}{_note(question)}</form></section>"
        f"<p>{about}.</p><p>In each cell: how much of the tip to show and whether to pen it black, shot "
        "on or off from as it is, and how well it is then seen. Computed; your eyes and your water may "
        "differ. Nothing here makes a river safe: it decides.</p>"
        f"<h2>All answers</h2>{''.join(parts)}</main><script>{_SCRIPT}</script></body></html>\n"
    )


def html(
    question: Question, progress: Progress | None = None, executor: Executor | None = None
) -> str:
    """Return the pocket file of a question.

    Parameters
    ----------
    question : Question
        What was told of float, eyes and all else; distance, water behind, surface and sky are
        asked again at every word.
    progress : callable, optional
        Told how many cells are done, and of how many.
    executor : concurrent.futures.Executor, optional
        Works on several waters side by side.

    Returns
    -------
    str
        One HTML file, far under 300 kB, that needs nothing else.

    Raises
    ------
    Mistakes
        With what is to be mended in the question.
    """
    return page(question, cells(question, progress, executor=executor))
