package instructions

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"strconv"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// A folderReader reads the files of one kit folder and collects what is wrong
// with them as files.
type folderReader struct {
	folder fs.FS
	found  diag.List
}

// text reads a text file of at most limit bytes. It gives nil for a file that is
// not there, without a finding, or refused, with one.
func (r *folderReader) text(name string, limit int64) *source.File {
	content, ok := r.content(name, limit)
	if !ok {
		return nil
	}
	return source.NewFile(name, content)
}

// content reads the bytes of a file of the folder. Only plain files are read: a
// link could lead out of the folder, and reading a pipe may never end.
func (r *folderReader) content(name string, limit int64) (content []byte, ok bool) {
	info, err := fs.Lstat(r.folder, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, false
	case err != nil:
		r.refuse(name, "it can't be looked at: "+reason(err), "a file that can be read", "look at its permissions")
		return nil, false
	case info.Mode()&fs.ModeSymlink != 0:
		r.refuse(name, "a link to another place", "the file itself, so that the folder is complete wherever it is copied", "put the file itself into the folder")
		return nil, false
	case !info.Mode().IsRegular():
		r.refuse(name, what(info.Mode())+" of this name", "a plain file", "give it another name, or put it elsewhere")
		return nil, false
	case info.Size() > limit:
		r.tooLarge(name, info.Size(), limit)
		return nil, false
	}
	return r.read(name, limit)
}

// read opens the file and reads no more than the limit, whatever the folder said
// of its size a moment ago.
func (r *folderReader) read(name string, limit int64) (content []byte, ok bool) {
	file, err := r.folder.Open(name)
	if err != nil {
		r.refuse(name, "it can't be opened: "+reason(err), "a file that can be read", "look at its permissions")
		return nil, false
	}
	defer file.Close()
	content, err = io.ReadAll(io.LimitReader(file, limit+1))
	switch {
	case err != nil:
		r.refuse(name, "it can't be read: "+reason(err), "a file that can be read", "look at its permissions and the disk")
		return nil, false
	case int64(len(content)) > limit:
		r.tooLarge(name, int64(len(content)), limit)
		return nil, false
	}
	return content, true
}

func (r *folderReader) tooLarge(name string, size, limit int64) {
	r.refuse(name, "a file of "+kilobytes(size), "at most "+kilobytes(limit), "make it smaller")
}

func (r *folderReader) refuse(name, found, expected, remedy string) {
	nowhere := source.NewFile(name, nil).Whole()
	r.found = append(r.found, finding(refusedFile, nowhere, name, found, expected, remedy))
}

// reason is what the system says without the path, which people know already.
func reason(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err.Error()
	}
	return err.Error()
}

func what(mode fs.FileMode) string {
	if mode.IsDir() {
		return "a folder"
	}
	return "something that is no plain file"
}

func kilobytes(size int64) string {
	return strconv.FormatInt((size+1023)>>10, 10) + " KB"
}

// refuse gives a finding for a Markdown file that is not read at all: too large,
// with characters that are no text, or nested too deeply. nil when it is read.
func refuse(file *source.File) diag.List {
	if len(file.Text) > maxText {
		return diag.List{finding(refusedFile, file.Whole(), file.Name, "a file of "+kilobytes(int64(len(file.Text))),
			"at most "+kilobytes(maxText), "make it shorter, or make two kits of it")}
	}
	if at, what, ok := file.OddText(); !ok {
		return diag.List{finding(refusedFile, at, file.Name, what, "plain UTF-8 text",
			"take the character out, or save the file as UTF-8 text")}
	}
	if n := bytes.Count(file.Text, []byte("[")); n > maxBrackets {
		return diag.List{finding(refusedFile, file.Whole(), file.Name, strconv.Itoa(n)+" opening square brackets",
			"at most "+strconv.Itoa(maxBrackets), "make it shorter, or make two kits of it")}
	}
	if at, deep := nesting(file); deep {
		return diag.List{finding(refusedFile, at, file.Name, "more than "+strconv.Itoa(maxNesting)+" quotations or lists inside one another",
			"a text that a reader can follow", "take marks away at the head of the line")}
	}
	return nil
}

// nesting finds a line that begins with more marks of quotations and lists than
// may stand inside one another. Those that are nested by indentation count by
// the blanks they need.
func nesting(file *source.File) (at source.Span, deep bool) {
	start := 0
	for line := range bytes.SplitAfterSeq(file.Text, []byte("\n")) {
		if marks, length := marksAtHead(line); marks > maxNesting {
			return file.Span(start, start+length), true
		}
		start += len(line)
	}
	return source.Span{}, false
}

// marksAtHead counts the quotation and list marks a line begins with, two blanks
// as one mark, and how many bytes they take.
func marksAtHead(line []byte) (marks, length int) {
	blanks := 0
	for i := 0; i < len(line); i++ {
		c := line[i]
		switch {
		case c == ' ':
			blanks++
		case c == '\t':
			blanks += 4
		case c == '>':
			marks++
		case (c == '-' || c == '+' || c == '*') && followedByBlank(line, i+1):
			marks++
		case c >= '0' && c <= '9':
			end := i
			for end < len(line) && line[end] >= '0' && line[end] <= '9' {
				end++
			}
			if end == len(line) || line[end] != '.' && line[end] != ')' || !followedByBlank(line, end+1) {
				return marks, i
			}
			marks++
			i = end
		default:
			return marks, i
		}
		length = i
	}
	return marks, length
}

func followedByBlank(line []byte, at int) bool {
	return at >= len(line) || line[at] == ' ' || line[at] == '\t' || line[at] == '\n' || line[at] == '\r'
}
