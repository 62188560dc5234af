// The page: which text is looked at, when the engine is asked, and where its answers stand.
// All that is said of a recipe comes from the engine.
import {Editor} from "./editor.js";
import {Engine} from "./engine.js";
import {printPage, showPage, words} from "./show.js";
import * as store from "./store.js";

const $ = (id) => document.getElementById(id);
const el = (tag, more = {}, ...below) => {
  const e = Object.assign(document.createElement(tag), more);
  e.append(...below);
  return e;
};
const built = await (await fetch("built.json")).json(); // the example houses

let work = store.read();
let first = !work;
const example = (name) => {
  const files = built.examples[name];
  return {files: {...files}, file: Object.keys(files).find((f) => /^[^/]*\.batch$/.test(f) && f !== "house.batch") ?? "house.batch", batch: "", versions: []};
};
if (!work) work = example(Object.keys(built.examples).find((n) => n.startsWith("lantern")) ?? Object.keys(built.examples)[0]);

const status = (text) => { $("status").textContent = text; };

// What was said last, and the last sheet that could be made.
let said = {}, sheet = "", asked = 0;

const engine = new Engine((heard) => {
  if (heard.ready) {
    status("Ready.");
    engine.ask({ask: "version"}).then((a) => { $("version").textContent = (a?.words ?? "") + "."; });
    if (location.hash.length > 1) fromAddress();
    ask(true);
  } else {
    status(heard.again ? `newmake had a fault and was started anew (${heard.fault}). Your text is kept.` : `newmake cannot be loaded: ${heard.fault}. Load the page again; it wants a browser of 2023 or later.`);
  }
});
const question = (more) => ({files: work.files, file: work.file, batch: work.batch, ...more});

const typing = 40, stopped = 900; // milliseconds that one waits for the next letter
let slideTimer;
const editor = new Editor($("editor"), {
  ask: (more) => engine.ask(question(more)),
  changed: (text) => {
    work.files[work.file] = text;
    soon();
  },
  moved: (at) => {
    clearTimeout(slideTimer);
    slideTimer = setTimeout(slideAt, typing, at);
  },
  go,
});
editor.onwords = (text) => explainWith(words(text));

function go(file, from, to) {
  document.body.classList.remove("answer");
  showWhich();
  if (file !== work.file && file in work.files) look(file);
  editor.select(from, to);
}

// The slider of the number at the cursor: the engine says what may stand there.
let slider = null;
async function slideAt(at) {
  const text = work.files[work.file], a = await engine.ask(question({ask: "slide", at}));
  if (!a || text !== work.files[work.file]) return; // what came since asks anew
  slider = a.slider ?? null;
  $("slider").disabled = !slider;
  if (slider) {
    $("slider").max = slider.texts.length - 1;
    $("slider").value = slider.now;
  }
  slid();
}
function slid() {
  const shown = (i) => [slider.texts[i][0], slider.unit].filter(Boolean).join(" ");
  $("slid").textContent = slider ? `${slider.label} ${shown($("slider").value)}` : "Put the cursor on a number to slide it.";
  $("least").textContent = slider ? slider.texts[0][0] : "";
  $("most").textContent = slider ? shown(slider.texts.length - 1) : "";
  if (slider) $("slider").setAttribute("aria-valuetext", shown($("slider").value));
}
$("slider").oninput = () => {
  const to = Number($("slider").value), places = editor.slide(slider.places, slider.texts[slider.now], slider.texts[to]);
  if (places) Object.assign(slider, {places, now: to});
  else $("slider").value = slider.now; // the text was changed meanwhile, and a new slider is on its way
  slid();
};
$("slider").onblur = () => slider && slideAt(slider.places[0].to); // it begins anew from where it was left
$("slider").onkeydown = (e) => {
  const key = e.key.toLowerCase(), does = key === "escape" ? "focus" : !(e.ctrlKey || e.metaKey) ? "" : key === "y" || key === "z" && e.shiftKey ? "redo" : key === "z" ? "undo" : "";
  if (!does) return;
  e.preventDefault();
  editor[does]();
};

