// The coast drawn from the site's own asset, for where no tiles come.

/** Draws the coast of the view, and again when the view leaves what was drawn or comes much closer. */
export function drawCoast(L, map, address, onFailure) {
  map.createPane("coast").classList.add("coast-map-coast");
  const source = "Coast: Natural Earth";
  let drawn, box, zoom, asking;

  async function redraw() {
    const view = map.getBounds();
    if (box?.contains(view) && Math.abs(map.getZoom() - zoom) < 1) return;
    const wide = view.pad(0.5);
    const ask = asking = {};
    try {
      const edges = edgesOf(wide);
      const answer = await fetch(`${address}?${new URLSearchParams(edges.query)}`);
      if (!answer.ok) throw new Error(`${answer.status}`);
      const coast = await answer.json();
      if (ask !== asking || !map.getPane("coast")) return;
      const layer = L.geoJSON(coast, {
        pane: "coast", interactive: false, attribution: source,
        coordsToLatLng: ([longitude, latitude]) => L.latLng(latitude, edges.place(longitude)),
        style: feature => ({ className: feature.properties.kind === "land" ? "coast-land" : "coast-shore" }),
      }).addTo(map);
      drawn?.remove();
      [drawn, box, zoom] = [layer, wide, map.getZoom()];
    } catch (failure) {
      if (ask === asking && !drawn) onFailure("Neither map tiles nor the drawn coast can be reached. The marks stand without a coast; the list says the same.");
    }
  }

  map.on("moveend", redraw);
  redraw();
}

/** The server takes −180…180 and answers in it; the map may have been turned further. */
function edgesOf(bounds) {
  const south = Math.max(-89.9, bounds.getSouth()), north = Math.min(89.9, bounds.getNorth());
  const width = bounds.getEast() - bounds.getWest();
  if (width >= 360) return { query: { west: -180, south, east: 180, north }, place: longitude => longitude };
  const turn = 360 * Math.floor((bounds.getWest() + 180) / 360);
  const west = bounds.getWest() - turn;
  const east = west + width > 180 ? west + width - 360 : west + width;
  const round = v => v.toFixed(5);
  return {
    query: { west: round(west), south: round(south), east: round(east), north: round(north) },
    place: longitude => (longitude < west - 1e-4 ? longitude + 360 : longitude) + turn,
  };
}
