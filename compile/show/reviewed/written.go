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
<tr>`)
					{
						v9 := v8
						for v10 := range v9 {
							v11 := v9[v10]
							if v10 != 0 {
								w.Raw(`<td class="number">`)
								w.Text(v11)
								w.Raw(`</td>`)
							} else {
								w.Raw(`<th scope="row">`)
								w.Text(v11)
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
		v12 := d.Breaks
		for v13 := range v12 {
			v14 := v12[v13]
			w.Raw(`
<div class="warn"><h2>The alcohol is out of balance</h2><p>What would explain it about as well:</p><ul>`)
			{
				v15 := v14
				for v16 := range v15 {
					v17 := v15[v16]
					w.Raw(`<li>`)
					w.Text(v17)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul></div>`)
		}
	}
	{
		v18 := d.Otherwise
		if v18 != nil {
			w.Raw(`
<h2>What was done otherwise</h2>
<table class="review">
<caption>What each thing was worth, set against the plan</caption>
<thead><tr>`)
			{
				v19 := v18.Heads
				for v20 := range v19 {
					v21 := v19[v20]
					w.Raw(`<th scope="col">`)
					w.Text(v21)
					w.Raw(`</th>`)
				}
			}
			w.Raw(`</tr></thead>
<tbody>`)
			{
				v22 := v18.Rows
				for v23 := range v22 {
					v24 := v22[v23]
					w.Raw(`
<tr>`)
					{
						v25 := v24
						for v26 := range v25 {
							v27 := v25[v26]
							if v26 != 0 {
								w.Raw(`<td class="number">`)
								w.Text(v27)
								w.Raw(`</td>`)
							} else {
								w.Raw(`<th scope="row">`)
								w.Text(v27)
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
		v28 := d.Small
		if v28 != "" {
			w.Raw(`
<p>`)
			w.Text(v28)
			w.Raw(` more `)
			if v28 == "1 thing" {
				w.Raw(`was`)
			} else {
				w.Raw(`were`)
			}
			w.Raw(` done otherwise, too small to gauge.</p>`)
		}
	}
	{
		v29 := d.From
		if v29 != "" {
			w.Raw(`
<h2>`)
			w.Text(v29)
			w.Raw(`</h2>`)
		}
	}
	{
		v30 := d.Ahead
		if len(v30) > 0 {
			w.Raw(`
<ul class="notices">`)
			{
				v31 := v30
				for v32 := range v31 {
					v33 := v31[v32]
					w.Raw(`<li>`)
					w.Text(v33)
					w.Raw(`</li>`)
				}
			}
			w.Raw(`</ul>`)
		}
	}
	{
		v34 := d.Untold
		for v35 := range v34 {
			v36 := &v34[v35]
			w.Raw(`
<h2>`)
			w.Text(v36.Head)
			w.Raw(`</h2>
<ul class="notices">`)
			{
				v37 := v36.Parts
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
	w.Raw(`
</section>`)
	{
		v40 := d.Parts
		for v41 := range v40 {
			v42 := &v40[v41]
			w.Raw(`
<section class="`)
			w.Text(v42.ID)
			w.Raw(`" aria-labelledby="`)
			w.Text(v42.ID)
			w.Raw(`">
<h2 id="`)
			w.Text(v42.ID)
			w.Raw(`">`)
			w.Text(v42.Title)
			w.Raw(`</h2>`)
			if v42.Chart.ID != "" {
				w.Raw(`
<figure>`)
				{
					v43 := &v42.Chart
					chart.Draw(w, v43)
				}
				w.Raw(`<figcaption>`)
				w.Text(v42.Marked)
				w.Raw(`</figcaption></figure>`)
			}
			{
				v44 := v42.Lines
				if len(v44) > 0 {
					w.Raw(`
<table class="review">
<caption>Readings</caption>
<thead><tr><th scope="col">when</th><th scope="col">what</th><th scope="col">said</th><th scope="col">plan</th><th scope="col">as done</th><th scope="col">off</th><th scope="col">right</th></tr></thead>
<tbody>`)
					{
						v45 := v44
						for v46 := range v45 {
							v47 := &v45[v46]
							w.Raw(`
<tr`)
							if v47.Off {
								w.Raw(` class="wrong"`)
							}
							w.Raw(`><td class="number">`)
							w.Text(v47.When)
							w.Raw(`</td>`)
							{
								v48 := v47.Cells
								for v49 := range v48 {
									v50 := v48[v49]
									if v49 != 0 {
										w.Raw(`<td class="number">`)
										w.Text(v50)
										w.Raw(`</td>`)
									} else {
										w.Raw(`<th scope="row">`)
										w.Text(v50)
										w.Raw(`</th>`)
									}
								}
							}
							w.Raw(`<td class="right">`)
							if v47.Off {
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
		v51 := d.Flows
		if len(v51) > 0 {
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
				v52 := v51
				for v53 := range v52 {
					v54 := v52[v53]
					w.Raw(`
<tr><th scope="row">`)
					w.Text(v54[0])
					w.Raw(`</th><td class="number">`)
					w.Text(v54[1])
					w.Raw(`</td><td class="number">`)
					w.Text(v54[2])
					w.Raw(`</td><td>`)
					w.Text(v54[3])
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
