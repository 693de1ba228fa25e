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
    if (narrow.matches) side.scrollIntoView({ block: "start" });
  } catch (problem) {
    // What cannot be fetched is loaded as a page, which says what is wrong.
    if (problem.name !== "AbortError") location.href = url.href;
  }
}

document.addEventListener("click", event => {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
  const link = event.target.closest("#board a, .week-runs a[data-choose], #side .chosen a, .hold-list a");
  const address = link && (link.getAttribute("href") ?? "");
  if (!link) return;
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
    url.hash = "";
    show(url, true);
    return;
  }
  if (!["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"].includes(event.key)) return;
  const link = step(event.key);
  event.preventDefault();
  if (!link) return;
  show(new URL(link.getAttribute("href"), location.href), true);
  link.querySelector("rect").scrollIntoView?.({ block: "nearest", inline: "nearest" });
});
