// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package sheet

import (
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
)

func writeBlocks(w *markup.Page, f says, d []block) {
	{
		v1 := d
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`
<div class="block">`)
			if v3.Kind == "notices" {
				w.Raw(`
<h3>Notices</h3>
<ul class="notices">`)
				{
					v4 := v3.Notices
					for v5 := range v4 {
						v6 := &v4[v5]
						w.Raw(`
<li><b>`)
						w.Text(v6.Severity)
						if v6.Line != 0 {
							w.Raw(`, line `)
							w.Int(v6.Line)
						}
						w.Raw(`:</b> `)
						w.Text(f.Trade(v6.Summary))
						{
							v7 := v6.Reason
							if v7 != "" {
								w.Raw(`: `)
								w.Text(f.Trade(v7))
							}
						}
						w.Raw(`.`)
						{
							v8 := v6.Help
							if v8 != "" {
								w.Raw(` To mend it: `)
								w.Text(f.Trade(v8))
								w.Raw(`.`)
							}
						}
						w.Raw(` (`)
						w.Text(v6.Code)
						w.Raw(`)</li>`)
					}
				}
				w.Raw(`
</ul>`)
			} else {
				if v3.Kind == "promises" {
					w.Raw(`
<h3>Promises</h3>
<ul class="verdicts">`)
					{
						v9 := v3.Promises
						for v10 := range v9 {
							v11 := &v9[v10]
							w.Raw(`
<li>`)
							v12 := v11.Stands()
							if v12 == "broken" {
								w.Raw(`<b class="bang">!</b> <b>NOT kept</b>`)
							} else {
								w.Raw(`<b>`)
								w.Text(v12)
								w.Raw(`</b>`)
							}
							w.Raw(`: `)
							w.Text(v11.What)
							{
								v13 := v11.Basis
								if v13 != "" {
									w.Raw(` (`)
									w.Text(v13)
									w.Raw(`)`)
								}
							}
							w.Raw(`, promised `)
							w.Text(f.Said(v11.Promised))
							if v11.Tolerance.Value != 0 {
								w.Raw(` `)
								w.Text(f.Off(v11.Tolerance))
							}
							{
								v14 := v11.Times
								if v14 != nil {
									w.Raw(` in `)
									w.Int(v14.Of)
									w.Raw(` of `)
									w.Int(v14.In)
									w.Raw(` runs`)
								}
							}
							w.Raw(`, should be `)
							w.Text(f.Said(v11.Found))
							{
								v15 := v11.Tried
								if v15 != nil {
									w.Raw(` (`)
									w.Text(v15.Words)
									w.Raw(`, `)
									w.Int(v15.Draws)
									w.Raw(` draws)`)
								}
							}
							w.Raw(`</li>`)
						}
					}
					w.Raw(`
</ul>`)
				} else {
					if v3.Kind == "law" {
						{
							v16 := v3.Law
							if v16 != nil {
								w.Raw(`
<h3>`)
								w.Text(v16.Title)
								w.Raw(`: `)
								w.Text(v16.Source)
								w.Raw(`. This is not legal advice.</h3>
<ul class="verdicts">`)
								{
									v17 := v16.Conditions
									for v18 := range v17 {
										v19 := &v17[v18]
										w.Raw(`
<li>`)
										if v19.Met == "NOT met" {
											w.Raw(`<b class="bang">!</b> `)
										}
										w.Raw(`<b>`)
										w.Text(v19.Met)
										w.Raw(`</b>: `)
										w.Text(v19.Asks)
										{
											v20 := v19.Found
											if v20 != "" {
												w.Raw(`; found `)
												w.Text(v20)
											}
										}
										{
											v21 := v19.Section
											if v21 != "" {
												w.Raw(` <span class="section">[`)
												w.Text(v21)
												w.Raw(`]</span>`)
											}
										}
										w.Raw(`</li>`)
									}
								}
								w.Raw(`
</ul>`)
							}
						}
					} else {
						if v3.Kind == "tanks" {
							w.Raw(`
<table class="list tanks">
<caption>Tanks: what waits in them at most, and what is left for the next batch</caption>
<thead><tr><th scope="col">tank</th><th scope="col">for</th><th scope="col">holds</th><th scope="col">at most</th><th scope="col">full to</th><th scope="col">when</th><th scope="col">left at the end</th></tr></thead>
<tbody>`)
							{
								v22 := v3.Tanks()
								for v23 := range v22 {
									v24 := &v22[v23]
									w.Raw(`
<tr><th scope="row">`)
									w.Text(v24.Name)
									w.Raw(`</th><td data-head="for">`)
									w.Text(f.Trade(v24.What))
									w.Raw(`</td><td class="short" data-head="holds">`)
									w.Text(f.Litres(v24.HoldsL))
									w.Raw(`</td><td class="short" data-head="at most">`)
									w.Text(f.Said(v24.Most()))
									w.Raw(`</td><td class="short" data-head="full to">`)
									w.Text(f.Num(v24.FillPct, 0))
									w.Raw(` %</td><td class="short">`)
									{
										v25 := v24.FullestAt
										if v25 != "" {
											w.Text(f.Weekday(v25))
											w.Raw(`, `)
											w.Text(f.Hm(v25))
										}
									}
									w.Raw(`</td><td class="short" data-head="left at the end">`)
									if v24.LeftL != 0 {
										w.Text(f.Said(v24.Left()))
									} else {
										w.Raw(`none`)
									}
									w.Raw(`</td></tr>`)
								}
							}
							w.Raw(`
</tbody>
</table>`)
						} else {
							if v3.Kind == "how" {
								w.Raw(`
<h3>How to fill in this sheet</h3>
<p>Tick the box when a step is done. A reading further off than the tolerance: find out why before going on. Write what the instrument says, the time, and your initials; the blanks stand in the order of the run record: time, what, value, temperature.
Gravity is read at `)
								w.Text(f.Temp(20.0))
								w.Raw(`; wash and spirit are counted, and strength gauged true, at `)
								w.Text(f.GaugeTemp())
								w.Raw(`: where it was read warmer or colder, write the temperature. Local code, permits and licensed practice come first; a sheet is no substitute.</p>`)
							} else {
								w.Raw(`
<h3>Words</h3>
<p>`)
								if f.Us() {
									w.Raw(`<b>Mash water</b>: all the water that is mashed with. <b>Backset</b>: stillage that goes into the next mash. <b>Stillage</b>: what stays in a still. <b>Spent grain</b>: what stays in the tun. <b>Spout</b>: where the spirit comes over, by a parrot or a safe`)
								} else {
									w.Raw(`<b>Liquor</b>: the water that is mashed with. <b>Grist</b>: milled grain. <b>Draff</b>: the grain that stays in the tun. <b>Pot ale</b> and <b>spent lees</b>: what stays in the wash still and in the spirit still. <b>Spout</b>: where the spirit comes over, in the safe`)
								}
								w.Raw(`. <b>Low wines</b>: what the first still gives. <b>Feints</b>: heads and tails, which go into the next charge.</p>`)
							}
						}
					}
				}
			}
			w.Raw(`
</div>`)
		}
	}
	w.Raw(`
`)
}

func writeCard(w *markup.Page, f says, d *view) {
	{
		v1 := d.Card
		if v1 != nil {
			w.Raw(`
<section id="card" aria-labelledby="card-head">
<h2 id="card-head">Proofing card: to `)
			w.Text(f.Strength(v1.Target))
			w.Raw(`</h2>
<p>Add water to spirit, never all at once. Stir, let it stand until the reading holds, then take reading and temperature together and find them below. Spirit and water are reckoned at `)
			w.Text(f.Temp(v1.RoomC))
			w.Raw(`; mixing warms them.</p>
<table class="card">
<caption>The water, step by step</caption>
<thead>
<tr><th scope="col" rowspan="2" class="tick">done</th><th scope="colgroup" colspan="2">add now</th><th scope="colgroup" colspan="2">water so far</th><th scope="colgroup" colspan="4">then there should be</th></tr>
<tr><th scope="col">volume</th><th scope="col">weight</th><th scope="col">volume</th><th scope="col">weight</th><th scope="col">volume</th><th scope="col">weight</th><th scope="col">`)
			if f.Us() {
				w.Raw(`proof`)
			} else {
				w.Raw(`% vol`)
			}
			w.Raw(`</th><th scope="col">it stands at</th></tr>
</thead>
<tbody>`)
			{
				v2 := v1.Steps
				for v3 := range v2 {
					v4 := &v2[v3]
					w.Raw(`
<tr><td class="tick">`)
					if v3 != 0 {
						w.Raw(`<span class="box"></span>`)
					}
					w.Raw(`</td>`)
					if v3 != 0 {
						w.Raw(`<td class="amount" data-head="add now">`)
						w.Text(f.Said(v4.Add()))
						w.Raw(`</td><td class="amount">`)
						w.Text(f.Mass(v4.AddScaleKg))
						w.Raw(`</td><td data-head="water so far">`)
						w.Text(f.Said(v4.Water()))
						w.Raw(`</td><td>`)
						w.Text(f.Mass(v4.WaterScaleKg))
						w.Raw(`</td>`)
					} else {
						w.Raw(`<td colspan="4">the hearts as they come</td>`)
					}
					w.Raw(`<td data-head="then there should be">`)
					w.Text(f.Volume(v4.Gives))
					w.Raw(`</td><td>`)
					w.Text(f.Mass(v4.GivesScaleKg))
					w.Raw(`</td><td class="amount" data-head="`)
					if f.Us() {
						w.Raw(`proof`)
					} else {
						w.Raw(`% vol`)
					}
					w.Raw(`">`)
					w.Text(f.Gauged(v4.Gives.Strength()))
					w.Raw(`</td><td data-head="it stands at">`)
					w.Text(f.Temp(v4.MixedC))
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>
<table class="card shows">
<caption>What a glass hydrometer shows, marked in `)
			if f.Us() {
				w.Raw(`proof at 60 F`)
			} else {
				w.Raw(`% vol at 20 C`)
			}
			w.Raw(`</caption>
<thead>
<tr><th scope="col" rowspan="2">after water of</th><th scope="col" rowspan="2">true</th><th scope="colgroup" colspan="`)
			w.Int(len(v1.Steps[0].Shows))
			w.Raw(`">when the spirit is at</th><th scope="colgroup" colspan="2">found</th></tr>
<tr>`)
			{
				v5 := v1.Steps[0].Shows
				for v6 := range v5 {
					v7 := &v5[v6]
					w.Raw(`<th scope="col">`)
					w.Text(f.Degrees(v7.TempC))
					w.Raw(` `)
					w.Text(f.TempUnit())
					w.Raw(`</th>`)
				}
			}
			w.Raw(`<th scope="col" class="write">reading</th><th scope="col" class="write">at `)
			w.Text(f.TempUnit())
			w.Raw(`</th></tr>
</thead>
<tbody>`)
			{
				v8 := v1.Steps
				for v9 := range v8 {
					v10 := &v8[v9]
					w.Raw(`
<tr class="tall"><th scope="row" data-head="after water of">`)
					if v10.WaterL != 0 {
						w.Text(f.Said(v10.Water()))
					} else {
						w.Raw(`none yet`)
					}
					w.Raw(`</th><td class="amount" data-head="true">`)
					w.Text(f.Gauged(v10.Gives.Strength()))
					w.Raw(`</td>`)
					{
						v11 := v10.Shows
						for v12 := range v11 {
							v13 := &v11[v12]
							w.Raw(`<td data-head="at `)
							w.Text(f.Degrees(v13.TempC))
							w.Raw(` `)
							w.Text(f.TempUnit())
							w.Raw(`">`)
							w.Text(f.Shown(*v13))
							w.Raw(`</td>`)
						}
					}
					w.Raw(`<td class="blank"></td><td class="blank"></td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>
<table class="card trims">
<caption>The last of it: when the true strength is still over</caption>
<thead><tr><th scope="row">over by</th>`)
			{
				v14 := v1.Trims
				for v15 := range v14 {
					v16 := &v14[v15]
					w.Raw(`<th scope="col">`)
					w.Text(f.Said(v16.Over))
					w.Raw(`</th>`)
				}
			}
			w.Raw(`</tr></thead>
<tbody>
<tr><th scope="row">add, by volume</th>`)
			{
				v17 := v1.Trims
				for v18 := range v17 {
					v19 := &v17[v18]
					w.Raw(`<td class="amount" data-head="over by `)
					w.Text(f.Said(v19.Over))
					w.Raw(`">`)
					w.Text(f.Said(v19.Water()))
					w.Raw(`</td>`)
				}
			}
			w.Raw(`</tr>
<tr><th scope="row">add, by weight</th>`)
			{
				v20 := v1.Trims
				for v21 := range v20 {
					v22 := &v20[v21]
					w.Raw(`<td class="amount" data-head="over by `)
					w.Text(f.Said(v22.Over))
					w.Raw(`">`)
					w.Text(f.Mass(v22.WaterScaleKg))
					w.Raw(`</td>`)
				}
			}
			w.Raw(`</tr>
</tbody>
</table>
<p class="aside">From published densities (OIML R 22). Official gauging follows the tables of the law themselves; their last figure may differ. Weights are what a scale in air shows, some 0.1 % less than the mass (OIML R 111).</p>
`)
			{
				writeBlocks(w, f, d.BlocksOn("card"))
			}
			w.Raw(`
</section>`)
		}
	}
	w.Raw(`
`)
}

func writeCare(w *markup.Page, f says, d *shortStep) {
	{
		v1 := d.Care
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`<span class="care"><b class="bang">`)
			w.Int(v3.Number)
			w.Raw(`</b>`)
			{
				v4 := v3.Title
				if v4 != "" {
					w.Raw(` `)
					w.Text(f.Trade(v4))
				}
			}
			w.Raw(`</span> `)
		}
	}
	if d.OutOfShift != 0 {
		w.Raw(`<span class="care"><b class="bang">!</b> `)
		w.Text(f.Duration(d.OutOfShift))
		w.Raw(` of this lies outside the shift</span> `)
	}
}

func writeCareOfsheetstep(w *markup.Page, f says, d *step) {
	{
		v1 := d.Care
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`<span class="care"><b class="bang">`)
			w.Int(v3.Number)
			w.Raw(`</b>`)
			{
				v4 := v3.Title
				if v4 != "" {
					w.Raw(` `)
					w.Text(f.Trade(v4))
				}
			}
			w.Raw(`</span> `)
		}
	}
	if d.OutOfShift != 0 {
		w.Raw(`<span class="care"><b class="bang">!</b> `)
		w.Text(f.Duration(d.OutOfShift))
		w.Raw(` of this lies outside the shift</span> `)
	}
}

