package ledger

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// noteMentions counts tools that the running text names without a link.
func (f *follower) noteMentions() {
	for _, mention := range f.step.Mentions {
		f.noteTool(mention.Key, mention.Span, false)
	}
	if f.step.Vessel != "" {
		f.noteTool(f.step.Vessel, f.step.VesselSpan, true)
	}
}

// noteVessels counts the tools that an operation names as tool or vessel.
func (f *follower) noteVessels(o *kit.Operation) {
	if o.Kind == kit.WithTool || o.Kind == kit.WithVessel || o.Kind == kit.Move || o.Kind == kit.Clean || o.Kind == kit.Left {
		f.noteTool(f.resolve(o.Target), o.Span, true)
	}
	for _, key := range []string{o.Into, o.From, o.In} {
		if key != "" {
			for one := range strings.SplitSeq(key, ",") {
				f.noteTool(f.resolve(one), o.TargetSpan, true)
			}
		}
	}
}

func (f *follower) noteTool(key string, span source.Span, linked bool) {
	if f.kit.Tool(key) == nil {
		return
	}
	use := f.toolUses[key]
	if use == nil {
		use = &ToolUse{Tool: key}
		f.toolUses[key] = use
		f.ledger.Tools = append(f.ledger.Tools, use)
	}
	use.Linked = use.Linked || linked
	for _, step := range use.Steps {
		if step == f.step {
			return
		}
	}
	use.Steps = append(use.Steps, f.step)
	use.Spans = append(use.Spans, span)
}
