// The answer follows the typing; without this file the same page works by its button.
"use strict";
const find = (id) => document.getElementById(id), mend = find("mend"), form = find("q");
if (mend) mend.focus();
if (form) {
	document.documentElement.classList.add("live");
	const place = find("answer"), rest = find("rest"), brief = find("brief"), status = find("change");
	const far = form.elements.distance, drag = document.querySelector("[type=range]");
	if (matchMedia("(min-width:64rem)").matches) for (const one of form.querySelectorAll(".part")) one.open = true;
	let latest = 0, timer, shown = location.search, touched;
	const top = (one) => one.getBoundingClientRect().top;
	const scroller = (one) => {
		const side = one.closest(".side");
		return getComputedStyle(side).overflowY === "auto" ? side : document.scrollingElement;
	};
	// What the hand is at stays where it is on the screen, whatever changes above it.
	const steady = (change) => {
		const box = touched && touched.isConnected && touched.getBoundingClientRect();
		const held = box && box.bottom > 0 && box.top < innerHeight ? touched : form;
		const before = top(held);
		place.style.minHeight = form.style.paddingTop = "";
		change();
		if (before >= innerHeight) return;
		scroller(held).scrollTop += Math.ceil(top(held) - before - 0.4);  // in whole pixels; the rest is padded
		const short = before - top(held);
		if (short < 0.05 || held === form) return;
		if (held.closest(".side").contains(place)) place.style.minHeight = `${place.getBoundingClientRect().height + short}px`;
		else form.style.paddingTop = `${short}px`;
	};
	const address = () => {
		const pairs = [...new FormData(form)].filter(([, text]) => text.trim());
		if (pairs.every(([key]) => ["far", "high", "beside", "who", "water"].includes(key))) pairs.unshift(["distance", ""]);
		return "?" + new URLSearchParams(pairs);
	};
	const value = (key) => form.elements[key].value;
	const press = () => {
		for (const button of document.querySelectorAll("[aria-pressed]")) {
			const [[key]] = new URLSearchParams(button.value);
			button.ariaPressed = String(value(key) === button.dataset.word);
		}
		const told = parseFloat(far.value);
		if (drag && told && document.activeElement !== drag) drag.value = told;
	};
	const unhelp = () => {
		for (const wrong of document.querySelectorAll(".wrong")) wrong.remove();
		for (const bad of document.querySelectorAll("[aria-invalid]")) {
			bad.removeAttribute("aria-invalid");
			const ids = (bad.getAttribute("aria-describedby") || "").split(" ");
			const kept = ids.filter((id) => id && find(id)).join(" ");
			if (kept) bad.setAttribute("aria-describedby", kept); else bad.removeAttribute("aria-describedby");
		}
	};
	// What is half typed gets its help at its own field.
	const help = (text) => {
		unhelp();
		const said = [];
		for (const { dataset } of new DOMParser().parseFromString(text, "text/html").querySelectorAll("[data-item]")) {
			said.push(dataset.says);
			let field = form.elements[dataset.item];
			if (field instanceof RadioNodeList) field = field[0];
			if (!field) continue;
			const note = document.createElement("p");
			note.className = "wrong";
			note.id = `${dataset.item}-m`;
			note.textContent = dataset.says;
			(field.closest("fieldset, form div, .far") || field.parentElement).after(note);
			field.setAttribute("aria-invalid", "true");
			const ids = [field.getAttribute("aria-describedby"), note.id].filter(Boolean);
			field.setAttribute("aria-describedby", [...new Set(ids.join(" ").split(" "))].join(" "));
		}
		brief.textContent = status.textContent = said.join(" ");
	};
	const show = (text) => {
		const open = [...rest.querySelectorAll("details[open]")].map((one) => one.dataset.fold);
		const got = new DOMParser().parseFromString(text, "text/html");
		place.replaceChildren(got.getElementById("said"));
		rest.replaceChildren(got.getElementById("more"));
		for (const one of rest.querySelectorAll("details")) one.open = open.includes(one.dataset.fold);
	};
	const ask = async (keep) => {
		clearTimeout(timer);
		const url = address(), mine = ++latest;
		if (url === location.search) return;
		let reply, text;
		try {
			reply = await fetch(url, { headers: { "X-Fragment": "1", "X-Before": location.search.slice(1) } });
			text = await reply.text();
		} catch { return; }
		if (mine !== latest) return;
		if (reply.ok) {
			steady(() => {
				show(text);
				if (mend) mend.remove();
				unhelp();
				const said = find("said").dataset;
				document.title = said.title;
				brief.textContent = said.brief;
				status.textContent = said.change;
			});
			shares();
			history[keep ? "pushState" : "replaceState"](null, "", url);
			shown = location.search;
		} else if (reply.status === 422) steady(() => help(text));
		place.classList.toggle("old", !reply.ok);
	};
	const shares = () => {
		const message = find("message"), share = document.querySelector(".share"), copy = document.querySelector(".copy");
		if (!message) return;
		copy.hidden = false;
		share.hidden = !navigator.share;
		const [text, url] = [message.value.replace(/\s*\S+$/, ""), message.value.match(/\S+$/)[0]];
		share.onclick = () => navigator.share({ title: document.title, text, url }).catch(() => {});
		copy.onclick = async () => {
			message.select();
			try { await navigator.clipboard.writeText(message.value); } catch { document.execCommand("copy"); }
			status.textContent = copy.textContent = "Copied";
		};
	};
	document.addEventListener("input", ({ target }) => {
		if (target === drag) far.value = `${drag.value} ${drag.dataset.unit}`;
		else if (target.form !== form) return;
		touched = target;
		press();
		clearTimeout(timer);
		const tapped = target.matches("select, [type=radio]");
		timer = setTimeout(ask, tapped ? 0 : target === drag ? 120 : 300, tapped);
	});
	far.addEventListener("keydown", (event) => {
		if (event.key === "Enter") { event.preventDefault(); touched = far; ask(true); }
	});
	document.addEventListener("click", (event) => {
		const button = event.target.closest("[aria-pressed]");
		if (!button) return;
		event.preventDefault();
		touched = button;
		const [[key]] = new URLSearchParams(button.value);
		form.elements[key].value = button.ariaPressed === "true" ? "" : button.dataset.word;
		press();
		ask(true);
	});
	addEventListener("popstate", () => { if (location.search !== shown) location.reload(); });
	shares();
}
