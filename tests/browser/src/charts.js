// Every chart: its name, the share of its pixels in the colour of the ground, how many are in the colour of each curve,
// and the contrast of each colour with the ground after WCAG 2.2.
(() => {
  // Pixels are read from copies, so that the charts' own canvases stay as the page made them.
  const readable = (width, height) =>
    Object.assign(document.createElement("canvas"), { width, height }).getContext("2d", { willReadFrequently: true });
  const probe = readable(1, 1);
  const rgb = (css) => {
    probe.fillStyle = css;
    probe.fillRect(0, 0, 1, 1);
    return [...probe.getImageData(0, 0, 1, 1).data].slice(0, 3);
  };
  const luminance = (colour) => {
    const [r, g, b] = colour.map((part) => {
      const share = part / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (one, other) => {
    const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
    return (light + 0.05) / (dark + 0.05);
  };
  return [...document.querySelectorAll("canvas.picture-canvas")].map((canvas) => {
    const style = getComputedStyle(canvas);
    const colour = (name) => rgb(style.getPropertyValue(name));
    const paper = colour("--paper");
    const lines = ["--ink", "--plot-coil", "--plot-gas", "--plot-mark"];
    const copy = readable(canvas.width, canvas.height);
    copy.drawImage(canvas, 0, 0);
    const pixels = copy.getImageData(0, 0, canvas.width, canvas.height).data;
    const share = ([r, g, b]) => {
      let count = 0;
      for (let at = 0; at < pixels.length; at += 4) {
        if (pixels[at] === r && pixels[at + 1] === g && pixels[at + 2] === b) count += 1;
      }
      return count;
    };
    return {
      name: canvas.getAttribute("aria-label") ?? canvas.id,
      paper: share(paper) / (pixels.length / 4),
      drawn: Object.fromEntries(lines.slice(1).map((name) => [name, share(colour(name))])),
      contrast: Object.fromEntries(lines.map((name) => [name, contrast(colour(name), paper)])),
    };
  });
})()
