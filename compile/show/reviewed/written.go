// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package reviewed

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
<title>Run `)
	w.Text(d.Run)
	w.Raw(` of `)
	w.Text(d.Batch)
	w.Raw(`: review, `)
	w.Text(d.Plant)
	w.Raw(`</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>
<main>
<section class="cover" aria-labelledby="top">
<p class="house">`)
	w.Text(d.Plant)
	w.Raw(`</p>
<h1 id="top" class="long">Run `)
	w.Text(d.Run)
	w.Raw(` of `)
	w.Text(d.Batch)
	w.Raw(`</h1>
<p>`)
	w.Text(d.Day)
	{
		v1 := d.Version
		if v1 != "" {
			w.Raw(`; set against the plan of `)
			w.Text(v1)
		}
	}
	w.Raw(`</p>
`)
	{
		v2 := d.Verdict
		for v3 := range v2 {
			v4 := v2[v3]
			w.Raw(`<p class="verdict">`)
			w.Text(v4)
			w.Raw(`</p>
`)
		}
	}
	{
		v5 := d.Gaps
		if len(v5) > 0 {
			w.Raw(`
<table class="review">
<caption>What the house lives by</caption>
<thead><tr><th scope="col">what</th><th scope="col">said</th><th scope="col">plan</th><th scope="col">as done</th><th scope="col">unexplained</th></tr></thead>
<tbody>`)
			{
				v6 := v5
				for v7 := range v6 {
					v8 := v6[v7]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v8[0])
					w.Raw(`</th><td class="number" data-head="said">`)
					w.Text(v8[1])
					w.Raw(`</td><td class="number" data-head="plan">`)
					w.Text(v8[2])
					w.Raw(`</td><td class="number" data-head="as done">`)
					w.Text(v8[3])
					w.Raw(`</td><td class="number" data-head="unexplained">`)
					w.Text(v8[4])
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>
<p>`)
			w.Text(d.Counted)
			w.Raw(`</p>`)
		}
	}
	{
		v9 := d.Breaks
		for v10 := range v9 {
			v11 := &v9[v10]
			w.Raw(`
<div class="warn"><h2>`)
			w.Text(v11.Head)
			w.Raw(`</h2><p>`)
			w.Text(v11.Explains)
			w.Raw(`</p><ul>`)
			{
				v12 := v11.Causes
				for v13 := range v12 {
					v14 := v12[v13]
					w.Raw(`<li>`)
					w.Text(v14)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul></div>`)
		}
	}
	{
		v15 := d.Otherwise
		if v15 != nil {
			w.Raw(`
<h2>What was done otherwise</h2>
<table class="review">
<caption>What each thing was worth, set against the plan</caption>
<thead><tr>`)
			{
				v16 := v15.Heads
				for v17 := range v16 {
					v18 := v16[v17]
					w.Raw(`<th scope="col">`)
					w.Text(v18)
					w.Raw(`</th>`)
				}
			}
			w.Raw(`</tr></thead>
<tbody>`)
			{
				v19 := v15.Rows
				for v20 := range v19 {
					v21 := v19[v20]
					w.Raw(`
<tr>`)
					{
						v22 := v21
						for v23 := range v22 {
							v24 := v22[v23]
							if v23 != 0 {
								w.Raw(`<td class="number" data-head="`)
								w.Text(d.Otherwise.Heads[v23])
								w.Raw(`">`)
								w.Text(v24)
								w.Raw(`</td>`)
							} else {
								w.Raw(`<th scope="row">`)
								w.Text(v24)
								w.Raw(`</th>`)
							}
						}
					}
					w.Raw(`</tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>`)
		}
	}
	{
		v25 := d.Small
		if v25 != "" {
			w.Raw(`
<p>`)
			w.Text(v25)
			w.Raw(`.</p>`)
		}
	}
	{
		v26 := d.From
		if v26 != "" {
			w.Raw(`
<h2>`)
			w.Text(v26)
			w.Raw(`</h2>`)
		}
	}
	{
		v27 := d.Ahead
		if len(v27) > 0 {
			w.Raw(`
<ul class="notices">`)
			{
				v28 := v27
				for v29 := range v28 {
					v30 := v28[v29]
					w.Raw(`<li>`)
					w.Text(v30)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	{
		v31 := d.Untold
		for v32 := range v31 {
			v33 := &v31[v32]
			w.Raw(`
<h2>`)
			w.Text(v33.Head)
			w.Raw(`</h2>
<ul class="notices">`)
			{
				v34 := v33.Parts
				for v35 := range v34 {
					v36 := v34[v35]
					w.Raw(`<li>`)
					w.Text(v36)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	w.Raw(`
</section>`)
	{
		v37 := d.Parts
		for v38 := range v37 {
			v39 := &v37[v38]
			w.Raw(`
<section class="`)
			w.Text(v39.ID)
			w.Raw(`" aria-labelledby="`)
			w.Text(v39.ID)
			w.Raw(`">
<h2 id="`)
			w.Text(v39.ID)
			w.Raw(`">`)
			w.Text(v39.Title)
			w.Raw(`</h2>`)
			if v39.Chart.ID != "" {
				w.Raw(`
<figure>`)
				{
					v40 := &v39.Chart
					chart.Draw(w, v40)
				}
				w.Raw(`<figcaption>`)
				w.Text(v39.Marked)
				w.Raw(`</figcaption></figure>`)
			}
			{
				v41 := v39.Lines
				if len(v41) > 0 {
					w.Raw(`
<table class="review">
<caption>Readings</caption>
<thead><tr><th scope="col">when</th><th scope="col">what</th><th scope="col">said</th><th scope="col">plan</th><th scope="col">as done</th><th scope="col">off</th><th scope="col">right</th></tr></thead>
<tbody>`)
					{
						v42 := v41
						for v43 := range v42 {
							v44 := &v42[v43]
							w.Raw(`
<tr`)
							if v44.Off {
								w.Raw(` class="wrong"`)
							}
							w.Raw(`><td class="number">`)
							w.Text(v44.When)
							w.Raw(`</td><th scope="row">`)
							w.Text(v44.Cells[0])
							w.Raw(`</th><td class="number" data-head="said">`)
							w.Text(v44.Cells[1])
							w.Raw(`</td><td class="number" data-head="plan">`)
							w.Text(v44.Cells[2])
							w.Raw(`</td><td class="number" data-head="as done">`)
							w.Text(v44.Cells[3])
							w.Raw(`</td><td class="number" data-head="off">`)
							w.Text(v44.Cells[4])
							w.Raw(`</td><td class="right" data-head="right">`)
							if v44.Off {
								w.Raw(`no`)
							} else {
								w.Raw(`yes`)
							}
							w.Raw(`</td></tr>`)
						}
					}
					w.Raw(`
</tbody>
</table>`)
				}
			}
			w.Raw(`
</section>`)
		}
	}
	{
		v45 := d.Flows
		if len(v45) > 0 {
			w.Raw(`
<section class="closing" aria-labelledby="balance">
<h2 id="balance">The balance of the alcohol</h2>
<p>`)
			w.Text(d.Checks)
			w.Raw(`</p>
<table class="review">
<caption>What was read, and what is in accord with all the rest</caption>
<thead><tr><th scope="col">what</th><th scope="col">said</th><th scope="col">in accord</th><th scope="col">from</th></tr></thead>
<tbody>`)
			{
				v46 := v45
				for v47 := range v46 {
					v48 := v46[v47]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v48[0])
					w.Raw(`</th><td class="number" data-head="said">`)
					w.Text(v48[1])
					w.Raw(`</td><td class="number" data-head="in accord">`)
					w.Text(v48[2])
					w.Raw(`</td><td data-head="from">`)
					w.Text(v48[3])
					w.Raw(`</td></tr>`)
				}
			}
			w.Raw(`
</tbody>
</table>
</section>`)
		}
	}
	w.Raw(`
</main>
</body>
</html>
`)
}
