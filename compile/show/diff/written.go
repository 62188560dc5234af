// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package diff

import (
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
<title>`)
	w.Text(d.Title)
	w.Raw(`</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>
<main>
`)
	{
		v1 := d.Loose
		for v2 := range v1 {
			v3 := v1[v2]
			w.Raw(`<p>`)
			w.Text(v3)
			w.Raw(`</p>
`)
		}
	}
	{
		v4 := d.Pairs
		for v5 := range v4 {
			v6 := &v4[v5]
			w.Raw(`<article>
<h1>`)
			w.Text(v6.Title)
			w.Raw(`</h1>
<p class="headline">`)
			w.Text(v6.Headline)
			w.Raw(`</p>
<p class="sides">From `)
			w.Text(v6.Old)
			w.Raw(` to `)
			w.Text(v6.New)
			w.Raw(`</p>
`)
			{
				v7 := v6.Bill
				if len(v7) > 0 {
					w.Raw(`<h2>Grain bill</h2>
<div class="scroll"><table><thead><tr><td></td><th scope="col">old</th><th scope="col">share</th><th scope="col">new</th><th scope="col">share</th><th scope="col">points</th></tr></thead><tbody>
`)
					{
						v8 := v7
						for v9 := range v8 {
							v10 := &v8[v9]
							w.Raw(`<tr><td>`)
							w.Text(v10.Grain)
							w.Raw(`</td><td>`)
							w.Text(v10.Old)
							w.Raw(`</td><td>`)
							w.Text(v10.OldShare)
							w.Raw(`</td><td>`)
							w.Text(v10.New)
							w.Raw(`</td><td>`)
							w.Text(v10.NewShare)
							w.Raw(`</td><td>`)
							w.Text(v10.Points)
							w.Raw(`</td></tr>
`)
						}
					}
					w.Raw(`</tbody></table></div>
`)
				}
			}
			{
				v11 := v6.Edits
				if len(v11) > 0 {
					w.Raw(`<h2>Changes</h2>
<ul>
`)
					{
						v12 := v11
						for v13 := range v12 {
							v14 := &v12[v13]
							w.Raw(`<li><span class="mark">`)
							w.Text(v14.Mark)
							w.Raw(`</span><span class="part">`)
							w.Text(v14.Part)
							w.Raw(`</span> `)
							w.Text(v14.What)
							{
								v15 := v14.Lines
								for v16 := range v15 {
									v17 := v15[v16]
									w.Raw(`<br><span class="was">`)
									w.Text(v17)
									w.Raw(`</span>`)
								}
							}
							w.Raw(`</li>
`)
						}
					}
					w.Raw(`</ul>
`)
				}
			}
			{
				v18 := v6.Notes
				for v19 := range v18 {
					v20 := v18[v19]
					w.Raw(`<p class="note">`)
					w.Text(v20)
					w.Raw(`</p>
`)
				}
			}
			{
				v21 := v6.Moments
				if len(v21) > 0 {
					w.Raw(`<h2>Schedule</h2>
<div class="scroll"><table><thead><tr><td></td><th scope="col">old</th><th scope="col">new</th><td></td></tr></thead><tbody>
`)
					{
						v22 := v21
						for v23 := range v22 {
							v24 := v22[v23]
							w.Raw(`<tr>`)
							{
								v25 := v24
								for v26 := range v25 {
									v27 := v25[v26]
									w.Raw(`<td`)
									if v26 == 3 {
										w.Raw(` class="left"`)
									}
									w.Raw(`>`)
									w.Text(v27)
									w.Raw(`</td>`)
								}
							}
							w.Raw(`</tr>
`)
						}
					}
					w.Raw(`</tbody></table></div>
`)
				}
			}
			{
				v28 := v6.Words
				if len(v28) > 0 {
					w.Raw(`<h2>Law and warnings</h2>
<ul>
`)
					{
						v29 := v28
						for v30 := range v29 {
							v31 := &v29[v30]
							w.Raw(`<li><span class="mark">`)
							w.Text(v31.Mark)
							w.Raw(`</span><span class="part">`)
							w.Text(v31.Part)
							w.Raw(`</span> `)
							w.Text(v31.What)
							w.Raw(`</li>
`)
						}
					}
					w.Raw(`</ul>
`)
				}
			}
			{
				v32 := v6.Why
				if v32 != nil {
					w.Raw(`<h2>Why</h2>
`)
					if v32.One != "" {
						w.Raw(`<p>All of it comes of one edit: `)
						w.Text(v32.One)
						w.Raw(`.</p>
`)
					} else {
						w.Raw(`<div class="scroll"><table><thead><tr><td></td>`)
						{
							v33 := v32.Heads
							for v34 := range v33 {
								v35 := v33[v34]
								w.Raw(`<th scope="col">`)
								w.Text(v35)
								w.Raw(`</th>`)
							}
						}
						w.Raw(`</tr></thead><tbody>
`)
						{
							v36 := v32.Rows
							for v37 := range v36 {
								v38 := &v36[v37]
								w.Raw(`<tr`)
								if v38.Sum {
									w.Raw(` class="sum"`)
								}
								w.Raw(`><td>`)
								w.Text(v38.Head)
								w.Raw(`</td>`)
								{
									v39 := v38.Cells
									for v40 := range v39 {
										v41 := &v39[v40]
										w.Raw(`<td class="`)
										w.Text(v41.Class)
										w.Raw(`">`)
										w.Text(v41.Text)
										w.Raw(`</td>`)
									}
								}
								w.Raw(`</tr>
`)
							}
						}
						w.Raw(`</tbody></table></div>
<p class="how">`)
						w.Text(v32.How)
						w.Raw(`</p>
`)
					}
				}
			}
			{
				v42 := v6.Outcomes
				if len(v42) > 0 {
					w.Raw(`<h2>Outcome</h2>
<div class="scroll"><table><thead><tr><td></td><th scope="col">old</th><th scope="col">new</th><td></td><th scope="col">change</th></tr></thead><tbody>
`)
					{
						v43 := v42
						for v44 := range v43 {
							v45 := &v43[v44]
							w.Raw(`<tr><td>`)
							w.Text(v45.Name)
							w.Raw(`</td><td>`)
							w.Text(v45.Old)
							w.Raw(`</td><td>`)
							w.Text(v45.New)
							w.Raw(`</td><td class="left">`)
							w.Text(v45.Unit)
							w.Raw(`</td><td class="`)
							w.Text(v45.Class)
							w.Raw(`">`)
							w.Text(v45.Change)
							w.Raw(`</td></tr>
`)
						}
					}
					w.Raw(`</tbody></table></div>
`)
				}
			}
			{
				v46 := v6.Unpriced
				if v46 != "" {
					w.Raw(`<p class="note">`)
					w.Text(v46)
					w.Raw(`</p>
`)
				}
			}
			{
				v47 := v6.Folded
				if v47 != "" {
					w.Raw(`<p class="note">`)
					w.Text(v47)
					w.Raw(`</p>
`)
				}
			}
			{
				v48 := v6.Same
				if v48 != "" {
					w.Raw(`<p class="note">The same: `)
					w.Text(v48)
					w.Raw(`.</p>
`)
				}
			}
			w.Raw(`</article>
`)
		}
	}
	w.Raw(`</main>
</body>
</html>
`)
}
