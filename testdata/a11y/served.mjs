// `newmake plan --open` in a real browser, as somebody at a still uses it: on a phone,
// in the dark, while the recipe is edited, the record is written by somebody else, and
// newmake ends.
import { execFileSync, spawn } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { networkInterfaces } from "node:os";
import { dirname, join } from "node:path";
import { axeFaults, htmlFaults, phoneFaults } from "./access.mjs";
import { open } from "./browser.mjs";

const phone = { width: 390, height: 844, hasTouch: true, isMobile: true };

// servedFaults tries the page of a recipe that may be written on. shots is a folder for
// pictures, if any.
export async function servedFaults(browser, newmake, recipe, shots) {
  const faults = [];
  const want = (is, what) => { if (!is) faults.push("served: " + what); };
  const server = spawn(newmake, ["plan", recipe, "--open"], { stdio: ["ignore", "ignore", "pipe"] });
  try {
    const url = await address(server);
    const good = readFileSync(recipe, "utf8");
    const { page, faults: seen } = await open(browser, url, served);
    const shows = (text) => page.waitForFunction((t) => document.body?.innerText.includes(t), { timeout: 20000, polling: 100 }, text);
    const shot = async (name) => { if (shots) await page.screenshot({ path: join(shots, `served-${name}.png`) }); };
    const whole = async (name) => { if (shots) await page.screenshot({ path: join(shots, `served-${name}.png`), fullPage: true }); };
    const type = async (selector, text) => { await page.$eval(selector, (e) => { e.scrollIntoView({ block: "center" }); e.focus(); }); await page.keyboard.type(text); };
    const press = (selector) => page.$eval(selector, (e) => e.click());
    const record = () => readFileSync(join(dirname(recipe), "runs", run + ".batch"), "utf8");

    // Nothing can be typed before there is a run; then there is.
    await page.setViewport(phone);
    want(!(await page.$("form.visit")), "something can be typed, and no run is opened");
    await whole("phone-not-opened");
    await press("#open-run");
    await page.waitForSelector("form.visit", { timeout: 20000 });
    const run = await page.$eval("body", (b) => b.dataset.run);
    faults.push(...(await htmlFaults(await (await fetch(url)).text())).map((f) => "served: " + f));

    // At every width, in letters of double size, light and dark.
    for (const scheme of ["light", "dark"]) {
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      for (const width of [320, 390, 640, 1280]) {
        await page.setViewport({ width, height: 844 });
        for (const letters of ["", "200%"]) {
          await page.evaluate((l) => { document.documentElement.style.fontSize = l; }, letters);
          want(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `it scrolls sideways at ${width} px, letters ${letters || "100%"}`);
          if (width === 390 && letters) await shot(`phone-${scheme}-letters-200`);
        }
        await page.evaluate(() => { document.documentElement.style.fontSize = ""; });
        if (width === 390 || width === 1280) await whole(`${width}-${scheme}`);
      }
      for (const of of [axeFaults, phoneFaults]) faults.push(...(await of(page)).map((f) => `served, ${scheme}: ${f}`));
    }
    await page.setViewport(phone);

    // A step is ticked, a reading typed and kept: both are there when it is loaded anew.
    await press("#step-mash\\.1 [data-tick]");
    const heat = "#blank-mash\\.5\\.temperature";
    await page.waitForSelector(heat);
    await type(heat, "191");
    await page.$eval(heat, (e) => { e.form.clock.value = "10:04"; e.form.clock.dispatchEvent(new Event("input", { bubbles: true })); });
    await page.$eval(heat, (e) => { e.form.by.value = "M"; e.form.by.dispatchEvent(new Event("input", { bubbles: true })); });
    await shot("phone-typed");
    await page.keyboard.press("Enter");
    await shows("read 191 F at 10:04 by M");
    await shot("phone-kept");
    want(/10:04 heat +191 F by "M"/.test(record()), "the reading does not stand in the record:\n" + record());
    await page.reload();
    await shows("read 191 F at 10:04 by M");
    want(await page.$eval("#step-mash\\.1 [data-tick]", (e) => e.checked), "the tick is gone when it is loaded anew");

    // It was mistyped: it is put right beside, and what was written stays in the record.
    await press("#slip-mash\\.5\\.temperature summary");
    faults.push(...(await axeFaults(page)).map((f) => "served, a slip: " + f));
    await type("#slip-value-mash\\.5\\.temperature", "190");
    await shot("phone-slip");
    await page.keyboard.press("Enter");
    await shows("read 190 F (first written: 191 F) at 10:04 by M");
    want(/10:04 heat +191 F by "M".*\n +corrected 10:04 heat 191 F to 190 F on \d{4}-\d\d-\d\d by "M"/.test(record()), "the correction does not stand beside the reading:\n" + record());
    await page.reload();
    await shows("read 190 F (first written: 191 F) at 10:04 by M");

    // What can't be taken says why, and stays.
    const rest = "#blank-mash\\.6\\.temperature";
    await type(rest, "tepid");
    await page.keyboard.press("Enter");
    await page.waitForFunction((s) => document.querySelector(s).form.querySelector(".refused"), { timeout: 20000 }, rest);
    want((await page.$eval(rest, (e) => e.value)) === "tepid", "what was typed is gone");
    want(!record().includes("tepid"), "it was written all the same");
    await page.$eval(rest, (e) => { e.value = ""; e.dispatchEvent(new Event("input", { bubbles: true })); });

    // The record is changed while the tablet is out of reach: refused, kept, and taken
    // once the change has been seen, with the other's words still there.
    let reach = false;
    await page.setRequestInterception(true);
    const gate = (r) => (!reach && r.method() === "GET" ? r.abort() : r.continue());
    page.on("request", gate);
    const before = record();
    writeFileSync(join(dirname(recipe), "runs", run + ".batch"), before.replace(/(\n +)rest( +)temperature, pH/, '$1rest$2147 F, 5.3 pH "by another hand"'));
    await type(rest, "189");
    seen.length = 0;
    await page.keyboard.press("Enter");
    await page.waitForFunction((s) => document.querySelector(s).form.innerText.includes("changed meanwhile"), { timeout: 20000 }, rest);
    want((await page.$eval(rest, (e) => e.value)) === "189", "what was typed is gone");
    want(!record().includes("189"), "it was written over a change that nobody here had seen");
    await shot("phone-refused");
    reach = true;
    await page.reload();
    await page.waitForSelector(rest);
    want((await page.$eval(rest, (e) => e.value)) === "189", "what was typed is gone when it is loaded anew");
    await shows("by another hand");
    await page.$eval(rest, (e) => e.form.requestSubmit());
    await shows("read 189 F");
    want(record().includes("by another hand") && /189 F/.test(record()), "one of the two hands is lost:\n" + record());
    page.off("request", gate);
    await page.setRequestInterception(false);
    seen.length = 0; // what was held up on purpose

    // The recipe is saved while somebody types: the page says what changed, and keeps
    // the field, its focus and its text.
    const pitch = "#blank-ferment\\.pitch\\.gravity";
    await type(pitch, "1.06");
    await page.evaluate((s) => { window.same = document.querySelector(s); }, pitch);
    writeFileSync(recipe, good.replace(/entry( +)1\d\d proof/, "entry$1108 proof"));
    await shows("What the last save changed");
    want(await page.evaluate((s) => window.same === document.querySelector(s) && document.activeElement === window.same && window.same.value === "1.06", pitch), "the field under somebody's fingers was changed");
    await page.keyboard.type("6");
    want((await page.$eval(pitch, (e) => e.value)) === "1.066", "what is typed goes astray");
    await page.$eval("#saved", (e) => e.scrollIntoView());
    await shot("phone-saved");

    // It breaks: the banner is seen wherever one is, in the title, and on paper.
    writeFileSync(recipe, good.replace(/^(\s+corn\s)/m, "$1 1 1 "));
    await shows("This is the last good plan");
    want((await page.title()).startsWith("! errors"), "the title does not say that there are errors: " + (await page.title()));
    await page.$eval("#spirit", (e) => e.scrollIntoView());
    want(await page.$eval("#problems", (e) => e.getBoundingClientRect().top >= 0 && e.getBoundingClientRect().top < innerHeight), "the banner is out of sight");
    await shot("phone-broken");
    faults.push(...(await axeFaults(page)).map((f) => "served, broken: " + f));
    const paper = await open(browser, new URL("sheet", url).href);
    const pdf = await paper.page.pdf({ preferCSSPageSize: true });
    const printed = execFileSync("pdftotext", ["-layout", "-", "-"], { input: pdf }).toString().split("\f").filter((p) => p.trim());
    const unmarked = printed.filter((p) => !p.includes("this is the last good sheet")).length;
    want(printed.length > 5 && unmarked === 0, `${unmarked} of ${printed.length} pages of a stale sheet are printed without a mark`);
    want(!(await paper.page.$("script")), "the sheet has a script");
    faults.push(...paper.faults);
    await paper.page.close();
    writeFileSync(recipe, good);
    await page.waitForFunction(() => !document.querySelector("#problems"), { timeout: 20000, polling: 100 });

    // A curve is read by a finger, and the cut is moved.
    const chart = await page.$("#spirit figure svg.narrow");
    await chart.scrollIntoView();
    const box = await chart.boundingBox();
    await page.touchscreen.tap(box.x + box.width * 0.6, box.y + box.height * 0.4);
    await page.waitForFunction(() => / over, /.test(document.querySelector("#spirit figcaption").textContent), { timeout: 5000 });
    await shot("phone-curve");
    await page.$eval("#cut-at", (e) => { e.scrollIntoView(); });
    await page.waitForFunction(() => document.querySelector("#cut-gives dd"), { timeout: 20000 });
    const was = await page.$eval("#cut-gives", (e) => e.innerText);
    await page.$eval("#cut-at", (e) => { e.value = +e.value - 20 * +e.step; e.dispatchEvent(new Event("input", { bubbles: true })); });
    await page.waitForFunction((w) => document.querySelector("#cut-gives").innerText !== w, { timeout: 20000 }, was);
    await shot("phone-cut");

    // It ends.
    faults.push(...seen.map((f) => "served: " + f));
    server.kill("SIGINT");
    await page.waitForFunction(() => !document.querySelector("#gone").hidden && document.title.startsWith("! no answer"), { timeout: 20000 });
    await page.$eval(pitch, (e) => e.form.requestSubmit());
    await page.waitForFunction((s) => document.querySelector(s).form.innerText.includes("does not answer"), { timeout: 20000 }, pitch);
    want((await page.$eval(pitch, (e) => e.value)) === "1.066", "what was typed is gone with the server");
    await shot("phone-gone");
    await page.close();
    return faults;
  } finally {
    server.kill("SIGINT");
  }
}

