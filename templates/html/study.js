/* The self-test tells right from wrong, and the page reckons when skill is due to be checked again. */

const questions = all(".question");
const firstTries = new Map();

function answered(question, option) {
  const right = option.dataset.right === "yes";
  if (!firstTries.has(question)) firstTries.set(question, right);
  question.querySelector(".verdict").textContent = say(right ? "right" : "not_right");
  question.querySelector("details").open = true;
  const count = [...firstTries.values()];
  byId("_score").textContent = say("score", { right: count.filter(Boolean).length, count: count.length });
}

/* The pictures of a question are those of the steps, so that each is in the file once. */
function addPictures(question) {
  for (const place of all(".choice-picture", question)) {
    place.before(copyOf(byId(place.dataset.of).querySelector(".pictures img"), "option-picture", ""));
  }
}

/* ---- re-check dates ---- */

const DAY = 24 * 60 * 60 * 1000;

/* A month after 30 November is 30 December, after 31 January the last day of February. */
function later(date, after) {
  const [count, unit] = after.split(" ");
  if (unit.startsWith("week")) return new Date(date.getTime() + 7 * count * DAY);
  const month = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + Number(count) + 1, 0));
  month.setUTCDate(Math.min(date.getUTCDate(), month.getUTCDate()));
  return month;
}

function showDue() {
  const date = byId("_signed-off").valueAsDate;
  const words = new Intl.DateTimeFormat(live.lang, { dateStyle: "full", timeZone: "UTC" });
  for (const line of all("#_due li")) {
    const due = date && later(date, line.dataset.after);
    const past = due && due < Date.now() - DAY;
    line.querySelector(".after").textContent = due
      ? say(past ? "due_past" : "due", { date: words.format(due) })
      : line.dataset.words;
  }
}
