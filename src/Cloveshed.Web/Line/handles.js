// The handles of the size curve and of the drum: a cut or hole is dragged, moved by arrow keys, or typed; what comes of it follows at once. The server answers
// each setting with the same words that it writes the page with. Without this script the form's button does it.
const curve = document.getElementById("size-curve");
const form = document.querySelector("form[data-handles]");
const most = Number(curve.dataset.most);
const [from, to] = [Number(curve.dataset.from), Number(curve.dataset.to)];
const handles = [...curve.querySelectorAll(".cut-handle")];
const cuts = [...form.querySelectorAll("input[data-handle]")];
const uses = [...form.querySelectorAll("select[name=as]")];
const grams = new Intl.NumberFormat("en-US", { minimumFractionDigits: 1, maximumFractionDigits: 1 });
// Weights stand by their logarithm.
const left = g => Math.min(1, Math.max(0, Math.log(Math.max(g, 1e-9) / from) / Math.log(to / from))) * 100;
const under = part => from * (to / from) ** part;
const tenth = g => Math.round(g * 10) / 10;
const cutOf = k => { const typed = cuts[k].value.trim(); return typed !== "" && Number.isFinite(Number(typed)) ? Number(typed) : null; };
const own = k => uses.length === 0 || uses[k].value === "own";

for (const hint of document.querySelectorAll(".live-only")) hint.hidden = false;

/** A cut stays between its neighbours that have boxes of their own. */
function room(k) {
  let low = 0, high = most;
  for (let at = k - 1; at >= 0; at--) if (own(at) && cutOf(at) !== null) { low = cutOf(at); break; }
  for (let at = k + 1; at < cuts.length; at++) if (own(at) && cutOf(at) !== null) { high = cutOf(at); break; }
  return [low, Math.max(low, high)];
}

function place(k) {
  const handle = handles[k], g = cutOf(k);
  handle.hidden = !own(k);
  for (const spot of document.querySelectorAll(`[data-cut="${k}"]`)) spot.textContent = own(k) && g !== null ? grams.format(g) : "–";
  if (g === null) return;
  handle.style.left = left(g) + "%";
  handle.setAttribute("aria-valuenow", String(g));
  handle.setAttribute("aria-valuetext", curve.dataset.gram.replace("{0}", grams.format(g)));
  handle.querySelector(".grip-g").textContent = grams.format(g);
}

function move(k, g) {
  const [low, high] = room(k);
  const next = tenth(Math.min(high, Math.max(low, g)));
  if (next === cutOf(k)) return;
  cuts[k].value = String(next);
  place(k);
  ask();
}

// One question at a time; the newest waits and the ones between are left out.
let asking = false, waiting = false, failed = false;
async function ask() {
  if (asking) { waiting = true; return; }
  asking = true;
  const query = "?" + new URLSearchParams(new FormData(form));
  try {
    const answer = await fetch(curve.dataset.answer + query, { headers: { Accept: "application/json" } });
    if (!answer.ok) throw new Error(String(answer.status));
    show(await answer.json(), query);
    failed = false;
  } catch {
    failed = true;
    form.setAttribute("aria-busy", "true"); // the figures are of an older setting
  }
  asking = false;
  if (waiting) { waiting = false; ask(); }
  else if (failed) setTimeout(() => { if (failed && !asking) ask(); }, 2000);
}

function show(answer, query) {
  form.removeAttribute("aria-busy");
  for (const spot of document.querySelectorAll("[data-out]")) {
    const text = answer.said[spot.dataset.out];
    if (text !== undefined && spot.textContent !== text) spot.textContent = text;
  }
  const names = new Map([...curve.querySelectorAll(".box-name")].map(name => [Number(name.dataset.box), name]));
  for (const name of names.values()) name.hidden = true;
  for (const region of answer.regions) {
    const name = names.get(region.class) ?? named(region.class);
    const start = left(region.fromG);
    name.hidden = false;
    name.style.left = start + "%";
    name.style.width = left(region.toG ?? to) - start + "%";
    name.classList.toggle("off", answer.off.includes(region.class));
  }
  if (answer.picture) curve.querySelector("svg").replaceWith(drawn(answer.picture));
  for (const row of form.querySelectorAll("tr[data-row]")) row.classList.toggle("off", answer.off.includes(Number(row.dataset.row)));
  cuts.forEach((input, k) => {
    if (answer.faults.includes(input.name + "-" + k) || answer.outOfOrder === k) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  });
  document.getElementById("take-best").href = answer.best;
  document.getElementById("setting-sent").value = query;
  history.replaceState(null, "", location.pathname + query);
}

/** The picture anew, named as the one before it. */
function drawn(picture) {
  const svg = document.importNode(new DOMParser().parseFromString(picture, "image/svg+xml").documentElement, true);
  svg.setAttribute("aria-label", curve.querySelector("svg").getAttribute("aria-label"));
  return svg;
}

/** A class that had no box when the page came. */
function named(k) {
  const name = document.createElement("span"), code = document.createElement("b"), share = document.createElement("span");
  name.className = "box-name";
  name.dataset.box = String(k);
  code.textContent = handles[k].querySelector("b")?.textContent ?? "";
  share.dataset.out = "share-" + k;
  name.append(code, " ", share);
  curve.querySelector(".box-names").append(name);
  return name;
}

for (const handle of handles) {
  const k = Number(handle.dataset.class);
  let offset = 0;
  handle.addEventListener("pointerdown", event => {
    if (event.button !== 0) return;
    const box = curve.getBoundingClientRect();
    offset = event.clientX - (box.left + left(cutOf(k) ?? from) / 100 * box.width);
    handle.setPointerCapture(event.pointerId);
    handle.classList.add("held");
    handle.focus({ preventScroll: true });
    event.preventDefault();
  });
  handle.addEventListener("pointermove", event => {
    if (!handle.hasPointerCapture(event.pointerId)) return;
    const box = curve.getBoundingClientRect();
    move(k, under((event.clientX - offset - box.left) / box.width));
  });
  for (const end of ["pointerup", "pointercancel"]) handle.addEventListener(end, () => handle.classList.remove("held"));
  handle.addEventListener("keydown", event => {
    const step = event.shiftKey ? 1 : 0.1, g = cutOf(k) ?? from, [low, high] = room(k);
    const next = { ArrowLeft: g - step, ArrowDown: g - step, ArrowRight: g + step, ArrowUp: g + step, PageDown: g - 1, PageUp: g + 1, Home: low, End: Math.min(high, to) }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    move(k, next);
  });
}

form.addEventListener("input", event => {
  const k = Number(event.target.dataset.class ?? -1);
  if (k >= 0) place(k);
  ask();
});
form.addEventListener("submit", event => {
  event.preventDefault();
  ask();
});
