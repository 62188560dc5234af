package diag

// The codes of the checker: fields, the house, and the trade. What only the plan
// can know stands in computed.go.
const (
	CodeShape       Code = "NM0401"
	CodeMissing     Code = "NM0402"
	CodeTwice       Code = "NM0403"
	CodeNoBlock     Code = "NM0404"
	CodeBlockHere   Code = "NM0405"
	CodeNoSuchWord  Code = "NM0406"
	CodeOutOfRange  Code = "NM0407"
	CodeUnusual     Code = "NM0408"
	CodeWholeNumber Code = "NM0409"
	CodeRangeTurned Code = "NM0410"
	CodeRemove      Code = "NM0411"
	CodeStepEdit    Code = "NM0412"
	CodeTooMany     Code = "NM0413"
	CodeMonths      Code = "NM0414"

	CodeNoHouse     Code = "NM0501"
	CodeNestedHouse Code = "NM0502"
	CodeLinkOut     Code = "NM0503"
	CodeUnreadable  Code = "NM0504"
	CodeEdition     Code = "NM0505"
	CodeNoPlant     Code = "NM0506"
	CodeNoVessel    Code = "NM0507"
	CodeWrongVessel Code = "NM0508"
	CodeShift       Code = "NM0509"
	CodePrice       Code = "NM0511"
	CodeLibrarySum  Code = "NM0512"
	CodeFileName    Code = "NM0513"

	CodeBillEmpty    Code = "NM0601"
	CodeBillSum      Code = "NM0602"
	CodeBillMixed    Code = "NM0603"
	CodeBillTotal    Code = "NM0604"
	CodeBillRest     Code = "NM0605"
	CodeBillNone     Code = "NM0606"
	CodeNoTestWeight Code = "NM0607"
	CodeNoSteps      Code = "NM0608"
	CodeNotInBill    Code = "NM0609"
	CodeAddedTwice   Code = "NM0610"
	CodeNothingToAdd Code = "NM0611"
	CodeNeverAdded   Code = "NM0612"
	CodeNothingIn    Code = "NM0613"
	CodeHeatDown     Code = "NM0615"
	CodeCoolUp       Code = "NM0616"
	CodeRawStarch    Code = "NM0617"
	CodeEnzymesDie   Code = "NM0618"
	CodeNoEnzymes    Code = "NM0619"
	CodeWeakEnzymes  Code = "NM0620"
	CodeThickness    Code = "NM0621"
	CodeHotGrain     Code = "NM0622"
	CodeBackset      Code = "NM0623"
	CodeDose         Code = "NM0624"
	CodeEnzymeWindow Code = "NM0625"
	CodeSetsSolid    Code = "NM0626"
	CodeNoHeating    Code = "NM0627"
	CodeNoCooling    Code = "NM0628"
	CodeGums         Code = "NM0629"
	CodeIntoLiquor   Code = "NM0630"
	CodeBillLot      Code = "NM0631"

	CodeSetTemperature Code = "NM0701"
	CodePitchRate      Code = "NM0702"
	CodeHoldWindow     Code = "NM0703"
	CodeUrea           Code = "NM0704"
	CodeAsItFills      Code = "NM0705"
	CodeWetYeast       Code = "NM0706"

	CodeStopEarly    Code = "NM0802"
	CodeNoForeshots  Code = "NM0804"
	CodeCutBeyond    Code = "NM0805"
	CodeFeintsUnused Code = "NM0806"
	CodeCutNeedsPace Code = "NM0807"

	CodeCaskSize Code = "NM0901"
	CodeCharless Code = "NM0902"

	CodeLawGrain   Code = "NM1001"
	CodeLawEnzymes Code = "NM1002"
	CodeLawEntry   Code = "NM1004"
	CodeLawWood    Code = "NM1005"
	CodeLawRest    Code = "NM1006"
	CodeLawBottled Code = "NM1007"
	CodeLawAbroad  Code = "NM1008"

	CodeNoDay       Code = "NM1301"
	CodeTimeBack    Code = "NM1302"
	CodeNoHour      Code = "NM1303"
	CodeCorrection  Code = "NM1304"
	CodeImprobable  Code = "NM1305"
	CodeScale       Code = "NM1306"
	CodeTrueAlone   Code = "NM1307"
	CodeUndeclared  Code = "NM1308"
	CodeOverfull    Code = "NM1309"
	CodeFilledAgain Code = "NM1310"
	CodeNotAStep    Code = "NM1312"
	CodeRewritten   Code = "NM1313"
	CodeTrueOther   Code = "NM1314"
)