// Asking: what the texts say and the sheet at once, how sure its numbers are when typing
// stops.
let timer, sureTimer, keepTimer;

function soon() {
  engine.drop("sure");
  clearTimeout(timer);
  clearTimeout(sureTimer);
  timer = setTimeout(ask, typing);
  clearTimeout(keepTimer);
  keepTimer = setTimeout(keepWork, 250);
}

async function ask(atOnce) {
  const turn = ++asked, began = performance.now();
  const check = await engine.ask(question({ask: "check"}));
  if (!check || turn !== asked) return;
  editor.tokens(check.tokens ?? []);
  if (check.problem) return problem(check.problem);
  tell(check.said ?? {});
  const plan = await engine.ask(question({ask: "plan"}));
  if (!plan || turn !== asked) return;
  planned(plan);
  document.body.dataset.took = Math.round(performance.now() - began);
  document.body.dataset.turn = turn;
  if (!plan.page) return;
  clearTimeout(sureTimer);
  sureTimer = setTimeout(async () => {
    const sure = await engine.ask(question({ask: "plan", sure: true}), "sure");
    if (sure?.page && turn === asked) {
      planned(sure);
      document.body.dataset.sure = turn;
    }
  }, atOnce === true ? 100 : stopped);
}

function planned(a) {
  if (a.problem) return problem(a.problem);
  tell(a.said ?? {});
  editor.hints(a.hints ?? []);
  const batches = a.batches ?? [];
  fill($("batch"), batches, a.batch);
  $("batch").disabled = batches.length < 2;
  $("stale").hidden = !!a.page || !sheet;
  if (a.page) {
    sheet = a.page;
    showPage($("sheet"), sheet);
  } else if (!sheet) {
    showPage($("sheet"), "<p></p>");
    $("sheet").shadowRoot.querySelector("p").textContent = batches.length ? "There is no sheet yet: the messages say what is wrong." : "No batch is in this file. Choose another file, or begin one: batch \"Name\" {";
  }
  if (!$("diff").hidden) compare();
}

function problem(text) {
  tell({"house.batch": [{from: 0, to: 0, line: 0, severity: "error", code: "", summary: text}]});
  $("stale").hidden = !sheet;
}

// tell lists what is said, and marks it in the text.
function tell(all) {
  said = all;
  editor.say(all[work.file] ?? [], mend);
  const box = $("messages");
  const list = el("ul");
  const counts = {error: 0, warning: 0, note: 0};
  for (const file of Object.keys(all).sort((a, b) => (b === work.file) - (a === work.file) || (a < b ? -1 : 1))) {
    for (const d of all[file]) {
      counts[d.severity]++;
      const item = el("li", {className: d.severity});
      if (d.line) item.append(el("button", {className: "where", textContent: `${file}:${d.line}`, onclick: () => go(file, d.from, d.to)}));
      item.append(`${d.severity}: ${d.summary}`);
      for (const more of [d.help, d.reason && "why: " + d.reason, ...(d.related ?? [])]) if (more) item.append(el("div", {className: "help", textContent: more}));
      const does = el("div");
      if (d.fix) does.append(el("button", {textContent: d.fix.label, onclick: () => mend(d.fix)}));
      if (d.code) does.append(el("button", {textContent: `Explain ${d.code}`, onclick: () => explain(d.code)}));
      item.append(does);
      list.append(item);
    }
  }
  const count = (n, word) => `${n} ${word}${n === 1 ? "" : "s"}`;
  const total = counts.error + counts.warning + counts.note;
  status(total ? Object.keys(counts).filter((k) => counts[k]).map((k) => count(counts[k], k)).join(", ") : "Nothing is wrong that newmake can see.");
  box.replaceChildren(total ? list : el("p", {textContent: "Nothing is wrong that newmake can see."}));
}

function mend(fix) {
  if (fix.file !== work.file) look(fix.file);
  editor.replace(fix.text, fix.from, fix.to);
}

async function explain(word) {
  const a = await engine.ask({ask: "explain", word});
  if (a) explainWith(a.words ?? a.problem);
}

