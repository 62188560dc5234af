// `newmake plan --open` in a real browser: the sheet loads anew when the recipe
// is saved, and shows what is wrong when it breaks.
import { spawn } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { axeFaults } from "./access.mjs";
import { open } from "./browser.mjs";

export async function liveFaults(browser, newmake, recipe) {
  const server = spawn(newmake, ["plan", recipe, "--open"], { stdio: ["ignore", "ignore", "pipe"] });
  try {
    const url = await address(server);
    const good = readFileSync(recipe, "utf8");
    const { page, faults } = await open(browser, url);
    const shows = (text) => page.waitForFunction((t) => document.body?.innerText.includes(t), { timeout: 20000, polling: 100 }, text);
    await shows("What it should give");
    writeFileSync(recipe, good.replace(/^(\s+corn\s)/m, "$1 1 1 "));
    await shows("This is the last good sheet");
    await shows("What it should give");
    faults.push(...(await axeFaults(page)));
    writeFileSync(recipe, good.replace(/batch "/, 'batch "Anew '));
    await page.waitForFunction(() => document.body && !document.querySelector(".problems"), { timeout: 20000, polling: 100 });
    writeFileSync(recipe, good);
    await page.close();
    return faults.map((f) => "live: " + f);
  } finally {
    server.kill("SIGINT");
  }
}

function address(server) {
  return new Promise((done, fail) => {
    let said = "";
    server.stderr.on("data", (d) => {
      said += d;
      const m = /http:\/\/127\.0\.0\.1:\d+\/\S*\/\s/.exec(said);
      if (m) done(m[0].trim());
    });
    server.on("exit", () => fail(new Error("it ended: " + said)));
  });
}