// checkTable lists the codes above in order, one a line.
var checkTable = []Info{
	{CodeShape, "wrong-shape", Error, "a line that does not have its shape"},
	{CodeMissing, "line-missing", Error, "a line that has to be there is not"},
	{CodeTwice, "line-twice", Error, "a line that may stand once stands twice"},
	{CodeNoBlock, "no-block", Error, "a word that needs a block has none"},
	{CodeBlockHere, "block-not-wanted", Error, "a block after a line that takes none"},
	{CodeNoSuchWord, "no-such-word", Error, "a word that is none of those allowed"},
	{CodeOutOfRange, "out-of-range", Error, "a value that cannot work"},
	{CodeUnusual, "unusual", Warning, "a value at which the trade would frown"},
	{CodeWholeNumber, "whole-number", Error, "a fraction where things are counted"},
	{CodeRangeTurned, "range-turned-round", Error, "a range that begins above its end"},
	{CodeRemove, "nothing-to-remove", Error, "a variant removes what is not there"},
	{CodeStepEdit, "step-edit", Error, "a variant's change of a step that can't be made"},
	{CodeTooMany, "too-many-lines", Error, "a block longer than any batch has"},
	{CodeMonths, "months-missing", Error, "a year of which some months are not written, or written twice"},

	{CodeNoHouse, "no-house", Error, "a file that belongs to no house"},
	{CodeNestedHouse, "house-in-a-house", Error, "a house inside a house"},
	{CodeLinkOut, "link-out", Error, "a link that leads out of the house"},
	{CodeUnreadable, "unreadable", Error, "a file that can't be read"},
	{CodeEdition, "edition", Error, "the edition of the language"},
	{CodeNoPlant, "no-plant", Error, "a batch without a plant"},
	{CodeNoVessel, "no-vessel", Error, "a plant without a vessel that is needed"},
	{CodeWrongVessel, "wrong-vessel", Error, "a vessel of another kind than is needed"},
	{CodeShift, "shift", Error, "a shift that ends before it begins"},
	{CodePrice, "price", Error, "a price of the wrong thing"},
	{CodeLibrarySum, "library-figures", Error, "figures of a library entry that can't all be true"},
	{CodeFileName, "file-name", Warning, "a file that is not read, for its name is not UTF-8"},

	{CodeBillEmpty, "empty-bill", Error, "a bill without grain"},
	{CodeBillSum, "bill-sum", Error, "a bill that does not come to its total"},
	{CodeBillMixed, "bill-mixed", Error, "shares and weights in one bill"},
	{CodeBillTotal, "bill-total", Error, "a bill in shares without a total"},
	{CodeBillRest, "bill-rest", Error, "two grains that take the rest of the bill"},
	{CodeBillNone, "none-of-it", Warning, "a grain in the bill with no weight"},
	{CodeNoTestWeight, "no-bushel-weight", Error, "bushels of a grain whose bushel has no weight"},
	{CodeNoSteps, "empty-mash", Error, "a mash in which nothing is done"},
	{CodeNotInBill, "not-in-the-bill", Error, "a grain added that the bill does not have"},
	{CodeAddedTwice, "added-twice", Error, "a grain added twice"},
	{CodeNothingToAdd, "nothing-to-add", Error, "all grain is in already"},
	{CodeNeverAdded, "never-added", Error, "a grain of the bill that never goes in"},
	{CodeNothingIn, "nothing-in-it", Error, "a step before anything is in the cooker"},
	{CodeHeatDown, "heat-downwards", Error, "heating to a lower temperature"},
	{CodeCoolUp, "cool-upwards", Error, "cooling to a higher temperature"},
	{CodeRawStarch, "raw-starch", Warning, "starch that is never hot enough to gelatinize"},
	{CodeEnzymesDie, "enzymes-die", Error, "malt in a mash that kills its enzymes"},
	{CodeNoEnzymes, "no-enzymes", Error, "starch with nothing to convert it"},
	{CodeWeakEnzymes, "weak-enzymes", Warning, "a grist with little power to convert"},
	{CodeThickness, "mash-thickness", Warning, "a mash that is very thick or thin"},
	{CodeHotGrain, "added-too-hot", Warning, "a grain added hotter than it should be"},
	{CodeBackset, "backset-share", Warning, "much or little backset"},
	{CodeDose, "dose", Warning, "a dose outside the maker's range"},
	{CodeEnzymeWindow, "enzyme-window", Warning, "an enzyme where it does not work"},
	{CodeSetsSolid, "sets-solid", Warning, "raw grain cooked with nothing to thin it"},
	{CodeNoHeating, "no-heating", Error, "heating in a vessel that can't heat"},
	{CodeNoCooling, "no-cooling", Error, "cooling in a vessel that can't cool"},
	{CodeGums, "gums", Note, "rye, oats or raw barley whose gums nothing thins"},
	{CodeIntoLiquor, "into-the-liquor", Note, "acid, gypsum or lime written among later steps"},
	{CodeBillLot, "lot-of-the-bill", Warning, "a lot of grain of which there is too little, or that is of another grain"},

	{CodeSetTemperature, "set-temperature", Error, "yeast pitched too hot or too cold"},
	{CodePitchRate, "pitch-rate", Warning, "much or little yeast"},
	{CodeHoldWindow, "hold-window", Warning, "a ferment held where the yeast is not well"},
	{CodeUrea, "urea", Error, "urea as food for the yeast"},
	{CodeWetYeast, "pressed-yeast-wetted", Error, "pressed yeast that is to be wetted"},
	{CodeAsItFills, "pitch-as-it-fills", Error, "yeast pitched as it fills, and no wort that runs in cold"},

	{CodeStopEarly, "stop-before-hearts-end", Error, "a run that stops within the hearts"},
	{CodeNoForeshots, "no-foreshots", Warning, "a spirit run that sets no foreshots aside"},
	{CodeCutBeyond, "cut-beyond", Error, "a strength that a pot still can't give"},
	{CodeFeintsUnused, "feints-not-taken", Warning, "feints in the house that the charge does not take"},
	{CodeCutNeedsPace, "cut-needs-a-pace", Error, "a cut by the clock after a fraction that has no flow"},

	{CodeCaskSize, "cask-size", Note, "a size in which that cask is not made"},
	{CodeCharless, "char-of-uncharred", Error, "a char on wood that is not charred"},

	{CodeLawGrain, "law-grain", Error, "a bill that the standard does not allow"},
	{CodeLawEnzymes, "law-enzymes", Error, "added enzymes that the standard does not allow"},
	{CodeLawEntry, "law-entry", Error, "an entry strength that the standard does not allow"},
	{CodeLawWood, "law-wood", Error, "a cask that the standard does not allow"},
	{CodeLawRest, "law-age", Error, "less time in wood than the standard asks"},
	{CodeLawBottled, "law-bottled", Error, "a bottling strength that the standard does not allow"},
	{CodeLawAbroad, "law-abroad", Note, "a standard of another country's law"},

	{CodeNoDay, "no-day", Error, "a clock of a record without its day"},
	{CodeTimeBack, "time-goes-back", Error, "a line of a record that is earlier than the one above it"},
	{CodeNoHour, "no-such-hour", Error, "a time that a change of the clocks leaves out, or gives twice"},
	{CodeCorrection, "correction", Error, "a correction that finds no value, or several"},
	{CodeImprobable, "improbable", Warning, "a reading that is hard to believe"},
	{CodeScale, "scale", Error, "a scale of an instrument that can't be"},
	{CodeTrueAlone, "true-alone", Error, "a true strength without the reading it was worked out from"},
	{CodeUndeclared, "instrument-unknown", Note, "an instrument that the house does not declare"},
	{CodeOverfull, "cask-overfull", Error, "a cask or a vat with more in it, or out of it, than it holds"},
	{CodeFilledAgain, "cask-filled-again", Note, "a cask that is filled a second time"},
	{CodeNotAStep, "not-a-step", Warning, "a step of a record that the recipe does not have"},
	{CodeRewritten, "record-rewritten", Warning, "what a record said when it was committed, and no longer says"},
	{CodeTrueOther, "true-strength", Warning, "a true strength that does not come of what was read"},
}
