package material

// tapes are the groups that carry an adhesive.
var tapes = []Group{
	{
		Name: "paper tape", Method: Score, Why: "fibre and filler are cut cleanly by a rounded edge; quick to set",
		Otherwise: "shear when dust or edge matters", Score: Good, Edge: "fibrous, a little crushed", Dust: High, ScoreMM: 0.5, MethodSource: debris,
		Bevel: 45, Bevels: Range{30, 60}, Tip: 0.15, Tips: Range{0.10, 0.20}, CutN: 135.5, Need: Medium, SpeedMax: 250,
		Wetting: byPick, Fouling: Medium, Source: commonPractice,
		Cautions: []string{"Filler and fibre dull the blade.", "Brittle sheets shed most dust."},
	},
	{
		Name: "film tape", Method: Score, Why: "coated stock: adhesive and film are cut in one pass",
		Otherwise: "razor or shear for film alone", Score: Good, Edge: "clean, a slight raised edge", Dust: Low, ScoreMM: 0.3, MethodSource: razorSpeed,
		Bevel: 30, Bevels: Range{30, 45}, Tip: 0.08, Tips: Range{0.05, 0.10}, CutN: 110.8, Need: Low, SpeedMax: 200,
		Wetting: byPick, Fouling: Medium, Source: commonPractice,
		Cautions: []string{"An edge burr or a nick tears film.", "Film charges: watch static at unwind and rewind."},
	},
	{
		Name: "soft film tape", Method: Razor, Why: "soft film is cut at low force; a pressed edge thickens",
		Otherwise: "score at low tension", Score: Fair, Edge: "thickened, width lost for good", Dust: Low, ScoreMM: 0.3, MethodSource: softFilms,
		Bevel: 30, Bevels: Range{30, 45}, Tip: 0.08, Tips: Range{0.05, 0.10}, CutN: 86.2, Need: Low, SpeedMax: 120,
		Wetting: light, Fouling: Medium, Source: commonPractice,
		Cautions: []string{"Keep tension low: it necks in and may not come back."},
	},
	{
		Name: "cloth tape", Method: Score, Why: "threads are crushed through against the anvil",
		Otherwise: "shear", Score: Good, Edge: "short loose threads", Dust: Medium, ScoreMM: 0.8, MethodSource: commonPractice,
		Bevel: 45, Bevels: Range{45, 60}, Tip: 0.15, Tips: Range{0.10, 0.20}, CutN: 209.4, Need: High, SpeedMax: 120,
		Wetting: fouling, Fouling: High, Source: commonPractice,
		Cautions: []string{"Uncut threads when the pressure is low; loose yarn wraps round rolls."},
	},
	{
		Name: "double-coated tape", Method: Score, Why: "a rounded edge cuts adhesive, carrier and liner in one pass",
		Otherwise: "shear; kiss cuts only with a depth stop", Score: Good, Edge: "adhesive may ooze, strips may join again", Dust: Medium, ScoreMM: 1.0, MethodSource: commonPractice,
		Bevel: 45, Bevels: Range{45, 45}, Tip: 0.12, Tips: Range{0.10, 0.15}, CutN: 160.1, Need: Medium, SpeedMax: 80,
		Wetting: twoFaces, Fouling: High, Liner: true, Source: commonPractice,
		Cautions: []string{"Two adhesive faces: watch ooze and strips that join again.", "Liner dust.", kiss},
	},
	{
		Name: "transfer adhesive", Method: Score, Why: "adhesion decides the cut: slow, wetted and cool",
		Otherwise: "cooled, or very slow", Score: Fair, Edge: "strings, blocks at the edge", Dust: Low, ScoreMM: 1.0, MethodSource: softCutting,
		Bevel: 30, Bevels: Range{30, 45}, Tip: 0.08, Tips: Range{0.05, 0.10}, CutN: 98.5, Need: Low, SpeedMax: 40,
		Wetting: refilled, Fouling: High, Liner: true, Source: commonPractice,
		Cautions: []string{"Heat and stringing: blades foul fast.", kiss},
	},
	{
		Name: "foam tape", Method: Score, Why: "a thin blade cuts thin foam; friction decides in soft solids",
		Otherwise: "razor or long-bevel knife for thick soft foam", Score: Good, Edge: "dished", Dust: Low, ScoreMM: 3.2, MethodSource: softSolids,
		Bevel: 30, Bevels: Range{30, 30}, Tip: 0.08, Tips: Range{0.05, 0.10}, CutN: 92.4, Need: Low, SpeedMax: 40,
		Wetting: fouling, Fouling: High, Source: commonPractice,
		Cautions: []string{"Width grows back after the cut: measure relaxed.", "Friction heats the blade."},
	},
	{
		Name: "foil", Method: Shear, Why: "ductile foil is displaced under a pressed edge, not cut",
		Otherwise: "score for thin foil on liner", Score: Fair, Edge: "burr, sharp to the hand", Dust: Medium, ScoreMM: 0.2, MethodSource: commonPractice,
		Bevel: 45, Bevels: Range{45, 60}, Tip: 0.15, Tips: Range{0.10, 0.20}, CutN: 221.7, Need: High, SpeedMax: 100,
		Wetting: light, Fouling: Low, Source: commonPractice,
		Cautions: []string{"Strip edges cut hands like a blade.", "Metal fines can burn: extract them, never blow them off.", "The anvil wears faster."},
	},
	{
		Name: "glass cloth", Method: Score, Why: "threads break under a hard blade; any method dulls it soon",
		Otherwise: "shear, with short blade life too", Score: Fair, Edge: "broken threads, dust", Dust: High, ScoreMM: 0.5, MethodSource: commonPractice,
		Bevel: 60, Bevels: Range{60, 60}, Tip: 0.25, Tips: Range{0.20, 0.30}, CutN: 270.9, Need: High, SpeedMax: 50,
		Wetting: dry, Fouling: Low, Source: commonPractice,
		Cautions: []string{"Glass and filament dust: lungs, skin and eyes.", "Blades and sleeve wear fast, the anvil grooves."},
	},
}

// kiss is what holds wherever a liner could be left whole.
const kiss = "Leave a liner uncut only with a depth stop: air sets force, not depth."
