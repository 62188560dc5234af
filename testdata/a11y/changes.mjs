// The page of what changed: it looks as the sheet does, on a dark screen too, and what
// costs more is not green.
export async function changeFaults(page) {
  const faults = [];
  await page.setViewport({ width: 1280, height: 900 });
  for (const scheme of ["light", "dark"]) {
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    faults.push(...(await page.evaluate((scheme) => {
      const out = [], rgb = (c) => /(\d+), (\d+), (\d+)/.exec(c).slice(1).map(Number);
      const body = getComputedStyle(document.body), head = getComputedStyle(document.querySelector("h1"));
      if (!body.fontFamily.startsWith("Arial")) out.push(`letters of ${body.fontFamily}, not the sheet's`);
      if (parseFloat(head.borderBottomWidth) < 2) out.push("the name has no rule below it, as on the sheet");
      const bright = rgb(body.backgroundColor)[0] > 128;
      if (bright !== (scheme === "light")) out.push(`the paper is ${body.backgroundColor}`);
      const rows = [...document.querySelectorAll("tr")].filter((r) => /^cost/.test(r.cells[0].textContent));
      if (!rows.length) out.push("no row of what it costs");
      let dearer = 0;
      for (const row of rows) {
        const cell = row.cells[row.cells.length - 1], [red, green, blue] = rgb(getComputedStyle(cell).color);
        if (!cell.textContent.startsWith("+")) continue;
        dearer++;
        if (green >= red) out.push(`what costs more is of the colour ${red}, ${green}, ${blue}`);
      }
      if (!dearer) out.push("nothing costs more: the example says nothing");
      return out;
    }, scheme)).map((f) => scheme + ": " + f));
  }
  await page.emulateMediaFeatures([]);
  return faults;
}
