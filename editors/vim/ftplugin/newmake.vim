" Vim settings for newmake batches.

if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal commentstring=#\ %s comments=:#
setlocal expandtab shiftwidth=2 softtabstop=2
setlocal iskeyword+=-
let b:undo_ftplugin = 'setlocal commentstring< comments< expandtab< shiftwidth< softtabstop< iskeyword<'

" :make checks the file, and the quickfix list holds what is wrong with it.
setlocal makeprg=newmake\ check\ %:S
setlocal errorformat=%f:%l:%c:\ %trror\ NM%n:\ %m,%f:%l:%c:\ %tarning\ NM%n:\ %m,%f:%l:%c:\ %tote\ NM%n:\ %m,%-G%.%#
let b:undo_ftplugin .= ' makeprg< errorformat<'
