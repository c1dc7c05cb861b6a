package keep

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A journal is what was typed into one file, one record a batch of keystrokes, each on
// the disk before it is answered for. Records are only ever added; one that a killed
// program has written half is known by its checksum, and left out.
//
// A record is a line “kind time at out in checksum”, then the bytes taken out, the
// bytes put in, and a line end.
type journal struct {
	folder *Folder
	name   string
	// size is how many bytes of the journal's file are whole records, and ends how long
	// the file is: more, where a record was written half.
	size, ends int64
	// text is what was typed last; base is the file that it rests on.
	text []byte
	base Fingerprint
	when time.Time
	// done are the edits that led here, oldest first; undone those taken back.
	done, undone []edit
	// answered is the conflict that was told last.
	answered answer
}

// The kinds of record.
const (
	startRecord = 't' // the text that all began with: in
	editRecord  = 'e' // at byte at, out was taken out and in put in
	undoRecord  = 'u'
	redoRecord  = 'r'
	baseRecord  = 'b' // the text rests on the file with the fingerprint in
)

// An edit takes bytes out of a text and puts others in.
type edit struct {
	at      int
	out, in []byte
}

// A record is one entry of a journal.
type record struct {
	kind byte
	when time.Time
	edit
}

// Bounds of a journal: when its file is larger than longestJournal, all but the last
// edits are left out, mostEdits of them or as many as half of that holds.
const (
	longestJournal = 2 << 20
	mostEdits      = 2000
)

// flat makes one name of a path, and back.
var (
	flat   = strings.NewReplacer("%", "%25", "/", "%2F")
	unflat = strings.NewReplacer("%25", "%", "%2F", "/")
)

// file is the path of the journal of a file, or of its history.
func file(kind, name string) string { return home + "/" + kind + "/" + flat.Replace(name) }

// journal gives that of a file, begun with what stands on the disk where there is none.
func (f *Folder) journal(name string, disk found) (*journal, error) {
	j := f.journals[name]
	info, err := f.root.Stat(file("typed", name))
	switch {
	case err == nil && j != nil && info.Size() == j.ends:
		return j, nil
	case err == nil:
		return f.readJournal(name, disk)
	case !errors.Is(err, fs.ErrNotExist):
		return nil, troubleWith(f.dir, name, err)
	}
	j = &journal{folder: f, name: name, text: disk.text, base: disk.print, when: f.now()}
	f.journals[name] = j
	return j, nil
}

// readJournal reads a journal from the disk: as far as it is whole.
func (f *Folder) readJournal(name string, disk found) (*journal, error) {
	content, err := f.root.ReadFile(file("typed", name))
	if err != nil {
		return nil, troubleWith(f.dir, name, err)
	}
	j := &journal{folder: f, name: name, text: disk.text, base: disk.print, when: f.now()}
	rest := content
	for len(rest) > 0 {
		r, length, ok := readRecord(rest)
		if !ok || !j.take(r) {
			break
		}
		rest = rest[length:]
	}
	j.size, j.ends = int64(len(content)-len(rest)), int64(len(content))
	f.journals[name] = j
	return j, nil
}

// take does to the text what a record says; false for one that cannot follow.
func (j *journal) take(r record) bool {
	switch r.kind {
	case startRecord:
		j.text, j.done, j.undone = r.in, nil, nil
	case editRecord:
		if r.at > len(j.text) || !bytes.HasPrefix(j.text[r.at:], r.out) {
			return false
		}
		j.text, j.done, j.undone = r.made(j.text), append(j.done, r.edit), nil
	case undoRecord:
		if len(j.done) == 0 {
			return false
		}
		last := j.done[len(j.done)-1]
		j.text, j.done, j.undone = last.back().made(j.text), j.done[:len(j.done)-1], append(j.undone, last)
	case redoRecord:
		if len(j.undone) == 0 {
			return false
		}
		last := j.undone[len(j.undone)-1]
		j.text, j.undone, j.done = last.made(j.text), j.undone[:len(j.undone)-1], append(j.done, last)
	case baseRecord:
		j.base = Fingerprint(r.in)
	default:
		return false
	}
	j.when = r.when
	return true
}

// made is a text with the edit made in it.
func (e edit) made(text []byte) []byte {
	return slices.Concat(text[:e.at], e.in, text[e.at+len(e.out):])
}

// back is the edit that takes this one back.
func (e edit) back() edit { return edit{e.at, e.in, e.out} }

