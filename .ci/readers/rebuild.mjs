// Builds parts again from their drawings alone, by the layers that package dxf
// documents, and compares them with their meshes:
//
//   node rebuild.mjs JOBS.json
//
// JOBS.json is a list of {dxf, stl}: what dxf.py prints about a bare drawing
// of one part, and the path of the part's mesh, laid flat. For each it prints
// the two volumes and what is in one but not in the other. It decides nothing:
// the test compares the figures with the plan.
import { readFileSync } from 'node:fs';
import { kernel } from './kernel.mjs';
import { index, readSTL } from './stl.mjs';

const { CrossSection, Manifold, Mesh, triangulate } = await kernel();

/** Points of a contour, arcs in steps of half a degree. */
function flatten(vertices) {
  const out = [];
  vertices.forEach(([x, y, b], i) => {
    const [u, v] = vertices[(i + 1) % vertices.length];
    out.push([x, y]);
    if (!b) return;
    const sweep = 4 * Math.atan(b);
    const n = Math.ceil(Math.abs(sweep) / (Math.PI / 360));
    const k = (1 - b * b) / (4 * b);
    const cx = (x + u) / 2 - (v - y) * k;
    const cy = (y + v) / 2 + (u - x) * k;
    for (let j = 1; j < n; j++) {
      const a = (sweep * j) / n;
      const c = Math.cos(a);
      const s = Math.sin(a);
      out.push([cx + (x - cx) * c - (y - cy) * s, cy + (x - cx) * s + (y - cy) * c]);
    }
  });
  return out;
}

function circle([x, y, r]) {
  const out = [];
  for (let i = 0; i < 720; i++) {
    const a = (i * Math.PI) / 360;
    out.push([x + r * Math.cos(a), y + r * Math.sin(a)]);
  }
  return out;
}

const polygons = (layer) => [...layer.contours.map((c) => flatten(c.vertices)), ...layer.circles.map(circle)];

/** A prism over polygons between two heights. */
function prism(ps, low, high) {
  return new CrossSection(ps, 'NonZero').extrude(high - low).translate([0, 0, low]);
}

/** The solid between polygons at the height low and others at high. */
function loft(lower, low, upper, high) {
  if (lower.length !== upper.length || lower.some((c, i) => c.length !== upper[i].length)) {
    // An edge of one face has no length on the other: the bevels meet there.
    // Then the solid is the hull of both less the square notches that both
    // outlines have.
    const hull = Manifold.hull([...lower.flat().map((p) => [...p, low]), ...upper.flat().map((p) => [...p, high])]);
    const notches = (ps) => {
      const c = new CrossSection(ps, 'NonZero');
      return c.hull().subtract(c);
    };
    const both = notches(lower).intersect(notches(upper));
    return hull.subtract(both.extrude(high - low + 2).translate([0, 0, low - 1]));
  }
  const vertices = [];
  const triangles = [];
  const base = lower.map((c, i) => {
    // Corner for corner, beginning where the two lie nearest.
    const d = upper[i];
    const n = c.length;
    let best = Infinity;
    let shift = 0;
    for (let s = 0; s < n; s++) {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += Math.hypot(c[k][0] - d[(k + s) % n][0], c[k][1] - d[(k + s) % n][1]);
      if (sum < best) [best, shift] = [sum, s];
    }
    const at = vertices.length / 6;
    for (let k = 0; k < n; k++) vertices.push(...c[k], low, ...d[(k + shift) % n], high);
    for (let k = 0; k < n; k++) {
      const a = 2 * (at + k);
      const b = 2 * (at + ((k + 1) % n));
      triangles.push(a, b, b + 1, a, b + 1, a + 1);
    }
    return at;
  });
  const number = lower.flatMap((c, i) => c.map((_, k) => base[i] + k));
  const face = (which) => triangulate(lower.map((c, i) => c.map((_, k) => {
    const at = 3 * (2 * (base[i] + k) + which);
    return [vertices[at], vertices[at + 1]];
  })));
  for (const [a, b, c] of face(0)) triangles.push(2 * number[a], 2 * number[c], 2 * number[b]);
  for (const [a, b, c] of face(1)) triangles.push(2 * number[a] + 1, 2 * number[b] + 1, 2 * number[c] + 1);
  return Manifold.ofMesh(new Mesh({ numProp: 3, vertProperties: Float32Array.from(vertices), triVerts: Uint32Array.from(triangles) }));
}

