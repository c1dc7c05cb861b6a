package quantity

// unitName is a unit's symbol, or its name where it has no other, in a language.
func (l *language) unitName(u Unit, several bool) string {
	if u.Symbol == u.Name && several && u.Plural != "" {
		return u.Plural
	}
	return u.Symbol
}
