" Vim settings for newmake batches.

if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal commentstring=#\ %s comments=:#
setlocal expandtab shiftwidth=2 softtabstop=2
setlocal iskeyword+=-
let b:undo_ftplugin = 'setlocal commentstring< comments< expandtab< shiftwidth< softtabstop< iskeyword<'

" :make checks the file, and the quickfix list holds what is wrong with it and what
" to do. The lines of the text that a message shows are left out.
setlocal makeprg=newmake\ check\ %:S
setlocal errorformat=%E%f:%l:%c:\ %trror\ NM%n:\ %m,%W%f:%l:%c:\ %tarning\ NM%n:\ %m,%N%f:%l:%c:\ %tote\ NM%n:\ %m
setlocal errorformat+=%-C\ %#│%.%#,%-C\ %#\|%.%#,%-C%*\\d\ │%.%#,%-C%*\\d\ \|%.%#
setlocal errorformat+=%C\ %#=\ %m,%C\ \ \ \ \ \ %#%m,%-Z,%-G%.%#
let b:undo_ftplugin .= ' makeprg< errorformat<'

" = lays out, and gg=G the whole file. Text with a mistake in it stays as it is.
let &l:equalprg = 'newmake fmt - ' . (has('win32') ? '2>NUL' : '2>/dev/null')
let b:undo_ftplugin .= ' equalprg<'
