"use strict";

/* One step at a time, by hash: #step-id shows a step, anything else the overview. Without this script
   the page reads from top to bottom. */
(function () {
  const byId = (id) => document.getElementById(id);
  const all = (selector, within = document) => Array.from(within.querySelectorAll(selector));

  const main = document.querySelector("main");
  const overview = byId("_overview");
  const steps = all(".step");
  const boxes = all(".tick input");
  const pageTitle = document.title;
  let shown = overview;

  /* ---- views ---- */

  function viewOfHash() {
    const target = byId(location.hash.slice(1));
    return (target && target.closest(".view")) || overview;
  }

  function show(view) {
    shown = view;
    for (const other of [overview, ...steps]) other.hidden = other !== view;
    document.documentElement.dataset.view = view === overview ? "overview" : "step";
    const at = steps.indexOf(view);
    byId("_back").disabled = view === overview;
    byId("_home").disabled = view === overview;
    byId("_next").disabled = at === steps.length - 1;
    document.title = at < 0 ? pageTitle : heading(view).textContent + " – " + pageTitle;
    playOnly(view);
  }

  function heading(view) {
    return view.querySelector(".where");
  }

  function turnTo(view) {
    show(view);
    window.scrollTo(0, 0);
    heading(view).focus({ preventScroll: true });
  }

  function go(view) {
    if (!view || view === shown) return;
    if (!byId("_job-form").hidden) beginJob();
    location.hash = view.id;
    turnTo(view);
  }

  function neighbour(by) {
    const at = steps.indexOf(shown) + by;
    return at < 0 ? overview : steps[at];
  }

  /* ---- keys; a foot pedal sends the page keys ---- */

  const KEYS = {
    ArrowRight: () => neighbour(1),
    PageDown: () => neighbour(1),
    ArrowLeft: () => neighbour(-1),
    PageUp: () => neighbour(-1),
    Home: () => overview,
  };

  function onKey(event) {
    const turn = KEYS[event.key];
    const writing = event.target.closest("input[type=text], video");
    if (!turn || writing || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    go(turn());
  }

  /* ---- clips: only the one of the shown step plays; the picture stands where it cannot ---- */

  function playOnly(view) {
    for (const video of all("video")) video.pause();
    const figure = view.querySelector(".with-clip");
    if (figure) display(figure, figure.dataset.shows);
  }

  function display(figure, what) {
    const video = figure.querySelector("video");
    figure.dataset.shows = what;
    figure.querySelector(".swap").textContent = what === "clip" ? "Show the picture" : "Show the clip";
    if (what === "clip") video.play().catch(() => {});
    else video.pause();
  }

  function withoutClip(figure) {
    const swap = figure.querySelector(".swap");
    display(figure, "picture");
    swap.textContent = "The clip cannot be shown here";
    swap.disabled = true;
  }

  function prepareClip(figure) {
    const video = figure.querySelector("video");
    const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    figure.dataset.shows = still ? "picture" : "clip";
    video.poster = video.poster || figure.querySelector("img").src;
    video.addEventListener("error", () => withoutClip(figure));
    figure.querySelector(".swap").addEventListener("click", () => {
      display(figure, figure.dataset.shows === "clip" ? "picture" : "clip");
    });
  }

  /* ---- ticks: a reminder, kept by job, procedure and revision ---- */

  let job = "";

  function store() {
    return JSON.stringify(["procbuilder ticks", job, main.dataset.procedure, main.dataset.revision]);
  }

  function kept() {
    try {
      const ids = JSON.parse(localStorage.getItem(store()));
      return Array.isArray(ids) ? ids : [];
    } catch {
      return [];
    }
  }

  function keep() {
    try {
      localStorage.setItem(store(), JSON.stringify(ticked()));
      return true;
    } catch {
      return false;
    }
  }

  function ticked() {
    return boxes.filter((box) => box.checked).map((box) => box.dataset.step);
  }

  function showTicks() {
    for (const link of all(".step-list a")) {
      const box = boxes.find((one) => "#" + one.dataset.step === link.getAttribute("href"));
      link.querySelector(".done").hidden = !box.checked;
    }
    const open = steps.findIndex((_, at) => !boxes[at].checked);
    const count = `${ticked().length} of ${steps.length} steps ticked`;
    const next = open < 0 ? "" : `; the first without a tick is step ${open + 1}`;
    const where = job ? (keep() ? `Job ${job}.` : `Job ${job}: ticks cannot be kept here.`) : "No job named: ticks are not kept.";
    for (const words of all(".job-words")) words.textContent = where;
    byId("_job-words").textContent = `${where} ${count}${next}.`;
  }

  function beginJob(label = byId("_job-label").value.trim()) {
    const carried = job ? [] : ticked();
    job = label;
    main.dataset.job = job;
    document.dispatchEvent(new Event("procbuilder-job"));
    const done = job ? new Set([...kept(), ...carried]) : new Set(carried);
    for (const box of boxes) box.checked = done.has(box.dataset.step);
    askForJob(false);
    showTicks();
  }

  function askForJob(asking) {
    byId("_job-form").hidden = !asking;
    byId("_job-line").hidden = asking;
  }

  /* ---- step list pictures, taken from the steps, so that each is in the file once ---- */

  function addThumbnail(link) {
    const picture = byId(link.getAttribute("href").slice(1)).querySelector(".pictures img");
    if (!picture) return;
    const small = document.createElement("img");
    small.src = picture.src;
    small.alt = "";
    small.className = "thumbnail";
    link.querySelector(".number").after(small);
  }

  /* ---- start ---- */

  document.documentElement.classList.add("live");
  all(".with-clip").forEach(prepareClip);
  all(".step-list a").forEach(addThumbnail);
  for (const box of boxes) {
    box.checked = false;
    box.addEventListener("change", showTicks);
  }
  byId("_job-form").addEventListener("submit", (event) => {
    event.preventDefault();
    beginJob();
  });
  byId("_job-skip").addEventListener("click", () => beginJob(""));
  byId("_job-change").addEventListener("click", () => {
    askForJob(true);
    byId("_job-label").focus();
  });
  byId("_back").addEventListener("click", () => go(neighbour(-1)));
  byId("_home").addEventListener("click", () => go(overview));
  byId("_next").addEventListener("click", () => go(neighbour(1)));
  window.addEventListener("hashchange", () => turnTo(viewOfHash()));
  document.addEventListener("keydown", onKey);
  if (location.hash) turnTo(viewOfHash());
  else show(overview);
})();
