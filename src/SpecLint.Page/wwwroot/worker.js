// Runs the library away from the screen, so that typing never waits for it.
import { dotnet } from './_framework/dotnet.js';

let library;

const ready = (async () => {
  const runtime = await dotnet.create();
  const exports = await runtime.getAssemblyExports(runtime.getConfig().mainAssemblyName);
  library = exports.SpecLint.Page.Exports;
  return { version: library.LibraryVersion(), words: JSON.parse(library.Words()) };
})();

ready.then((what) => postMessage({ ready: what }), (e) => postMessage({ failed: String(e) }));

onmessage = async ({ data: { id, name, args } }) => {
  try {
    await ready;
    postMessage({ id, result: library[name](...args) });
  } catch (e) {
    postMessage({ id, error: e instanceof Error ? e.message : String(e) });
  }
};
