/* The handover note: where the job stopped, what is open and dangerous there, and what was ticked. */

function makeNote() {
  const at = boxes.findIndex((box) => box.dataset.step === placeInJob().id);
  const done = boxes.map((box) => box.checked);
  const where = done[at] ? steps.slice(at).find((_, after) => !done[at + after]) : steps[at];
  const lines = [...identityLines(), ...(where ? placeLines(where) : [["note_stopped", say("note_end")]])];
  lines.push(["note_done", numbers((at) => done[at])]);
  if (where) lines.push(["note_missed", numbers((at) => !done[at] && at < steps.indexOf(where))]);
  lines.push(["note_holds", holdsPassed(where ? steps.indexOf(where) : steps.length)], ...closingLines());
  byId("_note").replaceChildren(...lines.flatMap(([name, words]) => [element("dt", say(name)), element("dd", words)]));
  byId("_note-words").textContent = "";
}

function identityLines() {
  const state = document.querySelector(".state strong");
  const name = [pageTitle, main.dataset.revision, state && state.textContent].filter(Boolean).join(" · ");
  return [["note_procedure", name], ["note_job", job || say("note_no_job")]];
}

function placeLines(step) {
  const list = (selector) => all(selector, step).map((one) => one.textContent.replace(/\s+/g, " ").trim().replace(/;$/, ""));
  const told = (selector) => list(selector).join("; ") || say("none");
  const own = list(".lead .hazard").map((words) => words);
  const place = say("note_step", { number: step.dataset.number, count: steps.length, command: command(step) });
  return [
    ["note_stopped", `${place}. ${say("note_maybe")}`],
    ["note_open", told(".open-now li")],
    ["note_dangers", [...list(".standing .dangers span"), ...own].join("; ") || say("none")],
    ["note_leave", told(".standing .leave span")],
  ];
}

/* ``1–7, 9``; the numbers of the steps of which something is true. */
function numbers(isSo) {
  const runs = [];
  steps.forEach((_, at) => {
    if (!isSo(at)) return;
    const run = runs[runs.length - 1];
    if (run && run[1] === at) run[1] = at + 1;
    else runs.push([at + 1, at + 1]);
  });
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(", ") || say("none");
}

function holdsPassed(before) {
  const passed = checkers.map((box) => [steps.indexOf(byId(box.dataset.step)), box.querySelector("input").value.trim()]);
  const lines = passed.filter(([at]) => at < before);
  const told = lines.map(([at, who]) => say(who ? "note_hold" : "note_hold_missing", { number: at + 1, who }));
  return told.join("; ") || say("none");
}

function closingLines() {
  const whom = document.querySelector(".differs .ask b");
  const written = new Intl.DateTimeFormat(live.lang, { dateStyle: "medium", timeStyle: "short" }).format(new Date());
  return [...(whom ? [["note_ask", whom.textContent]] : []), ["note_written", written], ["note_mind", say("note_record")]];
}

function element(name, words) {
  const made = document.createElement(name);
  made.textContent = words;
  return made;
}

function noteText() {
  const names = all("#_note dt").map((name) => `${name.textContent}: ${name.nextElementSibling.textContent}`);
  return [say("note_title"), ...names].join("\n") + "\n";
}

function copyNote() {
  const refused = () => {
    getSelection().selectAllChildren(byId("_note"));
    byId("_note-words").textContent = say("copy_yourself");
  };
  if (!navigator.clipboard) return refused();
  navigator.clipboard.writeText(noteText()).then(() => (byId("_note-words").textContent = say("copied")), refused);
}
