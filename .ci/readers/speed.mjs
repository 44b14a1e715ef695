// Times manifold-3d on the same cuts: each part the hull of its base less the
// hulls of its cutters and its prisms, in one subtraction. Reads JSON (see
// render/sdf/speed_test.go), prints for each part the best time in ms of many
// rounds, the volume and the triangles.
import { readFileSync } from 'node:fs';
import { kernel } from './kernel.mjs';

const { Manifold, CrossSection } = await kernel();
const parts = JSON.parse(readFileSync(process.argv[2], 'utf8'));

function build(part) {
  const used = [];
  const keep = (m) => { used.push(m); return m; };
  const base = keep(Manifold.hull(part.base));
  const cuts = part.cutters.map((c) => keep(Manifold.hull(c)));
  for (const p of part.prisms) {
    const flat = keep(new CrossSection([p.outline]));
    const solid = keep(flat.extrude(p.height));
    cuts.push(keep(solid.transform(p.place)));
  }
  const all = cuts.length ? keep(Manifold.difference([base, ...cuts])) : base;
  const volume = all.volume(), triangles = all.numTri();
  for (const m of used) m.delete();
  return { volume, triangles };
}

const out = parts.map((part) => {
  let best = Infinity, got;
  for (let k = 0; k < 30; k++) {
    const start = performance.now();
    got = build(part);
    best = Math.min(best, performance.now() - start);
  }
  return { name: part.name, ms: best, ...got };
});
console.log(JSON.stringify(out));
