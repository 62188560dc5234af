" Writes, for each file named in $FILES, a JSON line of {file, lines}: for every
" line the name of the syntax group of each of its bytes. vim -es -u this-file.
set nocompatible encoding=utf-8
let s:here = expand('<sfile>:p:h')
let &runtimepath = s:here . '/../vim,' . &runtimepath
filetype plugin indent on
syntax on
let s:out = []
for s:file in split($FILES, "\n")
  execute 'edit ' . fnameescape(s:file)
  if &filetype !=# 'newmake'
    call writefile(['no filetype for ' . s:file], '/dev/stderr')
    cquit
  endif
  syntax sync fromstart
  let s:lines = []
  for s:row in range(1, line('$'))
    call add(s:lines, map(range(1, strlen(getline(s:row))), 'synIDattr(synID(s:row, v:val, 1), "name")'))
  endfor
  call add(s:out, json_encode({'file': s:file, 'lines': s:lines}))
endfor
call writefile(s:out, $OUT)
qall!
