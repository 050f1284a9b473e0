// Makes tests/Almanac.Tests/Published/Tides/m1-pairs.csv from the npm package @neaps/tide-database: stations of NOAA and of TICON that
// stand within two kilometres of each other in the same water, for their waves M1.
// Run from the repository's root after `npm ci`: node tools/tides/m1.mjs
// The same water: O1 and K1 of the two agree within a twentieth, size and phase together. NOAA gives M1 in millimetres; under five
// of them its own rounding would be a tenth.
import { readFileSync, writeFileSync } from 'node:fs';
import { stations as all } from '@neaps/tide-database';

const MOST_KM = 2, LEAST_METRES = 0.0045, MOST_APART = 0.05;
const version = JSON.parse(readFileSync('node_modules/@neaps/tide-database/package.json', 'utf8')).version;
const radian = Math.PI / 180;
const wave = (s, name) => s.harmonic_constituents.find(h => h.name === name);
const arrow = h => [h.amplitude * Math.cos(h.phase * radian), h.amplitude * Math.sin(h.phase * radian)];
const apart = (s, other, name) => {
  const [one, two] = [wave(s, name), wave(other, name)];
  if (!one || !two) return Infinity;
  const [a, b] = [arrow(one), arrow(two)];
  return Math.hypot(a[0] - b[0], a[1] - b[1]) / Math.hypot(...b);
};
const km = (s, other) => 111.2 * Math.hypot((s.longitude - other.longitude) * Math.cos(s.latitude * radian), s.latitude - other.latitude);

const usable = all.filter(s => s.kind === 'tide' && s.quality?.accepted && s.type !== 'subordinate' && wave(s, 'M1'));
const noaa = usable.filter(s => s.id.startsWith('noaa/') && wave(s, 'M1').amplitude >= LEAST_METRES);
const rows = usable.filter(s => s.id.startsWith('ticon/') && s.license.type === 'cc-by-4.0' && s.epoch?.start).sort((a, b) => (a.id < b.id ? -1 : 1))
  .flatMap(s => noaa.filter(other => km(s, other) <= MOST_KM && ['O1', 'K1'].every(name => apart(s, other, name) <= MOST_APART))
    .map(other => [other.id, s.id, km(s, other).toFixed(2), wave(other, 'M1').amplitude.toFixed(4), wave(other, 'M1').phase.toFixed(2),
      wave(s, 'M1').amplitude.toFixed(4), wave(s, 'M1').phase.toFixed(2), s.epoch.start.slice(0, 4), s.epoch.end.slice(0, 4)].join(',')));
writeFileSync('tests/Almanac.Tests/Published/Tides/m1-pairs.csv', `# source: npm package @neaps/tide-database ${version}: M1 of NOAA CO-OPS beside M1 of TICON-4 (Hart-Davis, Dettmering, Seitz 2025, https://doi.org/10.17882/109129), all pairs within 2 km whose O1 and K1 agree within 5 %, picked by tools/tides/m1.mjs
# licence: public domain (NOAA), CC BY 4.0 (TICON-4)
# unit: 1
# tolerance: 0.7; of records shorter than 9 years 1.1
# why: rms of the difference of the two waves through 19 years, over the rms of NOAA's; leaving the wave out gives 1, the usual reading of M1 1.1 and more, noise 1.4. Short records do not settle the wave. NOAA's own is whole millimetres, and of many stations inferred from O1
noaa,ticon,km,noaaMetres,noaaPhase,ticonMetres,ticonPhase,firstYear,lastYear
${rows.join('\n')}
`);
console.log(`${rows.length} pairs`);
