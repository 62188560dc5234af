// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package racked

import (
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
)

func writePage(w *markup.Page, d *view) {
	w.Raw(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="`)
	w.Text(d.Policy)
	w.Raw(`">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Casks on `)
	w.Text(d.On)
	w.Raw(`</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>
<main>
<p class="house">Casks</p>
<h1>`)
	w.Text(d.Title)
	w.Raw(`</h1>`)
	{
		v1 := d.Attention
		if len(v1) > 0 {
			w.Raw(`
<div class="warn"><h2>To be done</h2><ul>`)
			{
				v2 := v1
				for v3 := range v2 {
					v4 := &v2[v3]
					w.Raw(`<li><strong>`)
					w.Text(v4.Head)
					w.Raw(`</strong> `)
					w.Text(v4.Says)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul></div>`)
		}
	}
	if d.Chart.ID != "" {
		w.Raw(`
<figure>`)
		{
			v5 := &d.Chart
			chart.Draw(w, v5)
		}
		w.Raw(`<figcaption>`)
		w.Text(d.Key)
		w.Raw(`</figcaption></figure>`)
	}
	if len(d.Rows) > 0 {
		w.Raw(`
<table class="casks">
<caption>Each cask, in the order in which the runs name them</caption>
<thead><tr><th scope="col">cask</th><th scope="col">of</th><th scope="col">now</th><th scope="col">meets its standard</th><th scope="col">its promise: rest over</th><th scope="col">next sample</th><th scope="col">last read, last tasting</th></tr></thead>
<tbody>`)
		{
			v6 := d.Rows
			for v7 := range v6 {
				v8 := &v6[v7]
				w.Raw(`
<tr`)
				if v8.Leak {
					w.Raw(` class="leak"`)
				}
				w.Raw(`><th scope="row">`)
				w.Text(v8.Serial)
				{
					v9 := v8.Place
					if v9 != "" {
						w.Raw(`<br><span class="small">`)
						w.Text(v9)
						w.Raw(`</span>`)
					}
				}
				w.Raw(`</th><td>`)
				w.Text(v8.Of)
				w.Raw(`<br><span class="small">`)
				w.Text(v8.Filled)
				w.Raw(`</span></td><td class="number" data-head="now">`)
				w.Text(v8.Volume)
				w.Raw(`, `)
				w.Text(v8.Strength)
				w.Raw(`<br>`)
				w.Text(v8.Now)
				w.Raw(` `)
				w.Text(d.Alcohol)
				w.Raw(`<br><span class="small">`)
				w.Text(v8.NowRange)
				w.Raw(`</span></td><td data-head="meets its standard">`)
				w.Text(v8.Lawful)
				{
					v10 := v8.LawfulOf
					if v10 != "" {
						w.Raw(`<br><span class="small">`)
						w.Text(v10)
						w.Raw(`</span>`)
					}
				}
				w.Raw(`</td><td data-head="its promise: rest over">`)
				w.Text(v8.Over)
				{
					v11 := v8.Then
					if v11 != "" {
						w.Raw(`<br><span class="small">`)
						w.Text(v11)
						w.Raw(`</span>`)
					}
				}
				{
					v12 := v8.OverOf
					if v12 != "" {
						w.Raw(`<br><span class="small">`)
						w.Text(v12)
						w.Raw(`</span>`)
					}
				}
				w.Raw(`</td><td class="short" data-head="next sample">`)
				w.Text(v8.Sample)
				w.Raw(`</td><td data-head="last read, last tasting">`)
				w.Text(v8.Last)
				w.Raw(`</td></tr>`)
			}
		}
		w.Raw(`
</tbody>
</table>`)
	}
	{
		v13 := d.Lots
		if len(v13) > 0 {
			w.Raw(`
<h2>Sampling of lots</h2>`)
			{
				v14 := v13
				for v15 := range v14 {
					v16 := v14[v15]
					w.Raw(`
<p>`)
					w.Text(v16)
					w.Raw(`</p>`)
				}
			}
		}
	}
	{
		v17 := d.Totals
		if len(v17) > 0 {
			w.Raw(`
<table>
<caption>Together</caption>
<thead><tr><th scope="col">batch</th><th scope="col">year</th><th scope="col">casks</th><th scope="col">`)
			w.Text(d.Alcohol)
			w.Raw(`</th><th scope="col">gone since the fill</th></tr></thead>
<tbody>`)
			{
				v18 := v17
				for v19 := range v18 {
					v20 := v18[v19]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v20[0])
					w.Raw(`</th><td class="number">`)
					w.Text(v20[1])
					w.Raw(`</td><td class="number" data-head="casks">`)
					w.Text(v20[2])
					w.Raw(`</td><td class="number" data-head="`)
					w.Text(d.Alcohol)
					w.Raw(`">`)
					w.Text(v20[3])
					w.Raw(`</td><td class="number" data-head="gone since the fill">`)
					w.Text(v20[4])
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
	}
	{
		v21 := d.Kinds
		if len(v21) > 0 {
			w.Raw(`
<table>
<caption>By kind</caption>
<thead><tr><th scope="col">kind</th><th scope="col">year</th><th scope="col">casks</th><th scope="col">`)
			w.Text(d.Alcohol)
			w.Raw(`</th><th scope="col">gone since the fill</th></tr></thead>
<tbody>`)
			{
				v22 := v21
				for v23 := range v22 {
					v24 := v22[v23]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v24[0])
					w.Raw(`</th><td class="number">`)
					w.Text(v24[1])
					w.Raw(`</td><td class="number" data-head="casks">`)
					w.Text(v24[2])
					w.Raw(`</td><td class="number" data-head="`)
					w.Text(d.Alcohol)
					w.Raw(`">`)
					w.Text(v24[3])
					w.Raw(`</td><td class="number" data-head="gone since the fill">`)
					w.Text(v24[4])
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
	}
	{
		v25 := d.Notes
		for v26 := range v25 {
			v27 := v25[v26]
			w.Raw(`
<p>`)
			w.Text(v27)
			w.Raw(`</p>`)
		}
	}
	w.Raw(`
</main>
</body>
</html>
`)
}
