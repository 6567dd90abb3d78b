// Sets the page in the light that was chosen here, dark or light, before anything is
// painted: the program, which knows it too, comes later. Like halt.js it is written so
// that browsers of long ago can read it. The key is that of wasm/things.go.
(function () {
  try {
    var kept = JSON.parse(localStorage.getItem("groundbeat.thing.setting/theme"));
    if (kept && /^(dark|light)$/.test(kept.text)) document.documentElement.setAttribute("data-theme", kept.text);
  } catch (error) {} // no storage: then as the person's system asks for
})();
