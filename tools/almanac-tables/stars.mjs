// Makes the sweep in tests/Almanac.Tests/Published/Stars by a second implementation.
// Run from the repository's root after `npm ci`: node tools/almanac-tables/stars.mjs
import { writeFileSync, mkdirSync } from 'node:fs';
import { Observer, Equator, Horizon, Body, MakeTime, DefineStar } from 'astronomy-engine';

const folder = 'tests/Almanac.Tests/Published/Stars/';
mkdirSync(folder, { recursive: true });
// Origin of galactic coordinates, ICRS, ESA SP-1200; far enough that nothing but the Earth's own motion shows.
DefineStar(Body.Star1, 266.40499 / 15, -28.93617, 26000);
let seed = 19580101;
const next = () => (seed = (seed * 1664525 + 1013904223) % 4294967296) / 4294967296;
const between = (from, to) => from + (to - from) * next();
const start = Date.UTC(1950, 0, 1), span = Date.UTC(2100, 11, 25) - start;
const rows = [];
for (let i = 0; i < 300; i++) {
  const observer = new Observer(+between(-75, 75).toFixed(4), +between(-180, 180).toFixed(4), 0);
  const ms = start + Math.floor(between(0, span) / 1000) * 1000;
  const time = MakeTime(new Date(ms));
  const place = Equator(Body.Star1, time, observer, true, true);
  const h = Horizon(time, observer, place.ra, place.dec);
  rows.push([new Date(ms).toISOString().replace('.000', ''), observer.latitude, observer.longitude, h.azimuth.toFixed(5), h.altitude.toFixed(5)].join(','));
}
writeFileSync(folder + 'astronomy-engine-centre.csv', `# source: npm package astronomy-engine 2.1.19 (D. Cross), a star defined at the origin of galactic coordinates, airless azimuth and altitude, run by tools/almanac-tables/stars.mjs
# licence: MIT
# unit: degrees
# tolerance: 0.005 of arc on the sky
# why: a tenth of what a photographer can use; both sides claim far better than 0.001
time,latitude,longitude,azimuth,altitude
${rows.join('\n')}
`);