func writeCell(w *markup.Page, f says, d *cell) {
	if d.Reading != nil {
		w.Raw(`<td class="should" data-head="`)
		w.Text(d.Head)
		{
			v1 := d.Unit
			if v1 != "" {
				w.Raw(`, `)
				w.Text(v1)
			}
		}
		w.Raw(`">`)
		{
			v2 := d.Name
			if v2 != "" {
				w.Raw(`<span class="name">`)
				w.Text(v2)
				w.Raw(`</span>`)
			}
		}
		w.Raw(`<b>`)
		w.Text(f.Bare(*d))
		w.Raw(`</b>`)
		{
			v3 := f.Other(*d)
			if v3 != "" {
				w.Raw(` <span class="off">`)
				w.Text(v3)
				w.Raw(`</span>`)
			}
		}
		if d.Off {
			w.Raw(` <span class="off">`)
			w.Text(f.OffBare(*d))
			w.Raw(`</span>`)
		}
		w.Raw(`</td><td class="blank says" data-blank="`)
		w.Text(d.ID)
		w.Raw(`"></td>`)
		if d.Temp {
			if f.NeedsTemp(d.Should) {
				w.Raw(`<td class="blank at"></td>`)
			} else {
				w.Raw(`<td class="none"></td>`)
			}
		}
	} else {
		if d.Spare {
			w.Raw(`<td class="room"></td><td class="blank says"></td>`)
			if d.Temp {
				w.Raw(`<td class="blank at"></td>`)
			}
		} else {
			w.Raw(`<td class="none" colspan="`)
			w.Int(d.Cells())
			w.Raw(`"></td>`)
		}
	}
}

func writeClosing(w *markup.Page, f says, d *view) {
	{
		v1 := d.BlocksOn("closing")
		if len(v1) > 0 {
			w.Raw(`

<section class="closing" id="closing" aria-labelledby="closing-head">
<h2 id="closing-head">`)
			w.Text(d.ClosingTitle())
			w.Raw(`</h2>
`)
			{
				writeBlocks(w, f, v1)
			}
			w.Raw(`
</section>`)
		}
	}
	w.Raw(`
`)
}

func writeCover(w *markup.Page, f says, d *view) {
	w.Raw(`
<section class="cover" aria-labelledby="cover">
<p class="house">`)
	w.Text(d.Plant.Name)
	w.Raw(`</p>
<h1 id="cover"`)
	if d.Long() {
		w.Raw(` class="long"`)
	}
	w.Raw(`>`)
	w.Text(d.Batch.Name)
	w.Raw(`</h1>
<p class="style">`)
	{
		v1 := d.Batch.Standard
		if v1 != "" {
			w.Text(v1)
		} else {
			w.Raw(`No standard of identity is named`)
		}
	}
	{
		v2 := d.Batch.Parent
		if v2 != "" {
			w.Raw(`, a variant of `)
			w.Text(v2)
		}
	}
	w.Raw(`</p>`)
	{
		v3 := d.Batch.Changes
		if len(v3) > 0 {
			w.Raw(`
<p class="changes">It differs by: `)
			{
				v4 := v3
				for v5 := range v4 {
					v6 := v4[v5]
					if v5 != 0 {
						w.Raw(`; `)
					}
					w.Text(v6)
				}
			}
			w.Raw(`.</p>`)
		}
	}
	w.Raw(`

<dl class="about">
<div><dt>Begins</dt><dd>`)
	w.Text(f.Date(d.Batch.Start))
	w.Raw(`, `)
	w.Text(f.Hm(d.Batch.Start))
	w.Raw(`</dd></div>
<div><dt>`)
	if d.Cask.Casks != 0 {
		w.Raw(`In wood`)
	} else {
		w.Raw(`Done`)
	}
	w.Raw(`</dt><dd>`)
	w.Text(f.Date(d.Schedule.End))
	w.Raw(`</dd></div>
<div><dt>Version</dt><dd>`)
	{
		v7 := d.Version()
		if v7 != "" {
			w.Text(v7)
		} else {
			w.Raw(`not known`)
		}
	}
	w.Raw(`, run `)
	{
		v8 := d.Opened
		if v8 != nil {
			w.Raw(`<b>`)
			w.Text(v8.Number)
			w.Raw(`</b>`)
		} else {
			w.Raw(`no. <i class="other"></i>`)
		}
	}
	{
		v9 := d.Source
		if v9 != nil {
			if v9.Changed {
				w.Raw(` <b class="bang">!</b>`)
			}
		}
	}
	w.Raw(`</dd></div>
<div><dt>Place</dt><dd>`)
	w.Text(f.Length(d.Plant.ElevationM))
	w.Raw(` up: water boils at `)
	w.Text(f.Temp(d.Plant.WaterBoilsC))
	w.Raw(`. Cold water `)
	w.Text(f.Temp(d.Plant.WaterC))
	w.Raw(`. Clock: `)
	w.Text(d.Plant.Zone)
	w.Raw(`</dd></div>
</dl>

<h2>What it should give</h2>
<ol class="chain">
<li><b>`)
	w.Text(f.Mass(d.Bill.TotalKg))
	w.Raw(`</b><span>of grain</span></li>
<li><b>`)
	w.Text(f.Volume(d.Ferment.Wash))
	w.Raw(`</b><span>of wash at `)
	w.Text(f.LotAbv(d.Ferment.Wash))
	w.Raw(`, from `)
	w.Text(f.Gravity(d.Mash.HydrometerSG))
	w.Raw(` to `)
	w.Text(f.Gravity(d.Summary.FinalGravitySG))
	w.Raw(`</span></li>
<li><b>`)
	{
		v10 := d.Fraction("low wines")
		w.Text(f.Volume((&v10).Lot))
	}
	w.Raw(`</b><span>of low wines at `)
	{
		v11 := d.Fraction("low wines")
		w.Text(f.LotAbv((&v11).Lot))
	}
	w.Raw(`</span></li>
<li><b>`)
	{
		v12 := d.Fraction("hearts")
		w.Text(f.Volume((&v12).Lot))
	}
	w.Raw(`</b><span>of hearts at `)
	{
		v13 := d.Fraction("hearts")
		w.Text(f.Strength((&v13).Strength()))
	}
	if f.Us() {
		w.Raw(`, `)
		w.Text(f.Num(d.Summary.HeartsProofGal, 1))
		w.Raw(` proof gallons`)
	} else {
		w.Raw(`, `)
		w.Text(f.Num(d.Summary.PureAlcoholL, 1))
		w.Raw(` L of pure alcohol`)
	}
	w.Raw(`</span></li>`)
	if d.Cask.SizeL != 0 {
		w.Raw(`
<li><b>`)
		if d.Cask.Casks != 0 {
			w.Text(f.Count(d.Cask.Casks, "cask"))
		} else {
			w.Raw(`no full cask`)
		}
		w.Raw(`</b><span>of `)
		w.Text(f.Litres(d.Cask.SizeL))
		w.Raw(` at `)
		w.Text(f.Strength(d.Cask.Entry))
		{
			v14 := d.Cask.Before
			if v14 != nil {
				w.Raw(`, with `)
				w.Text(f.Volume(*v14))
				w.Raw(` left before`)
			}
		}
		if d.Cask.Leftover.VolumeL != 0 {
			w.Raw(`, `)
			w.Text(f.Volume(d.Cask.Leftover))
			w.Raw(` left over`)
		}
		w.Raw(`</span></li>`)
	} else {
		if d.Cask.Bottles != 0 {
			w.Raw(`
<li><b>`)
			w.Text(f.Count(d.Cask.Bottles, "bottle"))
			w.Raw(`</b><span>of `)
			w.Text(f.Num(f.Millilitres(d.Cask.BottleL), 0))
			w.Raw(` mL at `)
			w.Text(f.Strength(d.Cask.BottleAt))
			w.Raw(`, unaged</span></li>`)
		}
	}
	w.Raw(`
</ol>`)
	{
		v15 := d.Warnings()
		if len(v15) > 0 {
			w.Raw(`
<div class="warn"><h2>Before the grain is milled</h2><ul>`)
			{
				v16 := d.FirstWarnings()
				for v17 := range v16 {
					v18 := &v16[v17]
					w.Raw(`<li><b class="bang">!</b> `)
					if v18.Severity == "error" {
						w.Raw(`<b>`)
						w.Text(f.Trade(v18.Summary))
						w.Raw(`</b>`)
					} else {
						w.Text(f.Trade(v18.Summary))
					}
					w.Raw(`</li>`)
				}
			}
			w.Raw(`
</ul><p>`)
			{
				v19 := d.MoreWarnings()
				if v19 != 0 {
					w.Raw(`And `)
					w.Int(v19)
					w.Raw(` more. `)
				}
			}
			w.Raw(`Why, and what to do about it, stands on the last page.</p></div>`)
		}
	}
	w.Raw(`

<h2>Days</h2>`)
	if d.DaysChart.ID != "" {
		w.Raw(`
<figure>`)
		{
			v20 := &d.DaysChart
			chart.Draw(w, v20)
		}
		w.Raw(`</figure>`)
	}
	w.Raw(`
<table class="days">
<caption>When somebody is wanted</caption>
<thead><tr><th scope="col">day</th><th scope="col">from</th><th scope="col">to</th><th scope="col">people</th><th scope="col">work</th><th scope="col">who</th></tr></thead>
<tbody>`)
	{
		v21 := d.Days()
		for v22 := range v21 {
			v23 := &v21[v22]
			w.Raw(`
<tr><th scope="row">`)
			w.Text(v23.Name)
			w.Raw(`</th><td data-head="from">`)
			w.Text(v23.From)
			w.Raw(`</td><td data-head="to">`)
			w.Text(v23.To)
			w.Raw(`</td><td data-head="people">`)
			w.Int(v23.People)
			w.Raw(`</td><td>`)
			w.Text(v23.What)
			w.Raw(`</td><td class="blank"></td></tr>`)
		}
	}
	w.Raw(`
</tbody>
</table>
`)
	{
		writeBlocks(w, f, d.BlocksOn("cover"))
	}
	w.Raw(`
</section>
`)
}

