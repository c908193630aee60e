import { autocompletion, type CompletionContext, type CompletionResult } from "@codemirror/autocomplete";
import { defaultKeymap, indentWithTab } from "@codemirror/commands";
import { yaml } from "@codemirror/lang-yaml";
import { defaultHighlightStyle, syntaxHighlighting } from "@codemirror/language";
import { lintGutter, type Diagnostic as Mark, setDiagnostics } from "@codemirror/lint";
import { Annotation, EditorState, StateEffect, StateField } from "@codemirror/state";
import {
  Decoration,
  type DecorationSet,
  EditorView,
  hoverTooltip,
  keymap,
  lineNumbers,
} from "@codemirror/view";
import { useEffect, useRef } from "preact/hooks";
import { placeFor, type Stretch, stretchFor } from "../../edits/places.ts";
import { helpFor, offeredAt, placeAt } from "../../edits/text-help.ts";
import type { WordedDiagnostic } from "../../planning.ts";
import { sayKey } from "../../words/index.ts";
import { tongue, words } from "../words/index.ts";
import { redo, typed, undo } from "./actions.ts";
import * as state from "./state.ts";
import { lineWanted, placeInHand, takePlace } from "./text-place.ts";

/** Marks a change that came from the page, which is not to be taken for typing. */
const fromPage = Annotation.define<boolean>();

/** The place in hand on the drawing, lit in the text. */
const lightUp = StateEffect.define<Stretch | null>();
const lit = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(now, { changes, effects }) {
    let next = now.map(changes);
    for (const effect of effects)
      if (effect.is(lightUp))
        next =
          effect.value === null || effect.value.from >= effect.value.to
            ? Decoration.none
            : Decoration.set([
                Decoration.mark({ class: "cm-inhand" }).range(effect.value.from, effect.value.to),
              ]);
    return next;
  },
  provide: (field) => EditorView.decorations.from(field),
});

/** What keys mean, in the language of the page. */
const saidOfKeys = () => sayKey(tongue.fileKeys);

function complete(context: CompletionContext): CompletionResult | null {
  const before = context.state.sliceDoc(0, context.pos);
  const place = placeAt(before);
  if (place.word === "" && !context.explicit) return null;
  const options = offeredAt(
    place,
    state.model.value.fabrics.map(({ name }) => name),
    saidOfKeys(),
  );
  if (options.length === 0) return null;
  return {
    from: context.pos - place.word.length,
    options: options.map(({ label, detail }) => ({
      label,
      // Beside the list where there is room for it, else within its line.
      ...(detail === "" ? {} : { [window.innerWidth < 600 ? "detail" : "info"]: detail }),
      apply: place.key === null ? `${label}: ` : label,
    })),
  };
}

const hover = hoverTooltip((view, pos) => {
  const line = view.state.doc.lineAt(pos);
  const at = pos - line.from;
  const keys = [...line.text.matchAll(/([\w-]+(?: [\w-]+)*)(?=:(\s|$))/g)];
  const found = keys.find((match) => at >= match.index && at <= match.index + match[0].length);
  if (found === undefined) return null;
  const start = line.from + found.index;
  const help = helpFor(placeAt(view.state.sliceDoc(0, start)).path, found[0], saidOfKeys());
  if (help === null) return null;
  return {
    pos: start,
    create() {
      const dom = document.createElement("div");
      dom.className = "texthelp";
      dom.textContent = help.example === "" ? help.meaning : `${help.meaning} · ${help.example}`;
      return { dom };
    },
  };
});

function marksOf(all: readonly WordedDiagnostic[], view: EditorView): Mark[] {
  const { doc } = view.state;
  return all.flatMap(({ at, severity, message, hint, code }): Mark[] => {
    // A fabric in the drawer that nothing is made of yet is no fault while one draws.
    if (at === null || at.line > doc.lines || code === "FABRIC-UNUSED") return [];
    const line = doc.line(at.line);
    const from = Math.min(line.to, line.from + Math.max(0, at.column - 1));
    const word = /^[^\s,:{}[\]]+/.exec(line.text.slice(from - line.from))?.[0].length ?? 0;
    return [
      {
        from,
        to: Math.min(line.to, from + Math.max(1, word)),
        severity,
        message: `${message} ${hint}`.trim(),
      },
    ];
  });
}

