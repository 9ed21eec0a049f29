/* Before the first painting: nothing is shown until one view is chosen, so that nothing jumps. Should the other script
   break, the page is read from top to bottom as without scripts. */
document.documentElement.classList.add("live");
window.addEventListener("error", (event) => event.error && document.documentElement.classList.remove("live"));
