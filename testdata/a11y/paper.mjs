// What comes out of the printer: both sizes of paper, by Chromium, read back by
// poppler.
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";

export const papers = { letter: { width: 8.5, height: 11 }, a4: { width: 8.27, height: 11.69 } };
const marginMM = 13 + 11; // left and right, as sheet.css has them

// onPaper finds what is wider than the page, or than its cell, when the page is
// laid out at the width of a paper's text.
export async function tooWide(page, paper) {
  const width = Math.floor(papers[paper].width * 96 - (marginMM / 25.4) * 96);
  await page.emulateMediaType("print");
  await page.setViewport({ width, height: 1000 });
  const faults = await page.evaluate((width) => {
    const name = (e) => `${e.tagName.toLowerCase()}.${e.getAttribute("class") ?? ""} "${e.textContent.trim().slice(0, 40)}"`;
    const out = [];
    for (const e of document.querySelectorAll("main *:not(caption)")) {
      if (e.closest("svg") && e.tagName !== "svg") continue;
      const box = e.getBoundingClientRect();
      if (box.right > width + 1.5 || box.left < -1) out.push(`wider than the page: ${name(e)}`);
      if (/^(td|th|p|dd|dt|li|h1|h2)$/i.test(e.tagName) && !e.classList.contains("unseen") && e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0) {
        out.push(`wider than its box: ${name(e)} ${e.scrollWidth} in ${e.clientWidth}`);
      }
    }
    // A text of a chart must stay in it.
    for (const t of document.querySelectorAll("svg.chart:not(.narrow) text")) {
      const box = t.getBoundingClientRect(), svg = t.closest("svg").getBoundingClientRect();
      if (box.left < svg.left - 2 || box.right > svg.right + 2 || box.top < svg.top - 2 || box.bottom > svg.bottom + 2) out.push(`off its chart: "${t.textContent}"`);
    }
    return out;
  }, width);
  await page.emulateMediaType(null);
  return faults.slice(0, 10).map((f) => `${paper}: ${f}`);
}

// Boxes that are written in with wet hands, in mm. 15 is what a reading should have. A page
// for each day's work leaves less to a spirit day, which has up to 16 rows of readings, and
// to a mash day of many steps; and to a filling of ten casks, of the odd batch.
const wetMM = 15, leastMM = { mash: 9.8, spirit: 8.9, filling: 8 }, leastTime = 18;

// boxFaults measures the boxes of the steps, laid out on a paper.
export async function boxFaults(page, paper) {
  const { width, height } = papers[paper];
  await page.emulateMediaType("print");
  await page.setViewport({ width: Math.floor((width - marginMM / 25.4) * 96), height: Math.floor((height - (11.5 + 9.5) / 25.4) * 96) });
  const found = await page.evaluate(() => [...document.querySelectorAll("table.steps")].map((t) => {
    const mm = (px) => (px * 25.4) / 96, of = (s, what) => Math.min(...[...t.querySelectorAll(s)].map((e) => mm(e.getBoundingClientRect()[what])));
    return { day: t.closest("section").id, tall: t.classList.contains("rows-tall"), reading: of("tr.read .says", "height"), time: of(".time", "width") };
  }));
  await page.emulateMediaType(null);
  const faults = [];
  for (const f of found) {
    const least = f.tall ? wetMM : leastMM[f.day.replace(/-\d+$/, "")] ?? wetMM;
    if (f.reading < least - 0.1) faults.push(`${paper}: a reading of ${f.day} has ${f.reading.toFixed(1)} mm to be written in`);
    if (f.time < leastTime) faults.push(`${paper}: a time of ${f.day} has ${f.time.toFixed(1)} mm`);
  }
  return { faults, least: Math.min(...found.map((f) => f.reading)) };
}

