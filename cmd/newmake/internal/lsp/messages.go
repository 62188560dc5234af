package lsp

import "encoding/json"

// The messages of the Language Server Protocol 3.17 that are used, in as much of
// their shape as is.

type position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

type span struct {
	Start position `json:"start"`
	End   position `json:"end"`
}

type location struct {
	URI   string `json:"uri"`
	Range span   `json:"range"`
}

type textEdit struct {
	Range   span   `json:"range"`
	NewText string `json:"newText"`
}

type document struct {
	URI string `json:"uri"`
}

type initializeParams struct {
	ProcessID    *int `json:"processId"`
	Capabilities struct {
		General struct {
			PositionEncodings []string `json:"positionEncodings"`
		} `json:"general"`
		Workspace struct {
			InlayHint struct {
				RefreshSupport bool `json:"refreshSupport"`
			} `json:"inlayHint"`
			CodeLens struct {
				RefreshSupport bool `json:"refreshSupport"`
			} `json:"codeLens"`
			Diagnostics struct {
				RefreshSupport bool `json:"refreshSupport"`
			} `json:"diagnostics"`
			DidChangeWatchedFiles struct {
				DynamicRegistration bool `json:"dynamicRegistration"`
			} `json:"didChangeWatchedFiles"`
		} `json:"workspace"`
		Window struct {
			ShowDocument struct {
				Support bool `json:"support"`
			} `json:"showDocument"`
		} `json:"window"`
		TextDocument struct {
			Diagnostic *struct{} `json:"diagnostic"`
			Completion struct {
				CompletionItem struct {
					SnippetSupport bool `json:"snippetSupport"`
				} `json:"completionItem"`
			} `json:"completion"`
		} `json:"textDocument"`
	} `json:"capabilities"`
	InitializationOptions struct {
		// Results says that the editor itself shows what commands give. Else the server
		// asks it to open a file of that.
		Results bool `json:"results"`
	} `json:"initializationOptions"`
}

type didOpenParams struct {
	TextDocument struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
		Text    string `json:"text"`
	} `json:"textDocument"`
}

type didChangeParams struct {
	TextDocument struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
	} `json:"textDocument"`
	ContentChanges []struct {
		Range *span  `json:"range"`
		Text  string `json:"text"`
	} `json:"contentChanges"`
}

type documentParams struct {
	TextDocument document `json:"textDocument"`
}

type placeParams struct {
	TextDocument document `json:"textDocument"`
	Position     position `json:"position"`
	Context      struct {
		IncludeDeclaration bool `json:"includeDeclaration"`
	} `json:"context"`
}

type rangeParams struct {
	TextDocument document `json:"textDocument"`
	Range        span     `json:"range"`
}

type watchedParams struct {
	Changes []struct {
		URI string `json:"uri"`
	} `json:"changes"`
}

type cancelParams struct {
	ID json.RawMessage `json:"id"`
}

type relatedInformation struct {
	Location location `json:"location"`
	Message  string   `json:"message"`
}

type diagnostic struct {
	Range              span                 `json:"range"`
	Severity           int                  `json:"severity"`
	Code               string               `json:"code"`
	Source             string               `json:"source"`
	Message            string               `json:"message"`
	RelatedInformation []relatedInformation `json:"relatedInformation,omitempty"`
}

type publishParams struct {
	URI         string       `json:"uri"`
	Version     *int         `json:"version,omitempty"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

type markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

func markdown(text string) markup { return markup{"markdown", text} }

type hover struct {
	Contents markup `json:"contents"`
	Range    span   `json:"range"`
}

type completionItem struct {
	Label            string   `json:"label"`
	Kind             int      `json:"kind"`
	Detail           string   `json:"detail,omitempty"`
	Documentation    *markup  `json:"documentation,omitempty"`
	SortText         string   `json:"sortText"`
	FilterText       string   `json:"filterText,omitempty"`
	InsertTextFormat int      `json:"insertTextFormat"`
	TextEdit         textEdit `json:"textEdit"`
}

type documentSymbol struct {
	Name           string           `json:"name"`
	Detail         string           `json:"detail,omitempty"`
	Kind           int              `json:"kind"`
	Range          span             `json:"range"`
	SelectionRange span             `json:"selectionRange"`
	Children       []documentSymbol `json:"children,omitempty"`
}

type foldingRange struct {
	StartLine int    `json:"startLine"`
	EndLine   int    `json:"endLine"`
	Kind      string `json:"kind,omitempty"`
}

type codeAction struct {
	Title       string        `json:"title"`
	Kind        string        `json:"kind"`
	Diagnostics []diagnostic  `json:"diagnostics,omitempty"`
	IsPreferred bool          `json:"isPreferred,omitempty"`
	Edit        workspaceEdit `json:"edit"`
}

type workspaceEdit struct {
	Changes map[string][]textEdit `json:"changes"`
}

type inlayHint struct {
	Position    position `json:"position"`
	Label       string   `json:"label"`
	PaddingLeft bool     `json:"paddingLeft"`
	Tooltip     string   `json:"tooltip,omitempty"`
}

type renameParams struct {
	placeParams
	NewName string `json:"newName"`
}

type renameable struct {
	Range       span   `json:"range"`
	Placeholder string `json:"placeholder"`
}

type semanticTokens struct {
	Data []int `json:"data"`
}

type signatureHelp struct {
	Signatures      []signature `json:"signatures"`
	ActiveSignature int         `json:"activeSignature"`
	ActiveParameter int         `json:"activeParameter"`
}

type signature struct {
	Label         string      `json:"label"`
	Documentation *markup     `json:"documentation,omitempty"`
	Parameters    []parameter `json:"parameters"`
}

type parameter struct {
	Label [2]int `json:"label"`
}

type documentLink struct {
	Range  span   `json:"range"`
	Target string `json:"target"`
}

type codeLens struct {
	Range   span    `json:"range"`
	Command command `json:"command"`
}

type command struct {
	Title     string `json:"title"`
	Command   string `json:"command"`
	Arguments []any  `json:"arguments,omitempty"`
}

type executeParams struct {
	Command   string            `json:"command"`
	Arguments []json.RawMessage `json:"arguments"`
}

// report is what is said of a file, as an editor fetches it.
type report struct {
	Kind     string       `json:"kind"` // full, unchanged
	ResultID string       `json:"resultId"`
	Items    []diagnostic `json:"items,omitzero"`
}

type pullParams struct {
	TextDocument     document `json:"textDocument"`
	PreviousResultID string   `json:"previousResultId"`
}
