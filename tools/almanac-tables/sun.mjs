// Makes the sweeps in tests/Almanac.Tests/Published/Sun by a second implementation of the sun.
// Run from the repository's root after `npm ci`: node tools/almanac-tables/sun.mjs
// Only its airless azimuth and altitude are used; crossings are found here by halving, so that both sides mean the same:
// no refraction, the observer at sea level, TT − UT after Espenak and Meeus.
import { writeFileSync } from 'node:fs';
import { Observer, Equator, Horizon, Body, MakeTime, Refraction } from 'astronomy-engine';

const folder = 'tests/Almanac.Tests/Published/Sun/';
const source = 'npm package astronomy-engine 2.1.19 (D. Cross), airless azimuth and altitude at sea level, run by tools/almanac-tables/sun.mjs';
const DAY = 86400000, MINUTE = 60000;

const sun = (observer, ms) => {
  const time = MakeTime(new Date(ms));
  const place = Equator(Body.Sun, time, observer, true, true);
  return Horizon(time, observer, place.ra, place.dec);
};
const iso = ms => new Date(Math.round(ms)).toISOString();

let seed = 19500101;
const next = () => (seed = (seed * 1664525 + 1013904223) % 4294967296) / 4294967296;
const between = (from, to) => from + (to - from) * next();
const round = (value, digits) => +value.toFixed(digits);

const halve = (f, a, b) => {
  const below = f(a) < 0;
  while (b - a > 1) {
    const middle = Math.floor((a + b) / 2);
    if (f(middle) < 0 === below) a = middle; else b = middle;
  }
  return (a + b) / 2;
};
const turning = (f, a, b, sign) => {
  // Golden section: the altitude turns once between.
  const g = (Math.sqrt(5) - 1) / 2;
  while (b - a > 500) {
    const c = b - g * (b - a), d = a + g * (b - a);
    if (sign * f(c) > sign * f(d)) b = d; else a = c;
  }
  return (a + b) / 2;
};

const start = Date.UTC(1950, 0, 1), span = Date.UTC(2100, 11, 31) - start;
const latitudes = [-75, -66.5, -60, -45, -30, -15, 0, 15, 30, 45, 60, 66.5, 75];
const longitudes = [-180, -179.9, -120.5, -67.1, 0, 13.4, 77, 139.7, 179.9];

const positions = [];
for (let i = 0; i < 900; i++) {
  const observer = new Observer(i % 3 ? latitudes[i % 13] : round(between(-75, 75), 4), i % 2 ? longitudes[i % 9] : round(between(-180, 180), 4), 0);
  const ms = start + Math.floor(between(0, span) / 1000) * 1000;
  const h = sun(observer, ms);
  positions.push([iso(ms).replace('.000', ''), observer.latitude, observer.longitude, h.azimuth.toFixed(5), h.altitude.toFixed(5)].join(','));
}
writeFileSync(folder + 'astronomy-engine-positions.csv', `# source: ${source}
# licence: MIT
# unit: degrees
# tolerance: 0.003 of arc on the sky
# why: the accuracy asked for the sun's place; both sides claim 0.0003 and 0.0167 degrees against the full theory
time,latitude,longitude,azimuth,altitude
${positions.join('\n')}
`);

const events = [];
for (const latitude of latitudes)
  for (let i = 0; i < 24; i++) {
    const longitude = longitudes[(i * 5 + latitudes.indexOf(latitude)) % 9];
    const observer = new Observer(latitude, longitude, 0);
    const altitude = ms => sun(observer, ms).altitude;
    const date = Math.floor((start + between(0, span)) / DAY) * DAY;
    const clockNoon = date + DAY / 2 - longitude / 360 * DAY;
    const before = turning(altitude, clockNoon - 0.6 * DAY, clockNoon - 0.4 * DAY, -1);
    const noon = turning(altitude, clockNoon - 0.1 * DAY, clockNoon + 0.1 * DAY, 1);
    const after = turning(altitude, clockNoon + 0.4 * DAY, clockNoon + 0.6 * DAY, -1);
    const cross = (level, a, b) => {
      const f = ms => altitude(ms) - level;
      return (f(a) < 0) !== (f(b) < 0) ? iso(halve(f, Math.round(a), Math.round(b))) : '';
    };
    const levels = [-18, -12, -6, -50 / 60];
    events.push([
      latitude, longitude, iso(date).slice(0, 10), altitude(before).toFixed(4), altitude(noon).toFixed(4), altitude(after).toFixed(4),
      ...levels.map(level => cross(level, before, noon)), ...[...levels].reverse().map(level => cross(level, noon, after)),
    ].join(','));
  }
