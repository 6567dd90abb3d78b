// What somebody meets who moves with the keyboard alone.
window.walk = (() => {
  const page = () => document.querySelector("#page");
  const name = (e) => e.id || `${e.closest("[id]").id} ${e.value ?? ""}`.trim();

  // stops are what Tab should lead to, in the order of the page: of radio buttons
  // the one that is chosen, or the first.
  const stops = () => {
    const seen = new Set();
    return [...page().querySelectorAll("a[href], button:enabled, input:enabled, summary, [tabindex='0']")].filter((e) => {
      if (!e.checkVisibility()) return false;
      if (e.type !== "radio") return true;
      const chosen = page().querySelector(`input[name="${e.name}"]:checked`);
      if (seen.has(e.name) || (chosen && chosen !== e)) return false;
      seen.add(e.name);
      return true;
    });
  };

  const parts = (colour) => colour.match(/[\d.]+/g).map(Number);
  // the relative luminance and the contrast of WCAG 2.2
  const luminance = (colour) => {
    const [r, g, b] = parts(colour).map((v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a, b) => (Math.max(luminance(a), luminance(b)) + 0.05) / (Math.min(luminance(a), luminance(b)) + 0.05);

  // faults of how the focus is shown on an element, or on what stands for it
  const faults = (e) => {
    const shown = [e, e.nextElementSibling, e.closest("label")].filter(Boolean).map((x) => getComputedStyle(x))
      .find((s) => s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2);
    const box = e.getBoundingClientRect();
    const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
    const seen = top === e || e.contains(top) || top?.closest("label")?.contains(e);
    const all = [];
    if (!e.matches(":focus-visible") || !shown) all.push(`${name(e)}: the focus does not show`);
    else if (contrast(shown.outlineColor, getComputedStyle(document.documentElement).backgroundColor) < 3) all.push(`${name(e)}: the focus is faint`);
    if (!seen) all.push(`${name(e)} lies under ${top?.id || top?.nodeName}`);
    return all;
  };

  let on = false;
  const tabbed = [];
  const lost = [];
  const wrong = [];
  addEventListener("focusin", (event) => {
    if (!on) return;
    tabbed.push(name(event.target));
    if (event.target.matches("h1, h2")) return; // where a screen begins: nothing to press
    requestAnimationFrame(() => document.activeElement === event.target && wrong.push(...faults(event.target)));
  });

  // use works every control that stays on the screen, as the keyboard would, of a
  // choice the last one, and notes which of them lost the focus.
  const later = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))));
  const leaves = new Set(["go", "home", "begin", "next", "once", "slower", "change", "export", "open"]);
  const use = async () => {
    const all = [...page().querySelectorAll("button:enabled, input:enabled:not([type=file]), summary")];
    const last = (e) => e.type !== "radio" || e === all.filter((x) => x.name === e.name).at(-1);
    for (const key of all.filter(last).map((e) => [e.id, e.closest("[id]").id, e.value, e.nodeName])) {
      const [id, holder, value, kind] = key; // the element may be another by the time it is used
      const e = document.getElementById(id) ?? [...(document.getElementById(holder)?.querySelectorAll(kind) ?? [])].find((x) => x.value === value || x.type === "range" || kind === "SUMMARY");
      if (!e || e.disabled || !e.checkVisibility() || leaves.has(e.dataset.action)) continue;
      e.focus();
      if (e.type === "range") {
        e.stepUp();
        e.dispatchEvent(new Event("input", { bubbles: true }));
      } else if (e.type !== "text") {
        e.click();
      }
      await later();
      if (document.activeElement === document.body) lost.push(key.join(" "));
    }
    page().querySelector("[data-action=stop]")?.click();
    await later();
  };

  return {
    start() {
      const top = document.createElement("span"); // Tab goes on from where it was
      top.tabIndex = -1;
      document.body.prepend(top);
      top.focus();
      top.remove();
      tabbed.length = wrong.length = 0;
      on = true;
      return stops().map(name);
    },
    found: async () => {
      await later();
      on = false;
      return { tabbed: [...tabbed], wrong: [...wrong] };
    },
    use,
    lost: () => lost,
  };
})();