function explainWith(what) {
  $("explained").replaceChildren(what);
  $("page").showModal();
}
$("close").onclick = () => $("page").close();

// Files, batches, versions.
function fill(select, names, chosen) {
  const was = [...select.options].map((o) => o.value);
  if (was.length !== names.length || was.some((n, i) => n !== names[i])) select.replaceChildren(...names.map((n) => el("option", {value: n, textContent: n})));
  select.value = chosen ?? "";
}

// shown opens the file that is looked at.
function shown() {
  fill($("file"), Object.keys(work.files).sort(), work.file);
  editor.open(work.file, work.files[work.file]);
  $("rename").disabled = $("delete").disabled = work.file === "house.batch" || Object.keys(work.files).length < 2;
}

function look(file) {
  work.file = file in work.files ? file : Object.keys(work.files)[0];
  work.batch = "";
  shown();
  sheet = "";
  keepWork();
  ask();
}

function versions() {
  $("since").replaceChildren(...work.versions.map((v, i) => el("option", {value: i, textContent: v.name})));
  $("since").hidden = $("back").hidden = !work.versions.length;
}

// keepWork keeps the work in the browser, unless another tab has written there: then a
// person says whose is to stand. So long as that is open nothing is written.
function keepWork() {
  if (!besideOthers()) return;
  if (!store.write(work)) status("This browser does not keep the work: download the house before you close the page.");
  else first = false;
}

// besideOthers is whether this tab may write. Where another has changed the house it asks.
// Whatever is chosen, the texts of the other are among the versions, if they are not the same.
let theirs = null;
function besideOthers() {
  const now = store.others(work);
  if (!now) return !theirs;
  if (!now.moved || store.same(now.files, work.files)) { // they look at another file, or kept a version
    store.seen();
    work.versions = store.together(now.versions, work.versions);
    versions();
    settle();
    return true;
  }
  const asking = !theirs;
  theirs = now;
  if (!asking) return false;
  choose("Another tab of this page has changed the house that is kept in this browser. Until you choose, what you write here is not kept.", [
    ["Take the other tab's, keep mine as a version", () => {
      const other = store.others(work) ?? theirs;
      settle();
      const {changed, moved, ...house} = other;
      if (changed) store.keep(work, `this tab's, ${new Date().toLocaleString()}`);
      house.versions = store.together(work.versions, house.versions);
      store.write(house);
      take({...house, file: work.file in house.files ? work.file : house.file});
      status(changed ? "The other tab's house is here now; yours is kept as a version, under What changed since." : "The other tab's house is here now.");
    }],
    ["Keep mine, the other tab's as a version", () => {
      const other = store.others(work) ?? theirs;
      settle();
      work.versions = store.together([{name: `the other tab's, ${new Date().toLocaleString()}`, files: other.files}], store.together(work.versions, other.versions));
      store.write(work);
      versions();
      status("Your house is kept; the other tab's is kept as a version, under What changed since.");
    }],
  ], true);
  return false;
}
function settle() {
  if (theirs) $("ask").hidden = true;
  theirs = null;
}
store.onothers(besideOthers);

// leave keeps the work as the page goes. Where no one has chosen between two tabs, the
// texts of this one become a version of the other's house.
function leave() {
  keepWork();
  if (!theirs) return;
  const {changed, moved, ...house} = store.others(work) ?? theirs;
  if (!changed) return;
  store.keep(work, `of a tab that was closed, ${new Date().toLocaleString()}`);
  store.write({...house, versions: store.together(work.versions, house.versions)});
}

// take puts a house in the place of the one that is here.
function take(house) {
  work = {batch: "", versions: [], file: "", ...house};
  if (!(work.file in work.files)) work.file = example0(work.files);
  editor.forget();
  versions();
  look(work.file);
}
const example0 = (files) => Object.keys(files).sort().find((f) => f !== "house.batch" && !f.includes("/")) ?? Object.keys(files)[0];

