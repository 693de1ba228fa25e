// <shed-chart>: draws what the JSON in its script tag says, in the page's colours. The same numbers stand in a table beside it,
// so that without this script, or before it, nothing is missing.
//
// In the JSON, a text that begins with "--" is one of the page's colours ("--packing"). "shed" holds what JSON has no word for:
// { "decimals": { "x": 0, "y": 1 }, "units": { "x": " mm", "y": "%" } }.
const still = matchMedia("(prefers-reduced-motion: reduce)");
const dark = matchMedia("(prefers-color-scheme: dark)");

/** Browsers answer in the colour space of the stylesheet; the library mixes colours and knows rgb. */
const pixel = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
function rgb(colour) {
  pixel.clearRect(0, 0, 1, 1);
  pixel.fillStyle = colour;
  pixel.fillRect(0, 0, 1, 1);
  const [r, g, b, a] = pixel.getImageData(0, 0, 1, 1).data;
  return a === 255 ? `rgb(${r},${g},${b})` : `rgba(${r},${g},${b},${(a / 255).toFixed(3)})`;
}

function inColours(value, colour) {
  if (typeof value === "string") return value.startsWith("--") ? colour(value) : value;
  if (Array.isArray(value)) return value.map(item => inColours(item, colour));
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, inColours(item, colour)]));
}

/** Thousands by comma, as both languages of the pages write them; a real minus sign. */
function written(value, decimals, unit) {
  if (typeof value !== "number") return String(value);
  const text = Math.abs(value).toLocaleString("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return (value < 0 && /[1-9]/.test(text) ? "\u2212" : "") + text + unit;
}

/** Words on a mark are in the page's ink. */
function marked(series, label) {
  const marks = ["markLine", "markArea"].filter(mark => series[mark]);
  return { ...series, ...Object.fromEntries(marks.map(mark => [mark, { silent: true, ...series[mark], label: { ...label, ...(series[mark].label ?? {}) } }])) };
}

class ShedChart extends HTMLElement {
  #chart = null;
  #stop = null;

  connectedCallback() {
    this.#stop = new AbortController();
    const signal = this.#stop.signal;
    // The library is large; it is fetched when the picture comes near the window.
    const seen = new IntersectionObserver(entries => {
      if (entries.some(entry => entry.isIntersecting)) {
        seen.disconnect();
        this.#begin(signal);
      }
    }, { rootMargin: "400px" });
    seen.observe(this);
    signal.addEventListener("abort", () => seen.disconnect());
  }

  disconnectedCallback() {
    this.#stop?.abort();
    this.#chart?.dispose();
    this.#chart = null;
  }

  /** Draws again what the JSON now says: for a page whose numbers go on. */
  redraw() {
    this.#chart?.setOption(this.#option());
  }

  async #begin(signal) {
    const { init } = await import(this.dataset.library);
    if (signal.aborted) return;
    const ground = this.querySelector(".chart-ground");
    this.#chart = init(ground, null, { renderer: "svg" });
    const again = () => this.#chart?.setOption(this.#option(), true);
    again();
    this.dataset.drawn = "";
    const sized = new ResizeObserver(() => this.#chart?.resize());
    sized.observe(ground);
    signal.addEventListener("abort", () => sized.disconnect());
    dark.addEventListener("change", again, { signal });
    still.addEventListener("change", again, { signal });
  }

  #option() {
    const said = JSON.parse(this.querySelector("script[type='application/json']").textContent);
    const style = getComputedStyle(this);
    const colour = name => rgb(style.getPropertyValue(name).trim());
    const { shed = {}, ...option } = inColours(said, colour);
    const decimals = shed.decimals ?? {}, units = shed.units ?? {};
    const y = value => written(value, decimals.y ?? 0, units.y ?? "");
    const text = { color: colour("--soft-ink"), fontFamily: style.fontFamily, fontSize: 12.5 };
    const axis = (given, name) => ({
      nameLocation: "middle",
      nameGap: name === "x" ? 30 : 44,
      ...given,
      axisLine: { lineStyle: { color: colour("--rule") } },
      splitLine: { lineStyle: { color: colour("--rule"), opacity: 0.7 }, show: name === "y" },
      nameTextStyle: text,
      axisLabel: { ...text, ...(given?.axisLabel ?? {}), ...(given?.type === "value" ? { formatter: value => written(value, decimals[name] ?? 0, units[name] ?? "") } : {}) },
    });
    const each = (given, name) => Array.isArray(given) ? given.map(one => axis(one, name)) : axis(given, name);
    return {
      animation: !still.matches,
      animationDuration: 250,
      textStyle: { fontFamily: style.fontFamily },
      grid: { left: 8, right: 20, top: 28, bottom: 8, outerBoundsMode: "same", outerBoundsContain: "all" },
      tooltip: { trigger: "axis", backgroundColor: colour("--sheet"), borderColor: colour("--rule"), textStyle: { color: colour("--ink"), fontFamily: style.fontFamily }, valueFormatter: y },
      ...option,
      ...(option.legend ? { legend: { textStyle: text, ...option.legend } } : {}),
      xAxis: each(option.xAxis, "x"),
      yAxis: each(option.yAxis, "y"),
      series: (option.series ?? []).map(series => marked(series, { ...text, color: colour("--ink"), textBorderWidth: 0 })),
    };
  }
}

customElements.define("shed-chart", ShedChart);
