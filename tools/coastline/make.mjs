// Makes data/coastline/land-10m.bin.gz from the TopoJSON of the npm package world-atlas
// (Natural Earth 1:10 million, public domain). Run from the repository's root after npm ci:
//   node tools/coastline/make.mjs
//
// The asset, after gzip is taken off (all little-endian):
//   float64 × 4   longitude of grid column 0, degrees a column, latitude of row 0, degrees a row
//   varint        number of polygons; for each: varint number of rings (the first is the shore, others are lakes);
//                 for each ring: varint number of points, then zigzag varints dx, dy from the point before
//                 (the first from column 0, row 0). The first point is repeated at the end.
// Rings are continuous: one that crosses the 180° meridian runs past it instead of jumping by 360°.
// The ring round the South Pole is closed along latitude -90; readers must not draw those edges as shore.
import { readFileSync, writeFileSync } from "node:fs";
import { gzipSync } from "node:zlib";

const topology = JSON.parse(readFileSync("node_modules/world-atlas/land-10m.json", "utf8"));
const { scale, translate } = topology.transform;
const columnsRound = Math.round(360 / scale[0]);
const southPoleRow = Math.floor((-90 - translate[1]) / scale[1]);

const arcs = topology.arcs.map(arc => {
  let x = 0, y = 0;
  return arc.map(([dx, dy]) => [x += dx, y += dy]);
});

function ringOf(arcIndexes) {
  const points = [];
  for (const index of arcIndexes) {
    const arc = index < 0 ? arcs[~index].toReversed() : arcs[index];
    points.push(...(points.length ? arc.slice(1) : arc));
  }
  return points;
}

function continuous(points) {
  let turn = 0, before = points[0][0];
  const run = points.map(([x, y]) => {
    if (x - before > columnsRound / 2) turn--;
    if (before - x > columnsRound / 2) turn++;
    before = x;
    return [x + turn * columnsRound, y];
  });
  const [first, last] = [run[0], run.at(-1)];
  if (first[0] !== last[0]) run.push([last[0], southPoleRow], [first[0], southPoleRow], first);
  return run.filter(([x, y], i) => i === 0 || x !== run[i - 1][0] || y !== run[i - 1][1]);
}

const bytes = [];
function varint(value) {
  while (value > 127) {
    bytes.push((value & 127) | 128);
    value >>>= 7;
  }
  bytes.push(value);
}
const zigzag = value => varint((value << 1) ^ (value >> 31));

const polygons = topology.objects.land.geometries
  .flatMap(g => g.type === "MultiPolygon" ? g.arcs : [g.arcs])
  .map(rings => rings.map(ringOf).map(continuous).filter(r => r.length > 3))
  .filter(rings => rings.length > 0);

varint(polygons.length);
let points = 0;
for (const rings of polygons) {
  varint(rings.length);
  for (const ring of rings) {
    varint(ring.length);
    points += ring.length;
    let [px, py] = [0, 0];
    for (const [x, y] of ring) {
      zigzag(x - px);
      zigzag(y - py);
      [px, py] = [x, y];
    }
  }
}

const header = Buffer.alloc(32);
[translate[0], scale[0], translate[1], scale[1]].forEach((value, i) => header.writeDoubleLE(value, i * 8));
const asset = gzipSync(Buffer.concat([header, Buffer.from(bytes)]), { level: 9 });
writeFileSync("data/coastline/land-10m.bin.gz", asset);
console.log(`${polygons.length} polygons, ${points} points, ${asset.length} bytes`);
