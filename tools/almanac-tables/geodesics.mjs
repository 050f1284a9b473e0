// Makes tests/Almanac.Tests/Published/Earth/geographiclib-sweep.csv: geodesics by a second implementation.
// Run from the repository's root after `npm ci`: node tools/almanac-tables/geodesics.mjs
import { writeFileSync } from 'node:fs';
import geodesic from 'geographiclib-geodesic';

const earth = geodesic.Geodesic.WGS84;
const rows = [];
const add = (lat1, lon1, lat2, lon2) => {
  const r = earth.Inverse(lat1, lon1, lat2, lon2);
  rows.push([lat1, lon1, lat2, lon2, r.s12.toFixed(6), r.azi1.toFixed(10), r.azi2.toFixed(10)].join(','));
};

// A linear congruential generator (Numerical Recipes): the same lines whenever the script runs.
let seed = 20260101;
const next = () => (seed = (seed * 1664525 + 1013904223) % 4294967296) / 4294967296;
const degrees = (from, to) => +(from + (to - from) * next()).toFixed(5);

for (let i = 0; i < 300; i++) add(degrees(-90, 90), degrees(-180, 180), degrees(-90, 90), degrees(-180, 180));
// A walk, a bay, a coast.
for (const reach of [0.0001, 0.01, 1])
  for (let i = 0; i < 60; i++) {
    const lat = degrees(-80, 80), lon = degrees(-179.9, 179.9);
    add(lat, lon, +(lat + degrees(-reach, reach)).toFixed(6), +Math.max(-180, Math.min(179.99, lon + degrees(-reach, reach))).toFixed(6));
  }
// Nearly opposite points, where simple methods fail.
for (let i = 0; i < 150; i++) {
  const lat = degrees(-89, 89), lon = degrees(-179, -1);
  add(lat, lon, +(-lat + degrees(-0.5, 0.5)).toFixed(5), +(lon + 180 + degrees(-0.5, 0.5)).toFixed(5));
}
// Poles, equator, date line, meridians.
for (const line of [
  [90, 0, -90, 0], [90, 10, 44, -67], [-90, 0, 44, -67], [44, -67, 90, 0], [0, 0, 0, 90], [0, 0, 0, 179], [0, 0, 0, 179.5],
  [0, -170, 0, 170], [10, 179.9, 10, -179.9], [-17, 179.99, -18, -179.99], [30, 20, 50, 20], [50, 20, 30, 20],
  [30, 20, -29.9, -160], [0.5, 0, 0.5, 179.7], [0.5, 0, -0.5, 179.7], [44, -67, 44, -67.00001], [44, -67, 44, 113], [1e-5, 0, -1e-5, 0],
]) add(...line);

writeFileSync('tests/Almanac.Tests/Published/Earth/geographiclib-sweep.csv', `# source: npm package geographiclib-geodesic 2.2.0 (C. F. F. Karney), WGS 84, run by tools/almanac-tables/geodesics.mjs
# licence: MIT
# unit: m and degrees
# tolerance: 0.000002 m in length; bearings 1e-9 degrees, or 1e-7 m across the line where that is more
# why: a second implementation, printed to 6 decimals; between close points a bearing is only as good as the rounding of the positions
latitude1,longitude1,latitude2,longitude2,metres,bearing1,bearing2
${rows.join('\n')}
`);
