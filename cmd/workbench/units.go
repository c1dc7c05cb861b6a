package workbench

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/quantity"
)

// unitLists are the units that a picker offers, the usual ones of each dimension. Any other
// that amounts are read in can be typed.
var unitLists = map[quantity.Dimension][]string{
	quantity.Mass:                  {"g", "kg", "mg", "oz weight", "lb"},
	quantity.Volume:                {"mL", "L", "fl oz", "tsp", "tbsp", "cup"},
	quantity.Length:                {"mm", "cm", "m", "in", "ft", "yd"},
	quantity.Area:                  {"cm²", "m²"},
	quantity.Temperature:           {"°C", "°F"},
	quantity.TemperatureDifference: {"°C", "°F"},
	quantity.Duration:              {"s", "min", "h", "days", "weeks"},
	quantity.Density:               {"g/mL", "kg/L"},
	quantity.Share:                 {"%"},
	quantity.VolumePerMass:         {"mL per g"},
	quantity.Count:                 nil,
}

// A unitTable knows how a kit writes its amounts.
type unitTable struct{ reader quantity.Reader }

func unitsOf(k *kit.Kit) unitTable {
	if k == nil {
		return unitTable{}
	}
	return unitTable{load.Amounts(k)}
}

// of gives the units for a value: those of the dimension that it has, else that of the
// example.
func (u unitTable) of(key load.Key, value string) []string {
	for _, text := range []string{value, key.Example} {
		amount, err := u.reader.Amount(text)
		if err != nil {
			continue
		}
		units := unitLists[amount.Dimension]
		if key.Name == "packed" && value == "" {
			return slices.Concat(unitLists[quantity.Mass], unitLists[quantity.Volume], unitLists[quantity.Length])
		}
		if name := amount.Unit.Symbol; value != "" && name != "" && len(units) > 0 && !slices.Contains(units, name) {
			units = append([]string{name}, units...)
		}
		return units
	}
	return nil
}
