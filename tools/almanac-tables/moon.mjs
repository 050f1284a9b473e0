// Makes the sweeps in tests/Almanac.Tests/Published/Moon by a second implementation of the moon.
// Run from the repository's root after `npm ci`: node tools/almanac-tables/moon.mjs
// Airless azimuth and altitude at sea level, TT − UT after Espenak and Meeus on both sides; rise and set are the upper limb
// 34′ below level; phases go by the difference of the apparent longitudes.
import { writeFileSync, mkdirSync } from 'node:fs';
import { Observer, Equator, Horizon, Body, MakeTime, Illumination, SearchRiseSet, SearchHourAngle, SearchMoonQuarter, EclipticGeoMoon, SunPosition, AstroTime } from 'astronomy-engine';

const folder = 'tests/Almanac.Tests/Published/Moon/';
mkdirSync(folder, { recursive: true });
const source = 'npm package astronomy-engine 2.1.19 (D. Cross), run by tools/almanac-tables/moon.mjs';
const DAY = 86400000;
const iso = ms => new Date(Math.round(ms)).toISOString();

let seed = 19690720;
const next = () => (seed = (seed * 1664525 + 1013904223) % 4294967296) / 4294967296;
const between = (from, to) => from + (to - from) * next();
const round = (value, digits) => +value.toFixed(digits);
const start = Date.UTC(1950, 0, 1), span = Date.UTC(2100, 11, 25) - start;
const latitudes = [-75, -66.5, -60, -45, -30, -15, 0, 15, 30, 45, 60, 66.5, 75];
const longitudes = [-180, -179.9, -120.5, -67.1, 0, 13.4, 77, 139.7, 179.9];

const positions = [];
for (let i = 0; i < 900; i++) {
  const observer = new Observer(i % 3 ? latitudes[i % 13] : round(between(-75, 75), 4), i % 2 ? longitudes[i % 9] : round(between(-180, 180), 4), 0);
  const ms = start + Math.floor(between(0, span) / 1000) * 1000;
  const time = MakeTime(new Date(ms));
  const place = Equator(Body.Moon, time, observer, true, true);
  const h = Horizon(time, observer, place.ra, place.dec);
  const light = Illumination(Body.Moon, time);
  positions.push([iso(ms).replace('.000', ''), observer.latitude, observer.longitude, h.azimuth.toFixed(5), h.altitude.toFixed(5),
    (place.dist * 149597870.7).toFixed(1), light.phase_angle.toFixed(5), light.phase_fraction.toFixed(6), light.mag.toFixed(4)].join(','));
}
writeFileSync(folder + 'astronomy-engine-moon.csv', `# source: ${source}
# licence: MIT
# unit: degrees
# tolerance: 0.005 of arc on the sky
# why: half the accuracy asked for; Meeus claims 10″ (0.003), this package 1′; distance in km from the place
time,latitude,longitude,azimuth,altitude,distanceKm,phaseAngle,fraction,magnitude
${positions.join('\n')}
`);

const events = [];
for (const latitude of latitudes)
  for (let i = 0; i < 24; i++) {
    const observer = new Observer(latitude, longitudes[(i * 5 + latitudes.indexOf(latitude)) % 9], 0);
    const date = Math.floor((start + between(0, span)) / DAY) * DAY;
    const from = MakeTime(new Date(date));
    // The first rise of the day and its last set: at high latitudes a day may hold two.
    const search = way => {
      let found = '', begin = from;
      for (;;) {
        const t = SearchRiseSet(Body.Moon, observer, way, begin, (date + DAY - begin.date.getTime()) / DAY);
        if (!t) return found;
        found = iso(t.date.getTime());
        if (way > 0) return found;
        begin = t.AddDays(0.01);
        if (begin.date.getTime() >= date + DAY) return found;
      }
    };
    const transit = SearchHourAngle(Body.Moon, observer, 0, from, +1).time.date.getTime();
    events.push([latitude, observer.longitude, iso(date).slice(0, 10), search(+1), transit < date + DAY ? iso(transit) : '', search(-1)].join(','));
  }
writeFileSync(folder + 'astronomy-engine-moon-events.csv', `# source: ${source}
# licence: MIT
# unit: s
# tolerance: the larger of 5 s and 0.003° ÷ the rate of the altitude
# why: both series are cut at about 10″ (0.003°) and ΔT is one and the same; within 0.05° of only grazing either answer passes. Events of the UTC day; rise and set are the upper limb 34′ below level
latitude,longitude,date,rise,transit,set
${events.join('\n')}
`);

const phases = [];
for (let i = 0; i < 400; i++) {
  const found = SearchMoonQuarter(new AstroTime(new Date(start + between(0, span - 40 * DAY))));
  // That search leaves out the sun's aberration (40 s): narrowed by its apparent longitudes.
  const off = ms => {
    const time = MakeTime(new Date(ms));
    const d = EclipticGeoMoon(time).lon - SunPosition(time).elon - 90 * found.quarter;
    return d - 360 * Math.round(d / 360);
  };
  let [a, b] = [found.time.date.getTime() - 600000, found.time.date.getTime() + 600000];
  while (b - a > 100) {
    const middle = (a + b) / 2;
    if (off(middle) < 0) a = middle; else b = middle;
  }
  phases.push([['new', 'first', 'full', 'last'][found.quarter], iso((a + b) / 2)].join(','));
}
writeFileSync(folder + 'astronomy-engine-phases.csv', `# source: ${source}
# licence: MIT
# unit: s
# tolerance: 30
# why: the moon gains half an arc second a second on the sun; both series are cut at about 10″, 20 s each
phase,time
${phases.join('\n')}
`);
