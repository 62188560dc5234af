// The engine, asked from the page. One question is with the worker at a time. Of those
// that wait the most pressing goes next, and of one kind only the newest is asked: an
// older one is answered with null.
const order = ["name", "complete", "hover", "definition", "slide", "format", "unpack", "unzip", "pack", "zip", "version", "explain", "check", "plan", "sure", "compare"];

export class Engine {
  #worker; #waiting = new Map(); #asked = null; #ready = false; #heard; #id = 0;

  // heard is told once the engine is there, and of a fault.
  constructor(heard) {
    this.#heard = heard;
    this.#start();
  }

  #start() {
    this.#ready = false;
    this.#worker = new Worker("worker.js");
    this.#worker.onmessage = ({data}) => {
      if (data.ready) {
        this.#ready = true;
        this.#heard({ready: true});
        this.#next();
      } else if (data.fault) {
        this.#fault(data.fault);
      } else if (this.#asked && data.id === this.#asked.id) {
        const {resolve} = this.#asked;
        this.#asked = null;
        resolve(JSON.parse(data.answer));
        this.#next();
      }
    };
    this.#worker.onerror = (e) => this.#fault(e.message || "it cannot be loaded");
  }

  // The engine starts anew once a question was asked; if it cannot even start, that is said.
  #fault(what) {
    this.#worker.terminate();
    const again = this.#ready;
    this.#asked?.resolve(null);
    this.#asked = null;
    this.#heard({fault: what, again});
    if (again) this.#start();
  }

  // ask asks a question; as names it among those that wait.
  ask(question, as = question.ask) {
    this.#waiting.get(as)?.resolve(null);
    return new Promise((resolve) => {
      this.#waiting.set(as, {question, resolve});
      this.#next();
    });
  }

  // drop takes back a question that was not asked yet.
  drop(as) {
    this.#waiting.get(as)?.resolve(null);
    this.#waiting.delete(as);
  }

  #next() {
    if (!this.#ready || this.#asked) return;
    const as = order.find((one) => this.#waiting.has(one));
    if (!as) return;
    const {question, resolve} = this.#waiting.get(as);
    this.#waiting.delete(as);
    this.#asked = {id: ++this.#id, resolve};
    this.#worker.postMessage({id: this.#id, question: JSON.stringify(question)});
  }
}
