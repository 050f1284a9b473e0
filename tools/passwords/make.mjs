// Makes data/passwords/common.txt.br: the passwords of eight letters and more that people choose most, one a line, in lower case.
// Run by hand: node tools/passwords/make.mjs
import { createRequire } from 'node:module'
import { writeFileSync } from 'node:fs'
import { brotliCompressSync, constants } from 'node:zlib'

const SHORTEST = 8
const { passwords } = createRequire(import.meta.url)('zxcvbn/lib/frequency_lists.js')
const kept = [...new Set(passwords.map(one => one.toLowerCase()).filter(one => one.length >= SHORTEST))].sort()
const text = Buffer.from(kept.join('\n') + '\n')
writeFileSync(new URL('../../data/passwords/common.txt.br', import.meta.url), brotliCompressSync(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }))
console.log(`${kept.length} passwords`)
