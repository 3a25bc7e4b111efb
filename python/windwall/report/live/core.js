// The compiled core: a text goes in, JSON comes out.
class Core {
  static async from(packed, scenario) {
    const bytes = Uint8Array.from(atob(packed), one => one.charCodeAt(0));
    const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    const module = await WebAssembly.compile(await new Response(plain).arrayBuffer());
    const imports = {};  // a core without files and clock is never asked for them
    for (const { module: from, name } of WebAssembly.Module.imports(module))
      (imports[from] ??= {})[name] = () => 0;
    const core = new Core(await WebAssembly.instantiate(module, imports));
    core.tell("load", scenario);
    return core;
  }

  constructor(instance) {
    this.exports = instance.exports;
    this.exports._initialize();
  }

  tell(name, text) {
    const { memory, malloc, free } = this.exports;
    const bytes = new TextEncoder().encode(text + "\0");
    const at = malloc(bytes.length);
    new Uint8Array(memory.buffer).set(bytes, at);
    const made = this.exports[`windwall_${name}`](at);
    free(at);
    const all = new Uint8Array(memory.buffer);
    return JSON.parse(new TextDecoder().decode(all.subarray(made, all.indexOf(0, made))));
  }
}

// The core in a thread of its own, so that sliders move while it works.
class Beside {
  constructor(packed, scenario) {
    const run = `${Core}
      const core = new Promise(resolve => onmessage = ({ data }) => {
        resolve(Core.from(...data));
        onmessage = ({ data, ports: [port] }) => core.then(
          core => port.postMessage(core.tell("ask", data)),
          error => port.postMessage({ problems: [{ address: "", message: error.message }] }));
      });`;
    const url = URL.createObjectURL(new Blob([run], { type: "text/javascript" }));
    this.worker = new Worker(url);
    this.worker.postMessage([packed, scenario]);
  }

  ask(text) {
    return new Promise((resolve, reject) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = ({ data }) => { port1.close(); resolve(data); };
      this.worker.onerror = reject;
      this.worker.postMessage(text, [port2]);
    });
  }
}

// What answers a text of changes; inside the page where no thread may start from a file.
async function answering(packed, scenario) {
  try {
    const beside = new Beside(packed, scenario);
    await beside.ask("{}");
    return text => beside.ask(text);
  } catch {
    const core = await Core.from(packed, scenario);
    return async text => core.tell("ask", text);
  }
}
