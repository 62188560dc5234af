package glance_test

import _ "newmake/lang/testflag" // the golden files are written anew by its switch
