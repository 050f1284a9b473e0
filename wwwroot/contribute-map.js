// A map to choose a place on: the middle of the map is what is chosen, so that arrow keys choose as well as a finger.
export async function choose(host, { parts, start, words, use, onUse }) {
  const style = address => new Promise((done, fail) => {
    if (document.querySelector(`link[href="${address}"]`)) { done(); return; }
    document.head.append(Object.assign(document.createElement("link"), { rel: "stylesheet", href: address, onload: done, onerror: fail }));
  });
  const [leaflet, map, coast] = parts.modules.split(" ");
  const [L, { quietTiles, attribution }, { drawCoast }] = await Promise.all([import(leaflet), import(map), import(coast), ...parts.styles.split(" ").map(style)]);
  const frame = Object.assign(document.createElement("section"), { className: "choose-map", ariaLabel: words });
  const canvas = Object.assign(document.createElement("div"), { className: "coast-map-canvas", role: "group", ariaLabel: "Map. Arrow keys move it, plus and minus change its scale; its middle is chosen." });
  const cross = Object.assign(document.createElement("span"), { className: "choose-cross", ariaHidden: "true" });
  const line = Object.assign(document.createElement("p"), { className: "small" });
  line.setAttribute("role", "status");
  const bar = Object.assign(document.createElement("p"), { className: "sensor" });
  const take = Object.assign(document.createElement("button"), { type: "button", textContent: use });
  const shut = Object.assign(document.createElement("button"), { type: "button", className: "quiet-button", textContent: "Close the map" });
  bar.append(take, shut);
  canvas.append(cross);
  frame.append(canvas, line, bar);
  host.append(frame);

  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  const drawn = L.map(canvas, { fadeAnimation: !still, zoomAnimation: !still, inertia: !still, attributionControl: false, maxZoom: 19, minZoom: 2 });
  L.control.attribution({ prefix: false }).addTo(drawn);
  L.control.scale({ imperial: false }).addTo(drawn);
  drawn.setView(start ?? [50, -30], start ? 16 : 3, { animate: false });
  const draw = () => { frame.classList.add("drawn-coast"); line.textContent = `${parts.coastNote}.`; drawCoast(L, drawn, parts.coast, failure => { line.textContent = failure; }); };
  if (!parts.tiles) draw();
  else {
    let failed = 0;
    const tiles = new (quietTiles(L))(parts.tiles, { attribution: attribution(parts.attribution), referrerPolicy: "origin", maxZoom: 19 });
    tiles.on("tileload", () => { failed = 0; });
    tiles.on("tileerror", () => { if (++failed === 3) { tiles.remove(); draw(); } });
    tiles.addTo(drawn);
  }
  const close = () => { drawn.remove(); frame.remove(); };
  shut.addEventListener("click", close);
  take.addEventListener("click", () => {
    const { lat, lng } = drawn.getCenter().wrap();
    onUse(lat, lng);
    close();
  });
  frame.addEventListener("keydown", event => { if (event.key === "Escape") { event.preventDefault(); close(); } });
  canvas.focus({ preventScroll: true });
}

/** Direction from one place to another over the sphere, degrees true: for the slider. What is kept is the subject's position; the site computes its bearing on the ellipsoid. */
export function bearing([latitude, longitude], [toLatitude, toLongitude]) {
  const radian = Math.PI / 180;
  const east = (toLongitude - longitude) * radian;
  const [from, to] = [latitude * radian, toLatitude * radian];
  const turn = Math.atan2(Math.sin(east) * Math.cos(to), Math.cos(from) * Math.sin(to) - Math.sin(from) * Math.cos(to) * Math.cos(east));
  return (turn / radian + 360) % 360;
}

/** The first point of a GPX file: a waypoint, else where a route or a track begins. */
export function firstPoint(text) {
  const file = new DOMParser().parseFromString(text, "application/xml");
  if (file.querySelector("parsererror") || file.documentElement.localName !== "gpx") return undefined;
  const point = file.getElementsByTagName("wpt")[0] ?? file.getElementsByTagName("rtept")[0] ?? file.getElementsByTagName("trkpt")[0];
  const [latitude, longitude] = [Number(point?.getAttribute("lat") ?? NaN), Number(point?.getAttribute("lon") ?? NaN)];
  return Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 ? [latitude, longitude] : undefined;
}
