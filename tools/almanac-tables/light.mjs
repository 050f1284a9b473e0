// Makes tests/Almanac.Tests/Published/Light/astronomy-engine-seasons.csv: season tables by a second implementation of the
// sun and of the counting. Run from the repository's root after `npm ci`: node tools/almanac-tables/light.mjs
// Airless azimuth and altitude each minute, straight lines between; a light holds while the least of its margins is above
// zero. Clock hours come from the time zones of Node's own ICU.
import { mkdirSync, writeFileSync } from 'node:fs';
import { Observer, Equator, Horizon, Body, MakeTime } from 'astronomy-engine';

const MINUTE = 60000, HOUR = 3600000, rad = Math.PI / 180;
const places = [
  { name: 'Eastport', latitude: 44.9, longitude: -66.99, zone: 'America/New_York', facing: 115 },
  { name: 'Quito', latitude: -0.2, longitude: -78.5, zone: 'America/Guayaquil', facing: 95 },
  { name: 'Chatham', latitude: -43.95, longitude: -176.55, zone: 'Pacific/Chatham', facing: 290 },
  { name: 'Longyearbyen', latitude: 78.2, longitude: 15.6, zone: 'Arctic/Longyearbyen', facing: 320 },
  { name: 'Lord Howe', latitude: -31.55, longitude: 159.08, zone: 'Australia/Lord_Howe', facing: 60 },
];
const firstYear = 2026, firstMonth = 3;

// Meeus, Astronomical Algorithms, formula 16.4.
const seen = h => h + Math.max(0, 1.02 / Math.tan((Math.max(h, -2) + 10.3 / (Math.max(h, -2) + 5.11)) * rad)) / 60;
const rel = (azimuth, facing) => { const d = Math.abs(azimuth - facing) % 360; return d > 180 ? 360 - d : d; };
const frame = (azimuth, altitude, facing) => {
  // 24 mm in front of 36 × 24 mm, level.
  const z = Math.cos(altitude * rad) * Math.cos((azimuth - facing) * rad);
  if (z <= 0.01) return -1;
  const x = 24 * Math.tan((azimuth - facing) * rad), y = 24 * Math.sin(altitude * rad) / z;
  return Math.min(18 - Math.abs(x), 12 - Math.abs(y));
};
const upper = h => seen(h + 959.63 / 3600);
const lights = [
  { name: 'GoldenLight', least: 10, margin: s => Math.min(s.h + 50 / 60, 6 - s.h) },
  { name: 'BlueLight', least: 5, margin: s => Math.min(s.h + 8, -4 - s.h) },
  { name: 'TwilightGlow', least: 10, margin: (s, f) => Math.min(60 - rel(s.a, f), s.h + 8, -s.h) },
  { name: 'AntiTwilightArch', least: 5, margin: (s, f) => Math.min(rel(s.a, f) - 120, s.h + 5, -1 - s.h) },
  { name: 'SunInFrame', least: 10, margin: (s, f) => Math.min(upper(s.h), frame(s.a, seen(s.h), f), 6 - s.h) },
  { name: 'SideLight', least: 10, margin: (s, f) => Math.min(upper(s.h), rel(s.a, f) - 60, 120 - rel(s.a, f), 25 - s.h) },
];

const offsetOf = zone => {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  return ms => {
    const p = Object.fromEntries(format.formatToParts(new Date(ms)).map(part => [part.type, +part.value]));
    return Date.UTC(p.year, p.month - 1, p.day, p.hour, p.minute) - ms;
  };
};

const rows = [];
for (const place of places) {
  const observer = new Observer(place.latitude, place.longitude, 0);
  const sun = ms => {
    const time = MakeTime(new Date(ms)), e = Equator(Body.Sun, time, observer, true, true), h = Horizon(time, observer, e.ra, e.dec);
    return { a: h.azimuth, h: h.altitude };
  };
  const offset = offsetOf(place.zone);
  const localStart = Date.UTC(firstYear, firstMonth - 1, 1), localEnd = Date.UTC(firstYear + 1, firstMonth - 1, 1);
  const from = localStart - offset(localStart - offset(localStart)) - HOUR, to = localEnd - offset(localEnd - offset(localEnd)) + HOUR;

  const runs = lights.map(() => []), open = lights.map(() => null);
  let before = null;
  for (let ms = from; ms <= to; ms += MINUTE) {
    const s = sun(ms), values = lights.map(light => light.margin(s, place.facing));
    values.forEach((value, i) => {
      const last = before?.[i] ?? -1;
      const edge = before === null ? ms : ms - MINUTE + MINUTE * last / (last - value);
      if (value >= 0 && open[i] === null) open[i] = edge;
      if (value < 0 && open[i] !== null) { runs[i].push([open[i], edge]); open[i] = null; }
    });
    before = values;
  }
  open.forEach((start, i) => { if (start !== null) runs[i].push([start, to]); });

  lights.forEach((light, i) => {
    const days = new Map(), minutes = new Array(12).fill(0);
    for (const [start, end] of runs[i].filter(([start, end]) => end - start >= light.least * MINUTE)) {
      const cells = new Map();
      for (let t = start; t < end;) {
        // Quarter hours: clocks change on them.
        const next = Math.min(end, (Math.floor(t / (HOUR / 4)) + 1) * (HOUR / 4));
        const local = t + offset(Math.floor(t / MINUTE) * MINUTE), cell = Math.floor(local / HOUR);
        if (local >= localStart && local < localEnd) cells.set(cell, (cells.get(cell) ?? 0) + next - t);
        t = next;
      }
      for (const [cell, length] of cells) {
        const month = new Date(cell * HOUR).getUTCMonth();
        minutes[(month - firstMonth + 13) % 12] += length / MINUTE;
        if (length >= 5 * MINUTE || length > (end - start) / 2) days.set(cell, true);
      }
    }
    for (let m = 0; m < 12; m++) {
      const year = firstYear + (m + firstMonth > 12 ? 1 : 0), month = (m + firstMonth - 1) % 12;
      const length = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
      const counts = new Array(24).fill(0);
      for (const cell of days.keys()) if (new Date(cell * HOUR).getUTCMonth() === month) counts[new Date(cell * HOUR).getUTCHours()]++;
      rows.push([place.name, place.latitude, place.longitude, place.zone, place.facing, light.name,
        `${year}-${String(month + 1).padStart(2, '0')}`, (minutes[m] / length).toFixed(3), counts.join(' ')].join(','));
    }
  });
}

mkdirSync('tests/Almanac.Tests/Published/Light', { recursive: true });
writeFileSync('tests/Almanac.Tests/Published/Light/astronomy-engine-seasons.csv', `# source: npm package astronomy-engine 2.1.19 (D. Cross), airless azimuth and altitude each minute, counted by tools/almanac-tables/light.mjs; clocks by Node ${process.versions.node}, time zones ${process.versions.tz}
# licence: MIT
# unit: days
# tolerance: 1 day of a month
# why: ends of runs agree to a second or two, so a day differs only where five minutes or the least length are met within that
place,latitude,longitude,zone,facing,light,month,minutesADay,daysByHour
${rows.join('\n')}
`);
