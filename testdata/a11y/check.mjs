// Checks of the printed sheet that need a browser, a PDF reader and parsers that
// are not ours. Usage: node check.mjs FOLDER NEWMAKE RECIPE HOSTILE
//
// FOLDER holds NAME.html with NAME.ics and NAME.json of the same plan. NEWMAKE
// is the program, RECIPE a recipe that may be written on, for the page that is
// served, and HOSTILE one whose words mean harm.
import { readFileSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { axeFaults, htmlFaults, phoneFaults, sidewaysFaults } from "./access.mjs";
import { open, withBrowser } from "./browser.mjs";
import { calendarFaults } from "./calendar.mjs";
import { changeFaults } from "./changes.mjs";
import { inkFaults, letterFaults } from "./ink.mjs";
import { boxFaults, mark, papers, print, tooWide } from "./paper.mjs";
import { hostileFaults, lanFaults, servedFaults } from "./served.mjs";

// How many pages are sensible: fewer for a batch of the usual size than for an
// odd one, with charges by the half and a ferment of many days.
const mostPages = (file) => (file.startsWith("odd") ? 13 : 10);
// A short sheet has two, but of a batch with two charges to each still and ten days.
const shortPages = (file) => (file.startsWith("odd") ? 4 : 2);
const [folder, newmake, recipe, hostile] = process.argv.slice(2).map((p) => resolve(p));
let failed = 0;

function report(name, faults, note = "") {
  console.log(`${faults.length ? "FAIL" : "ok  "} ${name}${note && "  " + note}`);
  faults.forEach((f) => console.log("       " + f));
  failed += faults.length;
}

await withBrowser(async (browser) => {
  for (const file of readdirSync(folder).filter((f) => f.endsWith(".html")).sort()) {
    const at = join(folder, file), base = at.slice(0, -5);
    const text = readFileSync(at, "utf8");
    const { page, faults } = await open(browser, "file://" + at);
    faults.push(...(await htmlFaults(text)), ...(await axeFaults(page)), ...(await inkFaults(page)));
    for (const paper of Object.keys(papers)) faults.push(...(await tooWide(page, paper)));
    faults.push(...(await phoneFaults(page)), ...(await sidewaysFaults(page)), ...(await letterFaults(page)));
    await page.setViewport({ width: 800, height: 1000 });
    const steps = await mark(page), counts = [];
    for (const paper of Object.keys(papers)) {
      const made = await print(page, paper, `${base}.${paper}.pdf`, steps, mostPages(file));
      const boxes = await boxFaults(page, paper);
      faults.push(...boxes.faults);
      counts.push(`${made.pages} ${paper} pages, readings from ${boxes.least.toFixed(1)} mm`);
      faults.push(...made.faults);
    }
    await page.close();
    report(file, faults, counts.join(", "));
    const plan = JSON.parse(readFileSync(base + ".json", "utf8"));
    report(file.replace(".html", ".ics"), calendarFaults(readFileSync(base + ".ics", "utf8"), plan));
  }
  const brief = join(folder, "short");
  for (const file of readdirSync(brief).filter((f) => f.endsWith(".html")).sort()) {
    const { page, faults } = await open(browser, "file://" + join(brief, file));
    faults.push(...(await htmlFaults(readFileSync(join(brief, file), "utf8"))), ...(await axeFaults(page)), ...(await inkFaults(page)), ...(await sidewaysFaults(page)));
    for (const paper of Object.keys(papers)) faults.push(...(await tooWide(page, paper)));
    await page.setViewport({ width: 800, height: 1000 });
    const steps = await mark(page), words = await page.evaluate(() => parseFloat(getComputedStyle(document.querySelector(".brief-do")).fontSize) * 0.75);
    const counts = [];
    for (const paper of Object.keys(papers)) {
      const made = await print(page, paper, join(brief, file.replace(".html", `.${paper}.pdf`)), steps, shortPages(file));
      if (made.pages < 2) faults.push(`${paper}: ${made.pages} page`);
      faults.push(...made.faults);
      counts.push(`${made.pages} ${paper} pages`);
    }
    await page.close();
    report("short/" + file, faults, `${counts.join(", ")}, words of ${words.toFixed(1)} pt`);
  }
  const reviews = join(folder, "reviews");
  for (const file of readdirSync(reviews).filter((f) => f.endsWith(".html")).sort()) {
    const { page, faults } = await open(browser, "file://" + join(reviews, file));
    faults.push(...(await htmlFaults(readFileSync(join(reviews, file), "utf8"))), ...(await axeFaults(page)), ...(await inkFaults(page)));
    for (const paper of Object.keys(papers)) faults.push(...(await tooWide(page, paper)));
    faults.push(...(await phoneFaults(page)), ...(await sidewaysFaults(page)), ...(await letterFaults(page)));
    await page.close();
    report("reviews/" + file, faults);
  }
  const changes = join(folder, "changes");
  for (const file of readdirSync(changes).filter((f) => f.endsWith(".html")).sort()) {
    const at = join(changes, file), { page, faults } = await open(browser, "file://" + at);
    faults.push(...(await htmlFaults(readFileSync(at, "utf8"))), ...(await axeFaults(page)), ...(await phoneFaults(page)), ...(await sidewaysFaults(page)), ...(await changeFaults(page)));
    await page.close();
    report("changes/" + file, faults);
  }
  report("plan --open", await servedFaults(browser, newmake, recipe, folder));
  const lan = await lanFaults(browser, newmake, recipe);
  report("plan --open --lan", lan.faults, lan.note);
  report("plan --open, a hostile house", await hostileFaults(browser, newmake, hostile));
});
process.exit(failed ? 1 : 0);
