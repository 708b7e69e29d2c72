// The answer follows the typing; without this file the same page works by its button.
"use strict";
const mend = document.getElementById("mend");
if (mend) mend.focus();
const form = document.getElementById("q");
if (form) {
  document.documentElement.classList.add("live");
  const place = document.getElementById("answer"), brief = document.getElementById("brief");
  let latest = 0, timer, shown = location.search;
  const address = () => {
    const pairs = [...new FormData(form)].filter(([, text]) => text.trim());
    return "?" + new URLSearchParams(pairs.some(([key]) => key !== "far" && key !== "high") ? pairs : [["distance", ""], ...pairs]);
  };
  const press = () => {
    for (const button of form.querySelectorAll("button[aria-pressed]")) {
      const [[key, text]] = new URLSearchParams(button.value);
      button.setAttribute("aria-pressed", form.elements[key].value === text);
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
      const unfolded = new Set([...place.querySelectorAll("[open] > summary")].map((one) => one.textContent));
      place.innerHTML = text;
      for (const one of place.querySelectorAll("summary")) one.parentElement.open = unfolded.has(one.textContent);
      const said = document.getElementById("said");
      document.title = said.dataset.title;
      brief.textContent = said.dataset.brief;
      if (mend) mend.remove();
      for (const wrong of form.querySelectorAll(".wrong")) wrong.remove();
      for (const bad of form.querySelectorAll("[aria-invalid]")) bad.removeAttribute("aria-invalid");
      history[keep ? "pushState" : "replaceState"](null, "", url);
      shown = location.search;
    } else if (reply.status === 422) {
      brief.textContent = "Not yet a question that can be answered; the answer is for what stood before.";
    }
    place.classList.toggle("old", !reply.ok);
  };
  form.addEventListener("input", (event) => {
    press();
    clearTimeout(timer);
    const tapped = event.target.matches("select, [type=radio]");
    timer = setTimeout(() => ask(tapped), tapped ? 0 : 300);
  });
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button[aria-pressed]");
    if (!button) return;
    event.preventDefault();
    const [[key, text]] = new URLSearchParams(button.value);
    form.elements[key].value = text;
    press();
    ask(true);
  });
  addEventListener("popstate", () => { if (location.search !== shown) location.reload(); });
}