func writeDo(w *markup.Page, f says, d *step) {
	if d.WaitMin != 0 {
		w.Raw(`<p class="wait">Stands `)
		w.Text(f.Duration(d.WaitMin))
		w.Raw(` before this: `)
		w.Text(d.WaitWhy)
		w.Raw(`.</p>`)
	}
	w.Raw(`
<p class="sentence">`)
	{
		writeCareOfsheetstep(w, f, d)
	}
	v1 := d.AfterJug
	{
		v2 := d.When
		if v2 != nil {
			w.Raw(`<b class="when">`)
			if v1 {
				w.Text(f.Jug(*v2))
			} else {
				w.Text(f.Phrase(*v2))
			}
			w.Raw(`:</b> `)
		}
	}
	if d.Jug {
		w.Text(f.Jug(d.Do))
	} else {
		w.Text(f.Phrase(d.Do))
	}
	{
		writeWhoOfsheetstep(w, f, d)
	}
	w.Raw(`</p>`)
}

func writeFerment(w *markup.Page, f says, d *view) {
	w.Raw(`
<section class="work" id="ferment" aria-labelledby="ferment-head">
<div class="head"><h2 id="ferment-head">Ferment log</h2>`)
	{
		writeLate(w, f, d.FermentLog.Begin)
	}
	w.Raw(`</div>
<dl class="facts">
`)
	{
		v1 := d.In("ferment")
		writeIn(w, f, (&v1))
	}
	w.Raw(`
<div><dt>dry after</dt> <dd>`)
	if d.Ferment.DryHours != 0 {
		w.Text(f.Hours(d.Ferment.DryHours))
		w.Raw(` of `)
		w.Text(f.Hours(d.Ferment.Hours))
	} else {
		w.Raw(`not in `)
		w.Text(f.Hours(d.Ferment.Hours))
	}
	w.Raw(`</dd></div>
<div><dt>final gravity</dt> <dd>`)
	w.Text(f.Gravity(d.Ferment.FinalGravitySG))
	w.Raw(`</dd></div>
<div><dt>wash, grain in it</dt> <dd>`)
	w.Text(f.Volume(d.Ferment.Wash))
	w.Raw(` at `)
	w.Text(f.LotAbv(d.Ferment.Wash))
	w.Raw(`</dd></div>
<div><dt>strained</dt> <dd>`)
	w.Text(f.Said(d.Ferment.Liquid.ByVolume()))
	w.Raw(`</dd></div>
<div><dt>warmest</dt> <dd>`)
	w.Text(f.Temp(d.Ferment.PeakC))
	w.Raw(` after `)
	w.Text(f.Hours(d.Ferment.PeakHours))
	w.Raw(`</dd></div>`)
	if d.Ferment.LeavesHoldC != 0 {
		w.Raw(`
<div><dt>`)
		if d.Ferment.LeavesHoldC < d.Ferment.HoldLowC {
			w.Raw(`below its hold`)
		} else {
			w.Raw(`above its hold`)
		}
		w.Raw(`</dt> <dd>from `)
		w.Text(f.Hours(d.Ferment.LeavesHoldH))
		w.Raw(` on, `)
		w.Text(f.Temp(d.Ferment.LeavesHoldC))
		w.Raw(`</dd></div>`)
	}
	w.Raw(`
</dl>`)
	if d.FermentChart.ID != "" {
		w.Raw(`
`)
		{
			v2 := &d.FermentChart
			writeFigure(w, f, v2)
		}
	}
	w.Raw(`
`)
	{
		v3 := &d.FermentLog
		writeSteps(w, f, v3)
	}
	if d.StripOpposite {
		w.Raw(`
<figure class="opposite-day">`)
		{
			v4 := &d.StripChart
			chart.Draw(w, v4)
		}
		w.Raw(`<figcaption><b>For strip day, opposite.</b> `)
		{
			v5 := &d.StripChart
			writeMarked(w, f, v5)
		}
		w.Raw(`</figcaption></figure>`)
	}
	w.Raw(`
</section>
`)
}

func writeFigure(w *markup.Page, f says, d *chart.Chart) {
	w.Raw(`<figure>`)
	{
		chart.Draw(w, d)
	}
	w.Raw(`<figcaption>`)
	{
		writeMarked(w, f, d)
	}
	w.Raw(`</figcaption></figure>`)
}

