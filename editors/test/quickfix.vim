" Reads $MESSAGES as :make would and writes the quickfix list as JSON to $OUT.
set nocompatible encoding=utf-8
let s:here = expand('<sfile>:p:h')
let &runtimepath = s:here . '/../vim,' . &runtimepath
filetype plugin on
setfiletype newmake
let &g:errorformat = &l:errorformat " which :make uses, and cgetexpr does not
cgetexpr readfile($MESSAGES)
call writefile([json_encode(filter(getqflist(), 'v:val.valid'))], $OUT)
qall!
