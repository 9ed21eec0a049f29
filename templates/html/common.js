/* What all parts of the script use. They are joined into one function, in the order of the list in the build. */

const byId = (id) => document.getElementById(id);
const all = (selector, within = document) => Array.from(within.querySelectorAll(selector));
const live = document.documentElement;
const main = document.querySelector("main");

const WORDS = JSON.parse(byId("_words").textContent);

/* A sentence of the page, with its gaps filled. */
function say(name, facts = {}) {
  return WORDS[name].replace(/\{(\w+)\}/g, (_, gap) => facts[gap]);
}

/* Storage that may be refused, full or filled with rubbish: the page works without it. */
const storage = {
  read(key) {
    try {
      return JSON.parse(localStorage.getItem(key));
    } catch {
      return null;
    }
  },
  write(key, value) {
    try {
      localStorage.setItem(key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  },
  keys() {
    try {
      return Object.keys(localStorage);
    } catch {
      return [];
    }
  },
};