// sure asks before what is here goes; choose asks what is to be done. A question about two
// tabs stays until it is answered.
const sure = (text, yes) => choose(text, [["Yes", yes], ["No", () => {}]]);
function choose(text, choices, stays) {
  if (theirs && !stays) {
    status("Answer first what is asked above.");
    $("choices").firstElementChild.focus();
    return false;
  }
  $("asked").textContent = text;
  $("choices").replaceChildren(...choices.map(([label, does]) => el("button", {type: "button", textContent: label, onclick: () => { $("ask").hidden = true; does(); }})));
  $("ask").hidden = false;
  if (!stays) $("choices").firstElementChild.focus(); // one who types is not taken from the text
  return true;
}
const instead = "What is here now goes, with its versions: download it first if you want it.";

async function fromAddress() {
  const data = location.hash.slice(1).replace(/^house=/, "");
  history.replaceState(null, "", location.pathname + location.search);
  const a = await engine.ask({ask: "unpack", data});
  if (!a) return;
  if (!a.files) { status(a.problem); return; }
  const house = {files: a.files};
  if (first) take(house);
  else sure(`The address carries a house of ${Object.keys(a.files).length} files (${Object.keys(a.files).sort().join(", ")}). Open it? ${instead}`, () => take(house));
}
addEventListener("hashchange", () => location.hash.length > 1 && fromAddress());

$("file").onchange = () => look($("file").value);
$("batch").onchange = () => { work.batch = $("batch").value; keepWork(); ask(); };
$("new").onclick = () => {
  for (let i = 1; ; i++) {
    const name = `batch-${i}.batch`;
    if (name in work.files) continue;
    work.files[name] = "";
    look(name);
    editor.select(0, 0);
    return;
  }
};
$("rename").onclick = () => {
  const was = work.file, name = el("input", {type: "text", value: was, autocomplete: "off", spellcheck: false, ariaLabel: "New name"});
  if (!choose(`What shall ${was} be called?`, [["Rename", () => rename(was, name.value.trim())], ["Leave it", () => editor.focus()]])) return;
  const [yes, no] = $("choices").children;
  name.onkeydown = (e) => ({Enter: yes, Escape: no})[e.key]?.click();
  $("choices").prepend(name);
  name.focus();
  name.setSelectionRange(was.lastIndexOf("/") + 1, was.length - ".batch".length);
};
async function rename(was, name) {
  if (name === was) return;
  if (Object.hasOwn(work.files, name)) return status(`There is a file ${name} already.`);
  const {[was]: text, ...others} = work.files;
  const a = await engine.ask({ask: "version", files: {...others, [name]: text}}, "name"); // it says if there can be such a file
  if (!a || a.problem) return status(a?.problem ?? "newmake is busy: try again.");
  work.files[name] = work.files[was];
  delete work.files[was];
  editor.rename(name);
  look(name);
  editor.focus();
}
$("delete").onclick = () => {
  const gone = work.file;
  sure(`Delete ${gone}? The house as it is now is kept as a version, under What changed since.`, () => {
    store.keep(work, `with ${gone}, ${new Date().toLocaleString()}`);
    versions();
    delete work.files[gone];
    editor.drop();
    look(example0(work.files));
  });
};
$("layout").onclick = async () => {
  const a = await engine.ask(question({ask: "format"}));
  if (a?.problem) status(a.problem);
  else if (a && a.text !== work.files[work.file]) editor.replace(a.text);
};
$("keep").onclick = () => {
  const gone = store.keep(work, new Date().toLocaleString());
  versions();
  keepWork();
  status("This version is kept: What changed since compares with it." + (gone ? ` The oldest, ${gone}, is gone: ${store.versionsKept} are kept.` : ""));
};
$("share").onclick = async () => {
  const a = await engine.ask({ask: "pack", files: work.files});
  if (!a?.data) return;
  const address = location.origin + location.pathname + "#house=" + a.data;
  history.replaceState(null, "", "#house=" + a.data);
  const length = `${Math.ceil(address.length / 1000)} thousand characters; the part behind # is not sent to any server`;
  try {
    await navigator.clipboard.writeText(address);
    status(`The address with the whole house is copied: ${length}.`);
  } catch {
    status(`The address of this page carries the whole house now: copy it. ${length}.`);
  }
};
const save = (name, blob) => {
  const link = el("a", {href: URL.createObjectURL(blob), download: name});
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
};
const bytes = (base64) => Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
$("download").onclick = async () => {
  const a = await engine.ask({ask: "zip", files: work.files});
  if (a?.data) save("house.zip", new Blob([bytes(a.data)], {type: "application/zip"}));
  else if (a) status(a.problem);
};
$("save-sheet").onclick = () => sheet && save(work.file.replace(/.*\/|\.batch$/g, "") + ".html", new Blob([sheet], {type: "text/html"}));
$("print").onclick = () => {
  if (sheet) printPage(sheet, $("stale").hidden ? "" : $("stale").textContent);
  else status("There is no sheet to print yet: the messages say what is wrong.");
};
$("open").onchange = async () => {
  const files = {};
  for (const f of $("open").files) {
    if (f.size > 8 << 20) { status(`${f.name} is larger than the page takes.`); return; }
    if (/\.zip$/i.test(f.name)) {
      const data = await new Promise((done) => {
        const r = new FileReader();
        r.onload = () => done(r.result.split(",")[1]);
        r.readAsDataURL(f);
      });
      const a = await engine.ask({ask: "unzip", data});
      if (!a?.files) { status(a?.problem ?? ""); return; }
      sure(`Open ${f.name}, ${Object.keys(a.files).length} files? ${instead}`, () => take({files: a.files}));
      $("open").value = "";
      return;
    }
    files[f.name] = await f.text();
  }
  $("open").value = "";
  const names = Object.keys(files);
  if (!names.length) return;
  if ("house.batch" in files) sure(`Open a house of ${names.length} files? ${instead}`, () => take({files}));
  else sure(`Put ${names.join(", ")} into this house?`, () => { Object.assign(work.files, files); editor.forget(); look(names[0]); });
};
for (const name of Object.keys(built.examples)) $("examples").append(el("option", {value: name, textContent: name}));
$("examples").onchange = () => {
  const name = $("examples").value;
  $("examples").value = "";
  if (name) sure(`Open the example house ${name}? ${instead}`, () => take(example(name)));
};

