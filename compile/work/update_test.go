package work

import _ "newmake/lang/goldenfile" // these tests write nothing anew, and know the flag
