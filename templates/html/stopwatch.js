/* A stopwatch for the steps that may have one: off until it is started, with no target and no comparison.
   What it took stays on this device until somebody saves it as a file. */
function prepareStopwatch() {
  const who = byId("_times-who");
  if (!who) return;

  const INITIALS = /^[\p{L}\p{N}][\p{L}\p{N}_.-]{0,11}$/u;
  let timedJob = "";
  let rows = [];
  let clock = null; /* the step that is timed: its box, when it began, minutes so far, and since when it runs */

  /* ---- what is kept, by job as the ticks are ---- */

  function place() {
    return JSON.stringify(["procbuilder times", main.dataset.procedure, main.dataset.revision, timedJob]);
  }

  function kept() {
    const found = timedJob && storage.read(place());
    return Array.isArray(found) ? found : [];
  }

  function turnToJob() {
    const carried = timedJob ? [] : rows;
    timedJob = main.dataset.job || "";
    rows = [...kept(), ...carried];
    keep();
  }

  function keep() {
    if (timedJob) storage.write(place(), rows);
    tell();
  }

  function tell() {
    byId("_times-words").textContent = rows.length ? say("times", { count: rows.length }) : say("no_times");
    byId("_times-save").disabled = byId("_times-delete").disabled = !rows.length;
    byId("_times-delete").textContent = say("times_delete");
  }

  /* ---- the clock ---- */

  function look(box, state, words) {
    box.querySelector(".watch-start").hidden = state !== "off";
    box.querySelector(".watch-pause").hidden = state === "off";
    box.querySelector(".watch-done").hidden = state === "off";
    box.querySelector(".watch-pause").textContent = say(state === "still" ? "watch_go_on" : "watch_pause");
    box.querySelector(".watch-words").textContent = words;
  }

  function start(box) {
    if (clock) look(clock.box, "off", say("watch_other"));
    clock = { box, begun: new Date(), spent: 0, since: performance.now() };
    look(box, "runs", say("watch_runs"));
  }

  function stand(words) {
    if (!clock || clock.since === null) return;
    clock.spent += performance.now() - clock.since;
    clock.since = null;
    look(clock.box, "still", words);
  }

  function pause() {
    if (clock.since !== null) return stand(say("watch_stands"));
    clock.since = performance.now();
    look(clock.box, "runs", say("watch_runs"));
  }

  function interrupted() {
    stand(say("watch_interrupted"));
  }

  function done() {
    stand("");
    const minutes = Math.max(0.01, Math.round(clock.spent / 600) / 100);
    rows.push({ when: local(clock.begun), step: clock.box.dataset.step, minutes });
    look(clock.box, "off", say("watch_kept", { minutes: minutes.toLocaleString(live.lang) }));
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
      byId("_times-words").textContent = say("times_who");
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
    if (!button.dataset.sure) {
      button.dataset.sure = "yes";
      button.textContent = say("times_sure");
      return;
    }
    delete button.dataset.sure;
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
}
