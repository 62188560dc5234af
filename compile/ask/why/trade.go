package why

// inTrade gives a number the words of the reader's trade, and those below it.
func (a *asked) inTrade(n *Node) {
	say := func(texts ...*string) {
		for _, t := range texts {
			*t = a.u.Words(*t)
		}
	}
	say(&n.Title, &n.Note, &n.Model.Says, &n.Model.Valid)
	for i := range n.Work {
		say(&n.Work[i].Says)
		for j := range n.Work[i].Terms {
			say(&n.Work[i].Terms[j].What)
		}
	}
	for i := range n.From {
		say(&n.From[i].Title, &n.From[i].Note)
	}
	for i := range n.Off {
		say(&n.Off[i].Why)
	}
	for i := range n.Moves {
		say(&n.Moves[i].Input)
	}
	for i := range n.Nodes {
		a.inTrade(&n.Nodes[i])
	}
}
