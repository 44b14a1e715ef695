// Reads STL files, one part each, with an outside solid kernel and prints what
// it finds as JSON: whether each is closed, its genus and volume, and the
// volume that each two share.
//
//   node mesh.mjs FILE...
//
// It decides nothing: the tests compare the figures with the plan.
import { kernel } from './kernel.mjs';
import { index, openEdges, readSTL } from './stl.mjs';

const { Manifold, Mesh } = await kernel();
const parts = [];
const solids = [];
for (const file of process.argv.slice(2)) {
  const { vertices, triangles } = index(readSTL(file));
  const part = { file, triangles: triangles.length / 3, open: openEdges(triangles), status: 'NoError' };
  let solid = null;
  try {
    solid = Manifold.ofMesh(new Mesh({ numProp: 3, vertProperties: vertices, triVerts: triangles }));
    part.status = String(solid.status());
    part.genus = solid.genus();
    part.volume = solid.volume();
    part.area = solid.surfaceArea();
    part.pieces = solid.decompose().length;
    const b = solid.boundingBox();
    part.min = Array.from(b.min);
    part.max = Array.from(b.max);
  } catch (e) {
    part.status = String(e.code || e.message || e);
  }
  parts.push(part);
  solids.push(solid);
}
const shared = [];
for (let i = 0; i < solids.length; i++) {
  for (let j = i + 1; j < solids.length; j++) {
    if (solids[i] && solids[j]) shared.push({ a: i, b: j, volume: solids[i].intersect(solids[j]).volume() });
  }
}
console.log(JSON.stringify({ parts, shared }));
