// The wardens' queue by keyboard, and a word when another warden has changed it meanwhile.
const links = [...document.querySelectorAll(".queue th a")];
document.addEventListener("keydown", event => {
  if (event.ctrlKey || event.metaKey || event.altKey || /^(INPUT|TEXTAREA|SELECT)$/.test(document.activeElement?.tagName ?? "")) return;
  const step = { j: 1, k: -1 }[event.key];
  if (!step || links.length === 0) return;
  const at = links.indexOf(document.activeElement);
  links[at < 0 ? (step > 0 ? 0 : links.length - 1) : Math.min(links.length - 1, Math.max(0, at + step))].focus();
  event.preventDefault();
});

const count = document.querySelector(".queue-kinds a")?.textContent;
if (count) setInterval(async () => {
  if (document.hidden || document.getElementById("queue-changed")) return;
  try {
    const answer = await fetch("/queue", { credentials: "same-origin", redirect: "error" });
    if (!answer.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (page.querySelector(".queue-kinds a")?.textContent === count) return;
    const note = Object.assign(document.createElement("p"), { id: "queue-changed", className: "done" });
    note.setAttribute("role", "status");
    note.append("The queue has changed meanwhile. ", Object.assign(document.createElement("a"), { href: location.href, textContent: "Load it again" }));
    document.querySelector("h1").after(note);
  } catch { /* without signal the list stays as it was */ }
}, 30000);
