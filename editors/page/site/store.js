// The work, kept in this browser: the texts of the house, which of them is looked at, and
// the versions that were kept. Nothing of it is ever sent.
const key = "newmake.house";
const versionsKept = 12;

const isTexts = (o) => o && typeof o === "object" && !Array.isArray(o) && Object.values(o).every((t) => typeof t === "string");

// read gives the work that was kept, null if there is none that can be read.
export function read() {
  try {
    const kept = JSON.parse(localStorage.getItem(key));
    if (!isTexts(kept?.files) || !Object.keys(kept.files).length) return null;
    const versions = Array.isArray(kept.versions) ? kept.versions.filter((v) => typeof v?.name === "string" && isTexts(v.files)) : [];
    return {files: kept.files, file: String(kept.file ?? ""), batch: String(kept.batch ?? ""), versions};
  } catch {
    return null;
  }
}

// write keeps the work. It is false if the browser does not take it.
export function write({files, file, batch, versions}) {
  try {
    localStorage.setItem(key, JSON.stringify({files, file, batch, versions}));
    return true;
  } catch {
    return false;
  }
}

// keep adds a version, and lets the oldest go.
export function keep(work, name) {
  work.versions = [{name, files: {...work.files}}, ...work.versions].slice(0, versionsKept);
}
