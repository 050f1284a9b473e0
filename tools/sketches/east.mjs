// The eastern half of the demo coast, from Herring Slip to Widow's Table.
import * as k from "./ink.mjs";

const { path, line, shape, waver, W, H } = k;

export const east = {
  "herring-slip-outer-wall": ["Moored boats before an island, from the breakwater", ink =>
    k.sky() + k.bars(ink, 26, 34, 6) + k.sun(206, 92, 13)
    + k.land(ink, [[30, 94], [70, 84], [120, 78], [170, 82], [186, 93]], 96, { hatch: 6, depth: 0.9 })
    + k.land(ink, [[224, 95], [262, 88], [304, 84]], 96, { hatch: 8, depth: 0.9 })
    + k.sea(ink, 95, { calm: 0.9 })
    + k.boat(84, 116, 0.9) + k.boat(128, 122, 1.1, { flip: -1 }) + k.boat(178, 112, 0.8) + k.boat(236, 132, 1.5)
    + path("ink-land", shape([[-4, 166], [W + 4, 150], [W + 4, H + 4], [-4, H + 4]]))
    + path("ink-line", "M0 150L300 134M20 164V149M90 160V145M160 156V141M230 152V138") + path("ink-fine", "M0 178L300 164M60 163l-6 37M150 158l4 42M240 153l12 47")],

  "herring-slip-fish-pier": ["Lamps along the front, drawn out on still water", ink => {
    let lamps = "", columns = "";
    for (let i = 0; i < 7; i++) {
      const x = 28 + i * 40, y = 70 - (i % 3) * 5;
      lamps += `M${x} 92V${y}h6`;
      columns += `M${x + 6} 100v${44 + (i % 3) * 14}m-3 -20v14m6 -30v10`;
    }
    return k.sky() + k.land(ink, [[-4, 82], [60, 74], [140, 78], [220, 70], [304, 80]], 98, { hatch: 5, depth: 1 })
      + k.house(12, 97, 34, 16) + k.house(64, 96, 26, 20) + k.house(110, 97, 42, 15) + k.house(176, 96, 28, 22) + k.house(226, 97, 38, 17)
      + k.sea(ink, 98, { calm: 1.4 }) + path("ink-line", lamps) + path("ink-sea-line", columns) + k.boat(240, 138, 1.6)
      + path("ink-land", shape([[-4, 178], [120, 168], [130, H + 4], [-4, H + 4]])) + path("ink-fine", "M8 182l100 -9M10 192l110 -9");
  }],

  "herring-slip-hill-bench": ["A full moon on the island's spine, above the roofs", ink =>
    k.sky() + k.moon(178, 62, 17)
    + k.land(ink, [[20, 96], [80, 88], [140, 80], [200, 76], [250, 86], [290, 97]], 100, { hatch: 5, depth: 0.8 })
    + k.tower(236, 84, 22, { width: 6 }) + k.sea(ink, 98, { bottom: 140, calm: 1 })
    + k.house(-8, 168, 60, 30) + k.house(64, 160, 46, 22) + k.house(120, 172, 66, 32) + k.house(206, 162, 48, 24) + k.house(262, 170, 56, 30)
    + path("ink-land", shape([[-4, 178], [100, 172], [210, 176], [304, 170], [304, 204], [-4, 204]])) + path("ink-line", "M36 194h70M42 194v8M100 194v8M36 186h70M38 186v8M104 186v8")],

  "sorrel-holm-bar-head": ["A shell bar curving out to a dark hump", ink =>
    k.sky() + k.bars(ink, 20, 40, 8) + k.sea(ink, 88)
    + k.land(ink, [[168, 88], [186, 66], [214, 54], [246, 58], [272, 76], [280, 88]], 89, { hatch: 4, depth: 1, lean: -9 })
    + path("ink-solid", "M190 86h16v-15h-2v-4h-12v4h-2Z") + path("ink-land", "M194 86v-8q4 -5 8 0v8Z")
    + path("ink-land", shape([[196, 89], [172, 98], [140, 108], [110, 126], [92, 152], [60, H + 4], [250, H + 4], [206, 158], [190, 132], [194, 112], [210, 98], [214, 89]]))
    + path("ink-fine", "M190 96q-40 12 -62 34M176 104q-30 14 -42 40M196 104q-20 18 -10 52M150 118q-28 26 -44 76M170 130q-10 30 2 68M200 140q4 30 26 58M120 150q-12 24 -22 46")
    + path("ink-sea-line", "M168 97q-62 16 -86 60M212 96q-14 22 0 56q14 26 40 48") + k.gulls(ink, 96, 60, 4)],

  "sorrel-holm-holm-top": ["The channel and a thin moon, from the cairn", ink =>
    k.sky() + k.crescent(206, 40, 9) + k.land(ink, [[-4, 88], [50, 82], [110, 90]], 96, { hatch: 6, depth: 0.9 })
    + k.land(ink, [[226, 92], [268, 84], [304, 86]], 96, { hatch: 6, depth: 0.9 }) + k.sea(ink, 95, { calm: 0.8 })
    + k.tower(188, 104, 24, { width: 10, bands: 1 })
    + k.land(ink, [[-4, 168], [40, 156], [110, 148], [190, 152], [250, 164], [304, 176]], 204, { hatch: 9, depth: 0.35, lean: 10 })
    + path("ink-land", "M84 150l6 -14h26l7 14ZM91 136l4 -11h16l4 11ZM97 125l3 -9h9l3 9Z") + path("ink-fine", "M88 143h30M95 131h17")],

  "sorrel-holm-kiln-arch": ["The kiln's draw-arch against the afterglow", ink =>
    k.sky() + k.bars(ink, 30, 60, 10) + k.sea(ink, 122, { calm: 1 }) + k.land(ink, [[-4, 118], [70, 112], [150, 120], [304, 114]], 123, { hatch: 8, depth: 0.9 })
    + path("ink-land", shape(waver([[84, 176], [90, 78], [112, 66], [196, 62], [214, 76], [222, 176]], ink, 16, 1.6)))
    + path("ink-sky", "M124 176V128q28 -34 58 0v48Z") + path("ink-line", "M124 176V128q28 -34 58 0v48M118 178V126q34 -42 70 0v52")
    + path("ink-fine", "M92 92h26M150 84h40M100 108h14M196 96h16M94 126h16M196 122h20M92 144h18M198 146h20M94 162h16M200 164h18M130 76h24M168 100h24M120 104h20")
    + path("ink-sea-line", "M126 150h54") + k.land(ink, [[-4, 178], [80, 170], [230, 172], [304, 180]], 204, { hatch: 7, depth: 0.5, lean: 8 })],

  "halfmoon-light-high-edge": ["A banded tower on its point beside the rising sun", ink =>
    k.sky() + k.bars(ink, 22, 30, 5) + k.sun(196, 82, 15, 11) + k.sea(ink, 84)
    + k.land(ink, [[-4, 56], [40, 60], [84, 66], [116, 76], [140, 84]], 88, { hatch: 5, depth: 0.9 })
    + k.forest(ink, 0, 70, 60, 20, 7, x => 58 + x * 0.12) + k.tower(108, 74, 34, { width: 10, bands: 3 })
    + k.land(ink, [[-4, 118], [40, 112], [84, 128], [104, 150], [116, 204]], 204, { hatch: 7, depth: 0.75, lean: -4 })
    + k.land(ink, [[-4, 164], [60, 158], [120, 170], [160, 204]], 204, { hatch: 6, depth: 0.8, lean: 3 })
    + path("ink-sea-line", "M112 196q10 -8 22 -2t24 2M118 186q12 -6 20 0")],

  "halfmoon-light-stack-overlook": ["Straight down on a stack in white water", ink =>
    `<rect class="ink-sea" width="${W}" height="${H}"/>`
    + path("ink-sea-line", "M96 60q44 -26 104 2q34 20 18 60q-18 40 -76 38q-58 -4 -70 -46q-4 -36 24 -54M80 52q60 -40 136 2q40 30 18 80q-26 48 -100 44q-74 -8 -80 -62q0 -40 26 -64M60 40q80 -50 176 6q48 40 20 104M110 84q-20 24 2 44M206 84q16 20 -4 42")
    + k.land(ink, [[112, 128], [118, 92], [136, 74], [158, 70], [178, 84], [192, 108], [194, 128]], 132, { hatch: 5, depth: 1, lean: -8 })
    + path("ink-fine", "M132 92l8 -6M150 84l10 4M164 98l8 -2M140 108l10 -4") + path("ink-solid", "M146 76q3 -5 6 0ZM160 80q3 -5 6 0ZM136 84q3 -5 6 0Z")
    + k.land(ink, [[-4, 40], [30, 70], [44, 120], [26, 170], [40, 204]], 204, { hatch: 0 }) + path("ink-land", shape(waver([[-4, -4], [70, -4], [52, 40], [60, 90], [34, 140], [44, H + 4], [-4, H + 4]], ink, 16, 3)))
    + path("ink-fine", "M50 20l-20 16M54 60l-26 18M44 96l-22 14M36 130l-22 14M38 168l-20 12M56 100l-14 10M46 44l-22 14")
    + path("ink-land", shape(waver([[W + 4, -4], [248, -4], [262, 50], [246, 100], [268, 150], [256, H + 4], [W + 4, H + 4]], ink, 16, 3))) + path("ink-fine", "M262 30l20 10M268 70l22 12M256 104l24 12M272 150l18 10M264 178l20 10") + k.gulls(ink, 220, 40, 3)],

  "halfmoon-light-bog-boardwalk": ["Star trails round the pole over dwarf spruces", ink =>
    k.sky() + k.trails(ink, 168, 58, 8, 210, 8) + k.land(ink, [[-4, 142], [90, 138], [200, 144], [304, 138]], 204, { hatch: 10, depth: 0.3, lean: 14 })
    + k.forest(ink, 6, 120, 144, 30, 19) + k.forest(ink, 206, 296, 146, 24, 22) + path("ink-solid", k.spruce(ink, 150, 160, 70))
    + path("ink-land", "M128 204L146 150H158L196 204Z") + path("ink-fine", "M142 162h22M138 174h34M133 186h48M129 197h61")],

  "gannet-stairs-watch-knoll": ["Seven benches going down to the sea, from above", ink => {
    let out = k.sky() + k.bars(ink, 18, 22, 5) + k.sea(ink, 58);
    out += k.land(ink, [[228, 90], [236, 62], [248, 58], [258, 88]], 94, { hatch: 4, depth: 1 }) + k.land(ink, [[262, 96], [268, 76], [278, 78], [284, 98]], 100, { hatch: 4, depth: 1 });
    for (let i = 0; i < 7; i++) {
      const y = 86 + i * 15, x = 196 - i * 18;
      out += path("ink-land", shape([...waver([[-4, y - 26 + i * 3], [x * 0.5, y - 8], [x, y], [x + 26 - i, y + 8]], ink, 16, 2), [x + 20, H + 4], [-4, H + 4]]))
        + path("ink-fine", `M${x} ${y + 3}v9M${x - 12} ${y + 1}v10M${x - 26} ${y - 2}v9M${x - 44} ${y - 5}v8`)
        + path("ink-sea-line", `M${x + 8} ${y + 6}l6 12m-1 -10l6 13m0 -9l5 12`);
    }
    return out + k.gulls(ink, 150, 34, 5) + path("ink-land", "M14 188l5 -13h22l6 13ZM20 175l4 -9h13l4 9Z");
  }],

  "gannet-stairs-lower-stair": ["Two stacks off the lowest bench", ink =>
    k.sky() + k.bars(ink, 30, 20, 4) + k.sea(ink, 92)
    + k.land(ink, [[120, 118], [126, 72], [134, 48], [150, 40], [160, 58], [168, 90], [174, 118]], 120, { hatch: 4, depth: 1, lean: -6 })
    + k.land(ink, [[164, 112], [170, 78], [180, 66], [192, 74], [200, 112]], 114, { hatch: 4, depth: 1, lean: -6 })
    + path("ink-sea-line", "M108 120q16 -8 30 0t32 -2q18 -6 36 2M114 126q20 -6 40 0t44 -4")
    + k.ledges(ink, [[[-4, 142], [70, 136], [150, 150], [230, 144], [304, 152]], [[-4, 168], [90, 162], [180, 176], [304, 172]], [[-4, 190], [120, 186], [304, 196]]])
    + path("ink-sea-line", "M150 150l4 16m2 -16l4 17m40 -17l3 16m3 -16l4 16m-126 -20l3 16m3 -16l3 16")],

  "gannet-stairs-white-curtains": ["Water draining off five benches at once", ink => {
    let out = k.sky() + k.sun(150, 54, 12, 9) + k.sea(ink, 56, { bottom: 100 });
    for (let i = 0; i < 5; i++) {
      const y = 84 + i * 24;
      out += path("ink-land", shape([...waver([[-4, y + 4], [80, y - 4 + i], [160, y + 3], [240, y - 5], [304, y + 2]], ink, 20, 2), [W + 4, H + 4], [-4, H + 4]]));
      let curtain = "";
      for (let x = 4; x < W; x += ink.between(3, 9)) if (ink.next() < 0.8) curtain += `M${Math.round(x)} ${Math.round(y + 3)}q${Math.round(ink.about(0, 2))} 6 ${Math.round(ink.about(1, 3))} ${Math.round(ink.between(9, 19))}`;
      out += path("ink-sea-line", curtain);
    }
    return out;
  }],

  "gannet-stairs-headwall-foot": ["Slabs under a high wall, with fallen blocks", ink =>
    k.sky() + path("ink-land", shape(waver([[36, 204], [48, 120], [60, 60], [86, 26], [140, 14], [220, 18], [264, 44], [282, 110], [290, 204]], ink, 16, 4)))
    + path("ink-fine", "M84 40l-10 60M104 28l-6 90M130 22l2 70M156 20l-6 110M182 22l6 80M208 26l-4 96M232 36l8 70M254 52l6 60M90 110l30 -6M140 96l40 6M196 108l46 -8M76 140l40 -8M150 132l44 8M222 134l40 -6")
    + path("ink-solid", "M168 58l20 -8l6 20l-14 10Z") + k.land(ink, [[120, 176], [132, 146], [164, 140], [190, 152], [198, 176]], 178, { hatch: 5, depth: 1 })
    + k.land(ink, [[206, 182], [212, 164], [232, 160], [244, 182]], 184, { hatch: 5, depth: 1 }) + k.land(ink, [[76, 186], [84, 170], [104, 168], [112, 186]], 188, { hatch: 5, depth: 1 })
    + path("ink-sea-line", "M0 190q20 -8 40 0t40 -2t44 2t50 -2t60 2t70 -4M0 198q30 -6 60 0t80 -2t90 2t80 -2")],

  "long-slip-boathouse-wall": ["Two rails running under the sea", ink =>
    k.sky() + k.bars(ink, 18, 30, 6) + k.land(ink, [[-4, 70], [50, 62], [110, 80], [128, 92]], 93, { hatch: 5, depth: 0.9 }) + k.forest(ink, 0, 90, 68, 16, 7, x => 66 + x * 0.05)
    + k.land(ink, [[188, 92], [220, 76], [262, 66], [304, 62]], 93, { hatch: 5, depth: 0.9 }) + k.forest(ink, 224, 300, 74, 16, 7, x => 76 - (x - 224) * 0.14)
    + k.sea(ink, 92, { calm: 1 })
    + path("ink-land", "M146 112h18L232 204H60Z") + path("ink-line", "M151 108L104 204M160 108L196 204") + path("ink-fine", "M143 118h24M138 126h36M132 135h46M125 146h58M116 158h72M106 172h90M94 188h112")
    + path("ink-sea-line", "M136 112q18 -5 40 0M132 117q22 -5 50 0")],

  "long-slip-ramp-foot": ["Low over the weed, one rail in and one out", ink =>
    k.sky() + k.bars(ink, 30, 30, 5) + k.sea(ink, 66) + k.land(ink, [[210, 66], [250, 54], [304, 46]], 67, { hatch: 5, depth: 1 })
    + path("ink-land", shape([[-4, 104], [140, 76], [190, 78], [304, 130], [304, 204], [-4, 204]]))
    + path("ink-solid", "M166 78L40 204H62L172 78Z") + path("ink-fine", "M120 88l110 18M90 108l170 36M58 134l230 58M20 168l180 36")
    + path("ink-sea-line", "M104 110q-16 10 -10 22m14 -24q-14 14 -4 26m44 0q-20 10 -14 30m20 -26q-14 16 0 28m54 -32q-14 12 -6 28m14 -26q-12 14 2 26M20 140q-14 12 -8 26m18 -28q-10 14 2 28M200 108q-10 10 -4 20m12 -18q-8 10 0 20M248 146q-12 14 -4 30m14 -28q-10 14 2 28")],

  "widows-table-the-table": ["Rain pools on a flat rock, holding the sky", ink =>
    k.sky() + k.bars(ink, 14, 44, 9) + k.sea(ink, 78, { bottom: 100 })
    + path("ink-land", shape([...waver([[-4, 96], [80, 92], [190, 94], [262, 100], [304, 120]], ink, 18, 2), [W + 4, H + 4], [-4, H + 4]]))
    + `<path class="ink-sea" d="M40 122q30 -10 74 -4q24 6 -2 14q-50 10 -72 -10ZM150 148q44 -12 96 0q20 10 -14 18q-68 8 -82 -18ZM24 172q26 -8 58 0q14 8 -12 14q-44 4 -46 -14ZM176 112q20 -6 44 0q8 5 -10 8q-28 2 -34 -8Z"/>`
    + path("ink-sea-line", "M40 122q30 -10 74 -4q24 6 -2 14M150 148q44 -12 96 0q20 10 -14 18M24 172q26 -8 58 0M176 112q20 -6 44 0M62 126h30M176 154h40M44 178h20") + path("ink-fine", "M120 106l30 4M236 122l34 6M100 150l28 8M124 182l40 6M250 180l34 -4M10 146l20 4")],

  "widows-table-north-brow": ["The sun as a star on the table's edge", ink =>
    k.sky() + path("ink-fine", "M150 66l-30 -26M150 66l30 -26M150 66V24M150 66L98 58M150 66L202 58M150 66l-16 -40M150 66l16 -40") + `<circle class="ink-land" cx="150" cy="68" r="8"/>` + k.sea(ink, 118, { calm: 0.3 })
    + k.land(ink, [[96, 124], [104, 84], [120, 74], [190, 72], [240, 70], [304, 66]], 126, { hatch: 5, depth: 0.95, lean: -3 }) + k.forest(ink, 224, 300, 70, 18, 6)
    + path("ink-sea-line", "M84 126q14 -6 28 0t30 -2t36 2t40 -2t50 2M76 134q22 -6 44 0t56 -2t70 2") + k.land(ink, [[-4, 172], [50, 166], [96, 182], [120, 204]], 204, { hatch: 6, depth: 0.6, lean: 4 })],

  "widows-table-chimney-lip": ["A jet standing out of a cleft in the rock", ink =>
    k.sky() + k.sea(ink, 96) + k.land(ink, [[-4, 62], [60, 60], [110, 64], [126, 104], [130, 150]], 204, { hatch: 6, depth: 0.7 }) + k.land(ink, [[158, 150], [164, 100], [180, 70], [240, 66], [304, 70]], 204, { hatch: 6, depth: 0.7, lean: 5 })
    + k.burst(ink, 144, 150, 128, 60) + path("ink-sea-line", "M126 160q18 -10 36 0M122 170q22 -10 44 0M118 182q26 -10 52 0M116 194q28 -8 56 0")],
};
