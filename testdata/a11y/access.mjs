// Accessibility, by general-purpose checkers: axe-core in the browser, on the
// screen and on paper, and html-validate on the text.
import axe from "axe-core";
import { HtmlValidate } from "html-validate";

export async function axeFaults(page) {
  const faults = [];
  for (const media of ["screen", "print"]) {
    await page.emulateMediaType(media);
    await page.evaluate(axe.source);
    const result = await page.evaluate(() => axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }));
    for (const v of result.violations) {
      faults.push(`axe (${media}) ${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join("; ")}`);
    }
  }
  await page.emulateMediaType(null);
  return faults;
}

const validator = new HtmlValidate({
  extends: ["html-validate:standard", "html-validate:a11y"],
  rules: { "no-trailing-whitespace": "off", "long-title": "off" },
});

// phoneFaults are axe's on a screen of 390 px, as a phone in the still house has.
export async function phoneFaults(page) {
  await page.setViewport({ width: 390, height: 844, isMobile: true, hasTouch: true });
  return (await axeFaults(page)).map((f) => "390 px: " + f);
}

// sidewaysFaults finds a page wider than its screen (WCAG 1.4.10): a phone, a screen of
// 1280 px at 200 %, and that screen itself.
export async function sidewaysFaults(page) {
  const faults = [];
  for (const width of [320, 390, 640, 1280]) {
    await page.setViewport({ width, height: 844 });
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    if (wide > width) faults.push(`it scrolls sideways at ${width} px: it is ${wide} px wide`);
  }
  return faults;
}

export async function htmlFaults(text) {
  const report = await validator.validateString(text);
  return report.results.flatMap((r) => r.messages.map((m) => `html ${m.ruleId}, line ${m.line}: ${m.message}`)).slice(0, 20);
}
