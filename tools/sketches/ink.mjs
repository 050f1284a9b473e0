// A small box of ink: shapes as an engraver would set them, in a frame 300 wide and 200 high. Everything is drawn with classes
// of the site's style sheet (ink-sky, ink-sea, ink-land, ink-solid, ink-line, ink-fine, ink-sea-line), never with a colour, so that
// each theme and the printer ink it in their own way.

export const W = 300;
export const H = 200;

// Numerical Recipes' quick linear congruential generator: the same sketch on every run.
export function dice(seed) {
  let state = seed >>> 0;
  const next = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  return { next, between: (a, b) => a + (b - a) * next(), about: (a, d) => a + (next() * 2 - 1) * d };
}

const n = v => String(Math.round(v));
const pt = ([x, y]) => `${n(x)} ${n(y)}`;
export const line = points => "M" + points.map(pt).join("L");
export const shape = points => line(points) + "Z";
export const path = (cls, d) => `<path class="${cls}" d="${d}"/>`;

/** Between corners, the hand wavers: extra points a little off the line. */
export function waver(points, ink, step = 14, amount = 2) {
  const out = [points[0]];
  for (let i = 1; i < points.length; i++) {
    const [ax, ay] = points[i - 1], [bx, by] = points[i];
    const parts = Math.max(1, Math.round(Math.hypot(bx - ax, by - ay) / step));
    for (let k = 1; k <= parts; k++) {
      const t = k / parts, off = k < parts ? amount : 0;
      out.push([ink.about(ax + (bx - ax) * t, off), ink.about(ay + (by - ay) * t, off)]);
    }
  }
  return out;
}

const heightAt = (profile, x) => {
  for (let i = 1; i < profile.length; i++) {
    const [ax, ay] = profile[i - 1], [bx, by] = profile[i];
    if (x >= ax && x <= bx) return ay + (by - ay) * ((x - ax) / (bx - ax || 1));
  }
  return null;
};

export const sky = () => `<rect class="ink-sky" width="${W}" height="${H}"/>`;

/** Ruled water: short strokes, close together at the horizon, open near the eye. Calm is few, long strokes. */
export function sea(ink, horizon, { bottom = H, calm = 0.4, left = 0, right = W } = {}) {
  const strokes = [];
  let gap = 3;
  for (let y = horizon + 3; y < bottom - 2; y += gap, gap *= 1.28) {
    const count = Math.max(2, Math.round((right - left) / (26 + (y - horizon) * 0.9)) - 1);
    for (let k = 0; k < count; k++) {
      const length = ink.between(6, 16) * (0.5 + (y - horizon) / 70) * (1 + calm);
      const x = ink.between(left, right - length);
      strokes.push(`M${n(x)} ${n(y)}h${n(length)}`);
    }
  }
  return `<rect class="ink-sea" x="${n(left)}" y="${n(horizon)}" width="${n(right - left)}" height="${n(bottom - horizon)}"/>`
    + path("ink-sea-line", `M${n(left)} ${n(horizon)}H${n(right)}${strokes.join("")}`);
}

/** Land from a profile down to a base line, with hatching that follows the slope on its shaded side. */
export function land(ink, profile, base, { hatch = 7, lean = -6, depth = 0.55, cls = "ink-land" } = {}) {
  const top = waver(profile, ink);
  const first = top[0], last = top[top.length - 1];
  let strokes = "";
  for (let x = first[0] + hatch; x < last[0] - 2 && hatch; x += ink.about(hatch, hatch / 3)) {
    const y = heightAt(top, x);
    if (y === null || base - y < 6) continue;
    const y1 = y + ink.between(2, 5), long = (base - y) * ink.between(depth * 0.5, depth);
    strokes += `M${n(x)} ${n(y1)}l${n(lean * long / 40)} ${n(long)}`;
  }
  return path(cls, shape([...top, [last[0], base], [first[0], base]])) + (strokes ? path("ink-fine", strokes) : "");
}

/** Foreground rock in benches: each a bright top and a hatched riser. */
export function ledges(ink, steps) {
  let out = "";
  for (const step of steps) {
    const top = waver(step, ink, 18, 2.5);
    out += path("ink-land", shape([...top, [W + 4, H + 4], [-4, H + 4]]));
    let risers = "";
    for (let i = 1; i < top.length; i++) {
      const [x, y] = top[i];
      if (ink.next() < 0.75) risers += `M${n(x)} ${n(y + 3)}l${n(ink.about(-2, 3))} ${n(ink.between(5, 13))}`;
      if (ink.next() < 0.3) risers += `M${n(x - 4)} ${n(y + 9)}l${n(ink.between(9, 20))} ${n(ink.about(1, 2))}`;
    }
    out += path("ink-fine", risers);
  }
  return out;
}