func writeFilling(w *markup.Page, f says, d *view) {
	if len(d.Filling.Days) > 0 {
		w.Raw(`
<section class="work" id="filling" aria-labelledby="filling-head">
<h2 id="filling-head">Reduce and fill</h2>
<dl class="facts">`)
		{
			v1 := d.Reduction
			if v1 != nil {
				w.Raw(`
<div><dt>hearts</dt> <dd>`)
				w.Text(f.Volume(v1.From))
				w.Raw(` at `)
				w.Text(f.Should(v1.From.Strength().At()))
				w.Raw(`</dd></div>
<div><dt>water to add</dt> <dd>`)
				w.Text(f.Said(v1.Water()))
				w.Raw(`, `)
				w.Text(f.Mass(v1.WaterKg))
				w.Raw(`</dd></div>
<div><dt>gives</dt> <dd>`)
				w.Text(f.Volume(v1.To))
				w.Raw(` at `)
				w.Text(f.Should(v1.To.Strength().At()))
				w.Raw(`</dd></div>`)
			}
		}
		{
			v2 := &d.Cask
			if v2.SizeL != 0 {
				w.Raw(`
<div><dt>fill</dt> <dd>`)
				{
					v3 := v2.Before
					if v3 != nil {
						w.Raw(`with `)
						w.Text(f.Volume(*v3))
						w.Raw(` left before: `)
					}
				}
				if v2.Casks != 0 {
					w.Text(f.Count(v2.Casks, "cask"))
					w.Raw(` of `)
					w.Text(f.Litres(v2.SizeL))
				} else {
					w.Raw(`no full cask`)
				}
				if v2.Leftover.VolumeL != 0 {
					w.Raw(`; `)
					w.Text(f.Volume(v2.Leftover))
					w.Raw(` left over`)
				}
				w.Raw(`</dd></div>`)
			} else {
				if v2.Bottles != 0 {
					w.Raw(`
<div><dt>bottles</dt> <dd>`)
					w.Int(v2.Bottles)
					w.Raw(` at `)
					w.Text(f.Strength(v2.BottleAt))
					w.Raw(`</dd></div>`)
				}
			}
		}
		w.Raw(`
</dl>
`)
		{
			v4 := &d.Filling
			writeSteps(w, f, v4)
		}
		w.Raw(`
<div class="together">`)
		if d.Cask.Casks != 0 {
			w.Raw(`
<table class="list casks">
<caption>`)
			if d.Cask.Casks > 1 {
				w.Raw(`The casks`)
			} else {
				w.Raw(`The cask`)
			}
			w.Raw(`: `)
			if d.Cask.New {
				w.Raw(`new`)
			} else {
				w.Raw(`used`)
			}
			w.Raw(` `)
			w.Text(d.Cask.Kind)
			{
				v5 := d.Cask.Char
				if v5 != 0 {
					w.Raw(`, char `)
					w.Int(v5)
				}
			}
			w.Raw(`. `)
			if d.Cask.Casks > 1 {
				w.Raw(`Each`)
			} else {
				w.Raw(`It`)
			}
			w.Raw(` should weigh `)
			w.Text(f.Mass(d.Cask.TareKg))
			w.Raw(` empty, `)
			w.Text(f.Mass(d.Cask.GrossKg))
			w.Raw(` full, `)
			w.Text(f.Mass(d.Cask.NetKg))
			w.Raw(` net.</caption>
<thead><tr><th scope="col">cask no.</th><th scope="col">empty</th><th scope="col">full</th><th scope="col">net</th><th scope="col">volume</th><th scope="col">strength</th><th scope="col">at `)
			w.Text(f.TempUnit())
			w.Raw(`</th><th scope="col">place in the rack</th><th scope="col">by</th></tr></thead>
<tbody>`)
			{
				v6 := f.Times(d.Cask.Casks)
				for v7 := range v6 {
					w.Raw(`
<tr class="tall"><th scope="row">`)
					w.Int(f.Plus(v7, 1))
					w.Raw(`</th><td class="blank"></td><td class="blank"></td><td class="blank"></td><td class="blank"></td><td class="blank"></td><td class="blank"></td><td class="blank"></td><td class="blank"></td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
		if d.FillingNotes != 0 {
			w.Raw(`
`)
			{
				writeNotes(w, f, d.FillingNotes)
			}
		}
		w.Raw(`
</div>
`)
		{
			writeBlocks(w, f, d.BlocksOn("filling"))
		}
		w.Raw(`
</section>`)
	}
	w.Raw(`
`)
}

func writeIn(w *markup.Page, f says, d *in) {
	if d.Vessel != "" {
		w.Raw(`<div><dt>in</dt> <dd>`)
		w.Text(d.Vessel)
		if d.Planned {
			w.Raw(` or <i class="other"></i>`)
		}
		w.Raw(`</dd></div>`)
	}
}

func writeLate(w *markup.Page, f says, d *begin) {
	{
		v1 := d
		if v1 != nil {
			w.Raw(`<p class="late">`)
			w.Text(v1.What)
			w.Raw(`, planned <b>`)
			w.Text(v1.Planned)
			w.Raw(`</b>, was <i></i> so add <i></i> min to every clock</p>`)
		}
	}
}

func writeMarked(w *markup.Page, f says, d *chart.Chart) {
	if d.Banded() {
		w.Raw(`Grey: where it should be 9 times in 10. `)
	}
	w.Raw(`Mark yours with x.`)
}

func writeMash(w *markup.Page, f says, d *view) {
	w.Raw(`
<section class="work" id="mash" aria-labelledby="mash-head">
<div class="head"><h2 id="mash-head">Mash day</h2>`)
	{
		writeLate(w, f, d.MashDay.Begin)
	}
	w.Raw(`</div>
<dl class="facts">
`)
	{
		v1 := d.In("mash")
		writeIn(w, f, (&v1))
	}
	w.Raw(`
<div><dt>`)
	if d.Mash.BacksetL != 0 {
		w.Raw(`hydrometer will read`)
	} else {
		w.Raw(`original gravity`)
	}
	w.Raw(`</dt> <dd>`)
	w.Text(f.Gravity(d.Mash.HydrometerSG))
	w.Raw(`</dd></div>
<div><dt>pH</dt> <dd>`)
	w.Text(f.Num(d.Mash.PH, 1))
	w.Raw(`</dd></div>
<div><dt>to the fermenter</dt> <dd>`)
	w.Text(f.Litres(d.Mash.VolumeL))
	w.Raw(`</dd></div>
</dl>`)
	if d.MashChart.ID != "" && !(d.MashOpposite) {
		w.Raw(`
`)
		{
			v2 := &d.MashChart
			writeFigure(w, f, v2)
		}
	}
	w.Raw(`
`)
	{
		v3 := &d.MashDay
		writeSteps(w, f, v3)
	}
	w.Raw(`
</section>
`)
}

func writeNotes(w *markup.Page, f says, d int) {
	w.Raw(`
<div class="notes" aria-hidden="true"><span>notes</span>`)
	{
		v1 := f.Times(d)
		for range v1 {
			w.Raw(`<i></i>`)
		}
	}
	w.Raw(`</div>
`)
}

func writeOpposite(w *markup.Page, f says, d *view) {
	w.Raw(`
<section class="opposite" id="opposite" aria-labelledby="opposite-head">`)
	if len(d.SpiritDays) > 0 {
		w.Raw(`
<h2 id="opposite-head">Spirit day: the picture, and the cautions in full</h2>
<dl class="facts">
`)
		{
			v1 := d.In("spirit")
			writeIn(w, f, (&v1))
		}
		w.Raw(`
<div><dt>charge`)
		if d.Spirit.Charges > 1 {
			w.Raw(`, each of `)
			w.Int(d.Spirit.Charges)
		}
		w.Raw(`</dt> <dd>`)
		w.Text(f.Volume(d.Spirit.Charge))
		w.Raw(` at `)
		w.Text(f.LotAbv(d.Spirit.Charge))
		w.Raw(`</dd></div>
<div><dt>of it feints</dt> <dd>`)
		{
			v2 := d.Spirit.FeintsReturned
			if v2 != nil {
				w.Text(f.Volume(*v2))
				w.Raw(` at `)
				w.Text(f.LotAbv(*v2))
			} else {
				w.Raw(`none`)
			}
		}
		w.Raw(`</dd></div>
<div><dt>hearts`)
		if d.Spirit.Charges > 1 {
			w.Raw(` in all`)
		}
		w.Raw(`</dt> <dd>`)
		{
			v3 := d.Fraction("hearts")
			w.Text(f.Volume((&v3).Lot))
			w.Raw(` at `)
			w.Text(f.Should((&v3).Strength().At()))
		}
		w.Raw(`</dd></div>
<div><dt>fire to stop</dt> <dd>`)
		w.Text(f.Duration(f.Minutes(d.Spirit.Hours)))
		w.Raw(`</dd></div>
</dl>`)
		if d.SpiritChart.ID != "" {
			w.Raw(`
`)
			{
				v4 := &d.SpiritChart
				writeFigure(w, f, v4)
			}
		}
	} else {
		w.Raw(`
<h2 id="opposite-head">The cautions in full</h2>`)
	}
	w.Raw(`
<dl class="cautions">`)
	{
		v5 := d.Cautions
		for v6 := range v5 {
			v7 := &v5[v6]
			w.Raw(`
<div><dt><b class="bang">`)
			w.Int(f.Plus(v6, 1))
			w.Raw(`</b> `)
			w.Text(f.Trade(v7.Title))
			w.Raw(`</dt><dd>`)
			w.Text(f.Trade(v7.Text))
			w.Raw(`</dd></div>`)
		}
	}
	w.Raw(`
</dl>
<p><b>Local code, permits and licensed practice come first; a sheet is no substitute.</b></p>
</section>
`)
}

func writeSheet(w *markup.Page, f says, d *view) {
	w.Raw(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="`)
	w.Text(d.Policy)
	w.Raw(`">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>`)
	if d.Batch.Name != "" {
		w.Text(d.Batch.Name)
		w.Raw(`: run sheet, `)
		w.Text(d.Plant.Name)
	} else {
		w.Raw(`No sheet yet`)
	}
	w.Raw(`</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>`)
	if d.Stale {
		w.Raw(`
<p class="stale" role="note">`)
		w.Text(f.StaleWords())
		w.Raw(`</p>`)
	}
	if d.Batch.Name != "" {
		w.Raw(`
<main>`)
		if d.Short {
			w.Raw(`
`)
			{
				writeShort(w, f, d)
			}
		} else {
			w.Raw(`
`)
			{
				writeCover(w, f, d)
			}
			w.Raw(`
`)
			{
				writeWeigh(w, f, d)
			}
			w.Raw(`
`)
			{
				writeMash(w, f, d)
			}
			w.Raw(`
`)
			{
				writeFerment(w, f, d)
			}
			w.Raw(`
`)
			{
				writeStrip(w, f, d)
			}
			w.Raw(`
`)
			{
				writeOpposite(w, f, d)
			}
			w.Raw(`
`)
			{
				writeSpirit(w, f, d)
			}
			w.Raw(`
`)
			{
				writeFilling(w, f, d)
			}
			w.Raw(`
`)
			{
				writeCard(w, f, d)
			}
			w.Raw(`
`)
			{
				writeWood(w, f, d)
			}
			w.Raw(`
`)
			{
				writeClosing(w, f, d)
			}
		}
		w.Raw(`
</main>`)
	}
	w.Raw(`
</body>
</html>
`)
}

func writeShort(w *markup.Page, f says, d *view) {
	v1 := d
	{
		v2 := d.ShortPages()
		for v3 := range v2 {
			v4 := &v2[v3]
			w.Raw(`
<section class="brief brief-`)
			w.Text(v4.Size.Name)
			w.Raw(`" id="`)
			w.Text(v4.ID)
			w.Raw(`" aria-labelledby="`)
			w.Text(v4.ID)
			w.Raw(`-head">`)
			if v4.Weigh {
				w.Raw(`
<h1 id="`)
				w.Text(v4.ID)
				w.Raw(`-head"`)
				if v1.Long() {
					w.Raw(` class="long"`)
				}
				w.Raw(`>`)
				w.Text(v1.Batch.Name)
				w.Raw(`</h1>
`)
				{
					writeShortChain(w, f, v1)
				}
				{
					v5 := v1.Warnings()
					if len(v5) > 0 {
						w.Raw(`
<div class="warn"><ul>`)
						{
							v6 := v1.FirstWarnings()
							for v7 := range v6 {
								v8 := &v6[v7]
								w.Raw(`<li><b class="bang">!</b> `)
								if v8.Severity == "error" {
									w.Raw(`<b>`)
									w.Text(f.Trade(v8.Summary))
									w.Raw(`</b>`)
								} else {
									w.Text(f.Trade(v8.Summary))
								}
								w.Raw(`</li>`)
							}
						}
						w.Raw(`
</ul><p>`)
						{
							v9 := v1.MoreWarnings()
							if v9 != 0 {
								w.Raw(`And `)
								w.Int(v9)
								w.Raw(` more. `)
							}
						}
						w.Raw(`Why, and what to do about it, stands on the last page of the full sheet.</p></div>`)
					}
				}
				w.Raw(`
`)
				{
					writeShortWeigh(w, f, v1)
				}
			} else {
				w.Raw(`
<h2 class="unseen" id="`)
				w.Text(v4.ID)
				w.Raw(`-head">`)
				w.Text(v4.What)
				w.Raw(`</h2>`)
			}
			if len(v4.Stages) > 0 {
				w.Raw(`
<table class="brief-steps">
<caption>Steps, with what decides at the end of each</caption>
<colgroup><col class="b-clock"><col><col class="b-should"><col class="b-says"><col class="b-should"><col class="b-says"><col class="b-time"></colgroup>
<thead><tr><th scope="col">clock</th><th scope="col">what to do</th><th scope="col">should</th><th scope="col">says</th><th scope="col">should</th><th scope="col">says</th><th scope="col">time</th></tr></thead>`)
				{
					v10 := v4.Stages
					for v11 := range v10 {
						v12 := &v10[v11]
						w.Raw(`
<tbody class="stage"><tr><th scope="rowgroup" colspan="7"><b>`)
						w.Text(v12.Name)
						w.Raw(`</b>`)
						{
							v13 := v1.In(v12.Use)
							if (&v13).Vessel != "" {
								w.Raw(` in `)
								w.Text((&v13).Vessel)
								if (&v13).Planned {
									w.Raw(` or <i class="other"></i>`)
								}
							}
						}
						{
							v14 := v12.Begin
							if v14 != nil {
								w.Raw(` <span class="late">`)
								w.Text(v14.What)
								w.Raw(`, planned <b>`)
								w.Text(v14.Planned)
								w.Raw(`</b>, was <i></i> so add <i></i> min</span>`)
							}
						}
						w.Raw(`</th></tr></tbody>`)
						{
							v15 := v12.Steps
							for v16 := range v15 {
								v17 := &v15[v16]
								w.Raw(`
<tbody class="step" id="step-`)
								w.Text(v17.ID)
								w.Raw(`"><tr><th scope="row" class="clock"><span class="box"></span> <b>`)
								w.Text(f.Hm(v17.Start))
								w.Raw(`</b>`)
								{
									v18 := v17.Day
									if v18 != "" {
										w.Raw(`<span class="long">`)
										w.Text(v18)
										w.Raw(`</span>`)
									}
								}
								w.Raw(`</th><td class="brief-do" colspan="`)
								w.Int(v17.Span())
								w.Raw(`">`)
								{
									writeCare(w, f, v17)
								}
								v19 := v17.AfterJug
								{
									v20 := v17.When
									if v20 != nil {
										w.Raw(`<b class="when">`)
										if v19 {
											w.Text(f.Jug(*v20))
										} else {
											w.Text(f.Phrase(*v20))
										}
										w.Raw(`:</b> `)
									}
								}
								if v17.Jug {
									w.Text(f.Jug(v17.Do))
								} else {
									w.Text(f.Phrase(v17.Do))
								}
								{
									writeWho(w, f, v17)
								}
								w.Raw(`</td>`)
								{
									v21 := v17.Read
									for v22 := range v21 {
										v23 := &v21[v22]
										w.Raw(`<td class="should">`)
										v24 := f.Other(*v23)
										{
											v25 := v23.Name
											if v25 != "" {
												w.Raw(`<span class="name">`)
												w.Text(v25)
												{
													v26 := v24
													if v26 != "" {
														w.Raw(`, `)
														w.Text(v26)
													}
												}
												w.Raw(`</span>`)
											}
										}
										w.Raw(`<b>`)
										w.Text(f.Bare(*v23))
										w.Raw(`</b>`)
										if !(v23.Name != "") {
											{
												v27 := v24
												if v27 != "" {
													w.Raw(` <span class="off">`)
													w.Text(v27)
													w.Raw(`</span>`)
												}
											}
										}
										if v23.Off {
											w.Raw(` <span class="off">`)
											w.Text(f.OffBare(*v23))
											w.Raw(`</span>`)
										}
										w.Raw(`</td><td class="blank says" data-blank="`)
										w.Text(v23.ID)
										w.Raw(`">`)
										if f.NeedsTemp(v23.Should) {
											w.Raw(`<span class="at">at</span>`)
										}
										w.Raw(`</td>`)
									}
								}
								w.Raw(`<td class="blank time">:</td></tr></tbody>`)
							}
						}
					}
				}
				w.Raw(`
</table>`)
			}
			{
				v28 := v4.Cautions
				if len(v28) > 0 {
					w.Raw(`
<dl class="brief-cautions">`)
					{
						v29 := v28
						for v30 := range v29 {
							v31 := &v29[v30]
							w.Raw(`
<div><dt><b class="bang">`)
							w.Int(v31.Number)
							w.Raw(`</b> `)
							w.Text(f.Trade(v31.Title))
							w.Raw(`:</dt> <dd>`)
							w.Text(f.Trade(v31.Text))
							w.Raw(` </dd></div>`)
						}
					}
					w.Raw(`
</dl>`)
				}
			}
			if !(v4.Weigh) {
				w.Raw(`
<p class="brief-foot"><b>Local code, permits and licensed practice come first; a sheet is no substitute.</b> Further off than the tolerance: find out why before going on. Readings between, the proofing card and the law are on the full sheet.</p>`)
			}
			w.Raw(`
</section>`)
		}
	}
	w.Raw(`
`)
}

func writeShortChain(w *markup.Page, f says, d *view) {
	w.Raw(`
<p class="brief-chain">`)
	{
		v1 := d.Batch.Standard
		if v1 != "" {
			w.Text(v1)
		} else {
			w.Raw(`No standard of identity is named`)
		}
	}
	{
		v2 := d.Batch.Parent
		if v2 != "" {
			w.Raw(`, a variant of `)
			w.Text(v2)
		}
	}
	w.Raw(`.
<b>`)
	w.Text(f.Mass(d.Bill.TotalKg))
	w.Raw(`</b> of grain, <b>`)
	w.Text(f.Volume(d.Ferment.Wash))
	w.Raw(`</b> of wash at `)
	w.Text(f.LotAbv(d.Ferment.Wash))
	{
		v3 := d.Fraction("low wines")
		w.Raw(`, <b>`)
		w.Text(f.Volume((&v3).Lot))
		w.Raw(`</b> of low wines at `)
		w.Text(f.LotAbv((&v3).Lot))
	}
	w.Raw(`, <b>`)
	{
		v4 := d.Fraction("hearts")
		w.Text(f.Volume((&v4).Lot))
		w.Raw(`</b> of hearts at `)
		w.Text(f.Strength((&v4).Strength()))
	}
	if d.Cask.SizeL != 0 {
		w.Raw(`, <b>`)
		if d.Cask.Casks != 0 {
			w.Text(f.Count(d.Cask.Casks, "cask"))
		} else {
			w.Raw(`no full cask`)
		}
		w.Raw(`</b> of `)
		w.Text(f.Litres(d.Cask.SizeL))
		w.Raw(` at `)
		w.Text(f.Strength(d.Cask.Entry))
	} else {
		if d.Cask.Bottles != 0 {
			w.Raw(`, <b>`)
			w.Text(f.Count(d.Cask.Bottles, "bottle"))
			w.Raw(`</b>, unaged`)
		}
	}
	w.Raw(`.</p>
`)
}

func writeShortWeigh(w *markup.Page, f says, d *view) {
	w.Raw(`
<p class="brief-weigh"><b>Weigh out</b> `)
	{
		v1 := d.Bill.Lines
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`<span><i class="box"></i> `)
			w.Text(v3.Name)
			w.Raw(` <b>`)
			w.Text(f.Mass(v3.MassKg))
			w.Raw(`</b></span> `)
		}
	}
	w.Raw(`in all `)
	w.Text(f.Mass(d.Bill.TotalKg))
	w.Raw(`.</p>
<p class="brief-weigh"><b>Measure out</b> `)
	{
		v4 := d.Bill.Additions
		for v5 := range v4 {
			v6 := &v4[v5]
			w.Raw(`<span><i class="box"></i> `)
			w.Text(v6.Name)
			{
				v7 := v6.At
				if v7 != nil {
					w.Raw(` at `)
					w.Text(f.Said(*v7))
				}
			}
			w.Raw(` <b>`)
			w.Text(f.Said(v6.Amount))
			w.Raw(`</b></span> `)
		}
	}
	w.Raw(`</p>
<p class="brief-weigh"><b>Clean, empty and free</b> `)
	{
		v8 := d.Schedule.Vessels
		for v9 := range v8 {
			v10 := &v8[v9]
			w.Raw(`<span><i class="box"></i> `)
			w.Text(v10.Vessel)
			w.Raw(` (`)
			w.Text(f.Short(v10.From))
			w.Raw(`)</span> `)
		}
	}
	w.Raw(`</p>
`)
}

func writeSpirit(w *markup.Page, f says, d *view) {
	v1 := d
	{
		v2 := d.SpiritDays
		for v3 := range v2 {
			v4 := &v2[v3]
			w.Raw(`
<section class="work" id="`)
			w.Text(v4.ID)
			w.Raw(`" aria-labelledby="`)
			w.Text(v4.ID)
			w.Raw(`-head">
<div class="head"><h2 id="`)
			w.Text(v4.ID)
			w.Raw(`-head">Spirit day`)
			{
				v5 := v4.Charge
				if v5 != 0 {
					w.Raw(`, charge `)
					w.Int(v5)
					w.Raw(` of `)
					w.Int(v1.Spirit.Charges)
				}
			}
			w.Raw(`</h2>`)
			{
				writeLate(w, f, v4.Begin)
			}
			w.Raw(`</div>
`)
			{
				writeSteps(w, f, v4)
			}
			w.Raw(`
</section>`)
		}
	}
	w.Raw(`
`)
}

func writeStep(w *markup.Page, f says, d *step) {
	w.Raw(`
<tbody class="step" id="step-`)
	w.Text(d.ID)
	w.Raw(`">`)
	v1 := d
	if d.Bare {
		{
			v2 := d.Rows
			for v3 := range v2 {
				v4 := &v2[v3]
				w.Raw(`
<tr class="read first"><th class="clock" scope="rowgroup"><span class="box"></span> <b>`)
				w.Text(f.Hm(v1.Start))
				w.Raw(`</b>`)
				if v1.Dated {
					w.Raw(`<span class="long">`)
					w.Text(f.Weekday(v1.Start))
					w.Raw(`</span>`)
				}
				w.Raw(`</th>`)
				{
					v5 := v4.Cells
					for v6 := range v5 {
						v7 := &v5[v6]
						{
							writeCell(w, f, v7)
						}
					}
				}
				w.Raw(`<td class="blank time">:</td><td class="blank"></td></tr>`)
			}
		}
	} else {
		w.Raw(`
<tr class="first`)
		if len(d.Alone) > 0 {
			w.Raw(` read`)
		}
		w.Raw(`"><th class="clock" scope="rowgroup"><span class="box"></span> <b>`)
		w.Text(f.Hm(d.Start))
		w.Raw(`</b>`)
		if d.Dated {
			w.Raw(`<span class="long">`)
			w.Text(f.Weekday(d.Start))
			w.Raw(`</span>`)
		}
		w.Raw(`</th><td class="do" colspan="`)
		w.Int(d.Span)
		w.Raw(`">`)
		{
			writeDo(w, f, d)
		}
		w.Raw(`</td>`)
		{
			v8 := d.Alone
			for v9 := range v8 {
				v10 := &v8[v9]
				{
					writeCell(w, f, v10)
				}
			}
		}
		w.Raw(`<td class="blank time">:</td><td class="blank"></td></tr>`)
		{
			v11 := d.Rows
			for v12 := range v11 {
				v13 := &v11[v12]
				w.Raw(`
<tr class="read`)
				if v13.Spare {
					w.Raw(` spare`)
				}
				w.Raw(`"><td class="due">`)
				{
					v14 := v13.Due
					if v14 != "" {
						w.Raw(`<b>`)
						w.Text(v14)
						w.Raw(`</b>`)
					}
				}
				w.Raw(`</td>`)
				{
					v15 := v13.Cells
					for v16 := range v15 {
						v17 := &v15[v16]
						{
							writeCell(w, f, v17)
						}
					}
				}
				w.Raw(`<td class="blank time">:</td><td class="blank"></td></tr>`)
			}
		}
	}
	w.Raw(`
</tbody>`)
}

func writeSteps(w *markup.Page, f says, d *part) {
	w.Raw(`
<table class="steps rows-`)
	w.Text(d.Size)
	w.Raw(`">
<caption>`)
	w.Text(d.Caption)
	w.Raw(`</caption>
<colgroup><col class="c-clock">`)
	{
		v1 := d.Columns
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`<col class="c-should"><col class="c-says">`)
			if v3.Temp {
				w.Raw(`<col class="c-at">`)
			}
		}
	}
	w.Raw(`<col class="c-time"><col class="c-by"></colgroup>
<thead>
<tr><th scope="col" rowspan="2">clock</th>`)
	{
		v4 := d.Columns
		for v5 := range v4 {
			v6 := &v4[v5]
			w.Raw(`<th scope="colgroup" colspan="`)
			w.Int(v6.Cells())
			w.Raw(`">`)
			w.Text(v6.Head)
			{
				v7 := v6.Unit
				if v7 != "" {
					w.Raw(`, `)
					w.Text(v7)
				}
			}
			w.Raw(`</th>`)
		}
	}
	w.Raw(`<th scope="col" rowspan="2">time</th><th scope="col" rowspan="2">by</th></tr>
<tr>`)
	{
		v8 := d.Columns
		for v9 := range v8 {
			v10 := &v8[v9]
			w.Raw(`<th scope="col">should</th><th scope="col">says</th>`)
			if v10.Temp {
				w.Raw(`<th scope="col">at `)
				w.Text(f.TempUnit())
				w.Raw(`</th>`)
			}
		}
	}
	w.Raw(`</tr>
</thead>`)
	{
		v11 := d.Days
		for v12 := range v11 {
			v13 := &v11[v12]
			{
				v14 := v13.Steps
				for v15 := range v14 {
					v16 := &v14[v15]
					{
						writeStep(w, f, v16)
					}
				}
			}
		}
	}
	w.Raw(`
</table>`)
	if d.Notes != 0 {
		w.Raw(`
`)
		{
			writeNotes(w, f, d.Notes)
		}
	}
	w.Raw(`
`)
}