// Which pane is seen.
function showWhich() {
  const answer = document.body.classList.contains("answer");
  $("show-text").setAttribute("aria-pressed", !answer);
  $("show-answer").setAttribute("aria-pressed", answer);
}
$("show-text").onclick = () => { document.body.classList.remove("answer"); showWhich(); };
$("show-answer").onclick = () => { document.body.classList.add("answer"); showWhich(); };
function tab(diff) {
  $("diff").hidden = !diff;
  $("sheet").hidden = diff;
  $("tab-diff").setAttribute("aria-pressed", diff);
  $("tab-sheet").setAttribute("aria-pressed", !diff);
  if (diff) compare();
}
$("tab-sheet").onclick = () => tab(false);
$("tab-diff").onclick = () => tab(true);
$("since").onchange = () => tab(true);
$("back").onclick = () => {
  const version = work.versions[$("since").value || 0];
  if (!version) return;
  sure(`Go back to the version ${version.name}? What is here now is kept as a version.`, () => {
    store.keep(work, `before going back, ${new Date().toLocaleString()}`);
    take({...work, files: {...version.files}});
  });
};

async function compare() {
  const show = (text) => {
    showPage($("diff"), "<p></p>");
    $("diff").shadowRoot.querySelector("p").textContent = text;
  };
  const version = work.versions[$("since").value || 0];
  if (!version) return show("No version is kept yet. `Keep this version` keeps the text as it is now; what you change after that is shown here, with what it does to the barrel.");
  const a = await engine.ask(question({ask: "compare", old: version.files}));
  if (!a) return;
  if (a.page) showPage($("diff"), a.page);
  else show(a.problem);
}

addEventListener("pagehide", leave);
if (!(work.file in work.files)) work.file = example0(work.files);
shown();
versions();
if ("serviceWorker" in navigator && isSecureContext) navigator.serviceWorker.register("service-worker.js").catch(() => {});
