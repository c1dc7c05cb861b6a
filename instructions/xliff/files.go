package xliff

import "tallyfold/kit"

// A Made is a file of a translation as it will be, and as it was before.
type Made struct {
	// Name is that of the file in the kit folder: "method.fr.md".
	Name, Text, Before string
	// AddedTo: lines are only added to what stands there.
	AddedTo bool
}

// Made gives the files of the kit folder that the document makes or changes. kept is the
// translation as it is, nil for none; before gives the text of a file, "" for none. What
// cannot be taken over is told.
func (t *Translated) Made(files []*File, kept *kit.Translation, before func(name string) string) (made []Made, troubles []Trouble) {
	for _, file := range files {
		one := Made{Name: file.Name + "." + t.To + ".md"}
		var found []Trouble
		if file.Name == "kit" {
			one.Name, one.AddedTo = "kit."+t.To+".txt", true
			one.Before = before(one.Name)
			one.Text, found = t.Texts(file, one.Before, textsOf(kept))
		} else {
			one.Before = before(one.Name)
			one.Text, found = t.Markdown(file, func(name string) string { return Kept(kept, name) })
		}
		troubles = append(troubles, found...)
		if one.Text != "" && one.Text != one.Before {
			made = append(made, one)
		}
	}
	return made, troubles
}

func textsOf(t *kit.Translation) map[string]string {
	if t == nil {
		return nil
	}
	return t.Texts
}
