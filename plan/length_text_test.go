package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// fractions is the table of inch fractions that shops keep at the wall: 64ths of
// the exact international inch of 25.4 mm (NIST SP 811, B.8).
var fractions = []struct{ fraction, inch, mm string }{
	{"1/64", "0.015625", "0.396875"},
	{"1/32", "0.031250", "0.793750"},
	{"3/64", "0.046875", "1.190625"},
	{"1/16", "0.062500", "1.587500"},
	{"5/64", "0.078125", "1.984375"},
	{"3/32", "0.093750", "2.381250"},
	{"7/64", "0.109375", "2.778125"},
	{"1/8", "0.125000", "3.175000"},
	{"9/64", "0.140625", "3.571875"},
	{"5/32", "0.156250", "3.968750"},
	{"11/64", "0.171875", "4.365625"},
	{"3/16", "0.187500", "4.762500"},
	{"13/64", "0.203125", "5.159375"},
	{"7/32", "0.218750", "5.556250"},
	{"15/64", "0.234375", "5.953125"},
	{"1/4", "0.250000", "6.350000"},
	{"17/64", "0.265625", "6.746875"},
	{"9/32", "0.281250", "7.143750"},
	{"19/64", "0.296875", "7.540625"},
	{"5/16", "0.312500", "7.937500"},
	{"21/64", "0.328125", "8.334375"},
	{"11/32", "0.343750", "8.731250"},
	{"23/64", "0.359375", "9.128125"},
	{"3/8", "0.375000", "9.525000"},
	{"25/64", "0.390625", "9.921875"},
	{"13/32", "0.406250", "10.318750"},
	{"27/64", "0.421875", "10.715625"},
	{"7/16", "0.437500", "11.112500"},
	{"29/64", "0.453125", "11.509375"},
	{"15/32", "0.468750", "11.906250"},
	{"31/64", "0.484375", "12.303125"},
	{"1/2", "0.500000", "12.700000"},
	{"33/64", "0.515625", "13.096875"},
	{"17/32", "0.531250", "13.493750"},
	{"35/64", "0.546875", "13.890625"},
	{"9/16", "0.562500", "14.287500"},
	{"37/64", "0.578125", "14.684375"},
	{"19/32", "0.593750", "15.081250"},
	{"39/64", "0.609375", "15.478125"},
	{"5/8", "0.625000", "15.875000"},
	{"41/64", "0.640625", "16.271875"},
	{"21/32", "0.656250", "16.668750"},
	{"43/64", "0.671875", "17.065625"},
	{"11/16", "0.687500", "17.462500"},
	{"45/64", "0.703125", "17.859375"},
	{"23/32", "0.718750", "18.256250"},
	{"47/64", "0.734375", "18.653125"},
	{"3/4", "0.750000", "19.050000"},
	{"49/64", "0.765625", "19.446875"},
	{"25/32", "0.781250", "19.843750"},
	{"51/64", "0.796875", "20.240625"},
	{"13/16", "0.812500", "20.637500"},
	{"53/64", "0.828125", "21.034375"},
	{"27/32", "0.843750", "21.431250"},
	{"55/64", "0.859375", "21.828125"},
	{"7/8", "0.875000", "22.225000"},
	{"57/64", "0.890625", "22.621875"},
	{"29/32", "0.906250", "23.018750"},
	{"59/64", "0.921875", "23.415625"},
	{"15/16", "0.937500", "23.812500"},
	{"61/64", "0.953125", "24.209375"},
	{"31/32", "0.968750", "24.606250"},
	{"63/64", "0.984375", "25.003125"},
	{"1", "1.000000", "25.400000"},
}

func TestInchFractions(t *testing.T) {
	for _, f := range fractions {
		want, err := ParseLength(f.mm, Millimetres)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{f.fraction + " in", f.fraction + `"`, f.inch + "in", strings.Replace(f.inch, ".", ",", 1) + "″"} {
			if got, err := ParseLength(text, Millimetres); err != nil || got != want {
				t.Errorf("%s is %d nm (%v), want %d", text, got, err, want)
			}
		}
		if got, ok := want.Fraction(); !ok || got != f.fraction {
			t.Errorf("%s mm is the fraction %s (%v), want %s", f.mm, got, ok, f.fraction)
		}
	}
}

