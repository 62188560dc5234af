// The thin client: it starts `newmake lsp`, and shows what the server's commands give.
// Nothing is computed here.
const vscode = require('vscode');
const { LanguageClient } = require('vscode-languageclient/node');

const plans = 'newmake-plan';
let client;

exports.activate = async context => {
  const texts = new Map();
  const changed = new vscode.EventEmitter();
  context.subscriptions.push(
    vscode.workspace.registerTextDocumentContentProvider(plans, {
      onDidChange: changed.event,
      provideTextDocumentContent: uri => texts.get(uri.toString()) ?? '',
    }),
    vscode.workspace.onDidSaveTextDocument(doc => doc.languageId === 'newmake' && again()),
    vscode.commands.registerCommand('newmake.preview', async () => {
      const doc = vscode.window.activeTextEditor?.document;
      const lenses = doc && await client.sendRequest('textDocument/codeLens', { textDocument: { uri: doc.uri.toString() } });
      const first = lenses?.find(l => l.command.command === 'newmake.sheet');
      if (!first) return vscode.window.showInformationMessage('No batch here that can be planned.');
      await run('newmake.sheet', first.command.arguments);
    }),
  );

  let panel, shown;
  const sheet = html => {
    if (!panel) {
      panel = vscode.window.createWebviewPanel('newmake-sheet', 'Run sheet', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, {});
      panel.onDidDispose(() => { panel = shown = undefined; });
    }
    panel.webview.html = html; // it forbids scripts itself, and the panel allows none
  };
  const again = () => panel && shown && client.sendRequest('workspace/executeCommand', { command: 'newmake.sheet', arguments: shown })
    .then(html => html && sheet(html));
  const show = async (command, args, given) => {
    if (!given) return;
    if (command === 'newmake.sheet') {
      shown = args;
      return sheet(given);
    }
    const uri = vscode.Uri.from({ scheme: plans, path: `/${args[1]}.txt` });
    texts.set(uri.toString(), given);
    changed.fire(uri);
    await vscode.window.showTextDocument(uri, { viewColumn: vscode.ViewColumn.Beside, preview: true });
  };
  const run = async (command, args) => show(command, args, await client.sendRequest('workspace/executeCommand', { command, arguments: args }));

  const command = vscode.workspace.getConfiguration('newmake').get('path') || 'newmake';
  client = new LanguageClient('newmake', 'newmake', { command, args: ['lsp'] }, {
    documentSelector: [{ language: 'newmake' }],
    initializationOptions: { results: true },
    synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.batch') },
    middleware: {
      executeCommand: async (command, args, next) => {
        const given = await next(command, args);
        await show(command, args, given);
        return given;
      },
    },
  });
  context.subscriptions.push(vscode.tasks.registerTaskProvider('newmake', {
    provideTasks: () => ['check', 'plan'].map(task => made({ type: 'newmake', task })),
    resolveTask: t => made(t.definition),
  }));
  const made = definition => new vscode.Task(
    definition, vscode.TaskScope.Workspace, `${definition.task} this file`, 'newmake',
    new vscode.ProcessExecution(command, [definition.task, '${file}']), '$newmake');
  await client.start();
};

exports.deactivate = () => client?.stop();
