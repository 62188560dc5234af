package engine

import _ "newmake/lang/testflag"