func TestParseLength(t *testing.T) {
	tests := []struct {
		text string
		unit Unit
		nm   Length
	}{
		{"25.4", Millimetres, 25_400_000},
		{"25,4", Millimetres, 25_400_000},
		{"25.4", Inches, 645_160_000},
		{" 12 mm ", Inches, 12_000_000},
		{"12MM", Inches, 12_000_000},
		{"1 in", Millimetres, 25_400_000},
		{"0.001 in", Millimetres, 25_400}, // the mil, 25.4 um exact (NIST SP 811, B.8)
		{"1/64", Millimetres, 396_875},
		{"3/64", Millimetres, 1_190_625},
		{"1-1/2", Millimetres, 38_100_000},
		{"1 1/2", Millimetres, 38_100_000},
		{`1 1/2"`, Millimetres, 38_100_000},
		{"1  1 / 2 in", Millimetres, 38_100_000},
		{"-1-1/2", Millimetres, -38_100_000},
		{"3/2", Inches, 38_100_000},
		{"1/2 mm", Inches, 500_000}, // the trailing unit decides
		{"-420", Millimetres, -420_000_000},
		{"−420", Millimetres, -420_000_000},
		{"+420", Millimetres, 420_000_000},
		{".5", Millimetres, 500_000},
		{"-0", Millimetres, 0},
		{"0.0000005", Millimetres, 1}, // half a nanometre goes away from 0
		{"-0.0000005", Millimetres, -1},
		{"0.00000049", Millimetres, 0},
		{"1/3 in", Millimetres, 8_466_667},
		{"-1/3 in", Millimetres, -8_466_667},
		{"9223372036854.775807", Millimetres, math.MaxInt64},
		{"-9223372036854.775808", Millimetres, math.MinInt64},
	}
	for _, test := range tests {
		if got, err := ParseLength(test.text, test.unit); err != nil || got != test.nm {
			t.Errorf("ParseLength(%q, %s) = %d, %v; want %d", test.text, test.unit, got, err, test.nm)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	bad := []string{
		"", " ", "mm", "in", ".", "5.", "1.5/2", "1/0", "1-3/2", "1-1-1/2", "/2", "1/", "1/2/3", "1,234.5", "1.2.3",
		"1e3", "0x10", "--1", "1-", "- 5", "12 cm", "12 m", "1' 6", "nan", "inf", "٣", "1_000", "12 mm in",
		"9223372036854.775808", "1/0 mm", strings.Repeat("1", 65), "\x1b[31m5", "24 x 25.4",
	}
	for _, text := range bad {
		got, err := ParseLength(text, Millimetres)
		if err == nil {
			t.Errorf("ParseLength(%q) = %d, want an error", text, got)
			continue
		}
		if strings.ContainsRune(err.Error(), '\x1b') {
			t.Errorf("the message about %q passes an escape on", text)
		}
	}
}

func TestParseLengthSaysWhatItRead(t *testing.T) {
	_, err := ParseLength("12 cm", Millimetres)
	for _, want := range []string{`"12 cm"`, "25.4", "1-1/2", "mm", "in"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("message %v lacks %s", err, want)
		}
	}
}

func TestLengthOf(t *testing.T) {
	tests := []struct {
		number float64
		unit   Unit
		nm     Length
	}{
		{25.4, Millimetres, 25_400_000},
		{0.1, Millimetres, 100_000}, // no trace of binary fractions
		{12.3, Millimetres, 12_300_000},
		{2062.8, Millimetres, 2_062_800_000},
		{-639.92, Millimetres, -639_920_000},
		{0.015625, Inches, 396_875},
		{1.5, Inches, 38_100_000},
		{math.SmallestNonzeroFloat64, Millimetres, 0},
		{math.Copysign(0, -1), Millimetres, 0},
	}
	for _, test := range tests {
		if got, err := LengthOf(test.number, test.unit); err != nil || got != test.nm {
			t.Errorf("LengthOf(%v, %s) = %d, %v; want %d", test.number, test.unit, got, err, test.nm)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e13, -1e300, math.MaxFloat64} {
		if got, err := LengthOf(bad, Millimetres); err == nil {
			t.Errorf("LengthOf(%v) = %d, want an error", bad, got)
		}
	}
}

func TestParseEntry(t *testing.T) {
	tests := []struct {
		text  string
		count int
		nm    Length
	}{
		{"24 x 25.4", 24, 25_400_000},
		{"24x1/2", 24, 12_700_000},
		{"12 X 1-1/2 in", 12, 38_100_000},
		{"3 × 12 mm", 3, 12_000_000},
		{"25.4", 1, 25_400_000},
	}
	for _, test := range tests {
		if n, l, err := ParseEntry(test.text, Millimetres); err != nil || n != test.count || l != test.nm {
			t.Errorf("ParseEntry(%q) = %d, %d, %v; want %d, %d", test.text, n, l, err, test.count, test.nm)
		}
	}
	for _, bad := range []string{"", "x", "24 x", "x 25.4", "0 x 25.4", "-1 x 25.4", "+1 x 25.4", "1.5 x 25.4", "10001 x 25.4", "24 xx 5", "2 x 3 x 4", "24 x 0", "-5", "99999999999999999999 x 1"} {
		if n, l, err := ParseEntry(bad, Millimetres); err == nil {
			t.Errorf("ParseEntry(%q) = %d, %d, want an error", bad, n, l)
		}
	}
}

func TestShow(t *testing.T) {
	tests := []struct {
		nm               Length
		mm, forMM, forIn string
	}{
		{412_500_000, "412.5", "412.5 mm", "16.2402 in"},
		{-420_000_000, "-420", "-420 mm", "-16.5354 in"},
		{396_875, "0.396875", "0.397 mm", "0.0156 in"},
		{38_100_000, "38.1", "38.1 mm", "1.5 in"},
		{-1, "-0.000001", "0 mm", "0 in"},
		{0, "0", "0 mm", "0 in"},
		{1_500, "0.0015", "0.002 mm", "0.0001 in"},
		{100_000_000, "100", "100 mm", "3.937 in"},
	}
	for _, test := range tests {
		got := [3]string{test.nm.MM(), Millimetres.Show(test.nm), Inches.Show(test.nm)}
		if want := [3]string{test.mm, test.forMM, test.forIn}; got != want {
			t.Errorf("%d nm shows as %q, want %q", test.nm, got, want)
		}
	}
}

func TestFraction(t *testing.T) {
	tests := map[Length]string{
		0: "0", Inch: "1", -Inch: "-1", 38_100_000: "1-1/2", -38_100_000: "-1-1/2", -396_875: "-1/64", 62 * Inch: "62",
	}
	for l, want := range tests {
		if got, ok := l.Fraction(); !ok || got != want {
			t.Errorf("%d nm is %q (%v), want %q", l, got, ok, want)
		}
	}
	if got, ok := Millimetre.Fraction(); ok {
		t.Errorf("1 mm is the fraction %s", got)
	}
}

// TestRoundTrip: what is written is read back, whole nanometres from end to end.
func TestRoundTrip(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, seed))
	lengths := []Length{0, 1, -1, math.MaxInt64, math.MinInt64}
	for range 2000 {
		lengths = append(lengths, Length(r.Uint64())>>r.IntN(64))
	}
	for _, l := range lengths {
		roundTrip(t, fmt.Sprintf("seed %d", seed), l)
	}
}

