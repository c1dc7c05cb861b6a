package print

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
)

// ProgramVariable names the environment variable that says which browser to use.
const ProgramVariable = "TALLYFOLD_BROWSER"

// Find gives the path of the browser that would be used: the program asked for, else the one that TALLYFOLD_BROWSER
// names, else the best that the machine has. A program that was asked for and isn't there is ErrNoBrowser: another
// in its place would be a surprise.
func Find(program string) (string, error) {
	if program != "" {
		return named(program, "the browser asked for")
	}
	if program = os.Getenv(ProgramVariable); program != "" {
		return named(program, ProgramVariable)
	}
	for _, candidate := range candidates() {
		if path, err := exec.LookPath(candidate); err == nil {
			return path, nil
		}
	}
	return "", ErrNoBrowser
}

func named(program, by string) (string, error) {
	path, err := exec.LookPath(program)
	if err == nil {
		path, err = filepath.Abs(path)
	}
	if err != nil {
		var lookup *exec.Error // repeats the program's name
		if errors.As(err, &lookup) {
			err = lookup.Err
		}
		return "", fmt.Errorf("%s is %s, which can't be run (%w)\n%w", by, program, err, ErrNoBrowser)
	}
	return path, nil
}

// candidates lists where a browser may be, the most suitable first. The headless shell prints the same page in a
// third of the time of a whole browser. Distributions put a script in front of the real program, which stays as a
// second process in between: so the real program is looked for first.
func candidates() []string {
	switch runtime.GOOS {
	case "darwin":
		return append(macCandidates(), pathNames...)
	case "windows":
		return append(windowsCandidates(), pathNames...)
	}
	return append(slices.Clone(usualPlaces), pathNames...)
}

// usualPlaces are where distributions of Linux put the real programs.
var usualPlaces = []string{
	"/usr/lib/chromium/chromium-headless-shell",    // Debian
	"/usr/lib64/chromium-browser/headless_shell",   // Fedora
	"/usr/lib/chromium/chromium",                   // Debian, Arch, Alpine
	"/usr/lib64/chromium-browser/chromium-browser", // Fedora
	"/usr/lib/chromium-browser/chromium-browser",   // Raspberry Pi OS
}

var pathNames = []string{
	"chromium-headless-shell", "chrome-headless-shell", "headless_shell",
	"chromium", "chromium-browser", "ungoogled-chromium",
	"google-chrome-stable", "google-chrome", "chrome",
	"microsoft-edge-stable", "microsoft-edge", "msedge",
	"brave-browser", "brave", "vivaldi-stable", "vivaldi", "opera",
}

func macCandidates() []string {
	programs := []string{
		"Chromium.app/Contents/MacOS/Chromium",
		"Google Chrome.app/Contents/MacOS/Google Chrome",
		"Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
		"Brave Browser.app/Contents/MacOS/Brave Browser",
		"Vivaldi.app/Contents/MacOS/Vivaldi",
	}
	folders := []string{"/Applications"}
	if home, err := os.UserHomeDir(); err == nil {
		folders = append(folders, filepath.Join(home, "Applications"))
	}
	return inFolders(programs, folders)
}

func windowsCandidates() []string {
	programs := []string{
		`Chromium\Application\chrome.exe`,
		`Google\Chrome\Application\chrome.exe`,
		`Microsoft\Edge\Application\msedge.exe`,
		`BraveSoftware\Brave-Browser\Application\brave.exe`,
		`Vivaldi\Application\vivaldi.exe`,
	}
	var folders []string
	for _, variable := range []string{"ProgramFiles", "ProgramFiles(x86)", "LocalAppData"} {
		if folder := os.Getenv(variable); folder != "" {
			folders = append(folders, folder)
		}
	}
	return inFolders(programs, folders)
}

func inFolders(programs, folders []string) []string {
	var paths []string
	for _, program := range programs {
		for _, folder := range folders {
			paths = append(paths, filepath.Join(folder, program))
		}
	}
	return paths
}
