// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package page

import (
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
)

func writeBatch(w *markup.Page, f says, d *shown) {
	w.Raw(`
<section id="top" aria-labelledby="title">
<p class="house">`)
	w.Text(d.P.Plant.Name)
	w.Raw(`</p>
<h1 id="title">`)
	w.Text(d.P.Batch.Name)
	w.Raw(`</h1>
<p>`)
	{
		v1 := d.P.Batch.Standard
		if v1 != "" {
			w.Text(v1)
			w.Raw(`. `)
		}
	}
	w.Raw(`Begins `)
	w.Text(f.Date(d.P.Batch.Start))
	w.Raw(`, `)
	w.Text(f.Hm(d.P.Batch.Start))
	w.Raw(`; done `)
	w.Text(f.Date(d.P.Schedule.End))
	w.Raw(`.</p>
<p id="run">`)
	if d.Record != nil {
		w.Raw(`Readings go to run <b>`)
		w.Text(f.Safe(d.Record.Number))
		w.Raw(`</b>, `)
		w.Text(f.Safe(d.Record.File))
		w.Raw(`. One that was mistyped is put right under it: what was written first stays in the record.`)
	} else {
		w.Text(f.Safe(d.NoRecord))
	}
	w.Raw(`</p>`)
	if !(d.Record != nil) && !(d.NoRecord != "") {
		w.Raw(`
<p id="open">No run of `)
		w.Text(f.Date(d.P.Batch.Start))
		w.Raw(` is opened yet. <button type="button" id="open-run">Open the run</button> <span id="open-said" role="status" data-own></span></p>`)
	}
	{
		v2 := d.Stopping()
		if len(v2) > 0 {
			w.Raw(`
<ul id="stopping" class="warn">`)
			{
				v3 := v2
				for v4 := range v3 {
					v5 := &v3[v4]
					w.Raw(`<li><b>`)
					if v5.Severity == "error" {
						w.Raw(`Broken: `)
					} else {
						w.Raw(`! `)
					}
					w.Raw(`</b>`)
					w.Text(f.Trade(v5.Summary))
					w.Raw(`</li>`)
				}
			}
			w.Raw(`
</ul>`)
		}
	}
	w.Raw(`
<ol class="chain">
<li><b>`)
	w.Text(f.Mass(d.P.Bill.TotalKg))
	w.Raw(`</b> of grain</li>
<li><b>`)
	w.Text(f.Volume(d.P.Ferment.Wash))
	w.Raw(`</b> of wash at `)
	w.Text(f.LotAbv(d.P.Ferment.Wash))
	w.Raw(`</li>`)
	{
		v6 := d.P.Strip.Fraction("low wines")
		w.Raw(`
<li><b>`)
		w.Text(f.Volume((&v6).Lot))
		w.Raw(`</b> of low wines at `)
		w.Text(f.LotAbv((&v6).Lot))
		w.Raw(`</li>`)
	}
	{
		v7 := d.Hearts()
		w.Raw(`
<li><b>`)
		w.Text(f.Volume((&v7).Lot))
		w.Raw(`</b> of hearts at `)
		w.Text(f.Strength((&v7).Strength()))
		w.Raw(`, `)
		w.Text(f.Pure((&v7).Lot))
		w.Raw(`</li>`)
	}
	if d.P.Cask.SizeL != 0 {
		w.Raw(`
<li><b>`)
		if d.P.Cask.Casks != 0 {
			w.Text(f.Count(d.P.Cask.Casks, "cask"))
		} else {
			w.Raw(`no full cask`)
		}
		w.Raw(`</b> of `)
		w.Text(f.Litres(d.P.Cask.SizeL))
		w.Raw(` at `)
		w.Text(f.Strength(d.P.Cask.Entry))
		w.Raw(`</li>`)
	}
	w.Raw(`
</ol>
<nav aria-label="Contents"><ul>`)
	if d.Ahead != nil {
		w.Raw(`<li><a href="#ahead">From here on</a></li>`)
	}
	if d.Saved != nil {
		w.Raw(`<li><a href="#saved">What changed</a></li>`)
	}
	if len(d.Weigh) > 0 {
		w.Raw(`<li><a href="#weigh">Weigh out</a></li>`)
	}
	{
		v8 := d.Parts
		for v9 := range v8 {
			v10 := &v8[v9]
			w.Raw(`<li><a href="#`)
			w.Fragment(v10.ID)
			w.Raw(`">`)
			w.Text(v10.Title)
			w.Raw(`</a></li>`)
		}
	}
	w.Raw(`
<li><a href="#cut">The cut</a></li>
<li><a href="#cautions">Cautions and the law</a></li>
<li><a href="sheet">The sheet, to print</a></li>
</ul></nav>
</section>`)
	{
		v11 := d.Ahead
		if v11 != nil {
			w.Raw(`
<section id="ahead" aria-labelledby="ahead-title">
<h2 id="ahead-title">From here on</h2>
<p>Reckoned from what was read until `)
			w.Text(f.ClockOf(v11.From))
			w.Raw(`:</p>
<ul>`)
			{
				v12 := v11.Coming
				for v13 := range v12 {
					v14 := &v12[v13]
					w.Raw(`
<li class="coming" data-at="`)
					w.Text(f.At(v14.At))
					w.Raw(`" data-what="`)
					w.Text(v14.Words)
					w.Raw(`">`)
					w.Text(v14.Words)
					w.Raw(` about <b>`)
					w.Text(f.ClockOf(v14.At))
					w.Raw(`</b>, give or take `)
					w.Text(f.Give(v14.SD))
					w.Raw(`</li>`)
				}
			}
			w.Raw(`
<li>hearts of `)
			w.Text(f.Hearts(v11))
			w.Raw(`; `)
			w.Text(f.Count(v11.Casks, "cask"))
			w.Raw(` filled</li>
</ul>
</section>`)
		}
	}
	{
		v15 := d.Saved
		if v15 != nil {
			w.Raw(`
<section id="saved" aria-labelledby="saved-title">
<h2 id="saved-title">What the last save changed</h2>
<p>Saved at `)
			w.Text(f.Clock(v15.At))
			w.Raw(`.</p>
<ul>`)
			{
				v16 := v15.What.Edits
				for v17 := range v16 {
					v18 := &v16[v17]
					w.Raw(`<li>`)
					w.Text(f.Safe(v18.What))
					w.Raw(`</li>`)
				}
			}
			{
				v19 := v15.What.Notes
				for v20 := range v19 {
					v21 := v19[v20]
					w.Raw(`<li>`)
					w.Text(f.Safe(v21))
					w.Raw(`: of no effect</li>`)
				}
			}
			w.Raw(`
</ul>`)
			{
				v22 := f.Changed(v15.What)
				if len(v22) > 0 {
					w.Raw(`
<dl class="facts">`)
					{
						v23 := v22
						for v24 := range v23 {
							v25 := &v23[v24]
							w.Raw(`<div><dt>`)
							w.Text(v25.Name)
							w.Raw(`</dt><dd>`)
							w.Text(f.Outcome(*v25))
							w.Raw(`</dd></div>`)
						}
					}
					w.Raw(`
</dl>`)
				} else {
					w.Raw(`<p>`)
					{
						v26 := v15.What.Missing
						if v26 != "" {
							w.Text(f.Safe(v26))
						} else {
							w.Raw(`No number of the plan is another.`)
						}
					}
					w.Raw(`</p>`)
				}
			}
			{
				v27 := v15.What.Gained
				for v28 := range v27 {
					v29 := &v27[v28]
					w.Raw(`<p><b>New:</b> `)
					w.Text(f.Safe(v29.Text))
					w.Raw(`</p>`)
				}
			}
			{
				v30 := v15.What.Lost
				for v31 := range v30 {
					v32 := &v30[v31]
					w.Raw(`<p><b>No more:</b> `)
					w.Text(f.Safe(v32.Text))
					w.Raw(`</p>`)
				}
			}
			w.Raw(`
</section>`)
		}
	}
	if len(d.Weigh) > 0 {
		w.Raw(`
<section id="weigh" aria-labelledby="weigh-title">
<h2 id="weigh-title">Weigh out</h2>
<ol class="steps">`)
		{
			v33 := d.Weigh
			for v34 := range v33 {
				v35 := &v33[v34]
				w.Raw(`
<li class="step" id="weigh-`)
				w.Text(f.Id(v35.ID))
				w.Raw(`">
<p class="head"><label class="tick"><input type="checkbox" data-tick="`)
				w.Text(v35.ID)
				w.Raw(`"> <b>`)
				w.Text(f.Trade(v35.Rooms[0].Blank.What))
				w.Raw(`</b></label></p>
`)
				{
					writeVisit(w, f, v35)
				}
				w.Raw(`
</li>`)
			}
		}
		w.Raw(`
</ol>
</section>`)
	}
	v36 := d.P
	{
		v37 := d.Parts
		for v38 := range v37 {
			v39 := &v37[v38]
			w.Raw(`
<section id="`)
			w.Text(v39.ID)
			w.Raw(`" aria-labelledby="`)
			w.Text(v39.ID)
			w.Raw(`-title">
<h2 id="`)
			w.Text(v39.ID)
			w.Raw(`-title">`)
			w.Text(v39.Title)
			w.Raw(`</h2>`)
			if v39.Chart.ID != "" {
				w.Raw(`
<figure data-touch="`)
				w.Text(f.Touch(v39.Chart.Touch))
				w.Raw(`"`)
				{
					v40 := v39.Chart.Narrow
					if v40 != nil {
						w.Raw(` data-touch-narrow="`)
						w.Text(f.Touch(v40.Touch))
						w.Raw(`"`)
					}
				}
				w.Raw(`>
`)
				{
					v41 := &v39.Chart
					chart.Draw(w, v41)
				}
				w.Raw(`
<figcaption data-own aria-live="polite">Touch the curve to read it.</figcaption>
</figure>`)
			}
			w.Raw(`
<ol class="steps">`)
			{
				v42 := v39.Steps
				for v43 := range v42 {
					v44 := &v42[v43]
					w.Raw(`
<li class="step" id="step-`)
					w.Text(f.Id(v44.ID))
					w.Raw(`" data-start="`)
					w.Text(v44.Start)
					w.Raw(`" data-end="`)
					w.Text(v44.End)
					w.Raw(`">`)
					{
						v45 := v44.Day
						if v45 != "" {
							w.Raw(`<h3>`)
							w.Text(v45)
							w.Raw(`</h3>`)
						}
					}
					w.Raw(`
<p class="head"><label class="tick"><input type="checkbox" data-tick="`)
					w.Text(v44.ID)
					w.Raw(`"> <span><b>`)
					w.Text(f.Hm(v44.Start))
					w.Raw(`</b>`)
					if v44.DurationMin != 0 {
						w.Raw(`, `)
						w.Text(f.Duration(v44.DurationMin))
					}
					w.Raw(`</span></label> <span class="who">`)
					w.Text(v44.Attend)
					if v44.People > 1 {
						w.Raw(`, `)
						w.Int(v44.People)
						w.Raw(` people`)
					}
					w.Raw(`</span></p>`)
					{
						v46 := v44.Cautions
						for v47 := range v46 {
							v48 := v46[v47]
							v49 := v48
							{
								v50 := v36.Cautions
								for v51 := range v50 {
									v52 := &v50[v51]
									if v52.Key == v49 {
										w.Raw(`
<details class="care"><summary>! `)
										w.Text(f.Trade(v52.Title))
										w.Raw(`</summary><p>`)
										w.Text(f.Trade(v52.Text))
										w.Raw(`</p></details>`)
									}
								}
							}
						}
					}
					w.Raw(`
<p class="do">`)
					{
						v53 := v44.When
						if v53 != nil {
							w.Raw(`<b>`)
							w.Text(f.Phrase(*v53))
							w.Raw(`:</b> `)
						}
					}
					w.Text(f.Phrase(v44.Do))
					w.Raw(`</p>`)
					{
						v54 := v44.Visits
						for v55 := range v54 {
							v56 := &v54[v55]
							{
								writeVisit(w, f, v56)
							}
						}
					}
					w.Raw(`
</li>`)
				}
			}
			w.Raw(`
</ol>
</section>`)
		}
	}
	w.Raw(`

<section id="cut" aria-labelledby="cut-title">
<h2 id="cut-title">The cut</h2>`)
	{
		v57 := d.Slide
		if v57 != nil {
			w.Raw(`
<p><label for="cut-at">The hearts end at</label> <output id="cut-words" for="cut-at" data-own></output></p>
<p><input id="cut-at" type="range" min="`)
			w.Text(f.Float(v57.From))
			w.Raw(`" max="`)
			w.Text(f.Float(v57.To))
			w.Raw(`" step="`)
			w.Text(f.Float(v57.Step))
			w.Raw(`" value="`)
			w.Text(f.Float(v57.Now))
			w.Raw(`" data-now="`)
			w.Text(f.Float(v57.Now))
			w.Raw(`"></p>
<dl class="facts" id="cut-gives" data-own aria-live="polite"></dl>
<p id="cut-said" role="status" data-own></p>
<p>Computed as a plan would be; the recipe stays as it is, at `)
			w.Text(v57.Words(v57.Now))
			w.Raw(`.</p>`)
		} else {
			w.Raw(`
<p>It can't be moved here: `)
			w.Text(f.Safe(d.NoSlide))
			w.Raw(`.</p>`)
		}
	}
	w.Raw(`
</section>

<section id="cautions" aria-labelledby="cautions-title">
<h2 id="cautions-title">Cautions and the law</h2>
<dl>`)
	{
		v58 := d.P.Cautions
		for v59 := range v58 {
			v60 := &v58[v59]
			w.Raw(`<div><dt>! `)
			w.Text(f.Trade(v60.Title))
			w.Raw(`</dt><dd>`)
			w.Text(f.Trade(v60.Text))
			w.Raw(`</dd></div>`)
		}
	}
	w.Raw(`
</dl>
<p><b>Local code, permits and licensed practice come first; a page is no substitute.</b></p>`)
	{
		v61 := d.P.Notices
		if len(v61) > 0 {
			w.Raw(`
<h3>What is to be said of this batch</h3>
<ul>`)
			{
				v62 := v61
				for v63 := range v62 {
					v64 := &v62[v63]
					w.Raw(`<li><b>`)
					w.Text(v64.Severity)
					if v64.Line != 0 {
						w.Raw(`, line `)
						w.Int(v64.Line)
					}
					w.Raw(`:</b> `)
					w.Text(f.Trade(v64.Summary))
					{
						v65 := v64.Reason
						if v65 != "" {
							w.Raw(`: `)
							w.Text(f.Trade(v65))
						}
					}
					w.Raw(`.`)
					{
						v66 := v64.Help
						if v66 != "" {
							w.Raw(` To mend it: `)
							w.Text(f.Trade(v66))
							w.Raw(`.`)
						}
					}
					w.Raw(` (`)
					w.Text(v64.Code)
					w.Raw(`)</li>`)
				}
			}
			w.Raw(`
</ul>`)
		}
	}
	{
		v67 := d.P.Law
		if v67 != nil {
			w.Raw(`
<h3>`)
			w.Text(v67.Title)
			w.Raw(`</h3>
<p>`)
			w.Text(v67.Source)
			w.Raw(`. This is not legal advice.</p>
<ul>`)
			{
				v68 := v67.Conditions
				for v69 := range v68 {
					v70 := &v68[v69]
					w.Raw(`<li>`)
					w.Text(v70.Asks)
					w.Raw(`: <b>`)
					w.Text(v70.Met)
					w.Raw(`</b>`)
					{
						v71 := v70.Found
						if v71 != "" {
							w.Raw(`, `)
							w.Text(v71)
						}
					}
					{
						v72 := v70.Section
						if v72 != "" {
							w.Raw(` (`)
							w.Text(v72)
							w.Raw(`)`)
						}
					}
					w.Raw(`</li>`)
				}
			}
			w.Raw(`
</ul>`)
		}
	}
	if d.Exposed {
		w.Raw(`
<p>This page is served on the house's network, unencrypted: who listens there can read what is on it.</p>`)
	}
	w.Raw(`
</section>
`)
}

