// Asks for the program before anything else: it is by far the largest part, and the
// others arrive meanwhile. program.js reads what comes.
if (window.fetch) {
  window.groundbeatAsked = fetch(document.currentScript.dataset.program);
  window.groundbeatAsked.catch(function () {}); // boot.js tells
}
