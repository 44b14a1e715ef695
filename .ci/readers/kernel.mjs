// Loads manifold-3d from ../node, where package.json pins it: run
// `npm ci --ignore-scripts` there first.
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

export async function kernel() {
  const require = createRequire(new URL('../node/package.json', import.meta.url));
  const { default: load } = await import(pathToFileURL(require.resolve('manifold-3d')).href);
  const wasm = await load();
  wasm.setup();
  return wasm;
}
