// Run by .ci/clients: the extension's own code, with the API of the editor made up as far
// as it is used, and the real server behind it. The editor itself is not tried, nor the
// library's client, in whose place a plain one stands (protocol.mjs tries the library).
// NEWMAKE is the program, HOUSE a copy of the example house.
const Module = require('node:module');
const { spawn, spawnSync } = require('node:child_process');
const { readFileSync, writeFileSync } = require('node:fs');
const { pathToFileURL } = require('node:url');
const { createProtocolConnection, StreamMessageReader, StreamMessageWriter } = require('vscode-languageserver-protocol/node');

let failed = false;
const check = (ok, what) => { console.log(`${ok ? 'ok  ' : 'FAIL'} ${what}`); failed ||= !ok; };
const file = `${process.env.HOUSE}/ferry-landing.batch`;
const docOf = path => ({ languageId: 'newmake', uri: { toString: () => pathToFileURL(path).href } });

const commands = new Map(), panels = [], messages = [], shownTexts = [], saved = [];
let provider, tasks, client;
class EventEmitter {
  heard = [];
  event = f => this.heard.push(f);
  fire(x) { this.heard.forEach(f => f(x)); }
}
const vscode = {
  EventEmitter,
  ViewColumn: { Beside: -2 },
  TaskScope: { Workspace: 2 },
  Task: class { constructor(definition, scope, name, source, execution, matcher) { Object.assign(this, { definition, name, source, execution, matcher }); } },
  ProcessExecution: class { constructor(process, args) { Object.assign(this, { process, args }); } },
  Uri: { from: ({ scheme, path }) => ({ toString: () => `${scheme}:${path}` }) },
  workspace: {
    registerTextDocumentContentProvider: (scheme, p) => { provider = p; return { scheme }; },
    onDidSaveTextDocument: f => saved.push(f),
    getConfiguration: () => ({ get: key => (key === 'path' ? process.env.NEWMAKE : undefined) }),
    createFileSystemWatcher: glob => ({ glob }),
  },
  window: {
    activeTextEditor: { document: docOf(file) },
    showInformationMessage: m => messages.push(m),
    showTextDocument: uri => shownTexts.push(uri.toString()),
    createWebviewPanel: (kind, title, where, options) => {
      const panel = { options, webview: {}, onDidDispose: f => { panel.dispose = f; } };
      panels.push(panel);
      return panel;
    },
  },
  commands: { registerCommand: (name, f) => commands.set(name, f) },
  tasks: { registerTaskProvider: (kind, t) => { tasks = t; return t; } },
};

// In the place of the library's client: it starts the server and asks it.
class LanguageClient {
  constructor(id, name, server, options) { Object.assign(this, { server, options }); client = this; }
  async start() {
    const p = spawn(this.server.command, this.server.args, { stdio: ['pipe', 'pipe', 'inherit'] });
    this.ended = new Promise(done => p.on('exit', done));
    this.c = createProtocolConnection(new StreamMessageReader(p.stdout), new StreamMessageWriter(p.stdin));
    this.c.listen();
    await this.c.sendRequest('initialize', { processId: process.pid, rootUri: pathToFileURL(process.env.HOUSE).href, initializationOptions: this.options.initializationOptions, capabilities: {} });
    this.c.sendNotification('initialized', {});
  }
  sendRequest(method, params) { return this.c.sendRequest(method, params); }
  async stop() {
    await this.c.sendRequest('shutdown');
    this.c.sendNotification('exit');
    return this.ended;
  }
}
const load = Module._load;
Module._load = (request, ...rest) => ({ vscode, 'vscode-languageclient/node': { LanguageClient } })[request] ?? load(request, ...rest);

(async () => {
  const extension = require('../../vscode/src/extension.js');
  const about = require('../../vscode/package.json');
  await extension.activate({ subscriptions: [] });
  check(about.contributes.commands.every(c => commands.has(c.command)), 'every command that is offered is there');
  const uri = pathToFileURL(file).href, text = readFileSync(file, 'utf8');
  client.c.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'newmake', version: 1, text } });

  await commands.get('newmake.preview')();
  const html = () => panels[0]?.webview.html ?? '';
  check(html().includes('Ferry Landing') && html().includes('Local code, permits and licensed practice come first'), 'the sheet stands beside the text, with the words on safety and law');
  check(!panels[0].options.enableScripts && !html().includes('<script'), 'no script is in it, and none may be');
  client.c.sendNotification('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: [{ text: text.replace('bill 790 lb', 'bill 811 lb') }] });
  await saved[0](docOf(file));
  for (let i = 0; i < 200 && !html().includes('811.0 lb'); i++) await new Promise(done => setTimeout(done, 50));
  check(html().includes('811.0 lb') && panels.length === 1, 'saved, the same sheet is made anew');

  const lenses = await client.sendRequest('textDocument/codeLens', { textDocument: { uri } });
  const plan = lenses.find(l => l.command.command !== 'newmake.sheet' && l.command.command);
  await client.options.middleware.executeCommand(plan.command.command, plan.command.arguments, (command, args) => client.sendRequest('workspace/executeCommand', { command, arguments: args }));
  check(shownTexts.length === 1 && provider.provideTextDocumentContent({ toString: () => shownTexts[0] }).includes('811'), 'a lens shows its plan as a text');

  vscode.window.activeTextEditor = { document: docOf(`${process.env.HOUSE}/house.batch`) };
  await commands.get('newmake.preview')();
  check(messages.length === 1 && panels.length === 1, 'where there is no batch, that is said');

  const offered = tasks.provideTasks();
  check(offered.map(t => t.definition.task).join() === about.contributes.taskDefinitions[0].properties.task.enum.join() && offered.every(t => t.matcher === '$newmake'), 'both tasks are offered, with their matcher');
  writeFileSync(file, text.replace('rest     20 min', 'rest     20 minuts'));
  const ran = spawnSync(offered[0].execution.process, offered[0].execution.args.map(a => a.replace('${file}', file)), { encoding: 'utf8' });
  const [pattern] = [about.contributes.problemMatchers[0].pattern].flat();
  const found = (ran.stdout + ran.stderr).split('\n').map(l => new RegExp(pattern.regexp).exec(l)).find(Boolean);
  check(found?.[pattern.file].endsWith('ferry-landing.batch') && found[pattern.severity] === 'error' && /^NM\d+$/.test(found[pattern.code]), 'what the task says is matched, with its place');

  check((await extension.deactivate()) === 0, 'it ends when it is told to');
  process.exit(failed ? 1 : 0);
})().catch(e => { console.error(e); process.exit(1); });
