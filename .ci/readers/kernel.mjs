// Loads manifold-3d from ../node, where package.json pins it: run
// `npm ci --ignore-scripts` there first.
export async function kernel() {
  const at = new URL('../node/node_modules/manifold-3d/manifold.js', import.meta.url);
  const { default: load } = await import(at.href);
  const wasm = await load();
  wasm.setup();
  return wasm;
}
