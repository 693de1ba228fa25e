// Counting bulbs with a thumb: one more, one less, how many in all. Without this script the numbers are typed.
for (const one of document.querySelectorAll(".look [hidden]")) one.hidden = false;
for (const button of document.querySelectorAll(".look [data-step]"))
  button.addEventListener("click", () => {
    const input = document.getElementById(button.dataset.step);
    input.value = Math.max(0, (parseInt(input.value, 10) || 0) + Number(button.dataset.by));
  });
for (const button of document.querySelectorAll(".look [data-set]"))
  button.addEventListener("click", () => { document.getElementById(button.dataset.set).value = button.dataset.to; });
// Who looks is the same for the whole round: this device remembers it.
for (const input of document.querySelectorAll("[data-kept]")) {
  const key = "cloveshed-" + input.dataset.kept;
  input.value ||= localStorage.getItem(key) ?? "";
  input.form.addEventListener("submit", () => localStorage.setItem(key, input.value));
}
