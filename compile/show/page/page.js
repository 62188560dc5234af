// What the page does: it sends what is typed, keeps it until it is taken, takes over
// what is new without loading anew, and counts down to the next step. It computes
// nothing of the batch.
"use strict";

const $ = (id) => document.getElementById(id);
const all = (selector, within = document) => [...within.querySelectorAll(selector)];

// What this browser keeps: ticks, what was typed and not taken yet, and who types.
const kept = {
  name: (what) => "newmake " + document.body.dataset.key + " " + what,
  get(what) { try { return localStorage.getItem(this.name(what)); } catch { return null; } },
  set(what, value) {
    try { value ? localStorage.setItem(this.name(what), value) : localStorage.removeItem(this.name(what)); } catch { /* a browser that keeps nothing */ }
  },
};

// Ticks.
function ticks() {
  for (const box of all("[data-tick]")) {
    box.checked = kept.get("tick " + box.dataset.tick) === "1";
    box.closest(".step").classList.toggle("done", box.checked);
  }
}

// What is typed.
const fields = (form) => all("input[name]", form).filter((i) => i.type !== "checkbox" && i.name !== "by");

function restore() {
  for (const form of all("form.visit")) {
    for (const input of fields(form)) {
      const draft = kept.get("typed " + form.id + " " + input.name);
      if (draft !== null && input.value === "" && input !== document.activeElement) input.value = draft;
    }
    if (!form.by.value) form.by.value = kept.get("by") ?? "";
  }
}

document.addEventListener("input", ({ target }) => {
  if (target.dataset.tick) {
    kept.set("tick " + target.dataset.tick, target.checked ? "1" : "");
    return ticks();
  }
  if (target.id === "cut-at") return askCut();
  const form = target.closest("form.visit");
  if (!form || target.type === "checkbox") return;
  if (target.name === "by") return kept.set("by", target.value);
  kept.set("typed " + form.id + " " + target.name, target.value);
  if (target.matches("[data-blank]") && target.value && form.clock && !form.clock.value) timely(form);
});

// timely writes the time of day beside the first value, where it is near the time at
// which it is due: later it is typed from paper.
function timely(form) {
  const due = form.dataset.due;
  if (!due || Math.abs(now() - Date.parse(due)) > 12 * 3600e3) return;
  form.clock.value = clockAt(now(), due);
  kept.set("typed " + form.id + " clock", form.clock.value);
}

// clockAt is the clock of the plant, by the offset in a time of the plan.
function clockAt(ms, like) {
  const [, sign, h, m] = /([+-])(\d\d):(\d\d)$/.exec(like) ?? [null, "+", "0", "0"];
  const offset = (sign === "-" ? -1 : 1) * (60 * h + +m);
  return new Date(ms + offset * 60e3).toISOString().slice(11, 16);
}

// A clock typed without its colon.
document.addEventListener("change", ({ target }) => {
  const m = target.name === "clock" && /^(\d{1,2})[.:]?(\d\d)$/.exec(target.value.trim());
  if (!m) return;
  target.value = m[1].padStart(2, "0") + ":" + m[2];
  kept.set("typed " + target.form.id + " clock", target.value);
});

document.addEventListener("submit", (event) => {
  const form = event.target.closest("form.visit");
  if (!form) return;
  event.preventDefault();
  send(form);
});

async function send(form) {
  const values = [], slip = form.hasAttribute("data-slip"); // a slip of the pen: what is empty was right
  for (const input of all("[data-blank]", form)) {
    const read = input.value.trim() || (form.none?.checked ? "none" : "");
    const sample = all("[data-sample]", form).find((s) => s.name === input.name + " sample");
    if (read || slip && (sample?.value.trim() || form.clock?.value.trim())) values.push({ blank: input.name, read, sample: sample?.value.trim() ?? "" });
  }
  if (!values.length) return say(form, "Type a value first.", "refused");
  say(form, "Sending ...", "");
  const sent = fields(form).map((i) => [i.name, i.value]);
  const answer = await post("readings", {
    seen: document.body.dataset.seen ?? "", slip, values,
    clock: form.clock?.value ?? "", day: form.day?.value ?? "", by: form.by.value.trim(), remark: form.remark.value.trim(),
  });
  if (!answer.ok) return say(form, answer.said + " What was typed stays here.", "refused");
  for (const [name, value] of sent) {
    const input = fields(form).find((i) => i.name === name);
    kept.set("typed " + form.id + " " + name, "");
    if (input && input.value === value) input.value = "";
  }
  if (form.none) form.none.checked = false;
  say(form, ["Kept.", ...answer.doubts].join(" "), "taken");
  if (answer.seen) document.body.dataset.seen = answer.seen;
  refresh();
}

