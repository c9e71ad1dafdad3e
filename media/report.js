// The page of a report: shows what the extension sends, keeps place and focus, and says which link was followed.
const editor = globalThis.acquireVsCodeApi();
const main = document.getElementById("report");
let number = 0;

/** What takes the keyboard, in order. */
function links() {
  return [...main.querySelectorAll("[data-spot]")];
}

function show({ fragment, number: count, name }) {
  const focused = links().indexOf(document.activeElement);
  const isFirst = number === 0;
  const place = isFirst ? (editor.getState()?.scroll ?? 0) : window.scrollY;
  number = count;
  main.innerHTML = fragment;
  main.removeAttribute("aria-busy");
  for (const table of main.querySelectorAll("table")) makeScrollable(table);
  window.scrollTo(window.scrollX, place);
  if (focused >= 0) links()[focused]?.focus({ preventScroll: true });
  editor.setState({ name, scroll: place });
}

/** A table that is wider than the panel moves sideways within a frame, which the keyboard reaches. */
function makeScrollable(table) {
  const frame = document.createElement("div");
  frame.className = "frame";
  table.replaceWith(frame);
  frame.append(table);
}

function follow(event) {
  const link = event.target instanceof Element ? event.target.closest("[data-spot]") : null;
  if (link === null) return;
  event.preventDefault();
  editor.postMessage({ is: "go", spot: Number(link.getAttribute("data-spot")), report: number });
}

window.addEventListener("message", ({ data }) => show(data));
window.addEventListener("scroll", () => editor.setState({ ...editor.getState(), scroll: window.scrollY }));
main.addEventListener("click", follow);
main.addEventListener("keydown", (event) => {
  // A link of HTML follows Enter by itself; those of a drawing do not.
  if (event.key === "Enter" && event.target instanceof SVGElement) follow(event);
});
editor.postMessage({ is: "ready" });
