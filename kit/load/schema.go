package load

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// This file writes the tables of keys as a JSON Schema (draft 2020-12), so that an
// editor completes and checks kit.yaml while it is typed. Its values are those of
// the core schema of YAML 1.2: “6” is a number, “yes” a word.
//
// It holds nothing against a file that Kit reads without a finding. What it cannot
// say exactly (whether a text is an amount, whether a key names something) it
// leaves to Kit.

// A schema is one JSON Schema; what is not given is left out.
type schema struct {
	Dialect          string             `json:"$schema,omitempty"`
	Ref              string             `json:"$ref,omitempty"`
	Title            string             `json:"title,omitempty"`
	Description      string             `json:"description,omitempty"`
	Type             types              `json:"type,omitempty"`
	Enum             []any              `json:"enum,omitempty"`
	Not              *schema            `json:"not,omitempty"`
	AnyOf            []*schema          `json:"anyOf,omitempty"`
	Pattern          string             `json:"pattern,omitempty"`
	Format           string             `json:"format,omitempty"`
	MinLength        int                `json:"minLength,omitempty"`
	MaxLength        int                `json:"maxLength,omitempty"`
	Minimum          *int               `json:"minimum,omitempty"`
	ExclusiveMinimum *int               `json:"exclusiveMinimum,omitempty"`
	Maximum          *int               `json:"maximum,omitempty"`
	Properties       map[string]*schema `json:"properties,omitempty"`
	PropertyNames    *schema            `json:"propertyNames,omitempty"`
	MinProperties    int                `json:"minProperties,omitempty"`
	Additional       any                `json:"additionalProperties,omitempty"` // false or a *schema
	Required         []string           `json:"required,omitempty"`
	Items            *schema            `json:"items,omitempty"`
	MinItems         int                `json:"minItems,omitempty"`
	Examples         []any              `json:"examples,omitempty"`
	Definitions      map[string]*schema `json:"$defs,omitempty"`
}

// types are the types a value may have; a single one is written without brackets.
type types []string

func (t types) MarshalJSON() ([]byte, error) {
	if len(t) == 1 {
		return json.Marshal(t[0])
	}
	return json.Marshal([]string(t))
}

// ownKey is the name of the definition of a key that the maker chose.
const ownKey = "own-key"

// Schema gives the JSON Schema of kit.yaml.
func Schema() ([]byte, error) {
	sections := Keys()
	root := ofSection(sections[0])
	root.Dialect = "https://json-schema.org/draft/2020-12/schema"
	root.Title = "kit.yaml"
	root.Definitions = map[string]*schema{ownKey: ofOwnKey()}
	for _, s := range sections[1:] {
		root.Definitions[s.Name] = ofSection(s)
	}
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(root); err != nil {
		return nil, fmt.Errorf("the schema of kit.yaml cannot be written: %w", err)
	}
	return out.Bytes(), nil
}

// ofSection is the schema of keys that stand together.
func ofSection(s Section) *schema {
	of := &schema{Title: s.Name, Description: s.About, Type: types{"object"}, Properties: map[string]*schema{}, Additional: false}
	for _, key := range s.Keys {
		of.Properties[key.Name] = ofKey(key)
		if key.Required {
			of.Required = append(of.Required, key.Name)
		}
	}
	return of
}

// ofKey is the schema of what stands after a key.
func ofKey(k Key) *schema {
	of := ofForm(k)
	of.Title, of.Description, of.Examples = k.Name, k.Expected, []any{example(k.Example)}
	return of
}

func ofForm(k Key) *schema {
	switch k.Form {
	case Text:
		return ofText(k)
	case TextList:
		return oneOrList(ofText(k))
	case WholeNumber:
		return ofWhole(k)
	case YesNo:
		return ofChoices([]any{"yes", "no", true, false}, []string{"yes", "no", "true", "false"})
	case OneOf:
		words := make([]any, len(k.Choices))
		for i, choice := range k.Choices {
			words[i] = choice
		}
		return ofChoices(words, k.Choices)
	case Date:
		return &schema{Type: types{"string"}, Format: "date", Pattern: `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`}
	case Colour:
		return &schema{Type: types{"string"}, Pattern: `^#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})$`}
	case Picture:
		return &schema{Type: types{"string"}, Pattern: `^[^/\\]*\p{L}[^/\\]*$`}
	case Address:
		return &schema{Type: types{"string"}, Pattern: addressForm, MaxLength: longestAddress}
	case Amount:
		return ofAmount(k)
	case AmountList:
		return oneOrList(ofAmount(k))
	case Inside:
		return ofInside()
	}
	return ofKeys(k)
}

