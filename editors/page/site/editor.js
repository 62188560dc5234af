// The editor: CodeMirror, given by the engine what it shows. It stands in a shadow tree,
// where its style sheets are adopted ones, which the policy of the page allows.
import {
  EditorState, StateField, StateEffect, EditorView, Decoration, WidgetType, keymap, lineNumbers, hoverTooltip, drawSelection, highlightActiveLine,
  history, defaultKeymap, historyKeymap, undo, redo, autocompletion, completionKeymap, closeBrackets, closeBracketsKeymap, indentService, indentUnit, bracketMatching,
  setDiagnostics, lintGutter, lintKeymap, searchKeymap, search,
} from "./codemirror.js";
import {words} from "./show.js";

const look = EditorView.theme({
  "&": {height: "100%", fontSize: "14px", background: "#fff", color: "#1c1a17"},
  ".cm-scroller": {fontFamily: "'Liberation Mono', Menlo, Consolas, monospace", lineHeight: "1.5"},
  ".cm-gutters": {background: "#efe9dd", color: "#575046"},
  ".t-comment": {color: "#5f5a52", fontStyle: "italic"},
  ".t-keyword": {color: "#7a3d0c", fontWeight: "bold"},
  ".t-string": {color: "#1f5c2e"},
  ".t-number": {color: "#1a4480"},
  ".t-unit": {color: "#6a3a86"},
  ".t-wrong": {color: "#9b1c1c"},
  ".hint": {color: "#575046", background: "#efe9dd", borderRadius: "3px", padding: "0 6px", marginLeft: "14px", fontSize: "12px", fontFamily: "'Liberation Sans', Arial, sans-serif"},
  ".cm-tooltip": {maxWidth: "min(44em, 90vw)", background: "#fff", color: "#1c1a17", border: "1px solid #6b6459"},
  ".words": {padding: "6px 10px", fontFamily: "'Liberation Sans', Arial, sans-serif"},
  ".words p, .words pre": {margin: "0 0 6px", whiteSpace: "pre-wrap"},
  ".cm-diagnostic": {whiteSpace: "pre-wrap"},
  ".cm-activeLine": {backgroundColor: "#f6f2e9"},
});

const setTokens = StateEffect.define(), setHints = StateEffect.define();

class HintWidget extends WidgetType {
  constructor(hint) { super(); this.hint = hint; }
  eq(other) { return other.hint.text === this.hint.text; }
  toDOM() {
    return Object.assign(document.createElement("span"), {className: "hint", textContent: this.hint.text, title: this.hint.more});
  }
}

// marks is a field of decorations that an effect replaces, and that moves with the text.
const marks = (effect, make) => StateField.define({
  create: () => Decoration.none,
  update(old, tr) {
    let now = old.map(tr.changes);
    for (const e of tr.effects) if (e.is(effect)) now = make(e.value, tr.state.doc);
    return now;
  },
  provide: (f) => EditorView.decorations.from(f),
});

const sorts = Object.fromEntries(["comment", "keyword", "string", "number", "unit", "wrong"].map((s) => [s, Decoration.mark({class: "t-" + s})]));
const tokenMarks = marks(setTokens, (list) => Decoration.set(list.map((t) => sorts[t.sort].range(t.from, t.to))));
const hintMarks = marks(setHints, (list, doc) =>
  Decoration.set(list.map((h) => Decoration.widget({widget: new HintWidget(h), side: 1}).range(doc.lineAt(h.at).to)), true));

