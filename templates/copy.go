package templates

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path"
	"regexp"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// Copy gives a shipped text as a maker begins with it: a remark at its head says what it
// was copied from, so that a later change of the original is noticed. Of words every
// line is a note; the maker takes the # away before those to change. The error says that
// there is no such text.
func Copy(name string) ([]byte, error) {
	text, err := shipped.ReadFile(name)
	if err != nil || path.Ext(name) == ".woff2" || name == "report.md" {
		return nil, fmt.Errorf("there is no template %s to copy", name)
	}
	remark := fmt.Sprintf("Copied from %s, fingerprint %s.", name, fingerprint(text))
	switch path.Ext(name) {
	case ".css":
		return []byte("/* " + remark + " */\n" + string(text)), nil
	case ".svg":
		return []byte("<!-- " + remark + " -->\n" + string(text)), nil
	case ".txt":
		return []byte(wordsToChange(string(text))), nil
	}
	return []byte("{{/* " + remark + " */ -}}\n" + string(text)), nil
}

func wordsToChange(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if line != "" && !strings.HasPrefix(line, "#") {
			lines[i] = "# " + line
		}
	}
	return "# Take the # away before each line that you change, and delete all others.\n" + strings.Join(lines, "\n")
}

func fingerprint(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:4])
}

var copiedFrom = regexp.MustCompile(`Copied from (\S+), fingerprint ([0-9a-f]{8})\.`)

// changedSince tells of a copy whose original is no longer the one that was copied.
func changedSince(file *source.File, name string) diag.List {
	head := file.Line(1)
	at := copiedFrom.FindStringSubmatchIndex(head)
	if at == nil || head[at[2]:at[3]] != name {
		return nil
	}
	original, err := shipped.ReadFile(name)
	if err != nil || fingerprint(original) == head[at[4]:at[5]] {
		return nil
	}
	return diag.List{{
		Rule: "template-changed-since", Severity: diag.WorthKnowing, Where: file.Span(at[4], at[5]), About: name,
		Found:    fmt.Sprintf("the %s of this version is no longer the one that this file was copied from", name),
		Expected: "fingerprint " + fingerprint(original),
		Remedies: diag.Fix("compare it with the new one (tallyfold templates KIT "+name+" prints it), take over what you want, and write "+fingerprint(original)+" here",
			"delete it, if the new one suits you"),
	}}
}