func writeStrip(w *markup.Page, f says, d *view) {
	v1 := d
	{
		v2 := d.StripDays
		for v3 := range v2 {
			v4 := &v2[v3]
			w.Raw(`
<section class="work" id="`)
			w.Text(v4.ID)
			w.Raw(`" aria-labelledby="`)
			w.Text(v4.ID)
			w.Raw(`-head">
<div class="head"><h2 id="`)
			w.Text(v4.ID)
			w.Raw(`-head">Strip day`)
			{
				v5 := v4.Charge
				if v5 != 0 {
					w.Raw(`, charge `)
					w.Int(v5)
					w.Raw(` of `)
					w.Int(v1.Strip.Charges)
				}
			}
			w.Raw(`</h2>`)
			{
				writeLate(w, f, v4.Begin)
			}
			w.Raw(`</div>`)
			{
				v6 := v1
				if v6 != nil {
					w.Raw(`
<dl class="facts">
`)
					{
						v7 := v6.In("strip")
						writeIn(w, f, (&v7))
					}
					w.Raw(`
<div><dt>charge</dt> <dd>`)
					w.Text(f.Volume(v6.Strip.Charge))
					w.Raw(` at `)
					w.Text(f.LotAbv(v6.Strip.Charge))
					w.Raw(`</dd></div>
<div><dt>low wines`)
					if v6.Strip.Charges > 1 {
						w.Raw(` in all`)
					}
					w.Raw(`</dt> <dd>`)
					{
						v8 := v6.Fraction("low wines")
						w.Text(f.Volume((&v8).Lot))
						w.Raw(` at `)
						w.Text(f.LotAbv((&v8).Lot))
					}
					w.Raw(`</dd></div>
<div><dt>stop at the spout</dt> <dd>`)
					{
						v9 := v6.Fraction("low wines")
						w.Text(f.Spout((&v9).Ends))
					}
					w.Raw(`</dd></div>
<div><dt>fire to stop</dt> <dd>`)
					w.Text(f.Duration(f.Minutes(v6.Strip.Hours)))
					w.Raw(`</dd></div>
</dl>`)
				}
			}
			if v1.StripChart.ID != "" && v4.Charge < 2 && !(v1.StripOpposite) {
				w.Raw(`
`)
				{
					v10 := &v1.StripChart
					writeFigure(w, f, v10)
				}
			}
			w.Raw(`
`)
			{
				writeSteps(w, f, v4)
			}
			w.Raw(`
</section>`)
		}
	}
	w.Raw(`
`)
}