// hostileFaults opens a house whose words mean harm, some days before the work begins.
export async function hostileFaults(browser, newmake, recipe) {
  const day = new Date(Date.now() + 3 * 86400e3).toISOString().slice(0, 10);
  const server = spawn(newmake, ["plan", recipe, "--open", "--on", day], { stdio: ["ignore", "ignore", "pipe"] });
  try {
    const { page, faults } = await open(browser, await address(server), served);
    await page.waitForFunction(() => document.querySelector("h1")?.textContent.includes("onerror"), { timeout: 20000 });
    await page.click("#open-run");
    await page.waitForSelector("form.visit", { timeout: 20000 });
    // It counts down to the first step; a step that goes on is marked.
    await page.waitForFunction(() => / in \d+ (days|h)/.test(document.querySelector("#next").textContent), { timeout: 5000 });
    await page.$eval("#step-mash\\.2", (e) => {
      e.dataset.start = new Date(Date.now() - 60e3).toISOString();
      e.dataset.end = new Date(Date.now() + 60e3).toISOString();
    });
    await page.waitForSelector("#step-mash\\.2.now", { timeout: 5000 });
    if (await page.$("img, h1 script")) faults.push("a name became an element");
    await page.close();
    return faults.map((f) => "served, hostile: " + f);
  } finally {
    server.kill("SIGINT");
  }
}

