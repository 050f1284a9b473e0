// Forms that are filled in on the coast: nothing typed is lost, sensors fill what they can, a phone sees one question at a time.
// Without this module every form works all the same.
const form = document.querySelector("form[data-draft]");
const status = document.getElementById("draft-status");
const say = words => { if (status) status.textContent = words; };
const store = {
  get: key => { try { return localStorage.getItem(key); } catch { return null; } },
  set: (key, value) => { try { localStorage.setItem(key, value); return true; } catch { return false; } },
  drop: key => { try { localStorage.removeItem(key); } catch { /* nothing was kept then */ } },
};

forgetWhatWasSent();
markSpot(document.getElementById("mark-spot"));
if (form) await fill(form);

/** After sending, the site holds it; the copy in this browser goes. */
function forgetWhatWasSent() {
  const sent = new URL(location.href).searchParams;
  for (const id of [sent.get("sent"), sent.get("form")]) if (id) store.drop(`draft:${id}`);
  for (const name of ["hazard", "near-miss"]) {
    const isBack = form?.dataset.draft === name && !document.querySelector(".error-summary");
    if (isBack && store.get(`sent:${name}`)) { store.drop(`draft:${name}`); store.drop(`sent:${name}`); }
  }
}

/** One tap: the position with its stated accuracy and the time, then the form. */
function markSpot(form) {
  if (!form) return;
  const status = document.getElementById("mark-status");
  const why = cannotLocate();
  status.textContent = why ?? "The position is taken when you tap, with the accuracy this device states.";
  if (why) return;
  form.addEventListener("submit", async event => {
    if (form.dataset.located) return;
    event.preventDefault();
    status.textContent = "Asking this device where it is… Step back from the water meanwhile.";
    const place = await locate();
    if (place.fault) status.textContent = `${place.fault} The position is typed on the next page.`;
    else {
      form.elements["f.position"].value = place.position;
      form.elements["f.accuracy"].value = place.accuracy;
    }
    form.elements["f.marked-at"].value = new Date().toISOString();
    form.dataset.located = "yes";
    form.requestSubmit();
  });
}

/** Why this device will not say where it is, or nothing. */
function cannotLocate() {
  if (!window.isSecureContext) return "This page came without https, so the browser does not give the position away. Type it, or use the map.";
  if (!("geolocation" in navigator)) return "This browser does not know where it is. Type the position, or use the map.";
  return undefined;
}

function locate() {
  return new Promise(done => navigator.geolocation.getCurrentPosition(
    ({ coords }) => done({ position: `${coords.latitude.toFixed(6)}, ${coords.longitude.toFixed(6)}`, accuracy: String(Math.round(coords.accuracy)) }),
    fault => done({ fault: fault.code === 1 ? "This browser was told not to give the position away." : "This device found no position in time." }),
    { enableHighAccuracy: true, timeout: 20000, maximumAge: 5000 }));
}