/** An act as a key of the editor takes it: it always answers that it was done. */
const does = (act: () => void) => (): boolean => {
  act();
  return true;
};

/** Only what differs is replaced, so that the cursor stays where it is. */
function bring(view: EditorView, text: string): void {
  const now = view.state.doc.toString();
  if (now === text) return;
  let from = 0;
  const most = Math.min(now.length, text.length);
  while (from < most && now[from] === text[from]) from++;
  let end = 0;
  while (end < most - from && now[now.length - 1 - end] === text[text.length - 1 - end]) end++;
  view.dispatch({
    changes: { from, to: now.length - end, insert: text.slice(from, text.length - end) },
    annotations: fromPage.of(true),
  });
}

/** The editor of the text, in its place on the page. */
function editorIn(parent: HTMLElement): EditorView {
  return new EditorView({
    parent,
    state: EditorState.create({
      doc: state.text.peek(),
      extensions: [
        lineNumbers(),
        lintGutter(),
        yaml(),
        syntaxHighlighting(defaultHighlightStyle),
        autocompletion({ override: [complete], icons: false }),
        hover,
        lit,
        keymap.of([
          { key: "Mod-z", run: does(undo) },
          { key: "Mod-y", run: does(redo) },
          { key: "Shift-Mod-z", run: does(redo) },
          { key: "Escape", run: (at) => does(() => at.contentDOM.blur())() },
          ...defaultKeymap.filter(({ key }) => key !== indentWithTab.key),
        ]),
        EditorView.contentAttributes.of({ "aria-label": words.textTitle, tabindex: "0" }),
        EditorView.updateListener.of((update) => {
          if (update.docChanged && update.transactions.every((one) => one.annotation(fromPage) !== true))
            typed(update.state.doc.toString());
          // Where the cursor is put, that is taken in hand on the drawing.
          else if (update.selectionSet && !update.docChanged && update.view.hasFocus) {
            const place = placeFor(update.state.doc.toString(), update.state.selection.main.head);
            if (place !== null) takePlace(place);
          }
        }),
      ],
    }),
  });
}

/** What is in hand on the drawing, lit in the text and brought into sight while nobody types there. */
function lightInHand(editor: EditorView): void {
  const doc = editor.state.doc.toString();
  const inHand = placeInHand();
  const stretch = inHand === null || doc !== state.text.peek() ? null : stretchFor(doc, inHand);
  editor.dispatch({
    effects: [
      lightUp.of(stretch),
      ...(stretch === null || editor.hasFocus
        ? []
        : [EditorView.scrollIntoView(stretch.from, { y: "nearest", yMargin: 40 })]),
    ],
  });
}

/** The file itself, beside the drawing: whatever is typed is drawn, whatever is drawn is written. */
export function TextPanel() {
  const place = useRef<HTMLDivElement>(null);
  const view = useRef<EditorView | null>(null);
  const text = state.text.value;
  const faults = state.faults.value;
  const wanted = lineWanted.value;
  useEffect(() => {
    if (place.current === null) return;
    const editor = editorIn(place.current);
    view.current = editor;
    return () => editor.destroy();
  }, []);
  useEffect(() => {
    // The newest text, not the one this was drawn for: letters may have been typed since.
    if (view.current !== null && text === state.text.peek()) bring(view.current, text);
  }, [text]);
  const lightFor = JSON.stringify(placeInHand());
  useEffect(() => {
    if (view.current !== null) lightInHand(view.current);
  }, [text, lightFor]);
  useEffect(() => {
    const editor = view.current;
    if (editor !== null) editor.dispatch(setDiagnostics(editor.state, marksOf(faults, editor)));
  }, [faults]);
  useEffect(() => {
    const editor = view.current;
    if (editor === null || wanted === null || wanted.line > editor.state.doc.lines) return;
    const line = editor.state.doc.line(wanted.line);
    editor.dispatch({
      selection: { anchor: line.from + line.text.search(/\S|$/), head: line.to },
      effects: EditorView.scrollIntoView(line.from, { y: "center" }),
    });
    editor.focus();
  }, [wanted]);
  return (
    <section class="leaf textleaf" aria-label={words.textTitle}>
      <h2>
        {words.textTitle}
        <button type="button" class="act" onClick={() => (state.textOpen.value = false)}>
          {words.putTextAway}
        </button>
      </h2>
      <div class="code" ref={place} />
    </section>
  );
}
