// The compiled core: a text goes in, a text comes out.
class Core {
  static async from(data) {
    const bytes = Uint8Array.from(atob(data.core), one => one.charCodeAt(0));
    const nothing = () => 0;  // what a core without files and clock is never asked for
    const module = await WebAssembly.compile(bytes);
    const imports = {};
    for (const { module: from, name } of WebAssembly.Module.imports(module))
      (imports[from] ??= {})[name] = nothing;
    const core = new Core(await WebAssembly.instantiate(module, imports));
    core.tell("load", data.scenario);
    return core;
  }

  constructor(instance) {
    this.exports = instance.exports;
    this.exports._initialize();
  }

  // Calls a function of the core with a text; what it answers is JSON.
  tell(name, text) {
    const { memory, malloc, free } = this.exports;
    const bytes = new TextEncoder().encode(text);
    const at = malloc(bytes.length + 1);
    new Uint8Array(memory.buffer).set([...bytes, 0], at);
    const made = this.exports[`windwall_${name}`](at);
    free(at);
    const all = new Uint8Array(memory.buffer);
    return JSON.parse(new TextDecoder().decode(all.subarray(made, all.indexOf(0, made))));
  }
}
