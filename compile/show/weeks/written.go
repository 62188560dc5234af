// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package weeks

import (
	"newmake/compile/show/markup"
)

func writeSeason(w *markup.Page, d *view) {
	w.Raw(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="`)
	w.Text(d.Policy)
	w.Raw(`">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>`)
	w.Text(d.Name)
	w.Raw(`, `)
	w.Text(d.Plant)
	w.Raw(`</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>
<main>
<h1>`)
	w.Text(d.Name)
	w.Raw(`</h1>
<p>`)
	w.Text(d.Plant)
	w.Raw(`, `)
	w.Text(d.Span)
	w.Raw(`</p>
<p class="verdict">`)
	w.Text(d.Verdict)
	w.Raw(`</p>
<p>`)
	w.Text(d.Outcome)
	w.Raw(`</p>`)
	{
		v1 := d.Conflicts
		if len(v1) > 0 {
			w.Raw(`
<div class="warn"><ul>`)
			{
				v2 := v1
				for v3 := range v2 {
					v4 := v2[v3]
					w.Raw(`<li>`)
					w.Text(v4)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul></div>`)
		}
	}
	{
		v5 := d.Asked
		if len(v5) > 0 {
			w.Raw(`
<ul>`)
			{
				v6 := v5
				for v7 := range v6 {
					v8 := &v6[v7]
					w.Raw(`<li`)
					if !(v8.Met) {
						w.Raw(` class="unmet"`)
					}
					w.Raw(`>`)
					w.Text(v8.What)
					w.Raw(`: `)
					w.Text(v8.Comes)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	{
		v9 := d.Changes
		if len(v9) > 0 {
			w.Raw(`
<h2>Otherwise than printed</h2>
<ul>`)
			{
				v10 := v9
				for v11 := range v10 {
					v12 := v10[v11]
					w.Raw(`<li>`)
					w.Text(v12)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	w.Raw(`
<h2>The weeks</h2>`)
	{
		v13 := d.Pictures
		for v14 := range v13 {
			v15 := &v13[v14]
			w.Raw(`
<figure>
<div class="wide" tabindex="0" role="group" aria-label="`)
			w.Text(v15.Title)
			w.Raw(`, a picture that may be wider than the window">
<svg viewBox="0 0 `)
			w.Float(v15.Width)
			w.Raw(` `)
			w.Float(v15.Height)
			w.Raw(`" role="img" aria-labelledby="t`)
			w.Int(v15.ID)
			w.Raw(` d`)
			w.Int(v15.ID)
			w.Raw(`">
<title id="t`)
			w.Int(v15.ID)
			w.Raw(`">`)
			w.Text(v15.Title)
			w.Raw(`</title>
<desc id="d`)
			w.Int(v15.ID)
			w.Raw(`">`)
			w.Text(v15.About)
			w.Raw(`</desc>
<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#fff"/><line x1="0" y1="0" x2="0" y2="6" stroke="#000"/></pattern></defs>`)
			{
				v16 := v15.Batches
				for v17 := range v16 {
					v18 := &v16[v17]
					w.Raw(`<rect class="use `)
					w.Text(v18.Class)
					w.Raw(`" x="`)
					w.Float(v18.X)
					w.Raw(`" y="2" width="12" height="10"/><text x="`)
					w.Float(v18.TextX)
					w.Raw(`" y="11">`)
					w.Text(v18.Name)
					w.Raw(`</text>`)
				}
			}
			{
				v19 := v15.Shades
				for v20 := range v19 {
					v21 := &v19[v20]
					w.Raw(`<rect class="`)
					w.Text(v21.Class)
					w.Raw(`" x="`)
					w.Float(v21.X)
					w.Raw(`" y="`)
					w.Float(v21.Y)
					w.Raw(`" width="`)
					w.Float(v21.W)
					w.Raw(`" height="`)
					w.Float(v21.H)
					w.Raw(`"><title>`)
					w.Text(v21.Title)
					w.Raw(`</title></rect>`)
				}
			}
			{
				v22 := v15.Days
				for v23 := range v22 {
					v24 := &v22[v23]
					w.Raw(`<line class="`)
					if v24.Week {
						w.Raw(`monday`)
					} else {
						w.Raw(`day`)
					}
					w.Raw(`" x1="`)
					w.Float(v24.X)
					w.Raw(`" x2="`)
					w.Float(v24.X)
					w.Raw(`" y1="30" y2="`)
					w.Float(v15.Foot)
					w.Raw(`"/>`)
					if v24.Label != "" {
						w.Raw(`<text class="small" x="`)
						w.Float(v24.X)
						w.Raw(`" y="27">`)
						w.Text(v24.Label)
						w.Raw(`</text>`)
					}
				}
			}
			{
				v25 := v15.Rows
				for v26 := range v25 {
					v27 := &v25[v26]
					w.Raw(`
<line class="rule" x1="0" x2="`)
					w.Float(v15.Width)
					w.Raw(`" y1="`)
					w.Float(v27.Y)
					w.Raw(`" y2="`)
					w.Float(v27.Y)
					w.Raw(`"/><text x="0" y="`)
					w.Float(v27.TextY)
					w.Raw(`">`)
					w.Text(v27.Name)
					w.Raw(`</text>`)
					{
						v28 := v27.Line
						if v28 != "" {
							w.Raw(`<path class="load" d="`)
							w.Text(v28)
							w.Raw(`"/>`)
						}
					}
					{
						v29 := v27.Boxes
						for v30 := range v29 {
							v31 := &v29[v30]
							w.Raw(`<rect class="`)
							w.Text(v31.Class)
							w.Raw(`" x="`)
							w.Float(v31.X)
							w.Raw(`" y="`)
							w.Float(v31.Y)
							w.Raw(`" width="`)
							w.Float(v31.W)
							w.Raw(`" height="`)
							w.Float(v31.H)
							w.Raw(`"><title>`)
							w.Text(v31.Title)
							w.Raw(`</title></rect>`)
							if v31.Text != "" {
								w.Raw(`<text class="small" x="`)
								w.Float(v31.TextX)
								w.Raw(`" y="`)
								w.Float(v31.TextY)
								w.Raw(`">`)
								w.Text(v31.Text)
								w.Raw(`</text>`)
							}
						}
					}
					if v27.HasLimit {
						w.Raw(`<line class="limit" x1="`)
						w.Float(v15.Left)
						w.Raw(`" x2="`)
						w.Float(v15.Width)
						w.Raw(`" y1="`)
						w.Float(v27.Limit)
						w.Raw(`" y2="`)
						w.Float(v27.Limit)
						w.Raw(`"/><text class="small" x="0" y="`)
						w.Float(v27.LimitY)
						w.Raw(`">`)
						w.Text(v27.LimitText)
						w.Raw(`</text>`)
					}
				}
			}
			w.Raw(`
</svg>
</div>
<figcaption>`)
			w.Text(v15.Title)
			w.Raw(`. Grey: closed. Hatched: out of use. A thick frame and an exclamation mark: a conflict. The dashed line is what there is.</figcaption>
</figure>`)
		}
	}
	{
		v32 := d.Limits
		if len(v32) > 0 {
			w.Raw(`
<h2>What limits it</h2>
<ul>`)
			{
				v33 := v32
				for v34 := range v33 {
					v35 := v33[v34]
					w.Raw(`<li>`)
					w.Text(v35)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	{
		v36 := d.Weekdays
		if len(v36) > 0 {
			w.Raw(`
<ul>`)
			{
				v37 := v36
				for v38 := range v37 {
					v39 := v37[v38]
					w.Raw(`<li>`)
					w.Text(v39)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	{
		v40 := d.Runs
		if len(v40) > 0 {
			w.Raw(`
<h2>Runs</h2>
<table>
<thead><tr><th scope="col">run</th><th scope="col">batch</th><th scope="col">mash</th><th scope="col">fermenter</th><th scope="col">stripping run</th><th scope="col">spirit run</th><th scope="col">filled</th><th scope="col">casks</th><th scope="col">what flows</th></tr></thead>
<tbody>`)
			{
				v41 := v40
				for v42 := range v41 {
					v43 := &v41[v42]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v43.Number)
					w.Raw(`</th><td>`)
					w.Text(v43.Batch)
					w.Raw(`</td><td data-head="mash">`)
					w.Text(v43.Mash)
					w.Raw(`</td><td data-head="fermenter">`)
					w.Text(v43.Fermenter)
					w.Raw(`</td><td data-head="stripping run">`)
					w.Text(v43.Strip)
					w.Raw(`</td><td data-head="spirit run">`)
					w.Text(v43.Spirit)
					w.Raw(`</td><td data-head="filled">`)
					w.Text(v43.Filled)
					w.Raw(`</td><td data-head="casks">`)
					w.Text(v43.Casks)
					w.Raw(`</td><td>`)
					w.Text(v43.Flow)
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
	}
	{
		v44 := d.Days
		if len(v44) > 0 {
			w.Raw(`
<h2>Days</h2>
<table>
<thead><tr><th scope="col">day</th><th scope="col">hours</th><th scope="col">people</th><th scope="col">boiler, most</th><th scope="col">what</th></tr></thead>
<tbody>`)
			{
				v45 := v44
				for v46 := range v45 {
					v47 := v45[v46]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v47[0])
					w.Raw(`</th><td>`)
					w.Text(v47[1])
					w.Raw(`</td><td data-head="people">`)
					w.Text(v47[2])
					w.Raw(`</td><td data-head="boiler, most">`)
					w.Text(v47[3])
					w.Raw(`</td><td>`)
					w.Text(v47[4])
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
	}
	{
		v48 := d.Tanks
		if len(v48) > 0 {
			w.Raw(`
<h2>Tanks</h2>
<table>
<thead><tr><th scope="col">tank</th><th scope="col">for</th><th scope="col">holds</th><th scope="col">fullest</th></tr></thead>
<tbody>`)
			{
				v49 := v48
				for v50 := range v49 {
					v51 := v49[v50]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v51[0])
					w.Raw(`</th><td data-head="for">`)
					w.Text(v51[1])
					w.Raw(`</td><td data-head="holds">`)
					w.Text(v51[2])
					w.Raw(`</td><td data-head="fullest">`)
					w.Text(v51[3])
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
	}
	w.Raw(`
<p>`)
	w.Text(d.Safety)
	w.Raw(`</p>
</main>
</body>
</html>
`)
}

func writeWeek(w *markup.Page, d *weekView) {
	w.Raw(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="`)
	w.Text(d.Policy)
	w.Raw(`">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>`)
	w.Text(d.Name)
	w.Raw(`: `)
	w.Text(d.Title)
	w.Raw(`</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>
<main class="week">
<h1>`)
	w.Text(d.Title)
	w.Raw(`</h1>
<p>`)
	w.Text(d.Name)
	w.Raw(`, `)
	w.Text(d.Plant)
	w.Raw(`</p>`)
	{
		v1 := d.Days
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`
<h2>`)
			w.Text(v3.Day)
			w.Raw(`: `)
			w.Text(v3.Hours)
			w.Raw(`</h2>`)
			if len(v3.Jobs) > 0 {
				w.Raw(`
<table>
<thead><tr><th scope="col">from, to</th><th scope="col">what</th><th scope="col">where</th><th scope="col">people</th><th scope="col" class="tick">who</th><th scope="col" class="tick">done</th></tr></thead>
<tbody>`)
				{
					v4 := v3.Jobs
					for v5 := range v4 {
						v6 := &v4[v5]
						w.Raw(`
<tr><th scope="row" class="clock">`)
						w.Text(v6.Clock)
						w.Raw(` to `)
						w.Text(v6.Until)
						w.Raw(`</th><td>`)
						if v6.Conflict {
							w.Raw(`! `)
						}
						w.Text(v6.What)
						if v6.Out {
							w.Raw(` <span class="out-of">out of the shift</span>`)
						}
						w.Raw(`</td><td>`)
						w.Text(v6.Where)
						w.Raw(`</td><td data-head="people">`)
						w.Text(v6.People)
						w.Raw(`</td><td></td><td></td></tr>`)
					}
				}
				w.Raw(`
</tbody>
</table>`)
			}
			{
				v7 := v3.Stands
				if len(v7) > 0 {
					w.Raw(`
<p>`)
					{
						v8 := v7
						for v9 := range v8 {
							v10 := v8[v9]
							if v9 != 0 {
								w.Raw(`; `)
							}
							w.Text(v10)
						}
					}
					w.Raw(`.</p>`)
				}
			}
		}
	}
	w.Raw(`
<p>`)
	w.Text(d.Safety)
	w.Raw(`</p>
</main>
</body>
</html>
`)
}