// ofKeys is for the forms with keys in them.
func ofKeys(k Key) *schema {
	section, own := &schema{Ref: "#/$defs/" + k.Section}, &schema{Ref: "#/$defs/" + ownKey}
	switch k.Form {
	case Group:
		return section
	case GroupList:
		return &schema{Type: types{"array"}, Items: section}
	case Bindings:
		return &schema{Type: types{"object"}, PropertyNames: own, Additional: own}
	case Languages:
		return &schema{Type: types{"object"}, PropertyNames: &schema{Pattern: languageCode}, Additional: ofText(Key{})}
	}
	if k.Short != "" {
		section = &schema{AnyOf: []*schema{ofAmount(Key{Unit: true}), section}}
	}
	return &schema{Type: types{"object"}, PropertyNames: own, Additional: section}
}

// languageCode is the form of a BCP 47 tag: letters, then parts of letters and digits.
const languageCode = `^[A-Za-z]{1,8}(?:[-_][A-Za-z0-9]{1,8})*$`

// ofText is words with a letter in them. YAML takes some of them for numbers
// (“1e3”) or, where they need not be a name, for yes or no (“true”).
func ofText(k Key) *schema {
	types := []string{"string", "number"}
	if k.Words {
		types = append(types, "boolean")
	}
	return &schema{Type: types, Pattern: `\p{L}`}
}

func ofWhole(k Key) *schema {
	pattern := fmt.Sprintf("^[1-9][0-9]{0,%d}", mostDigits-1)
	if k.After != "" {
		pattern += "(?:" + anyCase(k.After) + ")?"
	}
	return &schema{Type: types{"integer", "string"}, Minimum: &k.Least, Maximum: &k.Most, Pattern: pattern + "$"}
}

// ofAmount is a text, or a number where a figure without a unit is an amount.
func ofAmount(k Key) *schema {
	of := &schema{Type: types{"string"}, MinLength: 1}
	if k.Unit {
		return of
	}
	of.Type = append(of.Type, "number")
	if k.Whole {
		of.Type[1] = "integer"
	}
	nothing := 0
	if k.Positive {
		of.ExclusiveMinimum = &nothing
	} else {
		of.Minimum = &nothing
	}
	return of
}

// ofChoices offers words, and takes them in capitals and with blanks around too.
func ofChoices(offered []any, words []string) *schema {
	var patterns []string
	for _, word := range words {
		patterns = append(patterns, strings.ReplaceAll(anyCase(word), " ", `\s+`))
	}
	pattern := `^\s*(?:` + strings.Join(patterns, "|") + `)\s*$`
	return &schema{AnyOf: []*schema{{Enum: offered}, {Type: types{"string"}, Pattern: pattern}}}
}

// anyCase is a pattern for a word whatever the case of its letters.
func anyCase(word string) string {
	var b strings.Builder
	for _, r := range word {
		same := string(r)
		for other := unicode.SimpleFold(r); other != r; other = unicode.SimpleFold(other) {
			same += string(other)
		}
		if len(same) > len(string(r)) {
			b.WriteString("[" + same + "]")
		} else {
			b.WriteString(regexp.QuoteMeta(same))
		}
	}
	return b.String()
}

func oneOrList(one *schema) *schema {
	return &schema{AnyOf: []*schema{one, {Type: types{"array"}, Items: one}}}
}

// ofInside is a shape in words, or levels as keys or as a list.
func ofInside() *schema {
	var words []string
	for _, f := range forms {
		words = append(words, anyCase(f.word))
	}
	volume := &schema{Type: types{"string"}, MinLength: 1}
	return &schema{AnyOf: []*schema{
		{Type: types{"string"}, Pattern: `^\s*(?:` + strings.Join(words, "|") + `)(?:[\s,]|$)`},
		{Type: types{"object"}, MinProperties: 2, Additional: volume},
		{Type: types{"array"}, MinItems: 1, Items: &schema{AnyOf: []*schema{
			{Type: types{"string"}, Pattern: ": "}, {Type: types{"object"}, Additional: volume},
		}}},
	}}
}

// ofOwnKey is a key that the maker chose.
func ofOwnKey() *schema {
	var taken []any
	for _, word := range slices.Sorted(maps.Keys(reserved)) {
		taken = append(taken, word)
	}
	return &schema{Title: "a key of your own", Description: "lower-case letters a to z, digits and single hyphens, beginning with a letter; " +
		"no word that means something else in kit.yaml or in the links of the method", Type: types{"string"},
		Pattern: "^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$", MaxLength: longestKey, Not: &schema{Enum: taken}}
}
