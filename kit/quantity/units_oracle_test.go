package quantity

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// The answers in testdata/units-oracle.tsv come from the units program (GNU Units
// 2.22, Debian package "units"), which has its own table of definitions. This makes
// them anew:
//
//go:generate env UPDATE_GOLDEN=1 go test -run TestUnitsOracle .

const oracleFile = "testdata/units-oracle.tsv"

// inOracle tells each unit of the table, by symbol, in the words of the oracle. The
// month and the year are left out: the oracle's are those of the seasons.
var inOracle = map[string]string{
	"mg": "mg", "g": "g", "kg": "kg", "oz": "ounce", "oz weight": "ounce", "lb": "pound", "grain": "grain",
	"dram avoirdupois": "dram", "oz t": "troyounce", "scruple": "scruple", "drachm apothecaries": "apdram",
	"µL": "microliter", "mL": "ml", "cm³": "cm^3", "cL": "centiliter", "dL": "deciliter", "L": "liter", "m³": "m^3",
	"in³": "in^3", "tsp": "teaspoon", "tbsp": "tablespoon", "fl oz": "fluidounce", "cup": "cup", "pint": "pint",
	"quart": "quart", "gallon": "gallon", "fl dr": "fluiddram", "gill": "gill",
	"US tsp": "usteaspoon", "US tbsp": "ustablespoon", "US cup": "uscup", "US fl oz": "usfluidounce", "US pint": "uspint",
	"US quart": "usquart", "US gallon": "usgallon", "metric cup": "metriccup", "Australian tbsp": "australiatablespoon",
	"imperial cup": "brcup", "imperial fl oz": "brfluidounce", "imperial pint": "brpint", "imperial quart": "brquart",
	"imperial gallon": "brgallon",
	"µm":              "micrometer", "mm": "mm", "cm": "cm", "m": "m", "in": "inch", "ft": "foot", "yd": "yard",
	"mm²": "mm^2", "cm²": "cm^2", "m²": "m^2", "in²": "in^2", "ft²": "ft^2", "yd²": "yd^2",
	"s": "second", "min": "minute", "h": "hour", "day": "day", "week": "week", "fortnight": "fortnight",
}

// A question is one conversion, told in our words and in the oracle's.
type question struct {
	convention       Convention
	n, from, to      string
	oracleN, inWords string
}

// questions asks for every unit in every other of its dimension, for the household
// measures of the other conventions, for densities and for temperatures.
func questions() []question {
	var all []question
	for _, a := range Units(USCustomary) {
		for _, b := range Units(USCustomary) {
			from, to := inOracle[a.Symbol], inOracle[b.Symbol]
			if a.Dimension == b.Dimension && a.Symbol != b.Symbol && from != "" && to != "" {
				all = append(all, question{USCustomary, "1", a.Symbol, b.Symbol, "1 " + from, to})
			}
		}
	}
	for _, other := range []struct {
		convention     Convention
		symbol, oracle string
	}{
		{USLabel, "tbsp", "legaltablespoon"}, {USLabel, "cup", "legalcup"}, {Metric, "cup", "metriccup"},
		{Australian, "tsp", "australiateaspoon"}, {Australian, "tbsp", "australiatablespoon"},
		{Imperial, "tsp", "brteaspoon"}, {Imperial, "tbsp", "brtablespoon"}, {Imperial, "cup", "brcup"},
		{Imperial, "dessertspoon", "brdessertspoon"}, {Imperial, "fl oz", "brfluidounce"}, {Imperial, "pint", "brpint"},
		{Imperial, "quart", "brquart"}, {Imperial, "gallon", "brgallon"}, {Imperial, "gill", "brgill"}, {Imperial, "fl dr", "brdram"}, {Australian, "pint", "brpint"},
	} {
		all = append(all, question{other.convention, "7", other.symbol, "mL", "7 " + other.oracle, "ml"})
	}
	for _, density := range [][2]string{{"kg/m³", "kg/m^3"}, {"lb/gallon", "pound/gallon"}, {"g/cup", "g/cup"}, {"mg/mL", "mg/ml"}, {"kg/L", "kg/liter"}} {
		all = append(all, question{USCustomary, "3", density[0], "g/mL", "3 " + density[1], "g/ml"})
	}
	for _, degrees := range []string{"-40", "0", "32", "98.6", "140", "212", "350"} {
		all = append(all, question{USCustomary, degrees, "°F", "°C", "tempF(" + degrees + ")", "tempC"},
			question{USCustomary, degrees, "°C", "°F", "tempC(" + degrees + ")", "tempF"})
	}
	return all
}

