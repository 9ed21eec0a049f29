/* One view at a time, by hash: #step-id shows a step, #_study and #_handover their page, anything else the overview.
   Without this script everything reads from top to bottom. */

const overview = byId("_overview");
const steps = all(".step");
const views = all(".view");
const pageTitle = document.title;
let shown = overview;

function viewOfHash() {
  const target = byId(location.hash.slice(1));
  return (target && target.closest(".view")) || overview;
}

function heading(view) {
  return view.querySelector(".where");
}

function command(step) {
  return step.querySelector(".command").textContent;
}

function show(view) {
  shown = view;
  for (const other of views) other.hidden = other !== view;
  live.dataset.view = steps.includes(view) ? "step" : view.id.slice(1);
  document.title = view === overview ? pageTitle : heading(view).textContent + " – " + pageTitle;
  showFoot();
  document.dispatchEvent(new Event("procbuilder-view"));
}

function showFoot() {
  const at = steps.indexOf(shown);
  const next = neighbour(1);
  const open = at < 0 ? 0 : Number(shown.dataset.open);
  const where = at < 0 ? "" : say("at", { number: at + 1, count: steps.length });
  byId("_at").textContent = open ? say("at_open", { where, open }) : where;
  byId("_back").disabled = shown === overview;
  byId("_home").disabled = shown === overview;
  byId("_next").disabled = !next;
  byId("_next-number").textContent = next ? say("next", { number: next.dataset.number }) : say("last");
  byId("_next-command").textContent = next ? command(next) : "";
}

function turnTo(view) {
  show(view);
  window.scrollTo(0, 0);
  heading(view).focus({ preventScroll: true });
}

function go(view) {
  if (!view || view === shown) return;
  if (view !== overview && holdsBack(view)) return;
  if (!byId("_job-form").hidden) beginJob();
  location.hash = view.id;
  turnTo(view);
}

/* The view before or after the one in sight; nothing behind the last step. Study and handover lie beside the way. */
function neighbour(by) {
  const at = steps.indexOf(shown);
  if (at < 0 && shown !== overview) return by < 0 ? overview : placeInJob();
  return at + by < 0 ? overview : steps[at + by];
}

/* ---- keys; a foot pedal sends the page keys ---- */

const KEYS = {
  ArrowRight: () => neighbour(1),
  PageDown: () => neighbour(1),
  ArrowLeft: () => neighbour(-1),
  PageUp: () => neighbour(-1),
  Home: () => overview,
};
const OWN_KEYS = "input:not([type=checkbox]), video";

function onKey(event) {
  const turn = KEYS[event.key];
  if (!turn || event.target.closest(OWN_KEYS)) return;
  if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  go(turn());
}

/* ---- swipe: a quick, level stroke of one finger; everything else scrolls or zooms as ever ---- */

const STROKE = { far: 60, level: 2, quick: 700 };
let stroke = null;

function beginStroke(event) {
  const level = event.pointerType !== "mouse" && !event.target.closest("video, input, .scrolls");
  stroke = level && event.isPrimary ? { x: event.clientX, y: event.clientY, at: event.timeStamp } : null;
}

function endStroke(event) {
  if (!stroke) return;
  const across = event.clientX - stroke.x;
  const level = Math.abs(across) > STROKE.level * Math.abs(event.clientY - stroke.y);
  const quick = event.timeStamp - stroke.at < STROKE.quick;
  stroke = null;
  if (level && quick && Math.abs(across) > STROKE.far) go(neighbour(across < 0 ? 1 : -1));
}

function dropStroke() {
  stroke = null;
}