async function fill(form) {
  const key = `draft:${form.dataset.draft}`;
  const fields = () => [...form.elements].filter(each => each.name && !each.name.startsWith("__") && !["form-id", "then", "_handler"].includes(each.name) && each.type !== "file");
  restore();
  let isDirty = false;
  form.addEventListener("input", () => { isDirty = true; keepHere(); });
  form.addEventListener("change", () => { isDirty = true; keepHere(); });
  form.addEventListener("submit", event => {
    keepHere();
    if (!navigator.onLine) {
      event.preventDefault();
      say("No signal. Everything is kept in this browser; send it again when there is signal.");
      status?.scrollIntoView({ block: "center" });
      return;
    }
    if (["hazard", "near-miss"].includes(form.dataset.draft)) store.set(`sent:${form.dataset.draft}`, "yes");
  });
  window.addEventListener("online", () => say("There is signal again. What you typed is still here."));
  window.addEventListener("offline", () => say("No signal: what you type is kept in this browser."));
  if (form.id === "new-stance") {
    const live = await import(document.querySelector("script[data-live]").dataset.live);
    const steps = stepByStep(form, keepThere);
    position(form, keepHere);
    compass(form, keepHere);
    maps(form);
    formats(form);
    live.follow(form);
    setInterval(() => { if (isDirty && !document.hidden) keepThere(); }, 20000);
    document.addEventListener("visibilitychange", () => { if (document.hidden && isDirty) keepThere(); });
    steps.showFault();
  }

  function keepHere() {
    const values = Object.create(null);
    for (const each of fields()) {
      if (each.type === "checkbox") { (values[each.name] ??= []); if (each.checked) values[each.name].push(each.value); }
      else if (each.type === "radio") { if (each.checked) values[each.name] = each.value; }
      else values[each.name] = each.value;
    }
    store.set(key, JSON.stringify({ at: Date.now(), values }));
  }

  function restore() {
    let kept;
    try { kept = JSON.parse(store.get(key) ?? "null"); } catch { kept = null; }
    if (!kept || Date.now() - kept.at > 30 * 24 * 3600 * 1000) return;
    let changed = 0;
    for (const each of fields()) {
      if (!Object.hasOwn(kept.values, each.name)) continue;
      const value = kept.values[each.name];
      if (each.type === "checkbox") { const on = value.includes(each.value); if (each.checked !== on) { each.checked = on; changed++; } }
      else if (each.type === "radio") { const on = value === each.value; if (each.checked !== on) { each.checked = on; changed++; } }
      else if (each.value !== value && value !== "") { each.value = value; if (each.value === value) changed++; }
    }
    if (changed) say(`What you typed here at ${new Date(kept.at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" })} was kept in this browser and is back.`);
  }

  async function keepThere() {
    keepHere();
    const body = new FormData(form);
    body.delete("photo");
    body.set("then", "keep");
    isDirty = false;
    try {
      const answer = await fetch(form.action || location.href, { method: "POST", body, redirect: "manual", credentials: "same-origin" });
      if (answer.ok || answer.type === "opaqueredirect") say(`Kept as a draft at ${new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" })}.`);
      else throw new Error(String(answer.status));
    } catch {
      isDirty = true;
      say("Not kept on the site: no signal, or the sign-in has ended. It is kept in this browser.");
    }
  }
}

/** On a phone one question stands on the screen; on a desktop, in print and without this module the whole page does. */
function stepByStep(form, keep) {
  const narrow = matchMedia("(max-width: 47.99rem)");
  const steps = [...form.querySelectorAll(".step")];
  let here = 0;
  for (const [i, step] of steps.entries()) {
    const bar = make("p", { className: "step-bar" });
    const count = make("span", { className: "quiet", textContent: `Question ${i + 1} of ${steps.length}` });
    bar.append(count);
    if (i > 0) bar.append(button("Back", () => go(i - 1)));
    if (i < steps.length - 1) bar.append(button("Next", () => { keep(); go(i + 1); }));
    step.append(bar);
  }
  narrow.addEventListener("change", show);
  show();
  return { showFault() {
    const fault = form.querySelector(".field-fault");
    if (fault) go(steps.findIndex(step => step.contains(fault)), false);
  } };

  function go(to, focus = true) {
    here = Math.max(0, Math.min(steps.length - 1, to));
    show();
    if (!focus) return;
    const head = steps[here].querySelector("h2");
    head.tabIndex = -1;
    head.focus();
    head.scrollIntoView({ block: "start" });
  }

  function show() { for (const [i, step] of steps.entries()) step.hidden = narrow.matches && i !== here; }
}

