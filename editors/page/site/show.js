// Answers shown: pages of HTML in a tree of their own, and short texts in Markdown.

// showPage puts a page that the engine made into a shadow tree. Its style becomes a sheet
// of that tree, which the policy of the page allows; no script is in it, and none would run.
export function showPage(host, html) {
  const root = host.shadowRoot ?? host.attachShadow({mode: "open"});
  const {page, css} = harmless(html);
  const style = new CSSStyleSheet();
  style.replaceSync(css + fit);
  for (const main of page.querySelectorAll("main")) { // the page around it has its own
    const part = page.createElement("div");
    for (const {name, value} of main.attributes) part.setAttribute(name, value);
    part.append(...main.childNodes);
    main.replaceWith(part);
  }
  const top = document.createElement("html");
  top.lang = "en";
  top.append(document.importNode(page.body, true));
  root.adoptedStyleSheets = [style];
  root.replaceChildren(top);
  if (!root.onclick) {
    root.onclick = (e) => { // links within the page lead to places in this tree
      const to = e.target.closest?.("a[href^='#']");
      if (!to) return;
      e.preventDefault();
      root.getElementById(decodeURIComponent(to.getAttribute("href").slice(1)))?.scrollIntoView();
    };
  }
}

// harmless takes a page apart: its elements without any that loads or runs, and its style.
function harmless(html) {
  let css = "";
  const bare = html.replace(/<style[^>]*>([^]*?)<\/style>/g, (_, text) => { css += text + "\n"; return ""; }).replace(/<meta[^>]*>/g, "");
  const page = new DOMParser().parseFromString(bare, "text/html");
  page.querySelectorAll("script, style, meta, link, base, iframe, object, embed").forEach((e) => e.remove());
  return {page, css};
}

// printPage prints a page alone, out of a frame of its own, with the style that it has on
// paper. Above it stands a warning, if there is one.
export function printPage(html, warning) {
  document.getElementById("paper")?.remove();
  const frame = document.createElement("iframe");
  frame.id = "paper";
  frame.title = "The sheet, for the printer";
  frame.tabIndex = -1;
  frame.setAttribute("aria-hidden", "true");
  document.body.append(frame);
  const {page, css} = harmless(html);
  const paper = frame.contentDocument, style = new frame.contentWindow.CSSStyleSheet();
  style.replaceSync(css);
  paper.adoptedStyleSheets = [style];
  paper.documentElement.lang = "en";
  paper.title = page.title;
  paper.body.replaceWith(paper.importNode(page.body, true));
  if (warning) {
    const said = paper.createElement("p");
    said.append(Object.assign(paper.createElement("strong"), {textContent: warning}));
    paper.body.prepend(said);
  }
  frame.contentWindow.focus();
  frame.contentWindow.print();
}

// What a sheet is made to fit on paper fits a narrow pane too.
const fit = `
html, body { display: block; }
body { min-width: 0; max-width: 100%; margin: 0; padding: 0; }
svg { max-width: 100%; height: auto; }
@media screen and (max-width: 820px) { table { display: block; max-width: 100%; overflow-x: auto; }}`;

// words turns the little Markdown of a hover into elements.
export function words(markdown) {
  const out = document.createElement("div");
  out.className = "words";
  const add = (tag, text) => out.appendChild(Object.assign(document.createElement(tag), {textContent: text}));
  markdown.split(/^```.*$/m).forEach((part, i) => {
    if (i % 2) {
      add("pre", part.trim());
      return;
    }
    for (const lines of part.split(/\n{2,}/)) {
      if (!lines.trim()) continue;
      const p = add("p", "");
      for (const piece of lines.trim().replace(/^- /gm, "• ").split(/(`[^`]*`|\*\*[^*]*\*\*)/)) {
        const tag = piece.startsWith("`") ? "code" : piece.startsWith("**") ? "b" : "";
        if (tag) p.appendChild(Object.assign(document.createElement(tag), {textContent: piece.replace(/^(`|\*\*)|(`|\*\*)$/g, "")}));
        else p.append(piece);
      }
    }
  });
  return out;
}
