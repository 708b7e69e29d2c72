// True size: an outline is made as long as a bank card; its pixels are kept here and in the address.
"use strict";
{
	const form = document.getElementById("true"), field = form.elements.card, drag = document.getElementById("long");
	const outline = document.querySelector(".outline"), grip = outline.firstElementChild;
	const KEY = "card", RATIO = 85.6 / 53.98;  // ISO/IEC 7810, ID-1
	const held = { get() { try { return localStorage.getItem(KEY); } catch { return null; } },
		set(text) { try { if (text) localStorage.setItem(KEY, text); else localStorage.removeItem(KEY); } catch { /* not kept */ } } };
	const good = (text) => /^\d+$/.test(text) && text >= 100 && text <= 4000;
	const here = new URL(location), kept = held.get();
	// What was measured on this screen counts, not what a link from another one says.
	if (kept && good(kept) && !document.querySelector(".wrong") && here.searchParams.get("card") !== kept) {
		here.searchParams.set("card", kept);
		location.replace(here);
	}
	// A card longer than a phone is wide stands upright.
	const upright = matchMedia("(max-width:48rem)");
	const draw = () => {
		const long = drag.value, short = long / RATIO;
		outline.style.width = `${upright.matches ? short : long}px`;
		outline.style.height = `${upright.matches ? long : short}px`;
	};
	const dragged = () => { field.value = Math.round(drag.value * devicePixelRatio); draw(); };
	const typed = () => { if (good(field.value.trim())) { drag.value = field.value / devicePixelRatio; draw(); } };
	drag.addEventListener("input", dragged);
	field.addEventListener("input", typed);
	upright.addEventListener("change", draw);
	grip.addEventListener("pointerdown", (event) => { grip.setPointerCapture(event.pointerId); event.preventDefault(); });
	grip.addEventListener("pointermove", (event) => {
		if (!grip.hasPointerCapture(event.pointerId)) return;
		const box = outline.getBoundingClientRect();
		drag.value = upright.matches ? event.clientY - box.top : event.clientX - box.left;
		dragged();
	});
	form.addEventListener("submit", () => {
		const text = field.value.trim();
		if (!text || good(text)) held.set(text);
	});
	for (const one of [outline, drag.parentElement]) one.hidden = false;
	drag.value = 324;
	typed();
	draw();
	// A pixel of the picture of true size is one of the screen; the others' words say how large they came out.
	const measure = () => {
		for (const figure of document.querySelectorAll("figure.view")) {
			const small = figure.querySelector(".true img");
			if (!small) continue;
			if (small.naturalWidth) small.style.width = `${small.naturalWidth / devicePixelRatio}px`;
			const large = figure.querySelectorAll(":scope > img");
			for (const [n, said] of figure.querySelectorAll("[data-times]").entries()) {
				const shown = large[n].clientWidth * devicePixelRatio / large[n].getAttribute("width");
				said.textContent = Number((said.dataset.times * shown).toPrecision(2));
			}
		}
	};
	addEventListener("load", measure);
	addEventListener("resize", measure);
}
// The film is drawn behind the page: the still stands until it is there, and nothing is asked for before a tap.
{
	const fold = document.querySelector(".moving"), said = fold.querySelector("[role=status]"), still = fold.querySelector("img");
	const say = (text) => { said.textContent = text; };
	let asking = false;
	const ask = async () => {
		asking = fold.open;
		if (!asking) return;
		try {
			const reply = await fetch(still.dataset.film, { method: "HEAD" });
			if (reply.status === 200) {
				const film = new Image(480, 270);
				film.alt = still.dataset.says;
				film.src = still.dataset.film;
				still.replaceWith(film);
				say("");
				return;
			}
			if (reply.status !== 202 && reply.status !== 503) throw reply.status;
			say(reply.status === 202 ? "The film is being drawn." : "Other films are being drawn first.");
			setTimeout(ask, 2000);
		} catch {
			asking = false;
			say("The film could not be drawn. Fold this and open it again to try once more.");
		}
	};
	fold.addEventListener("toggle", () => { if (fold.open && !asking && still.isConnected) ask(); });
	fold.querySelector(".film").hidden = true;
}
