// The western half of the demo coast, from Farrow Harbour to the Anvil.
import * as k from "./ink.mjs";

const { path, shape, waver, W, H } = k;

export const west = {
  "farrow-harbour-wharf-corner": ["The fleet going grey by distance, and the gap of open sea", ink =>
    k.sky() + path("ink-fine", "M0 70h300M20 78h240M60 62h180") + k.land(ink, [[-4, 66], [60, 58], [130, 66], [164, 84]], 86, { hatch: 6, depth: 0.6 })
    + k.land(ink, [[206, 86], [232, 62], [270, 54], [304, 58]], 88, { hatch: 5, depth: 0.9 }) + k.forest(ink, 226, 304, 62, 16, 6, x => 66 - (x - 226) * 0.09)
    + k.sea(ink, 86, { calm: 1.5 }) + k.boat(40, 96, 0.5) + k.boat(74, 98, 0.55) + k.boat(110, 102, 0.7, { flip: -1 }) + k.boat(58, 112, 1) + k.boat(132, 122, 1.2) + k.boat(184, 92, 0.45, { flip: -1 }) + k.boat(78, 146, 1.9)
    + path("ink-sea-line", "M54 152h52M60 157h40M120 127h28M46 116h26")
    + path("ink-land", shape([[170, 204], [196, 160], [304, 148], [304, 204]])) + path("ink-fine", "M188 176l116 -12M180 190l124 -12M214 160l-8 44M250 156l2 48M284 152l12 52") + k.piles(ink, [[200, 204, 50, 9], [248, 190, 44, 9], [294, 184, 44, 9]])],

  "farrow-harbour-church-hill": ["Roofs and moorings below, an island across the mouth", ink => {
    let fleet = "";
    for (let i = 0; i < 16; i++) {
      const x = ink.between(30, 270), y = ink.between(92, 124), s = (y - 70) / 40;
      fleet += k.boat(x, y, s * 0.55, { flip: ink.next() < 0.5 ? 1 : -1, mast: i % 3 === 0 });
    }
    return k.sky() + k.bars(ink, 16, 20, 4) + k.sea(ink, 52, { bottom: 140, calm: 1 })
      + k.land(ink, [[96, 68], [120, 56], [170, 50], [220, 58], [236, 68]], 70, { hatch: 4, depth: 1 }) + k.forest(ink, 104, 228, 60, 14, 5, x => 64 - Math.sin((x - 104) / 40) * 9)
      + k.tower(228, 66, 16, { width: 5 }) + fleet + k.land(ink, [[-4, 128], [60, 134], [150, 142], [304, 126]], 204, { hatch: 0 })
      + k.house(16, 164, 44, 22) + k.house(84, 172, 52, 24) + k.house(160, 170, 40, 20) + k.house(226, 166, 54, 26) + path("ink-land", "M-4 186h308v18h-308Z") + path("ink-fine", "M0 194h300M20 186v8M52 194v10M86 186v8M118 194v10M150 186v8M186 194v10M220 186v8M254 194v10M284 186v8");
  }],

  "lantern-island-tower-lawn": ["A short iron tower, its lamp still turning", ink =>
    k.sky() + path("ink-fine", "M150 40L20 22M150 40L28 58M158 40L290 18M158 40L284 60") + k.stars(ink, 70, 12) + k.sea(ink, 112, { bottom: 140, calm: 0.6 })
    + k.land(ink, [[-4, 128], [60, 122], [150, 120], [240, 126], [304, 136]], 204, { hatch: 0 }) + k.tower(154, 150, 118, { width: 34 })
    + path("ink-fine", "M140 96h28M138 116h32M137 136h34M146 150v-14h16v14") + k.house(196, 156, 56, 26) + path("ink-line", "M-4 158H128M180 158H196M252 158H304M10 158v12M40 158v12M70 158v12M100 158v12M270 158v12M292 158v12M-4 164H128M252 164H304") + path("ink-fine", "M20 182l6 -6M60 190l6 -6M110 186l6 -7M160 192l6 -6M210 184l6 -6M260 194l6 -6M84 178l5 -5M236 178l5 -5")],

  "lantern-island-bell-ledge": ["The bell frame against long swell", ink =>
    k.sky() + k.bars(ink, 20, 26, 5) + k.sea(ink, 80)
    + path("ink-sea-line", "M0 96q40 -12 90 0t100 0t120 -4M0 112q50 -14 110 0t110 -2t90 0M0 130q60 -14 120 0t120 0t70 -4M0 100q40 -10 90 0M190 116q30 -8 60 0")
    + k.ledges(ink, [[[-4, 150], [90, 146], [170, 156], [240, 168], [304, 186]], [[-4, 178], [110, 174], [210, 192], [304, 204]]])
    + path("ink-line", "M70 150L88 64L106 150M78 112h20M74 132h28M88 64h-14M88 64h14") + path("ink-solid", "M82 70h12l4 18q-10 5 -20 0ZM87 90h3v5h-3Z") + k.gulls(ink, 200, 44, 3)],

  "shingle-howe-bank-crest": ["A curving bank of stones under the low sun", ink =>
    k.sky() + k.sun(206, 74, 12, 9) + k.land(ink, [[-4, 60], [40, 58], [84, 70], [110, 82]], 84, { hatch: 5, depth: 0.9 }) + k.sea(ink, 80)
    + path("ink-land", shape([[-4, 84], [40, 84], [92, 92], [122, 108], [140, 134], [144, 164], [132, 204], [-4, 204]]))
    + k.cobbles(ink, -10, 128, 100) + path("ink-sea-line", "M44 84q62 6 92 34q22 30 8 86M70 86q58 10 78 36q22 34 10 82M118 106l14 -6M134 124l18 -6M142 144l20 -2M144 166l20 2M138 186l20 6M128 114l14 -6M140 134l18 -4M145 156l20 0")],

  "shingle-howe-pond-rail": ["A still pond behind the bank, arch above and below", ink =>
    k.sky() + path("ink-fine", "M-4 64q150 -40 308 0M-4 74q150 -36 308 0M10 84q140 -26 280 0") + k.land(ink, [[-4, 90], [70, 80], [160, 84], [240, 78], [304, 86]], 98, { hatch: 5, depth: 0.9 }) + k.forest(ink, 0, 140, 86, 14, 8)
    + k.sea(ink, 98, { bottom: 168, calm: 2 }) + path("ink-sea-line", "M10 112q140 24 280 0M-4 122q150 34 308 0M-4 132q150 38 308 0")
    + path("ink-line", "M20 204q4 -40 -2 -66M34 204q0 -36 8 -58M50 204q2 -30 -6 -50M66 204q0 -40 10 -64M236 204q4 -44 -4 -70M252 204q0 -34 8 -56M270 204q2 -46 -2 -74M286 204q0 -30 6 -48") + path("ink-solid", "M15 138q3 -14 6 0v14h-4ZM72 140q4 -14 6 0v12h-4ZM229 134q4 -14 6 0v14h-4ZM265 130q4 -14 6 0v14h-4Z")],

  "tern-bank-pavilion-bank": ["The galaxy standing on the sea", ink =>
    k.sky() + k.galaxy(ink, 186, 116, 116, -10, 40, 240) + k.stars(ink, 108, 46) + k.land(ink, [[-4, 108], [50, 106], [96, 116]], 119, { hatch: 4, depth: 1 }) + k.land(ink, [[232, 117], [270, 108], [304, 104]], 119, { hatch: 4, depth: 1 })
    + k.sea(ink, 117, { bottom: 160, calm: 1 }) + path("ink-land", shape(waver([[-4, 158], [120, 152], [210, 156], [304, 150], [304, 204], [-4, 204]], ink, 20, 2)))
    + path("ink-land", "M18 164L60 136L104 164V168H18Z") + path("ink-line", "M24 168v32M44 168v32M78 168v32M98 168v32M18 168h86") + path("ink-fine", "M150 176l4 -8M170 184l4 -8M200 172l3 -7M222 188l4 -8M250 176l4 -8M276 186l4 -8M134 190l4 -8")],

  "tern-bank-wet-sand": ["Colour above and below, one line of foam between", ink =>
    k.sky() + k.bars(ink, 14, 56, 12) + k.land(ink, [[-4, 80], [40, 76], [90, 86]], 88, { hatch: 5, depth: 0.9 }) + k.sea(ink, 86, { bottom: 112, calm: 1 })
    + `<path class="ink-sea" d="M-4 128q90 -14 190 -4t118 -2V${H + 4}H-4Z"/>` + path("ink-land", "M-4 112h308v6q-60 8 -130 4t-178 6Z")
    + path("ink-sea-line", "M-4 120q60 8 120 0t100 2t88 -2M-4 126q70 8 130 0t174 0") + path("ink-fine", "M30 144q50 3 120 0M140 152q60 4 140 0M16 162q60 4 110 1M180 168q50 3 90 0M60 178q70 5 150 0M10 190q50 4 110 0M190 188q50 3 100 0")
    + path("ink-solid", "M214 132q2 -6 5 -6q4 0 5 5l-1 1ZM219 132v6M236 136q2 -6 5 -6q4 0 5 5l-1 1Z") + path("ink-line", "M217 132v5M220 132v5M239 136v5M242 136v5")],

  "cannery-point-end-of-the-boards": ["Rows of pilings with caps of grass", ink => {
    const rows = [], caps = [];
    for (let r = 0; r < 6; r++)
      for (let c = 0; c < 7; c++) {
        const depth = 1 / (1 + c * 0.55), x = 150 + (r - 2.5) * 84 * depth - 18 + c * 5, base = 90 + 92 * depth;
        rows.push([x, base, 46 * depth, 13 * depth]);
        caps.push(`M${Math.round(x - 6 * depth)} ${Math.round(base - 46 * depth)}l${Math.round(ink.about(-2, 2))} ${Math.round(-9 * depth)}M${Math.round(x)} ${Math.round(base - 46 * depth)}v${Math.round(-12 * depth)}M${Math.round(x + 5 * depth)} ${Math.round(base - 46 * depth)}l${Math.round(ink.about(3, 2))} ${Math.round(-9 * depth)}`);
      }
    return k.sky() + k.bars(ink, 18, 34, 6) + k.land(ink, [[-4, 84], [80, 78], [180, 84], [304, 76]], 94, { hatch: 6, depth: 0.9 }) + k.sea(ink, 94, { calm: 1.6 }) + k.piles(ink, rows.reverse()) + path("ink-line", caps.join(""));
  }],

  "skerrin-hollow-rim-of-the-bowl": ["A low skerry beyond a rim of granite", ink =>
    k.sky() + k.bars(ink, 18, 40, 8) + k.sea(ink, 78) + k.land(ink, [[120, 96], [140, 90], [176, 88], [204, 96]], 98, { hatch: 5, depth: 1 })
    + path("ink-solid", "M144 91q6 -6 12 0q4 -4 6 1ZM168 89q6 -6 12 0q4 -4 5 2Z") + path("ink-sea-line", "M112 99q18 -6 36 0t36 0t30 -2")
    + path("ink-land", shape(waver([[-4, 108], [40, 116], [74, 142], [112, 162], [170, 166], [216, 150], [246, 122], [304, 104], [304, 204], [-4, 204]], ink, 16, 3)))
    + path("ink-fine", "M20 122q40 14 60 50M50 138q30 12 40 40M284 118q-40 12 -60 50M256 132q-24 12 -34 40M110 172q40 10 96 -2M96 186q60 14 126 0M140 178l20 3M6 150q30 6 44 30M296 150q-26 8 -40 30")],

  "ketch-point-the-ribs": ["Ribs of a wreck on a gravel spit", ink =>
    k.sky() + k.bars(ink, 22, 30, 5) + k.land(ink, [[30, 84], [70, 76], [110, 84]], 86, { hatch: 4, depth: 1 }) + k.land(ink, [[160, 84], [196, 74], [250, 78], [270, 84]], 86, { hatch: 4, depth: 1 }) + k.sea(ink, 84, { bottom: 150 })
    + path("ink-land", shape(waver([[-4, 150], [80, 140], [200, 142], [304, 156], [304, 204], [-4, 204]], ink, 18, 2)))
    + path("ink-line", "M60 168q-24 -50 -8 -92M92 174q-24 -60 -8 -108M126 178q-22 -66 -8 -120M160 178q-14 -62 2 -112M194 174q-6 -54 12 -96M224 168q2 -42 20 -74M66 168q-22 -48 -8 -92M98 174q-22 -58 -8 -108M132 178q-20 -64 -8 -120M165 178q-12 -60 3 -112M198 174q-4 -52 13 -96M228 168q4 -40 20 -74M44 172q100 20 196 -6") + path("ink-fine", "M20 182h14M50 190h20M96 194h16M150 192h22M206 186h18M250 178h20M272 192h16")],

  "pigeon-neck-heath-bench": ["Heath and pines, the tall light far out", ink =>
    k.sky() + k.bars(ink, 16, 30, 6) + k.sea(ink, 84, { bottom: 112, calm: 0.6 }) + k.land(ink, [[196, 88], [206, 84], [222, 84], [232, 88]], 89, { hatch: 0 }) + k.tower(214, 85, 30, { width: 5 })
    + k.land(ink, [[-4, 104], [80, 98], [180, 106], [304, 100]], 204, { hatch: 0 }) + k.forest(ink, 4, 90, 106, 26, 16) + k.forest(ink, 258, 300, 104, 30, 14)
    + path("ink-fine", Array.from({ length: 70 }, () => { const y = ink.between(112, 198), x = ink.between(2, 290), s = (y - 90) / 26; return `M${Math.round(x)} ${Math.round(y)}q${Math.round(s * 2)} ${Math.round(-s * 2.4)} ${Math.round(s * 4)} 0`; }).join(""))
    + path("ink-line", "M104 178h70M108 178v16M170 178v16M104 162h70M106 162v16M172 162v16")],

  "pigeon-neck-boulder-end": ["Boulders, and a grey tower alone on the line of the sea", ink =>
    k.sky() + k.bars(ink, 26, 40, 8) + k.sea(ink, 96) + k.land(ink, [[150, 97], [160, 94], [182, 94], [192, 97]], 98, { hatch: 0 }) + k.tower(170, 95, 44, { width: 7 })
    + [[-10, 160, 70, 40], [60, 172, 60, 34], [120, 182, 52, 28], [178, 176, 64, 36], [236, 164, 76, 44], [30, 204, 80, 36], [110, 206, 70, 26], [190, 208, 90, 34]].map(([x, y, w, h]) => k.land(ink, [[x, y], [x + w * 0.12, y - h * 0.7], [x + w * 0.4, y - h], [x + w * 0.75, y - h * 0.85], [x + w, y]], y + 6, { hatch: 5, depth: 0.8, lean: -6 })).join("")
    + path("ink-sea-line", "M60 140q14 -6 26 0t26 -2M150 150q16 -6 30 0t30 -2M10 128q12 -5 24 0")],

  "anvil-ledges-car-park-wall": ["A burst twice the height of a house, from behind the wall", ink =>
    k.sky() + k.bars(ink, 12, 40, 10) + k.sea(ink, 96, { calm: 0.1 }) + k.burst(ink, 172, 132, 108, 150) + k.burst(ink, 96, 134, 54, 80)
    + k.land(ink, [[-4, 128], [60, 132], [120, 128], [180, 134], [240, 126], [304, 134]], 170, { hatch: 6, depth: 0.9 })
    + path("ink-sea-line", "M0 108q30 -14 60 0t60 -4t70 4t60 -6t60 4M0 118q40 -12 80 0t80 0t140 -4") + k.gulls(ink, 250, 46, 4)
    + path("ink-land", "M-4 166h308v38h-308Z") + path("ink-fine", "M0 178h300M0 191h300M30 166v12M76 178v13M120 166v12M164 178v13M210 166v12M254 178v13M40 191v13M100 191v13M190 191v13M236 191v13M288 166v12")],

  "anvil-ledges-middle-trench": ["A dark dyke running out to sea through pale rock", ink =>
    k.sky() + k.bars(ink, 24, 24, 5) + k.sea(ink, 82)
    + path("ink-land", shape(waver([[-4, 116], [70, 106], [140, 102], [190, 104], [250, 112], [304, 122], [304, 204], [-4, 204]], ink, 16, 3)))
    + path("ink-solid", shape(waver([[152, 102], [170, 103], [178, 130], [192, 160], [216, H + 4], [110, H + 4], [132, 158], [146, 128]], ink, 14, 2)))
    + path("ink-fine", "M20 126l60 -6M40 146l70 -8M10 170l80 -10M30 194l70 -12M204 120l60 6M212 146l70 8M226 172l70 8M60 116l-10 40M96 110l-14 60M230 114l14 40M266 120l12 50M198 112l10 22")
    + path("ink-sea-line", "M146 100q14 8 28 0M144 96q16 8 34 0M100 100q16 -6 30 0M190 100q18 -6 36 2")],
};
