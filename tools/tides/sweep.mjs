// Makes the tables tests/Almanac.Tests/Published/Tides/predictor-*.csv by a second implementation of the tide.
// Run from the repository's root after `npm ci`: node tools/tides/sweep.mjs
// Left out on both sides are the constituents it is known to get wrong: M1 (its turn has no quadrant after Schureman, and
// belongs to another argument after the IHO), M3 and S3 (turned over: the list's T is nought at midnight, that library's is
// half a turn) and 2MN2 (given the half turn of L2). Tests prove those apart.
import { readFileSync, writeFileSync, mkdirSync } from 'node:fs';
import { brotliDecompressSync } from 'node:zlib';
import { createTidePredictor, constituents as known } from '@neaps/tide-predictor';

const folder = 'tests/Almanac.Tests/Published/Tides/';
mkdirSync(folder, { recursive: true });
const source = 'npm package @neaps/tide-predictor 0.11.0 (openwatersio), run by tools/tides/sweep.mjs';
// Left out besides: those whose argument there is not the sum of their parts (half or quarter turns that the parts do not
// have, or other parts than the name's), and 3N2, 3L2, which are other waves there.
const APART = new Set(['M1', 'M1_TICON', 'M1_TICON_SHORT', 'M3', 'S3', '2MN2', '3N2', '3L2', 'MP1', 'MSK5', 'ML4', '3ML8', 'MKL2S2', 'MLN2S2', '2MLNS6', '2NMLS6', '3MLS6', '4MLS8', '4MSL12']);
// Those without a formula after Schureman: f = 1 there, the IHO's formula here.
const RARE = ['alpha2', 'eta2', 'gamma2'];
const MODELS = ['schureman', 'iho'];
const DAY = 86400000;
const iso = ms => new Date(ms).toISOString().replace('.000Z', 'Z');
const asset = JSON.parse(brotliDecompressSync(readFileSync('data/tides/stations.json.br')).toString());
const table = (name, head, rows) => writeFileSync(folder + name, `${head}\n${rows.join("\n")}\n`);

// A constituent alone, of 1 m and phase 0 and then 90°, shows its f·cos(V + u) and f·sin(V + u).
const height = (name, phase, nodeCorrections, time) =>
  createTidePredictor([{ name, amplitude: 1, phase }], { nodeCorrections }).getWaterLevelAtTime({ time }).level;
const alone = [], unknown = new Set();
for (const name of asset.constituents)
  for (const time of ['2000-01-01T00:00:00Z', '2015-07-02T12:00:00Z', '2026-03-10T06:00:00Z', '2035-11-20T18:00:00Z'])
    for (const model of MODELS) {
      if (APART.has(name) || model === 'schureman' && RARE.includes(name)) continue;
      if (!known[name]) { unknown.add(name); continue; }
      const date = new Date(time), x = height(name, 0, model, date), y = height(name, 90, model, date);
      alone.push([name, model, time, Math.hypot(x, y).toFixed(5), ((Math.atan2(y, x) * 180 / Math.PI + 360) % 360).toFixed(3), known[name].speed].join(','));
    }
table('predictor-constituents.csv', `# source: ${source}
# licence: MIT
# unit: 1
# tolerance: f 0.004, V + u 0.15°
# why: obliquity of Schureman's own year on this side and of date on that; the sun's and moon's mean longitudes from Meeus's first and second series, on terrestrial time on this side and civil on that, 0.02° apart for each time the moon goes into the argument
constituent,model,time,f,vPlusU,speed`, alone);

// Stations of all kinds; a fixed seed, so that each run takes the same.
let seed = 18700101;
const next = () => (seed = (seed * 1664525 + 1013904223) % 4294967296) / 4294967296;
const amplitude = (s, ...names) => names.reduce((sum, name) => { for (let i = 0; i < s.constants.length; i += 3) if (asset.constituents[s.constants[i]].toUpperCase() === name) return sum + s.constants[i + 1]; return sum; }, 0);
const form = s => amplitude(s, 'K1', 'O1') / (amplitude(s, 'M2', 'S2') || 1);
const range = s => s.bounds ? s.bounds[1] - s.bounds[0] : 0;
const own = asset.stations.filter(s => s.constants && s.bounds && amplitude(s, 'M2') > 0);
const some = (list, count, licence) => {
  const from = licence === undefined ? list : list.filter(s => s.licence === licence);
  return Array.from({ length: count }, (_, i) => from[Math.floor((i + next()) * from.length / count)]).filter(Boolean);
};
const named = ['noaa/9447130', 'noaa/9414290', 'noaa/8410140', 'noaa/8518750'].map(id => asset.stations.find(s => s.id === id));
const kinds = [
  named,
  [...own].sort((a, b) => range(b) - range(a)).slice(0, 6),
  some(own.filter(s => range(s) > 0 && range(s) < 500 && range(s) > 150), 6),
];
for (let licence = 0; licence < asset.licences.length; licence++)
  kinds.push(some(own.filter(s => form(s) > 3), 4, licence), some(own.filter(s => form(s) > 0.25 && form(s) <= 3), 6, licence), some(own.filter(s => form(s) <= 0.25), 6, licence));
