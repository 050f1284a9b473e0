// Makes src/Almanac/Earth/MagneticField.Coefficients.cs and tests/Almanac.Tests/Published/Earth/wmm2025.csv: coefficients
// and official test values of the World Magnetic Model 2025, as carried by an npm package.
// Run from the repository's root after `npm ci`: node tools/almanac-tables/magnetic.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const folder = dirname(createRequire(import.meta.url).resolve('geomagnetism/package.json'));
const model = JSON.parse(readFileSync(join(folder, 'data', 'wmm-2025.json'), 'utf8'));
if (model.name !== 'WMM-2025' || model.epoch !== 2025 || model.n_max !== 12) throw new Error('Not WMM2025 of degree 12.');

const lines = [];
for (let n = 1; n <= 12; n++)
  for (let m = 0; m <= n; m++) {
    const i = n * (n + 1) / 2 + m;
    const row = ['main_field_coeff_g', 'main_field_coeff_h', 'secular_var_coeff_g', 'secular_var_coeff_h'].map(name => model[name][i] ?? 0);
    lines.push(`        ${row.join(', ')},${m === 0 ? ` // degree ${n}` : ''}`);
  }

writeFileSync('src/Almanac/Earth/MagneticField.Coefficients.cs', `namespace Foreshore.Almanac.Earth;

public static partial class MagneticField
{
    // World Magnetic Model 2025 (NOAA National Centers for Environmental Information and British Geological Survey, 2024),
    // public domain: g, h in nanotesla at 2025.0 and their change a year, degree by degree, order 0 to the degree.
    // Written by tools/almanac-tables/magnetic.mjs.
    private static ReadOnlySpan<double> Coefficients =>
    [
${lines.join('\n')}
    ];
}
`);

const [head, ...rows] = readFileSync(join(folder, 'test', 'values.csv'), 'utf8').trim().split(/\r?\n/);
if (head !== 'date,alt,lat,lon,x,y,z,h,f,incl,decl,gv') throw new Error(`Other columns: ${head}`);
const official = rows.map(row => row.split(',')).filter(row => +row[0] >= 2025).map(row => row.slice(0, 11).join(','));
if (official.length !== 100) throw new Error(`${official.length} rows.`);
writeFileSync('tests/Almanac.Tests/Published/Earth/wmm2025.csv', `# source: WMM2025_TEST_VALUES, the official test values of the World Magnetic Model 2025 (NOAA NCEI and British Geological Survey), all 100 rows, as carried by the npm package geomagnetism 0.2.0 (test/values.csv), copied by tools/almanac-tables/magnetic.mjs
# licence: public domain (model and values); the package Apache-2.0
# unit: nT; degrees
# tolerance: 0.001 nT in X, Y, Z, H, F; 0.005001 degrees in I and D
# why: the coefficients have one decimal of a nanotesla; the printed X differs by up to 0.0007 nT from ours and the package's alike, Y and Z by less than 0.00001; two printed decimals of a degree
year,kilometres,latitude,longitude,x,y,z,h,f,inclination,declination
${official.join('\n')}
`);
