// A headless Chromium that touches no network and keeps nothing.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer from "puppeteer-core";

export async function withBrowser(work) {
  const profile = mkdtempSync(join(tmpdir(), "sheet-browser-"));
  const browser = await puppeteer.launch({
    executablePath: process.env.NEWMAKE_BROWSER ?? "/usr/bin/chromium",
    userDataDir: profile,
    args: [
      "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
      "--disable-component-update", "--disable-sync",
    ],
  });
  try {
    return await work(browser);
  } finally {
    await browser.close();
    rmSync(profile, { recursive: true, force: true });
  }
}

// open loads a page and gathers whatever it does that a sheet must not do. may says
// which requests a served page makes besides, by what follows its address.
export async function open(browser, url, may = () => false) {
  const page = await browser.newPage();
  const faults = [];
  page.on("console", (m) => { if (m.type() === "error" || m.type() === "warn") faults.push("console: " + m.text()); });
  page.on("pageerror", (e) => faults.push("script error: " + e.message));
  page.on("dialog", (d) => { faults.push("dialog: " + d.message()); d.dismiss(); });
  page.on("request", (r) => {
    const same = r.url() === url || r.url().startsWith(url) && may(r.url().slice(url.length));
    if (!same && !r.url().startsWith("data:")) faults.push("request: " + r.url());
  });
  await page.evaluateOnNewDocument(() => {
    addEventListener("securitypolicyviolation", (e) => console.error("policy: " + e.violatedDirective + " " + e.blockedURI));
  });
  await page.goto(url, { waitUntil: "load" });
  return { page, faults };
}
