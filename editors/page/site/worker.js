// The worker in which the engine runs. It is sent a question as JSON and sends back the
// answer; what it says before the first answer is how loading goes.
"use strict";
importScripts("wasm_exec.js");

self.ready = () => postMessage({ready: true});

// The engine is packed, for few plain web servers pack what they send. One that the
// server sends unpacked is taken as it is. It is compiled while it comes.
async function unpacked(response) {
  const reader = response.body.getReader();
  const {value: begin = new Uint8Array()} = await reader.read();
  const whole = new ReadableStream({
    start: (c) => c.enqueue(begin),
    async pull(c) {
      const {done, value} = await reader.read();
      if (done) c.close();
      else c.enqueue(value);
    },
  });
  const packed = begin[0] === 0x1f && begin[1] === 0x8b;
  return new Response(packed ? whole.pipeThrough(new DecompressionStream("gzip")) : whole, {headers: {"Content-Type": "application/wasm"}});
}

async function start() {
  const response = await fetch("engine.bin");
  if (!response.ok) throw new Error("engine.bin: " + response.status);
  const go = new Go();
  go.env = {GOGC: "400", GOMEMLIMIT: "1GiB"}; // time is short here, memory is not
  const {instance} = await WebAssembly.instantiateStreaming(await unpacked(response), go.importObject);
  go.run(instance).then(() => postMessage({fault: "the engine has ended"}));
}

onmessage = ({data}) => {
  let answer;
  try {
    answer = self.newmake(data.question);
  } catch (e) {
    postMessage({fault: String(e)});
    return;
  }
  postMessage({id: data.id, answer});
};

start().catch((e) => postMessage({fault: String(e)}));