function say(form, words, how) {
  const said = form.querySelector(".said");
  said.className = "said " + how;
  said.textContent = words;
}

async function post(path, body) {
  try {
    const r = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal: AbortSignal.timeout(15e3) });
    const said = await r.json().catch(() => ({}));
    if (r.ok) return { ok: true, seen: said.seen, doubts: said.doubts ?? [] };
    if (said.changed) refresh();
    return { ok: false, said: said.refused ?? "It was not taken (" + r.status + ")." };
  } catch {
    return { ok: false, said: "newmake does not answer." };
  }
}

document.addEventListener("click", async ({ target }) => {
  if (target.id !== "open-run") return;
  target.disabled = true;
  const answer = await post("run", {});
  $("open-said").textContent = answer.ok ? "Opened." : answer.said;
  target.disabled = false;
  refresh();
});

// The page as it is now at the server, taken over in place: an element stays the same
// element as long as it is there, with its focus and what is typed in it.
let refreshing, again;
async function refresh() {
  again = true;
  if (refreshing) return;
  refreshing = true;
  while (again) {
    again = false;
    try {
      const r = await fetch("./", { signal: AbortSignal.timeout(15e3) });
      if (r.status === 401) return location.reload(); // the day is over: the code is asked for
      if (!r.ok) break;
      const page = new DOMParser().parseFromString(await r.text(), "text/html");
      title = page.title;
      patch(document.body, page.body);
      settle();
    } catch { break; }
  }
  refreshing = false;
}

const key = (n) => n.nodeType === 1 && n.id ? "#" + n.id : n.nodeName;

function patch(old, fresh) {
  if (old.nodeType !== 1) {
    if (old.nodeValue !== fresh.nodeValue) old.nodeValue = fresh.nodeValue;
    return;
  }
  for (const a of [...old.attributes]) if (!fresh.hasAttribute(a.name) && !ours(old, a.name)) old.removeAttribute(a.name);
  for (const a of fresh.attributes) if (old.getAttribute(a.name) !== a.value && !ours(old, a.name)) old.setAttribute(a.name, a.value);
  if (old.hasAttribute("data-own")) return;
  const named = new Map([...old.children].filter((n) => n.id).map((n) => [key(n), n]));
  let at = old.firstChild;
  for (const want of [...fresh.childNodes]) {
    let have = want.id ? named.get(key(want)) : at && !at.id && key(at) === key(want) ? at : null;
    if (!have) {
      old.insertBefore(document.importNode(want, true), at);
      continue;
    }
    while (have !== at && at && !stays(at, fresh)) { const gone = at; at = at.nextSibling; gone.remove(); }
    if (have === at) at = at.nextSibling; else old.insertBefore(have, at);
    if (have.nodeName === want.nodeName) patch(have, want); else have.replaceWith(document.importNode(want, true));
  }
  while (at) { const gone = at; at = at.nextSibling; gone.remove(); }
}

// stays says that an element is in the new page too, further on.
const stays = (n, fresh) => n.id && [...fresh.children].some((c) => c.id === n.id);

// ours are attributes that the page sets itself.
const ours = (n, name) => name === "open" && n.nodeName === "DETAILS" || name === "class" && n.matches(".step, .said") || name === "hidden" && n.id === "gone";

// Whether the server is there, and the time of day as it has it.
let title = document.title, heard = Date.now(), ahead = 0;
const now = () => Date.now() + ahead;

function gone(is) {
  $("gone").hidden = !is;
  document.title = (is ? "! no answer: " : "") + title;
}

function listen() {
  const events = new EventSource("events");
  events.addEventListener("alive", ({ data }) => { heard = Date.now(); ahead = +data - heard; gone(false); });
  events.onmessage = ({ data }) => {
    if (data !== document.body.dataset.version) refresh();
  };
  events.onerror = () => {
    gone(true);
    if (events.readyState === EventSource.CLOSED) setTimeout(listen, 2000);
  };
}