// The next line begins below the one before, and inside of a block that it opened.
const indent = indentService.of((cx, at) => {
  const before = at > 0 ? cx.state.doc.lineAt(at - 1) : null;
  if (!before) return 0;
  const own = /^ */.exec(before.text)[0].length;
  return own + (/\{\s*(#.*)?$/.test(before.text) ? 2 : 0);
});

// put writes a proposal: of a line, what follows its first word is selected, to be typed over.
function put(text, line) {
  return (view, _, from, to) => {
    const margin = /^ */.exec(view.state.doc.lineAt(from).text)[0];
    const insert = text.replace(/\n/g, "\n" + margin).replace(/\t/g, "  ");
    const rest = line ? insert.split("\n")[0].replace(/ \{$/, "") : insert;
    const space = line ? rest.indexOf(" ") : -1;
    const anchor = from + (space > 0 ? space + 1 : insert.length);
    view.dispatch({changes: {from, to, insert}, selection: {anchor, head: space > 0 ? from + rest.length : anchor}, userEvent: "input.complete"});
  };
}

const types = {line: "keyword", word: "keyword", name: "variable", unit: "constant", value: "text"};

export class Editor {
  // ask answers {ask, at}; changed is told the text; moved that the cursor stands elsewhere, or on
  // another text, and not by a slider; go is asked to go to a file and place.
  constructor(host, {ask, changed, moved, go}) {
    const root = host.attachShadow({mode: "open"});
    const parent = root.appendChild(document.createElement("div"));
    const fill = new CSSStyleSheet();
    fill.replaceSync(":host { display: block; } :host > div, div.fill { height: 100%; } .fill { height: 100%; }");
    root.adoptedStyleSheets = [fill];
    parent.className = "fill";
    const complete = async (cx) => {
      // A word that was begun, or the unit of a number; anything else when it is asked for.
      if (!cx.explicit && !cx.matchBefore(/[A-Za-z"][\w"-]*|\d /)) return null;
      const a = await ask({ask: "complete", at: cx.pos});
      if (!a?.proposals?.length) return null;
      return {
        from: a.from, to: a.to, validFor: /^[\w"-]*$/,
        options: a.proposals.map((p, i) => ({
          label: p.text.startsWith('"') && cx.state.sliceDoc(a.from, a.from + 1) === '"' ? p.text : p.label, displayLabel: p.label,
          detail: p.detail, type: types[p.sort], boost: -i / 10, apply: put(p.text, p.sort === "line"), info: p.doc ? () => words(p.doc) : undefined,
        })),
      };
    };
    const hover = hoverTooltip(async (view, pos) => {
      const a = await ask({ask: "hover", at: pos});
      return a?.words ? {pos: a.from, end: a.to, create: () => ({dom: words(a.words)})} : null;
    });
    const define = (view) => {
      ask({ask: "definition", at: view.state.selection.main.head}).then((a) => a?.file && go(a.file, a.from, a.to));
      return true;
    };
    const show = (view) => { // what stands at the cursor, for those who have no mouse
      const at = view.state.selection.main.head;
      ask({ask: "hover", at}).then((a) => a?.words && this.onwords?.(a.words));
      return true;
    };
    this.extensions = [
      lineNumbers(), lintGutter(), history(), drawSelection(), highlightActiveLine(), bracketMatching(), closeBrackets(), indentUnit.of("  "), indent, search({top: true}),
      autocompletion({override: [complete]}), hover, tokenMarks, hintMarks, look, EditorView.lineWrapping,
      EditorView.contentAttributes.of({"aria-label": "The text of the batch", tabindex: "0", spellcheck: "false", autocapitalize: "off", autocorrect: "off"}),
      keymap.of([{key: "F12", run: define}, {key: "Ctrl-F1", run: show}, ...closeBracketsKeymap, ...completionKeymap, ...searchKeymap, ...lintKeymap, ...historyKeymap, ...defaultKeymap]),
      EditorView.updateListener.of((u) => {
        if (u.docChanged) changed(u.state.doc.toString());
        if ((u.docChanged || u.selectionSet) && !this.sliding) moved(u.state.selection.main.head);
      }),
    ];
    this.moved = moved;
    this.view = new EditorView({parent, root, state: this.#state("")});
    this.states = new Map();
  }

  #state(doc) { return EditorState.create({doc, extensions: this.extensions}); }

  // open shows a file. What can be undone in it stays with it.
  open(name, text) {
    if (this.name !== undefined) this.states.set(this.name, this.view.state);
    const kept = this.states.get(name);
    this.view.setState(kept && kept.doc.toString() === text ? kept : this.#state(text));
    this.name = name;
    this.moved(this.view.state.selection.main.head);
  }

  // rename keeps what can be undone in the file that is shown, and drop forgets it.
  rename(name) { this.name = name; }
  drop() {
    this.states.delete(this.name);
    this.name = undefined;
  }

  forget() { this.states.clear(); this.name = undefined; }

  // replace puts a text in the place of the one that is shown, so that it can be undone.
  replace(text, from = 0, to = this.view.state.doc.length) {
    this.view.dispatch({changes: {from, to, insert: text}, userEvent: "input"});
  }

  // slide puts texts in the place of some parts, in one step that can be undone, and gives
  // where they stand then. What is slid without a pause is undone at once. It is null where
  // something else stands there by now. No word is proposed, as there is where one types.
  slide(parts, were, texts) {
    if (parts.some(({from, to}, i) => this.view.state.sliceDoc(from, to) !== were[i])) return null;
    const tr = this.view.state.update({changes: parts.map(({from, to}, i) => ({from, to, insert: texts[i]}))});
    this.sliding = true;
    this.view.dispatch(tr);
    this.sliding = false;
    return parts.map(({from, to}) => ({from: tr.changes.mapPos(from, -1), to: tr.changes.mapPos(to, 1)}));
  }

  undo() { undo(this.view); }
  redo() { redo(this.view); }
  focus() { this.view.focus(); }

  select(from, to) {
    const most = this.view.state.doc.length;
    this.view.dispatch({selection: {anchor: Math.min(from, most), head: Math.min(to, most)}, scrollIntoView: true});
    this.view.focus();
  }

  tokens(list) { this.view.dispatch({effects: setTokens.of(list)}); }
  hints(list) { this.view.dispatch({effects: setHints.of(list)}); }

  say(list, fix) {
    const most = this.view.state.doc.length;
    this.view.dispatch(setDiagnostics(this.view.state, list.map((d) => ({
      from: Math.min(d.from, most), to: Math.min(d.to, most), severity: d.severity === "note" ? "info" : d.severity,
      message: [d.summary, d.help, d.reason && "why: " + d.reason].filter(Boolean).join("\n") + `\n(${d.code})`,
      actions: d.fix ? [{name: d.fix.label, apply: () => fix(d.fix)}] : [],
    }))));
  }
}
