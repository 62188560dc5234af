// Package report turns what the stages gave into the parts of a plan. Nothing
// is computed here that a stage or a table of fluid could have told; what is
// counted is counted in the units in which a plan keeps it.
package report

import (
	"fmt"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// batchPart says which batch it is. Its start is for the schedule to say.
func batchPart(b *recipe.Batch) plan.Batch {
	out := plan.Batch{Name: b.Name, Parent: b.Parent, Chain: b.Chain, Changes: b.Changes, Units: "us"}
	if b.Units == recipe.SI {
		out.Units = "si"
	}
	if b.Standard != nil {
		out.Standard = b.Standard.Title
	}
	return out
}

// plantPart is where it is made, and the vessels that it uses.
func plantPart(n *numbers.Batch) plan.Plant {
	p, pressurePa := n.Plant, numbers.PressurePa(n.Batch)
	out := plan.Plant{
		Name: p.Name, ElevationM: p.ElevationM, PressureKPa: pressurePa / 1000,
		WaterBoilsC: fluid.WaterBoilC(pressurePa), WaterC: n.SupplyC(), HardnessPPM: p.HardnessPPM,
		AmbientC: p.AmbientC, BoilerKW: p.BoilerW / 1000, Crew: p.Crew, Zone: p.Zone,
		ShiftFrom: minuteOfDay(p.Shift.FromMinute), ShiftTo: minuteOfDay(p.Shift.ToMinute),
		ShiftDays: shiftDays(p.Shift),
	}
	for _, u := range n.Uses() {
		v := u.Vessel
		out.Vessels = append(out.Vessels, plan.Vessel{
			Name: v.Name, Kind: v.Kind.Word(), Use: u.Stage,
			HoldsL: v.HoldsM3 * lot.LitresPerM3, HeatKW: v.HeatsW / 1000, CoolKW: v.CoolsW / 1000,
			MostL: u.MostM3 * lot.LitresPerM3, FillPct: 100 * u.MostM3 / v.HoldsM3,
		})
	}
	return out
}

func minuteOfDay(m int) string { return fmt.Sprintf("%02d:%02d", m/60%24, m%60) }

func shiftDays(s recipe.Shift) []string {
	var out []string
	for i := 1; i <= 7; i++ { // Monday first
		if day := i % 7; s.Days[day] {
			out = append(out, dayNames[day])
		}
	}
	return out
}

var dayNames = [7]string{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"}