const layerName = /^(TURNED_|FAR_|EDGE_)?([A-Z]+)((?:_[0-9.]+)*)(_BOTTOM)?$/;

function rebuild(layers) {
  const work = [];
  let thickness = 0;
  let machined = null;
  let far = null;
  let turned = null;
  for (const [name, layer] of Object.entries(layers)) {
    if (name === '0' || name === 'Defpoints') continue;
    const m = layerName.exec(name);
    if (!m) throw new Error(`layer ${name}`);
    const [, view = '', kind, tail, bottom] = m;
    const depths = tail.split('_').slice(1).map(Number);
    const ps = polygons(layer);
    if (kind === 'PROFILE') [machined, thickness] = [ps, depths[0]];
    else if (view === 'FAR_') far = ps;
    else if (view === 'TURNED_' && kind === 'FACE') turned = ps;
    else if (bottom) continue;
    else if (view === 'EDGE_' && (kind === 'BORE' || kind === 'FIXING')) continue; // a shadow: what goes in fills it
    else {
      const low = layers[`${name}_BOTTOM`];
      const to = depths.pop();
      work.push({ view, from: depths.pop() || 0, to, top: ps, bottom: low && polygons(low) });
    }
  }
  let body = far ? loft(far, -thickness, machined, 0) : prism(machined, -thickness, 0);
  const span = (ps) => {
    const xs = ps.flat().map((p) => p[0]);
    return [Math.min(...xs), Math.max(...xs)];
  };
  for (const w of work) {
    let { top, bottom } = w;
    // Past the faces that it is open to, so that no two faces coincide.
    let high = w.from === 0 && !bottom ? 1 : -w.from;
    let low = w.to === thickness && !bottom ? -thickness - 1 : -w.to;
    if (w.view === 'TURNED_') {
      // Turned over, the face at hand is the far one: lay it on that.
      const [, right] = span(turned);
      const [left] = span(far || machined);
      const back = (ps) => ps && ps.map((c) => c.map(([x, y]) => [left + right - x, y]).reverse());
      [top, bottom] = [back(top), back(bottom)];
      [low, high] = [-thickness - high, -thickness - low];
      if (bottom) [top, bottom] = [bottom, top];
    }
    if (!bottom) body = body.subtract(prism(top, low, high));
    else {
      // Several on one layer: each bottom belongs to the top it lies nearest.
      const middle = (c) => c.reduce((s, p) => [s[0] + p[0] / c.length, s[1] + p[1] / c.length], [0, 0]);
      for (const c of top) {
        const [x, y] = middle(c);
        const near = (d) => Math.hypot(middle(d)[0] - x, middle(d)[1] - y);
        const d = bottom.reduce((a, b) => (near(b) < near(a) ? b : a));
        body = body.subtract(Manifold.hull([...c.map((p) => [...p, high]), ...d.map((p) => [...p, low])]));
      }
    }
  }
  return body;
}

const out = [];
for (const { dxf, stl } of JSON.parse(readFileSync(process.argv[2], 'utf8'))) {
  const { vertices, triangles } = index(readSTL(stl));
  const mesh = Manifold.ofMesh(new Mesh({ numProp: 3, vertProperties: vertices, triVerts: triangles }));
  try {
    const body = rebuild(dxf.layers);
    out.push({
      rebuilt: body.volume(),
      mesh: mesh.volume(),
      only_rebuilt: body.subtract(mesh).volume(),
      only_mesh: mesh.subtract(body).volume(),
    });
  } catch (e) {
    out.push({ error: String((e && e.message) || e), mesh: mesh.volume() });
  }
}
console.log(JSON.stringify(out));
