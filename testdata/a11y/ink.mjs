// letterFaults finds letters of pictures too small to be read on a phone: below 11 px.
export async function letterFaults(page) {
  await page.setViewport({ width: 390, height: 844 });
  return page.evaluate(() => {
    const small = new Set();
    for (const svg of document.querySelectorAll("svg.chart")) {
      const wide = svg.getBoundingClientRect().width;
      if (!wide) continue;
      for (const t of svg.querySelectorAll("text")) {
        const px = (parseFloat(getComputedStyle(t).fontSize) * wide) / svg.viewBox.baseVal.width;
        if (px < 11) small.add(`390 px: letters of ${px.toFixed(1)} px on ${svg.id}`);
      }
      if (svg.classList.contains("wide")) small.add(`390 px: ${svg.id} is drawn as on paper`);
    }
    return [...small];
  });
}

// Black on white, and large enough: nothing is told by colour, and what is read
// at arm's length is no smaller than it should be.
export async function inkFaults(page) {
  await page.emulateMediaType("print");
  const faults = await page.evaluate(() => {
    const out = new Set();
    for (const e of document.querySelectorAll("main, main *")) {
      const s = getComputedStyle(e);
      for (const p of ["color", "backgroundColor", "borderTopColor", "borderLeftColor", "fill", "stroke"]) {
        const m = /^rgba?\((\d+), (\d+), (\d+)/.exec(s[p]);
        if (m && !(m[1] === m[2] && m[2] === m[3])) out.add(`a colour that is no grey: ${p} ${s[p]} on ${e.tagName}.${e.getAttribute("class")}`);
      }
    }
    const least = { ".sentence": 12, ".steps .should b": 12, ".steps .clock b": 14, ".list td.amount": 12, ".due b": 12, ".steps .care": 10, ".cautions dd": 10, "caption": 10, "thead th": 9, ".brief-do": 8.5, ".brief-cautions": 7.5, ".brief-steps .should b": 10.5, ".brief-steps .clock b": 11 };
    for (const [where, pt] of Object.entries(least)) {
      for (const e of document.querySelectorAll(where)) {
        const size = (parseFloat(getComputedStyle(e).fontSize) * 72) / 96;
        if (size < pt - 0.05) out.add(`${where} is ${size.toFixed(1)} pt, less than ${pt}`);
      }
    }
    for (const svg of document.querySelectorAll("svg")) {
      if (svg.getAttribute("role") !== "img" || !svg.querySelector("title")?.textContent || !svg.querySelector("desc")?.textContent) out.add("a picture without words: " + svg.id);
    }
    for (const t of document.querySelectorAll("svg.chart:not(.narrow) text")) {
      const svg = t.closest("svg"), px = parseFloat(getComputedStyle(t).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      if ((px * 72) / 96 < 9) out.add(`${((px * 72) / 96).toFixed(1)} pt on ${svg.id}`);
    }
    return [...out];
  });
  await page.emulateMediaType(null);
  return faults;
}