func writePage(w *markup.Page, f says, d *shown) {
	w.Raw(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>`)
	if d.Problems != "" {
		w.Raw(`! errors: `)
	}
	if d.Plan != nil {
		w.Text(d.P.Batch.Name)
		w.Raw(`, `)
		w.Text(d.P.Plant.Name)
	} else {
		w.Raw(`no plan yet`)
	}
	w.Raw(`</title>
<link rel="stylesheet" href="page.css">
<script src="page.js" defer></script>
</head>
<body data-version="`)
	w.Text(d.Version)
	w.Raw(`"`)
	if d.Plan != nil {
		w.Raw(` data-key="`)
		w.Text(d.P.Batch.Name)
		w.Raw(` `)
		w.Text(d.P.Schedule.Start)
		w.Raw(`"`)
	}
	{
		v1 := d.Record
		if v1 != nil {
			w.Raw(` data-seen="`)
			w.Text(v1.Seen)
			w.Raw(`" data-run="`)
			w.Text(f.Safe(v1.Number))
			w.Raw(`"`)
		}
	}
	w.Raw(`>
<header class="bar" id="bar">
<p id="gone" class="bad" role="alert" data-own hidden>newmake does not answer: what is typed stays here until it does.</p>`)
	if d.Problems != "" {
		w.Raw(`
<section id="problems" class="bad" role="alert" aria-labelledby="problems-title">
<h2 id="problems-title">`)
		if d.Plan != nil {
			w.Raw(`The text has errors. This is the last good plan.`)
		} else {
			w.Raw(`The text has errors: there is no plan yet.`)
		}
		w.Raw(`</h2>
<details><summary>`)
		w.Text(d.Problem())
		w.Raw(`</summary><pre tabindex="0">`)
		w.Text(d.Problems)
		w.Raw(`</pre></details>
</section>`)
	}
	w.Raw(`
<p id="next" data-own></p>
</header>
<main id="main">`)
	if d.Plan != nil {
		{
			writeBatch(w, f, d)
		}
	}
	w.Raw(`
</main>
</body>
</html>
`)
}

func writeRoom(w *markup.Page, f says, d *room) {
	w.Raw(`
<div class="room" id="room-`)
	w.Text(f.Id(d.Blank.ID))
	w.Raw(`">`)
	if d.Open {
		w.Raw(`
<label for="blank-`)
		w.Text(f.Id(d.Blank.ID))
		w.Raw(`">`)
		{
			writeShould(w, f, d)
		}
		w.Raw(`</label>
<span class="type"><input id="blank-`)
		w.Text(f.Id(d.Blank.ID))
		w.Raw(`" name="`)
		w.Text(d.Blank.ID)
		w.Raw(`" data-blank type="text" inputmode="decimal" maxlength="40" size="7"> `)
		w.Text(d.Unit)
		if d.Sampled {
			w.Raw(` <label class="sample">at <input name="`)
			w.Text(d.Blank.ID)
			w.Raw(` sample" data-sample type="text" inputmode="decimal" maxlength="12" size="4"> `)
			w.Text(f.TempUnit())
			w.Raw(`</label>`)
		}
		w.Raw(`</span>`)
	} else {
		w.Raw(`
<span>`)
		{
			writeShould(w, f, d)
		}
		w.Raw(`</span>`)
		{
			v1 := d.Said
			if v1 != nil {
				w.Raw(` <span class="kept" data-kept>read <b>`)
				w.Text(f.Safe(v1.Value))
				w.Raw(`</b>`)
				{
					v2 := v1.Was
					if v2 != "" {
						w.Raw(` (first written: `)
						w.Text(f.Safe(v2))
						w.Raw(`)`)
					}
				}
				{
					v3 := v1.When
					if v3 != "" {
						w.Raw(` at `)
						w.Text(f.Safe(v3))
					}
				}
				{
					v4 := v1.By
					if v4 != "" {
						w.Raw(` by `)
						w.Text(f.Safe(v4))
					}
				}
				{
					v5 := v1.Note
					if v5 != "" {
						w.Raw(`: `)
						w.Text(f.Safe(v5))
					}
				}
				w.Raw(`</span>`)
			}
		}
	}
	w.Raw(`
</div>`)
}

func writeShould(w *markup.Page, f says, d *room) {
	if d.Blank.Stage != "used" {
		w.Text(f.Trade(d.Blank.What))
		w.Raw(` `)
	}
	w.Raw(`should be <b>`)
	w.Text(f.Said(d.Blank.Should))
	w.Raw(`</b>`)
	if d.Tolerance.Unit != "" {
		w.Raw(` `)
		w.Text(f.Off(d.Tolerance))
	}
}

func writeSlip(w *markup.Page, f says, d *room) {
	w.Raw(`
<details class="more" id="slip-`)
	w.Text(f.Id(d.Blank.ID))
	w.Raw(`">
<summary>Mistyped? `)
	w.Text(f.Trade(d.Blank.What))
	{
		v1 := d.Said.When
		if v1 != "" {
			w.Raw(`, `)
			w.Text(f.Safe(v1))
		}
	}
	w.Raw(`</summary>
<form class="visit slip" id="slip-form-`)
	w.Text(f.Id(d.Blank.ID))
	w.Raw(`" autocomplete="off" data-slip>
<p><label for="slip-value-`)
	w.Text(f.Id(d.Blank.ID))
	w.Raw(`">it should be</label> <span class="type"><input id="slip-value-`)
	w.Text(f.Id(d.Blank.ID))
	w.Raw(`" name="`)
	w.Text(d.Blank.ID)
	w.Raw(`" data-blank type="text" inputmode="decimal" maxlength="40" size="7"> `)
	w.Text(d.Said.Unit)
	if d.Said.Sampled {
		w.Raw(` <label class="sample">at <input name="`)
		w.Text(d.Blank.ID)
		w.Raw(` sample" data-sample type="text" inputmode="decimal" maxlength="12" size="4"> `)
		w.Text(f.TempUnit())
		w.Raw(`</label>`)
	}
	w.Raw(`</span></p>
<p class="put">`)
	if d.Said.When != "" {
		w.Raw(`<label>time <input type="text" name="clock" inputmode="numeric" maxlength="8" size="5" placeholder="hh:mm"></label>`)
	}
	w.Raw(`
<label>by <input type="text" name="by" maxlength="20" size="4"></label>
<label>remark <input type="text" name="remark" maxlength="200" size="12"></label>
<button type="submit">Put right</button></p>
<p>Leave empty what was right; <b>none</b> says that it was not read after all.</p>
<p class="said" role="status" data-own></p>
</form>
</details>`)
}

func writeVisit(w *markup.Page, f says, d *visit) {
	if d.Open {
		w.Raw(`
<form class="visit" id="visit-`)
		w.Text(f.Id(d.ID))
		w.Raw(`" autocomplete="off"`)
		{
			v1 := d.Due
			if v1 != "" {
				w.Raw(` data-due="`)
				w.Text(v1)
				w.Raw(`"`)
			}
		}
		w.Raw(`>`)
		{
			v2 := d.Due
			if v2 != "" {
				w.Raw(`<p class="due">at `)
				w.Text(f.Hm(v2))
				w.Raw(`</p>`)
			}
		}
		{
			v3 := d.Rooms
			for v4 := range v3 {
				v5 := &v3[v4]
				{
					writeRoom(w, f, v5)
				}
			}
		}
		w.Raw(`
<p class="put">`)
		if d.Timed {
			w.Raw(`<label>time <input type="text" name="clock" inputmode="numeric" maxlength="8" size="5" placeholder="hh:mm"></label>`)
		}
		w.Raw(`
<label>by <input type="text" name="by" maxlength="20" size="4"></label>
<button type="submit">Keep</button></p>
<details class="more"><summary>`)
		if d.Timed {
			w.Raw(`another day, `)
		}
		w.Raw(`a remark, not read</summary>`)
		if d.Timed {
			w.Raw(`<p><label>day <input type="date" name="day"></label></p>`)
		}
		w.Raw(`
<p><label>remark <input type="text" name="remark" maxlength="200"></label></p>
<p><label><input type="checkbox" name="none"> what is empty here was not read</label></p>
</details>
<p class="said" role="status" data-own></p>
</form>`)
	} else {
		if len(d.Rooms) > 0 {
			w.Raw(`
<div class="visit" id="visit-`)
			w.Text(f.Id(d.ID))
			w.Raw(`">`)
			{
				v6 := d.Due
				if v6 != "" {
					w.Raw(`<p class="due">at `)
					w.Text(f.Hm(v6))
					w.Raw(`</p>`)
				}
			}
			{
				v7 := d.Rooms
				for v8 := range v7 {
					v9 := &v7[v8]
					{
						writeRoom(w, f, v9)
					}
				}
			}
			w.Raw(`
</div>`)
		}
	}
	{
		v10 := d.Rooms
		for v11 := range v10 {
			v12 := &v10[v11]
			if v12.Said != nil {
				if v12.Said.Unit != "" {
					{
						writeSlip(w, f, v12)
					}
				}
			}
		}
	}
}
