package plan

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"
)

// longestText bounds what is read as one length; nothing sensible comes near.
const longestText = 64

// MaxCount is the largest count of equal slits that one entry may ask for. It is
// far above what a beam can hold, so that such a job is refused with its reason.
const MaxCount = 10_000

// String is the unit as written in the shop's files.
func (u Unit) String() string {
	if u == Inches {
		return "in"
	}
	return "mm"
}

// size is the length of one unit.
func (u Unit) size() Length {
	if u == Inches {
		return Inch
	}
	return Millimetre
}

// ParseLength reads one length as a shop writes it: a decimal with a point or a
// comma is in unit u, a fraction (3/64, 1-1/2, 1 1/2) or an inch mark means inches,
// and a trailing mm or in decides in every case. What is no whole number of
// nanometres is rounded to the nearest, half away from 0.
func ParseLength(text string, u Unit) (Length, error) {
	s := strings.TrimSpace(text)
	if len(s) > longestText {
		return 0, fmt.Errorf("%s is too long for a length; %s", quote(s), LengthExamples)
	}
	number, unit, marked := cutUnit(s, u)
	value, fraction, ok := readNumber(number)
	if !ok {
		return 0, fmt.Errorf("%s is no length; %s", quote(s), LengthExamples)
	}
	if fraction && !marked {
		unit = Inches
	}
	l, ok := round(value, unit)
	if !ok {
		return 0, fmt.Errorf("%s is too large a length", quote(s))
	}
	return l, nil
}

// LengthExamples closes the message about a length that can't be read.
const LengthExamples = "write it like 25.4, 3/64, 1-1/2, 12 mm or 1/2 in"

// LengthOf is the length that a file's number means in unit u: the shortest
// decimal that reads back as that number, exactly.
func LengthOf(number float64, u Unit) (Length, error) {
	text := strconv.FormatFloat(number, 'g', -1, 64)
	if math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, fmt.Errorf("%s is no length; %s", text, LengthExamples)
	}
	value, _ := new(big.Rat).SetString(text)
	l, ok := round(value, u)
	if !ok {
		return 0, fmt.Errorf("%s is too large a length", text)
	}
	return l, nil
}

// ParseEntry reads a slit entry: a length, or COUNT x LENGTH for a run of equal
// slits side by side.
func ParseEntry(text string, u Unit) (count int, l Length, err error) {
	count, rest := 1, text
	if i := strings.IndexAny(text, "xX×"); i >= 0 {
		before := strings.TrimSpace(text[:i])
		count, err = strconv.Atoi(before)
		if err != nil || !digits(before) || count < 1 || count > MaxCount {
			return 0, 0, fmt.Errorf("%s: the count before the x must be a whole number from 1 to %d, as in 24 x 25.4", quote(text), MaxCount)
		}
		_, size := utf8.DecodeRuneInString(text[i:])
		rest = text[i+size:]
	}
	l, err = ParseLength(rest, u)
	if err != nil && rest != text {
		return 0, 0, fmt.Errorf("%s: %w", quote(text), err)
	}
	if err != nil {
		return 0, 0, err
	}
	if l <= 0 {
		return 0, 0, fmt.Errorf("%s: a slit must be wider than 0", quote(text))
	}
	return count, l, nil
}

// quote shows text in a message: escaped, and cut when it is long.
func quote(text string) string {
	const most = 40
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "..."
	}
	return strconv.Quote(text)
}

// cutUnit takes a trailing unit off a length and reports whether there was one.
func cutUnit(s string, u Unit) (number string, unit Unit, marked bool) {
	marks := []struct {
		mark string
		unit Unit
	}{{"mm", Millimetres}, {"in", Inches}, {`"`, Inches}, {"″", Inches}}
	for _, m := range marks {
		cut := len(s) - len(m.mark)
		if cut >= 0 && strings.EqualFold(s[cut:], m.mark) {
			return strings.TrimSpace(s[:cut]), m.unit, true
		}
	}
	return s, u, false
}

// readNumber reads a decimal or a fraction, with its sign.
func readNumber(s string) (value *big.Rat, fraction, ok bool) {
	negative := false
	for _, sign := range []string{"-", "+", "−"} {
		if rest, found := strings.CutPrefix(s, sign); found {
			s, negative = rest, sign != "+"
			break
		}
	}
	left, below, fraction := strings.Cut(s, "/")
	if fraction {
		value, ok = readFraction(strings.TrimSpace(left), strings.TrimSpace(below))
	} else {
		value, ok = readDecimal(s)
	}
	if ok && negative {
		value.Neg(value)
	}
	return value, fraction, ok
}

