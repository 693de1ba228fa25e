// The season board: a run or lot that is touched explains itself at once, without loading the page. The server gives the same page to
// those who follow the link; here only its side is asked for. Arrow keys walk through the runs.
const board = document.getElementById("board");
const part = board.dataset.part;
const narrow = matchMedia("(max-width: 1000px)");
let asking = null;

const links = () => [...board.querySelectorAll("a.to-run")];

/** Marks what is chosen, on the board and in the list. */
function mark(key) {
  for (const link of document.querySelectorAll("#board a[aria-current], .week-runs a[aria-current]")) link.removeAttribute("aria-current");
  for (const link of board.querySelectorAll("a[data-of-chosen]")) link.removeAttribute("data-of-chosen");
  if (!key) return;
  for (const link of board.querySelectorAll("a[data-key]")) if (link.dataset.key === key) link.setAttribute("aria-current", "true");
  for (const link of document.querySelectorAll(".week-runs a[data-choose]")) if (link.dataset.choose === key) link.setAttribute("aria-current", "true");
}

const keyOf = url => url.searchParams.get("run") ?? url.searchParams.get("lot");

// A run in another week: where a hand drags it along its line, or moves it with Shift and the arrow keys. A finger holds it until it lifts, so that
// a swipe still scrolls. Nothing is held until the form at the side is sent.
const weeks = Number(board.dataset.weeks), firstWeek = Number(board.dataset.from);
const monday = week => new Date(Date.parse(board.dataset.first) + week * 7 * 864e5).toISOString().slice(0, 10);
const weekOf = day => Math.round((Date.parse(day) - Date.parse(board.dataset.first)) / (7 * 864e5));
const block = key => [...board.querySelectorAll("a.to-run")].find(link => link.dataset.key === key && link.querySelector("rect"))?.querySelector("rect");
const step0 = rect => rect.ownerSVGElement.viewBox.baseVal.width / weeks;
const ownWeek = rect => Math.floor((Number(rect.getAttribute("x")) + Number(rect.getAttribute("width")) / 2) / step0(rect));

function ghost(rect, week) {
  board.querySelectorAll(".ghost").forEach(old => old.remove());
  if (!rect || week === null || week === ownWeek(rect)) return;
  const svg = rect.ownerSVGElement, step = step0(rect), make = name => document.createElementNS("http://www.w3.org/2000/svg", name);
  const mark = make("rect"), text = make("text");
  const y = Number(rect.getAttribute("y")), x = week * step + 1;
  for (const [name, value] of Object.entries({ class: "ghost", x, y: y - 2, width: step - 2, height: Number(rect.getAttribute("height")) + 4 })) mark.setAttribute(name, value);
  const day = new Date(monday(week) + "T00:00:00Z").toLocaleDateString(board.dataset.lang, { day: "numeric", month: "short", timeZone: "UTC" });
  const late = x > weeks * step - 150;
  for (const [name, value] of Object.entries({ class: "ghost ghost-word", x: late ? x - 6 : x + step + 4, y: y + 16, "text-anchor": late ? "end" : "start" })) text.setAttribute(name, value);
  text.textContent = board.dataset.moved.replace("§", day);
  svg.append(mark, text);
}

/** The chosen run's address with a week to hold it in. */
function moved(key, week) {
  const rect = block(key);
  if (!rect) return;
  const url = new URL(rect.closest("a").getAttribute("href"), location.href);
  if (week !== ownWeek(rect)) url.searchParams.set("to", monday(week));
  ghost(rect, week);
  show(url, true);
}

let held = null, dropped = 0;
const longPress = 350, wander = 8, edge = 40;

function lift() {
  if (!held) return;
  held.lifted = true;
  board.classList.add("moving");
  held.rect.classList.add("lifted");
  navigator.vibrate?.(15);
  requestAnimationFrame(roll);
}

/** What is held goes to the week under the hand. */
function follow() {
  const svg = held.rect.ownerSVGElement, box = svg.getBoundingClientRect();
  const week = Math.max(firstWeek, Math.min(weeks - 1, Math.floor((held.at - box.left) * weeks / box.width)));
  if (week === held.week) return;
  held.week = week;
  ghost(held.rect, week);
}

/** Held at the edge of a board that is wider than its window, what is beyond comes in. */
function roll() {
  if (!held?.lifted) return;
  const view = held.rect.closest(".picture-box"), right = view.getBoundingClientRect().right, left = view.querySelector(".picture-names")?.getBoundingClientRect().right ?? 0;
  const by = held.at > Math.min(right, innerWidth) - edge ? 7 : held.at < left + edge ? -7 : 0;
  const before = view.scrollLeft;
  view.scrollLeft += by;
  if (view.scrollLeft !== before && held.week !== null) follow();
  requestAnimationFrame(roll);
}

function letGo() {
  clearTimeout(held.waits);
  held.rect.classList.remove("lifted");
  board.classList.remove("moving");
  held = null;
}

