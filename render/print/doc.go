// Package print turns a page of HTML into a PDF, through a browser without a window. It knows nothing of kits: it is
// given a page that holds everything inside itself, and gives back bytes.
//
// What it promises:
//
//   - The page reaches nothing. Its scripts don't run; it seems to come from a host that doesn't exist, and whatever
//     it asks for is refused three times over: by the page's own policy, by us, who are asked before each request, and
//     by the browser, whose only way out is a port where nobody answers. It is never loaded as a file, so that it
//     can't read files either.
//   - The machine is safe from the browser. It has a temporary home and nothing of the user's surroundings; run by
//     the administrator it works as "nobody". If its own protection, the sandbox, can't be set up, this is told
//     through Settings.Warn. The size of a page is limited, as memory can't be.
//   - Nothing hangs and nothing stays behind. A browser that is missing, crashes or hangs gives an error for the
//     person at the keyboard, within a time limit; all its processes are ended and its folder is removed. If we are
//     killed, it ends by itself, and the next run sweeps up the folder.
//   - The same page gives the same bytes, from the same version of the browser. Its PDF is tagged, with title,
//     language and outline; the fonts are embedded.
//
// The browser is driven by rod; its own ways of finding, downloading and starting one are not used. A PDF is read
// back, for the page numbers of a table of contents, by a small reader that parses only what it is asked for.
package print
