// Saves a picture of the page as a file of its own: an SVG with all styles written in, or a PNG made from it.
//
// A picture is a figure of the page with drawings (svg), texts around them and a legend. Whatever is seen of it is copied to where it
// stands, in the colours of print, so that it is light and stands on paper wherever it goes. Nothing leaves the device.

const SPACE = "http://www.w3.org/2000/svg";
const EDGE = 24; // room around the picture [px]
const TITLE = 19; // size of its title
const LINE = 25; // from line to line of the title
const LARGER = 3; // pixels of a PNG for one of the page
// What a shape or a text may be styled with.
const STYLES = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin",
  "paint-order", "vector-effect", "shape-rendering", "text-anchor", "font-family", "font-size", "font-weight", "opacity"];

// The colours of print as they stand in the sheets: names and values.
function printTokens() {
  const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
  const print = rules.filter((rule) => rule.media?.mediaText === "print").flatMap((rule) => [...rule.cssRules]);
  const styles = print.filter((rule) => rule.selectorText === ":root").map((rule) => rule.style);
  return styles.flatMap((style) => [...style].filter((name) => name.startsWith("--")).map((name) => [name, style.getPropertyValue(name)]));
}

// An element of a drawing with its attributes.
function drawn(tag, attributes, text) {
  const element = document.createElementNS(SPACE, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  if (text !== undefined) element.textContent = text;
  return element;
}

const seen = (element) => element.checkVisibility() && element.getClientRects().length > 0;

// A drawing of the page at its place, with its styles as attributes.
function copy(svg, origin) {
  const clone = svg.cloneNode(true);
  const own = [svg, ...svg.querySelectorAll("*")];
  [clone, ...clone.querySelectorAll("*")].forEach((element, at) => {
    element.removeAttribute("class");
    if (at === 0 || element.tagName === "title" || element.tagName === "g") return;
    const style = getComputedStyle(own[at]);
    for (const name of STYLES) element.setAttribute(name, style.getPropertyValue(name));
  });
  const place = svg.getBoundingClientRect();
  clone.removeAttribute("style");
  clone.setAttribute("x", place.x - origin.x);
  clone.setAttribute("y", place.y - origin.y);
  clone.setAttribute("width", place.width);
  clone.setAttribute("height", place.height);
  return clone;
}

// A text of the page, line by line as it is broken there.
function lines(node, origin) {
  const style = getComputedStyle(node.parentElement);
  const upright = style.writingMode !== "horizontal-tb";
  const range = document.createRange();
  const found = [];
  for (let at = 0; at < node.length; at++) {
    range.setStart(node, at);
    range.setEnd(node, at + 1);
    const place = range.getClientRects()[0];
    if (!place) continue;
    const last = found.at(-1);
    const same = last && (upright || Math.abs(last.place.y - place.y) < place.height / 2);
    if (same) last.text += node.data[at];
    else found.push({ place, text: node.data[at] });
  }
  const size = Number.parseFloat(style.fontSize);
  return found.filter((line) => line.text.trim()).map(({ place, text }) => {
    const x = place.x - origin.x;
    const y = place.y - origin.y + (upright ? 0 : place.height / 2 + size * 0.35);
    return drawn("text", {
      x, y, fill: style.color, "font-family": style.fontFamily, "font-size": size, "font-weight": style.fontWeight,
      ...(upright && { transform: `rotate(90 ${x} ${y}) translate(0 ${-size * 0.3})` }),
    }, text.trim());
  });
}

// The sample before an entry of a legend, which a sheet draws.
function sample(entry, origin) {
  const style = getComputedStyle(entry, "::before");
  if (style.content === "none") return [];
  const place = entry.getBoundingClientRect();
  const [width, height, top] = ["width", "height", "borderTopWidth"].map((name) => Number.parseFloat(style[name]) || 0);
  const x = place.x - origin.x;
  const y = place.y - origin.y + place.height / 2;
  if (top > 0) {
    const dashes = { dashed: "5 3", dotted: "1 3" }[style.borderTopStyle] ?? "none";
    return [drawn("path", { d: `M${x} ${y}h${width}`, stroke: style.borderTopColor, "stroke-width": top, "stroke-dasharray": dashes })];
  }
  const edge = style.outlineStyle === "none" ? "none" : style.outlineColor;
  return [drawn("rect", { x, y: y - height / 2, width, height, fill: style.backgroundColor, stroke: edge })];
}

// All that is seen of a figure but its head, its buttons and what is folded away.
function shapes(figure, origin) {
  const left = "figcaption, h2, .row, .chips, details, .readout, .unseen, .reader, .curve-cursor, .curve-start";
  const all = [];
  const walker = document.createTreeWalker(figure, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT, (node) => {
    const element = node.nodeType === Node.TEXT_NODE ? node.parentElement : node;
    return element.matches(left) || !seen(element) || node.parentElement.closest("svg")
      ? NodeFilter.FILTER_REJECT
      : NodeFilter.FILTER_ACCEPT;
  });
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (node.nodeType === Node.TEXT_NODE) all.push(...lines(node, origin));
    else if (node.tagName === "svg") all.push(copy(node, origin));
    else if (node.matches(".key")) all.push(...sample(node, origin));
  }
  return all;
}

