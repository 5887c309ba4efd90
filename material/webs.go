package material

// webs are the groups without an adhesive of their own; what laminates and roofing carry
// isn't known.
var webs = []Group{
	{
		Name: "laminate", Method: Shear, Why: "a stack is cut layer by layer; shear keeps the layers together",
		Otherwise: "score, with paper liners too", Score: Fair, Edge: "layers may separate at the edge", Dust: Medium, ScoreMM: 0.5, MethodSource: commonPractice,
		Bevel: 45, Bevels: Range{45, 60}, Tip: 0.15, Tips: Range{0.10, 0.20}, CutN: 209.4, Need: High, SpeedMax: 120,
		Wetting: byPick, Fouling: Medium, Liner: true, Source: commonPractice,
		Cautions: []string{"Layers separate at the edge.", "Liner dust.", kiss},
	},
	{
		Name: "light nonwoven", Method: Score, Why: "spunbond and meltblown are cut at low force",
		Otherwise: "shear against fuzz", Score: Good, Edge: "fuzz", Dust: Medium, ScoreMM: 0.8, MethodSource: nonwovens,
		Bevel: 45, Bevels: Range{45, 60}, Tip: 0.18, Tips: Range{0.05, 0.30}, CutN: 123.2, Need: Low, SpeedMax: 200,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"Very large neck-in: measure relaxed.", "Tip by weight, light to heavy: 0.05-0.10, 0.15-0.20, 0.25-0.30 mm.",
			"Heat can weld neighbouring strips.", "Lint.",
		},
	},
	{
		Name: "spunlace", Method: Score, Why: "loose fibres are crushed through against the anvil",
		Otherwise: "shear against fuzz", Score: Fair, Edge: "fuzz, uncut fibres when the pressure is low", Dust: High, ScoreMM: 1.0, MethodSource: nonwovens,
		Bevel: 60, Bevels: Range{45, 60}, Tip: 0.20, Tips: Range{0.15, 0.30}, CutN: 172.4, Need: Medium, SpeedMax: 120,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: fromMemory,
		Cautions: []string{"Very large neck-in: measure relaxed.", "Lint."},
	},
	{
		Name: "heavy nonwoven", Method: Shear, Why: "thick fibre beds need a scissor cut; pressed, they stay joined by fibres",
		Otherwise: "score with a 60 degree blade and long trials", Score: Poor, Edge: "fly, uncut fibres", Dust: High, ScoreMM: 2.0, MethodSource: commonPractice,
		Bevel: 60, Bevels: Range{60, 60}, Tip: 0.25, Tips: Range{0.20, 0.30}, CutN: 283.2, Need: High, SpeedMax: 50,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"Fly and dust.", "Uncut fibres hold strips together at the rewind."},
	},
	{
		Name: "woven", Method: HotStill, Why: "heat seals the edge that frays when cut cold",
		Otherwise: "score if fraying is allowed; ultrasonic", Score: Fair, Edge: "frays", Dust: Low, ScoreMM: 0.8, MethodSource: textiles,
		Bevel: 45, Bevels: Range{45, 60}, Tip: 0.20, Tips: Range{0.15, 0.25}, CutN: 221.7, Need: High, SpeedMax: 60,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"Only fibres that melt seal: cotton and glass don't.", "A sealed edge has a hard bead."},
	},
	{
		Name: "soft film", Method: Razor, Why: "soft film is cut at low force; a pressed edge thickens",
		Otherwise: "score at low tension", Score: Fair, Edge: "thickened", Dust: Low, ScoreMM: 0.2, MethodSource: razorSpeed,
		Bevel: 30, Bevels: Range{30, 45}, Tip: 0.08, Tips: Range{0.05, 0.10}, CutN: 73.9, Need: Low, SpeedMax: 150,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"Keep tension low: it necks in and may not come back.", "Film charges: watch static."},
	},
	{
		Name: "plain paper", Method: Shear, Why: "the cleanest edge and least dust in paper",
		Otherwise: "score, quick to set for many widths", Score: Good, Edge: "fibrous, a little crushed", Dust: High, ScoreMM: 0.4, MethodSource: debris,
		Bevel: 45, Bevels: Range{30, 60}, Tip: 0.15, Tips: Range{0.10, 0.20}, CutN: 123.2, Need: Medium, SpeedMax: 300,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"Brittle sheets shed most dust; filler dulls the blade."},
	},
	{
		Name: "felt", Method: Shear, Why: "thick fibre beds need a scissor cut; pressed, they stay joined by fibres",
		Otherwise: "score with a 60 degree blade and long trials", Score: Poor, Edge: "fly, uncut fibres", Dust: High, ScoreMM: 2.0, MethodSource: commonPractice,
		Bevel: 60, Bevels: Range{60, 60}, Tip: 0.25, Tips: Range{0.20, 0.30}, CutN: 295.6, Need: High, SpeedMax: 40,
		Wetting: dry, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"Fly and dust.", "Uncut fibres hold strips together at the rewind."},
	},
	{
		Name: "roofing", Method: Shear, Why: "thick, gritty and sticky: grit ruins an edge pressed on an anvil",
		Otherwise: "razor in a groove when warm and free of grit", Score: Poor, Edge: "crushed, bitumen drawn out", Dust: Medium, ScoreMM: 2.0, MethodSource: fromMemory,
		Bevel: 60, Bevels: Range{60, 60}, Tip: 0.25, Tips: Range{0.20, 0.30}, CutN: 295.6, Need: High, SpeedMax: 30,
		Wetting: bitumen, Fouling: High, Source: fromMemory,
		Cautions: []string{"Grit grooves the anvil and dulls the blade.", "Bitumen fouls blades: clean often."},
	},
	{
		Name: "rubber", Method: Score, Why: "a wet blade cuts rubber; dry, friction grabs it",
		Otherwise: "razor, wet", Score: Fair, Edge: "dished when thick", Dust: Low, ScoreMM: 3.2, MethodSource: softSolids,
		Bevel: 30, Bevels: Range{30, 45}, Tip: 0.10, Tips: Range{0.05, 0.15}, CutN: 209.4, Need: High, SpeedMax: 40,
		Wetting: friction, Fouling: Low, Adhesive: NoAdhesive, Source: commonPractice,
		Cautions: []string{"It grabs and pulls in: keep hands away.", "Friction heats the blade."},
	},
}
