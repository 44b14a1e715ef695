// Reads an STL file, binary or text, for the scripts beside it.
import { readFileSync } from 'node:fs';

/** Triangles of a file: nine numbers each. */
export function readSTL(path) {
  const b = readFileSync(path);
  const n = b.length >= 84 ? b.readUInt32LE(80) : -1;
  if (b.length === 84 + 50 * n) {
    const out = new Float64Array(9 * n);
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < 9; k++) out[9 * i + k] = b.readFloatLE(84 + 50 * i + 12 + 4 * k);
    }
    return out;
  }
  const text = b.toString('latin1');
  const out = [];
  for (const m of text.matchAll(/^\s*vertex\s+(\S+)\s+(\S+)\s+(\S+)\s*$/gm)) {
    out.push(Number(m[1]), Number(m[2]), Number(m[3]));
  }
  if (out.length === 0 || out.length % 9) throw new Error(`${path}: not an STL file`);
  return Float64Array.from(out);
}

/** Joins equal corners: {vertices: Float32Array, triangles: Uint32Array}. */
export function index(corners) {
  const seen = new Map();
  const vertices = [];
  const triangles = new Uint32Array(corners.length / 3);
  for (let i = 0; i < corners.length; i += 3) {
    const p = [Math.fround(corners[i]), Math.fround(corners[i + 1]), Math.fround(corners[i + 2])];
    const key = p.join(' ');
    let k = seen.get(key);
    if (k === undefined) {
      k = seen.size;
      seen.set(key, k);
      vertices.push(...p);
    }
    triangles[i / 3] = k;
  }
  return { vertices: Float32Array.from(vertices), triangles };
}

/** How often the directed edges fail to pair up. */
export function openEdges(triangles) {
  const n = new Map();
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k];
      const b = triangles[i + (k + 1) % 3];
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      const e = n.get(key) || [0, 0];
      e[a < b ? 0 : 1]++;
      n.set(key, e);
    }
  }
  let open = 0;
  for (const [f, g] of n.values()) if (f !== 1 || g !== 1) open++;
  return open;
}
