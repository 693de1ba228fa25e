// A week's order: a run is dragged along its line, or moved by arrow keys, and what comes of it follows at once. The server gives the same part to
// those who follow the links; the order is in the address, so that going back undoes a move.
const part = "X-Part", id = "week-lanes";
let asking = null;

const lanes = () => document.getElementById(id);
const address = order => { const url = new URL(lanes().dataset.path, location.href); url.searchParams.set("order", order); return url; };
const line = bit => [...bit.closest("svg").querySelectorAll(".bit")];

async function show(url, run, remember = true) {
  asking?.abort();
  const asked = asking = new AbortController();
  try {
    const answer = await fetch(url, { headers: { [part]: id }, signal: asked.signal });
    if (!answer.ok) throw new Error(String(answer.status));
    const next = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById(id);
    if (!next) throw new Error("no part");
    lanes().replaceWith(next);
    if (remember) history.pushState(null, "", url);
    if (run) next.querySelector(`.bit[data-run="${CSS.escape(run)}"]`)?.focus();
    ready();
  } catch (problem) {
    // What cannot be fetched is loaded as a page, which says what is wrong.
    if (problem.name !== "AbortError") location.href = url.href ?? url;
  }
}

/** The order with a run at another place of its line. */
function moved(bit, to) {
  const mine = line(bit).map(one => one.dataset.run), from = mine.indexOf(bit.dataset.run);
  if (to < 0 || to >= mine.length || to === from) return null;
  const all = lanes().dataset.order.split(".");
  const slots = mine.map(run => all.indexOf(run)).sort((a, b) => a - b);
  mine.splice(to, 0, mine.splice(from, 1)[0]);
  mine.forEach((run, at) => { all[slots[at]] = run; });
  return all.join(".");
}

function move(bit, to) {
  const order = moved(bit, to);
  if (order) show(address(order), bit.dataset.run);
}

document.addEventListener("keydown", event => {
  const bit = event.target.closest?.(".week-lanes .bit");
  if (!bit || event.altKey || event.ctrlKey || event.metaKey) return;
  const at = line(bit).indexOf(bit);
  const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: line(bit).length - 1 }[event.key];
  if (to === undefined) return;
  event.preventDefault();
  move(bit, to);
});

document.addEventListener("click", event => {
  const link = event.target.closest?.(".week-lanes a[data-move]");
  if (!link || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
  event.preventDefault();
  show(new URL(link.href), link.dataset.move);
});

let held = null;
document.addEventListener("pointerdown", event => {
  const bit = event.target.closest?.(".week-lanes .bit");
  if (!bit || event.button !== 0) return;
  held = { bit, from: event.clientX };
  bit.setPointerCapture(event.pointerId);
  bit.classList.add("held");
});
document.addEventListener("pointermove", event => {
  if (!held) return;
  const box = held.bit.closest("svg").getBoundingClientRect();
  held.bit.setAttribute("transform", `translate(${((event.clientX - held.from) * 1000 / box.width).toFixed(1)} 0)`);
});
document.addEventListener("pointerup", event => {
  if (!held) return;
  const { bit, from } = held;
  held = null;
  bit.classList.remove("held");
  bit.removeAttribute("transform");
  if (Math.abs(event.clientX - from) < 6) return;
  const box = bit.closest("svg").getBoundingClientRect();
  const x = Number(bit.dataset.mid) + (event.clientX - from) * 1000 / box.width;
  move(bit, line(bit).filter(one => one !== bit && Number(one.dataset.mid) < x).length);
});
document.addEventListener("pointercancel", () => { if (held) { held.bit.classList.remove("held"); held.bit.removeAttribute("transform"); held = null; } });

addEventListener("popstate", () => show(new URL(location.href), null, false));

/** While a search runs the part is asked for again; keys are told of only where they work. */
function ready() {
  for (const hint of lanes()?.querySelectorAll(".live-only") ?? []) hint.hidden = false;
  if (lanes()?.querySelector("[data-running]")) setTimeout(() => { if (!held && lanes().querySelector("[data-running]")) show(new URL(location.href), document.activeElement?.dataset?.run, false); }, 1500);
}
if (lanes()) ready();