board.addEventListener("dragstart", event => event.preventDefault());
board.addEventListener("pointerdown", event => {
  const rect = event.target.closest?.("a.to-run rect");
  // A second finger is no drag.
  if (held) letGo();
  if (!rect || event.button !== 0 || !event.isPrimary || rect.classList.contains("of-sorted")) return;
  held = { rect, key: rect.closest("a").dataset.key, touch: event.pointerType === "touch", x: event.clientX, y: event.clientY, at: event.clientX, week: null, lifted: false };
  if (held.touch) held.waits = setTimeout(lift, longPress);
});
addEventListener("pointermove", event => {
  if (!held) return;
  held.at = event.clientX;
  const gone = Math.hypot(event.clientX - held.x, event.clientY - held.y);
  if (!held.lifted && held.touch) {
    if (gone > wander) letGo();
    return;
  }
  if (held.week === null && Math.abs(event.clientX - held.x) < 6) return;
  if (!held.lifted) lift();
  follow();
});
// The browser takes a finger that scrolls for itself, unless what it holds has lifted.
addEventListener("touchmove", event => { if (held?.lifted && event.cancelable) event.preventDefault(); }, { passive: false });
addEventListener("pointercancel", () => { if (held) { letGo(); ghost(null, null); } });
board.addEventListener("contextmenu", event => { if (held?.touch) event.preventDefault(); });
addEventListener("pointerup", () => {
  if (!held) return;
  const { key, week, lifted } = held;
  letGo();
  if (lifted) dropped = performance.now();
  if (week === null) return;
  dropped = performance.now();
  moved(key, week);
});
addEventListener("keydown", event => {
  if (event.key !== "Escape" || !held) return;
  letGo();
  ghost(null, null);
});

async function show(url, remember) {
  asking?.abort();
  const asked = asking = new AbortController();
  mark(keyOf(url));
  try {
    const answer = await fetch(url, { headers: { [part]: "side" }, signal: asked.signal });
    if (!answer.ok) throw new Error(String(answer.status));
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const side = page.getElementById("side");
    if (!side) throw new Error("no side");
    document.getElementById("side").replaceWith(side);
    // A lot's runs are marked with it.
    const runs = new Set([...side.querySelectorAll(".lot-runs a")].map(link => new URL(link.href).searchParams.get("run")));
    for (const link of board.querySelectorAll("a.to-run")) link.toggleAttribute("data-of-chosen", runs.has(link.dataset.key));
    if (remember) history.pushState(null, "", url);
    ghost(block(url.searchParams.get("run")), url.searchParams.has("to") ? weekOf(url.searchParams.get("to")) : null);
    if (url.searchParams.has("to")) side.querySelector("[data-move-hold]")?.scrollIntoView({ block: "nearest" });
    if (narrow.matches) side.scrollIntoView({ block: "start" });
  } catch (problem) {
    // What cannot be fetched is loaded as a page, which says what is wrong.
    if (problem.name !== "AbortError") location.href = url.href;
  }
}

document.addEventListener("click", event => {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
  const link = event.target.closest("#board a, .week-runs a[data-choose], #side .chosen a, .hold-list a");
  if (!link) return;
  // The click that ends a drag is not one.
  if (performance.now() - dropped < 250 && link.closest("#board")) {
    event.preventDefault();
    return;
  }
  const address = link.getAttribute("href") ?? "";
  const url = new URL(address, location.href);
  if (url.pathname !== location.pathname || keyOf(url) === null) return;
  event.preventDefault();
  show(url, true);
});

addEventListener("popstate", () => show(new URL(location.href), false));

const keys = document.querySelector(".board-keys");
if (keys) keys.hidden = false;

/** Runs by where they are drawn: in time along a line, and from line to line at the same time. */
function step(key) {
  const all = links().filter(link => link.querySelector("rect"));
  if (all.length === 0) return null;
  const box = link => link.querySelector("rect").getBBox();
  const places = all.map(link => ({ link, ...(({ x, y, width }) => ({ x: x + width / 2, y }))(box(link)) }));
  const now = places.find(one => one.link.hasAttribute("aria-current"));
  if (!now) return places.reduce((first, one) => one.x < first.x || (one.x === first.x && one.y < first.y) ? one : first).link;
  const along = key === "ArrowLeft" || key === "ArrowRight", sign = key === "ArrowRight" || key === "ArrowDown" ? 1 : -1;
  const ahead = places.filter(one => along ? one.y === now.y && sign * (one.x - now.x) > 0.01 : sign * (one.y - now.y) > 0.01);
  const far = one => along ? Math.abs(one.x - now.x) : 1e4 * Math.abs(one.y - now.y) + Math.abs(one.x - now.x);
  return ahead.length === 0 ? null : ahead.reduce((near, one) => far(one) < far(near) ? one : near).link;
}

board.addEventListener("keydown", event => {
  if (event.key === "Escape" && keyOf(new URL(location.href)) !== null) {
    const url = new URL(location.href);
    url.searchParams.delete("run");
    url.searchParams.delete("lot");
    url.searchParams.delete("to");
    url.hash = "";
    show(url, true);
    return;
  }
  const here = new URL(location.href), key = here.searchParams.get("run");
  if (event.key === "Enter" && key && here.searchParams.has("to")) {
    event.preventDefault();
    document.querySelector("#side [data-move-hold]")?.focus();
    return;
  }
  if (!["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"].includes(event.key)) return;
  if (event.shiftKey) {
    const rect = key && block(key);
    if (!rect || rect.classList.contains("of-sorted") || event.key === "ArrowUp" || event.key === "ArrowDown") return;
    event.preventDefault();
    const week = (here.searchParams.has("to") ? weekOf(here.searchParams.get("to")) : ownWeek(rect)) + (event.key === "ArrowRight" ? 1 : -1);
    if (week >= firstWeek && week < weeks) moved(key, week);
    return;
  }
  const link = step(event.key);
  event.preventDefault();
  if (!link) return;
  show(new URL(link.getAttribute("href"), location.href), true);
  link.querySelector("rect").scrollIntoView?.({ block: "nearest", inline: "nearest" });
});

// A page that was opened with a week to move to shows it.
{
  const here = new URL(location.href);
  if (here.searchParams.has("to")) ghost(block(here.searchParams.get("run")), weekOf(here.searchParams.get("to")));
}
