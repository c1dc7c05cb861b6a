package load

import (
	"encoding/json"
	"math"
	"regexp"
	"strconv"

	"gopkg.in/yaml.v3"
)

// example gives an example of a key as the value that an editor makes of it.
func example(text string) any {
	var node yaml.Node
	if err := yaml.Unmarshal([]byte(text), &node); err != nil || len(node.Content) == 0 {
		return text
	}
	return plainValue(node.Content[0])
}

// plainValue gives a tree as JSON has it, by the core schema of YAML 1.2 (chapter
// 10.3): what editors go by. The YAML reader itself goes partly by YAML 1.1, where
// “2027-06-30” is a time and “1_000” a number.
func plainValue(n *yaml.Node) any {
	switch n.Kind {
	case yaml.MappingNode:
		keys := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			if _, twice := keys[n.Content[i].Value]; !twice {
				keys[n.Content[i].Value] = plainValue(n.Content[i+1])
			}
		}
		return keys
	case yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, plainValue(item))
		}
		return list
	}
	if n.Style&^yaml.FlowStyle != 0 {
		return n.Value
	}
	return plainScalar(n.Value)
}

// The forms of numbers in the core schema; those of infinity and of no number at
// all have no place in JSON and stay words.
var (
	decimal = regexp.MustCompile(`^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$`)
	based   = regexp.MustCompile(`^0(?:o[0-7]+|x[0-9a-fA-F]+)$`)
)

func plainScalar(text string) any {
	switch text {
	case "", "~", "null", "Null", "NULL":
		return nil
	case "true", "True", "TRUE":
		return true
	case "false", "False", "FALSE":
		return false
	}
	if based.MatchString(text) {
		if n, err := strconv.ParseUint(text, 0, 64); err == nil {
			return json.Number(strconv.FormatUint(n, 10))
		}
	}
	if decimal.MatchString(text) {
		if n, err := strconv.ParseFloat(text, 64); err == nil && !math.IsInf(n, 0) {
			return json.Number(strconv.FormatFloat(n, 'f', -1, 64))
		}
	}
	return text
}
