// Makes tests/Almanac.Tests/Published/Tides/iho-list.csv: names, speeds and extended Doodson numbers of the IHO's list of tidal
// constituents, as the npm package @neaps/tide-predictor carries them.
// Run from the repository's root after `npm ci`: node tools/tides/iho-list.mjs
import { writeFileSync } from 'node:fs';
import { constituents as known } from '@neaps/tide-predictor';

// Added there for other data: not in the list. 3N2 is an alias there, of another wave.
const NOT_IN_THE_LIST = new Set(['3L2', 'T3']);
// The list has several waves of one name; the package keeps one. These are the others, from the transcript.
const OTHERS = ['SA_KV,0.041067,0,0,1,0,0,-1', 'M1C,14.492052,1,0,0,0,0,0', 'S1_KV,15.000002,1,1,-1,0,0,1', 'M5,72.464902,5,0,0,1,0,0', 'M7,101.449006,7,0,0,1,0,0'];
const rows = [...new Set(Object.values(known))]
  .filter(one => one.coefficients?.length >= 6 && !NOT_IN_THE_LIST.has(one.name))
  .map(one => [one.name, one.speed, ...one.coefficients.slice(0, 6)].join(','));
writeFileSync('tests/Almanac.Tests/Published/Tides/iho-list.csv', `# source: IHO Tides, Water Level and Currents Working Group, Standard list of tidal constituents (B. Simon, J. Page; 8 May 2017), as npm package @neaps/tide-predictor 0.11.0 (openwatersio) carries it, run by tools/tides/iho-list.mjs; rows in doubt looked up in that project's transcript of the list, docs/TWCWG_Constituent_list.md
# licence: numbers of a published standard; the package MIT
# unit: degrees/h
# tolerance: 0.000002
# why: printed to seven decimals, some to six, for mean motions of 1900; compounds add up to twelve of them. Excused: waves that no station here has, and NSK5, 4MSN8 and the speed of M(KS)2, which contradict the list's own rules and numbers
constituent,speed,t,s,h,p,n,p1
${[...rows, ...OTHERS].join('\n')}
`);