func writeStyle(w *markup.Page, f says, d *view) {
	w.Raw(`<style> 
@page {
  margin: 11.5mm 11mm 9.5mm 13mm;
  @top-left { content: `)
	w.Raw(string(f.Quote(d.Head())))
	w.Raw(`; font: bold 9pt/1.2 Arial, "Liberation Sans", sans-serif; vertical-align: bottom; padding-bottom: 1mm; }
  @top-right { content: `)
	w.Raw(string(f.Quote("run no. ", d.RunHead(), "  ", d.HouseHead())))
	w.Raw(`; font: 9pt/1.2 Arial, "Liberation Sans", sans-serif; vertical-align: bottom; padding-bottom: 1mm; }
  @bottom-left { content: `)
	w.Raw(string(f.Quote(d.Version())))
	w.Raw(`; font: 9pt/1.2 Arial, "Liberation Sans", sans-serif; vertical-align: top; padding-top: 1mm; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: bold 10pt/1.2 Arial, "Liberation Sans", sans-serif; vertical-align: top; padding-top: 1mm; }
}
@page cover { @top-left { content: none; } @top-right { content: none; } }
section.cover { page: cover; }`)
	{
		v1 := d.Sections()
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`
@page `)
			w.Name(v3.ID)
			w.Raw(` { @top-left { content: `)
			w.Raw(string(f.Quote(d.Head(), " · ", v3.What)))
			w.Raw(`; } @top-center { content: `)
			w.Raw(string(f.Quote(v3.Date)))
			w.Raw(`; font: bold 9pt/1.2 Arial, "Liberation Sans", sans-serif; vertical-align: bottom; padding-bottom: 1mm; } }
#`)
			w.Name(v3.ID)
			w.Raw(` { page: `)
			w.Name(v3.ID)
			w.Raw(`; }`)
		}
	}
	w.Raw(`

 
* { box-sizing: border-box; }
html { color: #000; background: #fff; font: 11.5pt/1.28 Arial, "Liberation Sans", Helvetica, sans-serif; }
body { margin: 0; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
h1, h2, h3, p, ul, ol, dl, dd, figure, table { margin: 0; padding: 0; }
h1 { font-size: 30pt; line-height: 1.05; margin: 2mm 0; }
h1.long { font-size: 20pt; line-height: 1.15; }
h2 { font-size: 18pt; line-height: 1.15; margin: 0 0 3mm; break-after: avoid; }
h3 { font-size: 13pt; margin: 3mm 0 1mm; break-after: avoid; }
p { margin: 0 0 2.5mm; orphans: 3; widows: 3; }
figure { margin: 0 0 1mm; break-inside: avoid; }
figcaption { font-size: 9.5pt; line-height: 1.1; text-align: right; }
.bang { display: inline-block; border: 1.5px solid #000; border-radius: 0.7em; min-width: 1.3em; padding: 0 0.25em; line-height: 1.12em; text-align: center; font-weight: bold; }
.aside, .how { font-size: 10.5pt; }
.warn { border: 2.5px solid #000; padding: 2.5mm 3mm 1mm; margin: 0 0 4mm; break-inside: avoid; }
.warn h2 { font-size: 13pt; margin-bottom: 1.5mm; }
.warn ul { list-style: none; }
.warn li, .warn p { margin-bottom: 1.5mm; }

 
.house { font-size: 14pt; font-weight: bold; border-bottom: 3px solid #000; padding-bottom: 2mm; }
.style { font-size: 14pt; margin-bottom: 3mm; }
.changes { margin: -1.5mm 0 3mm; }
.about div { display: flex; gap: 4mm; padding: 0.8mm 0; }
.about dt { flex: 0 0 20mm; font-weight: bold; }
.about { margin-bottom: 3.5mm; }
.chain { list-style: none; margin-bottom: 4mm; border-top: 1px solid #000; }
.chain li { display: flex; align-items: baseline; gap: 4mm; border-bottom: 1px solid #000; padding: 0.8mm 0; }
.chain b { flex: 0 0 38mm; font-size: 16pt; text-align: right; white-space: nowrap; }
.short, .forecast tbody th { white-space: nowrap; }
.how { border-top: 1px solid #000; padding-top: 2mm; margin-top: 4mm; }

 
.head { display: flex; justify-content: space-between; align-items: baseline; gap: 5mm; }
.head h2 { margin-bottom: 1mm; font-size: 15pt; white-space: nowrap; }
.late { font-size: 10pt; margin: 0 0 1mm; white-space: nowrap; }
.late i { display: inline-block; width: 13mm; border-bottom: 1px solid #000; margin-right: 1mm; }

 
.facts { margin: 0 0 1mm; break-inside: avoid; font-size: 10.5pt; }
.facts div { display: inline-block; margin-right: 4mm; }
.facts dt, .facts dd { display: inline; }
.facts dd { font-weight: bold; }
.other { display: inline-block; width: 22mm; border-bottom: 1px solid #000; }

 
table { border-collapse: collapse; width: calc(100% - 1px); }
caption { text-align: left; font-weight: bold; font-size: 12pt; padding-bottom: 1mm; break-after: avoid; }
th, td { text-align: left; vertical-align: top; padding: 1mm 1.5mm; }
thead { display: table-header-group; }
thead th { font-size: 9.5pt; vertical-align: bottom; border-bottom: 2px solid #000; line-height: 1.15; }
tr { break-inside: avoid; }
.list tbody td, .list tbody th, .list tfoot td, .list tfoot th { height: 8.2mm; vertical-align: middle; }
#weigh .list tbody td, #weigh .list tbody th, #weigh .list tfoot td, #weigh .list tfoot th { height: 7.2mm; padding-top: 0.3mm; padding-bottom: 0.3mm; }
.list, .days { margin-bottom: 4mm; }
.list td, .list th, .days td, .days th, table.card td, table.card th { border: 1px solid #000; }
.list thead th, .days thead th, table.card thead th { border-bottom-width: 2px; }
.list tbody th, .list tfoot th, .days tbody th { font-weight: normal; }
.list th.tick, table.card th.tick { width: 12mm; }
.list th.amount { width: 30mm; }
.list th.write { width: 30mm; }
.list th.initials { width: 15mm; }
.amount { font-weight: bold; white-space: nowrap; }
.list td.amount { font-size: 13pt; }
tfoot th, tfoot td { border-top: 2px solid #000; }
.tall td, .tall th { height: 11mm; }
.forecast thead th { height: auto; }
.list.close tbody td, .list.close tbody th { height: 7.2mm; padding-top: 0.2mm; padding-bottom: 0.2mm; }
.list.low tbody td, .list.low tbody th { height: 6.6mm; padding-top: 0.2mm; padding-bottom: 0.2mm; }
.days td, .days th { padding: 0.5mm 1.5mm; }
.days tbody td, .days tbody th { vertical-align: middle; height: 6.2mm; padding-top: 0.2mm; padding-bottom: 0.2mm; }
.days .blank { width: 34mm; }
.days tbody th { white-space: nowrap; }
 
.cover:has(.warn, .changes) .chain b { font-size: 14pt; }
.cover:has(.warn, .changes) .chain li { padding: 0.3mm 0; }
.cover:has(.warn, .changes) .chain, .cover:has(.warn, .changes) .about, .cover:has(.warn, .changes) .warn { margin-bottom: 2mm; }
.cover:has(.warn, .changes) figure { width: 84.5%; margin-bottom: 0; }
.cover:has(.warn, .changes) h2 { margin-bottom: 1mm; }
.cover:has(.warn, .changes) .about div { padding: 0.2mm 0; }
.cover:has(.warn, .changes) .days tbody td, .cover:has(.warn, .changes) .days tbody th { height: 5mm; padding-top: 0; padding-bottom: 0; }
td.tick { text-align: center; vertical-align: middle; }
.box { display: inline-block; width: 5mm; height: 5mm; border: 1.7px solid #000; vertical-align: middle; }
table.card { table-layout: fixed; margin-bottom: 5mm; }
table.card td, table.card th { padding: 1mm; text-align: right; vertical-align: middle; }
table.card th[scope="row"], table.card td[colspan] { text-align: left; }
table.card th[scope="colgroup"] { text-align: center; }
table.card tbody td { height: 8.5mm; }
table.card td.tick { text-align: center; }
table.shows .write { width: 17mm; }
.forecast th.write { width: 24mm; }
table.trims tbody td { height: auto; }

 
.steps { table-layout: fixed; margin-bottom: 2mm; }
.c-clock { width: 11.2%; } .c-should { width: 9.3%; } .c-time { width: 9.9%; } .c-by { width: 4.6%; } .c-at { width: 6.2%; }
.steps caption, .days caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.steps thead th { padding: 0.3mm 0.8mm; border: 1px solid #000; }
.steps thead tr:first-child th { border-bottom-width: 1px; }
.steps thead tr:last-child th, .steps thead th[rowspan] { border-bottom-width: 2px; }
.steps thead tr:last-child th { font-weight: normal; }
.steps tbody { break-inside: avoid; }
.steps td, .steps tbody th { border: 1px solid #000; padding: 0.5mm 1mm; vertical-align: middle; }
.steps .first td, .steps .first th { border-top: 2.2px solid #000; }
.clock .long { display: block; font-size: 9pt; line-height: 1; }
.wait { font-style: italic; font-size: 10.5pt; margin: 0; }
.clock { font-weight: normal; white-space: nowrap; }
.clock b { font-size: 14pt; line-height: 1.1; vertical-align: middle; }
.sentence { font-size: 12pt; line-height: 1.14; margin: 0; }
.who { font-style: italic; white-space: nowrap; }
.care { font-size: 10pt; font-weight: bold; margin-right: 1.5mm; }
.care .bang { font-size: 9pt; }
.rows-tall .read td { height: 15mm; }
 
.rows-fill .first:not(.read) td { height: 1px; }
.rows-fill .says::before { content: ""; display: block; height: 6.3mm; }
@media print {
  .work { display: flex; flex-direction: column; min-height: calc(100vh - 1mm); }
  .work > * { flex: none; }
  .work > .rows-fill { flex: auto; margin-bottom: 0; }
  .work > .notes { flex: auto; }`)
	{
		v4 := d.Fills()
		for v5 := range v4 {
			v6 := &v4[v5]
			w.Raw(`
  #`)
			w.Name(v6.ID)
			w.Raw(` .read td, #`)
			w.Name(v6.ID)
			w.Raw(` .read th { height: calc((100vh - `)
			w.Float(v6.FixedMM)
			w.Raw(`mm) / `)
			w.Float(v6.Rows)
			w.Raw(`); }`)
		}
	}
	w.Raw(`
}
.due { text-align: right; font-size: 10.5pt; }
.due b { font-size: 12pt; font-weight: normal; }
.steps td.should { font-size: 8.5pt; line-height: 1; padding: 0.3mm 0 0.3mm 0.8mm; }
.should .name { display: block; font-size: 8.5pt; }
.should b { font-size: 12pt; }
.off { font-size: 8.5pt; white-space: nowrap; letter-spacing: -0.1pt; }
.steps .none { background: none; border-left-color: #bbb; border-right-color: #bbb; }
.steps .time { text-align: center; }
.notes { margin-right: 1px; border: 1px solid #000; padding: 1mm 2mm 0; break-inside: avoid; }
.together { break-inside: avoid; }  
.notes span { font-size: 9.5pt; }
.notes i { display: block; height: 8mm; border-bottom: 1px solid #767676; }
.notes i:last-child { border: 0; }

 
.cautions { columns: 2; column-gap: 6mm; margin-bottom: 2mm; }
.cautions div { break-inside: avoid; padding-bottom: 1mm; }
.cautions dt { font-weight: bold; }
.cautions { font-size: 10pt; line-height: 1.14; }
.closing h2 { margin-bottom: 2mm; }
.block { break-inside: avoid; font-size: 10pt; line-height: 1.14; margin-bottom: 1mm; }
.closing .block { break-inside: auto; }
.block h3 { font-size: 10.5pt; line-height: 1.15; margin: 2mm 0 0.8mm; }
.block p { margin: 0; }
.notices, .verdicts { padding-left: 4mm; }
.notices li, .verdicts li { margin-bottom: 0.5mm; break-inside: avoid; }
.verdicts { columns: 2; column-gap: 6mm; }
.section { white-space: normal; }
.tanks { line-height: 1.08; margin: 2mm 0 1mm; }
.tanks caption { font-size: 10.5pt; }
.tanks tbody th, .tanks tbody td { height: auto; padding-top: 0.1mm; padding-bottom: 0.1mm; }
.samples { display: flex; gap: 3mm; margin-right: 1px; }
.samples table { flex: 1 1 0; }
.samples:has(table + table) .write { width: 16mm; }
.samples:has(table + table) td, .samples:has(table + table) th { padding-left: 0.6mm; padding-right: 0.6mm; font-size: 10pt; }
.samples:has(table + table) thead th { font-size: 9pt; }

 
@media screen {
  body { max-width: 190mm; min-width: 178mm; margin: 6mm auto; padding: 0 4mm; }
  section { padding: 8mm 0; border-bottom: 1px solid #767676; }
  .steps thead th, .list thead th { background: #fff; }
}
 
@media screen and (max-width: 720px) {
  body { min-width: 0; margin: 3mm auto; padding: 0 3mm; }
  h1 { font-size: 22pt; }
  h1.long { font-size: 16pt; }
  .head { display: block; }
  .head h2, .late, .chain b, .short, .forecast tbody th, .amount, .off, .who { white-space: normal; }
  .about div, .chain li { flex-wrap: wrap; gap: 0 3mm; }
  .about dt { flex: 0 0 100%; }
  .chain b { flex: 0 1 auto; text-align: left; }
  .cautions, .verdicts, .brief-cautions { columns: 1; }
  .samples { display: block; }
  .samples caption { white-space: normal; }
  .cover:has(.warn, .changes) figure { width: 100%; }
  table, tbody, tfoot, tr { display: block; }
  caption { display: block; }
  thead, .blank, .none, .room, .spare, td.tick, th.tick, .notes, .late, .box { display: none; }
  table.list, table.card, table.days { width: 100%; }
  tbody tr, tfoot tr { border-top: 1px solid #767676; padding: 1.5mm 0; }
  .steps tbody tr.read:not(.first) { border-top: 0; padding: 0 0 1.5mm 4mm; }
  table td, table th[scope="row"], table th[scope="rowgroup"], table tfoot th { display: inline-block; width: auto !important; height: auto !important; border: 0 !important; padding: 0 3mm 0 0 !important; text-align: left !important; vertical-align: baseline; }
  td:empty { display: none; }
  .do, .brief-do { display: block !important; padding: 0 !important; }
  [data-head]::before { content: attr(data-head) " "; font: 10pt Arial, "Liberation Sans", Helvetica, sans-serif; }
  .should .name { display: inline; margin-right: 1mm; }
  .rows-fill .says::before { content: none; }
}`)
	if d.Stale {
		w.Raw(`
@page { @bottom-center { content: `)
		w.Raw(string(f.Quote(f.StaleWords())))
		w.Raw(`; font: bold 9pt/1.2 Arial, "Liberation Sans", sans-serif; vertical-align: top; } }
.stale { border: 2.5px solid #000; padding: 1mm 3mm; font-weight: bold; }
@media print { .stale { display: none; } }`)
	}
	if d.Short {
		w.Raw(`
 
.brief h1 { font-size: 18pt; margin: 0 0 1mm; }
.brief h1.long { font-size: 13pt; }
.brief { display: flex; flex-direction: column; }
.brief > * { flex: none; }
.brief > .brief-steps { flex: auto; }
@media print { .brief { min-height: calc(100vh - 1mm); } }
.unseen, .brief-steps caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); margin: 0; }
.brief-chain { font-size: 10pt; line-height: 1.16; margin-bottom: 1.5mm; }
.brief .warn { padding: 1mm 2mm 0; margin-bottom: 1.5mm; }
.brief .warn li, .brief .warn p { font-size: 10pt; line-height: 1.16; margin-bottom: 0.8mm; }
.brief-weigh { font-size: 10.5pt; line-height: 1.35; margin: 0 0 1mm; }
.brief-weigh span { white-space: nowrap; margin-right: 2mm; }
.brief .box { width: 3.6mm; height: 3.6mm; }
.brief-steps { table-layout: fixed; margin-bottom: 1.5mm; }
.b-clock { width: 17.5mm; } .b-should { width: 20mm; } .b-says { width: 15mm; } .b-time { width: 11mm; }
.brief-steps th, .brief-steps td { border: 1px solid #000; padding: 0.3mm 0.8mm; vertical-align: middle; }
.brief-steps thead th { font-size: 9pt; padding: 0.2mm 0.8mm; }
.brief-steps .stage th { font-size: 11pt; font-weight: normal; line-height: 1.1; border-top: 2.2px solid #000; padding: 0.6mm 0.8mm; height: 1px; break-after: avoid; }
.brief-steps .stage .late { margin: 0 0 0 4mm; }
.brief-steps .clock b { font-size: 11pt; }
.brief-steps .clock .long { font-size: 8pt; }
.brief-steps .time { text-align: center; }
.brief-steps td.should { font-size: 8.5pt; line-height: 1; padding: 0.3mm 0 0.3mm 0.8mm; }
.brief-steps .should b { font-size: 10.5pt; }
.brief-steps .off { font-size: 8pt; }
.brief-steps .name { font-size: 8pt; letter-spacing: -0.1pt; }
.brief .at { float: right; font-size: 8pt; margin-right: 5.5mm; }
.brief .care { font-size: inherit; }
.brief-cautions { columns: 2; column-gap: 5mm; line-height: 1.16; margin-bottom: 1mm; }
.brief-cautions div, .brief-cautions dt, .brief-cautions dd { display: inline; }
.brief-cautions dt { font-weight: bold; }
.brief-foot { font-size: 9pt; line-height: 1.16; margin: 0; }`)
		{
			v7 := d.ShortSizes()
			for v8 := range v7 {
				v9 := &v7[v8]
				w.Raw(`
.brief-`)
				w.Name(v9.Name)
				w.Raw(` .brief-do { font-size: `)
				w.Float(v9.WordsPt)
				w.Raw(`pt; line-height: 1.16; }
.brief-`)
				w.Name(v9.Name)
				w.Raw(` .brief-steps .brief-do, .brief-`)
				w.Name(v9.Name)
				w.Raw(` .brief-steps .clock { height: `)
				w.Float(v9.RowMM)
				w.Raw(`mm; }
.brief-`)
				w.Name(v9.Name)
				w.Raw(` .brief-cautions { font-size: `)
				w.Float(v9.CarePt)
				w.Raw(`pt; }`)
			}
		}
	}
	w.Raw(`

 
.chart { display: block; width: 100%; height: auto; }
.chart.narrow { display: none; }
@media screen and (max-width: 720px) {
  .chart.wide { display: none; }
  .chart.narrow { display: block; max-width: 540px; }
}
.chart text { font: 13px Arial, "Liberation Sans", Helvetica, sans-serif; fill: #000; }
.chart .tick { font-size: 12.5px; }
.chart .axis { font-size: 13px; font-weight: bold; }
.chart .label { font-weight: bold; stroke: #fff; stroke-width: 4px; stroke-linejoin: round; paint-order: stroke; }
.chart .name { font-size: 14px; }
.chart path { stroke: none; }
.chart path:not([fill]) { fill: none; }
.chart .line { stroke: #000; stroke-width: 2.6px; stroke-linejoin: round; }
.chart .rule { stroke: #a0a0a0; stroke-width: 0.7px; }
.chart .day { stroke: #555; stroke-width: 1px; stroke-dasharray: 5 3; }
.chart .frame { stroke: #000; stroke-width: 1.2px; }
.chart .leader { stroke: #000; stroke-width: 0.9px; }
.chart path.band { fill: #d6d6d6; }
.chart .bracket { stroke: #000; stroke-width: 1.4px; }
.chart .cutline { stroke: #000; stroke-width: 1.2px; }
.chart .bar { stroke: #000; stroke-width: 1.6px; }
.chart path.off { fill: #eee; }
.chart .dot { fill: #fff; stroke: #000; stroke-width: 1.8px; }
.chart .hatch { stroke: #666; stroke-width: 0.8px; fill: none; }
.chart .speck { fill: #555; }
</style>`)
}