// A text in lines that are no longer than a width.
function broken(text, width, font) {
  const pen = document.createElement("canvas").getContext("2d");
  pen.font = font;
  const found = [];
  for (const word of text.split(" ")) {
    const longer = found.length > 0 ? `${found.at(-1)} ${word}` : word;
    if (found.length > 0 && pen.measureText(longer).width <= width) found[found.length - 1] = longer;
    else found.push(word);
  }
  return found;
}

// The figure as a picture of its own.
function picture(figure, plan, title) {
  const root = document.documentElement;
  const tokens = printTokens();
  const before = tokens.map(([name]) => root.style.getPropertyValue(name));
  for (const [name, value] of tokens) root.style.setProperty(name, value);
  try {
    const place = figure.getBoundingClientRect();
    const origin = { x: place.x - EDGE, y: place.y };
    const all = shapes(figure, origin);
    const scratch = document.body.appendChild(drawn("svg", {}));
    scratch.append(...all);
    const spans = all.map((shape) => {
      if (shape.tagName === "svg") return [Number(shape.getAttribute("y")), Number(shape.getAttribute("height"))];
      const box = shape.getBBox();
      return [box.y, box.height];
    });
    scratch.remove();
    const top = Math.min(...spans.map(([y]) => y));
    const bottom = Math.max(...spans.map(([y, height]) => y + height));
    const style = getComputedStyle(document.body);
    const [ink, paper] = [style.color, getComputedStyle(root).getPropertyValue("--paper")];
    const serif = getComputedStyle(root).getPropertyValue("--serif");
    const heading = broken(title, place.width, `600 ${TITLE}px ${serif}`);
    const name = EDGE + 6 + LINE * heading.length;
    const head = name + 12;
    const [width, height] = [Math.ceil(place.width + 2 * EDGE), Math.ceil(head + bottom - top + EDGE)];
    const whole = drawn("svg", { viewBox: `0 0 ${width} ${height}`, width, height });
    const body = drawn("g", { transform: `translate(0 ${head - top})` });
    body.append(...all);
    const titles = heading.map((text, at) => drawn("text", {
      x: EDGE, y: EDGE + 12 + LINE * at, fill: ink, "font-family": serif, "font-size": TITLE, "font-weight": 600,
    }, text));
    whole.append(
      drawn("title", {}, `${title} – ${plan}`),
      drawn("rect", { width, height, fill: paper }),
      ...titles,
      drawn("text", { x: EDGE, y: name, fill: ink, "font-family": style.fontFamily, "font-size": 13 }, plan),
      body,
    );
    return { whole, width, height };
  } finally {
    tokens.forEach(([name], at) => root.style.setProperty(name, before[at]));
  }
}

// The PNG of a picture.
async function pixels(blob, { width, height }) {
  const image = new Image();
  image.src = URL.createObjectURL(blob);
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [width * LARGER, height * LARGER];
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  URL.revokeObjectURL(image.src);
  return new Promise((done) => canvas.toBlob(done, "image/png"));
}

export async function save(figure, kind, plan, title) {
  const made = picture(figure, plan, title);
  let blob = new Blob([new XMLSerializer().serializeToString(made.whole)], { type: "image/svg+xml" });
  if (kind === "png") blob = await pixels(blob, made);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = `sunlarder-${title} ${plan}`.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/-+$/, "") + `.${kind}`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
