/* Put everything to work. */

all(".with-clip").forEach(prepareClip);
all(".step-list a").forEach(addThumbnail);
all(".question").forEach(addPictures);
for (const line of all("#_due li")) line.dataset.words = line.querySelector(".after").textContent;
for (const box of boxes) {
  box.checked = false;
  box.addEventListener("change", showJob);
}
for (const checker of checkers) checker.addEventListener("input", () => checkedBy(checker));
for (const question of questions) question.addEventListener("change", (event) => answered(question, event.target));
for (const link of all(".moment")) {
  link.addEventListener("click", (event) => {
    event.preventDefault();
    showMoment(link);
  });
}

byId("_job-form").addEventListener("submit", (event) => {
  event.preventDefault();
  beginJob();
});
byId("_job-skip").addEventListener("click", () => beginJob(""));
byId("_job-resume").addEventListener("click", () => go(placeInJob()));
byId("_job-change").addEventListener("click", () => {
  askForJob(true);
  byId("_job-label").focus();
});

byId("_back").addEventListener("click", () => go(neighbour(-1)));
byId("_home").addEventListener("click", () => go(overview));
byId("_next").addEventListener("click", () => go(neighbour(1)));
window.addEventListener("hashchange", () => viewOfHash() !== shown && turnTo(viewOfHash()));
document.addEventListener("keydown", onKey);
main.addEventListener("pointerdown", beginStroke);
main.addEventListener("pointerup", endStroke);
main.addEventListener("pointercancel", dropStroke);

byId("_note-copy").addEventListener("click", copyNote);
byId("_note-print").addEventListener("click", () => window.print());
byId("_signed-off").addEventListener("input", showDue);
for (const choice of all("input[name=_scheme]")) choice.addEventListener("change", keepScreen);
byId("_awake").addEventListener("change", () => {
  keepScreen();
  keepAwake();
});
document.addEventListener("visibilitychange", keepAwake);

document.addEventListener("procbuilder-view", () => {
  playOnly(shown);
  rememberPlace();
  if (shown.id === "_handover") makeNote();
});

setScheme(String(keptScreen().scheme || ""));
byId("_awake").checked = Boolean(keptScreen().awake);
keepAwake();
prepareStopwatch();
askForJob(true);
if (location.hash) turnTo(viewOfHash());
else show(overview);
