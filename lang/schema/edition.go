package schema

// Edition is the newest edition of the language that this program knows.
const Edition = 1

// EditionLine is the line with the edition of the language, in house.batch.
var EditionLine = &Field{
	Name: "newmake", Shape: "NUMBER", Example: "newmake 1", Limits: []Limit{mustBe(1, 1000, "editions are counted from 1")},
	Doc: "The edition of the language, in house.batch alone, so that a file still means the same in twenty years.",
}
