package material

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// reference reads a table of published or outside figures; its first lines name
// their source. Rows are maps by the column's name.
func reference(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../testdata/reference/material/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(all), err)
	}
	var rows []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, cell := range cells {
			row[all[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

// number is the number that a cell starts with; its unit, if any, comes after it.
func number(t *testing.T, cell string) float64 {
	t.Helper()
	text, _, _ := strings.Cut(strings.TrimSpace(cell), " ")
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// near fails unless got is within a part of want.
func near(t *testing.T, what string, got, want, part float64) {
	t.Helper()
	if !(math.Abs(got-want) <= part*math.Abs(want)) {
		t.Errorf("%s is %.10g, want %.10g within %g of it", what, got, want, part)
	}
}

// refused fails unless err names every one of the words.
func refused(t *testing.T, err error, words ...string) {
	t.Helper()
	if err == nil {
		t.Errorf("accepted, want an error about %v", words)
		return
	}
	for _, w := range words {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("the error %q doesn't name %q", err, w)
		}
	}
}

var (
	nan = math.NaN()
	inf = math.Inf(1)
)
