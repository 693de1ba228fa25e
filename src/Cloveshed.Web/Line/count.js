// A sizer's file on its way: how much of it is sent. Without this script the form sends it all the same.
const form = document.querySelector(".count-form");
const sending = document.getElementById("sending");

form?.addEventListener("submit", event => {
  event.preventDefault();
  const request = new XMLHttpRequest();
  request.open("POST", form.action);
  request.upload.addEventListener("progress", sent => {
    sending.hidden = false;
    sending.textContent = sending.dataset.said.replace("{0}", Math.floor(sent.loaded / sent.total * 100) + "%");
  });
  // The answer leads to the page of its reading; a refusal to this one, which says it.
  request.addEventListener("load", () => { location.href = request.responseURL || location.href; });
  request.addEventListener("error", () => { sending.hidden = true; form.querySelector("button").disabled = false; form.submit(); });
  form.querySelector("button").disabled = true;
  request.send(new FormData(form));
});
