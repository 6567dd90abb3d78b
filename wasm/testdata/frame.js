// Notes when the engine's first frame can be seen: when the browser asks for the
// next one after the first draw call of all. Times are ms since the page was
// asked for.
(() => {
  window.firstFrame = new Promise((seen) => {
    let drawn = false;
    for (const kind of [window.WebGLRenderingContext, window.WebGL2RenderingContext]) {
      const draw = kind.prototype.drawElements;
      kind.prototype.drawElements = function (...all) {
        draw.apply(this, all);
        if (!drawn) requestAnimationFrame(() => seen(performance.now()));
        drawn = true;
      };
    }
  });
})();