// The time of day.
function every() {
  if (Date.now() - heard > 25e3) gone(true);
  const at = now(), steps = all(".step[data-start]");
  let next = null, current = null;
  for (const s of steps) {
    const from = Date.parse(s.dataset.start), to = Date.parse(s.dataset.end);
    s.classList.toggle("now", from <= at && at < to);
    s.classList.remove("before-now");
    if (from <= at && at < to) current = s;
    if (from > at && (!next || from < Date.parse(next.dataset.start))) next = s;
  }
  if (!current) next?.classList.add("before-now");
  const comes = all(".coming").map((c) => ({ words: c.dataset.what, at: Date.parse(c.dataset.at) })).filter((c) => c.at > at).sort((a, b) => a.at - b.at)[0];
  const line = $("next");
  const parts = [];
  if (comes) parts.push(["As it runs: ", comes.words + " in " + until(comes.at - at)]);
  if (next) parts.push(["Next, as planned: ", next.querySelector(".head b").textContent + " " + short(next) + " in " + until(Date.parse(next.dataset.start) - at)]);
  else if (steps.length) parts.push(["", "No step of the plan is to come."]);
  const words = parts.map((p) => p.join("")).join(" ");
  if (line.textContent !== words) {
    line.replaceChildren(...parts.flatMap(([a, b]) => [a, Object.assign(document.createElement("b"), { textContent: b }), " "]));
  }
}

function short(step) {
  const words = step.querySelector(".do").textContent.split(/[.:] /)[0].replace(/[.:]$/, "");
  return words.length > 45 ? words.slice(0, 43) + " …" : words;
}

function until(ms) {
  const s = Math.max(0, Math.round(ms / 1000)), two = (n) => String(n).padStart(2, "0");
  if (s >= 172800) return Math.floor(s / 86400) + " days";
  if (s >= 3600) return Math.floor(s / 3600) + " h " + two(Math.floor(s / 60) % 60) + " min";
  return Math.floor(s / 60) + ":" + two(s % 60);
}

// A curve under a finger.
function read(event) {
  const figure = event.target.closest?.("figure[data-touch]");
  // One is drawn for paper and one for a phone: the screen shows one of them.
  const svg = [...(figure?.querySelectorAll("svg") ?? [])].find((s) => s.getBoundingClientRect().width > 0);
  if (!svg) return;
  const box = svg.getBoundingClientRect(), [, , width, height] = svg.getAttribute("viewBox").split(" ").map(Number);
  const x = (event.clientX - box.left) / box.width * width;
  const points = JSON.parse(svg.classList.contains("narrow") ? figure.dataset.touchNarrow : figure.dataset.touch);
  if (!points.length) return;
  const at = points.reduce((a, b) => (Math.abs(b.x - x) < Math.abs(a.x - x) ? b : a));
  figure.querySelector("figcaption").textContent = at.says;
  let finger = svg.querySelector(".finger");
  if (!finger) {
    finger = svg.appendChild(document.createElementNS("http://www.w3.org/2000/svg", "path"));
    finger.setAttribute("class", "finger");
  }
  finger.setAttribute("d", `M${at.x} 0L${at.x} ${height}`);
}
document.addEventListener("pointermove", read);
document.addEventListener("pointerdown", read);

// The cut. What is asked for last is what is shown.
let asked = 0, shownCut;
async function askCut(tries = 5) {
  const slider = $("cut-at");
  if (!slider) return;
  const turn = ++asked, to = slider.value;
  $("cut-said").textContent = "";
  await new Promise((done) => setTimeout(done, 120));
  if (turn !== asked) return;
  try {
    const r = await fetch("cut?to=" + encodeURIComponent(to), { signal: AbortSignal.timeout(15e3) });
    const said = await r.json();
    if (turn !== asked) return;
    if (r.status === 503 && tries) return askCut(tries - 1);
    if (said.at) {
      $("cut-words").textContent = said.at;
      slider.setAttribute("aria-valuetext", said.at);
    }
    $("cut-said").textContent = said.refused ?? "";
    $("cut-gives").replaceChildren(...(said.gives ?? []).map(([name, value]) => {
      const row = document.createElement("div");
      row.append(Object.assign(document.createElement("dt"), { textContent: name }), Object.assign(document.createElement("dd"), { textContent: value }));
      return row;
    }));
    shownCut = said;
  } catch {
    if (turn === asked) $("cut-said").textContent = "newmake does not answer.";
  }
}

function settle() {
  gone(Date.now() - heard > 25e3);
  ticks();
  restore();
  every();
  askCut();
}

settle();
listen();
setInterval(every, 1000);