function position(form, keep) {
  const field = form.elements["f.position"];
  const line = make("p", { className: "sensor" });
  const words = make("span", { className: "small", role: "status" });
  const why = cannotLocate();
  if (why) words.textContent = why;
  else line.append(button("Use this device’s position", async () => {
    words.textContent = "Asking…";
    const place = await locate();
    if (place.fault) { words.textContent = `${place.fault} Type it, or use the map.`; return; }
    field.value = place.position;
    form.elements["f.accuracy"].value = place.accuracy;
    words.textContent = `Taken, within ${place.accuracy} m by this device’s own word. Its altitude is not taken: it can be metres out.`;
    field.dispatchEvent(new Event("input", { bubbles: true }));
    keep();
  }));
  line.append(words);
  form.querySelector("[data-live=where]").append(line);
}

/** The direction of the lens on the back of the phone, or of its upper edge while it lies flat: the example of the W3C's Device Orientation text. */
export function heading(alpha, beta, gamma) {
  const radian = Math.PI / 180;
  const [sX, sY] = [Math.sin(beta * radian), Math.sin(gamma * radian)];
  const [cY, cZ, sZ] = [Math.cos(gamma * radian), Math.cos(alpha * radian), Math.sin(alpha * radian)];
  const east = -cZ * sY - sZ * sX * cY;
  const north = -sZ * sY + cZ * sX * cY;
  if (Math.hypot(east, north) < 0.5) return (360 - alpha) % 360;
  return (Math.atan2(east, north) / radian + 360) % 360;
}

function compass(form, keep) {
  const line = make("p", { className: "sensor" });
  const words = make("span", { className: "small", role: "status" });
  let reading;
  const take = button("Take this reading", async () => {
    if (reading === undefined) return;
    const read = Math.round(reading);
    set("f.picture-compass", read);
    set("f.picture-compass-read", new Date().toISOString().slice(0, 10));
    const declination = await declinationAt(form.elements["f.position"].value);
    if (declination === undefined) { words.textContent = `Compass ${read}° taken. The declination could not be fetched: type it, or take the reading again with signal.`; return; }
    set("f.picture-declination", declination.value);
    set("f.picture-compass-model", declination.model);
    set("f.picture-facing", Math.round(((read + declination.value) % 360 + 360) % 360));
    words.textContent = `Compass ${read}°, declination ${declination.value}°: facing ${form.elements["f.picture-facing"].value}° true. Iron, magnets and cars nearby turn a compass.`;
    keep();
  });
  take.hidden = true;
  const start = button("Turn on the spot", async () => {
    if (!window.isSecureContext) { words.textContent = "This page came without https, so the browser gives no compass. Type the facing, or drag the slider."; return; }
    const ask = window.DeviceOrientationEvent?.requestPermission;
    if (ask && await ask.call(window.DeviceOrientationEvent).catch(() => "denied") !== "granted") { words.textContent = "This browser was told not to give the compass away. Type the facing, or drag the slider."; return; }
    words.textContent = "Point the back of the phone where the picture faces.";
    const nothing = setTimeout(() => { if (reading === undefined) words.textContent = "This device gives no compass. Type the facing, or drag the slider."; }, 4000);
    const listen = event => {
      const at = typeof event.webkitCompassHeading === "number" ? event.webkitCompassHeading
        : event.absolute && event.alpha !== null ? heading(event.alpha, event.beta ?? 0, event.gamma ?? 0) : undefined;
      if (at === undefined) return;
      clearTimeout(nothing);
      reading = at;
      take.hidden = false;
      take.textContent = `Take this reading: compass ${Math.round(at)}°`;
    };
    window.addEventListener("deviceorientationabsolute", listen);
    window.addEventListener("deviceorientation", listen);
  });
  line.append(start, take, words);
  form.querySelector("[data-live=facing]").append(line);

  function set(name, value) {
    form.elements[name].value = value;
    form.elements[name].dispatchEvent(new Event("input", { bubbles: true }));
  }
}

