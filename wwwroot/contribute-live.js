// Ruler and frame that follow the facing while it is turned. Drawn here, by the pinhole geometry of the almanac's Frame, so that
// nothing waits for the site; only the season table is asked for.
const radian = Math.PI / 180;
const svgNamespace = "http://www.w3.org/2000/svg";

/** Millimetres right of and above the picture's centre, or nothing behind the camera. */
export function project({ facing, tilt, focal }, azimuth, altitude) {
  const turn = (azimuth - facing) * radian;
  const [sinAltitude, cosAltitude] = [Math.sin(altitude * radian), Math.cos(altitude * radian)];
  const [sinTilt, cosTilt] = [Math.sin(tilt * radian), Math.cos(tilt * radian)];
  const level = cosAltitude * Math.cos(turn);
  const forward = level * cosTilt + sinAltitude * sinTilt;
  if (forward <= 1e-12) return undefined;
  return [focal * cosAltitude * Math.sin(turn) / forward, focal * (sinAltitude * cosTilt - level * sinTilt) / forward];
}

export const angle = (millimetres, focal) => 2 * Math.atan(millimetres / (2 * focal)) / radian;

export function follow(form) {
  const field = name => form.elements[`f.${name}`];
  const number = name => { const value = Number(String(field(name)?.value ?? "").replace(",", ".")); return field(name)?.value.trim() && Number.isFinite(value) ? value : undefined; };
  const place = form.querySelector("[data-live=facing]");
  const slider = Object.assign(document.createElement("input"), { type: "range", min: "0", max: "359", step: "1", id: "turn" });
  const label = Object.assign(document.createElement("label"), { textContent: "Or drag: facing", htmlFor: "turn" });
  const ruler = figure("live-ruler");
  const frame = figure("live-frame");
  const season = Object.assign(document.createElement("div"), { id: "live-season" });
  const seasonStatus = Object.assign(document.createElement("p"), { className: "small" });
  seasonStatus.setAttribute("role", "status");
  place.append(label, slider, ruler, frame);
  form.querySelector("[data-live=light]").append(seasonStatus, season);

  let sky;
  let skyOf = "";
  let shown = "";
  let waiting;
  slider.addEventListener("input", () => { field("picture-facing").value = slider.value; field("picture-facing").dispatchEvent(new Event("input", { bubbles: true })); });
  form.addEventListener("input", draw);
  form.addEventListener("change", draw);
  window.addEventListener("online", () => { shown = ""; draw(); });
  draw();

  function view() {
    const [focal, width, height] = [number("picture-focal-length"), number("picture-sensor-width"), number("picture-sensor-height")];
    const facing = number("picture-facing");
    if (!(focal > 0 && width > 0 && height > 0) || !(facing >= 0 && facing < 360)) return undefined;
    const upright = field("picture-orientation").value === "Portrait";
    return { facing, tilt: number("picture-tilt") ?? 0, focal, width: upright ? height : width, height: upright ? width : height };
  }

  function draw() {
    const lens = view();
    if (lens && String(Math.round(lens.facing)) !== slider.value) slider.value = Math.round(lens.facing);
    ruler.replaceChildren(...lens ? [drawRuler(lens, sky, Math.max(300, ruler.clientWidth || 0))] : []);
    frame.replaceChildren(...lens ? [drawFrame(lens, sky)] : []);
    clearTimeout(waiting);
    waiting = setTimeout(ask, 350);
  }

  async function ask() {
    const at = field("position").value.trim();
    const zone = zoneOf(field("place"), field("place-zone"));
    if (at && `${at} ${zone}` !== skyOf) {
      try {
        const answer = await fetch(`/contribute/sky?${new URLSearchParams({ at, zone })}`);
        if (answer.ok) { sky = await answer.json(); skyOf = `${at} ${zone}`; draw(); }
      } catch { /* drawn without the sun until there is signal */ }
    }
    const lens = view();
    const wanted = [...form.querySelectorAll("[name='f.picture-wanted']:checked")].map(each => each.value).join(" ");
    if (!lens || !at || !wanted) { seasonStatus.textContent = "The season table comes with a position, a facing and a wanted light."; return; }
    const asked = new URLSearchParams({
      at, zone, wanted, facing: lens.facing, tilt: lens.tilt, "focal-length": lens.focal,
      "sensor-width": field("picture-sensor-width").value, "sensor-height": field("picture-sensor-height").value, orientation: field("picture-orientation").value,
    }).toString();
    if (asked === shown) return;
    seasonStatus.textContent = season.childElementCount ? "Season table: being computed anew…" : "Season table: being computed…";
    try {
      const answer = await fetch(`/contribute/season?${asked}`);
      if (!answer.ok) throw new Error(String(answer.status));
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      season.replaceChildren(...page.body.childNodes);
      [shown, seasonStatus.textContent] = [asked, ""];
      season.dataset.facing = Math.round(lens.facing);
    } catch {
      seasonStatus.textContent = season.dataset.facing === undefined ? "Season table: waiting for signal." : `Season table as of ${season.dataset.facing}°, waiting for signal.`;
    }
  }
}

