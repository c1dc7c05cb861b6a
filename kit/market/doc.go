// Package market holds a kit against what its markets ask of boxes, bags, containers and
// booklets. It says of each requirement of a pack whether it is asked of this kit and why,
// which words have to be printed where, and which facts are missing. It judges no law: what
// a pack does not cover is not looked at, and whether a kit may be sold is for a competent
// person to say.
package market
