package workbench

import "errors"

// What is told of orders that cannot be carried out.
var (
	errSingle = errors.New("the workbench was opened for this one kit; start it for a folder of kits to make another")
	errNoName = errors.New("give the kit a name; its folder is named after it")
	errNoPath = errors.New("no thing of the kit is named, so nothing was changed")
	errNoFile = errors.New("there is no such text in the kit, so nothing was changed")
)
