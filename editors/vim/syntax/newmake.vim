" Vim syntax file: newmake batches (*.batch).
" Made by go test ./editors/highlight -update from the checker's tables: do not edit.

if exists('b:current_syntax')
  finish
endif
syntax case match
syntax iskeyword @,48-57,_,-,192-255

syntax match newmakeError /\v[:;=()\[\]*+<>~\\'|&!?^@`]/
syntax match newmakeName /\v\k+/
syntax match newmakePunctuation /[{},\/]/
syntax match newmakeOption /\v<%(add|again|against|all|apr|aug|backset|backset-pH|backset-solids|bags|because|blend|boil|bottling|cask|char|charge|charred|coil|cold-liquor|column|cool|cooled|covered|dap|dec|dip|distillate|dose|drain|dry|duo-trio|elements|every|feb|feints|fermenter|fills|flow|fri|full|gravity|gross|hardness|heads|hearts|heat|hectolitres|hot|hot-liquor|it|jacket|jan|jul|jun|kept|lactic|liquefying|litres|live-steam|low-wines|malted|mar|mash|may|moisture|mon|new|new-make|next|no|nose|nov|oak|oct|one|or|own|pH|paired|pallets|part|phosphoric|pot|pot-ale|pressed|proof|ranking|ranks|ready|receiver|reduced|rest|row|run|saccharifying|sample|sat|season|sep|si|some|spirit|spout|starch|strength|sulfuric|sun|tails|tank|tare|temperate|temperature|the|thu|tier|triangle|true|tue|uncharred|under|unmalted|up|urea|us|used|vapour|vat|viscosity|volume|wait|warm|wash|water|weak-worts|wed|weight|worts|written|yes|yet)>/
syntax match newmakeConnective /\v<%(about|any|as|at|by|for|from|in|least|lot|most|none|of|on|over|to|with|within)>/

" A word by its place: at the start of a line, or after the brace of a block of
" one line. What comes later here goes before what came earlier.
syntax match newmakeField /\v%(^\s+|\{\s*)@<=%(acid|activity|age|agitator|air|alcohol-lost|alpha|ambient|antifoam|at|backset-pH|backset-solids|biomass-per-ethanol|boiler|bottle|bottled|bottles|broken|bushel|by|calls|carrying|casks|cause|cereal|charge|charges|charred|checked|clean|climate|closed|compare|condenser|cools|corrected|count|country|counts|crew|currency|death|death-energy|destroyed|dies-above|dig|discarded|distilled|does|elevation|emptied|energy|entry|enzymes|ethanol-energy|ethanol-limit|ethanol-yield|excise|expecting|extract|feints|fills|fire|first-drop|for|foreshots|form|from|gauge|gelatinizes|grain|grain-in|growth|growth-at|growth-energy|gypsum|half-life|half-saturation|heads|hearts|heat-up|heated|heating-surface|heats|hold|holds|inhibition-power|into|kept|label|lag|law|leaked|lees|left|lime|limit-dextrinase|loses|loss|loss-first-year|lost|low-wines|made-in|make|malted|maltotriose|metal|method|mill|model|moisture|most|not|note|nutrient|off|off-still|optimum|order|pH|parts|pitch|pot-ale|power|preheater|promise|pump|range|reads|records|reduce|reflux|rehydrate|remove|roasted|rows|samples|scale|sets|sheet|shift|sizes|soak|solids|solubles|source|standard|starch|start|stop|stopped|sugars|tails|tare|tasters|test|tiers|title|to|toasted|together|tolerance|topped|tree|units|used-cask|verdict|viable|viscous|water-in|with|withdrawn|without|wood|work|wort-cooler|yield-biomass|yield-biomass-ethanol|zone)>/
syntax match newmakeStep /\v%(^\s+|\{\s*)@<=%(add|backset|boil|cool|dose|drain|heat|recirculate|rest|sparge|water)>/
syntax match newmakeBlock /\v%(^\s+|\{\s*)@<=%(after|before|bill|cask|cooker|costs|ferment|fermenter|fill|mash|pace|rack-house|rates|replace|spirit|still|strip|tank|used)>/
syntax match newmakeDeclaration /\v^%(newmake|plant|batch|run|instrument|grain|yeast|enzyme|wood|standard|country|aroma|model|learned|cask|round|tasting|trial|vat|bottling|store|season)>/

syntax match newmakeError /\v-?%(\d+%([.,]\d+)+|\.\d+)/
syntax match newmakeNumber /\v-?%([1-9]\d{0,2}%(,\d{3})+|\d+)%(\.\d+)?%([.,]?\d)@!/ nextgroup=newmakeUnit,newmakeRange skipwhite
syntax match newmakeRange /\.\./ contained nextgroup=newmakeNumber skipwhite
syntax match newmakeUnit /\v%(gal\/distillers-bushel|distillers-bushels|distillers-bushel|proof\s+gallons|proof-gallons|BTU\/h\/ft²\/F|BTU\/h\/sqft\/F|proof\s+gallon|proof-gallon|BTU\/h\/ft2\/F|\%\s+of\s+grain|proof\/year|LPA\/tonne|boiler-hp|kg\/bushel|lb\/bushel|lpa\/tonne|proof\s+gal|proof-gal|°Lintner|°lintner|ºLintner|ºlintner|BTU\/lb\/F|kg\/tonne|proof\/yr|Lintner|W\/m²\/K|bushels|g\/tonne|gal\/min|gallons|imp\s+gal|imp-gal|kJ\/kg\/C|kJ\/kg\/K|lintner|minutes|percent|proof\/y|seconds|°C\/min|°F\/min|ºC\/min|ºF\/min|\%\/year|BTU\/lb|J\/kg\/C|J\/kg\/K|W\/m2\/C|W\/m2\/K|bushel|gal\/lb|gallon|kJ\/mol|kg\/min|kg\/m³|lb\/gal|lb\/min|lb\/ton|liters|litres|meters|metres|minute|months|ounces|oz\/gal|pounds|quarts|second|tonnes|\%\s+abv|\%\s+abw|\%\s+vol|BTU\/h|C\/min|F\/min|J\/mol|K\/min|L\/min|LPA\/t|fl\s+oz|fl-oz|g\/gal|gal\/h|hours|kJ\/kg|kg\/bu|kg\/hL|kg\/hl|kg\/m3|l\/min|lb\/bu|liter|litre|lpa\/t|meter|metre|month|m³\/h|ounce|pints|plato|pound|proof|qt\/lb|quart|sq-ft|tonne|weeks|years|°C\/h|°F\/h|ºC\/h|ºF\/h|\%\/yr|\%abv|\%abw|\%vol|\/day|\/min|J\/kg|L\/kg|days|feet|foot|ft²|g\/hL|g\/hl|g\/kg|hour|inHg|kg\/h|kg\/t|l\/kg|lb\/h|m3\/h|mL\/g|mg\/L|mg\/l|ml\/g|pint|sqft|tons|week|year|°WK|ºWK|\%\/y|BHP|BTU|C\/h|F\/h|J\/g|K\/h|L\/h|LPA|bar|bhp|day|ft2|g\/L|g\/l|g\/t|gal|gpm|hrs|kPa|kWh|l\/h|lbs|lpa|min|m²|m³|ppm|psi|sec|t\/h|ton|yrs|°C|°F|°P|ºC|ºF|ºP|\/h|\/s|DU|MJ|MW|PG|Pa|SG|WK|bu|cL|cl|ft|hL|hl|hr|kJ|kW|kg|lb|m2|m3|mL|mg|ml|oz|pH|pg|pt|qt|sg|wk|yr|\%|C|F|J|K|L|W|d|g|h|l|m|s|t|y|\u{3}%(\/\a\k*)*)%(\k|\/)@!/ contained
syntax match newmakeDate /\v\d{4}-\d{2}-\d{2}\d@!/
syntax match newmakeTime /\v[-+]?\d{1,2}:\d{2}%(:\d{2})?\d@!/

syntax match newmakeError /".*$/
syntax region newmakeString start=/\v"%(%([^"\\]|\\.)*")@=/ skip=/\\./ end=/"/ oneline contains=newmakeEscape,newmakeBadEscape
syntax match newmakeBadEscape /\\./ contained
syntax match newmakeEscape /\\["\\nt]/ contained
syntax match newmakeComment /#.*$/ contains=newmakeTodo,@Spell
syntax keyword newmakeTodo TODO FIXME contained

highlight default link newmakeDeclaration Structure
highlight default link newmakeBlock Keyword
highlight default link newmakeStep Function
highlight default link newmakeField Identifier
highlight default link newmakeConnective Operator
highlight default link newmakeOption Constant
highlight default link newmakeName Normal
highlight default link newmakeNumber Number
highlight default link newmakeRange Operator
highlight default link newmakeUnit Type
highlight default link newmakeDate Number
highlight default link newmakeTime Number
highlight default link newmakeString String
highlight default link newmakeEscape SpecialChar
highlight default link newmakeBadEscape Error
highlight default link newmakeComment Comment
highlight default link newmakeTodo Todo
highlight default link newmakePunctuation Delimiter
highlight default link newmakeError Error

let b:current_syntax = 'newmake'
