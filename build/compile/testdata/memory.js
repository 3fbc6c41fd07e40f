// Loads a program without running it, and writes its memory to a file.
//
//   node memory.js program.wasm memory
const { readFileSync, writeFileSync } = require("node:fs");

const [program, out] = process.argv.slice(2);
const nothing = new Proxy({}, { get: () => () => {} });
const imports = new Proxy({}, { get: () => nothing });
WebAssembly.instantiate(readFileSync(program), imports).then(({ instance }) => {
  writeFileSync(out, new Uint8Array(instance.exports.mem.buffer));
});
