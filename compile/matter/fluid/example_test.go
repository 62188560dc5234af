package fluid_test

import (
	"fmt"

	"newmake/compile/matter/fluid"
)

// A proof hydrometer reads 192 in spirit at 72 F. The gauging tables say 189.1.
func ExampleTrueProof() {
	proof, err := fluid.TrueProof(192, 72)
	fmt.Printf("%.1f %v\n", proof, err)
	// Output: 189.1 <nil>
}

// Water to bring 100 kg of 70 % vol spirit to 60 % vol, both at 20 C.
func ExampleReduce() {
	from, _ := fluid.MassFracFromABV(0.70)
	to, _ := fluid.MassFracFromABV(0.60)
	r, err := fluid.Reduce(fluid.Lot{MassKg: 100, EthanolMassFrac: from, TempC: 20}, to, 20)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("water %.2f kg, result %.2f L at 20 C, %.1f C warmer\n",
		r.Water.MassKg, 1000*r.Result.VolumeAtM3(20), r.Result.RiseC)
	// Output: water 19.77 kg, result 131.74 L at 20 C, 2.6 C warmer
}

// The vapour that rises from an 8 % vol wash at sea level.
func ExampleBubblePointC() {
	w, _ := fluid.MassFracFromABV(0.08)
	tempC, y := fluid.BubblePointC(fluid.MoleFrac(w), fluid.StandardPressurePa)
	fmt.Printf("boils at %.1f C, vapour %.0f %% vol\n", tempC, 100*fluid.ABVFromMassFrac(fluid.MassFrac(y)))
	// Output: boils at 93.7 C, vapour 50 % vol
}
