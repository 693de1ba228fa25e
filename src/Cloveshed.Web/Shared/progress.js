// Work that goes on behind a page: how far it is, asked again and again, and the page anew when it has ended. Without this script the page
// loads itself again every few seconds.
const job = document.querySelector(".job[data-progress]");

if (job) {
  const said = job.querySelector(".working"), done = job.querySelector("progress");
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
