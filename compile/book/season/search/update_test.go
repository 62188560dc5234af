package search

import _ "newmake/lang/testflag" // the switches of the tests