// mark puts a tiny sign at the head and the foot of each step, so that poppler
// can tell on which page each came out. It takes no room.
export async function mark(page) {
  return page.evaluate(() => {
    const steps = [...document.querySelectorAll("tbody.step")];
    const sign = (cell, text, end) => {
      const s = document.createElement("span");
      s.textContent = text;
      s.style.cssText = `position:absolute;left:0;${end ? "bottom" : "top"}:0;font-size:2px;line-height:2px`;
      cell.style.position = "relative";
      cell.append(s);
    };
    steps.forEach((step, i) => {
      const rows = step.rows;
      sign(rows[0].cells[0], `QA${i}QE`, false);
      const last = rows[rows.length - 1].cells;
      sign(last[last.length - 1], `QZ${i}QE`, true);
    });
    return steps.length;
  });
}

// print makes the PDF of a paper and looks it over.
export async function print(page, paper, file, steps, most) {
  const pdf = await page.pdf({ ...inches(paper), preferCSSPageSize: false, printBackground: false });
  writeFileSync(file, pdf);
  const pages = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" }).split("\f").slice(0, -1);
  const faults = [];
  if (pages.length > most) faults.push(`${pages.length} pages, more than ${most}`);
  pages.forEach((text, i) => {
    if (!text.includes(`page ${i + 1} of ${pages.length}`)) faults.push(`page ${i + 1} has no number`);
    if (text.includes("QA") && !/should\s+says/.test(text)) faults.push(`page ${i + 1} has steps without their heading`);
  });
  full(file, paper).forEach((share, i) => {
    if (share < leastFull) faults.push(`page ${i + 1} has ink on ${Math.round(100 * share)} % of its height, less than a third`);
  });
  for (let i = 0; i < steps; i++) {
    const from = pages.findIndex((p) => p.includes(`QA${i}QE`)), to = pages.findIndex((p) => p.includes(`QZ${i}QE`));
    if (from < 0 || from !== to) faults.push(`step ${i + 1} is split: it begins on page ${from + 1} and ends on page ${to + 1}`);
  }
  faults.push(...words(file, paper));
  return { pages: pages.length, faults: faults.map((f) => `${paper}: ${f}`) };
}

function inches(paper) {
  return { width: `${papers[paper].width}in`, height: `${papers[paper].height}in` };
}

const leastFull = 1 / 3;
const headMM = 12, footMM = 11; // of the paper: the running head and foot

// full is how far down each page there is ink, of the height between head and foot. The
// pages are drawn by poppler: words, lines and pictures count alike.
function full(file, paper) {
  const dpi = 30, root = file + ".ink";
  execFileSync("pdftoppm", ["-r", String(dpi), "-gray", file, root]);
  const folder = dirname(file), pages = readdirSync(folder).filter((f) => f.startsWith(basename(root) + "-") && f.endsWith(".pgm")).sort();
  const px = (mm) => Math.round((mm / 25.4) * dpi);
  return pages.map((name) => {
    const at = join(folder, name), b = readFileSync(at);
    rmSync(at);
    const [, w, h] = /^P5\s+(\d+)\s+(\d+)\s+\d+\s/.exec(b.subarray(0, 60).toString("latin1")).map(Number);
    const dots = b.subarray(b.length - w * h), top = px(headMM), bottom = h - px(footMM);
    let last = top;
    for (let y = top; y < bottom; y++) if (dots.subarray(y * w, (y + 1) * w).some((v) => v < 200)) last = y;
    return (last - top) / (bottom - top);
  });
}

// words finds words that run off the paper.
function words(file, paper) {
  const xml = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8", maxBuffer: 1 << 26 });
  const width = papers[paper].width * 72, height = papers[paper].height * 72, out = [];
  for (const m of xml.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g)) {
    const [x0, y0, x1, y1] = m.slice(1, 5).map(Number);
    if (x0 < 20 || x1 > width - 20 || y0 < 15 || y1 > height - 10) out.push(`off the paper: "${m[5]}"`);
  }
  return out.slice(0, 5);
}
