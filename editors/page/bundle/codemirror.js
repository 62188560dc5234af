// What the page uses of CodeMirror 6. `npm ci && npm run build` here writes
// ../site/codemirror.js, which is committed as built.
export {EditorState, StateField, StateEffect, EditorSelection} from "@codemirror/state";
export {EditorView, Decoration, WidgetType, keymap, lineNumbers, hoverTooltip, drawSelection, highlightActiveLine} from "@codemirror/view";
export {history, defaultKeymap, historyKeymap, undo, redo} from "@codemirror/commands";
export {autocompletion, completionKeymap, closeBrackets, closeBracketsKeymap} from "@codemirror/autocomplete";
export {indentService, indentUnit, bracketMatching} from "@codemirror/language";
export {setDiagnostics, lintGutter, lintKeymap, nextDiagnostic} from "@codemirror/lint";
export {searchKeymap, search} from "@codemirror/search";
