/* A stopwatch for the steps that may have one: off until it is started, with no target and no comparison.
   What it took stays on this device until somebody saves it as a file. */
(function () {
  const byId = (id) => document.getElementById(id);
  const main = document.querySelector("main");
  const who = byId("_times-who");
  if (!who) return;

  const INITIALS = /^[\p{L}\p{N}][\p{L}\p{N}_.-]{0,11}$/u;
  let job = "";
  let rows = [];
  let clock = null; /* the step that is timed: its box, when it began, minutes so far, and since when it runs */

  /* ---- what is kept, by job as the ticks are ---- */

  function place() {
    return JSON.stringify(["procbuilder times", job, main.dataset.procedure, main.dataset.revision]);
  }

  function kept() {
    try {
      const found = JSON.parse(localStorage.getItem(place()));
      return job && Array.isArray(found) ? found : [];
    } catch {
      return [];
    }
  }

  function turnToJob() {
    const carried = job ? [] : rows;
    job = main.dataset.job || "";
    rows = [...kept(), ...carried];
    keep();
  }

  function keep() {
    try {
      if (job) localStorage.setItem(place(), JSON.stringify(rows));
    } catch {
      /* nothing can be kept here: the times live as long as the page */
    }
    tell();
  }

  function tell() {
    const count = rows.length === 1 ? "1 time has" : `${rows.length} times have`;
    byId("_times-words").textContent = rows.length ? `${count} been taken.` : "No time has been taken.";
    byId("_times-save").disabled = byId("_times-delete").disabled = !rows.length;
    byId("_times-delete").textContent = "Delete them";
  }

  /* ---- the clock ---- */

  function look(box, state, words) {
    box.querySelector(".watch-start").hidden = state !== "off";
    box.querySelector(".watch-pause").hidden = state === "off";
    box.querySelector(".watch-done").hidden = state === "off";
    box.querySelector(".watch-pause").textContent = state === "still" ? "Go on" : "Pause";
    box.querySelector(".watch-words").textContent = words;
  }

  function start(box) {
    if (clock) look(clock.box, "off", "Stopped: another step was timed. Its time was not kept.");
    clock = { box, begun: new Date(), spent: 0, since: performance.now() };
    look(box, "runs", "The stopwatch runs.");
  }

  function stand(words) {
    if (!clock || clock.since === null) return;
    clock.spent += performance.now() - clock.since;
    clock.since = null;
    look(clock.box, "still", words);
  }

  function pause() {
    if (clock.since !== null) return stand("The time stands still.");
    clock.since = performance.now();
    look(clock.box, "runs", "The stopwatch runs.");
  }

  function interrupted() {
    stand("Interrupted: the time stands still. Check the last step again before you go on.");
  }

  function done() {
    stand("");
    const minutes = Math.max(0.01, Math.round(clock.spent / 600) / 100);
    rows.push({ when: local(clock.begun), step: clock.box.dataset.step, minutes });
    look(clock.box, "off", `${minutes} min kept.`);
    clock = null;
    keep();
  }

  function local(date) {
    const two = (number) => String(number).padStart(2, "0");
    const day = [date.getFullYear(), two(date.getMonth() + 1), two(date.getDate())].join("-");
    return `${day}T${two(date.getHours())}:${two(date.getMinutes())}`;
  }

  /* ---- out of the device only as a file, by hand ---- */

  function save() {
    if (!INITIALS.test(who.value.trim())) {
      byId("_times-words").textContent = "Write initials or a code of up to 12 signs first.";
      who.focus();
      return;
    }
    const { procedure, revision } = main.dataset;
    const head = JSON.stringify({ format: "procbuilder times 1", procedure, revision, rows: [] }).slice(0, -2);
    const lines = rows.map((row) => "  " + JSON.stringify({ who: who.value.trim(), ...row }));
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([`${head}\n${lines.join(",\n")}\n]}\n`], { type: "application/json" }));
    link.download = `times-${procedure.replace(/[^\p{L}\p{N}-]+/gu, "-")}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }

  function forget(button) {
    if (button.textContent === "Delete them") {
      button.textContent = "Press again to delete them";
      return;
    }
    rows = [];
    keep();
  }

  for (const box of document.querySelectorAll(".watch")) {
    box.querySelector(".watch-start").addEventListener("click", () => start(box));
    box.querySelector(".watch-pause").addEventListener("click", pause);
    box.querySelector(".watch-done").addEventListener("click", done);
  }
  byId("_times-save").addEventListener("click", save);
  byId("_times-delete").addEventListener("click", (event) => forget(event.target));
  document.addEventListener("procbuilder-job", turnToJob);
  document.addEventListener("visibilitychange", () => document.hidden && interrupted());
  window.addEventListener("pagehide", interrupted);
  window.addEventListener("hashchange", interrupted);
  tell();
})();
