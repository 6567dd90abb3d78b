// Says in the page why the program cannot be started, or that it has stopped.
//
// It is loaded first and needs nothing else, so that it can tell when another
// part does not arrive, and it is written so that browsers of long ago can read
// it.
(function () {
  var boot, said;

  function find() {
    boot = boot || document.getElementById("boot");
    return boot;
  }
  document.addEventListener("DOMContentLoaded", find);

  // halt shows one of the page's sentences in place of everything else. The
  // first one stays: what breaks later follows from it.
  window.halt = function (name) {
    if (said) return;
    if (!find()) {
      document.addEventListener("DOMContentLoaded", function () { window.halt(name); });
      return;
    }
    said = name;
    var old = document.getElementById("page");
    var page = old.cloneNode(false); // out of reach of a program that limps on
    page.removeAttribute("data-screen");
    page.appendChild(boot);
    old.parentNode.replaceChild(page, old);
    boot.querySelector("#boot-loading").hidden = true;
    boot.querySelector("#boot-" + name).hidden = false;
    var reload = boot.querySelector("#boot-reload");
    reload.hidden = name === "no-program" || name === "no-pictures";
    reload.onclick = function () { location.reload(); };
    reload.focus();
  };

  // A script that does not arrive, itself or a part of it; or the program broken
  // in a way that it cannot tell itself (memory used up, for one).
  window.addEventListener("error", function (event) {
    if (event.target instanceof HTMLScriptElement) window.halt("no-file");
    if (window.WebAssembly && event.error instanceof WebAssembly.RuntimeError) window.halt("stopped");
  }, true);

  if (!("noModule" in HTMLScriptElement.prototype)) window.halt("no-program");
})();
