// The page for a browser, in Chromium: node page.mjs FOLDER
import {createServer} from "node:http";
import {readFileSync, statSync, writeFileSync} from "node:fs";
import {join} from "node:path";
import {tmpdir} from "node:os";
import {deflateRawSync} from "node:zlib";
import {axeFaults, htmlFaults} from "./access.mjs";
import {open, withBrowser} from "./browser.mjs";

const folder = process.argv[2];
const types = {html: "text/html", js: "text/javascript", css: "text/css", json: "application/json", svg: "image/svg+xml", txt: "text/plain", webmanifest: "application/manifest+json"};
let up = true, asked = [];
const server = createServer((request, response) => {
  if (!up) return request.socket.destroy();
  asked.push(request.url);
  const name = request.url.split("?")[0].replace(/^\//, "") || "index.html";
  try {
    const body = readFileSync(join(folder, name.replace(/\.\./g, "")));
    response.writeHead(200, {"Content-Type": types[name.split(".").pop()] ?? "application/octet-stream"});
    response.end(body);
  } catch {
    response.writeHead(404).end();
  }
});
await new Promise((done) => server.listen(0, "127.0.0.1", done));
const home = `http://127.0.0.1:${server.address().port}/`;

let failed = 0;
const hold = (ok, what) => {
  if (!ok) failed++;
  console.log(`${ok ? "ok  " : "FAIL"} ${what}`);
};
const none = (faults, what) => hold(!faults.length, [what, ...faults.slice(0, 12)].join("\n       "));

// What the engine weighs as it is sent: 3 MiB are wanted.
const most = 3 * 1024 * 1024;
const weighs = statSync(join(folder, "engine.bin")).size;
hold(weighs <= most, `the engine weighs ${(weighs / 1e6).toFixed(2)} MB packed, ${(weighs / 1048576).toFixed(2)} MiB; 3 MiB at most`);

const sheetText = (page) => page.evaluate(() => document.getElementById("sheet").shadowRoot?.textContent ?? "");
const textOf = (page) => page.evaluate(() => JSON.parse(localStorage.getItem("newmake.house")));
const messages = (page) => page.$eval("#messages", (e) => e.textContent);
const settled = (page, seconds = 30) => page.waitForFunction(() => document.body.dataset.turn, {timeout: seconds * 1000, polling: 20});
// changed does something, and waits for the answer to it; it gives the milliseconds that it took.
async function changed(page, work) {
  await page.evaluate(() => { delete document.body.dataset.turn; });
  await work();
  await settled(page);
  return page.evaluate(() => Number(document.body.dataset.took));
}
// behind puts the cursor behind some words of the text, as a click there would.
async function behind(page, words) {
  await page.mouse.move(2, 2);
  for (let i = 0; i < 50; i++) { // what is proposed, or said of a place, may cover it, and may come late
    await page.keyboard.press("Escape");
    await new Promise((done) => setTimeout(done, 100));
    if (await page.evaluate(() => !document.getElementById("editor").shadowRoot.querySelector(".cm-tooltip"))) break;
  }
  await page.evaluate(async (w) => { // the editor draws what it shows when it is scrolled
    const frame = () => new Promise(requestAnimationFrame);
    await frame();
    [...document.getElementById("editor").shadowRoot.querySelectorAll(".cm-line")].find((l) => l.textContent.includes(w))?.scrollIntoView({block: "center"});
    await frame();
    await frame();
  }, words);
  const at = await page.evaluate((w) => {
    const root = document.getElementById("editor").shadowRoot;
    const walk = document.createTreeWalker(root.querySelector(".cm-content"), NodeFilter.SHOW_TEXT);
      const line = [...root.querySelectorAll(".cm-line")].find((l) => l.textContent.includes(w));
    if (!line) return null;
    let left = line.textContent.indexOf(w) + w.length;
    walk.currentNode = line;
    for (let n = walk.nextNode(); n; n = walk.nextNode()) {
      if (left <= n.length) {
        const r = document.createRange();
        r.setStart(n, Math.max(0, left - 1));
        r.setEnd(n, left);
        const box = r.getBoundingClientRect();
        return {x: box.right, y: (box.top + box.bottom) / 2};
      }
      left -= n.length;
    }
    return null;
  }, words);
  if (!at) throw new Error("not on the screen: " + words);
  await page.mouse.click(at.x - 0.5, at.y);
}

await withBrowser(async (browser) => {
  const own = (rest) => /^[\w.-]*(#.*)?$/.test(rest);
  const began = Date.now();
  const {page, faults} = await open(browser, home, own);
  await page.setViewport({width: 1280, height: 900});
  await settled(page);
  console.log(`     first sheet after ${Date.now() - began} ms`);
  hold((await sheetText(page)).includes("Ferry Landing"), "the sheet of the example stands beside its text");
  hold((await sheetText(page)).includes("Local code, permits and licensed practice come first"), "with the words on safety and law that paper has");
  hold((await page.$eval("footer", (e) => e.textContent)).includes("Local code, permits and licensed practice come first"), "and so does the page");
  hold(/newmake (revision|of no stated revision|v)/.test(await page.$eval("#version", (e) => e.textContent)), "the version is shown");
  hold((await page.evaluate(() => [...document.getElementById("sheet").shadowRoot.querySelectorAll("svg path")].length)) > 20, "charts are drawn");
  const hints = () => page.evaluate(() => [...document.getElementById("editor").shadowRoot.querySelectorAll(".hint")].map((h) => h.textContent).join("; "));
  await page.waitForFunction(() => document.body.dataset.sure, {timeout: 30000});
  hold(/±/.test(await sheetText(page)), "when typing stops, how sure each number is");

  // A change: the sheet and the predictions follow.
  const before = await sheetText(page);
  await behind(page, "bill 790");
  await changed(page, async () => { for (let i = 0; i < 3; i++) await page.keyboard.press("Backspace"); await page.keyboard.type("700"); });
  hold((await sheetText(page)) !== before && (await sheetText(page)).includes("700"), "the sheet follows the text");
  const times = [];
  for (let i = 0; i < 12; i++) times.push(await changed(page, async () => { await page.keyboard.press("Backspace"); await page.keyboard.type(String(i % 9)); }));
  times.sort((a, b) => a - b);
  console.log(`     a change takes ${times[6]} ms in the middle, ${times[11]} ms at most, from the end of the pause to the sheet`);
  hold(times[6] < 1500, "a change is answered");

  // A mistake: marked, explained, the old sheet marked as such; the fix mends it.
  await behind(page, "corn             68 %");
  await changed(page, () => page.keyboard.type("%"));
  hold(/NM0114/.test(await messages(page)) && /ferry-landing\.batch:\d+/.test(await messages(page)), "a mistake is said with its place");
  hold(await page.$eval("#stale", (e) => !e.hidden), "the last sheet is marked as one not to work from");
  hold(await page.evaluate(() => !!document.getElementById("editor").shadowRoot.querySelector(".cm-lintRange-error")), "and is marked in the text");
  await page.evaluate(() => [...document.querySelectorAll("#messages button")].find((b) => b.textContent.startsWith("Explain")).click());
  await page.waitForFunction(() => document.getElementById("page").open);
  hold((await page.$eval("#explained", (e) => e.textContent)).length > 80, "its page is shown");
  await page.keyboard.press("Escape");
  await behind(page, "corn             68 ");
  await page.keyboard.press("End");
  await changed(page, () => page.keyboard.press("Backspace"));
  hold(!/NM0114/.test(await messages(page)), "mended, nothing more is said of it");
  hold(await page.$eval("#stale", (e) => e.hidden), "and the sheet is good again");

  // Words that may stand there, and what stands there.
  await behind(page, "rye               8 %");
  await page.keyboard.press("Enter");
  await page.keyboard.type("mal");
  await page.waitForFunction(() => document.getElementById("editor").shadowRoot.querySelector(".cm-tooltip-autocomplete li"), {timeout: 10000});
  hold((await page.evaluate(() => document.getElementById("editor").shadowRoot.querySelector(".cm-tooltip-autocomplete").textContent)).includes("malt"), "names of grains are proposed");
  await page.keyboard.press("Escape");
  await changed(page, async () => { // as many as were typed, the margin's two, and the line
    for (let i = 0; i < 3; i++) await page.keyboard.press("Backspace");
    await page.keyboard.down("Shift"); await page.keyboard.press("Home"); await page.keyboard.press("Home"); await page.keyboard.up("Shift");
    await page.keyboard.press("Backspace"); await page.keyboard.press("Backspace");
  });
  await behind(page, "rye               8");
  await page.keyboard.down("Control"); await page.keyboard.press("F1"); await page.keyboard.up("Control");
  await page.waitForFunction(() => document.getElementById("page").open, {timeout: 10000});
  hold((await page.$eval("#explained", (e) => e.textContent)).length > 20, "what stands at the cursor is shown, by a key");
  await page.keyboard.press("Escape");
  await page.evaluate(() => { document.getElementById("editor").shadowRoot.querySelector(".cm-scroller").scrollTop = 700; });
  await page.waitForFunction(() => document.getElementById("editor").shadowRoot.querySelector(".hint"), {timeout: 10000});
  hold(/gravity|proof|cask/.test(await hints()), "predictions stand beside the lines: " + (await hints()));
  await page.evaluate(() => { document.getElementById("editor").shadowRoot.querySelector(".cm-scroller").scrollTop = 0; });

  // A number is slid, by the keys: the text and the sheet follow, and it can be undone.
  const slid = (words, p = page) => p.waitForFunction((w) => document.getElementById("slid").textContent.startsWith(w), {timeout: 10000, polling: 20}, words);
  const line = async (words) => (await textOf(page)).files["ferry-landing.batch"].split("\n").find((l) => l.includes(words));
  const keptSoon = () => new Promise((done) => setTimeout(done, 400));
  const undone = async () => { await page.keyboard.down("Control"); await page.keyboard.press("z"); await page.keyboard.up("Control"); };
  await behind(page, "rest     45");
  await slid("rest 45 min");
  await page.keyboard.press("Tab");
  hold(await page.evaluate(() => document.activeElement.id === "slider"), "the slider of the number at the cursor is the next after the text");
  const slides = [];
  for (let i = 0; i < 6; i++) slides.push(await changed(page, () => page.keyboard.press("ArrowRight")));
  await keptSoon();
  hold(/rest     51 min/.test(await line("rest     5")) && (await page.$eval("#slider", (e) => e.getAttribute("aria-valuetext"))) === "51 min", "a key moves it, and the text with it");
  slides.sort((a, b) => a - b);
  console.log(`     a number slid is answered in ${slides[3]} ms in the middle, ${slides[5]} ms at most, after the pause of 40 ms`);
  for (let i = 0; i < 6 && !(await line("rest     45 min")); i++) { // as many as there were pauses
    await changed(page, undone);
    await keptSoon();
  }
  hold(/rest     45 min/.test(await line("rest     45")), "which is undone");
  await changed(page, async () => { for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowRight"); });
  await changed(page, undone);
  await keptSoon();
  hold(/rest     45 min/.test(await line("rest     45")), "at once, where it was slid at once");
  await page.keyboard.press("Escape");
  hold(await page.evaluate(() => document.activeElement.id === "editor"), "Escape goes back to the text");
  await behind(page, "corn             68");
  await slid("corn 68 %");
  await changed(page, async () => { await page.focus("#slider"); await page.keyboard.press("ArrowRight"); });
  await keptSoon();
  hold(/69 %/.test(await line("corn  ")) && /9\.7 %/.test(await line("oats  ")) && (await page.$eval("#stale", (e) => e.hidden)), "a share that is slid takes the others along");
  await changed(page, undone);
  hold(!(await page.evaluate(() => document.getElementById("editor").shadowRoot.querySelector(".cm-tooltip-autocomplete"))), "and nothing is proposed, as if it had been typed");
  await behind(page, "mash in");
  await page.waitForFunction(() => document.getElementById("slider").disabled, {timeout: 10000, polling: 20});
  hold(true, "where no number stands there is none");
  await behind(page, "bill 7");

  // Two versions.
  await page.click("#keep");
  await behind(page, "bill 7");
  await changed(page, async () => { await page.keyboard.press("Backspace"); await page.keyboard.type("8"); });
  await page.click("#tab-diff");
  await page.waitForFunction(() => /proof/.test(document.getElementById("diff").shadowRoot?.textContent ?? ""), {timeout: 30000});
  hold(true, "what changed since a version, with what it does to the barrel");
  await page.click("#tab-sheet");

  // Kept, in the browser.
  await new Promise((done) => setTimeout(done, 400));
  let kept = await textOf(page);
  await changed(page, () => page.reload());
  hold(JSON.stringify((await textOf(page)).files) === JSON.stringify(kept.files) && kept.versions.length === 1, "loaded again, the work is there");
  none((await axeFaults(page)).filter((f) => !f.includes("(print)")), "axe has nothing to say");
  none(await htmlFaults(readFileSync(join(folder, "index.html"), "utf8")), "html-validate has nothing to say");

  // Printed: the sheet alone, by its button and by a key, and by the browser's own command.
  await page.evaluate(() => { // the printer's part of it: what would be printed is kept
    window.printed = [];
    const {append} = Element.prototype;
    document.body.append = function (...below) {
      append.apply(this, below);
      for (const b of below) if (b.id === "paper") b.contentWindow.print = () => window.printed.push(b.contentDocument.body.innerText);
    };
  });
  const onPaper = () => page.evaluate(() => window.printed.at(-1) ?? "");
  const key = async (id) => { await page.focus(id); await page.keyboard.press("Enter"); };
  await key("#print");
  hold((await onPaper()).includes("Ferry Landing") && (await onPaper()).includes("Local code, permits and licensed practice come first"), "the sheet is printed, by a key, with the words on safety and law");
  hold(!/Download the house|Lay out/.test(await onPaper()), "and it alone");
  hold(await page.evaluate(() => { const p = document.getElementById("paper").contentDocument; return p.adoptedStyleSheets[0].cssRules.length > 20 && p.documentElement.scrollHeight > 100; }), "in the style that it has on paper");
  await behind(page, "corn             68 %");
  await changed(page, () => page.keyboard.type("%"));
  await key("#print");
  hold((await onPaper()).startsWith("The text has errors now."), "a sheet that is not to be worked from says so on paper too");
  await behind(page, "corn             68 %%");
  await changed(page, () => page.keyboard.press("Backspace"));
  await page.setViewport({width: 600, height: 900}); // narrower than the two panes, as paper is
  await page.emulateMediaType("print");
  hold(await page.evaluate(() => document.getElementById("sheet").offsetHeight > 2000 && !document.querySelector("header").offsetHeight && !document.getElementById("left").offsetHeight), "the browser's own command prints the sheet alone");
  await page.emulateMediaType(null);
  await page.setViewport({width: 1280, height: 900});
  const titles = await page.$$eval("button, .button", (all) => all.map((b) => b.title).join(" "));
  hold(!/newmake [a-z]|--\w/.test(titles), "what a button does is told in words of the page");

  // Two tabs.
  const two = await browser.newPage();
  await two.setViewport({width: 1280, height: 900});
  await two.goto(home);
  await settled(two);
  const write = async (p, words) => {
    await p.bringToFront();
    await behind(p, "rye               8 %");
    await p.keyboard.press("End");
    await changed(p, () => p.keyboard.type(" # " + words));
    await new Promise((done) => setTimeout(done, 400));
  };
  const askedOf = async (p) => {
    await p.bringToFront();
    await p.waitForFunction(() => !document.getElementById("ask").hidden, {timeout: 10000, polling: 50});
    return p.$eval("#asked", (e) => e.textContent);
  };
  const choice = (p, n) => changed(p, () => p.click(`#choices button:nth-child(${n})`));
  const stands = async () => { const k = await textOf(page); return {text: k.files["ferry-landing.batch"], versions: k.versions.map((v) => v.files["ferry-landing.batch"])}; };
  await write(page, "one");
  hold(/Another tab/.test(await askedOf(two)), "another tab's change is said");
  await choice(two, 1);
  let now = await stands();
  hold(now.text.includes("# one") && now.versions.length === 1, "taken, where nothing else was written, no version is made of it");
  await write(page, "two");
  await askedOf(two);
  await write(two, "mine");
  now = await stands();
  hold(now.text.includes("# two") && !now.text.includes("# mine"), "until one chooses, neither is written over the other");
  await choice(two, 1);
  now = await stands();
  hold(now.text.includes("# two") && now.versions[0].includes("# mine") && !now.versions[0].includes("# two"), "theirs taken, mine is a version");
  await write(page, "three");
  await askedOf(two);
  await write(two, "four");
  await two.click("#choices button:nth-child(2)");
  now = await stands();
  hold(now.text.includes("# four") && now.versions[0].includes("# three") && now.versions[1].includes("# mine"), "mine kept, theirs is a version");
  hold(/Another tab/.test(await askedOf(page)), "which is said in the other tab");
  await choice(page, 1);
  await write(page, "five");
  await askedOf(two);
  await write(two, "six");
  await two.goto("about:blank");
  await two.close();
  now = await stands();
  hold(now.text.includes("# five") && now.versions[0].includes("# six"), "a tab that is closed without an answer leaves its text as a version");
  await page.bringToFront();
  await new Promise((done) => setTimeout(done, 300));
  hold(await page.$eval("#ask", (e) => e.hidden), "and asks nothing of the other");
  await page.click("#tab-diff");
  await page.click("#back");
  await choice(page, 1);
  now = await stands();
  hold(now.text.includes("# six") && now.versions[0].includes("# five"), "a version is gone back to, and what was there is one");
  await page.click("#tab-sheet");
  kept = await textOf(page);

  // Shared by the fragment, which the server never sees.
  asked = [];
  await page.evaluate(() => { navigator.clipboard.writeText = async (t) => { window.copied = t; }; });
  await page.click("#share");
  await page.waitForFunction(() => location.hash.length > 100);
  const address = await page.evaluate(() => location.href);
  const other = await (await browser.createBrowserContext()).newPage();
  await other.goto(address);
  await settled(other);
  hold(JSON.stringify((await textOf(other)).files) === JSON.stringify(kept.files), `an address carries the house (${address.length} characters)`);
  hold(!asked.some((u) => u.includes("house=") || u.length > 60), "and the server never sees it");

  // What comes in the fragment is text and nothing else.
  const pack = (files) => "house=" + deflateRawSync(JSON.stringify(files)).toString("base64url");
  const evil = '<script>alert(1)</script><img src=x onerror=alert(1)>';
  const hostile = {...kept.files, "ferry-landing.batch": kept.files["ferry-landing.batch"].replaceAll("Ferry Landing", evil), [`z${"<img src=x onerror=alert(1)>".replace(/[<>=()]/g, "")}.batch`]: "# " + evil};
  for (const [what, fragment, shown] of [
    ["words that are HTML", pack(hostile), true], ["a file above the house", pack({"../x.batch": "x"}), false], ["no house", "house=" + "A".repeat(300), false],
    ["a script", "house=<script>alert(1)</script>", false], ["too much", pack({"a.batch": "a".repeat(20e6)}), false], ["another thing", pack([1, 2]), false], ["a key of the language", pack({"__proto__": "x"}), false],
  ]) {
    const context = await browser.createBrowserContext();
    const p = await context.newPage();
    const seen = [];
    p.on("dialog", (d) => { seen.push("dialog"); d.dismiss(); });
    p.on("pageerror", (e) => seen.push(e.message));
    p.on("console", (m) => m.type() === "error" && seen.push(m.text()));
    await p.goto(home + "#" + fragment);
    await settled(p);
    if (shown) {
      await p.waitForFunction(() => document.getElementById("sheet").shadowRoot?.textContent.includes("<img"), {timeout: 20000});
      const made = await p.evaluate(() => ["sheet", "editor", "diff"].some((i) => document.getElementById(i).shadowRoot?.querySelector("script, iframe, img[src], [onerror]")) || !!document.querySelector("body script, img"));
      hold(!made, what + " are shown and become nothing");
    } else {
      hold(Object.keys((await p.evaluate(() => JSON.parse(localStorage.getItem("newmake.house"))))?.files ?? {"house.batch": 1}).includes("house.batch"), what + " changes nothing");
    }
    none(seen, what + " does nothing");
    await context.close();
  }
  // With work here, a person is asked before it goes.
  await page.goto("about:blank");
  await page.goto(home + "#" + pack({"house.batch": "# other\n"}));
  await page.waitForFunction(() => !document.getElementById("ask").hidden, {timeout: 20000});
  await page.click("#choices button:nth-child(2)");
  hold(JSON.stringify((await textOf(page)).files) === JSON.stringify(kept.files), "a house from an address takes the place of none unasked");

  // A file gets another name, and goes: by the keys, and not for good.
  const tidy = await (await browser.createBrowserContext()).newPage();
  await tidy.setViewport({width: 1280, height: 900});
  await tidy.goto(home);
  await settled(tidy);
  const chord = async (key) => { await tidy.keyboard.down("Control"); await tidy.keyboard.press(key); await tidy.keyboard.up("Control"); };
  await behind(tidy, "rest     45");
  await changed(tidy, async () => { await tidy.keyboard.press("Backspace"); await tidy.keyboard.type("4"); });
  const files = async () => Object.keys((await textOf(tidy)).files);
  const keptAs = (name, is) => tidy.waitForFunction((n, i) => (n in JSON.parse(localStorage.getItem("newmake.house")).files) === i, {timeout: 10000, polling: 20}, name, is);
  const press = async (id) => { await tidy.focus(id); await tidy.keyboard.press("Enter"); };
  const renamed = async (name) => {
    await press("#rename");
    await tidy.waitForFunction(() => document.activeElement.matches("#choices input"), {timeout: 5000});
    await chord("a");
    await tidy.keyboard.type(name);
    await tidy.keyboard.press("Enter");
  };
  const said = (words) => tidy.waitForFunction((w) => document.getElementById("status").textContent.includes(w), {timeout: 10000, polling: 20}, words);
  await keptAs("ferry-landing.batch", true);
  const all = await files(), text = (await textOf(tidy)).files["ferry-landing.batch"];
  for (const [name, why] of [["house.batch", "house.batch already"], ["rye.txt", "end in .batch"], ["../x.batch", "cannot be the name"]]) {
    await renamed(name);
    await said(why);
  }
  hold(JSON.stringify(await files()) === JSON.stringify(all), "a name that cannot be is refused with its reason");
  await press("#rename");
  none((await axeFaults(tidy)).filter((f) => !f.includes("(print)")), "axe has nothing to say of the question");
  await tidy.focus("#choices input");
  await tidy.keyboard.press("Escape");
  hold(await tidy.$eval("#ask", (e) => e.hidden), "Escape leaves the name");
  await changed(tidy, () => renamed("two/ferry.batch"));
  await keptAs("two/ferry.batch", true);
  hold((await textOf(tidy)).files["two/ferry.batch"] === text && !(await files()).includes("ferry-landing.batch") && (await tidy.$eval("#file", (e) => e.value)) === "two/ferry.batch", "a file is renamed");
  hold((await sheetText(tidy)).includes("Ferry Landing"), "and its sheet is there");
  await changed(tidy, () => chord("z"));
  hold((await tidy.evaluate(() => document.activeElement.id)) === "editor", "and the cursor in its text, where the change before can be undone");
  await changed(tidy, () => chord("y"));
  await changed(tidy, () => renamed("ferry-landing.batch"));
  await keptAs("ferry-landing.batch", true);
  await press("#delete");
  await tidy.focus("#choices button:nth-child(2)");
  await tidy.keyboard.press("Enter");
  hold(JSON.stringify((await files()).sort()) === JSON.stringify(all.sort()), "a file is not deleted unasked");
  await press("#delete");
  await changed(tidy, () => tidy.keyboard.press("Enter"));
  await keptAs("ferry-landing.batch", false);
  hold((await textOf(tidy)).versions[0].files["ferry-landing.batch"] === text, "one that is deleted is in the version that is kept");
  await tidy.select("#file", "house.batch");
  hold(await tidy.evaluate(() => document.getElementById("rename").disabled && document.getElementById("delete").disabled), "the house itself is neither renamed nor deleted");
  await tidy.click("#tab-diff");
  await tidy.click("#back");
  await changed(tidy, () => tidy.click("#choices button:nth-child(1)"));
  await keptAs("ferry-landing.batch", true);
  await tidy.click("#tab-sheet");
  await changed(tidy, () => tidy.select("#file", "ferry-landing.batch"));
  hold((await sheetText(tidy)).includes("Ferry Landing"), "and comes back with it");
  const keeps = async (n) => {
    for (let i = 0; i < n; i++) await press("#keep");
    return {kept: (await textOf(tidy)).versions.length, said: await tidy.$eval("#status", (e) => e.textContent)};
  };
  const full = await keeps(12 - (await textOf(tidy)).versions.length), over = await keeps(1);
  hold(full.kept === 12 && !/is gone/.test(full.said) && over.kept === 12 && /The oldest, .*, is gone: 12 are kept/.test(over.said), "a version that makes the oldest go says so");

  // A phone.
  const phone = await (await browser.createBrowserContext()).newPage();
  await phone.setViewport({width: 390, height: 844, isMobile: true, hasTouch: true, deviceScaleFactor: 2});
  await phone.goto(home);
  await settled(phone);
  const wide = () => phone.evaluate(() => document.documentElement.scrollWidth);
  hold((await wide()) <= 390, `no sideways scroll at 390 px: ${await wide()}`);
  none((await axeFaults(phone)).filter((f) => !f.includes("(print)")), "axe has nothing to say of the text on a phone");
  await phone.evaluate(() => document.getElementById("editor").scrollIntoView());
  const number = await phone.evaluate(() => {
    const line = [...document.getElementById("editor").shadowRoot.querySelectorAll(".cm-line")].find((l) => l.textContent.includes("bill 790")), box = line.querySelector(".t-number").getBoundingClientRect();
    return {x: box.left + box.width / 2, y: box.top + box.height / 2};
  });
  await phone.touchscreen.tap(number.x, number.y);
  await slid("bill 790 lb", phone);
  const thumb = await phone.$eval("#slider", (e) => { const b = e.getBoundingClientRect(); return {x: b.left, y: b.top + b.height / 2, width: b.width, height: b.height}; });
  await changed(phone, () => phone.touchscreen.tap(thumb.x + thumb.width * 0.8, thumb.y));
  hold(/^bill 1\d\d\d lb/.test(await phone.$eval("#slid", (e) => e.textContent)) && thumb.height >= 40 && (await wide()) <= 390, "a number is slid by a finger: " + (await phone.$eval("#slid", (e) => e.textContent)));
  none((await axeFaults(phone)).filter((f) => !f.includes("(print)")), "axe has nothing to say of the slider on a phone");
  await phone.tap("#show-answer");
  hold((await wide()) <= 390, `nor with the sheet: ${await wide()}`);
  none((await axeFaults(phone)).filter((f) => !f.includes("(print)")), "axe has nothing to say of the sheet on a phone");

  // The network goes.
  await page.waitForFunction(() => navigator.serviceWorker.controller, {timeout: 20000});
  up = false;
  server.closeAllConnections();
  const started = Date.now();
  await changed(page, () => page.goto(home));
  hold((await sheetText(page)).includes("Ferry Landing"), "without a network the page is there, with the work");
  console.log(`     first sheet out of the cache after ${Date.now() - started} ms`);
  up = true;
  none(faults, "nothing is asked of another server, and no policy is broken");
  if (process.env.PAGE_SHOTS) {
    await page.screenshot({path: join(process.env.PAGE_SHOTS, "page.png")});
    await phone.screenshot({path: join(process.env.PAGE_SHOTS, "phone.png")});
  }
});
server.close();
server.closeAllConnections();
if (failed) {
  console.log(`${failed} failed`);
  process.exit(1);
}
