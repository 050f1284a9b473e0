// How things look on the map: own marks in the site's ink, told apart by form and words, never by hue alone.

const SVG = "http://www.w3.org/2000/svg";
const WEDGE = 40; // length of a facing wedge, px: a direction, not a range

const KINDS = {
  place: "Place", stance: "Vantage point, with what its compositions look at", parking: "Parking", hazard: "Hazard", closure: "Closed",
  cell: "Somewhere within this square: the exact place is not shown",
};
const WAYS = {
  rightOfWay: "Right of way", openAccess: "Open access", permissive: "By permission", customary: "Used, no recorded right",
  private: "Private – ask first", closed: "Closed", unknown: "Right not known",
};

/** A Leaflet layer for one item of the sheet; longitudes are laid next to the map's middle. */
export function draw(L, item, name, middle) {
  const beside = longitude => longitude + 360 * Math.round((middle - longitude) / 360);
  if (item.kind === "cell") {
    // The square to scale says how little is told; the mark, seen from far off too, can be chosen.
    const [west, south, east, north] = item.box;
    const shift = beside((west + east) / 2) - (west + east) / 2;
    const square = L.rectangle([[south, west + shift], [north, east + shift]], { className: "map-cell", interactive: false });
    const mark = named(L.marker(square.getBounds().getCenter(), { icon: icon(L, item) }), `${name}, somewhere within this square`);
    mark.on("add", () => square.addTo(mark._map));
    return mark;
  }
  if (item.kind === "way") {
    const line = [];
    for (let i = 0; i < item.line.length; i += 2) line.push([item.line[i], beside(item.line[i + 1])]);
    const classes = `map-way way-${item.status}${item.barred ? " way-barred" : ""}`;
    return named(L.polyline(line, { className: classes, bubblingMouseEvents: false }), `${name}: ${item.barred ? "closed" : WAYS[item.status].toLowerCase()}`);
  }
  const label = [name, item.kind === "place" || item.kind === "stance" ? "" : KINDS[item.kind].toLowerCase(), item.word ?? ""].filter(Boolean).join(", ");
  return named(L.marker([item.at[0], beside(item.at[1])], { icon: icon(L, item), riseOnHover: true, zIndexOffset: item.kind === "hazard" || item.kind === "closure" ? 500 : 0 }), label);
}

function icon(L, item) {
  const side = matchMedia("(pointer: coarse)").matches ? 44 : 28;
  return L.divIcon({ className: `map-mark mark-${item.kind}${item.barred ? " barred" : ""}`, iconSize: [side, side], html: picture(item) });
}

/** What the lines and marks of this sheet mean. */
export function key(items) {
  const box = document.createElement("ul");
  box.className = "coast-map-key plain small";
  box.setAttribute("aria-label", "What the marks and lines mean");
  const entry = (drawing, words) => {
    const li = document.createElement("li");
    drawing.setAttribute("aria-hidden", "true");
    li.append(drawing, words);
    box.append(li);
  };
  for (const [kind, words] of Object.entries(KINDS))
    if (items.some(i => i.kind === kind)) entry(framed(picture({ kind, wedges: kind === "stance" ? [90, 50] : undefined }, 16), `map-mark mark-${kind}`), words);
  for (const [status, words] of Object.entries(WAYS))
    if (items.some(i => i.kind === "way" && i.status === status && !i.barred)) entry(sample(`map-way way-${status}`), words);
  if (items.some(i => i.kind === "way" && i.barred)) entry(sample("map-way way-barred"), "Way closed now");
  return box;
}

function named(layer, label) {
  layer.on("add", () => {
    const element = layer.getElement();
    element.setAttribute("role", "button");
    element.setAttribute("aria-label", label);
    element.setAttribute("tabindex", "0");
    // Leaflet leaves lines to the mouse and answers to Enter alone; a button answers to both.
    element.addEventListener("keydown", e => {
      if (e.key !== "Enter" && e.key !== " ") return;
      e.preventDefault();
      e.stopPropagation();
      layer.openPopup(layer.getLatLng?.() ?? layer.getBounds().getCenter());
    });
  });
  return layer;
}

function picture(item, wedge = WEDGE) {
  const svg = node("svg", { viewBox: "-14 -14 28 28", width: 28, height: 28, "aria-hidden": "true" });
  const { wedges = [] } = item;
  for (let i = 0; i < wedges.length; i += 2) svg.append(node("path", { class: "wedge", d: fan(wedges[i], wedges[i + 1], wedge) }));
  const forms = {
    place: [["circle", { r: 6, class: "form" }]],
    stance: [["circle", { r: 5.5, class: "form" }], ["circle", { r: 1.5, class: "dot" }]],
    parking: [["rect", { x: -8, y: -8, width: 16, height: 16, class: "form" }], ["path", { class: "stroke", d: "M-2.5,5V-5H1A3,3 0 0 1 1,1H-2.5" }]],
    hazard: [["path", { class: "form", d: "M0,-9L9,0L0,9L-9,0Z" }], ["path", { class: "stroke", d: "M0,-4V1M0,3.5V4" }]],
    cell: [["rect", { x: -7, y: -7, width: 14, height: 14, class: "form" }]],
    closure: [["rect", { x: -8, y: -8, width: 16, height: 16, class: "form" }], ["path", { class: "stroke", d: "M-5,5L5,-5" }]],
  };
  for (const [tag, attributes] of forms[item.kind]) svg.append(node(tag, attributes));
  if (item.barred && item.kind !== "closure") svg.append(node("path", { class: "bar-under", d: "M-11,11L11,-11" }), node("path", { class: "bar", d: "M-11,11L11,-11" }));
  if (!item.word) return svg;
  const both = document.createElement("span");
  const word = document.createElement("span");
  word.className = "word";
  word.textContent = item.word;
  both.append(svg, word);
  return both;
}

/** A slice of a circle about the origin, y down, north up. */
function fan(facing, angle, radius) {
  const at = degrees => {
    const a = degrees * Math.PI / 180;
    return `${(radius * Math.sin(a)).toFixed(1)},${(-radius * Math.cos(a)).toFixed(1)}`;
  };
  return `M0,0L${at(facing - angle / 2)}A${radius},${radius} 0 ${angle > 180 ? 1 : 0} 1 ${at(facing + angle / 2)}Z`;
}

function sample(classes, d = "M2,10H34") {
  const svg = node("svg", { viewBox: "0 0 36 20", width: 36, height: 20 });
  svg.append(node("path", { class: classes, d }));
  return svg;
}

function framed(drawing, classes) {
  const span = document.createElement("span");
  span.className = classes;
  span.append(drawing);
  return span;
}

function node(tag, attributes) {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}
