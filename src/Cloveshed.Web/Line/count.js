// A sizer's file on its way: how much of it is sent, then how much of it is read. Without this script the form sends it all the same, and the
// page of its reading loads itself again.
const form = document.querySelector(".count-form");
const sending = document.getElementById("sending");
const job = document.getElementById("count-job");

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

if (job) {
  const said = document.getElementById("count-said"), done = document.getElementById("count-done");
  const look = async () => {
    try {
      const answer = await fetch(job.dataset.progress);
      if (!answer.ok) throw new Error(String(answer.status));
      const now = await answer.json();
      if (now.ended) { location.reload(); return; }
      if (said.textContent !== now.said) said.textContent = now.said;
      done.value = now.done;
      setTimeout(look, 400);
    } catch {
      setTimeout(look, 3000);
    }
  };
  setTimeout(look, 200);
}