func writeVessels(w *markup.Page, f says, d *view) {
	w.Raw(`
<table class="list">
<caption>See that these are clean, empty and free</caption>
<thead><tr><th scope="col" class="tick">done</th><th scope="col">vessel</th><th scope="col">for</th><th scope="col">holds</th><th scope="col">from</th><th scope="col" class="write">seen at</th><th scope="col" class="initials">by</th></tr></thead>
<tbody>`)
	{
		v1 := d.Schedule.Vessels
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`
<tr><td class="tick"><span class="box"></span></td><th scope="row">`)
			w.Text(v3.Vessel)
			w.Raw(`</th><td data-head="for">`)
			w.Text(v3.Use)
			w.Raw(`</td><td data-head="holds">`)
			{
				v4 := d.VesselOf(v3.Use)
				w.Text(f.Litres((&v4).HoldsL))
			}
			w.Raw(`</td><td class="short" data-head="from">`)
			w.Text(f.Short(v3.From))
			w.Raw(`, `)
			w.Text(f.Hm(v3.From))
			w.Raw(`</td><td class="blank"></td><td class="blank"></td></tr>`)
		}
	}
	w.Raw(`
</tbody>
</table>
`)
}

func writeWeigh(w *markup.Page, f says, d *view) {
	w.Raw(`
<section id="weigh" aria-labelledby="weigh-head">
<h2 id="weigh-head">Weigh out</h2>
<table class="list">
<caption>Grain</caption>
<thead><tr><th scope="col" class="tick">done</th><th scope="col">grain</th><th scope="col" class="amount">weigh out</th><th scope="col">share</th><th scope="col">goes in</th><th scope="col" class="write">weighed</th><th scope="col" class="initials">by</th></tr></thead>
<tbody>`)
	{
		v1 := d.Bill.Lines
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`
<tr><td class="tick"><span class="box"></span></td><th scope="row">`)
			w.Text(v3.Name)
			{
				v4 := f.Lots(*v3)
				if v4 != "" {
					w.Raw(`, `)
					w.Text(v4)
				}
			}
			w.Raw(`</th><td class="amount">`)
			w.Text(f.Mass(v3.MassKg))
			w.Raw(`</td><td>`)
			w.Text(f.Num(v3.SharePct, 1))
			w.Raw(` %</td><td class="short" data-head="goes in">`)
			w.Text(f.StepAt(v3.AddedIn))
			w.Raw(`</td><td class="blank"></td><td class="blank"></td></tr>`)
		}
	}
	w.Raw(`
</tbody>
<tfoot><tr><td></td><th scope="row">in all</th><td class="amount">`)
	w.Text(f.Mass(d.Bill.TotalKg))
	w.Raw(`</td><td>100 %</td><td></td><td class="blank"></td><td class="blank"></td></tr></tfoot>
</table>
<table class="list">
<caption>`)
	if f.Us() {
		w.Raw(`Mash water`)
	} else {
		w.Raw(`Liquor`)
	}
	w.Raw(` and additions</caption>
<thead><tr><th scope="col" class="tick">done</th><th scope="col">what</th><th scope="col" class="amount">measure out</th><th scope="col">at</th><th scope="col">goes in</th><th scope="col" class="write">measured</th><th scope="col" class="initials">by</th></tr></thead>
<tbody>`)
	{
		v5 := d.Bill.Additions
		for v6 := range v5 {
			v7 := &v5[v6]
			w.Raw(`
<tr><td class="tick"><span class="box"></span></td><th scope="row">`)
			w.Text(v7.Name)
			w.Raw(`</th><td class="amount">`)
			w.Text(f.Said(v7.Amount))
			w.Raw(`</td><td class="short"`)
			if v7.At != nil {
				w.Raw(` data-head="at"`)
			}
			w.Raw(`>`)
			{
				v8 := v7.At
				if v8 != nil {
					w.Text(f.Said(*v8))
				}
			}
			w.Raw(`</td><td class="short" data-head="goes in">`)
			w.Text(f.StepAt(v7.Step))
			w.Raw(`</td><td class="blank"></td><td class="blank"></td></tr>`)
		}
	}
	w.Raw(`
</tbody>
</table>
<dl class="facts">
<div><dt>`)
	if f.Us() {
		w.Raw(`distiller's bushels`)
	} else {
		w.Raw(`diastatic power`)
	}
	w.Raw(`</dt> <dd>`)
	if f.Us() {
		w.Text(f.Num(d.Bill.Bushels, 2))
		w.Raw(` of 56 lb`)
	} else {
		w.Text(f.Num(d.Bill.LintnerDeg, 0))
		w.Raw(` deg Lintner`)
	}
	w.Raw(`</dd></div>
<div><dt>`)
	if f.Us() {
		w.Raw(`mash water to grain`)
	} else {
		w.Raw(`liquor to grist`)
	}
	w.Raw(`</dt> <dd>`)
	w.Text(f.Liquor(d.Mash.LiquorGristLPerKg))
	w.Raw(`</dd></div>
<div><dt>fullest, in the cooker</dt> <dd>`)
	{
		v9 := d.VesselOf("mash")
		w.Text(f.Litres((&v9).MostL))
		w.Raw(`, `)
		w.Text(f.Num((&v9).FillPct, 0))
		w.Raw(` %`)
	}
	w.Raw(`</dd></div>
<div><dt>fullest, in the fermenter</dt> <dd>`)
	{
		v10 := d.VesselOf("ferment")
		w.Text(f.Litres((&v10).MostL))
		w.Raw(`, `)
		w.Text(f.Num((&v10).FillPct, 0))
		w.Raw(` %`)
	}
	w.Raw(`</dd></div>
</dl>
`)
	{
		writeVessels(w, f, d)
	}
	{
		v11 := &d.Spirit
		if v11.FeintsFrom == "steady" {
			{
				v12 := v11.FeintsReturned
				if v12 != nil {
					w.Raw(`
<p class="aside">The spirit run takes `)
					w.Text(f.Volume(*v12))
					w.Raw(` of feints a charge, at `)
					w.Text(f.Strength(v12.Strength()))
					w.Raw(`, as a house at work has them. Other feints today, or none: plan again with a line such as <code>feints none yet</code>, and work from that sheet.</p>`)
				}
			}
		}
	}
	if d.MashOpposite {
		w.Raw(`
<figure class="opposite-day">`)
		{
			v13 := &d.MashChart
			chart.Draw(w, v13)
		}
		w.Raw(`<figcaption><b>For mash day, opposite.</b> `)
		{
			v14 := &d.MashChart
			writeMarked(w, f, v14)
		}
		w.Raw(`</figcaption></figure>`)
	}
	w.Raw(`
`)
	{
		writeBlocks(w, f, d.BlocksOn("weigh"))
	}
	w.Raw(`
</section>
`)
}

