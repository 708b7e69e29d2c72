// The answer follows the typing; without this file the same page works by its button.
"use strict";
const find = (id) => document.getElementById(id), mend = find("mend"), form = find("q");
if (mend) mend.focus();
if (form) {
	document.documentElement.classList.add("live");
	const place = find("answer"), brief = find("brief");
	let latest = 0, timer, shown = location.search, touched;
	// What the hand is at stays where it is on the screen, whatever changes above it.
	const steady = (change) => {
		const box = touched && touched.getBoundingClientRect();
		const held = box && box.bottom > 0 && box.top < innerHeight ? touched : form;
		const top = held.getBoundingClientRect().top;
		change();
		if (top < innerHeight) scrollBy(0, held.getBoundingClientRect().top - top);
	};
	const address = () => {
		const pairs = [...new FormData(form)].filter(([, text]) => text.trim());
		if (pairs.every(([key]) => key === "far" || key === "high")) pairs.unshift(["distance", ""]);
		return "?" + new URLSearchParams(pairs);
	};
	const press = () => {
		for (const button of form.querySelectorAll(".taps button")) {
			const [[key, text]] = new URLSearchParams(button.value);
			if (form.elements[key].value === text) button.ariaPressed = "true";
			else button.removeAttribute("aria-pressed");
		}
	};
	const ask = async (keep) => {
		clearTimeout(timer);
		const url = address(), mine = ++latest;
		if (url === location.search) return;
		let reply, text;
		try {
			reply = await fetch(url, { headers: { "X-Fragment": "1" } });
			text = await reply.text();
		} catch { return; }
		if (mine !== latest) return;
		if (reply.ok) {
			steady(() => {
				const folds = () => [...place.querySelectorAll("summary")];
				const open = folds().filter((one) => one.parentElement.open).map((one) => one.textContent);
				place.innerHTML = text;
				for (const one of folds()) one.parentElement.open = open.includes(one.textContent);
				if (mend) mend.remove();
				for (const wrong of form.querySelectorAll(".wrong")) wrong.remove();
			});
			const said = find("said").dataset;
			document.title = said.title;
			brief.textContent = said.brief;
			for (const bad of form.querySelectorAll("[aria-invalid]")) bad.removeAttribute("aria-invalid");
			history[keep ? "pushState" : "replaceState"](null, "", url);
			shown = location.search;
		} else if (reply.status === 422) {
			brief.textContent = "Not yet a question that can be answered; the answer is for what stood before.";
		}
		place.classList.toggle("old", !reply.ok);
	};
	form.addEventListener("input", ({ target }) => {
		touched = target;
		press();
		clearTimeout(timer);
		const tapped = target.matches("select, [type=radio]");
		timer = setTimeout(ask, tapped ? 0 : 300, tapped);
	});
	form.addEventListener("click", (event) => {
		const button = event.target.closest(".taps button");
		if (!button) return;
		event.preventDefault();
		touched = button;
		const [[key, text]] = new URLSearchParams(button.value);
		form.elements[key].value = text;
		press();
		ask(true);
	});
	addEventListener("popstate", () => { if (location.search !== shown) location.reload(); });
}