export function spruce(ink, x, y, h) {
  const left = [], right = [], tiers = Math.max(3, Math.round(h / 7));
  for (let i = 0; i <= tiers; i++) {
    const t = i / tiers, half = (0.5 + t * h * 0.2) * (i % 2 ? 1.25 : 0.7);
    left.unshift([x - half + ink.about(0, 0.8), y - h + t * h]);
    right.push([x + half + ink.about(0, 0.8), y - h + t * h]);
  }
  return shape([...right, ...left]);
}

export const forest = (ink, from, to, y, h, gap = 7, at = () => y) => {
  let d = "";
  for (let x = from; x < to; x += ink.about(gap, gap / 2.5)) d += spruce(ink, x, at(x), ink.between(h * 0.6, h * 1.15));
  return path("ink-solid", d);
};

export function tower(x, base, h, { width = 9, bands = 0 } = {}) {
  const w = width, t = w * 0.72, lamp = h * 0.16;
  let d = shape([[x - w / 2, base], [x - t / 2, base - h + lamp], [x + t / 2, base - h + lamp], [x + w / 2, base]]);
  let out = path("ink-land", d);
  let dark = `M${n(x - t / 2 - 1)} ${n(base - h + lamp)}h${n(t + 2)}v-2h${n(-t - 2)}Z`
    + shape([[x - t / 3, base - h + lamp - 2], [x - t / 3, base - h + 3], [x, base - h - 2], [x + t / 3, base - h + 3], [x + t / 3, base - h + lamp - 2]]);
  for (let i = 0; i < bands; i++) {
    const y = base - ((i * 2 + 1) * (h - lamp)) / (bands * 2 + 1), s = (h - lamp) / (bands * 2 + 1);
    dark += shape([[x - w / 2 + 0.8, y], [x - w / 2 + 1.2, y - s], [x + w / 2 - 1.2, y - s], [x + w / 2 - 0.8, y]]);
  }
  return out + path("ink-solid", dark);
}

export function boat(x, y, s, { mast = true, flip = 1 } = {}) {
  const f = v => x + v * s * flip;
  return path("ink-solid", shape([[f(-12), y - 4 * s], [f(13), y - 6 * s], [f(9), y + s], [f(-10), y + s]]))
    + path("ink-land", shape([[f(0), y - 5 * s], [f(0), y - 12 * s], [f(6), y - 12 * s], [f(7), y - 5.5 * s]]))
    + (mast ? path("ink-line", `M${n(f(-3))} ${n(y - 5 * s)}V${n(y - 18 * s)}`) : "");
}

export function house(x, base, w, h) {
  return path("ink-land", shape([[x, base], [x, base - h], [x + w / 2, base - h - w * 0.36], [x + w, base - h], [x + w, base]]))
    + path("ink-solid", `M${n(x + w * 0.2)} ${n(base - h * 0.75)}h${n(w * 0.2)}v${n(h * 0.3)}h${n(-w * 0.2)}ZM${n(x + w * 0.6)} ${n(base - h * 0.75)}h${n(w * 0.2)}v${n(h * 0.3)}h${n(-w * 0.2)}Z`);
}

/** Sun with rays only above the water; a body touching the horizon is cut by what is drawn after it. */
export function sun(x, y, r, rays = 9) {
  let d = "";
  for (let i = 0; i < rays; i++) {
    const a = Math.PI * (1.06 + (0.88 * i) / (rays - 1)), from = r + 5, to = r + (i % 2 ? 11 : 17);
    d += `M${n(x + Math.cos(a) * from)} ${n(y + Math.sin(a) * from)}L${n(x + Math.cos(a) * to)} ${n(y + Math.sin(a) * to)}`;
  }
  return `<circle class="ink-land" cx="${n(x)}" cy="${n(y)}" r="${n(r)}"/>` + (d ? path("ink-fine", d) : "");
}

export const moon = (x, y, r) => `<circle class="ink-land" cx="${n(x)}" cy="${n(y)}" r="${n(r)}"/>`
  + path("ink-fine", `M${n(x - r * 0.4)} ${n(y - r * 0.2)}h${n(r * 0.5)}M${n(x)} ${n(y + r * 0.3)}h${n(r * 0.5)}`);

