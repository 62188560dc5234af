// Writes ../site/codemirror-licences.txt: what is in the bundle, of which version, with
// every licence.
import {readFileSync, writeFileSync} from "node:fs";

const lock = JSON.parse(readFileSync("package-lock.json", "utf8")).packages;
let list = "", texts = "";
for (const at of Object.keys(lock).sort()) {
  const name = at.replace(/^node_modules\//, "");
  if (!name || /esbuild/.test(name)) continue;
  const {version, license} = JSON.parse(readFileSync(`${at}/package.json`, "utf8"));
  if (license !== "MIT") throw new Error(`${name}: ${license} was not looked at yet`);
  list += `  ${name} ${version}  ${license}\n`;
  texts += `\n${"-".repeat(78)}\n${name}\n${"-".repeat(78)}\n\n${readFileSync(`${at}/LICENSE`, "utf8").trim()}\n`;
}
writeFileSync("../site/codemirror-licences.txt", "The editor of the page, codemirror.js, holds:\n\n" + list + texts);