func roundTrip(t *testing.T, from string, l Length) {
	t.Helper()
	if got, err := ParseLength(l.MM()+" mm", Inches); err != nil || got != l {
		t.Errorf("%s: %d nm is written %q and read back as %d, %v", from, l, l.MM(), got, err)
	}
	f, ok := l.Fraction()
	if !ok {
		return
	}
	if got, err := ParseLength(f+" in", Millimetres); err != nil || got != l {
		t.Errorf("%s: %d nm is the fraction %q, read back as %d, %v", from, l, f, got, err)
	}
}

func FuzzParseLength(f *testing.F) {
	for _, seed := range []string{"25.4", "25,4", "1-1/2", `1 1/2"`, "3/64", "-420", "1/3 in", "12 mm", "24 x 1/2", "9223372036854.775808"} {
		f.Add(seed, true)
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, text string, inch bool) {
		u := Millimetres
		if inch {
			u = Inches
		}
		l, err := ParseLength(text, u)
		if err != nil {
			if len(err.Error()) > 1000 {
				t.Errorf("a message of %d bytes", len(err.Error()))
			}
			return
		}
		roundTrip(t, text, l)
		if n, entry, err := ParseEntry(text, u); l > 0 && (err != nil || n != 1 || entry != l) {
			t.Errorf("%q is the length %d, but as an entry %d, %d, %v", text, l, n, entry, err)
		}
	})
}
