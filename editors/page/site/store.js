// The work, kept in this browser: the texts of the house, which of them is looked at, and
// the versions that were kept. Nothing of it is ever sent.
const key = "newmake.house";
export const versionsKept = 12;

const isTexts = (o) => o && typeof o === "object" && !Array.isArray(o) && Object.values(o).every((t) => typeof t === "string");

// What this tab last read or wrote, as it stands in the browser: when something else stands
// there, another tab has written it.
let known = null;

function parsed(text) {
  try {
    const kept = JSON.parse(text);
    if (!isTexts(kept?.files) || !Object.keys(kept.files).length) return null;
    const versions = Array.isArray(kept.versions) ? kept.versions.filter((v) => typeof v?.name === "string" && isTexts(v.files)) : [];
    return {files: kept.files, file: String(kept.file ?? ""), batch: String(kept.batch ?? ""), versions};
  } catch {
    return null;
  }
}

const standing = () => {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
};

// read gives the work that was kept, null if there is none that can be read.
export function read() {
  known = standing();
  return parsed(known);
}

// write keeps the work. It is false if the browser does not take it.
export function write({files, file, batch, versions}) {
  const text = JSON.stringify({files, file, batch, versions});
  try {
    localStorage.setItem(key, text);
    known = text;
    return true;
  } catch {
    return false;
  }
}

export const same = (a, b) => Object.keys(a).length === Object.keys(b).length && Object.keys(a).every((f) => a[f] === b[f]);

// others gives the work that another tab has written since this one read or wrote; null if
// none has. changed says whether this tab has texts that are nowhere else, moved whether the
// other changed any.
export function others(work) {
  const now = standing();
  if (now === known) return null;
  const theirs = parsed(now);
  if (!theirs) return null;
  const base = parsed(known);
  return {...theirs, changed: !base || !same(base.files, work.files), moved: !base || !same(base.files, theirs.files)};
}

// seen takes what stands in the browser as read.
export function seen() {
  known = standing();
}

// together gives the versions of two tabs, those of a first.
export function together(a, b) {
  return [...a, ...b.filter((v) => !a.some((w) => w.name === v.name && same(w.files, v.files)))].slice(0, versionsKept);
}

// keep adds a version, and lets the oldest go: its name is given, if one goes.
export function keep(work, name) {
  const oldest = work.versions[versionsKept - 1]?.name;
  work.versions = [{name, files: {...work.files}}, ...work.versions].slice(0, versionsKept);
  return oldest;
}

// onothers calls when another tab has written.
export function onothers(call) {
  addEventListener("storage", (e) => (e.key === key || e.key === null) && call());
}