export const crescent = (x, y, r) => path("ink-solid", `M${n(x)} ${n(y - r)}A${n(r)} ${n(r)} 0 1 0 ${n(x + r)} ${n(y + r * 0.3)}A${n(r * 0.8)} ${n(r * 0.8)} 0 0 1 ${n(x)} ${n(y - r)}Z`);

/** Low bars of cloud. */
export function bars(ink, y, depth, count = 7) {
  let d = "";
  for (let i = 0; i < count; i++) {
    const x = ink.between(-10, 230), w = ink.between(30, 110), at = y + depth * (i / count);
    d += `M${n(x)} ${n(at)}q${n(w * 0.3)} ${n(ink.about(-3, 2))} ${n(w)} ${n(ink.about(0, 1))}`;
  }
  return path("ink-fine", d);
}

export function stars(ink, bottom, count = 46, skip = () => false) {
  let d = "";
  for (let i = 0; i < count; i++) {
    const x = ink.between(4, W - 4), y = ink.between(4, bottom);
    if (skip(x, y)) continue;
    d += ink.next() < 0.16 ? `M${n(x - 2)} ${n(y)}h4m-2 -2v4` : `M${n(x)} ${n(y)}h1`;
  }
  return path("ink-line", d);
}

/** The galaxy as stipple along a slanted band. */
export function galaxy(ink, x0, y0, x1, y1, width, count = 170) {
  let d = "";
  const nx = -(y1 - y0), ny = x1 - x0, l = Math.hypot(nx, ny);
  for (let i = 0; i < count; i++) {
    const t = ink.next(), off = (ink.next() + ink.next() + ink.next() - 1.5) * width * 0.66;
    d += `M${n(x0 + (x1 - x0) * t + (nx / l) * off)} ${n(y0 + (y1 - y0) * t + (ny / l) * off)}h1`;
  }
  return path("ink-line", d);
}

/** Concentric arcs about the pole. */
export function trails(ink, cx, cy, from, to, gap = 9) {
  let d = "";
  for (let r = from; r < to; r += ink.about(gap, 3)) {
    const a = ink.between(0, Math.PI * 2), sweep = 0.75;
    d += `M${n(cx + Math.cos(a) * r)} ${n(cy + Math.sin(a) * r)}A${n(r)} ${n(r)} 0 0 1 ${n(cx + Math.cos(a + sweep) * r)} ${n(cy + Math.sin(a + sweep) * r)}`;
  }
  return path("ink-fine", d);
}

export function burst(ink, x, base, h, w) {
  let d = "";
  for (let i = 0; i < 26; i++) {
    const a = ink.about(-Math.PI / 2, 0.75), r = h * ink.between(0.35, 1);
    d += `M${n(x + Math.cos(a) * w * 0.3)} ${n(base)}q${n(Math.cos(a) * r * 0.2)} ${n(-r * 0.7)} ${n(Math.cos(a) * r * (w / h))} ${n(-r * ink.between(0.7, 1))}`;
  }
  return path("ink-sea-line", d);
}

export function cobbles(ink, left, right, top) {
  let d = "";
  for (let y = H - 4, size = 15; y > top && size > 3; y -= size * 0.66, size *= 0.87)
    for (let x = left + ink.between(-size, 0); x < right; x += size * 1.6) {
      const w = size * ink.between(0.55, 0.8), px = ink.about(x, 2);
      d += `M${n(px - w)} ${n(y)}q${n(w * 0.2)} ${n(-w * 0.9)} ${n(w)} ${n(-w * 0.8)}t${n(w)} ${n(w * 0.8)}`;
    }
  return path("ink-fine", d);
}

export const piles = (ink, rows) => path("ink-solid", rows.map(([x, base, h, w]) => shape([[x - w / 2, base], [x - w * 0.38, base - h], [x + w * 0.38, base - h + ink.about(0, 1)], [x + w / 2, base]])).join(""));

export const gulls = (ink, x, y, count = 4) => {
  let d = "";
  for (let i = 0; i < count; i++) {
    const px = ink.about(x, 26), py = ink.about(y, 14), s = ink.between(3, 6);
    d += `M${n(px - s)} ${n(py - s * 0.4)}q${n(s * 0.6)} ${n(-s * 0.4)} ${n(s)} ${n(s * 0.4)}q${n(s * 0.4)} ${n(-s * 0.8)} ${n(s)} ${n(-s * 0.4)}`;
  }
  return path("ink-line", d);
};
