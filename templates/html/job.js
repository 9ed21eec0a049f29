/* The job: ticks, initials of checkers and the last step, kept by job, procedure and revision. Reminders, no record. */

const boxes = all(".tick input");
const checkers = all(".checker");
let job = "";
let lastStep = "";

function placeOf(name) {
  return JSON.stringify(["procbuilder job", main.dataset.procedure, main.dataset.revision, name]);
}

function keptJob(name) {
  const found = storage.read(placeOf(name)) || {};
  return { ticks: [].concat(found.ticks || []), checked: Object(found.checked), at: String(found.at || "") };
}

/* Names of the jobs of this procedure and revision that this device knows. */
function knownJobs() {
  const before = placeOf("").slice(0, -3);
  return storage.keys().filter((key) => key.startsWith(before)).map((key) => JSON.parse(key)[3]).sort();
}

function ticked() {
  return boxes.filter((box) => box.checked).map((box) => box.dataset.step);
}

function initials() {
  const filled = checkers.map((box) => [box.dataset.step, box.querySelector("input").value.trim()]);
  return Object.fromEntries(filled.filter(([, who]) => who));
}

function keepJob() {
  return job !== "" && storage.write(placeOf(job), { ticks: ticked(), checked: initials(), at: lastStep });
}

/* Where the work goes on: the last step that was in sight, or the first. */
function placeInJob() {
  return steps.find((step) => step.id === lastStep) || steps[0];
}

function showJob() {
  for (const link of all(".step-list a")) {
    const box = boxes.find((one) => "#" + one.dataset.step === link.getAttribute("href"));
    link.querySelector(".done").hidden = !box.checked;
  }
  const open = boxes.findIndex((box) => !box.checked);
  const count = say("ticks", { done: ticked().length, count: steps.length });
  const next = open < 0 ? "" : say("first_open", { number: open + 1 });
  const kept = keepJob();
  const where = job ? say(kept ? "job" : "job_not_kept", { job }) : say("no_job");
  for (const words of all(".job-words")) words.textContent = where;
  byId("_job-words").textContent = [where, count, next].join(" ").trim();
  byId("_job-resume").hidden = !lastStep;
  byId("_job-resume").textContent = lastStep ? say("resume", { number: placeInJob().dataset.number }) : "";
}

/* What was ticked before a job was named belongs to it; another job begins with its own. */
function beginJob(name = byId("_job-label").value.trim()) {
  const carried = job ? [] : ticked();
  const found = name ? keptJob(name) : { ticks: [], checked: {}, at: "" };
  if (job || found.at) lastStep = found.at;
  job = name;
  main.dataset.job = job;
  const done = new Set([...found.ticks, ...carried]);
  for (const box of boxes) box.checked = done.has(box.dataset.step);
  for (const box of checkers) box.querySelector("input").value = String(found.checked[box.dataset.step] || "");
  askForJob(false);
  showJob();
  heading(shown).focus({ preventScroll: true });
  document.dispatchEvent(new Event("procbuilder-job"));
}

function askForJob(asking) {
  byId("_job-form").hidden = !asking;
  byId("_job-line").hidden = asking;
  const known = asking ? knownJobs() : [];
  byId("_job-known").hidden = !known.length;
  byId("_job-known").querySelector(".row").replaceChildren(...known.map(jobButton));
}

function jobButton(name) {
  const button = document.createElement("button");
  const at = steps.find((step) => step.id === keptJob(name).at);
  button.type = "button";
  button.textContent = at ? say("known_job", { job: name, number: at.dataset.number }) : name;
  button.addEventListener("click", () => beginJob(name));
  return button;
}

function rememberPlace() {
  if (!steps.includes(shown)) return;
  lastStep = shown.id;
  keepJob();
}

/* ---- hold points: the first press on Next reminds, the second goes on ---- */

function holdsBack(view) {
  const checker = shown.querySelector(".checker");
  const onward = steps.indexOf(view) === steps.indexOf(shown) + 1;
  if (!checker || !onward || checker.querySelector("input").value.trim() || checker.dataset.reminded) return false;
  checker.dataset.reminded = "yes";
  checker.querySelector(".checker-remark").textContent = say("hold_next");
  checker.scrollIntoView({ block: "center" });
  return true;
}

function checkedBy(checker) {
  const who = checker.querySelector("input").value.trim();
  const same = who && who.toLowerCase() === job.toLowerCase();
  checker.querySelector(".checker-remark").textContent = same ? say("same_person") : "";
  keepJob();
}

/* ---- step list pictures, taken from the steps, so that each is in the file once ---- */

function addThumbnail(link) {
  const picture = byId(link.getAttribute("href").slice(1)).querySelector(".pictures img");
  if (picture) link.querySelector(".number").after(copyOf(picture, "thumbnail", ""));
}

function copyOf(picture, name, words) {
  const copy = document.createElement("img");
  copy.src = picture.src;
  copy.width = picture.width;
  copy.height = picture.height;
  copy.alt = words;
  copy.className = name;
  return copy;
}
