// Reads file names from its arguments and prints, for each, a JSON line of
// {file, lines: [[[text, [scopes]], ...], ...]}: the tokens of the grammar.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

const require = createRequire(import.meta.url)
const textmate = require('vscode-textmate')
const oniguruma = require('vscode-oniguruma')

const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'))
await oniguruma.loadWASM(wasm)
const grammarFile = new URL('../vscode/syntaxes/newmake.tmLanguage.json', import.meta.url)

const registry = new textmate.Registry({
  onigLib: Promise.resolve({
    createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
    createOnigString: (text) => new oniguruma.OnigString(text),
  }),
  loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile.pathname),
})
const grammar = await registry.loadGrammar('source.newmake')

for (const file of process.argv.slice(2)) {
  let state = textmate.INITIAL
  const lines = []
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state)
    state = ruleStack
    lines.push(tokens.map((t) => [line.slice(t.startIndex, t.endIndex), t.scopes]))
  }
  console.log(JSON.stringify({ file, lines }))
}
