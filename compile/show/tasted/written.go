// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package tasted

import (
	"newmake/compile/show/markup"
)

func writeFound(w *markup.Page, f says, d *foundView) {
	w.Raw(`<!doctype html>
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
<h1>`)
	w.Text(d.Title)
	w.Raw(`</h1>`)
	{
		v1 := d.Notes
		for v2 := range v1 {
			v3 := v1[v2]
			w.Raw(`
<p>`)
			w.Text(v3)
			w.Raw(`</p>`)
		}
	}
	{
		v4 := d.Tables
		for v5 := range v4 {
			v6 := &v4[v5]
			if len(v6.Rows) > 0 {
				w.Raw(`
<table>
<caption>`)
				w.Text(v6.Caption)
				w.Raw(`</caption>
<thead><tr>`)
				{
					v7 := v6.Head
					for v8 := range v7 {
						v9 := v7[v8]
						w.Raw(`<th scope="col">`)
						w.Text(v9)
						w.Raw(`</th>`)
					}
				}
				w.Raw(`</tr></thead>
<tbody>`)
				{
					v10 := v6.Rows
					for v11 := range v10 {
						v12 := v10[v11]
						w.Raw(`
<tr>`)
						{
							v13 := v12
							for v14 := range v13 {
								v15 := &v13[v14]
								if v14 != 0 {
									w.Raw(`<td data-head="`)
									w.Text(v15.Head)
									w.Raw(`">`)
									w.Text(v15.Text)
									w.Raw(`</td>`)
								} else {
									w.Raw(`<th scope="row">`)
									w.Text(v15.Text)
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
			} else {
				w.Raw(`
<h2>`)
				w.Text(v6.Caption)
				w.Raw(`</h2>`)
			}
			{
				v16 := v6.Says
				for v17 := range v16 {
					v18 := v16[v17]
					w.Raw(`
<p>`)
					w.Text(v18)
					w.Raw(`</p>`)
				}
			}
		}
	}
	w.Raw(`
</main>
</body>
</html>
`)
}

func writeSheets(w *markup.Page, f says, d *view) {
	w.Raw(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="`)
	w.Text(d.Policy)
	w.Raw(`">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>`)
	w.Text(d.Trial)
	w.Raw(`: cups and key</title>
`)
	w.Raw(string(d.Style))
	w.Raw(`
</head>
<body>
<main>`)
	{
		v1 := d.Pages
		for v2 := range v1 {
			v3 := &v1[v2]
			w.Raw(`
<section>
<h1>`)
			w.Text(d.Trial)
			w.Raw(` · `)
			w.Text(v3.Taster)
			w.Raw(`</h1>
<p>`)
			w.Text(d.On)
			{
				v4 := d.Nosed
				if v4 != "" {
					w.Raw(` · at `)
					w.Text(v4)
				}
			}
			w.Raw(` · date and hour ____________</p>
<div class="careful">`)
			{
				v5 := d.Cautions
				for v6 := range v5 {
					v7 := v5[v6]
					w.Raw(`<p>`)
					w.Text(v7)
					w.Raw(`</p>`)
				}
			}
			w.Raw(`</div>
<p>`)
			w.Text(d.Ask)
			w.Raw(` Water between the sets.</p>
<table>
<tr><th scope="col">set</th>`)
			{
				v8 := &v3.Sets[0]
				{
					v9 := v8.Cups
					for v10 := range v9 {
						_ = &v9[v10]
						w.Raw(`<th scope="col">cup</th>`)
					}
				}
			}
			w.Raw(`<th scope="col">in words</th></tr>`)
			{
				v12 := v3.Sets
				for v13 := range v12 {
					v14 := &v12[v13]
					w.Raw(`
<tr><th scope="row">`)
					w.Int(f.Inc(v13))
					w.Raw(`</th>`)
					{
						v15 := v14.Cups
						for v16 := range v15 {
							v17 := &v15[v16]
							w.Raw(`<td class="mark">`)
							if v17.Named {
								w.Raw(`named `)
							}
							w.Text(v17.Code)
							w.Raw(`</td>`)
						}
					}
					w.Raw(`<td class="words"></td></tr>`)
				}
			}
			w.Raw(`
</table>
</section>`)
		}
	}
	w.Raw(`
<section class="key">
<h1>`)
	w.Text(d.Trial)
	w.Raw(` · key</h1>
<p><strong>For the one who pours, and does not taste.</strong> Fold it away until all have written.</p>
<p>`)
	{
		v18 := d.Samples
		for v19 := range v18 {
			v20 := v18[v19]
			if v19 != 0 {
				w.Raw(`; `)
			}
			w.Text(f.Roman(v19))
			w.Raw(` is `)
			w.Text(v20)
		}
	}
	w.Raw(`.</p>
<table>
<tr><th scope="col">taster</th><th scope="col">set</th><th scope="col">cups, from left to right</th><th scope="col">right answer</th></tr>`)
	{
		v21 := d.Pages
		for v22 := range v21 {
			v23 := &v21[v22]
			v24 := v23.Taster
			{
				v25 := v23.Sets
				for v26 := range v25 {
					v27 := &v25[v26]
					w.Raw(`
<tr><td>`)
					w.Text(v24)
					w.Raw(`</td><td>`)
					w.Int(f.Inc(v26))
					w.Raw(`</td><td>`)
					{
						v28 := v27.Cups
						for v29 := range v28 {
							v30 := &v28[v29]
							if v29 != 0 {
								w.Raw(`, `)
							}
							w.Text(v30.Code)
							w.Raw(`&nbsp;`)
							w.Text(f.Roman(v30.Sample))
						}
					}
					w.Raw(`</td><td>`)
					if v27.Right >= 0 {
						w.Text(v27.Cups[v27.Right].Code)
					} else {
						w.Raw(`none`)
					}
					w.Raw(`</td></tr>`)
				}
			}
		}
	}
	w.Raw(`
</table>
</section>
</main>
</body>
</html>
`)
}
