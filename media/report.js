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
  for (const wide of main.querySelectorAll("table, svg.programme")) makeScrollable(wide);
  reachFrames();
  window.scrollTo(window.scrollX, place);
  if (focused >= 0) links()[focused]?.focus({ preventScroll: true });
  editor.setState({ name, scroll: place });
}

/** What is wider than the panel moves sideways within a frame. */
function makeScrollable(wide) {
  const frame = document.createElement("div");
  frame.className = "frame";
  wide.replaceWith(frame);
  frame.append(wide);
}

/** The keyboard reaches the frames that have something to move, so that it can move them. */
function reachFrames() {
  for (const frame of main.querySelectorAll(".frame")) {
    const moves = frame.scrollWidth > frame.clientWidth;
    for (const [name, value] of [
      ["tabindex", "0"],
      ["role", "group"],
      ["aria-label", document.title],
    ]) {
      if (moves) frame.setAttribute(name, value);
      else frame.removeAttribute(name);
    }
  }
}

function follow(event) {
  const link = event.target instanceof Element ? event.target.closest("[data-spot]") : null;
  if (link === null) return;
  event.preventDefault();
  editor.postMessage({ is: "go", spot: Number(link.getAttribute("data-spot")), report: number });
}

window.addEventListener("message", ({ data }) => show(data));
window.addEventListener("resize", reachFrames);
window.addEventListener("scroll", () => editor.setState({ ...editor.getState(), scroll: window.scrollY }));
main.addEventListener("click", follow);
main.addEventListener("keydown", (event) => {
  // A link of HTML follows Enter by itself; those of a drawing do not.
  if (event.key === "Enter" && event.target instanceof SVGElement) follow(event);
});
editor.postMessage({ is: "ready" });
