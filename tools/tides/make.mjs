// Makes data/tides/stations.json.br from the npm package @neaps/tide-database. Run from the repository's root after npm ci:
//   node tools/tides/make.mjs
// The same package gives the same bytes (Node 20, brotli 11); the tests hold the unpacked text.
//
// Taken: tide stations that the package's own quality gate accepts, whose licence lets anybody pass them on (public domain,
// CC BY 4.0), and whose chart datum is among their levels. Left out: non-commercial ones, those without that, currents, and every
// field derived from OpenStreetMap (ODbL): context, cities, time zone, place names beyond the station's own.
//
// One JSON object, one station a line:
//   edition        rises whenever the file changes: date of the package, then two digits of this script's own
//   licences, attributions, disclaimers, constituents, datums   words that stations point to by index
//   stations[]     id, name, at [latitude, longitude], country, subdivision, licence, attribution, disclaimer, quality (0 to 100),
//                  datumsFrom ("observed" or "harmonic"), years [first, last], chartDatum (index), bounds [lowest, highest] mm
//                  above chart datum, and either
//     levels       pairs: datum, mm above chart datum
//     constants    triples: constituent, amplitude in 0.1 mm, Greenwich phase lag in 0.01°; those under 0.05 mm are left out;
//                TICON's M1 goes by a name of its own (below)
//   or, for a subordinate station,
//     reference    id of the station it goes by
//     offsets      [minutes later at high water, at low water, heights at high, at low: thousandths of a ratio or mm], isRatio
import { readFileSync, writeFileSync } from 'node:fs';
import { brotliCompressSync, constants as zlib } from 'node:zlib';
import { stations as all } from '@neaps/tide-database';

const REVISION = 2;
const version = JSON.parse(readFileSync('node_modules/@neaps/tide-database/package.json', 'utf8')).version;
const edition = Number(version.split('.').at(-1)) * 100 + REVISION;

const FREE = ['public domain', 'cc-by-4.0'];
// Ranges, intervals and offsets stand among the datums of the source; only levels are levels.
const NOT_LEVELS = ['GT', 'MN', 'DHQ', 'DLQ', 'HWI', 'LWI', 'CRD_OFFSET'];

const taken = all
  .filter(s => s.kind === 'tide' && s.quality?.accepted && s.license.commercial_use && FREE.includes(s.license.type))
  .filter(s => s.type === 'subordinate' || Number.isFinite(s.datums[s.chart_datum]))
  .sort((a, b) => (a.id < b.id ? -1 : 1));
const ids = new Set(taken.map(s => s.id));

const list = () => {
  const words = [], places = new Map();
  return { words, of: word => places.get(word) ?? (places.set(word, words.length), words.push(word) - 1) };
};
const licences = list(), attributions = list(), disclaimers = list(), constituents = list(), datums = list();

// TICON's M1 is not NOAA's: another argument, and from short records (less than a round of the perigee, 8.85 years) a fit without its
// factor. docs/tides.md shows how that is known; tools/tides/m1.mjs makes the tables that prove it.
const ROUND_OF_PERIGEE = 9;
const nameOf = (s, name) => name !== 'M1' || !s.id.startsWith('ticon/') ? name
  : Number(s.epoch?.end?.slice(0, 4)) - Number(s.epoch?.start?.slice(0, 4)) >= ROUND_OF_PERIGEE ? 'M1_TICON' : 'M1_TICON_SHORT';

const plain = html => html.replace(/<[^>]*>/g, '').replace(/&amp;/g, '&').replace(/\s+/g, ' ').trim();
const round = (value, steps) => Math.round(value * steps) + 0;

const stations = taken.map(s => {
  const station = {
    id: s.id, name: s.name, at: [round(s.latitude, 1e5) / 1e5, round(s.longitude, 1e5) / 1e5],
    country: s.country_code, subdivision: s.region_code,
    licence: licences.of(`${s.license.type} ${s.license.url}`), attribution: attributions.of(s.attribution),
    disclaimer: s.disclaimers && s.disclaimers !== 'No obvious issues' ? disclaimers.of(plain(s.disclaimers)) : undefined,
    quality: Math.round(s.quality.score), datumsFrom: s.datums_source,
    years: s.epoch?.start ? [Number(s.epoch.start.slice(0, 4)), Number(s.epoch.end.slice(0, 4))] : undefined,
    chartDatum: datums.of(s.chart_datum),
    bounds: s.astronomical_bounds ? [round(s.astronomical_bounds.lat, 1000), round(s.astronomical_bounds.hat, 1000)] : undefined,
  };
  if (s.type === 'subordinate') {
    if (!ids.has(s.offsets.reference)) throw new Error(`${s.id} goes by ${s.offsets.reference}, which is not taken.`);
    const { time, height } = s.offsets;
    return { ...station, reference: s.offsets.reference,
      offsets: [time.high, time.low, round(height.high, 1000), round(height.low, 1000)], isRatio: height.type === 'ratio' };
  }
  const zero = s.datums[s.chart_datum];
  return { ...station,
    levels: Object.entries(s.datums).filter(([name, metres]) => !NOT_LEVELS.includes(name) && Number.isFinite(metres))
      .flatMap(([name, metres]) => [datums.of(name), round(metres - zero, 1000)]),
    constants: s.harmonic_constituents.filter(h => round(h.amplitude, 1e4) > 0)
      .flatMap(h => [constituents.of(nameOf(s, h.name)), round(h.amplitude, 1e4), round(h.phase, 100) % 36000]) };
});

const head = { source: `@neaps/tide-database ${version}`, edition, licences: licences.words, attributions: attributions.words,
  disclaimers: disclaimers.words, constituents: constituents.words, datums: datums.words };
const text = `${JSON.stringify(head).slice(0, -1)},"stations":[\n${stations.map(s => JSON.stringify(s)).join(',\n')}\n]}\n`;
const bytes = Buffer.from(text, 'utf8');
const packed = brotliCompressSync(bytes, { params: {
  [zlib.BROTLI_PARAM_QUALITY]: 11, [zlib.BROTLI_PARAM_LGWIN]: 24, [zlib.BROTLI_PARAM_SIZE_HINT]: bytes.length } });
writeFileSync('data/tides/stations.json.br', packed);
console.log(`${stations.length} stations, ${constituents.words.length} constituents, ${bytes.length} bytes, ${packed.length} packed`);
