// Draws data/demo/sketches/*.svg: one ink sketch for each vantage point of the demo guide and for a few compositions.
//   node tools/sketches/draw.mjs
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dice, W, H } from "./ink.mjs";
import { east } from "./east.mjs";
import { west } from "./west.mjs";

const folder = new URL("../../data/demo/sketches/", import.meta.url);
const seedOf = name => [...name].reduce((seed, letter) => (Math.imul(seed, 31) + letter.charCodeAt(0)) >>> 0, 7);

mkdirSync(folder, { recursive: true });
for (const old of readdirSync(folder)) if (old.endsWith(".svg")) rmSync(new URL(old, folder));

let total = 0;
for (const [name, [title, draw]] of Object.entries({ ...east, ...west })) {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" class="sketch" viewBox="0 0 ${W} ${H}" role="img"><title>${title}</title>${draw(dice(seedOf(name)))}</svg>\n`;
  writeFileSync(new URL(`${name}.svg`, folder), svg);
  total += svg.length;
}
console.log(`${Object.keys({ ...east, ...west }).length} sketches, ${total} bytes`);
