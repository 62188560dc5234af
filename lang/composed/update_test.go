package composed

import _ "newmake/lang/testflag" // these tests write nothing anew, and know the switches
