// Work that goes on behind a page: how far it is, asked again and again, and the page anew when it has ended. Without this script the page
// loads itself again every few seconds. Where the page has a form that may be filled in meanwhile (data-ready), what was typed is not swept away: it
// then says that the work is done, and stays.
const job = document.querySelector(".job[data-progress]");

if (job) {
  const said = job.querySelector(".working"), done = job.querySelector("progress");
  let typed = false;
  if (job.dataset.ready) document.addEventListener("input", () => { typed = true; });
  const look = async () => {
    try {
      const answer = await fetch(job.dataset.progress);
      if (!answer.ok) throw new Error(String(answer.status));
      const now = await answer.json();
      if (now.ended && typed) {
        said.textContent = job.dataset.ready;
        said.classList.remove("working");
        done.value = 1;
        job.querySelectorAll("form, .hint").forEach(part => part.remove());
        return;
      }
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