/** The chosen place's zone, else the nearest one's: times are the coast's own, not this device's. */
function zoneOf(place, typed) {
  const options = [...place.options];
  return options[place.selectedIndex]?.dataset.zone || typed?.value.trim() || options.find(each => each.dataset.zone)?.dataset.zone || Intl.DateTimeFormat().resolvedOptions().timeZone;
}

function figure(id) { return Object.assign(document.createElement("figure"), { id, className: "figure live-figure" }); }

function shape(name, attributes, text) {
  const made = document.createElementNS(svgNamespace, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  if (text !== undefined) made.textContent = text;
  return made;
}

const right = (bearing, left) => ((bearing - left) % 360 + 360) % 360;

/** 180 degrees as seen by somebody standing there, the facing in the middle; the lens as a bracket, the sun's ends as ticks. */
function drawRuler(lens, sky, wide) {
  const left = right(lens.facing - 90, 0);
  const unit = wide / 180;
  const svg = shape("svg", { viewBox: `0 0 ${wide} 96`, width: wide, height: 96, role: "img", class: "ink-live" });
  svg.append(shape("title", {}, `The horizon from ${Math.round(left)}° to ${Math.round(right(left + 180, 0))}°, looking ${Math.round(lens.facing)}°`));
  const half = Math.min(90, angle(lens.width, lens.focal) / 2);
  svg.append(shape("path", { class: "ink-line", d: `M${(90 - half) * unit} 26v-8H${(90 + half) * unit}v8M${90 * unit} 18v6` }));
  svg.append(shape("path", { class: "ink-edge", d: `M0 60H${wide}` }));
  for (let degrees = 0; degrees <= 180; degrees += 30) {
    svg.append(shape("path", { class: "ink-line", d: `M${degrees * unit} 60v8` }));
    svg.append(shape("text", { x: degrees * unit, y: 93, class: degrees === 0 ? "ink-start" : degrees === 180 ? "ink-end" : "ink-middle" }, `${Math.round(right(left + degrees, 0))}°`));
  }
  for (const isUpper of [true, false]) {
    let last = -20;
    const ticks = [..."JFMAMJJASOND"].flatMap((letter, i) => i < 6 === isUpper ? [sky?.rises[i], sky?.sets[i]].map(bearing => [letter, bearing]) : [])
      .filter(([, bearing]) => typeof bearing === "number" && right(bearing, left) <= 180).sort((a, b) => right(a[1], left) - right(b[1], left));
    for (const [letter, bearing] of ticks) {
      const x = right(bearing, left) * unit;
      svg.append(shape("path", { class: "ink-tick", d: `M${x} 55v10` }));
      // A letter that would touch the one before it is left out; its tick stays.
      if (x - last < 11) continue;
      svg.append(shape("text", { x, y: isUpper ? 48 : 79, class: "ink-middle ink-quiet" }, letter));
      last = x;
    }
  }
  return svg;
}

/** What the lens sees: the horizon, and the sun's way today with its times in the margin. */
function drawFrame(lens, sky) {
  const scale = 360 / Math.max(lens.width, lens.height);
  const [width, height] = [lens.width * scale, lens.height * scale];
  const at = (azimuth, altitude) => { const point = project(lens, azimuth, altitude); return point && [width / 2 + point[0] * scale, height / 2 - point[1] * scale]; };
  const svg = shape("svg", { viewBox: `-46 -24 ${width + 92} ${height + 48}`, role: "img", class: "ink-live" });
  svg.append(shape("title", {}, `What a lens of ${lens.focal} mm sees, facing ${Math.round(lens.facing)}°`));
  const inside = shape("svg", { width, height });
  inside.append(shape("rect", { class: "ink-card", width: "100%", height: "100%" }));
  inside.append(shape("path", { class: "ink-edge", d: path(Array.from({ length: 61 }, (_, i) => at(lens.facing - 60 + i * 2, 0))) }));
  const track = (sky?.today ?? []).map(([azimuth, altitude, time]) => ({ point: at(azimuth, altitude), time }));
  inside.append(shape("path", { class: "ink-sun", d: path(track.map(each => each.point)) }));
  svg.append(inside, shape("path", { class: "ink-frame", d: `M0 0h${width}v${height}h${-width}z` }));
  const holds = point => point && point[0] >= 0 && point[0] <= width && point[1] >= 0 && point[1] <= height;
  for (let i = 1; i < track.length; i++) {
    if (holds(track[i].point) === holds(track[i - 1].point)) continue;
    const { point, time } = holds(track[i].point) ? track[i] : track[i - 1];
    const toLeft = point[0] < width / 2;
    svg.append(shape("path", { class: "ink-leader", d: `M${point[0]} ${point[1]}H${toLeft ? -10 : width + 10}` }));
    svg.append(shape("text", { x: toLeft ? -13 : width + 13, y: point[1] + 4, class: toLeft ? "ink-end" : "ink-start" }, time));
  }
  return svg;
}

function path(points) {
  let drawn = "";
  let pen = false;
  for (const point of points) {
    const near = point && Math.abs(point[0]) < 3000 && Math.abs(point[1]) < 3000;
    if (near) drawn += `${pen ? "L" : "M"}${point[0].toFixed(1)} ${point[1].toFixed(1)}`;
    pen = Boolean(near);
  }
  return drawn;
}
