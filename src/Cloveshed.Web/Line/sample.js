// A sample being typed, by hand or by a scale: counts along, says which line holds no bulb, and keeps what was typed on this device until it
// was taken. Without this script the form works all the same.
const field = document.getElementById("bulbs");
const tally = document.getElementById("bulbs-tally");
const keys = document.querySelector(".defect-keys");
const key = "cloveshed-sample-" + field.dataset.lot;

keys.hidden = false;
// What was sent and taken is not kept; what was never sent comes back.
if (document.querySelector(".said.done")) localStorage.removeItem(key);
else if (field.value === "") field.value = localStorage.getItem(key) ?? "";

function count() {
  let bulbs = 0, grams = 0, wrong = 0;
  for (const [at, line] of field.value.split("\n").entries()) {
    const first = line.trim().split(/[\s,;]+/)[0] ?? "";
    if (first === "") continue;
    const g = Number(first.replace(/g$/i, ""));
    if (g > 0 && g <= 5000) { bulbs++; grams += g; }
    else if (wrong === 0) wrong = at + 1;
  }
  const said = field.dataset.tally.replace("{0}", bulbs.toLocaleString("en-US")).replace("{1}", bulbs ? (grams / bulbs).toFixed(1) : "–");
  tally.textContent = bulbs + wrong === 0 ? "" : wrong ? said + " " + field.dataset.wrong.replace("{0}", String(wrong)) : said;
}

field.addEventListener("input", () => {
  localStorage.setItem(key, field.value);
  count();
});

/** A defect is of the bulb weighed last: the last line that says anything. */
keys.addEventListener("click", event => {
  const word = event.target.closest("button")?.dataset.defect;
  if (!word) return;
  const kept = field.value.replace(/\s+$/, "");
  if (kept !== "") {
    field.value = kept + " " + word + "\n";
    field.dispatchEvent(new Event("input"));
  }
  field.focus();
  field.setSelectionRange(field.value.length, field.value.length);
});
count();