kinds.push(some(own.filter(s => amplitude(s, 'M4', 'MS4') > 0.25 * amplitude(s, 'M2') && range(s) > 800), 8));
const lesser = asset.stations.filter(s => s.reference);
kinds.push(some(lesser.filter(s => s.isRatio), 10), some(lesser.filter(s => !s.isRatio), 8));
const taken = [...new Set(kinds.flat())];

const constants = s => { const all = []; for (let i = 0; i < s.constants.length; i += 3) { const name = asset.constituents[s.constants[i]]; if (!APART.has(name) && known[name]) all.push({ name, amplitude: s.constants[i + 1] / 1e4, phase: s.constants[i + 2] / 100 }); } return all; };
const meanLevel = s => { const at = asset.datums.indexOf('MSL'); for (let i = 0; i < s.levels.length; i += 2) if (s.levels[i] === at) return s.levels[i + 1] / 1000; throw new Error(s.id); };
const heights = [], waters = [];
taken.forEach((s, at) => {
  const model = MODELS[at % 2], reference = s.reference ? asset.stations.find(r => r.id === s.reference) : s;
  const predictor = createTidePredictor(constants(reference), { nodeCorrections: model, offset: meanLevel(reference) });
  const offsets = s.reference ? { time: { high: s.offsets[0], low: s.offsets[1] }, height: { high: s.offsets[2] / 1000, low: s.offsets[3] / 1000, type: s.isRatio ? 'ratio' : 'fixed' } } : undefined;
  const first = Date.UTC(2020, 0, 1), span = Date.UTC(2035, 11, 20) - first;
  for (let i = 0; i < 8 && !s.reference; i++) {
    const time = new Date(first + Math.floor(next() * span / 600000) * 600000);
    heights.push([s.id, model, iso(+time), predictor.getWaterLevelAtTime({ time }).level.toFixed(4)].join(','));
  }
  for (let i = 0; i < 2; i++) {
    const day = first + Math.floor(next() * span / DAY) * DAY;
    // The rise is the lesser of the two to the waters beside it, as if there were no offsets;
    // 0 where the predictor has left out one water and so two of a kind follow each other.
    const days = { start: new Date(day - 3 * DAY), end: new Date(day + 5 * DAY) };
    const plain = predictor.getExtremesPrediction(days), moved = predictor.getExtremesPrediction({ ...days, offsets });
    moved.forEach((e, j) => {
      if (+e.time < day || +e.time >= day + 2 * DAY) return;
      const alternates = plain[j - 1].high !== e.high && plain[j + 1].high !== e.high;
      const rise = !alternates ? 0 : Math.min(Math.abs(plain[j].level - plain[j - 1].level), Math.abs(plain[j].level - plain[j + 1].level));
      waters.push([s.id, model, new Date(+e.time).toISOString(), e.high ? 'high' : 'low', e.level.toFixed(4), rise.toFixed(3)].join(','));
    });
  }
});
table('predictor-heights.csv', `# source: ${source}, with the stations of data/tides/stations.json.br
# licence: MIT; the stations' own licences stand in data/tides/README.md
# unit: m
# tolerance: 0.01
# why: the same constants and nodal model; arguments and factors differ as in predictor-constituents.csv, f once a day there
station,model,time,metres`, heights);
table('predictor-waters.csv', `# source: ${source}, with the stations of data/tides/stations.json.br
# licence: MIT; the stations' own licences stand in data/tides/README.md
# unit: m
# tolerance: 0.01 m; 60 s wherever the tide is not flat
# why: flat is where the height changes by less than 2 mm within 15 minutes of the water, as 1 mm then moves the water by minutes; where the rise to the water beside it is under 2 cm, the two programs' rules for stands (1 cm on both sides, but other pairs) may leave out different waters (rise 0: two of a kind follow each other there)
station,model,time,kind,metres,rise`, waters);
console.log(`${taken.length} stations (${taken.filter(s => s.reference).length} subordinate), ${heights.length} heights, ${waters.length} waters; not known to the predictor: ${[...unknown].join(', ')}`);
