// Run by .ci/editors: the protocol library of VS Code speaks with `newmake lsp`.
// NEWMAKE is the program, HOUSE a copy of the example house.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection, StreamMessageReader, StreamMessageWriter,
  InitializeRequest, InitializedNotification, ShutdownRequest, ExitNotification,
  DidOpenTextDocumentNotification, DidChangeTextDocumentNotification, PublishDiagnosticsNotification,
  HoverRequest, CompletionRequest, CodeActionRequest, CodeLensRequest, InlayHintRequest, RenameRequest,
  SemanticTokensRequest, SignatureHelpRequest, DocumentLinkRequest, DocumentDiagnosticRequest,
  DocumentSymbolRequest, FoldingRangeRequest, ExecuteCommandRequest,
  InlayHintRefreshRequest, CodeLensRefreshRequest, DiagnosticRefreshRequest,
} from 'vscode-languageserver-protocol/node';

let failed = false;
const check = (ok, what) => { console.log(`${ok ? 'ok  ' : 'FAIL'} ${what}`); failed ||= !ok; };
const server = spawn(process.env.NEWMAKE, ['lsp'], { stdio: ['pipe', 'pipe', 'inherit'] });
const ended = new Promise(done => server.on('exit', done));
const c = createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
const pushed = new Map();
c.onNotification(PublishDiagnosticsNotification.type, p => pushed.set(p.uri, p.diagnostics));
for (const r of [InlayHintRefreshRequest, CodeLensRefreshRequest, DiagnosticRefreshRequest]) c.onRequest(r.type, () => null);
c.listen();

const uri = pathToFileURL(`${process.env.HOUSE}/ferry-landing.batch`).href;
const text = readFileSync(new URL(uri), 'utf8');
const at = words => {
  const i = text.indexOf(words) + words.length;
  const before = text.slice(0, i).split('\n');
  return { textDocument: { uri }, position: { line: before.length - 1, character: before.at(-1).length } };
};
const whole = { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: { line: 1e5, character: 0 } } };

const hello = await c.sendRequest(InitializeRequest.type, {
  processId: process.pid, rootUri: pathToFileURL(process.env.HOUSE).href,
  initializationOptions: { results: true },
  capabilities: {
    general: { positionEncodings: ['utf-8', 'utf-16'] },
    textDocument: { diagnostic: {}, completion: { completionItem: { snippetSupport: true } } },
    workspace: { diagnostics: { refreshSupport: true }, inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
  },
});
check(hello.capabilities.positionEncoding === 'utf-8', 'columns are counted as was offered');
c.sendNotification(InitializedNotification.type, {});
c.sendNotification(DidOpenTextDocumentNotification.type, { textDocument: { uri, languageId: 'newmake', version: 1, text } });
const pull = async () => (await c.sendRequest(DocumentDiagnosticRequest.type, { textDocument: { uri } })).items;
check((await pull()).length === 0, 'nothing is said of the example');
const change = (version, now) => c.sendNotification(DidChangeTextDocumentNotification.type, { textDocument: { uri, version }, contentChanges: [{ text: now }] });
change(2, text.replace('rest     45 min', 'rest     45'));
const wrong = await pull();
check(wrong.some(d => d.code === 'NM0303'), 'a number without its unit is said');
change(3, text.replace('rest     20 min', 'rest     20 minuts'));
const [typo] = await pull();
const actions = await c.sendRequest(CodeActionRequest.type, { textDocument: { uri }, range: typo.range, context: { diagnostics: [typo] } });
check(actions.some(a => a.edit), 'a fix is offered');
change(4, text);
check((await c.sendRequest(HoverRequest.type, at('to 190'))).contents.value.includes('87.8 C'), 'hover gives the other units');
check((await c.sendRequest(CompletionRequest.type, at('rest     45 '))).some(i => i.label === 'min'), 'completion gives the units of a time');
check((await c.sendRequest(SignatureHelpRequest.type, at('rest     '))).signatures[0].label.startsWith('rest'), 'the form of a line is shown');
check((await c.sendRequest(InlayHintRequest.type, whole)).some(h => h.label.includes('proof')), 'predictions stand beside the lines');
check((await c.sendRequest(CodeLensRequest.type, whole)).some(l => l.command.command === 'newmake.plan'), 'a lens leads to the plan');
check((await c.sendRequest(SemanticTokensRequest.type, whole)).data.length > 100, 'tokens are told');
check((await c.sendRequest(DocumentLinkRequest.type, whole)).length > 0, 'names lead to the house');
check((await c.sendRequest(DocumentSymbolRequest.type, whole)).length === 2, 'the outline has both batches');
check((await c.sendRequest(FoldingRangeRequest.type, whole)).length > 3, 'blocks can be folded');
check(Object.keys((await c.sendRequest(RenameRequest.type, { ...at('batch "Ferry'), newName: 'Mill Race' })).changes).length >= 2, 'a batch is renamed in all of the house');
const sheet = await c.sendRequest(ExecuteCommandRequest.type, { command: 'newmake.sheet', arguments: [uri, 'Ferry Landing'] });
check(sheet.includes('<!DOCTYPE html>'), 'the sheet can be had');
await c.sendRequest(ShutdownRequest.type);
c.sendNotification(ExitNotification.type);
check(await ended === 0, 'it ends when it is told to');
process.exit(failed ? 1 : 0);
