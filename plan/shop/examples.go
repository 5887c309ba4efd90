package shop

// The files of a shop.
const (
	beamFile      = "beam.toml"
	dayFile       = "day.toml"
	positionsFile = "positions.toml"
	materialsFile = "materials.toml"
)

// examples of what is written in them, by key, or by table and key or file and key where those differ.
var examples = map[string]string{
	"name":     `name = "Beam 2"`,
	"units":    `units = "mm"`,
	"beam":     "[beam], with its keys below it",
	"guide":    "[guide], with its keys below it",
	"drive":    "[drive], with its keys below it",
	"setup":    "[setup], with its keys below it",
	"cylinder": "[cylinder], with its keys below it",
	"anvil":    "[anvil], with its keys below it",
	"bad":      "[[anvil.bad]], with from and to below it",
	"holder":   "[[holder]], with its keys below it",
	"job":      "[[job]], with its keys below it",

	"positions.job":    `job = "D-097"`,
	"changeover.job":   `job = "D-101"`,
	"changeover.shift": "shift = 1.5",
	"changeover.to":    "to = [-420.0, 37.5, 62.9]",
	"moved":            "[[changeover.moved]], with number and from below it",
	"material.name":    `name = "Creped paper, natural rubber"`,

	"holders":            "holders = 84",
	"holder_width":       "holder_width = 12.0",
	"clearance":          "clearance = 0.3",
	"rail":               "rail = [-420.0, 1920.0]",
	"web":                "web = 1450.0",
	"beam.web":           "web = [0.0, 1500.0]",
	"park_clearance":     "park_clearance = 15.0",
	"rest_over_web":      "rest_over_web = true",
	"position_tolerance": "position_tolerance = 0.0",
	"web_at":             `web_at = "centre"`,

	"kind":         `kind = "shuttle"`,
	"speed":        "speed = 150.0",
	"drive.speed":  "speed = 400.0",
	"acceleration": "acceleration = 800.0",
	"pick_s":       "pick_s = 1.2",
	"set_s":        "set_s = 1.0",
	"home":         "home = -420.0",
	"hand_s":       "hand_s = 25.0",
	"crew":         "crew = 1",

	"every_min":      "every_min = 6.0",
	"rethread_min":   "rethread_min = 5.0",
	"blade_s":        "blade_s = 40.0",
	"clean_down_min": "clean_down_min = 15.0",
	"pressure_min":   "pressure_min = 0.5",

	"bore":         "bore = 28.0",
	"pistons":      "pistons = 1",
	"supply_bar":   "supply_bar = 6.3",
	"margin_bar":   "margin_bar = 0.8",
	"anvil.bore":   "bore = 110.0",
	"diameter":     "diameter = 150.0",
	"span":         "span = 1700.0",
	"hardness_hrc": "hardness_hrc = 64.0",
	"bearing":      "bearing = -100.0",
	"face":         "face = [0.0, 1500.0]",

	"line":      "[line], with its keys below it",
	"ramp_up":   "ramp_up = 10.0",
	"ramp_down": "ramp_down = 10.0",

	"from": "from = 610.0",
	"to":   "to = 618.0",

	"number":    "number = 17",
	"condition": `condition = "no cut"`,
	"at":        "at = -420.0",
	"bevel":     "bevel = 45.0",
	"tip":       "tip = 0.15",
	"metres":    "metres = 18250.0",
	"why":       `why = "doesn't unlock"`,
	"recorded":  "recorded = 2026-11-25T05:41:00",
	"set_bar":   "set_bar = 2.9",

	"start":        "start = 2026-11-25T06:00:00",
	"end":          "end = 2026-11-25T14:00:00",
	"aim":          `aim = "moves"`,
	"id":           `id = "D-101"`,
	"material":     `material = "paper tape"`,
	"slits":        `slits = ["24 x 25.4", "12 x 50.8"]`,
	"trim":         "trim = 6.0",
	"shift":        `shift = "free"`,
	"arrange":      `arrange = "listed"`,
	"chosen_slits": `chosen_slits = ["12 x 50.8", "24 x 25.4"]`,
	"chosen_shift": "chosen_shift = -1.5",
	"chosen_idle":  `chosen_idle = ["1-12", "17 at 3.5"]`,
	"chosen_moves": "chosen_moves = 14",
	"chosen_s":     "chosen_s = 912.4",
	"length_m":     "length_m = 3200.0",
	"due":          "due = 2026-11-25T11:00:00",
	"after":        `after = ["D-100"]`,
	"state":        `state = "waiting"`,
	"fixed":        "fixed = 1",
	"customer":     `customer = "order 4711, hall 2"`,
	"note":         `note = "cores from the customer"`,

	"core":          "core = 89.0",
	"roll_m":        "roll_m = 50.0",
	"roll_diameter": "roll_diameter = 150.0",

	"group":               `group = "paper tape"`,
	"thickness_mm":        "thickness_mm = 0.15",
	"adhesive":            `adhesive = "rubber resin"`,
	"cut_through_bar":     "cut_through_bar = 2.1",
	"silicone_free":       "silicone_free = true",
	"width_allowance_pct": "width_allowance_pct = 0.5",
	"speed_max":           "speed_max = 150.0",
	"modulus_mpa":         "modulus_mpa = 2000.0",
	"poisson":             "poisson = 0.4",
	"tension_n_m":         "tension_n_m = 150.0",
	"source":              `source = "trial 2026-03-02"`,
}