// readDecimal reads digits with at most one point or comma among them.
func readDecimal(s string) (*big.Rat, bool) {
	whole, parts := s, ""
	if i := strings.IndexAny(s, ".,"); i >= 0 {
		whole, parts = s[:i], s[i+1:]
		if !digits(parts) {
			return nil, false
		}
	}
	if !digits(whole + parts) {
		return nil, false
	}
	return new(big.Rat).SetString("0" + whole + "." + parts + "0")
}

// readFraction reads what stands above and below a fraction's bar. The number
// above may follow a whole number, 1-1/2 or 1 1/2; the fraction is then proper.
func readFraction(above, below string) (*big.Rat, bool) {
	whole := "0"
	i := strings.LastIndexAny(above, "- ")
	if i >= 0 {
		whole, above = strings.TrimSpace(above[:i]), above[i+1:]
	}
	if !digits(whole) || !digits(above) || !digits(below) {
		return nil, false
	}
	value, ok := new(big.Rat).SetString(above + "/" + below)
	if !ok || i >= 0 && value.Cmp(big.NewRat(1, 1)) >= 0 { // 0 below, or 1-3/2
		return nil, false
	}
	add, _ := new(big.Rat).SetString(whole)
	return value.Add(value, add), true
}

// digits reports whether s is one or more ASCII digits.
func digits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// round is value units in whole nanometres, the nearest, half away from 0.
func round(value *big.Rat, u Unit) (Length, bool) {
	nm := new(big.Rat).Mul(value, big.NewRat(int64(u.size()), 1))
	twice := new(big.Int).Lsh(new(big.Int).Abs(nm.Num()), 1)
	twice.Add(twice, nm.Denom())
	whole := twice.Quo(twice, new(big.Int).Lsh(nm.Denom(), 1))
	if nm.Sign() < 0 {
		whole.Neg(whole)
	}
	return Length(whole.Int64()), whole.IsInt64()
}

// MM is the length in millimetres as an exact decimal without trailing zeros.
func (l Length) MM() string { return decimal(l, Millimetre, 6) }

// Number is the length in unit u for people to read: to 3 decimals of a
// millimetre or 4 of an inch, rounded half away from 0.
func (u Unit) Number(l Length) string {
	if u == Inches {
		return decimal(l, Inch, 4)
	}
	return decimal(l, Millimetre, 3)
}

// Show is Number with the unit behind it.
func (u Unit) Show(l Length) string { return u.Number(l) + " " + u.String() }

// decimal is l/size with at most that many decimals, rounded half away from zero, and no
// trailing zeros. The remainder is below an inch, so none of it overflows.
func decimal(l, size Length, decimals int) string {
	tens := int64(math.Pow10(decimals))
	whole, rest := int64(l/size), int64(l%size)
	parts := (2*max(rest, -rest)*tens + int64(size)) / (2 * int64(size))
	whole, parts = max(whole, -whole)+parts/tens, parts%tens
	text := strconv.FormatInt(whole, 10)
	if parts > 0 {
		text += "." + strings.TrimRight(fmt.Sprintf("%0*d", decimals, parts), "0")
	}
	if l < 0 && text != "0" {
		return "-" + text
	}
	return text
}

// Fraction is the length in inches as a rule shows it, such as 1-1/2, when it is
// a whole number of 64ths.
func (l Length) Fraction() (string, bool) {
	if l%(Inch/64) != 0 {
		return "", false
	}
	sign := ""
	if l < 0 {
		sign = "-"
	}
	whole, part := (l / Inch).Abs(), big.NewRat(int64((l%Inch).Abs()), int64(Inch))
	switch {
	case part.Sign() == 0:
		return fmt.Sprintf("%s%d", sign, whole), true
	case whole == 0:
		return sign + part.String(), true
	}
	return fmt.Sprintf("%s%d-%s", sign, whole, part), true
}

// Times is the length times a factor, rounded once to the nearest nanometre, half
// away from 0; false when it is too large.
func (l Length) Times(factor *big.Rat) (Length, bool) {
	scaled := new(big.Rat).Mul(big.NewRat(int64(l), int64(Millimetre)), factor)
	return round(scaled, Millimetres)
}
