// Code generated of the templates beside it by go test -update; DO NOT EDIT.

package chart

import (
	"newmake/compile/show/markup"
)

func writeChart(w *markup.Page, d *Chart) {
	{
		writeSvg(w, d)
	}
	{
		v1 := d.Narrow
		if v1 != nil {
			w.Raw(`
`)
			{
				writeSvg(w, v1)
			}
		}
	}
}

func writeHatches(w *markup.Page, d string) {
	w.Raw(`<defs>
<pattern id="`)
	w.Text(d)
	w.Raw(`-dense" width="5" height="5" patternUnits="userSpaceOnUse"><path class="hatch" d="M0 0L5 5M5 0L0 5"/></pattern>
<pattern id="`)
	w.Text(d)
	w.Raw(`-rising" width="7" height="7" patternUnits="userSpaceOnUse"><path class="hatch" d="M-1 1L1 -1M0 7L7 0M6 8L8 6"/></pattern>
<pattern id="`)
	w.Text(d)
	w.Raw(`-falling" width="11" height="11" patternUnits="userSpaceOnUse"><path class="hatch" d="M-1 10L1 12M0 0L11 11M10 -1L12 1"/></pattern>
<pattern id="`)
	w.Text(d)
	w.Raw(`-dots" width="7" height="7" patternUnits="userSpaceOnUse"><circle class="speck" cx="3.5" cy="3.5" r="0.9"/></pattern>
<pattern id="`)
	w.Text(d)
	w.Raw(`-level" width="6" height="6" patternUnits="userSpaceOnUse"><path class="hatch" d="M0 3L6 3"/></pattern>
<pattern id="`)
	w.Text(d)
	w.Raw(`-upright" width="6" height="6" patternUnits="userSpaceOnUse"><path class="hatch" d="M3 0L3 6"/></pattern>
</defs>`)
}

func writeSvg(w *markup.Page, d *Chart) {
	w.Raw(`<svg class="chart`)
	w.Text(d.Kind())
	w.Raw(`" id="`)
	w.Text(d.ID)
	w.Raw(`" viewBox="0 0 `)
	w.Int(d.W)
	w.Raw(` `)
	w.Int(d.H)
	w.Raw(`" role="img" aria-labelledby="`)
	w.Text(d.ID)
	w.Raw(`-title `)
	w.Text(d.ID)
	w.Raw(`-desc">
<title id="`)
	w.Text(d.ID)
	w.Raw(`-title">`)
	w.Text(d.Title)
	w.Raw(`</title>
<desc id="`)
	w.Text(d.ID)
	w.Raw(`-desc">`)
	w.Text(d.Desc)
	w.Raw(`</desc>
`)
	{
		writeHatches(w, d.ID)
	}
	v1 := d.ID
	{
		v2 := d.Marks
		for v3 := range v2 {
			v4 := &v2[v3]
			w.Raw(`
`)
			if v4.Shape == "path" {
				w.Raw(`<path class="`)
				w.Text(v4.Class)
				w.Raw(`" d="`)
				w.Text(v4.D)
				w.Raw(`"`)
				if v4.Fill != "" {
					w.Raw(` fill="url(#`)
					w.Text(v1)
					w.Raw(`-`)
					w.Text(v4.Fill)
					w.Raw(`)"`)
				}
				w.Raw(`/>`)
			} else {
				if v4.Shape == "dot" {
					w.Raw(`<circle class="`)
					w.Text(v4.Class)
					w.Raw(`" cx="`)
					w.Text(v4.X)
					w.Raw(`" cy="`)
					w.Text(v4.Y)
					w.Raw(`" r="3"/>`)
				} else {
					if v4.Turn {
						w.Raw(`<text class="`)
						w.Text(v4.Class)
						w.Raw(`" text-anchor="middle" transform="translate(`)
						w.Text(v4.X)
						w.Raw(` `)
						w.Text(v4.Y)
						w.Raw(`) rotate(-90)">`)
						w.Text(v4.Text)
						w.Raw(`</text>`)
					} else {
						w.Raw(`<text class="`)
						w.Text(v4.Class)
						w.Raw(`" text-anchor="`)
						w.Text(v4.Anchor)
						w.Raw(`" x="`)
						w.Text(v4.X)
						w.Raw(`" y="`)
						w.Text(v4.Y)
						w.Raw(`">`)
						w.Text(v4.Text)
						w.Raw(`</text>`)
					}
				}
			}
		}
	}
	w.Raw(`
</svg>`)
}