// lanFaults has a browser let in on an address of a network, if this machine has a
// private one: with the code alone, and no other browser with it.
export async function lanFaults(browser, newmake, recipe) {
  const lan = Object.values(networkInterfaces()).flat().map((i) => i.address).find((a) => /^(10\.|192\.168\.|172\.(1[6-9]|2\d|3[01])\.|f[cd])/.test(a));
  if (!lan) return { faults: [], note: "not tried: this machine has no private address" };
  const faults = [];
  const want = (is, what) => { if (!is) faults.push("lan: " + what); };
  const server = spawn(newmake, ["plan", recipe, "--open", "--lan", lan], { stdio: ["ignore", "ignore", "pipe"] });
  try {
    const [, url, code] = await says(server, /(http:\/\/\S+\/) for[^]*the code (\S+) lets/);
    const page = await browser.newPage();
    const bad = [];
    page.on("pageerror", (e) => bad.push(e.message));
    page.on("console", (m) => { if (m.type() === "error" && !/40[13]/.test(m.text())) bad.push(m.text()); });
    await page.setViewport(phone);
    await page.goto(url);
    faults.push(...(await axeFaults(page)).map((f) => "lan, code: " + f));
    const enter = async (text) => { await page.type("#code", text); await Promise.all([page.waitForNavigation(), page.click("button")]); };
    await enter("22222222");
    want((await page.$("#code")) && (await page.evaluate(() => document.body.innerText.includes("That is not the code"))), "a wrong code is not refused");
    await enter(code.toLowerCase());
    await page.waitForSelector("#step-mash\\.1", { timeout: 20000 });
    const cookies = await page.cookies();
    want(cookies.length === 1 && cookies[0].httpOnly && cookies[0].sameSite === "Strict", "the cookie is not kept from scripts and other sites");
    if (await page.$("#open-run")) await page.click("#open-run");
    const room = "#blank-mash\\.7\\.temperature";
    await page.waitForSelector(room, { timeout: 20000 });
    await page.focus(room);
    await page.keyboard.type("159");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.body.innerText.includes("read 159 F"), { timeout: 20000 });
    const other = await (await browser.createBrowserContext()).newPage();
    await other.goto(url);
    await other.type("#code", code);
    await Promise.all([other.waitForNavigation(), other.click("button")]);
    want(!!(await other.$("#code")), "the code lets a second browser in");
    await other.close();
    await page.close();
    faults.push(...bad.map((f) => "lan: " + f));
    return { faults, note: lan };
  } finally {
    server.kill("SIGINT");
  }
}

// served are the requests that the page makes, by what follows its address.
const served = (rest) => /^(page\.(css|js)|events|readings|run|cut\?to=[\d.]+)?$/.test(rest);

const address = async (server) => (await says(server, /(http:\/\/127\.0\.0\.1:\d+\/\S*\/)\s/))[1];

// says waits for words in the terminal.
function says(server, words) {
  return new Promise((done, fail) => {
    let said = "";
    server.stderr.on("data", (d) => {
      said += d;
      const m = words.exec(said);
      if (m) done(m);
    });
    server.on("exit", () => fail(new Error("it ended: " + said)));
  });
}