/** A map for the spot and one for the subject, and the first point of a GPX file. */
function maps(form) {
  const parts = document.getElementById("map-parts").dataset;
  const field = name => form.elements[`f.${name}`];
  const read = name => { const [latitude, longitude] = field(name).value.split(",").map(Number); return Number.isFinite(latitude) && Number.isFinite(longitude) ? [latitude, longitude] : undefined; };
  const put = (name, value) => { field(name).value = value; field(name).dispatchEvent(new Event("input", { bubbles: true })); };
  const where = form.querySelector("[data-live=where]");
  const facing = form.querySelector("[data-live=facing]");
  const words = make("p", { className: "small" });
  words.setAttribute("role", "status");

  const open = async (host, options) => {
    try {
      const { choose } = await import(parts.module);
      await choose(host, { parts, ...options });
    } catch { words.textContent = "The map could not be fetched. Type it, or try again where the signal is better."; }
  };
  const onMap = button("Choose on the map", () => open(where, {
    start: read("position"), words: "Where the tripod stands", use: "The tripod stands in the middle",
    onUse: (latitude, longitude) => { put("position", `${latitude.toFixed(6)}, ${longitude.toFixed(6)}`); field("accuracy").value = ""; },
  }));
  const file = make("input", { type: "file", accept: ".gpx,application/gpx+xml", id: "gpx" });
  const label = make("label", { htmlFor: "gpx", textContent: "Or the first point of a GPX file" });
  file.addEventListener("change", async () => {
    const { firstPoint } = await import(parts.module);
    const point = file.files[0]?.size < 5_000_000 ? firstPoint(await file.files[0].text()) : undefined;
    if (point) put("position", `${point[0]}, ${point[1]}`);
    words.textContent = point ? "Taken from the file." : "This is no GPX file with a point in it, or it is larger than 5 MB. Choose another, or type the position.";
  });
  where.append(onMap, label, file, words);
  facing.prepend(button("Point at the subject on the map", async () => {
    const spot = read("position");
    if (!spot) { words.textContent = "The position of the tripod comes first."; return; }
    const { bearing } = await import(parts.module);
    await open(facing, {
      start: read("picture-subject-position") ?? spot, words: "Where the subject stands", use: "The subject stands in the middle",
      onUse: (latitude, longitude) => {
        put("picture-subject-position", `${latitude.toFixed(6)}, ${longitude.toFixed(6)}`);
        put("picture-facing", Math.round(bearing(spot, [latitude, longitude])) % 360);
      },
    });
  }));
}

/** Formats by name fill in width and height. */
function formats(form) {
  const place = form.querySelector("[data-live=lens]");
  const line = make("p", { className: "sensor" });
  for (const [name, width, height] of [["Full frame", 36, 24], ["APS-C", 23.5, 15.6], ["Four Thirds", 17.3, 13], ["Medium format", 43.8, 32.9], ["One inch", 13.2, 8.8]])
    line.append(button(name, () => {
      for (const [field, value] of [["width", width], ["height", height]]) {
        form.elements[`f.picture-sensor-${field}`].value = value;
        form.elements[`f.picture-sensor-${field}`].dispatchEvent(new Event("input", { bubbles: true }));
      }
    }));
  place.append(make("p", { className: "small", textContent: "Sensor, by its usual name:" }), line);
}

async function declinationAt(position) {
  const [latitude, longitude] = position.split(",").map(Number);
  if (!Number.isFinite(latitude) || !Number.isFinite(longitude)) return undefined;
  try {
    const answer = await fetch(`/api/v1/almanac/declination?lat=${latitude}&lon=${longitude}&date=${new Date().toISOString().slice(0, 10)}`);
    const found = await answer.json();
    return { value: Math.round(found.declinationDegrees * 10) / 10, model: found.model };
  } catch { return undefined; }
}

function make(name, properties) { return Object.assign(document.createElement(name), properties); }

function button(words, act) {
  const made = make("button", { type: "button", className: "quiet-button", textContent: words });
  made.addEventListener("click", act);
  return made;
}