// between is the edit that makes one text of another: the one stretch that differs.
func between(old, changed []byte) edit {
	from, behind := 0, 0
	for from < min(len(old), len(changed)) && old[from] == changed[from] {
		from++
	}
	for behind < min(len(old), len(changed))-from && old[len(old)-1-behind] == changed[len(changed)-1-behind] {
		behind++
	}
	return edit{from, slices.Clone(old[from : len(old)-behind]), slices.Clone(changed[from : len(changed)-behind])}
}

// add writes records and does what they say. On failure the journal is as it was.
func (j *journal) add(records ...record) error {
	var lines []byte
	if j.size == 0 {
		start := record{kind: startRecord, when: j.when, edit: edit{in: j.text}}
		lines = append(start.bytes(), record{kind: baseRecord, when: j.when, edit: edit{in: []byte(j.base)}}.bytes()...)
	}
	for _, r := range records {
		lines = append(lines, r.bytes()...)
	}
	if err := j.write(lines); err != nil {
		return troubleWith(j.folder.dir, j.name, err)
	}
	j.size += int64(len(lines))
	j.ends = j.size
	for _, r := range records {
		j.take(r)
	}
	if j.size > longestJournal {
		return j.shorten()
	}
	return nil
}

func (j *journal) write(lines []byte) error {
	f := j.folder
	if err := f.makeFolder(home + "/typed"); err != nil {
		return err
	}
	path := file("typed", j.name)
	opened, err := f.root.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_APPEND, usual)
	if err != nil {
		return err
	}
	defer opened.Close()
	if j.ends > j.size { // a record that was written half goes
		err = opened.Truncate(j.size)
	}
	if err == nil {
		_, err = opened.Write(lines)
	}
	if err == nil {
		err = opened.Sync()
	}
	if err != nil {
		_ = opened.Truncate(j.size) // else the half is left out at the next reading
		return err
	}
	if j.size == 0 {
		f.syncFolder(home + "/typed")
	}
	return nil
}

// shorten writes the journal anew with its last edits only.
func (j *journal) shorten() error {
	kept, size := 0, 0
	for kept < min(len(j.done), mostEdits) && size < longestJournal/2 {
		kept++
		e := j.done[len(j.done)-kept]
		size += len(e.in) + len(e.out)
	}
	text := j.text
	for i := range kept {
		text = j.done[len(j.done)-1-i].back().made(text)
	}
	var lines []byte
	put := func(kind byte, e edit) { lines = append(lines, record{kind, j.when, e}.bytes()...) }
	put(startRecord, edit{in: text})
	put(baseRecord, edit{in: []byte(j.base)})
	j.done = slices.Clone(j.done[len(j.done)-kept:])
	j.undone = nil
	for _, e := range j.done {
		put(editRecord, e)
	}
	if err := j.folder.writeWhole(file("typed", j.name), lines, usual); err != nil {
		return troubleWith(j.folder.dir, j.name, err)
	}
	j.size = int64(len(lines))
	j.ends = j.size
	return nil
}

// bytes writes a record.
func (r record) bytes() []byte {
	head := fmt.Sprintf("%c %d %d %d %d ", r.kind, r.when.UnixMilli(), r.at, len(r.out), len(r.in))
	body := slices.Concat(r.out, r.in)
	sum := crc32.ChecksumIEEE(append([]byte(head), body...))
	return slices.Concat([]byte(fmt.Sprintf("%s%08x\n", head, sum)), body, []byte("\n"))
}

// readRecord reads the first record of a text and its length; ok is false for one that
// is not whole.
func readRecord(text []byte) (r record, length int, ok bool) {
	const longestHead = 100
	end := bytes.IndexByte(text[:min(len(text), longestHead)], '\n')
	if end < 0 {
		return record{}, 0, false
	}
	fields := strings.Split(string(text[:end]), " ")
	if len(fields) != 6 || len(fields[0]) != 1 {
		return record{}, 0, false
	}
	var numbers [4]int
	for i := range numbers {
		n, err := strconv.Atoi(fields[i+1])
		if err != nil || n < 0 {
			return record{}, 0, false
		}
		numbers[i] = n
	}
	when, at, out, in := numbers[0], numbers[1], numbers[2], numbers[3]
	if out > len(text) || in > len(text) || end+1+out+in+1 > len(text) || text[end+1+out+in] != '\n' {
		return record{}, 0, false
	}
	body := text[end+1 : end+1+out+in]
	head := text[:end-len(fields[5])]
	if fmt.Sprintf("%08x", crc32.ChecksumIEEE(slices.Concat(head, body))) != fields[5] {
		return record{}, 0, false
	}
	r = record{fields[0][0], time.UnixMilli(int64(when)), edit{at, body[:out:out], body[out:]}}
	return r, end + 1 + out + in + 1, true
}
