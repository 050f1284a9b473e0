// <coast-map>: a map on request. Nothing is fetched before it is opened. The list inside the element holds all names and
// words; the JSON beside it holds shapes. Map and list show the same things and lead to each other.
const METRES_PER_DEGREE = 111195; // of latitude, on the mean Earth radius
const FAILED_TILES = 3;

class CoastMap extends HTMLElement {
  #list = this.querySelector("details");
  #open;
  #frame;
  #map;
  #drawCoast;
  #drawn = new Map();

  connectedCallback() {
    if (this.#open || !this.querySelector("script")) return;
    this.#open = make("button", { type: "button", textContent: "Open the map" });
    this.#open.addEventListener("click", () => this.open());
    this.prepend(this.#open);
    if (this.#inAddress()) this.open();
  }

  disconnectedCallback() {
    this.#putAway();
    this.#open?.remove();
    this.#open = undefined;
  }

  async open() {
    this.#open.disabled = true;
    this.#open.textContent = "Opening the map…";
    try {
      const words = name => this.getAttribute(name).split(" ");
      const [L, marks, coast] = await Promise.all([...words("modules").map(m => import(m)), ...words("styles").map(style)]);
      if (!this.isConnected || this.#map) return;
      this.#drawCoast = coast.drawCoast;
      this.#unfold();
      this.#build(L, marks);
      this.#open.hidden = true;
    } catch (failure) {
      console.warn("The map could not be opened.", failure);
      this.#open.after(make("p", { className: "small", role: "status", textContent: "The map could not be fetched. The list below says the same; try again where the signal is better." }));
    } finally {
      this.#open.disabled = false;
      this.#open.textContent = "Open the map";
    }
  }

  close() {
    this.#putAway();
    const address = new URL(location.href);
    ["at", "span"].forEach(p => address.searchParams.delete(p));
    if (address.href !== location.href) history.replaceState(history.state, "", address);
    this.#open.hidden = false;
    this.#open.focus();
  }

  #putAway() {
    this.#map?.remove();
    this.#map = undefined;
    if (!this.#frame) return;
    this.#drawn.clear();
    for (const b of this.#list.querySelectorAll(".coast-map-show")) b.remove();
    for (const li of this.#list.querySelectorAll("[aria-current]")) li.removeAttribute("aria-current");
    this.append(this.#list);
    this.#list.open = false;
    this.#frame.close?.();
    this.#frame.remove();
    this.#frame = undefined;
  }

  #unfold() {
    const over = this.hasAttribute("laid-over");
    this.#frame = make(over ? "dialog" : "section", { className: "coast-map-frame", ariaLabel: `Map: ${this.getAttribute("name")}` });
    const bar = make("div", { className: "coast-map-bar" });
    const shut = make("button", { type: "button", textContent: over ? "Put the map away" : "Close the map" });
    shut.addEventListener("click", () => this.close());
    bar.append(make("p", { className: "place", textContent: this.getAttribute("name") }), shut);
    this.#frame.append(bar, make("div", { className: "coast-map-canvas", role: "group", ariaLabel: "Map. Arrow keys move it, plus and minus change its scale." }), make("p", { className: "coast-map-note small", role: "status" }), this.#list);
    this.#list.open = true;
    this.append(this.#frame);
    if (over) {
      this.#frame.addEventListener("cancel", e => { e.preventDefault(); this.close(); });
      this.#frame.showModal();
    }
  }

  #build(L, marks) {
    const sheet = JSON.parse(this.querySelector("script").textContent);
    const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    const canvas = this.#frame.querySelector(".coast-map-canvas");
    const map = this.#map = L.map(canvas, {
      fadeAnimation: !still, zoomAnimation: !still, markerZoomAnimation: !still, inertia: !still,
      maxZoom: 19, minZoom: 2, worldCopyJump: true, closePopupOnEscape: false, attributionControl: false,
    });
    L.control.attribution({ prefix: false }).addTo(map);
    L.control.scale({ imperial: false }).addTo(map);
    this.#look(L, sheet.view ?? [-180, -60, 180, 75]);

    const near = map.getCenter().lng;
    for (const item of sheet.items) {
      const entry = this.#entry(item.id);
      if (!entry) continue;
      const layer = marks.draw(L, item, nameOf(entry), near).addTo(map);
      layer.bindPopup(() => popup(entry), { closeButton: false, maxWidth: 280, className: "coast-map-popup" });
      layer.on("popupopen", ({ popup }) => { this.#current(entry); focusInto(popup.getElement()); });
      layer.on("popupclose", () => entry.removeAttribute("aria-current"));
      this.#drawn.set(item.id, layer);
      const name = make("span", { className: "unseen", textContent: ` ${nameOf(entry)} on the map` });
      const show = make("button", { type: "button", className: "coast-map-show", textContent: "Show" });
      show.append(name);
      show.addEventListener("click", () => this.show(item.id));
      entry.append(show);
    }
    canvas.after(marks.key(sheet.items));

    canvas.addEventListener("keydown", e => {
      if (e.key !== "Escape" || !map._popup?.isOpen()) return;
      e.preventDefault();
      e.stopPropagation();
      const mark = map._popup._source;
      map.closePopup();
      (mark?.getElement?.() ?? canvas).focus();
    });
    map.on("moveend", () => this.#remember());
    this.#tiles(L);
    canvas.focus({ preventScroll: true });
  }

  show(id) {
    const layer = this.#drawn.get(id);
    const at = layer.getLatLng?.() ?? layer.getBounds().getCenter();
    this.#frame.querySelector(".coast-map-canvas").scrollIntoView({ block: "nearest" });
    this.#map.panTo(at, { animate: false });
    layer.openPopup(at);
  }

  #current(entry) {
    for (const other of this.#list.querySelectorAll("[aria-current]")) other.removeAttribute("aria-current");
    entry.setAttribute("aria-current", "true");
    const { offsetTop, offsetHeight } = entry;
    if (offsetTop < this.#list.scrollTop || offsetTop + offsetHeight > this.#list.scrollTop + this.#list.clientHeight)
      this.#list.scrollTop = offsetTop - 16;
  }

  #entry = id => this.#list.querySelector(`[data-item="${CSS.escape(id)}"]`);

  /** Tiles while they come; after three in a row that did not, the coast as the site itself can draw it. */
  #tiles(L) {
    const template = this.getAttribute("tiles");
    const note = this.#frame.querySelector(".coast-map-note");
    const drawn = () => {
      note.textContent = `${this.getAttribute("coast-note")}.`;
      this.#frame.classList.add("drawn-coast");
      this.#drawCoast(L, this.#map, this.getAttribute("coast"), failure => { note.textContent = failure; });
    };
    if (!template) return drawn();

    let failed = 0;
    const tiles = new (quietTiles(L))(template, { attribution: attribution(this.getAttribute("attribution")), referrerPolicy: "origin", maxZoom: 19 });
    tiles.on("tileload", () => { failed = 0; });
    tiles.on("tileerror", () => {
      if (++failed !== FAILED_TILES) return;
      tiles.remove();
      drawn();
    });
    tiles.addTo(this.#map);
  }

  /** ?at=lat,lon&span=metres: middle and height of the view. Null when absent or not a place on Earth. */
  #inAddress() {
    const query = new URLSearchParams(location.search);
    const [latitude, longitude, ...more] = (query.get("at") ?? "").split(",").map(text => text.trim() === "" ? NaN : Number(text));
    const span = Number(query.get("span") ?? 2000);
    const isPlace = Math.abs(latitude) <= 85 && Math.abs(longitude) <= 180 && span >= 50 && span <= 2e7 && more.length === 0;
    return isPlace ? { latitude, longitude, span } : null;
  }

  #look(L, [west, south, east, north]) {
    const wanted = this.#inAddress();
    if (!wanted) return this.#map.fitBounds([[south, west], [north, east]], { animate: false });
    const half = wanted.span / METRES_PER_DEGREE / 2;
    const { latitude, longitude } = wanted;
    this.#map.setView([latitude, longitude], 2);
    const zoom = this.#map.getBoundsZoom([[Math.max(-85, latitude - half), longitude], [Math.min(85, latitude + half), longitude]]);
    this.#map.setView([latitude, longitude], zoom, { animate: false });
  }

  #remember() {
    const { lat, lng } = this.#map.getCenter().wrap();
    const bounds = this.#map.getBounds();
    const span = Math.round((bounds.getNorth() - bounds.getSouth()) * METRES_PER_DEGREE);
    const address = new URL(location.href);
    address.searchParams.delete("at");
    address.searchParams.delete("span");
    // Put together by hand: a comma stays a comma, and the address stays readable.
    address.search += `${address.search ? "&" : "?"}at=${lat.toFixed(5)},${lng.toFixed(5)}&span=${span}`;
    history.replaceState(history.state, "", address);
  }
}

const nameOf = entry => entry.querySelector("a, b").textContent.trim();

function popup(entry) {
  const box = make("div", {});
  for (const part of entry.querySelectorAll(":scope > a, :scope > b, :scope > p")) box.append(part.cloneNode(true));
  return box;
}

function focusInto(element) {
  const target = element.querySelector("a") ?? element.querySelector(".leaflet-popup-content");
  if (target.tagName !== "A") target.tabIndex = -1;
  target.focus({ preventScroll: true });
}

/** Leaflet lets go of a tile by a picture in a data: address, which the site's policy refuses; no picture does as well. */
export function quietTiles(L) {
  return L.TileLayer.extend({
    _removeTile(key) {
      this._tiles[key]?.el.removeAttribute("src");
      return L.GridLayer.prototype._removeTile.call(this, key);
    },
    _abortLoading() {
      for (const [key, tile] of Object.entries(this._tiles)) {
        if (tile.coords.z === this._tileZoom) continue;
        tile.el.onload = tile.el.onerror = null;
        if (tile.el.complete) continue;
        tile.el.removeAttribute("src");
        tile.el.remove();
        delete this._tiles[key];
      }
    },
  });
}

/** The setting is words, not markup; the one address it needs is added here. */
export function attribution(text) {
  const span = make("span", { textContent: text ?? "" });
  if (!/openstreetmap/i.test(span.textContent)) return span.innerHTML;
  return `<a href="https://www.openstreetmap.org/copyright" rel="noopener">${span.innerHTML}</a>`;
}

function style(address) {
  if ([...document.styleSheets].some(s => s.href?.endsWith(address))) return Promise.resolve();
  return new Promise((loaded, failed) => {
    const link = make("link", { rel: "stylesheet", href: address, onload: loaded, onerror: () => failed(new Error(address)) });
    document.head.append(link);
  });
}

function make(tag, properties) {
  return Object.assign(document.createElement(tag), properties);
}

customElements.define("coast-map", CoastMap);
