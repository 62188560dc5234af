package made

import "newmake/lang/record"

// Hearts is where a run's hearts were gauged, for all who count what it made: at the fill if
// they were gauged again there, else in the spirit run; "" if nowhere. The lines that gauge
// them are those of the word hearts with readings, of that stage.
func Hearts(run *record.Run) (stage record.StageName, lines []*record.Visit) {
	for i := range run.Visits {
		v := &run.Visits[i]
		if v.Word != "hearts" || len(v.Read) == 0 {
			continue
		}
		switch at := run.Stages[v.Stage].Name; {
		case at == stage:
			lines = append(lines, v)
		case at == record.Fill, at == record.Spirit && stage == "":
			stage, lines = at, []*record.Visit{v}
		}
	}
	return stage, lines
}
