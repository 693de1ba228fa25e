// The page of a plan that is being made: follows its progress, counts the seconds between two events, and feeds the picture.
// Without this script the page loads itself again every few seconds.
const job = document.getElementById("job");
const at = name => document.getElementById("job-" + name);
const chart = job.querySelector("shed-chart");
const json = chart.querySelector("script[type='application/json']");

let pattern = null, elapsed = 0, told = performance.now();
const seconds = () => {
  if (pattern === null || elapsed === 0) return;
  const now = elapsed + (performance.now() - told) / 1000;
  at("seconds").textContent = pattern.replace("{0}", Math.floor(now).toLocaleString("en-US"));
};
const ticking = setInterval(seconds, 1000);

const stream = new EventSource(job.dataset.progress);
stream.addEventListener("message", event => {
  const said = JSON.parse(event.data);
  if (said.ended) {
    stream.close();
    clearInterval(ticking);
    location.reload();
    return;
  }
  if (at("stage").textContent !== said.stage) at("stage").textContent = said.stage;
  at("stage").classList.toggle("working", said.elapsed > 0);
  for (const figure of ["value", "bound", "gap"]) at(figure).textContent = said[figure];
  [pattern, elapsed, told] = [said.seconds, said.elapsed, performance.now()];
  seconds();
  draw(said.points);
});

/** The first event of a connection brings what the page already shows, or what it missed: points are put in by their seconds. */
function draw(points) {
  if (points.length === 0) return;
  const option = JSON.parse(json.textContent);
  const [bound, value] = option.series;
  const put = (series, second, money) => {
    if (money !== null && (series.data.length === 0 || series.data[series.data.length - 1][0] < second)) series.data.push([second, money]);
  };
  for (const [second, worth, limit] of points) {
    put(bound, second, limit ?? null);
    put(value, second, worth ?? null);
  }
  // Past the time that was asked for it goes on as far as it takes.
  if (elapsed > option.xAxis.max) delete option.xAxis.max;
  json.textContent = JSON.stringify(option);
  chart.redraw?.();
}