func (q question) key() string {
	return fmt.Sprintf("%s\t%s\t%s\t%s", q.convention, q.n, q.from, q.to)
}

func TestUnitsOracle(t *testing.T) {
	asked := questions()
	if len(asked) < 200 {
		t.Fatalf("only %d conversions are asked", len(asked))
	}
	program, err := exec.LookPath("units")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err != nil {
			t.Fatal("the units program is needed to write its answers: ", err)
		}
		writeOracle(t, asked, askOracle(t, program, asked))
	}
	committed := readOracle(t)
	if len(committed) != len(asked) {
		t.Errorf("%s has %d answers for %d questions", oracleFile, len(committed), len(asked))
	}
	var live []string
	if err == nil {
		live = askOracle(t, program, asked)
	}
	for i, q := range asked {
		ours := answer(t, q)
		compareAnswers(t, q, "kept", ours, committed[q.key()])
		if live != nil {
			compareAnswers(t, q, "given now", ours, live[i])
		}
	}
}

// answer converts by this package.
func answer(t *testing.T, q question) Number {
	t.Helper()
	amount, err := Reader{Convention: q.convention}.Amount("1 " + q.from)
	if err != nil {
		t.Fatal(err)
	}
	target, err := Reader{Convention: q.convention}.Amount("1 " + q.to)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Convert(parsed(t, q.n), amount.Unit, target.Unit)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// compareAnswers allows for the 15 digits that the oracle prints.
func compareAnswers(t *testing.T, q question, when string, ours Number, oracle string) {
	t.Helper()
	want, err := strconv.ParseFloat(oracle, 64)
	if err != nil {
		t.Errorf("%s: the answer %s is %q", q.key(), when, oracle)
		return
	}
	if math.Abs(ours.Float()-want) > 1e-13*math.Max(math.Abs(want), 1e-12) {
		t.Errorf("%s: %v, the oracle's answer %s is %s", q.key(), ours.Float(), when, oracle)
	}
}

// askOracle puts all questions to the program at once.
func askOracle(t *testing.T, program string, asked []question) []string {
	t.Helper()
	var input bytes.Buffer
	for _, q := range asked {
		fmt.Fprintf(&input, "%s\n%s\n", q.oracleN, q.inWords)
	}
	command := exec.Command(program, "-q", "-l", "en_US", "-t", "-o", "%.15g")
	command.Stdin = &input
	output, err := command.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(output)), "\n")
	if len(lines) != len(asked) {
		t.Fatalf("%d answers to %d questions", len(lines), len(asked))
	}
	return lines
}

func writeOracle(t *testing.T, asked []question, answers []string) {
	t.Helper()
	var b strings.Builder
	b.WriteString("# GNU Units 2.22: units -q -l en_US -t -o '%.15g', see units_oracle_test.go\n")
	b.WriteString("# convention\tfigure\tfrom\tto\tanswer\n")
	for i, q := range asked {
		b.WriteString(q.key() + "\t" + answers[i] + "\n")
	}
	if err := os.WriteFile(oracleFile, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func readOracle(t *testing.T) map[string]string {
	t.Helper()
	file, err := os.Open(oracleFile)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	answers := map[string]string{}
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if line := lines.Text(); !strings.HasPrefix(line, "#") {
			at := strings.LastIndexByte(line, '\t')
			answers[line[:at]] = line[at+1:]
		}
	}
	return answers
}
