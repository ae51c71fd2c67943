// What the build puts into ./go: the runtime's own host script and the compiled core.
declare module '*/go/wasm_exec.js' {}

/** The host of one Go program, defined by wasm_exec.js. */
declare class Go {
  importObject: WebAssembly.Imports;
  env: Record<string, string>;
  run(instance: WebAssembly.Instance): Promise<void>;
}
