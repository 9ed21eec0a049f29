/* Clips: only the one of the step in sight plays; the picture stands where it cannot. */

const still = matchMedia("(prefers-reduced-motion: reduce)");
const ONE_PICTURE = 1 / 30; /* seconds, until the clip has told its own */

function playOnly(view) {
  for (const video of all("video")) video.pause();
  const figure = view.querySelector(".with-clip");
  if (figure) display(figure, figure.dataset.shows);
}

function display(figure, what) {
  const video = figure.querySelector("video");
  figure.dataset.shows = what;
  figure.querySelector(".swap").textContent = say(what === "clip" ? "clip_hide" : "clip_show");
  for (const button of all(".slower, .frame-back, .frame-on", figure)) button.hidden = what !== "clip";
  if (what === "clip" && !still.matches) video.play().catch(() => {});
  else video.pause();
}

function withoutClip(figure) {
  const swap = figure.querySelector(".swap");
  display(figure, "picture");
  swap.textContent = say("clip_fails");
  swap.disabled = true;
}

function swap(figure) {
  const what = figure.dataset.shows === "clip" ? "picture" : "clip";
  display(figure, what);
  if (what === "clip") figure.querySelector("video").play().catch(() => {});
}

function slower(video, button) {
  video.playbackRate = video.playbackRate === 1 ? 0.25 : 1;
  button.textContent = say(video.playbackRate === 1 ? "slower" : "full_speed");
  video.play().catch(() => {});
}

/* By one picture: the clip stands still, and the time moves by as long as one of its pictures lasts. */
function step(video, by) {
  video.pause();
  const length = Number(video.dataset.picture) || ONE_PICTURE;
  const last = Math.max(0, (video.duration || 0) - length);
  video.currentTime = Math.min(last, Math.max(0, video.currentTime + by * length));
}

/* How long a picture lasts: the shortest way between two that were shown at full speed. */
function measurePictures(video) {
  if (!video.requestVideoFrameCallback) return;
  let before = null;
  const look = (_, picture) => {
    const length = before === null ? 0 : picture.mediaTime - before;
    if (length > 0.005 && !(length >= Number(video.dataset.picture))) video.dataset.picture = length;
    before = picture.mediaTime;
    if (!video.paused && video.currentTime < 2) video.requestVideoFrameCallback(look);
  };
  video.requestVideoFrameCallback(look);
}

/* To the moment of a clip that a link tells; without a clip its step is enough. */
function showMoment(link) {
  go(byId(link.hash.slice(1)));
  const figure = shown.querySelector(".with-clip");
  if (!figure) return;
  const video = figure.querySelector("video");
  const seek = () => (video.currentTime = Number(link.dataset.moment));
  display(figure, "clip");
  if (video.readyState) seek();
  else video.addEventListener("loadedmetadata", seek, { once: true });
  if (!video.readyState) video.load();
}

function prepareClip(figure) {
  const video = figure.querySelector("video");
  const on = (name, act) => figure.querySelector(name).addEventListener("click", act);
  video.poster = video.poster || figure.querySelector("img").src;
  video.addEventListener("error", () => withoutClip(figure));
  video.addEventListener("play", () => measurePictures(video), { once: true });
  display(figure, still.matches ? "picture" : "clip");
  video.pause();
  on(".swap", () => swap(figure));
  on(".slower", (event) => slower(video, event.target));
  on(".frame-back", () => step(video, -1));
  on(".frame-on", () => step(video, 1));
}
