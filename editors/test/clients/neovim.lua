-- Run by .ci/editors: Neovim speaks with `newmake lsp`. Works from 0.7 on.
-- NEWMAKE is the program, HOUSE a copy of the example house.
local house = os.getenv('HOUSE')
local failed = false
local function check(ok, what)
  print((ok and 'ok   ' or 'FAIL ') .. what)
  failed = failed or not ok
end
local function wait(what, ready)
  check(vim.wait(20000, ready, 20), what)
end

vim.opt.runtimepath:append(os.getenv('VIMFILES'))
vim.cmd('filetype plugin on')
vim.cmd('edit ' .. house .. '/ferry-landing.batch')
check(vim.bo.filetype == 'newmake', 'the file is known by its ending')
local id = vim.lsp.start_client({ name = 'newmake', cmd = { os.getenv('NEWMAKE'), 'lsp' }, root_dir = house })
vim.lsp.buf_attach_client(0, id)
local client = vim.lsp.get_client_by_id(id)
wait('the server is ready', function() return client.initialized end)

local function line(words)
  for i, l in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
    local at = l:find(words, 1, true)
    if at then return i, at - 1 + #words - 1, l end
  end
  error('no line has ' .. words)
end
local function ask(method, words, more)
  local row, col = line(words)
  vim.api.nvim_win_set_cursor(0, { row, col })
  local params = vim.tbl_extend('force', vim.lsp.util.make_position_params(0, client.offset_encoding), more or {})
  for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, 20000) or {}) do
    return answer.result
  end
end

-- A mistake is said where it is made, and gone when it is mended.
local row = line('rest     45 min')
local was = vim.api.nvim_buf_get_lines(0, row - 1, row, false)[1]
vim.api.nvim_buf_set_lines(0, row - 1, row, false, { (was:gsub(' min', '')) })
local function codes()
  local out = {}
  for _, d in ipairs(vim.diagnostic.get(0)) do
    if d.lnum == row - 1 then out[#out + 1] = d.code or (d.user_data and d.user_data.lsp and d.user_data.lsp.code) or d.message end
  end
  return table.concat(out, ' ')
end
wait('a number without its unit is said', function() return codes():find('NM0303') ~= nil end)
vim.api.nvim_buf_set_lines(0, row - 1, row, false, { was })
wait('mended, nothing is said', function() return #vim.diagnostic.get(0) == 0 end)

local hover = ask('textDocument/hover', 'to 190')
check(hover and hover.contents.value:find('87.8 C', 1, true) ~= nil, 'hover gives the other units')
local found = ask('textDocument/completion', 'rest     45 ')
check(found and vim.tbl_contains(vim.tbl_map(function(i) return i.label end, found.items or found), 'min'), 'completion gives the units of a time')
local there = ask('textDocument/definition', 'mash in "Copper')
check(there and there[1] and there[1].uri:find('house.batch', 1, true) ~= nil, 'a vessel leads to the house')
local hints = vim.lsp.buf_request_sync(0, 'textDocument/inlayHint', {
  textDocument = vim.lsp.util.make_text_document_params(),
  range = { start = { line = 0, character = 0 }, ['end'] = { line = 10000, character = 0 } },
}, 20000)
local said = ''
for _, answer in pairs(hints or {}) do
  for _, h in ipairs(answer.result or {}) do said = said .. h.label .. '\n' end
end
check(said:find('proof', 1, true) ~= nil, 'predictions stand beside the lines')
local edits = ask('textDocument/rename', 'batch "Ferry', { newName = 'Mill Race' })
if edits then vim.lsp.util.apply_workspace_edit(edits, client.offset_encoding) end
check(pcall(line, 'batch "Mill Race"'), 'a batch is renamed')
local action = vim.lsp.buf_request_sync(0, 'textDocument/formatting', { textDocument = vim.lsp.util.make_text_document_params(), options = { tabSize = 2, insertSpaces = true } }, 20000)
check(next(action or {}) ~= nil, 'the layout is answered')
vim.lsp.stop_client(id)
vim.cmd(failed and 'cquit' or 'qall!')
