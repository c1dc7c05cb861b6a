// What the workbench uses of the editor component; build.mjs bundles it into ../editor.js.
export { EditorState, StateEffect, StateField, RangeSetBuilder, Annotation, Transaction, EditorSelection } from "@codemirror/state"
export { EditorView, Decoration, WidgetType, keymap, hoverTooltip, drawSelection, highlightSpecialChars, placeholder } from "@codemirror/view"
export { defaultKeymap, history, historyKeymap, undo, undoDepth } from "@codemirror/commands"
export { autocompletion, completionKeymap } from "@codemirror/autocomplete"
export { setDiagnostics, lintKeymap, nextDiagnostic } from "@codemirror/lint"