func writeWho(w *markup.Page, f says, d *shortStep) {
	if d.People > 1 {
		w.Raw(` <span class="who">`)
		w.Int(d.People)
		w.Raw(` people.</span>`)
	}
	if d.Attend == "alone" {
		w.Raw(` <span class="who">It needs nobody.</span>`)
	} else {
		if d.Attend == "start" {
			w.Raw(` <span class="who">Start it; then it needs nobody.</span>`)
		}
	}
}

func writeWhoOfsheetstep(w *markup.Page, f says, d *step) {
	if d.People > 1 {
		w.Raw(` <span class="who">`)
		w.Int(d.People)
		w.Raw(` people.</span>`)
	}
	if d.Attend == "alone" {
		w.Raw(` <span class="who">It needs nobody.</span>`)
	} else {
		if d.Attend == "start" {
			w.Raw(` <span class="who">Start it; then it needs nobody.</span>`)
		}
	}
}

func writeWood(w *markup.Page, f says, d *view) {
	if len(d.Cask.Forecast) > 0 {
		w.Raw(`
<section id="wood" aria-labelledby="wood-head">
<h2 id="wood-head">Years in wood</h2>
<p class="aside">One cask of `)
		w.Text(f.Litres(d.Cask.SizeL))
		w.Raw(`, `)
		if d.Cask.New {
			w.Raw(`new`)
		} else {
			w.Raw(`used`)
		}
		w.Raw(` `)
		w.Text(d.Cask.Kind)
		{
			v1 := d.Cask.Char
			if v1 != 0 {
				w.Raw(`, char `)
				w.Int(v1)
			}
		}
		w.Raw(`, in a `)
		w.Text(d.Cask.Climate)
		w.Raw(` rack house, for `)
		w.Text(f.Months(d.Cask.RestMonths))
		w.Raw(`. A forecast from published averages: each cask goes its own way.`)
		if d.Cask.Bottles != 0 {
			w.Raw(` About `)
			w.Text(f.Count(d.Cask.Bottles, "bottle"))
			w.Raw(` of `)
			w.Text(f.Num(f.Millilitres(d.Cask.BottleL), 0))
			w.Raw(` mL at `)
			w.Text(f.Strength(d.Cask.BottleAt))
			w.Raw(` from `)
			w.Text(f.Count(d.Cask.Casks, "cask"))
			if d.Cask.BottleAsked != nil {
				w.Raw(`, as it comes from the cask: it is weaker than the `)
				w.Text(f.Strength(*d.Cask.BottleAsked))
				w.Raw(` asked for`)
			} else {
				if d.Cask.BottleAssumed {
					w.Raw(` (the batch states no bottling strength)`)
				}
			}
			w.Raw(`; `)
			w.Text(f.Num(d.Cask.CaskLossPct, 0))
			w.Raw(` % of the volume goes to the air and the wood.`)
		}
		w.Raw(`</p>`)
		if d.CaskChart.ID != "" {
			w.Raw(`
`)
			{
				v2 := &d.CaskChart
				writeFigure(w, f, v2)
			}
		}
		w.Raw(`
<div class="samples">`)
		v3 := d.TwoColumns()
		{
			v4 := d.SampleTables()
			for v5 := range v4 {
				v6 := v4[v5]
				w.Raw(`
<table class="list forecast `)
				w.Text(d.WoodRows)
				w.Raw(`">
<caption>`)
				if v5 != 0 {
					w.Raw(`Later samples`)
				} else {
					if v3 {
						w.Raw(`Samples, twice a year`)
					} else {
						w.Raw(`What a sample should show, twice a year, and what it shows`)
					}
				}
				w.Raw(`</caption>
<thead><tr><th scope="col">on</th><th scope="col">after</th><th scope="col">volume</th><th scope="col">`)
				if !(v3) {
					w.Raw(`strength`)
				} else {
					if f.Us() {
						w.Raw(`proof`)
					} else {
						w.Raw(`% vol`)
					}
				}
				w.Raw(`</th>`)
				if !(v3) {
					w.Raw(`<th scope="col">`)
					if f.Us() {
						w.Raw(`proof gallons`)
					} else {
						w.Raw(`pure alcohol`)
					}
					w.Raw(`</th>`)
				}
				w.Raw(`<th scope="col" class="write">drawn on</th><th scope="col" class="write">`)
				if v3 {
					w.Raw(`says`)
				} else {
					w.Raw(`strength`)
				}
				w.Raw(`</th>`)
				if !(v3) {
					w.Raw(`<th scope="col">nose and palate</th>`)
				}
				w.Raw(`</tr></thead>
<tbody>`)
				{
					v7 := v6
					for v8 := range v7 {
						v9 := &v7[v8]
						w.Raw(`
<tr><th scope="row">`)
						w.Text(f.Day(v9.On))
						w.Raw(`</th><td class="short">`)
						w.Text(f.Years(v9.AgeYears))
						w.Raw(`</td><td class="short">`)
						w.Text(f.Said(v9.Volume()))
						w.Raw(`</td><td class="short">`)
						if f.Us() {
							w.Text(f.Num(v9.Proof, 1))
							if !(v3) {
								w.Raw(` proof`)
							}
						} else {
							w.Text(f.Num(v9.AbvPct, 1))
							if !(v3) {
								w.Raw(` % vol`)
							}
						}
						w.Raw(`</td>`)
						if !(v3) {
							w.Raw(`<td class="short" data-head="`)
							if f.Us() {
								w.Raw(`proof gallons`)
							} else {
								w.Raw(`pure alcohol`)
							}
							w.Raw(`">`)
							if f.Us() {
								w.Text(f.Num(v9.ProofGallons, 1))
							} else {
								w.Text(f.Num(v9.PureL, 1))
								w.Raw(` L`)
							}
							w.Raw(`</td>`)
						}
						w.Raw(`<td class="blank"></td><td class="blank"></td>`)
						if !(v3) {
							w.Raw(`<td class="blank"></td>`)
						}
						w.Raw(`</tr>`)
					}
				}
				w.Raw(`
</tbody>
</table>`)
			}
		}
		w.Raw(`
</div>
`)
		{
			writeBlocks(w, f, d.BlocksOn("wood"))
		}
		w.Raw(`
</section>`)
	}
	w.Raw(`
`)
}
