autocmd BufRead,BufNewFile *.batch setfiletype newmake
