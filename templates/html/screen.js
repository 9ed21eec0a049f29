/* This screen: light or dark as the eye needs it, and kept on while hands are busy. */

const SCREEN = JSON.stringify(["procbuilder screen"]);
let waking = null;

function keptScreen() {
  return Object(storage.read(SCREEN));
}

function setScheme(scheme) {
  if (scheme) live.dataset.scheme = scheme;
  else delete live.dataset.scheme;
  for (const choice of all("input[name=_scheme]")) choice.checked = choice.value === scheme;
}

function keepScreen() {
  const scheme = document.querySelector("input[name=_scheme]:checked").value;
  setScheme(scheme);
  storage.write(SCREEN, { scheme, awake: byId("_awake").checked });
}

/* The browser lets go whenever the page is out of sight: ask again as soon as it is back. */
async function keepAwake() {
  const box = byId("_awake");
  const words = byId("_awake-words");
  if (!box.checked || document.hidden) {
    if (waking) waking.release();
    waking = null;
    if (!document.hidden) words.textContent = "";
    return;
  }
  try {
    waking = await navigator.wakeLock.request("screen");
    words.textContent = say("awake");
  } catch {
    box.checked = false;
    words.textContent = say("not_awake");
  }
}
