// Makes tests/Guide.Tests/Published/coastline-clips.csv: what second implementations (the npm packages
// polygon-clipping, Martinez and Rueda's method, for land and lineclip, Cohen and Sutherland's, for shore) say of the same
// source cut to boxes. Run from the repository's root after npm ci:
//   node tools/coastline/check.mjs
import { readFileSync, writeFileSync } from "node:fs";
import { feature } from "topojson-client";
import { clipPolyline as lineclip } from "lineclip";
import clipping from "polygon-clipping";

const topology = JSON.parse(readFileSync("node_modules/world-atlas/land-10m.json", "utf8"));
const polygons = feature(topology, topology.objects.land).features.flatMap(f => f.geometry.coordinates)
  // Fourteen islets have become lines on the package's grid: nothing enclosed; the asset leaves them out.
  .filter(rings => new Set(rings[0].map(String)).size > 2)
  // The ring round the South Pole is not a plane polygon; boxes stay north of it.
  .filter(rings => Math.max(...rings[0].map(p => p[1])) > -60)
  .map(rings => rings.map(ring => {
    let turn = 0;
    return ring.map(([x, y], i) => {
      const step = i === 0 ? 0 : x - ring[i - 1][0];
      if (step > 180) turn -= 360;
      if (step < -180) turn += 360;
      return [x + turn, y];
    });
  }))
  .map(rings => ({ rings, west: Math.min(...rings[0].map(p => p[0])), east: Math.max(...rings[0].map(p => p[0])),
    south: Math.min(...rings[0].map(p => p[1])), north: Math.max(...rings[0].map(p => p[1])) }));

// Numerical Recipes' quick linear congruential generator: the table must be the same on every run.
let state = 20240601;
const next = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
const boxes = [[175, 60, 190, 75], [176, -20, 184, -12], [-69, 44, -66.5, 45.2], [-130, 10, -60, 60], [10, -1, 50, 1]];
while (boxes.length < 60) {
  const ring = polygons[Math.floor(next() ** 2 * polygons.length)].rings[0];
  const [x, y] = ring[Math.floor(next() * ring.length)];
  const half = 0.02 * 500 ** next();
  const box = [x - half * next(), y - half * next(), x + half * next(), y + half * next()].map(v => Math.round(v * 1e4) / 1e4);
  if (box[0] >= -180 && box[0] <= 180 && box[1] > -59 && box[3] < 84 && box[2] - box[0] > 0.01 && box[3] - box[1] > 0.01) boxes.push(box);
}

const rows = boxes.map(([west, south, east, north]) => {
  const box = [[[west, south], [east, south], [east, north], [west, north], [west, south]]];
  let area = 0, shore = 0;
  for (const p of polygons)
    for (const turn of [-360, 0, 360]) {
      if (p.west + turn > east || p.east + turn < west || p.south > north || p.north < south) continue;
      const moved = p.rings.map(ring => ring.map(([x, y]) => [x + turn, y]));
      for (const line of moved.flatMap(ring => lineclip(ring, [west, south, east, north])))
        for (let i = 1; i < line.length; i++) shore += Math.hypot(line[i][0] - line[i - 1][0], line[i][1] - line[i - 1][1]);
      for (const piece of clipping.intersection(moved, box))
        piece.forEach((ring, hole) => {
          let twice = 0;
          for (let i = 1; i < ring.length; i++) {
            const [[ax, ay], [bx, by]] = [ring[i - 1], ring[i]];
            twice += ax * by - bx * ay;
          }
          area += (hole ? -1 : 1) * Math.abs(twice) / 2;
        });
    }
  return [west, south, east, north, area.toFixed(9), shore.toFixed(9)].join(",");
});

writeFileSync("tests/Guide.Tests/Published/coastline-clips.csv", `# Land within boxes of the map, as a second implementation cuts it
# Source: npm polygon-clipping 0.15.7 (MIT) and lineclip 2.0.0 (ISC) on npm world-atlas 2.0.2 land-10m (Natural Earth, public domain), by tools/coastline/check.mjs
# Units: edges in degrees; land_area in square degrees, shore_length in degrees, on the plane of longitude and latitude
# Tolerance: 1e-6 of the value + 1e-7: both work in doubles on the same points; the rest is the ninth decimal printed here
west,south,east,north,land_area,shore_length
${rows.join("\n")}
`);
