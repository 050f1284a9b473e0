// Makes data/passwords/common.txt.br: the passwords that people choose most, of four letters and more, one a line, in lower case. Short
// ones count too: people repeat them, and put figures behind them.
// Run by hand: node tools/passwords/make.mjs
import { readFileSync, writeFileSync } from 'node:fs'
import { brotliCompressSync, constants } from 'node:zlib'

const SHORTEST = 4
const source = new URL('../../node_modules/@zxcvbn-ts/language-common/src/passwords.json', import.meta.url)
const passwords = JSON.parse(readFileSync(source, 'utf8'))
const kept = [...new Set(passwords.map(one => one.toLowerCase()).filter(one => one.length >= SHORTEST))].sort()
const text = Buffer.from(kept.join('\n') + '\n')
writeFileSync(new URL('../../data/passwords/common.txt.br', import.meta.url), brotliCompressSync(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }))
console.log(`${kept.length} passwords`)