writeFileSync(folder + 'astronomy-engine-events.csv', `# source: ${source}
# licence: MIT
# unit: s
# tolerance: the larger of 2 s and 0.003° ÷ the rate of the altitude
# why: two seconds, or what the accuracy asked for the sun's place means in time; within 0.05° of only grazing either answer passes and is counted as excused. Standard rise and set are −50′ of the centre
latitude,longitude,date,lowestBefore,highest,lowestAfter,astronomicalDawn,nauticalDawn,civilDawn,rise,set,civilDusk,nauticalDusk,astronomicalDusk
${events.join('\n')}
`);

// The upper limb over level ground as seen: that package's own distance and refraction (Saemundsson's), 959.63″ at one unit of distance.
const limbs = [];
for (const latitude of [-66, -50, -20, 0, 20, 45, 60, 66])
  for (const date of ['2026-01-04', '2026-03-20', '2026-06-12', '2026-07-06', '2026-09-23', '2026-12-12']) {
    const observer = new Observer(latitude, 13.4, 0), midnight = Date.parse(date), clockNoon = midnight + DAY / 2 - 13.4 / 360 * DAY;
    const limb = ms => {
      const time = MakeTime(new Date(ms)), place = Equator(Body.Sun, time, observer, true, true);
      const top = Horizon(time, observer, place.ra, place.dec).altitude + 959.63 / 3600 / place.dist;
      return top + Refraction('normal', top);
    };
    if (limb(clockNoon) < 0 || limb(clockNoon - DAY / 2) > 0 || limb(clockNoon + DAY / 2) > 0) continue;
    const rise = halve(limb, Math.round(clockNoon - DAY / 2), Math.round(clockNoon)), set = halve(limb, Math.round(clockNoon), Math.round(clockNoon + DAY / 2));
    const rate = Math.min(...[rise, set].map(ms => Math.abs(limb(ms + MINUTE) - limb(ms - MINUTE)) / 120));
    limbs.push([latitude, 13.4, date, iso(rise), iso(set), Math.max(2, 0.001 / rate).toFixed(1)].join(','));
  }
writeFileSync(folder + 'astronomy-engine-limbs.csv', `# source: npm package astronomy-engine 2.1.19 (D. Cross), altitude with that package's refraction, the sun's semidiameter by its distance (959.63″ at one astronomical unit), run by tools/almanac-tables/sun.mjs
# licence: MIT
# unit: s
# tolerance: the larger of 2 s and 0.001° ÷ the rate of the altitude
# why: both sides claim 0.0003° of the sun's place, and that once more for the formula of the air; a disc of 16′ the year round would be off by 0.005°, 7 s at 66° north in December
latitude,longitude,date,rise,set,most
${limbs.join('\n')}
`);

const azimuths = [];
for (let i = 0; i < 200; i++) {
  const observer = new Observer(latitudes[i % 13], longitudes[(i * 4) % 9], 0);
  const azimuth = round(between(0, 360), 2);
  const from = Math.floor((start + between(0, span)) / DAY) * DAY;
  const off = ms => { const d = sun(observer, ms).azimuth - azimuth; return d - 360 * Math.round(d / 360); };
  const times = [];
  for (let ms = from; ms < from + DAY; ms += 2 * MINUTE) {
    const a = off(ms), b = off(ms + 2 * MINUTE);
    if ((a < 0) !== (b < 0) && Math.abs(a - b) < 90) times.push(iso(halve(off, ms, ms + 2 * MINUTE)));
  }
  azimuths.push([iso(from).replace('.000', ''), observer.latitude, observer.longitude, azimuth, times.join(' ')].join(','));
}
writeFileSync(folder + 'astronomy-engine-azimuths.csv', `# source: ${source}
# licence: MIT
# unit: s
# tolerance: the larger of 2 s and 0.003° ÷ the rate across the vertical circle
# why: two seconds, or what the accuracy asked for the sun's place means in time
start,latitude,longitude,azimuth,times
${azimuths.join('\n')}
`);
